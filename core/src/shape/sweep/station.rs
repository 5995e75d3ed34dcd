//! The places of a sweep whose sections are known, and how sizes go from one to the next.

use serde::{Deserialize, Serialize};

/// How sizes go from one station to the next.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
pub enum Ease {
    /// In proportion.
    #[default]
    Linear,
    /// Starting and ending level (a cubic).
    Smooth,
    /// A quarter-round that starts steep and ends level.
    RoundUp,
    /// A quarter-round that starts level and ends steep.
    RoundDown,
    /// Part of a circle across the inside that ends level, while the back goes straight.
    ArcUp,
    /// Part of a circle across the inside that starts level, while the back goes straight.
    ArcDown,
}

impl Ease {
    pub(crate) fn of(self, t: f64) -> f64 {
        match self {
            Self::Linear | Self::ArcUp | Self::ArcDown => t,
            Self::Smooth => t * t * (3.0 - 2.0 * t),
            Self::RoundUp => (1.0 - (1.0 - t).powi(2)).max(0.0).sqrt(),
            Self::RoundDown => 1.0 - (1.0 - t * t).max(0.0).sqrt(),
        }
    }
}

/// A place along a sweep with a known section.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Station {
    /// Along the path, mm.
    pub at: f64,
    /// Size in the side view, mm.
    pub depth: f64,
    /// Size in the top view, mm.
    pub width: f64,
    /// The box's centre to the left of the path (the outside of the half), mm.
    pub rise: f64,
    /// The box's centre along the rivet, z in mm: not nothing where a bit is bent to one side.
    pub shift: f64,
    /// Which of the sweep's profiles.
    pub profile: usize,
    /// How sizes go on to the next station.
    pub ease: Ease,
}
