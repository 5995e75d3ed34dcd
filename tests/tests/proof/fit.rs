//! Fit: contact against seating and against the small-angle formulas of the trade, the range
//! against the limits it names.

use std::f64::consts::PI;

use proptest::prelude::*;
use reinwright_core::asked::Work;
use reinwright_core::finding::{Kind, Part, Severity};
use reinwright_core::proof::bending::give_mm_per_n;
use reinwright_core::proof::fit::{
    self, Contact, LEAST_SPAN_MM, Limit, NoContact, OUT_OF_PARALLEL, WIDEST_SPAN_MM, Where,
};
use reinwright_core::shape::section::{Section, work_section};
use reinwright_core::shop::Answers;
use reinwright_core::steel::YOUNGS_MPA;
use reinwright_core::tongs::document::{Document, ReinLine};
use reinwright_core::tongs::jaw::JawStyle;
use reinwright_core::tongs::model::{Half, Lies, Model};
use reinwright_core::tongs::resolve;
use reinwright_core::tongs::seat::seat;
use reinwright_tests::designs::{samples_folder, varied};
use reinwright_tests::files::bytes;
use reinwright_tests::pairs::{self, mm, starting, work};
use reinwright_tests::{INCH, close, within};

use super::{fitted, two_jaws};

#[track_caller]
fn on(document: &Document, work: &str) -> Contact {
    fit::fit_on(document, &resolve(document), &self::work(work)).expect("the pair holds it")
}

#[test]
fn nominal_work_is_held_all_along_in_the_set_pose() {
    for (name, pair) in pairs::all() {
        let (model, fit) = fitted(&pair);
        let contact = fit.nominal.unwrap_or_else(|no| panic!("{name}: {no}"));
        within(name, contact.half_angle, 0.0, 1e-6);
        within(name, contact.hand_gap_mm, model.hand_gap, 1e-3);
        let wanted = match model.work.lies {
            Lies::Endwise | Lies::Alongside => Where::Whole,
            Lies::Crosswise => Where::Across,
        };
        for bearing in &contact.bearing {
            assert_eq!(bearing.place, wanted, "{name}");
        }
    }
}

#[test]
fn other_work_is_met_where_seating_says() {
    // At the angle found, some section of the grip must rest on the work and none cut into it.
    // Seating brings plain sections together; the tilt of a groove by a few degrees is left out
    // there, so that it is compared to a hundredth of a mm.
    for (name, pair) in pairs::all() {
        let model = resolve(&pair);
        if model.work.lies == Lies::Crosswise {
            // Work across the jaws is met in the side view: `jaws/crosswise.rs`.
            continue;
        }
        for scale in [0.93, 1.0, 1.06] {
            let size = mm(pair.work.size().mm() * scale);
            let work = pair.work.with_size(size);
            let Ok(contact) = fit::fit_on(&pair, &model, &work) else {
                continue;
            };
            let clearest = least_clearance(&model.a, &model, &work, contact.half_angle);
            within(name, clearest, 0.0, 0.02);
        }
    }
}

/// The least that a jaw stands off the work along its grip, mm.
fn least_clearance(half: &Half, model: &Model, work: &Work, half_angle: f64) -> f64 {
    let (profile, depth, width) = work_section(work);
    let held = Section::new(&profile, depth, width);
    let from = model.work.from - half.heel();
    let (sin, cos) = half_angle.sin_cos();
    let stands = |i: u32| {
        let along = from + (half.jaw.length() - from) * f64::from(i) / 40.0;
        let line = half.jaw.path.at(along).at;
        let rest = seat(&half.jaw.section(along), half.jaw.rise(along), &held);
        line.x * sin + line.y * cos - rest.face
    };
    (0..=40).map(stands).fold(f64::MAX, f64::min)
}

#[test]
fn thicker_work_bears_at_the_heel_and_thinner_at_the_tip() {
    // Worked example of the trade's small-angle formulas (derived, common practice): on 7/16 in
    // the tips stand 0.0875 in open, 2.9 degrees in all; on 5/16 in the heel 0.036 in, 1.2 degrees.
    let pair = pairs::by_hand();
    let thick = on(&pair, "7/16 in flat");
    assert_eq!(thick.bearing[0].place, Where::Heel);
    close("tip open", thick.tip_open_mm, 0.0875 * INCH, 0.02);
    close("degrees", 2.0 * thick.half_angle.to_degrees(), 2.86, 0.02);
    within("bears at", thick.bearing[0].x_mm, 1.25 * INCH, 0.3);
    let thin = on(&pair, "5/16 in flat");
    assert_eq!(thin.bearing[0].place, Where::Tip);
    close(
        "heel open",
        thin.heel_open_mm,
        0.0625 * 1.75 / 3.0 * INCH,
        0.02,
    );
    close("degrees", 2.0 * thin.half_angle.to_degrees(), -1.19, 0.02);
}

