//! How many pages a set makes, before they are laid.

use reinwright_core::paper::{self, Paper, SetSheet, Together};
use reinwright_core::shop::family::{Family, sheet};

use super::in_set::InSet;
use super::sizes::{bars, sharing, templates};
use super::{Wanted, family_sheets};
use crate::jobs::order::OfTheSet;
use crate::jobs::pages::{Pages, Stack};
use crate::jobs::printer;
use crate::jobs::watch::{Progress, Watch};

/// How many pages [`pdf`](super::pdf) makes on each of these papers. No more than a few sizes are drawn at
/// a time, and none once there are too many pages for every paper. `None` when the watch stopped it.
pub fn pages<D: InSet>(
    family: &Family<D>,
    answers: &[D::Answer],
    wanted: &Wanted,
    papers: &[Paper],
    watch: Watch<'_>,
) -> Option<Vec<Pages>> {
    let mut all = vec![Pages::default(); papers.len()];
    let mut sheets = 0;
    let mut add = |all: &mut [Pages], of: &[SetSheet]| {
        sheets += of.len();
        let noted: Vec<SetSheet> = of
            .iter()
            .map(|of| SetSheet {
                sheet: of.sheet.clone(),
                title: printer::noted(of.title.clone(), wanted.printer()),
            })
            .collect();
        for (pages, paper) in all.iter_mut().zip(papers) {
            for together in paper::arranged(&noted, &wanted.options(*paper)).together() {
                pages.add(&together, |sheet| of[sheet].sheet.title.clone());
            }
        }
    };
    add(&mut all, &family_sheets(family, answers, wanted));
    let total = answers.len();
    let mut done = 0;
    let bars = bars::<D>(answers, &wanted.order);
    for group in sharing::<D>(answers, &wanted.order) {
        if all.iter().all(|pages| pages.stack() == Stack::TooMany) {
            break;
        }
        if watch(Progress { done, total }).is_break() {
            return None;
        }
        add(
            &mut all,
            &templates(family, answers, (&group, &bars), wanted),
        );
        done += group.len();
    }
    if wanted.order.of_the_set == OfTheSet::LeftOut {
        return Some(all);
    }
    // The contents, a page each.
    let contents = sheets.div_ceil(sheet::ROWS_OF_A_PAGE);
    let contents = Together {
        pages: contents,
        sheets: vec![(0, 0)],
    };
    for pages in &mut all {
        pages.add(&contents, |_| "Contents".to_owned());
    }
    Some(all)
}

/// How many pages [`pdf`](super::pdf) makes on the paper that is wanted; `None` when the watch stopped it.
pub fn pages_wanted<D: InSet>(
    family: &Family<D>,
    answers: &[D::Answer],
    wanted: &Wanted,
    watch: Watch<'_>,
) -> Option<Pages> {
    let counted = pages(family, answers, wanted, &[wanted.order.paper], watch)?;
    counted.into_iter().next()
}
