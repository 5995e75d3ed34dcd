//! Handles on the nodes of a sketched jaw.

use kurbo::{Point, Vec2};

use super::limb::Limb;
use super::reach::{Hold, Moving, along, jaw};
use super::spot::Spot;
use super::{Answer, Dragged, Handle, HandleId, OnPaper, Step};
use crate::asked::{Units, capital};
use crate::finding::Part;
use crate::tongs::document::Document;
use crate::tongs::jaw::sketch::{Depth, NodeValue};
use crate::tongs::model::Model;
use crate::units::MM_PER_INCH;

/// The handles of the sketched jaws of a pair: every node, and all of the chosen one.
pub fn node_handles(document: &Document, model: &Model, chosen: (Part, usize)) -> Vec<Handle> {
    let second = document.second_jaw.as_ref();
    let jaws = [
        (Part::Jaw, Limb::Jaw, Some(&document.jaw)),
        (Part::SecondJaw, Limb::SecondJaw, second),
    ];
    let mut all = Vec::new();
    for (part, limb, jaw) in jaws {
        let Some(jaw) = jaw else { continue };
        let node = if part == chosen.0 {
            chosen.1
        } else {
            usize::MAX
        };
        for hold in jaw.node_holds(limb.half().of(model), node) {
            let spot = Spot::Node(limb, hold.node, hold.hold);
            all.push(Handle {
                id: HandleId::Node {
                    part,
                    node: hold.node,
                    hold: hold.hold,
                },
                label: label(part, hold.node, hold.hold),
                part,
                spot,
                answer: answer(&spot, (document, model), hold.hold),
            });
        }
    }
    all
}

/// `Jaw node 2 place`, written as the labels of other handles are.
fn label(part: Part, node: usize, hold: Hold) -> String {
    capital(&format!("{part} node {} {}", node + 1, hold.label()))
}

/// How a hold answers: along the steel's own directions, or every way.
fn answer(spot: &Spot, (document, model): (&Document, &Model), hold: Hold) -> Answer {
    let Spot::Node(limb, node, _) = *spot else {
        return Answer::Free;
    };
    let half = limb.half().of(model);
    let out = || {
        let along = along(document, limb, node).unwrap_or(0.0);
        let left = half.jaw.path.at(along).left();
        spot.in_view(left.to_point(), model).to_vec2()
    };
    match hold {
        Hold::Move | Hold::Slope => Answer::Free,
        Hold::Inside | Hold::Back => Answer::Along(out()),
        Hold::Width | Hold::Shift => {
            Answer::Along(spot.in_view(Point::new(0.0, 1.0), model).to_vec2())
        }
    }
}

/// A size that the smith's hand moves by, mm.
fn size(units: Units, step: Step) -> f64 {
    match (units, step) {
        (Units::Inch, Step::Usual) => MM_PER_INCH / 32.0,
        (Units::Inch, Step::Fine) => MM_PER_INCH / 128.0,
        (Units::Millimetre, Step::Usual) => 0.5,
        (Units::Millimetre, Step::Fine) => 0.1,
    }
}

/// A document with a node dragged by so much on the paper, mm.
pub(super) fn dragged(
    start: &Document,
    handle: &Handle,
    (moved, on): (Vec2, &OnPaper),
    (step, depth): (Step, Depth),
) -> Option<Dragged> {
    let Spot::Node(limb, node, hold) = handle.spot else {
        return None;
    };
    let model = crate::tongs::resolve(start);
    let unit = |v: Vec2| {
        let seen = handle.spot.in_view(v.to_point(), &model).to_vec2();
        on.turned(handle.spot.view(), limb.half(), seen)
    };
    let own = Vec2::new(
        moved.dot(unit(Vec2::new(1.0, 0.0))),
        moved.dot(unit(Vec2::new(0.0, 1.0))),
    );
    let how = Moving {
        depth,
        step: size(start.units, step),
        unit: start.units.unit(),
    };
    let own = if own.is_finite() { own } else { Vec2::ZERO };
    let jaw = jaw(start, limb)?.with_node_moved(limb.half().of(&model), (node, hold), own, how);
    let mut document = start.clone();
    match limb {
        Limb::SecondJaw => document.second_jaw = Some(jaw),
        Limb::Jaw | Limb::Rein => document.jaw = jaw,
    }
    let text = text(&document, &handle.id);
    Some(Dragged { document, text })
}

/// A document with a node moved by so many steps to the right and up on the paper.
pub(super) fn nudged(
    start: &Document,
    handle: &Handle,
    (steps, on): (Vec2, &OnPaper),
    step: Step,
) -> Option<Dragged> {
    let by = steps * size(start.units, step);
    dragged(start, handle, (by, on), (step, Depth::OneSide))
}

/// A node's values as the smith reads them.
pub(super) fn text(document: &Document, id: &HandleId) -> String {
    let HandleId::Node { part, node, hold } = *id else {
        return String::new();
    };
    let limb = if part == Part::SecondJaw {
        Limb::SecondJaw
    } else {
        Limb::Jaw
    };
    let shown = || {
        let jaw = jaw(document, limb)?;
        let sketch = jaw.sketch()?;
        let growth = sketch.growth(jaw.length.mm());
        let show = document.units.show();
        let mm = |value| sketch.value(node, value, growth).map(|mm| show.text(mm));
        Some(match hold {
            Hold::Move => format!("{} along, {} out", mm(NodeValue::X)?, mm(NodeValue::Y)?),
            Hold::Slope => format!("{:.1}\u{b0}", sketch.value(node, NodeValue::Slope, growth)?),
            Hold::Inside => mm(NodeValue::Inside)?,
            Hold::Back => mm(NodeValue::Back)?,
            Hold::Width => mm(NodeValue::Width)?,
            Hold::Shift => mm(NodeValue::Shift)?,
        })
    };
    shown().unwrap_or_default()
}
