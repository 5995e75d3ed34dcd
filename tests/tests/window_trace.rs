//! A picture laid under the drawing, without a renderer.

use std::path::{Path, PathBuf};
use std::time::Duration;

use egui::{Event, Key, Modifiers, PointerButton, Pos2, vec2};
use egui_kittest::Harness;
use egui_kittest::kittest::Queryable;
use reinwright::window::{Chooser, Surroundings, Workbench};
use reinwright_core::tongs::document::{self, Document};
use reinwright_tests::pairs;

type Window = Harness<'static, Workbench>;

fn show(bench: Workbench) -> Window {
    let mut window = Harness::builder()
        .with_size(vec2(1500.0, 950.0))
        .with_max_steps(60)
        .build_ui_state(|ui, bench: &mut Workbench| bench.show(ui), bench);
    window.run_ok();
    window
}

fn around(folder: Option<PathBuf>) -> Surroundings {
    Surroundings {
        chooser: Chooser::OwnField,
        folder,
    }
}

fn open(design: Document) -> Window {
    show(Workbench::with(design, around(None)))
}

/// A picture of 60 × 40 pixels: grey, with one dark row.
fn picture(folder: &Path) -> PathBuf {
    let path = folder.join("tongs.png");
    let image =
        image::GrayImage::from_fn(60, 40, |_, y| image::Luma([if y == 20 { 0 } else { 200 }]));
    image.save(&path).expect("the picture is written");
    path
}

#[track_caller]
fn click(window: &mut Window, label: &str) {
    window.get_by_label(label).click();
    window.run_ok();
}

/// Asks for a picture by its path.
#[track_caller]
fn ask(window: &mut Window, path: &Path) {
    click(window, "View");
    window.get_by_label_contains("Trace a picture").click();
    window.run_ok();
    let field = "File, with its folder";
    click(window, field);
    window.key_press_modifiers(Modifiers::COMMAND, Key::A);
    window.run_ok();
    window
        .get_by_label(field)
        .type_text(&path.display().to_string());
    window.run_ok();
    click(window, "Open");
}

/// Waits for the thread that reads.
#[track_caller]
fn wait(window: &mut Window, label: &str) {
    for _ in 0..300 {
        window.run_ok();
        if window.query_by_label_contains(label).is_some() {
            return;
        }
        std::thread::sleep(Duration::from_millis(20));
    }
    panic!("{label} never came");
}

#[track_caller]
fn traced(folder: &Path) -> Window {
    let mut window = open(pairs::flat());
    ask(&mut window, &picture(folder));
    wait(&mut window, "Remove picture");
    window
}

fn button(window: &mut Window, pos: Pos2, pressed: bool) {
    window.event(Event::PointerMoved(pos));
    window.run_ok();
    window.event(Event::PointerButton {
        pos,
        button: PointerButton::Primary,
        pressed,
        modifiers: Modifiers::NONE,
    });
    window.run_ok();
}

/// Pressed and let go within one frame: a frame here takes a quarter of a second.
fn click_at(window: &mut Window, pos: Pos2) {
    window.event(Event::PointerMoved(pos));
    window.run_ok();
    for pressed in [true, false] {
        window.event(Event::PointerButton {
            pos,
            button: PointerButton::Primary,
            pressed,
            modifiers: Modifiers::NONE,
        });
    }
    window.run_ok();
}

fn sheet(window: &Window) -> egui::Rect {
    window.get_by_label_contains("Drawing of the pair").rect()
}

#[test]
fn a_picture_is_laid_dimmed_hidden_and_taken_away() {
    let folder = tempfile::tempdir().expect("a folder");
    let mut window = traced(folder.path());
    window.get_by_label("Picture strength");
    click(&mut window, "Shown");
    click(&mut window, "Shown");
    click(&mut window, "Remove picture");
    assert!(window.query_by_label("Remove picture").is_none());
    assert!(
        !window.state().is_changed(),
        "a picture is no part of the design"
    );
}

#[test]
fn what_cannot_be_read_is_one_sentence() {
    let folder = tempfile::tempdir().expect("a folder");
    let at = |name: &str| folder.path().join(name);
    let good = std::fs::read(picture(folder.path())).expect("there");
    std::fs::write(at("cut.png"), &good[..good.len() / 2]).expect("written");
    std::fs::write(at("words.png"), "no picture at all").expect("written");
    std::fs::write(at("empty.jpg"), "").expect("written");
    // A picture that says that it is far larger than any scan: its header alone.
    let mut vast = good.clone();
    vast[16..24].copy_from_slice(&[0, 1, 0, 0, 0, 1, 0, 0]);
    std::fs::write(at("vast.png"), &vast).expect("written");
    for (name, words) in [
        ("none.png", "there is no such file"),
        ("cut.png", "it is damaged"),
        ("words.png", "this is no PNG and no JPEG"),
        ("empty.jpg", "this is no PNG and no JPEG"),
        ("vast.png", "picture"),
        (".", "this is no file"),
    ] {
        let mut window = open(pairs::flat());
        ask(&mut window, &at(name));
        wait(&mut window, words);
        assert!(window.query_by_label("Remove picture").is_none(), "{name}");
    }
}

