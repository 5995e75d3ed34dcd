//! Sheets for a printer whose measure is known, and the page by which it is measured.

use kurbo::Point;
use reinwright_core::paper::ink::{self, Date, DocInfo};
use reinwright_core::paper::{
    self, Align, Drawing, Item, Page, Paper, PaperOptions, Sheet, TitleBlock,
};
use reinwright_core::shop::printers::Printer;

/// How sheets are laid for a printer: its rim stays blank.
pub fn options(paper: Paper, printer: Option<&Printer>) -> PaperOptions {
    let usual = PaperOptions::new(paper);
    let rim = printer.and_then(|printer| printer.rim);
    PaperOptions {
        margin: rim.map_or(usual.margin, |rim| rim.mm().max(usual.margin)),
        ..usual
    }
}

/// Pages drawn so that they come true out of a printer.
pub fn corrected(pages: Vec<Page>, printer: Option<&Printer>) -> Vec<Page> {
    let Some(printer) = printer else {
        return pages;
    };
    let by = printer.correction();
    pages.into_iter().map(|page| page.corrected(by)).collect()
}

/// A title block that names the printer first of all.
pub fn noted(mut title: TitleBlock, printer: Option<&Printer>) -> TitleBlock {
    if let Some(printer) = printer {
        title.notes.insert(0, printer.note());
    }
    title
}

/// What is done with the check page.
const STEPS: [&str; 7] = [
    "1  Print this page at actual size (100 %), not fitted to the page, the paper upright.",
    "2  Measure the bars at the page's foot and at its left side with a rule, on a flat table:",
    "    both metric ones, which are 100 mm long, or both of 4 in.",
    "3  Note what they measure, across the paper and along it, with the widest rim left blank,",
    "    in the window under Print to PDF, Measure a printer, or so:",
    "    reinwright printer \"its name\" --shop FOLDER --across \"… mm\" --along \"… mm\" --rim \"… mm\"",
    "4  From then on choose that printer, or --printer \"its name\" --shop FOLDER: its sheets are corrected.",
];

/// The check page: as it is, never corrected.
pub fn check_page(paper: Paper, day: Option<Date>) -> Vec<u8> {
    /// Size of its lettering and between two lines, mm.
    const TEXT: f64 = 3.2;
    const LINE: f64 = 6.0;
    let mut y = 0.0;
    let line = |words: &str| {
        y -= LINE;
        Item::text(Point::new(0.0, y), words, TEXT, Align::Start)
    };
    let mut items: Vec<Item> = STEPS.into_iter().map(line).collect();
    // A tall drawing keeps the page upright, as the printer is measured.
    items.push(Item::text(
        Point::new(0.0, -160.0),
        "A bar that is more than 4 % off was fitted to the page.",
        TEXT,
        Align::Start,
    ));
    let title = TitleBlock {
        design: "Check page".to_owned(),
        size_note: "true size".to_owned(),
        date: day.map(|day| day.to_string()),
        ..TitleBlock::default()
    };
    let sheet = Sheet::full_size("Measure both bars", Drawing { items });
    let pages = paper::tile(&[sheet], &PaperOptions::new(paper), &title);
    let info = DocInfo {
        title: "Check page".to_owned(),
        date: day,
    };
    ink::pdf(&pages, &info)
}
