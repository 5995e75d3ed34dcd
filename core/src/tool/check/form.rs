//! Fullers, swages and forks.

use super::Check;
use crate::finding::{COMMON_PRACTICE, Kind, Part};
use crate::tool::style::BendingFork;

/// A sharp nose cuts a cold shut into the work.
pub(crate) fn nose(check: &mut Check<'_>, radius: f64) {
    /// Least radius, mm: 1/8 in (common practice, no source).
    const LEAST: f64 = 3.175;
    if radius >= LEAST {
        return;
    }
    let message = format!(
        "its nose has a radius of {}, under {}: it cuts where it should push",
        check.size(radius),
        check.size(LEAST)
    );
    check
        .report
        .mend(Kind::NoseSharp, Part::Working)
        .held(radius, LEAST)
        .say(message, "make the nose rounder", COMMON_PRACTICE);
}

/// Steel beside and under a groove.
pub(crate) fn groove(check: &mut Check<'_>, (groove, wide, high): (f64, f64, f64)) {
    /// Over the groove's width (common practice, no source).
    const LEAST: f64 = 0.25;
    let least = LEAST * groove;
    let beside = (wide - groove) / 2.0;
    let under = high - groove / 2.0;
    for (thin, place) in [(beside, "beside"), (under, "under")] {
        if thin < least {
            let message = format!(
                "has {} of steel {place} its groove, under {}",
                check.size(thin),
                check.size(least)
            );
            check
                .report
                .mend(Kind::WallThin, Part::Working)
                .held(thin, least)
                .say(
                    message,
                    "make the block wider and higher, or the groove smaller",
                    COMMON_PRACTICE,
                );
        }
    }
}

/// Tines as stout as the work, and a gap that it goes into.
pub(crate) fn fork(check: &mut Check<'_>, fork: &BendingFork) {
    let (work, tine) = (fork.bends.mm(), fork.tine.mm().min(fork.deep.mm()));
    if tine < work {
        let message = format!(
            "its tines are {} thick, and the work {}: they bend first",
            check.size(tine),
            check.size(work)
        );
        check
            .report
            .mend(Kind::ForkWeak, Part::Working)
            .held(tine, work)
            .say(
                message,
                "make the tines as thick as the work at the least",
                COMMON_PRACTICE,
            );
    }
    /// More of the gap than the work, mm: 1/8 in usual, 1/32 in at the least, 3/8 in at the most
    /// (common practice, no source).
    const PLAY: (f64, f64) = (0.8, 9.525);
    let play = fork.gap.mm() - work;
    if (PLAY.0..=PLAY.1).contains(&play) {
        return;
    }
    let (limit, fault) = if play < PLAY.0 {
        (PLAY.0, "hot work does not go in")
    } else {
        (PLAY.1, "it marks the work and bends it over a long way")
    };
    let message = format!(
        "its gap is {} and the work {}: {fault}",
        check.size(fork.gap.mm()),
        check.size(work)
    );
    check
        .report
        .mend(Kind::DoesNotReach, Part::Working)
        .held(play, limit)
        .say(
            message,
            "make the gap 1/8 in wider than the work",
            COMMON_PRACTICE,
        );
}
