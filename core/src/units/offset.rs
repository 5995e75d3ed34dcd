use std::fmt;
use std::str::FromStr;

use super::{Length, SizeError, Unit};

/// A length to one side or the other of a line: it may be below zero.
///
/// ```
/// use reinwright_core::units::Offset;
/// let lug: Offset = "-3/8 in".parse()?;
/// assert_eq!(lug.mm(), -9.525);
/// assert_eq!(lug.to_string(), "-3/8 in");
/// # Ok::<(), reinwright_core::units::SizeError>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Offset {
    length: Length,
    below: bool,
}

impl Offset {
    /// On the line.
    pub const ZERO: Self = Self {
        length: Length::ZERO,
        below: false,
    };

    /// So many mm, every digit kept, written in `unit` by its nearest number.
    pub fn exact(mm: f64, unit: Unit) -> Self {
        let length = match unit {
            Unit::Inch | Unit::Foot => Length::from_mm(mm.abs(), unit),
            Unit::Millimetre | Unit::Centimetre => Length::decimal(mm.abs(), Unit::Millimetre),
        };
        // A number of another unit is kept only if it is the very same size.
        let near = (length.mm() - mm.abs()).abs() < 1e-9;
        let plain = Length::decimal(mm.abs(), Unit::Millimetre);
        Self::new(if near { length } else { plain }, mm)
    }

    /// So many mm, rounded to parts of a millimetre or an inch as [`Length::from_mm`] does.
    pub fn from_mm(mm: f64, unit: Unit) -> Self {
        Self::new(Length::from_mm(mm.abs(), unit), mm)
    }

    fn new(length: Length, sign: f64) -> Self {
        Self {
            length,
            below: sign < 0.0 && length.mm() > 0.0,
        }
    }

    /// Reads a size that may have a minus before it; without a unit it is in `default`.
    ///
    /// # Errors
    /// When the text is no size.
    pub fn parse(text: &str, default: Unit) -> Result<Self, SizeError> {
        read(text, |rest| Length::parse(rest, default))
    }

    /// In mm.
    pub fn mm(self) -> f64 {
        if self.below {
            -self.length.mm()
        } else {
            self.length.mm()
        }
    }

    /// The unit it was written in.
    pub fn unit(self) -> Unit {
        self.length.unit()
    }
}

fn read(
    text: &str,
    length: impl Fn(&str) -> Result<Length, SizeError>,
) -> Result<Offset, SizeError> {
    let text = text.trim().trim_start_matches(['~', '\u{b1}']).trim_start();
    match text.strip_prefix(['-', '\u{2212}']) {
        Some(rest) => Ok(Offset::new(length(rest.trim_start())?, -1.0)),
        None => Ok(Offset::new(length(text)?, 1.0)),
    }
}

impl fmt::Display for Offset {
    /// The text that reads back as the very same offset.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let minus = if self.below { "-" } else { "" };
        write!(f, "{minus}{}", self.length)
    }
}

impl FromStr for Offset {
    type Err = SizeError;

    /// Reads an offset that carries its unit.
    fn from_str(text: &str) -> Result<Self, SizeError> {
        read(text, str::parse)
    }
}
