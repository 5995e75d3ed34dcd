//! A jaw as stations along a line, before it is placed on a half.

use kurbo::Point;

use crate::shape::section::{Piece, Profile, lerp};
use crate::shape::sweep::{Ease, Path, Run, Station, Sweep};

/// How a jaw lays its work.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Lay {
    /// Its axis along the tongs, its end between the jaws `end` mm past the heel; where the grip
    /// begins if nothing else stops it.
    Endwise {
        /// A stop, mm past the heel; before it if below zero.
        end: Option<f64>,
    },
    /// Along the tongs too, but beside them: it runs on past the boss.
    Alongside,
    /// Its axis along the rivet, `at` mm past the heel.
    Crosswise {
        /// mm past the heel, along x.
        at: f64,
    },
}

/// The line that a jaw's stations are counted along: arcs and straights from the heel.
#[derive(Debug, Clone, PartialEq)]
pub struct Course {
    /// Where it starts, mm over the line of the faces or lips.
    pub rise: f64,
    /// Which way it sets out, radians from the tongs' axis, outwards positive.
    pub heading: f64,
    /// Its runs.
    pub runs: Vec<Run>,
}

impl Course {
    /// Straight along the line of the faces or lips.
    pub fn straight(length: f64) -> Self {
        Self {
            rise: 0.0,
            heading: 0.0,
            runs: vec![Run {
                length,
                curvature: 0.0,
            }],
        }
    }

    /// Through places (x past the heel, y over the line of faces or lips, heading) in mm and
    /// radians, by arcs and straights that meet without a corner; and how far along it each of
    /// the places is.
    pub fn through(poses: &[(f64, f64, f64)]) -> (Self, Vec<f64>) {
        let placed: Vec<(Point, f64)> = poses
            .iter()
            .map(|&(x, y, heading)| (Point::new(x, y), heading))
            .collect();
        let (mut along, mut runs) = (vec![0.0], Vec::new());
        for pair in placed.windows(2) {
            let between = Path::through(pair);
            let length: f64 = between.iter().map(|run| run.length).sum();
            along.push(along[along.len() - 1] + length);
            runs.extend(between);
        }
        let (_, rise, heading) = poses.first().copied().unwrap_or_default();
        let course = Self {
            rise,
            heading,
            runs,
        };
        (course, along)
    }

    /// Its length, mm.
    pub fn length(&self) -> f64 {
        self.runs.iter().map(|run| run.length).sum()
    }
}

/// A jaw as stations, before it is placed.
#[derive(Debug, Clone, PartialEq)]
pub struct Form {
    /// What the stations are counted along; the rise of a station counts from it.
    pub course: Course,
    /// From heel (0) to tip.
    pub stations: Vec<Station>,
    /// The profiles that they name.
    pub profiles: Vec<Profile>,
    /// Between these places the work may bear, mm along from the heel.
    pub grip: (f64, f64),
    /// How the work lies.
    pub lay: Lay,
}

impl Form {
    /// A jaw along a straight line, gripping endwise from `grip_from` to its tip.
    pub fn straight(stations: Vec<Station>, profiles: Vec<Profile>, grip_from: f64) -> Self {
        let length = stations.last().map_or(0.0, |station| station.at);
        Self {
            course: Course::straight(length),
            stations,
            profiles,
            grip: (grip_from, length),
            lay: Lay::Endwise { end: None },
        }
    }

    /// Its length along its course, mm.
    pub fn length(&self) -> f64 {
        self.stations.last().map_or(0.0, |station| station.at)
    }

    /// The stations whose sizes are worth telling a smith: heel and tip, the bottom of what is sunk
    /// across the inside, where the jaw is widest, and where back or sides bend. What lies close
    /// to heel or tip, or in line with its neighbours, follows from the others.
    pub fn told(&self) -> Vec<usize> {
        let last = self.stations.len() - 1;
        let told = |i: &usize| *i == 0 || *i == last || self.is_told(*i);
        (0..=last).filter(told).collect()
    }

    /// Whether a station between heel and tip is worth telling.
    fn is_told(&self, i: usize) -> bool {
        /// Parts of the length next to heel and tip that they stand for.
        const NEAR: (f64, f64) = (0.25, 0.85);
        let (before, here, next) = (
            &self.stations[i - 1],
            &self.stations[i],
            &self.stations[i + 1],
        );
        let sunk = |station: &Station| station.rise - station.depth / 2.0;
        let over =
            |of: fn(&Station) -> f64| of(here) - of(before) > SEEN && of(here) - of(next) > -SEEN;
        let t = (here.at - before.at) / (next.at - before.at).max(f64::MIN_POSITIVE);
        let off = |of: fn(&Station) -> f64| (lerp(of(before), of(next), t) - of(here)).abs() > SEEN;
        let part = here.at / self.length();
        let bends = off(|s| s.rise + s.depth / 2.0) || off(|s| s.width);
        sunk(here) - sunk(before) > SEEN && sunk(here) - sunk(next) > -SEEN
            || over(|s| s.width)
            || bends && (NEAR.0..=NEAR.1).contains(&part)
    }

    /// The largest radius to which the back of the tip can be broken, mm: half the last run, a
    /// third of the depth, and half the wall over a groove.
    pub(super) fn tip_room(&self) -> f64 {
        let [.., before, tip] = self.stations.as_slice() else {
            return 0.0;
        };
        let inner = &self.profiles[tip.profile];
        let room = ((tip.at - before.at) / 2.0).min(tip.depth / 3.0);
        if inner.lower_pieces().len() > 1 {
            room.min(least_wall(inner, tip.depth) / 2.0)
        } else {
            room
        }
    }

