//! Drawing a jaw of one's own in the window, by its labels.

use std::path::PathBuf;

use egui::{Key, Modifiers, vec2};
use egui_kittest::Harness;
use egui_kittest::kittest::Queryable;
use reinwright::disk::own_jaws;
use reinwright::window::{Chooser, Surroundings, Workbench};
use reinwright_core::asked::{parse_bar, parse_work};
use reinwright_core::tongs::document::Document;
use reinwright_core::tongs::jaw::JawKind;
use reinwright_core::tongs::jaw::Sketch;
use reinwright_tests::within;

type Window = Harness<'static, Workbench>;

/// A tall window on a flat pair in inches; own jaws in a folder of the test's.
fn bench(folder: Option<PathBuf>) -> Window {
    let work = parse_work("3/8 in flat").expect("work");
    let bar = parse_bar("3/4 in square").expect("a bar");
    let design = Document::starting(JawKind::Flat, work, bar);
    let around = Surroundings {
        chooser: Chooser::OwnField,
        folder: None,
    };
    let bench = Workbench::with(design, around);
    let bench = match folder {
        Some(folder) => bench.keeping_jaws_in(folder),
        None => bench,
    };
    let mut window = Harness::builder()
        .with_size(vec2(1300.0, 1900.0))
        .with_max_steps(40)
        .build_ui_state(|ui, bench: &mut Workbench| bench.show(ui), bench);
    window.run();
    window
}

#[track_caller]
fn click(window: &mut Window, label: &str) {
    window.get_by_label(label).click();
    window.run();
}

#[track_caller]
fn fill(window: &mut Window, label: &str, text: &str) {
    click(window, label);
    window.key_press_modifiers(Modifiers::COMMAND, Key::A);
    window.run();
    window.get_by_label(label).type_text(text);
    window.run();
    window.key_press(Key::Enter);
    window.run();
}

fn sketch(window: &Window) -> &Sketch {
    window.state().document().jaw.sketch().expect("a sketch")
}

#[test]
fn a_flat_jaw_is_drawn_on() {
    let mut window = bench(None);
    let before = reinwright_core::tongs::resolve(window.state().document())
        .a
        .volume_mm3();
    click(&mut window, "Draw on it");
    assert_eq!(sketch(&window).nodes.len(), 2);
    let after = reinwright_core::tongs::resolve(window.state().document())
        .a
        .volume_mm3();
    within("volume", after / before, 1.0, 1e-6);
    click(&mut window, "Add");
    window.get_by_label("Node 2 of 3");
    fill(&mut window, "Node back", "1/2");
    let steel = sketch(&window).nodes[1].steel.expect("steel");
    within("back", steel.back.mm(), 12.7, 1e-9);
    fill(&mut window, "Node out from face", "-1/8");
    within("below", sketch(&window).nodes[1].y.mm(), -3.175, 1e-9);
    fill(&mut window, "Node slope", "-12.5");
    within("slope", sketch(&window).nodes[1].slope, -12.5, 1e-9);
    click(&mut window, "Take out");
    assert_eq!(sketch(&window).nodes.len(), 2);
    window.key_press_modifiers(Modifiers::COMMAND, Key::Z);
    window.run();
    assert_eq!(sketch(&window).nodes.len(), 3, "undo brings the node back");
}

#[test]
fn nonsense_in_a_node_is_refused_in_words() {
    let mut window = bench(None);
    click(&mut window, "Draw on it");
    let before = sketch(&window).clone();
    fill(&mut window, "Node back", "a lot");
    assert_eq!(*sketch(&window), before);
    let said = window.query_by_label_contains("a lot");
    assert!(said.is_some(), "the refusal is shown");
}

/// Halving a stretch again and again ends with a button that says why, not with nodes on top of
/// each other; a value typed past its room says how far it went.
#[test]
fn nodes_keep_their_room() {
    let mut window = bench(None);
    click(&mut window, "Draw on it");
    for _ in 0..12 {
        click(&mut window, "Add");
        click(&mut window, "Node before");
    }
    let nodes = &sketch(&window).nodes;
    assert!((4..12).contains(&nodes.len()), "{}", nodes.len());
    for pair in nodes.windows(2) {
        let apart = pair[1].x.mm() - pair[0].x.mm();
        assert!(apart >= 1.0 - 1e-6, "{apart} mm apart");
    }
    click(&mut window, "Node after");
    fill(&mut window, "Node past the heel", "9 in");
    window.get_by_label_contains("is as far as it can go here");
    window.key_press_modifiers(Modifiers::COMMAND, Key::Z);
    window.run();
    let said = window.query_by_label_contains("is as far as it can go here");
    assert!(said.is_none(), "gone with the value");
}

/// One click must not delete a file for good.
#[test]
fn taking_an_own_jaw_away_is_asked_twice() {
    let folder = tempfile::tempdir().expect("a folder");
    let mut window = bench(Some(folder.path().to_owned()));
    click(&mut window, "Draw on it");
    fill(&mut window, "Jaw name", "Plain");
    click(&mut window, "Keep");
    click(&mut window, "Own jaws…");
    click(&mut window, "Take away Plain");
    click(&mut window, "Leave it");
    assert_eq!(own_jaws::all(folder.path()).len(), 1);
    click(&mut window, "Take away Plain");
    click(&mut window, "Delete Plain");
    assert!(own_jaws::all(folder.path()).is_empty());
    window.get_by_label_contains("Took \"Plain\" away");
}

#[test]
fn a_jaw_is_kept_and_used_on_another_size() {
    let folder = tempfile::tempdir().expect("a folder");
    let mut window = bench(Some(folder.path().to_owned()));
    click(&mut window, "Draw on it");
    click(&mut window, "Node after");
    fill(&mut window, "Node width", "1 1/2");
    fill(&mut window, "Jaw name", "Wide tip");
    click(&mut window, "Keep");
    let all = own_jaws::all(folder.path());
    assert_eq!(all.len(), 1);
    let kept = all[0].kept.clone().expect("reads back");
    assert_eq!(kept.sketch.name, "Wide tip");
    // On work of twice the size the tip is twice as wide.
    fill(&mut window, "Work thickness", "3/4");
    click(&mut window, "Own jaws…");
    click(&mut window, "Use Wide tip");
    // The tip itself is broken; the form before that has the width that was asked.
    let form = window.state().document().jaw.plain_form();
    let widest = form.stations.iter().map(|s| s.width).fold(0.0, f64::max);
    within("width", widest, 76.2, 0.01);
    let tip = window.get_by_label("Jaw tip radius").value();
    assert_eq!(tip.as_deref(), Some("3/16 in"));
}

#[test]
fn a_damaged_file_on_the_shelf_is_one_sentence() {
    let folder = tempfile::tempdir().expect("a folder");
    std::fs::write(folder.path().join("bad.ron"), "(own_jaw: 1, length:").expect("writes");
    let mut window = bench(Some(folder.path().to_owned()));
    click(&mut window, "Own jaws…");
    assert!(window.query_by_label_contains("bad.ron").is_some());
}
