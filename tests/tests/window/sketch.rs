//! Drawing a jaw of one's own in the window, by its labels.

use std::path::Path;

use egui::{Key, Modifiers};
use egui_kittest::kittest::Queryable;
use reinwright::disk::own_jaws;
use reinwright::window::Workbench;
use reinwright_core::tongs::jaw::Sketch;
use reinwright_core::tongs::resolve;
use reinwright_tests::files::{folder, put};
use reinwright_tests::window::{
    OnBench, TALL, Window, around, click, fill, give_path, press, show, undo, value,
};
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
    click(&mut window, "Remove");
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
    click(&mut window, "Delete Plain");
    click(&mut window, "Keep it");
    assert_eq!(own_jaws::all(folder.path()).len(), 1);
    click(&mut window, "Delete Plain");
    click(&mut window, "Delete Plain");
    assert!(own_jaws::all(folder.path()).is_empty());
    window.get_by_label_contains("Deleted \"Plain\"");
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

/// Names that make the same file name are numbered; the same name is asked about; nothing is ever
/// replaced unasked.
#[test]
fn keeping_a_jaw_replaces_no_other_unasked() {
    let folder = folder();
    let names = || {
        let mut names: Vec<String> = own_jaws::readable(folder.path())
            .into_iter()
            .map(|kept| kept.sketch.name)
            .collect();
        names.sort();
        names
    };
    let mut window = keeping_in(folder.path());
    click(&mut window, "Draw on it");
    for name in ["Jaw #1", "jaw (1)"] {
        fill(&mut window, "Jaw name", name);
        click(&mut window, "Keep");
    }
    assert_eq!(names(), ["Jaw #1", "jaw (1)"]);
    // The very same once more is no question; another one of its name is.
    fill(&mut window, "Jaw name", "jaw (1)");
    click(&mut window, "Keep");
    window.get_by_label_contains("was kept already");
    fill(&mut window, "Node width", "1 1/2");
    fill(&mut window, "Jaw name", "Jaw #1");
    click(&mut window, "Keep");
    let before = own_jaws::readable(folder.path());
    click(&mut window, "Leave it as it is");
    assert_eq!(own_jaws::readable(folder.path()), before);
    fill(&mut window, "Jaw name", "Jaw #1");
    click(&mut window, "Keep");
    click(&mut window, "Keep both");
    assert_eq!(names(), ["Jaw #1", "Jaw #1 (2)", "jaw (1)"]);
    fill(&mut window, "Node width", "1 5/8");
    fill(&mut window, "Jaw name", "Jaw #1");
    click(&mut window, "Keep");
    click(&mut window, "Replace it");
    assert_eq!(names().len(), 3);
    let mut all = own_jaws::readable(folder.path()).into_iter();
    let one = all.find(|kept| kept.sketch.name == "Jaw #1").expect("it");
    let width = one.sketch.nodes[0].steel.expect("steel").width.mm();
    within("width", width, 41.275, 1e-9);
}

/// A file that another smith gave is taken in beside an own jaw with the same file name.
#[test]
fn taking_a_jaw_in_replaces_no_other_unasked() {
    let (folder, given) = (folder(), self::folder());
    let mut window = keeping_in(folder.path());
    click(&mut window, "Draw on it");
    fill(&mut window, "Jaw name", "Jaw #1");
    click(&mut window, "Keep");
    let mut theirs = own_jaws::readable(folder.path()).remove(0);
    for (name, asks) in [("jaw (1)", false), ("Jaw #1", true)] {
        theirs.sketch.name = name.to_owned();
        theirs.sketch.about = "theirs".to_owned();
        put(given.path(), "theirs.ron", theirs.write());
        press(&mut window, Modifiers::COMMAND, Key::O);
        if window.query_by_label("Throw the changes away").is_some() {
            click(&mut window, "Throw the changes away");
        }
        give_path(&mut window, &given.path().join("theirs.ron"), "Open");
        let question = window.query_by_label("Keep both").is_some();
        assert_eq!(question, asks, "{name}");
        if !asks {
            // The own jaws with the one that was taken in.
            click(&mut window, "Close");
        }
    }
    click(&mut window, "Keep both");
    assert_eq!(own_jaws::readable(folder.path()).len(), 3);
    let mine = own_jaws::readable(folder.path());
    let mine = mine.iter().filter(|kept| kept.sketch.about.is_empty());
    assert_eq!(mine.count(), 1, "the first one is as it was");
}

#[test]
fn an_own_jaw_begins_a_new_pair() {
    let folder = folder();
    let mut window = keeping_in(folder.path());
    click(&mut window, "Draw on it");
    fill(&mut window, "Jaw name", "Mine");
    click(&mut window, "Keep");
    press(&mut window, Modifiers::COMMAND, Key::N);
    window.get_by_label("Work to hold").type_text("1/2 in flat");
    window.run();
    press(&mut window, Modifiers::NONE, Key::Enter);
    // Its card may stand below what shows.
    window.get_by_label("Take Mine").focus();
    window.run();
    press(&mut window, Modifiers::NONE, Key::Enter);
    press(&mut window, Modifiers::NONE, Key::Enter);
    if window.query_by_label("Throw the changes away").is_some() {
        click(&mut window, "Throw the changes away");
    }
    let design = window.state().document();
    assert_eq!(design.name, "Mine tongs for 1/2 in flat");
    within("fits", sketch(&window).fits.mm(), 12.7, 1e-9);
    // And stands in the chooser, marked as an own one.
    click(&mut window, "Choose for the work…");
    window.get_by_label("Mine, own jaw");
    click(&mut window, "Take Mine");
}

/// A size that would make the sketch larger than can be drawn is refused where it is typed.
#[test]
fn a_sketch_is_not_grown_without_end() {
    let mut window = flat();
    click(&mut window, "Draw on it");
    fill(&mut window, "Node width", "2 in");
    let before = sketch(&window).clone();
    fill(&mut window, "Jaw drawn to fit", "200 mm");
    assert_eq!(*sketch(&window), before, "2 in would be over 1 m");
    let said = window.query_all_by_label_contains("56.25").count();
    assert!(said > 0, "the limits are told: 3/8 in by 300 of 50.8 mm");
}
