//! The problem with parts of bars, by column generation (Gilmore and Gomory, 1961): a revised
//! simplex whose next column is the filling of a bar that is worth most at the prices so far. Its
//! prices give a bound that is proven again in whole numbers, whatever the simplex rounded.

use super::bound::Worth;
use super::knapsack;
use super::problem::{Filled, Problem};
use super::purse::Purse;

/// The most sizes for which this is tried; with more the simplex is slow, and pieces of so many
/// sizes fill bars well without it.
pub(super) const MOST_SIZES: usize = 160;

/// What rounding may leave of a reduced cost or a pivot.
const HAIR: f64 = 1e-9;

/// The least that a column must save, as part of its cost: less may be rounding.
const GAIN: f64 = 1e-7;

/// The solution.
pub(super) struct Relaxed {
    /// What the pieces are worth.
    pub(super) worth: Worth,
    /// How many bars of each filling.
    pub(super) bars: Vec<(Filled, f64)>,
}

#[derive(Clone)]
enum Column {
    Bar(Filled),
    /// A piece more than is wanted.
    Over(usize),
    /// A bar of a row's kind that is left.
    Spare(usize),
}

struct Simplex<'a> {
    problem: &'a Problem,
    /// The kinds of which there are only so many, a row each behind those of the sizes.
    scarce: Vec<usize>,
    basis: Vec<Column>,
    /// The inverse of the basis, row by row.
    inverse: Vec<Vec<f64>>,
    amounts: Vec<f64>,
    scale: f64,
}

/// Solves it; `None` when the purse was too small.
pub(super) fn relaxed(problem: &Problem, purse: &mut Purse<'_>) -> Option<Relaxed> {
    let mut simplex = Simplex::new(problem)?;
    loop {
        let prices = simplex.prices();
        let Some(column) = simplex.entering(&prices, purse) else {
            break;
        };
        let rows = simplex.basis.len() as u64;
        if !purse.spend(1 + rows * rows / 64) || !simplex.enter(column) {
            break;
        }
    }
    if purse.stopped() {
        return None;
    }
    let prices = simplex.prices();
    Some(Relaxed {
        worth: simplex.worth(&prices, purse)?,
        bars: simplex.bars(),
    })
}

impl<'a> Simplex<'a> {
    /// Begins with every piece in a bar of its own.
    fn new(problem: &'a Problem) -> Option<Self> {
        let kinds = 0..problem.kinds.len();
        let open = kinds
            .clone()
            .filter(|kind| problem.kinds[*kind].most.is_none())
            .max_by_key(|kind| problem.kinds[*kind].room)?;
        let scarce: Vec<usize> = kinds
            .filter(|kind| problem.kinds[*kind].most.is_some())
            .collect();
        let sizes = problem.sizes.len();
        let alone = |size: usize| {
            let mut pattern = vec![0; sizes];
            pattern[size] = 1;
            Column::Bar(Filled {
                kind: open,
                pattern,
            })
        };
        let mut basis: Vec<Column> = (0..sizes).map(alone).collect();
        basis.extend((0..scarce.len()).map(Column::Spare));
        let rows = basis.len();
        let unit = |row: usize| (0..rows).map(|at| f64::from(u8::from(at == row))).collect();
        let counts = problem.counts.iter().map(|count| f64::from(*count));
        let most = scarce
            .iter()
            .map(|kind| f64::from(problem.kinds[*kind].most.unwrap_or(0)));
        let dearest = problem.kinds.iter().map(|kind| kind.cost).max()?;
        Some(Self {
            amounts: counts.chain(most).collect(),
            inverse: (0..rows).map(unit).collect(),
            scale: scale(dearest),
            problem,
            scarce,
            basis,
        })
    }

    #[allow(clippy::cast_precision_loss, reason = "the bound is proven without it")]
    fn cost(&self, column: &Column) -> f64 {
        match column {
            Column::Bar(bar) => self.problem.kinds[bar.kind].cost as f64,
            Column::Over(_) | Column::Spare(_) => 0.0,
        }
    }

    fn prices(&self) -> Vec<f64> {
        let mut prices = vec![0.0; self.basis.len()];
        for (column, row) in self.basis.iter().zip(&self.inverse) {
            let cost = self.cost(column);
            if cost > 0.0 {
                for (price, part) in prices.iter_mut().zip(row) {
                    *price += cost * part;
                }
            }
        }
        prices
    }

    /// A column that would make it cheaper.
    fn entering(&self, prices: &[f64], purse: &mut Purse<'_>) -> Option<Column> {
        let sizes = self.problem.sizes.len();
        let (pieces, kinds) = prices.split_at(sizes);
        if let Some(over) = pieces.iter().position(|price| *price < -HAIR) {
            return Some(Column::Over(over));
        }
        if let Some(spare) = kinds.iter().position(|price| *price > HAIR) {
            return Some(Column::Spare(spare));
        }
        let values = self.values(pieces);
        let worth = |kind: usize| {
            let row = self.scarce.iter().position(|scarce| *scarce == kind);
            row.map_or(0.0, |row| kinds[row])
        };
        let given = (&values[..], &self.problem.counts[..]);
        let mut best: Option<(f64, Filled)> = None;
        for (kind, of) in self.problem.kinds.iter().enumerate() {
            if of.most == Some(0) {
                continue;
            }
            let least =
                self.cost_of_kind(kind) - worth(kind) + GAIN * (1.0 + self.cost_of_kind(kind));
            let enough = self.values(&[least])[0];
            let filled = knapsack::fill(self.problem, given, (of.room, enough), purse);
            let gain = self.cost_of(filled.value) - least;
            let pattern = filled.pattern;
            if gain > 0.0 && best.as_ref().is_none_or(|(most, _)| gain > *most) {
                best = Some((gain, Filled { kind, pattern }));
            }
        }
        best.map(|(_, filled)| Column::Bar(filled))
    }

