//! Whether a drift enters, opens the hole without tearing it, and drops through.

use super::Check;
use crate::finding::{COMMON_PRACTICE, GEOMETRY, Kind, Part};
use crate::tool::mount::Mount;
use crate::tool::style::Drift;
use crate::units::Quantity;

/// The steepest taper of a drift, growth over length: 1 in 6 (common practice, no source: smiths take
/// 1 in 10 to 1 in 16).
const STEEPEST: f64 = 1.0 / 6.0;

/// It is as wide as the hole over so much of the work at the least (common practice, no source).
const LEAST_FULL: f64 = 0.1;

pub(crate) fn check(check: &mut Check<'_>, drift: &Drift) {
    opens(check, drift);
    enters(check, drift);
    full(check, drift);
    reaches(check, drift);
    steep(check, drift);
    drops(check, drift);
}

/// A drift that is no larger than its hole falls through.
fn opens(check: &mut Check<'_>, drift: &Drift) {
    let (full, hole) = (drift.size.mm(), drift.hole.mm());
    if full > hole {
        return;
    }
    let message = format!(
        "its full size is {} and the punched hole {}: it falls through and opens nothing",
        check.size(full),
        check.size(hole)
    );
    check
        .report
        .stop(Kind::DriftOpensNothing, Part::Working)
        .held(full, hole)
        .say(
            message,
            "make its Full size larger than the Punched hole",
            GEOMETRY,
        );
}

/// A drift that only passes its full size leaves no straight hole.
fn full(check: &mut Check<'_>, drift: &Drift) {
    let (full, least) = (drift.full.mm(), LEAST_FULL * drift.through.mm());
    if full >= least {
        return;
    }
    let message = format!(
        "keeps its full size over {} only, under a tenth of the work, {}: it wears to a smaller size at once",
        check.size(full),
        check.size(least)
    );
    check
        .report
        .mend(Kind::DriftShort, Part::Body)
        .held(full, least)
        .say(message, "give it more Full length", COMMON_PRACTICE);
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
            "make the Entering end smaller than the Punched hole",
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
                "make the Entering end smaller or the Lead longer",
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
            check.size(behind.max(0.0)),
            check.size(through)
        );
        check
            .report
            .mend(Kind::DriftShort, Part::Body)
            .held(behind, through)
            .say(
                message,
                "give it more Length: it grows behind its full size",
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
        .say(message, "make its Lead longer", COMMON_PRACTICE);
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
            "make the Diameter or the Side of the body smaller than the Full size",
            GEOMETRY,
        );
}
