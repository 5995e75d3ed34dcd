//! Which coil would do the most, and whether the machine drives it.

use reinwright_core::heats::helper::{best_coil, in_range, tuned};
use reinwright_core::heats::induction::{LOADED_BAND, resonance_khz};
use reinwright_core::heats::{Machine, Prepared, Sources};
use reinwright_core::making::Procedure;
use reinwright_core::steel::Steel;
use reinwright_core::units::{Show, Unit};
use reinwright_tests::pairs::{length, starting};
use reinwright_tests::{close, sentence};

use super::{planned, shop};

fn machine(least_khz: f64) -> Machine {
    Machine {
        power_kw: 8.0,
        least_khz,
        most_khz: 200.0,
        capacitor_uf: 8.0,
        tube: length("3/8 in"),
    }
}

/// The empty coil swings where its inductance and the capacitors have it; more turns swing lower, until the machine
/// does not follow.
#[test]
fn more_turns_take_the_machine_out_of_its_range() {
    let source = super::coil("c", "1 1/2 in", (5.0, "3/4 in"));
    let own = source.coil().expect("it is one");
    let found = tuned(own, Some(&machine(50.0)));
    let khz = found.resonance_khz.expect("the capacitors are known");
    close("kHz", khz, resonance_khz(found.inductance_uh, 8.0), 1e-12);
    let most = found.most_turns.expect("the machine is known");
    assert!((1.0..40.0).contains(&most), "{most}");
    let mut longer = own.clone();
    longer.turns = most + 1.0;
    let over = tuned(&longer, None).inductance_uh;
    assert!(!in_range(&machine(50.0), over));
    assert!(resonance_khz(over * (1.0 + LOADED_BAND), 8.0) < 50.0);
    longer.turns = most;
    assert!(in_range(&machine(50.0), tuned(&longer, None).inductance_uh));
}

#[test]
fn the_coil_that_is_advised_does_what_is_said_of_it() {
    let design = starting("v bit", "1/2 in square on corners", "3/4 in round");
    let plan = planned(&design, Procedure::ThreeShoulders);
    let none = Sources {
        machine: Some(machine(30.0)),
        ..shop(Vec::new())
    };
    let prepared = Prepared::new(Steel::Mild, &plan, &none);
    let advice = best_coil(&[&prepared], Unit::Inch).expect("the machine drives one");
    assert_eq!(advice.serves.len() + advice.cannot.len(), advice.hot);
    // As a coil of the shop it serves the same.
    let with = Sources {
        sources: vec![advice.source.clone()],
        ..none.clone()
    };
    let again = Prepared::new(Steel::Mild, &plan, &with);
    let served = again
        .rows
        .iter()
        .filter(|row| row.offers.first().is_some_and(Result::is_ok));
    assert_eq!(served.count(), advice.serves.len());
    // No coil of the shop that was tried does more.
    for bore in ["1 in", "1 1/4 in", "1 1/2 in", "2 in", "2 1/2 in"] {
        let other = Sources {
            sources: vec![super::coil("other", bore, (5.0, "3/4 in"))],
            ..none.clone()
        };
        let other = Prepared::new(Steel::Mild, &plan, &other);
        let served = other
            .rows
            .iter()
            .filter(|row| row.offers.first().is_some_and(Result::is_ok));
        assert!(served.count() <= advice.serves.len(), "{bore}");
    }
    advice
        .words(Show::default())
        .iter()
        .for_each(|words| sentence(words));
}

/// A machine that drives nothing is told by no advice.
#[test]
fn a_machine_that_drives_nothing_has_no_coil() {
    let design = starting("flat", "3/8 in flat", "3/4 in square");
    let plan = planned(&design, Procedure::ThreeShoulders);
    let none = Sources {
        machine: Some(Machine {
            least_khz: 199.0,
            ..machine(30.0)
        }),
        ..shop(Vec::new())
    };
    let prepared = Prepared::new(Steel::Mild, &plan, &none);
    assert_eq!(best_coil(&[&prepared], Unit::Inch), None);
}
