//! A jaw of the smith's own: nodes along a line, each with the section that it has there.
//!
//! Any jaw can be turned into one without changing its shape. A sketch keeps the sizes it was
//! drawn in; made longer, or used for other work, it grows in proportion.

mod check;
mod edit;
mod grown;
mod kept;
mod redrawn;
mod shape;
mod split;
mod turned;

pub use edit::{Depth, NodeValue};
pub(crate) use grown::length_range;
pub use kept::{KEPT_FORMAT, KeptJaw, Outgrown, is_kept_jaw};
pub use shape::{Alike, Corner, Ready, SketchShape, Surface};

use serde::{Deserialize, Serialize};

use super::{Course, Flat, Form, Lay, Remark, Style};
use crate::asked::{Bar, Work, fields};
use crate::shape::section::Profile;
use crate::shape::sweep::{Ease, Station};
use crate::units::{Length, Offset};

/// A sketched jaw.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Sketch {
    /// What the smith calls it; empty for one that is not kept.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub name: String,
    /// What it is for.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub about: String,
    /// The size of work that its nodes were drawn for.
    pub drawn_for: Length,
    /// The size of work that it is used for: heights and widths grow in proportion.
    pub fits: Length,
    /// How it lays the work.
    #[serde(default)]
    pub lay: SketchLay,
    /// Between these two nodes the work may bear.
    pub grip: (usize, usize),
    /// From heel to tip.
    pub nodes: Vec<Node>,
    /// The sections that the nodes name.
    pub shapes: Vec<SketchShape>,
}

/// How a sketch lays the work.
#[derive(Debug, Clone, Copy, PartialEq, Default, Serialize, Deserialize)]
pub enum SketchLay {
    /// Its axis along the tongs, its end where the grip begins.
    #[default]
    #[serde(rename = "Endwise")]
    EndOn,
    /// Its axis along the tongs, its end at a stop.
    Stopped {
        /// Past the heel.
        at: Offset,
    },
    /// Along the tongs and beside them.
    Alongside,
    /// Its axis along the rivet.
    Crosswise {
        /// Past the heel.
        at: Offset,
    },
}

/// A node of the line that a sketch follows.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Node {
    /// Past the heel, along the tongs.
    pub x: Offset,
    /// Outwards from the line of the faces or lips.
    pub y: Offset,
    /// Which way the line runs there, degrees from the tongs' axis, outwards positive.
    #[serde(default)]
    pub slope: f64,
    /// The steel there; without it the node only bends the line.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub steel: Option<Steel>,
}

/// The section at a node.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Steel {
    /// Its inside, outwards from the line.
    pub inside: Offset,
    /// Its back, outwards from the line.
    pub back: Offset,
    /// Along the rivet.
    pub width: Length,
    /// Its middle along the rivet.
    #[serde(default = "no_shift")]
    pub shift: Offset,
    /// Which of the shapes.
    pub shape: usize,
    /// How sizes go on to the next section.
    #[serde(default)]
    pub ease: Ease,
}

fn no_shift() -> Offset {
    Offset::ZERO
}

/// How much larger a sketch is used than it was drawn: along the tongs, and across them.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Growth {
    /// Along.
    pub along: f64,
    /// Across.
    pub across: f64,
}

/// Steel is drawn at least so thick and so wide, mm.
const LEAST_STEEL: f64 = 0.2;
/// Nodes are drawn at least so far apart along the tongs, mm.
const LEAST_APART: f64 = 0.05;
/// The line runs no steeper, degrees.
pub(crate) const STEEPEST: f64 = 80.0;

fields! { Sketch: |Self { fits, drawn_for, nodes, .. }, v| {
    v.value("fits", fits, grown::fits_range(drawn_for, nodes)).of_work()
        .says(
            "Drawn to fit",
            "Size of the work that it is used for: the whole sketch grows with it",
        );
}}

impl Style for Sketch {
    const NAME: &'static str = "sketch";
    const ABOUT: &'static str = "A jaw of your own, drawn node by node";

    fn suited(work: &Work, bar: &Bar) -> Self {
        let length = Flat::suited_length_mm(work, bar);
        Self::of(&Flat::suited(work, bar).form(length), work.size())
    }

    fn suited_length_mm(work: &Work, bar: &Bar) -> f64 {
        Flat::suited_length_mm(work, bar)
    }

    fn form(&self, length: f64) -> Form {
        self.form_of(self.placed(length))
    }

    fn lay(&self, length: f64) -> Lay {
        self.laid(self.growth(length).along)
    }

    fn remarks(&self, length: f64) -> Vec<Remark> {
        self.notices(length)
    }
}

/// The nodes in the size in which they are used, put right where they could not be drawn.
struct Placed {
    growth: Growth,
    /// How long the line is as it was asked for, mm. One that is too long to be drawn lies
    /// straight in `poses`.
    line: f64,
    /// x, y in mm and heading in radians of every node.
    poses: Vec<(f64, f64, f64)>,
    /// The line through them.
    course: Course,
    /// How far along it every node is, mm.
    along: Vec<f64>,
    /// The nodes that carry steel.
    steel: Vec<(usize, Steel)>,
}

