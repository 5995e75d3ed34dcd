//! Tools in the window: begun, edited, kept and printed as pairs are; and the tools of a pair.

use egui::accesskit::Role;
use egui::{Key, Modifiers};
use egui_kittest::kittest::Queryable;
use reinwright::window::Workbench;
use reinwright_core::asked::{Units, parse_bar};
use reinwright_core::finding::Severity;
use reinwright_core::shop::family::Family;
use reinwright_core::shop::shelf::{Mark, Marks};
use reinwright_core::shop::{ToolAnswers, tools_for};
use reinwright_core::tool::{self, Tool, ToolKind};
use reinwright_tests::designs::samples_folder;
use reinwright_tests::files::{bytes, folder, names, pages, put};
use reinwright_tests::pairs::{self, length};
use reinwright_tests::window::{
    OnBench, SMALL, TALL, Window, around, click, click_with, fill, give_path, hold, point, press,
    redo, release, remembering, show, show_design, undo, unfold, until_counted, until_done, write,
};

/// A punch for a 5/16 in hole from 3/4 in round bar.
fn punch() -> Tool {
    let bar = parse_bar("3/4 in round").expect("a bar");
    Tool::starting(ToolKind::RoundPunch, length("5/16 in"), bar)
}

fn window() -> Window {
    show(Workbench::with_tool(punch(), around()), TALL)
}

fn open_tool(window: &Window) -> Tool {
    window.state().tool().expect("a tool is open").clone()
}

fn save(window: &mut Window) {
    press(window, Modifiers::COMMAND, Key::S);
}

#[test]
fn a_value_of_a_tool_is_set_taken_back_and_done_again() {
    let mut window = window();
    fill(&mut window, "Body length", "9");
    let set = tool::Tool {
        shape: open_tool(&window).shape,
        ..punch()
    };
    assert_ne!(open_tool(&window), punch());
    assert_eq!(open_tool(&window), set, "nothing but its shape changed");
    undo(&mut window);
    assert_eq!(open_tool(&window), punch());
    redo(&mut window);
    assert_eq!(open_tool(&window), set);
}

#[test]
fn a_text_that_is_no_size_is_refused_in_place() {
    let mut window = window();
    fill(&mut window, "Body length", "a while");
    window.get_by_label_contains("a while");
    assert_eq!(open_tool(&window), punch());
}

#[test]
fn another_style_makes_the_tool_anew() {
    let mut window = window();
    click(&mut window, "Working end style");
    click(&mut window, "cut-off hardy");
    assert_eq!(open_tool(&window).style_kind(), ToolKind::CutOff);
    // What was a struck tool stands in the hardy hole now.
    assert!(window.query_by_label("Hardy shank hardy hole").is_some());
    undo(&mut window);
    assert_eq!(open_tool(&window), punch());
}

#[test]
fn a_tool_is_saved_and_opened_as_it_was() {
    let folder = folder();
    let path = folder.path().join("punch.ron");
    let mut window = window();
    fill(&mut window, "Body length", "9");
    let made = open_tool(&window);
    save(&mut window);
    give_path(&mut window, &folder.path().join("punch"), "Write");
    assert!(!window.state().is_changed());
    assert_eq!(tool::read(&bytes(&path)).expect("a tool"), made);
    let again = Workbench::open(&path, around()).expect("it opens");
    assert_eq!(again.tool(), Some(&made));
    assert_eq!(reinwright::disk::files::check(&path), Ok(()));
}

#[test]
fn a_tool_that_is_not_saved_is_asked_about() {
    let mut window = window();
    fill(&mut window, "Body length", "9");
    press(&mut window, Modifiers::COMMAND, Key::Q);
    click(&mut window, "Stay here");
    assert!(!window.state().may_close());
    press(&mut window, Modifiers::COMMAND, Key::Q);
    click(&mut window, "Throw the changes away");
    assert!(window.state().may_close());
}

