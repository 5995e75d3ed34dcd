//! Strength: the program's own integrator and sections against closed forms and published tables.

use kurbo::Point;
use proptest::prelude::*;
use reinwright_core::asked::PlainSection;
use reinwright_core::finding::{Finding, Part, Severity};
use reinwright_core::proof::strength::{
    self, Figure, Needs, Station, Strength, StrengthLoad, along_sweep, bearing_en_n,
    cap_in_diameters, countersink_in_diameters, deflection_mm_per_n, rivet_length, shear_aisc_n,
    shear_en_n, slope_per_n,
};
use reinwright_core::shape::section::Profile;
use reinwright_core::shape::sweep::{Ease, Path, Station as Size, Sweep};
use reinwright_core::steel::{self, Steel, YOUNGS_MPA, hot_factors};
use reinwright_core::tongs::document::{Document, HeadKind};
use reinwright_core::tongs::model::Model;
use reinwright_core::tongs::resolve;
use reinwright_tests::designs::{sample, varied};
use reinwright_tests::pairs::{self, mm, starting};
use reinwright_tests::{close, within};

const INCH: f64 = 25.4;
const POUND: f64 = 4.448_22;

fn strong(document: &Document, load: &StrengthLoad) -> (Model, Strength) {
    let model = resolve(document);
    let strength = strength::strength(document, &model, load);
    (model, strength)
}

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

/// The task asks for 0.1 %.
const THOUSANDTH: f64 = 1e-3;

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
    // 40 lb on a 13 in arm, 5/8 x 1/2 in rein: about 16,000 psi (trade example, derived).
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
    within("between", hot_factors(550.0).effective_yield, 0.625, 1e-12);
    within("below", hot_factors(-40.0).modulus, 1.0, 0.0);
    within("beyond", hot_factors(1500.0).modulus, 0.0, 0.0);
    within("no number", hot_factors(f64::NAN).modulus, 0.0, 0.0);
}

#[test]
fn steels_are_no_stronger_than_their_soft_condition() {
    // Greatest yield that a source gives for the soft or hot-rolled condition, MPa (SAE and EN
    // figures as the handbooks print them); H13 from memory.
    let soft = [
        (Steel::Mild, 250.0),
        (Steel::Carbon1045, 310.0),
        (Steel::Alloy4130, 360.0),
        (Steel::Alloy4140, 417.0),
        (Steel::Spring5160, 275.0),
        (Steel::ToolH13, 400.0),
        (Steel::Unknown, 220.0),
    ];
    for (steel, most) in soft {
        let found = steel::strength(steel);
        assert!(found.yield_mpa <= most, "{steel:?}: {}", found.yield_mpa);
        assert!(found.yield_mpa >= 220.0, "the unknown is the weakest");
        assert!(found.tensile_mpa > found.yield_mpa && !found.source.is_empty());
    }
}

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
    // Practice, 1.5 d for one head: 5/16 x 1 1/2 in leaves two 1/2 in bosses (trade notes).
    let found = rivet_length(HeadKind::Button, (0.3125 * INCH, 0.3125 * INCH), INCH);
    close("practice", found.practice_mm, 1.5 * INCH, 0.025);
    within("no play", found.filling_mm, 0.0, 1e-9);
}

#[test]
fn a_v_holds_more_than_a_flat() {
    // Pulled along, two jaws hold 2 μ N / sin(θ/2); μ 0.25: flat 0.500 N, 60° 1.000, 90° 0.7071,
    // 120° 0.5774 (derived).
    let held = |pair: &Document| {
        let squeeze = strong(pair, &StrengthLoad::default()).1.squeezes[0];
        squeeze.hold_ordinary_n / squeeze.jaw_n
    };
    within("flat", held(&pairs::flat()), 0.5, 1e-9);
    for (degrees, expected) in [
        (60.0, 1.0),
        (90.0, std::f64::consts::FRAC_1_SQRT_2),
        (120.0, 0.5774),
    ] {
        let mut pair = starting("v bit", "5/8 in round", "3/4 in square");
        if let reinwright_core::tongs::jaw::JawStyle::VBit(bit) = &mut pair.jaw.style {
            bit.angle = reinwright_core::units::Angle::degrees(degrees);
            bit.leg = mm(22.0);
        }
        let (model, _) = strong(&pair, &StrengthLoad::default());
        let walls = model.seats[0].bears == reinwright_core::tongs::seat::Bears::Walls;
        assert!(walls, "{degrees}: {:?}", model.seats[0]);
        close("V", held(&pair), expected, 2e-3);
    }
}

