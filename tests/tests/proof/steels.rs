//! Steels cold and hot, against the tables of standards.

use reinwright_core::steel::{self, Steel, hot_factors};
use reinwright_tests::within;

#[test]
fn hot_strength_is_that_of_the_standard() {
    // EN 1993-1-2:2005 Table 3.1: °C, k_y, k_p, k_E.
    let table = [
        (20.0, 1.0, 1.0, 1.0),
        (100.0, 1.0, 1.0, 1.0),
        (200.0, 1.0, 0.807, 0.9),
        (300.0, 1.0, 0.613, 0.8),
        (400.0, 1.0, 0.42, 0.7),
        (500.0, 0.78, 0.36, 0.6),
        (600.0, 0.47, 0.18, 0.31),
        (700.0, 0.23, 0.075, 0.13),
        (800.0, 0.11, 0.05, 0.09),
        (900.0, 0.06, 0.0375, 0.0675),
        (1000.0, 0.04, 0.025, 0.045),
        (1100.0, 0.02, 0.0125, 0.0225),
        (1200.0, 0.0, 0.0, 0.0),
    ];
    for (celsius, k_y, k_p, k_e) in table {
        let found = hot_factors(celsius);
        within("k_y", found.effective_yield, k_y, 1e-12);
        within("k_p", found.proportional_limit, k_p, 1e-12);
        within("k_E", found.modulus, k_e, 1e-12);
    }
    // AISC 360-10, Table A-4.2.1 (from memory) gives the same steel at other temperatures, rounded
    // to two places: °F, k_E, k_p, k_y.
    let aisc = [
        (400.0, 0.90, 0.80, 1.00),
        (600.0, 0.78, 0.58, 1.00),
        (800.0, 0.67, 0.40, 0.94),
        (1000.0, 0.49, 0.29, 0.66),
        (1200.0, 0.22, 0.13, 0.35),
        (1400.0, 0.11, 0.06, 0.16),
        (1600.0, 0.07, 0.04, 0.07),
        (1800.0, 0.05, 0.03, 0.04),
    ];
    for (fahrenheit, k_e, k_p, k_y) in aisc {
        let found = hot_factors((fahrenheit - 32.0) / 1.8);
        let what = |factor: &str| format!("{factor} at {fahrenheit} °F");
        within(&what("k_E"), found.modulus, k_e, 0.006);
        within(&what("k_p"), found.proportional_limit, k_p, 0.006);
        within(&what("k_y"), found.effective_yield, k_y, 0.006);
    }
    within("between", hot_factors(550.0).effective_yield, 0.625, 1e-12);
    within("below", hot_factors(-40.0).modulus, 1.0, 0.0);
    within("beyond", hot_factors(1500.0).modulus, 0.0, 0.0);
    within("no number", hot_factors(f64::NAN).modulus, 0.0, 0.0);
}

#[test]
fn steels_are_no_stronger_than_their_soft_condition() {
    // Greatest yield that a source gives for the soft or hot-rolled condition, MPa (SAE and EN
    // figures as the handbooks print them); the tool steels from memory.
    let soft = [
        (Steel::Mild, 250.0),
        (Steel::Carbon1045, 310.0),
        (Steel::Alloy4130, 360.0),
        (Steel::Alloy4140, 417.0),
        (Steel::Spring5160, 275.0),
        (Steel::ToolH13, 400.0),
        (Steel::ToolW1, 385.0),
        (Steel::ToolO1, 385.0),
        (Steel::ToolS7, 400.0),
        (Steel::Unknown, 220.0),
    ];
    for (steel, most) in soft {
        let found = steel::strength(steel);
        assert!(found.yield_mpa <= most, "{steel:?}: {}", found.yield_mpa);
        assert!(found.yield_mpa >= 220.0, "the unknown is the weakest");
        assert!(found.tensile_mpa > found.yield_mpa && !found.source.is_empty());
    }
}
