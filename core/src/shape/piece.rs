//! The seam between what is drawn and what is forged: whatever comes out of a bar.

use std::borrow::Cow;
use std::sync::Arc;

use kurbo::BezPath;

use super::section::smallest_circle_mm;
use super::sweep::{Edge, Sweep};
use super::{Mass, Opening, Plate};
use crate::finding::Part;
use crate::units::Show;

/// One thing forged from bar, finished or at a stage: half of a pair, a stage on the way to it, a
/// punch, a plain length of bar.
#[derive(Debug, Clone, PartialEq)]
pub struct Piece {
    /// What it is called.
    pub name: Cow<'static, str>,
    /// How many of it are wanted.
    pub wanted: u32,
    /// Its steel, in order along the bar.
    pub stretches: Vec<Stretch>,
    /// Its holes.
    pub holes: Vec<Hole>,
    /// What is marked on the bar before forging begins.
    pub marks: Vec<PieceMark>,
    /// The stretch that is filed and ground most, by its place.
    pub dressed: usize,
}

/// A stretch of a piece that is one part of it.
#[derive(Debug, Clone, PartialEq)]
pub struct Stretch {
    /// The part.
    pub part: Part,
    /// The steel that it is a stretch of.
    pub solid: Solid,
    /// Where it begins, in the solid's own coordinate, mm: along the path of a sweep, or x of a
    /// plate.
    pub from: f64,
    /// Where it ends; before its beginning where the solid is told from its other end.
    pub to: f64,
    /// Volume and moments, holes taken out.
    pub mass: Mass,
}

/// Steel of one kind of description.
#[derive(Debug, Clone, PartialEq)]
pub enum Solid {
    /// Sections along a path.
    Swept(Arc<Sweep>),
    /// Two views.
    Plated(Arc<Plate>),
}

/// Steel that is not there: a hole through a piece, or what is sunk into it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Hole {
    /// The stretch that it goes through, by its place.
    pub stretch: usize,
    /// What it is.
    pub opening: Opening,
    /// What it leaves out of the solid piece, mm³.
    pub volume_mm3: f64,
}

/// A mark on the bar, where one stretch ends and the next begins.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct PieceMark {
    /// The stretch that ends there, by its place.
    pub after: usize,
    /// What meets there, in order along the bar.
    pub what: &'static str,
    /// The same for a piece that lies the other way round.
    pub reversed: &'static str,
}

/// The cross-section of a piece at one place.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Cross {
    /// Size in the side view, from the lowest steel to the highest, mm.
    pub depth_mm: f64,
    /// Size in the top view, mm.
    pub width_mm: f64,
    /// Steel, mm².
    pub area_mm2: f64,
    /// Second moment about its own centroid for bending in the side view, mm⁴.
    pub side_mm4: f64,
    /// The same in the top view, mm⁴.
    pub top_mm4: f64,
    /// Diameter of the smallest circle around it, mm.
    pub circle_mm: f64,
}

impl Cross {
    /// `Ø12`, `12 × 10`: depth first, as the drawing has it.
    pub fn words(&self, show: Show) -> String {
        /// A round fills no more than this of the square around it, to rounding.
        const ROUND: f64 = 0.795;
        let full = self.area_mm2 / (self.depth_mm * self.width_mm).max(f64::MIN_POSITIVE);
        let (depth, width) = (show.number(self.depth_mm), show.number(self.width_mm));
        if full < ROUND && depth == width {
            format!("\u{d8}{depth}")
        } else {
            format!("{depth} \u{d7} {width}")
        }
    }
}

/// A section of a piece as it stands in the frame.
#[derive(Debug, Clone, PartialEq)]
pub struct Standing {
    /// Where it is, mm along the piece.
    pub along_mm: f64,
    /// The part that it is a section of.
    pub part: Part,
    /// Its steel, mm², each piece of it with points (x, y, z) around it, mm.
    pub rings: Vec<(f64, Vec<[f64; 3]>)>,
}

impl Piece {
    /// Its length along the bar, mm: along the path where it is bent.
    pub fn length_mm(&self) -> f64 {
        self.stretches.iter().map(Stretch::length_mm).sum()
    }

    /// What its first and its last part are called.
    pub fn ends(&self) -> (&'static str, &'static str) {
        let name = |stretch: Option<&Stretch>| stretch.map_or("piece", |own| own.part.name());
        (name(self.stretches.first()), name(self.stretches.last()))
    }

    /// Volume and moments of one.
    pub fn mass(&self) -> Mass {
        let all: Vec<Mass> = self.stretches.iter().map(|stretch| stretch.mass).collect();
        Mass::sum(&all)
    }

    /// The stretch at a place along it, mm from its beginning, and the place in the stretch's own
    /// coordinate. A place beyond an end counts as the end; `None` for a piece of nothing.
    fn at(&self, along_mm: f64) -> Option<(&Stretch, f64)> {
        let mut rest = along_mm.max(0.0);
        let last = self.stretches.last()?;
        for stretch in &self.stretches {
            let length = stretch.length_mm();
            if rest <= length {
                return Some((stretch, stretch.own(rest)));
            }
            rest -= length;
        }
        Some((last, last.to))
    }

