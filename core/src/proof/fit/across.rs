//! A jaw brought down on work that lies along the rivet.

use super::held::{Held, Touch};
use crate::tongs::model::Half;
use crate::tongs::seat::{Bears, Inside, bears_across};

/// The inside of a jaw with the place where work lies across it.
#[derive(Debug, Clone)]
pub(super) struct Across {
    inside: Inside,
}

impl Across {
    /// The inside of a half's jaw, for work whose axis is at `x` mm.
    pub(super) fn new(half: &Half, x: f64) -> Self {
        Self {
            inside: Inside::new(&half.jaw, (x, half.face)),
        }
    }

    /// The half-angle at which the jaw first touches the work, found from one that is `near`; `None` when
    /// it is out of reach.
    ///
    /// Turning lifts a place by about its distance from the rivet along x, so a few steps of Newton's
    /// method settle it.
    pub(super) fn touch(&self, work: &Held<'_>, near: f64) -> Option<Touch> {
        const ROUNDS: u32 = 24;
        const SETTLED: f64 = 1e-9;
        /// Nearer to the rivet nothing can be held, mm.
        const LEAST_ARM: f64 = 1.0;
        /// Of that distance, the least and the most that counts as lift: on the steep side of a work the
        /// surface turns away at once, and what it lifts by there says nothing of the next place.
        const LIFT: [f64; 2] = [0.25, 4.0];
        let half = work.section.width / 2.0;
        let mut turn = near;
        for _ in 0..ROUNDS {
            let touching = self.inside.highest(turn, half, |x| work.height(x))?;
            let arm = touching.x.max(LEAST_ARM);
            let step = touching.over / touching.lift.clamp(LIFT[0] * arm, LIFT[1] * arm);
            turn += step;
            if step.abs() < SETTLED {
                return Some(Touch {
                    half_angle: turn,
                    place: touching.point,
                });
            }
            if turn.abs() > std::f64::consts::FRAC_PI_2 {
                return None;
            }
        }
        None
    }

    /// Whether work rides on the lips of a hollow when the half has turned.
    pub(super) fn rides(&self, turn: f64, work: &Held<'_>) -> bool {
        self.bears(turn, work).0 == Bears::Edges
    }

    /// Where the work's middle has gone when the half has turned, x in mm.
    pub(super) fn middle(&self, turn: f64) -> f64 {
        let (at, (sin, cos)) = (self.inside.at(), turn.sin_cos());
        at.x * cos - at.y * sin
    }

    /// How work bears when the half has turned, and where it touches beside its middle, x in mm.
    pub(super) fn bears(&self, turn: f64, work: &Held<'_>) -> (Bears, Vec<f64>) {
        let half = work.section.width / 2.0;
        let touches = self.inside.touches(turn, half, |x| work.height(x));
        let deepest = self.inside.deepest(half);
        let highest = touches.iter().map(|at| at.1).fold(f64::MIN, f64::max);
        let mut beside: Vec<f64> = touches.into_iter().map(|at| at.0).collect();
        beside.sort_by(f64::total_cmp);
        let bears = bears_across(&beside, (highest, deepest), half);
        let ends = [beside.first(), beside.last()];
        let mut ends: Vec<f64> = ends.into_iter().flatten().copied().collect();
        ends.dedup();
        (bears, ends)
    }
}
