use std::fmt;
use std::str::FromStr;

use super::SizeError;
use super::parse::parse_length;

/// Millimetres in an inch, exact by the international yard agreement of 1959.
pub const MM_PER_INCH: f64 = 25.4;
/// Millimetres in a sixteenth of an inch, what a smith measures to.
pub const MM_PER_SIXTEENTH: f64 = MM_PER_INCH / 16.0;
/// Millimetres in a sixty-fourth of an inch.
pub const MM_PER_64TH: f64 = MM_PER_INCH / 64.0;

/// A unit of length that a smith may write.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Unit {
    /// `in`, `"`.
    #[default]
    Inch,
    /// `ft`, `'`.
    Foot,
    /// `mm`.
    Millimetre,
    /// `cm`.
    Centimetre,
}

impl Unit {
    /// Millimetres in one of this unit.
    pub fn mm(self) -> f64 {
        match self {
            Self::Inch => MM_PER_INCH,
            Self::Foot => 12.0 * MM_PER_INCH,
            Self::Millimetre => 1.0,
            Self::Centimetre => 10.0,
        }
    }

    /// So many whole millimetres are so many of this unit: 25.4 itself has no exact binary form.
    fn exact_mm(self) -> (f64, f64) {
        match self {
            Self::Inch => (127.0, 5.0),
            Self::Foot => (12.0 * 127.0, 5.0),
            Self::Millimetre => (1.0, 1.0),
            Self::Centimetre => (10.0, 1.0),
        }
    }

    /// The sign that stands behind a number.
    pub fn sign(self) -> &'static str {
        match self {
            Self::Inch => "in",
            Self::Foot => "ft",
            Self::Millimetre => "mm",
            Self::Centimetre => "cm",
        }
    }
}

/// The number in a length, exactly as it was meant.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Amount {
    /// A whole number or a fraction in its lowest terms.
    Fraction {
        /// Numerator, never negative.
        over: u32,
        /// Denominator, never zero.
        under: u32,
    },
    /// A decimal number, finite and not negative.
    Decimal(f64),
}

/// A length with the unit it was typed in. Never negative, always finite.
///
/// ```
/// use reinwright_core::units::{Length, Unit};
/// let bar: Length = "3/4 in".parse()?;
/// assert_eq!(bar.mm(), 19.05);
/// assert_eq!(bar.to_string(), "3/4 in");
/// assert_eq!(Length::parse("1 1/2", Unit::Inch)?.mm(), 38.1);
/// # Ok::<(), reinwright_core::units::SizeError>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Length {
    amount: Amount,
    unit: Unit,
}

impl Length {
    /// No length at all.
    pub const ZERO: Self = Self {
        amount: Amount::Fraction { over: 0, under: 1 },
        unit: Unit::Millimetre,
    };

    /// `over / under` of a unit, in lowest terms.
    ///
    /// # Panics
    /// If `under` is zero.
    pub fn fraction(over: u32, under: u32, unit: Unit) -> Self {
        assert!(under > 0, "a fraction over zero is no length");
        let common = gcd(over, under);
        let amount = Amount::Fraction {
            over: over / common,
            under: under / common,
        };
        Self { amount, unit }
    }

    /// A decimal number of a unit; whole numbers become exact.
    ///
    /// Numbers that are negative or not finite become zero: no length carries them.
    pub fn decimal(number: f64, unit: Unit) -> Self {
        if !number.is_finite() || number <= 0.0 {
            return Self { unit, ..Self::ZERO };
        }
        match whole(number) {
            Some(over) => Self::fraction(over, 1, unit),
            None => Self {
                amount: Amount::Decimal(number),
                unit,
            },
        }
    }

    /// A length of so many millimetres, written in `unit`: to a micrometre, or to the nearest
    /// 1/128 in where that is the same to a micrometre.
    pub fn from_mm(mm: f64, unit: Unit) -> Self {
        const FINEST: f64 = 128.0;
        let number = mm / unit.mm();
        let parts = (number * FINEST).round();
        let exact = (parts / FINEST - number).abs() * unit.mm() < 5e-4;
        match (unit, whole(parts)) {
            (Unit::Inch | Unit::Foot, Some(over)) if exact => Self::fraction(over, 128, unit),
            _ => Self::decimal((number * 1e4).round() / 1e4, unit),
        }
    }

