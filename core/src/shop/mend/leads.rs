//! Which values bring a finding nearer to being gone, as far as one step tells.

use super::design::Design;
use super::grid::{self, Spot};
use super::judged::off;
use super::search::Search;
use super::tries::Tries;
use super::walk::Hunt;
use crate::finding::{Kind, Part};

/// A value is followed no farther than by so many times its size, or over so many steps whatever
/// its size: farther off it is another design.
pub(super) const FARTHEST: f64 = 3.0;
pub(super) const FARTHEST_STEPS: f64 = 8.0;

/// A field that helps, with the way to go and how many steps it should take.
#[derive(Debug, Clone, Copy)]
pub(super) struct Lead {
    pub(super) field: usize,
    pub(super) way: i32,
    pub(super) steps: f64,
    /// How much that is against the value.
    pub(super) far: f64,
}

impl<D: Design> Search<'_, D> {
    /// The fields that bring a finding nearer to being gone, as far as one step tells.
    pub(super) fn leads(&mut self, hunt: &Hunt<'_>, tries: &mut Tries<D>) -> Vec<Lead> {
        let mut leads = Vec::new();
        for field in self.with_steps() {
            let Some(at) = self.step_aside(field, hunt.stage, tries) else {
                continue;
            };
            let after = self.seen(at, hunt.stage, tries);
            let after = after.and_then(|seen| off(hunt.kind, seen));
            leads.extend(self.lead(at, hunt.kind, after));
        }
        leads
    }

    /// What one step to either side says of a field.
    fn lead(&self, at: Spot, kind: (Kind, Part), after: Option<f64>) -> Option<Lead> {
        /// A figure that moves less than this part of what it is off does not follow the value.
        const STILL: f64 = 1e-4;
        let (before, after) = (off(kind, self.findings)?, after?);
        let field = &self.fields[at.field];
        let value = grid::value_at(field, at.place, self.unit)?;
        // The first step is a short one where the value was typed between two.
        let moved = grid::steps_to(field, value, self.unit);
        let rate = (before - after) / moved;
        if rate.abs() <= STILL * before {
            return None;
        }
        let way = if rate > 0.0 { at.place } else { -at.place };
        let steps = (before / rate.abs()).ceil().max(1.0);
        let far = self.far(at.field, steps);
        let reach = far <= FARTHEST || steps <= FARTHEST_STEPS;
        reach.then_some(Lead {
            field: at.field,
            way,
            steps,
            far,
        })
    }
}
