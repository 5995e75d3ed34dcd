//! The sheets of a family: one PDF with a contents page, and a folder of drawings.

use std::ops::ControlFlow;

use reinwright_core::asked::StockSizes;
use reinwright_core::draw::{self, DrawOptions};
use reinwright_core::paper::ink::{self, Date, DocInfo};
use reinwright_core::paper::{
    self, Drawing, Paper, PaperOptions, SetSheet, Sheet, TitleBlock, pages_of_set,
};
use reinwright_core::shop::family::{Family, SizeAnswer, sheet};

use super::pages::{Pages, Stack};
use super::{printing, words};

/// How far a long job has come; the caller answers whether it goes on.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Progress {
    /// Steps done.
    pub done: usize,
    /// Steps in all.
    pub total: usize,
}

/// Is told of each step, and stops the job by answering [`ControlFlow::Break`].
pub type Watch<'a> = &'a mut dyn FnMut(Progress) -> ControlFlow<()>;

/// A watch that lets every job run to its end.
pub fn to_the_end(_progress: Progress) -> ControlFlow<()> {
    ControlFlow::Continue(())
}

/// What is printed, and for how many.
#[derive(Debug, Clone)]
pub struct Wanted {
    /// The paper.
    pub paper: Paper,
    /// How many pairs of each size are to be made.
    pub pairs_of_each: u32,
    /// The day, if it is to be told.
    pub day: Option<Date>,
    /// The stock that can be bought, in which gaps are counted.
    pub stock: StockSizes,
}

/// Everything of a family on paper: contents, table, ranges, all sizes side by side and one over
/// the other, then the full-size templates of each size. `None` when the watch stopped it.
pub fn pdf(
    family: &Family,
    answers: &[SizeAnswer],
    wanted: &Wanted,
    watch: Watch<'_>,
) -> Option<Vec<u8>> {
    let total = answers.len() + 3;
    let mut done = 0;
    let mut step = || {
        done += 1;
        watch(Progress { done, total }).is_continue().then_some(())
    };
    let mut sheets = family_sheets(family, answers, wanted);
    step()?;
    for answer in answers {
        sheets.extend(templates(family, answer, wanted.day));
        step()?;
    }
    let options = PaperOptions::new(wanted.paper);
    let contents = contents(family, &sheets, &options, wanted.day);
    sheets.splice(0..0, contents);
    let pages = paper::tile_set(&sheets, &options);
    step()?;
    let info = DocInfo {
        title: format!("{}, templates of the set", family.name),
        date: wanted.day,
    };
    let pdf = ink::pdf(&pages, &info);
    step()?;
    Some(pdf)
}

/// Which signs of the set's names cannot be printed, in one sentence without a period.
pub fn without_letters(family: &Family, answers: &[SizeAnswer]) -> Option<String> {
    let sizes = answers.iter().map(|answer| answer.label.as_str());
    words::without_letters(sizes.chain([family.name.as_str()]))
}

/// How many pages [`pdf`] makes on each of these papers. No more than one size is drawn at a
/// time, and none once there are too many pages for every paper. `None` when the watch stopped it.
pub fn pages(
    family: &Family,
    answers: &[SizeAnswer],
    wanted: &Wanted,
    papers: &[Paper],
    watch: Watch<'_>,
) -> Option<Vec<Pages>> {
    let mut all = vec![Pages::default(); papers.len()];
    let mut sheets = 0;
    let mut add = |all: &mut [Pages], of: &[SetSheet]| {
        sheets += of.len();
        for (pages, paper) in all.iter_mut().zip(papers) {
            let counts = pages_of_set(of, &PaperOptions::new(*paper));
            for (count, of) in counts.into_iter().zip(of) {
                pages.add(count, || name_in_contents(family, of));
            }
        }
    };
    add(&mut all, &family_sheets(family, answers, wanted));
    let total = answers.len();
    for (done, answer) in answers.iter().enumerate() {
        if all.iter().all(|pages| pages.stack() == Stack::TooMany) {
            break;
        }
        if watch(Progress { done, total }).is_break() {
            return None;
        }
        add(&mut all, &templates(family, answer, wanted.day));
    }
    // The contents, a page each.
    let contents = sheets.div_ceil(sheet::ROWS_OF_A_PAGE);
    for pages in &mut all {
        pages.add(contents, || "Contents".to_owned());
    }
    Some(all)
}

/// How many pages [`pdf`] makes on the paper that is wanted; `None` when the watch stopped it.
pub fn pages_wanted(
    family: &Family,
    answers: &[SizeAnswer],
    wanted: &Wanted,
    watch: Watch<'_>,
) -> Option<Pages> {
    let counted = pages(family, answers, wanted, &[wanted.paper], watch)?;
    counted.into_iter().next()
}

/// The sheets that only a family has.
fn family_sheets(family: &Family, answers: &[SizeAnswer], wanted: &Wanted) -> Vec<SetSheet> {
    let title = family_title(family, wanted.day);
    let sheet = |name: &str, drawing: Drawing, reduced: u32| SetSheet {
        sheet: Sheet {
            title: name.to_owned(),
            drawing,
            reduced,
        },
        title: title.clone(),
    };
    let ranges = sheet::ranges(family, answers, wanted.pairs_of_each, &wanted.stock);
    let side = sheet::reduction(&sheet::strip(answers, 1), sheet::ROOM);
    let tables = sheet::table_pages(family, answers);
    let last = tables.len();
    let table = |(n, drawing): (usize, Drawing)| {
        let name = match last {
            1 => "Table of sizes".to_owned(),
            _ => format!("Table of sizes, {n} of {last}"),
        };
        sheet(&name, drawing, 1)
    };
    let mut sheets: Vec<SetSheet> = (1..).zip(tables).map(table).collect();
    sheets.extend([
        sheet(
            "What does not change",
            sheet::same_in_all(family, answers),
            1,
        ),
        sheet("What the set holds, and its bar", ranges, 1),
        sheet(
            "All sizes, for comparison",
            sheet::strip(answers, side),
            side,
        ),
        sheet(
            "One over the other, rivets together",
            sheet::overlay(answers, 1),
            1,
        ),
    ]);
    sheets
}

