//! The heats in the window: sources described and kept, the table, the timeline, curves, the coil.

use std::path::Path;

use egui::accesskit::Role;
use egui::{Key, Modifiers};
use egui_kittest::kittest::{NodeT, Queryable};
use reinwright::disk::heat_sources;
use reinwright::window::Workbench;
use reinwright_core::asked::parse_bar;
use reinwright_core::heats::{
    Prepared, Smith, Source, SourceKind, Sources, heat_plan, scale_percent, spoken, whole_scale,
};
use reinwright_core::making::{plan, plan_tool, usual, usual_for_tool};
use reinwright_core::resolve;
use reinwright_core::shop::{ToolAnswers, balance_of};
use reinwright_core::tongs::document::Document;
use reinwright_core::tool::{Tool, ToolKind};
use reinwright_tests::files::{bytes, folder, names, put};
use reinwright_tests::pairs::starting;
use reinwright_tests::window::{
    OnBench, SMALL, TALL, Window, around, click, fill, press, redo, remembering, show_for, undo,
    value,
};

fn vee() -> Document {
    starting("v bit", "1/2 in square on corners", "3/4 in round")
}

/// A window on the heats of a design. They are reckoned in a thread, for which frames wait.
fn at_heats(bench: Workbench, size: (f32, f32)) -> Window {
    let mut window = show_for(bench, size, 4000);
    press(&mut window, Modifiers::NONE, Key::F8);
    window
}

fn small() -> Window {
    let mut window = at_heats(Workbench::with(vee(), around()), TALL);
    wait_for_all(&mut window);
    window
}

fn kept_in(folder: &Path) -> Window {
    let mut window = at_heats(Workbench::with(vee(), remembering(folder)), TALL);
    wait_for_all(&mut window);
    window
}

/// Waits until all is reckoned: what comes late moves what is to be clicked.
#[track_caller]
fn wait_for_all(window: &mut Window) {
    wait_for(window, "Timeline: ");
    let is_done = |window: &Window| window.query_by_label("Being reckoned.").is_none();
    wait(window, is_done, "what the other choices cost");
    window.run();
}

/// Waits until something has a label with these words.
#[track_caller]
fn wait_for(window: &mut Window, words: &str) {
    wait(
        window,
        |window| window.query_all_by_label_contains(words).next().is_some(),
        words,
    );
}

#[track_caller]
fn wait(window: &mut Window, there: impl Fn(&Window) -> bool, words: &str) {
    for _ in 0..6000 {
        if there(window) {
            return;
        }
        std::thread::sleep(std::time::Duration::from_millis(10));
        window.step();
    }
    panic!("{words} did not come");
}

/// The heats of a design in a shop, as the core has them.
fn reckoned(design: &Document, shop: &Sources) -> (Prepared, String) {
    let model = resolve(design);
    let plan = plan(
        design,
        &model,
        &balance_of(design, &model),
        usual(design, &model),
    );
    let prepared = Prepared::new(design.bar.steel, &plan, shop);
    let totals = heat_plan(&prepared).totals;
    let told = format!("{} heats, ", totals.heats);
    let ready = match totals.changes {
        0 => "no source made ready".to_owned(),
        1 => "1 source made ready".to_owned(),
        count => format!("{count} times a source made ready"),
    };
    (
        prepared,
        format!("Timeline: {told}{ready}, {}", spoken(totals.time_s)),
    )
}

/// A punch has a page of heats as a pair has one, with the plan that the core makes; what only pairs
/// have is not on it.
#[test]
fn the_heats_of_a_tool_are_planned_as_those_of_a_pair() {
    let size = "5/16 in".parse().expect("a size");
    let bar = parse_bar("3/4 in round").expect("a bar");
    let punch = Tool::starting(ToolKind::RoundPunch, size, bar);
    let mut window = at_heats(Workbench::with_tool(punch.clone(), around()), TALL);
    let known = ToolAnswers::to(&punch);
    let procedure = usual_for_tool(&punch);
    let plan = plan_tool(&punch, &known.model, &known.balance, procedure);
    let shop = Sources::default();
    let prepared = Prepared::new(punch.bar.steel, &plan, &shop);
    let totals = heat_plan(&prepared).totals;
    wait_for(&mut window, &format!("Timeline: {} heats, ", totals.heats));
    wait_for_all(&mut window);
    window.get_by_label("The tool in all");
    window.get_by_label(&spoken(totals.time_s));
    assert!(window.query_by_label_contains("riveted pair").is_none());
    click(&mut window, "Take this scale for the bar");
    let percent = scale_percent(&prepared, &heat_plan(&prepared));
    let taken = window.state().tool().expect("a tool").allowances.scale;
    assert_eq!(taken, whole_scale(percent));
    undo(&mut window);
    assert_eq!(window.state().tool(), Some(&punch));
}

