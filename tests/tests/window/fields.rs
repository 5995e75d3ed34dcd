//! Fields, choices and undo: what is typed stands in the design, and a bad text says why.

use egui::{Key, Modifiers};
use egui_kittest::kittest::Queryable;
use reinwright::window::Workbench;
use reinwright_core::asked::{self, Units};
use reinwright_core::shop::Answers;
use reinwright_tests::pairs::{length, work};
use reinwright_tests::window::{
    OnBench, Window, around, click, click_with, fill, press, redo, undo, unfold, value, write,
};

use super::flat;

#[test]
fn a_typed_size_stands_in_the_document() {
    let mut window = flat();
    unfold(&mut window, "Boss");
    fill(&mut window, "Boss thickness", "7/16 in");
    assert_eq!(window.state().document().boss.thickness, length("7/16 in"));
    fill(&mut window, "Boss thickness", "1/2");
    assert_eq!(window.state().document().boss.thickness, length("1/2 in"));
    let shown = value(&window, "Boss thickness");
    assert_eq!(shown.as_deref(), Some("1/2 in"));
}

/// Nothing has no unit of its own: it reads as the design counts, and a step from it is in that
/// unit.
#[test]
fn nothing_is_in_the_unit_of_the_design() {
    let window = flat();
    let shown = value(&window, "Jaw crease");
    assert_eq!(shown.as_deref(), Some("0 in"));
}

#[test]
fn the_answers_follow_a_typed_size() {
    let mut window = flat();
    let before = window.state().document().clone();
    fill(&mut window, "Bar side", "1 in");
    let after = window.state().document();
    assert_ne!(&before, after);
    let bar = Answers::to(after).balance;
    let shown = bar.cut_length(after.units).to_string();
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
    assert_eq!(value(&window, "Work thickness").as_deref(), Some("3/8 in"));
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
    click(&mut window, "V bit");
    assert_eq!(window.state().document().jaw.name(), "V bit");
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
    undo(&mut window);
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
    undo(&mut window);
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
    fill(&mut window, "Rivet hole", "1 1/4");
    click_with(&mut window, "Findings:");
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

/// Work by its name in the parts list; what no table has is refused in its place.
#[test]
fn work_is_typed_as_it_is_called() {
    let mut window = flat();
    assert_eq!(
        value(&window, "Work as it is called").as_deref(),
        Some("3/8 in x 1 in flat")
    );
    fill(&mut window, "Work as it is called", "M16");
    assert_eq!(window.state().document().work, work("M16 by its head"));
    assert_eq!(
        value(&window, "Work across flats").as_deref(),
        Some("24 mm")
    );
    fill(&mut window, "Work as it is called", "M15");
    window.get_by_label_contains("no bolt is called \"M15\"");
    assert_eq!(window.state().document().work, work("M16 by its head"));
    fill(&mut window, "Work as it is called", "1/2 pipe");
    assert_eq!(window.state().document().work, work("1/2 in pipe"));
    fill(&mut window, "Work wall", "1/8");
    assert_eq!(
        value(&window, "Work as it is called").as_deref(),
        Some("0.84 in x 1/8 in pipe")
    );
    fill(&mut window, "Work as it is called", "900 mm round");
    window.get_by_label_contains("900 mm");
    assert_eq!(window.state().document().work.piece(), Some("pipe"));
}

#[test]
fn every_choice_shows_its_bar() {
    let mut window = flat();
    let design = window.state().document().clone();
    for field in design.fields() {
        let (path, ways) = (&field.path, field.value.ways());
        for chosen in 0..ways.len() {
            let mut design = design.clone();
            design.put(path, asked::Value::Choice { ways, chosen });
            let answers = Answers::to(&design);
            let bar = answers.balance.cut_length(design.units).to_string();
            *window.state_mut() = Workbench::with(design, around());
            window.run();
            let shown = window.query_all_by_label(&bar).count();
            assert!(shown > 0, "{path}, {chosen}: {bar} of bar are not shown");
        }
    }
}
