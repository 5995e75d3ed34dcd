//! A cut list on paper.

use reinwright_core::asked::Units;
use reinwright_core::paper::ink::{self, Date, DocInfo};
use reinwright_core::paper::{self, Paper, PaperOptions, SetSheet, Sheet, TitleBlock};
use reinwright_core::shop::cut::{CutPlan, drawing, reduction};
use reinwright_core::steel::caution;

/// What the list is called.
const NAME: &str = "Cut list";

/// The bars with their pieces as PDF.
pub fn pdf(plan: &CutPlan, units: Units, paper: Paper, day: Option<Date>) -> Vec<u8> {
    let unit = match units {
        Units::Inch => "sizes in inches",
        Units::Millimetre => "sizes in millimetres",
    };
    let title = TitleBlock {
        design: NAME.to_owned(),
        size_note: "lengths to scale".to_owned(),
        unit: unit.to_owned(),
        date: day.map(|day| day.to_string()),
        notes: vec![caution::ON_EVERY_SHEET.to_owned()],
        ..TitleBlock::default()
    };
    let sheet = SetSheet {
        sheet: Sheet {
            reduced: reduction(plan),
            ..Sheet::full_size("The bars with their pieces", drawing(plan, units))
                .named_in_title_block()
        },
        title,
    };
    let pages = paper::tile_set(&[sheet], &PaperOptions::new(paper));
    let info = DocInfo {
        title: NAME.to_owned(),
        date: day,
    };
    ink::pdf(&pages, &info)
}

/// The same drawing as SVG.
pub fn svg(plan: &CutPlan, units: Units) -> String {
    ink::svg(&drawing(plan, units), NAME)
}
