//! Handles on the sheet, by their names and with the pointer, without a renderer.

use egui::accesskit::{Action, ActionRequest, TreeId};
use egui::{Event, Key, Modifiers, PointerButton, Pos2, Vec2, vec2};
use egui_kittest::Harness;
use egui_kittest::kittest::{NodeT, Queryable};
use reinwright::window::{Chooser, Surroundings, Workbench};
use reinwright_core::asked::Units;
use reinwright_core::tongs::document::{Document, Hand};
use reinwright_tests::{designs, pairs};

type Window = Harness<'static, Workbench>;

const ROOMY: (f32, f32) = (1600.0, 1000.0);
const SMALL: (f32, f32) = (1024.0, 700.0);

fn show(design: Document, (width, height): (f32, f32)) -> Window {
    let around = Surroundings {
        chooser: Chooser::OwnField,
        folder: None,
    };
    let mut window = Harness::builder()
        .with_size(vec2(width, height))
        .with_max_steps(40)
        .build_ui_state(
            |ui, bench: &mut Workbench| bench.show(ui),
            Workbench::with(design, around),
        );
    window.run();
    window
}

/// A flat pair in inches whose jaw is 1 3/4 in long.
fn flat() -> Document {
    let mut design = pairs::flat();
    design.jaw.length = "1 3/4 in".parse().expect("a length");
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

fn point(window: &mut Window, at: Pos2) {
    window.event(Event::PointerMoved(at));
    window.run();
}

fn button(window: &mut Window, pos: Pos2, pressed: bool) {
    window.event(Event::PointerButton {
        pos,
        button: PointerButton::Primary,
        pressed,
        modifiers: Modifiers::NONE,
    });
    window.run();
}

/// Takes hold of a handle and moves it, without letting go; gives back where the pointer is.
#[track_caller]
fn pull(window: &mut Window, handle: &str, by: Vec2) -> Pos2 {
    let from = place(window, handle);
    point(window, from);
    button(window, from, true);
    for part in [0.3, 0.6, 1.0] {
        point(window, from + by * part);
    }
    from + by
}

fn press(window: &mut Window, modifiers: Modifiers, key: Key) {
    window.key_press_modifiers(modifiers, key);
    window.run();
}

fn undo(window: &mut Window) {
    press(window, Modifiers::COMMAND, Key::Z);
}

#[test]
fn a_drag_sets_the_value_and_is_one_step_of_undo() {
    let design = flat();
    let mut window = show(design.clone(), ROOMY);
    let at = pull(&mut window, "Jaw length", vec2(60.0, 0.0));
    let during = window.state().document().jaw.length.mm();
    assert!(
        during > design.jaw.length.mm() + 5.0,
        "{during} follows while it moves"
    );
    button(&mut window, at, false);
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
    press(&mut window, Modifiers::COMMAND | Modifiers::SHIFT, Key::Z);
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
            let mut window = show(design.clone(), size);
            let way = match handle {
                "Jaw length" => vec2(30.0, 0.0),
                "Rein length" => vec2(-30.0, 0.0),
                _ if design.hand == Hand::Right && handle == "Boss thickness" => vec2(0.0, -12.0),
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
            button(&mut window, at, false);
        }
    }
}

fn turned_right() -> Document {
    Document {
        hand: Hand::Right,
        ..flat()
    }
}

#[test]
fn escape_gives_a_drag_up() {
    let design = flat();
    let mut window = show(design.clone(), ROOMY);
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
    button(&mut window, at, false);
    assert_eq!(window.state().document(), &design);
    assert!(!window.state().is_changed());
}

#[test]
fn a_drag_that_is_given_up_keeps_what_can_be_redone() {
    let mut window = show(flat(), ROOMY);
    let at = pull(&mut window, "Jaw length", vec2(60.0, 0.0));
    button(&mut window, at, false);
    let longer = window.state().document().clone();
    undo(&mut window);
    pull(&mut window, "Rein hand gap", vec2(0.0, 20.0));
    press(&mut window, Modifiers::NONE, Key::Escape);
    let at = place(&window, "Rein hand gap");
    button(&mut window, at, false);
    press(&mut window, Modifiers::COMMAND | Modifiers::SHIFT, Key::Z);
    assert_eq!(window.state().document(), &longer);
}

#[test]
fn shift_is_fine() {
    let mut window = show(flat(), ROOMY);
    let from = place(&window, "Jaw length");
    point(&mut window, from);
    button(&mut window, from, true);
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
    let mut window = show(flat(), ROOMY);
    window.get_by_label(&name("Jaw length")).focus();
    window.run();
    let length = |window: &Window| window.state().document().jaw.length.to_string();
    press(&mut window, Modifiers::NONE, Key::ArrowRight);
    assert_eq!(length(&window), "1 13/16 in");
    press(&mut window, Modifiers::SHIFT, Key::ArrowLeft);
    assert_eq!(length(&window), "1 51/64 in");
    undo(&mut window);
    assert_eq!(
        length(&window),
        "1 13/16 in",
        "each press is a step of undo"
    );
}

/// The rein grows to the left: the left arrow makes it longer.
#[test]
fn arrow_keys_go_where_they_point() {
    let mut window = show(flat(), ROOMY);
    let before = window.state().document().rein.length.mm();
    window.get_by_label(&name("Rein length")).focus();
    window.run();
    press(&mut window, Modifiers::NONE, Key::ArrowLeft);
    assert!(window.state().document().rein.length.mm() > before);
}

#[test]
fn the_tab_key_reaches_the_handles_from_the_sheet() {
    let mut window = show(flat(), ROOMY);
    window.get_by_label_contains("Drawing of the pair").focus();
    window.run();
    press(&mut window, Modifiers::NONE, Key::Tab);
    assert!(window.get_by_label(&name("Jaw heel")).is_focused());
    press(&mut window, Modifiers::NONE, Key::Tab);
    assert!(window.get_by_label(&name("Jaw length")).is_focused());
}

#[test]
fn a_screen_reader_steps_a_handle() {
    let mut window = show(flat(), ROOMY);
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
    let mut window = show(design.clone(), ROOMY);
    let before = place(&window, "Rivet diameter");
    let sheet = window.get_by_label_contains("Drawing of the pair").rect();
    let from = sheet.left_bottom() + vec2(30.0, -30.0);
    point(&mut window, from);
    button(&mut window, from, true);
    point(&mut window, from + vec2(40.0, -25.0));
    button(&mut window, from + vec2(40.0, -25.0), false);
    let moved = place(&window, "Rivet diameter") - before;
    assert!((moved - vec2(40.0, -25.0)).length() < 1.0, "{moved:?}");
    assert_eq!(window.state().document(), &design);
}

#[test]
fn values_are_read_in_the_smiths_units() {
    let mut design = flat();
    design.units = Units::Millimetre;
    design.boss.thickness = pairs::mm(9.0);
    let window = show(design, SMALL);
    assert_eq!(value(&window, "Boss thickness"), "9 mm");
}

/// Every handle of every sample pulled about, let go, and taken back.
#[test]
fn undo_takes_every_drag_back() {
    for path in designs::sample_paths() {
        let stem = path.file_stem().expect("a name").to_string_lossy();
        let design = designs::sample(&stem);
        let mut window = show(design.clone(), ROOMY);
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
            button(&mut window, at, false);
            undo(&mut window);
            assert_eq!(window.state().document(), &design, "{stem}: {handle}");
        }
    }
}
