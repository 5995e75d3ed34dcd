//! The stock that the tongs hold: what bears between the jaws, and what that is a part of.
//!
//! A jaw knows only what bears on it, a round as a round, whether bar, pipe or the shank of a bolt.
//! So each shape says beside its sizes what it is of; bar is what it is where nothing is said.

mod choice;
mod held;
mod lines;
mod of;
mod scaled;
mod words;

pub use held::{AngleHeld, BoltHeld};
pub use of::{FlatOf, Head, HexagonOf, RoundOf, SquareOf};

use serde::{Deserialize, Serialize};

use super::choice::{Choice, simple_choice};
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
        /// What it is.
        #[serde(default, skip_serializing_if = "FlatOf::is_bar")]
        of: FlatOf,
    },
    /// Round bar.
    Round {
        /// Diameter.
        diameter: Length,
        /// What it is.
        #[serde(default, skip_serializing_if = "RoundOf::is_bar")]
        of: RoundOf,
    },
    /// Square bar.
    Square {
        /// Across flats.
        side: Length,
        /// On its flats or its diagonal.
        #[serde(default)]
        lie: Lie,
        /// What it is.
        #[serde(default, skip_serializing_if = "SquareOf::is_bar")]
        of: SquareOf,
    },
    /// Hexagon bar.
    Hexagon {
        /// Across flats.
        flats: Length,
        /// On its flats or its corners.
        #[serde(default)]
        lie: Lie,
        /// What it is.
        #[serde(default, skip_serializing_if = "HexagonOf::is_bar")]
        of: HexagonOf,
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
    /// Flat bar.
    pub const fn flat(thickness: Length, width: Length) -> Self {
        let of = FlatOf::Bar;
        Self::Flat {
            thickness,
            width,
            of,
        }
    }

    /// Round bar.
    pub const fn round(diameter: Length) -> Self {
        let of = RoundOf::Bar;
        Self::Round { diameter, of }
    }

    /// Square bar.
    pub const fn square(side: Length, lie: Lie) -> Self {
        let of = SquareOf::Bar;
        Self::Square { side, lie, of }
    }

    /// Hexagon bar.
    pub const fn hexagon(flats: Length, lie: Lie) -> Self {
        let of = HexagonOf::Bar;
        Self::Hexagon { flats, lie, of }
    }

    /// The size that the jaws hold it by: thickness, diameter, or across flats.
    pub fn size(&self) -> Length {
        match *self {
            Self::Flat { thickness, .. } => thickness,
            Self::Round { diameter, .. } => diameter,
            Self::Square { side, .. } => side,
            Self::Hexagon { flats, .. } | Self::Octagon { flats, .. } => flats,
        }
    }

    /// What kind of piece it is, where it is not bar: `bolt`, `pipe`.
    pub fn piece(&self) -> Option<&'static str> {
        let is_bar = match self {
            Self::Flat { of, .. } => of.is_bar(),
            Self::Round { of, .. } => of.is_bar(),
            Self::Square { of, .. } => of.is_bar(),
            Self::Hexagon { of, .. } => of.is_bar(),
            Self::Octagon { .. } => true,
        };
        (!is_bar).then(|| self.way())
    }

    /// Lays a many-sided bar one way; other work has no ways to lie, and an angle that is held by
    /// its back has but one.
    pub fn lay(&mut self, wanted: Lie) {
        match self {
            Self::Square {
                of: SquareOf::AngleBack { .. },
                ..
            }
            | Self::Flat { .. }
            | Self::Round { .. } => {}
            Self::Square { lie, .. } | Self::Hexagon { lie, .. } | Self::Octagon { lie, .. } => {
                *lie = wanted;
            }
        }
    }

    /// The work in every way in which it may lie, as it lies now first.
    pub fn laid_both(&self) -> Vec<Self> {
        let other = match self.lies() {
            None => return vec![*self],
            Some(Lie::OnFlats) => Lie::OnCorners,
            Some(Lie::OnCorners) => Lie::OnFlats,
        };
        let mut turned = *self;
        turned.lay(other);
        vec![*self, turned]
    }

    /// Which way it lies, where it could lie in another.
    pub fn lies(&self) -> Option<Lie> {
        match *self {
            Self::Square {
                of: SquareOf::AngleBack { .. },
                ..
            }
            | Self::Flat { .. }
            | Self::Round { .. } => None,
            Self::Square { lie, .. } | Self::Hexagon { lie, .. } | Self::Octagon { lie, .. } => {
                Some(lie)
            }
        }
    }
}

/// A likely width for flat stock of a thickness: two and a half times, an inch at the least.
pub(crate) fn wider(thickness: Length) -> Length {
    Length::measured((thickness.mm() * 2.5).max(25.0), thickness.unit())
}
