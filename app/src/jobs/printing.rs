//! The sheets of a design, for the window's Print and the command line alike.

use std::time::{SystemTime, UNIX_EPOCH};

use reinwright_core::asked::Units;
use reinwright_core::draw::{self, DrawOptions};
use reinwright_core::finding::{Finding, Severity};
use reinwright_core::forge::{self, balance::Balance};
use reinwright_core::paper::ink::{self, Date, DocInfo};
use reinwright_core::paper::{self, Paper, PaperOptions, Sheet, TitleBlock};
use reinwright_core::shop::{Answers, balance_of};
use reinwright_core::steel::caution;
use reinwright_core::tongs::document::Document;
use reinwright_core::tongs::model::Model;
use reinwright_core::tongs::resolve;

use super::pages::{Consent, Pages};
use super::words::without_letters;

/// Size of the lettering along the bar on a printed sheet, mm.
const BAR_TEXT: f64 = 3.5;

/// The templates of a design, drawn and not yet laid on paper.
#[derive(Debug)]
pub struct Template {
    sheets: Vec<Sheet>,
    title: TitleBlock,
    info: DocInfo,
    /// Why there is no sheet of the bar, in one sentence without a period.
    pub without_bar: Option<String>,
    /// Which signs of its name cannot be printed, in one sentence without a period.
    pub without_letters: Option<String>,
}

impl Template {
    /// Draws the templates of a design, full size at cold size.
    pub fn of(design: &Document, day: Option<Date>) -> Self {
        let answers = Answers::to(design);
        Self {
            sheets: drawn(design, &answers.model, &answers.balance),
            title: title_block(design, &answers.findings, day),
            info: DocInfo {
                title: format!("{}, templates", design.name),
                date: day,
            },
            without_bar: answers.balance.trouble(),
            without_letters: without_letters([design.name.as_str()]),
        }
    }

    /// How many pages they take.
    pub fn pages(&self, paper: Paper) -> Pages {
        let counts = paper::pages_of(&self.sheets, &PaperOptions::new(paper), &self.title);
        let mut pages = Pages::default();
        for (count, sheet) in counts.into_iter().zip(&self.sheets) {
            pages.add(count, || sheet.title.clone());
        }
        pages
    }

    /// The pages as PDF.
    ///
    /// # Errors
    /// One sentence when there are more pages than were asked for, or than are ever made.
    pub fn pdf(&self, paper: Paper, asked: Consent) -> Result<Vec<u8>, String> {
        self.pages(paper).allow(paper, asked)?;
        let pages = paper::tile(&self.sheets, &PaperOptions::new(paper), &self.title);
        Ok(ink::pdf(&pages, &self.info))
    }
}

/// The sheets of a design: each finished half that differs, the pair as set, the bar.
pub fn sheets(design: &Document) -> Vec<Sheet> {
    let model = resolve(design);
    drawn(design, &model, &balance_of(design, &model))
}

fn drawn(design: &Document, model: &Model, balance: &Balance) -> Vec<Sheet> {
    let mut sheets = halves(design, model);
    sheets.push(Sheet::full_size(
        "The pair, set on its work",
        draw::pair(design, model, &DrawOptions::default()),
    ));
    if balance.trouble().is_none() {
        sheets.push(bar(design, balance));
    }
    sheets
}

/// The bar as a strip to lay the bar along; one that is too long for that, to scale.
fn bar(design: &Document, balance: &Balance) -> Sheet {
    /// A longer bar is no template, mm: the strips of a heavy pair are half as long.
    const LONGEST: f64 = 2000.0;
    /// What a bar that is drawn to scale takes, mm: a page that lies across.
    const ROOM: f64 = 225.0;
    let drawn = |text| forge::bar((&design.bar, design.units), balance, text);
    let length = balance.cut_length(design.units).mm();
    let reduced = if length > LONGEST {
        reduction(length / ROOM)
    } else {
        1
    };
    Sheet {
        title: "The bar with its marks".to_owned(),
        drawing: drawn(BAR_TEXT * f64::from(reduced)).reduced(reduced),
        reduced,
    }
}

