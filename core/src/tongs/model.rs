//! A pair resolved to geometry, in the frame of the crate root.

use std::sync::OnceLock;

use kurbo::{Affine, BezPath, Point};

use crate::finding::Part;
use crate::shape::Mass;
use crate::shape::section::Profile;
use crate::shape::sweep::{Edge, Sweep};
use crate::steel::DENSITY_KG_MM3;
use crate::tongs::body::Body;
use crate::tongs::seat::Seat;

/// One forged half in the set pose: jaw on y > 0, rein on y < 0, boss on 0 ≤ z ≤ thickness.
#[derive(Debug, Clone, PartialEq)]
pub struct Half {
    /// The jaw, from heel to tip.
    pub jaw: Sweep,
    /// Between these places the work may bear, mm along the jaw from its heel.
    pub grip: (f64, f64),
    /// The line of its faces or lips, y in mm.
    pub face: f64,
    /// Neck, boss and shoulder.
    pub body: Body,
    /// The rein, from the shoulder to its end.
    pub rein: Sweep,
    /// Where the middle of the hand is, mm along the rein.
    pub hand_at: f64,
}

/// The work as it lies in the jaws.
#[derive(Debug, Clone, PartialEq)]
pub struct WorkInJaws {
    /// Its profile.
    pub profile: Profile,
    /// Between the jaws, mm.
    pub depth: f64,
    /// Along the rivet, mm; along the tongs where it lies crosswise.
    pub width: f64,
    /// Where its end lies between the jaws, x in mm; its axis, where it lies crosswise.
    pub from: f64,
    /// How it lies.
    pub lies: Lies,
    /// Its middle along the rivet, z in mm: not nothing where it lies beside the tongs.
    pub beside: f64,
}

/// How work lies in a pair.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Lies {
    /// Along the tongs, its end between the jaws.
    Endwise,
    /// Along the tongs and beside them, running on past the boss.
    Alongside,
    /// Along the rivet.
    Crosswise,
}

/// The parts of a half from jaw to rein, as its masses are told.
pub const PARTS: [Part; 5] = [
    Part::Jaw,
    Part::Neck,
    Part::Boss,
    Part::Shoulder,
    Part::Rein,
];

/// What is reckoned once, when it is first asked for. It follows from the rest of a model and so
/// has no say in whether two are the same.
#[derive(Debug, Clone, Default)]
pub(crate) struct Reckoned<T>(OnceLock<T>);

impl<T> PartialEq for Reckoned<T> {
    fn eq(&self, _: &Self) -> bool {
        true
    }
}

/// A pair in the set pose. Whoever changes a half asks that half for its masses and its outline:
/// the model's own are reckoned once.
#[derive(Debug, Clone, PartialEq)]
pub struct Model {
    /// Half A.
    pub a: Half,
    /// Half B, described in the frame of half A: [`Model::half_b_pose`] turns it into place.
    pub b: Half,
    /// Whether both halves have the same jaw. They are the same piece unless a bit is bent to one
    /// side: [`Model::same`] tells.
    pub alike: bool,
    /// How each half's jaw rests on the work.
    pub seats: [Seat; 2],
    /// The work.
    pub work: WorkInJaws,
    /// Between the faces or lips, set, mm; below zero the jaws would meet first.
    pub jaw_gap: f64,
    /// Between the reins at the hand, set, mm.
    pub hand_gap: f64,
    /// Rivet shank diameter, mm.
    pub rivet: f64,
    /// The step to be bent into each half so that jaw and rein centre on z = 0, mm: boss
    /// thickness less half the bar. Below zero it goes the other way.
    pub joggle: f64,
    /// +1 as described; −1 when the pair is turned right and z is flipped.
    pub turn_sign: f64,
    /// Masses of the parts of both halves.
    pub(crate) masses: Reckoned<[[Mass; 5]; 2]>,
    /// Both halves in the side view.
    pub(crate) outlines: Reckoned<[BezPath; 2]>,
}

