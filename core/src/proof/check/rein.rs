//! The rein: its line, its sections, its hand and its end.

use super::Check;
use crate::asked::{Edge, PlainSection};
use crate::finding::{COMMON_PRACTICE, GEOMETRY, Kind, Part};
use crate::tongs::document::ReinLine;
use crate::tongs::model::Half;
use crate::tongs::{NO_HAND_BEFORE, finish_length};

/// How far the drawn gap or bow may be from what was asked before it is said, mm.
const NEAR: f64 = 0.5;

pub(super) fn check(check: &mut Check<'_>) {
    hand(check);
    fingers(check);
    parallel(check);
    bend(check);
    line(check);
    taper(check);
    zone(check);
    edges(check);
}

fn hand(check: &mut Check<'_>) {
    let (hand, length) = (
        check.document.rein.hand.mm(),
        check.document.rein.length.mm(),
    );
    if hand >= length {
        let message = format!(
            "the hand is {} from the end of a rein that is {} long",
            check.size(hand),
            check.size(length)
        );
        let hint = "bring the hand nearer to the end, or lengthen the rein";
        check
            .report
            .stop(Kind::HandPastRein, Part::Rein)
            .held(hand, length)
            .advises(&["hand", "length"])
            .say(message, hint, GEOMETRY);
    } else if length - hand < NO_HAND_BEFORE * length {
        let limit = (1.0 - NO_HAND_BEFORE) * length;
        let message = format!(
            "the hand is {} from the end of the rein, over {}: it would be at the joint",
            check.size(hand),
            check.size(limit)
        );
        let hint = "bring the hand nearer to the end, or lengthen the rein";
        check
            .report
            .mend(Kind::HandAtJoint, Part::Rein)
            .held(hand, limit)
            .advises(&["hand", "length"])
            .say(message, hint, COMMON_PRACTICE);
    }
}

/// Reins that stand closer than this pinch the fingers, mm (common practice, no source: a finger's
/// thickness).
const FINGER: f64 = 12.0;

fn fingers(check: &mut Check<'_>) {
    let gap = check.document.rein.gap.mm();
    if gap >= FINGER {
        return;
    }
    let message = format!(
        "the hand gap is {}, under {}: the reins pinch the fingers and cannot be squeezed",
        check.size(gap),
        check.size(FINGER)
    );
    let hint = "open the hand gap";
    check
        .report
        .mend(Kind::FingersPinched, Part::Rein)
        .held(gap, FINGER)
        .advises(&["gap"])
        .say(message, hint, COMMON_PRACTICE);
}

fn parallel(check: &mut Check<'_>) {
    let (parallel, length) = (
        check.document.rein.parallel.mm(),
        check.document.rein.length.mm(),
    );
    if parallel <= length {
        return;
    }
    let message = format!(
        "the parallel end is {} long, the whole rein only {}",
        check.size(parallel),
        check.size(length)
    );
    let hint = "shorten the parallel end, or lengthen the rein";
    check
        .report
        .stop(Kind::ParallelOverRein, Part::Rein)
        .held(parallel, length)
        .advises(&["parallel", "length"])
        .say(message, hint, GEOMETRY);
}

fn bend(check: &mut Check<'_>) {
    let Some((spare, at)) = check.model.a.rein.tightest_bend() else {
        return;
    };
    let depth = check.model.a.rein.section(at).depth;
    if spare < 0.0 {
        let message = format!(
            "the rein is {} deep and bends about a radius of {}: its inside would fold",
            check.size(depth),
            check.size(spare + depth / 2.0)
        );
        let hint = "give the bend more length, or make the rein shallower there";
        check
            .report
            .stop(Kind::ReinFolds, Part::Rein)
            .held(spare, 0.0)
            .advises(&["bend", "depth"])
            .say(message, hint, GEOMETRY);
    } else if spare < depth / 2.0 {
        let message = format!(
            "the rein bends to an inside radius of {}, under half its depth, {}",
            check.size(spare),
            check.size(depth / 2.0)
        );
        let hint = "give the bend more length";
        check
            .report
            .mend(Kind::ReinBendTight, Part::Rein)
            .held(spare, depth / 2.0)
            .advises(&["bend"])
            .say(message, hint, COMMON_PRACTICE);
    }
}

/// How far the rein's middle stands outside that at the hand, at the most, mm.
fn bow(half: &Half) -> f64 {
    const PLACES: u32 = 100;
    let out = |s: f64| -half.rein.middle(s).y;
    let places = (0..=PLACES).map(|i| half.hand_at * f64::from(i) / f64::from(PLACES));
    places.map(out).fold(f64::MIN, f64::max) - out(half.hand_at)
}

