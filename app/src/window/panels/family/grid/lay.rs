//! How the table is laid: widths, heights, what of it is in sight, and words in their places.

use egui::{Align, Layout, Rect, RichText, Ui, UiBuilder};

/// Height of a line, in points.
pub(super) const LINE: f32 = 25.0;
/// Widths of the columns that stay: what it is, its rule, its value in the base.
pub(super) const LABEL: f32 = 122.0;
pub(super) const RULE: f32 = 126.0;
pub(super) const BASE: f32 = 124.0;
pub(super) const STAYS: f32 = LABEL + RULE + BASE;
/// Width of a size's column.
pub(super) const SIZE: f32 = 124.0;

/// A place of its own inside the table.
pub(super) fn clipped(ui: &mut Ui, rect: Rect, salt: &str) -> Ui {
    let mut child = ui.new_child(UiBuilder::new().max_rect(rect).id_salt(salt));
    child.set_clip_rect(rect.intersect(ui.clip_rect()));
    child
}

pub(super) fn words(ui: &mut Ui, rect: Rect, text: RichText) -> egui::Response {
    let builder = UiBuilder::new()
        .max_rect(rect)
        .layout(Layout::left_to_right(Align::Center));
    ui.scope_builder(builder, |ui| ui.add(egui::Label::new(text).truncate()))
        .inner
}

/// The lines or columns that a stretch of the table shows, with one more at each end, so that
/// the Tab key finds what comes next.
#[allow(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "a table has far fewer lines than f32 counts exactly, and the floor is kept at 0"
)]
pub(super) fn seen(shown: egui::Rangef, each: f32, all: usize) -> std::ops::Range<usize> {
    let first = (shown.min / each).floor().max(0.0) as usize;
    let end = (shown.max / each).ceil().max(0.0) as usize;
    first.saturating_sub(1).min(all)..(end + 1).min(all)
}

pub(super) fn shifted(range: egui::Rangef, origin: f32) -> egui::Rangef {
    egui::Rangef::new(range.min - origin, range.max - origin)
}

#[allow(
    clippy::cast_precision_loss,
    reason = "a table has far fewer lines than f32 counts exactly"
)]
pub(super) fn count(n: usize) -> f32 {
    n as f32
}
