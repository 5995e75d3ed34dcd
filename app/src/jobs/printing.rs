//! The sheets of a design, for the window's Print and the command line alike.

use std::time::{SystemTime, UNIX_EPOCH};

use reinwright_core::asked::Units;
use reinwright_core::finding::{Finding, Severity};
use reinwright_core::paper::ink::{self, Date, DocInfo};
use reinwright_core::paper::{self, Page, Paper, PaperOptions, SetSheet, Sheet, TitleBlock};
use reinwright_core::shop::printers::Printer;
use reinwright_core::shop::{Answers, ToolAnswers};
use reinwright_core::steel::caution;
use reinwright_core::tongs::document::Document;
use reinwright_core::tool::Tool;

use super::pages::{Consent, Pages};
use super::printer;
use super::sheets::{self, Of};
use super::tool_sheets;
use super::what::{Kind, What};
use super::words::without_letters;

/// The templates of a design, drawn and not yet laid on paper.
#[derive(Debug)]
pub struct Template {
    sheets: Vec<SetSheet>,
    info: DocInfo,
    printer: Option<Printer>,
    /// Why there is no sheet of the bar, in one sentence without a period; only where it was wanted.
    pub without_bar: Option<String>,
    /// Which signs of its name cannot be printed, in one sentence without a period.
    pub without_letters: Option<String>,
}

/// Templates arranged on pages.
#[derive(Debug)]
pub struct Arranged<'a> {
    /// How many pages they take.
    pub count: Pages,
    pages: paper::Arranged<'a>,
    printer: Option<&'a Printer>,
}

impl Template {
    /// Draws the usual templates of a design, full size at cold size.
    pub fn of(design: &Document, day: Option<Date>) -> Self {
        Self::with(design, &What::default(), day)
    }

    /// Draws what is wanted of a design.
    pub fn with(design: &Document, what: &What, day: Option<Date>) -> Self {
        let answers = Answers::to(design);
        let title = title_block(design, &answers.findings, day);
        let needs_bar = what.has(Kind::Bar) || what.has(Kind::Stages);
        Self {
            sheets: sheets::drawn(&Of::answers(design, &answers), what, &title),
            info: DocInfo {
                title: format!("{}, templates", design.name),
                date: day,
            },
            printer: None,
            without_bar: answers.balance.trouble().filter(|_| needs_bar),
            without_letters: without_letters([design.name.as_str()]),
        }
    }

    /// Draws what is wanted of a tool: its views for a half or a pair, and stages and bar.
    pub fn of_tool(tool: &Tool, what: &What, day: Option<Date>) -> Self {
        let answers = ToolAnswers::to(tool);
        let title = tool_title_block(tool, &answers.findings, day);
        let needs_bar = what.has(Kind::Bar) || what.has(Kind::Stages);
        Self {
            sheets: tool_sheets::drawn((tool, &answers), what, &title),
            info: DocInfo {
                title: format!("{}, templates", tool.name),
                date: day,
            },
            printer: None,
            without_bar: answers.balance.trouble().filter(|_| needs_bar),
            without_letters: without_letters([tool.name.as_str()]),
        }
    }

    /// The same for a printer whose measure is known.
    #[must_use]
    pub fn on(mut self, printer: Option<Printer>) -> Self {
        for of in &mut self.sheets {
            of.title = printer::noted(std::mem::take(&mut of.title), printer.as_ref());
        }
        Self { printer, ..self }
    }

    fn options(&self, paper: Paper) -> PaperOptions {
        printer::options(paper, self.printer.as_ref())
    }

    /// How many pages they take.
    pub fn pages(&self, paper: Paper) -> Pages {
        self.arranged(paper).count
    }

    /// The pages counted, and how they are drawn from there.
    pub fn arranged(&self, paper: Paper) -> Arranged<'_> {
        let pages = paper::arranged(&self.sheets, &self.options(paper));
        let mut count = Pages::default();
        for together in pages.together() {
            count.add(&together, |sheet| self.sheets[sheet].sheet.title.clone());
        }
        Arranged {
            count,
            pages,
            printer: self.printer.as_ref(),
        }
    }

    /// The pages as they come out.
    pub fn laid(&self, paper: Paper) -> Vec<Page> {
        self.arranged(paper).laid()
    }

    /// The pages as PDF.
    ///
    /// # Errors
    /// One sentence when there are more pages than were asked for, or than are ever made.
    pub fn pdf(&self, paper: Paper, asked: Consent) -> Result<Vec<u8>, String> {
        let arranged = self.arranged(paper);
        arranged.count.allow(paper, asked)?;
        Ok(ink::pdf(&arranged.laid(), &self.info))
    }
}

impl Arranged<'_> {
    /// The pages as they come out.
    pub fn laid(&self) -> Vec<Page> {
        printer::corrected(self.pages.pages(), self.printer)
    }
}

/// The usual sheets of a design: each finished half that differs, the pair as set, the bar.
pub fn sheets(design: &Document) -> Vec<Sheet> {
    let answers = Answers::to(design);
    let of = Of::answers(design, &answers);
    let title = TitleBlock::default();
    let drawn = sheets::drawn(&of, &What::default(), &title).into_iter();
    drawn.map(|of| of.sheet).collect()
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

/// The same of a tool.
pub(super) fn tool_title_block(tool: &Tool, findings: &[Finding], day: Option<Date>) -> TitleBlock {
    let unit = match tool.units {
        Units::Inch => "sizes in inches",
        Units::Millimetre => "sizes in millimetres",
    };
    let struck = "A struck end stays soft and is ground back when it mushrooms. How the steel is hardened \
                  its maker's sheet says.";
    TitleBlock {
        design: tool.name.clone(),
        size_note: "cold size".to_owned(),
        unit: unit.to_owned(),
        date: day.map(|day| day.to_string()),
        projection: tool.projection,
        stop: stop(findings),
        notes: vec![caution::ON_EVERY_SHEET.to_owned(), struck.to_owned()],
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
