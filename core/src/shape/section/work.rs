use super::Profile;
use crate::asked::{Lie, Work};

/// The work's cross-section as it lies in the jaws: its profile, size between the jaws and size
/// along the rivet, mm.
pub fn work_section(work: &Work) -> (Profile, f64, f64) {
    let size = work.size().mm();
    let leg = 2.0 - 2f64.sqrt();
    let across_hexagon = size * 2.0 / 3f64.sqrt();
    let across_octagon = size / std::f64::consts::FRAC_PI_8.cos();
    match *work {
        Work::Flat { width, .. } => (Profile::rectangle(), size, width.mm()),
        Work::Round { .. } => (Profile::rounded(1.0, 1.0), size, size),
        Work::Square {
            lie: Lie::OnFlats, ..
        } => (Profile::rectangle(), size, size),
        Work::Square {
            lie: Lie::OnCorners,
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
