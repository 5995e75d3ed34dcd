//! Which side is set down and struck, which way the bar is turned for it, and what of it is hot.

use reinwright_core::making::{
    self, Beyond, Blows, Change, Changes, Plan, Procedure, Refused, Side, Step, Turning,
};
use reinwright_core::shop::balance_of;
use reinwright_core::tongs::document::{Document, Turn};
use reinwright_core::tongs::resolve;
use reinwright_tests::designs::samples;
use reinwright_tests::pairs::{self, flat, v_bit};
use reinwright_tests::{close, within};

use super::{operation, planned};

fn across(pair: &Document, steps: &[Step]) -> Plan {
    let changes = Changes {
        across: steps.to_vec(),
        ..Changes::default()
    };
    let model = resolve(pair);
    let balance = balance_of(pair, &model);
    let how = Procedure::ThreeShoulders;
    making::plan_with(pair, (&model, &balance), how, &changes)
}

const JAW: Step = Step::SetDownJaw;
const BOSS: Step = Step::SetDownBoss;
const REIN: Step = Step::SetDownRein;

/// A bar has four faces, so that its turns follow from which of them lies on the anvil, counted by
/// hand: 0 inside, 1 joint, 2 back, 3 outside, the way that a pair to the left is turned.
#[test]
fn turns_follow_from_the_sides_that_lie_on_the_anvil() {
    use Turning::{Half, None, QuarterLeft, QuarterRight};
    let cases: [(&[Step], [Turning; 3]); 6] = [
        (&[], [None, QuarterLeft, QuarterLeft]),
        (&[REIN], [None, QuarterLeft, QuarterRight]),
        (&[BOSS], [None, QuarterRight, QuarterRight]),
        (&[JAW], [None, QuarterRight, QuarterLeft]),
        (&[JAW, REIN], [None, QuarterRight, QuarterRight]),
        (&[JAW, BOSS, REIN], [None, QuarterLeft, QuarterLeft]),
    ];
    let turned = |turn| match turn {
        QuarterLeft => QuarterRight,
        QuarterRight => QuarterLeft,
        None | Half | Turning::BetweenBlows => turn,
    };
    for (steps, wanted) in cases {
        let mut pair = flat();
        let found = |pair: &Document| {
            let plan = across(pair, steps);
            [JAW, BOSS, REIN].map(|step| operation(&plan, step).turn)
        };
        pair.hand = Turn::Left;
        assert_eq!(found(&pair), wanted, "{steps:?}");
        pair.hand = Turn::Right;
        assert_eq!(found(&pair), wanted.map(turned), "{steps:?}, to the right");
    }
}

/// Half-face blows fall from above on the side that is kept, and the anvil sets down the one across:
/// the jaw behind the near edge, boss and rein before the far one (trade texts).
#[test]
fn the_hammer_keeps_one_side_and_the_anvil_sets_down_the_other() {
    let plan = planned(&flat(), Procedure::ThreeShoulders);
    let cases = [
        (JAW, Side::Inside, Side::Back, Beyond::Rein),
        (BOSS, Side::Joint, Side::Outer, Beyond::Tip),
        (REIN, Side::Back, Side::Inside, Beyond::Tip),
    ];
    for (step, under, struck, beyond) in cases {
        let own = operation(&plan, step);
        let edge = own.edge.expect("a shoulder has an edge");
        assert_eq!((edge.under, edge.beyond), (under, beyond), "{step}");
        assert_eq!(own.blows, Blows::On(struck), "{step}");
    }
}

/// The steel that is kept shows on the drawing: a jaw set down from its back lies low, and one set
/// down from its inside lies high, by what is struck off.
#[test]
fn a_jaw_set_down_from_its_back_lies_as_much_lower() {
    let top_and_low = |steps: &[Step]| {
        let plan = across(&flat(), steps);
        let at = plan.stages.iter().position(|stage| {
            let step = stage.operation.as_ref().map(|own| own.step);
            step == Some(JAW)
        });
        let piece = &plan.stages[at.expect("the jaw is set down")].piece;
        let side = piece.side();
        let area = kurbo::Shape::bounding_box(&side[0]);
        let thick = piece.cross(1.0).expect("it has steel").depth_mm;
        let at_tip = |&&(x, _): &&(f64, f64)| x > area.x1 - 1.0;
        let corners = reinwright_tests::outline::corners(&side[0]);
        let ys = || corners.iter().filter(at_tip).map(|(_, y)| *y);
        let (low, high) = (
            ys().fold(f64::INFINITY, f64::min),
            ys().fold(f64::NEG_INFINITY, f64::max),
        );
        (low, high, thick, area)
    };
    let (low, high, thick, area) = top_and_low(&[]);
    within("back kept", high, area.y1, 1e-9);
    within("set down", low, area.y1 - thick, 1e-9);
    let (low, high, thick, area) = top_and_low(&[JAW]);
    within("inside kept", low, area.y0, 1e-9);
    within("set down from above", high, area.y0 + thick, 1e-9);
}

