//! The window by its labels: what is clicked and typed must stand in the document.

use std::path::{Path, PathBuf};

use egui::accesskit::Role;
use egui::{Key, Modifiers, vec2};
use egui_kittest::Harness;
use egui_kittest::kittest::{NodeT, Queryable};
use reinwright::window::{Chooser, Surroundings, Workbench};
use reinwright_core::asked::{self, Units, parse_bar, parse_work};
use reinwright_core::tongs::document::{self, Document};
use reinwright_core::tongs::jaw::JawKind;
use reinwright_core::units::Length;

type Window = Harness<'static, Workbench>;

/// The smallest window that must do.
const SMALL: (f32, f32) = (1024.0, 700.0);
/// One in which the whole parts list shows.
const TALL: (f32, f32) = (1300.0, 1900.0);

fn around(folder: Option<PathBuf>) -> Surroundings {
    Surroundings {
        chooser: Chooser::OwnField,
        folder,
    }
}

fn show(bench: Workbench, (width, height): (f32, f32)) -> Window {
    let mut window = Harness::builder()
        .with_size(vec2(width, height))
        .with_max_steps(40)
        .build_ui_state(|ui, bench: &mut Workbench| bench.show(ui), bench);
    window.run();
    window
}

/// A tall window on a flat pair in inches.
fn flat() -> Window {
    let work = parse_work("3/8 in flat").expect("work");
    let bar = parse_bar("3/4 in square").expect("bar");
    let design = Document::starting(JawKind::Flat, work, bar);
    show(Workbench::with(design, around(None)), TALL)
}

fn length(text: &str) -> Length {
    text.parse().expect("a length")
}

#[track_caller]
fn click(window: &mut Window, label: &str) {
    window.get_by_label(label).click();
    window.run();
}

/// Opens the fields of a part.
#[track_caller]
fn unfold(window: &mut Window, part: &str) {
    window
        .get_by_role_and_label(Role::DisclosureTriangle, part)
        .click();
    window.run();
}

/// Clicks a field, types over what stands there, and presses Enter.
#[track_caller]
fn fill(window: &mut Window, label: &str, text: &str) {
    write(window, label, text);
    window.key_press(Key::Enter);
    window.run();
}

/// The same without Enter.
#[track_caller]
fn write(window: &mut Window, label: &str, text: &str) {
    click(window, label);
    window.key_press_modifiers(Modifiers::COMMAND, Key::A);
    window.run();
    window.get_by_label(label).type_text(text);
    window.run();
}

fn press(window: &mut Window, modifiers: Modifiers, key: Key) {
    window.key_press_modifiers(modifiers, key);
    window.run();
}

#[test]
fn starts_on_a_ready_design() {
    let window = show(Workbench::new(around(None)), SMALL);
    let first = include_bytes!("../../samples/textbook-light-chain.ron");
    assert_eq!(
        window.state().document(),
        &document::read(first).expect("sample")
    );
    assert!(!window.state().is_changed());
    window.get_by_label("Bar to cut for the pair");
}

#[test]
fn a_typed_size_stands_in_the_document() {
    let mut window = flat();
    unfold(&mut window, "Boss");
    fill(&mut window, "Boss thickness", "7/16 in");
    assert_eq!(window.state().document().boss.thickness, length("7/16 in"));
    fill(&mut window, "Boss thickness", "1/2");
    assert_eq!(window.state().document().boss.thickness, length("1/2 in"));
    let shown = window.get_by_label("Boss thickness").value();
    assert_eq!(shown.as_deref(), Some("1/2 in"));
}

/// Nothing has no unit of its own: it reads as the design counts, and a step from it is in that
/// unit.
#[test]
fn nothing_is_in_the_unit_of_the_design() {
    let window = flat();
    let shown = window.get_by_label("Jaw crease").value();
    assert_eq!(shown.as_deref(), Some("0 in"));
}

