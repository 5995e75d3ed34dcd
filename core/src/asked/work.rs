use serde::{Deserialize, Serialize};

use super::choice::{Choice, simple_choice};
use super::range::STEEL;
use super::walk::fields;
use crate::units::Length;

/// Which way a many-sided work lies in the jaws.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
pub enum Lie {
    /// A flat faces each jaw.
    #[default]
    OnFlats,
    /// A corner points into each jaw.
    OnCorners,
}

simple_choice!(Lie { OnFlats => "on its flats", OnCorners => "on its corners" });

/// The stock that the tongs hold.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub enum Work {
    /// Flat bar or sheet, held by its thickness.
    Flat {
        /// The held size.
        thickness: Length,
        /// Across the jaws.
        width: Length,
    },
    /// Round bar.
    Round {
        /// Diameter.
        diameter: Length,
    },
    /// Square bar.
    Square {
        /// Across flats.
        side: Length,
        /// On its flats or its diagonal.
        #[serde(default)]
        lie: Lie,
    },
    /// Hexagon bar.
    Hexagon {
        /// Across flats.
        flats: Length,
        /// On its flats or its corners.
        #[serde(default)]
        lie: Lie,
    },
    /// Octagon bar.
    Octagon {
        /// Across flats.
        flats: Length,
        /// On its flats or its corners.
        #[serde(default)]
        lie: Lie,
    },
}

impl Work {
    /// The size that the work is called by: thickness, diameter, or across flats.
    pub fn size(&self) -> Length {
        match *self {
            Self::Flat { thickness, .. } => thickness,
            Self::Round { diameter } => diameter,
            Self::Square { side, .. } => side,
            Self::Hexagon { flats, .. } | Self::Octagon { flats, .. } => flats,
        }
    }

    /// In words that [`crate::asked::parse_work`] reads back: `5/8 in hexagon on corners`.
    pub fn words(&self) -> String {
        let shape = self.way();
        match *self {
            Self::Flat { thickness, width } => format!("{thickness} x {width} {shape}"),
            Self::Round { diameter } => format!("{diameter} {shape}"),
            Self::Square { .. } | Self::Hexagon { .. } | Self::Octagon { .. } => {
                let lie = match self.lie() {
                    Lie::OnFlats => "",
                    Lie::OnCorners => " on corners",
                };
                format!("{} {shape}{lie}", self.size())
            }
        }
    }

    /// The same work in another size; flat work keeps its width.
    #[must_use]
    pub fn with_size(mut self, size: Length) -> Self {
        match &mut self {
            Self::Flat { thickness: it, .. }
            | Self::Round { diameter: it }
            | Self::Square { side: it, .. }
            | Self::Hexagon { flats: it, .. }
            | Self::Octagon { flats: it, .. } => *it = size,
        }
        self
    }

    /// Lays a many-sided bar one way; other work has no ways to lie.
    pub fn lay(&mut self, wanted: Lie) {
        match self {
            Self::Square { lie, .. } | Self::Hexagon { lie, .. } | Self::Octagon { lie, .. } => {
                *lie = wanted;
            }
            Self::Flat { .. } | Self::Round { .. } => {}
        }
    }

    fn lie(&self) -> Lie {
        match *self {
            Self::Square { lie, .. } | Self::Hexagon { lie, .. } | Self::Octagon { lie, .. } => lie,
            Self::Flat { .. } | Self::Round { .. } => Lie::OnFlats,
        }
    }
}

fields! { Work: |it, v| {
    v.choice("shape", it).says("Shape", "The cross-section of the stock that is held");
    match it {
        Self::Flat { thickness, width } => {
            v.value("thickness", thickness, STEEL).says("Thickness", "Between the jaws");
            v.value("width", width, STEEL).says("Width", "Across the jaws");
        }
        Self::Round { diameter } => {
            v.value("diameter", diameter, STEEL).says("Diameter", "Of the round bar");
        }
        Self::Square { side, lie } => {
            v.value("side", side, STEEL).says("Side", "Across flats");
            v.choice("lie", lie).says("Lies", "Which way the square is held");
        }
        Self::Hexagon { flats, lie } | Self::Octagon { flats, lie } => {
            v.value("flats", flats, STEEL).says("Across flats", "Between two opposite flats");
            v.choice("lie", lie).says("Lies", "Which way the bar is held");
        }
    }
}}

impl Choice for Work {
    const WAYS: &'static [&'static str] = &["flat", "round", "square", "hexagon", "octagon"];

    fn chosen(&self) -> usize {
        match self {
            Self::Flat { .. } => 0,
            Self::Round { .. } => 1,
            Self::Square { .. } => 2,
            Self::Hexagon { .. } => 3,
            Self::Octagon { .. } => 4,
        }
    }

    fn choose(&mut self, index: usize) {
        if index == self.chosen() {
            return;
        }
        let (size, lie) = (self.size(), self.lie());
        *self = match index {
            0 => Self::Flat {
                thickness: size,
                width: wider(size),
            },
            1 => Self::Round { diameter: size },
            2 => Self::Square { side: size, lie },
            3 => Self::Hexagon { flats: size, lie },
            4 => Self::Octagon { flats: size, lie },
            _ => *self,
        };
    }
}

/// A likely width for flat stock of a thickness: two and a half times, an inch at the least.
pub(crate) fn wider(thickness: Length) -> Length {
    Length::measured((thickness.mm() * 2.5).max(25.0), thickness.unit())
}
