//! Branch and bound, bar after bar: the longest piece that is left is in some bar, and every filling
//! of that bar is tried, the fullest first.

use super::bound::Worth;
use super::problem::{Filled, Plan, Problem, take, there_is};
use super::purse::Purse;

/// The most pieces that are searched for: the search is as deep as there are pieces.
pub(super) const MOST_PIECES: u64 = 150;

/// What is sought.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Goal {
    /// Fewest bars: a bar that has room for one more piece takes it, since it may be moved there
    /// from any later one.
    Fewest,
    /// Of plans that cost as little the one that loses least: bars are left with room, too.
    Offcut,
}

/// Whether the search came to its end, so that nothing better is left.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum End {
    Proven,
    OutOfSteps,
}

/// Searches on from a plan.
pub(super) fn search(
    problem: &Problem,
    (plan, worth): (Plan, &Worth),
    (goal, enough): (Goal, i64),
    purse: &mut Purse<'_>,
) -> (Plan, End) {
    let mut search = Search {
        counts: problem.counts.clone(),
        stock: problem.stock(),
        order: order(problem),
        best: plan,
        path: Vec::new(),
        cost: 0,
        lost: 0,
        problem,
        worth,
        goal,
        enough,
        purse,
    };
    search.next_bar();
    let ended = search.is_enough() || !search.purse.is_empty();
    let end = if ended { End::Proven } else { End::OutOfSteps };
    (search.best, end)
}

/// The kinds, the cheapest first and of these the shortest.
fn order(problem: &Problem) -> Vec<usize> {
    let mut order: Vec<usize> = (0..problem.kinds.len()).collect();
    order.sort_by_key(|kind| (problem.kinds[*kind].cost, problem.kinds[*kind].room));
    order
}

struct Search<'a, 'p> {
    problem: &'a Problem,
    worth: &'a Worth,
    goal: Goal,
    /// Nothing can be better than this: cost, or what is lost.
    enough: i64,
    order: Vec<usize>,
    counts: Vec<u32>,
    stock: Vec<Option<u32>>,
    path: Vec<Filled>,
    cost: i64,
    /// What the bars so far lose, and what their pieces take.
    lost: i64,
    best: Plan,
    purse: &'a mut Purse<'p>,
}

impl Search<'_, '_> {
    fn is_enough(&self) -> bool {
        match self.goal {
            Goal::Fewest => self.best.rank.cost <= self.enough,
            Goal::Offcut => self.best.rank.lost <= self.enough,
        }
    }

    /// Whether nothing better comes of what is cut so far.
    fn is_hopeless(&self) -> bool {
        let least = self.cost + self.worth.cost(&self.counts, &self.stock);
        let best = &self.best.rank;
        match self.goal {
            Goal::Fewest => least >= best.cost,
            Goal::Offcut => {
                let lost = self.lost + self.problem.taken(&self.counts);
                least > best.cost || lost >= best.lost
            }
        }
    }

    fn next_bar(&mut self) {
        let Some(first) = self.counts.iter().position(|count| *count > 0) else {
            return self.arrive();
        };
        if self.is_hopeless() {
            return;
        }
        for at in 0..self.order.len() {
            let kind = self.order[at];
            let room = self.problem.kinds[kind].room;
            if there_is(&self.stock, kind) && room >= self.problem.sizes[first] {
                let pattern = vec![0; self.counts.len()];
                self.fill(&mut Filled { kind, pattern }, first, room);
            }
            if self.is_enough() {
                return;
            }
        }
    }

    fn arrive(&mut self) {
        let plan = self.problem.plan(self.path.clone());
        if plan.rank < self.best.rank {
            self.best = plan;
        }
    }

    /// Tries every filling of a bar with sizes from a place on.
    fn fill(&mut self, bar: &mut Filled, from: usize, left: i64) {
        if !self.purse.spend(1) || self.is_enough() {
            return;
        }
        let fits = |size: &usize| self.counts[*size] > 0 && self.problem.sizes[*size] <= left;
        let Some(size) = (from..self.counts.len()).find(fits) else {
            return self.close(bar, left);
        };
        let begins = bar.pattern.iter().all(|count| *count == 0);
        let most = self.problem.fit(size, left, self.counts[size]);
        for count in (u32::from(begins)..=most).rev() {
            bar.pattern[size] = count;
            let rest = left - i64::from(count) * self.problem.sizes[size];
            self.fill(bar, size + 1, rest);
        }
        bar.pattern[size] = 0;
    }

    /// Cuts a bar and goes on to the next.
    fn close(&mut self, bar: &Filled, left: i64) {
        if !self.in_order(bar) || (self.goal == Goal::Fewest && self.has_room(bar, left)) {
            return;
        }
        let kind = self.problem.kinds[bar.kind];
        let lost = kind.room - self.problem.useful(left);
        let stock = self.stock.clone();
        take(&mut self.stock, bar.kind);
        change(&mut self.counts, &bar.pattern, u32::wrapping_sub);
        (self.cost, self.lost) = (self.cost + kind.cost, self.lost + lost);
        self.path.push(bar.clone());
        self.next_bar();
        self.path.pop();
        (self.cost, self.lost) = (self.cost - kind.cost, self.lost - lost);
        change(&mut self.counts, &bar.pattern, u32::wrapping_add);
        self.stock = stock;
    }

    /// Bars with the same longest piece come in one order only, the fullest first.
    fn in_order(&self, bar: &Filled) -> bool {
        let longest = |bar: &Filled| bar.pattern.iter().position(|count| *count > 0);
        let Some(before) = self.path.last() else {
            return true;
        };
        longest(before) != longest(bar)
            || (&before.pattern, bar.kind) >= (&bar.pattern, before.kind)
    }

    /// Whether a piece that stays over would go in.
    fn has_room(&self, bar: &Filled, left: i64) -> bool {
        let over = self
            .counts
            .iter()
            .zip(&bar.pattern)
            .map(|(all, cut)| all - cut);
        let mut over = over.zip(&self.problem.sizes);
        over.any(|(over, size)| over > 0 && *size <= left)
    }
}

fn change(counts: &mut [u32], pattern: &[u32], by: fn(u32, u32) -> u32) {
    for (count, cut) in counts.iter_mut().zip(pattern) {
        *count = by(*count, *cut);
    }
}

/// What is lost at the least by a plan of such a cost: the pieces with their cuts, and one cut more
/// where bars that are all alike are longer than they must be.
pub(super) fn least_lost(problem: &Problem, plan: &Plan) -> i64 {
    let pieces = problem.taken(&problem.counts);
    let alike = problem
        .kinds
        .windows(2)
        .all(|two| two[0].room == two[1].room);
    if !alike {
        return pieces;
    }
    pieces + (plan.rank.used - pieces).min(problem.kerf)
}