/// In a window far too small the sheet ends where the answers begin, so that the whole drawing is
/// in sight.
#[test]
fn the_sheet_stays_clear_of_the_answers() {
    let mut window = show(Workbench::new(around(None)), (900.0, 600.0));
    // A sketch asks for a wider list of parts.
    click(&mut window, "Draw on it");
    let sheet = window.get_by_label_contains("Drawing of the pair").rect();
    let answers = window.get_by_role_and_label(Role::Button, "Bar").rect();
    assert!(sheet.right() <= answers.left(), "{sheet:?} {answers:?}");
    let row = window.get_by_label("True size").rect();
    assert!(row.right() <= answers.left(), "{row:?} {answers:?}");
}

#[test]
fn the_answers_follow_a_typed_size() {
    let mut window = flat();
    let before = window.state().document().clone();
    fill(&mut window, "Bar side", "1 in");
    let after = window.state().document();
    assert_ne!(&before, after);
    let model = reinwright_core::tongs::resolve(after);
    let balance = reinwright_core::forge::balance::balance(after, &model);
    let shown = after.units.show().text(balance.pair_bar_length_mm);
    assert!(
        window.get_all_by_label(&shown).count() >= 1,
        "{shown} is not shown"
    );
}

#[test]
fn a_bad_size_says_why_and_changes_nothing() {
    let mut window = flat();
    let before = window.state().document().clone();
    fill(&mut window, "Work thickness", "three eighths");
    window.get_by_label_contains("\"three eighths\" is not a size");
    assert_eq!(window.state().document(), &before);
    fill(&mut window, "Work thickness", "900 mm");
    window.get_by_label_contains(
        "\"900 mm\" is outside its limits: give a value from 0.5 mm to 200 mm",
    );
    assert_eq!(window.state().document(), &before);
    assert_eq!(
        window.get_by_label("Work thickness").value().as_deref(),
        Some("3/8 in")
    );
    fill(&mut window, "Work thickness", "1/4");
    assert!(
        window
            .query_by_label_contains("outside its limits")
            .is_none()
    );
}

#[test]
fn escape_leaves_the_old_value() {
    let mut window = flat();
    let before = window.state().document().clone();
    write(&mut window, "Work thickness", "1/2");
    press(&mut window, Modifiers::NONE, Key::Escape);
    assert_eq!(window.state().document(), &before);
}

#[test]
fn arrow_keys_and_buttons_step_a_size() {
    let mut window = flat();
    click(&mut window, "Work thickness");
    press(&mut window, Modifiers::NONE, Key::ArrowUp);
    let thickness = |window: &Window| window.state().document().work.size();
    assert_eq!(thickness(&window), length("7/16 in"));
    press(&mut window, Modifiers::SHIFT, Key::ArrowDown);
    assert_eq!(thickness(&window), length("27/64 in"));
    click(&mut window, "Work thickness, less");
    assert_eq!(thickness(&window), length("3/8 in"));
    click(&mut window, "Work thickness, more");
    assert_eq!(thickness(&window), length("7/16 in"));
}

#[test]
fn a_screen_reader_can_set_a_value() {
    let mut window = flat();
    window
        .get_by_label("Work thickness")
        .set_text_value_accesskit("1/2 in");
    window.run();
    assert_eq!(window.state().document().work.size(), length("1/2 in"));
}

#[test]
fn a_choice_changes_the_jaw() {
    let mut window = flat();
    click(&mut window, "Jaw style");
    click(&mut window, "v bit");
    assert_eq!(window.state().document().jaw.name(), "v bit");
    window.get_by_label("Jaw heel");
}

#[test]
fn each_change_is_one_step_of_undo() {
    let mut window = flat();
    let first = window.state().document().clone();
    fill(&mut window, "Work thickness", "1/4");
    let second = window.state().document().clone();
    fill(&mut window, "Bar side", "5/8");
    let third = window.state().document().clone();
    let undo = |window: &mut Window| press(window, Modifiers::COMMAND, Key::Z);
    let redo = |window: &mut Window| press(window, Modifiers::COMMAND | Modifiers::SHIFT, Key::Z);
    undo(&mut window);
    assert_eq!(window.state().document(), &second);
    undo(&mut window);
    assert_eq!(window.state().document(), &first);
    undo(&mut window);
    assert_eq!(
        window.state().document(),
        &first,
        "nothing lies before the first"
    );
    redo(&mut window);
    redo(&mut window);
    assert_eq!(window.state().document(), &third);
    click(&mut window, "Undo");
    assert_eq!(window.state().document(), &second);
    fill(&mut window, "Work thickness", "5/16");
    let fourth = window.state().document().clone();
    redo(&mut window);
    assert_eq!(window.state().document(), &fourth, "a new change ends redo");
}

