//! Where the outline of a jaw crosses itself.

use kurbo::Point;

use crate::number::plane::{STRAY, corners};
use crate::shape::sweep::{Edge, Sweep};

/// A place where back or inside cross themselves or each other; `None` for the sound outline of a
/// jaw. Along a straight line both run forward only and cannot.
pub(super) fn of(jaw: &Sweep) -> Option<Point> {
    if jaw.path.runs().all(|run| run.curvature == 0.0) {
        return None;
    }
    let corners = round(jaw);
    let mut sides: Vec<(Point, Point)> = corners.windows(2).map(|w| (w[0], w[1])).collect();
    // By their left ends, so that only sides that share a stretch of x are compared.
    sides.sort_by(|a, b| left(a).total_cmp(&left(b)));
    sides.iter().enumerate().find_map(|(i, side)| {
        let near = sides[i + 1..].iter();
        let near = near.take_while(|other| left(other) <= right(side));
        near.filter_map(|other| meet(side, other)).next()
    })
}

fn left(side: &(Point, Point)) -> f64 {
    side.0.x.min(side.1.x)
}

fn right(side: &(Point, Point)) -> f64 {
    side.0.x.max(side.1.x)
}

/// From the tip along the back to the heel, and along the inside to the tip.
fn round(jaw: &Sweep) -> Vec<Point> {
    let mut round = corners(&jaw.edge(Edge::Outer, jaw.length(), 0.0), STRAY);
    round.extend(corners(&jaw.edge(Edge::Inner, 0.0, jaw.length()), STRAY));
    round
}

/// Where two sides cross, both of them inside their ends.
fn meet(a: &(Point, Point), b: &(Point, Point)) -> Option<Point> {
    /// Sides that touch within this part of their length do not cross.
    const TOUCH: f64 = 1e-6;
    let (along, other, between) = (a.1 - a.0, b.1 - b.0, b.0 - a.0);
    let turn = along.cross(other);
    if turn == 0.0 {
        return None;
    }
    let (s, t) = (between.cross(other) / turn, between.cross(along) / turn);
    let inside = |t: f64| t > TOUCH && t < 1.0 - TOUCH;
    (inside(s) && inside(t)).then(|| a.0 + along * s)
}
