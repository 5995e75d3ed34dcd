//! Strength of a whole pair: statics, the sum over its sections, what is told of it.

use proptest::prelude::*;
use reinwright_core::asked::PlainSection;
use reinwright_core::finding::{Finding, Kind, Part, Severity};
use reinwright_core::proof::strength::{
    self, Figure, Needs, Station, Strength, StrengthLoad, deflection_mm_per_n,
};
use reinwright_core::shape::section::{Profile, Section};
use reinwright_core::steel::YOUNGS_MPA;
use reinwright_core::tongs::document::Document;
use reinwright_core::tongs::jaw::JawStyle;
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

/// An oval boss breaks where it is narrowest: Z = e (D³ − d³) / 6 D of its smaller size, whichever way
/// it lies, as long as neck and shoulder come to lie on either side of the cut.
#[test]
fn an_oval_boss_is_cut_at_its_narrowest() {
    for (along, across) in [(34.0, 34.0), (40.0, 32.0), (32.0, 40.0)] {
        let mut pair = starting("hollow bit", "1 in round", "3/4 in square");
        pair.boss.shape = reinwright_core::tongs::document::BossShape::Oval;
        (pair.boss.along, pair.boss.across) = (mm(along), mm(across));
        let (_, found) = strong(&pair, &StrengthLoad::default());
        let hole = found.halves[0].at_hole().expect("a boss");
        let (narrow, d) = (f64::min(along, across), pair.rivet.hole.mm());
        let (thick, size) = (pair.boss.thickness.mm(), hole.depth_mm);
        // Where the neck runs out of the boss in an arc there is a little more.
        assert!(
            (narrow - 0.05..=1.03 * narrow).contains(&size),
            "{size} of {narrow}"
        );
        let modulus = thick * (size.powi(3) - d.powi(3)) / (6.0 * size);
        close(
            &format!("{along} by {across}"),
            hole.modulus_mm3,
            modulus,
            0.01,
        );
        let stress = 160.0 * found.press.hand_mm / modulus;
        close("stress", hole.stress_mpa(160.0), stress, 0.01);
    }
}

/// What bends beside the hole is told by its own name: the neck of a bolt jaw begins inside the
/// length of the boss, and there it is narrower than the boss.
#[test]
fn what_lies_beside_the_boss_is_not_called_the_boss() {
    let mut pair = starting("bolt", "5/8 in hexagon on corners", "3/4 in square");
    pair.neck.depth = mm(7.0);
    let (model, found) = strong(&pair, &StrengthLoad::default());
    let told = strength::findings(&pair, &model, &found);
    let parts: Vec<(Kind, Part)> = told.iter().map(|it| (it.kind, it.part)).collect();
    assert!(parts.contains(&(Kind::NeckBends, Part::Neck)), "{told:#?}");
    let boss = told.iter().find(|it| it.kind == Kind::BossBends);
    assert!(
        boss.is_none_or(|it| it.message.contains("across the hole")),
        "{told:#?}"
    );
}

/// A bit that stands aside twists what carries it: T = N · a, τ = T / (α b c²), √(σ² + 3 τ²), with α
/// from the table of rectangles in Timoshenko and Goodier, Theory of Elasticity. At the heel the
/// jaw is a plain rectangle, and the whole step still lies before it.
#[test]
fn a_bit_that_stands_aside_twists_its_root() {
    let pair = starting("bent bit", "1/2 in round", "3/4 in square");
    let (model, found) = strong(&pair, &StrengthLoad::default());
    let root = found.halves[0].jaw_root().expect("a jaw");
    let jaw_n = found.squeezes[1].jaw_n;
    let twist = jaw_n * model.work.beside.abs();
    close(
        "twist",
        root.twist_mm.abs() * found.squeezes[1].hand_n,
        twist,
        1e-9,
    );
    let section = model.a.jaw.section(0.0);
    let (b, c) = (
        section.depth.max(section.width),
        section.depth.min(section.width),
    );
    let shear = twist / (timoshenko(b / c) * b * c * c);
    let bending =
        root.moment_nmm(found.squeezes[1].hand_n) * 6.0 / (section.width * section.depth.powi(2));
    let both = bending.hypot(3f64.sqrt() * shear);
    close(
        "stress",
        root.stress_mpa(found.squeezes[1].hand_n),
        both,
        0.01,
    );
    assert!(both > 1.02 * bending, "{both} and {bending}");
    // The other half is bent the other way and twisted as much.
    let mut straight = pair.clone();
    straight.jaw = starting("v bit", "1/2 in round", "3/4 in square").jaw;
    let plain = strong(&straight, &StrengthLoad::default()).1;
    assert_eq!(plain.halves[0].jaw_root().expect("a jaw").twist_mm, 0.0);
}

