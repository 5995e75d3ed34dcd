//! Work that lies along the rivet, in the hollow of a jaw's inside as the side view shows it.

use kurbo::{Point, Rect, Vec2};

use super::over::Over;
use super::under::{Under, boxes};
use super::{Bears, GROOVE, ON_LIP, Seat};
use crate::shape::section::Section;
use crate::shape::sweep::{Ease, Edge, Sweep};

/// The inside of a jaw in the side view, with the place where work lies across it.
#[derive(Debug, Clone, PartialEq)]
pub struct Inside {
    /// From heel to tip, (x, y) in the frame of the half, mm.
    points: Vec<Point>,
    /// The boxes around a few stretches between them each.
    boxes: Vec<Rect>,
    /// Middle of the place for the work, on the line of the faces.
    at: Point,
}

/// Where work touches an inside.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Touching {
    /// Which of the points is nearest.
    pub point: usize,
    /// By so much the work stands over it, mm; below zero it is clear.
    pub over: f64,
    /// How far it is from the rivet along x, mm.
    pub x: f64,
    /// By so much the work stands less high over it for every radian that the inside turns on, mm:
    /// what lies off the line of the faces is also moved beside the work.
    pub lift: f64,
}

impl Inside {
    /// The inside of a placed jaw whose faces lie at `face` mm, for work whose axis is at `x` mm.
    pub fn new(jaw: &Sweep, (x, face): (f64, f64)) -> Self {
        /// Points of a stretch, closer together at its ends where quarter-rounds are steep: the
        /// straight lines between them stray from a groove of 10 mm by about a thousandth.
        const PARTS: u32 = 64;
        let mut points = Vec::new();
        for pair in jaw.cuts(0.0, jaw.length()).windows(2) {
            let step =
                |i: u32| 0.5 - 0.5 * (std::f64::consts::PI * f64::from(i) / f64::from(PARTS)).cos();
            let parts = if is_straight(jaw, f64::midpoint(pair[0], pair[1])) {
                1
            } else {
                PARTS
            };
            let along = (0..parts).map(|i| pair[0] + (pair[1] - pair[0]) * step(i));
            points.extend(along.map(|s| jaw.edge_point(Edge::Inner, s)));
        }
        points.push(jaw.edge_point(Edge::Inner, jaw.length()));
        Self {
            boxes: boxes(&points),
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

    /// Where work of surface `upper` over x, `half` mm to each side, stands highest over the inside
    /// when that is turned about the rivet by `turn` radians; `None` when the jaw does not reach
    /// so far.
    pub fn highest(&self, turn: f64, half: f64, upper: impl Fn(f64) -> f64) -> Option<Touching> {
        let under = self.under(turn, Over { half, upper });
        let (stretch, (beside, over)) = under.highest()?;
        let (a, b) = under.stretch(stretch);
        let point = stretch + usize::from((b.x - beside).abs() < (a.x - beside).abs());
        let x = beside - under.by.x;
        let (sin, cos) = under.turn;
        let off = (under.work.upper)(beside) - over - (self.at.x * sin + self.at.y * cos);
        Some(Touching {
            point,
            over,
            x,
            lift: x + off * under.work.slope((a, b), beside),
        })
    }

    /// The inside turned about the rivet, with its place under the middle of the work.
    fn under<F: Fn(f64) -> f64>(&self, turn: f64, work: Over<F>) -> Under<'_, F> {
        let (sin, cos) = turn.sin_cos();
        Under {
            points: &self.points,
            boxes: &self.boxes,
            turn: (sin, cos),
            by: Vec2::new(-(self.at.x * cos - self.at.y * sin), 0.0),
            work,
        }
    }

    /// Where work of surface `upper` over x, `half` mm to each side, touches the inside when that is
    /// turned about the rivet by `turn` radians: beside the place, and how far over the line of the
    /// faces, mm, as the inside lies when it is set.
    pub fn touches(&self, turn: f64, half: f64, upper: impl Fn(f64) -> f64) -> Vec<(f64, f64)> {
        /// As near as what counts as shut, mm: a thousandth of an inch.
        const NEAR: f64 = 0.025;
        let under = self.under(turn, Over { half, upper });
        let back = kurbo::Affine::rotate(turn).inverse();
        let places = under.places(NEAR);
        let most = places
            .iter()
            .map(|&(_, over)| over)
            .fold(f64::MIN, f64::max);
        let back = |&(x, over): &(f64, f64)| {
            let at = back * Point::new(x - under.by.x, (under.work.upper)(x) - over);
            (at.x - self.at.x, at.y - self.at.y)
        };
        let near = places.iter().filter(|(_, over)| *over > most - NEAR);
        near.map(back).collect()
    }

    /// Brings the jaw down on work that lies across it.
    pub fn seat(&self, work: &Section<'_>) -> Seat {
        /// Places this much clear of the work still count as touching, mm.
        const TOUCH: f64 = 1e-5;
        let half = work.width / 2.0;
        let upper = |x: f64| work.upper(x / half);
        let under = Under {
            by: -self.at.to_vec2(),
            ..self.under(0.0, Over { half, upper })
        };
        let over = under.places(TOUCH);
        let most = over.iter().map(|&(_, over)| over).fold(f64::MIN, f64::max);
        let touching = over.iter().filter(|(_, over)| *over > most - TOUCH);
        let contacts: Vec<f64> = touching.clone().map(|&(x, _)| x).collect();
        let depth = |&(x, over): &(f64, f64)| upper(x) - over;
        let highest = touching.map(depth).fold(f64::MIN, f64::max);
        Seat {
            face: if over.is_empty() { upper(0.0) } else { most },
            bears: bears_across(&contacts, (highest, self.deepest(half)), half),
            contacts: ends(&contacts),
        }
    }
}

/// Whether the inside runs straight about a place between two stations.
fn is_straight(jaw: &Sweep, s: f64) -> bool {
    let next = jaw.stations.partition_point(|station| station.at <= s);
    let [from, to] = [next.saturating_sub(1), next.min(jaw.stations.len() - 1)];
    let (from, to) = (&jaw.stations[from], &jaw.stations[to]);
    jaw.path.at(s).curvature == 0.0 && from.ease == Ease::Linear && from.profile == to.profile
}

/// How work bears, from where it touches beside its middle and how far over the line of the faces
/// the highest of these places and the deepest place of the hollow lie; `half` is half the work's
/// size along the tongs. All in mm.
pub(crate) fn bears_across(contacts: &[f64], (highest, deepest): (f64, f64), half: f64) -> Bears {
    /// Touching nearer to the deepest place than this is touching the bottom, mm.
    const BOTTOM: f64 = 0.05;
    let beside = contacts.iter().map(|x| x.abs()).fold(0.0, f64::max);
    if deepest < GROOVE {
        Bears::Face
    } else if highest < ON_LIP * deepest {
        Bears::Edges
    } else if highest < deepest - BOTTOM {
        Bears::Walls
    } else if beside > half / 2.0 {
        Bears::Face
    } else {
        Bears::Bottom
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
