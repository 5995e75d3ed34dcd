//! The Fit and Strength pages by their labels: what they show is what the core reckons.

use egui_kittest::kittest::{NodeT, Queryable};
use reinwright_core::asked::Units;
use reinwright_core::proof::fit::{fit, fit_on};
use reinwright_core::proof::strength::{StrengthLoad, strength};
use reinwright_core::shop::Answers;
use reinwright_core::tongs::document::Document;
use reinwright_core::tongs::resolve;
use reinwright_tests::pairs::{flat, length, starting, v_bit};
use reinwright_tests::window::{
    OnBench, SMALL, TALL, Window, click, fill, point, show_design, slide, value,
};

fn on_page(document: Document, page: &str, size: (f32, f32)) -> Window {
    let mut window = show_design(document, size);
    click(&mut window, page);
    window
}

#[test]
fn fit_shows_the_range_and_three_drawings() {
    let design = flat();
    let fit = fit(&design, &resolve(&design));
    let range = fit.range.as_ref().expect("a flat pair holds its work");
    let show = design.units.show();
    let window = on_page(design, "Fit", TALL);
    let ends = [range.least, range.most].map(|end| show.text(end.size_mm));
    window.get_by_label(&format!("{} to {}", ends[0], ends[1]));
    for (name, ended) in [("Smallest", range.least), ("Largest", range.most)] {
        let words = format!(
            "{name}, {}: ends where {}",
            show.text(ended.size_mm),
            ended.limit.name()
        );
        // The drawing carries the words for a screen reader, the label for the eye.
        assert_eq!(
            window.get_all_by_label_contains(&words).count(),
            2,
            "{words}"
        );
    }
    assert_eq!(
        window.get_all_by_label_contains("Its own, 3/8 in").count(),
        2
    );
    assert_eq!(window.get_all_by_label_contains("Chart of ").count(), 2);
}

#[test]
fn other_work_is_tried_and_let_go_without_touching_the_design() {
    let design = flat();
    let model = resolve(&design);
    let half_inch = design.work.with_size(length("1/2 in"));
    let on = fit_on(&design, &model, &half_inch).expect("it opens so far");
    let show = design.units.show();
    let mut window = on_page(design.clone(), "Fit", TALL);
    slide(&mut window, "Size", 12.7);
    window.get_by_label_contains(&format!("Hand gap {}", show.text(on.hand_gap_mm)));
    window.get_by_label_contains("Bears at the heel, on the face; the tip stands");
    window.get_by_label_contains("Outside of the range");
    assert_eq!(window.state().document(), &design);
    click(&mut window, "Back to its own 3/8 in");
    assert!(
        window
            .query_by_label_contains("Outside of the range")
            .is_none()
    );
    assert_eq!(window.state().document(), &design);
}

#[test]
fn work_that_is_not_held_says_why() {
    let design = starting("v bit", "5/8 in round", "3/4 in square");
    let model = resolve(&design);
    let quarter = design.work.with_size(length("1/4 in"));
    let why = fit_on(&design, &model, &quarter).expect_err("the lips meet first");
    let mut window = on_page(design, "Fit", TALL);
    slide(&mut window, "Size", 6.35);
    // All but the first letter, which is a capital on the page.
    window.get_by_label_contains(&why.to_string()[1..]);
}

#[test]
fn strength_follows_the_squeeze_and_the_heat() {
    let design = flat();
    let model = resolve(&design);
    let cold = strength(&design, &model, &StrengthLoad::default());
    let show = design.units.show();
    let peak = |n: usize| show.stress(cold.squeezes[n].peak_stress_mpa);
    let mut window = on_page(design, "Strength", TALL);
    assert!(
        window.query_all_by_label(&peak(1)).count() >= 1,
        "{}",
        peak(1)
    );
    window.get_by_label("Figures guide; they do not certify a tool.");
    click(&mut window, "Full 121");
    assert!(
        window.query_all_by_label(&peak(2)).count() >= 1,
        "{}",
        peak(2)
    );
    window.get_by_label("It bends for good");
    click(&mut window, "Ordinary 22");
    assert!(window.query_by_label("It bends for good").is_none());
}

