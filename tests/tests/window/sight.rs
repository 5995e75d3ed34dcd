//! What of the drawing the sheet shows: the head as large as it can, the reins, or all of it.

use egui::{Key, Modifiers, Pos2, Rect};
use egui_kittest::kittest::Queryable;
use reinwright_core::asked::Units;
use reinwright_core::tongs::document::Document;
use reinwright_tests::pairs::starting;
use reinwright_tests::window::{SMALL, Window, click, press, show_design};

#[track_caller]
fn place(window: &Window, handle: &str) -> Pos2 {
    let name = format!("{handle}, on the drawing");
    window.get_by_label(&name).rect().center()
}

fn sheet(window: &Window) -> Rect {
    window.get_by_label_contains("Drawing of the pair").rect()
}

/// From the rivet to the tips, in parts of the sheet's width.
#[track_caller]
fn share(window: &Window) -> f32 {
    let (tip, rein) = (place(window, "Jaw length"), place(window, "Jaw heel"));
    (tip.x - rein.x) / sheet(window).width()
}

/// Each with the least factor by which its jaw must grow.
fn designs() -> Vec<(&'static str, f32, Document)> {
    let mut inches = starting("v bit", "1/4 in round", "3/8 in square");
    inches.units = Units::Inch;
    vec![
        (
            "small bolt",
            1.25,
            starting("bolt", "6 mm round", "12 mm square"),
        ),
        (
            "large bolt",
            1.25,
            starting("bolt", "50 mm round", "25 mm square"),
        ),
        (
            "small flat",
            1.25,
            starting("flat", "6 mm flat", "12 mm square"),
        ),
        ("V bit in inches", 1.1, inches),
    ]
}

/// With the reins broken the jaw is drawn larger, the more the longer its reins are for it, and the
/// rein ends are still in sight.
#[test]
fn the_sheet_opens_on_the_head() {
    for (name, factor, design) in designs() {
        let mut window = show_design(design, SMALL);
        let head = share(&window);
        let end = place(&window, "Rein length");
        assert!(sheet(&window).contains(end), "{name}: {end:?}");
        click(&mut window, "All");
        let all = share(&window);
        assert!(head > factor * all, "{name}: {head} and {all} of the sheet");
        println!("{name}: {head:.3} of the sheet, {all:.3} unbroken");
    }
}

#[test]
fn each_sight_has_its_key() {
    let (_, _, design) = designs().remove(0);
    let mut window = show_design(design, SMALL);
    let head = share(&window);
    press(&mut window, Modifiers::NONE, Key::F4);
    let all = share(&window);
    press(&mut window, Modifiers::NONE, Key::F3);
    let boss = place(&window, "Rivet diameter");
    let end = place(&window, "Rein length");
    let sheet = sheet(&window);
    let reins = (boss.x - end.x) / sheet.width();
    assert!(reins > 0.7, "the reins take {reins} of the sheet");
    assert!(sheet.contains(end), "{end:?}");
    press(&mut window, Modifiers::NONE, Key::F2);
    assert!((share(&window) - head).abs() < 1e-3);
    assert!(all < head, "{all} {head}");
}

/// The keys of the drawing bring it back where the page Heats stands in its place, and so does a pair that is begun.
#[test]
fn the_drawing_comes_back_from_the_heats() {
    let (_, _, design) = designs().remove(0);
    let mut window = show_design(design, SMALL);
    for key in [Key::F2, Key::F3, Key::F4, Key::F5] {
        press(&mut window, Modifiers::NONE, Key::F8);
        assert!(window.query_by_label("What is heated in what").is_some());
        press(&mut window, Modifiers::NONE, key);
        assert!(
            window.query_by_label("What is heated in what").is_none(),
            "{key:?}"
        );
    }
    press(&mut window, Modifiers::NONE, Key::F8);
    press(&mut window, Modifiers::COMMAND, Key::N);
    window.get_by_label("Work to hold").type_text("3/8 flat");
    window.run();
    for _step in ["work", "jaw", "bar"] {
        press(&mut window, Modifiers::NONE, Key::Enter);
    }
    assert!(window.query_by_label("What is heated in what").is_none());
}

/// True size is shown about the head: its middle is the middle of the sheet.
#[test]
fn true_size_is_about_the_head() {
    let (_, _, design) = designs().remove(2);
    let mut window = show_design(design, SMALL);
    press(&mut window, Modifiers::NONE, Key::F5);
    let (tip, rivet) = (
        place(&window, "Jaw length"),
        place(&window, "Rivet diameter"),
    );
    let middle = sheet(&window).center();
    assert!(
        rivet.x < middle.x && middle.x < tip.x,
        "{rivet:?} {middle:?} {tip:?}"
    );
}
