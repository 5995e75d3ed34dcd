//! The sizes of work that a pair holds, and what ends them.

use super::contact::{Jaws, NoContact};
use super::limit::Limit;
use super::travel::Travel;
use super::{OUT_OF_PARALLEL, WIDEST_SPAN_MM};
use crate::asked::Range;
use crate::number::roots::{last_true, rising_root_between};
use crate::steel::PESSIMISTIC_FRICTION;

/// One end of the range.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct RangeEnd {
    /// The size the work is called by, mm.
    pub size_mm: f64,
    /// What ends the range there.
    pub limit: Limit,
}

/// The sizes of work of one shape that a pair holds.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct WorkRange {
    /// The least.
    pub least: RangeEnd,
    /// The most.
    pub most: RangeEnd,
}

impl WorkRange {
    /// Whether a size is held, mm.
    pub fn holds(&self, size_mm: f64) -> bool {
        self.end_before(size_mm).is_none()
    }

    /// The end that lies between the range and a size outside of it, mm.
    pub fn end_before(&self, size_mm: f64) -> Option<RangeEnd> {
        if size_mm < self.least.size_mm {
            Some(self.least)
        } else if size_mm > self.most.size_mm {
            Some(self.most)
        } else {
            None
        }
    }
}

/// How finely sizes are found, mm.
const FINE: f64 = 1e-3;

/// Finds the range around or near the nominal size.
///
/// Every limit but the groove's is a half-angle; the sizes follow from the angles, since thicker
/// work always opens the pair farther.
pub(super) fn range(
    jaws: &Jaws<'_>,
    travel: Option<&Travel>,
    (nominal_mm, give_mm): (f64, f64),
) -> Result<WorkRange, NoContact> {
    let travel = travel.ok_or(NoContact::NoTravel)?;
    let (shut, opened) = angles(jaws, travel, give_mm);
    let nothing = |thin: Limit, thick: Limit| NoContact::NoSize { thin, thick };
    if shut.0 > opened.0 {
        return Err(nothing(shut.1, opened.1));
    }
    let least = size_at(jaws, shut);
    let most = size_at(jaws, opened);
    let (least, most) = grooves(jaws, [(least, shut.0), (most, opened.0)], nominal_mm);
    if least.size_mm < most.size_mm {
        Ok(WorkRange { least, most })
    } else {
        Err(nothing(least.limit, most.limit))
    }
}

/// The half-angles between which the pair is of use, and what ends it there. Shut, it is of no use
/// once an ordinary squeeze, which springs the reins by `give_mm` together, brings them to touch:
/// from there on the hand squeezes the reins and no longer the work.
fn angles(jaws: &Jaws<'_>, travel: &Travel, give_mm: f64) -> ((f64, Limit), (f64, Limit)) {
    let (parallel, askew) = if jaws.crosswise() {
        (PESSIMISTIC_FRICTION.atan(), Limit::SlipsOut)
    } else {
        ((OUT_OF_PARALLEL / 2.0).asin(), Limit::OutOfParallel)
    };
    let mut shut = (-parallel, askew);
    if travel.shut.half_angle > shut.0 {
        shut = (travel.shut.half_angle, Limit::of(travel.shut.clash));
    }
    let closes = jaws.half_angle_of_gap(give_mm);
    if closes > shut.0 {
        shut = (closes, Limit::ReinsClose);
    }
    let mut opened = (parallel, askew);
    let span = jaws.half_angle_of_span(WIDEST_SPAN_MM);
    // A pair that is too wide for the hand on its nominal work is told so by a finding.
    if span < opened.0 && span > 0.0 {
        opened = (span, Limit::HandSpan);
    }
    if travel.open.half_angle < opened.0 {
        opened = (travel.open.half_angle, Limit::of(travel.open.clash));
    }
    (shut, opened)
}

/// The size that opens the pair so far.
fn size_at(jaws: &Jaws<'_>, (half_angle, limit): (f64, Limit)) -> RangeEnd {
    let sizes = (Range::STEEL.least, Range::STEEL.most);
    let more = |size: f64| {
        jaws.touch_size(size, half_angle)
            .map_or(f64::MAX, |rest| rest.half_angle - half_angle)
    };
    let at = |size: f64| (size, more(size));
    // Most pairs are used near their own size: a narrow bracket is tried first.
    let near = (0.5 * jaws.size_mm, (1.6 * jaws.size_mm).min(sizes.1));
    let low = (near.0 > sizes.0).then(|| at(near.0));
    let low = low.filter(|low| low.1 < 0.0).unwrap_or_else(|| at(sizes.0));
    let high = Some(at(near.1)).filter(|high| high.1 > 0.0);
    let high = high.unwrap_or_else(|| at(sizes.1));
    let size_mm = rising_root_between((low, high), FINE, more);
    let ended = size_mm <= sizes.0 || size_mm >= sizes.1;
    let limit = if ended { Limit::Document } else { limit };
    RangeEnd { size_mm, limit }
}

/// Draws the ends in to where the work goes into the grooves, if the nominal work does.
fn grooves(
    jaws: &Jaws<'_>,
    [(mut least, shut), (mut most, opened)]: [(RangeEnd, f64); 2],
    nominal_mm: f64,
) -> (RangeEnd, RangeEnd) {
    // Where the range is nothing the two ends may have passed each other by a hair.
    let inside = nominal_mm.min(most.size_mm).max(least.size_mm);
    if jaws.rides(inside, 0.0) {
        return (least, most);
    }
    for (end, half_angle) in [(&mut least, shut), (&mut most, opened)] {
        if jaws.rides(end.size_mm, half_angle) {
            let near = |size: f64| half_angle * (size - inside) / (end.size_mm - inside);
            let goes_in = |size: f64| !jaws.rides(size, near(size));
            let size_mm = last_true((inside, end.size_mm), FINE, goes_in);
            *end = RangeEnd {
                size_mm,
                limit: Limit::GrooveEdges,
            };
        }
    }
    (least, most)
}