/// Each figure with a limit is on the page, with its margin.
#[test]
fn every_figure_is_in_the_table() {
    let design = starting("hollow bit", "5/8 in round", "3/4 in square");
    let strength = strength(&design, &resolve(&design), &StrengthLoad::default());
    let window = on_page(design, "Strength", TALL);
    for figure in &strength.figures {
        let mut name = figure.what.name().to_owned();
        name[..1].make_ascii_uppercase();
        assert!(
            window.query_all_by_label_contains(&name).count() >= 1,
            "{name}"
        );
        let margin = format!("margin {:.2}", figure.margin());
        assert!(
            window.query_all_by_label(&margin).count() >= 1,
            "{name}: {margin}"
        );
    }
}

#[test]
fn pages_stand_in_the_smallest_window() {
    for page in ["Fit", "Strength"] {
        let window = on_page(flat(), page, SMALL);
        let tab = window.get_by_label(page).rect();
        assert!(
            tab.right() <= SMALL.0 && tab.left() > 600.0,
            "{page}: {tab:?}"
        );
    }
}

#[test]
fn pointing_at_a_figure_is_no_edit() {
    let design = flat();
    let mut window = on_page(design.clone(), "Fit", TALL);
    let at = window.get_by_label("Leverage").rect().center();
    point(&mut window, at);
    assert_eq!(window.state().document(), &design);
    assert!(!window.state().is_changed());
}

/// The temperature set in Strength reaches the findings, and the count on their tab.
#[test]
fn findings_follow_the_heat_of_the_jaws() {
    use reinwright_core::finding;
    let design = flat();
    let told = |celsius: f64| {
        let found = Answers::under(&design, &StrengthLoad::with_jaws_at(celsius)).findings;
        let mends = found
            .iter()
            .filter(|f| f.severity == finding::Severity::Mend);
        mends.map(ToString::to_string).collect::<Vec<_>>()
    };
    assert_ne!(told(20.0), told(400.0));
    let mut window = on_page(design.clone(), "Strength", TALL);
    window
        .get_by_label("Neck and jaws at")
        .set_value_accesskit(752.0);
    window.run();
    window.get_by_label_contains(&format!("Findings: {} Mend", told(400.0).len()));
    let tab = window.get_all_by_label_contains("Findings: ").next();
    tab.expect("the tab of the findings").click();
    window.run();
    for words in told(400.0) {
        window.get_by_label(&words);
    }
    window.get_by_label_contains("With neck and jaws at 752 °F");
    assert!(!window.state().is_changed());
}

/// Work that is tried in Fit is what Strength squeezes, until the smith goes back.
#[test]
fn strength_is_that_on_the_work_that_is_tried() {
    use reinwright_core::proof::strength::strength_on;
    let design = flat();
    let model = resolve(&design);
    let half_inch = design.work.with_size(length("1/2 in"));
    let on = fit_on(&design, &model, &half_inch).expect("it opens so far");
    let load = StrengthLoad::default();
    let tried = strength_on(&design, &model, Some(&on), &load);
    let own = strength(&design, &model, &load);
    let show = design.units.show();
    let force = |strength: &reinwright_core::proof::strength::Strength| {
        show.force_number(strength.squeezes[2].jaw_n)
    };
    assert_ne!(force(&tried), force(&own));
    let mut window = on_page(design, "Fit", TALL);
    slide(&mut window, "Size", 12.7);
    click(&mut window, "Strength");
    window.get_by_label("On 1/2 in work, as tried in Fit");
    window.get_by_label_contains("Pressed at the heel");
    window.get_by_label(&force(&tried));
    click(&mut window, "Back to its own work");
    window.get_by_label("On its own 3/8 in work");
    window.get_by_label(&force(&own));
}

