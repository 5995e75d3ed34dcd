//! The eye of a handle.

use super::Check;
use crate::finding::{COMMON_PRACTICE, Kind, Part};
use crate::tool::mount::{Hold, Struck};
use crate::units::MM_PER_INCH;

/// Cheeks are at least so much of the eye's width (common practice, no source).
const CHEEK: f64 = 0.35;
/// From the struck face to the eye there is at least so much of the body (common practice, no source).
const OVER: f64 = 0.9;
/// Eyes of handles that can be bought or shaved from one, mm: from 1/2 in by 3/4 in to 1 in by 1 1/2 in
/// (common practice, no source).
const WIDE_MM: (f64, f64) = (0.5 * MM_PER_INCH, MM_PER_INCH);
const LONG_MM: (f64, f64) = (0.75 * MM_PER_INCH, 1.5 * MM_PER_INCH);

pub(super) fn check(check: &mut Check<'_>, struck: &Struck) {
    let Hold::Eye {
        along,
        across,
        from_face,
        ..
    } = struck.hold
    else {
        return;
    };
    let (along, across) = (along.mm(), across.mm());
    let wide = check
        .model
        .runs
        .iter()
        .flatten()
        .filter(|run| run.part == Part::Eye);
    let wide = wide.map(|run| run.to.width).fold(0.0, f64::max);
    let (cheek, least) = ((wide - across) / 2.0, CHEEK * across);
    if cheek < least {
        let message = format!(
            "leaves cheeks of {}, under {}",
            check.size(cheek),
            check.size(least)
        );
        check
            .report
            .mend(Kind::CheekThin, Part::Eye)
            .held(cheek, least)
            .say(
                message,
                "give it more Cheek, or less Eye width",
                COMMON_PRACTICE,
            );
    }
    let (over, least) = (
        from_face.mm() - along / 2.0,
        OVER * check.model.base.small(),
    );
    if over < least {
        let message = format!(
            "begins {} under the struck face, nearer than {}",
            check.size(over.max(0.0)),
            check.size(least)
        );
        check
            .report
            .mend(Kind::EyeNearEnd, Part::Eye)
            .held(over, least)
            .say(
                message,
                "make the Eye place farther down: what stands over it is beaten into it",
                COMMON_PRACTICE,
            );
    }
    handle(check, (along, across));
}

fn handle(check: &mut Check<'_>, (along, across): (f64, f64)) {
    let inside = |mm: f64, (least, most): (f64, f64)| (least..=most).contains(&mm);
    let fits = inside(across, WIDE_MM) && inside(along, LONG_MM) && along > 1.2 * across;
    if fits {
        return;
    }
    let message = format!(
        "is {} by {}: usual handles go into eyes from {} by {} to {} by {}, longer than wide so that they do not turn",
        check.size(along),
        check.size(across),
        check.size(LONG_MM.0),
        check.size(WIDE_MM.0),
        check.size(LONG_MM.1),
        check.size(WIDE_MM.1)
    );
    check
        .report
        .note(Kind::EyeHandle, Part::Eye)
        .held(across, WIDE_MM.1)
        .say(
            message,
            "measure the handle you have, and make Eye length and Eye width to it",
            COMMON_PRACTICE,
        );
}
