//! A mend that was tried, and what speaks against it.

use super::design::Design;
use super::judged::asking;
use super::tries::{Measures, Whole};
use super::{Change, Cost, Mend};
use crate::asked::{Field, Value};
use crate::finding::{Finding, Part, Severity};

/// A mend under trial.
#[derive(Debug, Clone)]
pub(super) struct Taken<D> {
    pub(super) document: D,
    pub(super) changes: Vec<Change>,
    pub(super) whole: Whole,
    /// By how much its values change, against their size.
    pub(super) far: f64,
}

impl Change {
    pub(super) fn of(field: &Field, to: Value) -> Self {
        Self {
            path: field.path.clone(),
            part: field.part,
            name: field.full_name(),
            from: field.value,
            to,
        }
    }
}

impl<D: Design> Taken<D> {
    pub(super) fn mend(&self, before: &Measures) -> Mend {
        let after = &self.whole.measures;
        Mend {
            changes: self.changes.clone(),
            cost: Cost {
                adds_bar_mm: after.bar_mm - before.bar_mm,
                adds_mass_kg: after.mass_kg - before.mass_kg,
                adds_hand_gap_mm: after.hand_gap_mm - before.hand_gap_mm,
            },
        }
    }

    /// Whether it is the one value that the finding's hint speaks of.
    pub(super) fn is_advised(&self, meant: &Finding) -> bool {
        matches!(self.changes.as_slice(), [one] if is_advised((one.part, &one.path), meant.part, meant.advises))
    }

    /// What speaks against it, to set the best first: how far its values go and whether they are
    /// of the part itself, bar, hand gap, Notes that it brings; that it clears others too speaks
    /// for it. The weights are judgement.
    pub(super) fn worth(&self, meant: &Finding, before: (&[Finding], &Measures)) -> f64 {
        const BAR: f64 = 2.0;
        const GAP: f64 = 0.5;
        /// Between the reins of a usual pair, mm (common practice, no source).
        const USUAL_GAP: f64 = 25.4;
        const NOTE: f64 = 0.2;
        const CLEARS_ANOTHER: f64 = 0.7;
        let (findings, measures) = before;
        let other = self
            .changes
            .iter()
            .map(|change| apart(change.part, meant.part));
        let cost = self.mend(measures).cost;
        let bar = (cost.adds_bar_mm / measures.bar_mm).max(0.0);
        let gap = cost.adds_hand_gap_mm.abs() / USUAL_GAP;
        let notes = |all: &[Finding]| {
            let all = all.iter();
            all.filter(|finding| finding.severity == Severity::Note)
                .count()
        };
        let more = notes(&self.whole.findings).saturating_sub(notes(findings));
        let cleared = asking(findings).count() - asking(&self.whole.findings).count();
        let against = self.far * other.fold(1.0, f64::max)
            + BAR * bar
            + GAP * gap
            + NOTE * f64::from(u32::try_from(more).unwrap_or(u32::MAX));
        let others = i32::try_from(cleared.saturating_sub(1)).unwrap_or(0);
        against * CLEARS_ANOTHER.powi(others)
    }
}

/// How much farther off a value of another part counts (judgement).
pub(super) fn apart(part: Part, meant: Part) -> f64 {
    const OTHER_PART: f64 = 3.0;
    if part == meant { 1.0 } else { OTHER_PART }
}

/// Whether a value, by its part and its path, is one that a finding's hint speaks of.
pub(super) fn is_advised((part, path): (Part, &str), meant: Part, advises: &[&str]) -> bool {
    let last = path.rsplit('.').next().unwrap_or(path);
    part == meant && advises.contains(&last)
}
