//! Changing a sketch: one value of one node, or its list of nodes.

use super::{Growth, Node, STEEPEST, Sketch, SketchShape, Steel};
use crate::tongs::jaw::{Jaw, JawStyle};
use crate::units::{Length, Offset, Unit};

/// One value of a node.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum NodeValue {
    /// Past the heel, mm.
    X,
    /// Outwards from the line of faces or lips, mm.
    Y,
    /// Which way the line runs, degrees.
    Slope,
    /// Inside of the steel, outwards from the line, mm.
    Inside,
    /// Back of the steel, outwards from the line, mm.
    Back,
    /// Along the rivet, mm.
    Width,
    /// Middle of the steel along the rivet, mm.
    Shift,
}

impl NodeValue {
    /// All of them, in the order in which they are shown.
    pub const ALL: [Self; 7] = [
        Self::X,
        Self::Y,
        Self::Slope,
        Self::Inside,
        Self::Back,
        Self::Width,
        Self::Shift,
    ];

    /// What the smith calls it.
    pub fn label(self) -> &'static str {
        match self {
            Self::X => "Past the heel",
            Self::Y => "Out from face",
            Self::Slope => "Slope",
            Self::Inside => "Inside",
            Self::Back => "Back",
            Self::Width => "Width",
            Self::Shift => "To the side",
        }
    }

    /// What it is, in a sentence without a period.
    pub fn hint(self) -> &'static str {
        match self {
            Self::X => "From the heel along the tongs to this node",
            Self::Y => "From the line of the faces or lips outwards to the line of the sketch",
            Self::Slope => "Which way the line runs, from the tongs' axis outwards",
            Self::Inside => "From the line outwards to the gripping side",
            Self::Back => "From the line outwards to the back",
            Self::Width => "Of the steel along the rivet",
            Self::Shift => {
                "From the middle of the tongs along the rivet to the middle of the steel"
            }
        }
    }

    /// Whether it is measured along the tongs.
    fn grows(self, growth: Growth) -> f64 {
        match self {
            Self::X => growth.along,
            Self::Slope => 1.0,
            Self::Y | Self::Inside | Self::Back | Self::Width | Self::Shift => growth.across,
        }
    }
}

/// What moving the back or the inside of the steel does to the other one.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Depth {
    /// The other one stays.
    #[default]
    OneSide,
    /// The other one moves as far the other way.
    BothSides,
}

/// How far along the tongs a sketch may reach, mm: as far as a jaw may be long.
pub(super) const FARTHEST: f64 = 500.0;
/// How far out and to the side it may reach, and how thick and wide it may be, mm: round the
/// largest work that tongs are made for, half as much again.
pub(super) const WIDEST: f64 = 300.0;
/// The thinnest steel that can be asked for, mm.
const THINNEST: f64 = 0.5;
/// The most nodes: no smith draws more, and what winds about itself takes time as their square.
pub(super) const MOST_NODES: usize = 64;
/// Nodes are kept so far apart when they are moved, mm.
pub(super) const APART: f64 = 0.2;

impl Sketch {
    /// A value of a node as it is used, in mm or degrees; `None` where there is no such node or
    /// it carries no steel.
    pub fn value(&self, node: usize, value: NodeValue, growth: Growth) -> Option<f64> {
        let at = self.nodes.get(node)?;
        let drawn = match value {
            NodeValue::X => at.x.mm(),
            NodeValue::Y => at.y.mm(),
            NodeValue::Slope => at.slope,
            NodeValue::Inside => at.steel?.inside.mm(),
            NodeValue::Back => at.steel?.back.mm(),
            NodeValue::Width => at.steel?.width.mm(),
            NodeValue::Shift => at.steel?.shift.mm(),
        };
        Some(drawn * value.grows(growth))
    }

    /// The sketch with a value of a node set, in mm or degrees as it is used, kept within what can
    /// be drawn: nodes stay in their order, steel keeps some thickness.
    #[must_use]
    pub fn with_value(
        &self,
        node: usize,
        (value, to): (NodeValue, f64),
        (growth, depth, unit): (Growth, Depth, Unit),
    ) -> Self {
        let mut next = self.clone();
        if !to.is_finite() || node >= next.nodes.len() {
            return next;
        }
        let to = to / value.grows(growth);
        let offset = |mm: f64| Offset::from_mm(mm.clamp(-WIDEST, WIDEST), unit);
        let between = self.room_along(node);
        let at = &mut next.nodes[node];
        match (value, &mut at.steel) {
            (NodeValue::X, _) if node > 0 => {
                let x = to.clamp(between.0, between.1).clamp(-FARTHEST, FARTHEST);
                at.x = Offset::from_mm(x, unit);
            }
            (NodeValue::X, _) => {}
            (NodeValue::Y, _) => at.y = offset(to),
            (NodeValue::Slope, _) => {
                at.slope = (to.clamp(-STEEPEST, STEEPEST) * 10.0).round() / 10.0;
            }
            (_, None) => {}
            (NodeValue::Inside, Some(steel)) => {
                let by = to - steel.inside.mm();
                steel.inside = offset(to);
                follow(&mut steel.back, (depth, -by), unit);
                if steel.back.mm() - steel.inside.mm() < THINNEST {
                    steel.inside = offset(steel.back.mm() - THINNEST);
                }
            }
            (NodeValue::Back, Some(steel)) => {
                let by = to - steel.back.mm();
                steel.back = offset(to);
                follow(&mut steel.inside, (depth, -by), unit);
                if steel.back.mm() - steel.inside.mm() < THINNEST {
                    steel.back = offset(steel.inside.mm() + THINNEST);
                }
            }
            (NodeValue::Width, Some(steel)) => {
                steel.width = Length::from_mm(to.clamp(THINNEST, WIDEST), unit);
            }
            (NodeValue::Shift, Some(steel)) => steel.shift = offset(to),
        }
        next
    }

