//! Hot size: EN 1993-1-2 carried through to millimetres on the page.

use std::collections::BTreeSet;

use kurbo::{Rect, Shape, Vec2};
use reinwright::jobs::pages::Consent;
use reinwright::jobs::printing::Template;
use reinwright::jobs::what::{Kind, Size, What};
use reinwright_core::draw;
use reinwright_core::paper::{Item, Line, Paper};
use reinwright_core::shop::ToolAnswers;
use reinwright_core::steel::{HEAT_COLOURS, Heat, HeatError, elongation};
use reinwright_core::tongs::resolve;
use reinwright_tests::designs::sample;
use reinwright_tests::{tools, within};

use super::{FILE, reader};

/// EN 1993-1-2:2005, 3.4.1.1, reckoned by hand: mm per m.
const TABLE: [(f64, f64); 7] = [
    (20.0, 0.0),
    (400.0, 5.1984),
    (600.0, 8.3984),
    (750.0, 11.0),
    (860.0, 11.0),
    (1100.0, 15.8),
    (1200.0, 17.8),
];

#[test]
fn elongation_is_that_of_the_standard() {
    for (celsius, expected) in TABLE {
        let found = elongation(celsius).expect("within the standard");
        within(&format!("{celsius} °C"), 1000.0 * found, expected, 1e-9);
    }
    for outside in [19.9, 1200.1, f64::NAN] {
        assert_eq!(elongation(outside), None, "{outside}");
    }
}

/// The half on one large page, as long as its outlines reach.
fn length(what: &What) -> f64 {
    let design = sample("v-bit-square");
    let paper = Paper::own(1200.0, 700.0).unwrap();
    let template = Template::with(&design, what, None);
    let pdf = template.pdf(paper, Consent::All).expect("few pages");
    let seen = reader::read(&pdf);
    let wide = seen[0].lines().filter(|line| {
        line.clip.is_some() && line.width.is_some_and(|width| (width - 0.5).abs() < FILE)
    });
    let boxes = wide.map(|line| line.path.bounding_box());
    let all: Option<Rect> = boxes.reduce(|a, b| a.union(b));
    all.expect("outlines").width()
}

#[test]
fn a_half_is_printed_as_long_as_it_is_hot() {
    let model = resolve(&sample("v-bit-square"));
    let cold = model.a.tip() - model.a.rein_end();
    for (celsius, per_metre) in TABLE {
        let heat = Heat::parse(&format!("{celsius} C")).expect("a heat");
        let what = What {
            kinds: vec![Kind::Half],
            views: reinwright_core::draw::Views::Side,
            look: reinwright::jobs::what::Look::OutlineOnly,
            size: Size::Hot(heat),
            ..What::default()
        };
        let expected = cold * (1.0 + per_metre / 1000.0);
        within(
            &format!("{celsius} °C"),
            length(&what),
            expected,
            3.0 * FILE,
        );
    }
}

/// A text that is read, or words of the message that refuses it.
#[track_caller]
fn check(text: &str, expected: Result<f64, &str>) {
    match (Heat::parse(text), expected) {
        (Ok(heat), Ok(celsius)) => within(text, heat.celsius(), celsius, 1e-9),
        (Err(error), Err(words)) => {
            let message = error.to_string();
            assert!(message.contains(words), "{text}: {message}");
            reinwright_tests::sentence(&message);
        }
        (found, expected) => panic!("{text}: {found:?}, expected {expected:?}"),
    }
}

#[test]
fn heats_are_read_as_degrees_and_as_colours() {
    check("900 C", Ok(900.0));
    check("1652 F", Ok(900.0));
    check(" Orange ", Ok(950.0));
    check("cherry red", Ok(750.0));
    check("mauve", Err("bright yellow"));
    check("1300 C", Err("1200 °C"));
    check("2400 F", Err("2192 °F"));
    check("10 C", Err("20 °C"));
    let rising = HEAT_COLOURS.windows(2).all(|two| two[0].1 < two[1].1);
    assert!(rising, "{HEAT_COLOURS:?}");
    assert!(matches!(Heat::parse(""), Err(HeatError::Unknown(_))));
}

#[test]
fn every_sheet_says_for_which_heat_it_is() {
    let design = sample("light-flat");
    let words = |size: Size| {
        let what = What {
            size,
            ..What::default()
        };
        let template = Template::with(&design, &what, None);
        let pdf = template.pdf(Paper::A4, Consent::All).expect("few pages");
        let pages = reader::read(&pdf).into_iter();
        pages.map(|page| page.words().join(" ")).collect::<Vec<_>>()
    };
    for page in words(Size::Cold) {
        assert!(page.contains("COLD SIZE"), "{page}");
    }
    let heat = Heat::parse("orange").expect("a colour");
    let hot = words(Size::Hot(heat));
    // The bar is marked cold, whatever the half is.
    assert!(hot.iter().any(|page| page.contains("COLD SIZE")), "{hot:?}");
    let said = "HOT SIZE, 950 °C, ORANGE (+1.28 %)";
    assert!(hot.iter().any(|page| page.contains(said)), "{hot:?}");
}

/// The paths of lines of a kind, by the view in which they stand.
fn lines(items: &[Item], kind: Line, view: &str) -> Vec<(String, String)> {
    let of = |item: &Item| match item {
        Item::Path(path) if path.line == Some(kind) => vec![(view.to_owned(), path.path.to_svg())],
        Item::Path(_) | Item::Text(_) => Vec::new(),
        Item::Group(group) if group.name.ends_with("view") => {
            lines(&group.items, kind, &group.name)
        }
        Item::Group(group) => lines(&group.items, kind, view),
    };
    items.iter().flat_map(of).collect()
}

/// Every view of a tool has its cold edges in it, those that lie and those that stand, though two of them are set
/// together as one: else they would not lie about one axis.
#[test]
fn a_hot_tool_has_its_cold_edges_in_every_view() {
    for (name, tool) in tools::all() {
        let model = ToolAnswers::to(&tool).model;
        let mut cold = draw::tool(&tool, &model, &draw::DrawOptions::default());
        let others = cold.items.split_off(2);
        let both = Item::group("Front and side view", Vec2::ZERO, cold.items);
        cold.items = [vec![both], others].concat();
        let both = cold.clone().grown(1.0118).with_thin(&cold);
        let thin = lines(&both.items, Line::Neighbour, "");
        let mut views = BTreeSet::new();
        for edge in lines(&cold.items, Line::Outline, "") {
            if ["Side view", "Top view", "Front view"].contains(&edge.0.as_str()) {
                assert!(thin.contains(&edge), "{name}: {edge:?}");
                views.insert(edge.0);
            }
        }
        assert_eq!(views.len(), 2, "{name}: {views:?}");
    }
}

/// What is said of the size is whole however narrow the page is: by the longest words of it.
#[test]
fn the_size_is_said_in_full_on_a_narrow_page() {
    let size = Size::Both(Heat::parse("bright yellow").expect("a colour"));
    let what = What {
        size,
        ..What::default()
    };
    let template = Template::with(&sample("light-flat"), &what, None);
    for paper in [Paper::A4, Paper::Letter] {
        let pdf = template.pdf(paper, Consent::All).expect("few pages");
        for page in reader::read(&pdf) {
            let words = page.words().join(" ");
            let whole = words.contains("THIN LINE COLD") || words.contains("COLD SIZE");
            assert!(whole && !words.contains('…'), "{words}");
        }
    }
}
