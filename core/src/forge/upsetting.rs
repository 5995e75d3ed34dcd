//! How much steel a smith gathers from the end of a bar.

use std::f64::consts::FRAC_PI_4;

/// The longest unsupported length that is upset in one go, in diameters (forging association's
/// first rule, read in its design rules for upset forgings).
pub const MOST_UPSET: f64 = 3.0;

/// The longest that is upset by hand in one heat, in diameters (judgement: a hand keeps nothing
/// straight that is longer).
pub const MOST_UPSET_BY_HAND: f64 = 2.5;

/// How an upset of a volume at the end of a bar goes.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Upset {
    /// Length of bar that goes into it, mm.
    pub length_mm: f64,
    /// The same in diameters of the bar.
    pub ratio: f64,
    /// Heats that a hand needs for it.
    pub heats: u32,
}

/// Gathers a volume from the end of a bar of so much section.
pub fn upset(volume_mm3: f64, area_mm2: f64) -> Upset {
    let length_mm = volume_mm3 / area_mm2;
    let ratio = length_mm / (area_mm2 / FRAC_PI_4).sqrt();
    #[allow(
        clippy::cast_possible_truncation,
        clippy::cast_sign_loss,
        reason = "between one and a thousand"
    )]
    let heats = (ratio / MOST_UPSET_BY_HAND).ceil().clamp(1.0, 1000.0) as u32;
    Upset {
        length_mm,
        ratio,
        heats,
    }
}
