//! The jaws and how the work lies in them.

mod crossing;

use super::Check;
use crate::finding::{COMMON_PRACTICE, GEOMETRY, Kind, Part};
use crate::proof::fit::{WIDEST_WORK, face_mm, is_folded};
use crate::shape::sweep::{Edge, Sweep};
use crate::tongs::jaw::{Jaw, JawStyle, Remark};
use crate::tongs::least_heel;
use crate::tongs::model::{Half, Lies};
use crate::tongs::seat::{Bears, Seat};

pub(super) fn check(check: &mut Check<'_>) {
    meeting(check);
    crossing(check);
    let seats = check.model.seats.clone();
    for (index, (part, jaw, half)) in check.jaws().into_iter().enumerate() {
        heel(check, part, jaw);
        bearing(check, part, (seats[index].bears, half));
        // A lug beyond the grip holds too.
        grip(check, part, (half.jaw.length() - half.grip.0, half));
        tip(check, part, jaw);
        remarks(check, part, jaw);
        if !matches!(jaw.style, JawStyle::Sketch(_)) {
            bend(check, part, half);
        }
        outline(check, part, half);
    }
    common(check);
    alongside(check);
}

/// Two jaws of which one is much shorter grip over what they have in common only.
fn common(check: &mut Check<'_>) {
    let (document, model) = (check.document, check.model);
    if document.second_jaw.is_none() || model.work.lies == Lies::Crosswise {
        return;
    }
    let own = [&model.a, &model.b].map(|half| half.grip.1 - half.grip.0);
    let (both, work) = (model.work.to - model.work.from, document.work.size().mm());
    // A grip that is short by itself is told at its own jaw.
    if both >= work.min(own[0]).min(own[1]) - 1e-6 {
        return;
    }
    let hint = "let both jaws begin and end at the same places";
    if both <= 0.0 {
        let message = format!(
            "the jaws do not overlap: {} lie between the tip of one and the grip of the other",
            check.size(-both)
        );
        let report = check.report.stop(Kind::GripShort, Part::SecondJaw);
        report.held(both, work).say(message, hint, GEOMETRY);
        return;
    }
    let message = format!(
        "the jaws overlap by {} only and grip the work there alone, which is {} thick",
        check.size(both),
        check.size(work)
    );
    let report = check.report.mend(Kind::GripShort, Part::SecondJaw);
    report.held(both, work).say(message, hint, COMMON_PRACTICE);
}

/// A jaw that bends tighter than its steel is deep on the inside of the bend; a sketch says at
/// which node.
fn bend(check: &mut Check<'_>, part: Part, half: &Half) {
    let Some((spare, at)) = half.jaw.tightest_bend() else {
        return;
    };
    if spare >= 0.0 {
        return;
    }
    let place = half.jaw.path.at(at).at.x;
    let message = format!(
        "the {part} bends {} tighter than it is deep, {} from the rivet: its steel would fold",
        check.size(-spare),
        check.size(place)
    );
    let hint = "give the bend more room, or make the jaw shallower there";
    check
        .report
        .mend(Kind::JawFolds, part)
        .held(spare, 0.0)
        .say(message, hint, GEOMETRY);
}

/// An outline that crosses itself.
fn outline(check: &mut Check<'_>, part: Part, half: &Half) {
    let Some(at) = crossing::of(&half.jaw) else {
        return;
    };
    let message = format!(
        "the outline of the {part} crosses itself {} from the rivet",
        check.size(at.x)
    );
    let hint = "give the jaw more length there, or make it shallower";
    check
        .report
        .mend(Kind::JawOutlineCrosses, part)
        .say(message, hint, GEOMETRY);
}

/// Work that lies beside the tongs: the halves differ, and it must clear rivet and boss.
fn alongside(check: &mut Check<'_>) {
    let (model, document) = (check.model, check.document);
    if model.work.lies != Lies::Alongside {
        return;
    }
    let message = format!(
        "the halves are no longer the same piece: one bit steps {} to the left and the other to the right",
        check.size(model.work.beside.abs())
    );
    let hint = "forge both from the same drawing and bend the second one the other way";
    check
        .report
        .note(Kind::HalvesDiffer, Part::Jaw)
        .say(message, hint, GEOMETRY);
    let room = model.work.beside.abs() - model.work.width / 2.0;
    let limit = document.boss.thickness.mm() + document.rivet.head_height_mm();
    if room >= limit {
        return;
    }
    let message = format!(
        "the work lies {} from the middle of the tongs, boss and rivet head reach {}: it does not pass them",
        check.size(room),
        check.size(limit)
    );
    let hint = "step the bit farther aside, or use a flatter rivet head";
    check
        .report
        .mend(Kind::WorkStrikesBoss, Part::Jaw)
        .held(room, limit)
        .say(message, hint, GEOMETRY);
}

/// A tip that cannot be broken as far as was asked.
fn tip(check: &mut Check<'_>, part: Part, jaw: &Jaw) {
    let (asked, room) = (jaw.tip.mm(), jaw.tip_room());
    if asked <= room + Remark::NEAR {
        return;
    }
    /// Less than this shows as nothing, mm.
    const LEAST: f64 = 0.2;
    let asked_text = check.size(asked);
    let message = if room < LEAST {
        format!("there is no room for a tip radius at the {part}, {asked_text} was asked")
    } else {
        let room = check.size(room);
        format!(
            "there is room for a tip radius of {room} only at the {part}, {asked_text} was asked"
        )
    };
    let hint = "leave the tip or the wall thicker, or ask for a smaller radius";
    check
        .report
        .note(Kind::TipRadiusOverRoom, part)
        .held(asked, room)
        .say(message, hint, GEOMETRY);
}

