//! How the pair or the tool is forged: by which procedure, in which order, and what stands against it.

use std::rc::Rc;

use egui::{Button, ComboBox, Grid, Label, RichText, Ui};
use reinwright_core::asked::Units;
use reinwright_core::making::{Plan, Procedure};

use super::{came_out, findings, right, section};
use crate::window::paint::theme::Palette;
use crate::window::panels::wish::Wish;
use crate::window::state::bar::Forged;
use crate::window::state::command::Command;
use crate::window::state::look::Look;
use crate::window::state::making::Planned;
use crate::window::state::reckon::Answers;
use crate::window::state::rows::capital;
use crate::window::state::tool::ToolAnswers;

/// Shows procedure, operations, findings and marks; gives back what was asked for.
pub(super) fn show(ui: &mut Ui, answers: &mut Answers, look: &mut Look) -> Option<Wish> {
    if let Some(trouble) = answers.known.balance.trouble() {
        ui.colored_label(Palette::of(ui.visuals()).stop, capital(&trouble));
        return None;
    }
    let planned = answers.planned(&look.making.asked);
    let asked = list(ui, &planned, (answers.units(), Forged::Pair), look);
    let form = &mut look.making.came_out;
    came_out::show(ui, form, answers.units()).or(asked)
}

/// Shows the same of a tool.
pub(super) fn show_tool(ui: &mut Ui, answers: &mut ToolAnswers, look: &mut Look) -> Option<Wish> {
    if let Some(trouble) = answers.known.balance.trouble() {
        ui.colored_label(Palette::of(ui.visuals()).stop, capital(&trouble));
        return None;
    }
    let planned = answers.planned(&look.making.asked);
    list(ui, &planned, (answers.units(), Forged::Tool), look)
}

/// Procedure, operations, findings and marks, and the way to the job sheet.
fn list(ui: &mut Ui, planned: &Rc<Planned>, of: (Units, Forged), look: &mut Look) -> Option<Wish> {
    procedure(ui, &planned.plan, look);
    others(ui, &planned.plan);
    operations(ui, planned, look);
    left_out(ui, look);
    against(ui, &planned.plan, look);
    marks(ui, &planned.plan, of);
    ui.add_space(10.0);
    let sheet = Command::JobSheet;
    sheet.button(ui).clicked().then_some(Wish::Do(sheet))
}

/// The choice of procedure.
fn procedure(ui: &mut Ui, plan: &Plan, look: &mut Look) {
    let chosen = plan.procedure;
    ui.horizontal(|ui| {
        let label = ui.label("Made by");
        let list = ComboBox::from_id_salt("procedure")
            .width(ui.available_width() - 8.0)
            .selected_text(capital(chosen.name()))
            .show_ui(ui, |ui| {
                for suits in &plan.suits {
                    let own = suits.procedure;
                    let words = match suits.why_not {
                        None => capital(own.name()),
                        Some(_) => format!("{} (does not suit)", capital(own.name())),
                    };
                    let line = ui.selectable_label(own == chosen, words);
                    let line = match &suits.why_not {
                        None => line,
                        Some(why) => line.on_hover_text(capital(why)),
                    };
                    if line.clicked() {
                        choose(look, own);
                    }
                }
            });
        list.response.labelled_by(label.id);
    });
}

fn choose(look: &mut Look, procedure: Procedure) {
    look.making.asked.procedure = Some(procedure);
    look.making.asked.changes = reinwright_core::making::Changes::default();
    look.making.go(0);
}

/// Why the other procedures do not suit, for who asks.
fn others(ui: &mut Ui, plan: &Plan) {
    egui::CollapsingHeader::new("Other ways")
        .id_salt("other ways")
        .show(ui, |ui| {
            for suits in plan
                .suits
                .iter()
                .filter(|own| own.procedure != plan.procedure)
            {
                let name = capital(suits.procedure.name());
                let words = match &suits.why_not {
                    None => format!("{name} suits as well"),
                    Some(why) => format!("Not {}: {why}", suits.procedure.name()),
                };
                ui.label(words);
            }
        });
}

/// The list of stages; pointing at an operation lights its steel.
fn operations(ui: &mut Ui, planned: &Rc<Planned>, look: &mut Look) {
    section(ui, "Step by step");
    ui.spacing_mut().item_spacing.y = 1.0;
    for at in 0..=planned.last() {
        let stage = planned.stage(at);
        let words = format!("{at:>2}  {}", capital(planned.name(at)));
        let line = Button::selectable(look.making.at == at, words)
            .min_size(egui::vec2(ui.available_width(), 0.0));
        let line = ui.add(line);
        if look.making.at == at && look.making.is_playing() {
            line.scroll_to_me(None);
        }
        let part = stage
            .and_then(|own| own.operation.as_ref())
            .map(|own| own.part);
        if let Some(part) = part.filter(|_| line.hovered() || line.has_focus()) {
            look.point_at(part);
        }
        if line.clicked() {
            look.making.go(at);
        }
    }
    if planned.plan.repeats > 1 {
        ui.add(
            Label::new(
                "Then the second half: the same, not mirrored, step by step beside the first.",
            )
            .wrap(),
        );
    }
}

/// What is left out or moved, to be put back.
fn left_out(ui: &mut Ui, look: &mut Look) {
    let mut back = None;
    for (at, step) in look.making.asked.changes.left_out.iter().enumerate() {
        ui.horizontal(|ui| {
            ui.weak(format!("Left out: {step}"));
            if ui.small_button("Put back").clicked() {
                back = Some(at);
            }
        });
    }
    if let Some(at) = back {
        look.making.asked.changes.left_out.remove(at);
    }
    let moved = &mut look.making.asked.changes.moved;
    if !moved.is_empty() {
        ui.horizontal(|ui| {
            ui.weak("In an order of your own");
            if ui.small_button("Usual order").clicked() {
                moved.clear();
            }
        });
    }
}

fn against(ui: &mut Ui, plan: &Plan, look: &mut Look) {
    if plan.findings.is_empty() {
        return;
    }
    section(ui, "What stands against it");
    for (at, finding) in plan.findings.iter().enumerate() {
        ui.push_id(("against", at), |ui| findings::one(ui, finding, look));
    }
}

fn marks(ui: &mut Ui, plan: &Plan, (units, of): (Units, Forged)) {
    let show = units.show();
    section(ui, "Marks, from both ends of the length");
    Grid::new("making marks")
        .num_columns(3)
        .spacing([10.0, 3.0])
        .show(ui, |ui| {
            for side in of.as_it_lies(of.ends()) {
                right(ui, |ui| ui.weak(format!("{side} {}", show.sign())));
            }
            ui.add(Label::new(RichText::new("What meets there, face, tool").weak()).wrap());
            ui.end_row();
            for mark in &plan.marks {
                for end in of.as_it_lies([mark.measured, mark.from_end]) {
                    right(ui, |ui| ui.strong(show.number(end.mm())));
                }
                let words = format!(
                    "{}: {}, {}",
                    capital(&mark.what),
                    mark.face.name(),
                    mark.tool.name()
                );
                ui.add(Label::new(RichText::new(words)).wrap());
                ui.end_row();
            }
        });
}
