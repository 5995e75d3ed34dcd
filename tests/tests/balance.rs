//! Balance against handbook weights, a textbook exercise, and the law that no steel is lost.

use proptest::prelude::*;
use reinwright_core::asked::{Allowances, Hole, Layout, PlainSection, Scale, Stock, Units};
use reinwright_core::finding::{Kind, Part, Severity};
use reinwright_core::forge;
use reinwright_core::forge::balance::{Balance, Loss};
use reinwright_core::shop::{Answers, balance_of};
use reinwright_core::steel::DENSITY_KG_MM3;
use reinwright_core::tongs::document::{Document, ReinEnd, ReinLine};
use reinwright_core::tongs::resolve;
use reinwright_core::units::Length;
use reinwright_tests::designs::{sample, varied};
use reinwright_tests::pairs::{bar, flat, length, mm};
use reinwright_tests::{INCH, close, within};

const KG_PER_LB: f64 = 0.453_592_37;

fn balanced(document: &Document) -> Balance {
    balance_of(document, &resolve(document))
}

fn part(balance: &Balance, part: Part) -> f64 {
    let all = &balance.pieces[0].parts;
    let of = all.iter().find(|p| p.part == part);
    of.expect("every half has it").bar_length_mm
}

/// Bar weights of steel tables in pounds a foot (Machinery's Handbook, from memory; the figures
/// follow from the usual 0.2833 lb/in³). Printed to a thousandth.
#[test]
fn bars_weigh_what_inch_tables_say() {
    let rounds = [
        ("1/4 in", 0.167),
        ("3/8 in", 0.376),
        ("1/2 in", 0.668),
        ("5/8 in", 1.043),
        ("3/4 in", 1.502),
        ("7/8 in", 2.044),
        ("1 in", 2.670),
        ("1 1/4 in", 4.172),
    ];
    let squares = [
        ("1/4 in", 0.213),
        ("1/2 in", 0.850),
        ("5/8 in", 1.328),
        ("3/4 in", 1.913),
        ("1 in", 3.400),
        ("1 1/4 in", 5.313),
    ];
    let foot = |stock: Stock| stock.area_mm2() * 12.0 * INCH * DENSITY_KG_MM3 / KG_PER_LB;
    let check = |found: f64, table: f64| {
        assert!(
            (found - table).abs() <= 0.002 * table + 0.0005,
            "{found} against {table}"
        );
    };
    for (size, table) in rounds {
        let diameter = length(size);
        check(foot(Stock::Round { diameter }), table);
    }
    for (size, table) in squares {
        check(foot(Stock::Square { side: length(size) }), table);
    }
}

/// Kilograms a metre of round and square bar as suppliers' tables print them (7850 kg/m³).
#[test]
fn bars_weigh_what_metric_tables_say() {
    let rounds = [
        (6.0, 0.222),
        (8.0, 0.395),
        (10.0, 0.617),
        (12.0, 0.888),
        (14.0, 1.21),
        (16.0, 1.58),
        (20.0, 2.47),
        (25.0, 3.86),
        (28.0, 4.83),
    ];
    let squares = [
        (6.0, 0.28),
        (10.0, 0.78),
        (12.0, 1.13),
        (16.0, 2.01),
        (25.0, 4.91),
    ];
    let metre = |stock: Stock| stock.area_mm2() * 1000.0 * DENSITY_KG_MM3;
    // A table rounds to its last digit, and 10 mm square is printed cut off.
    let check = |found: f64, table: f64, digit: f64| {
        assert!(
            (found - table).abs() <= 0.002 * table + digit,
            "{found} against {table}"
        );
    };
    for (size, table) in rounds {
        let digit = if table < 1.0 { 0.0005 } else { 0.005 };
        check(metre(Stock::Round { diameter: mm(size) }), table, digit);
    }
    for (size, table) in squares {
        check(metre(Stock::Square { side: mm(size) }), table, 0.005);
    }
}

