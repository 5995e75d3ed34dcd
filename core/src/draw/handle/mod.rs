//! What of the drawing can be dragged: places on the paper that stand for values of the document.
//!
//! [`handles`] finds them, [`drag`] says what a document becomes when one is moved. A handle knows
//! its [`Spot`] of steel; where that lies is read off the model, so the mark stays on the steel
//! while the value changes. How fast the spot moves with the value is found by asking the model
//! for a slightly different value, so that a new style or a new value needs no code here.

mod found;
mod known;
mod limb;
mod node;
mod reach;
mod set;
mod spot;

pub use limb::{Limb, View};
pub use node::node_handles;
pub use reach::{Hold, Moving, NodeHold};
pub use spot::{Along, Face, OnPaper, Spot};

use kurbo::{Point, Vec2};

pub use crate::asked::Step;
use crate::finding::Part;
use crate::tongs::document::Document;
use crate::tongs::jaw::sketch::Depth;
use crate::tongs::model::Model;

/// What a handle changes.
#[derive(Debug, Clone, PartialEq, Eq, Hash)]
pub enum HandleId {
    /// A value of the document, by its path in [`Document::visit`].
    Field {
        /// Such as `jaw.length`.
        path: String,
    },
    /// A node of a sketched jaw.
    Node {
        /// The jaw's part.
        part: Part,
        /// Which node.
        node: usize,
        /// What of it.
        hold: Hold,
    },
}

/// How a handle answers to movement.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Answer {
    /// Along a line: what its spot moves by, mm in its view, when the value grows by 1 mm (by
    /// 1 degree for an angle). Never shorter than [`SLOWEST`].
    Along(Vec2),
    /// Every way: it goes where the hand goes.
    Free,
}

/// The least that a spot moves with its value, mm per mm: one that moves less would turn a small
/// drag into a wild value.
pub const SLOWEST: f64 = 0.04;

/// A place on the drawing that can be dragged.
#[derive(Debug, Clone, PartialEq)]
pub struct Handle {
    /// What it changes.
    pub id: HandleId,
    /// What it is called, such as `Jaw length`.
    pub label: String,
    /// The part that it shapes, and lights.
    pub part: Part,
    /// The place that it holds.
    pub spot: Spot,
    /// How it answers to movement.
    pub answer: Answer,
}

impl Handle {
    /// The view that it lies in.
    pub fn view(&self) -> View {
        self.spot.view()
    }

    /// Where it lies on the paper, mm. A document that was dragged has its own model: given that
    /// one, the place goes with the steel.
    pub fn place(&self, document: &Document, model: &Model, on: &OnPaper) -> Point {
        on.point(
            self.spot.view(),
            self.spot.half(),
            self.spot.at(document, model),
        )
    }

    /// The way on the paper in which its value grows, of length 1; nothing for one that goes
    /// every way.
    pub fn way(&self, on: &OnPaper) -> Vec2 {
        match self.answer {
            Answer::Along(by) => on
                .turned(self.spot.view(), self.spot.half(), by)
                .normalize(),
            Answer::Free => Vec2::ZERO,
        }
    }
}

/// Every handle of a pair, in the order in which a pair is thought of. Values that nothing on the
/// paper answers to (an allowance, a size that is cut down to the room there is) have none.
pub fn handles(document: &Document, model: &Model) -> Vec<Handle> {
    found::Search::new(document, model).all()
}

/// What a drag makes of a document.
#[derive(Debug, Clone, PartialEq)]
pub struct Dragged {
    /// The document with the new value.
    pub document: Document,
    /// The value as the smith reads it, exact: `2 3/8 in`.
    pub text: String,
}

/// Drags a handle of `start` by `moved` mm on the paper. The value is held inside its limits and
/// set to what a smith measures; a drag of less than half a step changes nothing.
pub fn drag(
    start: &Document,
    handle: &Handle,
    (moved, on): (Vec2, &OnPaper),
    step: Step,
) -> Dragged {
    drag_with(start, handle, (moved, on), (step, Depth::OneSide))
}

/// Drags a handle as [`drag`] does; moving one side of a sketched jaw's steel may move the other.
pub fn drag_with(
    start: &Document,
    handle: &Handle,
    (moved, on): (Vec2, &OnPaper),
    (step, depth): (Step, Depth),
) -> Dragged {
    if let Some(dragged) = node::dragged(start, handle, (moved, on), (step, depth)) {
        return dragged;
    }
    let by = match handle.answer {
        Answer::Along(by) => by,
        Answer::Free => Vec2::ZERO,
    };
    let by = on.turned(handle.spot.view(), handle.spot.half(), by);
    let more = moved.dot(by) / by.hypot2().max(SLOWEST * SLOWEST);
    set::grown(
        start,
        &handle.id,
        if more.is_finite() { more } else { 0.0 },
        step,
    )
}

/// Moves a handle that goes every way by so many steps to the right and up, for the keys; `None`
/// for one that goes one way only.
pub fn nudged(
    start: &Document,
    handle: &Handle,
    (steps, on): (Vec2, &OnPaper),
    step: Step,
) -> Option<Dragged> {
    node::nudged(start, handle, (steps, on), step)
}

/// Sets a handle's value on by so many steps, for the keys.
pub fn stepped(start: &Document, handle: &Handle, steps: f64, step: Step) -> Dragged {
    set::stepped(start, &handle.id, steps, step)
}

/// A handle's value as the smith reads it; empty when the document has no such value.
pub fn value_text(document: &Document, id: &HandleId) -> String {
    match id {
        HandleId::Field { .. } => set::text(document, id),
        HandleId::Node { .. } => node::text(document, id),
    }
}
