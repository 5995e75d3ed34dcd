//! How far a sketch may grow: no number in a file, and none that is typed, makes a drawing that no
//! forge and no screen could hold.

use super::edit::{FARTHEST, WIDEST};
use super::{Node, Sketch};
use crate::asked::Range;
use crate::asked::range::{RUN, STEEL};
use crate::units::Length;

/// A sketch is used at most so many times larger or smaller than it was drawn (judgement: from
/// work of 1/8 in to work of 4 in).
const MOST_TIMES: f64 = 32.0;

/// The line of a jaw is drawn no longer than this, mm: twice as long as a jaw may be. A longer one
/// winds about itself or swings out over tens of metres, and takes as much longer to draw.
pub(super) const LONGEST_LINE: f64 = 2.0 * RUN.most;

/// A growth that can be drawn.
pub(super) fn held_back(times: f64) -> f64 {
    times.clamp(1.0 / MOST_TIMES, MOST_TIMES)
}

/// A place along the tongs in mm that can be drawn.
pub(super) fn within_reach(mm: f64) -> f64 {
    mm.clamp(-FARTHEST, FARTHEST)
}

/// A place or a size across them in mm that can be drawn.
pub(super) fn within_width(mm: f64) -> f64 {
    mm.clamp(-WIDEST, WIDEST)
}

/// The sizes of work that a sketch can be used for: it grows no more than it may, and nothing in
/// it reaches farther than a jaw can be wide.
pub(super) fn fits_range(drawn_for: &Length, nodes: &[Node]) -> Range {
    let steel = |node: &Node| {
        let sizes = |it: super::Steel| [it.inside.mm(), it.back.mm(), it.width.mm(), it.shift.mm()];
        node.steel.map_or([0.0; 4], sizes)
    };
    let across = nodes
        .iter()
        .flat_map(|node| steel(node).into_iter().chain([node.y.mm()]));
    let farthest = across.map(f64::abs).fold(f64::MIN_POSITIVE, f64::max);
    grown(drawn_for.mm(), WIDEST / farthest, STEEL)
}

/// The lengths that a jaw with a sketch can have, mm.
pub(crate) fn length_range(sketch: &Sketch) -> Range {
    let drawn = sketch.drawn_length();
    let places = sketch.nodes.iter().map(|node| node.x.mm().abs());
    grown(drawn, FARTHEST / places.fold(drawn, f64::max), RUN)
}

/// What a size that was drawn may become where so many times is as far as there is room: in whole
/// hundredths of a millimetre, inside a range of its own.
fn grown(drawn: f64, room: f64, within: Range) -> Range {
    let hundredths = |mm: f64| mm * 100.0;
    let most = MOST_TIMES.min(room.max(1.0));
    let least = hundredths(drawn / MOST_TIMES).ceil() / 100.0;
    let most = hundredths(drawn * most).floor() / 100.0;
    let least = within.least.max(least.min(drawn));
    Range {
        least,
        // What was drawn outside its limits leaves no room.
        most: within.most.min(most.max(drawn)).max(least),
    }
}
