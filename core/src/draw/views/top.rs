//! The top view: along y, from above the jaws. Shows widths, the bosses side by side, the step
//! from boss to jaw and rein. On paper y is −z: what is nearer to the eye of the side view is
//! lower.

use kurbo::{Affine, BezPath, Point};

use super::work::Drawn;
use super::{polygon, polyline};
use crate::draw::rivet::head_outline;
use crate::finding::Part;
use crate::number::plane::STRAY;
use crate::number::region::{Region, split};
use crate::paper::{Fill, Item, Line};
use crate::shape::sweep::{Edge, Sweep};
use crate::tongs::document::Document;
use crate::tongs::model::{Half, Model};

/// A half in the top view: its two faces along x and the areas of its parts.
struct Strip {
    outline: BezPath,
    parts: Vec<(Part, BezPath)>,
}

impl Strip {
    /// The same half turned over to be the other.
    fn turned_over(&self, jaw: Part) -> Self {
        let turn = |area: &BezPath| Affine::FLIP_Y * area.clone();
        let renamed = |part: Part| if part == Part::Jaw { jaw } else { part };
        let parts = self.parts.iter();
        Self {
            outline: turn(&self.outline),
            parts: parts
                .map(|(part, area)| (renamed(*part), turn(area)))
                .collect(),
        }
    }
}

/// Lower and upper paper y at each x, from rein end to tip.
fn strip(half: &Half, jaw: Part, sign: f64) -> Strip {
    let rein = faces_of_rein(half, sign);
    let body = faces_of_body(half, sign);
    let mut front = faces_of_sweep(&half.jaw, half.jaw.length(), sign);
    // The root of a jaw that leans reaches back over the neck, which is as wide there.
    let neck_end = body.iter().map(|face| face.x).fold(f64::MIN, f64::max);
    for face in &mut front {
        face.x = face.x.max(neck_end);
    }
    let edge = half.body.rim.half_along();
    let between = |from: f64, to: f64| -> Vec<Face> {
        body.iter()
            .copied()
            .filter(|f| f.x >= from - 1e-9 && f.x <= to + 1e-9)
            .collect()
    };
    let parts = vec![
        (Part::Rein, area(&rein)),
        (Part::Shoulder, area(&between(f64::MIN, -edge))),
        (Part::Boss, area(&between(-edge, edge))),
        (Part::Neck, area(&between(edge, f64::MAX))),
        (jaw, area(&front)),
    ];
    let whole: Vec<Face> = rein.iter().chain(&body).chain(&front).copied().collect();
    Strip {
        outline: area(&whole),
        parts,
    }
}

#[derive(Clone, Copy)]
struct Face {
    x: f64,
    low: f64,
    high: f64,
}

fn area(faces: &[Face]) -> BezPath {
    let low = faces.iter().map(|f| Point::new(f.x, f.low));
    let high = faces.iter().rev().map(|f| Point::new(f.x, f.high));
    polygon(&low.chain(high).collect::<Vec<_>>())
}

/// The rein's faces from its end. What is bent out of the line is as wide as the end, and seen
/// from above it only reaches farther.
fn faces_of_rein(half: &Half, sign: f64) -> Vec<Face> {
    let to = half.bent_from();
    let mut faces = faces_of_sweep(&half.rein, to, sign);
    if let Some(end) = faces.last().copied().filter(|_| to < half.rein.length()) {
        faces.push(Face {
            x: half.rein_end(),
            ..end
        });
    }
    faces.reverse();
    faces
}

/// The faces of a sweep up to a place along it.
fn faces_of_sweep(sweep: &Sweep, to: f64, sign: f64) -> Vec<Face> {
    let mut at: Vec<f64> = Vec::new();
    for pair in sweep.cuts(0.0, to).windows(2) {
        let parts = parts(sweep, (pair[0], pair[1]));
        // Closer together towards both ends, where quarter-rounds are steep.
        let step =
            |i: u32| 0.5 - 0.5 * (std::f64::consts::PI * f64::from(i) / f64::from(parts)).cos();
        at.extend((0..parts).map(|i| pair[0] + (pair[1] - pair[0]) * step(i)));
    }
    at.push(to);
    let faces: Vec<Face> = at
        .into_iter()
        .map(|s| {
            let (far, near) = (
                sweep.edge_point(Edge::Far, s),
                sweep.edge_point(Edge::Near, s),
            );
            // z points down on paper for a half as described, and up for the one turned over.
            let (low, high) = if sign > 0.0 {
                (-far.y, -near.y)
            } else {
                (near.y, far.y)
            };
            Face {
                x: far.x,
                low,
                high,
            }
        })
        .collect();
    thinned(&faces)
}

/// The faces without those that stand in line with the ones before and after them, so that many
/// stations cost no more than their shape does.
fn thinned(faces: &[Face]) -> Vec<Face> {
    /// The longest row that is looked at.
    const ROW: usize = 48;
    let in_line = |face: &Face, a: &Face, b: &Face| {
        let part = (face.x - a.x) / (b.x - a.x).max(f64::MIN_POSITIVE);
        let off = |of: fn(&Face) -> f64| (of(a) + (of(b) - of(a)) * part - of(face)).abs();
        (0.0..=1.0).contains(&part) && off(|f| f.low) < STRAY / 2.0 && off(|f| f.high) < STRAY / 2.0
    };
    let mut kept: Vec<Face> = faces.first().copied().into_iter().collect();
    let mut from = 0;
    for next in 2..faces.len() {
        let mut passed = faces[from + 1..next].iter();
        let row =
            next - from <= ROW && passed.all(|face| in_line(face, &faces[from], &faces[next]));
        if !row {
            from = next - 1;
            kept.push(faces[from]);
        }
    }
    kept.extend(faces.last().filter(|_| faces.len() > 1));
    kept
}

