//! A half seen end on: what its jaw covers and the line around it, and its rein.

use kurbo::{Affine, BezPath, Point, Rect};

use super::polygon;
use super::slices::{FINE, telling};
use crate::number::plane::{Corners, hull, sides_of};
use crate::number::region::{Region, seen};
use crate::shape::sweep::{Ease, Edge, Sweep};
use crate::tongs::model::Half;

/// How closely drawn section outlines follow the true ones, mm: round things look round on a sheet
/// that shows the head large.
const ROUND: f64 = 0.02;

/// A jaw and a rein seen end on, in (z, y) of their half.
pub(super) struct Bit {
    /// The rein.
    pub(super) rein: BezPath,
    /// The corners of the hull of the jaw's root.
    pub(super) root: Vec<Point>,
    /// What the jaw covers from heel to tip, in areas that overlap.
    pub(super) behind: Vec<BezPath>,
    /// The line around them.
    pub(super) around: BezPath,
    /// The section at the tip.
    pub(super) tip: BezPath,
}

/// The most areas that are lined: the largest that stand out of each other. Any more are filled,
/// but not lined, so that a jaw of many nodes is drawn as fast as any.
const LINED: usize = 24;

impl Bit {
    /// A half turned by `turn` about the rivet.
    pub(super) fn of(half: &Half, turn: f64) -> Self {
        let jaw = &half.jaw;
        let places = telling(jaw, turn).into_iter();
        let sections: Vec<Cut> = places.map(|s| Cut::at(jaw, s, turn)).collect();
        let stretches = sections.windows(2);
        let areas = stretches.map(|pair| Area::between(jaw, turn, (&pair[0], &pair[1])));
        let (behind, regions) = standing_out(areas.collect());
        let root = sections.first().map(|root| root.hull.points().to_vec());
        let tip = sections.last().map(|tip| polygon(&at(jaw, tip.at, turn)));
        Self {
            rein: polygon(&rein_points(half, turn)),
            root: root.unwrap_or_default(),
            around: around(&behind[..regions.len()], &regions),
            behind: behind.iter().map(|area| polygon(&area.corners)).collect(),
            tip: tip.unwrap_or_default(),
        }
    }
}

/// A section of a jaw seen end on.
struct Cut {
    at: f64,
    corners: Vec<Point>,
    hull: Corners,
}

impl Cut {
    fn at(jaw: &Sweep, at: f64, turn: f64) -> Self {
        let corners = placed(jaw, (at, turn), &jaw.section(at).corners(ROUND));
        Self {
            at,
            hull: Corners::of(corners.clone()),
            corners,
        }
    }

    fn is_like(&self, other: &Self) -> bool {
        let mut pairs = self.corners.iter().zip(&other.corners);
        self.corners.len() == other.corners.len() && pairs.all(|(p, q)| p.distance(*q) < FINE)
    }
}

/// What a stretch of a jaw between two sections covers.
struct Area {
    corners: Vec<Point>,
    bounds: Rect,
    shape: Shape,
}

/// Whether an area may be hollow.
enum Shape {
    Hull,
    Any,
}

impl Area {
    /// The hull of two sections, but where they are the same their own shape, since a hull would
    /// fill a groove.
    fn between(jaw: &Sweep, turn: f64, (first, last): (&Cut, &Cut)) -> Self {
        let (corners, shape) = if first.is_like(last) {
            (at(jaw, first.at, turn), Shape::Any)
        } else {
            (first.hull.hull_with(&last.hull), Shape::Hull)
        };
        let boxes = corners.iter().map(|&p| Rect::from_points(p, p));
        Self {
            bounds: boxes.reduce(|a, b| a.union(b)).unwrap_or(Rect::ZERO),
            corners,
            shape,
        }
    }

    fn region(&self) -> Region {
        match self.shape {
            Shape::Hull => Region::of_hull(&self.corners),
            Shape::Any => Region::of(&self.corners),
        }
    }

    /// Whether it lies in another: its bounds do, and each of its corners, drawn in by a hair.
    fn lies_in(&self, around: &Region) -> bool {
        const HAIR: f64 = 1e-3;
        if !around
            .bounds()
            .inflate(HAIR, HAIR)
            .contains_rect(self.bounds)
        {
            return false;
        }
        let middle = self.bounds.center();
        let drawn_in = |p: Point| p + (middle - p) * (HAIR / (middle - p).hypot().max(HAIR));
        self.corners.iter().all(|&p| around.holds(drawn_in(p)))
    }
}

/// The areas that do not lie in a larger one, the largest first, and the first of them as regions.
fn standing_out(mut areas: Vec<Area>) -> (Vec<Area>, Vec<Region>) {
    areas.sort_by(|a, b| b.bounds.area().total_cmp(&a.bounds.area()));
    let mut regions: Vec<Region> = Vec::new();
    areas.retain(|area| {
        let stands_out = !regions.iter().any(|larger| area.lies_in(larger));
        if stands_out && regions.len() < LINED {
            regions.push(area.region());
        }
        stands_out
    });
    (areas, regions)
}

/// The line around areas that overlap: of each what lies in none of the others.
fn around(areas: &[Area], regions: &[Region]) -> BezPath {
    let mut line = BezPath::new();
    for (index, area) in areas.iter().enumerate() {
        let others = regions.iter().enumerate().filter(|(i, _)| *i != index);
        let others: Vec<&Region> = others.map(|(_, region)| region).collect();
        line.extend(seen(sides_of(&area.corners), &others));
    }
    line
}

/// The outline of a section at `s` of a half turned by `turn`, in (z, y) of the half. Sections
/// are drawn as if still square to the eye; for a pair's opening that is off by less than a line.
fn at(sweep: &Sweep, s: f64, turn: f64) -> Vec<Point> {
    placed(sweep, (s, turn), &sweep.section(s).outline(ROUND))
}

/// What is told about the box of a section, seen end on.
fn placed(sweep: &Sweep, (s, turn): (f64, f64), told: &[(f64, f64)]) -> Vec<Point> {
    let middle = Affine::rotate(turn) * sweep.middle(s);
    // The outside of a half is up at the jaw and down at the rein.
    let up = sweep.path.at(s).left().y.signum();
    let shift = sweep.shift(s);
    let on_paper = |&(z, y): &(f64, f64)| Point::new(shift + z, middle.y + up * y);
    told.iter().map(on_paper).collect()
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
    let mut points: Vec<Point> = places
        .flat_map(|s| placed(rein, (s, turn), &rein.section(s).corners(ROUND)))
        .collect();
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