    /// The jaw as a sweep whose faces or lips lie at `face` mm from the axis, heel at `heel` mm.
    pub fn placed(&self, heel: f64, face: f64) -> Sweep {
        let start = Point::new(heel, face + self.course.rise);
        Sweep {
            path: Path::new(start, self.course.heading, self.course.runs.clone()),
            stations: self.stations.clone(),
            profiles: self.profiles.clone(),
        }
    }

    /// Rounds the back of the tip over the last `r` mm; the gripping side stays as it is.
    pub(super) fn break_tip(&mut self, r: f64) {
        let Some((start, end, profile)) = self.broken_tip(r) else {
            return;
        };
        let at = self.profiles.len();
        self.stations.pop();
        self.stations.push(start);
        self.stations.push(Station {
            profile: if profile.is_some() { at } else { end.profile },
            ..end
        });
        self.profiles.extend(profile);
    }

    /// The two stations of a tip broken by `r` mm, and the profile of the second if it needs one
    /// of its own; `None` where there is nothing to break.
    fn broken_tip(&self, r: f64) -> Option<(Station, Station, Option<Profile>)> {
        let [.., before, tip] = self.stations.as_slice() else {
            return None;
        };
        if r < LEAST_BREAK {
            return None;
        }
        let inner = &self.profiles[tip.profile];
        let grooved = inner.lower_pieces().len() > 1;
        let t = 1.0 - r / (tip.at - before.at);
        let start = Station {
            at: tip.at - r,
            depth: lerp(before.depth, tip.depth, t),
            width: lerp(before.width, tip.width, t),
            rise: lerp(before.rise, tip.rise, t),
            shift: lerp(before.shift, tip.shift, t),
            profile: tip.profile,
            ease: Ease::RoundDown,
        };
        let mut end = Station {
            depth: start.depth - r,
            rise: start.rise - r / 2.0,
            width: (start.width - r).max(start.width / 2.0),
            ..*tip
        };
        if !grooved && start.width - tip.width > r {
            // A corner that narrows faster than that is broken already: a round that begins level
            // would leave a notch in it, so the back takes a chamfer and the corner runs on.
            end.width = tip.width;
            let chamfered = Station {
                ease: Ease::Linear,
                ..start
            };
            return Some((chamfered, end, None));
        }
        if !grooved {
            return Some((start, end, None));
        }
        // The box grows shallower, the groove in it must not.
        end.width = start.width;
        Some((
            start,
            end,
            Some(inner.with_groove_raised(start.depth / end.depth)),
        ))
    }
}

/// A smaller difference of size than this is not told, mm.
const SEEN: f64 = 0.2;

/// A smaller radius than this is no break that could be seen, mm.
const LEAST_BREAK: f64 = 0.05;

/// The least thickness between a groove and the back, mm.
fn least_wall(profile: &Profile, depth: f64) -> f64 {
    const PLACES: u32 = 64;
    /// Where the inner surface is nearer to the line of lips than this there is no groove.
    const GROOVE: f64 = -0.98;
    let (left, right) = profile.lips();
    let us = (0..=PLACES).map(|i| lerp(left, right, f64::from(i) / f64::from(PLACES)));
    let deep = us.filter(|&u| profile.lower_at(u) > GROOVE);
    let walls = deep.map(|u| (profile.upper_at(u) - profile.lower_at(u)) * depth / 2.0);
    walls.fold(depth, f64::min)
}

/// A step of the inside, such as the face of a stop, is drawn over this length, mm: a degree or two
/// off square at the most, no more than a forge could tell.
pub(super) const STEP: f64 = 0.1;

/// A rectangular station `at` mm along, between an inner and an outer line and so wide, mm over
/// the course.
pub(super) fn block(at: f64, (inner, outer): (f64, f64), width: f64, ease: Ease) -> Station {
    Station {
        at,
        depth: outer - inner,
        width,
        rise: f64::midpoint(inner, outer),
        shift: 0.0,
        profile: 0,
        ease,
    }
}

/// A bit of constant section that a rectangular heel blends into: its surfaces in mm over the
/// line of the lips, the heel's depth and width, and the lengths of the blend and of the whole.
pub(super) fn bit(
    upper: &[Piece],
    lower: &[Piece],
    (root_depth, root_width): (f64, f64),
    (blend, length): (f64, f64),
) -> Form {
    let bit = Profile::boxed(upper, lower);
    let blend = blend.min(0.8 * length);
    let top = bit.bottom + bit.depth;
    // The back runs straight from heel to tip; the heel keeps off the other jaw.
    let rise = (top - root_depth / 2.0).max(root_depth / 2.0 + bit.bottom);
    let grip = Station {
        at: blend,
        depth: bit.depth,
        width: bit.width,
        rise: bit.bottom + bit.depth / 2.0,
        shift: 0.0,
        profile: 1,
        ease: Ease::Linear,
    };
    let heel = Station {
        at: 0.0,
        depth: root_depth,
        width: root_width,
        rise,
        shift: 0.0,
        profile: 0,
        ease: Ease::Smooth,
    };
    let stations = vec![heel, grip, Station { at: length, ..grip }];
    Form::straight(stations, vec![Profile::rectangle(), bit.profile], blend)
}
