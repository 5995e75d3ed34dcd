//! Whether a punch goes through, comes out again, and stands the force that sinks it.

use super::Check;
use crate::finding::{COMMON_PRACTICE, Kind, Part};
use crate::shape::section::Section;
use crate::steel::{YOUNGS_MPA, hot_factors};
use crate::tool::column::{Column, Ends, Law, SOURCE};
use crate::tool::solid::Cut;
use crate::tool::steels::{IN_HOT_WORK_CELSIUS, bears_mpa};
use crate::units::Quantity;

/// What a punch's working end is.
pub(crate) struct Punch {
    /// The end that enters.
    pub(crate) end: Cut,
    /// From the end to the body, mm.
    pub(crate) long: f64,
    /// Thickness of the work, mm.
    pub(crate) through: f64,
}

/// Flow stress of mild steel at forging heat, MPa (judgement, as for the time that hammering takes).
const FLOW_MPA: f64 = 85.0;
/// Pressure under a flat punch over the flow stress of what it sinks into: Tabor's three.
const SINKING: f64 = 3.0;
/// Where the pressure is from.
const SINKING_SOURCE: &str =
    "Tabor, The Hardness of Metals (1951), three times the flow stress, from memory";

/// A punch grows by at least so much over the thickness of the work (common practice, no source).
const GROWS: f64 = 0.02;

pub(crate) fn check(check: &mut Check<'_>, punch: &Punch) {
    passes(check, punch);
    buckles(check, punch);
    bends_hot(check);
}

fn passes(check: &mut Check<'_>, punch: &Punch) {
    if punch.long < punch.through {
        let message = format!(
            "is {} long to the body, and the work is {} thick: its shoulder strikes the work before it is through",
            check.size(punch.long),
            check.size(punch.through)
        );
        check
            .report
            .mend(Kind::PunchShort, Part::Working)
            .held(punch.long, punch.through)
            .say(
                message,
                "make the taper longer than the work is thick",
                COMMON_PRACTICE,
            );
        return;
    }
    let (small, large) = (punch.end.small(), check.model.base.small());
    let grows = (large - small) / punch.long * punch.through / small;
    if grows < GROWS {
        let message = format!(
            "grows by {:.1} % over the thickness of the work, under {:.0} %: it sticks in the hole",
            100.0 * grows,
            100.0 * GROWS
        );
        check
            .report
            .mend(Kind::PunchSticks, Part::Working)
            .held_as(Quantity::Ratio, grows, GROWS)
            .say(
                message,
                "give it more taper, so that it comes out again",
                COMMON_PRACTICE,
            );
    }
}

/// The slender end as a column from the body into the work, as thick as at its end all along.
fn column(check: &Check<'_>, punch: &Punch) -> Column {
    let profile = punch.end.outline.profile();
    let known = Section::new(&profile, punch.end.depth, punch.end.width).properties();
    let factors = hot_factors(IN_HOT_WORK_CELSIUS);
    Column {
        area_mm2: known.area_mm2,
        least_mm4: known.side_mm4.min(known.top_mm4),
        length_mm: punch.long,
        youngs_mpa: YOUNGS_MPA * factors.modulus,
        yield_mpa: bears_mpa(check.tool.bar.steel) * factors.effective_yield,
        ends: Ends::FixedAndHinged,
    }
}

fn buckles(check: &mut Check<'_>, punch: &Punch) {
    let column = column(check, punch);
    let force = SINKING * FLOW_MPA * column.area_mm2;
    let bears = column.gives_way_n();
    // Crushed steel is told by itself: here only what gives way for being slender.
    let crushes = column.yield_mpa * column.area_mm2;
    if bears >= force || crushes < force {
        return;
    }
    let law = match column.law() {
        Law::Euler => "springs aside",
        Law::Johnson => "buckles",
    };
    let show = check.report.show();
    let message = format!(
        "{law} under {}, and {} sink it into hot work: {} across is slim for {}",
        show.force(bears),
        show.force(force),
        check.size(punch.end.small()),
        check.size(punch.long)
    );
    check
        .report
        .mend(Kind::PunchBuckles, Part::Working)
        .held_as(Quantity::Force, bears, force)
        .say(message, "make its slender end shorter or thicker", SOURCE);
}

fn bends_hot(check: &mut Check<'_>) {
    let steel = check.tool.bar.steel;
    let hot = bears_mpa(steel) * hot_factors(IN_HOT_WORK_CELSIUS).effective_yield;
    let pressure = SINKING * FLOW_MPA;
    if hot >= pressure {
        return;
    }
    let show = check.report.show();
    let message = format!(
        "{} bears {} at {}, and hot work presses it with {}: it bends or mushrooms in the hole",
        steel.name(),
        show.stress(hot),
        show.temperature(IN_HOT_WORK_CELSIUS),
        show.stress(pressure)
    );
    check
        .report
        .mend(Kind::PunchBendsHot, Part::Working)
        .held_as(Quantity::Stress, hot, pressure)
        .say(message, "take a steel that keeps its temper hot, such as H13 or S7, or cool it after every few blows", SINKING_SOURCE);
}

/// The corners of a square hole start cracks where they are sharp.
pub(crate) fn corners(check: &mut Check<'_>, corner: f64, side: f64) {
    /// Least radius over the side (common practice, no source).
    const LEAST: f64 = 0.04;
    if corner >= LEAST * side {
        return;
    }
    let message = format!(
        "its corners have a radius of {}, under {}: they tear the hole",
        check.size(corner),
        check.size(LEAST * side)
    );
    check
        .report
        .note(Kind::DetailOverRoom, Part::Working)
        .held(corner, LEAST * side)
        .say(message, "break the corners a little", COMMON_PRACTICE);
}

/// A slot punch is thin for its length, else it is a square punch that takes a slug.
pub(crate) fn slot(check: &mut Check<'_>, thick: f64, long: f64) {
    /// Most of the length that the bit is thick (common practice, no source).
    const MOST: f64 = 0.5;
    if thick <= MOST * long {
        return;
    }
    let message = format!(
        "its bit is {} thick and {} long: it cuts a slug instead of parting the steel",
        check.size(thick),
        check.size(long)
    );
    check
        .report
        .note(Kind::BladeSlender, Part::Working)
        .held(thick, MOST * long)
        .say(message, "make the bit thinner", COMMON_PRACTICE);
}