#[test]
fn small_angle_formulas_agree_near_the_set_size_and_part_from_it_far_away() {
    let pair = pairs::by_hand();
    let (heel, tip, set) = (1.25 * INCH, 3.0 * INCH, 0.375 * INCH);
    let small = |t: f64| {
        let at = if t > set { heel } else { tip };
        (t - set) / (2.0 * at)
    };
    let found = |t: f64| on(&pair, &format!("{t} mm flat")).half_angle;
    for off in [-0.2, -0.05, 0.05, 0.2] {
        close("half-angle", found(set + off), small(set + off), 2e-3);
    }
    // x sin φ + y cos φ = t/2 solved here by plain bisection, with no closed form.
    let exact = |t: f64| {
        let (mut low, mut high) = (0.0, 1.5);
        for _ in 0..60 {
            let phi: f64 = f64::midpoint(low, high);
            if heel * phi.sin() + set / 2.0 * phi.cos() < t / 2.0 {
                low = phi;
            } else {
                high = phi;
            }
        }
        low
    };
    let mut parted = 0.0;
    for t in [12.0, 20.0, 30.0, 40.0] {
        within("half-angle", found(t), exact(t), 1e-7);
        let apart = found(t) / small(t) - 1.0;
        assert!(
            apart > parted,
            "at {t} mm the formulas part by {apart}, before by {parted}"
        );
        parted = apart;
    }
    assert!(parted > 0.05, "at 40 mm they part by {parted} only");
}

#[test]
fn swapping_the_halves_changes_nothing() {
    let (pair, swapped) = two_jaws();
    let ((_, fit), (_, other)) = (fitted(&pair), fitted(&swapped));
    let (a, b) = (fit.range.expect("held"), other.range.expect("held"));
    within("least", a.least.size_mm, b.least.size_mm, 1e-6);
    within("most", a.most.size_mm, b.most.size_mm, 1e-6);
    assert_eq!(a.least.limit, b.least.limit);
    assert_eq!(a.most.limit, b.most.limit);
    let (open, other_open) = (fit.opening, other.opening);
    within("opening", open, other_open, 1e-4);
    for (row, same) in fit.chart.iter().zip(&other.chart) {
        within("hand gap", row.hand_gap_mm, same.hand_gap_mm, 1e-4);
    }
    let (one, two) = (fit.nominal.expect("held"), other.nominal.expect("held"));
    assert_eq!(one.bearing[0], two.bearing[1]);
    assert_eq!(one.bearing[1], two.bearing[0]);
}

#[test]
fn like_halves_given_twice_are_as_like_halves() {
    for (name, pair) in [("flat", pairs::flat()), ("V", pairs::v_bit())] {
        let mut twice = pair.clone();
        twice.second_jaw = Some(pair.jaw.clone());
        let ((_, fit), (_, other)) = (fitted(&pair), fitted(&twice));
        within(name, fit.opening, other.opening, 1e-9);
        let (a, b) = (fit.range.expect("held"), other.range.expect("held"));
        within(name, a.least.size_mm, b.least.size_mm, 1e-9);
        within(name, a.most.size_mm, b.most.size_mm, 1e-9);
    }
}

/// What ends the range of a pair, and where, in mm.
#[track_caller]
fn ends(pair: &Document, least: Limit, most: Limit) -> (f64, f64) {
    let range = fitted(pair).1.range.expect("the pair holds something");
    assert_eq!(range.least.limit, least, "{range:?}");
    assert_eq!(range.most.limit, most, "{range:?}");
    (range.least.size_mm, range.most.size_mm)
}

