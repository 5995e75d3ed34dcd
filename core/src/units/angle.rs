use std::fmt;
use std::str::FromStr;

use super::SizeError;

/// An angle, kept in the degrees it was typed in.
///
/// ```
/// use reinwright_core::units::Angle;
/// let v: Angle = "90 deg".parse()?;
/// assert_eq!(v.radians(), std::f64::consts::FRAC_PI_2);
/// # Ok::<(), reinwright_core::units::SizeError>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, PartialOrd)]
pub struct Angle {
    degrees: f64,
}

impl Angle {
    /// An angle of so many degrees; a number that is not finite becomes zero.
    pub fn degrees(degrees: f64) -> Self {
        Self {
            degrees: if degrees.is_finite() { degrees } else { 0.0 },
        }
    }

    /// In degrees.
    pub fn in_degrees(self) -> f64 {
        self.degrees
    }

    /// In radians.
    pub fn radians(self) -> f64 {
        self.degrees.to_radians()
    }
}

impl fmt::Display for Angle {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{} deg", self.degrees)
    }
}

impl FromStr for Angle {
    type Err = SizeError;

    /// Reads `90 deg`, `90°` or `90`.
    fn from_str(text: &str) -> Result<Self, SizeError> {
        let number = text
            .trim()
            .trim_end_matches("deg")
            .trim_end_matches('\u{b0}')
            .trim();
        let not = || SizeError::NotAnAngle(super::quoted(text, 40));
        let plain = number
            .chars()
            .all(|c| c.is_ascii_digit() || c == '.' || c == ',');
        match number.replace(',', ".").parse::<f64>() {
            Ok(degrees) if plain && degrees.is_finite() => Ok(Self { degrees }),
            _ => Err(not()),
        }
    }
}
