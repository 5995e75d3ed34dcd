//! What to print, by its labels: what is ticked must come out, and be remembered.

use egui::accesskit::Role;
use egui::{Key, Modifiers, vec2};
use egui_kittest::kittest::{NodeT, Queryable};
use reinwright::jobs::pages::Consent;
use reinwright::jobs::printing::{Template, today};
use reinwright::jobs::what::{Kind, Reins, Size, What};
use reinwright::window::Workbench;
use reinwright_core::draw::Views;
use reinwright_core::paper::Paper;
use reinwright_core::shop::family::Family;
use reinwright_core::shop::printers::{PRINTERS_FILE, Printers};
use reinwright_core::steel::Heat;
use reinwright_tests::files::{bytes, folder};
use reinwright_tests::pairs;
use reinwright_tests::window::{
    OnBench, SMALL, Window, around, click, click_with, give_path, is_enabled, press, remembering,
    show, until_counted, until_done, write,
};

/// A window with the question what to print.
fn asked() -> Window {
    let mut window = show(Workbench::with(pairs::flat(), around()), SMALL);
    ask(&mut window);
    window
}

fn ask(window: &mut Window) {
    press(window, Modifiers::COMMAND, Key::P);
    until_counted(window);
}

/// How many pages are shown small.
fn shown(window: &Window) -> usize {
    let mut pages = 0;
    while window
        .query_by_label_contains(&format!("Page {} of ", pages + 1))
        .is_some()
    {
        pages += 1;
    }
    pages
}

/// What comes out of the window is what the same order gives elsewhere.
#[track_caller]
fn check(choose: &[&str], what: &What) {
    let folder = folder();
    let path = folder.path().join("pair.pdf");
    let mut window = asked();
    click(&mut window, "A4");
    for label in choose {
        click(&mut window, label);
    }
    until_counted(&mut window);
    let design = window.state().document().clone();
    let count = Template::with(&design, what, None).pages(Paper::A4).all;
    assert_eq!(shown(&window), count, "{choose:?}");
    click(&mut window, "Choose the file");
    let before = today();
    give_path(&mut window, &path, "Write");
    until_done(&mut window);
    let printed = [before, today()].map(|day| {
        let template = Template::with(&design, what, day);
        template.pdf(Paper::A4, Consent::All).expect("few pages")
    });
    assert!(printed.contains(&bytes(&path)), "{choose:?}");
}

#[test]
fn what_is_ticked_is_printed() {
    check(&[], &What::default());
    let head = What {
        kinds: vec![Kind::Head],
        ..What::default()
    };
    let only_head = [
        "The finished half",
        "Pair on its work",
        "Marks along the bar",
        "Head alone",
    ];
    check(&only_head, &head);
    let side = What {
        views: Views::Side,
        reins: Reins::Broken,
        ..What::default()
    };
    check(&["Side view", "Broken reins"], &side);
    let hot = What {
        size: Size::Both(Heat::parse("orange").expect("a colour")),
        ..What::default()
    };
    check(&["Hot, thin line cold"], &hot);
}

#[test]
fn a_page_is_looked_at_from_near() {
    let mut window = asked();
    let all = shown(&window);
    assert!(all > 1);
    click(&mut window, &format!("Page 1 of {all}"));
    window
        .get_by_role_and_label(Role::Button, "Page after")
        .click();
    window.run();
    window.get_by_label(&format!("Page 2 of {all}"));
    click(&mut window, "All pages");
    assert_eq!(shown(&window), all);
}

/// Escape leaves, Enter prints, and all of it is reached with the Tab key.
#[test]
fn the_keys_do_it_too() {
    let mut window = asked();
    press(&mut window, Modifiers::NONE, Key::Escape);
    assert!(window.query_by_label("Head alone").is_none());
    ask(&mut window);
    let mut seen: Vec<String> = Vec::new();
    for _ in 0..60 {
        press(&mut window, Modifiers::NONE, Key::Tab);
        let focused = window
            .root()
            .children_recursive()
            .find(|node| node.is_focused());
        seen.extend(focused.and_then(|node| node.accesskit_node().label()));
    }
    for label in [
        "Head alone",
        "Side view",
        "No reins",
        "Hot size",
        "A3",
        "Measure a printer",
        "Page 1 of 4",
        "Choose the file",
        "Cancel",
    ] {
        assert!(
            seen.iter().any(|own| own == label),
            "{label} is not reached: {seen:?}"
        );
    }
    press(&mut window, Modifiers::NONE, Key::Escape);
    ask(&mut window);
    press(&mut window, Modifiers::NONE, Key::Enter);
    window.get_by_label("File, with its folder");
}

#[test]
fn what_was_printed_last_is_chosen_again() {
    let folder = folder();
    let start = || {
        show(
            Workbench::with(pairs::flat(), remembering(folder.path())),
            SMALL,
        )
    };
    let mut window = start();
    ask(&mut window);
    for label in ["Head alone", "Top view", "Hot size", "A3"] {
        click(&mut window, label);
    }
    click(&mut window, "Choose the file");
    give_path(&mut window, &folder.path().join("pair.pdf"), "Write");
    until_done(&mut window);
    let mut window = start();
    ask(&mut window);
    for label in [
        "Head alone",
        "Top view",
        "Hot size",
        "A3",
        "The finished half",
    ] {
        let node = window.get_by_label(label);
        let on = node.accesskit_node().toggled();
        assert_eq!(on, Some(egui::accesskit::Toggled::True), "{label}");
    }
}

