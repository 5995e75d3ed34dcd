//! How stout a jaw must be for its reach.

use crate::asked::Bar;
use crate::steel::strength;

/// A strong squeeze of one hand, N.
const STRONG_N: f64 = 160.0;
/// Parts of the yield that a jaw uses under it (judgement).
const USED: f64 = 0.85;
/// Sides of the bar between rivet and hand, and between rivet and heel, in the starting pair.
const HAND: f64 = 17.0;
const HEEL: f64 = 1.55;
/// The leverage that a starting pair keeps however far its jaw reaches.
const LEVERAGE: f64 = 3.1;

/// The section modulus that bears a strong squeeze so far behind the place where the work
/// presses, mm³: `F · leverage · reach / σ`.
pub(super) fn modulus_mm3(bar: &Bar, reach: f64) -> f64 {
    let side = bar.stock.equal_square_mm();
    let leverage = (HAND * side / (HEEL * side + reach)).max(LEVERAGE);
    STRONG_N * leverage * reach / (USED * strength(bar.steel).yield_mpa)
}

/// The depth at which a rectangle of some width has it, mm.
pub(super) fn depth_mm(bar: &Bar, reach: f64, width: f64) -> f64 {
    (6.0 * modulus_mm3(bar, reach) / width).sqrt()
}

/// A width, mm, no more than the bar's area gives at some depth.
pub(super) fn width_within(bar: &Bar, wanted: f64, depth: f64) -> f64 {
    wanted.min(bar.stock.area_mm2() / depth)
}

/// The depth at which a jaw begins that reaches so far, mm: a neck that swings out to it is no
/// deeper, and by the boss only half the bar is there. Between half of the bar and nine tenths.
pub(super) fn root_mm(bar: &Bar, reach: f64) -> f64 {
    /// Sides of the bar from the edge of the boss to the heel.
    const NECK: f64 = 0.65;
    let side = bar.stock.equal_square_mm();
    let thick = bar.stock.size().mm() / 2.0;
    depth_mm(bar, reach + NECK * side, thick).clamp(0.5 * side, 0.9 * side)
}

/// The diameter at which a round bears a strong squeeze so far from the work, mm: a round has
/// `π/32 d³`.
pub(super) fn diameter_mm(bar: &Bar, reach: f64) -> f64 {
    (modulus_mm3(bar, reach) * 32.0 / std::f64::consts::PI).cbrt()
}