/// W. L. Ilgen, Forge Work (1912), light chain tongs: 13 in of 3/4 in square for the pair, 1 1/4 in
/// for a jaw, 1 in for a boss, nothing allowed for scale. The book gives bar and sections; our
/// account of them must give its bar back.
#[test]
fn a_textbook_pair_takes_thirteen_inches() {
    let document = sample("textbook-light-chain");
    assert_eq!(document.allowances, Allowances::NONE);
    let balance = balanced(&document);
    close("pair", balance.bar_length_mm, 13.0 * INCH, 0.02);
    close("jaw", part(&balance, Part::Jaw), 1.25 * INCH, 0.02);
    // The book's boss ends where its set-downs do; ours takes the whole neck.
    let boss = part(&balance, Part::Neck) + part(&balance, Part::Boss);
    close("neck and boss", boss, INCH, 0.05);
    let rein = part(&balance, Part::Shoulder) + part(&balance, Part::Rein);
    close("shoulder and rein", rein, 4.25 * INCH, 0.02);
}

/// Half the diameter is a quarter of the area: 13 in of 3/8 in round takes 3 1/4 in of 3/4 in
/// round (common practice, and arithmetic).
#[test]
fn half_the_diameter_draws_four_to_one() {
    let mut document = flat();
    document.bar = bar("3/4 in round");
    let round = PlainSection::Round {
        diameter: length("3/8 in"),
    };
    document.rein.length = length("13 in");
    document.rein.line = ReinLine::Straight;
    (document.rein.start, document.rein.end) = (round, round);
    document.rein.finish = ReinEnd::Square;
    close(
        "rein",
        part(&balanced(&document), Part::Rein),
        3.25 * INCH,
        1e-9,
    );
}

/// A frustum from 19 to 10 mm round over 300 mm is 51 129.42 mm³, 180.33 mm of 19 mm round
/// (formula of every handbook).
#[test]
fn a_tapered_rein_is_a_frustum() {
    let mut document = flat();
    document.bar = bar("19 mm round");
    document.rein.length = mm(300.0);
    document.rein.line = ReinLine::Straight;
    document.rein.start = PlainSection::Round { diameter: mm(19.0) };
    document.rein.end = PlainSection::Round { diameter: mm(10.0) };
    document.rein.parallel = Length::ZERO;
    document.rein.finish = ReinEnd::Square;
    close("rein", part(&balanced(&document), Part::Rein), 180.33, 1e-4);
}

/// Every allowance by hand: the finished half is so many mm of bar, and all else follows.
#[test]
fn allowances_add_up_by_hand() {
    let mut document = flat();
    document.rivet.made = Hole::Drilled;
    document.layout = Layout::Single {
        tail: length("2 in"),
    };
    document.allowances = Allowances {
        scale: Scale::PerHeat {
            percent: 1.0,
            heats: 5,
        },
        crop: length("1/4 in"),
        kerf: length("1/16 in"),
        dressing: length("1/8 in"),
        margin: 10.0,
    };
    let balance = balanced(&document);
    let half = &balance.pieces[0];
    let finished = half.volume_mm3 / (0.75 * INCH).powi(2);
    let hole = std::f64::consts::FRAC_PI_4
        * document.rivet.hole.mm().powi(2)
        * document.boss.thickness.mm()
        / (0.75 * INCH).powi(2);
    let forged = finished * 1.05 + hole + INCH / 8.0;
    let expected = forged * 1.1 + INCH / 16.0 + 2.0 * INCH;
    close("half", half.bar_length_mm, expected, 1e-12);
    close(
        "pair",
        balance.bar_length_mm,
        2.0 * expected + INCH / 4.0,
        1e-12,
    );
}

/// Scale is never reckoned above 8 per cent (an estimating rule for small forgings gives 7.5).
#[test]
fn scale_by_heats_is_capped() {
    let scale = Scale::PerHeat {
        percent: 1.5,
        heats: 20,
    };
    close("scale", scale.total_percent(), 8.0, 1e-12);
}

/// A punched hole loses a slug and keeps the rest; a drilled one loses all of itself.
#[test]
fn a_punched_hole_costs_less_bar_than_a_drilled_one() {
    let lost = |made: Hole| {
        let mut document = flat();
        document.rivet.made = made;
        let half = balanced(&document).pieces[0].clone();
        half.allowance(Loss::Slug) + half.allowance(Loss::DrilledHole)
    };
    let (slug, hole) = (lost(Hole::Punched), lost(Hole::Drilled));
    assert!(slug > 0.0 && slug < 0.2 * hole, "{slug} against {hole}");
}

