//! Saving, opening, printing, and what is remembered from one start to the next.

use egui::{Key, Modifiers};
use egui_kittest::kittest::Queryable;
use reinwright::jobs::pages::Consent;
use reinwright::jobs::printing;
use reinwright::window::Workbench;
use reinwright_core::draw;
use reinwright_core::paper::Paper;
use reinwright_core::tongs::{document, resolve};
use reinwright_tests::files::{bytes, folder, put, svg_size_mm};
use reinwright_tests::pairs::{self, length};
use reinwright_tests::window::{
    OnBench, TALL, around, click, fill, give_path, press, remembering, show, until_done, write,
};
use reinwright_tests::within;

use super::flat;

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

#[test]
fn an_export_never_lands_on_the_open_design() {
    let folder = folder();
    let path = folder.path().join("mine.ron");
    let mut window = flat();
    press(&mut window, Modifiers::COMMAND, Key::S);
    give_path(&mut window, &path, "Write");
    let saved = bytes(&path);
    click(&mut window, "Print to PDF");
    click(&mut window, "A4");
    click(&mut window, "Choose the file");
    give_path(&mut window, &path, "Write");
    click(&mut window, "Write");
    window.get_by_label_contains("this is the design itself");
    assert_eq!(bytes(&path), saved);
}

#[test]
fn saving_and_opening_give_the_same_design() {
    let folder = folder();
    let path = folder.path().join("mine.ron");
    let mut window = flat();
    fill(&mut window, "Work thickness", "1/4");
    let saved = window.state().document().clone();
    press(&mut window, Modifiers::COMMAND, Key::S);
    give_path(&mut window, &folder.path().join("mine"), "Write");
    assert!(!window.state().is_changed());
    let text = bytes(&path);
    assert_eq!(document::read(&text).expect("a design"), saved);
    let opened = Workbench::open(&path, around()).expect("opens");
    assert_eq!(opened.document(), &saved);
    fill(&mut window, "Work thickness", "5/16");
    press(&mut window, Modifiers::COMMAND, Key::S);
    let text = bytes(&path);
    assert_eq!(
        &document::read(&text).expect("a design"),
        window.state().document()
    );
}

#[test]
fn a_file_that_is_there_is_not_written_over_unasked() {
    let folder = folder();
    let path = folder.path().join("other.ron");
    put(folder.path(), "other.ron", "mine");
    let mut window = flat();
    press(&mut window, Modifiers::COMMAND | Modifiers::SHIFT, Key::S);
    give_path(&mut window, &path, "Write");
    window.get_by_label_contains("is there already");
    assert_eq!(bytes(&path), b"mine");
    click(&mut window, "Write");
    assert_ne!(bytes(&path), b"mine");
}

#[test]
fn a_bad_file_says_why_and_what_was_open_stays() {
    let folder = folder();
    let path = folder.path().join("bad.ron");
    put(folder.path(), "bad.ron", "(format: 1, name: 7)");
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
    let folder = folder();
    let before = printing::today();
    let mut window = flat();
    click(&mut window, "Print to PDF");
    click(&mut window, "A4");
    click(&mut window, "Choose the file");
    give_path(&mut window, &folder.path().join("pair.pdf"), "Write");
    until_done(&mut window);
    let design = window.state().document().clone();
    let days = [before, printing::today()];
    let printed = days.map(|day| {
        let template = printing::Template::of(&design, day);
        template.pdf(Paper::A4, Consent::Usual).expect("few pages")
    });
    let pdf = bytes(&folder.path().join("pair.pdf"));
    assert!(printed.contains(&pdf), "not what the command line prints");
    press(&mut window, Modifiers::COMMAND | Modifiers::SHIFT, Key::P);
    click(&mut window, "One half as a template");
    click(&mut window, "Choose the file");
    give_path(&mut window, &folder.path().join("half.svg"), "Write");
    let (width, height) = svg_size_mm(&bytes(&folder.path().join("half.svg")));
    let drawn = draw::half(&design, &resolve(&design), &draw::DrawOptions::default()).bounds();
    // Rims of 1 mm; the size is written to a hundredth.
    within("width", width, drawn.width() + 2.0, 0.02);
    within("height", height, drawn.height() + 2.0, 0.02);
}

/// The question what to print says what stands against making it, and so does what is said after.
#[test]
fn a_stop_is_said_before_and_after_printing() {
    let folder = folder();
    let mut broken = pairs::flat();
    broken
        .set("rivet.hole", "40 mm")
        .expect("inside its limits");
    let mut window = show(Workbench::with(broken, remembering(folder.path())), TALL);
    click(&mut window, "Print to PDF");
    window.get_by_label_contains("STOP, do not make it: ");
    click(&mut window, "Choose the file");
    give_path(&mut window, &folder.path().join("pair.pdf"), "Write");
    until_done(&mut window);
    window.get_by_label_contains("check bars. STOP, do not make it: ");
    let mut sound = flat();
    click(&mut sound, "Print to PDF");
    assert!(sound.query_by_label_contains("STOP").is_none());
}

#[test]
fn recent_files_are_remembered_in_plain_text() {
    let folder = folder();
    let path = folder.path().join("mine.ron");
    let kept = folder.path().join("kept");
    let bench = Workbench::with(pairs::flat(), remembering(&kept));
    let mut window = show(bench, TALL);
    press(&mut window, Modifiers::COMMAND, Key::S);
    give_path(&mut window, &path, "Write");
    let recent = String::from_utf8(bytes(&kept.join("recent"))).expect("text");
    assert_eq!(recent.lines().next(), path.to_str());
}

/// What was done goes away by itself once there was time to read it.
#[test]
fn what_was_done_goes_away_by_itself() {
    let folder = folder();
    let mut window = show(
        Workbench::with(pairs::flat(), remembering(folder.path())),
        TALL,
    );
    click(&mut window, "Print to PDF");
    click(&mut window, "Choose the file");
    give_path(&mut window, &folder.path().join("pair.pdf"), "Write");
    until_done(&mut window);
    window.get_by_label_contains("Written to");
    // A frame here takes a quarter of a second: long enough for 300 letters.
    for _ in 0..100 {
        window.step();
    }
    assert!(window.query_by_label_contains("Written to").is_none());
}
