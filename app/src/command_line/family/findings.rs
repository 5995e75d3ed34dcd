//! What is noticed of every size and of the set.

use std::path::Path;

use reinwright_core::asked::StockSizes;
use reinwright_core::finding::Severity;
use reinwright_core::shop::family::{Coverage, InSizes, OfSize, Opened, answer_all_under};
use serde::Serialize;

use super::{Sizes, Told, each, lost, worst_lost};
use crate::command_line::arguments::Loaded;
use crate::command_line::{Done, Outcome, Places, findings as one_findings, json};
use crate::disk::stock_sizes;

#[derive(Serialize)]
struct FindingsAnswer<'a> {
    worst: Option<&'static str>,
    /// What could not be read of a damaged file, and what was taken instead.
    not_read: &'a [String],
    #[serde(flatten)]
    sizes: Sizes<'a, one_findings::Answer<'a>>,
    /// Work that lies between what the sizes hold and that none of them holds.
    #[serde(skip_serializing_if = "Option::is_none")]
    gaps: Option<Vec<GapAnswer>>,
}

#[derive(Serialize)]
pub(in crate::command_line) struct GapAnswer {
    shape: &'static str,
    over_mm: f64,
    under_mm: f64,
    /// The stock sizes in it, and the one to fill it with.
    stock_mm: Vec<f64>,
    filler_mm: f64,
    pub(super) message: String,
}

/// What is noticed of every size, of the set, and of a damaged file.
pub(in crate::command_line) fn findings<D: Told>(
    opened: &Opened<D>,
    wanted: &Loaded,
    places: &Places,
) -> Outcome {
    let family = &opened.family;
    let answers = answer_all_under(family, &wanted.load()?);
    let gaps = D::gaps(&answers, &stock(wanted.stock.as_deref(), places)?);
    let worst = answers
        .iter()
        .filter_map(OfSize::worst)
        .chain(worst_lost(opened))
        .max();
    let text = if wanted.asked.json {
        json(&FindingsAnswer {
            worst: worst.map(Severity::name),
            not_read: &opened.lost,
            sizes: each(family, &answers, |of| {
                one_findings::Answer::new(of.findings())
            }),
            gaps,
        })?
    } else {
        listed(opened, &answers, &gaps.unwrap_or_default())
    };
    let status = one_findings::status(worst);
    Ok(Done { text, status })
}

/// The stock that can be bought: as a file lists it, or else as it is kept for the window.
pub(super) fn stock(file: Option<&Path>, places: &Places) -> Result<StockSizes, String> {
    match file {
        Some(file) => stock_sizes::open(file).map_err(|why| format!("--stock: {why}")),
        None => stock_sizes::kept(places.remembered.as_deref()),
    }
}

pub(super) fn gaps(covered: &[Coverage]) -> Vec<GapAnswer> {
    let gaps = covered.iter().flat_map(|coverage| &coverage.gaps);
    gaps.map(|gap| GapAnswer {
        shape: gap.shape,
        over_mm: gap.from_mm,
        under_mm: gap.to_mm,
        stock_mm: gap.stock.iter().map(|size| size.mm()).collect(),
        filler_mm: gap.filler().mm(),
        message: gap.sentence(),
    })
    .collect()
}

fn listed<D: InSizes>(opened: &Opened<D>, answers: &[D::Answer], gaps: &[GapAnswer]) -> String {
    let mut text = lost(opened);
    for answer in answers {
        let found = one_findings::listed(answer.findings());
        let indented = found.lines().map(|line| format!("  {line}\n"));
        text.push_str(&format!("{}\n", answer.label()));
        text.extend(indented);
    }
    text.extend(
        gaps.iter()
            .map(|gap| format!("Note: set: {}\n", gap.message)),
    );
    text
}