#[test]
fn both_halves_on_one_bar_are_marked_the_same_from_both_ends() {
    let mut document = flat();
    document.allowances = Allowances::NONE;
    let balance = balanced(&document);
    let whole = balance.bar_length_mm;
    let (marks, n) = (&balance.marks, balance.marks.len());
    assert_eq!(n, 7, "two ends, two marks a half, the cut");
    for i in 0..n {
        let mirrored = whole - marks[n - 1 - i].at_mm;
        assert!((marks[i].at_mm - mirrored).abs() < 1e-9, "mark {i}");
    }
    assert_eq!(marks[3].what, "cut");
}

#[test]
fn a_tail_and_a_crop_have_their_marks() {
    let mut document = flat();
    document.layout = Layout::Single {
        tail: length("2 in"),
    };
    document.allowances.crop = length("1/4 in");
    let names: Vec<String> = balanced(&document)
        .marks
        .into_iter()
        .map(|m| m.what)
        .collect();
    let half = [
        "jaw | neck and boss",
        "boss | shoulder and rein",
        "rein | tail",
    ];
    let expected = [
        &["end", "crop | jaw"][..],
        &half,
        &["cut"],
        &half,
        &["cut off"],
    ]
    .concat();
    assert_eq!(names, expected);
}

/// What a rule shows: 1/16 in, and 0.5 mm.
const RULES: [(Units, f64); 2] = [(Units::Inch, INCH / 16.0), (Units::Millimetre, 0.5)];

#[test]
fn marks_are_set_off_with_a_rule() {
    let balance = balanced(&flat());
    for (units, step) in RULES {
        for mark in &balance.marks {
            let set = mark.measured(units).mm();
            let steps = set / step;
            assert!((steps - steps.round()).abs() < 1e-6, "{}: {set}", mark.what);
            let both = set + balance.from_end(mark, units).mm();
            within("both ends", both, balance.cut_length(units).mm(), 1e-9);
        }
    }
}

/// Each half of a blank is set off from its own end, so that both are marked alike; the length is
/// long enough for both, and by no more than two marks of the rule. What a mark is off lies within
/// half a mark of the rule beside that.
#[test]
fn halves_on_one_bar_are_marked_alike_with_a_rule() {
    let mut document = flat();
    for kerf in ["0 in", "1/16 in", "2.3 mm"] {
        document.allowances.kerf = length(kerf);
        let balance = balanced(&document);
        let n = balance.marks.len();
        for (units, step) in RULES {
            let cut = balance.cut_length(units).mm();
            let needed = balance.bar_length_mm - document.allowances.kerf.mm();
            assert!(
                cut > needed - 1e-6 && cut < needed + 2.0 * step,
                "{cut} for {needed}"
            );
            for i in 0..n {
                let (left, right) = (&balance.marks[i], &balance.marks[n - 1 - i]);
                let from_end = balance.from_end(right, units).mm();
                within(&left.what, left.measured(units).mm(), from_end, 1e-9);
            }
            // What is marked from the left end lies as near to its place as the rule shows.
            for mark in &balance.marks[..n / 2] {
                within(
                    &mark.what,
                    mark.measured(units).mm(),
                    mark.at_mm,
                    step / 2.0 + 1e-9,
                );
            }
        }
    }
}

/// The strip shows the marks where their labels say, and its stretches meet them.
#[test]
fn the_strip_is_drawn_as_it_is_set_off() {
    let document = flat();
    let balance = balanced(&document);
    for (units, _) in RULES {
        for mark in &balance.marks {
            within(
                &mark.what,
                balance.set_off_mm(mark.at_mm, units),
                mark.measured(units).mm(),
                1e-9,
            );
        }
        let strip = forge::bar((&document.bar, units), &balance, 3.5).bounds();
        assert!(strip.width() >= balance.cut_length(units).mm());
    }
}

/// The light chain pair of Ilgen's Forge Work (1912): 13 in of bar, marks at 1 1/4 in and 2 1/4 in
/// from both ends.
#[test]
fn the_textbook_pair_is_marked_as_the_textbook_has_it() {
    let balance = balanced(&sample("textbook-light-chain"));
    let n = balance.marks.len();
    for (i, inches) in [(1, 1.25), (2, 2.25)] {
        let (left, right) = (&balance.marks[i], &balance.marks[n - 1 - i]);
        within("left", left.measured(Units::Inch).mm(), inches * INCH, 1.6);
        within(
            "right",
            balance.from_end(right, Units::Inch).mm(),
            inches * INCH,
            1.6,
        );
    }
}

