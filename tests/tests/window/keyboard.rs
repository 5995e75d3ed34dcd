//! Every dialog by the keyboard: it takes it when it opens, Escape closes it and gives it back, Enter
//! does the main thing.

use egui::{Color32, Key, Modifiers};
use egui_kittest::kittest::{NodeT, Queryable};
use reinwright::window::Workbench;
use reinwright_core::asked::Units;
use reinwright_tests::files::folder;
use reinwright_tests::painted::{Seen, look_at};
use reinwright_tests::pairs;
use reinwright_tests::window::{
    SMALL, TALL, Window, around, click, fill, press, remembering, show, until_counted,
};

use super::pictures::pages::{self, Page, Way};

/// How a dialog answers Enter.
enum Enter {
    /// It closes.
    Closes,
    /// It goes on to something that has this label.
    GoesOn(&'static str),
}

use Enter::{Closes, GoesOn};

/// Every dialog by the name of its page, with a label that only it has, and what Enter does.
const DIALOGS: &[(&str, &str, Enter)] = &[
    ("new pair", "Work to hold", GoesOn("These hold it well")),
    ("its jaw", "These hold it well", GoesOn("Another bar")),
    ("its bar", "Another bar", Closes),
    ("choose", "I must hold", Closes),
    (
        "print",
        "Measure a printer",
        GoesOn("File, with its folder"),
    ),
    (
        "job sheet",
        "Job sheet to PDF",
        GoesOn("File, with its folder"),
    ),
    ("svg", "Drawing to SVG", GoesOn("File, with its folder")),
    ("about", "For smiths who make their own tongs.", Closes),
    ("measure", "With a bank card", Closes),
    ("new tool", "Which tool?", GoesOn("Begin this tool")),
    ("its size", "Begin this tool", Closes),
    (
        "tools for this pair",
        "Save all into a folder…",
        GoesOn("Folder"),
    ),
];

fn key(window: &mut Window, key: Key) {
    press(window, Modifiers::NONE, key);
}

fn page(name: &str) -> Page {
    let found = pages::ALL.iter().find(|page| page.0 == name);
    *found.expect("there is such a page")
}

/// What has the keyboard, by its label.
fn focused(window: &Window) -> Option<String> {
    let all = window.query_all_by(|node| node.is_focused());
    let named = |node: egui_kittest::Node<'_>| node.accesskit_node().label();
    // The window itself has it while nothing in it has.
    all.filter_map(named).next_back()
}

/// A dialog that was opened while the button Shelf had the keyboard.
fn opened(name: &str) -> Seen {
    let way = Way {
        size: SMALL,
        units: Units::Inch,
        theme: "light",
        fine: 1.0,
    };
    let (_, open) = page(name);
    let mut seen = pages::show(("", |_| {}), "v-bit-square", way);
    seen.window.get_by_label("Shelf").focus();
    seen.window.run();
    open(&mut seen.window);
    seen
}

fn is_open(window: &Window, label: &str) -> bool {
    window.query_all_by_label(label).next().is_some()
}

#[test]
fn every_dialog_has_the_keyboard_and_escape_closes_it() {
    for (name, label, _) in DIALOGS {
        let mut window = opened(name).window;
        assert!(is_open(&window, label), "{name}");
        let inside = focused(&window);
        assert!(inside.is_some(), "{name}: nothing has the keyboard");
        assert_ne!(inside.as_deref(), Some("Shelf"), "{name}");
        for _ in 0..16 {
            key(&mut window, Key::Tab);
            let inside = focused(&window);
            assert_ne!(inside.as_deref(), Some("Shelf"), "{name}: Tab leaves it");
        }
        key(&mut window, Key::Escape);
        assert!(!is_open(&window, label), "{name} stays open");
    }
}

/// Those that keys open leave what had the keyboard as it was.
#[test]
fn the_keyboard_is_back_where_it_was_when_a_dialog_closes() {
    for name in ["new pair", "print", "job sheet", "svg", "about", "new tool"] {
        let mut window = opened(name).window;
        key(&mut window, Key::Escape);
        assert_eq!(focused(&window).as_deref(), Some("Shelf"), "{name}");
    }
}

#[test]
fn enter_does_the_main_thing_in_every_dialog() {
    for (name, label, does) in DIALOGS {
        let mut window = opened(name).window;
        let on = focused(&window);
        key(&mut window, Key::Enter);
        match does {
            Closes => assert!(!is_open(&window, label), "{name} stays open, {on:?}"),
            GoesOn(next) => assert!(is_open(&window, next), "{name}: no {next}"),
        }
    }
}

/// From a field or a choice too.
#[test]
fn ctrl_and_enter_do_the_main_thing_from_anywhere() {
    let mut window = opened("print").window;
    until_counted(&mut window);
    window.get_by_label("Other or roll").focus();
    window.run();
    press(&mut window, Modifiers::COMMAND, Key::Enter);
    assert!(is_open(&window, "File, with its folder"));
}

#[test]
fn escape_closes_a_large_page_and_leaves_its_dialog() {
    let mut window = opened("print").window;
    until_counted(&mut window);
    window.get_by_label("Page 2 of 4").focus();
    window.run();
    key(&mut window, Key::Enter);
    assert!(is_open(&window, "Page after"));
    key(&mut window, Key::Escape);
    assert!(!is_open(&window, "Page after"));
    assert!(is_open(&window, "Measure a printer"));
    assert_eq!(focused(&window).as_deref(), Some("Page 2 of 4"));
    key(&mut window, Key::Escape);
    assert!(!is_open(&window, "Measure a printer"));
}

/// The questions that stand between a smith and unsaved work.
#[test]
fn questions_about_files_answer_enter_and_escape() {
    let kept = folder();
    let path = kept.path().join("pair.ron");
    let mut window = show(
        Workbench::with(pairs::flat(), remembering(kept.path())),
        TALL,
    );
    fill(&mut window, "Jaw length", "3 in");
    press(&mut window, Modifiers::COMMAND, Key::O);
    assert!(is_open(&window, "Not saved"));
    key(&mut window, Key::Escape);
    assert!(!is_open(&window, "Not saved"));
    press(&mut window, Modifiers::COMMAND, Key::O);
    key(&mut window, Key::Enter);
    assert!(is_open(&window, "Save to a file"), "Save first");
    key(&mut window, Key::Escape);
    assert!(!is_open(&window, "Save to a file"));
    press(&mut window, Modifiers::COMMAND, Key::S);
    fill(
        &mut window,
        "File, with its folder",
        &path.display().to_string(),
    );
    assert!(path.exists(), "Enter writes");
    fill(&mut window, "Jaw length", "3 1/4 in");
    press(&mut window, Modifiers::COMMAND, Key::S);
    for closing in [Key::Escape, Key::Enter] {
        click(&mut window, "File");
        click(&mut window, "Earlier versions");
        assert!(is_open(&window, "Bring back version 1"));
        key(&mut window, closing);
        assert!(!is_open(&window, "Bring back version 1"));
    }
    assert!(window.state().is_changed(), "Enter brought it back");
}

/// The ring about what has the keyboard, as `window/paint/theme.rs` has it by day.
const RING: Color32 = Color32::from_rgb(0x0a, 0x4a, 0x8f);

fn ring(seen: &Seen) -> usize {
    let picture = seen.picture();
    let near = |pixel: &&Color32| {
        let channels = pixel.to_array().into_iter().zip(RING.to_array());
        channels.into_iter().all(|(a, b)| a.abs_diff(b) < 40)
    };
    picture.pixels.iter().filter(near).count()
}

/// WCAG 2.2, 2.4.13: an area as large as a line of two points about it, which a pointer alone brings
/// nowhere.
#[test]
fn what_has_the_keyboard_has_a_ring_and_what_is_under_the_pointer_has_none() {
    let mut seen = look_at(Workbench::with(pairs::flat(), around()), SMALL);
    let button = seen.window.get_by_label("Choose for the work…").rect();
    seen.window.get_by_label("Choose for the work…").hover();
    seen.window.run();
    assert_eq!(ring(&seen), 0, "under the pointer");
    let before = seen.picture();
    seen.window.get_by_label("Choose for the work…").focus();
    seen.window.run();
    assert!(ring(&seen) > 0);
    let least = 2.0 * 2.0 * (button.width() + button.height());
    let after = seen.picture();
    let pixels = before.pixels.iter().zip(&after.pixels);
    let found = pixels.filter(|(a, b)| a.r().abs_diff(b.r()) > 64).count();
    #[allow(clippy::cast_precision_loss, reason = "a window has few pixels")]
    let found = found as f32;
    assert!(found >= least, "{found} of {least}");
}

/// The fields of the parts go on below the window; Tab brings each into sight.
#[test]
fn what_comes_to_have_the_keyboard_comes_into_sight() {
    let mut window = show(Workbench::with(pairs::flat(), around()), SMALL);
    window.get_by_label("Jaw length").focus();
    window.run();
    for _ in 0..40 {
        key(&mut window, Key::Tab);
        let id = window.ctx.memory(egui::Memory::focused);
        let Some(response) = id.and_then(|id| window.ctx.read_response(id)) else {
            continue;
        };
        let label = focused(&window);
        let seen = response.interact_rect.height();
        assert!(
            seen > 0.8 * response.rect.height(),
            "{label:?}: {seen} is seen"
        );
    }
}

/// Alt and its letter open a menu and close it; behind a question they do neither.
#[test]
fn alt_and_a_letter_open_a_menu() {
    for (key, line) in [(Key::F, "Ready designs"), (Key::V, "Trace a picture")] {
        let mut window = show(Workbench::with(pairs::flat(), around()), SMALL);
        let shows = |window: &Window| window.query_by_label_contains(line).is_some();
        let before = shows(&window);
        press(&mut window, Modifiers::ALT, key);
        window.run();
        assert!(shows(&window) && !before, "{line}");
        press(&mut window, Modifiers::ALT, key);
        window.run();
        assert!(!shows(&window), "{line}");
        press(&mut window, Modifiers::COMMAND, Key::N);
        press(&mut window, Modifiers::ALT, key);
        window.run();
        assert!(
            is_open(&window, "Work to hold") && !shows(&window),
            "{line}"
        );
    }
}
