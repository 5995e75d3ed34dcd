//! Strength of a whole pair: statics, the sum over its sections, what is told of it.

use proptest::prelude::*;
use reinwright_core::asked::PlainSection;
use reinwright_core::finding::{Finding, Part, Severity};
use reinwright_core::proof::strength::{
    self, Figure, Needs, Station, Strength, StrengthLoad, deflection_mm_per_n,
};
use reinwright_core::steel::YOUNGS_MPA;
use reinwright_core::tongs::document::Document;
use reinwright_core::tongs::model::Model;
use reinwright_core::tongs::resolve;
use reinwright_tests::designs::varied;
use reinwright_tests::pairs::{self, mm, starting};
use reinwright_tests::{close, within};

use super::{THOUSANDTH, two_jaws};

fn strong(document: &Document, load: &StrengthLoad) -> (Model, Strength) {
    let model = resolve(document);
    let strength = strength::strength(document, &model, load);
    (model, strength)
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
    let (pair, swapped) = two_jaws();
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
            let margin = match figure.needs {
                Needs::AtMost => figure.limit / figure.value,
                Needs::AtLeast => figure.value / figure.limit,
            };
            close(name, figure.margin(), margin, 1e-12);
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
    pinched.neck.depth = mm(3.0);
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
