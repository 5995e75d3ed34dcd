//! SVG read back by usvg, an independent SVG reader.

use kurbo::{Circle, Point, Rect, Shape, Vec2};
use reinwright_core::paper::ink::svg;
use reinwright_core::paper::{Align, Drawing, Fill, GroupItem, Item, Line};
use reinwright_tests::within;
use usvg::{Node, Options, Tree};

/// Millimetres in the reader's pixel: 96 to the inch (CSS Values and Units 3, section 5.2).
const MM_PER_PX: f64 = 25.4 / 96.0;

fn tree(drawing: &Drawing) -> Tree {
    Tree::from_str(&svg(drawing, "a <b> & c"), &Options::default()).unwrap()
}

fn boxes(group: &usvg::Group, found: &mut Vec<Rect>) {
    for node in group.children() {
        match node {
            Node::Group(inner) => boxes(inner, found),
            Node::Path(path) => {
                let b = path.abs_bounding_box();
                let sides = [b.left(), b.top(), b.right(), b.bottom()];
                let [x0, y0, x1, y1] = sides.map(|side| f64::from(side) * MM_PER_PX);
                found.push(Rect::new(x0, y0, x1, y1));
            }
            Node::Image(_) | Node::Text(_) => panic!("no image, and no font to read a text with"),
        }
    }
}

#[test]
fn size_and_paths_are_in_millimetres() {
    let drawing = Drawing {
        items: vec![
            Item::line(
                Circle::new((30.0, -12.5), 20.0).to_path(1e-4),
                Line::Outline,
            ),
            Item::group(
                "moved",
                Vec2::new(100.0, 40.0),
                vec![Item::fill(
                    Rect::new(0.0, 0.0, 25.4, 10.0).to_path(0.1),
                    Fill::Work,
                )],
            ),
        ],
    };
    let tree = tree(&drawing);
    // The drawing is 10 to 125.4 mm wide and -32.5 to 50 mm high, with a rim of 1 mm.
    within(
        "width",
        f64::from(tree.size().width()) * MM_PER_PX,
        117.4,
        0.01,
    );
    within(
        "height",
        f64::from(tree.size().height()) * MM_PER_PX,
        84.5,
        0.01,
    );
    let mut found = Vec::new();
    boxes(tree.root(), &mut found);
    // From the upper left corner, which is at (9, 51).
    let expected = [
        Rect::new(1.0, 43.5, 41.0, 83.5),
        Rect::new(91.0, 1.0, 116.4, 11.0),
    ];
    assert_eq!(found.len(), expected.len());
    for (found, expected) in found.iter().zip(expected) {
        within("left", found.x0, expected.x0, 0.01);
        within("top", found.y0, expected.y0, 0.01);
        within("right", found.x1, expected.x1, 0.01);
        within("bottom", found.y1, expected.y1, 0.01);
    }
}

#[test]
fn a_clip_cuts_where_it_says() {
    let clip = Rect::new(10.0, 10.0, 30.0, 25.0);
    let drawing = Drawing {
        items: vec![
            Item::line(Rect::new(0.0, 0.0, 40.0, 40.0).to_path(0.1), Line::Fine),
            Item::Group(GroupItem {
                name: "cut".into(),
                view: None,
                shift: Vec2::new(5.0, 0.0),
                clip: Some(clip),
                items: vec![Item::fill(
                    Rect::new(0.0, 0.0, 40.0, 40.0).to_path(0.1),
                    Fill::Ink,
                )],
            }),
        ],
    };
    let tree = tree(&drawing);
    let cut = find_clip(tree.root()).expect("a clipped group");
    let mut found = Vec::new();
    boxes(cut.root(), &mut found);
    // The reader keeps a clip in the file's own units: y is down, and a unit is 1 mm.
    let found = found[0].scale_from_origin(1.0 / MM_PER_PX);
    for (found, expected) in [
        (found.x0, clip.x0),
        (found.x1, clip.x1),
        (found.y0, -clip.y1),
        (found.y1, -clip.y0),
    ] {
        within("clip", found, expected, 0.01);
    }
}

fn find_clip(group: &usvg::Group) -> Option<&usvg::ClipPath> {
    group.clip_path().or_else(|| {
        group.children().iter().find_map(|node| match node {
            Node::Group(inner) => find_clip(inner),
            Node::Path(_) | Node::Image(_) | Node::Text(_) => None,
        })
    })
}

#[test]
fn words_survive_and_every_id_is_used_once() {
    let words = "3/8\" <round> & 'flat' \u{7} ½";
    let text = |x| Item::text(Point::new(x, 0.0), words, 3.5, Align::End);
    let drawing = Drawing {
        items: vec![
            Item::group("Side view", Vec2::ZERO, vec![text(1.0)]),
            Item::group("Side view", Vec2::ZERO, vec![text(50.0)]),
        ],
    };
    let file = svg(&drawing, "tongs & <more>");
    let tree = usvg::roxmltree::Document::parse(&file).unwrap();
    let named = |name: &'static str| tree.descendants().filter(move |n| n.has_tag_name(name));
    for node in named("text") {
        assert_eq!(node.text(), Some("3/8\" <round> & 'flat'   ½"));
        assert_eq!(node.attribute("text-anchor"), Some("end"));
    }
    assert_eq!(named("text").count(), 2);
    assert_eq!(
        named("title").next().unwrap().text(),
        Some("tongs & <more>")
    );
    let mut ids: Vec<_> = tree
        .descendants()
        .filter_map(|n| n.attribute("id"))
        .collect();
    assert_eq!(ids.len(), 2);
    ids.dedup();
    assert_eq!(ids, ["side-view", "side-view.2"]);
}