    /// A length of so many millimetres rounded to what a smith measures with: 1/16 in for inches,
    /// 0.5 mm for millimetres (1/32 in below 1/4 in).
    pub fn measured(mm: f64, unit: Unit) -> Self {
        match unit {
            Unit::Inch | Unit::Foot => {
                let parts = if mm < 6.35 { 32.0 } else { 16.0 };
                Self::from_mm(
                    (mm / MM_PER_INCH * parts).round() / parts * MM_PER_INCH,
                    Unit::Inch,
                )
            }
            Unit::Millimetre | Unit::Centimetre => Self::from_mm((mm * 2.0).round() / 2.0, unit),
        }
    }

    /// The largest length that a rule shows and that is no longer than so many millimetres: in 1/64 in, or in
    /// 0.5 mm; what is under one part is as long as it is.
    pub fn measured_under(mm: f64, unit: Unit) -> Self {
        /// What a number of parts may be off a whole one by reckoning.
        const HAIR: f64 = 1e-9;
        let (part_mm, unit) = match unit {
            Unit::Inch | Unit::Foot => (MM_PER_INCH / 64.0, Unit::Inch),
            Unit::Millimetre | Unit::Centimetre => (0.5, unit),
        };
        match (mm / part_mm + HAIR).floor() {
            parts if parts >= 1.0 => Self::from_mm(parts * part_mm, unit),
            _ => Self::from_mm(mm, unit),
        }
    }

    /// Reads a size such as `3/4 in`, `1 1/2"`, `19 mm`, `2 ft 3 in`; without a unit it is in
    /// `default`.
    ///
    /// # Errors
    /// When the text is no size, is negative, or is not finite.
    pub fn parse(text: &str, default: Unit) -> Result<Self, SizeError> {
        parse_length(text, Some(default))
    }

    /// This length in millimetres, the nearest number to it: 3/4 in is 19.05.
    pub fn mm(self) -> f64 {
        let (mm, units) = self.unit.exact_mm();
        match self.amount {
            Amount::Fraction { over, under } => f64::from(over) * mm / (f64::from(under) * units),
            Amount::Decimal(number) => number * mm / units,
        }
    }

    /// The number as it was written.
    pub fn amount(self) -> Amount {
        self.amount
    }

    /// The unit it was written in.
    pub fn unit(self) -> Unit {
        self.unit
    }
}

impl fmt::Display for Length {
    /// The text that reads back as the very same length.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let sign = self.unit.sign();
        match self.amount {
            Amount::Fraction { over, under: 1 } => write!(f, "{over} {sign}"),
            Amount::Fraction { over, under } if over > under => {
                write!(f, "{} {}/{under} {sign}", over / under, over % under)
            }
            Amount::Fraction { over, under } => write!(f, "{over}/{under} {sign}"),
            Amount::Decimal(number) => write!(f, "{number} {sign}"),
        }
    }
}

impl FromStr for Length {
    type Err = SizeError;

    /// Reads a size that carries its unit.
    fn from_str(text: &str) -> Result<Self, SizeError> {
        parse_length(text, None)
    }
}

pub(super) fn gcd(a: u32, b: u32) -> u32 {
    if b == 0 { a.max(1) } else { gcd(b, a % b) }
}

/// The whole number that `number` is, when it is one that a fraction can hold.
pub(super) fn whole(number: f64) -> Option<u32> {
    const LARGEST: f64 = 1e9;
    #[allow(
        clippy::cast_possible_truncation,
        clippy::cast_sign_loss,
        reason = "checked to be a whole number from 0 to 1e9"
    )]
    (number.fract() == 0.0 && (0.0..=LARGEST).contains(&number)).then_some(number as u32)
}
