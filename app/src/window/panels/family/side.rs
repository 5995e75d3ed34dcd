//! What is to be said of the chosen size.

use egui::{Label, RichText, ScrollArea, Ui};
use reinwright_core::asked::full_name;
use reinwright_core::shop::family::{Difference, Why};

use super::seen::Seen;
use super::{FamilyBench, Lent};
use crate::window::paint::focus::follow;

/// A page beside the picture.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum SidePage {
    /// What was noticed of the chosen size.
    Findings,
    /// What it has otherwise than the base.
    Differs,
}

impl<D: Seen> FamilyBench<D> {
    pub(super) fn side(&mut self, ui: &mut Ui, lent: &mut Lent<'_>) {
        ui.horizontal(|ui| {
            for (page, title) in [
                (SidePage::Findings, "Findings"),
                (SidePage::Differs, "Differs from the base"),
            ] {
                ui.selectable_value(&mut self.page, page, title);
            }
        });
        ui.separator();
        self.size_name(ui);
        ScrollArea::vertical()
            .id_salt("family side")
            .auto_shrink([false, false])
            .show(ui, |ui| {
                match self.page {
                    SidePage::Findings => {
                        D::findings(&self.one, ui, &mut self.look);
                        self.alone(ui, lent);
                    }
                    SidePage::Differs => self.differs(ui),
                }
                follow(ui);
            });
    }

    /// The way to what only one design has: a value that mended one size would break the rule of all.
    fn alone(&self, ui: &mut Ui, lent: &mut Lent<'_>) {
        ui.add_space(8.0);
        ui.add(Label::new(RichText::new(D::ALONE).weak()).wrap());
        let label = format!("Take out {}", self.label());
        if ui.button(label).on_hover_text(D::TAKE_OUT).clicked() {
            self.take_out(lent);
        }
    }

    fn size_name(&mut self, ui: &mut Ui) {
        let label = self.label().to_owned();
        let Some(size) = self.session.now.sizes.get_mut(self.chosen) else {
            return;
        };
        let field = egui::TextEdit::singleline(&mut size.name)
            .desired_width(f32::INFINITY)
            .char_limit(200)
            .hint_text(label);
        let response = ui.add(field).accessible_name("Name of the size");
        let response = response.on_hover_text("What this size is called; empty: by its own size");
        self.typing |= response.has_focus();
    }

    fn differs(&self, ui: &mut Ui) {
        let differences = self.session.now.differs_from_base(self.chosen);
        if differences.is_empty() {
            ui.label("This size is the base itself.");
            return;
        }
        for difference in &differences {
            one::<D>(ui, difference);
        }
    }
}

fn one<D: Seen>(ui: &mut Ui, difference: &Difference) {
    let Difference {
        path,
        part,
        label,
        base,
        here,
        why,
    } = difference;
    let text = |value: &Option<String>| value.clone().unwrap_or_else(|| "none".to_owned());
    let name = full_name(*part, path, label);
    ui.label(RichText::new(name).strong());
    let why = match why {
        Why::OwnSize => "its own",
        Why::Rule(rule) => D::rule_name(*rule),
        Why::ByHand => "set by hand",
    };
    ui.label(format!("{}, in the base {}: {why}", text(here), text(base)));
    ui.add_space(4.0);
}
