//! Whether a rivet set makes the head that it is for.

use super::Check;
use crate::finding::{COMMON_PRACTICE, GEOMETRY, Kind, Part};
use crate::tongs::document::HeadSolid;
use crate::tool::style::RivetSet;

pub(crate) fn check(check: &mut Check<'_>, set: &RivetSet) {
    let shape = set.head.shape();
    let rivet = set.rivet.mm();
    match shape.solid {
        HeadSolid::Cap => fits(
            check,
            set,
            (shape.across * rivet, shape.high * rivet),
            shape.source,
        ),
        HeadSolid::Disc | HeadSolid::Cone => {
            let message = format!(
                "a {} head is hammered flat: no cup makes it",
                set.head.name()
            );
            check.report.mend(Kind::CupMisfit, Part::Working).say(
                message,
                "choose a round Head: flat ones are made with the hammer alone",
                shape.source,
            );
        }
    }
    wall(check, set);
    ball(check, set);
}

/// A ball gives no cup that is deeper than it is half wide.
fn ball(check: &mut Check<'_>, set: &RivetSet) {
    let (deep, most) = (set.deep.mm(), set.cup.mm() / 2.0);
    if deep <= most {
        return;
    }
    let message = format!(
        "its cup is {} deep and {} wide: no ball that goes in presses it deeper than {}",
        check.size(deep),
        check.size(set.cup.mm()),
        check.size(most)
    );
    check
        .report
        .mend(Kind::DetailOverRoom, Part::Working)
        .held(deep, most)
        .say(
            message,
            "make the Cup depth half the Cup at the most",
            GEOMETRY,
        );
}

/// A cup is a little wider than the head, so that its rim does not mark the boss, and no deeper.
fn fits(check: &mut Check<'_>, set: &RivetSet, (across, high): (f64, f64), source: &'static str) {
    /// A cup may be wider by so much before the head is left unfilled (judgement).
    const WIDER: f64 = 1.2;
    let (cup, deep) = (set.cup.mm(), set.deep.mm());
    if cup < across || cup > WIDER * across {
        let message = format!(
            "its cup is {} across, and the head of a {} rivet {}",
            check.size(cup),
            check.size(set.rivet.mm()),
            check.size(across)
        );
        let limit = if cup < across { across } else { WIDER * across };
        check
            .report
            .mend(Kind::CupMisfit, Part::Working)
            .held(cup, limit)
            .say(message, "make the Cup a little wider than the head", source);
    }
    /// Less of the head's height leaves it flat (judgement).
    const SHALLOWEST: f64 = 0.4;
    if deep < SHALLOWEST * high {
        let message = format!(
            "its cup is {} deep and the head {} high: it flattens the head instead of rounding it",
            check.size(deep),
            check.size(high)
        );
        check
            .report
            .mend(Kind::CupDepth, Part::Working)
            .held(deep, SHALLOWEST * high)
            .say(
                message,
                "make the Cup depth nearly that of the head",
                source,
            );
    }
    if deep > high {
        let message = format!(
            "its cup is {} deep and the head {} high: its rim rings the boss before the head is full",
            check.size(deep),
            check.size(high)
        );
        check
            .report
            .mend(Kind::CupDepth, Part::Working)
            .held(deep, high)
            .say(
                message,
                "make the Cup depth less than the head is high",
                source,
            );
    }
}

fn wall(check: &mut Check<'_>, set: &RivetSet) {
    /// Steel around the cup over its width (common practice, no source).
    const LEAST: f64 = 0.12;
    let (wall, least) = ((set.end.mm() - set.cup.mm()) / 2.0, LEAST * set.cup.mm());
    if wall >= least {
        return;
    }
    let message = format!(
        "has {} of steel around its cup, under {}: the rim splits",
        check.size(wall.max(0.0)),
        check.size(least)
    );
    check
        .report
        .mend(Kind::WallThin, Part::Working)
        .held(wall, least)
        .say(
            message,
            "make the End stouter, or the Cup narrower",
            COMMON_PRACTICE,
        );
}
