//! Edits of every kind, which must never give a number that is not finite, and holds, which follow
//! the hand.

use kurbo::Vec2;
use proptest::prelude::*;
use reinwright_core::draw::handle::{Hold, Moving};
use reinwright_core::draw::{DrawOptions, pair};
use reinwright_core::finding::{Held, Severity};
use reinwright_core::proof::check::check;
use reinwright_core::proof::fit::fit;
use reinwright_core::shop::{Answers, balance_of};
use reinwright_core::tongs::document::{self, Document};
use reinwright_core::tongs::jaw::sketch::{Alike, Depth, NodeValue, Ready, SketchShape};
use reinwright_core::tongs::model::{Half, Model};
use reinwright_core::tongs::resolve;
use reinwright_core::units::Unit;
use reinwright_tests::pairs::starting;
use reinwright_tests::within;

use super::{changed, sketched};

#[derive(Debug, Clone)]
enum Edit {
    Set(usize, usize, f64, bool),
    Add(usize),
    Remove(usize),
    Turn(usize),
    Shape(usize, usize),
    Corner(usize, usize, f64, f64, bool),
}

fn edit() -> impl Strategy<Value = Edit> {
    let number = prop_oneof![
        -60.0..60.0,
        Just(0.0),
        Just(1e9),
        Just(-1e9),
        Just(f64::NAN),
        Just(f64::INFINITY),
        -1.0..1.0
    ];
    prop_oneof![
        6 => (0..12usize, 0..7usize, number, any::<bool>()).prop_map(|(n, v, to, b)| Edit::Set(n, v, to, b)),
        2 => (0..12usize).prop_map(Edit::Add),
        1 => (0..12usize).prop_map(Edit::Remove),
        1 => (0..12usize).prop_map(Edit::Turn),
        1 => (0..12usize, 0..6usize).prop_map(|(n, s)| Edit::Shape(n, s)),
        2 => (0..12usize, 0..12usize, -1.5..1.5f64, -1.5..1.5f64, any::<bool>())
            .prop_map(|(n, c, u, v, b)| Edit::Corner(n, c, u, v, b)),
    ]
}

fn apply(document: &Document, edit: &Edit) -> Document {
    let length = document.jaw.length.mm();
    changed(document, |sketch| match *edit {
        Edit::Set(node, value, to, both) => {
            let depth = if both {
                Depth::BothSides
            } else {
                Depth::OneSide
            };
            let how = (sketch.growth(length), depth, Unit::Inch);
            sketch.with_value(node, (NodeValue::ALL[value], to), how)
        }
        Edit::Add(node) => sketch.with_node_after(node, length),
        Edit::Remove(node) => sketch.without_node(node),
        Edit::Turn(node) => sketch.with_steel_turned(node),
        Edit::Shape(node, shape) => sketch.with_shape(node, Ready::ALL[shape].0.shape()),
        Edit::Corner(node, corner, u, v, both) => {
            let alike = if both { Alike::Both } else { Alike::One };
            let shape = node % sketch.shapes.len();
            let own: &SketchShape = &sketch.shapes[shape];
            let corners = own.corners();
            let (corner, _) = corners[corner % corners.len()];
            let own = match node % 3 {
                0 => own.with_corner(corner),
                1 => own.without_corner(corner),
                _ => own.moved(corner, (u, v), alike),
            };
            sketch.with_shape_changed(shape, own)
        }
    })
}

/// Every number that a design gives is finite, and it can be drawn and read back.
fn sound(document: &Document) -> Result<(), TestCaseError> {
    let model: Model = resolve(document);
    let found = balance_of(document, &model);
    prop_assert!(found.bar_length_mm.is_finite());
    // Steel that is folded through itself counts below nothing where it is turned inside out.
    let folded = check(document, &model)
        .iter()
        .any(|f| f.severity == Severity::Stop);
    prop_assert!(model.mass_kg().is_finite() && (model.mass_kg() > 0.0 || folded));
    let fits = fit(document, &model);
    prop_assert!(fits.press.hand_mm.is_finite() && fits.leverage().is_finite());
    let findings = Answers::to(document).findings;
    for f in &findings {
        let finite = |held: Held| held.value.is_finite() && held.limit.is_finite();
        prop_assert!(f.held.is_none_or(finite), "{}", f.message);
        prop_assert!(
            !f.message.contains("NaN") && !f.message.contains("inf"),
            "{}",
            f.message
        );
    }
    let drawn = pair(document, &model, &DrawOptions::default());
    let area = drawn.bounds();
    prop_assert!(
        area.x0.is_finite() && area.x1.is_finite() && area.y0.is_finite() && area.y1.is_finite()
    );
    let text = document::write(document);
    let back = document::read(text.as_bytes());
    prop_assert!(back.is_ok(), "{:?}", back.err());
    Ok(())
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(64))]

    #[test]
    fn no_edit_breaks_a_sketch(edits in prop::collection::vec(edit(), 1..30), start in 0..4usize) {
        let (jaw, work) = [("flat", "3/8 in flat"), ("v bit", "1/2 in round"), ("bolt", "5/8 in hexagon on corners"), ("link", "10 mm round")][start];
        let mut document = sketched(&starting(jaw, work, "5/8 in square"));
        for edit in &edits {
            document = apply(&document, edit);
        }
        sound(&document)?;
    }
}

#[test]
fn a_hold_follows_the_hand() {
    let flat = sketched(&starting("bolt", "1/2 in round", "5/8 in square"));
    let model = resolve(&flat);
    let free = Moving {
        depth: Depth::OneSide,
        step: 0.0,
        unit: Unit::Millimetre,
    };
    let count = flat.jaw.sketch().expect("a sketch").nodes.len();
    for node in 1..count - 1 {
        for hold in flat
            .jaw
            .node_holds(&model.a, node)
            .into_iter()
            .filter(|h| h.node == node)
        {
            let moved = match hold.hold {
                Hold::Slope => continue,
                // Inside and back move square to the line.
                Hold::Inside | Hold::Back => {
                    let sketch = flat.jaw.sketch().expect("a sketch");
                    let s = sketch.along(flat.jaw.length.mm())[node];
                    model.a.jaw.path.at(s).left() * 0.3
                }
                Hold::Width | Hold::Shift => Vec2::new(0.0, 0.3),
                Hold::Move => Vec2::new(0.2, 0.3),
            };
            let jaw = flat
                .jaw
                .with_node_moved(&model.a, (node, hold.hold), moved, free);
            // The pair stays set where it was, so that only the node's own movement is seen.
            let half = Half {
                jaw: jaw.form().placed(model.a.heel(), model.a.face),
                ..model.a.clone()
            };
            let after = jaw.node_holds(&half, node);
            let after = after
                .iter()
                .find(|h| h.node == node && h.hold == hold.hold)
                .expect("the hold");
            let name = format!("node {node} {:?}", hold.hold);
            within(&name, (after.at - hold.at - moved).hypot(), 0.0, 0.06);
        }
    }
}
