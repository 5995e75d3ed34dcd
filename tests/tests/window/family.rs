//! The family workbench by its labels: what is typed and clicked must stand in the family.

use egui::{Key, Modifiers};
use egui_kittest::kittest::Queryable;
use reinwright::window::Workbench;
use reinwright_core::shop::family::{self, Family, Rule, Size};
use reinwright_core::tongs::document::{self, Document};
use reinwright_tests::command_line::{done, text};
use reinwright_tests::designs::family_paths;
use reinwright_tests::files::{bytes, folder, names, put};
use reinwright_tests::pairs::{length, starting, work};
use reinwright_tests::window::{
    OnBench, SMALL, Window, around, click, click_with, fill, give_path, press, redo, remembering,
    show, undo, until_counted, until_done, value, write,
};

/// A window in which the whole table shows.
const TALL: (f32, f32) = (1500.0, 3000.0);

fn design() -> Document {
    starting("flat", "1/2 in flat", "3/4 in square")
}

/// Three flat sizes in inches, `1/4 in flat` to `1 in flat`.
fn three() -> Family {
    let mut family = Family::from_design(&design());
    for work in ["1/4 in flat", "1 in flat"] {
        family
            .add(Size::new(self::work(work)))
            .expect("room for it");
    }
    family
}

fn window() -> Window {
    show(Workbench::with_family(three(), around()), TALL)
}

fn family(window: &Window) -> &Family {
    window.state().family().expect("a family is open")
}

/// The design of a size, as the family makes it.
fn made(window: &Window, at: usize) -> Document {
    family(window).take_out(at).expect("there is such a size")
}

const BOSS: &str = "1 in flat: Boss thickness";
const LET_GO: &str = "Let go of 1 in flat: Boss thickness";

#[test]
fn a_cell_is_set_by_hand_for_its_size_alone() {
    let mut window = window();
    let (before, base) = (made(&window, 0), family(&window).base.clone());
    assert!(window.query_by_label(LET_GO).is_none());
    fill(&mut window, BOSS, "7/16 in");
    assert_eq!(made(&window, 2).boss.thickness, length("7/16 in"));
    assert_eq!(made(&window, 0), before);
    assert_eq!(family(&window).base, base);
    assert_eq!(value(&window, BOSS).as_deref(), Some("7/16 in"));
    window.get_by_label(LET_GO);
}

#[test]
fn an_override_survives_the_base_and_is_let_go() {
    let mut window = window();
    fill(&mut window, BOSS, "7/16 in");
    fill(&mut window, "Base: Boss thickness", "5/16 in");
    assert_eq!(made(&window, 2).boss.thickness, length("7/16 in"));
    assert_eq!(made(&window, 0).boss.thickness, length("5/16 in"));
    click(&mut window, LET_GO);
    assert_eq!(made(&window, 2).boss.thickness, length("5/16 in"));
    assert!(window.query_by_label(LET_GO).is_none());
    assert!(family(&window).sizes[2].set.is_empty());
}

#[test]
fn a_change_of_the_base_rein_flows_into_every_size() {
    let mut window = window();
    fill(&mut window, "Base: Rein length", "20 in");
    for at in 0..3 {
        assert_eq!(made(&window, at).rein.length, length("20 in"), "size {at}");
    }
    assert_eq!(
        value(&window, "1/4 in flat: Rein length").as_deref(),
        Some("20 in")
    );
}

#[test]
fn a_bad_text_says_why_and_the_old_value_stays() {
    let mut window = window();
    let before = family(&window).clone();
    let place = |window: &Window| window.get_by_label(BOSS).rect().min;
    let at = place(&window);
    fill(&mut window, BOSS, "thick");
    assert_eq!(place(&window), at, "no cell moves away under the pointer");
    assert_eq!(family(&window), &before);
    window.get_by_label_contains("1 in flat: Boss thickness: \"thick\"");
    assert_eq!(
        value(&window, BOSS),
        Some(before.base.boss.thickness.to_string())
    );
    fill(&mut window, BOSS, "1/2 in");
    assert!(window.query_by_label_contains("\"thick\"").is_none());
}

