//! Ways to mend on the Findings page: looked for beside the window, shown as a try, taken as one
//! step.

use std::time::Duration;

use egui::Pos2;
use egui_kittest::kittest::Queryable;
use reinwright::window::Workbench;
use reinwright_core::asked::parse_bar;
use reinwright_core::tongs::document::Document;
use reinwright_core::tool::{Tool, ToolKind};
use reinwright_tests::pairs::{flat, length};
use reinwright_tests::window::{
    OnBench, TALL, Window, around, click_with, fill, point, show, show_design, undo, unfold, value,
};

/// A flat pair whose neck is deeper than its bar of 3/4 in.
fn deep() -> Document {
    let mut design = flat();
    design.neck.depth = length("13/16 in");
    design
}

const MENDED: &str = "Neck depth 13/16 in to 3/4 in";

/// The Findings page once the ways to mend are there.
#[track_caller]
fn findings(design: Document) -> Window {
    let mut window = show_design(design, TALL);
    window.get_by_label_contains("Findings").click();
    settle(&mut window);
    window
}

/// Frames until nothing is looked for any more.
#[track_caller]
fn settle(window: &mut Window) {
    for _ in 0..2000 {
        window.step();
        let looks = window.query_all_by_label_contains("Looking for ways to mend");
        if looks.count() == 0 {
            window.run();
            return;
        }
        std::thread::sleep(Duration::from_millis(10));
    }
    panic!("the search goes on for more than 20 s");
}

#[test]
fn a_mend_is_one_step_that_clears_its_finding_and_can_be_taken_back() {
    let design = deep();
    let mut window = findings(design.clone());
    assert!(
        window
            .query_all_by_label_contains("more than the bar")
            .count()
            > 0
    );
    click_with(&mut window, MENDED);
    settle(&mut window);
    assert_eq!(window.state().document().neck.depth, length("3/4 in"));
    let left = window
        .query_all_by_label_contains("more than the bar")
        .count();
    assert_eq!(left, 0, "the finding is gone");
    unfold(&mut window, "Neck");
    assert_eq!(value(&window, "Neck depth").as_deref(), Some("3/4 in"));
    undo(&mut window);
    settle(&mut window);
    assert_eq!(window.state().document(), &design);
    window.get_by_label_contains(MENDED);
}

/// Two values go together in one step.
#[test]
fn a_pair_of_values_is_one_step_too() {
    let mut design = flat();
    for (path, text) in [
        ("boss.thickness", "1/2 in"),
        ("boss.across", "1 1/8 in"),
        ("rivet.hole", "7/16 in"),
        ("rivet.diameter", "7/16 in"),
    ] {
        design.set(path, text).expect("a value");
    }
    let mut window = findings(design.clone());
    click_with(&mut window, ", and Boss thickness 1/2 in to 7/16 in");
    let mended = window.state().document();
    assert_eq!(mended.boss.thickness, length("7/16 in"));
    assert_eq!(mended.boss.across, length("1 5/16 in"));
    undo(&mut window);
    assert_eq!(window.state().document(), &design);
}

/// Whether the sheet says that what lies over it is a try.
fn shows_a_try(window: &Window) -> bool {
    let shapes = window.output().shapes.iter();
    let mut words = shapes.filter_map(|clipped| match &clipped.shape {
        egui::Shape::Text(text) => Some(text.galley.text()),
        _ => None,
    });
    words.any(|words| words == format!("as it would be, dashed: {MENDED}"))
}

#[test]
fn pointing_at_a_mend_shows_it_and_changes_nothing() {
    let design = deep();
    let mut window = findings(design.clone());
    assert!(!shows_a_try(&window));
    let at = window.get_by_label_contains(MENDED).rect().center();
    point(&mut window, at);
    assert!(shows_a_try(&window));
    assert_eq!(window.state().document(), &design);
    assert!(!window.state().is_changed());
    point(&mut window, Pos2::new(400.0, 400.0));
    assert!(!shows_a_try(&window));
}

/// A mend is of the design as it stands: another value, another search.
#[test]
fn what_was_found_goes_with_the_design() {
    let mut window = findings(deep());
    window.get_by_label_contains(MENDED);
    unfold(&mut window, "Neck");
    fill(&mut window, "Neck depth", "7/8 in");
    let stale = window.query_all_by_label_contains(MENDED).count();
    assert_eq!(stale, 0);
    settle(&mut window);
    window.get_by_label_contains("Neck depth 7/8 in to 3/4 in");
}

#[test]
fn a_sound_pair_has_nothing_to_look_for() {
    let mut window = show_design(flat(), TALL);
    window.get_by_label_contains("Findings").click();
    window.step();
    window.step();
    let looks = window.query_all_by_label_contains("Looking for ways to mend");
    assert_eq!(looks.count(), 0);
}

/// A tool is mended as a pair is: its struck face is wider than 0.85 of its body of 3/4 in.
#[test]
fn a_mend_of_a_tool_is_one_step_too() {
    const FACE: &str = "Body struck face 3/4 in to 5/8 in";
    let bar = parse_bar("3/4 in round").expect("a bar");
    let mut punch = Tool::starting(ToolKind::RoundPunch, length("5/16 in"), bar);
    punch.set("body.face", "3/4 in").expect("a size");
    let mut window = show(Workbench::with_tool(punch.clone(), around()), TALL);
    window.get_by_label_contains("Findings").click();
    settle(&mut window);
    click_with(&mut window, FACE);
    settle(&mut window);
    let mended = window.state().tool().expect("a tool is open").clone();
    let face = mended.field("body.face").expect("it has a face");
    assert_eq!(face.value.to_string(), "5/8 in");
    assert_eq!(
        window
            .query_all_by_label_contains("its rim is struck over")
            .count(),
        0
    );
    undo(&mut window);
    settle(&mut window);
    assert_eq!(window.state().tool(), Some(&punch));
    window.get_by_label_contains(FACE);
}
