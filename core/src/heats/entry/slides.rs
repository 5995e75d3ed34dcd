//! How far a piece slides in from an end, straight.

use super::{HAIR, Mouth};
use crate::heats::stand::{End, Slice, Stand};

/// How far a piece goes in from an end and what stops it.
pub(super) struct Slid<'a> {
    pub(super) slides_mm: f64,
    pub(super) stopped: Option<&'a Slice>,
}

/// The circle around all that goes in so far from an end, mm: up to the first section that is as far.
pub(super) fn circle_to(stand: &Stand, end: End, deep_mm: f64) -> f64 {
    let deep = |slice: &&Slice| stand.from_end_mm(end, slice.at_mm) >= deep_mm - HAIR;
    let first = stand.from(end).find(deep).or(stand.from(end).last());
    first.map_or(0.0, |slice| slice.bore_mm[end as usize])
}

/// How far everything passes straight from an end.
pub(super) fn slides(stand: &Stand, mouth: Mouth, end: End) -> Slid<'_> {
    let mut spread = Spread::NOTHING;
    // What is in a circle that fits needs no box yet.
    let mut unboxed: Vec<&Slice> = Vec::new();
    let mut slides_mm = 0.0;
    for slice in stand.from(end) {
        let circle = slice.bore_mm[end as usize];
        let passes = match mouth {
            // What is laid in from the side slides as far as one likes.
            Mouth::Open | Mouth::Slot { .. } => true,
            Mouth::Round { across_mm, .. } => circle <= across_mm + HAIR,
            Mouth::Opening {
                width_mm,
                height_mm,
            } => {
                unboxed.push(slice);
                circle <= width_mm.min(height_mm) + HAIR || {
                    let added = unboxed.drain(..);
                    added.for_each(|slice| spread.add(&slice.points));
                    spread.fits((width_mm, height_mm))
                }
            }
        };
        if !passes {
            return Slid {
                slides_mm,
                stopped: Some(slice),
            };
        }
        slides_mm = stand.from_end_mm(end, slice.at_mm);
    }
    Slid {
        slides_mm: stand.length_mm,
        stopped: None,
    }
}

/// The box around points as they are seen along x.
pub(super) struct Spread {
    low: (f64, f64),
    high: (f64, f64),
}

impl Spread {
    pub(super) const NOTHING: Self = Self {
        low: (f64::INFINITY, f64::INFINITY),
        high: (f64::NEG_INFINITY, f64::NEG_INFINITY),
    };

    pub(super) fn add(&mut self, points: &[[f64; 3]]) {
        for &[_, y, z] in points {
            self.low = (self.low.0.min(y), self.low.1.min(z));
            self.high = (self.high.0.max(y), self.high.1.max(z));
        }
    }

    pub(super) fn size(&self) -> (f64, f64) {
        (self.high.0 - self.low.0, self.high.1 - self.low.1)
    }

    /// Whether it goes into an opening, one way or a quarter turn round.
    fn fits(&self, (a, b): (f64, f64)) -> bool {
        let (y, z) = self.size();
        let (small, large) = (y.min(z), y.max(z));
        small <= a.min(b) + HAIR && large <= a.max(b) + HAIR
    }
}
