//! Work that lies along the rivet, in the hollow of a jaw's inside as the side view shows it.

use kurbo::{Point, Vec2};

use super::{Bears, GROOVE, ON_LIP, Seat};
use crate::number::peak::top;
use crate::shape::section::Section;
use crate::shape::sweep::{Ease, Edge, Sweep};

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
    /// Which of the points is nearest.
    pub point: usize,
    /// By so much the work stands over it, mm; below zero it is clear.
    pub over: f64,
    /// How far it is from the rivet along x, mm.
    pub x: f64,
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
        let work = Over { half, upper };
        let (sin, cos) = turn.sin_cos();
        let middle = self.at.x * cos - self.at.y * sin;
        let turned = |p: Point| Point::new(p.x * cos - p.y * sin - middle, p.x * sin + p.y * cos);
        let stretch = |i: usize| (turned(self.points[i]), turned(self.points[i + 1]));
        let mut best: Option<(usize, f64)> = None;
        let mut last = work.end(turned(*self.points.first()?));
        for (i, &p) in self.points.iter().enumerate().skip(1) {
            let next = work.end(turned(p));
            let over = work.about_over(&last, &next);
            if over.is_some_and(|over| best.is_none_or(|(_, most)| over > most)) {
                best = over.map(|over| (i - 1, over));
            }
            last = next;
        }
        // Between its ends the truly highest place is in this stretch or in one beside it.
        let near = best?.0;
        let around = near.saturating_sub(1)..(near + 2).min(self.points.len() - 1);
        let exact = around.filter_map(|i| Some((i, work.highest(stretch(i))?)));
        let (i, (beside, over)) = exact.max_by(|(_, p), (_, q)| p.1.total_cmp(&q.1))?;
        let (a, b) = stretch(i);
        let point = i + usize::from((b.x - beside).abs() < (a.x - beside).abs());
        Some(Touching {
            point,
            over,
            x: middle + beside,
        })
    }

    /// Where work of surface `upper` over x, `half` mm to each side, touches the inside when that is
    /// turned about the rivet by `turn` radians: beside the place, and how far over the line of the
    /// faces, mm, as the inside lies when it is set.
    pub fn touches(&self, turn: f64, half: f64, upper: impl Fn(f64) -> f64) -> Vec<(f64, f64)> {
        /// As near as what counts as shut, mm: a thousandth of an inch.
        const NEAR: f64 = 0.025;
        let work = Over { half, upper };
        let turned = kurbo::Affine::rotate(turn);
        let middle = (turned * self.at).x;
        let moved = |p: Point| turned * p - Vec2::new(middle, 0.0);
        let stretches = self.points.windows(2);
        let places: Vec<(f64, f64)> = stretches
            .flat_map(|pair| work.places((moved(pair[0]), moved(pair[1]))))
            .collect();
        let most = places
            .iter()
            .map(|&(_, over)| over)
            .fold(f64::MIN, f64::max);
        let back = |&(x, over): &(f64, f64)| {
            let at = Point::new(x + middle, (work.upper)(x) - over);
            let at = turned.inverse() * at;
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
        let work = Over {
            half,
            upper: |x: f64| work.upper(x / half),
        };
        let from_place = |p: Point| Point::new(p.x - self.at.x, p.y - self.at.y);
        let stretches = self.points.windows(2);
        let over: Vec<(f64, f64)> = stretches
            .flat_map(|pair| work.places((from_place(pair[0]), from_place(pair[1]))))
            .collect();
        let most = over.iter().map(|&(_, over)| over).fold(f64::MIN, f64::max);
        let touching = over.iter().filter(|(_, over)| *over > most - TOUCH);
        let contacts: Vec<f64> = touching.clone().map(|&(x, _)| x).collect();
        let depth = |&(x, over): &(f64, f64)| (work.upper)(x) - over;
        let highest = touching.map(depth).fold(f64::MIN, f64::max);
        Seat {
            face: if over.is_empty() {
                (work.upper)(0.0)
            } else {
                most
            },
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

/// An end of a stretch of the inside, turned with it.
struct End {
    at: Point,
    over: Option<f64>,
}

/// The upper surface of work over x from its middle, `half` mm to each side.
struct Over<F> {
    half: f64,
    upper: F,
}

impl<F: Fn(f64) -> f64> Over<F> {
    /// The part of a stretch that the work is over: from which x to which, and its height there.
    fn shared(&self, (a, b): (Point, Point)) -> Option<(f64, f64, impl Fn(f64) -> f64 + use<F>)> {
        let (a, b) = if a.x <= b.x { (a, b) } else { (b, a) };
        let (from, to) = (a.x.max(-self.half), b.x.min(self.half));
        let rise = (b.y - a.y) / (b.x - a.x).max(f64::MIN_POSITIVE);
        // On an upright stretch the lower end is the one that can touch.
        let low = a.y.min(b.y);
        let upright = b.x - a.x < 1e-12;
        let height = move |x: f64| if upright { low } else { a.y + rise * (x - a.x) };
        (from <= to).then_some((from, to, height))
    }

    /// An end of a stretch, with how far the work stands over it where it does, mm.
    fn end(&self, at: Point) -> End {
        let under = at.x.abs() <= self.half;
        End {
            at,
            over: under.then(|| (self.upper)(at.x) - at.y),
        }
    }

    /// About how far the work stands over a stretch, mm: over a short one at the higher of its ends; a
    /// long one may have its highest place far from both.
    fn about_over(&self, a: &End, b: &End) -> Option<f64> {
        /// Longer than this is long, mm.
        const LONG: f64 = 1.0;
        if (a.at.x - b.at.x).abs() > LONG {
            Some(self.highest((a.at, b.at))?.1)
        } else {
            self.over_ends(a, b)
        }
    }

    /// How far the work stands over a stretch at the higher of the ends of what they share, mm.
    fn over_ends(&self, a: &End, b: &End) -> Option<f64> {
        if let (Some(p), Some(q)) = (a.over, b.over) {
            return Some(p.max(q));
        }
        if a.at.x.max(b.at.x) < -self.half || a.at.x.min(b.at.x) > self.half {
            return None;
        }
        let (from, to, height) = self.shared((a.at, b.at))?;
        let over = |x: f64| (self.upper)(x) - height(x);
        Some(over(from).max(over(to)))
    }

    /// Where the work stands highest over a stretch, and how far.
    fn highest(&self, stretch: (Point, Point)) -> Option<(f64, f64)> {
        let places = self.places(stretch).into_iter();
        places.max_by(|p, q| p.1.total_cmp(&q.1))
    }

    /// Both ends of a stretch and the place between them where the work stands highest, each with
    /// how far it stands over the stretch; none where the work does not lie over it. Work is
    /// nowhere hollow, so there is one such place.
    fn places(&self, stretch: (Point, Point)) -> Vec<(f64, f64)> {
        let Some((from, to, height)) = self.shared(stretch) else {
            return Vec::new();
        };
        let over = |x: f64| (self.upper)(x) - height(x);
        /// How nearly the place is found, mm: the height is exact to the square of this.
        const NEAR: f64 = 1e-5;
        let highest = top((from, to), NEAR, over);
        [from, highest, to].map(|x| (x, over(x))).to_vec()
    }
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
