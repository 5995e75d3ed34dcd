//! An outline seen from the rivet: which directions it fills at each distance.
//!
//! Two halves that turn about the rivet only shift those directions, so how far they can turn
//! before they touch is read off without trying any pose.

use std::f64::consts::{PI, TAU};

use kurbo::{BezPath, Point};

use crate::number::plane::corners as corners_of;

/// How far a flattened curve may stray, mm.
const FLAT: f64 = 0.01;
/// Distances from the rivet nearer than this are looked at once, mm.
const SAME: f64 = 0.05;
/// How near a corner that is nearest to or farthest from the rivet it is looked at, mm.
const BESIDE: f64 = 1e-6;
/// Between two distances there is no more than this, mm.
const STRIDE: f64 = 4.0;
/// A half that reaches farther than this, mm, is looked at as coarsely as it is larger, so that one
/// of which a size was mistyped is no more work than another: no pair is over 4 m long.
const FAR: f64 = 4000.0;

/// How much coarser a half of this reach is looked at than one of the usual size.
fn coarser(reach: f64) -> f64 {
    (reach / FAR).max(1.0)
}

/// A stretch of directions, radians, `from` < `to`; `from` lies in −π…π.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Span {
    pub(super) from: f64,
    pub(super) to: f64,
}

/// What a half fills at some distances from the rivet.
#[derive(Debug, Clone, PartialEq, Default)]
pub(super) struct Rings {
    all: Vec<Span>,
    across: Vec<Span>,
    /// Where the stretches of each distance end in both lists.
    ends: Vec<[usize; 2]>,
}

/// What a half fills at one distance from the rivet.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Ring<'a> {
    /// All of the half.
    pub(super) all: &'a [Span],
    /// What reaches over the middle plane into the other half's layer.
    pub(super) across: &'a [Span],
}

impl Rings {
    /// Distance by distance.
    pub(super) fn iter(&self) -> impl Iterator<Item = Ring<'_>> {
        let mut from = [0, 0];
        self.ends.iter().map(move |&to| {
            let [all, across] = std::mem::replace(&mut from, to);
            Ring {
                all: &self.all[all..to[0]],
                across: &self.across[across..to[1]],
            }
        })
    }
}

/// A closed outline as points, anticlockwise.
pub(super) fn flatten(path: &BezPath) -> Vec<Point> {
    let bounds = path.control_box();
    let reach = bounds.width().max(bounds.height());
    let mut points = corners_of(path, FLAT * coarser(reach));
    points.dedup_by(|a, b| a.distance(*b) < 1e-9);
    let area: f64 = edges(&points)
        .map(|(p, q)| p.to_vec2().cross(q.to_vec2()))
        .sum();
    if area < 0.0 {
        points.reverse();
    }
    points
}

/// The sides of a closed outline.
fn edges(points: &[Point]) -> impl Iterator<Item = (Point, Point)> {
    let next = points.iter().skip(1).chain(points.first());
    points.iter().copied().zip(next.copied())
}

/// Distances from the rivet at which both outlines must be looked at: every corner, just beside
/// the corners that are nearest or farthest, where an outline crosses the middle plane, and in
/// between. Each outline comes with the x past which it reaches over that plane.
pub(super) fn distances(outlines: &[(&[Point], [f64; 2])], from: f64) -> Vec<f64> {
    let (mut plain, mut sharp) = (Vec::new(), vec![from]);
    for (points, clear) in outlines {
        corners(points, &mut plain, &mut sharp);
        let [neck, shoulder] = *clear;
        let past = [neck, -shoulder].into_iter();
        sharp.extend(past.flat_map(|x| crossings(points, x)).flat_map(beside));
    }
    plain.sort_unstable_by(f64::total_cmp);
    plain.dedup_by(|b, a| *b - *a < SAME);
    let mut all = plain;
    all.extend(sharp);
    all.retain(|&r| r >= from);
    all.sort_unstable_by(f64::total_cmp);
    filled(&all)
}

/// The distances with others between, so that none are farther apart than [`STRIDE`] on a
/// pair of usual size.
fn filled(all: &[f64]) -> Vec<f64> {
    let mut even = Vec::with_capacity(2 * all.len());
    let stride = STRIDE * coarser(all.last().copied().unwrap_or(0.0));
    for pair in all.windows(2) {
        let gap = pair[1] - pair[0];
        let parts = (gap / stride).ceil().max(1.0);
        let mut i = 0.0;
        while i < parts {
            even.push(pair[0] + gap * i / parts);
            i += 1.0;
        }
    }
    even.extend(all.last());
    even
}

/// A distance and those just beside it.
fn beside(r: f64) -> [f64; 3] {
    [r - BESIDE, r, r + BESIDE]
}

/// The distance of every corner: plain ones, and those nearest or farthest with places just
/// beside them.
fn corners(points: &[Point], plain: &mut Vec<f64>, sharp: &mut Vec<f64>) {
    let r: Vec<f64> = points.iter().map(|p| p.to_vec2().hypot()).collect();
    let count = r.len();
    for i in 0..count {
        let (before, after) = (r[(i + count - 1) % count], r[(i + 1) % count]);
        if (r[i] >= before) == (r[i] >= after) {
            sharp.extend(beside(r[i]));
        } else {
            plain.push(r[i]);
        }
    }
}

/// The distances at which an outline passes an x.
fn crossings(points: &[Point], x: f64) -> impl Iterator<Item = f64> {
    let passing = move |(p, q): &(Point, Point)| (p.x > x) != (q.x > x);
    edges(points)
        .filter(passing)
        .map(move |(p, q)| x.hypot(p.y + (q.y - p.y) * (x - p.x) / (q.x - p.x)))
}