    #[allow(clippy::cast_precision_loss, reason = "the bound is proven without it")]
    fn cost_of(&self, value: i64) -> f64 {
        value as f64 / self.scale
    }

    #[allow(clippy::cast_precision_loss, reason = "the bound is proven without it")]
    fn cost_of_kind(&self, kind: usize) -> f64 {
        self.problem.kinds[kind].cost as f64
    }

    /// Prices as whole numbers, never too high.
    #[allow(
        clippy::cast_possible_truncation,
        reason = "prices are no higher than the dearest bar, by which the scale was chosen"
    )]
    fn values(&self, prices: &[f64]) -> Vec<i64> {
        let value = |price: &f64| (price.max(0.0) * self.scale).floor() as i64;
        prices.iter().map(value).collect()
    }

    fn entries(&self, column: &Column) -> Vec<(usize, f64)> {
        let sizes = self.problem.sizes.len();
        match column {
            Column::Over(size) => vec![(*size, -1.0)],
            Column::Spare(row) => vec![(sizes + row, 1.0)],
            Column::Bar(bar) => {
                let pieces = bar.pattern.iter().enumerate();
                let pieces = pieces.filter(|(_, count)| **count > 0);
                let row = self.scarce.iter().position(|scarce| *scarce == bar.kind);
                pieces
                    .map(|(size, count)| (size, f64::from(*count)))
                    .chain(row.map(|row| (sizes + row, 1.0)))
                    .collect()
            }
        }
    }

    /// Takes a column into the basis; whether there was a row to pivot on.
    fn enter(&mut self, column: Column) -> bool {
        let entries = self.entries(&column);
        let along: Vec<f64> = self
            .inverse
            .iter()
            .map(|row| entries.iter().map(|(at, part)| row[*at] * part).sum())
            .collect();
        let ratio = |row: usize| self.amounts[row] / along[row];
        let pivot = (0..along.len())
            .filter(|row| along[*row] > 1e-7)
            .min_by(|a, b| ratio(*a).total_cmp(&ratio(*b)));
        let Some(pivot) = pivot else {
            return false;
        };
        let by = along[pivot];
        self.inverse[pivot].iter_mut().for_each(|part| *part /= by);
        self.amounts[pivot] /= by;
        let (row, amount) = (self.inverse[pivot].clone(), self.amounts[pivot]);
        for at in (0..along.len()).filter(|at| *at != pivot && along[*at] != 0.0) {
            let times = along[at];
            for (part, of) in self.inverse[at].iter_mut().zip(&row) {
                *part -= times * of;
            }
            self.amounts[at] = (self.amounts[at] - times * amount).max(0.0);
        }
        self.basis[pivot] = column;
        true
    }

    /// The prices as a bound, proven in whole numbers: no bar of which there are as many as are
    /// wanted holds more than its cost, and what the others hold above theirs is counted.
    fn worth(&self, prices: &[f64], purse: &mut Purse<'_>) -> Option<Worth> {
        let mut values = self.values(&prices[..self.problem.sizes.len()]);
        let scale = whole_scale(self.scale);
        for kind in self.problem.kinds.iter().filter(|kind| kind.most.is_none()) {
            let given = (&values[..], &self.problem.counts[..]);
            let most = knapsack::fill(self.problem, given, (kind.room, i64::MAX), purse).bound;
            let cost = kind.cost.checked_mul(scale)?;
            if most > cost {
                let less = |value: &i64| i128::from(*value) * i128::from(cost) / i128::from(most);
                values = values
                    .iter()
                    .map(|value| i64::try_from(less(value)).unwrap_or(0))
                    .collect();
            }
        }
        let mut above = Vec::with_capacity(self.problem.kinds.len());
        for kind in &self.problem.kinds {
            let given = (&values[..], &self.problem.counts[..]);
            above.push(if kind.most.is_some() {
                let most = knapsack::fill(self.problem, given, (kind.room, i64::MAX), purse).bound;
                (most - kind.cost.checked_mul(scale)?).max(0)
            } else {
                0
            });
        }
        Some(Worth {
            values,
            above,
            scale,
        })
    }

    fn bars(&self) -> Vec<(Filled, f64)> {
        let columns = self.basis.iter().zip(&self.amounts);
        columns
            .filter_map(|(column, amount)| match column {
                Column::Bar(bar) if *amount > 1e-6 => Some((bar.clone(), *amount)),
                Column::Bar(_) | Column::Over(_) | Column::Spare(_) => None,
            })
            .collect()
    }
}

/// Whole numbers to the cost of one, so many that rounding costs nothing, and so few that sums of
/// them stay far from the largest whole number.
#[allow(clippy::cast_precision_loss, reason = "it is chosen roughly")]
fn scale(dearest: i64) -> f64 {
    (1e12 / dearest.max(1) as f64).floor().clamp(1.0, 1e6)
}

#[allow(clippy::cast_possible_truncation, reason = "from 1 to 1e6")]
fn whole_scale(scale: f64) -> i64 {
    scale as i64
}
