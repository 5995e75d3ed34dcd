//! A new pair from the work: what is held, the jaw, the bar, by their labels and by the keyboard.

use egui::accesskit::Role;
use egui::{Key, Modifiers};
use egui_kittest::kittest::{NodeT, Queryable};
use reinwright::window::Workbench;
use reinwright_core::asked::{Units, parse_bar};
use reinwright_core::finding::Severity;
use reinwright_core::shop::{Answers, bars_to_offer};
use reinwright_tests::files::folder;
use reinwright_tests::pairs::{self, work};
use reinwright_tests::window::{
    OnBench, SMALL, Window, click, press, remembering, show, show_design,
};

use super::flat;

/// Asks for a new pair that holds this, and goes on to the jaws.
fn for_work(window: &mut Window, words: &str) {
    press(window, Modifiers::COMMAND, Key::N);
    // The first question has the keyboard.
    window.get_by_label("Work to hold").type_text(words);
    window.run();
    press(window, Modifiers::NONE, Key::Enter);
}

/// Clicks the first bar whose row begins so.
#[track_caller]
fn take_bar(window: &mut Window, words: &str) {
    let is_row = |node: &egui_kittest::Node<'_>| {
        let label = node.accesskit_node().label().unwrap_or_default();
        label.starts_with(words)
    };
    let row = window.get_all_by_role(Role::Button).find(is_row);
    row.expect("the bar is offered").click();
    window.run();
}

#[test]
fn work_jaw_and_bar_take_three_presses_of_enter() {
    let mut window = show_design(pairs::flat(), SMALL);
    for_work(&mut window, "5/8 hex");
    window.get_by_label("These hold it well");
    press(&mut window, Modifiers::NONE, Key::Enter);
    window.get_by_label_contains("Which bar is it forged from?");
    press(&mut window, Modifiers::NONE, Key::Enter);
    assert!(
        window.query_by_label("Work to hold").is_none(),
        "it has closed"
    );
    let begun = window.state().document();
    assert_eq!(begun.work.size().to_string(), "5/8 in");
    assert_eq!(begun.bar.stock.words(), "3/4 in square");
    let worst = Answers::to(begun).worst();
    assert!(worst < Some(Severity::Mend), "{worst:?}");
}

#[test]
fn escape_leaves_what_was_open() {
    let mut window = flat();
    let before = window.state().document().clone();
    for_work(&mut window, "1/2 round");
    press(&mut window, Modifiers::NONE, Key::Escape);
    assert!(window.query_by_label("These hold it well").is_none());
    assert_eq!(window.state().document(), &before);
}

#[test]
fn what_names_no_work_is_said_in_place() {
    let mut window = flat();
    for_work(&mut window, "5/8 in rounded");
    window.get_by_label_contains("names no shape that is known here");
    assert!(window.query_by_label("These hold it well").is_none());
}

/// A size without a unit is in the unit of the design, as in every other field; a square goes into
/// a V on its corners unless it is said how it lies.
#[test]
fn work_lies_as_the_jaw_takes_it_unless_it_is_said_how() {
    let begun = |words: &str| {
        let mut window = flat();
        for_work(&mut window, words);
        // Where the work lies otherwise than the jaw takes it, its card stands far down.
        window.get_by_label("Take V bit").focus();
        window.run();
        press(&mut window, Modifiers::NONE, Key::Enter);
        take_bar(&mut window, "3/4 in square");
        window.state().document().work
    };
    assert_eq!(begun("3/4 square"), work("3/4 in square on corners"));
    assert_eq!(begun("3/4 square on flats"), work("3/4 in square"));
}

