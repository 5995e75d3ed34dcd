//! Whether a drift enters, opens the hole without tearing it, and drops through.

use super::Check;
use crate::finding::{COMMON_PRACTICE, GEOMETRY, Kind, Part};
use crate::tool::mount::Mount;
use crate::tool::style::Drift;
use crate::units::Quantity;

/// The steepest taper of a drift, growth over length: 1 in 6 (common practice, no source: smiths take
/// 1 in 10 to 1 in 16).
const STEEPEST: f64 = 1.0 / 6.0;

pub(crate) fn check(check: &mut Check<'_>, drift: &Drift) {
    enters(check, drift);
    reaches(check, drift);
    steep(check, drift);
    drops(check, drift);
}

fn enters(check: &mut Check<'_>, drift: &Drift) {
    let (end, hole) = (drift.enters.mm(), drift.hole.mm());
    if end < hole {
        return;
    }
    let message = format!(
        "its end is {} and the punched hole {}: it does not enter",
        check.size(end),
        check.size(hole)
    );
    check
        .report
        .stop(Kind::DriftDoesNotEnter, Part::Working)
        .held(end, hole)
        .say(
            message,
            "make the end smaller than the hole that the punch leaves",
            GEOMETRY,
        );
}

/// Before it is struck at all its end must stand well into the hole, and its full size pass the work.
fn reaches(check: &mut Check<'_>, drift: &Drift) {
    let through = drift.through.mm();
    let grows = (drift.size.mm() - drift.enters.mm()).max(f64::MIN_POSITIVE);
    let stands = drift.lead.mm() * (drift.hole.mm() - drift.enters.mm()) / grows;
    let least = 0.25 * through;
    if stands < least && stands >= 0.0 {
        let message = format!(
            "drops {} into the punched hole before it binds, under a quarter of the work, {}: it leans",
            check.size(stands),
            check.size(least)
        );
        check
            .report
            .mend(Kind::DriftShort, Part::Working)
            .held(stands, least)
            .say(
                message,
                "make its end smaller or its lead longer",
                COMMON_PRACTICE,
            );
    }
    let Mount::Struck(struck) = &check.tool.shape.mount else {
        return;
    };
    // It is driven until its full size is out of the work below, the struck end still above.
    let behind = struck.length.mm() - drift.lead.mm() - drift.full.mm();
    if behind < through {
        let message = format!(
            "behind its full size it is {} long, and the work is {} thick: the hammer reaches the work first",
            check.size(behind),
            check.size(through)
        );
        check
            .report
            .mend(Kind::DriftShort, Part::Body)
            .held(behind, through)
            .say(
                message,
                "make the drift longer behind its full size",
                GEOMETRY,
            );
    }
}

fn steep(check: &mut Check<'_>, drift: &Drift) {
    let taper = (drift.size.mm() - drift.enters.mm()) / drift.lead.mm();
    if taper <= STEEPEST {
        return;
    }
    let message = format!(
        "opens the hole by 1 in {:.1}, steeper than 1 in {:.0}: it tears the rim",
        1.0 / taper,
        1.0 / STEEPEST
    );
    check
        .report
        .mend(Kind::DriftSteep, Part::Working)
        .held_as(Quantity::Ratio, taper, STEEPEST)
        .say(message, "make its lead longer", COMMON_PRACTICE);
}

/// All that follows its full size must be smaller, so that it drops through and is not driven back.
fn drops(check: &mut Check<'_>, drift: &Drift) {
    let full = drift.cut(drift.size.mm());
    let behind = check.model.base;
    let over = (behind.depth - full.depth).max(behind.width - full.width);
    if over < 0.0 {
        return;
    }
    let message = format!(
        "its body is {} by {}, not smaller than the hole of {} by {}: it does not drop through",
        check.size(behind.depth),
        check.size(behind.width),
        check.size(full.depth),
        check.size(full.width)
    );
    check
        .report
        .mend(Kind::DriftStays, Part::Body)
        .held(behind.large(), full.small())
        .say(
            message,
            "draw the body down behind the full size, or take thinner bar and upset it",
            GEOMETRY,
        );
}