/// What the style says of its own sizes.
fn remarks(check: &mut Check<'_>, part: Part, jaw: &Jaw) {
    for remark in jaw.remarks(&check.document.work) {
        let message = format!("the {part} {}", remark.text(check.report.show()));
        check
            .report
            .at(remark.severity, remark.kind, part)
            .held_if(remark.held)
            .say(message, remark.hint, remark.source);
    }
}

/// Jaws that meet before they hold.
fn meeting(check: &mut Check<'_>) {
    let gap = check.model.jaw_gap;
    if gap > 0.0 {
        return;
    }
    let message = format!(
        "the jaws meet before they hold: {} work falls through, the faces would pass each other by {}",
        check.size(check.document.work.size().mm()),
        check.size(-gap)
    );
    let hint = "make the groove smaller, or hold larger work";
    check
        .report
        .stop(Kind::JawsMeet, Part::Jaw)
        .held(gap, 0.0)
        .say(message, hint, GEOMETRY);
}

/// Jaws whose insides pass each other somewhere although they hold the work.
fn crossing(check: &mut Check<'_>) {
    const PARTS: u32 = 48;
    /// Insides may touch, mm.
    const TOUCH: f64 = 0.05;
    let (a, b) = (&check.model.a.jaw, &check.model.b.jaw);
    let inside = |jaw: &Sweep, x: f64| jaw.edge_point(Edge::Inner, jaw.along_at_x(x)).y;
    let places = (0..=PARTS).map(|i| {
        let p = a.edge_point(Edge::Inner, a.length() * f64::from(i) / f64::from(PARTS));
        (p.y + inside(b, p.x), p.x)
    });
    let Some((gap, x)) = places.min_by(|p, q| p.0.total_cmp(&q.0)) else {
        return;
    };
    if gap >= -TOUCH || check.model.jaw_gap <= 0.0 {
        return;
    }
    let message = format!(
        "the jaws pass through each other by {}, {} from the rivet",
        check.size(-gap),
        check.size(x)
    );
    let hint = "move their insides out there";
    check
        .report
        .stop(Kind::JawsCross, Part::Jaw)
        .held(gap, 0.0)
        .say(message, hint, GEOMETRY);
}

/// A jaw that begins inside the sweep of the other boss.
fn heel(check: &mut Check<'_>, part: Part, jaw: &Jaw) {
    let rim = &check.model.a.body.rim;
    let (heel, reach) = (jaw.heel.mm(), rim.reach());
    let limit = least_heel(rim, &jaw.plain_form());
    if heel >= limit - 1e-9 {
        return;
    }
    let message = format!(
        "the {part} begins {} from the rivet, within {} of it: it would strike the other boss, which reaches {}",
        check.size(heel),
        check.size(limit),
        check.size(reach)
    );
    let hint = "set the heel farther out, or make the boss smaller";
    check
        .report
        .stop(Kind::HeelStrikesBoss, part)
        .held(heel, limit)
        .advises(&["heel"])
        .say(message, hint, GEOMETRY);
}

fn bearing(check: &mut Check<'_>, part: Part, (bears, half): (Bears, &Half)) {
    let rides = |seat: &Seat| seat.bears == Bears::Edges;
    let (kind, what, hint) = match bears {
        // Where no jaw keeps the work, the fit says that it can fly out.
        Bears::Edges if check.model.seats.iter().all(rides) => return,
        Bears::Edges => (
            Kind::WorkOnEdges,
            "rides on the edges of the groove",
            "make the groove wider",
        ),
        Bears::Bottom if is_folded(half) => (
            Kind::WorkBottoms,
            "bottoms in the V",
            "turn the work, or change the angle of the V",
        ),
        Bears::Face | Bears::Walls | Bears::Bottom => return,
    };
    let work = check.size(check.document.work.size().mm());
    let message = format!("the {work} work {what} and rolls");
    check.report.mend(kind, part).say(message, hint, GEOMETRY);
}

/// A grip that is short or narrow against the work.
fn grip(check: &mut Check<'_>, part: Part, (grip, half): (f64, &Half)) {
    match check.model.work.lies {
        Lies::Endwise | Lies::Alongside => short(check, part, grip),
        // Across the jaws the work is gripped over their width, and is as wide as they are long.
        Lies::Crosswise => {
            let at = half.jaw.along_at_x(check.model.work.from);
            short(check, part, half.jaw.section(at).width);
        }
    }
    narrow(check, part, face_mm(half, check.model));
}

fn short(check: &mut Check<'_>, part: Part, grip: f64) {
    let work = check.document.work.size().mm();
    if grip >= work {
        return;
    }
    let message = format!(
        "the {part} grips {} of the work, which is {} thick",
        check.size(grip),
        check.size(work)
    );
    let hint = match check.model.work.lies {
        Lies::Endwise | Lies::Alongside => "lengthen the jaw",
        Lies::Crosswise => "widen the jaw",
    };
    check
        .report
        .note(Kind::GripShort, part)
        .held(grip, work)
        .say(message, hint, COMMON_PRACTICE);
}

fn narrow(check: &mut Check<'_>, part: Part, face: f64) {
    let (work, limit) = (check.model.work.width, WIDEST_WORK * face);
    if work <= limit {
        return;
    }
    let message = format!(
        "the work is {} wide, over {WIDEST_WORK} times the {part}, {}: it tips",
        check.size(work),
        check.size(face)
    );
    let hint = match check.model.work.lies {
        Lies::Endwise | Lies::Alongside => "widen the jaw",
        Lies::Crosswise => "lengthen the jaw",
    };
    check
        .report
        .note(Kind::WorkTips, part)
        .held(work, limit)
        .say(message, hint, COMMON_PRACTICE);
}
