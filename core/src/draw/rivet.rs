//! The rivet's heads as drawn.

use kurbo::BezPath;

use crate::tongs::document::{HeadKind, Rivet};

/// Diameter of a head, mm.
pub(super) fn head_diameter(rivet: &Rivet) -> f64 {
    rivet.head.proportions().0 * rivet.diameter.mm()
}

/// A head in the top view, standing on y = 0 and rising; a countersunk one sinks below it.
pub(super) fn head_outline(rivet: &Rivet) -> BezPath {
    let d = rivet.diameter.mm();
    let (wide, high) = rivet.head.proportions();
    let (half, high) = (wide * d / 2.0, high * d);
    let mut path = BezPath::new();
    path.move_to((-half, 0.0));
    match rivet.head {
        HeadKind::Button | HeadKind::Snap => {
            let arm = 0.5523;
            path.curve_to((-half, arm * high), (-arm * half, high), (0.0, high));
            path.curve_to((arm * half, high), (half, arm * high), (half, 0.0));
        }
        HeadKind::Flat => {
            let round = 0.3 * high;
            path.line_to((-half, high - round));
            path.quad_to((-half, high), (round - half, high));
            path.line_to((half - round, high));
            path.quad_to((half, high), (half, high - round));
            path.line_to((half, 0.0));
        }
        HeadKind::Countersunk => {
            path.line_to((half, 0.0));
            path.line_to((d / 2.0, -high));
            path.line_to((-d / 2.0, -high));
        }
    }
    path.close_path();
    path
}