#[test]
fn a_tool_that_was_not_saved_is_offered_again() {
    let folder = folder();
    let bench = Workbench::with_tool(punch(), remembering(folder.path()));
    let mut lost = show(bench, TALL);
    fill(&mut lost, "Body length", "9");
    let made = open_tool(&lost);
    drop(lost);
    let mut window = show(Workbench::new(remembering(folder.path())), SMALL);
    click(&mut window, "Bring it back");
    assert_eq!(open_tool(&window), made);
    assert!(window.state().is_changed(), "it is still to be saved");
}

#[test]
fn what_another_program_saved_over_is_noticed_and_what_was_before_comes_back() {
    let folder = folder();
    let path = folder.path().join("punch.ron");
    put(folder.path(), "punch.ron", tool::write(&punch()));
    let bench = Workbench::open(&path, remembering(folder.path())).expect("a tool");
    let mut window = show(bench, TALL);
    fill(&mut window, "Body length", "9");
    let theirs = Tool {
        note: "theirs".to_owned(),
        ..punch()
    };
    put(folder.path(), "punch.ron", tool::write(&theirs));
    save(&mut window);
    click(&mut window, "Keep mine");
    assert_eq!(
        tool::read(&bytes(&path)).expect("a tool"),
        open_tool(&window)
    );
    click(&mut window, "File");
    click(&mut window, "Earlier versions");
    click(&mut window, "Bring back version 1");
    assert_eq!(open_tool(&window), theirs);
}

#[test]
fn a_file_that_is_damaged_or_newer_is_refused_in_one_sentence() {
    let folder = folder();
    let newer = tool::write(&punch()).replace("format: 1", "format: 99");
    for (name, text, told) in [
        ("damaged.ron", "(kind: Tool, format: 1,".to_owned(), "line"),
        ("newer.ron", newer, "newer"),
    ] {
        put(folder.path(), name, text);
        let path = folder.path().join(name);
        let why = Workbench::open(&path, around()).err().expect("no tool");
        assert!(why.contains(name) && why.contains(told), "{why}");
    }
}

#[test]
fn sizes_are_shown_in_other_units_and_that_is_no_change() {
    let mut window = window();
    click(&mut window, "Show millimetres");
    assert_eq!(open_tool(&window).units, Units::Millimetre);
    assert!(!window.state().is_changed());
    // The bar by hand: 3/4 in is 19.05 mm.
    window.get_by_label_contains("mm with the last cut");
}

#[test]
fn a_ready_tool_is_opened_and_is_no_loss() {
    let mut window = show_design(pairs::flat(), SMALL);
    click(&mut window, "File");
    click(&mut window, "Ready designs");
    click(&mut window, "Hot cut hardy for a 1 in hole");
    assert_eq!(open_tool(&window).style_kind(), ToolKind::CutOff);
    assert!(!window.state().is_changed());
}

/// Begins a tool in the window, as far as its size.
fn begin(window: &mut Window, kind: ToolKind) {
    press(window, Modifiers::COMMAND | Modifiers::SHIFT, Key::N);
    let mut name = kind.name().to_owned();
    name[..1].make_ascii_uppercase();
    click(window, &format!("Take {name}"));
}

#[test]
fn a_new_tool_is_begun_from_its_size_and_its_bar() {
    let mut window = show_design(pairs::flat(), SMALL);
    begin(&mut window, ToolKind::RoundPunch);
    write(&mut window, "Across its end", "5/16");
    write(&mut window, "Forged from", "3/4 round");
    click(&mut window, "Begin this tool");
    assert_eq!(open_tool(&window), punch());
    assert!(window.state().is_changed(), "nothing but the window has it");
}

