//! Areas, and splitting lines where areas stand before them.

use std::ops::RangeInclusive;

use kurbo::{BezPath, PathEl, Point, Rect, Vec2};

use super::plane::{sides, sides_of};

/// An area bounded by a closed path, ready to be asked: its sides stand in upright strips, so
/// that a question looks at the few that are near.
pub(crate) struct Region {
    /// All strips' sides, one strip after the other.
    sides: Vec<Side>,
    /// Where each strip's sides begin; one more for the end.
    starts: Vec<usize>,
    bounds: Rect,
    strips_per_mm: f64,
    /// Whether it is nowhere hollow.
    is_hull: bool,
}

/// A side of an area.
#[derive(Clone, Copy)]
struct Side {
    from: Point,
    to: Point,
    low: f64,
    high: f64,
}

impl Side {
    fn of((from, to): (Point, Point)) -> Self {
        Self {
            from,
            to,
            low: from.y.min(to.y),
            high: from.y.max(to.y),
        }
    }

    /// Whether its box and another one share a place.
    fn overlaps(&self, other: Rect) -> bool {
        self.low <= other.y1
            && other.y0 <= self.high
            && self.from.x.min(self.to.x) <= other.x1
            && other.x0 <= self.from.x.max(self.to.x)
    }
}

/// A line that lies in an area does so to both sides by so much, mm: less than a line's width, more
/// than a flattened curve strays.
const ASIDE: f64 = 0.06;

/// Strips across an area: about as many as a flattened outline has sides in a strip.
const STRIPS: u16 = 48;

impl Region {
    pub(crate) fn new(path: &BezPath) -> Self {
        Self::within(sides(path))
    }

    /// The area with these corners.
    pub(crate) fn of(corners: &[Point]) -> Self {
        Self::within(sides_of(corners).collect())
    }

    /// The area of a hull: what has both ends inside lies inside.
    pub(crate) fn of_hull(corners: &[Point]) -> Self {
        Self {
            is_hull: true,
            ..Self::of(corners)
        }
    }

