//! Outlines as polygons, for `geo` to judge.

use geo::{LineString, Polygon};
use kurbo::{BezPath, PathEl};

/// How far a polygon may stray from its curve, mm.
pub const STRAY: f64 = 1e-3;

/// The corners of a closed path, flattened; a corner that repeats the one before is left out.
pub fn corners(path: &BezPath) -> Vec<(f64, f64)> {
    corners_within(path, STRAY)
}

fn corners_within(path: &BezPath, stray: f64) -> Vec<(f64, f64)> {
    let mut corners: Vec<(f64, f64)> = Vec::new();
    kurbo::flatten(path, stray, |el| {
        if let PathEl::MoveTo(p) | PathEl::LineTo(p) = el {
            corners.push((p.x, p.y));
        }
    });
    corners.dedup_by(|a, b| (a.0 - b.0).hypot(a.1 - b.1) < 1e-9);
    corners
}

/// A closed path as a polygon.
pub fn polygon(path: &BezPath) -> Polygon {
    Polygon::new(LineString::from(corners(path)), Vec::new())
}

/// A closed path as a polygon that strays no more than so far from it, mm.
pub fn polygon_within(path: &BezPath, stray: f64) -> Polygon {
    Polygon::new(LineString::from(corners_within(path, stray)), Vec::new())
}
