//! What a try did to the findings.

use crate::finding::{Finding, Kind, Part, Severity};

/// What is to be cleared, and what was there before: a finding is the same while kind and part
/// are.
#[derive(Debug, Clone, Copy)]
pub(super) struct Aim<'a> {
    meant: (Kind, Part),
    before: &'a [Finding],
}

impl<'a> Aim<'a> {
    pub(super) fn at(meant: &Finding, before: &'a [Finding]) -> Self {
        Self {
            meant: (meant.kind, meant.part),
            before,
        }
    }

    /// Whether the meant finding is gone, and no Stop or Mend has come or grown worse.
    pub(super) fn is_met(&self, after: &[Finding]) -> bool {
        is_gone(self.meant, after) && self.harm(after).is_none()
    }

    /// A Stop or a Mend that was not there before, or was not as bad.
    pub(super) fn harm<'f>(&self, after: &'f [Finding]) -> Option<&'f Finding> {
        let more = |finding: &&Finding| count(finding, after) > count(finding, self.before);
        asking(after).find(more)
    }

    /// What of a try still stands in the way: what it raised, else what was meant.
    pub(super) fn rest<'f>(&self, after: &'f [Finding]) -> Option<&'f Finding> {
        let meant = |finding: &&Finding| (finding.kind, finding.part) == self.meant;
        self.harm(after).or_else(|| asking(after).find(meant))
    }
}

/// What asks for a mend.
pub(super) fn asking(findings: &[Finding]) -> impl Iterator<Item = &Finding> {
    findings
        .iter()
        .filter(|finding| finding.severity >= Severity::Mend)
}

/// Whether no Stop or Mend of a kind is left at a part.
pub(super) fn is_gone((kind, part): (Kind, Part), after: &[Finding]) -> bool {
    !asking(after).any(|finding| finding.kind == kind && finding.part == part)
}

/// How many findings are of the same kind at the same part and no less severe.
fn count(like: &Finding, all: &[Finding]) -> usize {
    let is_like = |finding: &&Finding| {
        finding.kind == like.kind && finding.part == like.part && finding.severity >= like.severity
    };
    all.iter().filter(is_like).count()
}

/// How far the figure of a finding is off what it is held against; `None` where no number decides.
/// It is nothing where the finding is gone, and only there.
pub(super) fn off((kind, part): (Kind, Part), findings: &[Finding]) -> Option<f64> {
    let its = |finding: &&Finding| finding.kind == kind && finding.part == part;
    match asking(findings).find(its) {
        None => Some(0.0),
        Some(finding) => finding.held.map(|held| {
            let off = (held.value - held.limit).abs();
            off.max(f64::MIN_POSITIVE)
        }),
    }
}
