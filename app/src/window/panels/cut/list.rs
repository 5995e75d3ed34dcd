//! The bars with their pieces.

use egui::accesskit::Role;
use egui::{Label, ProgressBar, RichText, ScrollArea, Sense, Ui, Vec2, WidgetInfo};
use lyon::tessellation::FillTessellator;
use reinwright_core::shop::cut::{CutPlan, drawing, sums};

use super::CutList;
use crate::window::paint::ink::Ink;
use crate::window::paint::theme::Palette;
use crate::window::paint::view::View;
use crate::window::state::rows::capital;

/// Points of the screen to a millimetre of the list at the most: its text is then as large as the
/// window's.
const LARGEST: f32 = 4.6;
/// Between the edge of the sheet and the list, in points.
const RIM: f32 = 14.0;

impl CutList {
    /// The list as far as it is known.
    pub(super) fn list(&self, ui: &mut Ui, fills: &mut FillTessellator) {
        self.progress(ui);
        let against = self.found.against.as_ref().map(|why| capital(why));
        Self::say_trouble(ui, against.as_deref());
        let Some(plan) = &self.found.plan else {
            return;
        };
        if plan.stocks.is_empty() {
            ui.add(Label::new("Nothing is to be cut: say how many pairs").wrap());
            return;
        }
        if self.before.is_some() {
            ui.label("Taken off the rack; the ends that are worth keeping lie on it.");
        }
        let page = ScrollArea::vertical().auto_shrink([false, false]);
        page.show(ui, |ui| self.bars(ui, plan, fills));
    }

    fn progress(&self, ui: &mut Ui) {
        if let Some((done, total)) = self.cutting.as_ref().and_then(|own| own.progress()) {
            ui.horizontal(|ui| {
                let words = format!("{done} of {total} stocks");
                ui.add(
                    ProgressBar::new(part(done, total))
                        .desired_width(240.0)
                        .text(words),
                );
                if ui.button("Cancel").clicked()
                    && let Some(cutting) = &self.cutting
                {
                    cutting.stop();
                }
            });
        } else if self.found.stopped {
            let words = "Stopped: what is shown is of before. Change something to begin anew.";
            ui.label(RichText::new(words));
        }
    }

    fn bars(&self, ui: &mut Ui, plan: &CutPlan, fills: &mut FillTessellator) {
        let drawing = drawing(plan, self.units);
        let bounds = drawing.bounds();
        let room = ui.available_width() - 2.0 * RIM;
        let scale = (room / points(bounds.width())).min(LARGEST);
        let size = Vec2::new(
            ui.available_width(),
            points(bounds.height()) * scale + 2.0 * RIM,
        );
        let (area, response) = ui.allocate_exact_size(size, Sense::hover());
        let lines: Vec<String> = plan
            .stocks
            .iter()
            .flat_map(|stock| sums(stock, self.units))
            .collect();
        let told = format!("The bars with their pieces: {}", lines.join("; "));
        response.widget_info(|| WidgetInfo::labeled(Role::Image, true, &told));
        let palette = Palette::of(ui.visuals());
        let painter = ui.painter_at(area);
        painter.rect_filled(area, 4.0, palette.sheet);
        let corner = area.min + Vec2::splat(RIM);
        let view = View {
            origin: corner + Vec2::new(-points(bounds.x0), points(bounds.y1)) * scale,
            scale,
        };
        Ink::new(painter, view, palette, None, fills).draw(&drawing.items);
    }
}

#[allow(
    clippy::cast_possible_truncation,
    reason = "a sheet is far shorter than f32 holds"
)]
fn points(mm: f64) -> f32 {
    mm as f32
}

#[allow(
    clippy::cast_precision_loss,
    reason = "a bar on the screen shows far less than f32 holds"
)]
fn part(done: usize, total: usize) -> f32 {
    done as f32 / total.max(1) as f32
}
