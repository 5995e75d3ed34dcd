//! How hard a hand squeezes: what the parts of a pair are sized for and held against.

/// An ordinary squeeze of one hand, N.
pub const ORDINARY_N: f64 = 100.0;
/// A strong squeeze for some seconds, N: 30 % of all that a hand has.
pub const STRONG_N: f64 = 160.0;
/// All that a strong hand has, N.
pub const FULL_N: f64 = 540.0;
