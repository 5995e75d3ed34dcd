//! The rivet's heads as drawn.

use std::f64::consts::PI;

use kurbo::{Arc, BezPath, Point, Vec2};

use crate::tongs::document::{HeadSolid, Rivet};

/// How far a drawn arc may stray from a true one, mm.
const STRAY: f64 = 1e-3;

/// A head in the top view, standing on y = 0 and rising; a countersunk one sinks below it.
pub(super) fn head_outline(rivet: &Rivet) -> BezPath {
    let (d, shape) = (rivet.diameter.mm(), rivet.head.shape());
    let (half, high) = (shape.across * d / 2.0, shape.high * d);
    let mut path = BezPath::new();
    path.move_to((-half, 0.0));
    match shape.solid {
        HeadSolid::Cap => path.extend(cap(half, high).append_iter(STRAY)),
        HeadSolid::Disc => {
            path.line_to((-half, high));
            path.line_to((half, high));
            path.line_to((half, 0.0));
        }
        HeadSolid::Cone => {
            path.line_to((half, 0.0));
            path.line_to((d / 2.0, -high));
            path.line_to((-d / 2.0, -high));
        }
    }
    path.close_path();
    path
}

/// The arc of a ball's cap over its base, from left to right.
fn cap(half: f64, high: f64) -> Arc {
    let radius = (half * half + high * high) / (2.0 * high);
    let lean = (radius - high).atan2(half);
    Arc {
        center: Point::new(0.0, high - radius),
        radii: Vec2::new(radius, radius),
        start_angle: PI - lean,
        sweep_angle: 2.0 * lean - PI,
        x_rotation: 0.0,
    }
}