    fn within(all: Vec<(Point, Point)>) -> Self {
        let boxes = all.iter().map(|&(a, b)| Rect::from_points(a, b));
        let bounds = boxes.reduce(|a, b| a.union(b)).unwrap_or(Rect::ZERO);
        let mut region = Self {
            sides: Vec::new(),
            starts: vec![0; usize::from(STRIPS) + 1],
            bounds,
            strips_per_mm: f64::from(STRIPS) / bounds.width().max(1e-9),
            is_hull: false,
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
        let nothing = Side::of((Point::ORIGIN, Point::ORIGIN));
        region.sides = vec![nothing; region.starts[usize::from(STRIPS)]];
        for (side, span) in all.into_iter().map(Side::of).zip(spans) {
            for strip in span {
                region.sides[next[strip]] = side;
                next[strip] += 1;
            }
        }
        region
    }

    fn strip(&self, strip: usize) -> &[Side] {
        &self.sides[self.starts[strip]..self.starts[strip + 1]]
    }

    pub(crate) fn bounds(&self) -> Rect {
        self.bounds
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
        let above = strip.iter().filter(|side| {
            let (a, b) = (side.from, side.to);
            (a.x > p.x) != (b.x > p.x) && p.y < a.y + (b.y - a.y) * (p.x - a.x) / (b.x - a.x)
        });
        above.count() % 2 == 1
    }

    /// Whether a line through `p` lies inside, so far `aside` too: not on the boundary, where two
    /// halves have the same edge.
    fn covers(&self, p: Point, aside: Vec2) -> bool {
        self.holds(p + aside) && self.holds(p - aside)
    }

    /// Whether a line is seen to lie inside by its ends alone.
    fn buries(&self, (a, b): (Point, Point), aside: Vec2) -> bool {
        self.is_hull && self.covers(a, aside) && self.covers(b, aside)
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
            let near = self.strip(strip).iter();
            for side in near.filter(|side| side.overlaps(box_of_line)) {
                ts.extend(crossing((a, b), (side.from, side.to)));
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
    let mut cutter = Cutter::default();
    for side in sides(path) {
        cutter.cut(side, before, |stands, (a, b)| {
            let to = match stands {
                Stands::Free => &mut split.seen,
                Stands::Behind => &mut split.behind,
            };
            add(to, a, b);
        });
    }
    split
}

/// What can be seen of lines where regions stand before them.
pub(crate) fn seen(lines: impl Iterator<Item = (Point, Point)>, before: &[&Region]) -> BezPath {
    let mut seen = BezPath::new();
    let mut cutter = Cutter::default();
    for (a, b) in lines {
        let aside = aside(a, b);
        if before.iter().any(|region| region.buries((a, b), aside)) {
            continue;
        }
        cutter.cut((a, b), before, |stands, (a, b)| match stands {
            Stands::Free => add(&mut seen, a, b),
            Stands::Behind => {}
        });
    }
    seen
}

/// How a piece of a line stands to the regions before it.
enum Stands {
    Free,
    Behind,
}

/// Cuts lines where they cross regions; it keeps its lists from one line to the next.
#[derive(Default)]
struct Cutter<'a> {
    near: Vec<&'a Region>,
    ts: Vec<f64>,
}

impl<'a> Cutter<'a> {
    /// Tells each piece of a line in turn.
    fn cut(
        &mut self,
        (a, b): (Point, Point),
        before: &[&'a Region],
        mut tell: impl FnMut(Stands, (Point, Point)),
    ) {
        let Self { near, ts } = self;
        near.clear();
        near.extend(before.iter().filter(|region| region.is_near((a, b))));
        if near.is_empty() {
            tell(Stands::Free, (a, a.lerp(b, 1.0)));
            return;
        }
        ts.clear();
        ts.extend([0.0, 1.0]);
        near.iter().for_each(|region| region.crossings((a, b), ts));
        ts.sort_unstable_by(f64::total_cmp);
        let aside = aside(a, b);
        for pair in ts.windows(2).filter(|pair| pair[1] - pair[0] > 1e-9) {
            let middle = a.lerp(b, f64::midpoint(pair[0], pair[1]));
            let stands = if near.iter().any(|region| region.covers(middle, aside)) {
                Stands::Behind
            } else {
                Stands::Free
            };
            tell(stands, (a.lerp(b, pair[0]), a.lerp(b, pair[1])));
        }
    }
}

/// From a line to its left, as far as it must lie inside.
fn aside(a: Point, b: Point) -> Vec2 {
    (b - a).normalize().turn_90() * ASIDE
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

#[cfg(test)]
mod tests {
    use super::*;
    use crate::number::plane::Corners;

    fn square(x: f64, y: f64, side: f64) -> Vec<Point> {
        let corners = [(0.0, 0.0), (side, 0.0), (side, side), (0.0, side)];
        corners.map(|(u, v)| Point::new(x + u, y + v)).to_vec()
    }

    fn length(path: &BezPath) -> f64 {
        sides(path).iter().map(|(a, b)| a.distance(*b)).sum()
    }

    /// What is seen of a square past another is its outline less what lies inside: two sides of 1 mm of
    /// a square that is moved aslant by 3 of its 4 mm, all of one that lies apart, none of one inside.
    #[test]
    fn lines_are_seen_past_hulls_and_areas_alike() {
        let table = [(3.0, 4.0, 14.0), (9.0, 4.0, 16.0), (1.0, 2.0, 0.0)];
        for (at, side, expected) in table {
            let corners = square(at, at, side);
            let before = square(0.0, 0.0, 4.0);
            for region in [Region::of(&before), Region::of_hull(&before)] {
                let seen = length(&seen(sides_of(&corners), &[&region]));
                assert!(
                    (seen - expected).abs() < 1e-9,
                    "{at}: {seen}, not {expected}"
                );
            }
        }
    }

    /// The hull of two squares in a row is the box around both, inner points or not.
    #[test]
    fn hulls_join_to_the_hull_of_both() {
        let with_inner = |mut points: Vec<Point>| {
            let middle = points[0].midpoint(points[2]);
            points.extend([middle, middle.midpoint(points[1])]);
            Corners::of(points)
        };
        let [first, last] = [square(0.0, 0.0, 2.0), square(5.0, 0.0, 2.0)].map(with_inner);
        let expected = [(0.0, 0.0), (7.0, 0.0), (7.0, 2.0), (0.0, 2.0)].map(Point::from);
        assert_eq!(first.hull_with(&last), expected);
        assert_eq!(last.hull_with(&first), expected);
    }
}
