//! What the smith should know, for people and for scripts.

use reinwright_core::asked::Units;
use reinwright_core::finding::{self, Finding, Severity};
use reinwright_core::shop::Answers;
use reinwright_core::shop::mend::{Change, Mend, Ways, ways};
use serde::Serialize;

use super::arguments::Loaded;
use super::keyed::Keyed;
use super::{Done, Outcome, design, json};

pub(super) fn run(wanted: &Loaded) -> Outcome {
    let load = wanted.load()?;
    let design = design(&wanted.asked.file)?;
    let answers = Answers::under(&design, &load);
    let ways = ways(&design, &answers);
    told_with_mends(&answers.findings, (&ways, design.units), wanted)
}

/// What was noticed with the ways to mend each, for people or for scripts.
pub(super) fn told_with_mends(
    found: &[Finding],
    (ways, units): (&[Option<Ways>], Units),
    wanted: &Loaded,
) -> Outcome {
    let text = if wanted.asked.json {
        json(&Answer::with_mends(found, ways))?
    } else {
        listed_with_mends(found, (ways, units))
    };
    let status = status(finding::worst(found));
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

/// The same with the ways to mend each, under it.
fn listed_with_mends(found: &[Finding], (ways, units): (&[Option<Ways>], Units)) -> String {
    if found.is_empty() {
        return listed(found);
    }
    let each = found.iter().zip(ways);
    each.map(|(finding, ways)| {
        let mends: String = ways.iter().map(|ways| told(ways, units)).collect();
        listed(std::slice::from_ref(finding)) + &mends
    })
    .collect()
}

fn told(ways: &Ways, units: Units) -> String {
    let said = ways.said().map(|said| format!("  {said}\n"));
    let mends = ways.mends().iter();
    let mends = mends.map(|mend| format!("  mend: {}\n", mend.words(units)));
    said.into_iter().chain(mends).collect()
}

#[derive(Serialize)]
pub(super) struct Answer<'a> {
    worst: Option<&'static str>,
    findings: Vec<FindingAnswer<'a>>,
}

#[derive(Serialize)]
pub(super) struct FindingAnswer<'a> {
    severity: &'static str,
    part: &'static str,
    message: &'a str,
    /// `value_mm` and `limit_mm`, by what decides; neither where no number does.
    #[serde(flatten)]
    held: Option<Keyed>,
    hint: &'a str,
    source: &'static str,
    /// What was tried and clears it; only of one design, and empty for a Note.
    #[serde(skip_serializing_if = "Option::is_none")]
    mends: Option<Vec<MendAnswer<'a>>>,
    /// Whether nothing but another bar mends it, if anything.
    #[serde(skip_serializing_if = "Option::is_none")]
    not_from_this_bar: Option<bool>,
}

/// A mend: its first change, and what changes with it.
#[derive(Serialize)]
struct MendAnswer<'a> {
    #[serde(flatten)]
    first: Option<ChangeAnswer<'a>>,
    with: Vec<ChangeAnswer<'a>>,
    adds_bar_mm: f64,
    adds_mass_kg: f64,
    adds_hand_gap_mm: f64,
}

/// A value by its path, as the file has it.
#[derive(Serialize)]
struct ChangeAnswer<'a> {
    field: &'a str,
    name: &'a str,
    from: String,
    to: String,
}

impl<'a> ChangeAnswer<'a> {
    fn new(change: &'a Change) -> Self {
        Self {
            field: &change.path,
            name: &change.name,
            from: change.from.to_string(),
            to: change.to.to_string(),
        }
    }
}

impl<'a> MendAnswer<'a> {
    fn new(mend: &'a Mend) -> Self {
        let mut changes = mend.changes.iter().map(ChangeAnswer::new);
        Self {
            first: changes.next(),
            with: changes.collect(),
            adds_bar_mm: mend.cost.adds_bar_mm,
            adds_mass_kg: mend.cost.adds_mass_kg,
            adds_hand_gap_mm: mend.cost.adds_hand_gap_mm,
        }
    }
}

impl<'a> FindingAnswer<'a> {
    pub(super) fn new(finding: &'a Finding) -> Self {
        Self {
            severity: finding.severity.name(),
            part: finding.part.name(),
            message: &finding.message,
            held: finding
                .held
                .map(|held| Keyed::new(held.of, [("value", held.value), ("limit", held.limit)])),
            hint: &finding.hint,
            source: finding.source,
            mends: None,
            not_from_this_bar: None,
        }
    }

    fn mended(self, ways: Option<&'a Ways>) -> Self {
        let other_bar = ways.is_some_and(|ways| match ways {
            Ways::Mends(_) => false,
            Ways::FromOtherBar(_) | Ways::NotFromThisBar => true,
        });
        let mends = ways.map_or(&[][..], Ways::mends).iter();
        Self {
            mends: Some(mends.map(MendAnswer::new).collect()),
            not_from_this_bar: Some(other_bar),
            ..self
        }
    }
}

impl<'a> Answer<'a> {
    pub(super) fn new(found: &'a [Finding]) -> Self {
        Self {
            worst: finding::worst(found).map(Severity::name),
            findings: found.iter().map(FindingAnswer::new).collect(),
        }
    }

    fn with_mends(found: &'a [Finding], ways: &'a [Option<Ways>]) -> Self {
        let plain = Self::new(found);
        let each = plain.findings.into_iter().zip(ways);
        Self {
            findings: each
                .map(|(finding, ways)| finding.mended(ways.as_ref()))
                .collect(),
            ..plain
        }
    }
}