    /// The part at a place along it, mm from its beginning.
    pub fn part_at(&self, along_mm: f64) -> Option<Part> {
        self.at(along_mm).map(|(stretch, _)| stretch.part)
    }

    /// The cross-section at a place along it, mm from its beginning; `None` where it has none.
    pub fn cross(&self, along_mm: f64) -> Option<Cross> {
        let (stretch, own) = self.at(along_mm)?;
        stretch.solid.cross(own)
    }

    /// The smallest bore that the stretch between two places along it, mm from its beginning, can
    /// be pushed through straight along x: the diameter of the smallest circle around all its
    /// sections, each where it stands, mm.
    pub fn bore_mm(&self, (from_mm, to_mm): (f64, f64)) -> f64 {
        /// Sections looked at on each stretch beside its own stations: enough that a bend of tongs
        /// is met within a hundredth of a millimetre.
        const PLACES: u32 = 24;
        let mut points = Vec::new();
        let mut start = 0.0;
        for stretch in &self.stretches {
            let end = start + stretch.length_mm();
            let (a, b) = (from_mm.max(start), to_mm.min(end));
            if b >= a {
                let own = |along: f64| stretch.own(along - start);
                let evenly = (0..=PLACES).map(|i| a + (b - a) * f64::from(i) / f64::from(PLACES));
                let evenly = evenly.map(own).filter(|&at| !stretch.solid.is_ruled_at(at));
                let places = evenly.chain(stretch.stations(own(a), own(b)));
                places.for_each(|place| stretch.solid.rim(place, &mut points));
            }
            start = end;
        }
        smallest_circle_mm(&points)
    }

    /// Sections all along it as they stand in the frame: at its stations, and between them no
    /// farther apart than `every_mm`, each followed to `follow_mm`.
    pub fn standing(&self, every_mm: f64, follow_mm: f64) -> Vec<Standing> {
        let mut all: Vec<Standing> = Vec::new();
        let mut start = 0.0;
        for stretch in &self.stretches {
            let length = stretch.length_mm();
            for along in stretch.places(every_mm) {
                let rings = stretch.solid.rings(stretch.own(along), follow_mm);
                all.push(Standing {
                    along_mm: start + along,
                    part: stretch.part,
                    rings,
                });
            }
            start += length;
        }
        all
    }

    /// What is marked where the stretch at a place ends.
    pub fn marked_after(&self, stretch: usize) -> impl Iterator<Item = &PieceMark> {
        self.marks.iter().filter(move |mark| mark.after == stretch)
    }

    /// Its outline in the side view: one closed path a solid, in order along the bar.
    pub fn side(&self) -> Vec<BezPath> {
        self.solids().map(Solid::side).collect()
    }

    /// Its outline in the top view, (x, z): one closed path a solid. A sweep is told along its
    /// middle line, so an end that is bent in the side view reaches a little farther than is shown.
    pub fn top(&self) -> Vec<BezPath> {
        self.solids().map(Solid::top).collect()
    }

    /// Its solids, each once.
    fn solids(&self) -> impl Iterator<Item = &Solid> {
        let own =
            |at: usize| at == 0 || !self.stretches[at - 1].solid.is(&self.stretches[at].solid);
        let places = (0..self.stretches.len()).filter(move |&at| own(at));
        places.map(|at| &self.stretches[at].solid)
    }
}

impl Stretch {
    /// Its length along the bar, mm.
    pub fn length_mm(&self) -> f64 {
        (self.to - self.from).abs()
    }

    /// A place so far from its beginning, in the solid's own coordinate.
    fn own(&self, along_mm: f64) -> f64 {
        self.from + along_mm.copysign(self.to - self.from)
    }

    /// Places from its beginning, mm: its ends, its stations, and enough between them.
    fn places(&self, every_mm: f64) -> Vec<f64> {
        /// Places nearer than this show one section, mm.
        const SAME: f64 = 0.05;
        let length = self.length_mm();
        let steps = (length / every_mm).ceil().max(1.0);
        let mut all = vec![0.0];
        let mut i = 1.0;
        while i <= steps {
            all.push(length * i / steps);
            i += 1.0;
        }
        let stations = self.stations(self.from, self.to).into_iter();
        all.extend(stations.map(|own| (own - self.from).abs()));
        all.sort_by(f64::total_cmp);
        all.dedup_by(|a, b| (*a - *b).abs() < SAME);
        all
    }

    /// Places between two at which the solid's sections change their law; of a sweep also both ends.
    fn stations(&self, a: f64, b: f64) -> Vec<f64> {
        let (from, to) = (a.min(b), a.max(b));
        match &self.solid {
            Solid::Swept(sweep) => sweep.cuts(from, to),
            Solid::Plated(plate) => {
                let inside = |x: &f64| (from..=to).contains(x);
                plate.faces.cuts().into_iter().filter(inside).collect()
            }
        }
    }
}