/// The sources that a folder keeps.
fn kept(folder: &Path) -> Sources {
    let opened = heat_sources::kept(Some(folder)).expect("it can be read");
    opened.expect("something is kept").sources
}

/// The page says of the pair what the core says, and of every operation in every source whether it goes in.
#[test]
fn the_table_tells_of_every_operation_and_source() {
    let mut window = at_heats(Workbench::with(vee(), around()), SMALL);
    let shop = Sources::default();
    let (prepared, told) = reckoned(&vee(), &shop);
    wait_for(&mut window, &told);
    for row in prepared.rows.iter().filter(|row| row.needs_mm.is_some()) {
        for (offer, source) in row.offers.iter().zip(&shop.sources) {
            let head = format!(
                "Operation {}, {}, in {}: ",
                row.number, row.step, source.name
            );
            let cell = window.get_by_label_contains(&head);
            let words = cell.accesskit_node().label().unwrap_or_default();
            assert_eq!(words.contains("goes in, "), offer.is_ok(), "{words}");
            if let Err(why) = offer {
                let show = vee().units.show();
                assert!(words.ends_with(&why.words(show)), "{words}");
            }
        }
    }
}

/// What is chosen in the table is drawn, followed, and the stage of the making.
#[test]
fn an_operation_that_is_chosen_is_drawn_in_its_source_and_followed() {
    let mut window = small();
    let (prepared, _) = reckoned(&vee(), &Sources::default());
    let (at, row) = prepared
        .rows
        .iter()
        .enumerate()
        .find(|(_, row)| {
            row.offers.iter().any(Result::is_ok) && row.offers.iter().any(Result::is_err)
        })
        .expect("something goes in here and not there");
    let place = |goes: bool| row.offers.iter().position(|own| own.is_ok() == goes);
    let name = |at: usize| Sources::default().sources[at].name.clone();
    for source in [place(true), place(false)].into_iter().flatten() {
        let label = format!(
            "Operation {}, {}, in {}: ",
            row.number,
            row.step,
            name(source)
        );
        window.get_by_label_contains(&label).click();
        window.run();
        let drawn = format!(
            "Drawing of operation {} in {}, to scale",
            row.number,
            name(source)
        );
        window.get_by_label(&drawn);
        if row.offers[source].is_ok() {
            wait_for(&mut window, "Temperature along the piece: ");
            wait_for(&mut window, "Temperature against time: ");
        } else {
            assert!(
                window
                    .query_by_label_contains("Temperature against time: ")
                    .is_none()
            );
        }
    }
    press(&mut window, Modifiers::NONE, Key::F6);
    window.get_by_label_contains(&format!("Stage {}, ", prepared.rows[at].stage + 1));
}

/// A source is added, described, kept; the plan is of it; both can be taken back.
#[test]
fn a_source_is_described_in_a_minute_and_kept() {
    let folder = folder();
    let mut window = kept_in(folder.path());
    window.get_by_label_contains("These are examples");
    assert_eq!(
        names(folder.path())
            .iter()
            .filter(|own| own.contains("heat"))
            .count(),
        0
    );
    click(&mut window, "Add a source…");
    window.get_by_label_contains("Wide coil: ").click();
    window.run();
    assert_eq!(kept(folder.path()).sources.len(), 6);
    window
        .get_by_role_and_label(Role::DisclosureTriangle, "Wide coil 2")
        .click();
    window.run();
    fill(&mut window, "Wide coil 2: name", "ear");
    fill(&mut window, "Ear: bore", "2 1/4");
    fill(&mut window, "Ear: turns", "6");
    fill(&mut window, "Ear: efficiency", "55 %");
    let own = kept(folder.path()).sources[5].clone();
    let SourceKind::Coil(coil) = &own.kind else {
        panic!("{own:?} is no coil");
    };
    assert_eq!(own.name, "ear");
    assert_eq!(coil.bore.to_string(), "2 1/4 in");
    assert_eq!((coil.turns, coil.efficiency), (6.0, Some(55.0)));
    let (_, told) = reckoned(&vee(), &kept(folder.path()));
    wait_for(&mut window, &told);
    undo(&mut window);
    let turns = |folder: &Path| kept(folder).sources[5].coil().map(|own| own.efficiency);
    assert_eq!(turns(folder.path()), Some(None));
    redo(&mut window);
    assert_eq!(turns(folder.path()), Some(Some(55.0)));
    click(&mut window, "Remove ear");
    assert_eq!(kept(folder.path()).sources.len(), 5);
    undo(&mut window);
    assert_eq!(kept(folder.path()).sources[5], own);
    // Another window finds what was kept.
    let window = kept_in(folder.path());
    window.get_by_role_and_label(Role::DisclosureTriangle, "Ear");
}

