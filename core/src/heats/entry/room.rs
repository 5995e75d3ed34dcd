//! What a source lets through, and how it takes a piece.

use crate::heats::source::{Back, Smith, Source, SourceKind, Wound};

/// What a source lets through.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Mouth {
    /// A round bore, mm across and mm long, less the clearance.
    Round {
        /// Across.
        across_mm: f64,
        /// Long.
        long_mm: f64,
    },
    /// An opening, mm, less the clearance.
    Opening {
        /// Wide.
        width_mm: f64,
        /// High.
        height_mm: f64,
    },
    /// Between the sides of an open coil, mm, less the clearance: only what lies in it must be so thin.
    Slot {
        /// From side to side.
        high_mm: f64,
        /// Long.
        long_mm: f64,
    },
    /// An open fire lets everything in.
    Open,
}

/// How a source takes a piece.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Room {
    /// What it lets through.
    pub mouth: Mouth,
    /// How long the heat is, mm.
    pub hot_mm: f64,
    /// How far it reaches past what lets the piece through, mm.
    pub past_mm: f64,
    /// How deep a piece goes in at the most, mm; `None` where it goes through.
    pub deep_mm: Option<f64>,
}

impl Room {
    /// What a source takes, with the smith's clearance.
    pub fn of(source: &Source, smith: &Smith) -> Self {
        let free = 2.0 * smith.clearance.mm();
        match &source.kind {
            SourceKind::Gas(gas) => Self {
                mouth: Mouth::Opening {
                    width_mm: gas.opening_width.mm() - free,
                    height_mm: gas.opening_height.mm() - free,
                },
                hot_mm: gas.length.mm(),
                past_mm: 0.0,
                deep_mm: match gas.back {
                    Back::Closed => Some(gas.length.mm()),
                    Back::Open => None,
                },
            },
            SourceKind::Solid(fire) => Self {
                mouth: Mouth::Open,
                hot_mm: fire.hot_spot.mm(),
                past_mm: 0.0,
                deep_mm: None,
            },
            SourceKind::Coil(coil) => Self {
                mouth: match coil.wound {
                    Wound::Round => Mouth::Round {
                        across_mm: coil.bore.mm() - free,
                        long_mm: coil.length_mm(),
                    },
                    Wound::Open => Mouth::Slot {
                        high_mm: coil.bore.mm() - free,
                        long_mm: coil.length_mm(),
                    },
                },
                hot_mm: coil.hot_length_mm(),
                past_mm: coil.past_end_mm(),
                deep_mm: None,
            },
        }
    }
}

/// The smaller size of a mouth, mm.
pub fn clear_mm(mouth: Mouth) -> f64 {
    match mouth {
        Mouth::Round { across_mm, .. } => across_mm,
        Mouth::Opening {
            width_mm,
            height_mm,
        } => width_mm.min(height_mm),
        Mouth::Slot { high_mm, .. } => high_mm,
        Mouth::Open => f64::INFINITY,
    }
}
