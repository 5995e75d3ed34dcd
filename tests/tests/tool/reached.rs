//! Every section of a finished tool is made by an operation that works there, from larger, equal and smaller
//! bar; and calipers name it.

use reinwright_core::finding::Part;
use reinwright_core::making::{Operation, Plan, Stage, Step, plan_tool, usual_for_tool};
use reinwright_core::shape::{Cross, Piece};
use reinwright_core::shop::ToolAnswers;
use reinwright_core::tool::forging::Forging;
use reinwright_core::tool::{Model, Tool, ToolKind};
use reinwright_tests::tools::{all, tool};

/// Sizes nearer than this are one to a smith, mm, and as a part of the size.
const NEAR: (f64, f64) = (0.2, 0.02);

fn planned(own: &Tool) -> (Model, Plan) {
    let answers = ToolAnswers::to(own);
    let plan = plan_tool(own, &answers.model, &answers.balance, usual_for_tool(own));
    (answers.model, plan)
}

/// Each style from the bar that suits, from some that are larger and smaller, and in other sizes.
fn many() -> Vec<(String, Tool)> {
    let mut many = Vec::new();
    for (name, own) in all() {
        for times in [0.75, 0.9, 1.0, 1.25, 1.6] {
            let mut other = own.clone();
            for path in ["bar.diameter", "bar.side"] {
                if let Some(field) = own.field(path) {
                    let size = times * field.value.number().expect("a size");
                    other
                        .set(path, &format!("{size} mm"))
                        .expect("it is in range");
                }
            }
            many.push((format!("{name} from {times} of its bar"), other));
        }
    }
    for (kind, size, bar) in [
        (ToolKind::RoundPunch, "20 mm", "16 mm round"),
        (ToolKind::SlotPunch, "30 mm", "20 mm square"),
        (ToolKind::SquarePunch, "6 mm", "16 mm round"),
        (ToolKind::CentrePunch, "4 mm", "10 mm square"),
        (ToolKind::Drift, "10 mm", "20 mm round"),
        (ToolKind::Drift, "30 mm", "25 mm square"),
        (ToolKind::HotChisel, "30 mm", "30 mm square"),
        (ToolKind::ColdChisel, "12 mm", "16 mm round"),
        (ToolKind::RivetSet, "12 mm", "20 mm round"),
        (ToolKind::CutOff, "12 mm", "20 mm square"),
        (ToolKind::BottomFuller, "16 mm", "20 mm square"),
        (ToolKind::BottomSwage, "30 mm", "30 mm square"),
        (ToolKind::BendingFork, "20 mm", "30 mm square"),
    ] {
        many.push((
            format!("{kind} of {size} from {bar}"),
            tool(kind, size, bar),
        ));
    }
    let mut oval = tool(ToolKind::Drift, "20 mm", "25 mm round");
    oval.set("working.section", "oval").expect("it is a way");
    many.push(("oval drift".to_owned(), oval));
    many
}

fn near(a: f64, b: f64) -> bool {
    (a - b).abs() < NEAR.0 + NEAR.1 * a.max(b)
}

fn alike(a: &Cross, b: &Cross) -> bool {
    near(a.depth_mm, b.depth_mm) && near(a.width_mm, b.width_mm)
}

/// The section at a part of the way along a stretch, and where that is.
fn cross(piece: &Piece, stretch: usize, part: f64) -> (f64, Option<Cross>) {
    let before: f64 = piece.stretches[..stretch]
        .iter()
        .map(|own| own.length_mm())
        .sum();
    let at = before + part * piece.stretches[stretch].length_mm();
    (at, piece.cross(at))
}

/// The operation after which a section is as it stays; none where the bar has it.
fn maker(plan: &Plan, stretch: usize, part: f64) -> (Option<&Operation>, f64) {
    let last = plan.stages.last().expect("there are stages");
    let (_, end) = cross(&last.piece, stretch, part);
    let end = end.expect("there is steel");
    let is_there = |stage: &Stage| {
        cross(&stage.piece, stretch, part)
            .1
            .is_some_and(|own| alike(&own, &end))
    };
    let other = plan.stages.iter().rposition(|stage| !is_there(stage));
    let made = other.map(|at| &plan.stages[at + 1]);
    let at = made.map_or(0.0, |stage| cross(&stage.piece, stretch, part).0);
    (made.and_then(|stage| stage.operation.as_ref()), at)
}

