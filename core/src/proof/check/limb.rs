//! Neck and shoulder: their depth, their corners and the step in the top view.

use crate::tongs::{LEAST_STEP, TURNING_PLAY};
use kurbo::Point;

use super::Check;
use crate::finding::{COMMON_PRACTICE, GEOMETRY, Kind, Part};
use crate::shape::Blend;
use crate::tongs::body::Limb;
use crate::tongs::jaw::Remark;
use crate::tongs::model::Half;

/// A corner sharper than this part of the bar starts cracks (common practice, no source).
const SHARP: f64 = 0.2;

/// A neck shallower than this part of the bar bends or breaks (common practice, no source).
const THIN: f64 = 0.6;

/// A size is rounded to what a smith measures with, so a rule of thumb is not held finer, mm.
const HAIR: f64 = 0.3;

/// What is drawn so little smaller than asked is not said, mm: as in a style's remarks.
const NEAR: f64 = Remark::NEAR;

pub(super) fn check(check: &mut Check<'_>) {
    let (neck, shoulder) = (check.document.neck, check.document.shoulder);
    let halves = check.halves();
    let room =
        |got: &dyn Fn(&Half) -> f64| halves.iter().map(|half| got(half)).fold(f64::MAX, f64::min);
    let neck_got = room(&|half| half.body.neck.fillet);
    let shoulder_got = room(&|half| half.body.shoulder.fillet);
    for half in &halves {
        pinch(check, Part::Neck, neck.depth.mm(), &half.body.neck);
    }
    let limb = &check.model.a.body.shoulder;
    pinch(check, Part::Shoulder, shoulder.depth.mm(), limb);
    corner(check, Part::Neck, (neck.fillet.mm(), neck_got));
    corner(check, Part::Shoulder, (shoulder.fillet.mm(), shoulder_got));
    thin(check, neck.depth.mm());
    deep(check, Part::Neck, neck.depth.mm());
    deep(check, Part::Shoulder, shoulder.depth.mm());
    over_bar(check, neck.depth.mm());
    for half in &halves {
        hump(check, &half.body.neck);
    }
    reach(check);
    steps(check, &halves);
}

/// How much of its depth a limb may lose between its ends before it is said (judgement).
const PINCHED: f64 = 0.75;

/// A limb whose edges cross, or come much closer than the thinner of its ends.
fn pinch(check: &mut Check<'_>, part: Part, asked: f64, limb: &Limb) {
    let least = least_depth(limb);
    let thinner = asked.min(limb.inner_end().distance(limb.outer_end()));
    if least <= 0.0 {
        let message = format!("the edges of the {part} cross: it would have no metal there");
        let hint = format!("make the {part} longer or shallower, or its ends more level");
        check
            .report
            .stop(Kind::LimbCrosses, part)
            .held(least, 0.0)
            .advises(&["length", "depth"])
            .say(message, hint, GEOMETRY);
    } else if least < PINCHED * thinner {
        let message = format!(
            "the {part} narrows to {} between its ends, under three quarters of {}",
            check.size(least),
            check.size(thinner)
        );
        let hint = format!("make the {part} longer or deeper");
        check
            .report
            .mend(Kind::LimbNarrows, part)
            .held(least, PINCHED * thinner)
            .advises(&["length", "depth"])
            .say(message, hint, COMMON_PRACTICE);
    }
}

/// The least distance between the edges of a limb, mm; nothing if they cross.
fn least_depth(limb: &Limb) -> f64 {
    const PARTS: u32 = 16;
    let at = |i: u32| f64::from(i) / f64::from(PARTS);
    let inner: Vec<Point> = (0..=PARTS).map(|i| limb.inner_at(at(i))).collect();
    let outer: Vec<Point> = (0..=PARTS).map(|i| limb.outer_at(at(i))).collect();
    let crossed = inner
        .windows(2)
        .any(|a| outer.windows(2).any(|b| cross((a[0], a[1]), (b[0], b[1]))));
    if crossed {
        return 0.0;
    }
    let all = inner
        .iter()
        .flat_map(|a| outer.iter().map(move |b| a.distance(*b)));
    all.fold(f64::MAX, f64::min)
}

/// Whether two straight pieces cross.
fn cross((a, b): (Point, Point), (c, d): (Point, Point)) -> bool {
    let side = |p: Point, q: Point, r: Point| (q - p).cross(r - p);
    side(a, b, c) * side(a, b, d) < 0.0 && side(c, d, a) * side(c, d, b) < 0.0
}

fn corner(check: &mut Check<'_>, part: Part, (asked, got): (f64, f64)) {
    let limit = SHARP * check.side();
    if asked < limit - HAIR {
        let message = format!(
            "the inside corners at the {part} have a radius of {}, under a fifth of the bar, {}: sharp corners crack",
            check.size(asked),
            check.size(limit)
        );
        let hint = "round them, and round the anvil's edge that makes them";
        check
            .report
            .mend(Kind::CornerSharp, part)
            .held(asked, limit)
            .advises(&["fillet"])
            .say(message, hint, COMMON_PRACTICE);
    }
    if got < asked - NEAR {
        let message = format!(
            "there is room for a corner of {} only at the {part}, {} was asked",
            check.size(got),
            check.size(asked)
        );
        let hint = format!("lengthen the {part}, or ask for a smaller corner");
        check
            .report
            .note(Kind::CornerOverRoom, part)
            .held(got, asked)
            .say(message, hint, GEOMETRY);
    }
}

