//! What a squeeze holds against pulling out.

use crate::proof::bending::pressed_at;
use crate::proof::fit::{Contact, Press, Where};
use crate::tongs::model::{Half, Model};
use crate::tongs::seat::Bears;

/// Walls steeper than those of a 40 degree groove are not reckoned with.
const MOST_GAIN: f64 = 2.924;

/// How many times the force between two flats a jaw's walls press on the work: 1 / sin(θ/2) for
/// a V of included angle θ; 1 where the work bears on a face, at the bottom or on edges.
fn gain(half: &Half, along: f64, bears: Bears, contacts: &[f64]) -> f64 {
    match bears {
        Bears::Face | Bears::Bottom | Bears::Edges => 1.0,
        Bears::Walls => walls(half, along, contacts),
    }
}

/// The least gain among the places where the walls touch, so far along the jaw.
fn walls(half: &Half, along: f64, contacts: &[f64]) -> f64 {
    /// Far enough for a slope, near enough to stay on the wall, mm.
    const STEP: f64 = 0.02;
    let section = half.jaw.section(along);
    let inner = |z: f64| section.lower((2.0 * z / section.width).clamp(-1.0, 1.0));
    let steeper = |&z: &f64| {
        let left = (inner(z) - inner(z - STEP)) / STEP;
        let right = (inner(z + STEP) - inner(z)) / STEP;
        left.abs().max(right.abs())
    };
    let least = contacts.iter().map(steeper).fold(f64::MAX, f64::min);
    1f64.hypot(least).min(MOST_GAIN)
}

/// The gains of both jaws on work that is held so, or as it is seated when it is not held.
pub(super) fn gains(model: &Model, contact: Option<&Contact>, press: &Press) -> [f64; 2] {
    let gain_of = |i: usize, half: &Half| {
        match contact {
            // Across the jaws no wall is spread by pulling along the tongs.
            Some(on) if on.bearing[i].place == Where::Across => 1.0,
            Some(on) => {
                let along = pressed_at(&press.arms(), half);
                gain(half, along, on.bearing[i].bears, &on.bearing[i].z_mm)
            }
            None => {
                let middle = f64::midpoint(half.grip.0, half.grip.1);
                gain(half, middle, model.seats[i].bears, &model.seats[i].contacts)
            }
        }
    };
    [gain_of(0, &model.a), gain_of(1, &model.b)]
}
