//! The making in the window: procedures, stages, play, and what changes with an edit.

use egui::{Key, Modifiers};
use egui_kittest::kittest::Queryable;
use reinwright::window::Workbench;
use reinwright_core::asked::Units;
use reinwright_core::making::{Plan, Procedure, Step, plan, usual};
use reinwright_core::shop::balance_of;
use reinwright_core::tongs::document::Document;
use reinwright_core::tongs::resolve;
use reinwright_tests::files::{bytes, folder, pages};
use reinwright_tests::pairs::starting;
use reinwright_tests::window::{
    OnBench, SMALL, TALL, Window, around, click, fill, give_path, press, show, slide, undo, write,
};

fn flat() -> Document {
    starting("flat", "10 mm flat", "20 mm square")
}

fn planned(design: &Document, procedure: Procedure) -> Plan {
    let model = resolve(design);
    plan(design, &model, &balance_of(design, &model), procedure)
}

/// A window on the making of a design.
fn at_making(design: Document, size: (f32, f32)) -> Window {
    let mut window = show(Workbench::with(design, around()), size);
    press(&mut window, Modifiers::NONE, Key::F6);
    window
}

/// The stage that the sheet shows.
#[track_caller]
fn check_stage(window: &Window, at: usize) {
    window.get_by_label_contains(&format!("Stage {at}, "));
}

#[test]
fn every_stage_of_every_procedure_is_stepped_through_in_the_smallest_window() {
    let flat = flat();
    for procedure in Procedure::ALL {
        let mut window = at_making(flat.clone(), SMALL);
        click(&mut window, "Made by");
        let suits = planned(&flat, procedure);
        let own = suits.suits.iter().find(|own| own.procedure == procedure);
        let suited = own.is_some_and(|own| own.why_not.is_none());
        let (first, rest) = procedure.name().split_at(1);
        let name = first.to_uppercase() + rest;
        let line = if suited {
            name
        } else {
            format!("{name} (does not suit)")
        };
        window
            .get_all_by_label(&line)
            .last()
            .expect("a line")
            .click();
        window.run();
        for (at, operation) in suits.operations().enumerate() {
            check_stage(&window, at);
            click(&mut window, "Next");
            window.get_by_label_contains(&operation.check[1..]);
        }
        click(&mut window, "Next");
        window.get_by_label_contains("Drawing of the pair");
    }
}

#[test]
fn the_slider_the_list_and_the_buttons_show_the_same_stage() {
    let mut window = at_making(flat(), SMALL);
    check_stage(&window, 0);
    slide(&mut window, "Stage", 3.0);
    check_stage(&window, 3);
    window.get_by_label("3  Set down the boss");
    click(&mut window, "Back");
    check_stage(&window, 2);
    click(&mut window, " 1  Cut the bar");
    check_stage(&window, 1);
}

/// Space begins and ends it; a frame here takes a quarter of a second.
#[test]
fn it_plays_until_it_is_stopped_or_the_pair_is_there() {
    let mut window = at_making(flat(), SMALL);
    window.key_press(Key::Space);
    window.run_steps(9);
    check_stage(&window, 1);
    window.key_press(Key::Space);
    window.run_steps(20);
    check_stage(&window, 1);
    let last = planned(&flat(), usual(&flat(), &resolve(&flat())))
        .stages
        .len();
    click(&mut window, "Play");
    window.run_steps(8 * last);
    window.get_by_label("Play");
    window.get_by_label_contains("Drawing of the pair");
}

/// Space presses what has the keyboard, and nothing beside it.
#[test]
fn space_on_a_button_does_not_play() {
    let mut window = at_making(flat(), SMALL);
    window.get_by_label("Show inches").focus();
    window.run();
    press(&mut window, Modifiers::NONE, Key::Space);
    assert_eq!(window.state().document().units, Units::Inch);
    window.get_by_label("Play");
    window.get_by_label("Stage").focus();
    window.run();
    window.key_press(Key::Space);
    window.run_steps(2);
    window.get_by_label("Stop");
}

#[test]
fn a_size_that_is_edited_changes_the_stage_that_is_shown() {
    let mut window = at_making(flat(), TALL);
    slide(&mut window, "Stage", 3.0);
    let words = |window: &Window| {
        let words = window.get_by_label_contains("Set the boss down behind");
        words.value().unwrap_or_default()
    };
    assert!(words(&window).contains("10 mm"), "{}", words(&window));
    reinwright_tests::window::unfold(&mut window, "Boss");
    fill(&mut window, "Boss thickness", "9 mm");
    check_stage(&window, 3);
    assert!(words(&window).contains("9 mm"), "{}", words(&window));
    undo(&mut window);
    assert!(words(&window).contains("10 mm"), "{}", words(&window));
}

