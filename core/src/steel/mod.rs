//! Strength of the steels that tongs are forged from, cold and hot.
//!
//! Every yield is that of the soft condition: a half has been at forging heat and ends up
//! annealed or nearly so, and the extra strength of an air-hardened part is not to be relied on.

pub mod caution;
mod forging;
mod friction;
mod hot_size;
pub mod thermal;

pub use forging::{ForgingRange, forging_range};
pub use friction::{FRICTION_SOURCE, ORDINARY_FRICTION, PESSIMISTIC_FRICTION};
pub use hot_size::{HEAT_COLOURS, Heat, HeatError, RANGE_CELSIUS, elongation};

use serde::{Deserialize, Serialize};

/// The steel that the tongs are forged from.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
pub enum Steel {
    /// Low-carbon structural steel.
    #[default]
    Mild,
    /// Plain carbon, 0.45 %.
    Carbon1045,
    /// Chromium-molybdenum, 0.30 %.
    Alloy4130,
    /// Chromium-molybdenum, 0.40 %.
    Alloy4140,
    /// Chromium spring steel, 0.60 %.
    Spring5160,
    /// Hot-work tool steel.
    ToolH13,
    /// Water-hardening carbon tool steel, about 1 % carbon: W1 of ASTM A686, C105U of EN ISO 4957.
    ToolW1,
    /// Oil-hardening cold-work tool steel: O1 of ASTM A681, 95MnWCr5 of EN ISO 4957.
    ToolO1,
    /// Shock-resisting tool steel: S7 of ASTM A681; EN ISO 4957 has none that is its like.
    ToolS7,
    /// Reclaimed bar of unknown steel.
    Unknown,
}

/// Density of steel, kg/mm³: EN 1993-1-1, 7850 kg/m³, used for every steel here.
pub const DENSITY_KG_MM3: f64 = 7.85e-6;

/// Modulus of elasticity used for every steel, MPa (N/mm²). The steels listed here lie between
/// 190 and 212 GPa; 205 is the usual handbook figure for 1018, 1045 and 4130.
pub const YOUNGS_MPA: f64 = 205_000.0;

/// What a steel bears, cold.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Strength {
    /// Yield or proof stress, MPa.
    pub yield_mpa: f64,
    /// Tensile strength, MPa.
    pub tensile_mpa: f64,
    /// Where both come from.
    pub source: &'static str,
}

/// The strength to reckon with for a steel, conservative.
///
/// ```
/// use reinwright_core::steel::{Steel, strength};
/// assert_eq!(strength(Steel::Unknown).yield_mpa, 220.0);
/// ```
pub fn strength(steel: Steel) -> Strength {
    let (yield_mpa, tensile_mpa, source) = match steel {
        Steel::Mild => (
            220.0,
            400.0,
            "SAE 1018 hot rolled, estimated minimum (suppliers' tables; ASTM A36 asks for 14 % more, EN 10025-2 for 2 % more of thick S235)",
        ),
        Steel::Carbon1045 => (
            305.0,
            565.0,
            "C45 normalised, thick (EN 10083); tensile of SAE 1045 hot rolled",
        ),
        Steel::Alloy4130 => (
            360.0,
            560.0,
            "SAE 4130 annealed; of two published figures the lower",
        ),
        Steel::Alloy4140 => (417.0, 655.0, "SAE 4140 annealed 815 \u{b0}C (handbook)"),
        Steel::Spring5160 => (
            275.0,
            724.0,
            "SAE 5160 at 197 HB (handbook; annealed, from memory)",
        ),
        Steel::ToolH13 => (
            370.0,
            650.0,
            "H13 annealed, lower end of the usual range, from memory",
        ),
        Steel::ToolW1 => (
            350.0,
            600.0,
            "W1 annealed, lower end of the usual range, from memory",
        ),
        Steel::ToolO1 => (
            350.0,
            600.0,
            "O1 annealed, lower end of the usual range, from memory",
        ),
        Steel::ToolS7 => (
            370.0,
            640.0,
            "S7 annealed, lower end of the usual range, from memory",
        ),
        Steel::Unknown => (
            220.0,
            400.0,
            "judgement: the weakest steel of the table, annealed",
        ),
    };
    Strength {
        yield_mpa,
        tensile_mpa,
        source,
    }
}

/// What is left of a property at a temperature, as a part of its cold value.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct HotFactors {
    /// Of the effective yield strength at 2 % strain, `k_y`.
    pub effective_yield: f64,
    /// Of the limit up to which the steel springs back, `k_p`.
    pub proportional_limit: f64,
    /// Of the modulus of elasticity, `k_E`.
    pub modulus: f64,
}

/// Where [`hot_factors`] comes from.
pub const HOT_SOURCE: &str = "EN 1993-1-2:2005 Table 3.1, carbon steel";

/// Temperature in °C with `k_y`, `k_p` and `k_E`: EN 1993-1-2:2005 Table 3.1.
const HOT: [(f64, f64, f64, f64); 13] = [
    (20.0, 1.0, 1.0, 1.0),
    (100.0, 1.0, 1.0, 1.0),
    (200.0, 1.0, 0.807, 0.9),
    (300.0, 1.0, 0.613, 0.8),
    (400.0, 1.0, 0.42, 0.7),
    (500.0, 0.78, 0.36, 0.6),
    (600.0, 0.47, 0.18, 0.31),
    (700.0, 0.23, 0.075, 0.13),
    (800.0, 0.11, 0.05, 0.09),
    (900.0, 0.06, 0.0375, 0.0675),
    (1000.0, 0.04, 0.025, 0.045),
    (1100.0, 0.02, 0.0125, 0.0225),
    (1200.0, 0.0, 0.0, 0.0),
];

/// The factors of EN 1993-1-2 Table 3.1 at a temperature, straight between its columns; below
/// 20 °C as at 20 °C, from 1200 °C on nothing is left. A temperature that is no number counts
/// as the hottest.
pub fn hot_factors(celsius: f64) -> HotFactors {
    let theta = if celsius.is_nan() { HOT[12].0 } else { celsius };
    let theta = theta.clamp(HOT[0].0, HOT[12].0);
    let next = HOT.partition_point(|row| row.0 < theta).clamp(1, 12);
    let (a, b) = (HOT[next - 1], HOT[next]);
    let t = (theta - a.0) / (b.0 - a.0);
    let between = |from: f64, to: f64| from + (to - from) * t;
    HotFactors {
        effective_yield: between(a.1, b.1),
        proportional_limit: between(a.2, b.2),
        modulus: between(a.3, b.3),
    }
}
