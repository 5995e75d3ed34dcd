//! The end view: along x, onto the jaw tips. On paper x is −z. Painted from the far end to the
//! near one, so that what is nearer covers what is behind.

use kurbo::{Affine, BezPath, Point, Rect, Vec2};

use super::bit::Bit;
use super::polygon;
use super::work::Drawn;
use crate::draw::rivet::head_outline;
use crate::finding::Part;
use crate::number::plane::hull;
use crate::number::region::{Region, split};
use crate::paper::dimension::rectangle;
use crate::paper::{Fill, Item, Line};
use crate::tongs::document::Document;
use crate::tongs::model::{Half, Lies, Model};

/// A half in the end view: turned into place and onto paper.
struct Seen<'a> {
    half: &'a Half,
    bit: &'a Bit,
    /// (z, y) of the half's own frame to paper.
    pose: Affine,
    jaw: Part,
    front: bool,
    /// How far the half is turned about the rivet, radians.
    turn: f64,
}

/// The pair with its work, without dimensions.
pub(in crate::draw) fn pair(document: &Document, model: &Model, opening: f64) -> Vec<Item> {
    let second = if document.second_jaw.is_some() {
        Part::SecondJaw
    } else {
        Part::Jaw
    };
    let a = Affine::new([-model.turn_sign, 0.0, 0.0, 1.0, 0.0, 0.0]);
    // Half B: (z, y) → (−z, −y), then onto paper.
    let b = a * Affine::rotate(std::f64::consts::PI);
    let left = model.turn_sign > 0.0;
    let bit = Bit::of(&model.a, opening);
    let other = (!model.same()).then(|| Bit::of(&model.b, opening));
    let halves = [
        Seen {
            half: &model.a,
            bit: &bit,
            pose: a,
            jaw: Part::Jaw,
            front: left,
            turn: opening,
        },
        Seen {
            half: &model.b,
            bit: other.as_ref().unwrap_or(&bit),
            pose: b,
            jaw: second,
            front: !left,
            turn: opening,
        },
    ];
    let mut items = Vec::new();
    items.extend(halves.iter().flat_map(rein));
    items.extend(heads(document, model));
    let necks = halves.each_ref().map(|seen| hull(neck_points(seen)));
    let rims = halves.iter().zip(&necks);
    let rims = rims.map(|(seen, neck)| Region::new(&near_neck(seen, neck)));
    let rims: Vec<Region> = rims.collect();
    items.extend(halves.iter().flat_map(|seen| boss(seen, &rims)));
    items.extend(
        halves
            .iter()
            .zip(necks)
            .flat_map(|(seen, points)| neck(seen, points)),
    );
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

fn rein(seen: &Seen<'_>) -> [Item; 2] {
    painted(
        seen.pose * seen.bit.rein.clone(),
        seen.fill(Part::Rein),
        Part::Rein,
    )
}

/// Boss and neck run into each other without an edge: a boss is lined where it stands clear of
/// both necks, and a neck where it does not lie in its boss.
fn boss(seen: &Seen<'_>, necks: &[Region]) -> [Item; 2] {
    let boss = boss_area(seen);
    let line = split(&boss, &necks.iter().collect::<Vec<_>>()).seen;
    [
        Item::fill(boss, seen.fill(Part::Boss)).of(Part::Boss),
        Item::line(line, Line::Outline).of(Part::Boss),
    ]
}

fn neck(seen: &Seen<'_>, points: Vec<Point>) -> [Item; 2] {
    let (boss, neck) = (boss_area(seen), seen.area(points));
    let line = split(&neck, &[&Region::new(&boss)]).seen;
    [
        Item::fill(neck, seen.fill(Part::Neck)).of(Part::Neck),
        Item::line(line, Line::Outline).of(Part::Neck),
    ]
}

fn boss_area(seen: &Seen<'_>) -> BezPath {
    let high = seen.half.body.rim.half_across();
    let plate = Rect::new(0.0, -high, seen.half.body.plate.faces.thickness, high);
    seen.pose * rectangle(plate)
}

/// A neck with a rim, in which another line would run together with its own.
fn near_neck(seen: &Seen<'_>, neck: &[Point]) -> BezPath {
    /// About the width of a line, mm.
    const RIM: f64 = 0.5;
    let about = |&p: &Point| {
        [(-RIM, -RIM), (RIM, -RIM), (RIM, RIM), (-RIM, RIM)].map(|(z, y)| p + Vec2::new(z, y))
    };
    seen.area(hull(neck.iter().flat_map(about).collect()))
}

/// The neck fills all between the boss's upper half and the jaw's root.
fn neck_points(seen: &Seen<'_>) -> Vec<Point> {
    let body = &seen.half.body;
    let mut points = seen.bit.root.clone();
    let turn = Affine::rotate(seen.turn);
    let ends = [body.neck.inner_at(0.0), body.neck.outer_at(0.0)];
    let [low, high] = ends.map(|end| (turn * end).y);
    let e = body.plate.faces.thickness;
    points.extend(
        [low, high]
            .into_iter()
            .flat_map(|y| [Point::new(0.0, y), Point::new(e, y)]),
    );
    points
}

fn jaw(seen: &Seen<'_>) -> Vec<Item> {
    let fill = |area: BezPath| Item::fill(area, seen.fill(seen.jaw)).of(seen.jaw);
    let line = |path: BezPath| Item::line(path, Line::Outline).of(seen.jaw);
    let bit = seen.bit;
    let behind = bit.behind.iter().map(|area| fill(seen.pose * area.clone()));
    let mut items: Vec<Item> = behind.collect();
    items.push(line(seen.pose * bit.around.clone()));
    let tip = seen.pose * bit.tip.clone();
    items.push(fill(tip.clone()));
    items.push(line(tip));
    items
}

fn heads(document: &Document, model: &Model) -> Vec<Item> {
    let e = model.a.body.plate.faces.thickness;
    let head = head_outline(&document.rivet);
    let turn = |angle: f64| Affine::rotate(angle) * Affine::translate((0.0, e));
    let quarter = std::f64::consts::FRAC_PI_2;
    [turn(quarter), turn(-quarter)]
        .into_iter()
        .flat_map(|pose| painted(pose * head.clone(), Fill::Rivet, Part::Rivet))
        .collect()
}