/// What an outline fills at each distance. `clear` is the x, towards the jaw and towards the rein
/// (both positive), past which it reaches over the middle plane.
pub(super) fn rings(points: &[Point], distances: &[f64], clear: [f64; 2]) -> Rings {
    let mut crossings = Vec::with_capacity(8 * distances.len());
    for (p, q) in edges(points) {
        cross(p, q, distances, &mut crossings);
    }
    let mut by_ring = by_ring(&crossings, distances.len());
    let mut rings = Rings::default();
    let mut rest = by_ring.as_mut_slice();
    for (i, &r) in distances.iter().enumerate() {
        let count = rest.partition_point(|crossing| crossing.ring <= i);
        let (mine, others) = rest.split_at_mut(count);
        rest = others;
        // Where a corner just touches the circle the way in comes first, so that it fills nothing.
        let out = |way: Way| way == Way::Out;
        mine.sort_unstable_by(|a, b| {
            let angles = a.angle.total_cmp(&b.angle);
            angles.then(out(a.way).cmp(&out(b.way)))
        });
        let first = rings.all.len();
        spans(mine, &mut rings.all);
        for window in windows(r, clear) {
            let all = rings.all[first..].iter();
            rings
                .across
                .extend(all.flat_map(|span| common(*span, window)));
        }
        rings.ends.push([rings.all.len(), rings.across.len()]);
    }
    rings
}

/// The crossings of one circle after those of another, by counting.
fn by_ring(crossings: &[Crossing], rings: usize) -> Vec<Crossing> {
    let mut starts = vec![0; rings + 1];
    for crossing in crossings {
        starts[crossing.ring + 1] += 1;
    }
    for ring in 0..rings {
        starts[ring + 1] += starts[ring];
    }
    let mut sorted = crossings.to_vec();
    for crossing in crossings {
        sorted[starts[crossing.ring]] = *crossing;
        starts[crossing.ring] += 1;
    }
    sorted
}

/// Where an outline crosses one of the circles.
#[derive(Debug, Clone, Copy, PartialEq)]
struct Crossing {
    ring: usize,
    angle: f64,
    way: Way,
}

/// Whether a side of the outline leads into it or out of it, going round anticlockwise.
#[derive(Debug, Clone, Copy, PartialEq)]
enum Way {
    In,
    Out,
}

/// Where a side crosses the circles about the rivet.
fn cross(p: Point, q: Point, distances: &[f64], crossings: &mut Vec<Crossing>) {
    let d = q - p;
    let long = d.hypot2();
    if long < 1e-18 {
        return;
    }
    let (foot, far) = (-p.to_vec2().dot(d) / long, p.to_vec2().hypot2());
    let least2 = (far - foot * foot * long).max(0.0);
    // Ends are measured alike for both sides that share a corner, so that none slips through.
    let (near_p, near_q, least) = (p.to_vec2().hypot(), q.to_vec2().hypot(), least2.sqrt());
    let mut add = |(low, high): (f64, f64), (t0, t1): (f64, f64), way: Way| {
        let first = distances.partition_point(|&r| r <= low);
        let last = distances.partition_point(|&r| r <= high);
        let sign = if way == Way::Out { -1.0 } else { 1.0 };
        let reached = distances[..last].iter().enumerate().skip(first);
        for (ring, r) in reached {
            let t = foot + sign * ((r.powi(2) - least2).max(0.0) / long).sqrt();
            let at = p + d * t.clamp(t0, t1);
            crossings.push(Crossing {
                ring,
                angle: at.y.atan2(at.x),
                way,
            });
        }
    };
    // Outward sides of an anticlockwise outline lead in, inward ones out.
    if foot >= 1.0 {
        add((near_q, near_p), (0.0, 1.0), Way::Out);
    } else if foot <= 0.0 {
        add((near_p, near_q), (0.0, 1.0), Way::In);
    } else {
        add((least, near_p), (0.0, foot), Way::Out);
        add((least, near_q), (foot, 1.0), Way::In);
    }
}

/// From the crossings of one circle, by angle, to filled stretches.
fn spans(found: &[Crossing], spans: &mut Vec<Span>) {
    let count = found.len();
    for (i, crossing) in found.iter().enumerate() {
        if crossing.way == Way::Out {
            continue;
        }
        // The first way out after it, round the back if need be.
        let last = (1..count).find(|k| found[(i + k) % count].way == Way::Out);
        if let Some(k) = last {
            let to = found[(i + k) % count].angle;
            let to = if i + k < count { to } else { to + TAU };
            let from = crossing.angle;
            spans.push(Span { from, to });
        }
    }
}

/// The directions at distance `r` that lie past `clear`, towards the jaw and towards the rein.
fn windows(r: f64, clear: [f64; 2]) -> impl Iterator<Item = Span> {
    [(0.0, clear[0]), (PI, clear[1])]
        .into_iter()
        .filter(move |(_, clear)| r > *clear)
        .map(move |(middle, clear)| {
            let half = (clear / r).clamp(-1.0, 1.0).acos();
            Span {
                from: middle - half,
                to: middle + half,
            }
        })
}

/// What two stretches share, whichever turn they are counted in.
fn common(a: Span, b: Span) -> impl Iterator<Item = Span> {
    [-TAU, 0.0, TAU].into_iter().filter_map(move |turn| {
        let from = a.from.max(b.from + turn);
        let to = a.to.min(b.to + turn);
        (to - from > 1e-12).then_some(Span { from, to })
    })
}

impl Span {
    /// The same stretch of half B in its place: (x, y) → (x, −y).
    pub(super) fn turned_over(self) -> Self {
        Self {
            from: -self.to,
            to: -self.from,
        }
    }
}
