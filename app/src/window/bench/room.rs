//! Window and panels stand as they did when the window was closed.

use egui::{Context, Pos2, Rect, Ui, Vec2, containers::panel::PanelState, vec2};

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

/// The room that all pages and dialogs do with, in points: no word of them is cut in it.
const NEEDED: Vec2 = vec2(1024.0, 700.0);
/// They are drawn no smaller than by this factor.
const SMALLEST: f32 = 0.5;

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
            let size = inner.size() * ui.ctx().zoom_factor();
            room.window = Some(size.into());
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

    /// Makes letters and all else smaller while the window has less room than the pages need, so that
    /// nothing is cut, and as large as before when it has it again.
    pub(super) fn fit_letters(&mut self, ctx: &Context) {
        let zoom = ctx.zoom_factor();
        let room = ctx.content_rect().size() * zoom;
        let is_ours = self.shown.fitted == Some(zoom);
        let fitting = fitting(room, zoom, is_ours.then_some(1.0));
        if (fitting - zoom).abs() > 1e-3 {
            ctx.set_zoom_factor(fitting);
            self.shown.fitted = Some(fitting);
        }
    }

    /// Keeps how large everything stands, for the next day.
    pub fn keep_room(&self) {
        self.remembered.memory.keep_room();
    }
}

/// By which factor everything is drawn in so much room, told in points at a factor of 1: the one
/// that is wanted, or that of `now`, unless the pages would lack room.
fn fitting(room: Vec2, now: f32, wanted: Option<f32>) -> f32 {
    let most = (room / NEEDED).min_elem().max(SMALLEST);
    wanted.unwrap_or(now).min(most)
}

#[cfg(test)]
mod tests {
    use egui::{Vec2, vec2};

    use super::fitting;

    #[track_caller]
    fn check(room: Vec2, (now, wanted): (f32, Option<f32>), expected: f32) {
        let found = fitting(room, now, wanted);
        assert!((found - expected).abs() < 1e-3, "{found}, not {expected}");
    }

    /// A screen of 1280 x 800 at 200 % has 640 x 400 points; one of 1920 x 1080 has 960 x 540.
    #[test]
    fn letters_are_smaller_only_where_the_pages_lack_room() {
        check(vec2(1024.0, 700.0), (1.0, None), 1.0);
        check(vec2(1600.0, 1000.0), (1.0, None), 1.0);
        check(vec2(640.0, 400.0), (1.0, None), 400.0 / 700.0);
        check(vec2(960.0, 540.0), (1.0, None), 540.0 / 700.0);
        check(vec2(300.0, 200.0), (1.0, None), 0.5);
        // Who wants larger letters has them as far as there is room.
        check(vec2(1600.0, 1000.0), (1.25, None), 1.25);
        check(vec2(1280.0, 800.0), (1.25, None), 800.0 / 700.0);
        // A window that is made larger again.
        check(vec2(1280.0, 800.0), (0.6, Some(1.0)), 1.0);
    }
}
