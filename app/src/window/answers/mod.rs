//! The answers, a page for each question.

mod bar;
mod findings;

use egui::{ScrollArea, Ui};
use reinwright_core::document::Document;
use reinwright_core::finding::Severity;

use super::look::{Look, Page};
use super::reckon::Answers;
use super::sign;

const SEVERITIES: [Severity; 3] = [Severity::Stop, Severity::Mend, Severity::Note];

/// Shows the tabs and the page that is chosen.
pub(super) fn show(ui: &mut Ui, document: &Document, answers: &Answers, look: &mut Look) {
    ui.horizontal(|ui| {
        for page in Page::ALL {
            tab(ui, answers, look, page);
        }
    });
    ui.separator();
    ScrollArea::vertical()
        .id_salt("answers")
        .auto_shrink([false, false])
        .show(ui, |ui| match look.page {
            Page::Bar => bar::show(ui, document, answers, look),
            Page::Findings => findings::show(ui, answers, look),
        });
}

fn tab(ui: &mut Ui, answers: &Answers, look: &mut Look, page: Page) {
    let title = match page {
        Page::Bar => "Bar",
        Page::Findings => "Findings",
    };
    let response = ui.selectable_label(look.page == page, title);
    match page {
        Page::Bar => {}
        Page::Findings => {
            badges(ui, answers);
            let response = response.clone().accessible_name(counted(answers));
            response.on_hover_text(counted(answers));
        }
    }
    if response.clicked() {
        look.page = page;
    }
}

/// A sign and a number for each severity that there is.
fn badges(ui: &mut Ui, answers: &Answers) {
    ui.spacing_mut().item_spacing.x = 3.0;
    for severity in SEVERITIES {
        let count = answers.count(severity);
        if count > 0 {
            sign::severity(ui, severity);
            ui.label(count.to_string());
        }
    }
}

/// `Findings: 1 Stop, 2 Mend`.
fn counted(answers: &Answers) -> String {
    let counts: Vec<String> = SEVERITIES
        .into_iter()
        .map(|severity| (severity, answers.count(severity)))
        .filter(|(_, count)| *count > 0)
        .map(|(severity, count)| format!("{count} {}", severity.name()))
        .collect();
    match counts.as_slice() {
        [] => "Findings: none".to_owned(),
        counts => format!("Findings: {}", counts.join(", ")),
    }
}
