//! The rivet and its hole: shear, bearing, edge distance, and the length of shank to cut.

use crate::tongs::document::{HeadKind, HeadShape, HeadSolid};

/// Tensile strength of a driven rivet of S235, MPa, from memory.
const RIVET_TENSILE_MPA: f64 = 400.0;
/// Shear strength of a rivet over its tensile strength (EN 1993-1-8 Table 3.4).
const SHEAR_PART: f64 = 0.6;
/// Partial factor `γ_M2` (EN 1993-1-8).
pub(super) const GAMMA_M2: f64 = 1.25;
/// Allowable shear of a hot-driven rivet, MPa: 17.5 ksi (AISC ASD 1989 Table J3.2, A502 grade 1).
const AISC_SHEAR_MPA: f64 = 120.7;

/// Where [`shear_en_n`] comes from.
pub const EN_SHEAR_SOURCE: &str = "EN 1993-1-8 Table 3.4, rivet of S235";
/// Where [`shear_aisc_n`] comes from.
pub const AISC_SHEAR_SOURCE: &str = "AISC ASD 1989 Table J3.2, A502 grade 1";
/// Where [`bearing_en_n`] comes from.
pub const BEARING_SOURCE: &str = "EN 1993-1-8 Table 3.4";
/// Where the least edge distance comes from.
pub const EDGE_SOURCE: &str = "EN 1993-1-8 Table 3.3";
/// Least distance from a hole's centre to an edge, in holes.
pub const LEAST_EDGE: f64 = 1.2;

/// Steel of a round shank, mm².
fn area_mm2(diameter_mm: f64) -> f64 {
    std::f64::consts::FRAC_PI_4 * diameter_mm.powi(2)
}

/// Design shear resistance of one plane of a rivet, N: `0.6 f_ur A / γ_M2`.
///
/// ```
/// let n = reinwright_core::proof::strength::shear_en_n(10.0);
/// assert!((n - 15_080.0).abs() < 1.0);
/// ```
pub fn shear_en_n(diameter_mm: f64) -> f64 {
    SHEAR_PART * RIVET_TENSILE_MPA * area_mm2(diameter_mm) / GAMMA_M2
}

/// Allowable shear of one plane of a rivet, N.
pub fn shear_aisc_n(diameter_mm: f64) -> f64 {
    AISC_SHEAR_MPA * area_mm2(diameter_mm)
}

/// Design bearing resistance of a plate about a rivet, N: `k₁ α_b f_u d t / γ_M2`, with
/// `α_b = min(e / 3 d₀, 1)` and `k₁ = min(2.8 e / d₀ − 1.7, 2.5)`, e from the hole's centre to the
/// nearest edge; nothing when the hole breaks out.
pub fn bearing_en_n(
    (rivet_mm, hole_mm): (f64, f64),
    thickness_mm: f64,
    edge_mm: f64,
    tensile_mpa: f64,
) -> f64 {
    let end = (edge_mm / (3.0 * hole_mm))
        .min(RIVET_TENSILE_MPA / tensile_mpa)
        .clamp(0.0, 1.0);
    let side = (2.8 * edge_mm / hole_mm - 1.7).clamp(0.0, 2.5);
    side * end * tensile_mpa * rivet_mm * thickness_mm / GAMMA_M2
}

/// Shank to cut for a rivet.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct RivetLength {
    /// Both bosses together, mm.
    pub grip_mm: f64,
    /// Shank that makes one head by its volume, mm.
    pub head_mm: f64,
    /// Shank that fills the hole around it, mm.
    pub filling_mm: f64,
    /// Shank for one head when the other is there already, mm: grip, head, filling.
    pub one_head_mm: f64,
    /// Plain rod for both heads, mm.
    pub both_heads_mm: f64,
    /// What practice gives for one head, mm: grip and 1.5 diameters, 1 diameter countersunk.
    pub practice_mm: f64,
    /// Where the head's shape comes from.
    pub source: &'static str,
}

/// The shank that a round head takes, in diameters: the volume of a spherical cap so many
/// diameters across and high, π h (3 a² + h²) / 6, over the area of the shank.
pub fn cap_in_diameters(across: f64, high: f64) -> f64 {
    let a = across / 2.0;
    high * (3.0 * a * a + high * high) / 6.0 * 4.0
}

/// The shank that a countersunk head takes beyond the bore, in diameters: a cone from so many
/// diameters across to one, so many diameters high, less the bore.
pub fn countersink_in_diameters(across: f64, high: f64) -> f64 {
    high / 3.0 * (across * across + across + 1.0) - high
}

/// The shank that a head takes, in diameters, by its volume.
pub fn head_in_diameters(head: &HeadShape) -> f64 {
    match head.solid {
        HeadSolid::Cap => cap_in_diameters(head.across, head.high),
        // A disc over the area of the shank.
        HeadSolid::Disc => head.across * head.across * head.high,
        HeadSolid::Cone => countersink_in_diameters(head.across, head.high),
    }
}

/// What practice adds to the grip for one head that stands out, and for one that is sunk, in
/// diameters (common practice, no source).
const PRACTICE: (f64, f64) = (1.5, 1.0);

/// The shank for a rivet through a grip: head volume and what fills the hole,
/// grip · ((d₀ / d)² − 1).
pub fn rivet_length(head: HeadKind, (rivet_mm, hole_mm): (f64, f64), grip_mm: f64) -> RivetLength {
    let shape = head.shape();
    let head_mm = head_in_diameters(&shape) * rivet_mm;
    let filling_mm = grip_mm * ((hole_mm / rivet_mm).powi(2) - 1.0).max(0.0);
    let practice = match shape.solid {
        HeadSolid::Cap | HeadSolid::Disc => PRACTICE.0,
        HeadSolid::Cone => PRACTICE.1,
    };
    RivetLength {
        grip_mm,
        head_mm,
        filling_mm,
        one_head_mm: grip_mm + head_mm + filling_mm,
        both_heads_mm: grip_mm + 2.0 * head_mm + filling_mm,
        practice_mm: grip_mm + practice * rivet_mm,
        source: shape.source,
    }
}
