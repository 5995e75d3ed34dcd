//! Cross-sections in the plane normal to a path: depth in the side view, width along the rivet.
//!
//! A [`Profile`] is a shape in a box of half-sizes one; a [`Section`] is a profile, or a blend of
//! two, at a depth and a width in mm.

mod circle;
mod plain;
mod profile;
mod properties;
mod torsion;
mod work;

pub use circle::{Growing, smallest_circle_mm};
pub use plain::plain_profile;
pub use profile::{Boxed, Piece, Profile};
pub use properties::{Known, Properties};
pub use work::work_section;

/// A cross-section in mm. Its box is centred on the origin; v points to the outside of the half
/// (away from the work and from the other rein), u along the rivet.
#[derive(Debug, Clone, Copy)]
pub struct Section<'a> {
    /// Size in the side view, mm.
    pub depth: f64,
    /// Size in the top view, mm.
    pub width: f64,
    /// The profile that the blend comes from.
    pub from: &'a Profile,
    /// The profile that it goes to.
    pub to: &'a Profile,
    /// How far it has gone, 0 to 1.
    pub blend: f64,
}

impl<'a> Section<'a> {
    /// A section of one profile.
    pub fn new(profile: &'a Profile, depth: f64, width: f64) -> Self {
        Self {
            depth,
            width,
            from: profile,
            to: profile,
            blend: 0.0,
        }
    }

    /// Area over depth × width; blends linearly.
    pub fn fullness(&self) -> f64 {
        self.from.fullness() + (self.to.fullness() - self.from.fullness()) * self.blend
    }

    /// Area in mm².
    pub fn area_mm2(&self) -> f64 {
        self.depth * self.width * self.fullness()
    }

    /// Outer surface (away from the work) over `u` from −1 to 1, in mm from the box's centre.
    pub fn upper(&self, u: f64) -> f64 {
        self.unit(|profile| profile.upper_at(u)) * self.depth / 2.0
    }

    /// Inner surface (towards the work), in mm from the box's centre.
    pub fn lower(&self, u: f64) -> f64 {
        self.unit(|profile| profile.lower_at(u)) * self.depth / 2.0
    }

    /// A number of its profile; of a blend that between those of both.
    fn unit(&self, of: impl Fn(&Profile) -> f64) -> f64 {
        let from = of(self.from);
        if self.is_of_one() {
            return from;
        }
        lerp(from, of(self.to), self.blend)
    }

    /// Whether it is a section of one profile and no blend.
    fn is_of_one(&self) -> bool {
        std::ptr::eq(self.from, self.to)
    }

    /// Where either surface may have a corner, in u, ascending from −1 to 1.
    pub fn breaks(&self) -> Vec<f64> {
        let mut all = self.from.breaks();
        if self.is_of_one() {
            return all;
        }
        all.extend(self.to.breaks());
        all.sort_by(f64::total_cmp);
        all.dedup_by(|a, b| (*a - *b).abs() < 1e-12);
        all
    }

    /// Closed outline as points (z, y) in mm about the box's centre, anticlockwise seen from the
    /// tip, to `tolerance` mm.
    pub fn outline(&self, tolerance: f64) -> Vec<(f64, f64)> {
        self.around(&self.samples(tolerance, |_| true))
    }

    /// The same closed outline without the points on its straight sides.
    pub fn corners(&self, tolerance: f64) -> Vec<(f64, f64)> {
        let bent = |profile: &Profile, u: f64| profile.curved_at(u);
        let curved = |u: f64| bent(self.from, u) || bent(self.to, u);
        self.around(&self.samples(tolerance, curved))
    }

    /// The outline over places in u.
    fn around(&self, us: &[f64]) -> Vec<(f64, f64)> {
        let z = |u: f64| u * self.width / 2.0;
        let lower = us.iter().map(|&u| (z(u), self.lower(u)));
        let upper = us.iter().rev().map(|&u| (z(u), self.upper(u)));
        let mut points: Vec<_> = lower.chain(upper).collect();
        /// Points nearer than this are one, mm.
        const ONE: f64 = 1e-9;
        points.dedup_by(|a, b| (a.0 - b.0).powi(2) + (a.1 - b.1).powi(2) < ONE * ONE);
        points
    }

    /// Places in u that follow both surfaces to `tolerance` mm wherever they are to be followed, else
    /// the ends between which they run on; jumps are stepped across.
    fn samples(&self, tolerance: f64, followed: impl Fn(f64) -> bool) -> Vec<f64> {
        /// Just off a corner, so that both sides of a jump are seen.
        const STEP: f64 = 1e-9;
        let curved = self.from.curved() || self.to.curved();
        let size = self.depth.max(self.width).max(tolerance);
        let each = if curved {
            (0.8 * (size / tolerance).sqrt()).clamp(4.0, 400.0).ceil()
        } else {
            1.0
        };
        // Nearer to each other where a surface may stand upright.
        let mut ways = Vec::with_capacity(32);
        let mut i = 0.0;
        while i <= each {
            ways.push((std::f64::consts::PI * (i / each - 0.5)).sin());
            i += 1.0;
        }
        let breaks = self.breaks();
        let mut us = Vec::with_capacity(breaks.len() * ways.len());
        for pair in breaks.windows(2) {
            let (a, b) = (pair[0] + STEP, pair[1] - STEP);
            let middle = f64::midpoint(a, b);
            let place = |way: &f64| middle + (b - a) / 2.0 * way;
            if followed(middle) {
                us.extend(ways.iter().map(place));
            } else {
                us.extend([-1.0, 1.0].iter().map(place));
            }
        }
        us
    }
}

pub(crate) fn lerp(a: f64, b: f64, t: f64) -> f64 {
    a + (b - a) * t
}