#[test]
fn an_operation_that_is_not_needed_is_left_out_and_put_back() {
    let mut window = at_making(flat(), TALL);
    click(&mut window, " 4  Set down the rein");
    click(&mut window, "Leave it out");
    window.get_by_label_contains("Left out: set down the rein");
    assert!(window.query_by_label(" 4  Set down the rein").is_none());
    click(&mut window, "Put back");
    window.get_by_label(" 4  Set down the rein");
    click(&mut window, " 3  Set down the boss");
    assert!(
        window.query_by_label("Leave it out").is_none(),
        "the boss is needed"
    );
}

#[test]
fn an_operation_is_done_earlier_where_the_steel_allows() {
    let mut window = at_making(flat(), TALL);
    let plan = planned(&flat(), Procedure::ThreeShoulders);
    let hole = plan.operations().position(|own| own.step == Step::MakeHole);
    let hole = hole.expect("a hole is made") + 1;
    let line = |at: usize| format!("{at:>2}  Make the hole");
    // In the list and over what is to be done.
    let check = |window: &Window, at: usize| {
        assert_eq!(window.get_all_by_label(&line(at)).count(), 2, "{at}");
        check_stage(window, at);
    };
    click(&mut window, &line(hole));
    click(&mut window, "Earlier");
    check(&window, hole - 1);
    click(&mut window, "Later");
    check(&window, hole);
    click(&mut window, "Earlier");
    click(&mut window, "Usual order");
    window.get_by_label(&line(hole));
    assert!(window.query_by_label("Usual order").is_none());
    // The shoulders have an order that nobody changes.
    click(&mut window, " 3  Set down the boss");
    assert!(window.query_by_label("Earlier").is_none());
}

#[test]
fn why_other_ways_do_not_suit_and_what_stands_against_a_chosen_one_is_said() {
    let mut window = at_making(flat(), TALL);
    click(&mut window, "Other ways");
    window.get_by_label_contains("Not flat bar with a twist: notches and a twist want flat bar");
    click(&mut window, "Made by");
    let line = "Flat bar with a twist (does not suit)";
    click(&mut window, line);
    window.get_by_label_contains("What stands against it");
    window.get_by_label_contains("Flat bar with a twist: notches and a twist want flat bar");
}

/// The side of a set-down is changed and changed back; the blows come from the other side then.
#[test]
fn a_set_down_goes_to_the_other_side_and_back() {
    let mut window = at_making(flat(), TALL);
    slide(&mut window, "Stage", 3.0);
    let usual = window.get_by_label_contains("Set the boss down behind");
    let usual = usual.value().unwrap_or_default();
    click(&mut window, "On the other side");
    assert!(window.query_by_label(&usual).is_none(), "{usual}");
    click(&mut window, "On the usual side");
    window.get_by_label(&usual);
}

#[test]
fn the_job_sheet_is_written_for_the_way_that_is_shown() {
    let folder = folder();
    let mut window = at_making(flat(), TALL);
    click(&mut window, "Made by");
    click(&mut window, "Jaw first");
    click(&mut window, "Job sheet to PDF");
    click(&mut window, "Choose the file");
    let path = folder.path().join("job.pdf");
    give_path(&mut window, &path, "Write");
    let text = pages(&bytes(&path)).concat().to_lowercase();
    // By the way that was chosen the jaw comes before the boss.
    let at = |words: &str| text.find(words).unwrap_or(usize::MAX);
    assert!(
        at("3. rough out the jaw") < at("5. set down the boss"),
        "{text}"
    );
    assert!(at("5. set down the boss") < text.len(), "{text}");
}

/// A rein that came out 10 mm longer, with nothing left over, says that less was lost than was
/// reckoned; the smith's own values go into the design as one step.
#[test]
fn what_came_out_becomes_the_smiths_own_values() {
    let mut window = at_making(flat(), TALL);
    let before = window.state().document().clone();
    click(&mut window, "What came out");
    fill(&mut window, "Rein came out", "long");
    click(&mut window, "Work it out");
    window.get_by_label_contains("Rein: ");
    let longer = resolve(&before).a.rein.length() + 10.0;
    write(&mut window, "Rein came out", &format!("{longer} mm"));
    write(&mut window, "Cut off the rein", "0");
    click(&mut window, "Work it out");
    window.get_by_label("The rein came out 10 mm longer than it was drawn.");
    window.get_by_label_contains("For your next design, from 1 half: scale");
    click(&mut window, "Take them for this design");
    assert_ne!(window.state().document().allowances, before.allowances);
    undo(&mut window);
    assert_eq!(*window.state().document(), before);
}
