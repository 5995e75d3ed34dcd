//! What is known of steel under the hammer before it is struck: how far it spreads, what a square
//! becomes when it is rounded, how much may be upset, how far a boss is out of line.

use std::f64::consts::{FRAC_PI_4, SQRT_2};

pub use crate::forge::upsetting::{MOST_UPSET, MOST_UPSET_BY_HAND, Upset, upset};

/// Steel that keeps its volume is lengthened by this when a square is hammered to the round that
/// fits into it: 4/π.
pub const SQUARE_TO_ROUND: f64 = 1.0 / FRAC_PI_4;

/// Area of a regular octagon over that of the square around it, 2 (√2 − 1).
pub const OCTAGON_FULLNESS: f64 = 2.0 * (SQRT_2 - 1.0);

/// How much taller a section may be before a blow than after it, before it is turned: beyond this
/// the skin laps (from memory; usual is 1.3, up to 1.5).
pub const MOST_SQUEEZE: f64 = 1.3;

/// The widest that a section may stand on edge for its height before the blow that turns it back
/// buckles it (from memory; 2 to 2.5).
pub const MOST_UPRIGHT: f64 = 2.0;

/// The least bite for the height that is struck: shorter ones leave laps (from memory).
pub const LEAST_BITE: f64 = 1.0 / 3.0;

/// What a rein is left proud of its size until it is finished, mm: 1/64 in goes as scale and with the
/// last light blows (common practice, no source).
pub const LEAVE_PROUD_MM: f64 = 0.4;

/// Two sizes between which an estimate lies.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Band {
    /// The smaller one.
    pub least: f64,
    /// The larger one.
    pub most: f64,
}

impl Band {
    fn of(a: f64, b: f64) -> Self {
        Self {
            least: a.min(b),
            most: a.max(b),
        }
    }

    /// What lies half way.
    pub fn middle(self) -> f64 {
        f64::midpoint(self.least, self.most)
    }
}

/// Coefficients of spread S under flat tools, for a bite over the width that is struck: after
/// Tomlinson and Stringer (1959), 0.14 + 0.36 b/w − 0.054 (b/w)², and after Wistreich and Shutt
/// (1959), (b/w)/(1 + b/w); both from memory. Of what a blow takes off the height the part S goes into
/// width, and the rest into length.
///
/// ```
/// use reinwright_core::making::rules::spread_coefficient;
/// let band = spread_coefficient(1.0);
/// assert!((band.least - 0.446).abs() < 1e-12 && (band.most - 0.5).abs() < 1e-12);
/// ```
pub fn spread_coefficient(bite_to_width: f64) -> Band {
    let x = bite_to_width;
    let stringer = 0.14 + 0.36 * x - 0.054 * x * x;
    Band::of(stringer, x / (1.0 + x))
}

/// How wide a section of depth h₀ and width w₀ becomes when it is hammered to depth h₁ with bites so
/// wide, mm: w₀ (h₀/h₁)^S. An estimate.
pub fn spread_mm((depth, width): (f64, f64), thinned_to: f64, bite: f64) -> Band {
    let s = spread_coefficient(bite / width);
    let thinned = (depth / thinned_to).max(1.0);
    Band::of(width * thinned.powf(s.least), width * thinned.powf(s.most))
}

/// The sizes on the way from a square to a round of diameter `d`.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Rounding {
    /// The square from which the round comes out as long as it was: 0.886 d.
    pub keeping_mm: f64,
    /// The square that smiths draw: as wide as the round, which it outgrows by 4/π.
    pub nominal_mm: f64,
    /// The octagon across flats that keeps the length.
    pub octagon_keeping_mm: f64,
    /// From the nominal square to the octagon.
    pub to_octagon: f64,
    /// From the octagon to the round.
    pub to_round: f64,
}

/// Sizes and elongations from square over octagon to a round.
///
/// ```
/// use reinwright_core::making::rules::{SQUARE_TO_ROUND, rounding};
/// let way = rounding(10.0);
/// assert!((way.to_octagon * way.to_round - SQUARE_TO_ROUND).abs() < 1e-12);
/// assert!((way.keeping_mm - 8.86227).abs() < 1e-5);
/// ```
pub fn rounding(diameter: f64) -> Rounding {
    Rounding {
        keeping_mm: diameter * FRAC_PI_4.sqrt(),
        nominal_mm: diameter,
        octagon_keeping_mm: diameter * (FRAC_PI_4 / OCTAGON_FULLNESS).sqrt(),
        to_octagon: 1.0 / OCTAGON_FULLNESS,
        to_round: OCTAGON_FULLNESS / FRAC_PI_4,
    }
}

/// The step to be bent into each half whose boss of thickness e is set down from one face of a bar
/// of thickness S, so that jaw and rein lie in the middle of the pair: e − S/2.
pub fn joggle_mm(boss: f64, bar: f64) -> f64 {
    boss - bar / 2.0
}

/// Passes between quarter turns until a height is taken down, none of them squeezing more than is
/// safe.
pub fn passes(from: f64, to: f64) -> u32 {
    let all = (from / to).max(1.0).ln() / MOST_SQUEEZE.ln();
    #[allow(
        clippy::cast_possible_truncation,
        clippy::cast_sign_loss,
        reason = "between one and a hundred"
    )]
    let count = (all - 1e-9).ceil().clamp(1.0, 100.0) as u32;
    count
}
