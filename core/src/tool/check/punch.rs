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
    /// The value that makes it stouter, as the parts list calls it.
    pub(crate) stout: &'static str,
    /// From the end to the body, mm.
    pub(crate) long: f64,
    /// Thickness of the work, mm.
    pub(crate) through: f64,
}

/// Flow stress of mild steel at forging heat, MPa (judgement, as for the time that hammering takes).
pub(super) const FLOW_MPA: f64 = 85.0;
/// Pressure under a flat punch over the flow stress of what it sinks into: Tabor's three.
const SINKING: f64 = 3.0;
/// Where the pressure is from.
const SINKING_SOURCE: &str =
    "Tabor, The Hardness of Metals (1951), three times the flow stress, from memory";

/// The same, with what a blow does.
const DRIVING_SOURCE: &str = "Tabor, The Hardness of Metals (1951), three times the flow stress, from memory; \
     what a blow does is common practice, no source";

/// A punch grows by at least so much over the thickness of the work (common practice, no source).
const GROWS: f64 = 0.02;

pub(crate) fn check(check: &mut Check<'_>, punch: &Punch) {
    passes(check, punch);
    buckles(check, punch);
    bends_hot(check);
    sinks(check, punch);
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
                "make the Taper longer than the Work is thick",
                COMMON_PRACTICE,
            );
        return;
    }
    let (small, large) = (punch.end.small(), check.model.base.small());
    let grows = (large - small) / punch.long * punch.through / small;
    if grows < GROWS {
        let message = if grows > 0.0 {
            format!(
                "grows by {:.1} % over the thickness of the work, under {:.0} %: it sticks in the hole",
                100.0 * grows,
                100.0 * GROWS
            )
        } else {
            format!(
                "is no smaller at its end, {}, than its body, {}: it sticks in the hole",
                check.size(small),
                check.size(large)
            )
        };
        check
            .report
            .mend(Kind::PunchSticks, Part::Working)
            .held_as(Quantity::Ratio, grows, GROWS)
            .say(
                message,
                format!(
                    "make its {} less, or its Taper shorter, so that it comes out again",
                    punch.stout
                ),
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
        .say(
            message,
            format!("make its Taper shorter, or its {} larger", punch.stout),
            SOURCE,
        );
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
        .say(message, "take a Steel that keeps its temper hot, such as H13 or S7, or cool it after every few blows", SINKING_SOURCE);
}

/// What one blow of a hand hammer does, J: 1.2 kg at 9 m/s (common practice, no source).
const HAND_J: f64 = 49.0;
/// And of a sledge in a striker's hands, or of a treadle hammer: 5 kg at 8 m/s (common practice, no source).
const SLEDGE_J: f64 = 160.0;
/// A punch that goes in by less than this at a blow bounces and only chills, mm (judgement).
const LEAST_BLOW_MM: f64 = 0.5;

/// How far a blow drives it: its work over the force that sinks it.
fn sinks(check: &mut Check<'_>, punch: &Punch) {
    let force = SINKING * FLOW_MPA * punch.end.area_mm2();
    let blow_mm = |joule: f64| 1000.0 * joule / force;
    let (hand, sledge) = (blow_mm(HAND_J), blow_mm(SLEDGE_J));
    if hand >= LEAST_BLOW_MM {
        return;
    }
    let show = check.report.show();
    let sinks = show.force(force);
    if sledge >= LEAST_BLOW_MM {
        let message = format!("{sinks} sink it into hot work: a hand hammer only chills it");
        check
            .report
            .note(Kind::PunchWantsForce, Part::Working)
            .held(hand, LEAST_BLOW_MM)
            .say(
                message,
                "strike it with a sledge and a striker, or under a treadle hammer",
                DRIVING_SOURCE,
            );
        return;
    }
    let message =
        format!("{sinks} sink it into hot work: neither a sledge nor a treadle hammer drives it");
    let hint = format!(
        "make its {} less and drift the hole out, or punch it under a power hammer or a press",
        punch.stout
    );
    check
        .report
        .mend(Kind::PunchWantsForce, Part::Working)
        .held(sledge, LEAST_BLOW_MM)
        .say(message, hint, DRIVING_SOURCE);
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
        .say(message, "give it more Corner radius", COMMON_PRACTICE);
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
        .say(message, "make the Bit thickness less", COMMON_PRACTICE);
}