    /// Between its neighbours, mm past the heel as drawn.
    fn room_along(&self, node: usize) -> (f64, f64) {
        let before = node
            .checked_sub(1)
            .map_or(0.0, |i| self.nodes[i].x.mm() + APART);
        let after = self
            .nodes
            .get(node + 1)
            .map_or(FARTHEST, |next| next.x.mm() - APART);
        (before, after.max(before))
    }

    /// Its form as drawn, and how far along it each node is.
    fn drawn(&self) -> (crate::tongs::jaw::Form, Vec<f64>) {
        let as_drawn = Self {
            fits: self.drawn_for,
            ..self.clone()
        };
        let placed = as_drawn.placed(self.drawn_length());
        let along = placed.along.clone();
        (as_drawn.form_of(placed), along)
    }

    /// The sketch without a node; the first and the last one stay.
    #[must_use]
    pub fn without_node(&self, node: usize) -> Self {
        let mut next = self.clone();
        if node == 0 || node + 1 >= self.nodes.len() {
            return next;
        }
        next.nodes.remove(node);
        let past = |end: usize| {
            if end >= node {
                end.saturating_sub(1)
            } else {
                end
            }
        };
        next.grip = (
            past(self.grip.0),
            past(self.grip.1).max(past(self.grip.0) + 1),
        );
        next
    }

    /// The sketch with steel at a node that only bent the line, or without at one that had some;
    /// the first and the last one keep theirs.
    #[must_use]
    pub fn with_steel_turned(&self, node: usize) -> Self {
        let mut next = self.clone();
        if node == 0 || node + 1 >= self.nodes.len() {
            return next;
        }
        next.nodes[node].steel = match self.nodes[node].steel {
            Some(_) => None,
            None => self.steel_at(node),
        };
        next
    }

    /// The steel that the sketch has at a node now.
    fn steel_at(&self, node: usize) -> Option<Steel> {
        let (form, along) = self.drawn();
        let sweep = form.placed(0.0, 0.0);
        let s = along[node];
        let (section, rise) = (sweep.section(s), sweep.rise(s));
        let before = self.nodes[..node].iter().rev().find_map(|n| n.steel)?;
        let exact = |mm: f64| Offset::exact(mm.clamp(-WIDEST, WIDEST), Unit::Millimetre);
        Some(Steel {
            inside: exact(rise - section.depth / 2.0),
            back: exact(rise + section.depth / 2.0),
            width: Length::decimal(section.width, Unit::Millimetre),
            shift: exact(sweep.shift(s)),
            ..before
        })
    }

    /// The sketch with another shape at a node. Where other nodes use the shape that the node had
    /// they keep it. The first node is where the neck ends, and stays a rectangle.
    #[must_use]
    pub fn with_shape(&self, node: usize, shape: SketchShape) -> Self {
        let mut next = self.clone();
        let Some(steel) = next.nodes.get_mut(node).and_then(|n| n.steel.as_mut()) else {
            return next;
        };
        if node == 0 || shape.fault().is_some() {
            return next;
        }
        let shared = self.users(steel.shape).len() > 1;
        if shared {
            steel.shape = next.shapes.len();
            next.shapes.push(shape);
        } else if let Some(own) = next.shapes.get_mut(steel.shape) {
            *own = shape;
        } else {
            steel.shape = next.shapes.len();
            next.shapes.push(shape);
        }
        next
    }

    /// The sketch with a shape changed wherever it is used.
    #[must_use]
    pub fn with_shape_changed(&self, shape: usize, to: SketchShape) -> Self {
        let mut next = self.clone();
        if let Some(own) = next.shapes.get_mut(shape)
            && to.fault().is_none()
        {
            *own = to;
        }
        next
    }

    /// The nodes that use a shape.
    pub fn users(&self, shape: usize) -> Vec<usize> {
        let uses = |node: &Node| node.steel.is_some_and(|steel| steel.shape == shape);
        (0..self.nodes.len())
            .filter(|&i| uses(&self.nodes[i]))
            .collect()
    }
}

/// Moves the other side of the steel by as much, if it is to follow.
fn follow(other: &mut Offset, (depth, by): (Depth, f64), unit: Unit) {
    match depth {
        Depth::OneSide => {}
        Depth::BothSides => {
            let to = (other.mm() + by).clamp(-WIDEST, WIDEST);
            *other = Offset::from_mm(to, unit);
        }
    }
}

impl Jaw {
    /// The jaw with another sketch: its length follows when the sketch was drawn longer.
    #[must_use]
    pub fn with_sketch(&self, sketch: Sketch) -> Self {
        let mut next = self.clone();
        if let JawStyle::Sketch(old) = &self.style {
            let times = sketch.drawn_length() / old.drawn_length();
            if (times - 1.0).abs() > 1e-12 {
                let range = super::length_range(&sketch);
                let asked = self.length.mm() * times;
                let length = Length::from_mm(asked, self.length.unit());
                // A limit is whole in millimetres; in inches it could be missed by a hair.
                next.length = if range.holds(length.mm()) {
                    length
                } else {
                    Length::decimal(asked.clamp(range.least, range.most), Unit::Millimetre)
                };
            }
        }
        next.style = JawStyle::Sketch(sketch);
        next
    }
}
