//! How a section bears being twisted about the line that it is carried along.

use std::f64::consts::PI;

use super::Section;

impl Section<'_> {
    /// Twisting moment over the greatest shear stress that it makes, mm³.
    ///
    /// A rectangle by Roark's formula, an ellipse by its own; what is between them by its fullness.
    /// A section that is folded or hollowed is unrolled: as long as its middle line and as thick as
    /// leaves its area.
    pub fn twist_modulus_mm3(&self) -> f64 {
        let area = self.area_mm2();
        let middle = self.middle_line_mm();
        // A hair of bend is none.
        if middle > 1.01 * self.width {
            return rectangle_mm3(middle, area / middle);
        }
        let rectangle = rectangle_mm3(self.depth, self.width);
        let ellipse = ellipse_mm3(self.depth, self.width);
        let fullness = self.fullness();
        let (round, full) = (PI / 4.0, 1.0);
        if fullness < round {
            return ellipse * fullness / round;
        }
        let part = ((fullness - round) / (full - round)).min(1.0);
        ellipse + (rectangle - ellipse) * part
    }

    /// Length of the line midway between both surfaces, mm.
    pub(crate) fn middle_line_mm(&self) -> f64 {
        const PARTS: u32 = 16;
        /// Just inside the sides, where a surface may fall off.
        const INSIDE: f64 = 0.98;
        let at = |i: u32| {
            let u = INSIDE * (2.0 * f64::from(i) / f64::from(PARTS) - 1.0);
            (
                u * self.width / 2.0,
                f64::midpoint(self.upper(u), self.lower(u)),
            )
        };
        let mut before = at(0);
        let piece = |i: u32| {
            let (a, b) = (before, at(i));
            before = b;
            (b.0 - a.0).hypot(b.1 - a.1)
        };
        (1..=PARTS).map(piece).sum::<f64>() / INSIDE
    }
}

/// `T / τ` of a rectangle (Roark's Formulas, table 10.1, solid rectangular section).
fn rectangle_mm3(one: f64, other: f64) -> f64 {
    let (a, b) = (one.max(other) / 2.0, one.min(other) / 2.0);
    let r = b / a.max(f64::MIN_POSITIVE);
    let more = 1.0 + r * (0.6095 + r * (0.8865 + r * (-1.8023 + r * 0.9100)));
    8.0 * a * b * b / (3.0 * more)
}

/// `T / τ` of an ellipse: π a b² / 2 of its half-axes (the same table).
fn ellipse_mm3(one: f64, other: f64) -> f64 {
    let (a, b) = (one.max(other) / 2.0, one.min(other) / 2.0);
    PI * a * b * b / 2.0
}
