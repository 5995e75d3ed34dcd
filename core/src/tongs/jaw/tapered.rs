//! A straight back that tapers from heel to tip over an inside that is sunk here and there.

use crate::shape::section::{Profile, lerp};
use crate::shape::sweep::{Ease, Station};

/// Depth and width at heel and tip, and the length between them, mm.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Tapered {
    pub(super) root: (f64, f64),
    pub(super) tip: (f64, f64),
    pub(super) length: f64,
}

impl Tapered {
    /// The depth before anything is sunk into the inside, `x` mm past the heel.
    pub(super) fn depth(&self, x: f64) -> f64 {
        lerp(self.root.0, self.tip.0, x / self.length)
    }

    /// A rectangle `x` mm past the heel, its inside sunk by `sunk` mm from the face.
    pub(super) fn station(&self, x: f64, sunk: f64, ease: Ease) -> Station {
        let depth = self.depth(x) - sunk;
        Station {
            at: x,
            depth,
            width: lerp(self.root.1, self.tip.1, x / self.length),
            rise: sunk + depth / 2.0,
            shift: 0.0,
            profile: 0,
            ease,
        }
    }

    /// The only profile its stations name.
    pub(super) fn profiles() -> Vec<Profile> {
        vec![Profile::rectangle()]
    }
}
