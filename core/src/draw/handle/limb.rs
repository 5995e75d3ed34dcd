//! The views of a pair, and the limbs that spots lie on.

use crate::shape::sweep::Sweep;
use crate::tongs::model::{Half, Model};

/// One of the three views of a pair.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum View {
    /// Along the rivet.
    Side,
    /// From above the jaws.
    Top,
    /// Onto the jaw tips.
    End,
}

/// A part of a half that spots lie on.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Limb {
    /// The jaw of half A.
    Jaw,
    /// The jaw of half B.
    SecondJaw,
    /// The rein of half A.
    Rein,
}

/// Which half a spot lies on.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Which {
    A,
    B,
}

impl Limb {
    pub(super) fn half(self) -> Which {
        match self {
            Self::Jaw | Self::Rein => Which::A,
            Self::SecondJaw => Which::B,
        }
    }

    pub(super) fn of(self, model: &Model) -> &Sweep {
        match self {
            Self::Jaw => &model.a.jaw,
            Self::SecondJaw => &model.b.jaw,
            Self::Rein => &model.a.rein,
        }
    }
}

impl Which {
    pub(super) fn of(self, model: &Model) -> &Half {
        match self {
            Self::A => &model.a,
            Self::B => &model.b,
        }
    }
}
