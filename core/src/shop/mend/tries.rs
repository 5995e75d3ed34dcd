//! Asking the chain about a design that is tried, as often as there is time for.

use super::design::Design;
use crate::finding::Finding;

/// What all tries on one design may take together: all of it is spent in about 40 ms on a
/// workbench computer, where the shape alone takes 0.04 ms and the whole chain 0.25 ms.
const PURSE: u32 = 800;
/// Kept to the last, for walks that are nearly at their end.
const RESERVE: u32 = 100;
/// What a try costs.
const SHAPE: u32 = 1;
const WHOLE: u32 = 6;

/// How much of the chain a try must go through until a finding shows.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub(super) enum Stage {
    /// Geometry and what is noticed of it.
    Shape,
    /// All answers.
    Whole,
}

/// What of a design a mend can make dearer.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Measures {
    pub(super) bar_mm: f64,
    pub(super) mass_kg: f64,
    pub(super) hand_gap_mm: f64,
}

/// All answers to a try, as far as they are needed.
#[derive(Debug, Clone)]
pub(super) struct Whole {
    pub(super) findings: Vec<Finding>,
    pub(super) measures: Measures,
}

/// Asks the chain, and keeps count.
#[derive(Debug)]
pub(super) struct Tries<D: Design> {
    load: D::Load,
    left: u32,
    /// What must be left when the finding in hand is done with.
    kept: u32,
    /// Whether a walk is nearly at its end: what is kept may be used for that.
    settles: bool,
}

impl<D: Design> Tries<D> {
    pub(super) fn under(load: D::Load) -> Self {
        Self {
            load,
            left: PURSE,
            kept: RESERVE,
            settles: false,
        }
    }

    /// From here on so many parts of so many of what is left are spent at the most.
    pub(super) fn share(&mut self, parts: usize, of: usize) {
        let count = |number: usize| u32::try_from(number.max(1)).unwrap_or(u32::MAX);
        let free = self.left.saturating_sub(RESERVE);
        let share = free.saturating_mul(count(parts)) / count(of);
        self.kept = self.left.saturating_sub(share);
    }

    /// What is left of the share.
    pub(super) fn of_share(&self) -> u32 {
        self.left.saturating_sub(self.kept)
    }

    /// Keeps so much of the share for later; gives back what stood before.
    pub(super) fn keep(&mut self, so_much: u32) -> u32 {
        let before = self.kept;
        self.kept += so_much;
        before
    }

    /// Ends what [`Tries::keep`] began.
    pub(super) fn release(&mut self, before: u32) {
        self.kept = before;
    }

    /// Lets a walk come to its end on what is kept; gives back what [`Tries::settled`] wants.
    pub(super) fn settles(&mut self) -> bool {
        std::mem::replace(&mut self.settles, true)
    }

    /// Ends what [`Tries::settles`] began.
    pub(super) fn settled(&mut self, before: bool) {
        self.settles = before;
    }

    fn spend(&mut self, cost: u32) -> Option<()> {
        self.left = self
            .left
            .checked_sub(cost)
            .filter(|left| self.settles || *left >= self.kept)?;
        Some(())
    }

    /// What is noticed of a shape; `None` once the share is spent.
    pub(super) fn shape(&mut self, design: &D) -> Option<Vec<Finding>> {
        self.spend(SHAPE)?;
        Some(design.shape())
    }

    /// All answers; `None` once the share is spent.
    pub(super) fn whole(&mut self, design: &D) -> Option<Whole> {
        self.spend(WHOLE)?;
        Some(design.whole(self.load))
    }
}
