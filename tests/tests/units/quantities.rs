//! Forces, stresses, masses and temperatures: the exact definitions, and what a smith reads.

use reinwright_core::units::{
    KG_PER_LB, MPA_PER_KSI, N_PER_LBF, Quantity, Rounding, Scale, Show, Temperature, Unit,
};
use reinwright_tests::close;

const IN: Show = Show {
    unit: Unit::Inch,
    rounding: Rounding::SixtyFourths,
};
const MM: Show = Show {
    unit: Unit::Millimetre,
    rounding: Rounding::SixtyFourths,
};

/// The pound is 0.45359237 kg exactly (international yard and pound agreement, 1959); the
/// pound-force 4.4482216152605 N and the ksi 6.894757 MPa (NIST SP 811, 2008, appendix B.8).
#[test]
fn units_are_what_they_are_defined_to_be() {
    close("lb", KG_PER_LB, 0.453_592_37, 0.0);
    close("lbf", N_PER_LBF, 4.448_221_615_260_5, 0.0);
    close("lbf from g", N_PER_LBF, 0.453_592_37 * 9.806_65, 1e-15);
    close("ksi", MPA_PER_KSI, 6.894_757, 1e-7);
}

/// NIST SP 811, 4.2.1.1 and appendix B: t/°C = (t/°F − 32)/1.8. Water freezes at 32 °F and boils
/// at 212 °F, and both scales meet at −40.
#[test]
fn fahrenheit_is_celsius_otherwise_counted() {
    for (fahrenheit, celsius) in [
        (32.0, 0.0),
        (212.0, 100.0),
        (-40.0, -40.0),
        (2192.0, 1200.0),
    ] {
        let scale = Scale::Fahrenheit;
        close("to °C", scale.to_celsius(fahrenheit), celsius, 1e-12);
        close("to °F", scale.of_celsius(celsius), fahrenheit, 1e-12);
    }
}

/// What is shown in inch units and in millimetres, of so many N, MPa, kg or °C.
#[test]
fn figures_are_shown_as_finely_as_they_are_worth() {
    #[track_caller]
    fn check(of: fn(Show, f64) -> String, value: f64, inch: &str, metric: &str) {
        assert_eq!((&*of(IN, value), &*of(MM, value)), (inch, metric));
    }
    check(Show::force, 0.0, "0.0 lbf", "0.0 N");
    check(Show::force, 10.0, "2.2 lbf", "10 N");
    check(Show::force, 44.0, "9.9 lbf", "44 N");
    check(Show::force, 44.4, "10 lbf", "44 N");
    check(Show::force, 160.0, "36 lbf", "160 N");
    check(Show::force, 540.0, "121 lbf", "540 N");
    check(Show::force, 9999.0, "2248 lbf", "9999 N");
    check(Show::force, 15_080.0, "3390 lbf", "15.1 kN");
    check(Show::stress, 220.0, "31.9 ksi", "220 MPa");
    check(Show::stress, 250.0, "36.3 ksi", "250 MPa");
    check(Show::stress, -0.04, "0.0 ksi", "0 MPa");
    check(Show::mass, 0.5, "1.10 lb", "0.50 kg");
    check(Show::mass, 2.3, "5.07 lb", "2.30 kg");
    check(Show::mass, 9.994, "22.0 lb", "9.99 kg");
    check(Show::mass, 23.0, "50.7 lb", "23.0 kg");
    check(Show::mass, 99.96, "220 lb", "100 kg");
    check(Show::temperature, 20.0, "68 °F", "20 °C");
    check(Show::temperature, 600.0, "1112 °F", "600 °C");
    check(Show::temperature, -0.3, "31 °F", "0 °C");
}

/// Figures of any kind go the same way, and sizes and areas as ever.
#[test]
fn a_figure_of_any_kind_is_shown_as_its_own() {
    for (of, value, inch, metric) in [
        (Quantity::Length, 19.05, "3/4 in", "19.1 mm"),
        (Quantity::Area, 645.16, "1.00 in²", "645 mm²"),
        (Quantity::Angle, 10.0, "10.0 degrees", "10.0 degrees"),
        (Quantity::Force, 160.0, "36 lbf", "160 N"),
        (Quantity::Stress, 220.0, "31.9 ksi", "220 MPa"),
        (Quantity::Mass, 2.3, "5.07 lb", "2.30 kg"),
        (Quantity::Ratio, 2.5, "2.50", "2.50"),
    ] {
        let shown = [IN, MM].map(|show| show.quantity(of, value));
        assert_eq!(shown, [inch, metric], "{of:?}");
    }
}

/// Programs read figures in the unit of the core, whatever the smith reads.
#[test]
fn names_of_figures_end_with_the_unit_of_the_core() {
    let all = [
        (Quantity::Length, "value_mm"),
        (Quantity::Area, "value_mm2"),
        (Quantity::Angle, "value_deg"),
        (Quantity::Force, "value_n"),
        (Quantity::Stress, "value_mpa"),
        (Quantity::Mass, "value_kg"),
        (Quantity::Ratio, "value"),
    ];
    for (of, key) in all {
        assert_eq!(of.key("value"), key);
    }
}

/// A bare temperature is on the scale of the document; one that names its scale keeps it.
#[test]
fn a_temperature_keeps_the_scale_it_was_typed_on() {
    for (text, default, celsius, scale) in [
        ("600", Scale::Celsius, 600.0, Scale::Celsius),
        ("1112", Scale::Fahrenheit, 600.0, Scale::Fahrenheit),
        ("600 C", Scale::Fahrenheit, 600.0, Scale::Celsius),
        ("1112 °F", Scale::Celsius, 600.0, Scale::Fahrenheit),
    ] {
        let read = Temperature::parse(text, default).expect(text);
        close(text, read.celsius(), celsius, 1e-12);
        assert_eq!(read.scale(), scale, "{text}");
    }
}
