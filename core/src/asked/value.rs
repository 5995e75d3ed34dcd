//! One value as it stands: its text, how it is read, and how it is stepped.

use std::fmt;

use thiserror::Error;

use super::range::Range;
use crate::units::{Angle, Length, MM_PER_INCH, SizeError, Unit, quoted};

/// A value of a document, taken out of it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Value {
    /// A size.
    Length(Length),
    /// An angle.
    Angle(Angle),
    /// A percentage.
    Percent(f64),
    /// A count.
    Count(u32),
    /// One of a few named ways.
    Choice {
        /// The names, in order.
        ways: &'static [&'static str],
        /// Which one is chosen.
        chosen: usize,
    },
}

/// How finely a value is stepped.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Step {
    /// 1/16 in, 0.5 mm, 1 degree, 1 per cent, 1 piece.
    #[default]
    Usual,
    /// 1/64 in, 0.1 mm, a tenth of a degree or of a per cent.
    Fine,
}

/// Why a text cannot be taken as a value, in a sentence without a period; the old one stays.
#[derive(Debug, Clone, PartialEq, Eq, Error)]
pub enum ValueError {
    /// A size or an angle that cannot be read.
    #[error(transparent)]
    Size(#[from] SizeError),
    /// No percentage.
    #[error("\"{0}\" is not a percentage: write one such as 5 or 2.5 %")]
    NoPercent(String),
    /// No count.
    #[error("\"{0}\" is not a number of pieces: write one such as 5")]
    NoCount(String),
    /// None of the ways of a choice.
    #[error("\"{text}\" is none of its ways: choose {}", .ways.join(", "))]
    NoWay {
        /// What was written.
        text: String,
        /// The names, in order.
        ways: &'static [&'static str],
    },
    /// Read, but outside its limits.
    #[error("\"{text}\" is outside its limits: give a value from {least} to {most}")]
    Outside {
        /// What was written.
        text: String,
        /// The least that may stand there.
        least: String,
        /// The most that may stand there.
        most: String,
    },
}

/// So much of a text as a message can carry, in characters.
const SHOWN: usize = 40;

impl Step {
    /// Whole steps in an inch or a millimetre, whichever a size is counted in.
    fn in_one_of(self, unit: Unit) -> f64 {
        match (unit, self) {
            (Unit::Inch | Unit::Foot, Self::Usual) => 16.0,
            (Unit::Inch | Unit::Foot, Self::Fine) => 64.0,
            (Unit::Millimetre | Unit::Centimetre, Self::Usual) => 2.0,
            (Unit::Millimetre | Unit::Centimetre, Self::Fine) => 10.0,
        }
    }

    /// Whole steps in a degree or a per cent.
    fn in_one(self) -> f64 {
        match self {
            Self::Usual => 1.0,
            Self::Fine => 10.0,
        }
    }
}

impl fmt::Display for Value {
    /// The text that [`Value::read`] takes back.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Length(length) => length.fmt(f),
            Self::Angle(angle) => angle.fmt(f),
            Self::Percent(percent) => write!(f, "{percent} %"),
            Self::Count(count) => count.fmt(f),
            Self::Choice { ways, chosen } => f.write_str(ways.get(*chosen).unwrap_or(&"")),
        }
    }
}

impl Value {
    /// Its number in mm, degrees, per cent or pieces; a choice has none.
    pub fn number(self) -> Option<f64> {
        match self {
            Self::Length(length) => Some(length.mm()),
            Self::Angle(angle) => Some(angle.in_degrees()),
            Self::Percent(percent) => Some(percent),
            Self::Count(count) => Some(f64::from(count)),
            Self::Choice { .. } => None,
        }
    }

    /// The same kind of value with another number, as exact as it is given; a size is then in
    /// millimetres, a count is rounded, a choice stays.
    #[must_use]
    pub fn with_number(self, number: f64) -> Self {
        match self {
            Self::Length(_) => Self::Length(Length::decimal(number, Unit::Millimetre)),
            Self::Angle(_) => Self::Angle(Angle::degrees(number)),
            Self::Percent(_) => Self::Percent(number),
            Self::Count(_) => Self::Count(pieces(number)),
            Self::Choice { .. } => self,
        }
    }

    /// The unit that a size was written in.
    pub fn unit(self) -> Option<Unit> {
        match self {
            Self::Length(length) => Some(length.unit()),
            Self::Angle(_) | Self::Percent(_) | Self::Count(_) | Self::Choice { .. } => None,
        }
    }