#[test]
fn undo_keys_belong_to_a_text_field_while_it_is_typed_in() {
    let mut window = flat();
    fill(&mut window, "Work thickness", "1/4");
    let changed = window.state().document().clone();
    write(&mut window, "Bar side", "5/8");
    press(&mut window, Modifiers::COMMAND, Key::Z);
    assert_eq!(window.state().document(), &changed);
}

#[test]
fn a_name_is_one_step_of_undo() {
    let mut window = flat();
    let before = window.state().document().clone();
    for text in ["B", "ig", " ones"] {
        window.get_by_label("Name").focus();
        window.run();
        window.key_press(Key::End);
        window.get_by_label("Name").type_text(text);
        window.run();
    }
    assert!(window.state().document().name.ends_with("Big ones"));
    press(&mut window, Modifiers::NONE, Key::Enter);
    press(&mut window, Modifiers::COMMAND, Key::Z);
    assert_eq!(window.state().document(), &before);
}

#[test]
fn millimetres_and_inches_at_a_click() {
    let mut window = flat();
    click(&mut window, "Show millimetres");
    assert_eq!(window.state().document().units, Units::Millimetre);
    assert!(window.query_all_by_label_contains("cm³").count() > 0);
    fill(&mut window, "Work thickness", "12");
    assert_eq!(window.state().document().work.size(), length("12 mm"));
    click(&mut window, "Show inches");
    assert!(window.query_all_by_label_contains("cm³").next().is_none());
}

#[test]
fn a_finding_leads_to_its_part() {
    let mut window = flat();
    unfold(&mut window, "Rivet");
    fill(&mut window, "Rivet hole", "1 1/8");
    window.get_by_label_contains("Findings:").click();
    window.run();
    assert!(
        window.query_by_label("Boss thickness").is_none(),
        "the boss is closed"
    );
    let boss = "Stop: boss: ";
    window
        .get_all_by_label_contains(boss)
        .next()
        .expect("a finding at the boss")
        .click();
    window.run();
    window.get_by_label("Boss thickness");
}

#[test]
fn a_new_pair_says_what_is_wrong_in_place() {
    let mut window = flat();
    press(&mut window, Modifiers::COMMAND, Key::N);
    window.get_by_label("Hollow bit").click();
    fill(&mut window, "Work to hold", "5/8 in rounded");
    click(&mut window, "Begin");
    window.get_by_label_contains("names no shape that is known here");
    fill(&mut window, "Work to hold", "5/8 in round");
    write(&mut window, "Bar to forge from", "18 mm square");
    click(&mut window, "Begin");
    assert_eq!(window.state().document().jaw.name(), "hollow bit");
    assert_eq!(window.state().document().units, Units::Millimetre);
}

/// A size without a unit is in the unit of the design, as in every other field; a square goes into
/// a V on its corners unless it is said how it lies; Enter behind the last answer begins.
#[test]
fn a_new_pair_lays_its_work_as_the_jaw_takes_it() {
    let begun = |work: &str| {
        let mut window = flat();
        press(&mut window, Modifiers::COMMAND, Key::N);
        window.get_by_label("V bit").click();
        fill(&mut window, "Work to hold", work);
        fill(&mut window, "Bar to forge from", "3/4 square");
        window.state().document().work
    };
    let work = |text: &str| parse_work(text).expect("work");
    assert_eq!(begun("3/4 square"), work("3/4 in square on corners"));
    assert_eq!(begun("3/4 square on flats"), work("3/4 in square"));
}

#[test]
fn unsaved_work_is_asked_about() {
    let mut window = flat();
    fill(&mut window, "Work thickness", "1/4");
    let changed = window.state().document().clone();
    press(&mut window, Modifiers::COMMAND, Key::Q);
    click(&mut window, "Stay here");
    assert!(!window.state().may_close());
    assert_eq!(window.state().document(), &changed);
    press(&mut window, Modifiers::COMMAND, Key::Q);
    click(&mut window, "Throw the changes away");
    assert!(window.state().may_close());
}

