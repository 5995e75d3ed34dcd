//! The cut list in the window, by its labels.

use std::path::Path;

use egui::{Key, Modifiers};
use egui_kittest::kittest::{NodeT, Queryable};
use reinwright::window::Workbench;
use reinwright_core::asked::parse_bar;
use reinwright_core::shop::cut::Rack;
use reinwright_core::tongs::document::{self, Document};
use reinwright_core::tool::{Tool, ToolKind};
use reinwright_tests::designs::samples_folder;
use reinwright_tests::files::{bytes, folder, put};
use reinwright_tests::pairs::{length, starting};
use reinwright_tests::window::{
    OnBench, Window, around, click, fill, give_path, press, show_for, value, write,
};

fn flat() -> Document {
    starting("flat", "6 mm flat", "16 mm square")
}

/// A window on the cut list of a design. The list is looked for in a thread.
fn at_list(design: Document) -> Window {
    let bench = Workbench::with(design, around());
    let mut window = show_for(bench, (1300.0, 900.0), 4000);
    press(&mut window, Modifiers::NONE, Key::F7);
    window
}

/// What the list says, once it is found.
#[track_caller]
fn check_list(window: &mut Window, words: &str) {
    for _ in 0..400 {
        if window.query_by_label_contains(words).is_some() {
            return;
        }
        std::thread::sleep(std::time::Duration::from_millis(10));
        window.step();
    }
    window.get_by_label_contains(words);
}

/// Keeps the rack of the list in a folder from now on.
fn keep_in(window: &mut Window, shop: &Path) {
    click(window, "Choose the shop's folder…");
    write(window, "Folder", &shop.display().to_string());
    click(window, "Open");
}

fn rack(shop: &Path) -> Rack {
    Rack::read(&bytes(&shop.join("rack.ron"))).expect("a rack")
}

/// Bars that were written down before a folder was chosen are kept in it, beside those that lie there.
#[test]
fn bars_written_down_before_the_shop_is_chosen_are_kept_there() {
    let [first, second] = [folder(), folder()];
    let mut window = at_list(flat());
    fill(&mut window, "Bars at hand", "3 x 3 m of 16 mm square");
    keep_in(&mut window, first.path());
    assert_eq!(rack(first.path()).bars[0].count, 3);
    fill(&mut window, "Bars at hand", "2 x 1 m of 20 mm square");
    assert_eq!(rack(first.path()).bars.len(), 2);

    std::fs::copy(
        first.path().join("rack.ron"),
        second.path().join("rack.ron"),
    )
    .expect("copied");
    let mut window = at_list(flat());
    fill(&mut window, "Bars at hand", "4 x 3 m of 16 mm square");
    keep_in(&mut window, second.path());
    let kept = rack(second.path());
    let counts: Vec<u32> = kept.bars.iter().map(|own| own.count).collect();
    assert_eq!(counts, [7, 2]);
}

/// Eight pairs for a class out of three bars, from the list to the rack after it.
#[test]
fn a_class_of_eight_is_cut_out_of_three_bars() {
    let shop = folder();
    let mut window = at_list(flat());
    keep_in(&mut window, shop.path());
    fill(&mut window, "Pairs of Flat tongs for 6 mm flat", "8");
    fill(&mut window, "Bars at hand", "3 x 3 m of 16 mm square");
    assert_eq!(rack(shop.path()).bars[0].count, 3);
    check_list(&mut window, "1 bar: proven that none fewer will do");
    let shown = window.get_by_label_contains("The bars with their pieces");
    let told = shown.accesskit_node().label().unwrap_or_default();
    assert!(told.contains("bars 3000 mm"), "{told}");
    click(&mut window, "Print the list");
    let pdf = shop.path().join("list.pdf");
    give_path(&mut window, &pdf, "Write");
    assert!(bytes(&pdf).starts_with(b"%PDF"));
    click(&mut window, "Take off the rack");
    let after = rack(shop.path());
    let lying: Vec<(f64, u32)> = after
        .bars
        .iter()
        .map(|own| (own.length.mm(), own.count))
        .collect();
    assert_eq!(lying[0], (3000.0, 2));
    assert!(lying[1].0 > 200.0 && lying[1].1 == 1, "{lying:?}");
    check_list(&mut window, "Taken off the rack");
    click(&mut window, "Put them back");
    assert_eq!(rack(shop.path()).bars[0].count, 3);
}

/// What cannot be read is told in one line, and what was there stays.
#[test]
fn what_cannot_be_read_changes_nothing() {
    let mut window = at_list(flat());
    fill(&mut window, "Bars at hand", "3 x 3 m");
    check_list(&mut window, "1 bar: proven");
    for (field, text, why) in [
        ("Bars at hand", "three bars", "\"three bars\""),
        ("Bars at hand", "0 x 3 m", "says no number of bars"),
        ("Bars at hand", "2 x 90 m", "is no length of a bar"),
        ("Bars at hand", "2 x 3 m of tin", "a size is missing"),
        ("Length to buy", "long", "\"long\" is not a size"),
        ("Width of a cut", "-2 mm", "is below zero"),
        (
            "The shortest end that goes back on the rack",
            "much",
            "\"much\" is not a size",
        ),
    ] {
        fill(&mut window, field, text);
        window.get_by_label_contains(why);
        assert_eq!(value(&window, field).as_deref(), Some(text), "{field}");
        assert_eq!(
            value(&window, "Bars: 3000 mm of 16 mm square").as_deref(),
            Some("3")
        );
        check_list(&mut window, "1 bar: proven");
    }
}