#[test]
fn two_points_and_a_distance_scale_it() {
    let folder = tempfile::tempdir().expect("a folder");
    let mut window = traced(folder.path());
    click(&mut window, "Scale picture");
    window.get_by_label_contains("Click the first of two points whose distance");
    let middle = sheet(&window).center();
    click_at(&mut window, middle);
    window.get_by_label_contains("Click the second point");
    click_at(&mut window, middle + vec2(150.0, 40.0));
    window.run_ok();
    let field = window.get_by_label("Known distance");
    assert!(field.is_focused(), "what is typed next is the distance");
    field.type_text("a foot");
    window.run_ok();
    click(&mut window, "Set distance");
    window.get_by_label_contains("\"a foot\" is not");
    click(&mut window, "Known distance");
    window.key_press_modifiers(Modifiers::COMMAND, Key::A);
    window.run_ok();
    window.get_by_label("Known distance").type_text("9 in");
    window.run_ok();
    window.key_press(Key::Enter);
    window.run_ok();
    assert!(
        window.query_by_label("Known distance").is_none(),
        "the tool is laid down"
    );
}

#[test]
fn points_of_the_picture_are_no_clicks_on_the_design() {
    let folder = tempfile::tempdir().expect("a folder");
    let mut window = traced(folder.path());
    let before = window.state().document().clone();
    let handle = "Jaw length, on the drawing";
    let at = window.get_by_label(handle).rect().center();
    click(&mut window, "Move picture");
    assert!(
        window.query_by_label(handle).is_none(),
        "handles are put away"
    );
    button(&mut window, at, true);
    window.event(Event::PointerMoved(at + vec2(50.0, 20.0)));
    window.run_ok();
    button(&mut window, at + vec2(50.0, 20.0), false);
    assert_eq!(window.state().document(), &before);
    window.key_press(Key::Escape);
    window.run_ok();
    window.run_ok();
    let back = window.get_by_label(handle).rect().center();
    assert!(
        (back - at).length() < 1.0,
        "the view stayed: {back:?} {at:?}"
    );
}

#[test]
fn squaring_takes_two_clicks() {
    let folder = tempfile::tempdir().expect("a folder");
    let mut window = traced(folder.path());
    click(&mut window, "Square picture");
    let middle = sheet(&window).center();
    click_at(&mut window, middle);
    click_at(&mut window, middle + vec2(150.0, 40.0));
    assert!(
        window.query_by_label_contains("Click the").is_none(),
        "the tool is laid down"
    );
}

/// A design saved in a folder, and the window on it that remembers there; opened as often as one
/// likes.
fn saved_in(folder: &Path) -> (PathBuf, impl Fn() -> Window) {
    let (kept, path) = (folder.join("kept"), folder.join("mine.ron"));
    std::fs::write(&path, document::write(&pairs::flat())).expect("written");
    let opened = path.clone();
    let again = move || {
        let bench = Workbench::open(&opened, around(Some(kept.clone())));
        show(bench.expect("the design opens"))
    };
    (path, again)
}

/// A saved design finds its picture again; its file does not know of it.
#[test]
fn the_picture_is_remembered_beside_the_design() {
    let folder = tempfile::tempdir().expect("a folder");
    let (path, again) = saved_in(folder.path());
    let mut window = again();
    assert!(window.query_by_label("Remove picture").is_none());
    ask(&mut window, &picture(folder.path()));
    wait(&mut window, "Remove picture");
    window.run_ok();
    let text = std::fs::read_to_string(&path).expect("there");
    assert!(!text.contains("tongs.png"), "{text}");
    let mut window = again();
    wait(&mut window, "Remove picture");
    click(&mut window, "Remove picture");
    window.run_ok();
    let mut window = again();
    std::thread::sleep(Duration::from_millis(200));
    window.run_ok();
    assert!(window.query_by_label("Remove picture").is_none());
}

#[test]
fn a_picture_that_is_gone_is_said_and_not_forgotten() {
    let folder = tempfile::tempdir().expect("a folder");
    let (_, again) = saved_in(folder.path());
    let mut window = again();
    let png = picture(folder.path());
    ask(&mut window, &png);
    wait(&mut window, "Remove picture");
    window.run_ok();
    std::fs::rename(&png, folder.path().join("away.png")).expect("moved");
    let mut window = again();
    wait(&mut window, "there is no such file");
    window.run_ok();
    std::fs::rename(folder.path().join("away.png"), &png).expect("moved back");
    let mut window = again();
    wait(&mut window, "Remove picture");
}