/// In how many parts the faces of a stretch between two cuts are followed: one where they are
/// straight, and the more the longer it is.
fn parts(sweep: &Sweep, (from, to): (f64, f64)) -> u32 {
    const MOST: u32 = 12;
    /// Of a part, mm.
    const LENGTH: f64 = 0.25;
    if sweep.is_straight_at(f64::midpoint(from, to)) {
        return 1;
    }
    let enough = |parts: &u32| f64::from(*parts) * LENGTH >= to - from;
    (3..MOST).find(enough).unwrap_or(MOST)
}

fn faces_of_body(half: &Half, sign: f64) -> Vec<Face> {
    const PARTS: u32 = 24;
    let faces = &half.body.plate.faces;
    let edge = half.body.rim.half_along();
    let stretch = |from: f64, to: f64| {
        (0..=PARTS).map(move |i| from + (to - from) * f64::from(i) / f64::from(PARTS))
    };
    let mut xs: Vec<f64> = stretch(faces.shoulder.far, faces.shoulder.boss).collect();
    xs.extend([-edge, edge]);
    xs.extend(stretch(faces.neck.boss, faces.neck.far));
    // The shoulder of a sloping rein ends a little beyond its blend.
    xs.push(half.rein_start().x.min(faces.shoulder.far));
    xs.sort_by(f64::total_cmp);
    xs.into_iter()
        .map(|x| {
            let (low, high) = faces.at(x);
            // Half A's boss is on z > 0, which is below on paper.
            if sign > 0.0 {
                Face {
                    x,
                    low: -high,
                    high: -low,
                }
            } else {
                Face { x, low, high }
            }
        })
        .collect()
}

/// The pair with its work, without dimensions.
pub(in crate::draw) fn pair(document: &Document, model: &Model) -> Vec<Item> {
    let second = if document.second_jaw.is_some() {
        Part::SecondJaw
    } else {
        Part::Jaw
    };
    let a = strip(&model.a, Part::Jaw, model.turn_sign);
    let b = if model.same() {
        a.turned_over(second)
    } else {
        strip(&model.b, second, -model.turn_sign)
    };
    let mut items = work(model, &a, &b);
    items.extend(layer(&a, &b, model));
    items.extend(rivet(document, model));
    items
}

/// One half alone.
pub(in crate::draw) fn half(model: &Model) -> Vec<Item> {
    let strip = strip(&model.a, Part::Jaw, model.turn_sign);
    let mut items: Vec<Item> = strip
        .parts
        .iter()
        .map(|(part, area)| Item::fill(area.clone(), Fill::Part(*part)).of(*part))
        .collect();
    items.push(Item::line(strip.outline, Line::Outline));
    let e = model.a.body.plate.faces.thickness * model.turn_sign;
    for x in [
        -model.a.body.plate.hole_radius,
        model.a.body.plate.hole_radius,
    ] {
        let edge = polyline(&[Point::new(x, 0.0), Point::new(x, -e)]);
        items.push(Item::line(edge, Line::Hidden).of(Part::Rivet));
    }
    items
}

/// Seen from above: on the jaw's side half A lies over half B, on the rein's side under it; the
/// bosses lie side by side.
fn layer(a: &Strip, b: &Strip, model: &Model) -> Vec<Item> {
    let front_is_a = model.turn_sign > 0.0;
    let fill = |part: Part, is_a: bool| {
        if is_a == front_is_a {
            Fill::Part(part)
        } else {
            Fill::OtherHalf
        }
    };
    let over = |part: Part, is_a: bool| (part == Part::Rein || part == Part::Shoulder) != is_a;
    let mut items = Vec::new();
    for top in [false, true] {
        for (strip, is_a) in [(a, true), (b, false)] {
            let parts = strip
                .parts
                .iter()
                .filter(|(part, _)| over(*part, is_a) == top);
            items.extend(
                parts.map(|(part, area)| Item::fill(area.clone(), fill(*part, is_a)).of(*part)),
            );
        }
    }
    for (strip, other, is_a) in [(a, b, true), (b, a, false)] {
        // What lies over this half: the other's parts on the far side of the rivet.
        let above: Vec<Region> = other
            .parts
            .iter()
            .filter(|(part, _)| over(*part, !is_a))
            .filter(|(part, _)| *part != Part::Boss)
            .map(|(_, area)| Region::new(area))
            .collect();
        let above: Vec<&Region> = above.iter().collect();
        let lines = split(&strip.outline, &above);
        items.push(Item::line(lines.seen, Line::Outline));
        items.push(Item::line(lines.behind, Line::Hidden));
    }
    items
}

fn work(model: &Model, a: &Strip, b: &Strip) -> Vec<Item> {
    let drawn = Drawn::top(model);
    let regions = [Region::new(&a.outline), Region::new(&b.outline)];
    let regions = [&regions[0], &regions[1]];
    let mut items = drawn.painted(&regions);
    items.extend(drawn.behind(&regions));
    items
}

fn rivet(document: &Document, model: &Model) -> Vec<Item> {
    let e = model.a.body.plate.faces.thickness;
    let head = head_outline(&document.rivet);
    let up = Affine::translate((0.0, e));
    let down = Affine::FLIP_Y * up;
    let mut items = Vec::new();
    for pose in [up, down] {
        items.push(Item::fill(pose * head.clone(), Fill::Rivet).of(Part::Rivet));
        items.push(Item::line(pose * head.clone(), Line::Outline).of(Part::Rivet));
    }
    let r = document.rivet.diameter.mm() / 2.0;
    for x in [-r, r] {
        let edge = polyline(&[Point::new(x, -e), Point::new(x, e)]);
        items.push(Item::line(edge, Line::Hidden).of(Part::Rivet));
    }
    items
}