#[test]
fn a_text_that_is_being_typed_is_not_lost() {
    let mut window = flat();
    write(&mut window, "Work thickness", "1/4");
    press(&mut window, Modifiers::COMMAND, Key::Q);
    window.get_by_label("Not saved");
    assert_eq!(window.state().document().work.size(), length("1/4 in"));
}

/// Types a path into the window's own field and accepts.
#[track_caller]
fn give_path(window: &mut Window, path: &Path, accept: &str) {
    write(window, "File, with its folder", &path.display().to_string());
    click(window, accept);
}

#[test]
fn an_export_never_lands_on_the_open_design() {
    let folder = tempfile::tempdir().expect("a folder");
    let path = folder.path().join("mine.ron");
    let mut window = flat();
    press(&mut window, Modifiers::COMMAND, Key::S);
    give_path(&mut window, &path, "Write");
    let saved = std::fs::read(&path).expect("the design was saved");
    click(&mut window, "Print to PDF");
    click(&mut window, "A4");
    click(&mut window, "Choose the file");
    give_path(&mut window, &path, "Write");
    click(&mut window, "Write");
    window.get_by_label_contains("this is the design itself");
    assert_eq!(std::fs::read(&path).expect("still there"), saved);
}

#[test]
fn saving_and_opening_give_the_same_design() {
    let folder = tempfile::tempdir().expect("a folder");
    let path = folder.path().join("mine.ron");
    let mut window = flat();
    fill(&mut window, "Work thickness", "1/4");
    let saved = window.state().document().clone();
    press(&mut window, Modifiers::COMMAND, Key::S);
    give_path(&mut window, &folder.path().join("mine"), "Write");
    assert!(!window.state().is_changed());
    let text = std::fs::read(&path).expect("written");
    assert_eq!(document::read(&text).expect("a design"), saved);
    let opened = Workbench::open(&path, around(None)).expect("opens");
    assert_eq!(opened.document(), &saved);
    fill(&mut window, "Work thickness", "5/16");
    press(&mut window, Modifiers::COMMAND, Key::S);
    let text = std::fs::read(&path).expect("written again, without a question");
    assert_eq!(
        &document::read(&text).expect("a design"),
        window.state().document()
    );
}

#[test]
fn a_file_that_is_there_is_not_written_over_unasked() {
    let folder = tempfile::tempdir().expect("a folder");
    let path = folder.path().join("other.ron");
    std::fs::write(&path, "mine").expect("written");
    let mut window = flat();
    press(&mut window, Modifiers::COMMAND | Modifiers::SHIFT, Key::S);
    give_path(&mut window, &path, "Write");
    window.get_by_label_contains("is there already");
    assert_eq!(std::fs::read(&path).expect("there"), b"mine");
    click(&mut window, "Write");
    assert_ne!(std::fs::read(&path).expect("there"), b"mine");
}

#[test]
fn a_bad_file_says_why_and_what_was_open_stays() {
    let folder = tempfile::tempdir().expect("a folder");
    let path = folder.path().join("bad.ron");
    std::fs::write(&path, "(format: 1, name: 7)").expect("written");
    let mut window = flat();
    let before = window.state().document().clone();
    press(&mut window, Modifiers::COMMAND, Key::O);
    give_path(&mut window, &path, "Open");
    window.get_by_label_contains("line 1, column");
    assert_eq!(window.state().document(), &before);
    give_path(&mut window, &folder.path().join("none.ron"), "Open");
    window.get_by_label_contains("there is no such file");
    click(&mut window, "Cancel");
    assert_eq!(window.state().document(), &before);
}

#[test]
fn pages_and_drawings_are_written() {
    let folder = tempfile::tempdir().expect("a folder");
    let mut window = flat();
    click(&mut window, "Print to PDF");
    click(&mut window, "A4");
    click(&mut window, "Choose the file");
    give_path(&mut window, &folder.path().join("pair.pdf"), "Write");
    let pdf = std::fs::read(folder.path().join("pair.pdf")).expect("written");
    assert!(pdf.starts_with(b"%PDF"));
    press(&mut window, Modifiers::COMMAND | Modifiers::SHIFT, Key::P);
    click(&mut window, "One half as a template");
    click(&mut window, "Choose the file");
    give_path(&mut window, &folder.path().join("half.svg"), "Write");
    let svg = std::fs::read_to_string(folder.path().join("half.svg")).expect("written");
    assert!(svg.contains("<svg"));
}

