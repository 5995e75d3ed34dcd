//! A hardy shank against the smith's own hole: that it drops in, bears on its shoulder and not on its
//! corner, and comes out again.

use super::Check;
use crate::finding::{COMMON_PRACTICE, GEOMETRY, Kind, Part};
use crate::tool::mount::Hardy;
use crate::units::Quantity;

/// Play of a shank under its shoulder, mm: it drops in by itself, and does not rock (common practice,
/// no source: loose, and never a wedge).
const PLAY_MM: (f64, f64) = (0.25, 2.5);
/// Taper over length: with less it jams in scale, with more it rocks and wedges (common practice, no
/// source).
const TAPER: (f64, f64) = (0.01, 0.12);
/// A shoulder rests on so much of the anvil on either side, mm: 1/8 in (common practice, no source).
pub(in crate::tool) const LEAST_SHOULDER_MM: f64 = 3.175;
/// A shank is so many times as long as its hole is wide (common practice, no source).
const LONG: (f64, f64) = (1.0, 3.0);

pub(super) fn check(check: &mut Check<'_>, hardy: &Hardy) {
    play(check, hardy);
    taper(check, hardy);
    corner(check, hardy);
    shoulder(check, hardy);
    length(check, hardy);
}

fn play(check: &mut Check<'_>, hardy: &Hardy) {
    let play = hardy.play.mm();
    if play < PLAY_MM.0 {
        let message = format!(
            "is {} and the hole {}: with {} of play, under {}, it wedges, and a wedged shank breaks the heel of an anvil",
            check.size(hardy.top_mm()),
            check.size(hardy.hole.mm()),
            check.size(play),
            check.size(PLAY_MM.0)
        );
        check
            .report
            .stop(Kind::ShankTight, Part::HardyShank)
            .held(play, PLAY_MM.0)
            .say(
                message,
                "give it more Play, or file it until it drops in by itself and lifts out by hand",
                COMMON_PRACTICE,
            );
    } else if play > PLAY_MM.1 {
        let message = format!(
            "has {} of play in its hole, over {}: it rocks and walks",
            check.size(play),
            check.size(PLAY_MM.1)
        );
        check
            .report
            .mend(Kind::ShankLoose, Part::HardyShank)
            .held(play, PLAY_MM.1)
            .say(
                message,
                "give it less Play: the shank is stouter under the shoulder",
                COMMON_PRACTICE,
            );
    }
}

fn taper(check: &mut Check<'_>, hardy: &Hardy) {
    let taper = hardy.taper.mm() / hardy.shank.mm();
    if (TAPER.0..=TAPER.1).contains(&taper) {
        return;
    }
    let (limit, fault, hint) = if taper < TAPER.0 {
        (TAPER.0, "it jams in the hole", "give it more Shank taper")
    } else {
        (
            TAPER.1,
            "only its top steadies it",
            "give it less Shank taper",
        )
    };
    let message = format!(
        "its shank tapers by {:.1} % of its length, and {:.0} % to {:.0} % are usual: {fault}",
        100.0 * taper,
        100.0 * TAPER.0,
        100.0 * TAPER.1
    );
    check
        .report
        .mend(Kind::ShankWedges, Part::HardyShank)
        .held_as(Quantity::Ratio, taper, limit)
        .say(message, hint, COMMON_PRACTICE);
}

/// A corner of radius r in a hole whose edge is broken by e, with half the play p/2 on either side: the
/// shoulder comes down where r is no more than e + p/2.
fn corner(check: &mut Check<'_>, hardy: &Hardy) {
    let room = hardy.hole_edge.mm() + hardy.play.mm() / 2.0;
    let corner = hardy.corner.mm();
    if corner <= room {
        return;
    }
    let message = format!(
        "stands on the corner under its shoulder: its radius is {}, and the edge of the hole leaves room for {}",
        check.size(corner),
        check.size(room)
    );
    check
        .report
        .mend(Kind::ShankOnCorner, Part::HardyShank)
        .held(corner, room)
        .say(
            message,
            "make the Shank corner smaller, so that the shoulder bears: a corner in a hole is a wedge",
            GEOMETRY,
        );
}

fn shoulder(check: &mut Check<'_>, hardy: &Hardy) {
    let rests = |block: f64| (block - hardy.hole.mm()) / 2.0 - hardy.hole_edge.mm();
    let (along, across) = (rests(hardy.block_long.mm()), rests(hardy.block_thick.mm()));
    let least = (LEAST_SHOULDER_MM - hardy.hole_edge.mm()).max(1.0);
    let rests = along.min(across);
    if rests >= least {
        return;
    }
    // Both ways together, so that either brings it nearer.
    let lacks = (least - along).max(0.0) + (least - across).max(0.0);
    let message = format!(
        "its shoulder reaches {} over the hole on either side, under {}: it is driven into the hole",
        check.size((rests + hardy.hole_edge.mm()).max(0.0)),
        check.size(least + hardy.hole_edge.mm())
    );
    check
        .report
        .stop(Kind::ShoulderSmall, Part::Body)
        .held(least - lacks, least)
        .say(
            message,
            "make Block length and Block thickness larger",
            COMMON_PRACTICE,
        );
}

fn length(check: &mut Check<'_>, hardy: &Hardy) {
    let long = hardy.shank.mm() / hardy.hole.mm();
    if (LONG.0..=LONG.1).contains(&long) {
        return;
    }
    let limit = if long < LONG.0 { LONG.0 } else { LONG.1 };
    let message = format!(
        "its shank is {} long, {long:.1} holes, and {:.0} to {:.0} are usual",
        check.size(hardy.shank.mm()),
        LONG.0,
        LONG.1
    );
    check
        .report
        .mend(Kind::ShankLength, Part::HardyShank)
        .held_as(Quantity::Ratio, long, limit)
        .say(
            message,
            "choose a Shank length that stands, and that is not met by the stand under the anvil",
            COMMON_PRACTICE,
        );
}
