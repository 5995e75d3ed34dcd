use serde::{Deserialize, Serialize};

use super::choice::Choice;
use super::range::{DETAIL, STEEL};
use super::walk::fields;
use crate::units::{Length, Unit};

/// What becomes of the long edges of a section.
#[derive(Debug, Clone, Copy, PartialEq, Default, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub enum Edge {
    /// Left as they are.
    #[default]
    Sharp,
    /// Broken by a flat of this leg at 45°.
    Chamfer(Length),
    /// Rounded to this radius.
    Radius(Length),
}

impl Edge {
    /// The leg or radius.
    pub fn size(self) -> Length {
        match self {
            Self::Sharp => Length::ZERO,
            Self::Chamfer(size) | Self::Radius(size) => size,
        }
    }
}

/// A plain cross-section: depth is in the side view, width in the top view.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub enum PlainSection {
    /// Round.
    Round {
        /// Diameter.
        diameter: Length,
    },
    /// Square.
    Square {
        /// Across flats.
        side: Length,
        /// Long edges.
        #[serde(default)]
        edge: Edge,
    },
    /// Rectangle.
    Rectangle {
        /// In the side view.
        depth: Length,
        /// In the top view.
        width: Length,
        /// Long edges.
        #[serde(default)]
        edge: Edge,
    },
    /// Regular octagon.
    Octagon {
        /// Across flats.
        flats: Length,
    },
    /// Regular hexagon, a flat up and a flat down in the side view.
    Hexagon {
        /// Across flats.
        flats: Length,
    },
    /// Ellipse.
    Oval {
        /// In the side view.
        depth: Length,
        /// In the top view.
        width: Length,
    },
    /// Half of an ellipse, its flat towards the other rein.
    HalfRound {
        /// From the flat to the top.
        depth: Length,
        /// Along the flat.
        width: Length,
    },
}

impl PlainSection {
    /// Size in the side view, mm.
    pub fn depth_mm(&self) -> f64 {
        match *self {
            Self::Round { diameter } => diameter.mm(),
            Self::Square { side, .. } => side.mm(),
            Self::Octagon { flats } | Self::Hexagon { flats } => flats.mm(),
            Self::Rectangle { depth, .. }
            | Self::Oval { depth, .. }
            | Self::HalfRound { depth, .. } => depth.mm(),
        }
    }

    /// Size in the top view, mm.
    pub fn width_mm(&self) -> f64 {
        match *self {
            Self::Round { diameter } => diameter.mm(),
            Self::Square { side, .. } => side.mm(),
            Self::Octagon { flats } => flats.mm(),
            Self::Hexagon { flats } => flats.mm() * 2.0 / 3f64.sqrt(),
            Self::Rectangle { width, .. }
            | Self::Oval { width, .. }
            | Self::HalfRound { width, .. } => width.mm(),
        }
    }

    pub(crate) fn sizes(&self) -> (Length, Length) {
        match *self {
            Self::Round { diameter } => (diameter, diameter),
            Self::Square { side, .. } => (side, side),
            Self::Octagon { flats } | Self::Hexagon { flats } => (flats, flats),
            Self::Rectangle { depth, width, .. }
            | Self::Oval { depth, width }
            | Self::HalfRound { depth, width } => (depth, width),
        }
    }

    pub(crate) fn edge(&self) -> Edge {
        match *self {
            Self::Square { edge, .. } | Self::Rectangle { edge, .. } => edge,
            Self::Round { .. }
            | Self::Octagon { .. }
            | Self::Hexagon { .. }
            | Self::Oval { .. }
            | Self::HalfRound { .. } => Edge::Sharp,
        }
    }
}

fields! { PlainSection: |it, v| {
    v.choice("section", it).says("Section", "Its cross-section");
    match it {
        Self::Round { diameter } => {
            v.value("diameter", diameter, STEEL).says("Diameter", "Of the round");
        }
        Self::Octagon { flats } | Self::Hexagon { flats } => {
            v.value("flats", flats, STEEL).says("Across flats", "Between two opposite flats");
        }
        Self::Square { side, edge } => {
            v.value("side", side, STEEL).says("Side", "Across flats");
            v.all(edge);
        }
        Self::Rectangle { depth, width, edge } => {
            v.value("depth", depth, STEEL).says("Depth", "In the side view");
            v.value("width", width, STEEL).says("Width", "In the top view");
            v.all(edge);
        }
        Self::Oval { depth, width } | Self::HalfRound { depth, width } => {
            v.value("depth", depth, STEEL).says("Depth", "In the side view");
            v.value("width", width, STEEL).says("Width", "In the top view");
        }
    }
}}

fields! { Edge: |it, v| {
    v.choice("edge", it).says("Edges", "What is done to the long edges");
    if let Self::Chamfer(size) | Self::Radius(size) = it {
        v.value("edge_size", size, DETAIL).says("Edge size", "Leg of the chamfer or the radius");
    }
}}

impl Choice for Edge {
    const WAYS: &'static [&'static str] = &["sharp", "chamfered", "rounded"];

    fn chosen(&self) -> usize {
        match self {
            Self::Sharp => 0,
            Self::Chamfer(_) => 1,
            Self::Radius(_) => 2,
        }
    }

    fn choose(&mut self, index: usize) {
        let size = match self.size() {
            size if size.mm() > 0.0 => size,
            _ => Length::fraction(1, 16, Unit::Inch),
        };
        *self = match index {
            0 => Self::Sharp,
            1 => Self::Chamfer(size),
            2 => Self::Radius(size),
            _ => *self,
        };
    }
}

impl Choice for PlainSection {
    const WAYS: &'static [&'static str] = &[
        "round",
        "square",
        "rectangle",
        "octagon",
        "hexagon",
        "oval",
        "half-round",
    ];

    fn chosen(&self) -> usize {
        match self {
            Self::Round { .. } => 0,
            Self::Square { .. } => 1,
            Self::Rectangle { .. } => 2,
            Self::Octagon { .. } => 3,
            Self::Hexagon { .. } => 4,
            Self::Oval { .. } => 5,
            Self::HalfRound { .. } => 6,
        }
    }

    fn choose(&mut self, index: usize) {
        if index == self.chosen() {
            return;
        }
        let ((depth, width), edge) = (self.sizes(), self.edge());
        *self = match index {
            0 => Self::Round { diameter: depth },
            1 => Self::Square { side: depth, edge },
            2 => Self::Rectangle { depth, width, edge },
            3 => Self::Octagon { flats: depth },
            4 => Self::Hexagon { flats: depth },
            5 => Self::Oval { depth, width },
            6 => Self::HalfRound { depth, width },
            _ => *self,
        };
    }
}
