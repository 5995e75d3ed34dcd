//! What the program noticed that the smith should know.

use std::fmt;

use crate::document::{Document, Part};
use crate::fit::{self, Fit};
use crate::model::Model;
use crate::strength::{self, Strength, StrengthLoad};

/// How bad it is.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Severity {
    /// Good to know.
    Note,
    /// Likely to fail or to disappoint.
    Mend,
    /// Cannot be made, or would be dangerous.
    Stop,
}

impl Severity {
    /// The word the smith sees.
    pub fn name(self) -> &'static str {
        match self {
            Self::Note => "Note",
            Self::Mend => "Mend",
            Self::Stop => "Stop",
        }
    }
}

/// Something noticed, at a part.
#[derive(Debug, Clone, PartialEq)]
pub struct Finding {
    /// How bad it is.
    pub severity: Severity,
    /// Where it is.
    pub part: Part,
    /// What was noticed, with the number and the limit in it, without a final period.
    pub message: String,
    /// What was found, in the unit that the message names.
    pub value: f64,
    /// What it is held against.
    pub limit: f64,
    /// How to mend it, without a final period.
    pub hint: String,
    /// Where the limit comes from.
    pub source: &'static str,
}

/// A limit that trade practice gives and no standard.
pub const COMMON_PRACTICE: &str = "common practice, no source";
/// A limit that follows from the shape alone.
pub const GEOMETRY: &str = "geometry";

impl Finding {
    /// A finding from what is said and what is measured: message and hint, value and limit.
    pub(crate) fn new(
        (severity, part): (Severity, Part),
        (message, hint): (String, &str),
        (value, limit): (f64, f64),
        source: &'static str,
    ) -> Self {
        let hint = hint.to_owned();
        Self {
            severity,
            part,
            message,
            value,
            limit,
            hint,
            source,
        }
    }
}

impl fmt::Display for Finding {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(
            f,
            "{}: {}: {}; {}",
            self.severity.name(),
            self.part,
            self.message,
            self.hint
        )
    }
}

/// All that every stage noticed about a pair under the usual loads with cold jaws, the worst
/// first, then in the order of the parts.
pub fn all(document: &Document, model: &Model) -> Vec<Finding> {
    all_under(document, model, &StrengthLoad::default())
}

/// The same under other loads, or with hot jaws.
pub fn all_under(document: &Document, model: &Model, load: &StrengthLoad) -> Vec<Finding> {
    let fit = fit::fit(document, model);
    let strength = strength::strength_on(document, model, fit.nominal.as_ref().ok(), load);
    of(document, model, &fit, &strength)
}

/// The same when fit and strength are known already.
pub fn of(document: &Document, model: &Model, fit: &Fit, strength: &Strength) -> Vec<Finding> {
    let mut all = model.findings.clone();
    all.extend(fit::findings(document, model, fit));
    all.extend(strength::findings(document, model, strength));
    sort(&mut all);
    all
}

/// The worst severity among findings; `None` when there are none.
pub fn worst(findings: &[Finding]) -> Option<Severity> {
    findings.iter().map(|finding| finding.severity).max()
}

/// The worst first, then in the order of the parts; what is alike keeps its order.
pub(crate) fn sort(findings: &mut [Finding]) {
    findings.sort_by_key(|finding| (std::cmp::Reverse(finding.severity), finding.part));
}
