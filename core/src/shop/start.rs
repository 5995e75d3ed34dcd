//! A sound pair to begin with; or why a bar gives none, and which bar that exists does.

use std::fmt;

use super::Answers;
use crate::asked::{Bar, Stock, Work};
use crate::finding::{Finding, Severity};
use crate::tongs::document::Document;
use crate::units::{Length, MM_PER_INCH, Unit};

/// Bar with a side under this is wire to a smith, mm: half of it holds no rivet, and a hand bends
/// what is left (common practice, no source).
const LEAST_SIDE_MM: f64 = 7.0;

/// Why no pair is begun.
#[derive(Debug, Clone, PartialEq)]
pub enum NoStart {
    /// No jaw style has the name.
    NoStyle,
    /// The bar gives no sound pair.
    NotFrom {
        /// The bar that was asked for.
        bar: Bar,
        /// What the pair from it would suffer from, in a sentence without a period.
        why: String,
        /// The bar that does, the nearest to it in size.
        instead: Option<Bar>,
    },
}

impl fmt::Display for NoStart {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::NoStyle => f.write_str("no jaw style has this name"),
            Self::NotFrom { bar, why, instead } => {
                write!(f, "{} gives no sound pair: {why}; ", bar.stock.words())?;
                match instead {
                    Some(other) => write!(f, "{} does", other.stock.words()),
                    None => f.write_str("no usual bar does, so take another jaw"),
                }
            }
        }
    }
}

/// A starting pair in which nothing is to be mended, under the ordinary and the strong squeeze.
///
/// # Errors
/// When no style has the name, or the bar gives no such pair.
///
/// ```
/// use reinwright_core::asked::{parse_bar, parse_work};
/// use reinwright_core::shop::start;
/// let work = parse_work("5/8 in hexagon on corners").unwrap();
/// let slight = start("bolt", work, parse_bar("3/8 in square").unwrap());
/// assert!(slight.unwrap_err().to_string().ends_with("does"));
/// ```
pub fn start(jaw: &str, work: Work, bar: Bar) -> Result<Document, NoStart> {
    if Document::starting(jaw, work, bar).is_none() {
        return Err(NoStart::NoStyle);
    }
    sound(jaw, work, bar).map_err(|why| NoStart::NotFrom {
        bar,
        why,
        instead: usual_bars(&bar)
            .into_iter()
            .find(|other| sound(jaw, work, *other).is_ok()),
    })
}

/// The pair in one bar, or what is wrong with it.
fn sound(jaw: &str, work: Work, bar: Bar) -> Result<Document, String> {
    if bar.stock.equal_square_mm() < LEAST_SIDE_MM {
        return Err(
            "bar so slight leaves no wall round a rivet, and a hand bends its reins".to_owned(),
        );
    }
    let pair = Document::starting(jaw, work, bar).ok_or("no jaw style has this name")?;
    match to_mend(&pair) {
        None => Ok(pair),
        Some(finding) => shorter(pair).ok_or(finding.message),
    }
}

/// The worst that is to be mended in a pair, if anything is.
fn to_mend(pair: &Document) -> Option<Finding> {
    let found = Answers::to(pair).findings;
    found
        .into_iter()
        .find(|finding| finding.severity >= Severity::Mend)
}

/// The same pair with reins so short that a hand no longer bends it, as long as they are still a
/// lever.
fn shorter(mut pair: Document) -> Option<Document> {
    /// A smaller leverage is no help to a hand (judgement).
    const LEAST_LEVERAGE: f64 = 2.0;
    let step = match pair.bar.stock.size().unit() {
        Unit::Inch | Unit::Foot => MM_PER_INCH / 2.0,
        Unit::Millimetre | Unit::Centimetre => 10.0,
    };
    loop {
        let length = pair.rein.length;
        pair.rein.length = Length::from_mm(length.mm() - step, length.unit());
        let answers = Answers::to(&pair);
        if answers.fit.leverage() < LEAST_LEVERAGE || pair.rein.length.mm() < pair.rein.hand.mm() {
            return None;
        }
        if answers.worst().is_none_or(|worst| worst < Severity::Mend) {
            return Some(pair);
        }
    }
}

/// The bars that exist, in the unit of a bar and in its steel: those of its shape first, the
/// nearest to it in area first.
fn usual_bars(bar: &Bar) -> Vec<Bar> {
    let unit = bar.stock.size().unit();
    let mut all: Vec<Stock> = match unit {
        Unit::Inch | Unit::Foot => inch_bars(),
        Unit::Millimetre | Unit::Centimetre => metric_bars(),
    };
    let shape = std::mem::discriminant(&bar.stock);
    let off = |stock: &Stock| (stock.area_mm2() / bar.stock.area_mm2()).ln().abs();
    let other = |stock: &Stock| std::mem::discriminant(stock) != shape;
    all.sort_by(|a, b| {
        let shapes = other(a).cmp(&other(b));
        shapes.then(off(a).total_cmp(&off(b)))
    });
    let of_steel = |stock| Bar {
        stock,
        steel: bar.steel,
    };
    all.into_iter().map(of_steel).collect()
}

/// Squares and rounds of some sizes, and flats by thickness and width.
fn bars(sizes: &[Length], flats: &[(Length, Length)]) -> Vec<Stock> {
    let squares = sizes.iter().map(|&side| Stock::Square { side });
    let rounds = sizes.iter().map(|&diameter| Stock::Round { diameter });
    let flats = flats
        .iter()
        .map(|&(thickness, width)| Stock::Flat { thickness, width });
    squares.chain(rounds).chain(flats).collect()
}

/// What steel merchants keep in inches (common practice, no source).
fn inch_bars() -> Vec<Stock> {
    let eighths = |n: u32| Length::fraction(n, 8, Unit::Inch);
    bars(
        &[3, 4, 5, 6, 7, 8, 10].map(eighths),
        &[(2, 6), (3, 8), (4, 8)].map(|(thick, wide)| (eighths(thick), eighths(wide))),
    )
}

/// What steel merchants keep in millimetres (common practice, no source).
fn metric_bars() -> Vec<Stock> {
    let mm = |n: u32| Length::fraction(n, 1, Unit::Millimetre);
    bars(
        &[8, 10, 12, 14, 16, 18, 20, 22, 25, 30, 32].map(mm),
        &[(10, 20), (10, 25)].map(|(thick, wide)| (mm(thick), mm(wide))),
    )
}
