//! The tools that make a pair.

use reinwright_core::asked::Hole;
use reinwright_core::finding::Severity;
use reinwright_core::shop::{ToolAnswers, tools_for};
use reinwright_core::tongs::document::HeadKind;
use reinwright_core::tool::{Groove, ToolStyle, check_limits};
use reinwright_tests::designs::sample;
use reinwright_tests::within;

const SAMPLES: [&str; 6] = [
    "textbook-light-chain",
    "v-bit-square",
    "hollow-bit-round",
    "light-flat",
    "open-flat",
    "bowed-ball-ends",
];

/// Every one of them can be made and suits: nothing above a Note stands against it.
#[test]
fn the_tools_of_every_sample_are_sound() {
    for name in SAMPLES {
        let tools = tools_for(&sample(name));
        assert!(tools.len() >= 3, "{name}: {}", tools.len());
        for (what, own) in tools {
            check_limits(&own).unwrap_or_else(|why| panic!("{name} {what}: {why}"));
            let found = ToolAnswers::to(&own).findings;
            let worse: Vec<_> = found
                .iter()
                .filter(|own| own.severity > Severity::Note)
                .collect();
            assert!(worse.is_empty(), "{name} {what}: {worse:#?}");
        }
    }
}

/// The textbook pair has a hole of 5/16 in through 1/2 in: its punch is 0.6 of the hole, its drift comes to
/// the hole, its set takes a head of 1.75 rivets (ASME B18.1.2).
#[test]
fn sizes_are_the_pairs_own() {
    let pair = sample("textbook-light-chain");
    let hole = 25.4 * 5.0 / 16.0;
    for (what, own) in tools_for(&pair) {
        match own.shape.style {
            ToolStyle::RoundPunch(punch) => {
                within(what, punch.end.mm(), 0.6 * hole, 0.4);
                within(what, punch.through.mm(), 12.7, 1e-6);
                // Sunk right through, a cone of these sizes is as wide as the hole, to the half
                // millimetre that its taper is rounded by.
                let wide = own.bar.stock.size().mm() - punch.end.mm();
                let at_face = punch.end.mm() + wide * 12.7 / punch.taper.mm();
                within(what, at_face, hole, 0.1);
            }
            ToolStyle::Drift(drift) => within(what, drift.size.mm(), hole, 1e-9),
            ToolStyle::RivetSet(set) => {
                assert!(
                    set.cup.mm() >= 1.75 * hole && set.cup.mm() < 1.2 * 1.75 * hole,
                    "{}",
                    set.cup
                );
            }
            other => panic!("{what}: {other:?}"),
        }
    }
}

#[test]
fn what_a_pair_does_not_need_is_not_made() {
    let mut pair = sample("textbook-light-chain");
    pair.rivet.made = Hole::Drilled;
    let words = |pair: &_| {
        tools_for(pair)
            .into_iter()
            .map(|own| own.0)
            .collect::<Vec<_>>()
    };
    assert_eq!(words(&pair), ["rivet-set"]);
    pair.rivet.head = HeadKind::Flat;
    assert!(words(&pair).is_empty());
    assert!(words(&sample("hollow-bit-round")).contains(&"swage"));
}

/// A V bit of a wall t, a leg l inside and 90° is (l + t) √2 wide outside, lip to lip: by geometry of two plates.
#[test]
fn a_v_bit_gets_its_v() {
    let pair = sample("v-bit-square");
    let number = |path: &str| {
        let field = pair.field(path).expect("it has the field");
        field.value.number().expect("a number")
    };
    within("angle", number("jaw.angle"), 90.0, 1e-9);
    let (leg, wall) = (number("jaw.leg"), number("jaw.wall"));
    let tools = tools_for(&pair);
    let own = tools
        .iter()
        .find(|own| own.0 == "v-block")
        .expect("it has one");
    let ToolStyle::BottomSwage(swage) = own.1.shape.style else {
        panic!("{:?}", own.1.shape);
    };
    within("groove", swage.groove.mm(), (leg + wall) * 2f64.sqrt(), 0.5);
    let Groove::Vee { angle } = swage.shape else {
        panic!("{swage:?}");
    };
    within("angle", angle.in_degrees(), 90.0, 1e-9);
    assert!(tools.iter().all(|own| own.0 != "swage"));
}
