//! How far hand and grip stand from the rivet.

use super::boss;
use super::metal::Metal;
use crate::tongs::jaw::{Jaw, Lay};

/// Sides of the bar between rivet and hand (common practice, no source): 8 1/2 in from 1/2 in
/// square.
const HAND: f64 = 17.0;
/// A usual pair keeps the hand no farther from the rivet, mm: 14 in (common practice, no source).
const USUAL_MOST: f64 = 355.0;
/// Large pairs reach farther, so that the hand still has this leverage (common practice, no
/// source).
pub(super) const LEAST_LEVERAGE: f64 = 3.1;
/// The farthest that a hand is set from the rivet, mm: 20 in (judgement).
const MOST: f64 = 510.0;
/// The nearest, mm: a palm and a finger's breadth before the boss (judgement).
const LEAST: f64 = 115.0;

/// The arms of a pair, mm.
#[derive(Debug, Clone, Copy)]
pub(super) struct Arms {
    /// Rivet to hand.
    pub(super) hand: f64,
    /// Rivet to where the work presses.
    pub(super) grip: f64,
}

impl Arms {
    /// As long as usual or as the leverage asks, no longer than the bar bears.
    pub(super) fn suited(metal: &Metal, jaw: &Jaw) -> Self {
        let grip = grip(jaw).max(1.0);
        let radius = boss::across(metal) / 2.0;
        let wanted = (HAND * metal.side)
            .min(USUAL_MOST)
            .max(LEAST_LEVERAGE * grip)
            .min(MOST);
        let thick = metal.boss_thickness();
        let shoulder = radius + metal.arm_for(boss::deepest_shoulder(metal), thick);
        let part = (1.0 - radius / grip).max(0.05);
        let neck = metal.arm_for(boss::deepest_neck(metal), thick) / part;
        let rivet = boss::most_leverage(boss::thickest_rivet(metal)) * grip;
        let bears = shoulder.min(neck).min(rivet);
        Self {
            hand: wanted.min(bears).max(LEAST),
            grip,
        }
    }

    pub(super) fn leverage(&self) -> f64 {
        self.hand / self.grip
    }

    /// The arm of the moment at a place between rivet and grip: it falls to nothing at the grip.
    pub(super) fn at_neck(&self, x: f64) -> f64 {
        self.hand * (1.0 - x / self.grip).max(0.0)
    }
}

/// From the rivet to the middle of a jaw's grip, mm.
fn grip(jaw: &Jaw) -> f64 {
    let form = jaw.form();
    let heel = jaw.heel.mm();
    if let Lay::Crosswise { at } = form.lay {
        return heel + at;
    }
    let middle = f64::midpoint(form.grip.0, form.grip.1);
    form.placed(heel, 0.0).path.at(middle).at.x
}
