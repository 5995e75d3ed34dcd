//! What the program noticed that the smith should know: types alone, no stage.

mod kind;
mod part;
mod report;

pub use kind::Kind;
pub use part::Part;
pub use report::{Report, Saying};

use std::fmt;

use crate::units::Quantity;

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

/// A figure and what it is held against, in the unit of the core whatever the message names.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Held {
    /// What was found.
    pub value: f64,
    /// What it is held against.
    pub limit: f64,
    /// What both are figures of.
    pub of: Quantity,
}

/// Something noticed, at a part.
#[derive(Debug, Clone, PartialEq)]
pub struct Finding {
    /// What it is: the same thing noticed has the same kind, whatever the words.
    pub kind: Kind,
    /// How bad it is.
    pub severity: Severity,
    /// Where it is.
    pub part: Part,
    /// What was noticed, with the number and the limit in it, without a final period.
    pub message: String,
    /// What was found and what it is held against; `None` where no number decides.
    pub held: Option<Held>,
    /// How to mend it, without a final period.
    pub hint: String,
    /// Which values of the part the hint speaks of, by the ends of their paths; none where it names no one value.
    pub advises: &'static [&'static str],
    /// Where the limit comes from.
    pub source: &'static str,
}

/// A limit that trade practice gives and no standard.
pub const COMMON_PRACTICE: &str = "common practice, no source";
/// A limit that follows from the shape alone.
pub const GEOMETRY: &str = "geometry";

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

/// The worst severity among findings; `None` when there are none.
pub fn worst(findings: &[Finding]) -> Option<Severity> {
    findings.iter().map(|finding| finding.severity).max()
}

/// The worst first, then in the order of the parts; what is alike keeps its order.
pub(crate) fn sort(findings: &mut [Finding]) {
    findings.sort_by_key(|finding| (std::cmp::Reverse(finding.severity), finding.part));
}
