//! The boss with what grows out of it: neck towards the jaw, shoulder towards the rein.
//!
//! The body is one solid given by its two views: every point whose place in the side view lies
//! inside the outline and whose place in the top view lies between the two faces. What is drawn
//! is therefore what is weighed.

mod faces;
mod limb;
mod rim;

pub use faces::{Blend, Faces};
pub use limb::{Limb, LimbEnd, LimbSpec};
pub use rim::Rim;

use kurbo::{BezPath, Point};

use crate::number::quadrature::nodes;
use crate::shape::section::Profile;
use crate::shape::{Curve, Mass};

/// The middle of a half: neck, boss and shoulder in one.
#[derive(Debug, Clone, PartialEq)]
pub struct Body {
    /// Outline in the side view, closed, anticlockwise.
    pub outline: Vec<Curve>,
    /// The two faces in the top view.
    pub faces: Faces,
    /// The outline of the boss alone.
    pub rim: Rim,
    /// The neck's edges.
    pub neck: Limb,
    /// The shoulder's edges, in the frame turned half round (+x toward the rein).
    pub shoulder: Limb,
    /// The rectangle that the boss is, and the rein's profile at its start.
    pub profiles: [Profile; 2],
    /// Hole: radius, mm.
    pub hole_radius: f64,
}

impl Body {
    /// Puts the outline together from boss, neck and shoulder.
    pub fn new(
        (rim, faces): (Rim, Faces),
        neck: Limb,
        shoulder: Limb,
        profiles: [Profile; 2],
        hole_radius: f64,
    ) -> Self {
        let mut body = Self {
            outline: Vec::new(),
            faces,
            rim,
            neck,
            shoulder,
            profiles,
            hole_radius,
        };
        let [first, second] = body.edges();
        let mut outline = first;
        outline.push(Curve::Line(
            negated(body.shoulder.inner_end()),
            negated(body.shoulder.outer_end()),
        ));
        outline.extend(second);
        outline.push(Curve::Line(body.neck.inner_end(), body.neck.outer_end()));
        outline.retain(|curve| curve.chord() > 1e-9 || !matches!(curve, Curve::Line(..)));
        body.outline = outline;
        body
    }

    /// The edges from the jaw's back over the boss to the inside of the rein, and from the
    /// outside of the rein under the boss to the jaw's face.
    pub fn edges(&self) -> [Vec<Curve>; 2] {
        let turned = |curves: Vec<Curve>| curves.into_iter().map(|curve| curve.half_turn());
        let (neck, shoulder, rim) = (&self.neck, &self.shoulder, &self.rim);
        let mut first = neck.outer_edge();
        first.extend(rim.between(neck.outer_foot, shoulder.inner_foot.half_turn()));
        first.extend(turned(shoulder.inner_edge()));
        let mut second: Vec<Curve> = turned(shoulder.outer_edge()).collect();
        second.extend(rim.between(shoulder.outer_foot.half_turn(), neck.inner_foot));
        second.extend(neck.inner_edge());
        [first, second]
    }

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

    /// Volume and moments of the hole through the boss.
    pub fn hole_mass(&self) -> Mass {
        let area = std::f64::consts::PI * self.hole_radius.powi(2);
        Mass {
            volume: area * self.faces.boss_thickness(),
            x: 0.0,
            y: 0.0,
        }
    }
}

fn negated(p: Point) -> Point {
    Point::new(-p.x, -p.y)
}
