use std::str::FromStr;

use thiserror::Error;

/// A temperature as a smith writes it, kept in °C.
///
/// ```
/// use reinwright_core::units::Temperature;
/// let red: Temperature = "1112 F".parse()?;
/// assert_eq!(red.celsius(), 600.0);
/// # Ok::<(), reinwright_core::units::TemperatureError>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, PartialOrd)]
pub struct Temperature {
    celsius: f64,
}

/// Why a text is no temperature.
#[derive(Debug, Clone, PartialEq, Eq, Error)]
#[error("\"{0}\" is no temperature: write it as 600 C or 1100 F")]
pub struct TemperatureError(String);

impl Temperature {
    /// In °C.
    pub fn celsius(self) -> f64 {
        self.celsius
    }
}

impl FromStr for Temperature {
    type Err = TemperatureError;

    /// Reads `600 C`, `600 °C`, `1100 F` or `600`, which is °C.
    fn from_str(text: &str) -> Result<Self, TemperatureError> {
        let not = || TemperatureError(super::quoted(text, 40));
        let lower = text.trim().to_lowercase();
        let (number, fahrenheit) = match lower.strip_suffix('f') {
            Some(number) => (number, true),
            None => (lower.strip_suffix('c').unwrap_or(&lower), false),
        };
        let number = number.trim().trim_end_matches('\u{b0}').trim();
        let plain = |c: char| c.is_ascii_digit() || matches!(c, '.' | ',' | '-');
        let degrees = number.replace(',', ".").parse::<f64>();
        match degrees {
            Ok(degrees) if number.chars().all(plain) && degrees.is_finite() => Ok(Self {
                celsius: if fahrenheit {
                    (degrees - 32.0) / 1.8
                } else {
                    degrees
                },
            }),
            Ok(_) | Err(_) => Err(not()),
        }
    }
}
