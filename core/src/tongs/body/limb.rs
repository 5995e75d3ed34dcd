use kurbo::{CubicBez, ParamCurve, ParamCurveDeriv, Point, Vec2};

use super::rim::{Foot, Rim};
use crate::number::roots::rising_root;
use crate::shape::curve::Curve;

/// Where a limb ends and how its edges run there: points in the limb's frame (+x away from the
/// boss, +y to the outside of the half).
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct LimbEnd {
    /// End of the inner edge.
    pub inner: Point,
    /// End of the outer edge.
    pub outer: Point,
    /// dy/dx of the inner edge there.
    pub inner_slope: f64,
    /// dy/dx of the outer edge there.
    pub outer_slope: f64,
}

/// What a limb is asked to be.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct LimbSpec {
    /// Depth where it leaves the boss, mm.
    pub depth: f64,
    /// Radius of the inside corners, mm; outside it is the least.
    pub fillet: f64,
    /// Its far end.
    pub end: LimbEnd,
}

/// A neck or a shoulder: two edges that run from the boss to the jaw or the rein, each joined to
/// the rim by a fillet.
#[derive(Debug, Clone, PartialEq)]
pub struct Limb {
    /// The inner edge, from the fillet to the end.
    inner: Curve,
    /// The outer edge, from the fillet to the end.
    outer: Curve,
    inner_fillet: Option<Curve>,
    outer_fillet: Option<Curve>,
    /// Where the inner fillet meets the rim.
    pub inner_foot: Foot,
    /// Where the outer fillet meets the rim.
    pub outer_foot: Foot,
    /// The smallest fillet that could be made, mm; as asked, if there was room.
    pub fillet: f64,
}

/// Which edge of a limb.
#[derive(Clone, Copy, PartialEq)]
enum Side {
    Inner,
    Outer,
}

impl Limb {
    /// Grows a limb out of a boss.
    ///
    /// The inner edge runs from inside the boss to its end, level with the end where the boss is
    /// tall enough; the outer edge is as far from it as the asked depth where they pass the edge
    /// of the boss.
    pub fn grow(rim: &Rim, spec: &LimbSpec) -> Self {
        let (inner, outer) = (inner_edge(rim, spec), outer_edge(rim, spec));
        let inner = fillet(rim, &Rolled::along(inner, Side::Inner), spec.fillet);
        let rolled = Rolled::along(outer, Side::Outer);
        let outer = fillet(rim, &rolled, fair(rim, &rolled, outer, spec.fillet));
        Self {
            inner: inner.edge,
            outer: outer.edge,
            inner_fillet: inner.arc,
            outer_fillet: outer.arc,
            inner_foot: inner.foot,
            outer_foot: outer.foot,
            fillet: inner.radius.min(outer.radius),
        }
    }

    /// From the rim to the end along the inside: fillet, then edge.
    pub fn inner_edge(&self) -> Vec<Curve> {
        self.inner_fillet
            .iter()
            .copied()
            .chain([self.inner])
            .collect()
    }

    /// The x, in the limb's frame, past which the inside stays above a height; the end if it never
    /// does.
    pub fn rises_over(&self, y: f64) -> f64 {
        const PARTS: u32 = 24;
        let curves = self.inner_edge();
        let steps = (1..=PARTS).rev().map(|i| f64::from(i) / f64::from(PARTS));
        let mut above = self.inner_end().x;
        for (curve, t) in curves
            .iter()
            .rev()
            .flat_map(|c| steps.clone().map(move |t| (c, t)))
        {
            let at = curve.at(t);
            if at.y < y {
                break;
            }
            above = at.x;
        }
        above
    }

    /// From the end to the rim along the outside: edge, then fillet.
    pub fn outer_edge(&self) -> Vec<Curve> {
        let fillet = self.outer_fillet.iter().map(Curve::reversed);
        [self.outer.reversed()].into_iter().chain(fillet).collect()
    }

    /// The far end of the inner edge.
    pub fn inner_end(&self) -> Point {
        self.inner.end()
    }

    /// The far end of the outer edge.
    pub fn outer_end(&self) -> Point {
        self.outer.end()
    }

    /// A point of the inner edge past the fillet, t from 0 to 1.
    pub fn inner_at(&self, t: f64) -> Point {
        self.inner.at(t)
    }

    /// A point of the outer edge past the fillet, t from 0 to 1.
    pub fn outer_at(&self, t: f64) -> Point {
        self.outer.at(t)
    }

    /// Depth square to the limb's run at parameter t: the distance between the edges, measured
    /// along the line that is equally steep to both.
    pub fn depth_at(&self, t: f64) -> f64 {
        self.inner.at(t).distance(self.outer.at(t))
    }
}

fn cubic(from: Point, from_arm: Vec2, to: Point, to_arm: Vec2) -> CubicBez {
    CubicBez::new(from, from + from_arm, to - to_arm, to)
}