#[test]
fn a_rule_is_chosen_from_its_list() {
    let mut window = window();
    let before = made(&window, 2);
    assert_eq!(before.rein.length, made(&window, 0).rein.length);
    click(&mut window, "Rule: Rein length");
    let way = window.query_all_by_label("with the work");
    way.last().expect("the way is in the open list").click();
    window.run();
    assert_eq!(
        family(&window).rules.get("rein.length"),
        Some(&Rule::WithWork)
    );
    let ratio = made(&window, 2).rein.length.mm() / made(&window, 1).rein.length.mm();
    assert!(
        (ratio - 2.0).abs() < 0.1,
        "the work is twice as large: {ratio}"
    );
}

#[test]
fn a_size_is_added_between_and_removed() {
    let mut window = window();
    click(&mut window, "Add between");
    let sizes = |window: &Window| {
        let sizes = family(window).sizes.iter();
        sizes
            .map(|size| size.work.size().to_string())
            .collect::<Vec<_>>()
    };
    assert_eq!(sizes(&window), ["1/4 in", "3/8 in", "1/2 in", "1 in"]);
    window.get_by_label("3/8 in flat: Boss thickness");
    click(&mut window, "Remove");
    assert_eq!(sizes(&window), ["1/4 in", "1/2 in", "1 in"]);
    fill(&mut window, "Work of a new size", "3/4 in");
    assert_eq!(sizes(&window), ["1/4 in", "1/2 in", "3/4 in", "1 in"]);
    fill(&mut window, "Work of a new size", "much");
    window.get_by_label_contains("New size: ");
    assert_eq!(sizes(&window).len(), 4);
    fill(&mut window, "Work of a new size", "7/8 in");
    assert_eq!(sizes(&window).len(), 5);
    assert!(window.query_by_label_contains("New size: ").is_none());
}

#[test]
fn undo_takes_back_one_change_of_the_family() {
    let mut window = window();
    let before = family(&window).clone();
    fill(&mut window, BOSS, "7/16 in");
    let set = family(&window).clone();
    click(&mut window, "Add between");
    undo(&mut window);
    assert_eq!(family(&window), &set);
    undo(&mut window);
    assert_eq!(family(&window), &before);
    redo(&mut window);
    assert_eq!(family(&window), &set);
}

#[test]
fn a_family_is_made_of_a_design_in_one_step() {
    let mut window = show(Workbench::with(design(), around()), TALL);
    click(&mut window, "File");
    click(&mut window, "Make a family of this design");
    let family = family(&window);
    assert_eq!(family.base, design());
    assert_eq!(
        family.take_out(0),
        Some(design()),
        "a family of one is its design"
    );
    assert!(window.state().is_changed(), "a new family is not on disk");
}

/// A pair is named after its work, which is one size of many in its family; a name that was typed stays.
#[test]
fn a_family_is_not_named_after_one_size() {
    for (name, set) in [
        ("Flat tongs for 1/2 in flat", "Flat tongs"),
        ("Flat tongs for the bench", "Flat tongs for the bench"),
    ] {
        let own = Document {
            name: name.to_owned(),
            ..design()
        };
        let mut window = show(Workbench::with(own, around()), TALL);
        click(&mut window, "File");
        click(&mut window, "Make a family of this design");
        assert_eq!(family(&window).name, set);
    }
}

#[test]
fn a_size_is_taken_out_as_a_design() {
    let folder = folder();
    let path = folder.path().join("set.ron");
    put(folder.path(), "set.ron", family::write(&three()));
    let mut window = show(Workbench::open(&path, around()).expect("opens"), TALL);
    assert!(!window.state().is_changed());
    let third = made(&window, 2);
    // Its column's head also says what is the worst of it.
    click_with(&mut window, "Size 1 in flat: ");
    click(&mut window, "Take out as a design");
    assert!(window.state().family().is_none());
    assert_eq!(window.state().document(), &third);
}

#[test]
fn a_family_is_saved_opened_and_asked_about() {
    let folder = folder();
    let path = folder.path().join("set.ron");
    let mut window = window();
    fill(&mut window, BOSS, "7/16 in");
    press(&mut window, Modifiers::COMMAND, Key::Q);
    click(&mut window, "Stay here");
    assert!(!window.state().may_close());
    press(&mut window, Modifiers::COMMAND, Key::S);
    give_path(&mut window, &path, "Write");
    assert!(!window.state().is_changed());
    let saved = family(&window).clone();
    assert_eq!(family::read(&bytes(&path)).expect("a family"), saved);
    let mut other = show(Workbench::with(design(), around()), TALL);
    press(&mut other, Modifiers::COMMAND, Key::O);
    give_path(&mut other, &path, "Open");
    assert_eq!(family(&other), &saved);
}

