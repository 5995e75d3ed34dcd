//! What a rivet's heads are like: the one table that is drawn, checked and reckoned with.

use super::{HeadKind, Rivet};

/// The solid that a head is.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum HeadSolid {
    /// A cap of a ball that stands on the boss.
    Cap,
    /// A disc that stands on the boss.
    Disc,
    /// A cone that is sunk into the boss, as thick as the shank at its bottom.
    Cone,
}

/// A head, in diameters of its shank.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct HeadShape {
    /// What it is.
    pub solid: HeadSolid,
    /// Its diameter.
    pub across: f64,
    /// How high it stands, or how deep it is sunk.
    pub high: f64,
    /// Where both are from.
    pub source: &'static str,
}

impl HeadKind {
    /// What a head of this kind is like.
    pub fn shape(self) -> HeadShape {
        let (solid, across, high, source) = match self {
            Self::Button => (
                HeadSolid::Cap,
                1.75,
                0.75,
                "ASME B18.1.2 button head, 1.75 D by 0.75 D",
            ),
            Self::Snap => (HeadSolid::Cap, 1.6, 0.7, "BS 275 snap head, 1.6 D by 0.7 D"),
            Self::Flat => (
                HeadSolid::Disc,
                2.0,
                0.33,
                "ASME B18.1.1 flat head, 2 D by 0.33 D, from memory",
            ),
            Self::Countersunk => (
                HeadSolid::Cone,
                1.75,
                0.5,
                "DIN 661 countersunk head, 1.75 D by 0.5 D",
            ),
        };
        HeadShape {
            solid,
            across,
            high,
            source,
        }
    }
}

impl HeadShape {
    /// How far it stands out of the boss, in shank diameters.
    pub fn stands_out(&self) -> f64 {
        match self.solid {
            HeadSolid::Cap | HeadSolid::Disc => self.high,
            HeadSolid::Cone => 0.0,
        }
    }

    /// How deep it is sunk into the boss, in shank diameters.
    pub fn sinks(&self) -> f64 {
        self.high - self.stands_out()
    }
}

impl Rivet {
    /// Across its head, mm.
    pub fn head_across_mm(&self) -> f64 {
        self.head.shape().across * self.diameter.mm()
    }

    /// How far its head stands out of the boss, mm.
    pub fn head_height_mm(&self) -> f64 {
        self.head.shape().stands_out() * self.diameter.mm()
    }
}