/// How early or late the edges rise: a steep limb rises early outside and late inside, so that it
/// does not grow thin where it is steep.
fn shares(rim: &Rim, end: Point, start: f64) -> (f64, f64) {
    let steep = ((end.y - start).abs() / (end.x - 0.5 * rim.half_along()).max(1.0)).min(1.0);
    (0.42 - 0.14 * steep, 0.42 + 0.16 * steep)
}

/// The slope at which a limb's inner edge sets out: most of that at its end where it rises to a
/// bowed rein, level else.
fn first_slope(spec: &LimbSpec) -> f64 {
    const MOST: f64 = 0.7;
    MOST * spec.end.inner_slope.max(0.0)
}

/// Where the inner edge starts over the rivet: low enough on the boss for the limb to leave it
/// with its whole depth, and inside the boss however far the end may dip below the rivet.
fn inner_start(rim: &Rim, spec: &LimbSpec) -> f64 {
    let across = rim.half_across();
    let highest = (across - 0.6 * spec.depth).clamp(0.12 * across, 0.55 * across);
    let back = spec.end.inner.y - first_slope(spec) * spec.end.inner.x;
    back.clamp(-0.6 * across, highest)
}

fn inner_edge(rim: &Rim, spec: &LimbSpec) -> CubicBez {
    let from = Point::new(0.0, inner_start(rim, spec));
    let to = spec.end.inner;
    let (early, late) = shares(rim, to, from.y);
    cubic(
        from,
        Vec2::new(1.0, first_slope(spec)) * (late * to.x),
        to,
        Vec2::new(1.0, spec.end.inner_slope) * (early * to.x),
    )
}

/// The outer edge: its start is as steep as gives the asked depth, square to the limb, where the
/// limb passes the edge of the boss. The x of the edge does not depend on how steep it starts,
/// so that is found in one step.
fn outer_edge(rim: &Rim, spec: &LimbSpec) -> CubicBez {
    const STEEPEST: f64 = 1.6;
    let inner = Curve::Cubic(inner_edge(rim, spec));
    let to = spec.end.outer;
    let from = Point::new(0.0, (inner.start().y + spec.depth).min(rim.half_across()));
    let (early, late) = shares(rim, to, from.y);
    let to_arm = Vec2::new(1.0, spec.end.outer_slope) * (late * to.x);
    let level = Curve::Cubic(cubic(from, Vec2::new(early * to.x, 0.0), to, to_arm));
    let edge = rim.half_along();
    let goal = inner.at(passes(&inner, edge)).y + spec.depth * lean(&inner, edge);
    let t = passes(&level, edge);
    let weight = 3.0 * t * (1.0 - t).powi(2) * early * to.x;
    let slope = if weight > 1e-6 {
        ((goal - level.at(t).y) / weight).clamp(-0.5, STEEPEST)
    } else {
        0.0
    };
    cubic(from, Vec2::new(1.0, slope) * (early * to.x), to, to_arm)
}

/// The first parameter at which a curve that sets out over the rivet reaches `x`; its end if it
/// does not.
fn passes(curve: &Curve, x: f64) -> f64 {
    let ends = curve.split_at(&[x]).into_iter().map(|part| part.1);
    let reached = |t: &f64| curve.at(*t).x >= x - 1e-6;
    ends.into_iter().find(reached).unwrap_or(1.0)
}

/// Upright distance over distance square to a curve where it passes `x`; no more than for 45°.
fn lean(curve: &Curve, x: f64) -> f64 {
    let slope = curve.slope(passes(curve, x));
    1f64.hypot((slope.y / slope.x.max(1e-9)).clamp(-1.0, 1.0))
}

/// Radius in which the outside runs into the rim, mm, so that the two make one fair line: that of
/// the boss itself where a limb leaves it low, and more the nearer to its top (judgement, from
/// looking at it: a smaller one shows as a dip beside the boss or as a corner over the rivet). It
/// leaves the far half of the edge to its own, and is never less than what was asked.
fn fair(rim: &Rim, rolled: &Rolled, edge: CubicBez, asked: f64) -> f64 {
    /// The last parameter of the edge that it may reach.
    const REACH: f64 = 0.45;
    const HALVINGS: u32 = 14;
    let most = fairest(rim, edge);
    if most <= asked {
        return asked;
    }
    let has_room = |r: f64| rolled.touches_within(rim, r, REACH);
    if !has_room(asked) {
        return asked;
    }
    if has_room(most) {
        return most;
    }
    let (mut least, mut most) = (asked, most);
    for _ in 0..HALVINGS {
        let middle = f64::midpoint(least, most);
        if has_room(middle) {
            least = middle;
        } else {
            most = middle;
        }
    }
    least
}

