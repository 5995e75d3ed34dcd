//! What cannot be made is said with the operation that it meets.

use reinwright_core::asked::{Layout, parse_bar};
use reinwright_core::finding::{Finding, Kind};
use reinwright_core::making::{self, Changes, Plan, Procedure, Step, suits, usual};
use reinwright_core::shop::balance_of;
use reinwright_core::steel::Steel;
use reinwright_core::tongs::document::Document;
use reinwright_core::tongs::resolve;
use reinwright_core::units::Length;
use reinwright_tests::designs::samples;
use reinwright_tests::pairs::{bar, flat, mm};
use reinwright_tests::sentence;

use super::planned;

fn said(plan: &Plan, kind: Kind) -> Option<&Finding> {
    plan.findings.iter().find(|own| own.kind == kind)
}

#[track_caller]
fn check(plan: &Plan, kind: Kind, step: Step) {
    let own = said(plan, kind).unwrap_or_else(|| panic!("{kind:?} is not said"));
    assert!(own.message.starts_with(step.name()), "{own}");
    sentence(&own.message);
    sentence(&own.hint);
}

fn changed(design: &Document, changes: &Changes) -> Plan {
    let model = resolve(design);
    let balance = balance_of(design, &model);
    making::plan_with(
        design,
        (&model, &balance),
        Procedure::ThreeShoulders,
        changes,
    )
}

#[test]
fn samples_are_made_without_a_stop() {
    for (name, design) in samples() {
        let plan = planned(&design, usual(&design, &resolve(&design)));
        let worst = reinwright_core::finding::worst(&plan.findings);
        assert!(
            worst <= Some(reinwright_core::finding::Severity::Note),
            "{name}: {:?}",
            plan.findings
        );
    }
}

#[test]
fn a_bar_thinner_than_its_boss_is_said() {
    let mut pair = flat();
    pair.bar = bar("5/16 in square");
    let plan = planned(&pair, Procedure::ThreeShoulders);
    check(&plan, Kind::BarThinForOperation, Step::SetDownBoss);
}

#[test]
fn a_bar_so_thick_that_nothing_is_left_to_hold_is_said() {
    let mut pair = flat();
    pair.bar = bar("2 in square");
    pair.layout = Layout::Single { tail: Length::ZERO };
    let said = |pair: &Document| {
        let plan = planned(pair, Procedure::ThreeShoulders);
        let own = plan.findings.into_iter().find(|own| {
            own.kind == Kind::NothingToHold && own.message.starts_with(Step::DrawSquare.name())
        });
        own.and_then(|own| own.held)
    };
    let held = said(&pair).expect("it is said with its figure");
    assert!(held.value < held.limit, "{held:?}");
    // A tail gives something to hold.
    pair.layout = Layout::Single { tail: mm(300.0) };
    assert_eq!(said(&pair), None);
}

#[test]
fn a_weld_shorter_than_its_scarfs_is_said() {
    let mut pair = flat();
    let thick = reinwright_core::asked::PlainSection::Round { diameter: mm(30.0) };
    (pair.rein.start, pair.rein.end) = (thick, thick);
    pair.rein.length = mm(120.0);
    let plan = planned(&pair, Procedure::WeldedRein);
    check(&plan, Kind::WeldUnderScarf, Step::Weld);
    let plan = planned(&flat(), Procedure::WeldedRein);
    assert_eq!(
        said(&plan, Kind::WeldUnderScarf).map(|own| &own.message),
        None
    );
}

#[test]
fn a_hole_punched_in_cold_steel_is_said() {
    let cold = Changes {
        cold: vec![Step::MakeHole],
        ..Changes::default()
    };
    check(&changed(&flat(), &cold), Kind::PunchedCold, Step::MakeHole);
    let mut drilled = flat();
    drilled.rivet.made = reinwright_core::asked::Hole::Drilled;
    let plan = changed(&drilled, &cold);
    assert_eq!(said(&plan, Kind::PunchedCold).map(|own| &own.message), None);
}

#[test]
fn what_the_steel_allows_is_left_out_and_moved() {
    let changes = Changes {
        left_out: vec![Step::SetDownRein, Step::DrawOctagon],
        moved: vec![(Step::RoughJaw, Step::SetDownBoss)],
        ..Changes::default()
    };
    let plan = changed(&flat(), &changes);
    let steps: Vec<Step> = plan.operations().map(|own| own.step).collect();
    assert!(!steps.contains(&Step::SetDownRein) && !steps.contains(&Step::DrawOctagon));
    let at = |step| steps.iter().position(|own| *own == step);
    assert_eq!(at(Step::RoughJaw).map(|at| at + 1), at(Step::SetDownBoss));
    assert_eq!(
        said(&plan, Kind::OperationOutOfPlace).map(|own| &own.message),
        None
    );
    let half = resolve(&flat()).pieces()[0].mass().volume;
    let last = plan.stages.last().expect("there are stages");
    reinwright_tests::close("half", last.piece.mass().volume, half, 1e-9);
}

#[test]
fn what_the_steel_does_not_allow_is_refused_by_name() {
    let left_out = Changes {
        left_out: vec![Step::SetDownBoss],
        ..Changes::default()
    };
    let plan = changed(&flat(), &left_out);
    check(&plan, Kind::OperationOutOfPlace, Step::SetDownBoss);
    let moved = Changes {
        moved: vec![(Step::ShapeJaw, Step::SetDownJaw)],
        ..Changes::default()
    };
    let plan = changed(&flat(), &moved);
    check(&plan, Kind::OperationOutOfPlace, Step::ShapeJaw);
}

#[test]
fn what_does_not_suit_says_why() {
    let why = |pair: &Document, procedure| {
        let all = suits(pair, &resolve(pair));
        let own = all.into_iter().find(|own| own.procedure == procedure);
        own.expect("every procedure is judged").why_not
    };
    let mut pair = flat();
    assert_eq!(why(&pair, Procedure::ThreeShoulders), None);
    assert_eq!(why(&pair, Procedure::WeldedRein), None);
    for procedure in [Procedure::FlatTwist, Procedure::RoundFlattened] {
        sentence(&why(&pair, procedure).expect("square bar does not suit"));
    }
    pair.bar.steel = Steel::Spring5160;
    assert!(why(&pair, Procedure::WeldedRein).is_some_and(|why| why.contains("weld")));
    pair.layout = Layout::Single { tail: Length::ZERO };
    assert!(why(&pair, Procedure::ReinsFirst).is_some());
    pair.bar = parse_bar("3/8 in x 1 in flat").expect("a bar");
    assert!(why(&pair, Procedure::ThreeShoulders).is_some_and(|why| why.contains("buckles")));
    let plan = planned(&pair, Procedure::ThreeShoulders);
    assert!(said(&plan, Kind::ProcedureUnsuited).is_some());
}

/// Large jaws are in the way while the rein is drawn.
#[test]
fn a_large_jaw_is_not_made_first() {
    let big = reinwright_tests::pairs::starting("bolt", "1 1/2 in round", "3/4 in square");
    let all = suits(&big, &resolve(&big));
    let own = all.iter().find(|own| own.procedure == Procedure::JawFirst);
    let why = own
        .and_then(|own| own.why_not.as_ref())
        .expect("it is too large");
    assert!(why.contains("held or turned"), "{why}");
}
