//! Lines of the drawing: none turns back on itself, what lies behind is dashed, and reins are
//! broken only where they are plain.

use kurbo::{PathEl, Point, Rect, Shape};
use reinwright_core::draw::{self, DrawOptions, breaks};
use reinwright_core::finding::Part;
use reinwright_core::paper::{Breaks, Drawing, Fill, GroupItem, Item, Line, PathItem, View};
use reinwright_core::shape::sweep::Edge;
use reinwright_core::tongs::document::Document;
use reinwright_core::tongs::jaw::JawKind;
use reinwright_core::tongs::resolve;
use reinwright_tests::designs::samples;
use reinwright_tests::pairs::{self, starting};

#[track_caller]
fn view(drawing: &Drawing, wanted: View) -> &GroupItem {
    let shown = drawing.items.iter().find_map(|item| match item {
        Item::Group(group) if group.view == Some(wanted) => Some(group),
        Item::Group(_) | Item::Path(_) | Item::Text(_) => None,
    });
    shown.unwrap_or_else(|| panic!("no {}", wanted.name()))
}

fn paths(group: &GroupItem) -> impl Iterator<Item = &PathItem> {
    group.items.iter().filter_map(|item| match item {
        Item::Path(path) => Some(path),
        Item::Group(_) | Item::Text(_) => None,
    })
}

/// How often a closed line turns back along x, by more than a hair.
fn turns(path: &PathItem) -> usize {
    let mut points: Vec<Point> = Vec::new();
    kurbo::flatten(&path.path, 0.01, |el| {
        if let PathEl::MoveTo(p) | PathEl::LineTo(p) = el {
            points.push(p);
        }
    });
    points.push(points[0]);
    let ways = points.windows(2).map(|pair| pair[1].x - pair[0].x);
    let ways: Vec<f64> = ways.filter(|way| way.abs() > 1e-3).collect();
    let ends = ways.windows(2).filter(|pair| pair[0] * pair[1] < 0.0);
    ends.count()
}

/// A half seen from above runs from its end to its tip and back: its outline turns at the tip, and
/// nowhere else after it set out.
#[test]
fn the_top_view_of_a_half_has_no_stray_line() {
    for &style in JawKind::ALL {
        for (work, bar) in [
            ("6 mm round", "10 mm square"),
            ("50 mm round", "25 mm square"),
        ] {
            let design = starting(style.name(), work, bar);
            let drawing = draw::half(&design, &resolve(&design), &DrawOptions::default());
            let mut outlines = paths(view(&drawing, View::Top))
                .filter(|path| path.line == Some(Line::Outline) && path.part.is_none());
            let outline = outlines.next().expect("the half has an outline");
            assert!(turns(outline) <= 2, "{style} on {work}: {}", turns(outline));
            // All that the line is around is painted.
            let painted = paths(view(&drawing, View::Top)).filter(|path| path.fill.is_some());
            let painted: f64 = painted.map(|path| path.path.area().abs()).sum();
            let around = outline.path.area().abs();
            assert!(
                (painted / around - 1.0).abs() < 0.02,
                "{style} on {work}: {painted} of {around}"
            );
        }
    }
}

/// Boss and rivet lie behind work beside the tongs: their lines are dashed over it.
#[test]
fn what_lies_behind_the_work_of_a_bent_bit_is_dashed() {
    for (work, bar) in [
        ("6 mm round", "12 mm square"),
        ("50 mm round", "25 mm square"),
    ] {
        let design = starting("bent bit", work, bar);
        let drawing = draw::pair(&design, &resolve(&design), &DrawOptions::default());
        let side = view(&drawing, View::Side);
        let is_work = |path: &&PathItem| path.fill == Some(Fill::Work);
        let covered = paths(side).find(is_work).expect("the work is drawn");
        let covered: Rect = covered.path.bounding_box();
        let hidden: Vec<&PathItem> = paths(side)
            .filter(|path| path.line == Some(Line::Hidden))
            .collect();
        let over_work = |at: Point| {
            let near = Rect::from_center_size(at, (1.0, 1.0));
            covered.contains(at)
                && hidden.iter().any(|path| {
                    let mut parts = path.path.segments();
                    parts.any(|part| !part.bounding_box().intersect(near).is_zero_area())
                })
        };
        let head = design.rivet.head_across_mm() / 2.0;
        assert!(
            over_work(Point::new(head, 0.0)) || over_work(Point::new(-head, 0.0)),
            "{work}: the rivet's head is not dashed"
        );
    }
}

fn designs() -> Vec<(String, Document)> {
    let pairs = pairs::all().into_iter();
    let named = pairs.map(|(name, design)| (name.to_owned(), design));
    named.chain(samples()).collect()
}

fn is_shown(breaks: &Breaks, x: f64) -> bool {
    breaks.stretches().all(|s| x <= s.from || x >= s.to)
}

/// What a smith must see of a rein is in sight: the hand, every place where a section begins or
/// ends, all that is bent, and the end.
#[test]
fn reins_are_broken_only_where_they_are_plain() {
    let mut broken = 0;
    for (name, design) in designs() {
        let model = resolve(&design);
        let breaks = breaks(&model, 0.0);
        broken += breaks.stretches().count();
        let (half, length) = (&model.a, model.a.rein.length());
        let mut told: Vec<f64> = half.rein.stations.iter().map(|s| s.at).collect();
        told.push(half.hand_at);
        let end = half.bent_from();
        told.extend((0..=20).map(|i| end + (length - end) * f64::from(i) / 20.0));
        for s in told {
            for edge in [Edge::Inner, Edge::Outer] {
                let x = half.rein.edge_point(edge, s).x;
                assert!(
                    is_shown(&breaks, x),
                    "{name}: {s} along the rein is left out"
                );
            }
        }
        assert!(
            breaks.stretches().all(|s| s.to < 0.0),
            "{name}: the head is whole"
        );
    }
    assert!(broken > 20, "only {broken} breaks");
}

/// A break changes what is shown, and nothing that is weighed or measured: the sizes that are
/// written are the same, and the steel that is shown keeps its area.
#[test]
fn a_broken_drawing_says_the_same_sizes() {
    for (name, design) in designs() {
        let model = resolve(&design);
        let breaks = breaks(&model, 0.0);
        let said = |breaks| {
            let options = DrawOptions {
                breaks,
                ..DrawOptions::default()
            };
            let drawing = draw::pair(&design, &model, &options);
            let texts = reinwright_tests::outline::texts(&drawing);
            let mut words: Vec<String> = texts.into_iter().map(|(words, _)| words).collect();
            words.sort();
            (words, drawing)
        };
        let ((whole, first), (broken, second)) = (said(Breaks::default()), said(breaks));
        assert_eq!(whole, broken, "{name}");
        let jaws = |drawing: &Drawing| {
            let side = view(drawing, View::Side);
            let jaw = |path: &&PathItem| path.part == Some(Part::Jaw) && path.fill.is_some();
            let areas = paths(side).filter(jaw).map(|path| path.path.area().abs());
            areas.sum::<f64>()
        };
        assert!((jaws(&first) - jaws(&second)).abs() < 1e-6, "{name}");
    }
}
