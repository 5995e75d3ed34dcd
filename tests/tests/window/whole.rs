//! The window as a whole: what it starts on, what is in reach, when it rests.

use egui::accesskit::Role;
use egui::{Key, Modifiers, vec2};
use egui_kittest::kittest::{NodeT, Queryable};
use reinwright::window::Workbench;
use reinwright_tests::designs::sample;
use reinwright_tests::files::{bytes, folder, put};
use reinwright_tests::pairs;
use reinwright_tests::window::{
    OnBench, SMALL, Window, around, click, click_with, press, remembering, show, slide,
};

use super::flat;

#[test]
fn starts_on_a_ready_design() {
    let window = show(Workbench::new(around()), SMALL);
    assert_eq!(window.state().document(), &sample("textbook-light-chain"));
    assert!(!window.state().is_changed());
    window.get_by_label("Bar to cut for the pair");
}

/// In a window far too small the sheet ends where the answers begin, so that the whole drawing is
/// in sight.
#[test]
fn the_sheet_stays_clear_of_the_answers() {
    let mut window = show(Workbench::new(around()), (900.0, 600.0));
    // A sketch asks for a wider list of parts.
    click(&mut window, "Draw on it");
    let sheet = window.get_by_label_contains("Drawing of the pair").rect();
    let answers = window.get_by_role_and_label(Role::Button, "Bar").rect();
    assert!(sheet.right() <= answers.left(), "{sheet:?} {answers:?}");
    let row = window.get_by_label("True size").rect();
    assert!(row.right() <= answers.left(), "{row:?} {answers:?}");
}

#[test]
fn everything_is_in_reach_in_the_smallest_window() {
    let window = show(Workbench::new(around()), SMALL);
    let whole = egui::Rect::from_min_size(egui::Pos2::ZERO, vec2(SMALL.0, SMALL.1));
    for label in [
        "File",
        "View",
        "Undo",
        "Redo",
        "Show inches",
        "Show millimetres",
        "Print to PDF",
        "Day or night",
        "Name",
        "Note",
        "Work thickness",
        "Work thickness, more",
        "Jaw style",
        "Head",
        "All",
        "True size",
        "Bar",
        "The bar with its marks",
    ] {
        let node = window.get_all_by_label(label).next();
        let area = node.unwrap_or_else(|| panic!("{label} is missing")).rect();
        assert!(whole.contains_rect(area), "{label} lies at {area:?}");
        assert!(
            area.width() > 8.0 && area.height() > 8.0,
            "{label} is {area:?}"
        );
    }
}

#[test]
fn the_slider_opens_the_pair_and_leaves_the_document() {
    let mut window = flat();
    let before = window.state().document().clone();
    slide(&mut window, "Opened by", 12.0);
    let value = window
        .get_all_by_label("Opened by")
        .find_map(|node| node.accesskit_node().numeric_value());
    assert_eq!(value, Some(12.0));
    assert_eq!(window.state().document(), &before);
    assert!(!window.state().is_changed());
}

#[test]
fn the_screen_is_measured_with_a_card() {
    let folder = folder();
    let bench = Workbench::new(remembering(folder.path()));
    let mut window = show(bench, SMALL);
    click(&mut window, "View");
    click_with(&mut window, "Measure the screen");
    click(&mut window, "With a rule");
    slide(&mut window, "Points of the screen to one millimetre", 4.5);
    click(&mut window, "That is its size");
    assert_eq!(bytes(&folder.path().join("screen")), b"4.5\n");
    window.get_by_label("100\u{a0}%");
}

#[test]
fn the_window_comes_to_rest() {
    let mut window = show(Workbench::new(around()), SMALL);
    // `run` fails when the window goes on asking for frames.
    window.run();
    let steps = window.run();
    assert!(steps <= 2, "{steps} frames without a cause");
}

/// Panels stand as they did; what was written there for a smaller screen is held to what fits.
#[test]
fn panels_stand_as_they_did() {
    let folder = folder();
    let wide = |room: &str| {
        put(folder.path(), "room", room);
        let window = show(
            Workbench::with(pairs::flat(), remembering(folder.path())),
            (1300.0, 900.0),
        );
        let style = window.get_by_label("Choose for the work…").rect();
        let sheet = window.get_by_label_contains("Drawing of the pair").rect();
        (sheet.left() - style.left()).round()
    };
    let usual = wide("");
    assert!(wide("parts 368 800\n") > usual + 90.0, "{usual}");
    assert!(wide("parts 9000 800\n") < 450.0);
    assert_eq!(wide("parts NaN 800\n"), usual);
    let mut window = show(
        Workbench::with(pairs::flat(), remembering(folder.path())),
        (1300.0, 900.0),
    );
    window.run();
    window.state().keep_room();
    let kept = String::from_utf8(bytes(&folder.path().join("room"))).unwrap();
    assert!(kept.contains("parts "), "{kept}");
}

/// What stands in a panel for a while does not widen it: the sheet keeps its room.
#[test]
fn the_sheet_keeps_its_room() {
    let mut window = show(Workbench::with(sample("v-bit-square"), around()), SMALL);
    let sheet = |window: &Window| window.get_by_label_contains("Drawing of the pair").rect();
    let first = sheet(&window);
    for page in ["Strength", "Making", "Heats", "Fit"] {
        click(&mut window, page);
    }
    assert_eq!(sheet(&window), first);
}

/// The first day's hint stands until it is put away, and does not come back.
#[test]
fn the_hint_of_the_first_day_can_be_put_away() {
    let folder = folder();
    let begin = || show(Workbench::new(remembering(folder.path())), SMALL);
    let says = |window: &Window| {
        let hint = window.query_by_label_contains("This pair is an example");
        hint.is_some()
    };
    let mut window = begin();
    assert!(says(&window));
    click(&mut window, "Fit");
    assert!(says(&window), "it stands while work goes on");
    click(&mut window, "Seen");
    assert!(!says(&window));
    assert!(!says(&begin()), "it was put away");
    let nowhere = show(Workbench::new(around()), SMALL);
    assert!(!says(&nowhere), "what is said could not be put away");
}

#[test]
fn f1_tells_what_to_take_care_of() {
    let mut window = flat();
    press(&mut window, Modifiers::NONE, Key::F1);
    window.get_by_label_contains("zinc and cadmium fumes");
    window.get_by_label_contains("THIRD-PARTY.md");
    press(&mut window, Modifiers::NONE, Key::Escape);
    assert!(window.query_by_label_contains("THIRD-PARTY.md").is_none());
}
