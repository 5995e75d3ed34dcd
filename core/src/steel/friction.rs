//! Friction between steel and steel.

/// Friction of scaled steel that is counted on when it must not slip.
pub const PESSIMISTIC_FRICTION: f64 = 0.15;
/// Friction of scaled steel as it usually is.
pub const ORDINARY_FRICTION: f64 = 0.25;
/// Where both come from.
pub const FRICTION_SOURCE: &str =
    "judgement; handbooks give 0.27 at rest for steel with a thick oxide film, 0.15 to 0.30 dry";
