//! The three views of a pair, each in its own coordinates with the rivet at the origin.

mod bit;
pub(super) mod end;
pub(super) mod side;
mod slices;
pub(super) mod top;
pub(super) mod work;

use kurbo::{Affine, BezPath, Point};

use crate::finding::Part;
use crate::number::plane::between;
use crate::tongs::model::{Half, Model};

/// A half in its place: which one, and how the side view turns it.
pub(super) struct Placed<'a> {
    pub(super) half: &'a Half,
    pub(super) pose: Affine,
    /// Its jaw's part.
    pub(super) jaw: Part,
}

/// The halves, front one first: the one whose boss is nearer to the eye in the side view.
pub(super) fn placed(model: &Model, opening: f64, two_jaws: bool) -> [Placed<'_>; 2] {
    let a = Placed {
        half: &model.a,
        pose: Affine::rotate(opening),
        jaw: Part::Jaw,
    };
    let b = Placed {
        half: &model.b,
        pose: Affine::rotate(-opening) * Model::half_b_pose(),
        jaw: if two_jaws { Part::SecondJaw } else { Part::Jaw },
    };
    if model.turn_sign > 0.0 {
        [a, b]
    } else {
        [b, a]
    }
}

/// The parts of a half in the side view, as closed areas in the half's own frame.
pub(super) fn part_areas(half: &Half, jaw: Part) -> [(Part, BezPath); 5] {
    let body: Vec<Point> = crate::number::plane::sides(&half.body.plate.path())
        .into_iter()
        .map(|(a, _)| a)
        .collect();
    let edge = half.body.rim.half_along();
    let far = 1e5;
    [
        (Part::Rein, half.rein_outline()),
        (Part::Shoulder, slice(&body, -far, -edge)),
        (Part::Neck, slice(&body, edge, far)),
        (Part::Boss, slice(&body, -edge, edge)),
        (jaw, half.jaw_outline()),
    ]
}

/// The part of a polygon between two upright lines. Where a line splits it its pieces stay joined
/// along the line, which an even-odd fill does not show.
pub(super) fn slice(points: &[Point], from: f64, to: f64) -> BezPath {
    polygon(&between(points, from, to))
}

/// A closed path through points.
pub(super) fn polygon(points: &[Point]) -> BezPath {
    let mut path = BezPath::with_capacity(points.len() + 1);
    for (i, &p) in points.iter().enumerate() {
        if i == 0 {
            path.move_to(p);
        } else {
            path.line_to(p);
        }
    }
    if !points.is_empty() {
        path.close_path();
    }
    path
}

/// An open path through points.
pub(super) fn polyline(points: &[Point]) -> BezPath {
    let mut path = BezPath::new();
    for (i, &p) in points.iter().enumerate() {
        if i == 0 {
            path.move_to(p);
        } else {
            path.line_to(p);
        }
    }
    path
}