impl Half {
    /// x of the heel, mm.
    pub fn heel(&self) -> f64 {
        self.jaw.path.at(0.0).at.x
    }

    /// x of the tip, mm.
    pub fn tip(&self) -> f64 {
        self.jaw.path.at(self.jaw.length()).at.x
    }

    /// x of the rein's end, mm (negative): as far as it reaches, where it is bent or rolled.
    pub fn rein_end(&self) -> f64 {
        const PARTS: u32 = 48;
        let (from, to) = (self.bent_from(), self.rein.length());
        let end = self.rein.middle(from).x;
        if from == to {
            return end;
        }
        let places = (0..=PARTS).map(|i| from + (to - from) * f64::from(i) / f64::from(PARTS));
        let edges = |s| [Edge::Inner, Edge::Outer].map(|edge| self.rein.edge_point(edge, s).x);
        places.flat_map(edges).fold(end, f64::min)
    }

    /// Where the rein's end begins to be bent, mm along the rein; its length where it is not.
    pub fn bent_from(&self) -> f64 {
        let mut from = 0.0;
        for run in self.rein.path.runs() {
            // All bends of the line itself lie before the hand.
            if run.curvature != 0.0 && from > self.hand_at {
                return from;
            }
            from += run.length;
        }
        self.rein.length()
    }

    /// Middle of the section under the hand.
    pub fn hand(&self) -> Point {
        self.rein.middle(self.hand_at)
    }

    /// The whole half in the side view as one closed outline.
    pub fn outline(&self) -> BezPath {
        let (jaw, rein) = (&self.jaw, &self.rein);
        let mut path = jaw.edge(Edge::Outer, jaw.length(), 0.0);
        let [first, second] = self.body.edges();
        first.iter().for_each(|curve| curve.add_to(&mut path));
        join(&mut path, &rein.edge(Edge::Inner, 0.0, rein.length()));
        join(&mut path, &rein.edge(Edge::Outer, rein.length(), 0.0));
        second.iter().for_each(|curve| curve.add_to(&mut path));
        join(&mut path, &jaw.edge(Edge::Inner, 0.0, jaw.length()));
        path.close_path();
        path
    }

    /// The jaw alone in the side view, closed.
    pub fn jaw_outline(&self) -> BezPath {
        closed(&self.jaw, Edge::Outer, Edge::Inner)
    }

    /// The rein alone in the side view, closed.
    pub fn rein_outline(&self) -> BezPath {
        closed(&self.rein, Edge::Inner, Edge::Outer)
    }

    /// Volume and moments of the finished half: jaw, body less hole, rein.
    pub fn mass(&self) -> Mass {
        Mass::sum(&self.part_masses())
    }

    /// Volume of the finished half, mm³.
    pub fn volume_mm3(&self) -> f64 {
        self.mass().volume
    }

    /// Volumes and moments of the parts of the finished half, in the order of [`PARTS`]; the hole
    /// is taken from the boss.
    pub fn part_masses(&self) -> [Mass; 5] {
        let sweep = |sweep: &Sweep| {
            let (x, y) = sweep.moments();
            Mass {
                volume: sweep.volume_mm3(),
                x,
                y,
            }
        };
        let far = f64::MAX.sqrt();
        let edge = self.body.rim.half_along();
        let slices = self.body.plate.masses(&[-far, -edge, edge, far]);
        let boss = slices[1].without(self.body.plate.hole_mass());
        [
            sweep(&self.jaw),
            slices[2],
            boss,
            slices[0],
            sweep(&self.rein),
        ]
    }
}

/// Continues a path with another that begins where it ends.
fn join(path: &mut BezPath, next: &BezPath) {
    for el in next.iter() {
        match el {
            kurbo::PathEl::MoveTo(p) => path.line_to(p),
            el => path.push(el),
        }
    }
}

