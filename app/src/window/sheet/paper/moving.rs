//! The sheet moved and zoomed, by pointer and by keys.

use egui::{Key, Rect, Response, Ui, Vec2};

use super::{Hand, Paper};
use crate::window::paint::view::View;

/// Zoom of one press of a key.
const KEY_ZOOM: f32 = 1.25;
/// Points that one press of an arrow key moves the drawing.
const KEY_MOVE: f32 = 40.0;

impl Paper {
    /// Drag to move, wheel or pinch to zoom about the pointer, double click to go back, and
    /// the same by keys when the sheet has the focus.
    pub(super) fn navigate(&mut self, ui: &Ui, response: &Response, fitted: View) {
        let view = self.own.unwrap_or(fitted);
        let mut next = view;
        if response.dragged() && self.hand == Hand::OnDrawing {
            next = next.moved(response.drag_delta());
        }
        // A handle under the pointer does not stop the wheel.
        let over = response.contains_pointer();
        if let Some(at) = ui.input(|i| i.pointer.hover_pos()).filter(|_| over) {
            let (wheel, pinch) = ui.input(|i| (i.smooth_scroll_delta().y, i.zoom_delta()));
            /// Points of wheel travel that zoom by a factor of e.
            const TRAVEL: f32 = 320.0;
            next = next.zoomed((wheel / TRAVEL).exp() * pinch, at);
        }
        if response.has_focus() {
            next = by_keys(ui, next, response.rect);
        }
        if next != view {
            self.own = Some(next);
        }
        let home = response.has_focus() && ui.input(|i| i.key_pressed(Key::Home));
        let twice = response.double_clicked() && self.hand == Hand::OnDrawing;
        if twice || home {
            self.own = None;
        }
        if response.clicked() || response.drag_started() {
            response.request_focus();
        }
    }
}

fn by_keys(ui: &Ui, view: View, area: Rect) -> View {
    let filter = egui::EventFilter {
        horizontal_arrows: true,
        vertical_arrows: true,
        ..Default::default()
    };
    ui.memory_mut(|m| {
        if let Some(id) = m.focused() {
            m.set_focus_lock_filter(id, filter);
        }
    });
    let pressed = |key| ui.input(|i| f32::from(u8::from(i.key_pressed(key))));
    let across = pressed(Key::ArrowLeft) - pressed(Key::ArrowRight);
    let along = pressed(Key::ArrowUp) - pressed(Key::ArrowDown);
    let zoom = pressed(Key::Plus) + pressed(Key::Equals) - pressed(Key::Minus);
    view.moved(Vec2::new(across, along) * KEY_MOVE)
        .zoomed(KEY_ZOOM.powf(zoom), area.center())
}
