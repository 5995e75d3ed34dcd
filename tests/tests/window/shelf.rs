//! The shelf in the window, by its labels.

use std::path::Path;

use egui::{Event, Key, Modifiers};
use egui_kittest::kittest::Queryable;
use reinwright::window::Workbench;
use reinwright_core::shop::family::{self, Family, Size};
use reinwright_core::shop::shelf::{Mark, Marks};
use reinwright_core::tongs::document::{self, Document};
use reinwright_tests::files::{bytes, folder, put};
use reinwright_tests::pairs::{starting, work};
use reinwright_tests::window::{OnBench, Window, around, click, press, show_for, undo, write};

/// Shows a workbench in a window that works out a few pairs of the shelf a frame.
fn show(bench: Workbench) -> Window {
    show_for(bench, (1500.0, 1600.0), 400)
}

fn design(name: &str, jaw: &str, work: &str) -> Document {
    Document {
        name: name.to_owned(),
        ..starting(jaw, work, "3/4 in square")
    }
}

/// Two designs, a family of two and a damaged file.
fn shop() -> tempfile::TempDir {
    let folder = folder();
    let put = |name: &str, text: &str| put(folder.path(), name, text);
    let flat = design("Thin flat", "flat", "1/8 in flat");
    put("flat.ron", &document::write(&flat));
    let v = design("Vee", "v-bit", "5/8 in square on corners");
    put("v.ron", &document::write(&v));
    let mut set = Family::from_design(&design("Flats", "flat", "1/2 in flat"));
    set.add(Size::new(work("1 in flat"))).expect("room");
    put("set.ron", &family::write(&set));
    put("broken.ron", "(format: 1, name: \"torn");
    folder
}

/// A window on a design, with the shelf of a folder before it.
fn at_shelf(folder: &Path) -> Window {
    let bench = Workbench::with(design("Own", "flat", "3/8 in flat"), around());
    let mut window = show(bench);
    click(&mut window, "Shelf");
    write(&mut window, "Folder", &folder.display().to_string());
    click(&mut window, "Open");
    window
}

fn marks(folder: &Path) -> Marks {
    Marks::read(&bytes(&folder.join("shelf.ron"))).expect("marks")
}

const PICTURES: [&str; 4] = [
    "Open Flats: 1 in flat",
    "Open Flats: 1/2 in flat",
    "Open Thin flat",
    "Open Vee",
];

#[test]
fn every_pair_of_the_folder_is_shown_and_a_damaged_file_says_so() {
    let shop = shop();
    let window = at_shelf(shop.path());
    for picture in PICTURES {
        window.get_by_label(picture);
    }
    window.get_by_label_contains("broken.ron: line 1");
    window.get_by_label("4 pairs");
    window.get_by_label("V bit jaws for 5/8 in square on its corners");
    assert_eq!(window.query_all_by_label_contains("holds ").count(), 4);
}

#[test]
fn a_picture_opens_its_design_or_the_size_of_its_family() {
    let shop = shop();
    let mut window = at_shelf(shop.path());
    click(&mut window, "Open Vee");
    assert_eq!(window.state().document().name, "Vee");
    assert!(
        window.query_by_label("Open Vee").is_none(),
        "the shelf is left"
    );
    let mut window = at_shelf(shop.path());
    click(&mut window, "Open Flats: 1 in flat");
    assert_eq!(window.state().family().expect("a family").name, "Flats");
    // The size of the picture is the chosen one.
    click(&mut window, "Take out as a design");
    assert_eq!(window.state().document().work, work("1 in flat"));
}

#[test]
fn unsaved_work_is_asked_about_before_the_shelf_opens_another() {
    let shop = shop();
    let mut window = at_shelf(shop.path());
    click(&mut window, "Back to Own");
    write(&mut window, "Name", "Changed");
    // The folder is remembered.
    click(&mut window, "Shelf");
    click(&mut window, "Open Vee");
    window.get_by_label("Not saved");
    click(&mut window, "Stay here");
    assert_eq!(window.state().document().name, "Changed");
    click(&mut window, "Open Vee");
    click(&mut window, "Throw the changes away");
    assert_eq!(window.state().document().name, "Vee");
}

/// Another folder is typed over the one that is offered, not behind it.
#[test]
fn the_folder_is_typed_over_the_one_that_stands_there() {
    let (shop, other) = (shop(), folder());
    put(
        other.path(),
        "lone.ron",
        document::write(&design("Lone", "flat", "1/2 in flat")),
    );
    let mut window = at_shelf(shop.path());
    click(&mut window, "Another folder");
    window.event(Event::Text(other.path().display().to_string()));
    window.run();
    click(&mut window, "Open");
    window.get_by_label("Open Lone");
}

