//! Plane geometry: flattened paths, hulls, and splitting a line where something stands before it.

use std::ops::RangeInclusive;

use kurbo::{BezPath, PathEl, Point, Rect, Vec2};

/// How far a flattened curve may stray, mm: a fifth of the narrowest line.
pub(crate) const STRAY: f64 = 0.02;

/// An area bounded by a closed path, ready to be asked: its sides stand in upright strips, so
/// that a question looks at the few that are near.
pub(crate) struct Region {
    /// All strips' sides, one strip after the other.
    sides: Vec<(Point, Point)>,
    /// Where each strip's sides begin; one more for the end.
    starts: Vec<usize>,
    bounds: Rect,
    strips_per_mm: f64,
}

/// A line that lies in an area does so to both sides by so much, mm: less than a line's width, more
/// than a flattened curve strays.
const ASIDE: f64 = 0.06;

/// Strips across an area: about as many as a flattened outline has sides in a strip.
const STRIPS: u16 = 48;

impl Region {
    pub(crate) fn new(path: &BezPath) -> Self {
        let all = sides(path);
        let boxes = all.iter().map(|&(a, b)| Rect::from_points(a, b));
        let bounds = boxes.reduce(|a, b| a.union(b)).unwrap_or(Rect::ZERO);
        let mut region = Self {
            sides: Vec::new(),
            starts: vec![0; usize::from(STRIPS) + 1],
            bounds,
            strips_per_mm: f64::from(STRIPS) / bounds.width().max(1e-9),
        };
        let spans = all.iter().map(|(a, b)| region.strips_between(a.x, b.x));
        let spans: Vec<RangeInclusive<usize>> = spans.collect();
        for strip in spans.iter().cloned().flatten() {
            region.starts[strip + 1] += 1;
        }
        for strip in 0..usize::from(STRIPS) {
            region.starts[strip + 1] += region.starts[strip];
        }
        let mut next = region.starts.clone();
        region.sides = vec![(Point::ORIGIN, Point::ORIGIN); region.starts[usize::from(STRIPS)]];
        for (side, span) in all.into_iter().zip(spans) {
            for strip in span {
                region.sides[next[strip]] = side;
                next[strip] += 1;
            }
        }
        region
    }

    fn strip(&self, strip: usize) -> &[(Point, Point)] {
        &self.sides[self.starts[strip]..self.starts[strip + 1]]
    }

    /// The strips that a stretch of x lies in.
    fn strips_between(&self, a: f64, b: f64) -> RangeInclusive<usize> {
        let last = f64::from(STRIPS - 1);
        let place = |x: f64| {
            let part = (x - self.bounds.x0) * self.strips_per_mm;
            #[allow(
                clippy::cast_possible_truncation,
                clippy::cast_sign_loss,
                reason = "clamped to the strips there are"
            )]
            let strip = part.clamp(0.0, last) as usize;
            strip
        };
        place(a.min(b))..=place(a.max(b))
    }

    /// Whether a point lies inside (even-odd): how many sides stand above it.
    pub(crate) fn holds(&self, p: Point) -> bool {
        if !self.bounds.contains(p) {
            return false;
        }
        let strip = self.strip(*self.strips_between(p.x, p.x).start());
        let above = strip.iter().filter(|(a, b)| {
            (a.x > p.x) != (b.x > p.x) && p.y < a.y + (b.y - a.y) * (p.x - a.x) / (b.x - a.x)
        });
        above.count() % 2 == 1
    }

    /// Whether a line through `p` lies inside, so far `aside` too: not on the boundary, where two
    /// halves have the same edge.
    fn covers(&self, p: Point, aside: Vec2) -> bool {
        self.holds(p + aside) && self.holds(p - aside)
    }

    /// Whether a line could cross it or lie in it.
    fn is_near(&self, (a, b): (Point, Point)) -> bool {
        let box_of_line = Rect::from_points(a, b).inflate(2.0 * ASIDE, 2.0 * ASIDE);
        overlap(box_of_line, self.bounds)
    }

    /// Adds where a line crosses the boundary, as parts of the line.
    fn crossings(&self, (a, b): (Point, Point), ts: &mut Vec<f64>) {
        let box_of_line = Rect::from_points(a, b);
        if !overlap(box_of_line, self.bounds) {
            return;
        }
        for strip in self.strips_between(a.x, b.x) {
            for &(p, q) in self.strip(strip) {
                if overlap(box_of_line, Rect::from_points(p, q)) {
                    ts.extend(crossing((a, b), (p, q)));
                }
            }
        }
    }
}

