//! The chooser of jaw styles by its labels, without a renderer.

use egui::{Key, Modifiers};
use egui_kittest::kittest::Queryable;
use reinwright_core::asked::{Lie, Work};
use reinwright_tests::pairs;
use reinwright_tests::window::{
    OnBench, SMALL, click, is_enabled, press, show_design, undo, value, write,
};

use super::flat;

#[test]
fn a_style_is_taken_with_its_work_in_one_step() {
    let mut window = flat();
    let before = window.state().document().clone();
    click(&mut window, "Choose for the work…");
    assert_eq!(
        value(&window, "I must hold").as_deref(),
        Some("3/8 in x 1 in flat")
    );
    write(&mut window, "I must hold", "5/8 hex");
    assert_eq!(window.state().document(), &before, "nothing is taken yet");
    assert!(is_enabled(&window, "Take V bit"));
    click(&mut window, "Take V bit");
    let after = window.state().document().clone();
    assert_eq!(after.jaw.name(), "V bit");
    let Work::Hexagon { flats, lie, .. } = after.work else {
        panic!("{:?}", after.work);
    };
    assert_eq!(
        (flats.to_string().as_str(), lie),
        ("5/8 in", Lie::OnCorners)
    );
    assert_eq!(after.bar, before.bar);
    assert_eq!(before.name, "Flat tongs for 3/8 in flat");
    assert_eq!(after.name, "V bit tongs for 5/8 in hexagon");
    assert!(
        window.query_by_label("I must hold").is_none(),
        "it has closed"
    );
    undo(&mut window);
    assert_eq!(window.state().document(), &before);
}

#[test]
fn what_is_unsafe_says_why_and_cannot_be_taken() {
    let mut window = flat();
    click(&mut window, "Choose for the work…");
    write(&mut window, "I must hold", "5/8 round");
    window.get_by_label("These would be unsafe");
    assert!(
        window
            .get_all_by_label_contains("a round bar rolls")
            .count()
            >= 1
    );
    assert!(!is_enabled(&window, "Take flat"));
    assert!(is_enabled(&window, "Take hollow bit"));
    click(&mut window, "Across");
    assert!(is_enabled(&window, "Take link"));
}

#[test]
fn a_text_that_names_no_work_says_what_is_wrong() {
    let mut window = flat();
    click(&mut window, "Choose for the work…");
    write(&mut window, "I must hold", "5/8 banana");
    window.get_by_label_contains("names no shape that is known here");
    press(&mut window, Modifiers::NONE, Key::Escape);
    assert!(window.query_by_label("I must hold").is_none());
}

#[test]
fn in_the_smallest_window_the_first_cards_can_be_taken() {
    let mut window = show_design(pairs::flat(), SMALL);
    click(&mut window, "Choose for the work…");
    write(&mut window, "I must hold", "3/8 round");
    click(&mut window, "Take hollow bit");
    assert_eq!(window.state().document().jaw.name(), "hollow bit");
}
