//! The end view: along x, onto the jaw tips. On paper x is −z. Painted from the far end to the
//! near one, so that what is nearer covers what is behind.

use kurbo::{Affine, BezPath, Point, Rect, Vec2};

use super::polygon;
use super::work::Drawn;
use crate::draw::rivet::head_outline;
use crate::finding::Part;
use crate::number::plane::{Region, hull, sides, split};
use crate::paper::dimension::rectangle;
use crate::paper::{Fill, Item, Line};
use crate::shape::section::Profile;
use crate::shape::sweep::{Ease, Edge, Sweep};
use crate::tongs::document::Document;
use crate::tongs::model::{Half, Lies, Model};

/// How closely the slices of a jaw follow its run, mm.
const FINE: f64 = 0.08;
/// How closely drawn section outlines follow the true ones, mm: round things look round on a sheet
/// that shows the head large.
const ROUND: f64 = 0.02;

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

/// The outline of a section at `s` of a half turned by `turn`, in (z, y) of the half. Sections
/// are drawn as if still square to the eye; for a pair's opening that is off by less than a line.
fn at(sweep: &Sweep, s: f64, turn: f64) -> Vec<Point> {
    let middle = Affine::rotate(turn) * sweep.middle(s);
    // The outside of a half is up at the jaw and down at the rein.
    let up = sweep.path.at(s).left().y.signum();
    let shift = sweep.shift(s);
    let outline = sweep.section(s).outline(ROUND);
    outline
        .into_iter()
        .map(|(z, y)| Point::new(shift + z, middle.y + up * y))
        .collect()
}

/// Slices of a rein from one of its stations to the next where it is rounded: elsewhere the hull of
/// both covers what lies between.
const ROUNDING: u32 = 8;

