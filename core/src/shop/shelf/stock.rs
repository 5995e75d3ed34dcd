//! The stock that a pair is sought for, as a smith writes it.

use crate::asked::{Lie, Range, StockError, Units, Work, parse_work_in, says_lie};

/// Stock to be held. Bars with corners may lie either way in the jaws unless it is said how.
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
    /// One sentence when size or shape cannot be read, or the size is outside what is reckoned
    /// with.
    pub fn parse(text: &str, units: Units) -> Result<Self, String> {
        let work = parse_work_in(text, units.unit()).map_err(|error| example(&error))?;
        let size = work.size();
        if !Range::STEEL.holds(size.mm()) {
            let show = units.show();
            let [least, most] = [Range::STEEL.least, Range::STEEL.most].map(|mm| show.text(mm));
            return Err(format!(
                "{size} is outside {least} to {most}: ask for stock that tongs hold"
            ));
        }
        let ways = if says_lie(text) {
            vec![work]
        } else {
            ways(work)
        };
        Ok(Self { ways })
    }
}

/// The error, with the way out where the text was no stock at all.
fn example(error: &StockError) -> String {
    match error {
        StockError::Size(_) => format!("{error}, and its shape, such as 5/8 hex or 3/8 x 1 flat"),
        StockError::Shape(..) => error.to_string(),
    }
}

fn ways(work: Work) -> Vec<Work> {
    let both = [Lie::OnFlats, Lie::OnCorners];
    match work {
        Work::Flat { .. } | Work::Round { .. } => vec![work],
        Work::Square { side, .. } => both.map(|lie| Work::Square { side, lie }).to_vec(),
        Work::Hexagon { flats, .. } => both.map(|lie| Work::Hexagon { flats, lie }).to_vec(),
        Work::Octagon { flats, .. } => both.map(|lie| Work::Octagon { flats, lie }).to_vec(),
    }
}
