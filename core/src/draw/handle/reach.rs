//! Where the nodes of a sketch can be taken hold of, and what moving them does.

use kurbo::{Point, Vec2};

use super::limb::{Limb, View};
use crate::shape::sweep::Edge;
use crate::tongs::document::Document;
use crate::tongs::jaw::Jaw;
use crate::tongs::jaw::sketch::{Depth, Growth, NodeValue, Sketch};
use crate::tongs::model::{Half, Model};
use crate::units::Unit;

/// What of a node is taken hold of.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Hold {
    /// The whole node, in the side view.
    Move,
    /// Its slope, in the side view.
    Slope,
    /// The inside of its steel, in the side view.
    Inside,
    /// The back of its steel, in the side view.
    Back,
    /// Its far side, in the top view.
    Width,
    /// Its middle, in the top view.
    Shift,
}

impl Hold {
    /// All of them.
    pub const ALL: [Self; 6] = [
        Self::Move,
        Self::Slope,
        Self::Inside,
        Self::Back,
        Self::Width,
        Self::Shift,
    ];

    /// What the smith calls it.
    pub fn label(self) -> &'static str {
        match self {
            Self::Move => "place",
            Self::Slope => "slope",
            Self::Inside => "inside",
            Self::Back => "back",
            Self::Width => "width",
            Self::Shift => "to the side",
        }
    }

    /// Whether it lies in the top view: its place is then (x, z), else (x, y).
    pub fn from_above(self) -> bool {
        match self {
            Self::Width | Self::Shift => true,
            Self::Move | Self::Slope | Self::Inside | Self::Back => false,
        }
    }
}

/// A place at which a node can be taken hold of.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct NodeHold {
    /// Which node.
    pub node: usize,
    /// What of it.
    pub hold: Hold,
    /// In the frame of the half: (x, y) in the side view, (x, z) in the top view, mm.
    pub at: Point,
}

/// How a node is moved.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Moving {
    /// What the back does to the inside.
    pub depth: Depth,
    /// What a value is rounded to, mm; none at zero.
    pub step: f64,
    /// The unit that values are written in.
    pub unit: Unit,
}

impl Jaw {
    /// Every place at which a sketched jaw can be taken hold of on its half: the nodes, and of the
    /// chosen one its slope, sides and width. None for a jaw that is no sketch.
    pub fn node_holds(&self, half: &Half, chosen: usize) -> Vec<NodeHold> {
        let Some(sketch) = self.sketch() else {
            return Vec::new();
        };
        let along = sketch.along(self.length.mm());
        let mut holds = Vec::new();
        for (node, &s) in along.iter().enumerate() {
            let steel = sketch.nodes.get(node).is_some_and(|it| it.steel.is_some());
            let kinds: &[Hold] = match (node == chosen, steel) {
                (false, _) => &[Hold::Move],
                (true, false) => &[Hold::Move, Hold::Slope],
                (true, true) => &Hold::ALL,
            };
            holds.extend(kinds.iter().map(|&hold| NodeHold {
                node,
                hold,
                at: place(half, s, hold),
            }));
        }
        holds
    }

    /// Where one hold of a sketched jaw lies on its half; `None` where there is no such node.
    pub fn node_hold(&self, half: &Half, (node, hold): (usize, Hold)) -> Option<Point> {
        let s = *self.sketch()?.along(self.length.mm()).get(node)?;
        Some(place(half, s, hold))
    }

    /// The jaw after a hold of one of its nodes was moved so far in the frame of the half, mm:
    /// (x, y) in the side view, (x, z) in the top view.
    #[must_use]
    pub fn with_node_moved(
        &self,
        half: &Half,
        (node, hold): (usize, Hold),
        moved: Vec2,
        how: Moving,
    ) -> Self {
        let Some(sketch) = self.sketch() else {
            return self.clone();
        };
        let length = self.length.mm();
        let (growth, along) = (sketch.growth(length), sketch.along(length));
        let Some(&s) = along.get(node) else {
            return self.clone();
        };
        let pose = half.jaw.path.at(s);
        let outward = moved.dot(pose.left());
        let set = |sketch: &Sketch, value: NodeValue, by: f64| {
            set(sketch, (node, value, by), growth, how)
        };
        self.with_sketch(match hold {
            Hold::Move => set(&set(sketch, NodeValue::X, moved.x), NodeValue::Y, moved.y),
            Hold::Slope => {
                let tip = pose.along() * arm(half) + moved;
                let turned = tip.atan2().to_degrees() - pose.heading.to_degrees();
                let now = sketch.nodes[node].slope;
                let to = if how.step > 0.0 {
                    (now + turned).round()
                } else {
                    now + turned
                };
                sketch.with_value(node, (NodeValue::Slope, to), (growth, how.depth, how.unit))
            }
            Hold::Inside => set(sketch, NodeValue::Inside, outward),
            Hold::Back => set(sketch, NodeValue::Back, outward),
            Hold::Width => set(sketch, NodeValue::Width, 2.0 * moved.y),
            Hold::Shift => set(sketch, NodeValue::Shift, moved.y),
        })
    }
}

/// Where a hold lies on a jaw, so far along it.
fn place(half: &Half, s: f64, hold: Hold) -> Point {
    let jaw = &half.jaw;
    match hold {
        Hold::Move => jaw.middle(s),
        Hold::Slope => jaw.middle(s) + jaw.path.at(s).along() * arm(half),
        Hold::Inside => jaw.edge_point(Edge::Inner, s),
        Hold::Back => jaw.edge_point(Edge::Outer, s),
        Hold::Width => jaw.edge_point(Edge::Far, s),
        Hold::Shift => Point::new(jaw.edge_point(Edge::Far, s).x, jaw.shift(s)),
    }
}

/// How far from its node the slope is taken hold of, mm.
fn arm(half: &Half) -> f64 {
    (0.16 * half.jaw.length()).max(6.0)
}

/// A value moved by so much as it is used, rounded.
fn set(
    sketch: &Sketch,
    (node, value, by): (usize, NodeValue, f64),
    growth: Growth,
    how: Moving,
) -> Sketch {
    let Some(now) = sketch.value(node, value, growth) else {
        return sketch.clone();
    };
    if by == 0.0 {
        return sketch.clone();
    }
    let to = now + by;
    let to = if how.step > 0.0 {
        (to / how.step).round() * how.step
    } else {
        to
    };
    sketch.with_value(node, (value, to), (growth, how.depth, how.unit))
}

/// Where a node is held, in the frame of its half: the rivet's place if there is no such node.
pub(super) fn at(
    document: &Document,
    model: &Model,
    (limb, node, hold): (Limb, usize, Hold),
) -> Point {
    let jaw = jaw(document, limb);
    let at = jaw.and_then(|jaw| jaw.node_hold(limb.half().of(model), (node, hold)));
    at.unwrap_or(Point::ORIGIN)
}

/// The view that a hold lies in.
pub(super) fn view(hold: Hold) -> View {
    if hold.from_above() {
        View::Top
    } else {
        View::Side
    }
}

/// The jaw that a limb of a document is.
pub(super) fn jaw(document: &Document, limb: Limb) -> Option<&Jaw> {
    match limb {
        Limb::Jaw => Some(&document.jaw),
        Limb::SecondJaw => document.second_jaw.as_ref(),
        Limb::Rein => None,
    }
}

pub(super) fn along(document: &Document, limb: Limb, node: usize) -> Option<f64> {
    let jaw = jaw(document, limb)?;
    let along = jaw.sketch()?.along(jaw.length.mm());
    along.get(node).copied()
}