#[test]
fn have_and_want_are_kept_in_the_folder() {
    let shop = shop();
    let before = bytes(&shop.path().join("v.ron"));
    let mut window = at_shelf(shop.path());
    click(&mut window, "Have Vee");
    click(&mut window, "Want Flats: 1 in flat");
    let kept = marks(shop.path());
    assert_eq!(kept.of("v.ron", ""), Some(Mark::Have));
    assert_eq!(kept.of("set.ron", "1 in flat"), Some(Mark::Want));
    let after = bytes(&shop.path().join("v.ron"));
    assert_eq!(before, after, "the design itself is not touched");
    click(&mut window, "What I have");
    window.get_by_label("Open Vee");
    assert!(window.query_by_label("Open Thin flat").is_none());
    click(&mut window, "Have Vee");
    window.get_by_label_contains("Nothing here is marked as something you have");
    assert_eq!(marks(shop.path()).of("v.ron", ""), None);
}

#[test]
fn marks_that_cannot_be_read_are_not_written_over() {
    let shop = shop();
    let path = shop.path().join("shelf.ron");
    put(shop.path(), "shelf.ron", "(shelf: 1, marks: [torn");
    let mut window = at_shelf(shop.path());
    window.get_by_label("Open Vee");
    click(&mut window, "Have Vee");
    window.get_by_label_contains("Mend or remove that file");
    assert_eq!(bytes(&path), b"(shelf: 1, marks: [torn");
}

#[test]
fn the_shelf_answers_what_holds_some_stock_best_first() {
    let shop = shop();
    let mut window = at_shelf(shop.path());
    write(&mut window, "What do I own for", "5/8 square");
    press(&mut window, Modifiers::NONE, Key::Enter);
    let well = window.query_all_by_label_contains("Holds it well").count();
    assert!((1..4).contains(&well), "{well} hold it well");
    window.get_by_label(&format!("{well} of 4 pairs hold it well"));
    let top = |window: &Window, label: &str| {
        let at = window.get_by_label(label).rect().min;
        (at.y, at.x)
    };
    let first = top(&window, "Open Vee");
    for other in &PICTURES[..3] {
        assert!(
            first < top(&window, other),
            "{other} stands before the one that holds it"
        );
    }
    write(&mut window, "What do I own for", "5/8 teapot");
    click(&mut window, "Ask");
    window.get_by_label_contains("teapot");
    assert!(
        window.query_by_label_contains("Holds it well").is_none(),
        "answers to the square under a question about a teapot"
    );
    write(&mut window, "What do I own for", "5/8 square");
    click(&mut window, "Ask");
    click(&mut window, "Have Vee");
    click(&mut window, "What I have");
    window.get_by_label("1 of 1 pairs hold it well");
    click(&mut window, "Clear");
    assert!(window.query_by_label_contains("Holds it well").is_none());
}

/// Whoever has scrolled down and asks sees the best, which is put first.
#[test]
fn a_question_begins_at_the_top_of_the_page() {
    let shop = shop();
    for n in 0..40 {
        let name = format!("flat-{n}.ron");
        let flat = design(&format!("Flat {n}"), "flat", "1/8 in flat");
        put(shop.path(), &name, document::write(&flat));
    }
    let mut window = at_shelf(shop.path());
    let first = window.get_by_label("Open Flat 0").rect().center();
    window.hover_at(first);
    window.event(egui::Event::MouseWheel {
        unit: egui::MouseWheelUnit::Point,
        delta: egui::vec2(0.0, -2000.0),
        phase: egui::TouchPhase::Move,
        source: egui::MouseWheelSource::Unknown,
        modifiers: Modifiers::NONE,
    });
    window.run();
    assert!(window.query_by_label("Open Flat 0").is_none(), "scrolled");
    write(&mut window, "What do I own for", "5/8 square on corners");
    click(&mut window, "Ask");
    window.run();
    window.get_by_label("Open Vee");
}

#[test]
fn commands_on_what_is_hidden_behind_the_shelf_change_nothing_unseen() {
    let shop = shop();
    let mut window = show(Workbench::with(
        design("Own", "flat", "3/8 in flat"),
        around(),
    ));
    write(&mut window, "Name", "Changed");
    click(&mut window, "Shelf");
    write(&mut window, "Folder", &shop.path().display().to_string());
    click(&mut window, "Open");
    undo(&mut window);
    assert_eq!(window.state().document().name, "Changed");
    let units = window.state().document().units;
    click(&mut window, "Show millimetres");
    assert_eq!(window.state().document().units, units);
    click(&mut window, "Print to PDF");
    assert!(
        window.query_by_label("Open Vee").is_none(),
        "what is printed is seen"
    );
}

#[test]
fn a_folder_that_is_not_there_is_said() {
    let bench = Workbench::with(design("Own", "flat", "3/8 in flat"), around());
    let mut window = show(bench);
    click(&mut window, "Shelf");
    write(&mut window, "Folder", "/nowhere/at/all");
    click(&mut window, "Open");
    window.get_by_label_contains("there is no such folder");
}