    /// The names of its ways; only a choice has any.
    pub fn ways(self) -> &'static [&'static str] {
        match self {
            Self::Choice { ways, .. } => ways,
            Self::Length(_) | Self::Angle(_) | Self::Percent(_) | Self::Count(_) => &[],
        }
    }

    /// Reads a value of the same kind; a size without a unit is in `unit`.
    ///
    /// # Errors
    /// When the text is no such value.
    pub fn read(self, text: &str, unit: Unit) -> Result<Self, ValueError> {
        match self {
            Self::Length(_) => Ok(Self::Length(Length::parse(text, unit)?)),
            Self::Angle(_) => Ok(Self::Angle(text.parse()?)),
            Self::Percent(_) => read_percent(text).map(Self::Percent),
            Self::Count(_) => read_count(text).map(Self::Count),
            Self::Choice { ways, .. } => {
                read_way(text, ways).map(|chosen| Self::Choice { ways, chosen })
            }
        }
    }

    /// Both ends of its limits as text, those of a size in `unit`; a choice has none.
    pub fn ends(self, range: Range, unit: Unit) -> Option<[String; 2]> {
        let plain = |unit: &str| [range.least, range.most].map(|end| format!("{end}{unit}"));
        match self {
            Self::Length(_) => Some(range.ends_in(unit)),
            Self::Angle(_) => Some(plain(" deg")),
            Self::Percent(_) => Some(plain(" %")),
            Self::Count(_) => Some(plain("")),
            Self::Choice { .. } => None,
        }
    }

    /// Both ends of its limits as text, those of a size in its own unit; empty for a choice.
    pub(super) fn own_ends(self, range: Range) -> [String; 2] {
        let unit = self.unit().unwrap_or_default();
        self.ends(range, unit).unwrap_or_default()
    }

    /// Whether it is finite and inside its limits; a choice always is.
    pub fn is_inside(self, range: Range) -> bool {
        self.number().is_none_or(|number| range.holds(number))
    }

    /// The value if it is inside its limits.
    ///
    /// # Errors
    /// When it is not; `text` is what was written.
    pub fn inside(self, range: Range, text: &str) -> Result<Self, ValueError> {
        if self.is_inside(range) {
            return Ok(self);
        }
        let [least, most] = self.own_ends(range);
        Err(ValueError::Outside {
            text: quoted(text, SHOWN),
            least,
            most,
        })
    }

    /// The nearest value inside its limits, if it is not inside them itself; a size is then in
    /// millimetres.
    pub fn nearest_inside(self, range: Range) -> Option<Self> {
        let number = self.number().filter(|number| !range.holds(*number))?;
        let number = if number.is_finite() { number } else { 0.0 };
        Some(self.with_number(number.clamp(range.least, range.most)))
    }

    /// The size of a step in mm, degrees, per cent or pieces; a choice has none. A size is stepped
    /// in `unit`.
    pub fn step(self, step: Step, unit: Unit) -> Option<f64> {
        self.steps(step, unit).map(|steps| 1.0 / steps)
    }

    /// Whole steps in a millimetre, a degree, a per cent or a piece.
    fn steps(self, step: Step, unit: Unit) -> Option<f64> {
        match (self, unit) {
            (Self::Length(_), Unit::Inch | Unit::Foot) => Some(step.in_one_of(unit) / MM_PER_INCH),
            (Self::Length(_), Unit::Millimetre | Unit::Centimetre) => Some(step.in_one_of(unit)),
            (Self::Angle(_) | Self::Percent(_), _) => Some(step.in_one()),
            (Self::Count(_), _) => Some(1.0),
            (Self::Choice { .. }, _) => None,
        }
    }

    /// The value at the whole step nearest to a number, held to the whole steps inside its limits;
    /// a choice has no steps.
    pub fn at_step(self, number: f64, range: Range, (step, unit): (Step, Unit)) -> Option<Self> {
        /// What a number of steps may be off a whole one by reckoning.
        const HAIR: f64 = 1e-9;
        let steps = self.steps(step, unit)?;
        let least = (range.least * steps - HAIR).ceil();
        let most = (range.most * steps + HAIR).floor();
        let number = (number * steps).round().max(least).min(most) / steps;
        Some(match self {
            Self::Length(_) => Self::Length(Length::from_mm(number, unit)),
            Self::Angle(_) | Self::Percent(_) | Self::Count(_) | Self::Choice { .. } => {
                self.with_number(number)
            }
        })
    }
}

#[allow(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "a float becomes the nearest count there is, none at the least"
)]
fn pieces(number: f64) -> u32 {
    number.round() as u32
}

fn read_percent(text: &str) -> Result<f64, ValueError> {
    let digits = text.trim().trim_end_matches('%').trim().replace(',', ".");
    let plain = digits.chars().all(|c| c.is_ascii_digit() || c == '.');
    match digits.parse::<f64>() {
        Ok(percent) if plain && percent.is_finite() => Ok(percent),
        Ok(_) | Err(_) => Err(ValueError::NoPercent(quoted(text, SHOWN))),
    }
}

fn read_count(text: &str) -> Result<u32, ValueError> {
    let count = text.trim().parse();
    count.map_err(|_not| ValueError::NoCount(quoted(text, SHOWN)))
}

/// The place of a way; hyphens and spaces are the same.
fn read_way(text: &str, ways: &'static [&'static str]) -> Result<usize, ValueError> {
    let plain = |text: &str| text.trim().to_lowercase().replace('-', " ");
    let at = ways.iter().position(|way| plain(way) == plain(text));
    at.ok_or_else(|| ValueError::NoWay {
        text: quoted(text, SHOWN),
        ways,
    })
}
