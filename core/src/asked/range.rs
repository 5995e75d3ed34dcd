use crate::units::{Length, Unit};

/// What a value may be, ends included.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Range {
    /// Least value.
    pub least: f64,
    /// Greatest value.
    pub most: f64,
}

impl Range {
    /// No limits: choices have none.
    pub const ANY: Self = Self::new(f64::MIN, f64::MAX);

    /// A thickness or a width of steel, mm: from foil that cannot be forged to anchor chain.
    pub const STEEL: Self = STEEL;

    /// A length along the reins, mm.
    pub const REIN: Self = REIN;

    /// From `least` to `most`.
    pub const fn new(least: f64, most: f64) -> Self {
        Self { least, most }
    }

    /// Both ends of a range in mm, to be read in a unit: on the inside, with the unit, in inches as a rule shows
    /// them.
    pub fn ends_in(self, unit: Unit) -> [String; 2] {
        match unit {
            Unit::Inch | Unit::Foot => self.ends_in_inches(),
            Unit::Millimetre | Unit::Centimetre => {
                [self.least, self.most].map(|mm| format!("{mm} mm"))
            }
        }
    }

    fn ends_in_inches(self) -> [String; 2] {
        /// What a number of parts may be off a whole one by reckoning.
        const HAIR: f64 = 1e-6;
        let [least, most] = [self.least, self.most].map(|mm| (mm, parts_of_inch(mm)));
        let up = (per_inch(least) - HAIR).ceil() / least.1;
        let down = (per_inch(most) + HAIR).floor() / most.1;
        // Ends nearer to each other than a rule tells are told as they are.
        let ends = if up < down {
            [up, down].map(|inches| inches * Unit::Inch.mm())
        } else {
            [self.least, self.most]
        };
        ends.map(|mm| Length::from_mm(mm, Unit::Inch).to_string())
    }

    /// Whether a number is finite and inside.
    pub fn holds(self, number: f64) -> bool {
        number.is_finite() && (self.least..=self.most).contains(&number)
    }
}

/// Into how many parts an inch is divided where a limit of so many mm is told: the larger, the rounder.
fn parts_of_inch(mm: f64) -> f64 {
    match mm / Unit::Inch.mm() {
        inches if inches < 1.0 => 32.0,
        inches if inches < 10.0 => 8.0,
        _ => 2.0,
    }
}

/// A size of so many mm in parts of an inch.
fn per_inch((mm, parts): (f64, f64)) -> f64 {
    mm / Unit::Inch.mm() * parts
}

/// A thickness or a width of steel, mm: from foil that cannot be forged to anchor chain.
pub(crate) const STEEL: Range = Range::new(0.5, 200.0);
/// A detail that may be left out, mm.
pub(crate) const DETAIL: Range = Range::new(0.0, 100.0);
/// A length along the tongs, mm.
pub(crate) const RUN: Range = Range::new(2.0, 500.0);
/// A length along the reins, mm.
pub(crate) const REIN: Range = Range::new(20.0, 2000.0);
/// A stretch of bar or rein that there may be none of, mm.
pub(crate) const STRETCH: Range = Range::new(0.0, 1000.0);
/// A gap between hands or a bow, mm.
pub(crate) const SPAN: Range = Range::new(0.0, 400.0);
/// The included angle of a groove, degrees.
pub(crate) const INCLUDED: Range = Range::new(40.0, 160.0);
/// How far a rein's end is bent, degrees.
pub(crate) const CLIP: Range = Range::new(5.0, 120.0);
/// Inside radius of a rolled end, mm.
pub(crate) const CURL: Range = Range::new(2.0, 100.0);
/// A loss, per cent.
pub(crate) const LOSS: Range = Range::new(0.0, 40.0);
/// Heats for one half.
pub(crate) const HEATS: Range = Range::new(0.0, 100.0);
