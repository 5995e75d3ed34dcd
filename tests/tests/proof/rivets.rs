//! Rivets: shear, bearing, heads and lengths against the standards' own figures.

use reinwright_core::proof::strength::{
    bearing_en_n, cap_in_diameters, countersink_in_diameters, rivet_length, shear_aisc_n,
    shear_en_n,
};
use reinwright_core::tongs::document::HeadKind;
use reinwright_tests::{INCH, close, within};

#[test]
fn rivet_shear() {
    // mm, EN 1993-1-8 design kN (400 MPa, hole taken as the rivet), AISC ASD 1989 allowable kN.
    let table = [
        (6.0, 5.43, 3.41),
        (8.0, 9.65, 6.06),
        (9.525, 13.68, 8.60),
        (10.0, 15.08, 9.48),
        (12.0, 21.71, 13.65),
        (12.7, 24.32, 15.28),
    ];
    for (d, en, aisc) in table {
        within("EN", shear_en_n(d) / 1000.0, en, 0.0051);
        // The table's 17.5 ksi is 120.66 MPa.
        within("AISC", shear_aisc_n(d) / 1000.0, aisc, 0.0151);
    }
}

#[test]
fn bearing_of_the_hole() {
    // EN 1993-1-8 Table 3.4 by hand: d 10, hole 10.3, plate 10, edge 20, 400 MPa:
    // α_b = 20 / 30.9, k₁ = 2.5.
    let found = bearing_en_n((10.0, 10.3), 10.0, 20.0, 400.0);
    close(
        "far edge",
        found,
        2.5 * 20.0 / 30.9 * 400.0 * 100.0 / 1.25,
        1e-9,
    );
    // Edge 12: k₁ = 2.8 · 12 / 10.3 − 1.7 = 1.562.
    let found = bearing_en_n((10.0, 10.3), 10.0, 12.0, 400.0);
    close(
        "near edge",
        found,
        1.562_136 * 12.0 / 30.9 * 400.0 * 100.0 / 1.25,
        1e-6,
    );
    within(
        "broken out",
        bearing_en_n((10.0, 10.3), 10.0, 5.0, 400.0),
        0.0,
        1e-9,
    );
}

#[test]
fn rivet_heads_by_volume() {
    // Diameters of shank per head, from the sizes of the standards.
    within("BS 275 snap", cap_in_diameters(1.6, 0.7), 1.125, 0.0015);
    within("DIN 660 round", cap_in_diameters(1.75, 0.6), 1.063, 0.0015);
    within(
        "ASME B18.1.2 button",
        cap_in_diameters(1.75, 0.75),
        1.430,
        0.0015,
    );
    within(
        "DIN 661",
        countersink_in_diameters(1.75, 0.5),
        0.469,
        0.0015,
    );
    within(
        "BS 275 countersunk 60",
        countersink_in_diameters(1.5, 0.5),
        0.292,
        0.0015,
    );
}

#[test]
fn rivet_lengths() {
    // 10 mm rivet, 10.5 hole, grip 20: 2.05 mm to fill; a snap head 1.125 d.
    let found = rivet_length(HeadKind::Snap, (10.0, 10.5), 20.0);
    within("filling", found.filling_mm, 2.05, 1e-9);
    within("one head", found.one_head_mm, 20.0 + 11.25 + 2.05, 0.02);
    within("both heads", found.both_heads_mm, 20.0 + 22.5 + 2.05, 0.04);
    // Practice, 1.5 d for one head: 5/16 x 1 1/2 in leaves two 1/2 in bosses (common practice, no
    // source).
    let found = rivet_length(HeadKind::Button, (0.3125 * INCH, 0.3125 * INCH), INCH);
    close("practice", found.practice_mm, 1.5 * INCH, 0.025);
    within("no play", found.filling_mm, 0.0, 1e-9);
}
