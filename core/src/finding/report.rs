//! How a stage says what it notices: the one place where findings are made.

use super::{Finding, Held, Kind, Part, Severity};
use crate::units::{Quantity, Show};

/// Collects findings, and writes sizes as the smith reads them.
///
/// ```
/// use reinwright_core::finding::{COMMON_PRACTICE, Kind, Part, Report};
/// use reinwright_core::units::Show;
/// let mut report = Report::new(Show::default());
/// let message = format!("the hand gap is {}", report.size(6.35));
/// report
///     .mend(Kind::FingersPinched, Part::Rein)
///     .held(6.35, 12.0)
///     .say(message, "open the hand gap", COMMON_PRACTICE);
/// assert_eq!(report.found()[0].message, "the hand gap is 1/4 in");
/// ```
#[derive(Debug, Clone)]
pub struct Report {
    show: Show,
    found: Vec<Finding>,
}

impl Report {
    /// Nothing noticed yet; sizes are written as `show` has them.
    pub fn new(show: Show) -> Self {
        let found = Vec::new();
        Self { show, found }
    }

    /// How sizes are written.
    pub fn show(&self) -> Show {
        self.show
    }

    /// A size as the smith reads it.
    pub fn size(&self, mm: f64) -> String {
        self.show.text(mm)
    }

    /// Good to know.
    pub fn note(&mut self, kind: Kind, part: Part) -> Saying<'_> {
        self.at(Severity::Note, kind, part)
    }

    /// Likely to fail or to disappoint.
    pub fn mend(&mut self, kind: Kind, part: Part) -> Saying<'_> {
        self.at(Severity::Mend, kind, part)
    }

    /// Cannot be made, or would be dangerous.
    pub fn stop(&mut self, kind: Kind, part: Part) -> Saying<'_> {
        self.at(Severity::Stop, kind, part)
    }

    /// As bad as it was judged to be.
    pub fn at(&mut self, severity: Severity, kind: Kind, part: Part) -> Saying<'_> {
        Saying {
            report: self,
            kind,
            severity,
            part,
            held: None,
            advises: &[],
        }
    }

    /// What was noticed so far, in the order in which it was said.
    pub fn found(&self) -> &[Finding] {
        &self.found
    }

    /// All that was noticed, in the order in which it was said.
    pub fn into_found(self) -> Vec<Finding> {
        self.found
    }
}

/// A finding that still wants its words.
#[derive(Debug)]
#[must_use = "a finding is noted when it is said"]
pub struct Saying<'a> {
    report: &'a mut Report,
    kind: Kind,
    severity: Severity,
    part: Part,
    held: Option<Held>,
    advises: &'static [&'static str],
}

impl Saying<'_> {
    /// With the length that decides and what it is held against, mm.
    pub fn held(self, value: f64, limit: f64) -> Self {
        self.held_as(Quantity::Length, value, limit)
    }

    /// With the figure that decides and what it is held against, in the unit of the core.
    pub fn held_as(self, of: Quantity, value: f64, limit: f64) -> Self {
        self.held_if(Some(Held { value, limit, of }))
    }

    /// With the figure that decides, if one does.
    pub fn held_if(self, held: Option<Held>) -> Self {
        Self { held, ..self }
    }

    /// With the values of the part that the hint speaks of, by the ends of their paths.
    pub fn advises(self, advises: &'static [&'static str]) -> Self {
        Self { advises, ..self }
    }

    /// Says it: what was noticed, how to mend it, and where the limit comes from.
    pub fn say(self, message: impl Into<String>, hint: impl Into<String>, source: &'static str) {
        self.report.found.push(Finding {
            kind: self.kind,
            severity: self.severity,
            part: self.part,
            message: message.into(),
            held: self.held,
            hint: hint.into(),
            advises: self.advises,
            source,
        });
    }
}