/// A boss that keeps its joint face leaves jaw and rein half a bar out of line: S/2 (geometry).
#[test]
fn a_boss_kept_on_its_joint_face_wants_half_the_bar_as_joggle() {
    let plan = across(&flat(), &[BOSS]);
    let what = &operation(&plan, Step::SetNeck).what;
    assert!(what.contains("by 3/8 in"), "3/4 in bar: {what}");
}

/// Whatever side is set down, the half that comes out is the same.
#[test]
fn every_side_ends_in_the_same_half() {
    for pair in [flat(), v_bit()] {
        let half = resolve(&pair).pieces()[0].mass().volume;
        for steps in [&[JAW][..], &[BOSS], &[REIN], &[JAW, BOSS, REIN]] {
            let plan = across(&pair, steps);
            let last = plan.stages.last().expect("there are stages");
            close("half", last.piece.mass().volume, half, 1e-9);
            assert_eq!(plan.refused, []);
        }
    }
}

#[test]
fn what_can_be_changed_is_known_before_it_is_tried() {
    let plan = planned(&flat(), Procedure::ThreeShoulders);
    let cases = [
        (Change::LeaveOut(Step::DrawOctagon), Ok(())),
        (Change::Across(REIN), Ok(())),
        (Change::MoveBefore(Step::MakeHole, Step::RoughJaw), Ok(())),
        (Change::LeaveOut(BOSS), Err(Refused::LeftOut(BOSS))),
        (
            Change::Across(Step::MakeHole),
            Err(Refused::NoSide(Step::MakeHole)),
        ),
        (
            Change::MoveBefore(BOSS, JAW),
            Err(Refused::Needs(BOSS, JAW)),
        ),
        (
            Change::LeaveOut(Step::Weld),
            Err(Refused::NotThere(Step::Weld)),
        ),
    ];
    for (change, wanted) in cases {
        assert_eq!(plan.allows(change), wanted, "{change:?}");
        if let Err(why) = wanted {
            reinwright_tests::sentence(&why.to_string());
            reinwright_tests::sentence(why.mend());
        }
    }
}

/// Hot, struck, measured and held places lie on the piece that they are told of, and calipers are
/// set to the steel that is there.
#[test]
fn places_lie_on_their_piece() {
    let all = samples().into_iter().map(|(_, pair)| pair);
    for pair in all.chain(pairs::all().into_iter().map(|(_, pair)| pair)) {
        for procedure in Procedure::ALL {
            let plan = planned(&pair, procedure);
            for stages in plan.stages.windows(2) {
                let Some(own) = &stages[1].operation else {
                    continue;
                };
                let lengths = [&stages[0].piece, &stages[1].piece].map(|it| it.length_mm());
                let on = |(from, to): (f64, f64), long: f64| {
                    -1e-6 <= from && from <= to && to <= long + 1e-6
                };
                let what = format!("{}, {}", procedure.name(), own.step);
                assert!(own.hot_mm.is_none_or(|hot| on(hot, lengths[0])), "{what}");
                let after = own.hot_after_mm;
                assert!(after.is_none_or(|hot| on(hot, lengths[1])), "{what}");
                assert_eq!(own.hot_mm.is_some(), after.is_some(), "{what}");
                assert!(on(own.struck_mm, lengths[1]), "{what}");
                for caliper in &own.calipers {
                    let cross = stages[1].piece.cross(caliper.at_mm);
                    let cross = cross.expect("there is steel");
                    close(&what, caliper.depth_mm, cross.depth_mm, 1e-9);
                    close(&what, caliper.width_mm, cross.width_mm, 1e-9);
                }
            }
        }
    }
}
