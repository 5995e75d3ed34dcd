use serde::{Deserialize, Serialize};

use crate::units::Length;

/// What flat stock between the jaws is.
#[derive(Debug, Clone, Copy, PartialEq, Default, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub enum FlatOf {
    /// Bar or sheet.
    #[default]
    Bar,
    /// A leg of an angle; the other one stands beside the jaws.
    AngleLeg {
        /// The other leg, over its outside.
        other: Length,
    },
}

/// What is round between the jaws.
#[derive(Debug, Clone, Copy, PartialEq, Default, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub enum RoundOf {
    /// Bar.
    #[default]
    Bar,
    /// Pipe or tube.
    Pipe {
        /// Its wall.
        wall: Length,
    },
    /// Bar with ribs; its diameter is that of plain bar of the same weight.
    Rebar {
        /// How far the ribs stand out.
        ribs: Length,
    },
    /// The shank of a bolt with a hexagon head.
    BoltShank {
        /// The head across flats.
        flats: Length,
        /// Height of the head.
        height: Length,
        /// Where the head is.
        head: Head,
    },
}

/// Where the head of a bolt is that is held by its shank.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
pub enum Head {
    /// Between the jaws, behind the bits that hold the shank.
    #[default]
    Within,
    /// In front of the tongs.
    InFront,
}

/// What is square between the jaws.
#[derive(Debug, Clone, Copy, PartialEq, Default, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub enum SquareOf {
    /// Bar.
    #[default]
    Bar,
    /// An angle of two equal legs held by its back: with the edges of its legs it bears as a square
    /// on its corners does.
    AngleBack {
        /// Of both legs.
        thickness: Length,
    },
}

/// What has six sides between the jaws.
#[derive(Debug, Clone, Copy, PartialEq, Default, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub enum HexagonOf {
    /// Bar.
    #[default]
    Bar,
    /// The head of a bolt, its shank in front of the tongs.
    BoltHead {
        /// Height of the head.
        height: Length,
        /// Diameter of the shank.
        shank: Length,
    },
    /// A nut.
    Nut {
        /// Its height.
        height: Length,
        /// Its hole.
        hole: Length,
    },
}

impl FlatOf {
    pub(super) fn is_bar(&self) -> bool {
        *self == Self::Bar
    }
}

impl RoundOf {
    pub(super) fn is_bar(&self) -> bool {
        *self == Self::Bar
    }
}

impl SquareOf {
    pub(super) fn is_bar(&self) -> bool {
        *self == Self::Bar
    }
}

impl HexagonOf {
    pub(super) fn is_bar(&self) -> bool {
        *self == Self::Bar
    }
}