#[test]
fn the_range_ends_at_the_limit_it_names() {
    use Limit::{GrooveEdges, HandSpan, JawsMeet, OutOfParallel, ReinsClose};
    let pair = pairs::by_hand();
    let (least, most) = ends(&pair, OutOfParallel, OutOfParallel);
    let model = resolve(&pair);
    let open_at = |size: f64| {
        let work = pair.work.with_size(mm(size));
        fit::fit_on(&pair, &model, &work).expect("held")
    };
    let allowed = OUT_OF_PARALLEL * 1.75 * INCH;
    close("tip open", open_at(most).tip_open_mm, allowed, 3e-3);
    close("heel open", open_at(least).heel_open_mm, allowed, 3e-3);
    // Tongs forgive thinner work better than thicker, by tip over heel (common practice,
    // no source).
    let set = 0.375 * INCH;
    close("forgiving", (set - least) / (most - set), 3.0 / 1.25, 0.1);

    let mut wide = pairs::flat();
    wide.rein.gap = mm(64.0);
    let (_, most) = ends(&wide, OutOfParallel, HandSpan);
    let model = resolve(&wide);
    let work = wide.work.with_size(mm(most));
    let span = fit::fit_on(&wide, &model, &work)
        .expect("held")
        .hand_span_mm;
    within("span", span, WIDEST_SPAN_MM, 0.03);

    let mut narrow = pairs::flat();
    narrow.rein.gap = mm(8.0);
    narrow.rein.line = ReinLine::Straight;
    ends(&narrow, ReinsClose, OutOfParallel);

    // The lips of a V meet when its leg is as long as the round is thick (derived): a 5/8 in leg.
    let v = starting("v bit", "3/4 in round", "3/4 in square");
    let (least, _) = ends(&v, JawsMeet, OutOfParallel);
    close("lips meet", least, 0.625 * INCH, 5e-3);

    // A round leaves a V of leg l when it touches l from the apex: d = 2 l tan(θ/2).
    let mut shallow = v.clone();
    if let JawStyle::VBit(bit) = &mut shallow.jaw.style {
        bit.leg = mm(9.8);
    }
    let (_, most) = ends(&shallow, OutOfParallel, GrooveEdges);
    close("leaves the V", most, 2.0 * 9.8, 5e-3);
}

/// The textbook's light chain tongs (Ilgen, Forge Work, 1912; its sections, lengths of ours), summed
/// by hand over 2000 slices of a rein that goes from 1/2 by 7/16 in to 5/16 in round: with
/// m = x for each newton, 2 ∫ m²/(E I) dx is 0.170 mm/N for both reins; shoulder, boss and jaw as plain
/// blocks add 1.6 mm. So 100 N close the hand by 18.6 mm of its 25.4, and on work of 6.6 mm, by
/// x sin φ + y cos φ = t/2 at the tip, that is all there is.
#[test]
fn the_textbook_pair_is_of_use_until_an_ordinary_squeeze_closes_its_reins() {
    let file = samples_folder().join("textbook-light-chain.ron");
    let pair = reinwright_core::tongs::document::read(&bytes(&file)).expect("a design");
    let (model, fit) = fitted(&pair);
    let (rein, length) = (0.3125 * INCH, (17.75 - 3.0) * INCH);
    let slice = |i: u32| {
        let t = (f64::from(i) + 0.5) / 2000.0;
        let (deep, wide) = (rein + 0.1875 * INCH * t, rein + 0.125 * INCH * t);
        // ∫ (t + (1 − t) √(1 − u²))³ du / 24: 1/12 for the rectangle, π/64 for the round.
        let r = 1.0 - t;
        let cubed = 2.0 * t.powi(3) + 1.5 * PI * t * t * r + 4.0 * t * r * r;
        let shape = (cubed + 3.0 * PI / 8.0 * r.powi(3)) / 24.0;
        (t * length).powi(2) / (YOUNGS_MPA * shape * wide * deep.powi(3)) * length / 2000.0
    };
    let reins = 2.0 * 100.0 * (0..2000).map(slice).sum::<f64>();
    close("reins alone", reins, 17.0, 0.01);
    let give = 100.0 * give_mm_per_n(&fit.bending);
    close("give", give, reins + 1.6, 0.02);
    let range = fit.range.expect("it holds work");
    assert_eq!(range.least.limit, Limit::ReinsClose);
    within("from", range.least.size_mm, 6.6, 0.1);
    // At the end itself the gap is what the squeeze takes.
    let on = fit::fit_on(&pair, &model, &pair.work.with_size(mm(range.least.size_mm)));
    within("gap", on.expect("held").hand_gap_mm, give, 0.02);
}

