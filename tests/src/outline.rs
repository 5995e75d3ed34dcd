//! What is drawn: outlines as polygons, for `geo` to judge, and texts with their places.

use geo::{LineString, Polygon};
use kurbo::{BezPath, PathEl, Rect, Vec2};
use reinwright_core::paper::{Drawing, Item};

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

/// Every text of a drawing with the room that it takes.
pub fn texts(drawing: &Drawing) -> Vec<(String, Rect)> {
    fn gather(items: &[Item], shift: Vec2, found: &mut Vec<(String, Rect)>) {
        for item in items {
            match item {
                Item::Text(text) => found.push((text.text.clone(), text.bounds() + shift)),
                Item::Group(group) => gather(&group.items, shift + group.shift, found),
                Item::Path(_) => {}
            }
        }
    }
    let mut found = Vec::new();
    gather(&drawing.items, Vec2::ZERO, &mut found);
    found
}
