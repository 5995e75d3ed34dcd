//! The halves as beams that the hand bends about the rivet against the work: what fit and strength
//! both go by. What the steel bears is no part of it.

mod beam;
mod half;

use kurbo::BezPath;

use crate::finding::Part;
use crate::steel::YOUNGS_MPA;
use crate::tongs::model::{Half, Model};

pub use beam::{Station, along_sweep, deflection_mm_per_n, slope_per_n};
pub use half::HalfBending;
pub(super) use half::pressed_at;

/// The arms of hand and work about the rivet.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Arms {
    /// How far each half has turned from the set pose, radians, opening positive.
    pub half_angle: f64,
    /// Rivet to the middle of the hand along the tongs, mm.
    pub hand_mm: f64,
    /// Rivet to the middle of the pressure along the tongs, mm.
    pub grip_mm: f64,
}

/// Half A under a newton at the hand, and half B if it differs; each station as if it bore 1 MPa,
/// until [`HalfBending::bearing`] says what it bears.
pub fn halves(model: &Model, arms: Arms) -> Vec<HalfBending> {
    let [outline_a, outline_b] = model.outlines();
    let sides = [
        (&model.a, outline_a, Part::Jaw),
        (&model.b, outline_b, Part::SecondJaw),
    ];
    let sides = if model.alike { &sides[..1] } else { &sides[..] };
    let bend = |&(half, outline, jaw): &(&Half, &BezPath, Part)| {
        half::bend((half, outline), &half::Bend { arms, jaw })
    };
    sides.iter().map(bend).collect()
}

/// How far both reins together close at the hand for each newton of squeeze, mm/N.
pub fn give_mm_per_n(halves: &[HalfBending]) -> f64 {
    let give = |half: &HalfBending| deflection_mm_per_n(&half.stations, YOUNGS_MPA);
    let sum: f64 = halves.iter().map(give).sum();
    // Halves that are alike are told once.
    if halves.len() == 1 { 2.0 * sum } else { sum }
}