/// Who says the work in millimetres counts its bar in them, whatever was open before; a flat bar is told either way
/// round.
#[test]
fn bar_is_counted_in_the_unit_of_the_work() {
    for (work, first, typed, got) in [
        (
            "16 mm hex",
            "20 mm square",
            "25 x 12 flat",
            "12 mm x 25 mm flat",
        ),
        (
            "5/8 in hex",
            "3/4 in square",
            "1 x 1/2 flat",
            "1/2 in x 1 in flat",
        ),
        ("M16", "3/4 in square", "1 x 1/2 flat", "1/2 in x 1 in flat"),
    ] {
        let mut window = flat();
        for_work(&mut window, work);
        press(&mut window, Modifiers::NONE, Key::Enter);
        let is_first = |node: &egui_kittest::Node<'_>| {
            let label = node.accesskit_node().label().unwrap_or_default();
            label.starts_with(first)
        };
        let mut rows = window.get_all_by_role(Role::Button);
        assert!(rows.any(|node| is_first(&node)), "{work}");
        drop(rows);
        reinwright_tests::window::fill(&mut window, "Another bar", typed);
        assert_eq!(window.state().document().bar.stock.words(), got, "{work}");
    }
}

/// The bar that was used last is offered first the next time, in each unit its own.
#[test]
fn the_usual_bar_is_remembered() {
    let kept = folder();
    let bench = || Workbench::with(pairs::flat(), remembering(kept.path()));
    let mut window = show(bench(), SMALL);
    for_work(&mut window, "3/8 flat");
    click(&mut window, "Take flat");
    window.get_by_label_contains("The first is a common one");
    take_bar(&mut window, "5/8 in square");
    assert_eq!(window.state().document().bar.stock.words(), "5/8 in square");
    let mut again = show(bench(), SMALL);
    for_work(&mut again, "3/8 flat");
    press(&mut again, Modifiers::NONE, Key::Enter);
    again.get_by_label_contains("The first is the one you used last");
    press(&mut again, Modifiers::NONE, Key::Enter);
    assert_eq!(again.state().document().bar.stock.words(), "5/8 in square");
    let mut metric = pairs::flat();
    metric.units = Units::Millimetre;
    let mut other = show(Workbench::with(metric, remembering(kept.path())), SMALL);
    for_work(&mut other, "10 flat");
    press(&mut other, Modifiers::NONE, Key::Enter);
    press(&mut other, Modifiers::NONE, Key::Enter);
    assert_eq!(other.state().document().bar.stock.words(), "20 mm square");
}

/// Another bar may be typed; what gives no pair is told in place.
#[test]
fn another_bar_may_be_typed() {
    let mut window = flat();
    for_work(&mut window, "3/8 flat");
    press(&mut window, Modifiers::NONE, Key::Enter);
    let field = "Another bar";
    for (words, told) in [
        ("1/8 square", "so slight"),
        ("3/4 in hollow", "names no shape"),
    ] {
        reinwright_tests::window::fill(&mut window, field, words);
        window.get_by_label_contains(told);
    }
    // What is cut of it is told before it is taken; a bar that two sizes tell is flat.
    window.get_by_label(field).focus();
    press(&mut window, Modifiers::COMMAND, Key::A);
    window.get_by_label(field).type_text("25 x 12 mm");
    window.run();
    window.get_by_label("12 mm x 25 mm flat");
    assert!(window.query_by_label_contains("names no shape").is_none());
    press(&mut window, Modifiers::COMMAND, Key::A);
    window.get_by_label(field).type_text("18 mm square");
    window.run();
    press(&mut window, Modifiers::NONE, Key::Enter);
    assert_eq!(window.state().document().bar.stock.words(), "18 mm square");
    assert_eq!(window.state().document().units, Units::Millimetre);
}

/// A smith looks for bar about as thick as the usual one: by hand, 20 mm square has 400 mm².
#[test]
fn bars_nearest_to_the_usual_one_come_first() {
    let usual = parse_bar("20 mm square").expect("a bar");
    let offered: Vec<String> = bars_to_offer(&usual)
        .iter()
        .map(|bar| bar.stock.words())
        .collect();
    assert_eq!(offered[0], "20 mm square");
    let place = |words: &str| offered.iter().position(|own| own == words).expect(words);
    // 380, 324, 256, 113 and 64 mm².
    assert!(place("22 mm round") < place("18 mm square"));
    assert!(place("18 mm square") < place("16 mm square"));
    assert!(place("16 mm square") < place("12 mm round"));
    assert!(place("12 mm round") < place("8 mm square"));
}
