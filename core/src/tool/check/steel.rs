//! Whether the steel suits, and what is never told here: how it is hardened.

use super::Check;
use crate::finding::{COMMON_PRACTICE, Kind, Part};
use crate::steel::Steel;
use crate::tool::steels::{Suits, TEMPER_SOURCE, hardens, standard, suits, temper};
use crate::tool::style::Use;

pub(super) fn check(check: &mut Check<'_>) {
    let (steel, kind) = (check.tool.bar.steel, check.tool.style_kind());
    match suits(steel, kind.used()) {
        Suits::Well => {}
        Suits::Serves(why) => {
            let message = format!("{} serves for a {kind}: {why}", steel.name());
            check.report.note(Kind::SteelUnsuited, Part::Bar).say(
                message,
                best(kind.used()),
                COMMON_PRACTICE,
            );
        }
        Suits::Not(why) => {
            let message = format!("{} does not suit a {kind}: {why}", steel.name());
            check.report.mend(Kind::SteelUnsuited, Part::Bar).say(
                message,
                best(kind.used()),
                COMMON_PRACTICE,
            );
        }
    }
    if kind.used() == Use::HotEdge {
        check.report.note(Kind::NeverHardened, Part::Working).say(
            "a hot chisel or a hot cut is never hardened: a hard edge chips in the hand, and hot work draws it anyhow",
            "let it cool slowly after forging, and dress it when it turns",
            COMMON_PRACTICE,
        );
    } else {
        maker(check, steel);
    }
}

fn best(used: Use) -> &'static str {
    match used {
        Use::Hot => "take the Steel H13 or S7, or 4140 for light work",
        Use::HotForm => "take the Steel 1045, 4140 or H13",
        Use::HotEdge => "take the Steel 1045, 4140, S7 or H13",
        Use::ColdEdge => "take the Steel S7, W1, O1 or 5160",
    }
}

/// How a steel is hardened its maker says; nobody can for one that is unknown.
fn maker(check: &mut Check<'_>, steel: Steel) {
    if !hardens(steel) {
        return;
    }
    let show = check.report.show();
    let (range, source) = match temper(steel) {
        Some(own) => (
            format!(
                "; published tables temper it between {} and {}",
                show.temperature(own.least_celsius),
                show.temperature(own.most_celsius)
            ),
            TEMPER_SOURCE,
        ),
        None => (String::new(), COMMON_PRACTICE),
    };
    let message = format!(
        "{} ({}) is hardened and tempered as its maker's sheet says{range}",
        steel.name(),
        standard(steel)
    );
    check.report.note(Kind::MakerSays, Part::Working).say(
        message,
        "ask for the sheet of the very bar you buy; quench fumes and oil fires: air, a lid, no water near hot oil",
        source,
    );
}
