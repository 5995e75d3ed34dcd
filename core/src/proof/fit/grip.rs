//! The inner surface of a jaw along its grip, and the half-angle at which it touches work.

use super::across::Across;
use super::held::{Held, Touch};
use super::surface::{Surface, rest_on};
use crate::shape::section::Section;
use crate::shape::sweep::Sweep;
use crate::tongs::model::{Half, Lies, WorkInJaws};
use crate::tongs::seat::{BESIDE, Bears, GROOVE, seat};

/// A stretch between two stations of the jaw that is longer than this is looked at in its middle
/// too, mm.
const LONG: f64 = 6.0;

/// A section of the jaw with where its box lies over the line of faces or lips.
#[derive(Debug, Clone)]
struct Kind {
    surface: Surface,
    rise: f64,
    level: bool,
}

/// A place along the grip, in the frame of the half.
#[derive(Debug, Clone, Copy)]
pub(super) struct Place {
    /// Along the jaw from its heel, mm.
    pub(super) along: f64,
    /// x of the line of faces or lips, mm.
    pub(super) x: f64,
    /// y of the line of faces or lips, mm.
    pub(super) y: f64,
    heading: f64,
    kind: usize,
}

/// Of the grip: work that ends nearer to the tip is reckoned as held from here on, so that there is
/// a stretch to be pressed on.
const LAST_START: f64 = 0.98;

/// Of a jaw's own grip: jaws that do not overlap are reckoned as if they did by so much, and it is
/// said that they do not.
const LEAST_GRIP: f64 = 0.02;

/// Where along a jaw the grip that it has in common with the other one ends, mm from its heel.
pub(super) fn common_end(half: &Half, work: &WorkInJaws) -> f64 {
    /// A jaw that ends no farther out than this ends with the other, mm.
    const SAME: f64 = 1e-6;
    let (first, end) = half.grip;
    if half.jaw.path.at(end).at.x <= work.to + SAME {
        end
    } else {
        half.jaw.along_at_x(work.to).clamp(first, end)
    }
}

/// A jaw's grip, ready to be brought down on work of any size.
#[derive(Debug, Clone)]
pub(super) struct Grip<'a> {
    pub(super) places: Vec<Place>,
    kinds: Vec<Kind>,
    jaw: &'a Sweep,
    /// Its inside, where the work lies across it.
    pub(super) across: Option<Across>,
}

impl<'a> Grip<'a> {
    /// The grip of a half on work that lies as it does in its pair.
    pub(super) fn new(half: &'a Half, work: &WorkInJaws) -> Self {
        let jaw = &half.jaw;
        let (first, end) = half.grip;
        let end = common_end(half, work).max(first + LEAST_GRIP * (end - first));
        let last = first + LAST_START * (end - first);
        let from = jaw.along_at_x(work.from).clamp(first.min(last), last);
        let mut grip = Self {
            places: Vec::new(),
            kinds: Vec::new(),
            jaw,
            across: (work.lies == Lies::Crosswise).then(|| Across::new(half, work.from)),
        };
        for pair in jaw.cuts(from, end).windows(2) {
            grip.add(pair[0]);
            if pair[1] - pair[0] > LONG {
                grip.add(f64::midpoint(pair[0], pair[1]));
            }
        }
        grip.add(end);
        grip
    }

    fn add(&mut self, along: f64) {
        let kind = Kind::new(&self.jaw.section(along), self.jaw.rise(along));
        let known = self.kinds.iter().position(|other| other.is_like(&kind));
        let kind = known.unwrap_or_else(|| {
            self.kinds.push(kind);
            self.kinds.len() - 1
        });
        let pose = self.jaw.path.at(along);
        self.places.push(Place {
            along,
            x: pose.at.x,
            y: pose.at.y,
            heading: pose.heading,
            kind,
        });
    }

    /// The half-angle at which the jaw first touches work whose axis lies on y = 0, found from one that
    /// is `near`; `None` when the work is out of reach at any angle.
    ///
    /// A place at (x, y) with its surface v(z) over it stands, turned by φ and heading η, at
    /// height x sin φ + y cos φ + v cos(η + φ); it touches when that is the height of the work.
    pub(super) fn touch(&self, work: &Held<'_>, near: f64) -> Option<Touch> {
        if let Some(across) = &self.across {
            return across.touch(work, near);
        }
        let mut best: Option<Touch> = None;
        let mut heights = Heights::default();
        for (place, at) in self.places.iter().enumerate() {
            if let Some(touch) = best {
                // A place that stands clear at the angle of another one does not touch first.
                let height = heights.get(&self.kinds, at, touch.half_angle, work);
                if at.line(touch.half_angle) >= height {
                    continue;
                }
            }
            let start = best.map_or(near, |touch| touch.half_angle);
            let half_angle = self.turn(at, work, start)?;
            if best.is_none_or(|touch| half_angle > touch.half_angle) {
                best = Some(Touch { half_angle, place });
            }
        }
        best
    }

