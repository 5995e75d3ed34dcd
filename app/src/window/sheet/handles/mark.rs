//! What a handle looks like.

use egui::{
    Align2, Color32, CornerRadius, CursorIcon, FontId, Pos2, Rect, Shape, Stroke, StrokeKind, Ui,
    Vec2,
};

use crate::window::paint::theme::Palette;

/// Radius of a mark, and of one that is under the hand, points.
const SMALL: f32 = 3.8;
const LARGE: f32 = 5.5;

/// A mark on the steel.
pub(super) struct Mark {
    pub(super) at: Pos2,
    /// The way in which its value grows, on paper, y up.
    pub(super) way: kurbo::Vec2,
    /// Whether it is under the hand.
    pub(super) strong: bool,
}

impl Mark {
    pub(super) fn paint(&self, ui: &Ui, area: Rect) {
        let palette = Palette::of(ui.visuals());
        let painter = ui.painter_at(area);
        let rim = Stroke::new(1.6, palette.accent);
        if !self.strong {
            painter.circle(self.at, SMALL, palette.sheet, rim);
            return;
        }
        let way = on_screen(self.way);
        let ways = if way == Vec2::ZERO {
            vec![Vec2::X, Vec2::Y, -Vec2::X, -Vec2::Y]
        } else {
            vec![way, -way]
        };
        for way in ways {
            painter.add(arrow(self.at, way, palette.accent, palette.sheet));
        }
        let ring = Stroke::new(1.5, palette.sheet);
        painter.circle(self.at, LARGE, palette.accent, ring);
    }
}

/// A line from a mark that had to make room to its steel.
pub(super) fn lead(ui: &Ui, area: Rect, (mark, steel): (Pos2, Pos2)) {
    if mark.distance(steel) > SMALL {
        let palette = Palette::of(ui.visuals());
        let painter = ui.painter_at(area);
        painter.line_segment([mark, steel], Stroke::new(1.0, palette.accent));
        painter.circle_filled(steel, 1.6, palette.accent);
    }
}

/// A small arrowhead beside a mark, rimmed so that it shows on any steel.
fn arrow(at: Pos2, way: Vec2, colour: Color32, rim: Color32) -> Shape {
    const FROM: f32 = 8.5;
    const TO: f32 = 15.0;
    const HALF: f32 = 4.6;
    let across = way.rot90() * HALF;
    let base = at + way * FROM;
    let points = vec![base + across, at + way * TO, base - across];
    Shape::convex_polygon(points, colour, Stroke::new(1.0, rim))
}

fn on_screen(way: kurbo::Vec2) -> Vec2 {
    #[allow(
        clippy::cast_possible_truncation,
        reason = "a way of length 1 is far coarser than f32"
    )]
    Vec2::new(way.x as f32, -way.y as f32)
}

/// The pointer over a handle that goes this way.
pub(super) fn cursor(way: kurbo::Vec2) -> CursorIcon {
    if way == kurbo::Vec2::ZERO {
        return CursorIcon::Move;
    }
    let steep = (way.y / way.x.abs().max(1e-9)).abs();
    match steep {
        _ if steep > 2.4 => CursorIcon::ResizeVertical,
        _ if steep < 0.42 => CursorIcon::ResizeHorizontal,
        _ if (way.x > 0.0) == (way.y > 0.0) => CursorIcon::ResizeNeSw,
        _ => CursorIcon::ResizeNwSe,
    }
}

/// A name with a value beside a place.
pub(super) struct Tag<'a> {
    pub(super) beside: Pos2,
    pub(super) text: &'a str,
    pub(super) hint: &'a str,
}

impl Tag<'_> {
    pub(super) fn paint(&self, ui: &Ui, area: Rect) {
        const AWAY: Vec2 = Vec2::new(20.0, -32.0);
        const RIM: Vec2 = Vec2::new(7.0, 4.0);
        let palette = Palette::of(ui.visuals());
        let painter = ui.painter_at(area);
        let set = |text: &str, size, colour| {
            painter.layout_no_wrap(text.to_owned(), FontId::proportional(size), colour)
        };
        let text = set(self.text, 15.0, palette.ink);
        let hint = set(self.hint, 11.5, palette.faint);
        let size = Vec2::new(
            text.size().x.max(hint.size().x),
            text.size().y + hint.size().y,
        );
        let place = Align2::LEFT_BOTTOM.anchor_size(self.beside + AWAY, size + 2.0 * RIM);
        let place = inside(place, area, self.beside);
        painter.rect(
            place,
            CornerRadius::same(4),
            palette.panel,
            Stroke::new(1.0, palette.edge),
            StrokeKind::Inside,
        );
        let at = place.min + RIM;
        let below = at + Vec2::new(0.0, text.size().y);
        painter.galley(at, text, palette.ink);
        painter.galley(below, hint, palette.faint);
    }
}

/// The tag moved into the area; where that would put it under the pointer it goes to the other
/// side of it.
fn inside(tag: Rect, area: Rect, pointer: Pos2) -> Rect {
    let mut tag = tag;
    if tag.right() > area.right() {
        tag = tag.translate(Vec2::new(2.0 * (pointer.x - tag.center().x), 0.0));
    }
    if tag.top() < area.top() {
        tag = tag.translate(Vec2::new(0.0, 2.0 * (pointer.y - tag.center().y)));
    }
    let back = Vec2::new(
        (area.left() - tag.left()).max(0.0),
        (area.bottom() - tag.bottom()).min(0.0),
    );
    tag.translate(back)
}
