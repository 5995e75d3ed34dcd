//! Pipe between the jaws, against a ring worked out anew by its strain energy, and the textbook
//! figures of Roark's Formulas for Stress and Strain, circular rings.

use std::f64::consts::{FRAC_PI_2, PI};

use reinwright_core::finding::{Kind, Severity};
use reinwright_core::proof::strength::{
    PIPE_YIELD_MPA, StrengthLoad, crush, line_pressure, ring_moment, strength,
};
use reinwright_core::shop::Answers;
use reinwright_core::steel::hot_factors;
use reinwright_core::tongs::resolve;
use reinwright_tests::pairs::starting;
use reinwright_tests::{close, within};

/// Roark: opposite loads W on a thin ring, 0.3183 W R under them, 0.1817 W R midway.
#[test]
fn two_opposite_loads() {
    close("W R / π", ring_moment(100.0, 25.0, 0.0), 795.775, 1e-5);
}

/// A quarter of the ring from the level of its middle (φ = 90°) up to the top: half of the force
/// runs through the level section, and each line presses with W / (2 cos β) at β from the top. A
/// section does not turn where both halves meet, so that the moment is nothing on the mean.
fn by_energy(angle: f64) -> f64 {
    const PARTS: u32 = 200_000;
    let statics = |phi: f64| {
        let load = if phi < angle {
            (angle - phi).sin() / (2.0 * angle.cos())
        } else {
            0.0
        };
        0.5 * (1.0 - phi.sin()) - load
    };
    let places: Vec<f64> = (0..PARTS)
        .map(|i| FRAC_PI_2 * (f64::from(i) + 0.5) / f64::from(PARTS))
        .collect();
    let mean: f64 = places.iter().map(|phi| statics(*phi)).sum::<f64>() / f64::from(PARTS);
    let all = places.iter().map(|phi| (statics(*phi) - mean).abs());
    all.fold(0.0, f64::max)
}

#[test]
fn lines_of_a_v() {
    for degrees in [0.0f64, 15.0, 30.0, 45.0, 52.0, 60.0, 70.0] {
        let angle = degrees.to_radians();
        let name = format!("{degrees} degrees");
        within(&name, ring_moment(1.0, 1.0, angle), by_energy(angle), 2e-5);
    }
    // A right-angled V holds pipe by two pairs of lines at right angles, each of W / √2: the
    // moment under one, 0.3183 − 0.1817 of it.
    within(
        "90",
        ring_moment(1.0, 1.0, PI / 4.0),
        0.1366 / 2f64.sqrt(),
        1e-4,
    );
}

/// Pressure that falls straight to nothing at the far end is twice the mean, its middle at a third.
#[test]
fn pressure_along_the_grip() {
    close("even", line_pressure(600.0, 30.0, 15.0), 20.0, 1e-12);
    close("to nothing", line_pressure(600.0, 30.0, 10.0), 40.0, 1e-12);
    close("over half", line_pressure(600.0, 30.0, 5.0), 80.0, 1e-12);
}

/// 1 mm wall in a right-angled V, all along the grip: 6 · 0.0966 · F / L · R / t².
#[test]
fn a_pair_on_thin_pipe() {
    let pair = starting("v bit", "30 x 1 mm pipe", "20 mm square");
    let model = resolve(&pair);
    let strength = strength(&pair, &model, &StrengthLoad::default());
    let crush = crush(&pair.work, &model, &strength).expect("it is pipe");
    let long = model.a.tip() - model.work.from;
    let by_hand = 6.0 * 0.096_58 * strength.leverage() / long * 14.5;
    within("stress", crush.stress_per_n, by_hand, 0.01 * by_hand);
    close("cold", crush.limit_mpa, PIPE_YIELD_MPA, 1e-12);
}

#[track_caller]
fn crushed(work: &str, celsius: f64, expected: Option<Severity>) {
    let pair = starting("v bit", work, "20 mm square");
    let answers = Answers::under(&pair, &StrengthLoad::with_jaws_at(celsius));
    let mut said = answers.findings.iter();
    let said = said.find(|finding| finding.kind == Kind::PipeCrushed);
    assert_eq!(said.map(|finding| finding.severity), expected, "{work}");
}

/// Sound pipe bears a hand cold; hot or thin it does not.
#[test]
fn what_is_crushed() {
    crushed("DN 25", 20.0, None);
    crushed("1 in pipe", 20.0, None);
    crushed("40 x 0.6 mm pipe", 20.0, Some(Severity::Mend));
    crushed("DN 25", 1150.0, Some(Severity::Mend));
    crushed("16 mm round", 1150.0, None);
    assert!(hot_factors(1150.0).effective_yield < 0.02);
}