#[test]
fn a_rack_that_cannot_be_read_is_said_and_not_written_over() {
    let shop = folder();
    put(shop.path(), "rack.ron", "(rack: 1, bars: [torn");
    let mut window = at_list(flat());
    keep_in(&mut window, shop.path());
    window.get_by_label_contains("with the bars on the rack");
    // Nobody knows whether there are any.
    assert!(window.query_by_label_contains("None: all bars").is_none());
    fill(&mut window, "Bars at hand", "3 x 3 m");
    window.get_by_label_contains("Mend or remove that file");
    assert_eq!(
        bytes(&shop.path().join("rack.ron")),
        b"(rack: 1, bars: [torn"
    );
}

/// The list of a flat pair to which another design was added from its file, and that design.
fn with_vee(shop: &tempfile::TempDir) -> (Window, Document) {
    let vee = Document {
        name: "Vee".to_owned(),
        ..starting("v-bit", "16 mm square on corners", "20 mm round")
    };
    put(shop.path(), "vee.ron", document::write(&vee));
    let mut window = at_list(flat());
    click(&mut window, "Add a design…");
    give_path(&mut window, &shop.path().join("vee.ron"), "Open");
    (window, vee)
}

#[test]
fn pairs_of_other_designs_are_cut_too_each_from_its_bar() {
    let shop = folder();
    let (mut window, _) = with_vee(&shop);
    check_list(&mut window, "The bars with their pieces");
    assert_eq!(value(&window, "Pairs of Vee").as_deref(), Some("1"));
    fill(&mut window, "Length to buy", "3 m");
    window.get_by_label_contains("the designs are forged from several bars");
    write(&mut window, "Price of one", "18,50");
    fill(&mut window, "Length to buy", "6 m of 20 mm round");
    window.get_by_label_contains("6000 mm of 20 mm round at 18.50");
    click(&mut window, "Back to Flat tongs for 6 mm flat");
    // What was written down is there when one comes back.
    press(&mut window, Modifiers::NONE, Key::F7);
    assert_eq!(value(&window, "Pairs of Vee").as_deref(), Some("1"));
    fill(&mut window, "Pairs of Vee", "0");
    fill(&mut window, "Pairs of Flat tongs for 6 mm flat", "0");
    check_list(&mut window, "Nothing is to be cut");
}

#[test]
fn a_blank_longer_than_any_bar_says_what_to_do() {
    let mut window = at_list(flat());
    fill(&mut window, "Length to buy", "200 mm");
    fill(&mut window, "Bars at hand", "3 x 250 mm");
    check_list(
        &mut window,
        "name a longer bar, or lay the halves out one at a time",
    );
}

/// A tool that is open is on the list, and a file may hold a tool or a set of them.
#[test]
fn tools_are_cut_from_the_same_bars() {
    let drifts = samples_folder().join("tools/drift-set.ron");
    let punch = Tool {
        name: "My punch".to_owned(),
        ..Tool::starting(
            ToolKind::RoundPunch,
            length("5/16 in"),
            parse_bar("3/4 in round").expect("a bar"),
        )
    };
    let mut window = show_for(Workbench::with_tool(punch, around()), (1300.0, 900.0), 4000);
    press(&mut window, Modifiers::NONE, Key::F7);
    assert_eq!(value(&window, "How many of My punch").as_deref(), Some("1"));
    click(&mut window, "Add a design…");
    give_path(&mut window, &drifts, "Open");
    assert_eq!(
        value(&window, "How many of Drifts for the benches, 3/4 in").as_deref(),
        Some("1")
    );
    check_list(&mut window, "The bars with their pieces");
    let shown = window.get_by_label_contains("The bars with their pieces");
    let told = shown.accesskit_node().label().unwrap_or_default();
    // The punch and the drift for 5/8 in are of one bar, the other six drifts of four more.
    assert_eq!(told.matches("1 bar: proven").count(), 5, "{told}");
}

/// What was added from its file and is opened then is one pair, not two.
#[test]
fn a_design_that_was_added_and_is_opened_stands_there_once() {
    let shop = folder();
    let (mut window, other) = with_vee(&shop);
    fill(&mut window, "Pairs of Vee", "3");
    press(&mut window, Modifiers::COMMAND, Key::O);
    give_path(&mut window, &shop.path().join("vee.ron"), "Open");
    assert_eq!(window.state().document(), &other);
    press(&mut window, Modifiers::NONE, Key::F7);
    assert_eq!(value(&window, "Pairs of Vee").as_deref(), Some("3"));
    let rows = window.get_all_by_label("Pairs of Vee").count();
    assert_eq!(rows, 1);
}

/// What is usual is so in the units that are shown: the field and the list name the same shortest end.
#[test]
fn the_list_follows_the_units() {
    let mut window = at_list(flat());
    check_list(&mut window, "ends from 200 mm are kept");
    click(&mut window, "Show inches");
    check_list(&mut window, "ends from 8 in are kept");
}

/// The key that prints writes the list that is looked at, and leaves it in sight.
#[test]
fn the_key_that_prints_prints_the_list() {
    let out = folder();
    let mut window = at_list(flat());
    check_list(&mut window, "1 bar: proven");
    press(&mut window, Modifiers::COMMAND, Key::P);
    let proposed = value(&window, "File, with its folder").expect("a path");
    assert!(
        proposed.ends_with("flat-tongs-for-6-mm-flat-cut-list.pdf"),
        "{proposed}"
    );
    let path = out.path().join("list.pdf");
    give_path(&mut window, &path, "Write");
    assert!(bytes(&path).starts_with(b"%PDF"));
    check_list(&mut window, "1 bar: proven");
}