#[test]
fn a_damaged_family_opens_what_it_can_and_says_what_not() {
    let folder = folder();
    let path = folder.path().join("set.ron");
    let damaged = family::write(&three()).replacen("1/4 in", "1/4 inch of butter", 1);
    put(folder.path(), "set.ron", &damaged);
    let mut window = show(Workbench::open(&path, around()).expect("opens"), TALL);
    assert_eq!(family(&window).sizes.len(), 2);
    window.get_by_label_contains("is damaged");
    press(&mut window, Modifiers::COMMAND, Key::S);
    window.get_by_label("File, with its folder");
    assert_eq!(bytes(&path), damaged.as_bytes(), "not written over");
}

#[test]
fn the_set_is_printed_as_the_command_line_prints_it() {
    let folder = folder();
    let (file, out) = (folder.path().join("set.ron"), folder.path().join("out"));
    put(folder.path(), "set.ron", family::write(&three()));
    // Both on one day: printed again if it has ended meanwhile.
    let by_job = || {
        done(&["family", text(&file), "--out", text(&out)]);
        bytes(&out.join("flat-tongs-for-1-2-in-flat.pdf"))
    };
    let before = by_job();
    let mut window = window();
    click(&mut window, "Print to PDF");
    click(&mut window, "A4");
    until_counted(&mut window);
    click(&mut window, "Choose the file");
    give_path(&mut window, &folder.path().join("set.pdf"), "Write");
    until_done(&mut window);
    let pdf = bytes(&folder.path().join("set.pdf"));
    assert!(pdf == before || pdf == by_job());
}

/// A family that takes some time to print.
fn many(sizes: u8) -> Family {
    let mut family = Family::from_design(&design());
    for n in 1..sizes {
        let work = work(&format!("{} mm flat", 13.0 + 0.2 * f64::from(n)));
        family.add(Size::new(work)).expect("room");
    }
    family
}

#[test]
fn a_job_that_is_cancelled_writes_nothing() {
    let folder = folder();
    let mut window = show(Workbench::with_family(many(40), around()), SMALL);
    click(&mut window, "Print to PDF");
    // More than 40 pages are printed with a button that says how many.
    until_counted(&mut window);
    assert!(window.query_by_label("Choose the file").is_none());
    window.get_by_label_contains(" pages of letter for ");
    click_with(&mut window, "pages: choose the file");
    give_path(&mut window, &folder.path().join("set.pdf"), "Write");
    assert!(window.state().is_at_work());
    window.get_by_label("Cancel").click();
    window.step();
    until_done(&mut window);
    window.get_by_label("Stopped: nothing was written");
    assert_eq!(names(folder.path()), [""; 0]);
    press(&mut window, Modifiers::COMMAND | Modifiers::SHIFT, Key::P);
    click(&mut window, "Choose the folder");
    write(
        &mut window,
        "Folder",
        &folder.path().join("svg").display().to_string(),
    );
    click(&mut window, "Write");
    window.get_by_label("Cancel").click();
    window.step();
    until_done(&mut window);
    assert_eq!(names(folder.path()), [""; 0]);
}

/// The window goes on while a set is written, and what is written is the set as it was.
#[test]
fn the_family_can_be_changed_while_it_is_printed() {
    let folder = folder();
    let svg = folder.path().join("svg");
    let mut window = show(Workbench::with_family(many(12), around()), SMALL);
    press(&mut window, Modifiers::COMMAND | Modifiers::SHIFT, Key::P);
    click(&mut window, "Choose the folder");
    write(&mut window, "Folder", &svg.display().to_string());
    click(&mut window, "Write");
    fill(&mut window, "Base: Work thickness", "5/8 in");
    assert_eq!(family(&window).base.work.size(), length("5/8 in"));
    until_done(&mut window);
    window.get_by_label_contains("29 drawings written to");
    assert_eq!(names(&svg).len(), 5 + 2 * 12);
}

