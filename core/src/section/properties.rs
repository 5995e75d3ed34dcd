use super::Section;
use crate::quadrature::steep_nodes;

/// What bending needs to know of a section, in mm about its own centroid.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Properties {
    /// Area, mm².
    pub area_mm2: f64,
    /// Centroid above the box's centre, mm (towards the outside of the half).
    pub centroid_mm: f64,
    /// Second moment for bending in the side view, mm⁴.
    pub side_mm4: f64,
    /// Second moment for bending in the top view, mm⁴.
    pub top_mm4: f64,
    /// Centroid to the outer fibre in the side view, mm.
    pub outer_mm: f64,
    /// Centroid to the inner fibre in the side view, mm.
    pub inner_mm: f64,
    /// Centroid to the side, in the top view, mm.
    pub half_width_mm: f64,
}

/// Area and moments about the middle of the box, in the units of the surfaces given.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub(super) struct Moments {
    /// `∫ dA`.
    pub(super) area: f64,
    /// `∫ v dA`.
    first: f64,
    /// `∫ v² dA`.
    side: f64,
    /// `∫ u² dA`.
    top: f64,
}

impl Moments {
    /// Of the shape between two surfaces `(lower, upper)` over u, smooth between `breaks`.
    pub(super) fn of(breaks: &[f64], surfaces: impl Fn(f64) -> (f64, f64)) -> Self {
        let mut sum = Self::default();
        for pair in breaks.windows(2) {
            for (u, weight) in steep_nodes(pair[0], pair[1]) {
                let (low, up) = surfaces(u);
                let deep = up - low;
                sum.area += weight * deep;
                sum.first += weight * deep * (up + low) / 2.0;
                sum.side += weight * deep * (up * up + up * low + low * low) / 3.0;
                sum.top += weight * deep * u * u;
            }
        }
        sum
    }
}

impl Section<'_> {
    /// Area, centroid, second moments and extreme fibres: from the profile's own moments, or for
    /// a blend of two profiles integrated piece by piece to about 1e-9 of their value.
    pub fn properties(&self) -> Properties {
        let m = self.unit_moments();
        let (half_depth, half_width) = (self.depth / 2.0, self.width / 2.0);
        let area = m.area.max(f64::MIN_POSITIVE);
        let centroid = m.first / area;
        let side = (m.side - m.first * centroid).max(0.0);
        Properties {
            area_mm2: area * half_depth * half_width,
            centroid_mm: centroid * half_depth,
            side_mm4: side * half_depth.powi(3) * half_width,
            top_mm4: m.top * half_depth * half_width.powi(3),
            outer_mm: half_depth * (1.0 - centroid),
            inner_mm: half_depth * (1.0 + centroid),
            half_width_mm: half_width,
        }
    }

    /// The centroid above the box's centre, mm.
    pub fn centroid_mm(&self) -> f64 {
        if self.from.even() && self.to.even() {
            return 0.0;
        }
        let m = self.unit_moments();
        m.first / m.area.max(f64::MIN_POSITIVE) * self.depth / 2.0
    }

    /// Moments in the unit box.
    fn unit_moments(&self) -> Moments {
        if self.blend == 0.0 || std::ptr::eq(self.from, self.to) {
            return self.from.moments();
        }
        if self.blend == 1.0 {
            return self.to.moments();
        }
        let unit = Self {
            depth: 2.0,
            width: 2.0,
            ..*self
        };
        Moments::of(&unit.breaks(), |u| (unit.lower(u), unit.upper(u)))
    }
}

impl Properties {
    /// Least section modulus for bending in the side view, mm³.
    pub fn side_modulus_mm3(&self) -> f64 {
        self.side_mm4 / self.outer_mm.max(self.inner_mm)
    }
}
