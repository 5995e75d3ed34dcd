//! The sheets of a tool: its views full size, and the bar with its marks.

use reinwright_core::asked::Units;
use reinwright_core::draw::{self, DrawOptions, Names};
use reinwright_core::forge;
use reinwright_core::paper::ink::{self, Date, DocInfo};
use reinwright_core::paper::{self, Drawing, Paper, PaperOptions, SetSheet, Sheet, TitleBlock};
use reinwright_core::shop::ToolAnswers;
use reinwright_core::steel::caution;
use reinwright_core::tool::Tool;

use super::pages::{Consent, Pages};
use super::printing::stop;

/// Size of the lettering on a template, mm: 12 pt.
const TEXT: f64 = 4.3;

/// The pages of a tool as PDF.
///
/// # Errors
/// One sentence when there are more pages than were asked for, or than are ever made.
pub fn pdf(
    tool: &Tool,
    paper: Paper,
    asked: Consent,
    day: Option<Date>,
) -> Result<Vec<u8>, String> {
    let sheets = drawn(tool, day);
    let options = PaperOptions::new(paper);
    let mut pages = Pages::default();
    for together in paper::pages_of_set(&sheets, &options) {
        pages.add(&together, |sheet| sheets[sheet].sheet.title.clone());
    }
    pages.allow(paper, asked)?;
    let info = DocInfo {
        title: format!("{}, templates", tool.name),
        date: day,
    };
    Ok(ink::pdf(&paper::tile_set(&sheets, &options), &info))
}

fn drawn(tool: &Tool, day: Option<Date>) -> Vec<SetSheet> {
    let answers = ToolAnswers::to(tool);
    let title = title_block(tool, &answers, day);
    let mut sheets = vec![views(tool, &answers)];
    if answers.balance.trouble().is_none() {
        sheets.push(bar(tool, &answers));
    }
    let titled = |sheet| SetSheet {
        sheet,
        title: title.clone(),
    };
    sheets.into_iter().map(titled).collect()
}

fn views(tool: &Tool, answers: &ToolAnswers) -> Sheet {
    let options = DrawOptions {
        text: TEXT,
        names: Names::LeftOut,
        ..DrawOptions::default()
    };
    let drawing: Drawing = draw::tool(tool, &answers.model, &options);
    Sheet::full_size("The tool", drawing)
}

fn bar(tool: &Tool, answers: &ToolAnswers) -> Sheet {
    let drawing = forge::bar((&tool.bar, tool.units), &answers.balance, TEXT);
    let plain = forge::plain(&answers.balance, tool.units);
    Sheet::full_size("The bar with its marks", drawing).plain(plain)
}

fn title_block(tool: &Tool, answers: &ToolAnswers, day: Option<Date>) -> TitleBlock {
    let unit = match tool.units {
        Units::Inch => "sizes in inches",
        Units::Millimetre => "sizes in millimetres",
    };
    let mut notes = vec![caution::ON_EVERY_SHEET.to_owned()];
    notes.extend(caution::of(tool.bar.steel).map(str::to_owned));
    TitleBlock {
        design: tool.name.clone(),
        size_note: "cold size".to_owned(),
        unit: unit.to_owned(),
        date: day.map(|day| day.to_string()),
        projection: tool.projection,
        stop: stop(&answers.findings),
        notes,
    }
}
