//! A design with the values that a mend may change, and what was found where they were tried.

use std::collections::BTreeMap;

use super::Change;
use super::design::Design;
use super::grid::{self, Spot};
use super::judged::{asking, is_gone};
use super::taken::Taken;
use super::tries::{Stage, Tries, Whole};
use super::walk::Hunt;
use crate::asked::{Field, Value};
use crate::finding::Finding;
use crate::units::Unit;

/// A design with the values that may be changed, and what was tried on it.
pub(super) struct Search<'a, D> {
    pub(super) base: &'a D,
    pub(super) findings: &'a [Finding],
    pub(super) fields: Vec<Field>,
    pub(super) unit: Unit,
    pub(super) tried: BTreeMap<Spot, Tried>,
}

/// What is known of one spot so far.
#[derive(Debug, Clone, Default)]
pub(super) struct Tried {
    shape: Option<Vec<Finding>>,
    pub(super) whole: Option<Whole>,
}

impl<'a, D: Design> Search<'a, D> {
    pub(super) fn new(base: &'a D, findings: &'a [Finding]) -> Self {
        Self {
            fields: grid::fields(base),
            unit: base.unit(),
            base,
            findings,
            tried: BTreeMap::new(),
        }
    }

    /// The same without the fields that `keep` refuses.
    pub(super) fn keeping(mut self, keep: impl Fn(&Field) -> bool) -> Self {
        self.fields.retain(keep);
        self
    }

    /// Moves every value a step and asks the whole chain, if a finding shows only there: what it
    /// says serves all findings.
    pub(super) fn look_around(&mut self, tries: &mut Tries<D>) {
        let Some(shape) = tries.shape(self.base) else {
            return;
        };
        let shows_late = |finding: &Finding| is_gone((finding.kind, finding.part), &shape);
        if !asking(self.findings).any(shows_late) {
            return;
        }
        for field in self.with_steps() {
            self.step_aside(field, Stage::Whole, tries);
        }
    }

    /// The spot one step to either side of where a field stands, as soon as there is one.
    pub(super) fn step_aside(
        &mut self,
        field: usize,
        stage: Stage,
        tries: &mut Tries<D>,
    ) -> Option<Spot> {
        let mut both = [1, -1].map(|place| Spot { field, place }).into_iter();
        both.find(|at| self.seen(*at, stage, tries).is_some())
    }

    /// The design at a spot; `None` where the field has no such place.
    pub(super) fn changed(&self, at: Spot) -> Option<(D, Value)> {
        let field = &self.fields[at.field];
        let value = grid::value_at(field, at.place, self.unit)?;
        let mut document = self.base.clone();
        document.put(&field.path, value);
        Some((document, value))
    }

    /// What is noticed at a spot, as far as a stage sees; `None` where the field has no such
    /// place, or the share is spent.
    pub(super) fn seen(
        &mut self,
        at: Spot,
        stage: Stage,
        tries: &mut Tries<D>,
    ) -> Option<&[Finding]> {
        let known = self
            .tried
            .get(&at)
            .is_some_and(|tried| tried.seen(stage).is_some());
        if !known {
            let (document, _) = self.changed(at)?;
            let mut tried = self.tried.remove(&at).unwrap_or_default();
            match stage {
                Stage::Shape => tried.shape = Some(tries.shape(&document)?),
                Stage::Whole => tried.whole = Some(tries.whole(&document)?),
            }
            self.tried.insert(at, tried);
        }
        self.tried.get(&at)?.seen(stage)
    }

    /// Whether a place is as is asked for: the shape is looked at first, since it is cheap.
    pub(super) fn meets(
        &mut self,
        at: Spot,
        hunt: &Hunt<'_>,
        tries: &mut Tries<D>,
    ) -> Option<bool> {
        let shape = self.seen(at, Stage::Shape, tries)?;
        let late = hunt.stage == Stage::Whole;
        if hunt.aim.harm(shape).is_some() || !(late || is_gone(hunt.kind, shape)) {
            return Some(false);
        }
        let whole = self.seen(at, Stage::Whole, tries)?;
        Some(hunt.aim.is_met(whole))
    }

    /// The fields that have steps.
    pub(super) fn with_steps(&self) -> Vec<usize> {
        let has_steps = |at: &usize| !matches!(self.fields[*at].value, Value::Choice { .. });
        (0..self.fields.len()).filter(has_steps).collect()
    }

    /// So many steps against the value as it stands.
    pub(super) fn far(&self, field: usize, steps: f64) -> f64 {
        /// A value near nothing is not measured by itself, steps.
        const LEAST: f64 = 4.0;
        let field = &self.fields[field];
        let step = grid::step(field, self.unit).unwrap_or(1.0);
        let size = field.value.number().map_or(LEAST, |now| now / step);
        steps / size.abs().max(LEAST)
    }

    /// A spot with all answers.
    pub(super) fn whole_at(&mut self, at: Spot, tries: &mut Tries<D>) -> Option<Taken<D>> {
        self.seen(at, Stage::Whole, tries)?;
        let whole = self.tried.get(&at)?.whole.clone()?;
        let (document, to) = self.changed(at)?;
        let field = &self.fields[at.field];
        /// Another way of a choice counts as so much of a change (judgement).
        const OTHER_WAY: f64 = 0.25;
        let far = match to {
            Value::Choice { .. } => OTHER_WAY,
            Value::Length(_) | Value::Angle(_) | Value::Percent(_) | Value::Count(_) => {
                self.far(at.field, grid::steps_to(field, to, self.unit))
            }
        };
        Some(Taken {
            changes: vec![Change::of(field, to)],
            document,
            whole,
            far,
        })
    }
}

impl Tried {
    /// What is noticed as far as a stage sees; the whole chain sees the shape too.
    pub(super) fn seen(&self, stage: Stage) -> Option<&[Finding]> {
        let whole = self.whole.as_ref().map(|whole| whole.findings.as_slice());
        match stage {
            Stage::Shape => self.shape.as_deref().or(whole),
            Stage::Whole => whole,
        }
    }
}