#[test]
fn what_cannot_be_printed_says_why() {
    let mut window = asked();
    for label in [
        "The finished half",
        "Pair on its work",
        "Marks along the bar",
    ] {
        click(&mut window, label);
    }
    window.get_by_label_contains("Nothing is chosen");
    assert!(!is_enabled(&window, "Choose the file"));
    press(&mut window, Modifiers::NONE, Key::Enter);
    window.get_by_label("Head alone").click();
    window.run();
    click(&mut window, "Hot size");
    write(&mut window, "Heat", "9000 C");
    assert!(
        window
            .query_all_by_label_contains("is not between")
            .next()
            .is_some()
    );
    assert!(!is_enabled(&window, "Choose the file"));
    write(&mut window, "Heat", "900 C");
    assert!(is_enabled(&window, "Choose the file"));
    write(&mut window, "Other or roll", "5 x 5 mm");
    assert!(!is_enabled(&window, "Choose the file"));
    write(&mut window, "Other or roll", "600 x 2000 mm");
    until_counted(&mut window);
    window.get_by_label("1 page of 600 x 2000 mm");
}

/// A printer that is 1.2 % too wide and 0.8 % too short is noted and used; one that is 5 % off was
/// told to fit its pages.
#[test]
fn a_printer_is_measured_and_used() {
    let folder = folder();
    let bench = Workbench::with(pairs::flat(), remembering(folder.path()));
    let mut window = show(bench, (1300.0, 1200.0));
    ask(&mut window);
    click(&mut window, "Measure a printer");
    write(&mut window, "Its name", "Office");
    write(&mut window, "Bar across the paper", "105 mm");
    write(&mut window, "Bar along the paper", "99.2 mm");
    click(&mut window, "Note this printer");
    window.get_by_label_contains("not fitted to the page");
    write(&mut window, "Bar across the paper", "101.2 mm");
    click(&mut window, "Note this printer");
    window.get_by_label_contains("1.2 % too long across and 0.8 % too short along");
    let known = Printers::read(&bytes(&folder.path().join(PRINTERS_FILE))).expect("printers");
    let printer = known.named("office").cloned();
    until_counted(&mut window);
    let path = folder.path().join("pair.pdf");
    click(&mut window, "Choose the file");
    let before = today();
    give_path(&mut window, &path, "Write");
    until_done(&mut window);
    let paper = reinwright_core::paper::Paper::A4;
    let design = window.state().document().clone();
    let printed = [before, today()].map(|day| {
        let own = Template::with(&design, &What::default(), day).on(printer.clone());
        let papers = [paper, Paper::Letter];
        papers.map(|paper| own.pdf(paper, Consent::All).expect("few pages"))
    });
    assert!(printed.iter().flatten().any(|pdf| *pdf == bytes(&path)));
    window.get_by_label("Open the pages");
}

#[test]
fn sizes_of_a_family_are_chosen() {
    let mut family = Family::from_design(&pairs::starting("flat", "1/2 in flat", "3/4 in square"));
    for work in ["1/4 in flat", "1 in flat"] {
        let size = reinwright_core::shop::family::Size::new(pairs::work(work));
        family.add(size).expect("room");
    }
    let mut window = show(Workbench::with_family(family, around()), (1400.0, 1200.0));
    ask(&mut window);
    let all = shown(&window);
    click(&mut window, "The sheets of the whole set");
    until_counted(&mut window);
    let templates = shown(&window);
    click(&mut window, "1/4 in flat");
    until_counted(&mut window);
    let two = shown(&window);
    assert!(
        two < templates && templates < all,
        "{two} {templates} {all}"
    );
    click(&mut window, "None");
    window.get_by_label_contains("Nothing is chosen");
    click(&mut window, "All sizes");
    until_counted(&mut window);
    assert_eq!(shown(&window), templates);
}

/// In the smallest window the buttons are in sight, and so are some pages and choices.
#[test]
fn it_fits_in_the_smallest_window() {
    let window = asked();
    let whole = egui::Rect::from_min_size(egui::Pos2::ZERO, vec2(SMALL.0, SMALL.1));
    for label in [
        "Choose the file",
        "Cancel",
        "The finished half",
        "Page 1 of 4",
    ] {
        let area = window.get_by_label(label).rect();
        assert!(whole.contains_rect(area), "{label} lies at {area:?}");
    }
}

/// Pages are counted and shown for what is chosen last, however fast it changes.
#[test]
fn the_last_choice_counts() {
    let mut window = asked();
    let before = shown(&window);
    for _ in 0..3 {
        window.get_by_label("Head alone").click();
        window.step();
    }
    click_with(&mut window, "Pair wide open");
    until_counted(&mut window);
    let design = window.state().document().clone();
    let what = What {
        kinds: vec![Kind::Half, Kind::Head, Kind::Pair, Kind::Open, Kind::Bar],
        ..What::default()
    };
    let count = Template::with(&design, &what, None)
        .pages(Paper::Letter)
        .all;
    assert!(count > before);
    assert_eq!(shown(&window), count);
}