/// The radius that would be fair if there was room for any.
fn fairest(rim: &Rim, edge: CubicBez) -> f64 {
    /// Radii of the boss, low and at its top.
    const LOW: f64 = 1.0;
    const TOP: f64 = 3.0;
    /// Of the boss's height: what counts as low.
    const HIGH: f64 = 0.75;
    let high = (edge.p0.y / rim.half_across() - HIGH) / (1.0 - HIGH);
    (LOW + (TOP - LOW) * high.clamp(0.0, 1.0)) * rim.nearest()
}

struct Filleted {
    edge: Curve,
    arc: Option<Curve>,
    foot: Foot,
    radius: f64,
}

/// Joins an edge to the rim by an arc of radius `r`, or of the largest radius that there is room
/// for. The arc's centre is as far from the rim as from the edge.
fn fillet(rim: &Rim, rolled: &Rolled, r: f64) -> Filleted {
    let mut r = r;
    for _ in 0..12 {
        if let Some(t) = rolled.touch(rim, r) {
            return joined(rim, rolled, (t, r));
        }
        r *= 0.7;
    }
    let t = rolled.touch(rim, 0.0).unwrap_or(0.0);
    joined(rim, rolled, (t, 0.0))
}

fn joined(rim: &Rim, rolled: &Rolled, (t, r): (f64, f64)) -> Filleted {
    let centre = rolled.centre(t, r);
    let foot = rim.foot(centre);
    let edge = rolled.curve.part(t, 1.0);
    let arc = (r > 1e-6 && rim.point(foot).distance(edge.start()) > 1e-6).then(|| {
        let angle = |p: Point| (p - centre).atan2();
        let (from, to) = (angle(rim.point(foot)), angle(edge.start()));
        let full = std::f64::consts::TAU;
        // The inner fillet turns clockwise from rim to edge, the outer one anticlockwise.
        let turn = match rolled.side {
            Side::Inner => -(from - to).rem_euclid(full),
            Side::Outer => (to - from).rem_euclid(full),
        };
        Curve::Arc {
            centre,
            radius: r,
            from,
            turn,
        }
    });
    Filleted {
        edge,
        arc,
        foot,
        radius: r,
    }
}

/// The point `r` mm from a place on an edge that runs on so, on its empty side.
fn aside(at: Point, along: Vec2, r: f64, side: Side) -> Point {
    let left = along.turn_90() / along.hypot().max(1e-12);
    match side {
        Side::Inner => at - left * r,
        Side::Outer => at + left * r,
    }
}

/// Parts of an edge that a circle is rolled along.
const PARTS: usize = 64;

/// A circle rolled along an edge on its empty side: the edge at even parameters, with the way from
/// it to the circle's centre.
struct Rolled {
    curve: Curve,
    side: Side,
    places: [(Point, Vec2); PARTS + 1],
}

impl Rolled {
    fn along(edge: CubicBez, side: Side) -> Self {
        let (slopes, curve) = (edge.deriv(), Curve::Cubic(edge));
        let place = |i| {
            let at = edge.eval(part(i));
            let along = slopes.eval(part(i)).to_vec2();
            (at, aside(at, along, 1.0, side) - at)
        };
        Self {
            curve,
            side,
            places: std::array::from_fn(place),
        }
    }

    /// The centre of a circle of radius `r` at any parameter.
    fn centre(&self, t: f64, r: f64) -> Point {
        aside(self.curve.at(t), self.curve.slope(t), r, self.side)
    }

    /// How far a circle of radius `r` is from the rim at a place; below nothing where it cuts it.
    fn clear(&self, rim: &Rim, r: f64, i: usize) -> f64 {
        let (at, out) = self.places[i];
        rim.from_core(at + out * r) - rim.radius - r
    }

    /// The same at any parameter.
    fn clear_at(&self, rim: &Rim, r: f64, t: f64) -> f64 {
        rim.from_core(self.centre(t, r)) - rim.radius - r
    }

    /// The last place at which a circle touches or cuts the rim, if its end is clear of it.
    fn last_touched(&self, rim: &Rim, r: f64) -> Option<usize> {
        if self.clear(rim, r, PARTS) <= 0.0 {
            return None;
        }
        (0..PARTS).rev().find(|&i| self.clear(rim, r, i) <= 1e-9)
    }

    /// The last parameter at which a circle of radius `r` touches the rim.
    fn touch(&self, rim: &Rim, r: f64) -> Option<f64> {
        let i = self.last_touched(rim, r)?;
        let ends = (part(i), part(i + 1));
        Some(rising_root(ends, 1e-14, |t| self.clear_at(rim, r, t)))
    }

    /// Whether that is no later than a parameter.
    fn touches_within(&self, rim: &Rim, r: f64, latest: f64) -> bool {
        self.last_touched(rim, r).is_some_and(|i| {
            part(i + 1) <= latest || part(i) < latest && self.clear_at(rim, r, latest) > 0.0
        })
    }
}

/// The parameter after so many parts of an edge.
#[allow(clippy::cast_precision_loss, reason = "a few dozen parts")]
fn part(i: usize) -> f64 {
    i as f64 / PARTS as f64
}
