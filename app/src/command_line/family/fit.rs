//! What every size holds, and what none of them holds.

use reinwright_core::shop::family::{Coverage, Opened, SizeAnswer, answer_all_under, coverage};
use serde::Serialize;

use super::findings::{GapAnswer, gaps, stock};
use super::{Sizes, each, lost, partly, sound};
use crate::command_line::arguments::Loaded;
use crate::command_line::{Outcome, Places, fit as one_fit, json};

#[derive(Serialize)]
struct FitAnswer<'a, T: Serialize> {
    /// What could not be read of a damaged file; sizes that it is about are left out.
    not_read: &'a [String],
    #[serde(flatten)]
    sizes: Sizes<'a, T>,
    /// Work that lies between what the sizes hold and that none of them holds.
    gaps: Vec<GapAnswer>,
    /// Work that two neighbours both hold.
    overlaps: Vec<OverlapAnswer<'a>>,
}

#[derive(Serialize)]
struct OverlapAnswer<'a> {
    shape: &'static str,
    sizes: [&'a str; 2],
    from_mm: f64,
    to_mm: f64,
}

/// How every size fits and lasts, and what the set holds.
pub(in crate::command_line) fn fit(opened: &Opened, wanted: &Loaded, places: &Places) -> Outcome {
    let family = sound(&wanted.asked.file, opened)?;
    let answers = answer_all_under(family, &wanted.load()?);
    let stock = stock(wanted.stock.as_deref(), places)?;
    let covered = coverage(&answers, family.base.units, &stock);
    let gaps = gaps(&covered);
    if wanted.asked.json {
        let sizes = each(family, &answers, |of| {
            one_fit::answered(&of.document, &of.model, &of.fit, &of.strength)
        });
        let text = json(&FitAnswer {
            not_read: &opened.lost,
            sizes,
            gaps,
            overlaps: overlaps(&covered, &answers),
        })?;
        return Ok(partly(opened, text));
    }
    let told = |of: &SizeAnswer| one_fit::told(&of.document, &of.fit, &of.strength) + "\n";
    let mut text = lost(opened);
    text.extend(answers.iter().map(told));
    text.extend(gaps.iter().map(|gap| format!("{}\n", gap.message)));
    Ok(partly(opened, text))
}

fn overlaps<'a>(covered: &[Coverage], answers: &'a [SizeAnswer]) -> Vec<OverlapAnswer<'a>> {
    let mut all = Vec::new();
    for coverage in covered {
        all.extend(coverage.overlaps.iter().map(|overlap| OverlapAnswer {
            shape: coverage.shape,
            sizes: overlap.sizes.map(|size| answers[size].label.as_str()),
            from_mm: overlap.from_mm,
            to_mm: overlap.to_mm,
        }));
    }
    all
}
