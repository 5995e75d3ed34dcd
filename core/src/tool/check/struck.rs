//! The struck end, the hand, and whether the parts have room.

use super::{Check, eye};
use crate::finding::{COMMON_PRACTICE, GEOMETRY, Kind, Part};
use crate::tool::mount::{Hold, Struck};
use crate::tool::steels::{Suits, hardens, suits};
use crate::tool::style::Use;

/// A struck face is at most so much of the body (common practice, no source).
const FACE: f64 = 0.85;
/// The chamfer runs over at least so much of the body (common practice, no source).
const CHAMFER: f64 = 0.12;

/// A palm's breadth, mm (a man's hand of the middle size; judgement).
const PALM_MM: f64 = 90.0;
/// From hot work to a bare hand at the least, mm: 5 in (common practice, no source).
const FROM_HOT_MM: f64 = 127.0;
/// From cold work to a bare hand at the least, mm: an inch over the edge (common practice, no source).
const FROM_COLD_MM: f64 = 25.4;

pub(super) fn check(check: &mut Check<'_>, struck: &Struck) {
    room(check, struck);
    face(check, struck);
    hard(check);
    hand(check, struck);
    if let Hold::Eye { .. } = struck.hold {
        eye::check(check, struck);
    }
}

fn room(check: &mut Check<'_>, struck: &Struck) {
    let over = check.model.over_mm;
    if over > 0.0 {
        let message = format!("its parts are {} longer together than it", check.size(over));
        let hint = format!(
            "make its Length {}, or its tapers and its eye shorter",
            check.size(struck.length.mm() + over)
        );
        check
            .report
            .stop(Kind::PartsOverLength, Part::Body)
            .held(over, 0.0)
            .say(message, hint, GEOMETRY);
    }
    let (Hold::Eye { from_face, .. }, over) = (struck.hold, check.model.eye_over_mm) else {
        return;
    };
    if over > 0.0 {
        let message = format!(
            "reaches {} into the struck end: no length of the tool gives it room",
            check.size(over)
        );
        let hint = format!(
            "make the Eye place {}, or the Eye length less",
            check.size(from_face.mm() + over)
        );
        check
            .report
            .stop(Kind::PartsOverLength, Part::Eye)
            .held(over, 0.0)
            .say(message, hint, GEOMETRY);
    }
}

fn face(check: &mut Check<'_>, struck: &Struck) {
    let body = check.model.base.small();
    let (face, most) = (struck.face.mm(), FACE * body);
    if face > most {
        let message = format!(
            "its face is {} across, and the body {}: its rim is struck over and flies off in chips",
            check.size(face),
            check.size(body)
        );
        check
            .report
            .mend(Kind::StruckEndSharp, Part::StruckEnd)
            .held(face, most)
            .say(
                message,
                "make the Struck face smaller, and grind it back whenever it mushrooms",
                COMMON_PRACTICE,
            );
        return;
    }
    let (chamfer, least) = (struck.chamfer.mm(), CHAMFER * body);
    if chamfer < least {
        let message = format!(
            "is drawn in over {} only, under {}: its rim stays sharp",
            check.size(chamfer),
            check.size(least)
        );
        check
            .report
            .mend(Kind::StruckEndSharp, Part::StruckEnd)
            .held(chamfer, least)
            .say(message, "give it more Chamfer length", COMMON_PRACTICE);
    }
}

/// A struck end is softer than the hammer.
fn hard(check: &mut Check<'_>) {
    let kind = check.tool.style_kind();
    if kind.used() == Use::HotEdge || !hardens(check.tool.bar.steel) {
        return;
    }
    if let Suits::Not(_) = suits(check.tool.bar.steel, kind.used()) {
        return;
    }
    check.report.note(Kind::StruckEndHard, Part::StruckEnd).say(
        "is to stay soft: where it is hard as well, chips fly off it under the hammer",
        "harden the working end alone, draw the struck end soft, and wear eye protection",
        COMMON_PRACTICE,
    );
}

fn hand(check: &mut Check<'_>, struck: &Struck) {
    let hot = match check.tool.style_kind().used() {
        Use::Hot | Use::HotForm | Use::HotEdge => true,
        Use::ColdEdge => false,
    };
    let (reach, least) = match struck.hold {
        Hold::Hand => {
            let free = struck.length.mm() - PALM_MM - struck.chamfer.mm();
            (free, if hot { FROM_HOT_MM } else { FROM_COLD_MM })
        }
        Hold::Rod { reach } => (reach.mm(), FROM_HOT_MM),
        // A handle is as long as a hammer's.
        Hold::Eye { .. } => return,
    };
    if reach >= least {
        return;
    }
    let work = if hot { "hot work" } else { "edge" };
    let message = format!(
        "the hand is {} from the {work}, under {}",
        check.size(reach.max(0.0)),
        check.size(least)
    );
    check
        .report
        .mend(Kind::HandNearHeat, Part::Tool)
        .held(reach, least)
        .say(
            message,
            "give it more Length, or have it Held on a rod with Reach or by a handle",
            COMMON_PRACTICE,
        );
}
