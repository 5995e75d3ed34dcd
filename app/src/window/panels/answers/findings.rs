//! What was noticed, the worst first.

use egui::accesskit::Role;
use egui::{Frame, RichText, Sense, Ui, WidgetInfo};
use reinwright_core::finding::Finding;
use reinwright_core::proof::strength::JAW_CELSIUS;

use crate::window::paint::sign;
use crate::window::paint::theme::Palette;
use crate::window::state::look::Look;
use crate::window::state::reckon::Answers;
use crate::window::state::rows::capital;

/// Lists the findings; choosing one shows its place.
pub(super) fn show(ui: &mut Ui, answers: &Answers, look: &mut Look) {
    if look.load.jaw_celsius > JAW_CELSIUS.0 {
        let hot = look.load.jaw_celsius;
        ui.weak(format!(
            "With neck and jaws at {hot:.0} °C, as set in Strength."
        ));
    }
    if answers.known.findings.is_empty() {
        ui.label(
            "Nothing was noticed: the pair can be made as drawn, as far as this program checks.",
        );
        return;
    }
    for (index, finding) in answers.known.findings.iter().enumerate() {
        ui.push_id(index, |ui| one(ui, finding, look));
    }
}

fn one(ui: &mut Ui, finding: &Finding, look: &mut Look) {
    let palette = Palette::of(ui.visuals());
    let lit = look.lit() == Some(finding.part);
    let fill = if lit { palette.wash } else { palette.sheet };
    let card = Frame::new().fill(fill).corner_radius(4).inner_margin(7);
    let area = card.show(ui, |ui| words(ui, finding)).response.rect;
    let response = ui.interact(area, ui.scope_id().with("finding"), Sense::click());
    response.widget_info(|| WidgetInfo::labeled(Role::Button, true, finding.to_string()));
    if response.hovered() {
        look.point_at(finding.part);
    }
    if response.has_focus() || response.hovered() {
        let stroke = egui::Stroke::new(1.5, palette.accent);
        ui.painter()
            .rect_stroke(area, 4.0, stroke, egui::StrokeKind::Inside);
    }
    if response.clicked() {
        look.choose(finding.part);
    }
}

fn words(ui: &mut Ui, finding: &Finding) {
    ui.set_min_width(ui.available_width());
    ui.spacing_mut().item_spacing.y = 2.0;
    ui.horizontal(|ui| {
        sign::severity(ui, finding.severity);
        let colour = sign::colour(ui, finding.severity);
        ui.label(
            RichText::new(finding.severity.name())
                .strong()
                .color(colour),
        );
        ui.label(RichText::new(capital(finding.part.name())).strong());
    });
    ui.label(capital(&finding.message));
    ui.label(capital(&finding.hint));
    ui.weak(format!("Source: {}", finding.source));
}
