//! The end view: along x, onto the jaw tips. On paper x is −z. Painted from the far end to the
//! near one, so that what is nearer covers what is behind.

use kurbo::{Affine, BezPath, Point, Rect, Shape};

use super::work::Drawn;
use super::{hull, polygon};
use crate::document::{Document, Part};
use crate::drawing::dimension::rectangle;
use crate::drawing::hidden::{Region, sides, split};
use crate::drawing::rivet::head_outline;
use crate::drawing::{Fill, Item, Line};
use crate::model::{Half, Lies, Model};
use crate::sweep::{Edge, Sweep};

/// How closely drawn section outlines follow the true ones, mm.
const FINE: f64 = 0.08;

/// A half in the end view: turned into place and onto paper.
struct Seen<'a> {
    half: &'a Half,
    /// (z, y) of the half's own frame to paper.
    pose: Affine,
    jaw: Part,
    front: bool,
    /// How far the half is turned about the rivet, radians.
    turn: f64,
}

/// The pair with its work, without dimensions.
pub(in crate::drawing) fn pair(document: &Document, model: &Model, opening: f64) -> Vec<Item> {
    let second = if document.second_jaw.is_some() {
        Part::SecondJaw
    } else {
        Part::Jaw
    };
    let a = Affine::new([-model.hand_sign, 0.0, 0.0, 1.0, 0.0, 0.0]);
    // Half B: (z, y) → (−z, −y), then onto paper.
    let b = a * Affine::rotate(std::f64::consts::PI);
    let left = model.hand_sign > 0.0;
    let halves = [
        Seen {
            half: &model.a,
            pose: a,
            jaw: Part::Jaw,
            front: left,
            turn: opening,
        },
        Seen {
            half: &model.b,
            pose: b,
            jaw: second,
            front: !left,
            turn: opening,
        },
    ];
    let mut items = Vec::new();
    items.extend(halves.iter().flat_map(rein));
    items.extend(heads(document, model));
    items.extend(halves.iter().flat_map(boss));
    items.extend(halves.iter().flat_map(neck));
    // What lies across the jaws lies behind the tips, what lies along them stands out of them.
    let work = Drawn::end(model).painted(&[]);
    let jaws = halves.iter().flat_map(jaw);
    if model.work.lies == Lies::Crosswise {
        items.extend(work);
        items.extend(jaws);
    } else {
        items.extend(jaws);
        items.extend(work);
    }
    items
}

fn painted(area: BezPath, fill: Fill, part: Part) -> [Item; 2] {
    [
        Item::fill(area.clone(), fill).of(part),
        Item::line(area, Line::Outline).of(part),
    ]
}

impl Seen<'_> {
    fn fill(&self, part: Part) -> Fill {
        if self.front {
            Fill::Part(part)
        } else {
            Fill::OtherHalf
        }
    }

    fn area(&self, points: Vec<Point>) -> BezPath {
        self.pose * polygon(&points)
    }
}

/// The outline of a section at `s` of a half turned by `turn`, in (z, y) of the half. Sections
/// are drawn as if still square to the eye; for a pair's opening that is off by less than a line.
fn at(sweep: &Sweep, s: f64, turn: f64) -> Vec<Point> {
    let middle = Affine::rotate(turn) * sweep.middle(s);
    // The outside of a half is up at the jaw and down at the rein.
    let up = sweep.path.at(s).left().y.signum();
    let shift = sweep.shift(s);
    let outline = sweep.section(s).outline(FINE);
    outline
        .into_iter()
        .map(|(z, y)| Point::new(shift + z, middle.y + up * y))
        .collect()
}

/// The rein up to where its end is bent, and the edges of the bend.
fn rein_points(half: &Half, turn: f64) -> Vec<Point> {
    const PARTS: u32 = 24;
    let (rein, from) = (&half.rein, half.bent_from());
    let cuts = rein.cuts(0.0, from);
    let mut points: Vec<Point> = cuts.into_iter().flat_map(|s| at(rein, s, turn)).collect();
    let bent = rein.length() - from;
    for i in (0..=PARTS).filter(|_| bent > 0.0) {
        let s = from + bent * f64::from(i) / f64::from(PARTS);
        for (edge, side) in [(Edge::Outer, Edge::Far), (Edge::Inner, Edge::Near)] {
            let y = (Affine::rotate(turn) * rein.edge_point(edge, s)).y;
            let z = rein.edge_point(side, s).y;
            points.extend([Point::new(z, y), Point::new(-z, y)]);
        }
    }
    hull(points)
}

fn rein(seen: &Seen<'_>) -> [Item; 2] {
    painted(
        seen.area(rein_points(seen.half, seen.turn)),
        seen.fill(Part::Rein),
        Part::Rein,
    )
}

fn boss(seen: &Seen<'_>) -> [Item; 2] {
    let high = seen.half.body.rim.half_across();
    let plate = Rect::new(0.0, -high, seen.half.body.faces.thickness, high);
    painted(
        seen.pose * rectangle(plate),
        seen.fill(Part::Boss),
        Part::Boss,
    )
}

