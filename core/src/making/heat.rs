//! What of a piece has to be hot for an operation, what of it goes into the fire, and where it is held
//! meanwhile.

use crate::shape::Piece;

use super::operation::{BY_HAND_MM, Grip};
use super::stage::Stood;
use super::state::{SHOULDER, Task};
use super::step::Step;

/// How much of a rein is heated to finish its end, in its depths there (judgement).
const END_HEAT: f64 = 6.0;

/// What cannot be worked unless it is hot: the zones of a step.
pub(super) fn needs_hot_mm(step: Step, before: &Stood, task: &Task<'_>) -> Option<(f64, f64)> {
    let zones = match step {
        // Of the rein only its beginning.
        Step::SetDownRein => &[SHOULDER],
        step => step.hot(task.document.rivet.made),
    };
    let (from, to) = before.span(zones)?;
    // An end is finished in the heat of its end.
    let end_heat = to - END_HEAT * task.document.rein.end.depth_mm();
    let from = if step == Step::FinishEnd {
        from.max(end_heat)
    } else {
        from
    };
    Some((from, to))
}

/// What has to be hot: the same and a bar's thickness on either side.
pub(super) fn hot_mm(step: Step, before: &Stood, task: &Task<'_>) -> Option<(f64, f64)> {
    let (from, to) = needs_hot_mm(step, before, task)?;
    let more = if step == Step::SetDownRein { 2.0 } else { 1.0 } * task.bar.width;
    let length = before.piece.length_mm();
    Some(((from - more).max(0.0), (to + more).min(length)))
}

/// The circle around all that goes into the fire, from the nearer end of the piece.
pub(super) fn enters_mm(piece: &Piece, hot: Option<(f64, f64)>) -> f64 {
    let Some((from, to)) = hot else {
        return 0.0;
    };
    let length = piece.length_mm();
    if to <= length - from {
        piece.bore_mm((0.0, to))
    } else {
        piece.bore_mm((from, length))
    }
}

/// By hand where enough cold bar stands out of the fire, else with tongs at the colder end; and
/// where, mm along the piece.
pub(super) fn held(piece: &Piece, hot: Option<(f64, f64)>) -> (Grip, f64) {
    let length = piece.length_mm();
    let (from, to) = hot.unwrap_or((0.0, 0.0));
    let (before, behind) = (from, length - to);
    let at = if behind >= before {
        length - 0.3 * behind
    } else {
        0.3 * before
    };
    let cold = behind.max(before);
    if cold >= BY_HAND_MM {
        return (Grip::Hand(cold), at);
    }
    let cross = piece.cross(at);
    let (depth, width) = cross.map_or((0.0, 0.0), |own| (own.depth_mm, own.width_mm));
    (Grip::Tongs(depth, width), at)
}
