//! A closed outline at a distance from another one: where the middle of a cut runs.

use kurbo::{BezPath, Point, Vec2};

use super::plane::sides_within;

/// How closely a flattened outline follows the true one, mm.
const FINE: f64 = 0.005;
/// The longest side of the outline that is set off, mm: where a corner swallows a part of it, no
/// more than this is looked through.
const SIDE: f64 = 0.5;
/// A point that is nearer to the outline than the distance by more than this was swallowed, mm.
const HAIR: f64 = 1e-4;
/// Into what angles a rounded corner is divided, radians.
const ARC: f64 = 0.1;

/// The outline that runs at a distance outside of a closed one, or inside if it is negative, with
/// corners rounded where it goes around them.
pub(crate) fn offset(path: &BezPath, distance: f64) -> BezPath {
    let corners = corners(path);
    let raw = raw(&corners, distance);
    let sides: Vec<(Point, Point)> = around(&corners).collect();
    let least = distance.abs() - HAIR;
    let kept: Vec<bool> = raw
        .iter()
        .map(|p| !sides.iter().any(|side| is_nearer(*p, *side, least)))
        .collect();
    closed(&joined(&raw, &kept))
}

/// The corners of a closed path, anticlockwise, none far from the next.
fn corners(path: &BezPath) -> Vec<Point> {
    let sides = sides_within(path, FINE);
    let mut corners: Vec<Point> = Vec::new();
    for (a, b) in sides {
        let parts = (a.distance(b) / SIDE).ceil();
        let mut part = 0.0;
        while part < parts {
            let p = a.lerp(b, part / parts);
            if corners.last().is_none_or(|last| last.distance(p) > 1e-6) {
                corners.push(p);
            }
            part += 1.0;
        }
    }
    let twice: f64 = around(&corners)
        .map(|(a, b)| a.to_vec2().cross(b.to_vec2()))
        .sum();
    if twice < 0.0 {
        corners.reverse();
    }
    corners
}

/// The sides of a closed figure.
fn around(corners: &[Point]) -> impl Iterator<Item = (Point, Point)> + '_ {
    let next = corners.iter().cycle().skip(1);
    corners.iter().copied().zip(next.copied())
}

/// Every side moved outwards, with an arc where two of them part, and cut off where they cross.
fn raw(corners: &[Point], distance: f64) -> Vec<Point> {
    /// Sides that turn back on each other cross too far away to be cut off there.
    const BACK: f64 = -0.9;
    let sides: Vec<(Point, Point)> = around(corners).collect();
    let outwards = |(a, b): (Point, Point)| {
        let along = (b - a).normalize();
        Vec2::new(along.y, -along.x) * distance
    };
    let mut raw = Vec::new();
    for (index, side) in sides.iter().enumerate() {
        let (corner, next) = (side.1, sides[(index + 1) % sides.len()]);
        let (own, then) = (outwards(*side), outwards(next));
        let turn = own.cross(then).atan2(own.dot(then));
        // Where the sides part the figure turns towards the side it is moved to.
        if turn * distance > 0.0 {
            raw.push(corner + own);
            raw.extend(arc(corner, own, turn));
            raw.push(corner + then);
        } else if turn.cos() > BACK {
            raw.push(corner + (own + then) / (1.0 + turn.cos()));
        } else {
            raw.extend([corner + own, corner + then]);
        }
    }
    raw
}

/// Points about a corner, from one arm on.
fn arc(corner: Point, arm: Vec2, turn: f64) -> Vec<Point> {
    let parts = (turn.abs() / ARC).ceil();
    let mut points = Vec::new();
    let mut part = 1.0;
    while part < parts {
        let (sin, cos) = (turn * part / parts).sin_cos();
        points.push(corner + Vec2::new(arm.x * cos - arm.y * sin, arm.x * sin + arm.y * cos));
        part += 1.0;
    }
    points
}

fn is_nearer(p: Point, (a, b): (Point, Point), least: f64) -> bool {
    let far = a.x.min(b.x) - p.x > least
        || p.x - a.x.max(b.x) > least
        || a.y.min(b.y) - p.y > least
        || p.y - a.y.max(b.y) > least;
    if far {
        return false;
    }
    let along = b - a;
    let part = ((p - a).dot(along) / along.hypot2().max(f64::MIN_POSITIVE)).clamp(0.0, 1.0);
    p.distance(a + along * part) < least
}