fn thin(check: &mut Check<'_>, depth: f64) {
    let limit = THIN * check.side();
    if depth >= limit - HAIR {
        return;
    }
    let taken = if (check.document.bar.stock.size().mm() - check.side()).abs() > HAIR {
        " as a square of its area"
    } else {
        ""
    };
    let message = format!(
        "the neck is {} deep, under {THIN} of the bar{taken}, {}: most tongs crack there",
        check.size(depth),
        check.size(limit)
    );
    let hint = "leave more metal between boss and jaw";
    check
        .report
        .mend(Kind::NeckThin, Part::Neck)
        .held(depth, limit)
        .advises(&["depth"])
        .say(message, hint, COMMON_PRACTICE);
}

/// A limb deeper than the boss that it leaves.
fn deep(check: &mut Check<'_>, part: Part, depth: f64) {
    let across = check.document.boss.across.mm();
    if depth <= across {
        return;
    }
    let message = format!(
        "the {part} is {} deep, more than the boss across, {}: it is drawn no deeper than there is boss",
        check.size(depth),
        check.size(across)
    );
    let hint = format!("make the {part} shallower, or the boss larger");
    check
        .report
        .mend(Kind::LimbOverBoss, part)
        .held(depth, across)
        .advises(&["depth"])
        .say(message, hint, GEOMETRY);
}

/// Where the rein begins, and from where it is clear of the other boss, mm from the rivet.
fn rein_start(check: &Check<'_>) -> (f64, f64) {
    /// What a sum of sizes may be short by, mm.
    const ROUNDING: f64 = 1e-9;
    let rim = &check.model.a.body.rim;
    let start = rim.half_along() + check.document.shoulder.length.mm();
    let limit = rim.reach() + TURNING_PLAY + LEAST_STEP;
    (start, limit - ROUNDING)
}

/// Whether the rein begins inside the sweep of the other boss.
fn is_struck(check: &Check<'_>) -> bool {
    let (start, limit) = rein_start(check);
    start < limit
}

/// A neck deeper than the bar that it is forged from.
fn over_bar(check: &mut Check<'_>, depth: f64) {
    let bar = check.document.bar.stock.wide_mm();
    if depth <= bar + HAIR {
        return;
    }
    let message = format!(
        "the neck is {} deep, more than the bar, {}",
        check.size(depth),
        check.size(bar)
    );
    let hint = "make the neck no deeper than the bar, or take a larger bar";
    check
        .report
        .mend(Kind::NeckOverBar, Part::Neck)
        .held(depth, bar)
        .advises(&["depth"])
        .say(message, hint, COMMON_PRACTICE);
}

/// How far the back of a neck may stand over both its ends before it is a hump, as a part of the
/// bar's side (judgement, from looking at it).
const HUMP: f64 = 0.2;

/// A neck whose back rises over boss and jaw alike.
fn hump(check: &mut Check<'_>, neck: &Limb) {
    const PARTS: u32 = 32;
    let at = |t: f64| neck.outer_at(t).y;
    let places = (0..=PARTS).map(|i| at(f64::from(i) / f64::from(PARTS)));
    let boss = check.model.a.body.rim.half_across();
    let over = places.fold(f64::MIN, f64::max) - boss.max(at(1.0));
    let limit = HUMP * check.side();
    if over <= limit {
        return;
    }
    let message = format!(
        "the back of the neck stands {} over boss and jaw, over a fifth of the bar, {}: it makes a hump",
        check.size(over),
        check.size(limit)
    );
    let hint = "make the neck shallower, or the jaw deeper at its heel";
    check
        .report
        .mend(Kind::NeckHumped, Part::Neck)
        .held(over, limit)
        .advises(&["depth"])
        .say(message, hint, COMMON_PRACTICE);
}

/// A rein that begins inside the sweep of the other boss.
fn reach(check: &mut Check<'_>) {
    if !is_struck(check) {
        return;
    }
    let (start, limit) = rein_start(check);
    let message = format!(
        "the rein begins {} from the rivet, within {} of it: it would strike the other boss",
        check.size(start),
        check.size(limit)
    );
    let hint = "lengthen the shoulder, or make the boss smaller";
    check
        .report
        .stop(Kind::ReinStrikesBoss, Part::Shoulder)
        .held(start, limit)
        .advises(&["length"])
        .say(message, hint, GEOMETRY);
}

/// The steps from the boss's faces to those of jaw and rein. They are worth a word only where a
/// limb's edges do not cross and the rein is clear of the other boss.
fn steps(check: &mut Check<'_>, halves: &[&Half]) {
    for half in halves {
        if let Some(steep) = steep(check, half.body.plate.faces.neck)
            && least_depth(&half.body.neck) > 0.0
        {
            step(check, Part::Neck, steep);
        }
    }
    let body = &check.model.a.body;
    if let Some(steep) = steep(check, body.plate.faces.shoulder)
        && least_depth(&body.shoulder) > 0.0
        && !is_struck(check)
    {
        step(check, Part::Shoulder, steep);
    }
}

/// How far a blend steps sideways within how much, mm, when it is steeper than 45 degrees.
fn steep(check: &Check<'_>, blend: Blend) -> Option<(f64, f64)> {
    let other_face = check.document.boss.thickness.mm() - blend.half_width;
    let shift = blend.half_width.max(other_face.abs());
    let run = (blend.far - blend.boss).abs();
    (run < shift).then_some((shift, run))
}

fn step(check: &mut Check<'_>, part: Part, (shift, run): (f64, f64)) {
    let message = format!(
        "the {part} steps {} sideways within {}, more steeply than 45 degrees",
        check.size(shift),
        check.size(run)
    );
    let hint = if part == Part::Neck {
        "set the heel farther out for a smooth step"
    } else {
        "lengthen the shoulder for a smooth step"
    };
    check
        .report
        .note(Kind::LimbStepsSteeply, part)
        .held(run, shift)
        .say(message, hint, COMMON_PRACTICE);
}