fn line(check: &mut Check<'_>) {
    let (asked, got) = (check.document.rein.gap.mm(), check.model.a.hand_gap());
    if (got - asked).abs() > NEAR {
        let message = format!(
            "the reins stand {} apart at the hand, {} was asked: this rein cannot reach it",
            check.size(got),
            check.size(asked)
        );
        let hint = "give the bend more length, change the hand gap, or lengthen the rein";
        check
            .report
            .mend(Kind::HandGapMissed, Part::Rein)
            .held(got, asked)
            .advises(&["bend", "gap", "length"])
            .say(message, hint, GEOMETRY);
    }
    match check.document.rein.line {
        ReinLine::Straight => {}
        ReinLine::Parallel { bend } => bend_length(check, bend.mm()),
        ReinLine::Bowed { bow } => swell(check, bow.mm()),
    }
}

/// How far along the tongs the bend behind the boss takes as drawn, mm; `None` if there is none.
fn bend_along(half: &Half) -> Option<f64> {
    let path = &half.rein.path;
    let bent = path.runs().take_while(|run| run.curvature != 0.0);
    let length: f64 = bent.map(|run| run.length).sum();
    (length > 0.0).then(|| path.at(0.0).at.x - path.at(length).at.x)
}

fn bend_length(check: &mut Check<'_>, asked: f64) {
    let Some(got) = bend_along(&check.model.a) else {
        return;
    };
    if (got - asked).abs() <= NEAR {
        return;
    }
    let (how, hint) = if got > asked {
        ("needs", "give the bend so much, or change the hand gap")
    } else {
        (
            "has room for",
            "shorten the bend, or bring the hand nearer to the rein's end",
        )
    };
    let message = format!(
        "the bend {how} {} along the tongs to reach the hand gap, {} was asked",
        check.size(got),
        check.size(asked)
    );
    check
        .report
        .note(Kind::BendLengthMissed, Part::Rein)
        .held(got, asked)
        .say(message, hint, GEOMETRY);
}

fn swell(check: &mut Check<'_>, asked: f64) {
    let got = bow(&check.model.a);
    if (got - asked).abs() <= NEAR {
        return;
    }
    let message = format!(
        "the rein bows {}, {} was asked: it cannot swell so in its length",
        check.size(got),
        check.size(asked)
    );
    let hint = "ask for another bow, or lengthen the rein";
    check
        .report
        .mend(Kind::BowMissed, Part::Rein)
        .held(got, asked)
        .say(message, hint, GEOMETRY);
}

fn taper(check: &mut Check<'_>) {
    let rein = &check.document.rein;
    let (start, end) = (&rein.start, &rein.end);
    let pairs = [
        ("deeper", start.depth_mm(), end.depth_mm()),
        ("wider", start.width_mm(), end.width_mm()),
    ];
    for (how, start, end) in pairs {
        if end <= start + 1e-6 {
            continue;
        }
        let message = format!(
            "the rein is {how} at its end, {}, than at the shoulder, {}",
            check.size(end),
            check.size(start)
        );
        let hint = "a rein that tapers towards the hand is stronger for its weight";
        check
            .report
            .note(Kind::ReinTapersBackwards, Part::Rein)
            .held(end, start)
            .say(message, hint, COMMON_PRACTICE);
    }
}

fn zone(check: &mut Check<'_>) {
    let rein = &check.document.rein;
    let Some(zone) = &rein.hand_zone else {
        return;
    };
    let (length, half) = (rein.length.mm(), zone.length.mm() / 2.0);
    let behind = rein.hand.mm() - half - finish_length(rein);
    let before = (1.0 - NO_HAND_BEFORE) * length - rein.hand.mm() - half;
    let (room, where_) = if behind < before {
        (behind, "past the rein's end")
    } else {
        (before, "into the joint")
    };
    if room >= 0.0 {
        return;
    }
    let message = format!(
        "a grip of {}, {} from the end, runs {} {where_}",
        check.size(2.0 * half),
        check.size(rein.hand.mm()),
        check.size(-room)
    );
    let hint = "shorten the grip, or move the hand";
    check
        .report
        .mend(Kind::HandZoneRunsOut, Part::Rein)
        .held(room, 0.0)
        .say(message, hint, GEOMETRY);
}

fn edges(check: &mut Check<'_>) {
    let rein = &check.document.rein;
    let zone = rein.hand_zone.as_ref().map(|zone| &zone.section);
    for section in [Some(&rein.start), Some(&rein.end), zone]
        .into_iter()
        .flatten()
    {
        let edge = match *section {
            PlainSection::Square { edge, .. } | PlainSection::Rectangle { edge, .. } => edge,
            PlainSection::Round { .. }
            | PlainSection::Octagon { .. }
            | PlainSection::Hexagon { .. }
            | PlainSection::Oval { .. }
            | PlainSection::HalfRound { .. } => Edge::Sharp,
        };
        let most = section.depth_mm().min(section.width_mm()) / 2.0;
        if edge.size().mm() <= most + 1e-9 {
            continue;
        }
        let message = format!(
            "an edge of {} is more than half a rein that is {} at its least",
            check.size(edge.size().mm()),
            check.size(2.0 * most)
        );
        let hint = "break the edges less";
        check
            .report
            .note(Kind::EdgeOverRein, Part::Rein)
            .held(edge.size().mm(), most)
            .say(message, hint, GEOMETRY);
    }
}