/// The bar of the set is reckoned for as many pairs as the dialog asks for.
#[test]
fn the_pairs_of_each_size_are_asked_for() {
    let folder = folder();
    let mut window = window();
    press(&mut window, Modifiers::COMMAND | Modifiers::SHIFT, Key::P);
    window.get_by_label_contains("all 3 sizes");
    write(&mut window, "Pairs of each size", "7");
    press(&mut window, Modifiers::NONE, Key::Enter);
    click(&mut window, "Choose the folder");
    let svg = folder.path().join("svg");
    write(&mut window, "Folder", &svg.display().to_string());
    click(&mut window, "Write");
    until_done(&mut window);
    let ranges = String::from_utf8(bytes(&svg.join("all-ranges.svg"))).expect("text");
    assert!(ranges.contains("7 pairs"), "the bar for seven of each");
}

#[test]
fn gaps_are_said_and_filled() {
    let mut family = Family::from_design(&design());
    family.add(Size::new(work("3 in flat"))).expect("room");
    let mut window = show(Workbench::with_family(family, around()), TALL);
    click(&mut window, "What the set holds");
    window.get_by_label_contains("Nothing here holds");
    click_with(&mut window, "Add a size for");
    assert_eq!(self::family(&window).sizes.len(), 3);
    let filler = self::family(&window).sizes[1].work.size().to_string();
    let sold = ["1 in", "1 1/4 in", "1 1/2 in", "1 3/4 in", "2 in"];
    assert!(sold.contains(&filler.as_str()), "{filler} flat is not sold");
}

/// The stock that can be bought is typed where the gaps are told, and kept for the next day.
#[test]
fn the_stock_that_can_be_bought_is_edited() {
    let folder = folder();
    let mut family = Family::from_design(&design());
    family.add(Size::new(work("3 in flat"))).expect("room");
    let bench =
        |family: &Family| Workbench::with_family(family.clone(), remembering(folder.path()));
    let mut window = show(bench(&family), TALL);
    click(&mut window, "What the set holds");
    window.get_by_label_contains("Nothing here holds");
    click(&mut window, "Stock that can be bought");
    fill(&mut window, "Flat", "1/2, 3");
    window.get_by_label("All 2 stock sizes from 1/2 in to 3 in flat are held");
    fill(&mut window, "Flat", "1/2, lots");
    window.get_by_label_contains("in flat: \"lots\"");
    drop(window);
    let mut window = show(bench(&family), TALL);
    click(&mut window, "What the set holds");
    window.get_by_label("All 2 stock sizes from 1/2 in to 3 in flat are held");
    click(&mut window, "Stock that can be bought");
    click(&mut window, "Usual sizes");
    window.get_by_label_contains("Nothing here holds");
}

/// A list that cannot be read is told, and kept under another name before a good one is written.
#[test]
fn a_damaged_list_of_stock_is_told_and_kept() {
    let folder = folder();
    put(folder.path(), "stock-sizes", "in flat: 1/4, a lot");
    let bench = Workbench::with_family(three(), remembering(folder.path()));
    let mut window = show(bench, TALL);
    click(&mut window, "What the set holds");
    window.get_by_label_contains("a lot");
    click(&mut window, "Stock that can be bought");
    fill(&mut window, "Flat", "1/4, 1/2, 1");
    window.get_by_label_contains("is kept as");
    assert!(window.query_by_label_contains("a lot").is_none());
    let aside = bytes(&folder.path().join("stock-sizes.damaged-1"));
    assert_eq!(aside, b"in flat: 1/4, a lot");
}

/// The first row and the first size stand at the table's corner when a family is opened, in the
/// smallest window and for every size of a sample; a size that is chosen elsewhere is brought into
/// sight sideways only.
#[test]
fn the_table_opens_at_its_start() {
    for path in family_paths() {
        let family = family::read(&bytes(&path)).expect("a family");
        let label = family.table().labels[0].clone();
        let bench = Workbench::open(&path, around()).expect("it opens");
        let mut window = show(bench, SMALL);
        let at = |name: &str| window.get_by_label(name).rect();
        let (value, base) = (at("Value"), at("Base: Work shape"));
        let (head, first) = (
            window
                .get_by_label_contains(&format!("Size {label}"))
                .rect(),
            at(&format!("{label}: Work shape")),
        );
        assert!(
            (head.left() - first.left()).abs() < 4.0,
            "{head} over {first}"
        );
        assert!(first.left() >= base.right() - 1.0, "{base} beside {first}");
        // Under the heads stands the heading of the first group, then the first row.
        let below = first.top() - value.bottom();
        assert!((0.0..60.0).contains(&below), "{value} over {first}");
        assert!(first.bottom() < SMALL.1, "{first}");
        // A size that is added at the end is brought into sight, the first row stays.
        fill(&mut window, "Work of a new size", "1 7/8 in");
        let added = self::family(&window).table().labels;
        let cell = format!("{}: Work shape", added.last().expect("sizes"));
        let last = window.get_by_label(&cell).rect();
        assert!(
            last.right() <= SMALL.0 && (last.top() - first.top()).abs() < 1.0,
            "{last}"
        );
        assert_eq!(window.get_by_label("Base: Work shape").rect(), base);
    }
}

