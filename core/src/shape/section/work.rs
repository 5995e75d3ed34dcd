use super::Profile;
use crate::asked::{FlatOf, Lie, RoundOf, SquareOf, Work};

/// The work's cross-section as it lies in the jaws: its profile, size between the jaws and size
/// along the rivet, mm. Jaws lie on the ribs of rebar, and on a leg of an angle as far as the
/// other leg leaves it free; an angle by its back fills a square on its corners.
pub fn work_section(work: &Work) -> (Profile, f64, f64) {
    let size = work.size().mm();
    let leg = 2.0 - 2f64.sqrt();
    let across_hexagon = size * 2.0 / 3f64.sqrt();
    let across_octagon = size / std::f64::consts::FRAC_PI_8.cos();
    match *work {
        Work::Flat { width, of, .. } => {
            let free = match of {
                FlatOf::Bar => width.mm(),
                FlatOf::AngleLeg { .. } => free_leg_mm(width.mm(), size),
            };
            (Profile::rectangle(), size, free)
        }
        Work::Round { of, .. } => {
            let over = match of {
                RoundOf::Bar | RoundOf::Pipe { .. } | RoundOf::BoltShank { .. } => size,
                RoundOf::Rebar { ribs } => size + 2.0 * ribs.mm(),
            };
            (Profile::rounded(1.0, 1.0), over, over)
        }
        Work::Square {
            lie: Lie::OnFlats,
            of: SquareOf::Bar,
            ..
        } => (Profile::rectangle(), size, size),
        Work::Square {
            lie: Lie::OnCorners,
            ..
        }
        | Work::Square {
            of: SquareOf::AngleBack { .. },
            ..
        } => {
            let diagonal = size * 2f64.sqrt();
            (Profile::chamfered(1.0, 1.0), diagonal, diagonal)
        }
        Work::Hexagon {
            lie: Lie::OnFlats, ..
        } => (Profile::chamfered(0.5, 1.0), size, across_hexagon),
        Work::Hexagon {
            lie: Lie::OnCorners,
            ..
        } => (Profile::chamfered(1.0, 0.5), across_hexagon, size),
        Work::Octagon {
            lie: Lie::OnFlats, ..
        } => (Profile::chamfered(leg, leg), size, size),
        Work::Octagon {
            lie: Lie::OnCorners,
            ..
        } => (
            Profile::octagon_on_corners(),
            across_octagon,
            across_octagon,
        ),
    }
}

/// What the other leg leaves free of a leg of an angle, mm; never nothing, so that what cannot be
/// is still drawn.
fn free_leg_mm(leg: f64, thickness: f64) -> f64 {
    const LEAST: f64 = 0.5;
    (leg - thickness).max(LEAST)
}