/// The rein up to where its end is bent, and the edges of the bend.
fn rein_points(half: &Half, turn: f64) -> Vec<Point> {
    const PARTS: u32 = 24;
    let (rein, from) = (&half.rein, half.bent_from());
    let cuts = rein.cuts(0.0, from);
    // A rounded end is followed, not cut off straight.
    let between = |pair: &[f64]| {
        let (a, b) = (pair[0], pair[1]);
        let slices = match rein.ease_at(f64::midpoint(a, b)) {
            Ease::Linear => 1,
            Ease::Smooth | Ease::RoundUp | Ease::RoundDown | Ease::ArcUp | Ease::ArcDown => {
                ROUNDING
            }
        };
        (0..slices).map(move |i| a + (b - a) * f64::from(i) / f64::from(slices))
    };
    let places = cuts.windows(2).flat_map(between).chain([from]);
    let mut points: Vec<Point> = places.flat_map(|s| at(rein, s, turn)).collect();
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
    let (body, jaw) = (&seen.half.body, &seen.half.jaw);
    let mut points = at(jaw, 0.0, seen.turn);
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

/// A jaw and a rein seen end on, in (z, y) of their half.
struct Bit {
    /// The rein.
    rein: BezPath,
    /// What the jaw covers from heel to tip, in areas that overlap.
    behind: Vec<BezPath>,
    /// The line around them.
    around: BezPath,
    /// The section at the tip.
    tip: BezPath,
}

/// The most areas that are lined: the largest that stand out of each other. Any more are filled,
/// but not lined, so that a jaw of many nodes is drawn as fast as any.
const LINED: usize = 24;

impl Bit {
    /// A half turned by `turn` about the rivet.
    fn of(half: &Half, turn: f64) -> Self {
        let jaw = &half.jaw;
        let sections: Vec<Vec<Point>> = telling(jaw, turn)
            .into_iter()
            .map(|s| at(jaw, s, turn))
            .collect();
        let tip = sections.last().map_or(BezPath::new(), |tip| polygon(tip));
        let pairs = sections.windows(2);
        let mut areas: Vec<(BezPath, Rect)> = pairs
            .map(|pair| {
                let points = between(&pair[0], &pair[1]);
                (polygon(&points), bounds_of(&points))
            })
            .collect();
        areas.sort_by(|a, b| b.1.area().total_cmp(&a.1.area()));
        let mut lined: Vec<(Region, Rect)> = Vec::new();
        let mut behind: Vec<BezPath> = Vec::new();
        for (area, bounds) in areas {
            let mut larger = lined.iter();
            if larger.any(|(region, around)| lies_in((&area, bounds), (*around, region))) {
                continue;
            }
            if lined.len() < LINED {
                lined.push((Region::new(&area), bounds));
            }
            behind.push(area);
        }
        let around = around(&behind[..lined.len()], &lined);
        Self {
            rein: polygon(&rein_points(half, turn)),
            behind,
            around,
            tip,
        }
    }
}

fn bounds_of(points: &[Point]) -> Rect {
    let boxes = points.iter().map(|&p| Rect::from_points(p, p));
    boxes.reduce(|a, b| a.union(b)).unwrap_or(Rect::ZERO)
}

/// The line around areas that overlap: of each what lies in none of the others.
fn around(areas: &[BezPath], regions: &[(Region, Rect)]) -> BezPath {
    let mut line = BezPath::new();
    for (index, area) in areas.iter().enumerate() {
        let others = regions.iter().enumerate().filter(|(i, _)| *i != index);
        let others: Vec<&Region> = others.map(|(_, (region, _))| region).collect();
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

/// A section of a jaw, in (z, y) of a half that is turned.
struct Slice<'a> {
    s: f64,
    /// Its middle in z and y, half its width and half its depth, mm.
    at: [f64; 4],
    /// The profiles that it stands between, and how far it has gone from one to the other.
    profiles: [&'a Profile; 2],
    blend: f64,
}

impl<'a> Slice<'a> {
    fn of(jaw: &'a Sweep, s: f64, turn: f64) -> Self {
        let section = jaw.section(s);
        let y = (Affine::rotate(turn) * jaw.middle(s)).y;
        let one = |profile: &'a Profile| ([profile, profile], 0.0);
        let (profiles, blend) = if section.blend == 0.0 || same(section.from, section.to) {
            one(section.from)
        } else if section.blend == 1.0 {
            one(section.to)
        } else {
            ([section.from, section.to], section.blend)
        };
        Self {
            s,
            at: [jaw.shift(s), y, section.width / 2.0, section.depth / 2.0],
            profiles,
            blend,
        }
    }

    /// What it is told by among sections between two profiles, all in mm: its box, and how far
    /// its surfaces have gone; `None` when it is of others.
    fn between(&self, [from, to]: [&Profile; 2]) -> Option<[f64; 5]> {
        let [a, b] = self.profiles;
        let blend = if same(a, from) && same(b, to) {
            self.blend
        } else if same(a, b) && same(a, from) {
            0.0
        } else if same(a, b) && same(a, to) {
            1.0
        } else {
            return None;
        };
        let [z, y, width, depth] = self.at;
        Some([z, y, width, depth, depth * blend])
    }

    /// Whether the hull of two others has it inside, or as good as.
    fn lies_between(&self, first: &Self, last: &Self) -> bool {
        let told = [first, self, last].map(|slice| slice.between(self.profiles));
        let [Some(first), Some(own), Some(last)] = told else {
            return false;
        };
        let way: [f64; 5] = std::array::from_fn(|i| last[i] - first[i]);
        let long: f64 = way.iter().map(|d| d * d).sum();
        let along: f64 = (0..5).map(|i| way[i] * (own[i] - first[i])).sum();
        let t = (along / long.max(f64::MIN_POSITIVE)).clamp(0.0, 1.0);
        (0..5).all(|i| (first[i] + way[i] * t - own[i]).abs() < FINE)
    }
}

fn same(a: &Profile, b: &Profile) -> bool {
    std::ptr::eq(a, b) || a == b
}

/// The slices that a jaw is drawn by, in a half turned by `turn`: those of [`slices`] without the
/// ones that lie between their neighbours.
fn telling(jaw: &Sweep, turn: f64) -> Vec<f64> {
    let all: Vec<Slice<'_>> = slices(jaw)
        .into_iter()
        .map(|s| Slice::of(jaw, s, turn))
        .collect();
    let mut kept = vec![0];
    for next in 2..all.len() {
        let first = kept[kept.len() - 1];
        let mut passed = all[first + 1..next].iter();
        if !passed.all(|slice| slice.lies_between(&all[first], &all[next])) {
            kept.push(next - 1);
        }
    }
    kept.push(all.len() - 1);
    kept.into_iter().map(|i| all[i].s).collect()
}

/// What a stretch of a jaw between two sections covers: their hull, but where they are the same
/// their own shape, since a hull would fill a groove.
fn between(first: &[Point], last: &[Point]) -> Vec<Point> {
    let same =
        first.len() == last.len() && first.iter().zip(last).all(|(p, q)| p.distance(*q) < FINE);
    if same {
        return first.to_vec();
    }
    hull(first.iter().chain(last).copied().collect())
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