#[test]
fn two_different_jaws_are_two_accounts() {
    let document = sample("v-over-flat");
    let balance = balanced(&document);
    let [a, b] = balance.pieces.as_slice() else {
        panic!("a pair is two halves");
    };
    assert_eq!(a.parts[0].part, Part::Jaw);
    assert_eq!(b.parts[0].part, Part::SecondJaw);
    assert!((a.bar_length_mm - b.bar_length_mm).abs() > 1.0);
}

/// All that goes in comes out: parts, losses and marks account for the whole bar.
#[track_caller]
fn conserved(document: &Document) {
    let model = resolve(document);
    let balance = balance_of(document, &model);
    let whole = balance.bar_length_mm;
    let same = |a: f64, b: f64, what: &str| {
        assert!(
            (a - b).abs() <= 1e-6 * (1.0 + b.abs()),
            "{what}: {a} against {b}"
        );
    };
    for (half, solid) in balance.pieces.iter().zip([&model.a, &model.b]) {
        let parts: f64 = half.parts.iter().map(|p| p.volume_mm3).sum();
        same(parts, solid.volume_mm3(), "the parts are the half");
        let bar: f64 = half.parts.iter().map(|p| p.bar_length_mm).sum();
        same(
            bar * balance.bar_area_mm2,
            half.volume_mm3,
            "volume in, volume out",
        );
        let lost: f64 = half.allowances.iter().map(|a| a.bar_length_mm).sum();
        same(
            bar + lost,
            half.bar_length_mm,
            "the half is parts and losses",
        );
    }
    let mut at = 0.0;
    for stretch in &balance.stretches {
        same(stretch.from_mm, at, "no gap on the bar");
        at = stretch.to_mm;
    }
    same(at, whole, "the stretches are the bar");
    // What no smith can make may have no volume, such as a hole larger than its boss; then it
    // says so.
    let stopped = Answers::to(document).worst() == Some(Severity::Stop);
    for part in balance.pieces.iter().flat_map(|half| &half.parts) {
        assert!(stopped || part.volume_mm3 > 0.0, "{part:?}");
    }
    for pair in balance.marks.windows(2) {
        assert!(stopped || pair[0].at_mm <= pair[1].at_mm, "marks in order");
    }
    assert!(whole.is_finite() && model.mass_kg().is_finite());
}

/// A hole that leaves a thin ring of a large boss reaches into the neck beyond it: a neck 1.9 mm deep has less steel
/// than the hole takes there. No bar can be reckoned, and the findings say why.
#[test]
fn a_hole_that_cuts_a_neck_out_is_a_finding() {
    let mut pair = flat();
    for (path, size) in [
        ("jaw.heel", "145.2 mm"),
        ("jaw.root_depth", "1.4 mm"),
        ("neck.depth", "1.9 mm"),
        ("neck.fillet", "60.6 mm"),
        ("boss.across", "118.6 mm"),
        ("boss.thickness", "1.1 mm"),
        ("rivet.hole", "109.4 mm"),
    ] {
        pair.set(path, size).expect("a size");
    }
    let answers = Answers::to(&pair);
    assert_eq!(answers.balance.bored_out(), Some(Part::Neck));
    assert!(answers.balance.trouble().is_some());
    let told = |kind, part| {
        answers
            .findings
            .iter()
            .any(|own| (own.kind, own.part) == (kind, part))
    };
    assert!(
        told(Kind::HoleBreaksOut, Part::Neck),
        "{:?}",
        answers.findings
    );
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(150))]

    /// Documents near a believable pair, in every style.
    #[test]
    fn no_steel_is_lost(dice in prop::collection::vec(any::<u32>(), 160)) {
        conserved(&varied(&flat(), &dice, 0.3));
    }

    /// Documents anywhere inside the limits.
    #[test]
    fn no_steel_is_lost_anywhere(dice in prop::collection::vec(any::<u32>(), 160)) {
        conserved(&varied(&flat(), &dice, f64::INFINITY));
    }
}
