//! The family workbench with tools, by its labels: what is typed and clicked must stand in the family.

use egui::{Key, Modifiers};
use egui_kittest::kittest::Queryable;
use reinwright::window::Workbench;
use reinwright_core::shop::family::{self, Family, Rule};
use reinwright_core::tool::Tool;
use reinwright_tests::designs::samples_folder;
use reinwright_tests::files::{bytes, folder, names, pages, put};
use reinwright_tests::pairs::length;
use reinwright_tests::window::{
    Window, around, click, fill, give_path, press, redo, show, undo, until_counted, until_done,
    value, write,
};

/// A window in which the whole table shows.
const TALL: (f32, f32) = (1500.0, 2400.0);

fn drifts() -> Family<Tool> {
    let path = samples_folder().join("tools/drift-set.ron");
    family::read_of(&bytes(&path)).expect("a family of tools")
}

fn window() -> Window {
    show(Workbench::with_tools(drifts(), around()), TALL)
}

fn now(window: &Window) -> &Family<Tool> {
    window.state().tools().expect("a family of tools is open")
}

fn labels(window: &Window) -> Vec<String> {
    now(window).sizes.iter().map(|size| size.label()).collect()
}

const LEAD: &str = "1/2 in: Working end lead";

#[test]
fn a_cell_is_set_by_hand_and_let_go() {
    let mut window = window();
    let before = now(&window).clone();
    fill(&mut window, LEAD, "3 in");
    let size = &now(&window).sizes[4];
    assert_eq!(size.set["working.lead"], "3 in");
    click(&mut window, &format!("Let go of {LEAD}"));
    assert_eq!(now(&window), &before);
    undo(&mut window);
    assert_eq!(value(&window, LEAD).as_deref(), Some("3 in"));
    redo(&mut window);
    assert_eq!(now(&window), &before);
}

#[test]
fn what_leads_a_size_and_its_bar_are_its_own() {
    let mut window = window();
    fill(&mut window, "1/2 in: Working end full size", "17/32 in");
    assert_eq!(labels(&window)[4], "17/32 in");
    fill(&mut window, "17/32 in: Bar diameter", "3/4 in");
    let bar = now(&window).sizes[4].bar.expect("its own bar");
    assert_eq!(bar.stock.size(), length("3/4 in"));
    window.get_by_label_contains("each its own");
}

#[test]
fn sizes_are_added_typed_and_taken_out() {
    let mut window = window();
    write(&mut window, "A new size", "9/16 in");
    click(&mut window, "Add size");
    assert_eq!(labels(&window)[5], "9/16 in");
    click(&mut window, "Add between");
    assert_eq!(labels(&window).len(), 9);
    click(&mut window, "Remove");
    assert_eq!(labels(&window).len(), 8);
    write(&mut window, "A new size", "a lot");
    click(&mut window, "Add size");
    window.get_by_label_contains("New size: ");
    let chosen = now(&window).clone();
    click(&mut window, "Take out as a tool");
    click(&mut window, "Throw the changes away");
    let tool = window.state().tool().expect("a tool is open");
    assert!((0..8).any(|at| chosen.take_out(at).as_ref() == Some(tool)));
}

#[test]
fn a_rule_says_size_and_not_work() {
    let mut window = window();
    click(&mut window, "Rule: Body struck face");
    assert!(window.query_by_label("with the work").is_none());
    assert!(window.query_all_by_label("with the size").count() > 0);
    window
        .get_all_by_label("same in all")
        .last()
        .expect("it can be chosen")
        .click();
    window.run();
    assert_eq!(now(&window).rules["body.face"], Rule::Same);
}

#[test]
fn pictures_bars_and_findings_are_shown() {
    let mut window = window();
    assert!(window.query_by_label("One over the other").is_none());
    click(&mut window, "Side by side");
    click(&mut window, "Picture of 3/4 in");
    click(&mut window, "What the set takes");
    window.get_by_label("Bar for a tool");
    window.get_by_label_contains("3/4 in: 0.");
    window.get_by_label_contains("is to stay soft");
    click(&mut window, "Differs from the base");
    window.get_by_label_contains("in the base 1/4 in: its own");
}

/// One step makes a family of the open tool; it is saved, opened and brought back as others are.
#[test]
fn a_family_of_the_open_tool_is_begun_and_kept() {
    let folder = folder();
    let path = folder.path().join("set.ron");
    let base = drifts().base;
    let mut window = show(Workbench::with_tool(base.clone(), around()), TALL);
    click(&mut window, "File");
    click(&mut window, "Make a family of this design");
    assert_eq!(now(&window), &Family::from_design(&base));
    write(&mut window, "A new size", "1/2");
    click(&mut window, "Add size");
    press(&mut window, Modifiers::COMMAND, Key::S);
    give_path(&mut window, &path, "Write");
    let saved: Family<Tool> = family::read_of(&bytes(&path)).expect("it is a family");
    assert_eq!(&saved, now(&window));
    assert!(!window.state().is_changed());
    let again = show(Workbench::open(&path, around()).expect("it opens"), TALL);
    assert_eq!(now(&again), &saved);
}

#[test]
fn a_damaged_family_opens_without_its_file() {
    let folder = folder();
    let damaged = family::write(&drifts()).replacen("5/16 in", "5/16 inch of butter", 1);
    put(folder.path(), "set.ron", &damaged);
    let path = folder.path().join("set.ron");
    let mut window = show(Workbench::open(&path, around()).expect("it opens"), TALL);
    window.get_by_label_contains("is damaged: sizes 2");
    assert_eq!(now(&window).sizes.len(), 6);
    press(&mut window, Modifiers::COMMAND, Key::S);
    window.get_by_label("File, with its folder");
    assert_eq!(bytes(&path), damaged.as_bytes());
}

#[test]
fn the_set_is_printed_and_drawn() {
    let folder = folder();
    let mut window = window();
    press(&mut window, Modifiers::COMMAND, Key::P);
    until_counted(&mut window);
    window.get_by_label("Tools of each size");
    click(&mut window, "Choose the file");
    give_path(&mut window, &folder.path().join("set.pdf"), "Write");
    until_done(&mut window);
    let printed = pages(&bytes(&folder.path().join("set.pdf"))).concat();
    assert!(printed.contains("The bar of the set"), "{printed}");
    press(&mut window, Modifiers::COMMAND | Modifiers::SHIFT, Key::P);
    click(&mut window, "Choose the folder");
    let out = folder.path().join("svg");
    write(&mut window, "Folder", &out.display().to_string());
    click(&mut window, "Write");
    until_done(&mut window);
    assert_eq!(names(&out).len(), 7 + 4);
}