/// The largest scale of 1, 2, 5, 10, 20, 50 and so on to 1 (ISO 5455) that is no larger than this.
fn reduction(least: f64) -> u32 {
    let decades = (0..9).map(|power| 10_u32.pow(power));
    let mut scales = decades.flat_map(|ten| [1, 2, 5].map(|by| by * ten));
    let fits = |scale: &u32| f64::from(*scale) >= least;
    scales.find(fits).unwrap_or(1_000_000_000)
}

/// One sheet when both halves are the same piece, else one for each.
fn halves(design: &Document, model: &Model) -> Vec<Sheet> {
    let first = draw::half(design, model);
    if model.same() {
        let title = "The half, finished: make two alike";
        return vec![Sheet::full_size(title, first)];
    }
    vec![
        Sheet::full_size("Half A, finished", first),
        Sheet::full_size("Half B, finished", draw::other_half(design, model)),
    ]
}

/// What the title block says of every sheet of a design: a Stop first, then what to take care of.
pub(crate) fn title_block(
    design: &Document,
    findings: &[Finding],
    day: Option<Date>,
) -> TitleBlock {
    let unit = match design.units {
        Units::Inch => "sizes in inches",
        Units::Millimetre => "sizes in millimetres",
    };
    TitleBlock {
        design: design.name.clone(),
        size_note: "cold size".to_owned(),
        unit: unit.to_owned(),
        date: day.map(|day| day.to_string()),
        projection: design.projection,
        stop: stop(findings),
        notes: notes(design),
    }
}

fn notes(design: &Document) -> Vec<String> {
    let mut notes = vec![caution::ON_EVERY_SHEET.to_owned()];
    notes.extend(caution::of(design.bar.steel).map(str::to_owned));
    notes
}

/// What stands against making a design, for all that leaves the program: its first Stop, and how
/// many more there are.
///
/// `STOP, do not make it: boss: the hole breaks out of the boss (and 1 more)`
pub(crate) fn stop(findings: &[Finding]) -> Option<String> {
    let stops = || findings.iter().filter(|f| f.severity == Severity::Stop);
    let first = stops().next()?;
    let more = match stops().count() - 1 {
        0 => String::new(),
        more => format!(" (and {more} more)"),
    };
    Some(format!(
        "STOP, do not make it: {}: {}{more}",
        first.part, first.message
    ))
}

/// Today's date by the computer's clock (UTC); `None` if the clock cannot be right.
pub fn today() -> Option<Date> {
    const DAY: u64 = 86_400;
    let since = SystemTime::now().duration_since(UNIX_EPOCH).ok()?;
    date(since.as_secs() / DAY)
}

/// The date so many days after 1 January 1970, counted year by year and month by month.
fn date(mut days: u64) -> Option<Date> {
    let leap = |year: u16| {
        (year.is_multiple_of(4) && !year.is_multiple_of(100)) || year.is_multiple_of(400)
    };
    let mut year = 1970_u16;
    loop {
        let length = if leap(year) { 366 } else { 365 };
        if days < length {
            break;
        }
        days -= length;
        year = year.checked_add(1)?;
    }
    let february = if leap(year) { 29 } else { 28 };
    let lengths = [31, february, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];
    for (month, length) in (1_u8..).zip(lengths) {
        if days < length {
            let day = u8::try_from(days + 1).ok()?;
            return Some(Date { year, month, day });
        }
        days -= length;
    }
    None
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Days since 1970 as `date -u -d @$((86400 * days))` of a Unix system gives them.
    #[test]
    fn days_become_dates() {
        let text = |days: u64| date(days).expect("in range").to_string();
        assert_eq!(text(0), "1970-01-01");
        assert_eq!(text(58), "1970-02-28");
        assert_eq!(text(11_016), "2000-02-29");
        assert_eq!(text(20_453), "2025-12-31");
        assert_eq!(text(47_540), "2100-02-28");
        assert_eq!(text(47_541), "2100-03-01");
    }
}