fn overlap(a: Rect, b: Rect) -> bool {
    a.x0 <= b.x1 && b.x0 <= a.x1 && a.y0 <= b.y1 && b.y0 <= a.y1
}

/// Where the first line crosses the second, as a part of the first.
fn crossing((a, b): (Point, Point), (p, q): (Point, Point)) -> Option<f64> {
    let (d, e) = (b - a, q - p);
    let across = d.cross(e);
    if across.abs() < 1e-12 {
        return None;
    }
    let (t, u) = ((p - a).cross(e) / across, (p - a).cross(d) / across);
    ((0.0..=1.0).contains(&t) && (0.0..1.0).contains(&u)).then_some(t)
}

/// The corners of a path made of straight lines that stray from it by no more than so much, mm.
pub(crate) fn corners(path: &BezPath, stray: f64) -> Vec<Point> {
    let mut corners = Vec::new();
    kurbo::flatten(path.iter(), stray, |el| match el {
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
    kurbo::flatten(path.iter(), stray, |el| match el {
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

/// A line in two: what can be seen, and what lies behind one of the regions.
pub(crate) struct Split {
    pub(crate) seen: BezPath,
    pub(crate) behind: BezPath,
}

/// Splits a path where it passes behind regions.
pub(crate) fn split(path: &BezPath, before: &[&Region]) -> Split {
    let mut split = Split {
        seen: BezPath::new(),
        behind: BezPath::new(),
    };
    let (mut ts, mut near): (Vec<f64>, Vec<&Region>) = (Vec::new(), Vec::new());
    for (a, b) in sides(path) {
        near.clear();
        near.extend(before.iter().filter(|region| region.is_near((a, b))));
        ts.clear();
        ts.extend([0.0, 1.0]);
        near.iter()
            .for_each(|region| region.crossings((a, b), &mut ts));
        ts.sort_unstable_by(f64::total_cmp);
        let aside = (b - a).normalize().turn_90() * ASIDE;
        for pair in ts.windows(2).filter(|pair| pair[1] - pair[0] > 1e-9) {
            let middle = a.lerp(b, f64::midpoint(pair[0], pair[1]));
            let hidden = near.iter().any(|region| region.covers(middle, aside));
            let to = if hidden {
                &mut split.behind
            } else {
                &mut split.seen
            };
            add(to, a.lerp(b, pair[0]), a.lerp(b, pair[1]));
        }
    }
    split
}

/// Adds a line, going on from the last one where it can.
fn add(path: &mut BezPath, a: Point, b: Point) {
    let last = match path.elements().last() {
        Some(PathEl::MoveTo(p) | PathEl::LineTo(p)) => Some(*p),
        _ => None,
    };
    if last.is_none_or(|last| last.distance(a) > 1e-7) {
        path.move_to(a);
    }
    path.line_to(b);
}

/// The convex hull of points (monotone chain), anticlockwise.
pub(crate) fn hull(mut points: Vec<Point>) -> Vec<Point> {
    points.sort_by(|a, b| a.x.total_cmp(&b.x).then_with(|| a.y.total_cmp(&b.y)));
    let mut lower = chain(points.iter().copied());
    lower.extend(chain(points.iter().rev().copied()));
    lower
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
