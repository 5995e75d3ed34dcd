//! What steel takes up, passes on and grows by, against the tables of EN 1993-1-2 and the iron of
//! NIST-JANAF.

use reinwright_core::heats::clock::HeatTable;
use reinwright_core::steel::thermal::{
    Theta, conductivity_w_mk, elongation, enthalpy_j_kg, specific_heat_j_kgk,
};
use reinwright_core::steel::{Steel, forging_range};
use reinwright_tests::{close, sentence, within};

fn at(celsius: f64) -> Theta {
    Theta::new(celsius).expect("between 20 and 1200")
}

/// °C, growth in mm per m, specific heat, conductivity, heat from 20 °C in kJ/kg: the formulas of EN
/// 1993-1-2:2005, 3.4.1, the heat integrated by Simpson's rule in 20 000 steps a piece.
const TABLE: [(f64, f64, f64, f64, f64); 14] = [
    (20.0, 0.0, 439.8, 53.33, 0.0),
    (100.0, 0.9984, 487.6, 50.67, 37.21),
    (400.0, 5.1984, 605.9, 40.68, 201.34),
    (600.0, 8.3984, 760.2, 34.02, 335.74),
    (700.0, 10.1184, 1008.2, 30.69, 419.11),
    (735.0, 10.7393, 5000.0, 29.52, 475.43),
    (750.0, 11.0, 1482.9, 29.02, 511.37),
    (800.0, 11.0, 803.3, 27.30, 561.60),
    (850.0, 11.0, 694.7, 27.30, 598.56),
    (860.0, 11.0, 683.1, 27.30, 605.45),
    (900.0, 11.8, 650.0, 27.30, 632.06),
    (1000.0, 13.8, 650.0, 27.30, 697.06),
    (1100.0, 15.8, 650.0, 27.30, 762.06),
    (1200.0, 17.8, 650.0, 27.30, 827.06),
];

#[test]
fn steel_is_that_of_the_standard() {
    for (celsius, growth, heat, lambda, held) in TABLE {
        let theta = at(celsius);
        let what = format!("{celsius} \u{b0}C");
        within(&what, 1e3 * elongation(theta), growth, 6e-5);
        within(&what, specific_heat_j_kgk(theta), heat, 0.051);
        within(&what, conductivity_w_mk(theta), lambda, 0.0051);
        within(&what, enthalpy_j_kg(theta) / 1e3, held, 0.0051);
        within(&what, HeatTable::default().j_kg(celsius) / 1e3, held, 0.02);
    }
}

/// The specific heat summed in small steps gives the heat, over the peak and all.
#[test]
fn heat_is_the_sum_of_the_specific_heat() {
    let (mut sum, mut celsius) = (0.0, 20.005);
    while celsius < 1200.0 {
        sum += 0.01 * specific_heat_j_kgk(at(celsius));
        celsius += 0.01;
    }
    close("to 1200 \u{b0}C", sum, enthalpy_j_kg(at(1200.0)), 1e-5);
}

/// Heat of pure iron from 20 °C: the Shomate equation of γ-iron in NIST-JANAF, its last constant left out so
/// that it counts from cold α-iron; α-iron from 20 to 25 °C at 450 J/(kg K). The design curve of
/// the standard lies 3 % above it.
#[test]
fn heat_is_that_of_iron_within_four_per_cent() {
    let shomate = |celsius: f64| {
        let t = (celsius + 273.15) / 1e3;
        let [a, b, c, d, e, f] = [
            23.97449, 8.367_750, 0.000_277, -0.000_086, -0.000_005, 0.268_027,
        ];
        let mole = a * t + b * t * t / 2.0 + c * t.powi(3) / 3.0 + d * t.powi(4) / 4.0 - e / t + f;
        /// kg/mol of iron.
        const IRON: f64 = 0.055_845;
        mole / IRON * 1e3 + 5.0 * 450.0
    };
    close("1100 \u{b0}C", shomate(1100.0), 737_800.0, 1e-3);
    for celsius in [1100.0, 1200.0] {
        let over = enthalpy_j_kg(at(celsius)) / shomate(celsius);
        within(&format!("{celsius} \u{b0}C"), over, 1.03, 0.01);
    }
}

/// A common mistake is one specific heat for all of it: it falls a quarter short of forging heat.
#[test]
fn a_specific_heat_that_stays_falls_short() {
    let school = 500.0 * 1180.0;
    assert!(enthalpy_j_kg(at(1200.0)) > 1.3 * school);
}

#[test]
fn what_is_not_known_is_refused_with_the_reason() {
    for celsius in [19.9, 1200.1, -40.0, f64::NAN, f64::INFINITY] {
        let why = Theta::new(celsius).expect_err("outside").to_string();
        sentence(&why);
        assert!(why.contains("20 to 1200"), "{why}");
    }
}

/// Every steel has a range that is one.
#[test]
fn forging_ranges_are_ranges() {
    for steel in [
        Steel::Mild,
        Steel::Carbon1045,
        Steel::Alloy4130,
        Steel::Alloy4140,
        Steel::Spring5160,
        Steel::ToolH13,
        Steel::ToolW1,
        Steel::ToolO1,
        Steel::ToolS7,
        Steel::Unknown,
    ] {
        let range = forging_range(steel);
        let wide = range.upper_celsius - range.lower_celsius;
        assert!((200.0..=400.0).contains(&wide), "{steel:?}: {wide}");
    }
}
