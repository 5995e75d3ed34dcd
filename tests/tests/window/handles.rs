//! Handles on the sheet, by their names and with the pointer, without a renderer.

use egui::accesskit::{Action, ActionRequest, TreeId};
use egui::{Event, Key, Modifiers, Pos2, Vec2, vec2};
use egui_kittest::kittest::{NodeT, Queryable};
use reinwright_core::asked::Units;
use reinwright_core::tongs::document::{Document, Turn};
use reinwright_tests::pairs::length;
use reinwright_tests::window::{
    OnBench, SMALL, Window, hold, point, press, redo, release, show_design, undo,
};
use reinwright_tests::{designs, pairs};

const ROOMY: (f32, f32) = (1600.0, 1000.0);

/// A flat pair in inches whose jaw is 1 3/4 in long.
fn flat() -> Document {
    let mut design = pairs::flat();
    design.jaw.length = length("1 3/4 in");
    design
}

fn name(value: &str) -> String {
    format!("{value}, on the drawing")
}

#[track_caller]
fn place(window: &Window, value: &str) -> Pos2 {
    window.get_by_label(&name(value)).rect().center()
}

#[track_caller]
fn value(window: &Window, of: &str) -> String {
    let shown = window.get_by_label(&name(of)).value();
    shown.expect("a handle has a value")
}

/// Takes hold of a handle and moves it, without letting go; gives back where the pointer is.
#[track_caller]
fn pull(window: &mut Window, handle: &str, by: Vec2) -> Pos2 {
    let from = place(window, handle);
    point(window, from);
    hold(window, from);
    for part in [0.3, 0.6, 1.0] {
        point(window, from + by * part);
    }
    from + by
}

#[test]
fn a_drag_sets_the_value_and_is_one_step_of_undo() {
    let design = flat();
    let mut window = show_design(design.clone(), ROOMY);
    let at = pull(&mut window, "Jaw length", vec2(60.0, 0.0));
    let during = window.state().document().jaw.length.mm();
    assert!(
        during > design.jaw.length.mm() + 5.0,
        "{during} follows while it moves"
    );
    release(&mut window, at);
    let after = window.state().document().clone();
    assert_eq!(after.jaw.length.mm(), during);
    let sixteenths = after.jaw.length.mm() / 25.4 * 16.0;
    assert!(
        (sixteenths - sixteenths.round()).abs() < 1e-9,
        "{sixteenths}"
    );
    assert_eq!(value(&window, "Jaw length"), after.jaw.length.to_string());
    undo(&mut window);
    assert_eq!(window.state().document(), &design);
    redo(&mut window);
    assert_eq!(window.state().document(), &after);
}

/// The mark goes where the pointer goes, and nothing else of the sheet moves.
#[test]
fn the_handle_stays_under_the_pointer() {
    for (design, size) in [(flat(), ROOMY), (flat(), SMALL), (turned_right(), ROOMY)] {
        for handle in [
            "Jaw length",
            "Boss thickness",
            "Rein hand gap",
            "Rein length",
        ] {
            let mut window = show_design(design.clone(), size);
            let way = match handle {
                "Jaw length" => vec2(30.0, 0.0),
                "Rein length" => vec2(-30.0, 0.0),
                _ if design.hand == Turn::Right && handle == "Boss thickness" => vec2(0.0, -12.0),
                _ => vec2(0.0, 12.0),
            };
            let at = pull(&mut window, handle, way);
            let off = place(&window, handle) - at;
            // Half a step of 1/16 in at this scale, and a pixel.
            let along = (off.x * way.x + off.y * way.y).abs() / way.length();
            assert!(
                along < 3.5,
                "{handle} of {:?} in {size:?}: off by {off:?} from {at:?}, now {}",
                design.hand,
                value(&window, handle)
            );
            release(&mut window, at);
        }
    }
}

fn turned_right() -> Document {
    Document {
        hand: Turn::Right,
        ..flat()
    }
}

#[test]
fn escape_gives_a_drag_up() {
    let design = flat();
    let mut window = show_design(design.clone(), ROOMY);
    press(&mut window, Modifiers::NONE, Key::F2);
    let at = pull(&mut window, "Jaw length", vec2(60.0, 0.0));
    assert_ne!(window.state().document(), &design);
    press(&mut window, Modifiers::NONE, Key::Escape);
    assert_eq!(window.state().document(), &design);
    point(&mut window, at + vec2(20.0, 0.0));
    assert_eq!(
        window.state().document(),
        &design,
        "the hand has let go of it"
    );
    release(&mut window, at);
    assert_eq!(window.state().document(), &design);
    assert!(!window.state().is_changed());
}

#[test]
fn a_drag_that_is_given_up_keeps_what_can_be_redone() {
    let mut window = show_design(flat(), ROOMY);
    let at = pull(&mut window, "Jaw length", vec2(60.0, 0.0));
    release(&mut window, at);
    let longer = window.state().document().clone();
    undo(&mut window);
    pull(&mut window, "Rein hand gap", vec2(0.0, 20.0));
    press(&mut window, Modifiers::NONE, Key::Escape);
    let at = place(&window, "Rein hand gap");
    release(&mut window, at);
    redo(&mut window);
    assert_eq!(window.state().document(), &longer);
}

