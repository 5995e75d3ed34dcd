//! One cell of the table: typed, or chosen from a list.

use egui::accesskit::Role;
use egui::{
    Align, ComboBox, Frame, Id, Layout, Margin, Pos2, Rect, RichText, Sense, Shape, Stroke,
    TextEdit, Ui, UiBuilder, WidgetInfo, vec2,
};

use crate::window::paint::theme::Palette;
use crate::window::panels::typing::come_to;

/// Width of the button that lets an override go.
const LET_GO: f32 = 18.0;

/// A cell while it is drawn.
pub(super) struct Cell<'a> {
    pub(super) id: Id,
    pub(super) rect: Rect,
    pub(super) name: &'a str,
    pub(super) hint: &'a str,
    pub(super) by_hand: bool,
    pub(super) refused: bool,
}

/// What came of a text field in a frame.
pub(super) enum Typed {
    Nothing,
    /// The hand came to it.
    Reached,
    /// Its text is another one.
    Changed,
    /// A screen reader set it whole.
    Given,
    /// The hand left it.
    Left,
}

impl Cell<'_> {
    fn room(&self) -> Rect {
        let mut rect = self.rect.shrink2(vec2(2.0, 2.0));
        if self.by_hand {
            rect.max.x -= LET_GO;
        }
        rect
    }
}

/// A text field; what is set by hand is set bold, in a frame, with a flag.
pub(super) fn typed(ui: &mut Ui, cell: &Cell<'_>, text: &mut String) -> Typed {
    let palette = Palette::of(ui.visuals());
    let room = cell.room();
    let builder = UiBuilder::new()
        .max_rect(room)
        .layout(Layout::left_to_right(Align::Center));
    let output = ui
        .scope_builder(builder, |ui| {
            TextEdit::singleline(text)
                .id(cell.id)
                .frame(Frame::new().inner_margin(Margin::symmetric(6, 3)))
                .desired_width(room.width() - 12.0)
                .show(ui)
        })
        .inner;
    let response = output.response.response.accessible_name(cell.name);
    let response = response.on_hover_text(cell.hint);
    if cell.by_hand {
        // The window's font has no bold face: the same text a hair to the right makes one.
        let at = output.galley_pos + vec2(0.6, 0.0);
        let painter = ui
            .painter()
            .with_clip_rect(output.text_clip_rect.intersect(ui.clip_rect()));
        painter.galley(at, output.galley.clone(), palette.ink);
    }
    frame(ui, cell, response.has_focus());
    if response.gained_focus() {
        come_to(ui, output.state, (cell.id, text));
        response.scroll_to_me(None);
        return Typed::Reached;
    }
    match (
        response.changed(),
        response.has_focus(),
        response.lost_focus(),
    ) {
        (true, false, _) => Typed::Given,
        (_, _, true) => Typed::Left,
        (true, true, false) => Typed::Changed,
        (false, _, false) => Typed::Nothing,
    }
}

/// A list of ways; gives back the one that was chosen.
pub(super) fn choice(
    ui: &mut Ui,
    cell: &Cell<'_>,
    now: &str,
    ways: &[&'static str],
) -> Option<String> {
    let mut chosen = None;
    let room = cell.room();
    let builder = UiBuilder::new()
        .max_rect(room)
        .layout(Layout::left_to_right(Align::Center));
    let text = match cell.by_hand {
        true => RichText::new(now).strong(),
        false => RichText::new(now),
    };
    ui.scope_builder(builder, |ui| {
        let list = ComboBox::from_id_salt(cell.id)
            .width(room.width())
            .truncate();
        let list = list.selected_text(text).show_ui(ui, |ui| {
            for way in ways {
                if ui.selectable_label(*way == now, *way).clicked() && *way != now {
                    chosen = Some((*way).to_owned());
                }
            }
        });
        let response = list.response.accessible_name(cell.name);
        response.on_hover_text(cell.hint);
    });
    frame(ui, cell, false);
    chosen
}

/// The cell's rim: heavy and flagged when it is set by hand, red when its text was refused.
fn frame(ui: &Ui, cell: &Cell<'_>, focused: bool) {
    let palette = Palette::of(ui.visuals());
    let rect = cell.rect.shrink(1.5);
    let (width, colour) = match (cell.refused, focused, cell.by_hand) {
        (true, _, _) => (2.0, palette.stop),
        (false, true, _) => (1.5, palette.accent),
        (false, false, true) => (1.5, palette.ink),
        (false, false, false) => (1.0, palette.edge.gamma_multiply(0.55)),
    };
    let stroke = Stroke::new(width, colour);
    ui.painter()
        .rect_stroke(rect, 2.0, stroke, egui::StrokeKind::Inside);
    if cell.by_hand {
        let corner = rect.left_top();
        let flag = vec![corner, corner + vec2(8.0, 0.0), corner + vec2(0.0, 8.0)];
        ui.painter()
            .add(Shape::convex_polygon(flag, palette.ink, Stroke::NONE));
    }
}

/// The cross that lets an override go.
pub(super) fn let_go(ui: &Ui, cell: &Cell<'_>) -> bool {
    let palette = Palette::of(ui.visuals());
    let mut rect = cell.rect.shrink(3.0);
    rect.min.x = rect.max.x - LET_GO + 2.0;
    let response = ui.interact(rect, cell.id.with("let go"), Sense::click());
    let name = format!("Let go of {}", cell.name);
    response.widget_info(|| WidgetInfo::labeled(Role::Button, true, &name));
    let colour = if response.hovered() || response.has_focus() {
        palette.accent
    } else {
        palette.faint
    };
    cross(ui, rect.center(), Stroke::new(1.6, colour));
    response
        .on_hover_text("Let it go: its rule holds again")
        .clicked()
}

fn cross(ui: &Ui, middle: Pos2, stroke: Stroke) {
    for (x, y) in [(4.0, 4.0), (4.0, -4.0)] {
        let arm = vec2(x, y);
        ui.painter()
            .line_segment([middle - arm, middle + arm], stroke);
    }
}
