//! Small pictures of every jaw style, painted with letters from what is drawn: a jaw that changes
//! its look shows as lines changed in `jaws.txt`, where a smith can see what it now looks like.
//!
//! After a change that is meant, `UPDATE_EXPECT=1 cargo test -p reinwright-tests --test draw pictures`
//! paints them anew; look at them before they are kept.

use expect_test::expect_file;
use kurbo::{Point, Rect, Shape};
use reinwright_core::draw::{DrawOptions, Sizes, pair};
use reinwright_core::finding::Part;
use reinwright_core::paper::{Drawing, Fill, Item};
use reinwright_core::tongs::jaw::JawKind;
use reinwright_core::tongs::resolve;
use reinwright_tests::pairs::starting;

/// A letter stands for so many mm, across and up: about as letters are shaped.
const LETTER: (f64, f64) = (1.5, 3.0);

/// Work of 5/8 in that each style is made for, end on or across.
fn work_for(style: JawKind) -> &'static str {
    match style {
        JawKind::Flat
        | JawKind::BoxJaw
        | JawKind::Duckbill
        | JawKind::HammerEye
        | JawKind::ChiselHead => "5/8 in flat",
        JawKind::SquareMouth => "5/8 in square",
        _ => "5/8 in round",
    }
}

fn drawn(style: JawKind) -> Drawing {
    let design = starting(style.name(), work_for(style), "3/4 in square");
    let bare = DrawOptions {
        sizes: Sizes::None,
        ..DrawOptions::default()
    };
    pair(&design, &resolve(&design), &bare)
}

/// What an area is painted with: front half, other half, work and rivet.
fn letter(fill: Fill) -> Option<char> {
    match fill {
        Fill::Part(Part::Jaw | Part::SecondJaw) => Some('#'),
        Fill::Part(_) => Some('+'),
        Fill::OtherHalf => Some('='),
        Fill::Work => Some('o'),
        Fill::Rivet => Some('@'),
        Fill::Paper | Fill::Waste => Some(' '),
        Fill::Hot | Fill::Ink | Fill::Warning | Fill::Stress(_) => None,
    }
}

/// A view's areas, back to front.
fn areas(drawing: &Drawing, view: &str) -> Vec<(kurbo::BezPath, char)> {
    let of_view = |item: &&Item| matches!(item, Item::Group(group) if group.name == view);
    let Some(Item::Group(group)) = drawing.items.iter().find(of_view) else {
        panic!("no {view}");
    };
    let painted = |item: &Item| match item {
        Item::Path(path) => Some((path.path.clone(), letter(path.fill?)?)),
        Item::Text(_) | Item::Group(_) => None,
    };
    group.items.iter().filter_map(painted).collect()
}

/// The view within a frame, line by line from the top.
fn painted(areas: &[(kurbo::BezPath, char)], frame: Rect) -> Vec<String> {
    let boxes: Vec<Rect> = areas.iter().map(|(path, _)| path.bounding_box()).collect();
    let at = |p: Point| {
        let over = areas.iter().zip(&boxes).rev();
        let mut inside =
            over.filter(|((path, _), around)| around.contains(p) && path.winding(p) % 2 != 0);
        inside.next().map_or(' ', |((_, letter), _)| *letter)
    };
    let steps = |from: f64, to: f64, step: f64| {
        let count = ((to - from) / step).round();
        std::iter::successors(Some(0.5), |i| Some(i + 1.0))
            .take_while(move |&i| i < count)
            .map(move |i| from + i * step)
    };
    steps(-frame.y1, -frame.y0, LETTER.1)
        .map(|down| {
            let xs = steps(frame.x0, frame.x1, LETTER.0);
            xs.map(|x| at(Point::new(x, -down))).collect()
        })
        .collect()
}

/// Side view from behind the rivet to beyond the tips, end view beside it.
fn picture(style: JawKind) -> String {
    let drawing = drawn(style);
    let side = painted(
        &areas(&drawing, "Side view"),
        Rect::new(-24.0, -36.0, 108.0, 36.0),
    );
    let end = painted(
        &areas(&drawing, "End view"),
        Rect::new(-36.0, -36.0, 36.0, 36.0),
    );
    let lines = side.iter().zip(end);
    let both = lines.map(|(side, end)| format!("{side}  {end}").trim_end().to_owned() + "\n");
    let both: String = both.collect();
    let both = both.trim_matches('\n');
    format!("{style}, on {}\n\n{both}\n\n", work_for(style))
}

#[test]
fn every_style_looks_as_it_did() {
    let styles = JawKind::ALL
        .iter()
        .filter(|style| **style != JawKind::Sketch);
    let all: String = styles.map(|style| picture(*style)).collect();
    expect_file!["jaws.txt"].assert_eq(&all);
}
