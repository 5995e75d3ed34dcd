//! The work as it is drawn: its areas in the side view and end on, against plane geometry by hand.

use kurbo::Shape as _;
use reinwright_core::draw::{DrawOptions, Sizes, pair};
use reinwright_core::paper::{Drawing, Fill, Item, Line};
use reinwright_core::tongs::resolve;
use reinwright_tests::pairs::starting;
use reinwright_tests::within;

/// What a circle of 16 mm may lack that is drawn as corners 0.08 mm off, mm².
const CURVE: f64 = 16.0 * std::f64::consts::PI * 0.08 * 2.0 / 3.0;

/// The steel of the test pairs; an inch bar gives the views their plain names.
const BAR: &str = "3/4 in square";

fn drawn(jaw: &str, work: &str) -> (Drawing, f64) {
    let design = starting(jaw, work, BAR);
    let bare = DrawOptions {
        sizes: Sizes::None,
        ..DrawOptions::default()
    };
    let model = resolve(&design);
    (pair(&design, &model, &bare), model.work.from)
}

/// The paths of a view with what they are.
fn paths(drawing: &Drawing, view: &str) -> Vec<(kurbo::BezPath, Option<Fill>, Option<Line>)> {
    let groups = drawing.items.iter().filter_map(|item| match item {
        Item::Group(group) if group.name == view => Some(group),
        Item::Group(_) | Item::Path(_) | Item::Text(_) => None,
    });
    groups
        .flat_map(|group| &group.items)
        .filter_map(|item| match item {
            Item::Path(path) => Some((path.path.clone(), path.fill, path.line)),
            Item::Group(_) | Item::Text(_) => None,
        })
        .collect()
}

/// The area that is filled as work in a view, and its box.
#[track_caller]
fn work(drawing: &Drawing, view: &str) -> (f64, kurbo::Rect) {
    let all = paths(drawing, view);
    let found = all.iter().find(|(_, fill, _)| *fill == Some(Fill::Work));
    let (path, _, _) = found.unwrap_or_else(|| panic!("no work in {view}"));
    (path.area().abs(), path.bounding_box())
}

/// A head in front: a box of 27.713 x 10 mm on a shank of 16 mm, as long as it is drawn; end on the
/// hexagon, √3/2 · 24².
#[test]
fn a_bolt_by_its_shank_shows_its_head() {
    let (drawing, from) = drawn("hollow bit", "M16 by its shank");
    let (area, around) = work(&drawing, "Side view");
    let shank = around.x1 - 10.0 - from;
    within("side", area, 16.0 * shank + 27.7128 * 10.0, 0.5);
    within("high", around.height(), 27.7128, 1e-3);
    let (area, around) = work(&drawing, "End view");
    within("end", area, 3f64.sqrt() / 2.0 * 24.0 * 24.0, 0.01);
    within("across its flats", around.width(), 24.0, 1e-3);
    let (_, around) = work(&drawing, "Top view");
    within("from above", around.height(), 24.0, 1e-3);
}

/// The head in the bow begins at the end of the work, and its shank runs out of the tips.
#[test]
fn a_bolt_behind_its_head_shows_it_between_the_jaws() {
    let (drawing, from) = drawn("bolt", "M16 behind its head");
    let (area, around) = work(&drawing, "Side view");
    within("end", around.x0, from, 1e-6);
    // The break swings out and in by the same area, but its box by 2.8 mm at the most.
    let long = (area - 27.7128 * 10.0) / 16.0 + 10.0;
    assert!((around.x1 - from - long).abs() < 3.0, "{long}, {around}");
    within(
        "end on",
        work(&drawing, "End view").0,
        64.0 * std::f64::consts::PI,
        CURVE,
    );
}

/// The head in the bits, its shank out of the tips; end on the hexagon with the shank before it.
#[test]
fn a_bolt_by_its_head_shows_its_shank() {
    let (drawing, from) = drawn("flat", "M16 by its head on flats");
    let (area, around) = work(&drawing, "Side view");
    within("high", around.height(), 24.0, 1e-6);
    let shank = (area - 24.0 * 10.0) / 16.0;
    assert!((around.x1 - from - 10.0 - shank).abs() < 3.0, "{shank}");
    let all = paths(&drawing, "End view");
    let circle = all.iter().find(|(path, fill, line)| {
        let round = (path.area().abs() - 64.0 * std::f64::consts::PI).abs() < CURVE;
        round && fill.is_none() && *line == Some(Line::Fine)
    });
    assert!(circle.is_some(), "no shank end on");
}

/// Pipe end on: its bore, 27.3 mm, blanked; in the side view two dashed lines as far apart.
#[test]
fn pipe_shows_its_bore() {
    let (drawing, _) = drawn("v bit", "DN 25");
    let all = paths(&drawing, "End view");
    let blank = all.iter().find(|(_, fill, _)| *fill == Some(Fill::Paper));
    let area = blank.expect("a bore").0.area().abs();
    within("bore", area, std::f64::consts::FRAC_PI_4 * 27.3 * 27.3, 0.5);
    let dashed = paths(&drawing, "Side view");
    let mut dashed = dashed
        .iter()
        .filter(|(_, _, line)| *line == Some(Line::Hidden))
        .map(|(path, _, _)| path.bounding_box().height());
    assert!(dashed.any(|high| (high - 27.3).abs() < 1e-6));
}

/// Angles end on: two legs less the corner that they share; in the side view as high as they stand.
#[test]
fn an_angle_shows_both_legs() {
    let (drawing, _) = drawn("flat", "50 x 30 x 5 mm angle");
    within(
        "by a leg",
        work(&drawing, "End view").0,
        5.0 * (50.0 + 30.0 - 5.0),
        1e-6,
    );
    within("stands", work(&drawing, "Side view").1.height(), 30.0, 1e-6);
    within("lies", work(&drawing, "Top view").1.height(), 50.0, 1e-6);
    let (drawing, _) = drawn("v bit", "30 x 30 x 3 mm angle by its back");
    within(
        "by its back",
        work(&drawing, "End view").0,
        3.0 * (60.0 - 3.0),
        1e-6,
    );
    let high = 33.0 / 2f64.sqrt();
    within(
        "on edge",
        work(&drawing, "Side view").1.height(),
        high,
        1e-6,
    );
}

/// Ribs stand clear of each other by no more than ASTM A615 leaves, 0.7 of the diameter.
#[test]
fn rebar_shows_its_ribs() {
    let (drawing, _) = drawn("v bit", "#5 rebar");
    within(
        "over ribs",
        work(&drawing, "Side view").1.height(),
        15.875 + 2.0 * 0.7112,
        1e-6,
    );
    let plain = drawn("v bit", "5/8 in round").0;
    let fine = |drawing: &Drawing| {
        let lines = paths(drawing, "Top view");
        let fine = lines
            .iter()
            .filter(|(_, _, line)| *line == Some(Line::Fine));
        fine.map(|(path, _, _)| path.segments().count())
            .sum::<usize>()
    };
    assert!(fine(&drawing) > fine(&plain) + 1, "ribs are drawn");
}
