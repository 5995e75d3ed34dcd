//! The line in the corner of the sheet that tells why it does not show the design as it stands.

use egui::{Align2, FontId, Rect, Ui, Vec2};

use crate::window::paint::theme::Palette;
use crate::window::state::reckon::Shown;

/// From the edge of the sheet to the words, in points.
const RIM: f32 = 8.0;

/// Words that are readable over whatever lies there.
pub(super) fn say_over(ui: &Ui, area: Rect, words: String) {
    let palette = Palette::of(ui.visuals());
    let at = area.left_top() + Vec2::splat(RIM);
    let painter = ui.painter_at(area);
    let font = FontId::proportional(13.0);
    let galley = painter.layout(words, font, palette.accent, area.width() - 2.0 * RIM);
    let behind = Align2::LEFT_TOP.anchor_size(at, galley.size());
    painter.rect_filled(behind.expand(3.0), 2.0, palette.sheet);
    painter.galley(at, galley, palette.accent);
}

/// Where a drawing goes that has such words over it.
pub(super) fn under_words(area: Rect, shown: Shown) -> Rect {
    /// Height of the line, in points.
    const LINE: f32 = 16.0;
    let top = match shown {
        Shown::Own => 0.0,
        Shown::Tried { .. } | Shown::Stress { .. } => LINE,
    };
    area.with_min_y(area.top() + top)
}
