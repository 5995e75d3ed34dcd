//! How the middle follows the skin.

use reinwright_core::heats::Bulk;
use reinwright_core::heats::clock::flat_ratio_mm;
use reinwright_core::heats::heating::{DIFFUSIVITY_MM2_S, Thick};
use reinwright_core::heats::middle::{Body, coefficient, eigenvalue, following, steady_heat, step};
use reinwright_tests::{close, within};

/// First roots and coefficients of the series for a Biot number, as textbooks of heat transfer print them
/// behind Heisler's charts (from memory).
#[test]
fn first_terms_are_those_of_the_charts() {
    for (body, biot, root, weight) in [
        (Body::Slab, 0.1, 0.3111, 1.0161),
        (Body::Slab, 1.0, 0.8603, 1.1191),
        (Body::Slab, 10.0, 1.4289, 1.2620),
        (Body::Cylinder, 0.1, 0.4417, 1.0246),
        (Body::Cylinder, 1.0, 1.2558, 1.2071),
        (Body::Cylinder, 10.0, 2.1795, 1.5677),
    ] {
        let found = eigenvalue(body, biot, 0);
        within(&format!("{body:?} {biot}"), found, root, 1.1e-4);
        within(
            &format!("{body:?} {biot}"),
            coefficient(body, found),
            weight,
            2e-4,
        );
    }
}

/// A skin that is held: the middle of a round bar has 0.1 left of its difference at Fo 0.48, of a slab at
/// 1.03, from their first terms 1.602·e^(−5.783·Fo) and 1.273·e^(−2.467·Fo) (Carslaw and Jaeger).
#[test]
fn the_middle_follows_a_skin_that_is_held() {
    within(
        "round",
        following(Body::Cylinder, 0.1),
        (1.602_f64 / 0.1).ln() / 5.783,
        1e-3,
    );
    within(
        "slab",
        following(Body::Slab, 0.1),
        (1.2732_f64 / 0.1).ln() / 2.4674,
        1e-3,
    );
    for fourier in [0.3, 0.6] {
        let round = step(Body::Cylinder, 1e6, fourier);
        close(
            "round",
            round.middle,
            1.6020 * (-5.7832 * fourier).exp(),
            1e-2,
        );
        assert!(round.skin.abs() < 1e-4);
    }
}

/// A maker of machines says that heat is in the middle of 20 mm in under 10 s, and of 75 mm in 150 s: within
/// 5 % of the skin after D²/40 s, D in mm, which is Fo 0.6.
#[test]
fn the_middle_is_there_in_the_makers_time() {
    let time = |d: f64| following(Body::Cylinder, 0.05) * (d / 2.0).powi(2) / DIFFUSIVITY_MM2_S;
    assert!((8.0..12.0).contains(&time(20.0)), "{}", time(20.0));
    close("75 mm", time(75.0), 150.0, 0.08);
}

/// Steady heat leaves skin and middle q·R/(2λ) apart from Fo 0.25 on (Carslaw and Jaeger), and brings
/// the mean up by 2·Fo in a round bar and Fo in a slab.
#[test]
fn steady_heat_leaves_the_skin_ahead() {
    for body in [Body::Cylinder, Body::Slab] {
        let early = steady_heat(body, 0.02);
        assert!(
            early.middle.abs() < 0.01 && early.skin > 0.1,
            "{body:?}: {early:?}"
        );
        for fourier in [0.5, 1.0, 3.0] {
            let late = steady_heat(body, fourier);
            within(&format!("{body:?}"), late.skin - late.middle, 0.5, 6e-3);
        }
        let start = steady_heat(body, 0.0);
        within("skin at the beginning", start.skin, 0.0, 0.04);
    }
}

/// In the first moments the skin does not know yet how thick the body is: 2·√(Fo/π) (Carslaw and Jaeger, the half
/// space).
#[test]
fn in_the_first_moments_every_body_is_a_half_space() {
    let fourier: f64 = 0.01;
    let found = steady_heat(Body::Slab, fourier).skin;
    close(
        "slab",
        found,
        2.0 * (fourier / std::f64::consts::PI).sqrt(),
        0.01,
    );
}

/// The size by which a section heats comes back from its area and its skin.
#[test]
fn sections_are_taken_as_round_or_as_flat() {
    let bulk = |area: f64, skin: f64| Bulk {
        volume_mm3: area * 10.0,
        skin_mm2: skin * 10.0,
        length_mm: 10.0,
    };
    let round = Thick::of(bulk(
        100.0 * std::f64::consts::PI,
        20.0 * std::f64::consts::PI,
    ));
    assert_eq!(round.body, Body::Cylinder);
    within("radius", round.size_mm, 10.0, 1e-9);
    let flat = Thick::of(bulk(25.0 * 6.0, 62.0));
    assert_eq!(flat.body, Body::Slab);
    within("half the thickness", flat.size_mm, 3.0, 1e-9);
    within(
        "ratio",
        bulk(150.0, 62.0).ratio_mm(),
        flat_ratio_mm(25.0, 6.0),
        1e-12,
    );
}
