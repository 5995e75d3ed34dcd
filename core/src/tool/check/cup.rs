//! Whether a rivet set makes the head that it is for.

use super::Check;
use crate::finding::{COMMON_PRACTICE, Kind, Part};
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
                "make round heads with a set, and flat ones with the hammer alone",
                shape.source,
            );
        }
    }
    wall(check, set);
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
            .say(message, "make the cup a little wider than the head", source);
    }
    if deep > high {
        let message = format!(
            "its cup is {} deep and the head {} high: its rim rings the boss before the head is full",
            check.size(deep),
            check.size(high)
        );
        check
            .report
            .mend(Kind::CupMisfit, Part::Working)
            .held(deep, high)
            .say(
                message,
                "make the cup shallower than the head is high",
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
        check.size(wall),
        check.size(least)
    );
    check
        .report
        .mend(Kind::WallThin, Part::Working)
        .held(wall, least)
        .say(message, "make the end stouter", COMMON_PRACTICE);
}
