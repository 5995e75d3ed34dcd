use super::Section;
use crate::quadrature::integrate_steep;

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

impl Section<'_> {
    /// Area, centroid, second moments and extreme fibres, integrated piece by piece to about
    /// 1e-9 of their value.
    pub fn properties(&self) -> Properties {
        let half_width = self.width / 2.0;
        let breaks = self.breaks();
        let sum = |f: &dyn Fn(f64, f64, f64) -> f64| -> f64 {
            let piece = |w: &[f64]| {
                integrate_steep(w[0], w[1], |u| {
                    f(u * half_width, self.lower(u), self.upper(u))
                })
            };
            half_width * breaks.windows(2).map(piece).sum::<f64>()
        };
        let area = sum(&|_, low, up| up - low).max(f64::MIN_POSITIVE);
        let centroid = sum(&|_, low, up| (up * up - low * low) / 2.0) / area;
        let side = sum(&|_, low, up| ((up - centroid).powi(3) - (low - centroid).powi(3)) / 3.0);
        let top = sum(&|z, low, up| z * z * (up - low));
        Properties {
            area_mm2: area,
            centroid_mm: centroid,
            side_mm4: side,
            top_mm4: top,
            outer_mm: self.depth / 2.0 - centroid,
            inner_mm: self.depth / 2.0 + centroid,
            half_width_mm: half_width,
        }
    }
}

impl Properties {
    /// Least section modulus for bending in the side view, mm³.
    pub fn side_modulus_mm3(&self) -> f64 {
        self.side_mm4 / self.outer_mm.max(self.inner_mm)
    }
}
