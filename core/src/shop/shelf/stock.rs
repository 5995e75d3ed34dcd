//! The stock that a pair is sought for, as a smith writes it.

use thiserror::Error;

use crate::asked::{
    AngleHeld, BoltHeld, Lie, Range, StockError, Units, Work, parse_work_in, says_held, says_lie,
};
use crate::units::{Length, SizeError};

/// Why a text names no stock that could be held. The message says how to mend it.
#[derive(Debug, Clone, PartialEq, Error)]
pub enum SoughtError {
    /// There is no size to be read, and so no shape behind it either.
    #[error("{0}, and its shape, such as 5/8 hex or 3/8 x 1 flat")]
    Size(SizeError),
    /// The shape is missing or unknown.
    #[error(transparent)]
    Shape(StockError),
    /// No tongs hold such stock.
    #[error("{size} is outside {least} to {most}: ask for stock that tongs hold")]
    Outside {
        /// What was asked for.
        size: Length,
        /// The least that is reckoned with, as the smith reads it.
        least: String,
        /// The most.
        most: String,
    },
}

impl From<StockError> for SoughtError {
    fn from(error: StockError) -> Self {
        match error {
            StockError::Size(error) => Self::Size(error),
            StockError::Shape(..)
            | StockError::Word { .. }
            | StockError::NoSuch { .. }
            | StockError::Sizes { .. } => Self::Shape(error),
        }
    }
}

/// Stock to be held. Bars with corners may lie either way in the jaws, and bolts and angles be held
/// by either part, unless it is said how.
#[derive(Debug, Clone, PartialEq)]
pub struct Stock {
    /// The ways in which it may lie, at least one.
    pub ways: Vec<Work>,
}

impl Stock {
    /// Reads `5/8 hex`, `3/8 x 1 flat`, `12 mm round`, `1/2 in square on its corners`; a number
    /// without a unit is in `units`.
    ///
    /// # Errors
    /// When size or shape cannot be read, or the size is outside what is reckoned
    /// with.
    pub fn parse(text: &str, units: Units) -> Result<Self, SoughtError> {
        let work = parse_work_in(text, units.unit())?;
        let size = work.size();
        if !Range::STEEL.holds(size.mm()) {
            let [least, most] = Range::STEEL.ends_in(units.unit());
            return Err(SoughtError::Outside { size, least, most });
        }
        let held = if says_held(text) {
            vec![work]
        } else {
            parts(work)
        };
        let ways = if says_lie(text) {
            held
        } else {
            held.into_iter().flat_map(ways).collect()
        };
        Ok(Self { ways })
    }
}

/// The ways in which it may lie.
fn ways(work: Work) -> Vec<Work> {
    let laid = |lie| {
        let mut work = work;
        work.lay(lie);
        work
    };
    match work.lies() {
        None => vec![work],
        Some(_) => [Lie::OnFlats, Lie::OnCorners].map(laid).to_vec(),
    }
}

/// The parts by which it may be held.
fn parts(work: Work) -> Vec<Work> {
    let bolt = |held| {
        let mut other = work;
        other.hold_bolt(held);
        other
    };
    let mut by_back = work;
    by_back.hold_angle(AngleHeld::ByBack);
    let others = [bolt(BoltHeld::BehindHead), bolt(BoltHeld::ByShank), by_back];
    let others = others.into_iter().filter(|other| *other != work);
    std::iter::once(work).chain(others).collect()
}
