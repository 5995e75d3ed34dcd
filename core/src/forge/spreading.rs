//! How far steel goes aside under the hammer.

/// The most that plain blows spread steel, as the exponent of the spread law
/// `w₁ = w₀ (h₀/h₁)^S`: the upper end of what Tomlinson and Stringer (1959) and Wistreich and
/// Shutt give for a bite of twice the width (both from memory).
pub const MOST_SPREAD: f64 = 0.67;

/// Where that is from.
pub const SPREAD_SOURCE: &str = "estimate after the spread law of Tomlinson and Stringer (1959)";

/// How wide steel becomes at the most where it is thinned by plain blows, mm.
///
/// ```
/// use reinwright_core::forge::spreading::widest_mm;
/// // 20 mm thinned to a quarter, with the exponent 0.67: 20 · 4^0.67.
/// assert!((widest_mm((20.0, 20.0), 5.0) - 50.63).abs() < 0.01);
/// ```
pub fn widest_mm((thick, wide): (f64, f64), thinned_to: f64) -> f64 {
    wide * (thick / thinned_to).max(1.0).powf(MOST_SPREAD)
}
