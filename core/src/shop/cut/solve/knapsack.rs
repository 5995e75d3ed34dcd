//! The pieces that are worth most in one bar.

use super::problem::Problem;
use super::purse::Purse;

/// What fills a bar best.
pub(super) struct Best {
    /// How many of each size.
    pub(super) pattern: Vec<u32>,
    /// What they are worth.
    pub(super) value: i64,
    /// What no filling is worth more than: the same where that is known.
    pub(super) bound: i64,
}

/// Steps of branch and bound before the table is made: most fillings are found sooner.
const BRANCHING: u64 = 2_000;

/// The most rows of the table.
const MOST_ROWS: i64 = 8_000;

/// Cells of the table that take as long as a step of the search.
const CELLS_A_STEP: u64 = 8;

/// The pieces of most value in some room, at most so many of each size, by branch and bound; where
/// that does not come to its end, by a table of what any room is worth. The table is not made once
/// a filling worth more than `enough` is found.
pub(super) fn fill(
    problem: &Problem,
    (values, counts): Given<'_>,
    (room, enough): (i64, i64),
    purse: &mut Purse<'_>,
) -> Best {
    let branched = purse.apart(BRANCHING, |purse| {
        branch(problem, (values, counts), room, purse)
    });
    if branched.value == branched.bound || branched.value > enough {
        return branched;
    }
    let table = Table::new(problem, (values, counts), room);
    if !purse.spend(table.cells() / CELLS_A_STEP) {
        return branched;
    }
    table.best(branched)
}

/// What each piece is worth, and how many there are.
type Given<'a> = (&'a [i64], &'a [u32]);

/// Branch and bound: the densest first, and what is left of the room as if it could be filled with
/// the next. It ends with the purse.
pub(super) fn branch(
    problem: &Problem,
    (values, counts): Given<'_>,
    room: i64,
    purse: &mut Purse<'_>,
) -> Best {
    let density = |size: usize| density(values[size], problem.sizes[size]);
    let fits =
        |size: &usize| values[*size] > 0 && counts[*size] > 0 && problem.sizes[*size] <= room;
    let mut order: Vec<usize> = (0..values.len()).filter(fits).collect();
    order.sort_by(|a, b| density(*b).total_cmp(&density(*a)).then(a.cmp(b)));
    let none = vec![0; values.len()];
    let mut search = Search {
        problem,
        given: (values, counts),
        order,
        now: none.clone(),
        best: (0, none),
        purse,
    };
    let bound = search.bound(0, room);
    search.go(0, room, 0);
    let (value, pattern) = search.best;
    let bound = if search.purse.is_empty() {
        bound
    } else {
        value
    };
    Best {
        pattern,
        value,
        bound,
    }
}

/// A table of what any room is worth, in steps so wide that it stays small. Sizes and room are
/// rounded down to them: what fits still does, so that the value of the table is a bound; where all
/// are whole steps it is reached.
struct Table<'a> {
    values: &'a [i64],
    rows: usize,
    exact: bool,
    /// So many of a size taken together, 1, 2, 4, ...: any count is a sum of them.
    bundles: Vec<Bundle>,
}

struct Bundle {
    size: usize,
    count: u32,
    /// How many steps it takes.
    rows: usize,
}

impl<'a> Table<'a> {
    fn new(problem: &Problem, (values, counts): Given<'a>, room: i64) -> Self {
        let common = problem.sizes.iter().copied().fold(0, common);
        let step = common.max(room / MOST_ROWS).max(1);
        let rows = |length: i64| usize::try_from(length / step).unwrap_or(0);
        let mut bundles = Vec::new();
        for (size, value) in values.iter().enumerate().filter(|(_, value)| **value > 0) {
            let mut left = problem.fit(size, room, counts[size]);
            let mut count = 1;
            while left > 0 && *value > 0 {
                count = left.min(count);
                bundles.push(Bundle {
                    size,
                    count,
                    rows: rows(problem.sizes[size]) * usize::try_from(count).unwrap_or(0),
                });
                left -= count;
                count *= 2;
            }
        }
        Self {
            values,
            rows: rows(room) + 1,
            exact: step == common,
            bundles,
        }
    }

    fn cells(&self) -> u64 {
        (self.rows * self.bundles.len()) as u64
    }

    /// Fills the table: the best of what was found and of what it gives.
    fn best(&self, found: Best) -> Best {
        let mut worth = vec![0_i64; self.rows];
        let mut taken = vec![false; self.rows * self.bundles.len()];
        for (bundle, taken) in self.bundles.iter().zip(taken.chunks_mut(self.rows)) {
            let value = self.values[bundle.size] * i64::from(bundle.count);
            for row in (bundle.rows..self.rows).rev() {
                let with = worth[row - bundle.rows] + value;
                if with > worth[row] {
                    worth[row] = with;
                    taken[row] = true;
                }
            }
        }
        let value = worth[self.rows - 1];
        let bound = found.bound.min(value);
        if !self.exact || value <= found.value {
            return Best { bound, ..found };
        }
        Best {
            pattern: self.pattern(&taken),
            value,
            bound,
        }
    }

    fn pattern(&self, taken: &[bool]) -> Vec<u32> {
        let mut pattern = vec![0; self.values.len()];
        let mut row = self.rows - 1;
        let bundles = self.bundles.iter().zip(taken.chunks(self.rows));
        for (bundle, taken) in bundles.rev() {
            if taken[row] {
                pattern[bundle.size] += bundle.count;
                row -= bundle.rows;
            }
        }
        pattern
    }
}

fn common(a: i64, b: i64) -> i64 {
    if b == 0 { a } else { common(b, a % b) }
}

/// Only for the order of the search: nothing is proven with it.
#[allow(clippy::cast_precision_loss, reason = "the order may be off by a hair")]
fn density(value: i64, size: i64) -> f64 {
    value as f64 / size as f64
}

struct Search<'a, 'p> {
    problem: &'a Problem,
    /// Values and counts.
    given: (&'a [i64], &'a [u32]),
    order: Vec<usize>,
    now: Vec<u32>,
    best: (i64, Vec<u32>),
    purse: &'a mut Purse<'p>,
}

impl Search<'_, '_> {
    /// No filling of the room with what comes from a place on is worth more.
    fn bound(&self, at: usize, room: i64) -> i64 {
        let Some(&size) = self.order.get(at) else {
            return 0;
        };
        let most = i128::from(room) * i128::from(self.given.0[size])
            / i128::from(self.problem.sizes[size]);
        i64::try_from(most).unwrap_or(i64::MAX)
    }

    fn go(&mut self, at: usize, room: i64, value: i64) {
        if value > self.best.0 {
            self.best = (value, self.now.clone());
        }
        if value.saturating_add(self.bound(at, room)) <= self.best.0 || !self.purse.spend(1) {
            return;
        }
        let size = self.order[at];
        let most = self.problem.fit(size, room, self.given.1[size]);
        for count in (0..=most).rev() {
            self.now[size] = count;
            let taken = i64::from(count);
            let (room, value) = (
                room - taken * self.problem.sizes[size],
                value + taken * self.given.0[size],
            );
            self.go(at + 1, room, value);
        }
        self.now[size] = 0;
    }
}
