//! The contents of a printed set: what is where.

use reinwright_core::paper::{self, Arranged, PaperOptions, SetSheet, Sheet, TitleBlock};
use reinwright_core::shop::family::{Family, sheet};

use super::in_set::InSet;
use super::{Wanted, family_title};
use crate::jobs::printer;

/// The contents pages, and which page each sheet begins on.
pub(super) fn contents<D: InSet>(
    family: &Family<D>,
    (sheets, arranged): (&[SetSheet], &Arranged<'_>),
    wanted: &Wanted,
    options: &PaperOptions,
) -> Vec<SetSheet> {
    let begins = first_pages(sheets, arranged);
    let pages = |before: usize| -> Vec<SetSheet> {
        let entries = sheets.iter().zip(&begins);
        let entries = entries.map(|(of, begins)| (of.sheet.title.clone(), before + begins));
        let entries: Vec<(String, usize)> = entries.collect();
        let sheet = |entries: &[(String, usize)]| SetSheet {
            sheet: Sheet::full_size(
                "Contents",
                sheet::contents("Contents, sheet by sheet with its first page", entries),
            ),
            title: TitleBlock {
                // Contents share no page with anything that is drawn.
                size_note: "what is where".to_owned(),
                ..printer::noted(family_title(family, wanted.day), wanted.printer())
            },
        };
        entries.chunks(sheet::ROWS_OF_A_PAGE).map(sheet).collect()
    };
    // How many pages the contents take does not hang on the numbers in them.
    pages(1 + paper::arranged(&pages(1), options).count())
}

/// The first page of each sheet, counted from 0 where the first sheet begins.
fn first_pages(sheets: &[SetSheet], arranged: &Arranged<'_>) -> Vec<usize> {
    let mut begins = vec![0; sheets.len()];
    let mut before = 0;
    for together in arranged.together() {
        for (sheet, page) in together.sheets {
            begins[sheet] = before + page;
        }
        before += together.pages;
    }
    begins
}
