//! A sound pair to begin with; or why a bar gives none, and which bar that exists does.

use std::fmt;

use super::Answers;
use crate::asked::{Bar, Range, Stock, Work};
use crate::finding::{Finding, Kind, Severity};
use crate::tongs::document::Document;
use crate::tongs::jaw::sketch::{KeptJaw, Outgrown};
use crate::tongs::jaw::{JawKind, suited_heel};
use crate::units::{Length, MM_PER_INCH, MM_PER_SIXTEENTH, Unit};

/// Bar with a side under this is wire to a smith, mm: half of it holds no rivet, and a hand bends
/// what is left (common practice, no source).
const LEAST_SIDE_MM: f64 = 7.0;

/// Bar with a side over this is a forging of its own, mm: no hand holds a pair from it, and
/// nothing of one may be so thick.
const MOST_SIDE_MM: f64 = Range::STEEL.most;

/// Why a bar gives no sound pair.
#[derive(Debug, Clone, PartialEq)]
pub struct NoStart {
    /// The bar that was asked for.
    pub bar: Bar,
    /// What the pair from it would suffer from, in a sentence without a period.
    pub why: String,
    /// The bar that does: the nearest to it in size.
    pub instead: Option<Bar>,
}

impl NoStart {
    /// Why, and which bar does, without the name of the bar.
    pub fn reason(&self) -> String {
        let instead = self.instead.iter();
        let instead = instead.map(|other| format!("; {} does", other.stock.words()));
        self.why.clone() + &instead.collect::<String>()
    }
}

impl fmt::Display for NoStart {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let (bar, reason) = (self.bar.stock.words(), self.reason());
        write!(f, "{bar} gives no sound pair: {reason}")?;
        match self.instead {
            Some(_) => Ok(()),
            None => f.write_str("; take a stouter one"),
        }
    }
}

/// A starting pair in which nothing is to be mended, under the ordinary and the strong squeeze.
/// Where no bar would do, it is the jaw that does not suit the work: then the pair is begun as it
/// is, and its findings say so.
///
/// # Errors
/// When this bar gives no such pair and another does: why, and which.
///
/// ```
/// use reinwright_core::asked::{parse_bar, parse_work};
/// use reinwright_core::{shop::start, tongs::jaw::JawKind};
/// let work = parse_work("5/8 in hexagon on corners").unwrap();
/// let slight = start(JawKind::Bolt, work, parse_bar("3/8 in square").unwrap());
/// assert!(slight.unwrap_err().to_string().ends_with("square does"));
/// ```
pub fn start(jaw: JawKind, work: Work, bar: Bar) -> Result<Document, Box<NoStart>> {
    let why = match sound(jaw, work, bar) {
        Ok(pair) => return Ok(pair),
        Err(why) => why,
    };
    let mut others = usual_bars(&bar).into_iter();
    let instead = others.find(|other| sound(jaw, work, *other).is_ok());
    if instead.is_none() && !is_slight(&bar) && !is_stout(&bar) {
        return Ok(Document::starting(jaw, work, bar));
    }
    Err(Box::new(NoStart { bar, why, instead }))
}

/// The same pair; where the bar gives no sound one, as near to it as the bar comes.
pub fn start_anyway(jaw: JawKind, work: Work, bar: Bar) -> Document {
    sound(jaw, work, bar).unwrap_or_else(|_| Document::starting(jaw, work, bar))
}

/// The pair round a jaw of the smith's own, as near to a sound one as the bar comes.
///
/// # Errors
/// When the jaw does not grow to this work.
pub fn start_own(kept: &KeptJaw, work: Work, bar: Bar) -> Result<Document, Outgrown> {
    let mut jaw = kept.suited(&work, bar.stock.size())?;
    jaw.heel = suited_heel(&jaw.plain_form(), &work, &bar);
    let pair = Document::starting_with(jaw, work, bar);
    Ok(mended(pair.clone()).unwrap_or(pair))
}

fn is_slight(bar: &Bar) -> bool {
    bar.stock.equal_square_mm() < LEAST_SIDE_MM
}