/// A margin that fails leaves the page as wide as it was.
#[test]
fn a_failing_margin_does_not_widen_the_page() {
    let mut window = on_page(flat(), "Strength", SMALL);
    let left = |window: &Window| {
        window
            .get_by_label("Squeeze at the hand, lbf")
            .rect()
            .left()
    };
    click(&mut window, "Ordinary 22");
    let before = left(&window);
    click(&mut window, "Full 121");
    window.run();
    assert_eq!(left(&window), before);
}

/// The charts go on past the range and say what ends it.
#[test]
fn charts_say_what_ends_the_range() {
    let design = flat();
    let fit = fit(&design, &resolve(&design));
    let range = fit.range.as_ref().expect("a flat pair holds its work");
    let window = on_page(design.clone(), "Fit", TALL);
    let show = design.units.show();
    window.get_by_label(&format!(
        "Hatched: not held. Under {} {}; over {} {}.",
        show.text(range.least.size_mm),
        range.least.limit.name(),
        show.text(range.most.size_mm),
        range.most.limit.name()
    ));
}

/// Every page in both units: nothing stands there in the other ones.
#[test]
fn pages_are_in_the_units_of_the_document() {
    let inch = ["in", "lbf", "ksi", "lb", "\u{b0}F"];
    let metric = ["mm", "N", "kN", "MPa", "kg", "\u{b0}C"];
    for (units, own, foreign) in [
        (Units::Inch, &inch[..], &metric[..]),
        (Units::Millimetre, &metric, &inch),
    ] {
        let mut design = match units {
            Units::Inch => flat(),
            Units::Millimetre => v_bit(),
        };
        design.units = units;
        let mut seen = 0;
        for page in ["Bar", "Fit", "Strength"] {
            let mut window = show_design(design.clone(), TALL);
            // The page is named as a part of the pair is: its tab stands farthest right.
            let tabs = window.get_all_by_label(page);
            let right = tabs.max_by(|a, b| a.rect().left().total_cmp(&b.rect().left()));
            right.expect("a tab").click();
            window.run();
            for node in window.get_all_by_label_contains("") {
                let node = node.accesskit_node();
                let texts = [node.label(), node.value()];
                let all = texts.into_iter().flatten().collect::<Vec<_>>().join(" ");
                // A figure is no word of a sentence: its unit follows a number or ends a heading.
                let words: Vec<&str> = all.split_whitespace().collect();
                let unit = |at: usize| words[at].trim_matches([',', '.', ';', ':', ')']);
                for at in 1..words.len() {
                    let number = words[at - 1].ends_with(|c: char| c.is_ascii_digit());
                    let heading = at + 1 == words.len() && words[at - 1].ends_with(',');
                    assert!(
                        !((number || heading) && foreign.contains(&unit(at))),
                        "{units:?}, {page}: {all}"
                    );
                    seen += usize::from(number && own.contains(&unit(at)));
                }
            }
        }
        assert!(seen > 30, "{units:?}: {seen} figures with their unit");
    }
}

/// The heat is asked in the document's scale, and one that was typed in the other stays so.
#[test]
fn the_heat_of_the_jaws_stays_as_it_was_typed() {
    let shown = |window: &Window| value(window, "Neck and jaws at").expect("a field");
    let mut window = on_page(flat(), "Strength", TALL);
    assert_eq!(shown(&window), "68 \u{b0}F");
    fill(&mut window, "Neck and jaws at", "1100");
    assert_eq!(shown(&window), "1100 \u{b0}F");
    fill(&mut window, "Neck and jaws at", "600 C");
    assert_eq!(shown(&window), "600 \u{b0}C");
    let mut window = on_page(v_bit(), "Strength", TALL);
    assert_eq!(shown(&window), "20 \u{b0}C");
    fill(&mut window, "Neck and jaws at", "1100 F");
    assert_eq!(shown(&window), "1100 \u{b0}F");
    // EN 1993-1-2 Table 3.1 between 500 and 600 \u{b0}C, at (1100 - 32) / 1.8 = 593.3 \u{b0}C.
    window.get_by_label_contains("keep 19 % of it at 1100 \u{b0}F");
}
