//! Whether a squeeze crushes pipe: a ring under the lines on which the jaws bear.

use crate::asked::{RoundOf, Work};
use crate::tongs::model::{Lies, Model};

use super::Strength;

/// Yield of the pipe, MPa: steel S195T, the least that EN 10255 asks for.
pub const PIPE_YIELD_MPA: f64 = 195.0;

/// Where the ring formula and the yield come from.
pub const PIPE_SOURCE: &str = "thin ring under opposite loads (Roark's Formulas for Stress and Strain, circular rings, case 1); yield of S195T, EN 10255";

/// The greatest bending moment in a thin ring, N mm on each mm of its length, that two jaws press
/// with `n_per_mm`, each on two lines that lie `angle` radians to both sides of its middle; on one
/// line where that is nothing.
///
/// Each line has its opposite on the other jaw. Under one pair of opposite loads P the moment is
/// P R (1/π − |sin φ| / 2), φ from the line of the loads (Roark); two pairs add up. Each presses with
/// its share of the force, W / (2 cos β).
///
/// ```
/// use reinwright_core::proof::strength::ring_moment;
/// // Between two flats: W R / π.
/// assert!((ring_moment(100.0, 10.0, 0.0) - 318.3).abs() < 0.01);
/// ```
pub fn ring_moment(n_per_mm: f64, radius_mm: f64, angle: f64) -> f64 {
    let part = n_per_mm / (2.0 * angle.cos());
    let at = |phi: f64| {
        let sum = (phi - angle).sin().abs() + (phi + angle).sin().abs();
        2.0 / std::f64::consts::PI - sum / 2.0
    };
    // Under a line, and midway between two.
    let places = [angle, 0.0, std::f64::consts::FRAC_PI_2];
    let most = places
        .map(|phi| at(phi).abs())
        .into_iter()
        .fold(0.0, f64::max);
    part * radius_mm * most
}

/// The greatest pressure along a grip of length `grip`, N on each mm, whose middle lies `middle` mm
/// from the end that bears more: straight from end to end, or a triangle where the other end is
/// free (eccentric pressure, any textbook of statics).
pub fn line_pressure(force_n: f64, grip: f64, middle: f64) -> f64 {
    let middle = middle.min(grip / 2.0);
    if middle * 3.0 >= grip {
        force_n / grip * (4.0 - 6.0 * middle / grip)
    } else {
        2.0 * force_n / (3.0 * middle)
    }
}

/// What a squeeze does to pipe.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Crush {
    /// Greatest bending stress in its wall for each N at the hand, MPa.
    pub stress_per_n: f64,
    /// What its steel bears as hot as the jaws are, MPa.
    pub limit_mpa: f64,
}

/// Lines farther out than this lie all round, and then no ring is bent, radians (judgement).
const ALL_ROUND: f64 = 1.3;

/// How pipe bears the jaws; `None` where the work is none, or is held all round.
pub fn crush(document_work: &Work, model: &Model, strength: &Strength) -> Option<Crush> {
    let Work::Round {
        diameter,
        of: RoundOf::Pipe { wall },
    } = *document_work
    else {
        return None;
    };
    let (outer, wall) = (diameter.mm() / 2.0, wall.mm());
    let angle = |seat: &crate::tongs::seat::Seat| {
        let widest = seat.contacts.iter().map(|z| z.abs()).fold(0.0, f64::max);
        (widest / outer).clamp(0.0, 1.0).asin()
    };
    let angle = model.seats.iter().map(angle).fold(f64::MAX, f64::min);
    if angle > ALL_ROUND || wall >= outer {
        return None;
    }
    let per_mm = pressed_per_mm(model, strength);
    let moment = ring_moment(per_mm, outer - wall / 2.0, angle);
    Some(Crush {
        stress_per_n: 6.0 * moment / wall.powi(2),
        limit_mpa: PIPE_YIELD_MPA * strength.hot.effective_yield,
    })
}

/// The greatest pressure on a mm of the pipe for each N at the hand, N.
fn pressed_per_mm(model: &Model, strength: &Strength) -> f64 {
    /// Pipe is pressed over so much at the least, mm.
    const LEAST: f64 = 1.0;
    let (half, force) = (&model.a, strength.leverage());
    let from = half.jaw.path.at(half.grip.0).at.x.max(model.work.from);
    let grip = match model.work.lies {
        Lies::Endwise | Lies::Alongside => (half.tip() - from).max(LEAST),
        Lies::Crosswise => {
            let at = half.jaw.along_at_x(model.work.from);
            return force / half.jaw.section(at).width.max(LEAST);
        }
    };
    let middle = (strength.press.grip_mm - from).clamp(LEAST / 2.0, grip - LEAST / 2.0);
    line_pressure(force, grip, middle.min(grip - middle))
}
