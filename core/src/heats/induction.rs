//! How a coil and the steel in it share the power.

use std::f64::consts::PI;

use crate::number::bessel::{elliptic, round_bar_factor};

/// Resistivity of hot-working copper tube, µΩ·m: cold it is 0.0172 (judgement: tube in use is warm).
pub const COPPER_UOHM_M: f64 = 0.02;

/// The magnetic constant, H/m (4π·10⁻⁷ to nine digits).
const MAGNETIC_CONSTANT: f64 = 4e-7 * PI;

/// Temperature in °C with resistivity in µΩ·m and permeability of 0.4 % carbon steel, as a textbook's
/// problem on skin depth has them; the last row from memory. They are joined by straight lines.
const STEEL: [(f64, f64, f64); 7] = [
    (30.0, 0.16, 40.0),
    (200.0, 0.296, 36.0),
    (400.0, 0.493, 30.0),
    (600.0, 0.766, 15.0),
    (760.0, 1.042, 1.0),
    (900.0, 1.146, 1.0),
    (1200.0, 1.22, 1.0),
];

/// What a material is to a field.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Electric {
    /// Resistivity, µΩ·m.
    pub resistivity_uohm_m: f64,
    /// Permeability over that of air.
    pub permeability: f64,
}

/// Steel at a temperature in °C: below 30 and above 1200 as at those.
pub fn steel_at(celsius: f64) -> Electric {
    let theta = celsius.clamp(STEEL[0].0, STEEL[STEEL.len() - 1].0);
    let next = STEEL
        .partition_point(|row| row.0 < theta)
        .clamp(1, STEEL.len() - 1);
    let (a, b) = (STEEL[next - 1], STEEL[next]);
    let t = (theta - a.0) / (b.0 - a.0);
    Electric {
        resistivity_uohm_m: a.1 + (b.1 - a.1) * t,
        permeability: a.2 + (b.2 - a.2) * t,
    }
}

/// Depth in which a field fades to 1/e, mm: `√(ρ/(π·f·μ₀·μ_r))`. 63 % of the current and 87 % of the
/// heat lie within it.
///
/// ```
/// use reinwright_core::heats::induction::{penetration_mm, Electric};
/// let hot = Electric { resistivity_uohm_m: 1.15, permeability: 1.0 };
/// assert!((penetration_mm(hot, 30.0) - 3.12).abs() < 0.01);
/// ```
pub fn penetration_mm(of: Electric, frequency_khz: f64) -> f64 {
    let (rho, hertz) = (of.resistivity_uohm_m * 1e-6, frequency_khz * 1e3);
    1e3 * (rho / (PI * hertz * MAGNETIC_CONSTANT * of.permeability)).sqrt()
}

/// A coil as the steel in it sees it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Coupling {
    /// Diameter of the coil over that of the bar.
    pub coil_to_bar: f64,
    /// Diameter of the bar, mm.
    pub bar_mm: f64,
    /// Part of the coil's length that is copper.
    pub filled: f64,
}

/// Part of a coil's power that goes into a round bar:
/// `1/(1 + (D_coil/D_bar)·√(ρ_Cu/(ρ·μ_r))/(k·G))`, G of [`round_bar_factor`] at half the diameter over
/// the depth. Thin bars let the field through and take little.
pub fn coil_efficiency(coupling: Coupling, steel: Electric, frequency_khz: f64) -> f64 {
    let depth = penetration_mm(steel, frequency_khz);
    let taken = coupling.filled * round_bar_factor(coupling.bar_mm / (2.0 * depth));
    let rest = (COPPER_UOHM_M / (steel.resistivity_uohm_m * steel.permeability)).sqrt();
    1.0 / (1.0 + coupling.coil_to_bar * rest / taken.max(f64::MIN_POSITIVE))
}

/// Turns on a diameter and a length, both mm, the first across the middle of the tube.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Winding {
    /// Turns.
    pub turns: f64,
    /// Across, mm.
    pub diameter_mm: f64,
    /// Long, mm.
    pub length_mm: f64,
}

/// Inductance of an empty single-layer coil, µH: Nagaoka's factor on that of an endless one,
/// μ₀·N²·π·r²/l · 4/(3π·k′)·((k′/k)²·(K − E) + E − k), k² = D²/(D² + l²).
pub fn nagaoka_uh(coil: Winding) -> f64 {
    let (d, l) = (coil.diameter_mm / 1e3, coil.length_mm / 1e3);
    let square = d * d / (d * d + l * l);
    let (k, rest) = (square.sqrt(), (1.0 - square).sqrt());
    let (first, second) = elliptic(square);
    let factor = 4.0 / (3.0 * PI * rest) * (rest * rest / square * (first - second) + second - k);
    MAGNETIC_CONSTANT * coil.turns.powi(2) * PI * d * d / 4.0 / l * factor * 1e6
}

/// The same by Wheeler's sum of 1928, r²·N²/(9·r + 10·l) in inches: within 1 % for coils longer than
/// 0.8 radii.
pub fn wheeler_uh(coil: Winding) -> f64 {
    let inch = crate::units::MM_PER_INCH;
    let (r, l) = (coil.diameter_mm / 2.0 / inch, coil.length_mm / inch);
    r * r * coil.turns.powi(2) / (9.0 * r + 10.0 * l)
}

/// Frequency at which a coil swings with a capacitor, kHz: 1/(2π·√(L·C)).
pub fn resonance_khz(inductance_uh: f64, capacitor_uf: f64) -> f64 {
    1e3 / (2.0 * PI * (inductance_uh * capacitor_uf).sqrt())
}

/// How far the inductance may lie off with steel in the coil, part of it (judgement: cold steel raises
/// it, hot steel lowers it).
pub const LOADED_BAND: f64 = 0.25;

/// Inductance of the leads of a coil, two tubes side by side a diameter and a half apart, µH:
/// μ₀·l/π·ln(2·s/d).
pub fn leads_uh(lead_mm: f64) -> f64 {
    /// 2·s/d for tubes so far apart.
    const APART: f64 = 3.0;
    MAGNETIC_CONSTANT * lead_mm / 1e3 / PI * APART.ln() * 1e6
}
