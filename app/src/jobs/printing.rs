//! The sheets of a design, for the window's Print and the command line alike.

use std::time::{SystemTime, UNIX_EPOCH};

use reinwright_core::asked::Units;
use reinwright_core::draw::{self, DrawOptions};
use reinwright_core::finding::{Finding, Severity};
use reinwright_core::forge;
use reinwright_core::paper::ink::{self, Date, DocInfo};
use reinwright_core::paper::{self, Drawing, Paper, PaperOptions, Sheet, TitleBlock};
use reinwright_core::shop::{Answers, balance_of};
use reinwright_core::steel::caution;
use reinwright_core::tongs::document::Document;
use reinwright_core::tongs::model::Model;
use reinwright_core::tongs::resolve;

/// Size of the lettering along the bar on a printed sheet, mm.
const BAR_TEXT: f64 = 3.5;

/// The templates of a design as PDF, full size at cold size.
pub fn template_pdf(design: &Document, paper: Paper, day: Option<Date>) -> Vec<u8> {
    let title = title_block(design, &Answers::to(design).findings, day);
    let pages = paper::tile(&sheets(design), &PaperOptions::new(paper), &title);
    let info = DocInfo {
        title: format!("{}, templates", design.name),
        date: day,
    };
    ink::pdf(&pages, &info)
}

/// The sheets of a design: each finished half that differs, the pair as set, the bar.
pub fn sheets(design: &Document) -> Vec<Sheet> {
    let model = resolve(design);
    let mut sheets = halves(design, &model);
    sheets.push(Sheet {
        title: "The pair, set on its work".to_owned(),
        drawing: draw::pair(design, &model, &DrawOptions::default()),
    });
    let balance = balance_of(design, &model);
    sheets.push(Sheet {
        title: "The bar with its marks".to_owned(),
        drawing: forge::bar((&design.bar, design.units), &balance, BAR_TEXT),
    });
    sheets
}

/// One sheet when both halves are the same piece, else one for each.
fn halves(design: &Document, model: &Model) -> Vec<Sheet> {
    let sheet = |title: &str, drawing: Drawing| Sheet {
        title: title.to_owned(),
        drawing,
    };
    let first = draw::half(design, model);
    if model.same() {
        return vec![sheet("The half, finished: make two alike", first)];
    }
    vec![
        sheet("Half A, finished", first),
        sheet("Half B, finished", draw::other_half(design, model)),
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
