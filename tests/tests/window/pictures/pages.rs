//! Every page, panel and dialog of the window, and how a smith comes to it.

use egui::{Key, Modifiers};
use reinwright::window::{Surroundings, Workbench};
use reinwright_core::asked::{Units, parse_bar};
use reinwright_core::tongs::document::Document;
use reinwright_core::tool::{Tool, ToolKind};
use reinwright_tests::designs::{sample, samples_folder};
use reinwright_tests::files::put;
use reinwright_tests::painted::{Seen, look_finely_at};
use reinwright_tests::window::{Window, click, click_with, press, remembering};

/// A page by its name, and the way to it from an open design.
pub(crate) type Page = (&'static str, fn(&mut Window));

fn none(window: &mut Window, key: Key) {
    press(window, Modifiers::NONE, key);
}

fn ctrl(window: &mut Window, key: Key) {
    press(window, Modifiers::COMMAND, key);
}

/// What a new pair is to hold is asked first; then the jaw; then the bar.
fn new_pair(window: &mut Window, answers: usize) {
    ctrl(window, Key::N);
    let work = egui_kittest::kittest::Queryable::get_by_label(window, "Work to hold");
    work.type_text("5/8 hex");
    window.run();
    (0..answers).for_each(|_| none(window, Key::Enter));
}

fn new_tool(window: &mut Window) {
    press(window, Modifiers::COMMAND | Modifiers::SHIFT, Key::N);
}

/// Waits for what is reckoned beside the window.
pub(crate) fn wait(window: &mut Window) {
    for _ in 0..100 {
        std::thread::sleep(std::time::Duration::from_millis(20));
        window.step();
    }
}

/// All of them.
pub(crate) const ALL: &[Page] = &[
    ("head", |_| {}),
    ("rein", |window| none(window, Key::F3)),
    ("all", |window| none(window, Key::F4)),
    ("true size", |window| none(window, Key::F5)),
    ("fit", |window| click(window, "Fit")),
    ("strength", |window| click(window, "Strength")),
    ("findings", |window| click_with(window, "Findings")),
    ("making", |window| none(window, Key::F6)),
    ("heats", |window| {
        none(window, Key::F8);
        wait(window);
    }),
    ("cut list", |window| {
        none(window, Key::F7);
        wait(window);
    }),
    ("shelf", |window| ctrl(window, Key::L)),
    ("new pair", |window| new_pair(window, 0)),
    ("its jaw", |window| new_pair(window, 1)),
    ("its bar", |window| new_pair(window, 2)),
    ("choose", |window| click(window, "Choose for the work…")),
    ("sketch", |window| {
        use egui_kittest::kittest::Queryable;
        // By the keyboard, which brings it into sight.
        window.get_by_label("Draw on it").focus();
        window.run();
        none(window, Key::Enter);
    }),
    ("print", |window| {
        ctrl(window, Key::P);
        wait(window);
    }),
    ("job sheet", |window| ctrl(window, Key::J)),
    ("svg", |window| {
        press(window, Modifiers::COMMAND | Modifiers::SHIFT, Key::P);
    }),
    ("file menu", |window| click(window, "File")),
    ("view menu", |window| click(window, "View")),
    ("about", |window| none(window, Key::F1)),
    ("measure", |window| {
        click(window, "View");
        click(window, "Measure the screen");
    }),
    ("new tool", new_tool),
    ("its size", |window| {
        new_tool(window);
        click(window, "Take Drift");
    }),
    ("tools for this pair", |window| {
        click(window, "File");
        click(window, "Tools for this pair");
    }),
    ("family", |window| {
        click(window, "File");
        click(window, "Make a family of this design");
    }),
];

/// The same from an open tool.
pub(crate) const OF_TOOL: &[Page] = &[
    ("tool", |_| {}),
    ("tool stage", |window| {
        none(window, Key::F6);
        (0..3).for_each(|_| click(window, "Next"));
    }),
    ("tool true size", |window| none(window, Key::F5)),
    ("tool making", |window| none(window, Key::F6)),
    ("tool findings", |window| click_with(window, "Findings")),
    ("tool handle", |window| {
        use egui_kittest::kittest::Queryable;
        let taper = window.query_by_label("Working end taper, on the drawing");
        let block = window.query_by_label("Hardy shank block height, on the drawing");
        taper.or(block).expect("one of them").focus();
        window.run();
    }),
    ("tool heats", |window| {
        none(window, Key::F8);
        wait(window);
    }),
    ("tool family", |window| {
        click(window, "File");
        click(window, "Make a family of this design");
    }),
    ("tool family takes", |window| {
        click(window, "File");
        click(window, "Make a family of this design");
        click(window, "What the set takes");
    }),
    ("tool print", |window| ctrl(window, Key::P)),
    ("tool file menu", |window| click(window, "File")),
];

/// How the window is to stand.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Way {
    pub(crate) size: (f32, f32),
    pub(crate) units: Units,
    pub(crate) theme: &'static str,
    /// Pixels to a point.
    pub(crate) fine: f32,
}

/// Shows a page of a sample.
pub(crate) fn show(page: Page, design: &str, way: Way) -> Seen {
    show_design(page, sample(design), way)
}

/// Shows a page of a design.
pub(crate) fn show_design(page: Page, mut design: Document, way: Way) -> Seen {
    design.units = way.units;
    seen(page, way, |around| Workbench::with(design, around))
}

/// Shows a page of a tool, as it is begun.
pub(crate) fn show_tool(page: Page, kind: ToolKind, way: Way) -> Seen {
    let (struck, hardy) = match way.units {
        Units::Inch => ("3/4 in round", "1 1/4 in square"),
        Units::Millimetre => ("20 mm round", "32 mm square"),
    };
    let bar = if kind.is_hardy() { hardy } else { struck };
    let bar = parse_bar(bar).expect("a bar");
    let tool = Tool::starting(kind, kind.usual_size(&bar), bar);
    seen(page, way, |around| Workbench::with_tool(tool, around))
}

fn seen((_, open): Page, way: Way, bench: impl FnOnce(Surroundings) -> Workbench) -> Seen {
    let folder = reinwright_tests::files::folder();
    put(folder.path(), "theme", way.theme);
    put(
        folder.path(),
        "shelf",
        samples_folder().display().to_string(),
    );
    let mut seen = look_finely_at(bench(remembering(folder.path())), way.size, way.fine);
    open(&mut seen.window);
    seen
}
