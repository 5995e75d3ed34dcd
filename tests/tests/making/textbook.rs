//! Pairs whose making is told elsewhere.

use reinwright_core::asked::{Allowances, Layout, Scale};
use reinwright_core::making::{Face, Procedure, Step, Tool, Turning};
use reinwright_core::tongs::document::{ReinEnd, ReinLine};
use reinwright_core::units::Length;
use reinwright_tests::designs::sample;
use reinwright_tests::pairs::{length, starting};
use reinwright_tests::{INCH, close, within};

use super::{operation, planned};

/// The light chain tongs of W. L. Ilgen, Forge Work (1912): 13 in of 3/4 in square, marks at
/// 1 1/4 in and 2 1/4 in from both ends, jaw and boss set down at each end with quarter turns to the
/// left, then cut apart and the reins drawn to 5/16 in round.
#[test]
fn the_light_chain_pair_goes_step_by_step_as_the_textbook_has_it() {
    let plan = planned(&sample("textbook-light-chain"), Procedure::ThreeShoulders);
    let bar = &plan.stages[0].piece;
    // The book's sum leaves out what the holes and rounded ends take.
    close("bar", bar.length_mm(), 13.0 * INCH, 0.02);
    let left: Vec<Length> = plan.marks.iter().map(|mark| mark.measured).collect();
    let right: Vec<Length> = plan.marks.iter().map(|mark| mark.from_end).collect();
    let marks = [length("1 1/4 in"), length("2 1/4 in")];
    assert_eq!(left[..2], marks);
    assert_eq!([right[4], right[3]], marks);
    let how: Vec<_> = plan
        .marks
        .iter()
        .map(|mark| (mark.face, mark.tool))
        .collect();
    assert_eq!(how[0], (Face::First, Tool::CentrePunch));
    assert_eq!(how[1], (Face::QuarterRound, Tool::CentrePunch));
    assert_eq!(how[2], (Face::AllRound, Tool::Chisel));
    let steps: Vec<Step> = plan.operations().map(|own| own.step).collect();
    let first = [
        Step::SetDownJaw,
        Step::SetDownBoss,
        Step::SetDownRein,
        Step::ForgeBoss,
        Step::CutApart,
        Step::DrawSquare,
        Step::DrawOctagon,
        Step::DrawRound,
    ];
    assert_eq!(steps[..first.len()], first);
    for step in [Step::SetDownBoss, Step::SetDownRein] {
        assert_eq!(operation(&plan, step).turn, Turning::QuarterLeft);
    }
    let section = |step| operation(&plan, step).after.section.expect("it has steel");
    within("jaw", section(Step::SetDownJaw).depth_mm, 0.5 * INCH, 1e-9);
    // Boss and neck together: the boss is the thinner.
    let boss = &plan.stages[2].piece;
    let thin = boss.cross(1.2 * 1.25 * INCH + INCH).expect("it has steel");
    within("boss", thin.width_mm, 0.5 * INCH, 1e-9);
    let drawn = operation(&plan, Step::DrawRound);
    close("rein", drawn.after.part_length_mm, 17.75 * INCH, 0.02);
}

/// A 3/4 in round blank for both halves with 2 1/2 in at each end for jaw, boss and margin, and reins
/// of 3/8 in round and 13 in each, is 11 1/2 in long (common practice, no source).
#[test]
fn a_blank_for_two_with_its_reins_first_is_eleven_and_a_half_inches() {
    let mut pair = starting("flat", "3/8 in flat", "3/4 in round");
    let round = reinwright_core::asked::PlainSection::Round {
        diameter: length("3/8 in"),
    };
    (pair.rein.start, pair.rein.end) = (round, round);
    pair.rein.length = length("13 in");
    pair.rein.line = ReinLine::Straight;
    pair.rein.finish = ReinEnd::Square;
    pair.rein.hand_zone = None;
    pair.layout = Layout::BothOnOneBar;
    pair.allowances = Allowances::NONE;
    let plan = planned(&pair, Procedure::ReinsFirst);
    let drawn = operation(&plan, Step::DrawSquare);
    let middle = drawn.before.part_length_mm;
    within("blank", 2.0 * 2.5 * INCH + middle, 11.5 * INCH, 1e-6);
    let round = operation(&plan, Step::DrawRound);
    within("both reins", round.after.part_length_mm, 26.0 * INCH, 1e-6);
    let section = round.after.section.expect("it has steel");
    within("round", section.depth_mm, 0.375 * INCH, 1e-9);
}

/// Scale burns off the reins while they stand proud: the square keeps what the rest will take.
#[test]
fn a_rein_is_proud_by_what_it_still_burns() {
    let mut pair = starting("flat", "3/8 in flat", "3/4 in square");
    let side = |pair| {
        let plan = planned(&pair, Procedure::ThreeShoulders);
        let drawn = operation(&plan, Step::DrawSquare).clone();
        drawn.after.section.expect("it has steel").depth_mm
    };
    pair.allowances = Allowances::NONE;
    let bare = side(pair.clone());
    pair.allowances.scale = Scale::Whole { percent: 5.0 };
    let proud = side(pair) / bare;
    assert!(proud > 1.001 && proud < 1.05f64.sqrt(), "{proud}");
}
