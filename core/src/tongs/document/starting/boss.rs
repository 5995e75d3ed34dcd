//! Boss, rivet and the two limbs that leave the boss.

use super::super::{Boss, BossShape, HeadKind, Neck, Rivet, Shoulder};
use super::metal::Metal;
use super::reach::Arms;
use crate::asked::Hole;
use crate::tongs::squeeze::FULL_N;
use crate::units::{Length, MM_PER_64TH, MM_PER_SIXTEENTH, Unit};

/// Sides of the bar that a boss is across (common practice, no source).
const ACROSS: f64 = 1.6;
/// Widths of the bar that it is across at the least: flat bar is that deep already (common
/// practice, no source).
const OF_FLAT: f64 = 1.2;
/// The most of the bar's area that the boss takes: a bar that is only set down gives no more.
const OF_AREA: f64 = 1.02;
/// Parts of the bar's side that a rivet is (common practice, no source).
const RIVET: f64 = 0.4;
/// Diameters of the hole that a boss is across, so that the wall is as thick as the hole (common
/// practice, no source).
const WALLED: f64 = 3.0;
/// Design shear of a rivet, N/mm²: `0.6 f_ur / γ_M2` of one of 400 MPa (EN 1993-1-8 Table 3.4).
const SHEAR_MPA: f64 = 0.6 * 400.0 / 1.25;

/// Least and most of the bar's side that a neck is deep, unless the load asks for more (common
/// practice, no source).
const NECK: f64 = 0.66;
/// Least of the bar's side that a shoulder is deep.
const SHOULDER: f64 = 0.66;
/// A shoulder spreads a little while the boss is set down to half (judgement: the spread law of
/// Tomlinson and Stringer gives one and a half).
const SPREAD: f64 = 1.2;
/// Parts of the boss that a limb may take where it leaves it.
const OF_BOSS: f64 = 0.85;
/// Sides of the bar between the edge of the boss and the rein.
const SHOULDER_LENGTH: f64 = 0.8;
const FILLET: f64 = 0.25;
/// Sides of the bar by which a neck may be deeper than the heel.
const OVER_HEEL: f64 = 0.15;

/// Diameter of a boss, mm.
pub(super) fn across(metal: &Metal) -> f64 {
    let wanted = (ACROSS * metal.side).max(OF_FLAT * metal.deep);
    let most = OF_AREA * metal.area / metal.boss_thickness();
    metal.measured(wanted.min(most)).mm()
}

pub(super) fn boss(metal: &Metal) -> Boss {
    let across = Length::from_mm(across(metal), metal.unit);
    Boss {
        shape: BossShape::Round,
        across,
        along: metal.measured(1.2 * across.mm()),
        thickness: Length::from_mm(metal.boss_thickness(), metal.unit),
    }
}

/// How deep a neck can be, mm.
pub(super) fn deepest_neck(metal: &Metal) -> f64 {
    metal.deep.min(OF_BOSS * across(metal))
}

/// How deep a shoulder can be, mm.
pub(super) fn deepest_shoulder(metal: &Metal) -> f64 {
    (SPREAD * metal.deep).min(OF_BOSS * across(metal))
}

/// From the rivet to the start of the rein, mm.
pub(super) fn rein_from(metal: &Metal) -> f64 {
    across(metal) / 2.0 + SHOULDER_LENGTH * metal.side
}

/// A neck as deep as its load asks, but hardly deeper than the jaw that it runs into: it would
/// stand over boss and jaw as a hump.
pub(super) fn neck(metal: &Metal, arms: &Arms, heel_depth: f64) -> Neck {
    let least = NECK * metal.side;
    let most = deepest_neck(metal).min((heel_depth + OVER_HEEL * metal.side).max(least));
    let needed = metal.depth_for(arms.at_neck(across(metal) / 2.0), metal.boss_thickness());
    Neck {
        depth: metal.at_least(needed.max(least), most),
        fillet: metal.measured(FILLET * metal.side),
    }
}

pub(super) fn shoulder(metal: &Metal, arms: &Arms, rein_depth: f64) -> Shoulder {
    let most = deepest_shoulder(metal);
    let arm = arms.hand - across(metal) / 2.0;
    let needed = metal.depth_for(arm, metal.boss_thickness());
    let least = (SHOULDER * metal.side).max(rein_depth);
    Shoulder {
        length: metal.measured(SHOULDER_LENGTH * metal.side),
        depth: metal.at_least(needed.max(least), most),
        fillet: metal.measured(FILLET * metal.side),
    }
}

/// Play of a rivet in its hole, mm: 1/64 in or 0.3 mm (common practice, no source).
fn play(unit: Unit) -> f64 {
    match unit {
        Unit::Inch | Unit::Foot => MM_PER_64TH,
        Unit::Millimetre | Unit::Centimetre => 0.3,
    }
}

/// The shanks that are sold, mm: in 1/32 in from 5/32 to 5/8 in, or metric (common practice, no source).
fn shanks(unit: Unit) -> Vec<f64> {
    match unit {
        Unit::Inch | Unit::Foot => [5, 6, 8, 10, 12, 14, 16, 20]
            .map(|n| f64::from(n) * MM_PER_SIXTEENTH / 2.0)
            .to_vec(),
        Unit::Millimetre | Unit::Centimetre => {
            vec![4.0, 5.0, 6.0, 8.0, 10.0, 12.0, 16.0]
        }
    }
}

/// The thickest rivet that leaves its wall in a boss, mm; the thinnest that is sold if none does.
pub(super) fn thickest_rivet(metal: &Metal) -> f64 {
    let room = across(metal) / WALLED - play(metal.unit);
    let all = shanks(metal.unit);
    let fits = all.iter().copied().filter(|d| *d <= room);
    fits.fold(all[0], f64::max)
}

/// The greatest leverage at which a rivet bears all that a hand has: the rivet takes the forces of
/// hand and work together.
pub(super) fn most_leverage(rivet: f64) -> f64 {
    SHEAR_MPA * std::f64::consts::FRAC_PI_4 * rivet * rivet / FULL_N - 1.0
}

/// A rivet of about two fifths of the bar that bears the squeeze and leaves its wall.
pub(super) fn rivet(metal: &Metal, arms: &Arms) -> Rivet {
    let most = thickest_rivet(metal);
    let bears = |d: &f64| most_leverage(*d) >= arms.leverage();
    let all = shanks(metal.unit);
    let fits: Vec<f64> = all.iter().copied().filter(|d| *d <= most).collect();
    let off = |d: &f64| (d - RIVET * metal.side).abs();
    let best = fits.iter().copied().filter(bears);
    let best = best
        .min_by(|a, b| off(a).total_cmp(&off(b)))
        .unwrap_or(most);
    Rivet {
        diameter: Length::from_mm(best, metal.unit),
        hole: Length::from_mm(best + play(metal.unit), metal.unit),
        made: Hole::Punched,
        head: HeadKind::Button,
    }
}
