//! Window and panels stand as they did when the window was closed.

use egui::{Pos2, Rect, Ui, containers::panel::PanelState, vec2};

use super::workbench::Workbench;
use crate::disk::room::Room;

/// The panels whose edges can be dragged.
const PANELS: [&str; 6] = [
    "parts",
    "answers",
    "bar",
    "operation",
    "family table",
    "family side",
];

impl Workbench {
    /// How large the window was when it was closed last.
    pub(super) fn room(&self) -> &Room {
        &self.remembered.memory.room
    }

    /// Sets the panels up as they were.
    pub(super) fn set_up_panels(&self, ui: &Ui) {
        for (name, [width, height]) in &self.room().panels {
            let outer_rect = Rect::from_min_size(Pos2::ZERO, vec2(*width, *height));
            let id = ui.scope_id().with(name.as_str());
            let state = PanelState { outer_rect };
            ui.data_mut(|data| data.insert_persisted(id, state));
        }
    }

    /// Notes how large everything stands; what is not shown stays as it was.
    pub(super) fn note_room(&mut self, ui: &Ui) {
        let mut room = self.room().clone();
        let (inner, filled) = ui.input(|input| {
            let window = input.viewport();
            (window.inner_rect, window.maximized.unwrap_or(false))
        });
        room.filled = filled;
        if let Some(inner) = inner.filter(|_| !filled) {
            room.window = Some([inner.width(), inner.height()]);
        }
        for name in PANELS {
            let id = ui.scope_id().with(name);
            if let Some(state) = PanelState::load(ui, id) {
                let sides = state.outer_rect.size().into();
                room.panels.retain(|(known, _)| known != name);
                room.panels.push((name.to_owned(), sides));
            }
        }
        self.remembered.memory.room = room;
    }

    /// Keeps how large everything stands, for the next day.
    pub fn keep_room(&self) {
        self.remembered.memory.keep_room();
    }
}
