use std::fmt;
use std::str::FromStr;

use thiserror::Error;

use super::show::fixed;

/// What a temperature is counted on.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Scale {
    /// °C.
    Celsius,
    /// °F: 1.8 to the °C, and 32 where water freezes (NIST SP 811, appendix B).
    Fahrenheit,
}

/// Degrees Fahrenheit in a degree Celsius, and where water freezes on it.
const FAHRENHEIT: (f64, f64) = (1.8, 32.0);

impl Scale {
    /// The sign that stands behind a number.
    pub fn sign(self) -> &'static str {
        match self {
            Self::Celsius => "\u{b0}C",
            Self::Fahrenheit => "\u{b0}F",
        }
    }

    /// So many °C on this scale.
    pub fn of_celsius(self, celsius: f64) -> f64 {
        match self {
            Self::Celsius => celsius,
            Self::Fahrenheit => celsius * FAHRENHEIT.0 + FAHRENHEIT.1,
        }
    }

    /// So many degrees of this scale in °C.
    pub fn to_celsius(self, degrees: f64) -> f64 {
        match self {
            Self::Celsius => degrees,
            Self::Fahrenheit => (degrees - FAHRENHEIT.1) / FAHRENHEIT.0,
        }
    }

    /// So many °C on this scale, whole, with its sign.
    pub fn text(self, celsius: f64) -> String {
        format!("{} {}", fixed(self.of_celsius(celsius), 0), self.sign())
    }
}

/// A temperature with the scale it was typed on.
///
/// ```
/// use reinwright_core::units::{Scale, Temperature};
/// let red: Temperature = "1112 F".parse()?;
/// assert_eq!(red.celsius(), 600.0);
/// assert_eq!(Temperature::parse("1112", Scale::Fahrenheit)?, red);
/// # Ok::<(), reinwright_core::units::TemperatureError>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Temperature {
    degrees: f64,
    scale: Scale,
}

/// Why a text is no temperature.
#[derive(Debug, Clone, PartialEq, Eq, Error)]
#[error("\"{0}\" is no temperature: write it as 600 C or 1100 F")]
pub struct TemperatureError(String);

impl Temperature {
    /// Reads `600 C`, `600 °C`, `1100 F`; without a scale it is on `default`.
    ///
    /// # Errors
    /// When the text is no temperature.
    pub fn parse(text: &str, default: Scale) -> Result<Self, TemperatureError> {
        let lower = text.trim().to_lowercase();
        let (number, scale) = match (lower.strip_suffix('f'), lower.strip_suffix('c')) {
            (Some(number), _) => (number, Scale::Fahrenheit),
            (None, Some(number)) => (number, Scale::Celsius),
            (None, None) => (&*lower, default),
        };
        let number = number.trim().trim_end_matches('\u{b0}').trim();
        let plain = |c: char| c.is_ascii_digit() || matches!(c, '.' | ',' | '-');
        match number.replace(',', ".").parse::<f64>() {
            Ok(degrees) if number.chars().all(plain) && degrees.is_finite() => {
                Ok(Self { degrees, scale })
            }
            Ok(_) | Err(_) => Err(TemperatureError(super::quoted(text, 40))),
        }
    }

    /// In °C.
    pub fn celsius(self) -> f64 {
        self.scale.to_celsius(self.degrees)
    }

    /// The scale it was typed on.
    pub fn scale(self) -> Scale {
        self.scale
    }
}

impl fmt::Display for Temperature {
    /// The text that reads back as the very same temperature: `600 C`, `1100 F`.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let letter = match self.scale {
            Scale::Celsius => "C",
            Scale::Fahrenheit => "F",
        };
        write!(f, "{} {letter}", self.degrees)
    }
}

impl FromStr for Temperature {
    type Err = TemperatureError;

    /// The same; without a scale it is in °C.
    fn from_str(text: &str) -> Result<Self, TemperatureError> {
        Self::parse(text, Scale::Celsius)
    }
}
