//! A new node on the line of a sketch, which stays as it was.
//!
//! Between two nodes the line is one straight, one arc, or two arcs. A straight and an arc are parted
//! in the middle, two arcs where they meet: the halves are the very lines that two nodes give there.
//! Where sizes go on in proportion the node carries the section that the sketch has there; where
//! they go on in a curve, no two of the curves that a node can name are the halves of one, so the
//! node only bends the line.

use super::edit::MOST_NODES;
use super::{Growth, LEAST_STEEL, Node, Placed, STEEPEST, Sketch, SketchShape, Steel};
use crate::shape::section::Profile;
use crate::shape::sweep::{Ease, Path, Pose, Station};
use crate::units::{Length, Offset, Unit};
use kurbo::Point;

/// A node is put no nearer to its neighbours than this, mm as drawn: no smith could forge what it
/// says, and halving a stretch again and again would end with nodes on top of each other.
const ROOM: f64 = 1.0;

/// Where a stretch of the line is parted.
struct Parting {
    /// The line there, as it is used.
    pose: Pose,
    /// How far along the jaw that is, mm.
    along: f64,
}

impl Sketch {
    /// Whether a new node has room between a node and the next one, in a jaw of some length in mm.
    pub fn has_room_after(&self, node: usize, length: f64) -> bool {
        self.node_after(node, length).is_some()
    }

    /// The sketch with a new node on the stretch behind a node, in a jaw of some length in mm; its
    /// shape stays as it was. Nothing changes where there is no room.
    #[must_use]
    pub fn with_node_after(&self, node: usize, length: f64) -> Self {
        let mut next = self.clone();
        let Some(between) = self.node_after(node, length) else {
            return next;
        };
        next.nodes.insert(node + 1, between);
        let past = |end: usize| if end > node { end + 1 } else { end };
        next.grip = (past(self.grip.0), past(self.grip.1));
        next
    }

    /// The node that a stretch has room for.
    fn node_after(&self, node: usize, length: f64) -> Option<Node> {
        let (here, next) = (self.nodes.get(node)?, self.nodes.get(node + 1)?);
        let placed = self.placed(length);
        let parting = parting(&placed, node)?;
        let bare = as_drawn(&parting.pose, self.nodes[0].x.mm(), placed.growth);
        let apart = |from: &Node, to: &Node| to.x.mm() - from.x.mm() >= ROOM;
        let has_room = self.nodes.len() < MOST_NODES
            && bare.slope.abs() <= STEEPEST
            && apart(here, &bare)
            && apart(&bare, next);
        has_room.then(|| Node {
            steel: self.steel_within(node, parting.along, placed),
            ..bare
        })
    }

    /// The section of a new node behind a node, if it is in proportion to those on both sides.
    fn steel_within(&self, node: usize, along: f64, placed: Placed) -> Option<Steel> {
        let (all, places) = (placed.steel.clone(), placed.along.clone());
        let across = placed.growth.across;
        let form = self.form_of(placed);
        let after = all.iter().position(|(index, _)| *index > node)?;
        let (from, to) = (&all[after - 1], &all[after]);
        let alike = self.shape_at(from) == self.shape_at(to);
        let stations = (form.stations.get(after - 1)?, form.stations.get(after)?);
        let inner = stations.0.depth > LEAST_STEEL && stations.1.depth > LEAST_STEEL;
        if !alike || !inner || from.1.ease != Ease::Linear {
            return None;
        }
        // A tip is broken over the last stretch between two sections, as far as that has room.
        let last = after + 1 == all.len();
        if last && (places[to.0] - along) / 2.0 < form.tip_room() {
            return None;
        }
        Some(between(stations, along, across).shaped_as(&to.1))
    }

    fn shape_at(&self, (index, steel): &(usize, Steel)) -> SketchShape {
        // The neck ends in a rectangle.
        let shape = self.shapes.get(steel.shape).filter(|_| *index > 0);
        let rectangle = || SketchShape::of(&Profile::rectangle());
        shape.cloned().unwrap_or_else(rectangle)
    }
}

fn parting(placed: &Placed, node: usize) -> Option<Parting> {
    let at = |&(x, y, heading): &(f64, f64, f64)| (Point::new(x, y), heading);
    let ends = [at(placed.poses.get(node)?), at(placed.poses.get(node + 1)?)];
    let runs = Path::through(&ends);
    let s = match runs.as_slice() {
        [] => return None,
        [one] => one.length / 2.0,
        [first, ..] => first.length,
    };
    let path = Path::new(ends[0].0, ends[0].1, runs);
    Some(Parting {
        pose: path.at(s),
        along: placed.along[node] + s,
    })
}

/// A node that only bends the line, as it is drawn: the line begins at this x.
fn as_drawn(pose: &Pose, start: f64, growth: Growth) -> Node {
    let turned = (pose.heading.tan() * growth.along / growth.across).atan();
    Node {
        x: exact(pose.at.x / growth.along + start),
        y: exact(pose.at.y / growth.across),
        slope: turned.to_degrees(),
        steel: None,
    }
}

/// The sizes between two stations in proportion, as they are drawn.
fn between((from, to): (&Station, &Station), along: f64, across: f64) -> Sizes {
    let t = (along - from.at) / (to.at - from.at);
    let size = |of: fn(&Station) -> f64| (of(from) + (of(to) - of(from)) * t) / across;
    Sizes {
        inside: size(|s| s.rise - s.depth / 2.0),
        back: size(|s| s.rise + s.depth / 2.0),
        width: size(|s| s.width),
        shift: size(|s| s.shift),
    }
}

struct Sizes {
    inside: f64,
    back: f64,
    width: f64,
    shift: f64,
}

impl Sizes {
    fn shaped_as(&self, other: &Steel) -> Steel {
        Steel {
            inside: exact(self.inside),
            back: exact(self.back),
            width: Length::decimal(self.width, Unit::Millimetre),
            shift: exact(self.shift),
            shape: other.shape,
            ease: Ease::Linear,
        }
    }
}

fn exact(mm: f64) -> Offset {
    Offset::exact(mm, Unit::Millimetre)
}
