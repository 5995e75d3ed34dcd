//! A bit with a square groove: a web between two lips.

use super::Form;
use crate::shape::section::Piece;

/// A trough by its sizes in mm: between the lips, lip from its end to the floor, thickness of a
/// lip, and of the web behind the floor.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Trough {
    pub(super) inside: f64,
    pub(super) lip: f64,
    pub(super) thick: f64,
    pub(super) web: f64,
}

impl Trough {
    /// A heel of some depth and width blends into it over `blend` of `length`, mm.
    pub(super) fn form(self, root: (f64, f64), (blend, length): (f64, f64)) -> Form {
        let inner = self.inside / 2.0;
        let (outer, top) = (inner + self.thick, self.lip + self.web);
        let level = |from: f64, to: f64, v: f64| Piece::line((from, v), (to, v));
        let upper = [level(-outer, outer, top)];
        let lower = [
            level(-outer, -inner, 0.0),
            level(-inner, inner, self.lip),
            level(inner, outer, 0.0),
        ];
        super::form::bit(&upper, &lower, root, (blend, length))
    }
}

/// Play between the lips and the work, mm: 1/32 in for small work, 1/16 in for large (common
/// practice, no source).
pub(super) fn play(width: f64) -> f64 {
    (0.04 * width).clamp(0.8, 1.6)
}
