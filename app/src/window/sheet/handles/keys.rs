//! Stepping a handle's value by keys, or as a screen reader asks.

use egui::accesskit::Action;
use egui::{EventFilter, Key, Modifiers, Response, Ui};
use kurbo::Vec2;
use reinwright_core::draw::handle::{Answer, Handle, OnPaper, Step, nudged, stepped};
use reinwright_core::tongs::document::Document;

use crate::window::state::command::times_pressed;

/// Steps the value by the arrow keys that were pressed, the way they point.
pub(super) fn step(
    ui: &Ui,
    response: &Response,
    (handle, on): (&Handle, &OnPaper),
    document: &mut Document,
) {
    keep_arrows(ui, response);
    if handle.answer == Answer::Free {
        go(ui, (handle, on), document);
        return;
    }
    for (steps, step) in along(ui, response, handle.way(on)) {
        if steps != 0.0 {
            *document = stepped(document, handle, steps, step).document;
        }
    }
}

/// The arrow keys are the handle's while it has the focus.
pub(super) fn keep_arrows(ui: &Ui, response: &Response) {
    let filter = EventFilter {
        horizontal_arrows: true,
        vertical_arrows: true,
        ..Default::default()
    };
    if response.has_focus() {
        ui.memory_mut(|m| m.set_focus_lock_filter(response.id, filter));
    }
}

/// Steps that are asked for along a way, fine ones and usual ones.
pub(super) fn along(ui: &Ui, response: &Response, way: Vec2) -> [(f64, Step); 2] {
    let fine = pressed(ui, Modifiers::SHIFT, way);
    let usual = pressed(ui, Modifiers::NONE, way) + asked(ui, response);
    [(fine, Step::Fine), (usual, Step::Usual)]
}

/// Moves a handle that goes every way to where the arrow keys point.
fn go(ui: &Ui, (handle, on): (&Handle, &OnPaper), document: &mut Document) {
    for (modifiers, step) in [
        (Modifiers::SHIFT, Step::Fine),
        (Modifiers::NONE, Step::Usual),
    ] {
        let steps = arrows(ui, modifiers);
        let moved = (steps != Vec2::ZERO).then(|| nudged(document, handle, (steps, on), step));
        if let Some(moved) = moved.flatten() {
            *document = moved.document;
        }
    }
}

/// Steps that the arrow keys ask for: along the handle's way by where they point, across it up
/// and right are more.
fn pressed(ui: &Ui, modifiers: Modifiers, way: Vec2) -> f64 {
    let Vec2 { x: right, y: up } = arrows(ui, modifiers);
    if way.x.abs() >= way.y.abs() {
        right * way.x.signum() + up
    } else {
        up * way.y.signum() + right
    }
}

/// How often the arrow keys were pressed, to the right and up.
fn arrows(ui: &Ui, modifiers: Modifiers) -> Vec2 {
    let times = |key| times_pressed(ui, modifiers, key);
    Vec2::new(
        times(Key::ArrowRight) - times(Key::ArrowLeft),
        times(Key::ArrowUp) - times(Key::ArrowDown),
    )
}

/// Steps that a screen reader asks for.
fn asked(ui: &Ui, response: &Response) -> f64 {
    let times = |action| {
        let times = ui.input(|i| i.num_accesskit_action_requests(response.id, action));
        f64::from(u32::try_from(times).unwrap_or(u32::MAX))
    };
    times(Action::Increment) - times(Action::Decrement)
}
