//! Fullers, swages and forks.

use super::Check;
use super::punch::FLOW_MPA;
use crate::finding::{COMMON_PRACTICE, Kind, Part};
use crate::steel::strength;
use crate::tool::style::BendingFork;
use crate::units::Quantity;

/// Where the bending of bar and tines is from.
const BENDING_SOURCE: &str = "plastic moment of a square, elastic moment of a rectangle";

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
        .say(message, "make the Nose radius larger", COMMON_PRACTICE);
}

/// Steel around a groove, by the place where it is.
pub(crate) fn groove(check: &mut Check<'_>, groove: f64, around: [(f64, &str); 2]) {
    /// Over the groove's width (common practice, no source).
    const LEAST: f64 = 0.25;
    let least = LEAST * groove;
    for (thin, place) in around {
        if thin < least {
            let message = format!(
                "has {} of steel {place} its groove, under {}",
                check.size(thin.max(0.0)),
                check.size(least)
            );
            check
                .report
                .mend(Kind::WallThin, Part::Working)
                .held(thin, least)
                .say(
                    message,
                    "make its Top wider and its Height larger, or the Groove smaller",
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
        let lacks = |size: f64| (work - size).max(0.0);
        check
            .report
            .mend(Kind::ForkWeak, Part::Working)
            // Both ways together, so that either brings it nearer.
            .held(work - lacks(fork.tine.mm()) - lacks(fork.deep.mm()), work)
            .say(
                message,
                "make Tine thickness and Tine depth those of the work at the least",
                COMMON_PRACTICE,
            );
    }
    root(check, fork);
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
            "make the Gap 1/8 in wider than the work",
            COMMON_PRACTICE,
        );
}

/// Bar of thickness b that yields at σ wants σ b³ / 4 to be bent through. Two tines hold it by a couple whose
/// arm is their depth d; each bears it at the height of the tine less half the work over its root, where its
/// section of thickness t gives way elastically at `σ_y d t² / 6`.
fn root(check: &mut Check<'_>, fork: &BendingFork) {
    let (work, deep, tine) = (fork.bends.mm(), fork.deep.mm(), fork.tine.mm());
    let lever = fork.high.mm() - work / 2.0;
    let force = FLOW_MPA * work.powi(3) / 4.0 / deep;
    let stress = force * lever / (deep * tine * tine / 6.0);
    let bears = strength(check.tool.bar.steel).yield_mpa;
    if stress <= bears {
        return;
    }
    let show = check.report.show();
    let message = format!(
        "its tines stand {} high: bending {} of hot bar presses their roots with {}, and {} bears {}",
        show.text(fork.high.mm()),
        show.text(work),
        show.stress(stress),
        check.tool.bar.steel.name(),
        show.stress(bears)
    );
    check
        .report
        .mend(Kind::ForkBends, Part::Working)
        .held_as(Quantity::Stress, stress, bears)
        .say(
            message,
            "make the Tine height less, or the Tine thickness larger",
            BENDING_SOURCE,
        );
}
