//! What no plan can be better than.

use super::problem::Problem;

/// The fewest bars by the bound L2 of Martello and Toth (*Knapsack Problems*, 1990, 8.3.2), each
/// bar as long as the longest: pieces of more than half a bar never share one, and what is at
/// least some K long must go into what they leave. With K = 0 it is the bound by length alone.
pub(super) fn fewest(problem: &Problem) -> u64 {
    let room = problem.kinds.iter().map(|kind| kind.room).max();
    let room = room.unwrap_or(1);
    let half = |size: &&i64| 2 * **size <= room;
    let small = problem.sizes.iter().filter(half);
    let least = small.chain(&[0]).map(|k| with_least(problem, room, *k));
    least.max().unwrap_or(0)
}

fn with_least(problem: &Problem, room: i64, k: i64) -> u64 {
    let (mut alone, mut large, mut free, mut small) = (0, 0, 0, 0);
    for (size, count) in problem.sizes.iter().zip(&problem.counts) {
        let count = i64::from(*count);
        if *size > room - k {
            alone += count;
        } else if 2 * size > room {
            large += count;
            free += count * (room - size);
        } else if *size >= k {
            small += count * size;
        }
    }
    let more = (small - free).max(0);
    let bars = alone + large + up(more, room);
    u64::try_from(bars).unwrap_or(0)
}

/// Divided and rounded up.
pub(super) fn up(over: i64, under: i64) -> i64 {
    over.div_euclid(under) + i64::from(over.rem_euclid(under) > 0)
}

/// What pieces are worth, so that no bar holds more than it is reckoned at: then all pieces
/// together are worth no more than any plan costs. Whole numbers, [`Worth::scale`] to the cost of
/// one.
#[derive(Debug, Clone)]
pub(super) struct Worth {
    pub(super) values: Vec<i64>,
    /// What a bar of each kind holds above its cost; there are only so many of these.
    pub(super) above: Vec<i64>,
    pub(super) scale: i64,
}

impl Worth {
    /// Nothing is worth anything: a bound that always holds.
    pub(super) fn nothing(problem: &Problem) -> Self {
        Self {
            values: vec![0; problem.sizes.len()],
            above: vec![0; problem.kinds.len()],
            scale: 1,
        }
    }

    /// What pieces cost at the least, out of such a stock.
    pub(super) fn cost(&self, counts: &[u32], stock: &[Option<u32>]) -> i64 {
        let worth = self.values.iter().zip(counts);
        let worth: i64 = worth.map(|(value, count)| value * i64::from(*count)).sum();
        let above = self.above.iter().zip(stock);
        let above: i64 = above
            .map(|(above, left)| above * i64::from(left.unwrap_or(0)))
            .sum();
        up((worth - above).max(0), self.scale)
    }
}

/// What so many bars cost together at the least: the cheapest of them are taken first, and there are
/// only so many of each. Every plan has at least [`fewest`] bars, and so costs no less than these.
pub(super) fn cheapest(problem: &Problem, bars: u64) -> i64 {
    let mut kinds: Vec<(i64, u64)> = problem
        .kinds
        .iter()
        .map(|kind| (kind.cost, kind.most.map_or(u64::MAX, u64::from)))
        .collect();
    kinds.sort_unstable();
    let mut left = bars;
    let mut cost = 0;
    for (own, most) in kinds {
        let taken = left.min(most);
        cost += own * i64::try_from(taken).unwrap_or(0);
        left -= taken;
    }
    cost
}

/// The most sums that are tried.
const MOST_SUMS: u32 = 20_000;

/// The least that bars can cost together that is no less than `cost`: bars come whole.
pub(super) fn next_cost(problem: &Problem, cost: i64) -> i64 {
    let mut kinds: Vec<(i64, i64)> = Vec::new();
    for kind in &problem.kinds {
        let most = i64::from(kind.most.unwrap_or(u32::MAX));
        match kinds.iter_mut().find(|known| known.0 == kind.cost) {
            Some(known) => known.1 += most,
            None => kinds.push((kind.cost, most)),
        }
    }
    kinds.sort_by_key(|kind| std::cmp::Reverse(kind.0));
    let mut sums = Sums {
        kinds,
        best: i64::MAX,
        left: MOST_SUMS,
    };
    sums.go(0, cost);
    if sums.left == 0 || sums.best == i64::MAX {
        cost
    } else {
        cost + sums.best
    }
}

/// Sums of whole bars.
struct Sums {
    /// Costs, the dearest first, and how many there are.
    kinds: Vec<(i64, i64)>,
    /// The least that a sum goes over.
    best: i64,
    left: u32,
}

impl Sums {
    fn go(&mut self, at: usize, need: i64) {
        self.left = self.left.saturating_sub(1);
        let Some(&(cost, most)) = self.kinds.get(at) else {
            return;
        };
        let all = up(need.max(0), cost);
        if all <= most {
            self.best = self.best.min(all * cost - need);
        }
        if at + 1 == self.kinds.len() {
            return;
        }
        for count in (0..=all.min(most)).rev() {
            if self.left == 0 || self.best == 0 {
                return;
            }
            let rest = need - count * cost;
            if rest > 0 {
                self.go(at + 1, rest);
            }
        }
    }
}