#[test]
fn shift_is_fine() {
    let mut window = show_design(flat(), ROOMY);
    let from = place(&window, "Jaw length");
    point(&mut window, from);
    hold(&mut window, from);
    window.key_down_modifiers(Modifiers::SHIFT, Key::ShiftLeft);
    window.run();
    let mut odd = false;
    for i in 1..12u8 {
        let at = from + vec2(f32::from(i) * 3.0, 0.0);
        window.event_modifiers(Event::PointerMoved(at), Modifiers::SHIFT);
        window.run();
        let parts = window.state().document().jaw.length.mm() / 25.4 * 64.0;
        assert!((parts - parts.round()).abs() < 1e-9, "{parts} is no 64th");
        odd |= (parts / 4.0).fract() != 0.0;
    }
    assert!(odd, "64ths are reached");
}

#[test]
fn arrow_keys_step_a_handle() {
    let mut window = show_design(flat(), ROOMY);
    window.get_by_label(&name("Jaw length")).focus();
    window.run();
    let shown = |window: &Window| window.state().document().jaw.length.to_string();
    press(&mut window, Modifiers::NONE, Key::ArrowRight);
    assert_eq!(shown(&window), "1 13/16 in");
    press(&mut window, Modifiers::SHIFT, Key::ArrowLeft);
    assert_eq!(shown(&window), "1 51/64 in");
    undo(&mut window);
    assert_eq!(shown(&window), "1 13/16 in", "each press is a step of undo");
}

/// The rein grows to the left: the left arrow makes it longer.
#[test]
fn arrow_keys_go_where_they_point() {
    let mut window = show_design(flat(), ROOMY);
    let before = window.state().document().rein.length.mm();
    window.get_by_label(&name("Rein length")).focus();
    window.run();
    press(&mut window, Modifiers::NONE, Key::ArrowLeft);
    assert!(window.state().document().rein.length.mm() > before);
}

#[test]
fn the_tab_key_reaches_the_handles_from_the_sheet() {
    let mut window = show_design(flat(), ROOMY);
    window.get_by_label_contains("Drawing of the pair").focus();
    window.run();
    press(&mut window, Modifiers::NONE, Key::Tab);
    assert!(window.get_by_label(&name("Jaw heel")).is_focused());
    press(&mut window, Modifiers::NONE, Key::Tab);
    assert!(window.get_by_label(&name("Jaw length")).is_focused());
}

#[test]
fn a_screen_reader_steps_a_handle() {
    let mut window = show_design(flat(), ROOMY);
    let node = window
        .get_by_label(&name("Jaw length"))
        .accesskit_node()
        .locate()
        .0;
    let request = |action| {
        Event::AccessKitActionRequest(ActionRequest {
            action,
            target_tree: TreeId::ROOT,
            target_node: node,
            data: None,
        })
    };
    let more = request(Action::Increment);
    let less = request(Action::Decrement);
    window.event(more);
    window.run();
    assert_eq!(value(&window, "Jaw length"), "1 13/16 in");
    window.event(less);
    window.run();
    assert_eq!(value(&window, "Jaw length"), "1 3/4 in");
}

#[test]
fn dragging_beside_the_handles_still_moves_the_sheet() {
    let design = flat();
    let mut window = show_design(design.clone(), ROOMY);
    let before = place(&window, "Rivet diameter");
    let sheet = window.get_by_label_contains("Drawing of the pair").rect();
    let from = sheet.left_bottom() + vec2(30.0, -30.0);
    point(&mut window, from);
    hold(&mut window, from);
    point(&mut window, from + vec2(40.0, -25.0));
    release(&mut window, from + vec2(40.0, -25.0));
    let moved = place(&window, "Rivet diameter") - before;
    assert!((moved - vec2(40.0, -25.0)).length() < 1.0, "{moved:?}");
    assert_eq!(window.state().document(), &design);
}

#[test]
fn values_are_read_in_the_smiths_units() {
    let mut design = flat();
    design.units = Units::Millimetre;
    design.boss.thickness = pairs::mm(9.0);
    let window = show_design(design, SMALL);
    assert_eq!(value(&window, "Boss thickness"), "9 mm");
}

/// Every handle of every sample pulled about, let go, and taken back.
#[test]
fn undo_takes_every_drag_back() {
    for (sample, design) in designs::samples() {
        let mut window = show_design(design.clone(), ROOMY);
        for handle in [
            "Jaw length",
            "Neck corner radius",
            "Shoulder depth",
            "Rein length",
        ] {
            if window.query_by_label(&name(handle)).is_none() {
                continue;
            }
            let at = pull(&mut window, handle, vec2(-37.0, 41.0));
            release(&mut window, at);
            undo(&mut window);
            assert_eq!(window.state().document(), &design, "{sample}: {handle}");
        }
    }
}
