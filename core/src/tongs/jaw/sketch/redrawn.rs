//! A sketch drawn anew for other work, with places that a smith can measure.

use super::edit::APART;
use super::{Growth, Node, Sketch, SketchLay, Steel};
use crate::units::{Length, Offset, Unit};

/// Slopes and steps smaller than these are none, degrees and mm.
const LEVEL: (f64, f64) = (1e-6, 1e-6);

/// A place is rounded only where that changes the stretches beside it by no more than this part.
const GENTLE: f64 = 0.25;

impl Sketch {
    /// The sketch as it is used in a jaw of some length in mm, so many times larger: drawn for
    /// work of the size `fits`, over a length.
    pub(super) fn redrawn(&self, (used, times): (f64, f64), length: Length, fits: Length) -> Self {
        let now = self.growth(used);
        let growth = Growth {
            along: now.along * times,
            across: now.across * times,
        };
        let nodes: Vec<Node> = self.nodes.iter().map(|node| grown(node, growth)).collect();
        let places = measured_places(&nodes, length);
        let lay = self.lay_on((growth.along, &places), length.unit());
        let at = |(node, place): (Node, &Offset)| Node { x: *place, ..node };
        Self {
            drawn_for: fits,
            fits,
            lay,
            nodes: nodes.into_iter().zip(&places).map(at).collect(),
            ..self.clone()
        }
    }

    /// A stop, or the middle of work that lies across, follows its node; else it grows as all does.
    fn lay_on(&self, (along, places): (f64, &[Offset]), unit: Unit) -> SketchLay {
        let follow = |at: Offset| {
            let near = |node: &Node| (node.x.mm() - at.mm()).abs() < LEVEL.1;
            let node = self.nodes.iter().position(near);
            node.map_or_else(
                || Offset::from_mm(at.mm() * along, unit),
                |node| places[node],
            )
        };
        match self.lay {
            SketchLay::EndOn => SketchLay::EndOn,
            SketchLay::Stopped { at } => SketchLay::Stopped { at: follow(at) },
            SketchLay::Alongside => SketchLay::Alongside,
            SketchLay::Crosswise { at } => SketchLay::Crosswise { at: follow(at) },
        }
    }
}

fn grown(node: &Node, growth: Growth) -> Node {
    let across = |it: Offset| exact(it.mm() * growth.across);
    let slope = (node.slope.to_radians().tan() * growth.across / growth.along).atan();
    let steel = |steel: Steel| Steel {
        inside: across(steel.inside),
        back: across(steel.back),
        width: Length::decimal(steel.width.mm() * growth.across, Unit::Millimetre),
        shift: across(steel.shift),
        ..steel
    };
    Node {
        x: exact(node.x.mm() * growth.along),
        y: across(node.y),
        slope: slope.to_degrees(),
        steel: node.steel.map(steel),
    }
}

/// The places of the nodes: in whole sixteenths or half millimetres the tip, where the length ends,
/// and all those between straight and level stretches. What bends keeps its shape, and so does what
/// is too short to be rounded.
fn measured_places(nodes: &[Node], length: Length) -> Vec<Offset> {
    let x = |index: usize| nodes[index].x.mm();
    let last = nodes.len() - 1;
    let mut places: Vec<Offset> = nodes.iter().map(|node| node.x).collect();
    let gentle = |index: usize, to: f64| {
        let before = x(index) - x(index - 1);
        let after = if index < last {
            x(index + 1) - x(index)
        } else {
            before
        };
        (to - x(index)).abs() <= GENTLE * before.min(after)
    };
    if gentle(last, length.mm()) {
        places[last] = Offset::from_mm(length.mm(), length.unit());
    }
    for index in 1..last {
        let to = Length::measured(x(index).max(0.0), length.unit());
        let free =
            to.mm() - places[index - 1].mm() > APART && places[index + 1].mm() - to.mm() > APART;
        if free && gentle(index, to.mm()) && is_level(&nodes[index - 1..=index + 1]) {
            places[index] = Offset::from_mm(to.mm(), length.unit());
        }
    }
    places
}

fn is_level(nodes: &[Node]) -> bool {
    let flat = |node: &Node| node.slope.abs() < LEVEL.0;
    let in_line = |node: &Node| (node.y.mm() - nodes[0].y.mm()).abs() < LEVEL.1;
    nodes.iter().all(|node| flat(node) && in_line(node))
}

fn exact(mm: f64) -> Offset {
    Offset::exact(mm, Unit::Millimetre)
}
