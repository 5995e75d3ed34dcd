//! Where the work presses on the jaws, and what follows for force, bending and hold: against hand
//! arithmetic and the closed forms of statics.

use reinwright_core::finding::Part;
use reinwright_core::proof::fit::{self, Contact, GIVE_MM, Where, middle_of_pressure, press};
use reinwright_core::proof::strength::{Strength, StrengthLoad, strength, strength_on};
use reinwright_core::tongs::document::Document;
use reinwright_core::tongs::model::Model;
use reinwright_core::tongs::resolve;
use reinwright_core::units::{Temperature, TemperatureError};
use reinwright_tests::pairs::{self, mm, starting};
use reinwright_tests::{INCH, close, within};

fn squeezed_on(pair: &Document, work: &str) -> (Model, Contact, Strength) {
    let model = resolve(pair);
    let work = pairs::work(work);
    let contact = fit::fit_on(pair, &model, &work).expect("the pair holds it");
    let load = StrengthLoad::default();
    let strength = strength_on(pair, &model, Some(&contact), &load);
    (model, contact, strength)
}

#[test]
fn the_middle_of_the_pressure_is_the_centroid_of_a_trapeze() {
    // Centroid of a trapeze of parallel sides a and b a length apart: (a + 2b) / 3(a + b) from a
    // (statics handbooks); of a triangle a third. Both beside a plain sum over 100 000 strips.
    for open in [0.0, 0.2, 0.5, 1.0, 1.7, 4.0, 30.0] {
        let (mut force, mut moment) = (0.0, 0.0);
        for i in 0..100_000 {
            let at = (f64::from(i) + 0.5) / 1e5;
            let pressure = (1.0 - open * at).max(0.0);
            force += pressure;
            moment += pressure * at;
        }
        close("sum", middle_of_pressure(open), moment / force, 1e-5);
        let b: f64 = 1.0 - open;
        if b >= 0.0 {
            let trapeze = (1.0 + 2.0 * b) / (3.0 * (1.0 + b));
            close("trapeze", middle_of_pressure(open), trapeze, 1e-12);
        }
    }
}

#[test]
fn work_of_its_own_size_presses_in_the_middle_of_the_grip() {
    // Middle of 1 1/4 and 3 in is 2 1/8 in: N = P L / x.
    let pair = pairs::by_hand();
    let (model, _, found) = squeezed_on(&pair, "3/8 in flat");
    let arm = 2.125 * INCH;
    close("arm", found.press.grip_mm, arm, 1e-6);
    assert_eq!(found.press.place, Where::Whole);
    let hand = -model.a.hand().x;
    close("force", found.squeezes[0].jaw_n, 100.0 * hand / arm, 1e-6);
    assert_eq!(found, strength(&pair, &model, &StrengthLoad::default()));
}

#[test]
fn thicker_work_is_held_harder_at_the_heel() {
    // The trade's small angles: on 7/16 in the tips stand 0.0875 in open over 1 3/4 in of grip, so
    // the pressure is a triangle over 0.1 mm / 2.2225 mm of it, its middle a third of that from
    // the heel: 1.25 in + 1.75 in × 0.1 / (3 × 2.2225) = 1.2762 in.
    let pair = pairs::by_hand();
    let (model, contact, found) = squeezed_on(&pair, "7/16 in flat");
    assert_eq!(found.press.place, Where::Heel);
    let part = GIVE_MM / (3.0 * 0.0875 * INCH);
    let arm = (1.25 + 1.75 * part) * INCH;
    close("arm", found.press.grip_mm, arm, 0.01);
    assert!(found.press.grip_mm > contact.bearing[0].x_mm);
    let hand = -model.a.hand().x;
    for squeeze in found.squeezes {
        let jaw = squeeze.hand_n * hand / arm;
        close("jaw", squeeze.jaw_n, jaw, 0.01);
        close("rivet", squeeze.rivet_n, squeeze.hand_n + jaw, 0.01);
        // Two flats, friction of 0.25.
        close("hold", squeeze.hold_ordinary_n, 0.5 * jaw, 0.01);
    }
}

#[test]
fn thinner_work_is_held_less_at_the_tip() {
    // On 5/16 in the heel stands 0.0365 in open: 3 in − 1.75 in × 0.1 / (3 × 0.926) = 2.937 in.
    let (model, _, found) = squeezed_on(&pairs::by_hand(), "5/16 in flat");
    assert_eq!(found.press.place, Where::Tip);
    let open = 0.0625 * 1.75 / 3.0 * INCH;
    let arm = (3.0 - 1.75 * GIVE_MM / (3.0 * open)) * INCH;
    close("arm", found.press.grip_mm, arm, 0.01);
    let jaw = 100.0 * -model.a.hand().x / arm;
    close("jaw", found.squeezes[0].jaw_n, jaw, 0.01);
}

