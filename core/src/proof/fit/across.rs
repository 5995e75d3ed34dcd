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

    /// The half-angle at which the jaw first touches the work; `None` when it is out of reach.
    ///
    /// Turning lifts a place by its distance from the rivet along x, so a few steps of Newton's
    /// method settle it.
    pub(super) fn touch(&self, work: &Held<'_>) -> Option<Touch> {
        const ROUNDS: u32 = 24;
        const SETTLED: f64 = 1e-8;
        /// Nearer to the rivet nothing can be held, mm.
        const LEAST_ARM: f64 = 1.0;
        let half = work.section.width / 2.0;
        let mut turn = 0.0;
        for _ in 0..ROUNDS {
            let touching = self.inside.highest(turn, half, |x| work.height(x))?;
            let step = touching.over / touching.x.max(LEAST_ARM);
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

    /// Whether work that touches at a point rides on the lips of a hollow.
    pub(super) fn rides(&self, point: usize, work: &Held<'_>) -> bool {
        self.bears(point, work) == Bears::Edges
    }

    /// Where the work's middle has gone when the half has turned, x in mm.
    pub(super) fn middle(&self, turn: f64) -> f64 {
        let (at, (sin, cos)) = (self.inside.at(), turn.sin_cos());
        at.x * cos - at.y * sin
    }

    /// How work that touches at a point bears.
    pub(super) fn bears(&self, point: usize, work: &Held<'_>) -> Bears {
        let half = work.section.width / 2.0;
        let depths = (self.inside.depth(point), self.inside.deepest(half));
        bears_across(&[self.beside(point)], depths, half)
    }

    /// Where it touches beside its middle, x in mm.
    pub(super) fn beside(&self, point: usize) -> f64 {
        self.inside.point(point).x - self.inside.at().x
    }
}
