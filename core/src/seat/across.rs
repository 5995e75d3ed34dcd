//! Work that lies along the rivet, in the hollow of a jaw's inside as the side view shows it.

use kurbo::Point;

use super::{Bears, Seat};
use crate::section::Section;
use crate::sweep::{Edge, Sweep};

/// The inside of a jaw in the side view, with the place where work lies across it.
#[derive(Debug, Clone, PartialEq)]
pub struct Inside {
    /// From heel to tip, (x, y) in the frame of the half, mm.
    points: Vec<Point>,
    /// Middle of the place for the work, on the line of the faces.
    at: Point,
}

/// Where work touches an inside.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Touching {
    /// Which of the points.
    pub point: usize,
    /// By so much the work stands over it, mm; below zero it is clear.
    pub over: f64,
}

impl Inside {
    /// The inside of a placed jaw whose faces lie at `face` mm, for work whose axis is at `x` mm.
    pub fn new(jaw: &Sweep, (x, face): (f64, f64)) -> Self {
        /// Points of a stretch, closer together at its ends where quarter-rounds are steep: a
        /// work of 10 mm is followed to a thousandth.
        const PARTS: u32 = 64;
        let mut points = Vec::new();
        for pair in jaw.cuts(0.0, jaw.length()).windows(2) {
            let step =
                |i: u32| 0.5 - 0.5 * (std::f64::consts::PI * f64::from(i) / f64::from(PARTS)).cos();
            let along = (0..PARTS).map(|i| pair[0] + (pair[1] - pair[0]) * step(i));
            points.extend(along.map(|s| jaw.edge_point(Edge::Inner, s)));
        }
        points.push(jaw.edge_point(Edge::Inner, jaw.length()));
        Self {
            points,
            at: Point::new(x, face),
        }
    }

    /// A point of the inside, mm.
    pub fn point(&self, index: usize) -> Point {
        self.points[index]
    }

    /// The place for the work, on the line of the faces, mm.
    pub fn at(&self) -> Point {
        self.at
    }

    /// How far the inside lies over the line of the faces at a point, mm.
    pub fn depth(&self, index: usize) -> f64 {
        self.points[index].y - self.at.y
    }

    /// The deepest that the inside lies over the line of the faces within `half` mm of the place.
    pub fn deepest(&self, half: f64) -> f64 {
        let near = self
            .points
            .iter()
            .filter(|p| (p.x - self.at.x).abs() <= half);
        near.map(|p| p.y - self.at.y).fold(0.0, f64::max)
    }

    /// The place where work of surface `upper` over x, `half` mm to each side, stands highest over
    /// the inside when that is turned about the rivet by `turn` radians; `None` when the jaw does
    /// not reach so far.
    pub fn highest(&self, turn: f64, half: f64, upper: impl Fn(f64) -> f64) -> Option<Touching> {
        let (sin, cos) = turn.sin_cos();
        let middle = self.at.x * cos - self.at.y * sin;
        let mut best: Option<Touching> = None;
        for (point, p) in self.points.iter().enumerate() {
            let x = p.x * cos - p.y * sin - middle;
            if x.abs() > half {
                continue;
            }
            let over = upper(x) - (p.x * sin + p.y * cos);
            if best.is_none_or(|found| over > found.over) {
                best = Some(Touching { point, over });
            }
        }
        best
    }

    /// Brings the jaw down on work that lies across it.
    pub fn seat(&self, work: &Section<'_>) -> Seat {
        /// Places this much clear of the work still count as touching, mm.
        const TOUCH: f64 = 2e-3;
        let half = work.width / 2.0;
        let upper = |x: f64| work.upper(x / half);
        let over = |p: &Point| upper(p.x - self.at.x) - (p.y - self.at.y);
        let near: Vec<&Point> = self
            .points
            .iter()
            .filter(|p| (p.x - self.at.x).abs() <= half)
            .collect();
        let face = near.iter().map(|p| over(p)).fold(f64::MIN, f64::max);
        let touching = near.iter().filter(|p| over(p) > face - TOUCH);
        let contacts: Vec<f64> = touching.clone().map(|p| p.x - self.at.x).collect();
        let deepest = self.deepest(half);
        let lowest = touching.map(|p| p.y - self.at.y).fold(f64::MIN, f64::max);
        Seat {
            face: if near.is_empty() {
                work.depth / 2.0
            } else {
                face
            },
            bears: bears_across(&contacts, (lowest, deepest)),
            contacts: ends(&contacts),
        }
    }
}

/// How work bears, from where it touches beside its middle and how far over the line of the faces
/// the highest of these places and the deepest place of the hollow lie, mm.
pub(crate) fn bears_across(contacts: &[f64], (highest, deepest): (f64, f64)) -> Bears {
    /// A shallower hollow is a face, mm: as for a groove along the work.
    const HOLLOW: f64 = 0.3;
    /// Touching nearer to the line of the faces than this part of the depth is riding on the lips.
    const ON_LIP: f64 = 0.04;
    let beside = contacts.iter().map(|x| x.abs()).fold(0.0, f64::max);
    if deepest < HOLLOW {
        Bears::Face
    } else if highest < ON_LIP * deepest {
        Bears::Edges
    } else if beside < HOLLOW {
        Bears::Bottom
    } else {
        Bears::Walls
    }
}

/// The first and the last of some places; one if they are one.
fn ends(places: &[f64]) -> Vec<f64> {
    let mut ends: Vec<f64> = places
        .first()
        .into_iter()
        .chain(places.last())
        .copied()
        .collect();
    ends.dedup();
    ends
}
