//! Rivet heads: one shape, with the sizes of the standards, is drawn, checked and reckoned with.

use std::f64::consts::{FRAC_PI_4, PI};

use kurbo::{BezPath, PathEl, Point, Shape};
use reinwright_core::draw::{self, DrawOptions};
use reinwright_core::finding::{Held, Kind};
use reinwright_core::paper::{Fill, GroupItem, Item, View};
use reinwright_core::proof::check::check;
use reinwright_core::proof::strength::rivet_length;
use reinwright_core::tongs::document::{Document, HeadKind};
use reinwright_core::tongs::resolve;
use reinwright_tests::pairs::{flat, mm};
use reinwright_tests::within;

const INCH: f64 = 25.4;

/// Heads as standards have them, mm: shank, across, high or deep, and to what the table rounds.
const TABLE: [(HeadKind, f64, f64, f64, f64); 9] = [
    // ASME B18.1.2, manufactured button heads, 1/2 in: 0.875 by 0.375 in.
    (
        HeadKind::Button,
        0.5 * INCH,
        0.875 * INCH,
        0.375 * INCH,
        1e-9,
    ),
    // BS 275:1927, snap head: 1.6 D by 0.7 D.
    (HeadKind::Snap, 10.0, 16.0, 7.0, 1e-9),
    // DIN 661 for 3, 4, 5, 6 and 8 mm.
    (HeadKind::Countersunk, 3.0, 5.2, 1.4, 0.11),
    (HeadKind::Countersunk, 4.0, 7.0, 2.0, 0.11),
    (HeadKind::Countersunk, 5.0, 8.8, 2.5, 0.11),
    (HeadKind::Countersunk, 6.0, 10.5, 3.0, 0.11),
    (HeadKind::Countersunk, 8.0, 14.0, 4.0, 0.11),
    // ASME B18.1.1, flat head: 2 D by 0.33 D, from memory.
    (HeadKind::Flat, 6.0, 12.0, 1.98, 1e-9),
    (HeadKind::Flat, 10.0, 20.0, 3.3, 1e-9),
];

fn with_head(head: HeadKind, diameter: f64) -> Document {
    let mut pair = flat();
    (pair.rivet.head, pair.rivet.diameter) = (head, mm(diameter));
    pair.rivet.hole = mm(diameter);
    pair
}

/// The upper head of the top view, brought down to y = 0.
fn drawn(pair: &Document) -> BezPath {
    let model = resolve(pair);
    let drawing = draw::pair(pair, &model, &DrawOptions::default());
    let top = drawing.items.into_iter().find_map(|item| match item {
        Item::Group(group) if group.view == Some(View::Top) => Some(group),
        Item::Group(_) | Item::Path(_) | Item::Text(_) => None,
    });
    let GroupItem { items, .. } = top.expect("a pair has a top view");
    let head = items.into_iter().find_map(|item| match item {
        Item::Path(path) if path.fill == Some(Fill::Rivet) => Some(path.path),
        Item::Group(_) | Item::Path(_) | Item::Text(_) => None,
    });
    let down = kurbo::Affine::translate((0.0, -model.a.body.plate.faces.thickness));
    down * head.expect("the rivet has heads")
}

/// The solid that an outline sweeps about x = 0, mm³: rings of cones, one a side of its right half.
fn turned(outline: &BezPath) -> f64 {
    let (mut last, mut volume) = (Point::ORIGIN, 0.0);
    let mut side = |from: Point, to: Point| {
        if from.x + to.x > 0.0 {
            let square = from.x * from.x + from.x * to.x + to.x * to.x;
            volume += PI / 3.0 * square * (to.y - from.y);
        }
    };
    kurbo::flatten(outline, 1e-5, |el| match el {
        PathEl::MoveTo(p) => last = p,
        PathEl::LineTo(p) => side(std::mem::replace(&mut last, p), p),
        // Heads are closed along the level line on which they stand.
        PathEl::QuadTo(..) | PathEl::CurveTo(..) | PathEl::ClosePath => {}
    });
    volume.abs()
}

#[test]
fn they_are_as_large_as_the_standards_have_them() {
    for (head, diameter, across, high, rounded) in TABLE {
        let area = drawn(&with_head(head, diameter)).bounding_box();
        let name = format!("{head:?} {diameter}");
        within(&name, area.width(), across, rounded + 0.002);
        within(&name, area.height(), high, rounded + 0.002);
    }
}

/// What a head takes of the shank is the solid that its drawn outline turns out, less what of it
/// fills the hole.
#[test]
fn what_is_drawn_is_what_the_shank_is_reckoned_for() {
    for (head, diameter, _, high, _) in TABLE {
        let bore = FRAC_PI_4 * diameter * diameter;
        let solid = turned(&drawn(&with_head(head, diameter)));
        let sunk = match head {
            HeadKind::Countersunk => bore * head.shape().high * diameter,
            HeadKind::Button | HeadKind::Snap | HeadKind::Flat => 0.0,
        };
        let reckoned = rivet_length(head, (diameter, diameter), 20.0).head_mm * bore;
        let name = format!("{head:?} {diameter}, {high} high");
        within(&name, solid - sunk, reckoned, 2e-3 * reckoned);
    }
}

/// A head that stands over the boss is told with the size that is drawn.
#[test]
fn what_is_drawn_is_what_is_checked() {
    for (head, diameter) in [
        (HeadKind::Button, 20.0),
        (HeadKind::Snap, 22.0),
        (HeadKind::Flat, 18.0),
        (HeadKind::Countersunk, 20.0),
    ] {
        let pair = with_head(head, diameter);
        let found = check(&pair, &resolve(&pair));
        let told = found.iter().find(|f| f.kind == Kind::HeadOverBoss);
        let Some(Held { value, limit, .. }) = told.and_then(|f| f.held) else {
            panic!("{head:?} is not told: {found:#?}");
        };
        within("across", value, drawn(&pair).bounding_box().width(), 0.002);
        within("boss", limit, pair.boss.across.mm(), 1e-9);
    }
}