/// Hand and work press up and down in the plane in which these are bent: nothing twists their jaws.
#[test]
fn what_is_bent_in_the_side_view_is_not_twisted() {
    for (jaw, work) in [
        ("goose neck", "3/4 in round"),
        ("pick-up", "1/2 in round"),
        ("link", "1/2 in round"),
        ("notched", "1/2 in round"),
        ("scrolling", "3/8 in round"),
        ("bolt", "1/2 in round"),
    ] {
        let (_, found) = strong(
            &starting(jaw, work, "3/4 in square"),
            &StrengthLoad::default(),
        );
        let twisted = |it: &&Station| it.part == Part::Jaw && it.twist_mm != 0.0;
        let twisted = found.halves[0].stations.iter().find(twisted);
        assert!(twisted.is_none(), "{jaw}: {twisted:?}");
    }
}

/// α of τ = T / (α b c²), b the longer side (Timoshenko and Goodier, Theory of Elasticity, table of
/// constants for torsion of a rectangular bar), straight between its columns.
fn timoshenko(ratio: f64) -> f64 {
    let at = TIMOSHENKO
        .partition_point(|row| row.0 <= ratio)
        .clamp(1, TIMOSHENKO.len() - 1);
    let (a, b) = (TIMOSHENKO[at - 1], TIMOSHENKO[at]);
    a.1 + (b.1 - a.1) * (ratio - a.0) / (b.0 - a.0)
}

const TIMOSHENKO: [(f64, f64); 10] = [
    (1.0, 0.208),
    (1.2, 0.219),
    (1.5, 0.231),
    (2.0, 0.246),
    (2.5, 0.258),
    (3.0, 0.267),
    (4.0, 0.282),
    (5.0, 0.291),
    (6.0, 0.299),
    (10.0, 0.313),
];

#[test]
fn sections_are_twisted_as_the_tables_have_it() {
    let of = |profile: &Profile, (depth, width): (f64, f64)| {
        Section::new(profile, depth, width).twist_modulus_mm3()
    };
    let rectangle = Profile::rectangle();
    for (ratio, alpha) in TIMOSHENKO {
        let c: f64 = 8.0;
        let modulus = alpha * ratio * c.powi(3);
        close("deep", of(&rectangle, (ratio * c, c)), modulus, 0.005);
        close("wide", of(&rectangle, (c, ratio * c)), modulus, 0.005);
    }
    // π d³ / 16 of a round.
    let round = Profile::rounded(1.0, 1.0);
    let modulus = std::f64::consts::PI * 12f64.powi(3) / 16.0;
    close("round", of(&round, (12.0, 12.0)), modulus, 1e-9);
    // A folded V is as a strip of its unrolled length and its wall, to what folding leaves open:
    // ⅓ b t² for a long one (the same book, thin sections), less for its end effects.
    let pair = starting("v bit", "1/2 in round", "3/4 in square");
    let JawStyle::VBit(bit) = &pair.jaw.style else {
        panic!("a V bit");
    };
    let (leg, wall) = (bit.leg.mm(), bit.wall.mm());
    let model = resolve(&pair);
    let found = model
        .a
        .jaw
        .section(model.a.jaw.length() / 2.0 + 5.0)
        .twist_modulus_mm3();
    let thin = 2.0 * (leg + wall) * wall * wall / 3.0;
    assert!(
        (0.6..1.1).contains(&(found / thin)),
        "{found} beside {thin}"
    );
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
    sees(
        &thin,
        &load,
        Severity::Mend,
        Part::Rivet,
        "the rivet is sheared with",
    );
    let hot = StrengthLoad {
        jaw_celsius: 700.0,
        ..load
    };
    sees(&pairs::flat(), &hot, Severity::Stop, Part::Neck, "1292 °F");
}

