//! The pieces that are worth most in one bar.

use super::problem::Problem;
use super::purse::Purse;

/// What fills a bar best.
pub(super) struct Best {
    /// How many of each size.
    pub(super) pattern: Vec<u32>,
    /// What they are worth.
    pub(super) value: i64,
    /// What no filling is worth more than: the same where the search came to its end.
    pub(super) bound: i64,
}

/// The pieces of most value in some room, at most so many of each size, by branch and bound: the
/// densest first, and what is left of the room as if it could be filled with the next.
pub(super) fn fill(
    problem: &Problem,
    (values, counts): (&[i64], &[u32]),
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
