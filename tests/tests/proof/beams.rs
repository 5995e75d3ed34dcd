//! Bending: the program's own integrator and sections against closed forms of cantilevers.

use kurbo::Point;
use reinwright_core::finding::Part;
use reinwright_core::proof::strength::{Station, along_sweep, deflection_mm_per_n, slope_per_n};
use reinwright_core::shape::section::Profile;
use reinwright_core::shape::sweep::{Ease, Path, Station as Size, Sweep};
use reinwright_core::steel::YOUNGS_MPA;
use reinwright_tests::{INCH, close};

use super::THOUSANDTH;

const POUND: f64 = 4.448_22;

/// A straight bar from its free end to its root: sizes (depth, width) at both.
fn bar(profile: Profile, length: f64, free: (f64, f64), root: (f64, f64)) -> Sweep {
    let station = |at: f64, (depth, width): (f64, f64)| Size {
        at,
        depth,
        width,
        rise: 0.0,
        shift: 0.0,
        profile: 0,
        ease: Ease::Linear,
    };
    Sweep {
        path: Path::straight(Point::ORIGIN, 0.0, length),
        stations: vec![station(0.0, free), station(length, root)],
        profiles: vec![profile],
    }
}

/// A cantilever loaded at its free end, cut by the function that cuts reins.
fn cantilever(bar: &Sweep) -> Vec<Station> {
    along_sweep((Part::Rein, bar), (0.0, bar.length()), 220.0, &|at| at.x)
}

struct Bent {
    deflection: f64,
    slope: f64,
    most: f64,
    root: f64,
    worst_at: f64,
}

fn bent(bar: &Sweep, load: f64) -> Bent {
    let stations = cantilever(bar);
    let stress = |s: &Station| s.stress_mpa(load);
    let worst = stations
        .iter()
        .max_by(|a, b| stress(a).total_cmp(&stress(b)));
    let worst = worst.expect("a bar has stations");
    Bent {
        deflection: load * deflection_mm_per_n(&stations, YOUNGS_MPA),
        slope: load * slope_per_n(&stations, YOUNGS_MPA),
        most: stress(worst),
        root: stress(stations.last().expect("a bar has a root")),
        worst_at: worst.along_mm,
    }
}

fn round(size: f64) -> (Profile, (f64, f64)) {
    (Profile::rounded(1.0, 1.0), (size, size))
}

fn square(size: f64) -> (Profile, (f64, f64)) {
    (Profile::rectangle(), (size, size))
}

#[test]
fn uniform_cantilevers() {
    // δ = P L³ / 3 E I, slope P L² / 2 E I, σ = P L / Z; E 205 GPa, P 150 N, L 400 mm.
    let (profile, size) = round(12.0);
    let found = bent(&bar(profile, 400.0, size, size), 150.0);
    close("round deflection", found.deflection, 15.3356, THOUSANDTH);
    close("round slope", found.slope, 0.057_509, THOUSANDTH);
    close("round stress", found.most, 353.68, THOUSANDTH);
    let (profile, size) = square(12.0);
    let found = bent(&bar(profile, 400.0, size, size), 150.0);
    close("square deflection", found.deflection, 9.0334, THOUSANDTH);
    close("square stress", found.most, 208.33, THOUSANDTH);
}

#[track_caller]
fn taper(
    shape: fn(f64) -> (Profile, (f64, f64)),
    (root, free): (f64, f64),
    [deflection, slope, most, at, root_stress]: [f64; 5],
) {
    let (profile, thin) = shape(free);
    let found = bent(&bar(profile, 400.0, thin, shape(root).1), 150.0);
    close("deflection", found.deflection, deflection, THOUSANDTH);
    close("slope", found.slope, slope, THOUSANDTH);
    close("stress", found.most, most, THOUSANDTH);
    close("root stress", found.root, root_stress, THOUSANDTH);
    // The top is flat: the place is looser than the stress.
    close("place", found.worst_at, at, 0.03);
}

#[test]
fn tapered_cantilevers() {
    // Linear taper, section similar all along: δ = P L³ D / 3 E I_D d, most stress where the
    // size is 1.5 times that of the free end (derived; the same law as McCutcheon 1983).
    taper(
        round,
        (16.0, 10.0),
        [7.763_66, 0.034_936_5, 150.902, 333.3, 149.208],
    );
    taper(
        round,
        (16.0, 8.0),
        [9.704_57, 0.048_522_8, 176.839, 200.0, 149.208],
    );
    taper(
        round,
        (19.0, 10.0),
        [4.636_23, 0.022_601_6, 100.602, 222.2, 89.103],
    );
    taper(
        square,
        (16.0, 10.0),
        [4.573_17, 0.020_579_3, 88.889, 333.3, 87.891],
    );
    taper(
        square,
        (16.0, 8.0),
        [5.716_46, 0.028_582_3, 104.167, 200.0, 87.891],
    );
}

#[test]
fn cantilevers_that_taper_one_way() {
    // Constant width 10, depth 16 → 8; constant depth 8, width 20 → 10 (closed forms, derived).
    let deep = bar(Profile::rectangle(), 400.0, (8.0, 10.0), (16.0, 10.0));
    close("depth", bent(&deep, 150.0).deflection, 7.479_57, THOUSANDTH);
    let wide = bar(Profile::rectangle(), 400.0, (8.0, 10.0), (8.0, 20.0));
    close("width", bent(&wide, 150.0).deflection, 21.1991, THOUSANDTH);
    // A wedge that ends in a point in plan: δ = 6 P L³ / E b t³, the same stress everywhere.
    let wedge = bar(Profile::rectangle(), 400.0, (8.0, 1e-6), (8.0, 20.0));
    let expected = 6.0 * 150.0 * 400f64.powi(3) / (YOUNGS_MPA * 20.0 * 512.0);
    close(
        "wedge",
        bent(&wedge, 150.0).deflection,
        expected,
        THOUSANDTH,
    );
    close(
        "wedge stress",
        bent(&wedge, 150.0).root,
        6.0 * 150.0 * 400.0 / (20.0 * 64.0),
        THOUSANDTH,
    );
}

#[test]
fn a_smiths_own_examples() {
    // 40 lb on a 13 in arm, 5/8 x 1/2 in rein: about 16,000 psi (common practice, no source; derived).
    let size = (0.625 * INCH, 0.5 * INCH);
    let rein = bar(Profile::rectangle(), 13.0 * INCH, size, size);
    let psi = bent(&rein, 40.0 * POUND).most / 0.006_894_757;
    close("root stress", psi, 15_974.0, THOUSANDTH);
    // A uniform 3/8 in round rein of 14 in yields about 31 lb/in (the same).
    let (profile, size) = round(0.375 * INCH);
    let rein = bar(profile, 14.0 * INCH, size, size);
    let rate = 1.0 / deflection_mm_per_n(&cantilever(&rein), YOUNGS_MPA);
    close("spring", rate * INCH / POUND, 31.0, 0.03);
}