    /// The half-angle at which one place touches, found from one that is near.
    fn turn(&self, at: &Place, work: &Held<'_>, start: f64) -> Option<f64> {
        /// The surface's own tilt changes the height by less than the square of the angle, so a
        /// few rounds are exact.
        const ROUNDS: u32 = 8;
        /// Less than a ten thousandth of a mm at the end of a long rein.
        const SETTLED: f64 = 1e-7;
        let (reach, rest) = (at.x.hypot(at.y), at.y.atan2(at.x));
        let kind = &self.kinds[at.kind];
        let mut turned = start;
        for _ in 0..ROUNDS {
            let height = kind.height(at.heading + turned, work).0;
            let sine = height / reach;
            if sine.is_nan() || sine.abs() > 1.0 {
                return None;
            }
            let before = turned;
            turned = sine.asin() - rest;
            if kind.level || (turned - before).abs() < SETTLED {
                break;
            }
        }
        Some(turned)
    }

    /// How far both ends of the grip stand off the work when the half has turned, mm.
    pub(super) fn off_ends(&self, half_angle: f64, work: &Held<'_>) -> [f64; 2] {
        if self.across.is_some() {
            return [0.0; 2];
        }
        let mut heights = Heights::default();
        [0, self.places.len() - 1].map(|place| {
            let at = &self.places[place];
            at.line(half_angle) - heights.get(&self.kinds, at, half_angle, work)
        })
    }

    /// How far a place stands off the work when the half has turned, mm.
    pub(super) fn off(&self, place: usize, half_angle: f64, work: &Held<'_>) -> f64 {
        let at = &self.places[place];
        at.line(half_angle) - self.kinds[at.kind].height(at.heading + half_angle, work).0
    }

    /// Whether the work rides on the edges of a groove at a place.
    pub(super) fn rides(&self, place: usize, half_angle: f64, work: &Held<'_>) -> bool {
        if let Some(across) = &self.across {
            return across.rides(half_angle, work);
        }
        /// Touching nearer to the lips than this part of the depth is riding on them.
        const ON_LIP: f64 = 0.005;
        let at = &self.places[place];
        let kind = &self.kinds[at.kind];
        let z = kind.height(at.heading + half_angle, work).1;
        let lips = BESIDE
            .map(|part| kind.inner(part * kind.surface.half()))
            .into_iter()
            .fold(f64::MAX, f64::min);
        let deepest = kind.inner(0.0);
        if deepest <= lips + GROOVE || kind.inner(z) >= ON_LIP * deepest {
            return false;
        }
        // Work on the wide faces beside a mere crease lies on faces.
        let (section, rise) = self.section(place);
        seat(&section, rise, &work.section).bears != Bears::Face
    }

    /// The section at a place and its rise, to be seated on the work.
    pub(super) fn section(&self, place: usize) -> (Section<'a>, f64) {
        let along = self.places[place].along;
        (self.jaw.section(along), self.jaw.rise(along))
    }
}

impl Place {
    /// Height of the line of faces or lips when the half has turned, mm.
    fn line(&self, half_angle: f64) -> f64 {
        self.x * half_angle.sin() + self.y * half_angle.cos()
    }
}

/// The height found last: places of one kind that stand alike share it.
#[derive(Debug, Default)]
struct Heights {
    last: Option<(usize, f64, f64)>,
}

impl Heights {
    fn get(&mut self, kinds: &[Kind], at: &Place, half_angle: f64, work: &Held<'_>) -> f64 {
        let tilt = at.heading + half_angle;
        match self.last {
            Some((kind, same, height)) if kind == at.kind && same == tilt => height,
            Some(_) | None => {
                let height = kinds[at.kind].height(tilt, work).0;
                self.last = Some((at.kind, tilt, height));
                height
            }
        }
    }
}

impl Kind {
    fn new(section: &Section<'_>, rise: f64) -> Self {
        let surface = Surface::lower(section);
        Self {
            level: surface.is_level_at(-rise),
            surface,
            rise,
        }
    }

    fn is_like(&self, other: &Self) -> bool {
        self.surface.is_like(&other.surface, self.rise - other.rise)
    }

    /// The inner surface over the line of faces or lips.
    fn inner(&self, z: f64) -> f64 {
        self.rise + self.surface.at(z)
    }

    /// Height of the line of faces or lips over the middle of the work at which the section,
    /// tilted by an angle, rests on the work; and the z at which it touches.
    fn height(&self, tilt: f64, work: &Held<'_>) -> (f64, f64) {
        let tilt = if self.level { 1.0 } else { tilt.cos() };
        rest_on(&work.surface, &self.surface, self.rise, tilt)
    }
}
