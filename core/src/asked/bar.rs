use serde::{Deserialize, Serialize};

use super::choice::{Choice, simple_choice};
use super::range::STEEL;
use super::walk::fields;
use super::work::wider;
use crate::steel::Steel;
use crate::units::Length;

simple_choice!(Steel {
    Mild => "mild steel",
    Carbon1045 => "1045",
    Alloy4130 => "4130",
    Alloy4140 => "4140",
    Spring5160 => "5160 spring",
    ToolH13 => "H13",
    ToolW1 => "W1",
    ToolO1 => "O1",
    ToolS7 => "S7",
    Unknown => "unknown scrap",
});

/// The shape and size of the bar.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub enum Stock {
    /// Round bar.
    Round {
        /// Diameter.
        diameter: Length,
    },
    /// Square bar.
    Square {
        /// Across flats.
        side: Length,
    },
    /// Flat bar.
    Flat {
        /// The smaller size.
        thickness: Length,
        /// The larger size.
        width: Length,
    },
}

/// The bar that the tongs are forged from.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Bar {
    /// Shape and size.
    pub stock: Stock,
    /// Steel.
    #[serde(default)]
    pub steel: Steel,
}

impl Stock {
    /// The size that the bar is called by: diameter, side or thickness.
    pub fn size(&self) -> Length {
        match *self {
            Self::Round { diameter } => diameter,
            Self::Square { side } => side,
            Self::Flat { thickness, .. } => thickness,
        }
    }

    /// Cross-section in mm².
    pub fn area_mm2(&self) -> f64 {
        match *self {
            Self::Round { diameter } => std::f64::consts::FRAC_PI_4 * diameter.mm().powi(2),
            Self::Square { side } => side.mm().powi(2),
            Self::Flat { thickness, width } => thickness.mm() * width.mm(),
        }
    }

    /// The side of the square of the same area, mm: what the proportions of a pair follow.
    pub fn equal_square_mm(&self) -> f64 {
        self.area_mm2().sqrt()
    }

    /// In words that [`crate::asked::parse_bar`] reads back: `3/8 in x 1 in flat`.
    pub fn words(&self) -> String {
        let shape = self.way();
        match *self {
            Self::Flat { thickness, width } => format!("{thickness} x {width} {shape}"),
            Self::Round { .. } | Self::Square { .. } => format!("{} {shape}", self.size()),
        }
    }

    /// The larger size across the bar, mm.
    pub fn wide_mm(&self) -> f64 {
        match *self {
            Self::Flat { thickness, width } => width.mm().max(thickness.mm()),
            Self::Round { .. } | Self::Square { .. } => self.size().mm(),
        }
    }
}

fields! { Bar: |Self { stock, steel }, v| {
    v.choice("shape", stock).says("Shape", "The cross-section of the bar");
    match stock {
        Stock::Round { diameter } => {
            v.value("diameter", diameter, STEEL).says("Diameter", "Of the round bar");
        }
        Stock::Square { side } => v.value("side", side, STEEL).says("Side", "Across flats"),
        Stock::Flat { thickness, width } => {
            v.value("thickness", thickness, STEEL).says("Thickness", "The smaller size");
            v.value("width", width, STEEL).says("Width", "The larger size");
        }
    }
    v.choice("steel", steel).says("Steel", "What the bar is made of");
}}

impl Choice for Stock {
    const WAYS: &'static [&'static str] = &["round", "square", "flat"];

    fn chosen(&self) -> usize {
        match self {
            Self::Round { .. } => 0,
            Self::Square { .. } => 1,
            Self::Flat { .. } => 2,
        }
    }

    fn choose(&mut self, index: usize) {
        if index == self.chosen() {
            return;
        }
        let size = self.size();
        *self = match index {
            0 => Self::Round { diameter: size },
            1 => Self::Square { side: size },
            2 => Self::Flat {
                thickness: size,
                width: wider(size),
            },
            _ => *self,
        };
    }
}