fn closed(sweep: &Sweep, first: Edge, second: Edge) -> BezPath {
    let mut path = sweep.edge(first, sweep.length(), 0.0);
    join(&mut path, &sweep.edge(second, 0.0, sweep.length()));
    path.close_path();
    path
}

impl Model {
    /// Whether both halves are the same piece: they are when their jaws are alike, unless one bit
    /// is bent the other way.
    pub fn same(&self) -> bool {
        self.a == self.b
    }

    /// The joggle, where it is one that a smith would bend in: less is lost in the forging.
    pub fn joggle_to_bend(&self) -> Option<f64> {
        /// Half of what a smith's rule shows, mm (judgement).
        const LEAST: f64 = 0.25;
        (self.joggle.abs() >= LEAST).then_some(self.joggle)
    }

    /// The pair turned half round about x: the other half stands in the place of the first.
    #[must_use]
    pub fn turned_over(&self) -> Self {
        let [first, second] = self.seats.clone();
        Self {
            a: self.b.clone(),
            b: self.a.clone(),
            seats: [second, first],
            masses: Reckoned::default(),
            outlines: Reckoned::default(),
            ..self.clone()
        }
    }

    /// Turns half B from the frame of half A into its place in the side view: (x, y) → (x, −y).
    /// In space it is the half turn about x, (x, y, z) → (x, −y, −z).
    pub fn half_b_pose() -> Affine {
        Affine::FLIP_Y
    }

    /// Turns a point of half B from the frame of half A into its place in space, half round about
    /// x: (x, y, z) → (x, −y, −z).
    pub fn half_b_point([x, y, z]: [f64; 3]) -> [f64; 3] {
        [x, -y, -z]
    }

    /// A point of either half as the hand of the pair asks: a pair turned right has z flipped.
    pub fn handed(&self, [x, y, z]: [f64; 3]) -> [f64; 3] {
        [x, y, self.turn_sign * z]
    }

    /// Both halves and the shank of the rivet, which has its middle at the origin; `None` where a
    /// hole that is larger than its boss leaves less than nothing.
    fn steel(&self) -> Option<Mass> {
        let [a, b] = self.masses();
        let thick = self.a.body.plate.faces.thickness + self.b.body.plate.faces.thickness;
        let shank = Mass {
            volume: std::f64::consts::FRAC_PI_4 * self.rivet.powi(2) * thick,
            x: 0.0,
            y: 0.0,
        };
        Some(Mass::sum(&[a, b, shank])).filter(|steel| steel.volume > 0.0)
    }

    /// Mass of the pair with its rivet shank, kg; nothing where its hole takes more than there is.
    pub fn mass_kg(&self) -> f64 {
        self.steel()
            .map_or(0.0, |steel| steel.volume * DENSITY_KG_MM3)
    }

    /// Volumes and moments of the parts of both halves, each in the frame of half A and in the
    /// order of [`PARTS`].
    pub fn part_masses(&self) -> &[[Mass; 5]; 2] {
        self.masses.0.get_or_init(|| {
            let a = self.a.part_masses();
            let b = if self.alike { a } else { self.b.part_masses() };
            [a, b]
        })
    }

    /// The outlines of both halves as [`Half::outline`] has them, each in the frame of half A.
    pub fn outlines(&self) -> &[BezPath; 2] {
        self.outlines.0.get_or_init(|| {
            let a = self.a.outline();
            let b = if self.same() {
                a.clone()
            } else {
                self.b.outline()
            };
            [a, b]
        })
    }

    /// Volume and moments of both halves, each in the frame of half A.
    pub fn masses(&self) -> [Mass; 2] {
        self.part_masses().each_ref().map(|parts| Mass::sum(parts))
    }

    /// x of the balance point of the pair with its rivet shank, mm from the rivet; negative is
    /// toward the hand.
    pub fn balance_point(&self) -> f64 {
        self.steel().map_or(0.0, |steel| steel.x / steel.volume)
    }
}