/// Bar whose pair would have sizes that nothing may have.
fn is_stout(bar: &Bar) -> bool {
    bar.stock.wide_mm() > MOST_SIDE_MM
}

/// Why bar is too stout for any pair, in a sentence without a period; `None` for bar that is not.
pub fn too_stout(bar: &Bar) -> Option<String> {
    is_stout(bar).then(|| {
        let held = Range::new(0.0, MOST_SIDE_MM);
        let [_, most] = held.ends_in(bar.stock.size().unit());
        format!("no hand holds tongs from bar over {most} across")
    })
}

/// The pair in one bar, or what is wrong with it.
fn sound(jaw: JawKind, work: Work, bar: Bar) -> Result<Document, String> {
    if is_slight(&bar) {
        return Err(
            "bar so slight leaves no wall round a rivet, and a hand bends its reins".to_owned(),
        );
    }
    if let Some(why) = too_stout(&bar) {
        return Err(why);
    }
    mended(Document::starting(jaw, work, bar))
}

/// A pair with a shallower neck or shorter reins where that mends it, or what is wrong with it.
fn mended(mut pair: Document) -> Result<Document, String> {
    /// Rounds in which a pair is mended; most need one or two.
    const ROUNDS: u32 = 6;
    let mut first = None;
    for _ in 0..ROUNDS {
        let answers = Answers::to(&pair);
        let mut found = answers.findings.iter();
        let mends = |finding: &&Finding| finding.severity >= Severity::Mend && is_of_pair(finding);
        let Some(worst) = found.find(mends) else {
            return Ok(pair);
        };
        let why = first.get_or_insert_with(|| worst.message.clone());
        match (worst.kind, worst.held) {
            (Kind::NeckHumped, Some(held)) => {
                let depth = less(pair.neck.depth, held.value - held.limit);
                if depth.mm() < Range::STEEL.least {
                    return Err(why.clone());
                }
                pair.neck.depth = depth;
            }
            _ => pair.rein.length = shorter(&pair, &answers).ok_or_else(|| why.clone())?,
        }
    }
    Err(first.unwrap_or_default())
}

/// Whether a finding is of the pair, so that other sizes or another bar mend it. Work that the style
/// is not for wants another style: the pair is begun, and says so.
fn is_of_pair(finding: &Finding) -> bool {
    !matches!(finding.kind, Kind::WorkCanFlyOut | Kind::WorkHeldBadly)
}

/// A size less by so many mm at the least, in a smith's steps.
fn less(size: Length, by: f64) -> Length {
    let step = match size.unit() {
        Unit::Inch | Unit::Foot => MM_PER_SIXTEENTH,
        Unit::Millimetre | Unit::Centimetre => 0.5,
    };
    Length::from_mm(size.mm() - (by / step).ceil() * step, size.unit())
}

/// Reins so short that a strong hand no longer bends the pair, if they are too long for that and
/// are still a lever then.
fn shorter(pair: &Document, answers: &Answers) -> Option<Length> {
    /// A smaller leverage is no help to a hand (judgement: the trade asks for about three).
    const LEAST_LEVERAGE: f64 = 2.5;
    let strength = &answers.strength;
    let used = strength.worst_half().worst().use_per_n() * strength.load.strong_n;
    if used <= 1.0 {
        return None;
    }
    let length = pair.rein.length;
    let step = match length.unit() {
        Unit::Inch | Unit::Foot => MM_PER_INCH / 2.0,
        Unit::Millimetre | Unit::Centimetre => 10.0,
    };
    let press = &answers.fit.press;
    // The moment is as the arm.
    let less = ((press.hand_mm * (1.0 - 1.0 / used)) / step).ceil() * step;
    let leverage = (press.hand_mm - less) / press.grip_mm;
    // Of a heavy bar the shoulder alone is longer than the arm that its pair would bear.
    let left = length.mm() - less;
    let is_rein = leverage >= LEAST_LEVERAGE && left >= Range::REIN.least;
    is_rein.then(|| Length::from_mm(left, length.unit()))
}

/// The bars that exist, in the unit of a bar and in its steel: those of its shape first, the
/// nearest to it in area first.
pub(super) fn usual_bars(bar: &Bar) -> Vec<Bar> {
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
