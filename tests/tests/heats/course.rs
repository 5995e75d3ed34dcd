//! A heat along the piece and through it: no heat is lost, and what is kept is kept.

use reinwright_core::heats::course::{Warmth, course};
use reinwright_core::heats::{Back, Prepared};
use reinwright_core::making::{Procedure, Step};
use reinwright_core::steel::Steel;
use reinwright_tests::pairs::starting;
use reinwright_tests::{close, within};

use super::{coil, gas, planned, shop};

#[test]
fn every_heat_keeps_its_account() {
    let design = starting("v bit", "1/2 in square on corners", "3/4 in round");
    let plan = planned(&design, Procedure::ThreeShoulders);
    let shop = shop(vec![
        coil("wide", "1 1/2 in", (4.0, "3/4 in")),
        gas(Back::Open, "10 in"),
    ]);
    let prepared = Prepared::new(Steel::Mild, &plan, &shop);
    let mut followed = 0;
    for row in 0..prepared.rows.len() {
        for source in 0..2 {
            let Some(heat) = course(&prepared, (row, source), &Warmth::default()) else {
                continue;
            };
            let account = heat.account;
            close("J", account.given_j - account.lost_j, account.held_j, 1e-9);
            assert!(account.held_j > 0.0 && heat.out_s > 1.0);
            followed += 1;
        }
    }
    assert!(followed > 10, "{followed}");
}

/// The heat that is followed takes about as long as the one that is planned with, which knows nothing
/// of what runs along the bar.
#[test]
fn the_plan_reckons_with_the_same_heats() {
    let design = starting("v bit", "1/2 in square on corners", "3/4 in round");
    let plan = planned(&design, Procedure::ThreeShoulders);
    let shop = shop(vec![
        coil("tight", "1 in", (5.0, "1 in")),
        gas(Back::Open, "10 in"),
    ]);
    let prepared = Prepared::new(Steel::Mild, &plan, &shop);
    let row = prepared
        .rows
        .iter()
        .position(|row| row.step == Step::SetDownJaw)
        .expect("it is set down");
    for source in 0..2 {
        let heat = course(&prepared, (row, source), &Warmth::default()).expect("it goes in");
        let offer = prepared.offer(row, source).expect("it goes in");
        close(
            "s",
            heat.out_s,
            offer.curve.between_s(20.0, offer.target_celsius),
            0.25,
        );
    }
}

/// The skin leads in the heat and follows on the anvil; what is left makes the next heat shorter.
#[test]
fn skin_and_middle_change_places() {
    let design = starting("flat", "3/8 in flat", "3/4 in square");
    let plan = planned(&design, Procedure::ThreeShoulders);
    let shop = shop(vec![coil("wide", "1 1/2 in", (4.0, "3/4 in"))]);
    let prepared = Prepared::new(Steel::Mild, &plan, &shop);
    let row = prepared
        .rows
        .iter()
        .position(|row| row.step == Step::SetDownJaw)
        .expect("it is set down");
    let first = course(&prepared, (row, 0), &Warmth::default()).expect("it goes in");
    let mut ahead = 0.0_f64;
    for moment in first.moments.iter().filter(|own| own.seconds > 1.0) {
        let lead = moment.skin_celsius - moment.middle_celsius;
        if moment.seconds < first.out_s - 1.0 {
            assert!(lead > 0.0, "{moment:?}");
            ahead = ahead.max(lead);
        } else if moment.seconds > first.out_s + 1.0 {
            assert!(lead < 0.0, "{moment:?}");
        }
    }
    assert!(ahead < 130.0, "{ahead}");
    let again = course(&prepared, (row, 0), &first.left).expect("it goes in");
    assert!(
        again.out_s < 0.7 * first.out_s,
        "{} after {}",
        again.out_s,
        first.out_s
    );
    for (_, celsius) in first.along.iter().chain(&first.left_along) {
        assert!((20.0..=1200.0).contains(celsius), "{celsius}");
    }
}

/// What is worked in turns is worked where it was hot, down to the end of the forging range.
#[test]
fn what_is_worked_in_turns_is_worked_down_where_it_was_hot() {
    let design = starting("flat", "3/8 in flat", "3/4 in square");
    let plan = planned(&design, Procedure::ThreeShoulders);
    let shop = shop(vec![coil("wide", "1 1/2 in", (4.0, "3/4 in"))]);
    let prepared = Prepared::new(Steel::Mild, &plan, &shop);
    let drawn = |own: &&reinwright_core::heats::Row| own.step == Step::DrawSquare;
    let row = prepared.rows.iter().find(drawn).expect("reins are drawn");
    let (from, to) = prepared
        .offer(row.number - 1, 0)
        .expect("it goes in")
        .entry
        .heated_mm;
    let needs = row.needs_mm.expect("it is drawn hot");
    assert!(
        to - from < 0.8 * (needs.1 - needs.0),
        "it is longer than the heat"
    );
    let heat = course(&prepared, (row.number - 1, 0), &Warmth::default()).expect("it goes in");
    let (from, to) = (from.max(needs.0), to.min(needs.1));
    let mean = |along: &[(f64, f64)]| {
        let hot = along.iter().filter(|(at, _)| (from..=to).contains(at));
        let all: Vec<f64> = hot.map(|(_, celsius)| *celsius).collect();
        let count = all.len() as f64;
        all.iter().sum::<f64>() / count
    };
    within("out", mean(&heat.along), 1150.0, 15.0);
    within(
        "worked",
        mean(&heat.left_along),
        prepared.range.lower_celsius,
        15.0,
    );
}
