//! The answers, a page for each question.

mod bar;
mod came_out;
mod chart;
mod findings;
mod fit;
mod making;
mod strength;

use egui::{Label, Response, RichText, ScrollArea, Ui};
use lyon::tessellation::FillTessellator;
use reinwright_core::finding::{Finding, Part, Severity};
use reinwright_core::tongs::document::Document;

use crate::window::paint::focus::followed;
use crate::window::paint::sign;
use crate::window::paint::theme::Palette;
use crate::window::panels::heats::{self, Shown};
use crate::window::panels::wish::Wish;
use crate::window::state::bar::OfBar;
use crate::window::state::history::Hand;
use crate::window::state::look::{Look, Page};
use crate::window::state::reckon::Answers;
use crate::window::state::rows::capital;
use crate::window::state::tool::ToolAnswers;

const SEVERITIES: [Severity; 3] = [Severity::Stop, Severity::Mend, Severity::Note];

/// Shows the tabs and the page that is chosen; gives back what was asked for.
pub(crate) fn show(
    ui: &mut Ui,
    (document, hand): (&Document, Hand),
    (answers, look, fills): (&mut Answers, &mut Look, &mut FillTessellator),
    mut shown: Shown<'_>,
) -> Option<Wish> {
    tabs(ui, &Page::ALL, &answers.known.findings, look);
    ScrollArea::vertical()
        .id_salt(("answers", look.page))
        .auto_shrink([false, false])
        .show(ui, |ui| {
            followed(ui, |ui| match look.page {
                Page::Bar => {
                    bar::show(ui, answers.account(), look);
                    None
                }
                Page::Fit => {
                    fit::show(ui, document, answers, (look, fills));
                    None
                }
                Page::Strength => {
                    strength::show(ui, document, answers, look);
                    None
                }
                Page::Making => making::show(ui, answers, look),
                Page::Heats => match answers.known.balance.trouble() {
                    None => {
                        let of = (document.units.show(), document.bar.steel);
                        heats::side(ui, of, &mut shown, look)
                    }
                    Some(trouble) => no_bar(ui, &trouble),
                },
                Page::Findings => findings::with_mends(ui, answers, (look, hand)),
            })
        })
        .inner
}

/// The findings alone, without tabs.
pub(crate) fn findings(ui: &mut Ui, answers: &Answers, look: &mut Look) {
    findings::show(ui, answers, look);
}

/// The findings of a tool alone, without tabs.
pub(crate) fn findings_of_tool(ui: &mut Ui, answers: &ToolAnswers, look: &mut Look) {
    findings::show_tool(ui, answers, look);
}

/// Shows the tabs and the page of a tool that is chosen; gives back what was asked for.
pub(crate) fn show_tool(
    ui: &mut Ui,
    answers: &mut ToolAnswers,
    (look, hand): (&mut Look, Hand),
    mut shown: Shown<'_>,
) -> Option<Wish> {
    tabs(ui, &Page::OF_TOOL, &answers.known.findings, look);
    ScrollArea::vertical()
        .id_salt(("tool answers", look.page))
        .auto_shrink([false, false])
        .show(ui, |ui| {
            followed(ui, |ui| match look.page {
                Page::Making => making::show_tool(ui, answers, look),
                Page::Findings => findings::of_tool(ui, answers, (look, hand)),
                Page::Heats => match answers.known.balance.trouble() {
                    None => {
                        let tool = answers.tool();
                        let of = (tool.units.show(), tool.bar.steel);
                        heats::side(ui, of, &mut shown, look)
                    }
                    Some(trouble) => no_bar(ui, &trouble),
                },
                Page::Bar | Page::Fit | Page::Strength => {
                    bar::show(ui, answers.account(), look);
                    None
                }
            })
        })
        .inner
}

/// Where there is no bar, nothing is heated.
fn no_bar(ui: &mut Ui, trouble: &str) -> Option<Wish> {
    ui.colored_label(Palette::of(ui.visuals()).stop, capital(trouble));
    None
}

/// So many tabs have room in any panel, and all of them with their badges in one so wide, in points:
/// else they stand in two rows.
const FEW: usize = 4;
const ALL_TABS: f32 = 372.0;

fn tabs(ui: &mut Ui, pages: &[Page], findings: &[Finding], look: &mut Look) {
    let in_a_row = match ui.available_width() {
        width if pages.len() > FEW && width < ALL_TABS => pages.len().div_ceil(2),
        _ => pages.len(),
    };
    for row in pages.chunks(in_a_row) {
        ui.horizontal(|ui| {
            ui.spacing_mut().item_spacing.x = 2.0;
            for page in row {
                tab(ui, findings, look, *page);
            }
        });
    }
    ui.separator();
}

fn tab(ui: &mut Ui, findings: &[Finding], look: &mut Look, page: Page) {
    let title = match page {
        Page::Bar => "Bar",
        Page::Fit => "Fit",
        Page::Strength => "Strength",
        Page::Making => "Making",
        Page::Heats => "Heats",
        Page::Findings => "Findings",
    };
    let response = ui.selectable_label(look.page == page, title);
    match page {
        Page::Bar | Page::Fit | Page::Strength | Page::Making | Page::Heats => {}
        Page::Findings => {
            badges(ui, findings);
            let response = response.clone().accessible_name(counted(findings));
            response.on_hover_text(counted(findings));
        }
    }
    if response.clicked() {
        look.page = page;
    }
}

/// How many findings there are of a severity.
fn count(findings: &[Finding], severity: Severity) -> usize {
    let same = |finding: &&Finding| finding.severity == severity;
    findings.iter().filter(same).count()
}

/// A sign and a number for each severity that there is.
fn badges(ui: &mut Ui, findings: &[Finding]) {
    ui.spacing_mut().item_spacing.x = 3.0;
    for severity in SEVERITIES {
        let count = count(findings, severity);
        if count > 0 {
            sign::severity(ui, severity);
            ui.label(count.to_string());
        }
    }
}

/// `Findings: 1 Stop, 2 Mend`.
fn counted(findings: &[Finding]) -> String {
    let counts: Vec<String> = SEVERITIES
        .into_iter()
        .map(|severity| (severity, count(findings, severity)))
        .filter(|(_, count)| *count > 0)
        .map(|(severity, count)| format!("{count} {}", severity.name()))
        .collect();
    match counts.as_slice() {
        [] => "Findings: none".to_owned(),
        counts => format!("Findings: {}", counts.join(", ")),
    }
}

fn section(ui: &mut Ui, title: &str) {
    ui.add_space(10.0);
    ui.label(RichText::new(title).size(15.0));
}

fn right(ui: &mut Ui, add: impl FnOnce(&mut Ui) -> Response) -> Response {
    let layout = egui::Layout::right_to_left(egui::Align::Center);
    ui.with_layout(layout, add).inner
}

/// A name that stands out while its part is lit up.
fn lit(name: &str, part: Part, look: &Look) -> RichText {
    let name = RichText::new(name);
    if look.lit() == Some(part) {
        name.strong().underline()
    } else {
        name
    }
}

/// A figure with its name; pointing at it lights its part up.
fn row(ui: &mut Ui, (what, value): (&str, String), part: Part, look: &mut Look) {
    let name = ui.label(lit(what, part, look));
    let all = name.union(ui.add(Label::new(value).wrap()));
    ui.end_row();
    if all.contains_pointer() {
        look.point_at(part);
    }
}
