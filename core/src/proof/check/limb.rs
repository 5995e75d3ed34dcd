//! Neck and shoulder: their depth, their corners and the step in the top view.

use crate::tongs::{LEAST_STEP, TURNING_PLAY};
use kurbo::Point;

use super::Check;
use crate::finding::{COMMON_PRACTICE, GEOMETRY, Part, Severity};
use crate::shape::Blend;
use crate::tongs::body::Limb;

/// A corner sharper than this part of the bar starts cracks (common practice, no source).
const SHARP: f64 = 0.2;

/// A neck shallower than this part of the bar bends or breaks (common practice, no source).
const THIN: f64 = 0.6;

/// A size is rounded to what a smith measures with, so a rule of thumb is not held finer, mm.
const HAIR: f64 = 0.3;

pub(super) fn check(check: &mut Check<'_>) {
    let (neck, shoulder) = (check.document.neck, check.document.shoulder);
    let halves = check.halves();
    let room = |got: &dyn Fn(&crate::tongs::model::Half) -> f64| {
        halves.iter().map(|half| got(half)).fold(f64::MAX, f64::min)
    };
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
    for half in halves {
        step(check, Part::Neck, half.body.plate.faces.neck);
    }
    step(
        check,
        Part::Shoulder,
        check.model.a.body.plate.faces.shoulder,
    );
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
        let held = (least, 0.0);
        check.add((Severity::Stop, part), (message, hint), held, GEOMETRY);
    } else if least < PINCHED * thinner {
        let message = format!(
            "the {part} narrows to {} between its ends, under three quarters of {}",
            check.size(least),
            check.size(thinner)
        );
        let hint = format!("make the {part} longer or deeper");
        let held = (least, PINCHED * thinner);
        check.add(
            (Severity::Mend, part),
            (message, hint),
            held,
            COMMON_PRACTICE,
        );
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
        let hint = "round them, and round the anvil's edge that makes them".to_owned();
        check.add(
            (Severity::Mend, part),
            (message, hint),
            (asked, limit),
            COMMON_PRACTICE,
        );
    }
    if got < asked - 0.05 {
        let message = format!(
            "there is room for a corner of {} only at the {part}, {} was asked",
            check.size(got),
            check.size(asked)
        );
        let hint = format!("lengthen the {part}, or ask for a smaller corner");
        check.add(
            (Severity::Note, part),
            (message, hint),
            (got, asked),
            GEOMETRY,
        );
    }
}

fn thin(check: &mut Check<'_>, depth: f64) {
    let limit = THIN * check.side();
    if depth >= limit - HAIR {
        return;
    }
    let message = format!(
        "the neck is {} deep, under {THIN} of the bar, {}: most tongs crack there",
        check.size(depth),
        check.size(limit)
    );
    let hint = "leave more metal between boss and jaw".to_owned();
    check.add(
        (Severity::Mend, Part::Neck),
        (message, hint),
        (depth, limit),
        COMMON_PRACTICE,
    );
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
    let held = (depth, across);
    check.add((Severity::Mend, part), (message, hint), held, GEOMETRY);
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
    let hint = "make the neck no deeper than the bar, or take a larger bar".to_owned();
    check.add(
        (Severity::Mend, Part::Neck),
        (message, hint),
        (depth, bar),
        COMMON_PRACTICE,
    );
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
    let hint = "make the neck shallower, or the jaw deeper at its heel".to_owned();
    check.add(
        (Severity::Mend, Part::Neck),
        (message, hint),
        (over, limit),
        COMMON_PRACTICE,
    );
}

/// A rein that begins inside the sweep of the other boss.
fn reach(check: &mut Check<'_>) {
    let rim = &check.model.a.body.rim;
    let start = rim.half_along() + check.document.shoulder.length.mm();
    let limit = rim.reach() + TURNING_PLAY + LEAST_STEP;
    if start >= limit - 1e-9 {
        return;
    }
    let message = format!(
        "the rein begins {} from the rivet, within {} of it: it would strike the other boss",
        check.size(start),
        check.size(limit)
    );
    let hint = "lengthen the shoulder, or make the boss smaller".to_owned();
    check.add(
        (Severity::Stop, Part::Shoulder),
        (message, hint),
        (start, limit),
        GEOMETRY,
    );
}

/// The step from the boss's faces to those of jaw or rein, when it is steeper than 45 degrees.
fn step(check: &mut Check<'_>, part: Part, blend: Blend) {
    let shift = blend
        .half_width
        .max((check.document.boss.thickness.mm() - blend.half_width).abs());
    let run = (blend.far - blend.boss).abs();
    if run >= shift
        || check
            .found
            .iter()
            .any(|f| f.part == part && f.severity == Severity::Stop)
    {
        return;
    }
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
    check.add(
        (Severity::Note, part),
        (message, hint.to_owned()),
        (run, shift),
        COMMON_PRACTICE,
    );
}