#[test]
fn a_half_is_in_balance() {
    for (name, pair) in pairs::all() {
        let (_, found) = strong(&pair, &StrengthLoad::default());
        for squeeze in found.squeezes {
            close(name, squeeze.jaw_n, squeeze.hand_n * found.leverage(), 1e-9);
            close(name, squeeze.rivet_n, squeeze.hand_n + squeeze.jaw_n, 1e-9);
        }
        let half = &found.halves[0];
        // Nothing at the hand, nothing where the jaw presses, most at the rivet.
        within(name, half.stations[0].moment_mm, 0.0, 1.0);
        let last = half.stations.last().expect("stations");
        within(name, last.moment_mm, 0.0, 1e-6);
        let most = half
            .stations
            .iter()
            .map(|s| s.moment_mm)
            .fold(0.0, f64::max);
        let hole = half.at_hole().expect("a boss");
        close(name, hole.moment_mm, most, 1e-6);
        for pair in half.stations.windows(2) {
            assert!(pair[1].along_mm >= pair[0].along_mm - 1e-9, "{name}");
        }
    }
}

#[test]
fn the_hole_weakens_the_boss_as_two_pieces_of_plate() {
    // I = e (D³ − d³) / 12 for a disc cut through a hole in its middle.
    let pair = pairs::flat();
    let (_, found) = strong(&pair, &StrengthLoad::default());
    let hole = found.halves[0].at_hole().expect("a boss");
    let (across, thick) = (pair.boss.across.mm(), pair.boss.thickness.mm());
    let d = pair.rivet.hole.mm();
    within("through the middle", hole.at.to_vec2().hypot(), 0.0, 0.5);
    close("depth", hole.depth_mm, across, 5e-3);
    let inertia = thick * (hole.depth_mm.powi(3) - d.powi(3)) / 12.0;
    close("second moment", hole.inertia_mm4, inertia, 5e-3);
    close("area", hole.area_mm2, thick * (hole.depth_mm - d), 1e-6);
}

#[test]
fn the_middle_of_a_half_is_as_deep_as_it_is_drawn() {
    for (name, pair) in [("flat", pairs::flat()), ("V", pairs::v_bit())] {
        let (model, found) = strong(&pair, &StrengthLoad::default());
        let mut neck = found.halves[0]
            .stations
            .iter()
            .filter(|s| s.part == Part::Neck);
        let last = neck.next_back().expect("a neck");
        let root = model.a.jaw.section(0.0);
        close(name, last.depth_mm, root.depth, 0.02);
        close(name, last.width_mm, root.width, 0.02);
        let rein = model.a.rein.section(0.0);
        let shoulder = found.halves[0]
            .stations
            .iter()
            .find(|s| s.part == Part::Shoulder);
        let first = shoulder.expect("a shoulder");
        close(name, first.depth_mm, rein.depth, 0.03);
        close(name, first.inertia_mm4, rein.properties().side_mm4, 0.1);
    }
}

#[test]
fn bending_of_a_whole_half_is_the_sum_over_its_sections() {
    // The same integral by plain trapezoids over 4000 sections of the rein.
    let pair = pairs::flat();
    let (model, found) = strong(&pair, &StrengthLoad::default());
    let half = &model.a;
    let hand = half.hand().x;
    let steps = 4000;
    let at = |i: u32| half.hand_at * f64::from(i) / f64::from(steps);
    let bend = |s: f64| {
        let section = half.rein.section(s);
        let arm = half.rein.middle(s).x - hand;
        arm * arm / (YOUNGS_MPA * section.properties().side_mm4)
    };
    let mut sum = 0.0;
    for i in 0..steps {
        sum += (bend(at(i)) + bend(at(i + 1))) / 2.0 * (at(i + 1) - at(i));
    }
    let rein: Vec<Station> = found.halves[0]
        .stations
        .iter()
        .filter(|s| s.part == Part::Rein)
        .copied()
        .collect();
    close(
        "rein",
        deflection_mm_per_n(&rein, YOUNGS_MPA),
        sum,
        THOUSANDTH,
    );
    let whole = deflection_mm_per_n(&found.halves[0].stations, YOUNGS_MPA);
    assert!(
        whole > sum && whole < 2.0 * sum,
        "whole {whole}, rein {sum}"
    );
    close("rate", found.rate_n_per_mm, 0.5 / whole, 1e-9);
}

#[test]
fn swapping_the_halves_changes_nothing() {
    let pair = sample("v-over-flat");
    let mut swapped = pair.clone();
    let second = swapped.second_jaw.take().expect("the sample has two jaws");
    swapped.second_jaw = Some(std::mem::replace(&mut swapped.jaw, second));
    let load = StrengthLoad::default();
    let ((_, a), (_, b)) = (strong(&pair, &load), strong(&swapped, &load));
    close("rate", a.rate_n_per_mm, b.rate_n_per_mm, 1e-9);
    close(
        "hold",
        a.squeezes[1].hold_ordinary_n,
        b.squeezes[1].hold_ordinary_n,
        1e-9,
    );
    close(
        "peak",
        a.squeezes[1].peak_stress_mpa,
        b.squeezes[1].peak_stress_mpa,
        1e-9,
    );
}

