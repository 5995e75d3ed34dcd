//! The boss, its hole and the rivet in it.

use super::Check;
use crate::finding::{COMMON_PRACTICE, GEOMETRY, Kind, Part};
use crate::proof::strength::{EDGE_SOURCE, LEAST_EDGE};
use crate::units::MM_PER_INCH;

/// Least wall around the hole, in hole diameters (common practice, no source).
const WALL: f64 = 1.0;

/// Most play of the rivet in its hole, mm: 1/32 in (common practice, no source).
const MOST_PLAY: f64 = MM_PER_INCH / 32.0;

/// Less than a rounding step of a size, mm.
const HAIR: f64 = 0.01;

pub(super) fn check(check: &mut Check<'_>) {
    thickness(check);
    joggle(check);
    hole(check);
    rivet(check);
    head(check);
}

fn thickness(check: &mut Check<'_>) {
    let stock = &check.document.bar.stock;
    let boss = check.document.boss.thickness.mm();
    let size = stock.size().mm();
    if boss > size + HAIR {
        let message = format!(
            "the boss is {} thick, the bar only {}",
            check.size(boss),
            check.size(size)
        );
        let hint = "make the boss thinner, or take a thicker bar";
        check
            .report
            .stop(Kind::BossOverBar, Part::Boss)
            .held(boss, size)
            .advises(&["thickness"])
            .say(message, hint, GEOMETRY);
    }
    // A round bar is as much as the square of its area; a flat one is set down through its
    // thickness.
    let half = size.min(check.side()) / 2.0;
    if boss < half - HAIR {
        let message = format!(
            "the boss is {} thick, less than half the bar, {}: it bends easily",
            check.size(boss),
            check.size(half)
        );
        let hint = "set the boss down to between a half and two thirds of the bar";
        check
            .report
            .mend(Kind::BossThin, Part::Boss)
            .held(boss, half)
            .advises(&["thickness"])
            .say(message, hint, COMMON_PRACTICE);
    }
}

fn joggle(check: &mut Check<'_>) {
    let Some(joggle) = check.model.joggle_to_bend() else {
        return;
    };
    let boss = check.document.boss.thickness.mm();
    let half = check.document.bar.stock.size().mm() / 2.0;
    let way = if joggle > 0.0 { "towards" } else { "away from" };
    let message = format!(
        "each half needs a joggle of {}: a boss of {} less half the bar, {}",
        check.size(joggle.abs()),
        check.size(boss),
        check.size(half)
    );
    let hint =
        format!("bend jaw and rein {way} the other half by so much, or make the boss half the bar");
    check
        .report
        .note(Kind::NeedsJoggle, Part::Boss)
        .held(joggle, 0.0)
        .say(message, hint, GEOMETRY);
}

fn hole(check: &mut Check<'_>) {
    let hole = check.document.rivet.hole.mm();
    let edge = check.model.a.body.rim.nearest();
    let wall = edge - hole / 2.0;
    if wall <= 0.0 {
        let message = format!(
            "the hole is {} across, the boss only {}",
            check.size(hole),
            check.size(2.0 * edge)
        );
        let hint = "make the hole smaller or the boss larger";
        check
            .report
            .stop(Kind::HoleBreaksOut, Part::Boss)
            .held(hole, 2.0 * edge)
            .advises(&["across"])
            .say(message, hint, GEOMETRY);
    } else if edge < LEAST_EDGE * hole - HAIR {
        let limit = LEAST_EDGE * hole;
        let message = format!(
            "from the hole's centre to the edge of the boss it is {}, under {LEAST_EDGE} holes, {}",
            check.size(edge),
            check.size(limit)
        );
        let hint = "make the boss larger or the rivet smaller";
        check
            .report
            .mend(Kind::HoleNearEdge, Part::Boss)
            .held(edge, limit)
            .advises(&["across"])
            .say(message, hint, EDGE_SOURCE);
    } else if wall < WALL * hole - HAIR {
        let limit = WALL * hole;
        let message = format!(
            "the wall around the hole is {}, less than the hole, {}",
            check.size(wall),
            check.size(limit)
        );
        let hint = "make the boss larger or the rivet smaller";
        check
            .report
            .mend(Kind::HoleWallThin, Part::Boss)
            .held(wall, limit)
            .advises(&["across"])
            .say(message, hint, COMMON_PRACTICE);
    }
}

fn rivet(check: &mut Check<'_>) {
    let (rivet, hole) = (
        check.document.rivet.diameter.mm(),
        check.document.rivet.hole.mm(),
    );
    let play = hole - rivet;
    if play < -HAIR {
        let message = format!(
            "the rivet is {}, the hole only {}",
            check.size(rivet),
            check.size(hole)
        );
        let hint = "drift the hole to the rivet, or take a thinner rivet";
        check
            .report
            .stop(Kind::RivetOverHole, Part::Rivet)
            .held(rivet, hole)
            .advises(&["hole", "diameter"])
            .say(message, hint, GEOMETRY);
    } else if play > MOST_PLAY + HAIR {
        let message = format!(
            "the rivet has {} play in its hole, over {}: the jaws will wander",
            check.size(play),
            check.size(MOST_PLAY)
        );
        let hint = "make the hole closer to the rivet";
        check
            .report
            .note(Kind::RivetLoose, Part::Rivet)
            .held(play, MOST_PLAY)
            .say(message, hint, COMMON_PRACTICE);
    }
}

fn head(check: &mut Check<'_>) {
    let rivet = &check.document.rivet;
    let (name, shape) = (rivet.head.name(), rivet.head.shape());
    let (wide, deep) = (rivet.head_across_mm(), shape.sinks() * rivet.diameter.mm());
    let across = 2.0 * check.model.a.body.rim.nearest();
    if wide > across + HAIR {
        let message = format!(
            "the {name} head is {} across and stands over the boss of {}",
            check.size(wide),
            check.size(across)
        );
        let hint = "take a thinner rivet or a larger boss";
        check
            .report
            .mend(Kind::HeadOverBoss, Part::Rivet)
            .held(wide, across)
            .advises(&["diameter"])
            .say(message, hint, shape.source);
    }
    let thickness = check.document.boss.thickness.mm();
    if deep > 0.5 * thickness + HAIR {
        let message = format!(
            "the {name} head sinks {} into a boss of {}, over half of it",
            check.size(deep),
            check.size(thickness)
        );
        let hint = "take another head, a thinner rivet or a thicker boss";
        check
            .report
            .mend(Kind::HeadSinksDeep, Part::Rivet)
            .held(deep, 0.5 * thickness)
            .advises(&["head", "diameter"])
            .say(message, hint, COMMON_PRACTICE);
    }
}
