//! How much longer steel is while it is hot.

use thiserror::Error;

use crate::units::{Scale, Temperature, quoted};

pub use super::thermal::HOLDS_CELSIUS as RANGE_CELSIUS;
use super::thermal::{self, Theta};

/// Relative elongation Δl/l of carbon steel from 20 °C to so many °C (EN 1993-1-2:2005,
/// 3.4.1.1); `None` outside of 20 to 1200 °C, for which the standard gives none.
///
/// ```
/// use reinwright_core::steel::elongation;
/// assert!((elongation(1100.0).unwrap() - 0.0158).abs() < 1e-12);
/// assert_eq!(elongation(1300.0), None);
/// ```
pub fn elongation(celsius: f64) -> Option<f64> {
    Theta::new(celsius).ok().map(thermal::elongation)
}

/// A colour that a smith sees in the shade of the shop, with the middle of what is seen so, °C:
/// common practice, no source; sunlight makes every one look colder.
pub const HEAT_COLOURS: [(&str, f64); 7] = [
    ("dark red", 650.0),
    ("cherry red", 750.0),
    ("bright red", 850.0),
    ("orange", 950.0),
    ("bright orange", 1020.0),
    ("yellow", 1100.0),
    ("bright yellow", 1180.0),
];

/// How hot a piece is that is laid against a sheet.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Heat {
    celsius: f64,
    scale: Scale,
    colour: Option<&'static str>,
}

/// Why a text is no heat for which a size is known.
#[derive(Debug, Clone, PartialEq, Error)]
pub enum HeatError {
    /// Neither a temperature nor a colour.
    #[error("\"{0}\" is no heat: write it as 900 C or 1650 F, or as a colour: {colours}", colours = colours())]
    Unknown(String),
    /// The formula does not hold there.
    #[error("{0} is not between {1} and {2}: for no other heat is it known how steel stretches")]
    Outside(String, String, String),
}

fn colours() -> String {
    HEAT_COLOURS.map(|(name, _)| name).join(", ")
}

impl Heat {
    /// Reads a temperature or a colour.
    ///
    /// # Errors
    /// When the text is neither, or a temperature outside of [`RANGE_CELSIUS`].
    pub fn parse(text: &str) -> Result<Self, HeatError> {
        let clean = text.trim().to_lowercase();
        if let Some((name, celsius)) = HEAT_COLOURS.iter().find(|(name, _)| *name == clean) {
            return Ok(Self {
                celsius: *celsius,
                scale: Scale::Celsius,
                colour: Some(name),
            });
        }
        let Ok(heat) = clean.parse::<Temperature>() else {
            return Err(HeatError::Unknown(quoted(text, 40)));
        };
        let (celsius, scale) = (heat.celsius(), heat.scale());
        match elongation(celsius) {
            Some(_) => Ok(Self {
                celsius,
                scale,
                colour: None,
            }),
            None => Err(HeatError::Outside(
                scale.text(celsius),
                scale.text(RANGE_CELSIUS.0),
                scale.text(RANGE_CELSIUS.1),
            )),
        }
    }

    /// How hot, °C.
    pub fn celsius(self) -> f64 {
        self.celsius
    }

    /// How many times as long a piece is as it is cold.
    pub fn growth(self) -> f64 {
        1.0 + elongation(self.celsius).expect("a heat is only made within the range")
    }

    /// The text that reads back as the same heat.
    ///
    /// ```
    /// use reinwright_core::steel::Heat;
    /// assert_eq!(Heat::parse("Orange")?.typed(), "orange");
    /// # Ok::<(), reinwright_core::steel::HeatError>(())
    /// ```
    pub fn typed(self) -> String {
        match self.colour {
            Some(colour) => colour.to_owned(),
            None => self.scale.text(self.celsius),
        }
    }

    /// The temperature as it was typed, and the colour if that was.
    pub fn words(self) -> String {
        let degrees = self.scale.text(self.celsius);
        match self.colour {
            Some(colour) => format!("{degrees}, {colour}"),
            None => degrees,
        }
    }
}