#[test]
fn recent_files_are_remembered_in_plain_text() {
    let folder = tempfile::tempdir().expect("a folder");
    let path = folder.path().join("mine.ron");
    let work = parse_work("3/8 in flat").expect("work");
    let bar = parse_bar("3/4 in square").expect("bar");
    let design = Document::starting(JawKind::Flat, work, bar);
    let kept = folder.path().join("kept");
    let mut window = show(Workbench::with(design, around(Some(kept.clone()))), TALL);
    press(&mut window, Modifiers::COMMAND, Key::S);
    give_path(&mut window, &path, "Write");
    let recent = std::fs::read_to_string(kept.join("recent")).expect("kept");
    assert_eq!(recent.lines().next(), path.to_str());
}

#[test]
fn an_unsaved_design_is_brought_back() {
    let folder = tempfile::tempdir().expect("a folder");
    let mut lost = flat().into_state().document().clone();
    "Nearly lost".clone_into(&mut lost.name);
    // No process has this number: the largest that Linux gives is 4194304.
    let copy = folder.path().join("rescue-99999999.ron");
    std::fs::write(&copy, document::write(&lost)).expect("written");
    let bench = Workbench::new(around(Some(folder.path().to_owned())));
    let mut window = show(bench, SMALL);
    click(&mut window, "Bring it back");
    assert_eq!(window.state().document(), &lost);
    assert!(window.state().is_changed(), "it is still to be saved");
    assert!(!copy.exists());
    let own = format!("rescue-{}.ron", std::process::id());
    let kept = std::fs::read(folder.path().join(own)).expect("kept again until it is saved");
    assert_eq!(document::read(&kept).expect("a design"), lost);
}

#[test]
fn everything_is_in_reach_in_the_smallest_window() {
    let window = show(Workbench::new(around(None)), SMALL);
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
        "Whole drawing",
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
    let slider = window
        .get_all_by_label("Opened by")
        .find(|node| node.accesskit_node().numeric_value().is_some())
        .expect("a slider");
    slider.set_value_accesskit(12.0);
    window.run();
    let value = window
        .get_all_by_label("Opened by")
        .find_map(|node| node.accesskit_node().numeric_value());
    assert_eq!(value, Some(12.0));
    assert_eq!(window.state().document(), &before);
    assert!(!window.state().is_changed());
}

#[test]
fn the_screen_is_measured_with_a_card() {
    let folder = tempfile::tempdir().expect("a folder");
    let bench = Workbench::new(around(Some(folder.path().to_owned())));
    let mut window = show(bench, SMALL);
    click(&mut window, "View");
    window.get_by_label_contains("Measure the screen").click();
    window.run();
    let slider = window
        .get_all_by_label("Points of the screen to one millimetre")
        .find(|node| node.accesskit_node().numeric_value().is_some())
        .expect("a slider");
    slider.set_value_accesskit(4.5);
    window.run();
    click(&mut window, "That is its size");
    let kept = std::fs::read_to_string(folder.path().join("screen")).expect("kept");
    assert_eq!(kept.trim(), "4.5");
    window.get_by_label("100 %");
}

#[test]
fn the_window_comes_to_rest() {
    let mut window = show(Workbench::new(around(None)), SMALL);
    // `run` fails when the window goes on asking for frames.
    window.run();
    let steps = window.run();
    assert!(steps <= 2, "{steps} frames without a cause");
}

#[test]
fn every_style_of_every_choice_can_be_shown() {
    let mut window = flat();
    let design = window.state().document().clone();
    for field in design.fields() {
        let ways = field.value.ways();
        for chosen in 0..ways.len() {
            let mut design = design.clone();
            design.put(&field.path, asked::Value::Choice { ways, chosen });
            *window.state_mut() = Workbench::with(design, around(None));
            window.run();
        }
    }
}
