//! The sizes over their columns.

use egui::accesskit::Role;
use egui::{
    Align, Id, Layout, Rect, RichText, Sense, Stroke, Ui, UiBuilder, WidgetInfo, pos2, vec2,
};
use reinwright_core::shop::family::OfSize;

use super::Grid;
use super::lay::{LINE, SIZE, count, seen, shifted};
use crate::window::paint::sign;
use crate::window::paint::theme::Palette;
use crate::window::panels::family::seen::Seen;
use crate::window::panels::family::table::TableDeed;

impl<D: Seen> Grid<'_, D> {
    /// The sizes over their columns, each with the sign of the worst finding.
    pub(super) fn heads(&mut self, ui: &mut Ui, left: f32) {
        let area = ui.max_rect();
        for at in seen(
            shifted(area.x_range(), left),
            SIZE,
            self.set.table.labels.len(),
        ) {
            let corner = pos2(left + count(at) * SIZE, area.top());
            let rect = Rect::from_min_size(corner, vec2(SIZE, LINE));
            if self.head(ui, rect, at) {
                self.deeds.push(TableDeed::Choose(at));
            }
        }
    }

    fn head(&self, ui: &mut Ui, rect: Rect, at: usize) -> bool {
        let palette = Palette::of(ui.visuals());
        let label = &self.set.table.labels[at];
        let worst = self.set.answers.get(at).and_then(|of| of.worst());
        self.wash(ui, rect, at);
        let inside = rect.shrink2(vec2(6.0, 2.0));
        let builder = UiBuilder::new()
            .max_rect(inside)
            .layout(Layout::left_to_right(Align::Center));
        ui.scope_builder(builder, |ui| {
            ui.spacing_mut().item_spacing.x = 4.0;
            if let Some(worst) = worst {
                sign::severity(ui, worst);
            }
            let short = self.set.short.get(at).unwrap_or(label);
            ui.add(egui::Label::new(RichText::new(short).strong()).truncate());
        });
        let response = ui.interact(rect, Id::unique(("size", at)), Sense::click());
        let spoken = match worst {
            Some(worst) => format!("Size {label}: {}", worst.name()),
            None => format!("Size {label}: nothing noticed"),
        };
        response.widget_info(|| WidgetInfo::labeled(Role::Button, true, &spoken));
        if response.has_focus() || response.hovered() {
            let stroke = Stroke::new(1.5, palette.accent);
            ui.painter()
                .rect_stroke(rect.shrink(1.0), 3.0, stroke, egui::StrokeKind::Inside);
        }
        response.on_hover_text(spoken).clicked()
    }
}