/// The size that is proposed is typed over, with no key between.
#[test]
fn a_size_is_typed_over_the_one_that_is_proposed() {
    let mut window = show_design(pairs::flat(), SMALL);
    begin(&mut window, ToolKind::RoundPunch);
    window.get_by_label("Across its end").type_text("7/16 in");
    window.run();
    assert_eq!(
        reinwright_tests::window::value(&window, "Across its end").as_deref(),
        Some("7/16 in")
    );
}

#[test]
fn no_tool_is_begun_from_what_is_no_size() {
    let mut window = show_design(pairs::flat(), SMALL);
    begin(&mut window, ToolKind::Drift);
    write(&mut window, "Hole that it makes", "wide");
    press(&mut window, Modifiers::NONE, Key::Enter);
    window.get_by_label_contains("Hole that it makes: ");
    press(&mut window, Modifiers::NONE, Key::Escape);
    assert!(window.state().tool().is_none());
    assert_eq!(window.state().document(), &pairs::flat());
}

#[test]
fn every_style_is_begun_sound_and_shown_in_the_smallest_window() {
    for kind in ToolKind::ALL {
        for units in [Units::Inch, Units::Millimetre] {
            let design = reinwright_core::tongs::document::Document {
                units,
                ..pairs::flat()
            };
            let mut window = show_design(design, SMALL);
            begin(&mut window, *kind);
            click(&mut window, "Begin this tool");
            let tool = open_tool(&window);
            assert_eq!((tool.style_kind(), tool.units), (*kind, units));
            let worst = ToolAnswers::to(&tool).worst();
            assert!(worst < Some(Severity::Mend), "{kind} {units:?}: {worst:?}");
            click(&mut window, "Making");
            click_with(&mut window, "Findings");
            assert_eq!(open_tool(&window), tool, "looking changes nothing");
        }
    }
}

#[test]
fn the_stages_of_a_tool_lead_to_it() {
    let mut window = window();
    press(&mut window, Modifiers::NONE, Key::F6);
    window.get_by_label_contains("Stage 0, the bar");
    click(&mut window, "Next");
    window.get_by_label_contains("Stage 1, ");
    click(&mut window, "Back");
    window.get_by_label_contains("Stage 0, the bar");
}

#[test]
fn findings_of_a_tool_say_what_is_wrong_and_where() {
    let mut slim = punch();
    slim.set("working.taper", "6 in").expect("a field");
    slim.set("working.end", "1/8 in").expect("a field");
    let expected = ToolAnswers::to(&slim).findings;
    let first = expected.first().expect("such a punch bends");
    let mut window = show(Workbench::with_tool(slim, around()), TALL);
    click_with(&mut window, "Findings");
    window.get_by_label(&first.to_string());
}

/// The hand takes hold of the struck end and draws it 40 points out; back again with undo. What a
/// point is worth is asked of the drawing itself: the mark goes with the hand.
#[test]
fn a_value_of_a_tool_is_dragged_on_its_drawing() {
    for tool in [punch(), hardy()] {
        let before = tool.clone();
        let mut window = show(Workbench::with_tool(tool, around()), (1300.0, 900.0));
        let label = match before.style_kind().is_hardy() {
            true => "Hardy shank block height, on the drawing",
            false => "Working end taper, on the drawing",
        };
        let mark = |window: &Window| window.get_by_label(label).rect().center();
        let from = mark(&window);
        let way = match before.style_kind().is_hardy() {
            true => egui::vec2(0.0, -40.0),
            false => egui::vec2(-40.0, 0.0),
        };
        point(&mut window, from);
        hold(&mut window, from);
        point(&mut window, from + way);
        let held = mark(&window);
        release(&mut window, from + way);
        let after = open_tool(&window);
        assert_ne!(after, before, "{label}");
        assert!((held - from).dot(way) > 0.0, "{label}: {held} from {from}");
        undo(&mut window);
        assert_eq!(open_tool(&window), before, "one drag is one step");
    }
}

