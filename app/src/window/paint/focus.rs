//! Where the keyboard is: one ring about whatever has the focus, told apart from what is only under
//! the pointer, and lists that follow it.

use egui::emath::GuiRounding;
use egui::{Context, Id, Stroke, StrokeKind, Ui};

use super::theme::Palette;

/// How thick the ring is, in points: WCAG 2.2 asks for 2 (2.4.13 Focus Appearance).
pub(crate) const THICK: f32 = 2.0;
/// How far it stands off what it is about, in points.
const OFF: f32 = 1.0;

/// Where it is noted what had the focus when the last frame was done.
fn noted() -> Id {
    Id::unique("what had the focus last")
}

/// Draws the ring, once everything else is drawn.
pub(crate) fn ring(ctx: &Context) {
    let focused = ctx.memory(egui::Memory::focused);
    ctx.data_mut(|data| data.insert_temp(noted(), focused));
    let Some(response) = focused.and_then(|id| ctx.read_response(id)) else {
        return;
    };
    // What is scrolled out of sight has none.
    let seen = response.interact_rect;
    if seen.is_positive() {
        let colour = Palette::of(&ctx.global_style().visuals).focus;
        let painter = ctx.layer_painter(response.layer_id);
        let within = ctx.content_rect().shrink(THICK + OFF);
        let place = seen.expand(OFF).intersect(within);
        let place = place.round_to_pixels(ctx.pixels_per_point());
        let stroke = Stroke::new(THICK, colour);
        painter.rect_stroke(place, 4.0, stroke, StrokeKind::Outside);
    }
}

/// Brings what has come to have the focus into sight. It is said at the end of what is scrolled.
pub(crate) fn follow(ui: &Ui) {
    let before: Option<Id> = ui.data(|data| data.get_temp(noted())).flatten();
    let focused = ui.memory(egui::Memory::focused);
    let Some(id) = focused.filter(|_| focused != before) else {
        return;
    };
    let Some(response) = ui.ctx().read_response(id) else {
        return;
    };
    let is_here = response.layer_id == ui.layer_id() && ui.min_rect().contains_rect(response.rect);
    if is_here && !ui.clip_rect().contains_rect(response.rect) {
        ui.scroll_to_rect(response.rect.expand(THICK + OFF), None);
    }
}

/// Shows what is scrolled, and follows the keyboard in it.
pub(crate) fn followed<T>(ui: &mut Ui, content: impl FnOnce(&mut Ui) -> T) -> T {
    let shown = content(ui);
    follow(ui);
    shown
}
