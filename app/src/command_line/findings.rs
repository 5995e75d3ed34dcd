//! What the smith should know, for people and for scripts.

use reinwright_core::finding::{self, Finding, Severity};
use reinwright_core::shop::Answers;
use serde::Serialize;

use super::arguments::Loaded;
use super::{Done, Outcome, design, json};

pub(super) fn run(wanted: &Loaded) -> Outcome {
    let load = wanted.load()?;
    let design = design(&wanted.asked.file)?;
    let found = Answers::under(&design, &load).findings;
    let text = if wanted.asked.json {
        json(&Answer::new(&found))?
    } else {
        listed(&found)
    };
    let status = status(finding::worst(&found));
    Ok(Done { text, status })
}

/// Exit status for the worst of all findings.
pub(super) fn status(worst: Option<Severity>) -> u8 {
    match worst {
        None | Some(Severity::Note) => 0,
        Some(Severity::Mend) => 1,
        Some(Severity::Stop) => 2,
    }
}

pub(super) fn listed(found: &[Finding]) -> String {
    if found.is_empty() {
        return "Nothing to note\n".to_owned();
    }
    found
        .iter()
        .map(|finding| format!("{finding} ({})\n", finding.source))
        .collect()
}

#[derive(Serialize)]
pub(super) struct Answer<'a> {
    worst: Option<&'static str>,
    findings: Vec<FindingAnswer<'a>>,
}

#[derive(Serialize)]
struct FindingAnswer<'a> {
    severity: &'static str,
    part: &'static str,
    message: &'a str,
    /// In mm, unless the message names another unit; null where no number decides.
    value: Option<f64>,
    limit: Option<f64>,
    hint: &'a str,
    source: &'static str,
}

impl<'a> Answer<'a> {
    pub(super) fn new(found: &'a [Finding]) -> Self {
        let answer = |finding: &'a Finding| FindingAnswer {
            severity: finding.severity.name(),
            part: finding.part.name(),
            message: &finding.message,
            value: finding.held.map(|held| held.value),
            limit: finding.held.map(|held| held.limit),
            hint: &finding.hint,
            source: finding.source,
        };
        Self {
            worst: finding::worst(found).map(Severity::name),
            findings: found.iter().map(answer).collect(),
        }
    }
}