#[test]
fn a_value_of_a_tool_is_stepped_by_keys_on_its_drawing() {
    let mut window = show(Workbench::with_tool(punch(), around()), (1300.0, 900.0));
    let label = "Working end taper, on the drawing";
    window.get_by_label(label).focus();
    window.run();
    press(&mut window, Modifiers::NONE, Key::ArrowUp);
    let taper = |tool: &Tool| tool.field("working.taper").expect("it has one").value;
    // One step of a rule is 1/16 in.
    let expected = taper(&punch()).number().expect("a size") + 25.4 / 16.0;
    let found = taper(&open_tool(&window)).number().expect("a size");
    assert!((found - expected).abs() < 1e-6, "{found} and {expected}");
}

fn hardy() -> Tool {
    let bar = parse_bar("1 1/4 in square").expect("a bar");
    Tool::starting(ToolKind::CutOff, length("7/8 in"), bar)
}

#[test]
fn a_tool_is_printed_and_drawn() {
    let folder = folder();
    let (pdf, svg) = (folder.path().join("p.pdf"), folder.path().join("p.svg"));
    let job = folder.path().join("job.pdf");
    let mut window = show(Workbench::with_tool(punch(), around()), (1300.0, 1000.0));
    press(&mut window, Modifiers::COMMAND, Key::P);
    until_counted(&mut window);
    assert!(
        window.query_by_label("Broken reins").is_none(),
        "a tool has no reins"
    );
    click(&mut window, "Choose the file");
    give_path(&mut window, &pdf, "Write");
    until_done(&mut window);
    let printed = pages(&bytes(&pdf)).join("\n");
    assert!(printed.contains(&punch().name), "{printed}");
    press(&mut window, Modifiers::COMMAND | Modifiers::SHIFT, Key::P);
    window
        .get_by_role_and_label(Role::RadioButton, "The bar with its marks")
        .click();
    window.run();
    click(&mut window, "Choose the file");
    give_path(&mut window, &svg, "Write");
    assert!(String::from_utf8_lossy(&bytes(&svg)).contains("<svg"));
    press(&mut window, Modifiers::COMMAND, Key::J);
    click(&mut window, "Choose the file");
    give_path(&mut window, &job, "Write");
    assert!(pages(&bytes(&job)).join("\n").contains(&punch().name));
}

#[test]
fn what_only_a_pair_has_is_refused_for_a_tool() {
    let mut window = window();
    press(&mut window, Modifiers::NONE, Key::F8);
    click(&mut window, "View");
    click(&mut window, "Trace a picture…");
    window.get_by_label_contains("A picture is traced under one pair of tongs");
    click(&mut window, "File");
    assert!(window.query_by_label("Tools for this pair").is_none());
    // A set is begun from a tool as from a pair.
    window.get_by_label("Make a family of this design");
}

/// Shows the tools of the open pair.
fn tools_of_pair(window: &mut Window) {
    click(window, "File");
    click(window, "Tools for this pair");
}

#[test]
fn the_tools_of_a_pair_are_kept_together_in_one_step() {
    let home = folder();
    let pair = pairs::flat();
    let mut window = show(
        Workbench::with(pair.clone(), remembering(home.path())),
        SMALL,
    );
    tools_of_pair(&mut window);
    click(&mut window, "Save all into a folder…");
    let into = home.path().join("its tools");
    write(&mut window, "Folder", &into.display().to_string());
    click(&mut window, "Write");
    window.get_by_label_contains("saved into");
    let expected: Vec<String> = tools_for(&pair)
        .iter()
        .map(|(name, _)| format!("{name}.ron"))
        .collect();
    let mut sorted = expected.clone();
    sorted.sort();
    assert!(!sorted.is_empty());
    assert_eq!(names(&into), sorted);
    for (name, tool) in tools_for(&pair) {
        let kept = bytes(&into.join(format!("{name}.ron")));
        assert_eq!(tool::read(&kept).expect("a tool"), tool);
    }
    assert_eq!(window.state().document(), &pair, "the pair stays open");
}

