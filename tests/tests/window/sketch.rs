//! Drawing a jaw of one's own in the window, by its labels.

use std::path::Path;

use egui_kittest::kittest::Queryable;
use reinwright::disk::own_jaws;
use reinwright::window::Workbench;
use reinwright_core::tongs::jaw::Sketch;
use reinwright_core::tongs::resolve;
use reinwright_tests::files::{folder, put};
use reinwright_tests::window::{TALL, Window, around, click, fill, show, undo, value};
use reinwright_tests::{pairs, within};

use super::flat;

/// A tall window on a flat pair in inches that keeps own jaws in a folder.
fn keeping_in(folder: &Path) -> Window {
    let bench = Workbench::with(pairs::flat(), around());
    show(bench.keeping_jaws_in(folder.to_owned()), TALL)
}

fn sketch(window: &Window) -> &Sketch {
    window.state().document().jaw.sketch().expect("a sketch")
}

#[test]
fn a_flat_jaw_is_drawn_on() {
    let mut window = flat();
    let before = resolve(window.state().document()).a.volume_mm3();
    click(&mut window, "Draw on it");
    assert_eq!(sketch(&window).nodes.len(), 2);
    let after = resolve(window.state().document()).a.volume_mm3();
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
    undo(&mut window);
    assert_eq!(sketch(&window).nodes.len(), 3, "undo brings the node back");
}

/// A node that only bends the line is given its own section by the same tick that took it away.
#[test]
fn a_section_is_taken_from_a_node_and_given_back() {
    let mut window = flat();
    click(&mut window, "Draw on it");
    click(&mut window, "Add");
    let steel = sketch(&window).nodes[1].steel.expect("steel");
    click(&mut window, "Section");
    assert_eq!(sketch(&window).nodes[1].steel, None);
    click(&mut window, "Section");
    let again = sketch(&window).nodes[1].steel.expect("steel once more");
    within("back", again.back.mm(), steel.back.mm(), 0.01);
}

#[test]
fn nonsense_in_a_node_is_refused_in_words() {
    let mut window = flat();
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
    let mut window = flat();
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
    undo(&mut window);
    let said = window.query_by_label_contains("is as far as it can go here");
    assert!(said.is_none(), "gone with the value");
}

/// One click must not delete a file for good.
#[test]
fn taking_an_own_jaw_away_is_asked_twice() {
    let folder = folder();
    let mut window = keeping_in(folder.path());
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
    let folder = folder();
    let mut window = keeping_in(folder.path());
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
    let tip = value(&window, "Jaw tip radius");
    assert_eq!(tip.as_deref(), Some("3/16 in"));
}

#[test]
fn a_damaged_file_on_the_shelf_is_one_sentence() {
    let folder = folder();
    put(folder.path(), "bad.ron", "(own_jaw: 1, length:");
    let mut window = keeping_in(folder.path());
    click(&mut window, "Own jaws…");
    assert!(window.query_by_label_contains("bad.ron").is_some());
}
