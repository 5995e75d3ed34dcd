//! Plane geometry: flattened paths, figures cut by upright lines, and hulls.

use std::cmp::Ordering;

use kurbo::{BezPath, PathEl, Point, Vec2};

/// How far a flattened curve may stray, mm: a fifth of the narrowest line.
pub(crate) const STRAY: f64 = 0.02;

/// Tells the elements of a path made of straight lines that stray from it by no more than so much.
fn flattened(path: &BezPath, stray: f64, tell: impl FnMut(PathEl)) {
    let bent = |el: &PathEl| matches!(el, PathEl::QuadTo(..) | PathEl::CurveTo(..));
    if path.elements().iter().any(bent) {
        kurbo::flatten(path.iter(), stray, tell);
    } else {
        path.iter().for_each(tell);
    }
}

/// The corners of a path made of straight lines that stray from it by no more than so much, mm.
pub(crate) fn corners(path: &BezPath, stray: f64) -> Vec<Point> {
    let mut corners = Vec::new();
    flattened(path, stray, |el| match el {
        PathEl::MoveTo(p) | PathEl::LineTo(p) => corners.push(p),
        // Flattening leaves no curves, and a path is closed where it began.
        PathEl::QuadTo(..) | PathEl::CurveTo(..) | PathEl::ClosePath => {}
    });
    corners
}

/// The straight sides of a flattened path; open ends of closed figures are closed.
pub(crate) fn sides(path: &BezPath) -> Vec<(Point, Point)> {
    sides_within(path, STRAY)
}

/// The same with lines that stray from the path by no more than so much, mm.
pub(crate) fn sides_within(path: &BezPath, stray: f64) -> Vec<(Point, Point)> {
    let (mut first, mut last) = (Point::ORIGIN, Point::ORIGIN);
    let mut all = Vec::with_capacity(path.elements().len());
    flattened(path, stray, |el| match el {
        PathEl::MoveTo(p) => {
            first = p;
            last = p;
        }
        PathEl::LineTo(p) => {
            all.push((last, p));
            last = p;
        }
        PathEl::ClosePath => {
            if last.distance(first) > 1e-9 {
                all.push((last, first));
            }
            last = first;
        }
        // Flattening leaves no curves.
        PathEl::QuadTo(..) | PathEl::CurveTo(..) => {}
    });
    all
}

/// The sides of a closed figure from its corners.
pub(crate) fn sides_of(corners: &[Point]) -> impl Iterator<Item = (Point, Point)> + Clone {
    let next = corners.iter().skip(1).chain(corners.first());
    let sides = corners.iter().copied().zip(next.copied());
    sides.filter(|(a, b)| a.distance(*b) > 1e-9)
}

/// The part of a closed figure between two upright lines. Where a line splits it its pieces stay
/// joined along the line, which an even-odd fill does not show.
pub(crate) fn between(points: &[Point], from: f64, to: f64) -> Vec<Point> {
    let right = |p: Point| if from.is_finite() { p.x - from } else { 1.0 };
    let left = |p: Point| if to.is_finite() { to - p.x } else { 1.0 };
    cut(&cut(points, right), left)
}

/// Keeps the side of a figure on which `side` is positive.
fn cut(points: &[Point], side: impl Fn(Point) -> f64) -> Vec<Point> {
    let mut kept = Vec::new();
    for (i, &p) in points.iter().enumerate() {
        let q = points[(i + 1) % points.len()];
        let (a, b) = (side(p), side(q));
        if a >= 0.0 {
            kept.push(p);
        }
        if a * b < 0.0 {
            kept.push(p.lerp(q, a / (a - b)));
        }
    }
    kept
}

/// The convex hull of points (monotone chain), anticlockwise.
pub(crate) fn hull(mut points: Vec<Point>) -> Vec<Point> {
    drop_inner(&mut points);
    points.sort_by(from_left);
    hull_of_sorted(&points)
}

/// Drops points that cannot be corners of the hull: those inside of the four that lie farthest out
/// aslant (Akl and Toussaint's step, from memory), so that there are few to be sorted.
fn drop_inner(points: &mut Vec<Point>) {
    /// So far inside, mm², that no rounding takes a corner of the hull.
    const INSIDE: f64 = 1e-6;
    let Some(&first) = points.first() else {
        return;
    };
    let farthest = |way: Vec2| {
        let out = |p: Point| p.to_vec2().dot(way);
        let farther = |far: Point, p: &Point| if out(*p) > out(far) { *p } else { far };
        points.iter().fold(first, farther)
    };
    let four = [(-1.0, -1.0), (1.0, -1.0), (1.0, 1.0), (-1.0, 1.0)];
    let [a, b, c, d] = four.map(|way| farthest(Vec2::from(way)));
    let sides = [(a, b), (b, c), (c, d), (d, a)];
    points.retain(|&p| !sides.iter().all(|&(a, b)| (b - a).cross(p - a) > INSIDE));
}

/// From left to right, and what stands over each other from below.
fn from_left(a: &Point, b: &Point) -> Ordering {
    a.x.total_cmp(&b.x).then_with(|| a.y.total_cmp(&b.y))
}

fn hull_of_sorted(points: &[Point]) -> Vec<Point> {
    let mut lower = chain(points.iter().copied());
    lower.extend(chain(points.iter().rev().copied()));
    lower
}

/// The corners of a hull from left to right, ready to be part of a larger one.
pub(crate) struct Corners(Vec<Point>);

impl Corners {
    pub(crate) fn of(points: Vec<Point>) -> Self {
        let mut corners = hull(points);
        corners.sort_by(from_left);
        Self(corners)
    }

    pub(crate) fn points(&self) -> &[Point] {
        &self.0
    }

    /// The hull of these and others, anticlockwise.
    pub(crate) fn hull_with(&self, others: &Self) -> Vec<Point> {
        let (mut own, mut others) = (self.0.as_slice(), others.0.as_slice());
        let mut all = Vec::with_capacity(own.len() + others.len());
        while let ([p, rest @ ..], [q, more @ ..]) = (own, others) {
            if from_left(q, p) == Ordering::Less {
                all.push(*q);
                others = more;
            } else {
                all.push(*p);
                own = rest;
            }
        }
        all.extend(own.iter().chain(others));
        hull_of_sorted(&all)
    }
}

/// The side of a hull on the right of its points as they follow each other; the last is left to the
/// other side.
fn chain(points: impl ExactSizeIterator<Item = Point>) -> Vec<Point> {
    let mut kept: Vec<Point> = Vec::with_capacity(points.len());
    for p in points {
        while let [.., a, b] = kept[..] {
            if (b - a).cross(p - a) > 1e-12 {
                break;
            }
            kept.pop();
        }
        kept.push(p);
    }
    kept.pop();
    kept
}