/// Where it is dangerous nothing less than a Stop is said.
#[test]
fn what_would_break_is_stopped() {
    let load = StrengthLoad::default();
    // 0.6 · 400 MPa · π/4 · 0.5² is 47 N (EN 1993-1-8 Table 3.4 without its partial factor), and
    // a strong squeeze puts its sum with the jaws' force on it.
    let mut wire = pairs::flat();
    wire.rivet.diameter = mm(0.5);
    wire.rivet.hole = mm(0.6);
    sees(
        &wire,
        &load,
        Severity::Stop,
        Part::Rivet,
        "gives way at 11 lbf",
    );
    // At 1200 °C nothing is left of the steel (EN 1993-1-2 Table 3.1: k_y = 0).
    let molten = StrengthLoad::with_jaws_at(1200.0);
    sees(
        &pairs::flat(),
        &molten,
        Severity::Stop,
        Part::Neck,
        "2192 °F",
    );
    // 3 mm of rein at the shoulder: 32 M / π d³ is far over the 400 MPa at which mild steel breaks.
    let mut wiry = pairs::flat();
    wiry.rein.start = PlainSection::Round { diameter: mm(3.0) };
    wiry.rein.end = PlainSection::Round { diameter: mm(3.0) };
    wiry.rein.gap = mm(400.0);
    sees(&wiry, &load, Severity::Stop, Part::Rein, "breaks");
    // A jaw of 500 in weighs more than is to be lifted (NIOSH 94-110: 23 kg).
    let mut long = pairs::flat();
    long.jaw.length = mm(12_700.0);
    let found = reinwright_core::shop::Answers::to(&long).findings;
    let heavy = found.iter().find(|it| it.kind == Kind::Heavy);
    assert_eq!(heavy.expect("it is heavy").severity, Severity::Stop);
}

/// EN 1993-1-2: the effective yield is 0.47 of the cold one at 600 °C and 0.23 at 700 °C (Table 3.1),
/// and from 400 °C on steel breaks at it (Annex A).
#[test]
fn hot_steel_breaks_at_its_effective_yield() {
    let at = |celsius: f64| {
        let found = strong(&pairs::flat(), &StrengthLoad::with_jaws_at(celsius)).1;
        (
            found.breaks_at_mpa(Part::Rein),
            found.breaks_at_mpa(Part::Neck),
        )
    };
    for (celsius, neck) in [(20.0, 400.0), (600.0, 103.4), (700.0, 50.6), (1200.0, 0.0)] {
        within("rein", at(celsius).0, 400.0, 1e-9);
        within("neck", at(celsius).1, neck, 1e-9);
    }
}

/// A hand that has more than closes the reins squeezes one rein with the other: neither jaws nor
/// rivet feel it, and nothing is said of a squeeze that is not reached.
#[test]
fn a_squeeze_ends_where_the_reins_meet() {
    for (name, pair) in pairs::all() {
        let (model, found) = strong(&pair, &StrengthLoad::default());
        let gap = model.hand_gap;
        close(name, found.closing_n, gap * found.rate_n_per_mm, 1e-3);
        for squeeze in found.squeezes {
            assert!(
                squeeze.closes_mm <= gap * (1.0 + 1e-9),
                "{name}: {squeeze:?}"
            );
            close(
                name,
                squeeze.hand_n,
                squeeze.asked_n.min(found.closing_n),
                1e-9,
            );
        }
        let full = found.squeezes[2];
        let told = strength::findings(&pair, &model, &found);
        let all = format!("with {}", pair.units.show().force(540.0));
        let of_full = told.iter().any(|it| it.message.contains(&all));
        assert!(!(of_full && full.is_capped()), "{name}: {told:#?}");
    }
    // A full squeeze is worth a word where it is reached: stiff short reins, and a neck that bends.
    let mut stiff = pairs::flat();
    let thick = PlainSection::Round { diameter: mm(16.0) };
    (stiff.rein.start, stiff.rein.end) = (thick, thick);
    let load = StrengthLoad::default();
    assert!(!strong(&stiff, &load).1.squeezes[2].is_capped());
    sees(&stiff, &load, Severity::Note, Part::Neck, "121 lbf");
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
        prop_assert_eq!(other.is_capped(), 100.0 * factor > found.closing_n);
        let factor = factor.min(found.closing_n / 100.0);
        prop_assert!((other.closes_mm / one.closes_mm / factor - 1.0).abs() < 1e-9);
        prop_assert!((other.hold_ordinary_n / one.hold_ordinary_n / factor - 1.0).abs() < 1e-9);
    }
}
