//! What stands against a procedure, each said with the operation that it meets.

use crate::asked::Hole;
use crate::finding::{COMMON_PRACTICE, GEOMETRY, Kind, Part, Report};
use crate::shape::Piece;

use super::operation::{Grip, LEAST_HOLD, Operation};
use super::order::{Changes, Refused};
use super::procedure::{Procedure, Suits};
use super::rules::{MOST_UPSET, spread_mm, upset};
use super::sections::unrolled;
use super::state::Task;
use super::step::{Step, scarf};

/// That a procedure does not suit the design.
pub(super) fn unsuited(report: &mut Report, suits: &[Suits], procedure: Procedure) {
    let own = suits.iter().find(|own| own.procedure == procedure);
    let Some(why) = own.and_then(|own| own.why_not.as_ref()) else {
        return;
    };
    let message = format!("{}: {why}", procedure.name());
    let other = suits.iter().find(|own| own.why_not.is_none());
    let hint = other.map_or_else(
        || "change the bar or the layout".to_owned(),
        |own| format!("make it by {}", own.procedure.name()),
    );
    report
        .mend(Kind::ProcedureUnsuited, Part::Bar)
        .say(message, hint, COMMON_PRACTICE);
}

/// What was changed and cannot be.
pub(super) fn refused(report: &mut Report, all: &[Refused]) {
    for one in all {
        report.mend(Kind::OperationOutOfPlace, Part::Pair).say(
            one.to_string(),
            one.mend(),
            COMMON_PRACTICE,
        );
    }
}

/// What an operation meets.
pub(super) fn met(
    report: &mut Report,
    task: &Task<'_>,
    operation: &Operation,
    (before, cold): (&Piece, &Changes),
) {
    nothing_to_hold(report, operation, before);
    match operation.step {
        Step::SetDownBoss | Step::ForgeBoss => bar_thin(report, task, operation.step),
        Step::RoughJaw => jaw_out_of_reach(report, task),
        Step::DrawSquare => rein_over_bar(report, task),
        Step::MakeHole => punched_cold(report, task, cold),
        Step::Weld => weld_short(report, task, operation),
        Step::CutBar
        | Step::Flatten
        | Step::Notch
        | Step::Twist
        | Step::SetDownJaw
        | Step::SetDownRein
        | Step::CutApart
        | Step::DrawStub
        | Step::Gather
        | Step::DrawOctagon
        | Step::DrawRound
        | Step::CutTail
        | Step::TrimRein
        | Step::Grip
        | Step::FinishEnd
        | Step::TrimJaw
        | Step::SetNeck
        | Step::ShapeJaw
        | Step::Tool(_)
        | Step::BendRein => {}
    }
}

fn nothing_to_hold(report: &mut Report, operation: &Operation, before: &Piece) {
    let Some((from, to)) = operation.hot_mm else {
        return;
    };
    let cold = from.max(before.length_mm() - to);
    if cold >= LEAST_HOLD || matches!(operation.held, Grip::Hand(_)) {
        return;
    }
    let message = format!(
        "{}: only {} of the piece stays cold, less than the {} that tongs close on",
        operation.step,
        report.size(cold),
        report.size(LEAST_HOLD)
    );
    report
        .stop(Kind::NothingToHold, operation.part)
        .held(cold, LEAST_HOLD)
        .say(
            message,
            "leave a handling tail on, or lay both halves out on one bar",
            COMMON_PRACTICE,
        );
}

fn bar_thin(report: &mut Report, task: &Task<'_>, step: Step) {
    let (boss, bar) = (task.document.boss.thickness.mm(), task.squared().1);
    let message = format!(
        "{step}: the bar is {} thick where the boss is to be {}: nothing can be set down",
        report.size(bar),
        report.size(boss)
    );
    let hint = "take thicker bar, or make the boss thinner";
    over_bar(report, Part::Boss, (boss, bar), (message, hint));
}