fn station(at: f64, steel: &Steel, profile: usize, across: f64) -> Station {
    let used = |mm: f64| grown::within_width(mm * across);
    let (inside, back) = (used(steel.inside.mm()), used(steel.back.mm()));
    let depth = (back - inside).max(LEAST_STEEL);
    Station {
        at,
        depth,
        width: used(steel.width.mm()).max(LEAST_STEEL),
        rise: inside + depth / 2.0,
        shift: used(steel.shift.mm()),
        profile,
        ease: steel.ease,
    }
}

impl Sketch {
    /// From the heel to its last node as drawn, mm.
    pub fn drawn_length(&self) -> f64 {
        self.nodes.last().map_or(1.0, |node| node.x.mm()).max(1.0)
    }

    /// How much larger it is used than it was drawn, for a jaw of some length in mm; never more
    /// than can be drawn.
    pub fn growth(&self, length: f64) -> Growth {
        let times = |now: f64, drawn: f64| now / drawn.max(f64::MIN_POSITIVE);
        Growth {
            along: grown::held_back(times(length, self.drawn_length())),
            across: grown::held_back(times(self.fits.mm(), self.drawn_for.mm())),
        }
    }

    /// How far along the jaw each node is, for a jaw of some length, mm.
    pub fn along(&self, length: f64) -> Vec<f64> {
        self.placed(length).along
    }

    fn placed(&self, length: f64) -> Placed {
        let growth = self.growth(length);
        let mut poses = self.poses(growth, length);
        let (mut course, mut along) = Course::through(&poses);
        let line = course.length();
        if line > grown::LONGEST_LINE || !line.is_finite() {
            for pose in &mut poses {
                (pose.1, pose.2) = (0.0, 0.0);
            }
            (course, along) = Course::through(&poses);
        }
        let steel = self.steel(poses.len());
        Placed {
            growth,
            line,
            poses,
            course,
            along,
            steel,
        }
    }

    /// x, y in mm and heading in radians of every node, from the heel and in their order; at least
    /// two.
    fn poses(&self, growth: Growth, length: f64) -> Vec<(f64, f64, f64)> {
        let mut poses: Vec<(f64, f64, f64)> = Vec::with_capacity(self.nodes.len().max(2));
        for node in &self.nodes {
            let least = poses.last().map_or(f64::MIN, |pose| pose.0 + LEAST_APART);
            let x = grown::within_reach(node.x.mm() * growth.along).max(least);
            let slope = node.slope.clamp(-STEEPEST, STEEPEST).to_radians();
            // What stretches the sketch turns its slopes.
            let heading = if growth.along == growth.across {
                slope
            } else {
                (slope.tan() * growth.across / growth.along).atan()
            };
            poses.push((x, grown::within_width(node.y.mm() * growth.across), heading));
        }
        // The heel lies where the neck ends.
        let start = poses.first().map_or(0.0, |pose| pose.0);
        for pose in &mut poses {
            pose.0 -= start;
        }
        while poses.len() < 2 {
            let (x, y, _) = poses.last().copied().unwrap_or_default();
            poses.push((x + length.max(1.0), y, 0.0));
        }
        poses
    }

    /// The stations along the line through the placed nodes.
    fn form_of(&self, placed: Placed) -> Form {
        let along = &placed.along;
        let mut profiles: Vec<Profile> = self.shapes.iter().map(SketchShape::profile).collect();
        profiles.push(Profile::rectangle());
        let plain = profiles.len() - 1;
        let mut stations = Vec::with_capacity(placed.steel.len());
        for (index, steel) in &placed.steel {
            // The neck ends in a rectangle.
            let shape = if *index == 0 {
                plain
            } else {
                steel.shape.min(plain)
            };
            stations.push(station(along[*index], steel, shape, placed.growth.across));
        }
        let last = along.len() - 1;
        let (from, to) = self.grip;
        let from = from.min(last.saturating_sub(1));
        Form {
            grip: (along[from], along[to.clamp(from + 1, last)]),
            course: placed.course,
            stations,
            profiles,
            lay: self.laid(placed.growth.along),
        }
    }

    /// The nodes with steel, the first and the last of `count` among them: one that has none
    /// takes that of the nearest.
    fn steel(&self, count: usize) -> Vec<(usize, Steel)> {
        let carried = |(index, node): (usize, &Node)| node.steel.map(|steel| (index, steel));
        let mut all: Vec<(usize, Steel)> =
            self.nodes.iter().enumerate().filter_map(carried).collect();
        let fallback = Steel {
            inside: Offset::ZERO,
            back: Offset::from_mm(5.0, crate::units::Unit::Millimetre),
            width: Length::decimal(10.0, crate::units::Unit::Millimetre),
            shift: Offset::ZERO,
            shape: 0,
            ease: Ease::Linear,
        };
        let first = all.first().map_or(fallback, |(_, steel)| *steel);
        if all.first().is_none_or(|(index, _)| *index > 0) {
            all.insert(0, (0, first));
        }
        let last = all.last().map_or(fallback, |(_, steel)| *steel);
        if all.last().is_none_or(|(index, _)| *index + 1 < count) {
            all.push((count - 1, last));
        }
        all
    }

    fn laid(&self, along: f64) -> Lay {
        match self.lay {
            SketchLay::EndOn => Lay::Endwise { end: None },
            SketchLay::Stopped { at } => Lay::Endwise {
                end: Some(grown::within_reach(at.mm() * along)),
            },
            SketchLay::Alongside => Lay::Alongside,
            SketchLay::Crosswise { at } => Lay::Crosswise {
                at: grown::within_reach(at.mm() * along),
            },
        }
    }
}