/// What is kept, with the point in which its ends cross where something between was swallowed.
fn joined(raw: &[Point], kept: &[bool]) -> Vec<Point> {
    let count = raw.len();
    let Some(start) = (0..count).find(|i| kept[*i] && !kept[(i + count - 1) % count]) else {
        return if kept.first() == Some(&true) {
            raw.to_vec()
        } else {
            Vec::new()
        };
    };
    let mut points = Vec::new();
    let mut at = 0;
    while at < count {
        let index = (start + at) % count;
        points.push(raw[index]);
        let mut next = 1;
        while next < count && !kept[(index + next) % count] {
            next += 1;
        }
        if next > 1 {
            let leaving = (raw[index], raw[(index + 1) % count]);
            let (there, before) = ((index + next) % count, (index + next + count - 1) % count);
            points.extend(crossing(leaving, (raw[before], raw[there])));
        }
        at += next;
    }
    points
}

/// Where two sides cross, if they do.
fn crossing((a, b): (Point, Point), (c, d): (Point, Point)) -> Option<Point> {
    let (own, other) = (b - a, d - c);
    let across = own.cross(other);
    if across.abs() < 1e-12 {
        return None;
    }
    let part = (c - a).cross(other) / across;
    let there = (c - a).cross(own) / across;
    let on = |part: f64| (-1e-6..=1.0 + 1e-6).contains(&part);
    (on(part) && on(there)).then(|| a + own * part)
}

fn closed(points: &[Point]) -> BezPath {
    let mut path = BezPath::new();
    let mut points = points.iter();
    if let Some(first) = points.next() {
        path.move_to(*first);
        points.for_each(|p| path.line_to(*p));
        path.close_path();
    }
    path
}

#[cfg(test)]
mod tests {
    use kurbo::{Rect, Shape};

    use super::*;

    /// By hand: a square grows by its sides and a round at each corner, each of sixteen chords
    /// (a right angle in parts of no more than [`ARC`]), and shrinks to a square.
    #[test]
    fn a_square_grows_round_and_shrinks_sharp() {
        let square = Rect::new(0.0, 0.0, 30.0, 30.0).to_path(0.1);
        let grown = offset(&square, 2.0).area().abs();
        let chords = 4.0 * 16.0;
        let rounds = 0.5 * chords * 2.0 * 2.0 * (std::f64::consts::TAU / chords).sin();
        let expected = 900.0 + 4.0 * 30.0 * 2.0 + rounds;
        assert!((grown - expected).abs() < 1e-6, "{grown} {expected}");
        let shrunk = offset(&square, -2.0).area().abs();
        assert!((shrunk - 26.0 * 26.0).abs() < 1e-6, "{shrunk}");
    }

    /// The inside of a circle shrinks to a circle, whose sides are many and short.
    #[test]
    fn a_round_hole_grows_smaller_round() {
        let circle = kurbo::Circle::new((3.0, 4.0), 5.0).to_path(1e-4);
        let shrunk = offset(&circle, -0.8).area().abs();
        let expected = std::f64::consts::PI * 4.2 * 4.2;
        assert!((shrunk - expected).abs() < 0.1, "{shrunk} {expected}");
    }

    /// An inside corner stays sharp when the outline grows: an L of two squares of 10 and one.
    #[test]
    fn an_inside_corner_stays_sharp() {
        let mut path = BezPath::new();
        path.move_to((0.0, 0.0));
        for p in [
            (20.0, 0.0),
            (20.0, 10.0),
            (10.0, 10.0),
            (10.0, 20.0),
            (0.0, 20.0),
        ] {
            path.line_to(p);
        }
        path.close_path();
        let grown = offset(&path, 1.0).area().abs();
        // All round by 80 × 1, rounds at five corners, and a square counted twice at the sixth.
        let expected = 300.0 + 80.0 + 5.0 * std::f64::consts::FRAC_PI_4 - 1.0;
        assert!((grown - expected).abs() < 0.02, "{grown} {expected}");
    }
}