/// The neck fills all between the boss's upper half and the jaw's root.
fn neck(seen: &Seen<'_>) -> [Item; 2] {
    let (body, jaw) = (&seen.half.body, &seen.half.jaw);
    let mut points = at(jaw, 0.0, seen.turn);
    let turn = Affine::rotate(seen.turn);
    let ends = [body.neck.inner_at(0.0), body.neck.outer_at(0.0)];
    let [low, high] = ends.map(|end| (turn * end).y);
    let e = body.faces.thickness;
    points.extend(
        [low, high]
            .into_iter()
            .flat_map(|y| [Point::new(0.0, y), Point::new(e, y)]),
    );
    painted(seen.area(hull(points)), seen.fill(Part::Neck), Part::Neck)
}

fn jaw(seen: &Seen<'_>) -> Vec<Item> {
    let jaw = &seen.half.jaw;
    let fill = |area: BezPath| Item::fill(area, seen.fill(seen.jaw)).of(seen.jaw);
    let behind: Vec<BezPath> = slices(jaw)
        .windows(2)
        .map(|pair| seen.area(between(jaw, (pair[0], pair[1]), seen.turn)))
        .collect();
    let outline = Item::line(around(&behind), Line::Outline).of(seen.jaw);
    let mut items: Vec<Item> = behind.into_iter().map(fill).collect();
    items.push(outline);
    let tip = seen.area(at(jaw, jaw.length(), seen.turn));
    items.push(fill(tip.clone()));
    items.push(Item::line(tip, Line::Outline).of(seen.jaw));
    items
}

/// The line around areas that overlap: of each what lies in none of the others. What lies wholly
/// in a larger one has no line of its own.
fn around(areas: &[BezPath]) -> BezPath {
    /// The largest that stand out of each other; smaller ones are filled, but not lined, so that a
    /// jaw of many nodes is drawn as fast as any.
    const MOST: usize = 8;
    let mut sorted: Vec<(&BezPath, Rect)> = areas
        .iter()
        .map(|area| (area, area.bounding_box()))
        .collect();
    sorted.sort_by(|a, b| b.1.area().total_cmp(&a.1.area()));
    let mut kept: Vec<(&BezPath, Rect, Region)> = Vec::new();
    for (area, bounds) in sorted {
        if kept.len() == MOST {
            break;
        }
        if !kept
            .iter()
            .any(|(_, around, region)| lies_in((area, bounds), (*around, region)))
        {
            kept.push((area, bounds, Region::new(area)));
        }
    }
    let mut line = BezPath::new();
    for (index, (area, ..)) in kept.iter().enumerate() {
        let others = kept.iter().enumerate().filter(|(i, _)| *i != index);
        let others: Vec<&Region> = others.map(|(_, (.., region))| region).collect();
        line.extend(split(area, &others).seen);
    }
    line
}

/// Whether an area lies in another: its bounds do, and each of its corners, drawn in by a hair.
fn lies_in((area, bounds): (&BezPath, Rect), (around, region): (Rect, &Region)) -> bool {
    const HAIR: f64 = 1e-3;
    if !around.inflate(HAIR, HAIR).contains_rect(bounds) {
        return false;
    }
    let middle = bounds.center();
    let drawn_in = |p: Point| p + (middle - p) * (HAIR / (middle - p).hypot().max(HAIR));
    sides(area)
        .into_iter()
        .all(|(p, _)| region.holds(drawn_in(p)))
}

/// Where a jaw is cut to be seen end on: at its stations and bends, and between them where its
/// section changes.
fn slices(jaw: &Sweep) -> Vec<f64> {
    /// Slices of a stretch: enough for an S-curve to look round.
    const PARTS: u32 = 6;
    let cuts = jaw.cuts(0.0, jaw.length());
    let mut all = vec![0.0];
    for pair in cuts.windows(2) {
        let changes = jaw.section(pair[0]).width != jaw.section(pair[1]).width;
        // Many stations follow the shape by themselves.
        let parts = if changes && cuts.len() < 12 { PARTS } else { 1 };
        let step = (pair[1] - pair[0]) / f64::from(parts);
        all.extend((1..parts).map(|i| pair[0] + step * f64::from(i)));
        all.push(pair[1]);
    }
    all
}

/// What a stretch of a jaw without a station in it covers: the hull of its sections, but where
/// they are all the same their own shape, since a hull would fill a groove.
fn between(jaw: &Sweep, (from, to): (f64, f64), turn: f64) -> Vec<Point> {
    let (first, last) = (at(jaw, from, turn), at(jaw, to, turn));
    let same =
        first.len() == last.len() && first.iter().zip(&last).all(|(p, q)| p.distance(*q) < FINE);
    if same {
        return first;
    }
    hull(first.into_iter().chain(last).collect())
}

fn heads(document: &Document, model: &Model) -> Vec<Item> {
    let e = model.a.body.faces.thickness;
    let head = head_outline(&document.rivet);
    let turn = |angle: f64| Affine::rotate(angle) * Affine::translate((0.0, e));
    let quarter = std::f64::consts::FRAC_PI_2;
    [turn(quarter), turn(-quarter)]
        .into_iter()
        .flat_map(|pose| painted(pose * head.clone(), Fill::Rivet, Part::Rivet))
        .collect()
}