impl Solid {
    /// Whether it is the same solid, not only one of the same shape.
    fn is(&self, other: &Self) -> bool {
        match (self, other) {
            (Self::Swept(a), Self::Swept(b)) => Arc::ptr_eq(a, b),
            (Self::Plated(a), Self::Plated(b)) => Arc::ptr_eq(a, b),
            (Self::Swept(_), Self::Plated(_)) | (Self::Plated(_), Self::Swept(_)) => false,
        }
    }

    /// Whether a section says nothing that those at the stations on either side of it do not.
    fn is_ruled_at(&self, own: f64) -> bool {
        match self {
            Self::Swept(sweep) => sweep.is_ruled_at(own),
            Self::Plated(_) => false,
        }
    }

    fn cross(&self, own: f64) -> Option<Cross> {
        let mut points = Vec::new();
        self.rim(own, &mut points);
        let circle_mm = smallest_circle_mm(&points);
        match self {
            Self::Swept(sweep) => {
                let section = sweep.section(own);
                let known = section.properties();
                Some(Cross {
                    depth_mm: section.depth,
                    width_mm: section.width,
                    area_mm2: known.area_mm2,
                    side_mm4: known.side_mm4,
                    top_mm4: known.top_mm4,
                    circle_mm,
                })
            }
            Self::Plated(plate) => plated(plate, own, circle_mm),
        }
    }

    /// Adds points (z, y) around the section at a place, as it stands in the frame.
    fn rim(&self, own: f64, points: &mut Vec<(f64, f64)>) {
        /// How near the points follow a round section, mm.
        const FOLLOW: f64 = 0.01;
        for (_, around) in self.rings(own, FOLLOW) {
            points.extend(around.into_iter().map(|[_, y, z]| (z, y)));
        }
    }

    /// The steel that an upright cut at a place meets, mm², each piece of it with points (x, y, z)
    /// around it as it stands in the frame.
    fn rings(&self, own: f64, follow: f64) -> Vec<(f64, Vec<[f64; 3]>)> {
        match self {
            Self::Swept(sweep) => {
                let (pose, rise, shift) = (sweep.path.at(own), sweep.rise(own), sweep.shift(own));
                let (section, left) = (sweep.section(own), pose.left());
                let place = |(z, v): (f64, f64)| {
                    let at = pose.at + left * (rise + v);
                    [at.x, at.y, z + shift]
                };
                let around = section.corners(follow).into_iter().map(place);
                vec![(section.area_mm2(), around.collect())]
            }
            Self::Plated(plate) => {
                let (near, far) = plate.faces.at(own);
                let rings = plate.steel_at(own).into_iter().map(|(low, high)| {
                    let middle = f64::midpoint(low, high);
                    let section = plate.section(own, (low, high));
                    let place =
                        |(z, v): (f64, f64)| [own, v + middle, z + f64::midpoint(near, far)];
                    let around = section.corners(follow).into_iter().map(place);
                    (section.area_mm2(), around.collect())
                });
                rings.collect()
            }
        }
    }

    fn side(&self) -> BezPath {
        match self {
            Self::Swept(sweep) => around(sweep, [Edge::Outer, Edge::Inner]),
            Self::Plated(plate) => plate.path(),
        }
    }

    fn top(&self) -> BezPath {
        match self {
            Self::Swept(sweep) => around(sweep, [Edge::Far, Edge::Near]),
            Self::Plated(plate) => plate.top(),
        }
    }
}

/// A sweep between two of its silhouettes, closed.
fn around(sweep: &Sweep, [there, back]: [Edge; 2]) -> BezPath {
    let mut path = sweep.edge(there, 0.0, sweep.length());
    let back = sweep.edge(back, sweep.length(), 0.0);
    back.iter().for_each(|el| match el {
        kurbo::PathEl::MoveTo(p) => path.line_to(p),
        el => path.push(el),
    });
    path.close_path();
    path
}

/// The section of a plate at x: all its pieces together, about their common centroid.
fn plated(plate: &Plate, x: f64, circle_mm: f64) -> Option<Cross> {
    let steel = plate.steel_at(x);
    let (first, last) = (steel.first()?, steel.last()?);
    let of = |&(low, high): &(f64, f64)| {
        let known = plate.section(x, (low, high)).properties();
        (known, f64::midpoint(low, high) + known.centroid_mm)
    };
    let known: Vec<_> = steel.iter().map(of).collect();
    let area: f64 = known.iter().map(|(own, _)| own.area_mm2).sum();
    let moment: f64 = known.iter().map(|(own, y)| own.area_mm2 * y).sum();
    let centroid = moment / area.max(f64::MIN_POSITIVE);
    let (near, far) = plate.faces.at(x);
    Some(Cross {
        depth_mm: last.1 - first.0,
        width_mm: far - near,
        area_mm2: area,
        side_mm4: known
            .iter()
            .map(|(own, y)| own.side_mm4 + own.area_mm2 * (y - centroid).powi(2))
            .sum(),
        top_mm4: known.iter().map(|(own, _)| own.top_mm4).sum(),
        circle_mm,
    })
}
