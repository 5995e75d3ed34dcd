//! How far the halves can turn about the rivet before any of their steel touches.

use std::f64::consts::{PI, TAU};

use kurbo::{Point, Vec2};

use super::polar::{Span, distances, flatten, rings};
use crate::finding::Part;
use crate::tongs::model::{Half, Model};

/// Halves that come nearer than this count as touching, and may touch that much, mm.
const TOUCH: f64 = 1e-3;

/// What stops the halves from turning on.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Clash {
    /// The parts that touch, of half A and of half B.
    pub parts: [Part; 2],
    /// Where they touch, in the side view with the pair standing so.
    pub at: Point,
}

/// One end of the travel.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct TravelEnd {
    /// How far each half has turned from the set pose, radians, opening positive.
    pub half_angle: f64,
    /// What touches; `None` when nothing does within half a turn.
    pub clash: Option<Clash>,
}

/// The turn that is free for both halves around the set pose.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Travel {
    /// Shut as far as it goes.
    pub shut: TravelEnd,
    /// Opened as far as it goes.
    pub open: TravelEnd,
}

/// Turns of half A against half B, radians, at which they overlap at one distance.
#[derive(Debug, Clone, Copy)]
struct Forbidden {
    from: f64,
    to: f64,
    r: f64,
    a: Span,
    b: Span,
}

/// The free travel around the set pose; if the halves overlap there, the first free travel when
/// they are opened. `None` when they overlap in every pose: the pair cannot be put together.
///
/// Steel of one half meets steel of the other only where the two lie in one layer: the bosses
/// turn on either side of the middle plane, necks and shoulders cross it outside of the bosses.
pub(super) fn travel(model: &Model) -> Option<Travel> {
    let forbidden = forbidden(model);
    let start = free_from(&forbidden, 0.0)?;
    let inside = |f: &&Forbidden| f.from >= start;
    let open = forbidden
        .iter()
        .filter(inside)
        .min_by(|a, b| a.from.total_cmp(&b.from));
    let shut = forbidden
        .iter()
        .filter(|f| f.to <= start)
        .max_by(|a, b| a.to.total_cmp(&b.to));
    Some(Travel {
        shut: TravelEnd {
            half_angle: shut.map_or(-PI, |f| f.to) / 2.0,
            clash: shut.map(|f| clash(model, f, f.to, (f.a.from, f.b.to))),
        },
        open: TravelEnd {
            half_angle: open.map_or(PI, |f| f.from) / 2.0,
            clash: open.map(|f| clash(model, f, f.from, (f.a.to, f.b.from))),
        },
    })
}

/// The least turn from `start` on at which nothing overlaps, up to half a turn.
fn free_from(forbidden: &[Forbidden], start: f64) -> Option<f64> {
    let mut turn = start;
    while turn < PI {
        let over = forbidden.iter().filter(|f| f.from < turn && turn < f.to);
        match over.map(|f| f.to).max_by(f64::total_cmp) {
            None => return Some(turn),
            Some(to) => turn = to,
        }
    }
    None
}

fn forbidden(model: &Model) -> Vec<Forbidden> {
    let (a, b) = (&model.a, &model.b);
    let alike = model.alike;
    let [outline_a, outline_b] = model.outlines();
    let points_a = flatten(outline_a);
    let own_b = (!alike).then(|| flatten(outline_b));
    let points_b = own_b.as_ref().unwrap_or(&points_a);
    let least = [a, b]
        .into_iter()
        .flat_map(clear)
        .fold(f64::MAX, f64::min)
        .max(0.0);
    let outlines = [
        (points_a.as_slice(), clear(a)),
        (points_b.as_slice(), clear(b)),
    ];
    let distances = distances(if alike { &outlines[..1] } else { &outlines }, least);
    let rings_a = rings(&points_a, &distances, clear(a));
    let own_b = (!alike).then(|| rings(points_b, &distances, clear(b)));
    let rings_b = own_b.as_ref().unwrap_or(&rings_a);
    let mut all = Vec::with_capacity(2 * distances.len());
    for ((&r, a), b) in distances.iter().zip(rings_a.iter()).zip(rings_b.iter()) {
        pairs(r, a.across, b.all, &mut all);
        if !alike {
            pairs(r, a.all, b.across, &mut all);
        }
    }
    all
}

/// x past which a half reaches over the middle plane, towards jaw and rein.
fn clear(half: &Half) -> [f64; 2] {
    let faces = &half.body.plate.faces;
    [faces.neck.boss, -faces.shoulder.boss]
}

/// The turns at which stretches of half A and half B overlap.
fn pairs(r: f64, a: &[Span], b: &[Span], all: &mut Vec<Forbidden>) {
    let hair = TOUCH / r.max(TOUCH);
    for &a in a {
        for b in b.iter().map(|span| span.turned_over()) {
            let (from, to) = (b.from - a.to + hair, b.to - a.from - hair);
            if to <= from {
                continue;
            }
            let middle = f64::midpoint(from, to);
            let back = (middle / TAU).round() * TAU;
            all.push(Forbidden {
                from: from - back,
                to: to - back,
                r,
                a,
                b,
            });
        }
    }
}

/// What touches, with half A turned by half the turn and half B by as much the other way.
fn clash(model: &Model, f: &Forbidden, turn: f64, (in_a, in_b): (f64, f64)) -> Clash {
    let point = |angle: f64| (Vec2::from_angle(angle) * f.r).to_point();
    let part_b = match part_at(&model.b, point(-in_b)) {
        Part::Jaw if !model.alike => Part::SecondJaw,
        part => part,
    };
    Clash {
        parts: [part_at(&model.a, point(in_a)), part_b],
        at: point(in_a + turn / 2.0),
    }
}

/// The part of a half at a point of its outline, in its own frame.
fn part_at(half: &Half, p: Point) -> Part {
    let boss = half.body.rim.half_along();
    if p.x >= half.heel() - TOUCH {
        Part::Jaw
    } else if p.x > boss {
        Part::Neck
    } else if p.x >= -boss {
        Part::Boss
    } else if p.x > half.rein_start().x {
        Part::Shoulder
    } else {
        Part::Rein
    }
}
