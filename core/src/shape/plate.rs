use kurbo::BezPath;

use super::section::{Profile, Section};
use super::{Curve, Faces, Mass};
use crate::number::quadrature::nodes;

/// A solid given by its two views: every point whose place in the side view lies inside the
/// outline and whose place in the top view lies between the two faces, with a round hole through
/// it about the origin.
#[derive(Debug, Clone, PartialEq)]
pub struct Plate {
    /// Outline in the side view, closed, anticlockwise.
    pub outline: Vec<Curve>,
    /// The two faces in the top view.
    pub faces: Faces,
    /// The rectangle that the plate is, and the profile that it goes over into toward −x.
    pub profiles: [Profile; 2],
    /// Hole: radius, mm.
    pub hole_radius: f64,
}

impl Plate {
    /// The outline as one closed path.
    pub fn path(&self) -> BezPath {
        let mut path = BezPath::new();
        path.move_to(self.outline[0].start());
        for curve in &self.outline {
            curve.add_to(&mut path);
        }
        path.close_path();
        path
    }

    /// Volume and moments of all with `from` ≤ x ≤ `to`. The hole is not taken out.
    pub fn mass_between(&self, from: f64, to: f64) -> Mass {
        self.masses(&[from, to])[0]
    }

    /// Volumes and moments of the slices between ascending `cuts` of x, in one pass along the
    /// outline, by Green's theorem: `∬ f dA = −∮ y f dx`. The hole is not taken out.
    pub fn masses(&self, cuts: &[f64]) -> Vec<Mass> {
        let mut all = cuts.to_vec();
        all.extend(self.faces.cuts());
        let mut masses = vec![Mass::default(); cuts.len().saturating_sub(1)];
        for curve in &self.outline {
            for (a, b) in curve.split_at(&all) {
                let middle = curve.at(f64::midpoint(a, b)).x;
                let slice = cuts.partition_point(|&cut| cut <= middle);
                if let Some(mass) = slice.checked_sub(1).and_then(|i| masses.get_mut(i)) {
                    self.add_piece(curve, (a, b), mass);
                }
            }
        }
        masses
    }

    fn add_piece(&self, curve: &Curve, (a, b): (f64, f64), mass: &mut Mass) {
        for (t, weight) in nodes(a, b) {
            let p = curve.at(t);
            let thick = -weight * self.faces.full_thickness(p.x) * curve.slope(t).x;
            mass.volume += p.y * thick;
            mass.x += p.x * p.y * thick;
            mass.y += p.y * p.y / 2.0 * thick;
        }
    }

    /// Volume and moments of the hole.
    pub fn hole_mass(&self) -> Mass {
        let area = std::f64::consts::PI * self.hole_radius.powi(2);
        Mass {
            volume: area * self.faces.boss_thickness(),
            x: 0.0,
            y: 0.0,
        }
    }

    /// Where an upright cut at x meets steel in the side view, y from and to in mm, ascending: the
    /// hole is taken out.
    pub fn steel_at(&self, x: f64) -> Vec<(f64, f64)> {
        let pieces = self.outline.iter().flat_map(|curve| {
            let split = if curve.is_beside(x) {
                vec![(0.0, 1.0)]
            } else {
                curve.split_at(&[x])
            };
            split
                .into_iter()
                .map(|(a, b)| (curve.at(f64::midpoint(a, b)).x > x, curve.at(b).y))
        });
        let sides: Vec<(bool, f64)> = pieces.collect();
        let next = sides.iter().cycle().skip(1);
        let mut crossings: Vec<f64> = sides
            .iter()
            .zip(next)
            .filter(|((side, _), (then, _))| side != then)
            .map(|((_, y), _)| *y)
            .collect();
        crossings.sort_by(f64::total_cmp);
        let whole = crossings.chunks_exact(2).map(|pair| (pair[0], pair[1]));
        let room = self.hole_radius.powi(2) - x * x;
        if room <= 0.0 {
            return whole.collect();
        }
        let half = room.sqrt();
        whole
            .flat_map(|(from, to)| [(from, to.min(-half)), (from.max(half), to)])
            .filter(|(from, to)| to > from)
            .collect()
    }

    /// The section from `low` to `high` of y at x.
    pub fn section(&self, x: f64, (low, high): (f64, f64)) -> Section<'_> {
        let (near, far) = self.faces.at(x);
        let [plate, end] = &self.profiles;
        let toward_end = x < 0.0;
        Section {
            depth: high - low,
            width: far - near,
            from: plate,
            to: if toward_end { end } else { plate },
            blend: if toward_end { self.faces.blend(x) } else { 0.0 },
        }
    }
}

impl Plate {
    /// The outline in the top view, (x, z), closed: from end to end of the side outline between
    /// the two faces.
    pub fn top(&self) -> BezPath {
        /// Places on each face.
        const PLACES: u32 = 64;
        let ends = self
            .outline
            .iter()
            .flat_map(|curve| [curve.start().x, curve.end().x]);
        let (from, to) = ends.fold((f64::MAX, f64::MIN), |(a, b), x| (a.min(x), b.max(x)));
        let at = |i: u32| from + (to - from) * f64::from(i) / f64::from(PLACES);
        let low = (0..=PLACES).map(|i| (at(i), self.faces.at(at(i)).0));
        let high = (0..=PLACES).rev().map(|i| (at(i), self.faces.at(at(i)).1));
        let mut path = BezPath::new();
        for (i, point) in low.chain(high).enumerate() {
            match i {
                0 => path.move_to(point),
                _ => path.line_to(point),
            }
        }
        path.close_path();
        path
    }
}
