//! Rules of steel under the hammer against published figures and against geometry.

use std::f64::consts::PI;

use reinwright_core::asked::Hole;
use reinwright_core::making::rules::{
    MOST_SQUEEZE, MOST_UPSET, joggle_mm, passes, rounding, spread_coefficient, spread_mm, upset,
};
use reinwright_core::making::{Procedure, Step};
use reinwright_core::tongs::resolve;
use reinwright_tests::pairs::{flat, length};
use reinwright_tests::{INCH, close, within};

use super::{operation, planned};

/// Spread after Tomlinson and Stringer (1959) and Wistreich and Shutt (1959), both from memory.
#[test]
fn spread_lies_between_two_laws() {
    let table = [
        (0.25, 0.2266, 0.2000),
        (0.5, 0.3065, 0.3333),
        (0.75, 0.3796, 0.4286),
        (1.0, 0.4460, 0.5000),
        (1.5, 0.5585, 0.6000),
        (2.0, 0.6440, 0.6667),
    ];
    for (bite, stringer, shutt) in table {
        let band = spread_coefficient(bite);
        within("least", band.least, f64::min(stringer, shutt), 6e-5);
        within("most", band.most, f64::max(stringer, shutt), 6e-5);
    }
    // A 20 mm square hammered to 15 mm with bites of 20 mm: by hand.
    let band = spread_mm((20.0, 20.0), 15.0, 20.0);
    within("Stringer", band.least, 22.738, 5e-4);
    within("Shutt", band.most, 23.094, 5e-4);
}

/// Area of a regular octagon 2 (√2 − 1) s², of a round π/4 d² (geometry).
#[test]
fn a_square_grows_by_its_corners() {
    let way = rounding(12.0);
    within("to eight sides", way.to_octagon, 1.20711, 5e-6);
    within("to round", way.to_round, 1.05479, 5e-6);
    within("in all", way.to_octagon * way.to_round, 4.0 / PI, 1e-12);
    close(
        "square of equal area",
        way.keeping_mm.powi(2),
        36.0 * PI,
        1e-12,
    );
    within(
        "octagon of equal area",
        way.octagon_keeping_mm / 12.0,
        1.0 / 1.027_028,
        1e-6,
    );
}

/// The stages of a rein of one size show both elongations.
#[test]
fn a_rein_of_one_size_grows_by_four_over_pi() {
    let mut pair = flat();
    let round = |diameter| reinwright_core::asked::PlainSection::Round { diameter };
    (pair.rein.start, pair.rein.end) = (round(length("3/8 in")), round(length("3/8 in")));
    pair.rein.hand_zone = None;
    pair.allowances = reinwright_core::asked::Allowances::NONE;
    pair.rivet.made = Hole::Drilled;
    let plan = planned(&pair, Procedure::ThreeShoulders);
    close(
        "eight sides",
        operation(&plan, Step::DrawOctagon).elongation(),
        1.207_107,
        1e-6,
    );
    close(
        "round",
        operation(&plan, Step::DrawRound).elongation(),
        1.054_786,
        1e-6,
    );
}

/// A free length of up to three diameters is upset in one go (rule 1 of the forging association's
/// design rules for upset forgings); by hand 2.5 at a heat (judgement).
#[test]
fn upsets_are_counted_in_diameters() {
    let area = PI / 4.0 * 100.0;
    let three = upset(3.0 * 10.0 * area, area);
    within("ratio", three.ratio, MOST_UPSET, 1e-12);
    assert_eq!(three.heats, 2);
    assert_eq!(upset(25.0 * area, area).heats, 1);
    within("length", three.length_mm, 30.0, 1e-12);
}

/// A squeeze of 1.3 at a pass (from memory).
#[test]
fn passes_squeeze_no_more_than_is_safe() {
    for (from, to, count) in [(13.0, 10.0, 1), (20.0, 10.0, 3), (10.0, 10.0, 1)] {
        assert_eq!(passes(from, to), count, "{from} to {to}");
    }
    assert!(20.0 / 10.0 <= MOST_SQUEEZE.powi(3));
}

/// Half-inch bosses from 3/4 in bar are an eighth of an inch out of line: e − S/2 (geometry).
#[test]
fn half_inch_bosses_from_three_quarter_bar_want_a_joggle() {
    within(
        "joggle",
        joggle_mm(0.5 * INCH, 0.75 * INCH),
        0.125 * INCH,
        1e-12,
    );
    let mut pair = flat();
    pair.boss.thickness = length("1/2 in");
    let model = resolve(&pair);
    within(
        "of the pair",
        model.joggle,
        joggle_mm(0.5 * INCH, 0.75 * INCH),
        1e-9,
    );
    let plan = planned(&pair, Procedure::ThreeShoulders);
    let what = &operation(&plan, Step::SetNeck).what;
    assert!(what.contains("1/8 in"), "{what}");
    // Until it is bent in, jaw and rein stand that far from the middle of the pair.
    let forged = plan.stages.iter().find(|own| {
        let step = own.operation.as_ref().map(|own| own.step);
        step == Some(Step::ForgeBoss)
    });
    let top = forged.expect("the boss is forged").piece.top();
    let boxes = top.iter().map(kurbo::Shape::bounding_box);
    let all = boxes.reduce(|a, b| a.union(b)).expect("a piece has steel");
    assert!(all.y0 < -0.2 * INCH && all.y1 > 0.45 * INCH, "{all:?}");
}