fn rein_over_bar(report: &mut Report, task: &Task<'_>) {
    let largest = task.half.rein.section(0.0).area_mm2();
    let message = format!(
        "{}: the rein begins with {} and the bar has only {}",
        Step::DrawSquare,
        report.show().area(largest),
        report.show().area(task.area)
    );
    let hint = "take thicker bar, or begin the rein smaller";
    over_bar(report, Part::Rein, (largest, task.area), (message, hint));
}

/// Says that a part wants more than the bar has, where it does.
fn over_bar(
    report: &mut Report,
    part: Part,
    (wanted, has): (f64, f64),
    (message, hint): (String, &'static str),
) {
    if wanted > has {
        report
            .stop(Kind::BarThinForOperation, part)
            .held(wanted, has)
            .say(message, hint, GEOMETRY);
    }
}

/// Whether the jaw comes out of the bar by spreading, or has to be upset first.
fn jaw_out_of_reach(report: &mut Report, task: &Task<'_>) {
    let jaw = &task.half.jaw;
    let flats: Vec<(f64, f64)> = jaw.stations.iter().map(|s| unrolled(task, s.at)).collect();
    let area = |flat: &(f64, f64)| flat.0 * flat.1;
    let Some(largest) = flats.iter().max_by(|a, b| area(a).total_cmp(&area(b))) else {
        return;
    };
    if area(largest) > task.area {
        /// How much of the jaw is gathered: its thickest third.
        const GATHERED: f64 = 1.0 / 3.0;
        let gathered = upset(GATHERED * jaw.volume_mm3(), task.area);
        let message = format!(
            "{}: its thickest place has {} and the bar {}: upset {} of bar first, {:.1} diameters of {MOST_UPSET} that \
             stand free",
            Step::RoughJaw,
            report.show().area(area(largest)),
            report.show().area(task.area),
            report.size(gathered.length_mm),
            gathered.ratio
        );
        report
            .note(Kind::JawNeedsUpsetting, Part::Jaw)
            .held(area(largest), task.area)
            .say(
                message,
                "upset the bar's end, or take thicker bar",
                GEOMETRY,
            );
        return;
    }
    let (depth, width) = task.squared();
    let reach = |flat: &(f64, f64)| spread_mm((depth, width), flat.0, task.bite());
    let over = flats.iter().find(|flat| flat.1 > reach(flat).most);
    if let Some(flat) = over {
        let band = reach(flat);
        let message = format!(
            "{}: it wants {} where plain blows, in bites of {}, spread the bar to {} to {} (an estimate)",
            Step::RoughJaw,
            report.size(flat.1),
            report.size(task.bite()),
            report.size(band.least),
            report.size(band.most)
        );
        report
            .note(Kind::JawNeedsPeening, Part::Jaw)
            .held(flat.1, band.most)
            .say(
                message,
                "spread it with the peen across the jaw, or upset a little first",
                "estimate between the spread laws of Tomlinson and Stringer (1959) and of Wistreich and Shutt (1959)",
            );
    }
}

fn punched_cold(report: &mut Report, task: &Task<'_>, changes: &Changes) {
    let punched = match task.document.rivet.made {
        Hole::Punched => true,
        Hole::Drilled => false,
    };
    if !punched || !changes.cold.contains(&Step::MakeHole) {
        return;
    }
    let message = format!(
        "{}: the boss is not hot: a punch does not go through cold steel, and breaks",
        Step::MakeHole
    );
    report.stop(Kind::PunchedCold, Part::Boss).say(
        message,
        "heat the boss for it, or drill the hole",
        COMMON_PRACTICE,
    );
}

fn weld_short(report: &mut Report, task: &Task<'_>, operation: &Operation) {
    let (long, _) = scarf(task);
    let least = 2.0 * long;
    let rein = task.half.rein.length() - super::sections::stub_mm(task);
    if rein >= least {
        return;
    }
    let message = format!(
        "{}: {} of rein is left behind the stub, less than the {} that two scarfs take",
        operation.step,
        report.size(rein),
        report.size(least)
    );
    report
        .stop(Kind::WeldUnderScarf, Part::Rein)
        .held(rein, least)
        .say(
            message,
            "draw the rein out of the bar, or make it longer",
            COMMON_PRACTICE,
        );
}
