//! The window without a display: shown in a size, found by the labels that a screen reader reads,
//! clicked, typed into, pointed at.

use std::path::{Path, PathBuf};

use egui::accesskit::Role;
use egui::{Event, Key, Modifiers, PointerButton, Pos2, vec2};
use egui_kittest::Harness;
use egui_kittest::kittest::{NodeT, Queryable};
use reinwright::window::{Chooser, Surroundings, Workbench};
use reinwright_core::tongs::document::Document;

/// A workbench that is shown.
pub type Window = Harness<'static, Workbench>;

/// The smallest window that must do.
pub const SMALL: (f32, f32) = (1024.0, 700.0);
/// One in which the whole list of parts shows.
pub const TALL: (f32, f32) = (1300.0, 1900.0);

/// A change is drawn and comes to rest in fewer frames than these.
pub(crate) const FRAMES: u64 = 40;

/// Surroundings that ask for paths in the window's own field and remember nothing.
pub fn around() -> Surroundings {
    Surroundings {
        chooser: Chooser::OwnField,
        folder: None,
        kept: None,
    }
}

/// The same with a folder to remember in.
pub fn remembering(folder: impl Into<PathBuf>) -> Surroundings {
    let folder = folder.into();
    Surroundings {
        kept: Some(folder.join("kept")),
        folder: Some(folder),
        ..around()
    }
}

/// Shows a workbench in a size.
pub fn show(bench: Workbench, size: (f32, f32)) -> Window {
    show_for(bench, size, FRAMES)
}

/// Shows a workbench that may draw so many frames before it comes to rest.
pub fn show_for(bench: Workbench, (width, height): (f32, f32), frames: u64) -> Window {
    let mut window = Harness::builder()
        .with_size(vec2(width, height))
        .with_max_steps(frames)
        .build_ui_state(|ui, bench: &mut Workbench| bench.show(ui), bench);
    window.run();
    window
}

/// Shows a design in a size.
pub fn show_design(design: Document, size: (f32, f32)) -> Window {
    show(Workbench::with(design, around()), size)
}

/// Clicks what has a label.
#[track_caller]
pub fn click(window: &mut Window, label: &str) {
    window.get_by_label(label).click();
    window.run();
}

/// Clicks the only thing whose label has these words.
#[track_caller]
pub fn click_with(window: &mut Window, words: &str) {
    window.get_by_label_contains(words).click();
    window.run();
}

/// Opens the fields of a part.
#[track_caller]
pub fn unfold(window: &mut Window, part: &str) {
    let sign = window.get_by_role_and_label(Role::DisclosureTriangle, part);
    sign.click();
    window.run();
}

/// Clicks a field and types over what stands there.
#[track_caller]
pub fn write(window: &mut Window, label: &str, text: &str) {
    click(window, label);
    press(window, Modifiers::COMMAND, Key::A);
    window.get_by_label(label).type_text(text);
    window.run();
}

/// The same, and presses Enter.
#[track_caller]
pub fn fill(window: &mut Window, label: &str, text: &str) {
    write(window, label, text);
    press(window, Modifiers::NONE, Key::Enter);
}

/// Types a path into the window's own field and accepts with a button.
#[track_caller]
pub fn give_path(window: &mut Window, path: &Path, accept: &str) {
    write(window, "File, with its folder", &path.display().to_string());
    click(window, accept);
}

/// Frames until nothing is being written any more.
#[track_caller]
pub fn until_done(window: &mut Window) {
    for _ in 0..2000 {
        window.step();
        if !window.state().is_at_work() {
            window.run();
            return;
        }
        std::thread::sleep(std::time::Duration::from_millis(20));
    }
    panic!("the job goes on for more than 40 s");
}

/// Frames until the pages are counted.
#[track_caller]
pub fn until_counted(window: &mut Window) {
    for _ in 0..2000 {
        window.step();
        if window
            .query_by_label_contains("Counting the pages")
            .is_none()
        {
            window.run();
            return;
        }
        std::thread::sleep(std::time::Duration::from_millis(20));
    }
    panic!("pages are counted for more than 40 s");
}

/// Presses a key.
pub fn press(window: &mut Window, modifiers: Modifiers, key: Key) {
    window.key_press_modifiers(modifiers, key);
    window.run();
}

/// Presses the keys of undo.
pub fn undo(window: &mut Window) {
    press(window, Modifiers::COMMAND, Key::Z);
}

/// Presses the keys of redo.
pub fn redo(window: &mut Window) {
    press(window, Modifiers::COMMAND | Modifiers::SHIFT, Key::Z);
}

/// What a field shows.
#[track_caller]
pub fn value(window: &Window, label: &str) -> Option<String> {
    window.get_by_label(label).value()
}

/// Whether what has a label can be used.
#[track_caller]
pub fn is_enabled(window: &Window, label: &str) -> bool {
    !window.get_by_label(label).accesskit_node().is_disabled()
}

/// Sets the slider of a label, as a screen reader does.
#[track_caller]
pub fn slide(window: &mut Window, label: &str, to: f64) {
    let slider = window
        .get_all_by_label(label)
        .find(|node| node.accesskit_node().numeric_value().is_some());
    slider.expect("a slider").set_value_accesskit(to);
    window.run();
}

/// Moves the pointer.
pub fn point(window: &mut Window, at: Pos2) {
    window.event(Event::PointerMoved(at));
    window.run();
}

/// Presses the pointer's button at a place.
pub fn hold(window: &mut Window, at: Pos2) {
    window.event(primary(at, true));
    window.run();
}

/// Lets the pointer's button go at a place.
pub fn release(window: &mut Window, at: Pos2) {
    window.event(primary(at, false));
    window.run();
}

/// Clicks a place, pressed and let go within one frame: a frame here takes a quarter of a second.
pub fn click_at(window: &mut Window, at: Pos2) {
    point(window, at);
    window.event(primary(at, true));
    window.event(primary(at, false));
    window.run();
}

fn primary(pos: Pos2, pressed: bool) -> Event {
    Event::PointerButton {
        pos,
        button: PointerButton::Primary,
        pressed,
        modifiers: Modifiers::NONE,
    }
}

/// What a test looks into the window for.
pub trait OnBench {
    /// The design as it stands, or the base of the family that is open.
    fn document(&self) -> &Document;
}

impl OnBench for Workbench {
    #[track_caller]
    fn document(&self) -> &Document {
        self.design()
            .expect("a design or a family of pairs is open")
    }
}
