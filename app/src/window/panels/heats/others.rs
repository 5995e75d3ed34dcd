//! What else could be done, priced, and what stands against the plan.

use egui::{Label, RichText, Ui};
use reinwright_core::finding::Severity;

use crate::window::paint::sign;
use crate::window::state::heating::{Heat, Known};
use crate::window::state::look::Look;
use crate::window::state::rows::capital;

/// Other choices of source and procedure.
pub(super) fn priced(ui: &mut Ui, known: &Known) {
    let (Some(priced), Some(compared)) = (&known.priced, &known.compared) else {
        ui.weak("Being reckoned.");
        return;
    };
    for own in priced {
        ui.add(Label::new(capital(&own.said)).wrap());
    }
    if let Some((first, rest)) = compared.split_first() {
        for other in rest {
            ui.add(Label::new(capital(&first.against(other))).wrap());
        }
    }
    if priced.is_empty() && compared.len() < 2 {
        ui.weak("There is none.");
    }
}

/// What was noticed of the plan, of some severities.
pub(super) fn findings(ui: &mut Ui, (heat, severities): (&Heat, &[Severity]), look: &mut Look) {
    let findings = heat.findings.iter();
    for finding in findings.filter(|own| severities.contains(&own.severity)) {
        let line = ui.horizontal_top(|ui| {
            sign::severity(ui, finding.severity);
            ui.vertical(|ui| {
                ui.add(Label::new(capital(&finding.message)).wrap());
                let hint = RichText::new(capital(&finding.hint)).weak();
                ui.add(Label::new(hint).wrap());
            });
        });
        if line.response.contains_pointer() {
            look.point_at(finding.part);
        }
        ui.add_space(3.0);
    }
}
