//! Plans made bar after bar, each filled as well as it can be.

use super::knapsack;
use super::problem::{Filled, Plan, Problem, take, there_is};
use super::purse::Purse;

/// Which bar is taken next.
#[derive(Debug, Clone, Copy)]
pub(super) enum Next {
    /// The shortest that has room for the longest piece.
    Shortest,
    /// The longest.
    Longest,
    /// The one that is filled with the least left.
    Fullest,
}

/// How a bar is filled.
#[derive(Debug, Clone, Copy)]
pub(super) enum Filling {
    /// The longest piece, then what fills the rest best.
    Best,
    /// Each time the longest piece that fits.
    LongestFirst,
}

pub(super) const WAYS: [(Next, Filling); 6] = [
    (Next::Shortest, Filling::Best),
    (Next::Shortest, Filling::LongestFirst),
    (Next::Longest, Filling::Best),
    (Next::Longest, Filling::LongestFirst),
    (Next::Fullest, Filling::Best),
    (Next::Fullest, Filling::LongestFirst),
];

/// Steps for filling one bar: enough to fill it to a hair.
const A_BAR: u64 = 2_000;

/// Goes on from bars that are cut already until every piece has one.
pub(super) fn go_on(
    problem: &Problem,
    begun: &[Filled],
    (next, filling): (Next, Filling),
    purse: &mut Purse<'_>,
) -> Plan {
    let mut bars = begun.to_vec();
    let mut counts = problem.counts.clone();
    let mut stock = problem.stock();
    for bar in begun {
        off(&mut counts, &bar.pattern);
        take(&mut stock, bar.kind);
    }
    while let Some(first) = counts.iter().position(|count| *count > 0) {
        let bar = bar(problem, (&counts, first), &stock, (next, filling), purse);
        off(&mut counts, &bar.pattern);
        take(&mut stock, bar.kind);
        bars.push(bar);
    }
    problem.plan(bars)
}

/// Takes pieces off those that are wanted.
pub(super) fn off(counts: &mut [u32], pattern: &[u32]) {
    for (count, cut) in counts.iter_mut().zip(pattern) {
        *count = count.saturating_sub(*cut);
    }
}

fn bar(
    problem: &Problem,
    (counts, first): (&[u32], usize),
    stock: &[Option<u32>],
    (next, filling): (Next, Filling),
    purse: &mut Purse<'_>,
) -> Filled {
    let kinds = 0..problem.kinds.len();
    let takes =
        |kind: &usize| there_is(stock, *kind) && problem.kinds[*kind].room >= problem.sizes[first];
    let mut fillings = kinds.filter(takes).map(|kind| Filled {
        kind,
        pattern: filled(
            problem,
            (counts, first),
            problem.kinds[kind].room,
            filling,
            purse,
        ),
    });
    let left = |bar: &Filled| problem.kinds[bar.kind].room - problem.taken(&bar.pattern);
    let room = |bar: &Filled| problem.kinds[bar.kind].room;
    let key = |bar: &Filled| {
        let taken = problem.taken(&bar.pattern).max(1);
        // What is had for nothing goes first; of what is bought, what costs least for its pieces.
        let dear = i128::from(problem.kinds[bar.kind].cost - 1) * 1_000_000 / i128::from(taken);
        match next {
            Next::Shortest => (dear, room(bar)),
            Next::Longest => (dear, -room(bar)),
            Next::Fullest => (dear, left(bar)),
        }
    };
    let first = fillings
        .next()
        .expect("one kind has as many as are wanted, with room for all");
    fillings.fold(
        first,
        |best, bar| if key(&bar) < key(&best) { bar } else { best },
    )
}

fn filled(
    problem: &Problem,
    (counts, first): (&[u32], usize),
    room: i64,
    filling: Filling,
    purse: &mut Purse<'_>,
) -> Vec<u32> {
    let mut left = room - problem.sizes[first];
    let mut rest = counts.to_vec();
    rest[first] -= 1;
    let mut pattern = match filling {
        Filling::Best => {
            let given = (&problem.sizes[..], &rest[..]);
            purse.apart(A_BAR, |purse| {
                knapsack::branch(problem, given, left, purse).pattern
            })
        }
        Filling::LongestFirst => {
            let mut pattern = vec![0; rest.len()];
            for size in first..rest.len() {
                pattern[size] = problem.fit(size, left, rest[size]);
                left -= i64::from(pattern[size]) * problem.sizes[size];
            }
            pattern
        }
    };
    pattern[first] += 1;
    pattern
}

/// Fills the shortest ends by moving pieces out of one bar, so that its end becomes one that is
/// worth keeping: pieces go where they fit, or change places with shorter ones.
pub(super) fn gathered(problem: &Problem, plan: &Plan) -> Plan {
    let mut best = plan.clone();
    for from in 0..plan.bars.len() {
        let tried = emptied(problem, plan, from);
        if tried.rank < best.rank {
            best = tried;
        }
    }
    best
}

/// The plan with as much as may be moved out of one bar.
fn emptied(problem: &Problem, plan: &Plan, from: usize) -> Plan {
    let mut bars = plan.bars.clone();
    let mut left: Vec<i64> = bars
        .iter()
        .map(|bar| problem.kinds[bar.kind].room - problem.taken(&bar.pattern))
        .collect();
    while let Some((to, out, back)) = a_move(problem, &bars, &left, from) {
        let change = problem.sizes[out] - back.map_or(0, |back| problem.sizes[back]);
        bars[from].pattern[out] -= 1;
        bars[to].pattern[out] += 1;
        if let Some(back) = back {
            bars[to].pattern[back] -= 1;
            bars[from].pattern[back] += 1;
        }
        left[from] += change;
        left[to] -= change;
    }
    bars.retain(|bar| bar.pattern.iter().any(|count| *count > 0));
    problem.plan(bars)
}

/// The bar that a piece goes to, its size, and the size that comes back for it.
type Move = (usize, usize, Option<usize>);

/// Where a piece of a bar may go, for a shorter one or for none: the move that frees most.
fn a_move(problem: &Problem, bars: &[Filled], left: &[i64], from: usize) -> Option<Move> {
    let mut best: Option<(i64, Move)> = None;
    let has = |bar: usize, size: usize| bars[bar].pattern[size] > 0;
    for out in (0..problem.sizes.len()).filter(|size| has(from, *size)) {
        for to in (0..bars.len()).filter(|to| *to != from) {
            let shorter = (out + 1..problem.sizes.len()).filter(|back| has(to, *back));
            for back in shorter.map(Some).chain([None]) {
                let frees = problem.sizes[out] - back.map_or(0, |back| problem.sizes[back]);
                if frees <= left[to] && best.is_none_or(|(most, _)| frees > most) {
                    best = Some((frees, (to, out, back)));
                }
            }
        }
    }
    best.map(|(_, found)| found)
}