fn is_ground(operation: &Operation) -> bool {
    let ground = [Forging::GrindEdge, Forging::GrindPoint];
    ground.map(Step::Tool).contains(&operation.step) && operation.part == Part::Working
}

/// A shoulder is rounded under the hammer until it is dressed, mm.
const ROUNDED: f64 = 2.0;

#[test]
fn every_section_is_made_where_an_operation_works() {
    for (name, own) in many() {
        let (model, plan) = planned(&own);
        for (stretch, steel) in model.piece.stretches.iter().enumerate() {
            for part in [0.03, 0.1, 0.25, 0.4, 0.5, 0.6, 0.75, 0.9, 0.97] {
                let (Some(made), at) = maker(&plan, stretch, part) else {
                    continue;
                };
                if steel.length_mm() * f64::min(part, 1.0 - part) < ROUNDED {
                    continue;
                }
                let what = format!("{name}: {part} of stretch {stretch} by {}", made.step);
                if is_ground(made) {
                    continue;
                }
                let (from, to) = made
                    .hot_after_mm
                    .unwrap_or_else(|| panic!("{what}: it is cold"));
                assert!((from..=to).contains(&at), "{what}: {at} of {from} to {to}");
            }
        }
    }
}

/// What a smith sets calipers to along the operations comes to every size of the finished working end.
#[test]
fn calipers_name_every_size_of_the_working_end() {
    for (name, own) in many() {
        let (model, plan) = planned(&own);
        let mut at = 0.0;
        for run in &model.runs[0] {
            for part in [0.03, 0.97] {
                let cross = model.piece.cross(at + part * run.length).expect("steel");
                let named = plan.operations().flat_map(|own| &own.calipers).any(|own| {
                    near(own.depth_mm, cross.depth_mm) && near(own.width_mm, cross.width_mm)
                });
                let bar = plan.stages[0].piece.cross(1.0).expect("bar");
                let ground = own.shape.style.ground_degrees().is_some() && at < 30.0;
                assert!(
                    named || alike(&bar, &cross) || ground,
                    "{name}: {:.1} x {:.1} at {at:.1}",
                    cross.depth_mm,
                    cross.width_mm
                );
            }
            at += run.length;
        }
    }
}

/// Nothing is upset that the bar gives, and all is that it does not: a part is upset where its largest section
/// is over the bar's, by closed forms of the round and the square.
#[test]
fn what_is_stouter_than_the_bar_is_upset() {
    let upset = |own: &Tool| {
        let (_, plan) = planned(own);
        let steps: Vec<Step> = plan.operations().map(|own| own.step).collect();
        [Forging::UpsetBlock, Forging::UpsetBody, Forging::UpsetEnd]
            .into_iter()
            .filter(|step| steps.contains(&Step::Tool(*step)))
            .collect::<Vec<_>>()
    };
    for (kind, size, bar, expected) in [
        (
            ToolKind::RoundPunch,
            "20 mm",
            "16 mm round",
            vec![Forging::UpsetEnd],
        ),
        (ToolKind::RoundPunch, "16 mm", "16 mm round", vec![]),
        // A square of 18 mm has 324 mm², a round of 20 mm 314 mm², of 22 mm 380 mm².
        (
            ToolKind::SquarePunch,
            "18.5 mm",
            "20 mm round",
            vec![Forging::UpsetEnd],
        ),
        (ToolKind::SquarePunch, "18.5 mm", "22 mm round", vec![]),
        (
            ToolKind::Drift,
            "30 mm",
            "25 mm round",
            vec![Forging::UpsetBody, Forging::UpsetEnd],
        ),
        (ToolKind::Drift, "25 mm", "25 mm round", vec![]),
        (ToolKind::BottomFuller, "25 mm", "40 mm square", vec![]),
        (
            ToolKind::BottomFuller,
            "25 mm",
            "25 mm square",
            vec![Forging::UpsetBlock],
        ),
    ] {
        assert_eq!(
            upset(&tool(kind, size, bar)),
            expected,
            "{kind} of {size} from {bar}"
        );
    }
}