/// A crease is no groove: flat work lies on the faces beside it and is held as in plain jaws.
#[test]
fn a_creased_face_ends_where_a_plain_one_does() {
    let plain = pairs::flat();
    for crease in [1.0, 3.0, 6.0] {
        let mut creased = plain.clone();
        let JawStyle::Flat(style) = &mut creased.jaw.style else {
            panic!("a flat jaw");
        };
        style.crease = mm(crease);
        let [a, b] = [&plain, &creased].map(|pair| fitted(pair).1.range.expect("held"));
        assert_eq!((a.least.limit, a.most.limit), (b.least.limit, b.most.limit));
        within("least", a.least.size_mm, b.least.size_mm, 1e-3);
        within("most", a.most.size_mm, b.most.size_mm, 1e-3);
    }
}

/// Jaws of which one ends early press on what both have: a flat jaw 1 in shorter at the tip bears as a
/// pair of jaws that are both so short.
#[test]
fn jaws_that_overlap_little_are_reckoned_on_what_they_have_in_common() {
    let long = pairs::by_hand();
    let mut short = long.clone();
    short.jaw.length = mm(0.75 * INCH);
    let mut mixed = long.clone();
    mixed.second_jaw = Some(short.jaw.clone());
    let [a, b] = [&short, &mixed].map(fitted);
    close("grip arm", a.1.press.grip_mm, b.1.press.grip_mm, 1e-3);
    close("arm by hand", b.1.press.grip_mm, 1.625 * INCH, 1e-3);
    let on = |pair: &Document| on(pair, "5/16 in flat");
    // Thinner work bears at the tip of the shorter jaw, 2 in before the rivet.
    close("bears at", on(&mixed).bearing[0].x_mm, 2.0 * INCH, 5e-3);
    // Work of 3/8 in is gripped over 3/4 in: enough. Over 1/4 in it is not.
    let found = |pair: &Document| Answers::to(pair).findings;
    let told = |pair: &Document| {
        let all = found(pair).into_iter();
        all.filter(|it| it.kind == Kind::GripShort && it.part == Part::SecondJaw)
            .map(|it| it.severity)
            .collect::<Vec<_>>()
    };
    assert_eq!(told(&mixed), []);
    let mut less = mixed.clone();
    if let Some(second) = &mut less.second_jaw {
        second.heel = mm(2.75 * INCH);
        second.length = mm(1.75 * INCH);
    }
    assert_eq!(told(&less), [Severity::Mend], "{:#?}", found(&less));
    if let Some(second) = &mut less.second_jaw {
        second.heel = mm(3.25 * INCH);
    }
    assert_eq!(told(&less), [Severity::Stop], "{:#?}", found(&less));
}

#[test]
fn three_questions() {
    // Tongs for 3/8 in flat used on 1/2 in: held at the heel, the tips too far open.
    let pair = pairs::flat();
    let contact = on(&pair, "1/2 in flat");
    assert_eq!(contact.bearing[0].place, Where::Heel);
    assert!(contact.tip_open_mm > OUT_OF_PARALLEL * 44.0, "{contact:?}");
    let range = fitted(&pair).1.range.expect("held");
    assert!(range.holds(9.525) && !range.holds(12.7), "{range:?}");

    // A V-bit for 5/8 in round does not hold 1/4 to 1 in: it takes 1.05 to 1.8 legs (common
    // practice, no source).
    let v = starting("v bit", "5/8 in round", "3/4 in square");
    let range = fitted(&v).1.range.expect("held");
    assert!(!range.holds(0.25 * INCH) && !range.holds(INCH), "{range:?}");
    let work = self::work("1/4 in round");
    let no = fit::fit_on(&v, &resolve(&v), &work).expect_err("the lips meet first");
    assert!(matches!(no, NoContact::MeetsFirst { .. }), "{no}");
}

#[test]
fn the_hand_is_measured_as_the_guide_has_it() {
    // NIOSH and Cal/OSHA 2004-164: power grip, 2 in closed, 3 1/2 in open.
    within("least", LEAST_SPAN_MM, 2.0 * INCH, 1e-9);
    within("widest", WIDEST_SPAN_MM, 3.5 * INCH, 1e-9);
}

#[test]
fn hands_open_with_the_work_and_leverage_is_arm_over_arm() {
    for (name, pair) in pairs::all() {
        let (model, fit) = fitted(&pair);
        for pair in fit.chart.windows(2) {
            assert!(pair[1].size_mm > pair[0].size_mm, "{name}");
            assert!(
                pair[1].hand_gap_mm >= pair[0].hand_gap_mm - 1e-6,
                "{name}: {pair:?}"
            );
        }
        assert!(fit.chart.len() > 10, "{name}: {} rows", fit.chart.len());
        let middle = match model.work.lies {
            Lies::Endwise | Lies::Alongside => f64::midpoint(model.work.from, model.a.tip()),
            Lies::Crosswise => model.work.from,
        };
        close(name, fit.leverage(), -model.a.hand().x / middle, 1e-9);
        close(name, fit.mass_kg, model.mass_kg(), 1e-9);
        close(name, fit.balance_point_mm, balanced(&pair, &model), 1e-9);
        within(name, fit.in_line.at_hand_mm, 0.0, 1e-9);
    }
}

