//! Columns against a textbook and a handbook.

use std::f64::consts::PI;

use reinwright_core::tool::column::{Column, Ends, Law};
use reinwright_tests::{close, within};

/// Gere, Mechanics of Materials, 7th edition, problem 11.4-2: a steel pipe of 40 mm by 36 mm, 1.2 m long,
/// E = 210 GPa: 62.2 kN hinged, 15.6 kN with a free end, 127 kN fixed and hinged, 249 kN fixed.
#[test]
fn euler_is_that_of_the_textbook() {
    let (d, bore) = (40.0_f64, 36.0_f64);
    for (ends, kilonewtons) in [
        (Ends::Hinged, 62.2),
        (Ends::Free, 15.6),
        (Ends::FixedAndHinged, 127.0),
        (Ends::Fixed, 249.0),
    ] {
        let column = Column {
            area_mm2: PI / 4.0 * (d * d - bore * bore),
            least_mm4: PI / 64.0 * (d.powi(4) - bore.powi(4)),
            length_mm: 1200.0,
            youngs_mpa: 210_000.0,
            // So strong that it is long for every end.
            yield_mpa: 5000.0,
            ends,
        };
        assert_eq!(column.law(), Law::Euler, "{ends:?}");
        close(
            &format!("{ends:?}"),
            column.gives_way_n() / 1e3,
            kilonewtons,
            4e-3,
        );
    }
}

/// Mott, Machine Elements in Mechanical Design, an example of a short column: 12 mm by 18 mm of 1040 hot
/// rolled (290 MPa), 280 mm long, one end fixed and one hinged, whose effective length is 0.8 of its
/// own there: 53.3 kN (from memory). Told here as a hinged one of 224 mm.
#[test]
fn johnson_is_that_of_the_handbook() {
    let column = Column {
        area_mm2: 12.0 * 18.0,
        least_mm4: 18.0 * 12.0_f64.powi(3) / 12.0,
        length_mm: 0.8 * 280.0,
        youngs_mpa: 207_000.0,
        yield_mpa: 290.0,
        ends: Ends::Hinged,
    };
    assert_eq!(column.law(), Law::Johnson);
    within("slenderness", column.slenderness(), 64.7, 0.1);
    within("where they meet", column.meets_at(), 119.0, 1.0);
    close("load", column.gives_way_n() / 1e3, 53.3, 5e-3);
}

/// Both laws give half the yield where they meet, and lean alike there.
#[test]
fn the_laws_meet() {
    let at = |length_mm: f64| Column {
        area_mm2: 100.0,
        least_mm4: 100.0 * 100.0 / (4.0 * PI),
        length_mm,
        youngs_mpa: 205_000.0,
        yield_mpa: 350.0,
        ends: Ends::Hinged,
    };
    let radius = (at(1.0).least_mm4 / 100.0).sqrt();
    let meets = at(1.0).meets_at() * radius;
    close(
        "half the yield",
        at(meets).gives_way_n(),
        100.0 * 175.0,
        1e-9,
    );
    let slope = |a: f64, b: f64| (at(b).gives_way_n() - at(a).gives_way_n()) / (b - a);
    let (before, after) = (slope(meets - 0.01, meets), slope(meets, meets + 0.01));
    close("they lean alike", before, after, 1e-3);
}