/// What cannot be is refused beside its field, with the limits in the smith's units.
#[test]
fn a_value_outside_its_limits_is_refused_and_the_old_one_stays() {
    let folder = folder();
    let mut window = kept_in(folder.path());
    window
        .get_by_role_and_label(Role::DisclosureTriangle, "Wide coil")
        .click();
    window.run();
    for (field, text, why) in [
        (
            "Wide coil: bore",
            "9 ft",
            "\"9 ft\" is not between 7/32 in and 23 1/2 in",
        ),
        ("Wide coil: bore", "wide", "\"wide\" is not a size"),
        ("Wide coil: turns", "0", "\"0\" is not between 1 and 100"),
        ("Wide coil: tube", "1 in", "\"1 in\" is not between"),
        ("Wide coil: power", "much", "\"much\" is no number"),
        (
            "Wide coil: name",
            "gas forge",
            "is called \"gas forge\" already",
        ),
        ("Wide coil: name", " ", "Its name is empty"),
    ] {
        fill(&mut window, field, text);
        window.get_by_label_contains(why);
        press(&mut window, Modifiers::NONE, Key::Escape);
    }
    assert!(
        !folder.path().join(heat_sources::FILE).exists(),
        "nothing has changed"
    );
}

/// What another window has kept is neither lost nor hidden.
#[test]
fn what_another_window_has_kept_is_asked_about() {
    let folder = folder();
    let mut window = kept_in(folder.path());
    click(&mut window, "How you work");
    fill(&mut window, "You: pace", "120 %");
    assert!((kept(folder.path()).smith.pace - 1.2).abs() < 1e-12);
    let theirs = Sources {
        smith: Smith {
            pace: 3.0,
            ..Smith::default()
        },
        ..Sources::default()
    };
    heat_sources::keep(folder.path(), &theirs).expect("it can be written");
    fill(&mut window, "You: pace", "150 %");
    window.get_by_label_contains("Another window or program has changed");
    assert_eq!(kept(folder.path()), theirs);
    click(&mut window, "Take theirs");
    assert_eq!(value(&window, "You: pace").as_deref(), Some("300 %"));
    heat_sources::keep(folder.path(), &Sources::default()).expect("it can be written");
    fill(&mut window, "You: pace", "150 %");
    click(&mut window, "Keep mine");
    assert!((kept(folder.path()).smith.pace - 1.5).abs() < 1e-12);
}

/// A file of which a part cannot be read is put aside before it is written over.
#[test]
fn a_damaged_file_is_told_and_put_aside() {
    let folder = folder();
    put(
        folder.path(),
        heat_sources::FILE,
        "(heat_sources: 1, sources: [7])",
    );
    let mut window = kept_in_damaged(folder.path());
    window.get_by_label_contains("heat-sources.ron: sources 1");
    click(&mut window, "Add a source…");
    window.get_by_label_contains("Coal fire: ").click();
    window.run();
    assert_eq!(kept(folder.path()).sources.len(), 1);
    let aside = folder
        .path()
        .join(format!("{}.damaged-1", heat_sources::FILE));
    assert_eq!(bytes(&aside), b"(heat_sources: 1, sources: [7])");
    window.get_by_label_contains("What could not be read is kept as");
}

fn kept_in_damaged(folder: &Path) -> Window {
    let mut window = at_heats(Workbench::with(vee(), remembering(folder)), TALL);
    wait_for(&mut window, "There is no heat source yet");
    window
}

/// A size that is edited has its heats with it.
#[test]
fn the_heats_follow_the_design() {
    let mut window = small();
    reinwright_tests::window::unfold(&mut window, "Rein");
    fill(&mut window, "Rein length", "22 in");
    let (_, told) = reckoned(window.state().document(), &Sources::default());
    assert_ne!(told, reckoned(&vee(), &Sources::default()).1);
    wait_for(&mut window, &told);
}

/// The scale of the heats goes into the balance when that is asked, as one step.
#[test]
fn the_scale_of_the_heats_goes_into_the_bar() {
    let mut window = small();
    let before = window.state().document().clone();
    click(&mut window, "Take this scale for the bar");
    assert_ne!(window.state().document().allowances, before.allowances);
    undo(&mut window);
    assert_eq!(*window.state().document(), before);
}

/// The coil that would do the most is told, and put among the sources.
#[test]
fn the_coil_that_would_do_the_most_is_added() {
    let folder = folder();
    let mut window = kept_in(folder.path());
    click(&mut window, "Which coil would do the most?");
    wait_for(&mut window, "A coil of ");
    wait_for(&mut window, "Empty it has ");
    click(&mut window, "Add this coil");
    let added: Source = kept(folder.path()).sources[5].clone();
    assert_eq!(added.name, "wound for this");
}

#[test]
fn cautions_and_other_choices_are_told() {
    let mut window = small();
    window.get_by_label_contains("pacemaker");
    window.get_by_label_contains("carbon monoxide");
    wait_for(&mut window, "With gas forge only: ");
}