/// `M = P L (1 − x / x_g)` at the root of the jaw, σ = 6 M / b h² of its rectangle.
#[track_caller]
fn root_stress(work: &str, arm_in: f64) -> f64 {
    let pair = pairs::by_hand();
    let (model, contact, found) = squeezed_on(&pair, work);
    let root = found.halves[0].jaw_root().expect("a jaw");
    let section = model.a.jaw.section(0.0);
    let heel = model.a.heel();
    // The middle of the root lies above the line of faces; turned, that counts along the tongs.
    let along = heel * contact.half_angle.cos() - root.at.y * contact.half_angle.sin();
    let moment = 160.0 * -model.a.hand().x * (1.0 - along / (arm_in * INCH));
    let stress = 6.0 * moment / (section.width * section.depth.powi(2));
    within(work, root.stress_mpa(160.0), stress, 1.5);
    root.stress_mpa(160.0)
}

#[test]
fn the_root_of_the_jaw_bends_most_when_the_tip_bears() {
    let own = root_stress("3/8 in flat", 2.125);
    let tip = root_stress("5/16 in flat", 2.9370);
    let heel = root_stress("7/16 in flat", 1.2762);
    assert!(heel < 0.2 * own && tip > 1.3 * own, "{heel} {own} {tip}");
}

#[test]
fn stress_is_nothing_past_where_the_work_presses() {
    for work in ["5/16 in flat", "3/8 in flat", "7/16 in flat"] {
        let (_, _, found) = squeezed_on(&pairs::by_hand(), work);
        let half = &found.halves[0];
        let last = half.stations.last().expect("stations");
        within(work, last.moment_mm, 0.0, 3.0);
        let most = half.stations.iter().map(|s| s.moment_mm);
        let most = most.fold(0.0, f64::max);
        let hole = half.at_hole().expect("a boss");
        close(work, hole.moment_mm, most, 0.02);
        close(work, most, found.press.hand_mm, 0.02);
    }
}

#[test]
fn the_place_moves_without_a_leap() {
    let pair = pairs::by_hand();
    let model = resolve(&pair);
    let mut before: Option<f64> = None;
    for i in 0..=80 {
        let size = 0.3125 * INCH + 0.125 * INCH * f64::from(i) / 80.0;
        let work = pair.work.with_size(mm(size));
        let contact = fit::fit_on(&pair, &model, &work).expect("it is held");
        let arm = press(&model, Some(&contact)).grip_mm;
        if let Some(before) = before {
            assert!(arm < before + 1e-6, "{size}: {arm} after {before}");
            assert!(before - arm < 9.0, "{size}: {arm} after {before}");
        }
        before = Some(arm);
    }
}

#[test]
fn a_v_gains_the_same_on_a_round_of_another_size() {
    // 1 / sin 45° wherever a round touches the flat walls of a 90° V.
    let pair = starting("v bit", "5/8 in round", "3/4 in square");
    let (_, contact, found) = squeezed_on(&pair, "9/16 in round");
    assert_eq!(
        contact.bearing[0].bears,
        reinwright_core::tongs::seat::Bears::Walls
    );
    for gain in found.gains {
        close("gain", gain, std::f64::consts::SQRT_2, 2e-3);
    }
}

#[test]
fn a_pair_that_holds_nothing_is_reckoned_as_pressed_all_along() {
    let pair = pairs::by_hand();
    let model = resolve(&pair);
    let found = strength_on(&pair, &model, None, &StrengthLoad::default());
    assert_eq!(
        (found.press.size_mm, found.press.place),
        (None, Where::Whole)
    );
    close("arm", found.press.grip_mm, 2.125 * INCH, 1e-9);
    assert!(found.worst_of(&[Part::Rein]).is_some());
}

#[test]
fn temperatures_are_read_as_a_smith_writes_them() {
    for (text, celsius) in [
        ("600 C", 600.0),
        ("600", 600.0),
        ("600 °C", 600.0),
        ("600,5c", 600.5),
        ("1112 F", 600.0),
        ("32 °f", 0.0),
        ("-40 F", -40.0),
    ] {
        let read = text.parse::<Temperature>().expect(text);
        within(text, read.celsius(), celsius, 1e-9);
    }
    for text in [
        "", "red", "C", "6 in", "nan", "inf C", "1e3 C", "600 K", "6-0",
    ] {
        let read: Result<Temperature, TemperatureError> = text.parse();
        let error = read.expect_err(text).to_string();
        assert!(error.contains("600 C"), "{error}");
    }
}