/// The templates of a size; which one it is stands on each of them, on the base's as well.
fn templates(family: &Family, answer: &SizeAnswer, day: Option<Date>) -> Vec<SetSheet> {
    let title = TitleBlock {
        design: format!("{}{}", before_size(family), answer.label),
        ..printing::title_block(&answer.document, &answer.findings, day)
    };
    let sheets = printing::sheets(&answer.document).into_iter();
    sheets
        .map(|sheet| SetSheet {
            sheet,
            title: title.clone(),
        })
        .collect()
}

fn family_title(family: &Family, day: Option<Date>) -> TitleBlock {
    TitleBlock {
        design: family.name.clone(),
        ..printing::title_block(&family.base, &[], day)
    }
}

/// The contents pages, and which page each sheet begins on.
fn contents(
    family: &Family,
    sheets: &[SetSheet],
    options: &PaperOptions,
    day: Option<Date>,
) -> Vec<SetSheet> {
    let pages = |first: usize| -> Vec<SetSheet> {
        let mut next = first;
        let counts = pages_of_set(sheets, options).into_iter().zip(sheets);
        let entries = counts.map(|(count, of)| {
            let begins = next;
            next += count;
            (name_in_contents(family, of), begins)
        });
        let entries: Vec<(String, usize)> = entries.collect();
        let sheet = |entries: &[(String, usize)]| SetSheet {
            sheet: Sheet {
                title: "Contents".to_owned(),
                drawing: sheet::contents("Contents, sheet by sheet with its first page", entries),
                reduced: 1,
            },
            title: family_title(family, day),
        };
        entries.chunks(sheet::ROWS_OF_A_PAGE).map(sheet).collect()
    };
    // How many pages the contents take does not hang on the numbers in them.
    let own = pages_of_set(&pages(2), options);
    pages(1 + own.iter().sum::<usize>())
}

/// What stands before a size's name in the title of its sheets, so short that it leaves room.
fn before_size(family: &Family) -> String {
    format!("{}, ", sheet::short_name(&family.name))
}

/// A sheet of the whole family by its title, one of a size with the size before it.
fn name_in_contents(family: &Family, of: &SetSheet) -> String {
    match of.title.design.strip_prefix(&before_size(family)) {
        Some(size) => format!("{}: {}", sheet::short_name(size), of.sheet.title),
        None => of.sheet.title.clone(),
    }
}

/// The set's drawings as named SVG files: each size's pair and half at full size, the overlay
/// and the strip at full size too, one unit to the millimetre, table and ranges. `None` when the
/// watch stopped it.
pub fn svgs(
    family: &Family,
    answers: &[SizeAnswer],
    wanted: &Wanted,
    watch: Watch<'_>,
) -> Option<Vec<(String, String)>> {
    let ranges = sheet::ranges(family, answers, wanted.pairs_of_each, &wanted.stock);
    let total = answers.len() + 1;
    let named = |name: &str, drawing: &Drawing| {
        (
            format!("{name}.svg"),
            ink::svg(drawing, &format!("{}, {name}", family.name)),
        )
    };
    let mut files = vec![
        named("all-table", &sheet::table(family, answers)),
        named("all-unchanged", &sheet::same_in_all(family, answers)),
        named("all-ranges", &ranges),
        named("all-side-by-side", &sheet::strip(answers, 1)),
        named("all-overlay", &sheet::overlay(answers, 1)),
    ];
    let step = |done: usize, watch: &mut dyn FnMut(Progress) -> ControlFlow<()>| {
        watch(Progress { done, total }).is_continue().then_some(())
    };
    step(1, watch)?;
    for (done, (answer, name)) in (2..).zip(answers.iter().zip(file_names(answers))) {
        let (document, model) = (&answer.document, &answer.model);
        let pair = draw::pair(document, model, &DrawOptions::default());
        files.push(named(&format!("{name}-pair"), &pair));
        files.push(named(&format!("{name}-half"), &draw::half(document, model)));
        step(done, watch)?;
    }
    Some(files)
}

/// A name for each size's files, none twice: its label in letters, digits and hyphens behind its
/// place, so that a folder lists them in order.
pub fn file_names(answers: &[SizeAnswer]) -> Vec<String> {
    let width = answers.len().to_string().len();
    let name = |(place, answer): (usize, &SizeAnswer)| {
        format!("{:0width$}-{}", place + 1, slug(&answer.label))
    };
    answers.iter().enumerate().map(name).collect()
}

/// Small letters, digits and single hyphens; 40 signs at most.
pub fn slug(name: &str) -> String {
    let plain = name.to_lowercase();
    let words = plain.split(|c: char| !c.is_ascii_alphanumeric());
    let joined = words
        .filter(|word| !word.is_empty())
        .collect::<Vec<_>>()
        .join("-");
    let short: String = joined.chars().take(40).collect();
    if short.is_empty() {
        "family".to_owned()
    } else {
        short
    }
}