#[test]
fn figures_carry_limits_margins_and_sources() {
    for (name, pair) in pairs::all() {
        let (_, found) = strong(&pair, &StrengthLoad::default());
        assert!(
            found.figures.len() >= 12,
            "{name}: {} figures",
            found.figures.len()
        );
        for figure in &found.figures {
            assert!(
                !figure.source.is_empty() && figure.limit > 0.0,
                "{name}: {figure:?}"
            );
            let over = match figure.needs {
                Needs::AtMost => figure.value <= figure.limit,
                Needs::AtLeast => figure.value >= figure.limit,
            };
            assert_eq!(over, figure.margin() >= 1.0, "{name}: {figure:?}");
        }
    }
}

fn figure(strength: &Strength, what: &str) -> Figure {
    let found = strength
        .figures
        .iter()
        .find(|figure| figure.what.name() == what);
    *found.unwrap_or_else(|| panic!("no figure {what}"))
}

#[test]
fn hot_jaws_bear_less() {
    let pair = pairs::flat();
    let hot = StrengthLoad {
        jaw_celsius: 600.0,
        ..StrengthLoad::default()
    };
    let (cold, warm) = (
        strong(&pair, &StrengthLoad::default()).1,
        strong(&pair, &hot).1,
    );
    let neck = "bending of the neck";
    close(
        "neck",
        figure(&warm, neck).limit,
        0.18 * figure(&cold, neck).limit,
        1e-9,
    );
    let rein = "bending of the rein";
    close(
        "rein",
        figure(&warm, rein).limit,
        figure(&cold, rein).limit,
        1e-9,
    );
}

fn findings(pair: &Document, load: &StrengthLoad) -> Vec<Finding> {
    let (model, found) = strong(pair, load);
    strength::findings(pair, &model, &found)
}

#[track_caller]
fn sees(pair: &Document, load: &StrengthLoad, severity: Severity, part: Part, word: &str) {
    let found = findings(pair, load);
    let is = |f: &Finding| f.severity == severity && f.part == part && f.message.contains(word);
    assert!(found.iter().any(is), "{word}: {found:#?}");
}

#[test]
fn a_sound_pair_has_nothing_worse_than_a_note() {
    let found = findings(&pairs::flat(), &StrengthLoad::default());
    assert!(
        !found.iter().any(|f| f.severity > Severity::Note),
        "{found:#?}"
    );
}

#[test]
fn what_is_weak_is_told() {
    let load = StrengthLoad::default();
    // A spindly rein on a heavy boss.
    let mut spindly = pairs::flat();
    spindly.rein.start = PlainSection::Round { diameter: mm(7.0) };
    spindly.rein.end = PlainSection::Round { diameter: mm(5.0) };
    sees(
        &spindly,
        &load,
        Severity::Mend,
        Part::Rein,
        "bends for good",
    );
    sees(&spindly, &load, Severity::Mend, Part::Rein, "whippy");
    let mut stiff = pairs::flat();
    let thick = PlainSection::Round { diameter: mm(19.0) };
    (stiff.rein.start, stiff.rein.end) = (thick, thick);
    stiff.rein.length = mm(250.0);
    sees(&stiff, &load, Severity::Note, Part::Rein, "too stiff");
    let mut pinched = pairs::flat();
    pinched.neck.depth = mm(5.0);
    sees(
        &pinched,
        &load,
        Severity::Mend,
        Part::Neck,
        "bends for good",
    );
    let mut thin = pairs::flat();
    thin.rivet.diameter = mm(3.0);
    thin.rivet.hole = mm(3.3);
    sees(&thin, &load, Severity::Mend, Part::Rivet, "shear");
    let hot = StrengthLoad {
        jaw_celsius: 700.0,
        ..load
    };
    sees(&pairs::flat(), &hot, Severity::Mend, Part::Neck, "700");
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(48))]

    #[test]
    fn any_pair_is_reckoned_in_finite_numbers(
        dice in prop::collection::vec(any::<u32>(), 60),
        celsius in -100.0..1500.0,
        squeeze in 0.0..1000.0,
    ) {
        let document = varied(&pairs::flat(), &dice, f64::INFINITY);
        let load = StrengthLoad { strong_n: squeeze, jaw_celsius: celsius, ..StrengthLoad::default() };
        let (model, found) = strong(&document, &load);
        let text = format!("{found:?} {:?}", strength::findings(&document, &model, &found));
        prop_assert!(!text.contains("NaN") && !text.contains("inf"), "{text}");
    }

    #[test]
    fn harder_squeezes_bend_and_hold_in_proportion(factor in 0.1..5.0f64) {
        let load = StrengthLoad { strong_n: 100.0 * factor, ..StrengthLoad::default() };
        let found = strong(&pairs::v_bit(), &load).1;
        let (one, other) = (found.squeezes[0], found.squeezes[1]);
        prop_assert!((other.closes_mm / one.closes_mm / factor - 1.0).abs() < 1e-9);
        prop_assert!((other.hold_ordinary_n / one.hold_ordinary_n / factor - 1.0).abs() < 1e-9);
    }
}