/// Nothing over the table and over the pictures runs out of the smallest window.
#[test]
fn nothing_is_cut_off_in_the_smallest_window() {
    let samples = family_paths();
    let path = samples.first().expect("there are sample families");
    let mut window = show(Workbench::open(path, around()).expect("it opens"), SMALL);
    for picture in [
        "One size",
        "One over the other",
        "Side by side",
        "What the set holds",
    ] {
        click(&mut window, picture);
        for name in [
            "One size",
            "One over the other",
            "Side by side",
            "What the set holds",
            "Findings",
            "Differs from the base",
            "Family name",
            "Rounded",
            "Only what differs",
            "Work of a new size",
            "Add size",
            "Add between",
            "Take out as a design",
        ] {
            let rect = window.get_by_label(name).rect();
            let inside = rect.left() >= 0.0 && rect.right() <= SMALL.0 && rect.bottom() <= SMALL.1;
            assert!(inside, "{picture}: {name} at {rect}");
        }
    }
}

/// Every picture and page is drawn, in the smallest window, without a widget lacking its name.
#[test]
fn every_picture_shows() {
    let mut window = show(Workbench::with_family(three(), around()), SMALL);
    for (picture, shows) in [
        ("One over the other", "All sizes one over the other"),
        ("Side by side", "Picture of 1/4 in flat"),
        ("Side by side", "Picture of 1 in flat"),
        ("What the set holds", "Holds flat"),
        ("One size", "Drawing of the pair"),
    ] {
        click(&mut window, picture);
        let found = window.query_all_by_label_contains(shows).count();
        assert_eq!(found, 1, "{picture}: {shows}");
    }
    click(&mut window, "Side by side");
    click(&mut window, "Picture of 1/2 in flat");
    click(&mut window, "Differs from the base");
    window.get_by_label("This size is the base itself.");
}

/// Of two hundred sizes only those in sight are drawn.
#[test]
fn a_large_table_draws_what_is_seen() {
    let mut family = Family::from_design(&design());
    for n in 0..199 {
        let work = work(&format!("{} mm flat", 5.0 + 0.1 * f64::from(n)));
        family.add(Size::new(work)).expect("room");
    }
    let window = show(Workbench::with_family(family, around()), SMALL);
    let heads = window.query_all_by_label_contains("Size 5").count();
    assert!((1..20).contains(&heads), "{heads} sizes are drawn");
    assert!(
        window
            .query_by_label_contains("Size 24.8 mm flat")
            .is_none()
    );
    let document = window
        .state()
        .family()
        .and_then(|family| family.take_out(0));
    assert!(document.is_some_and(|design| document::check_limits(&design).is_ok()));
}

/// What is of one design says how a size becomes one.
#[test]
fn a_making_and_heats_of_a_family_say_how_a_size_is_taken_out() {
    for (key, of) in [
        (Key::F6, "A making is of one design"),
        (Key::F8, "Heats are of one design"),
    ] {
        let mut window = window();
        press(&mut window, Modifiers::NONE, key);
        window.get_by_label_contains(of);
        window.get_by_label_contains("press \"Take out as a design\" first");
    }
}

/// Beside the findings of a size is the way to its mends, its making and its heats.
#[test]
fn a_size_is_taken_out_where_its_findings_stand() {
    let folder = folder();
    let path = folder.path().join("set.ron");
    put(folder.path(), "set.ron", family::write(&three()));
    let mut window = show(Workbench::open(&path, around()).expect("opens"), TALL);
    let third = made(&window, 2);
    click_with(&mut window, "Size 1 in flat: ");
    window.get_by_label_contains("Ways to mend");
    click(&mut window, "Take out 1 in flat");
    assert!(window.state().family().is_none());
    assert_eq!(window.state().document(), &third);
}