/// A tool that serves several sizes is there once: of two sizes with one rivet there is one set.
#[test]
fn a_family_has_the_tools_of_all_its_sizes() {
    let home = folder();
    let family = Family::from_design(&pairs::flat());
    let mut window = show(
        Workbench::with_family(family, remembering(home.path())),
        SMALL,
    );
    tools_of_pair(&mut window);
    for (name, _) in tools_for(&pairs::flat()) {
        window.get_by_label(&format!("Open the {name}"));
    }
}

#[test]
fn the_shelf_shows_the_tools_of_its_folder() {
    let home = folder();
    put(home.path(), "punch.ron", tool::write(&punch()));
    put(
        home.path(),
        "pair.ron",
        reinwright_core::tongs::document::write(&pairs::flat()),
    );
    put(home.path(), "shelf", home.path().display().to_string());
    let mut window = show(
        Workbench::with(pairs::flat(), remembering(home.path())),
        SMALL,
    );
    press(&mut window, Modifiers::COMMAND, Key::L);
    window.get_by_label("1 pair, 1 tool");
    window.get_by_label("Round punch");
    click(&mut window, &format!("Open {}", punch().name));
    assert_eq!(open_tool(&window), punch());
}

/// A set of tools hangs there size by size, is marked as pairs are, and is no answer to what holds
/// some stock.
#[test]
fn a_set_of_tools_hangs_on_the_shelf() {
    let home = folder();
    let drifts = samples_folder().join("tools/drift-set.ron");
    put(home.path(), "drifts.ron", bytes(&drifts));
    put(home.path(), "shelf", home.path().display().to_string());
    let mut window = show(
        Workbench::with(pairs::flat(), remembering(home.path())),
        TALL,
    );
    press(&mut window, Modifiers::COMMAND, Key::L);
    window.get_by_label("0 pairs, 7 tools");
    let size = "Drifts for the benches: 1/2 in";
    window.get_by_label(&format!("Open {size}"));
    click(&mut window, &format!("Have {size}"));
    let marks = Marks::read(&bytes(&home.path().join("shelf.ron"))).expect("marks");
    assert_eq!(marks.of("drifts.ron", "1/2 in"), Some(Mark::Have));
    write(&mut window, "What do I own for", "1/2 round");
    click(&mut window, "Ask");
    window.get_by_label("0 of 0 pairs hold it well");
    assert!(window.query_by_label(&format!("Open {size}")).is_none());
}

#[test]
fn a_tool_of_a_pair_is_opened_and_asks_before_the_pair_is_lost() {
    let mut window = show_design(pairs::flat(), TALL);
    fill(&mut window, "Work thickness", "1/4");
    let pair = window.state().document().clone();
    tools_of_pair(&mut window);
    click(&mut window, "Open the punch");
    click(&mut window, "Throw the changes away");
    let (_, expected) = tools_for(&pair).swap_remove(0);
    assert_eq!(open_tool(&window), expected);
}

#[test]
fn a_pair_that_needs_no_tools_says_so() {
    let mut pair = pairs::flat();
    pair.set("rivet.made", "drilled").expect("a field");
    pair.set("rivet.head", "countersunk").expect("a field");
    assert!(tools_for(&pair).is_empty());
    let mut window = show_design(pair, SMALL);
    tools_of_pair(&mut window);
    window.get_by_label_contains("No tool of its own makes it");
}

#[test]
fn a_note_and_a_name_are_typed() {
    let mut window = window();
    write(&mut window, "Name", "My punch");
    write(&mut window, "Note", "for the light pair");
    let tool = open_tool(&window);
    assert_eq!(
        (&*tool.name, &*tool.note),
        ("My punch", "for the light pair")
    );
    unfold(&mut window, "Layout and allowances");
    fill(&mut window, "Bar handling tail", "8");
    assert_eq!(open_tool(&window).tail, length("8 in"));
}