/// Where the pair balances, by the lever: both halves on their own centres, and the rivet's shank
/// at the rivet, where it has weight and no arm.
fn balanced(pair: &Document, model: &Model) -> f64 {
    let shank = std::f64::consts::FRAC_PI_4 * pair.rivet.diameter.mm().powi(2);
    let shank = shank * 2.0 * pair.boss.thickness.mm();
    let [a, b] = [&model.a, &model.b].map(|half| half.mass());
    let steel = a.volume + b.volume + shank;
    (a.x + b.x) / steel
}

/// Past both ends the charts go on from where they ended, as contact with such work has it, and
/// stop where the halves stop each other.
#[test]
fn charts_go_on_past_the_range() {
    for (name, pair) in pairs::all() {
        let (model, fit) = fitted(&pair);
        let range = fit.range.as_ref().expect("it holds work");
        let to = (0.97 * range.least.size_mm, 1.03 * range.most.size_mm);
        let [under, over] = fit::chart_beyond(&pair, &model, &fit, to);
        for (rows, end, kept) in [
            (&under, range.least, fit.chart.first()),
            (&over, range.most, fit.chart.last()),
        ] {
            let first = rows.first().expect("the end itself");
            assert_eq!(Some(first), kept, "{name}");
            let stopped = matches!(
                end.limit,
                Limit::ReinsTouch | Limit::JawsMeet | Limit::HalvesCollide
            );
            assert_eq!(
                rows.len() == 1,
                stopped,
                "{name}: {:?}, {}",
                end,
                rows.len()
            );
            if pair.work.bolt_held().is_some() {
                // A bolt of another size has another head, whose end lies elsewhere.
                continue;
            }
            for row in &rows[1..] {
                let work = pair.work.with_size(mm(row.size_mm));
                let contact = fit::fit_on(&pair, &model, &work).expect("it is reached");
                // A size is kept to a few decimals, which the hands magnify.
                within(name, row.hand_gap_mm, contact.hand_gap_mm, 1e-3);
            }
        }
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(48))]

    /// As long as the work bears alike: a jaw that larger work no longer enters takes it another
    /// way, with another opening. And as long as larger work is no narrower: of a leg of an angle a
    /// thicker other leg leaves less.
    #[test]
    fn near_pairs_open_their_hands_with_their_work(
        which in 0..pairs::all().len(),
        dice in prop::collection::vec(any::<u32>(), 40),
    ) {
        let all = pairs::all();
        let document = varied(&all[which].1, &dice, 0.15);
        let model = resolve(&document);
        let size = document.work.size().mm();
        let mut before: Option<(Contact, f64)> = None;
        for scale in [0.85, 0.95, 1.0, 1.05, 1.15] {
            let work = document.work.with_size(mm(size * scale));
            if let Ok(contact) = fit::fit_on(&document, &model, &work) {
                let width = resolve(&Document { work, ..document.clone() }).work.width;
                let bears = |contact: &Contact| [0, 1].map(|i| contact.bearing[i].bears);
                let larger = |(before, narrow): &(Contact, f64)| {
                    bears(before) == bears(&contact) && *narrow <= width
                };
                if let Some((before, _)) = before.filter(larger) {
                    prop_assert!(contact.half_angle >= before.half_angle - 1e-6);
                }
                before = Some((contact, width));
            }
        }
    }

    #[test]
    fn any_pair_is_fitted_in_finite_numbers(dice in prop::collection::vec(any::<u32>(), 60)) {
        let document = varied(&pairs::flat(), &dice, f64::INFINITY);
        let (model, fit) = fitted(&document);
        let text = format!("{fit:?} {:?}", fit::findings(&document, &model, &fit));
        prop_assert!(!text.contains("NaN") && !text.contains("inf,"), "{text}");
        if let Ok(range) = fit.range {
            prop_assert!(range.least.size_mm <= range.most.size_mm + 2e-3, "{range:?}");
        }
    }
}
