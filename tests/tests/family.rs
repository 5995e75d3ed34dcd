//! Families: one design in many sizes, its file, its set, and the jobs that take it.
#![allow(clippy::unwrap_used, reason = "a test may stop at what it cannot read")]

use std::ffi::OsString;
use std::ops::ControlFlow;
use std::path::Path;

use proptest::prelude::*;
use reinwright::command_line::{Answer, answer};
use reinwright::set_printing::{self, Wanted};
use reinwright_core::document::{
    self, Bar, Document, Field, ReinLine, Stock, Units, Value, Work, parse_bar, parse_work,
};
use reinwright_core::drawing::{Drawing, Item, Paper};
use reinwright_core::family::{
    self, EditError, Family, Rounding, Rule, Size, Why, answer_all, coverage, holders, sheet,
    totals,
};
use reinwright_core::finding::Severity;
use reinwright_core::model::Half;
use reinwright_core::resolve;
use reinwright_core::sweep::Sweep;
use reinwright_core::units::{Length, Unit};
use reinwright_tests::close;
use reinwright_tests::designs::{family_paths, sample, sample_paths, samples_folder, varied};
use reinwright_tests::pairs;
use serde_json::Value as Json;

fn read_sample(name: &str) -> Family {
    let bytes = std::fs::read(samples_folder().join(name)).unwrap();
    family::read(&bytes).unwrap()
}

fn v_bits() -> Family {
    read_sample("family-v-bit.ron")
}

/// The value at a path, as text.
fn text_at(document: &Document, path: &str) -> String {
    let fields = family::fields(document);
    let field = fields.into_iter().find(|field| field.path == path);
    field.expect("the document has the field").text
}

// One size.

#[test]
fn a_family_of_one_is_its_design() {
    let mut designs: Vec<Document> = pairs::all().into_iter().map(|(_, pair)| pair).collect();
    designs.extend(sample_paths().iter().map(|path| {
        let name = path.file_stem().unwrap().to_str().unwrap();
        sample(name)
    }));
    assert!(designs.len() > 15);
    for design in designs {
        let family = Family::from_design(&design);
        assert_eq!(family.take_out(0).unwrap(), design, "{}", design.name);
        let answers = answer_all(&family);
        assert_eq!(answers[0].model, resolve(&design), "{}", design.name);
        assert_eq!(family.differs_from_base(0), Vec::new());
    }
}

// Scaling.

fn scaled_length(length: Length, k: f64) -> Length {
    Length::decimal(length.mm() * k / length.unit().mm(), length.unit())
}

fn scaled_work(work: Work, k: f64) -> Work {
    match work {
        Work::Flat { thickness, width } => Work::Flat {
            thickness: scaled_length(thickness, k),
            width: scaled_length(width, k),
        },
        Work::Round { .. } | Work::Square { .. } | Work::Hexagon { .. } | Work::Octagon { .. } => {
            work.with_size(scaled_length(work.size(), k))
        }
    }
}

fn scaled_bar(mut bar: Bar, k: f64) -> Bar {
    match &mut bar.stock {
        Stock::Round { diameter: it } | Stock::Square { side: it } => *it = scaled_length(*it, k),
        Stock::Flat { thickness, width } => {
            *thickness = scaled_length(*thickness, k);
            *width = scaled_length(*width, k);
        }
    }
    bar
}

/// A family with the base and the same in k times its size, every length by a rule in turn.
fn exactly_scaled(base: &Document, k: f64, rules: [Rule; 2]) -> Family {
    let mut family = Family::from_design(base);
    family.rounding = Rounding::Exact;
    let mut turn = rules.into_iter().cycle();
    base.clone().visit(&mut |field: Field<'_>| {
        if matches!(field.value, Value::Length(_)) {
            family.rules.insert(field.path, turn.next().unwrap());
        }
    });
    let mut size = Size::new(scaled_work(base.work, k));
    size.bar = Some(scaled_bar(base.bar, k));
    family.sizes.push(size);
    family
}

/// What must scale exactly: the jaw, and the rein unless lengths that suit the hand shape it too,
/// as they do a bow and a grip of its own.
fn exact_sweeps<'a>(document: &Document, half: &'a Half) -> Vec<&'a Sweep> {
    let bowed = matches!(document.rein.line, ReinLine::Bowed { .. });
    if bowed || document.rein.hand_zone.is_some() {
        vec![&half.jaw]
    } else {
        vec![&half.jaw, &half.rein]
    }
}

/// How near exact scaling comes, relative: the jaw to rounding; stations of a rein stand 0.001 mm
/// apart at least whatever its size, which moves its sections by 3e-6 of its length.
const JAW: f64 = 1e-9;
const REIN: f64 = 1e-5;

/// Second moments about both axes along a sweep, short of its end: a rounded end has no section
/// left, and a ball swells so steeply that the place counts more than the size.
fn second_moments(sweep: &Sweep) -> Vec<f64> {
    let at = |t: f64| sweep.section(t * sweep.length()).properties();
    let all = [0.0, 0.3, 0.55, 0.8, 0.9].map(at);
    all.iter().flat_map(|p| [p.side_mm4, p.top_mm4]).collect()
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(200))]

    /// Source: dimensions. A shape k times as large has k³ the volume, k² the outline and k⁴
    /// the second moment of area. The play of 1 mm past the other boss is the same in all sizes,
    /// so that the steps between boss, neck and shoulder are not quite alike: of the whole half
    /// they are under 1 %.
    #[test]
    fn proportional_shapes_are_alike(which in 0..12usize, k in 0.6..1.8f64, bar_first: bool) {
        let (name, base) = pairs::all().swap_remove(which);
        let rules = if bar_first { [Rule::WithBar, Rule::WithWork] } else { [Rule::WithWork, Rule::WithBar] };
        let family = exactly_scaled(&base, k, rules);
        let answers = answer_all(&family);
        prop_assert!(answers[1].findings.iter().all(|f| !f.message.contains("by its rule")));
        let [one, other] = [&answers[0].model, &answers[1].model];
        let pairs = exact_sweeps(&base, &one.a).into_iter().zip(exact_sweeps(&base, &other.a));
        for ((a, b), near) in pairs.zip([JAW, REIN]) {
            close(&format!("{name}: volume"), b.volume_mm3(), a.volume_mm3() * k.powi(3), near);
            for (a, b) in second_moments(a).iter().zip(second_moments(b)) {
                close(&format!("{name}: second moment"), b, a * k.powi(4), near);
            }
        }
        let area = |half: &Half| kurbo::Shape::area(&half.outline()).abs();
        let near = if exact_sweeps(&base, &one.a).len() == 2 { 1e-3 } else { 0.01 };
        close("outline", area(&other.a), area(&one.a) * k * k, near);
        close("half", other.a.volume_mm3(), one.a.volume_mm3() * k.powi(3), 0.01);
    }

    /// Rounded, every scaled length of a design in inches is a whole number of 32nds, and never
    /// nothing.
    #[test]
    fn scaled_sizes_can_be_measured(sixteenths in 4..16u32) {
        let base = pairs::starting("flat", "3/8 in flat", "3/4 in square");
        let mut family = Family::from_design(&base);
        let mut size = Size::new(base.work);
        size.bar = Some(parse_bar(&format!("{sixteenths}/16 in square")).unwrap());
        family.sizes.push(size);
        let mut made = family.take_out(1).unwrap();
        let play = made.rivet.hole.mm() - made.rivet.diameter.mm();
        prop_assert!(sixteenths == 12 || (play - 25.4 / 64.0).abs() < 1e-9, "play {}", play);
        made.visit(&mut |field| {
            let hole = field.path == "rivet.hole";
            if let Value::Length(length) = field.value && !hole && length.mm() > 0.0 {
                let parts = length.mm() / 25.4 * 32.0;
                assert!((parts - parts.round()).abs() < 1e-6, "{}: {length}", field.path);
            }
        });
    }

    /// Whatever the base and the sizes, the file gives the family back.
    #[test]
    fn text_gives_the_family_back(dice in prop::collection::vec(any::<u32>(), 160)) {
        let base = varied(&pairs::flat(), &dice, f64::INFINITY);
        let mut family = Family::from_design(&base);
        family.rounding = [Rounding::Measured, Rounding::Exact][dice[0] as usize % 2];
        let paths: Vec<String> = family::fields(&base).into_iter().map(|f| f.path).collect();
        for (at, throw) in dice.iter().enumerate().take(8) {
            let path = &paths[*throw as usize % paths.len()];
            family.set_rule(path, Rule::ALL[at % 3]).ok();
            let mut size = Size::new(parse_work(&format!("{} mm round", at + 6)).unwrap());
            size.set.insert(path.clone(), text_at(&base, path));
            size.name = "\"quoted\" \\ \u{2300}\n".repeat(at % 2);
            family.sizes.push(size);
        }
        family.sizes.iter_mut().for_each(|size| size.set.retain(|path, _| !path.starts_with("work.")));
        let text = family::write(&family);
        prop_assert_eq!(family::read(text.as_bytes()).unwrap(), family.clone());
        // Every size of it is a design that can be saved.
        for answer in answer_all(&family) {
            prop_assert!(document::check_limits(&answer.document).is_ok());
        }
    }

    #[test]
    fn one_wrong_byte_never_panics(at in 0.0..1.0f64, byte: u8) {
        let mut bytes = family::write(&v_bits()).into_bytes();
        #[allow(
            clippy::cast_possible_truncation, clippy::cast_sign_loss, clippy::cast_precision_loss,
            reason = "a place in a short file"
        )]
        let place = (at * bytes.len() as f64) as usize;
        bytes[place] = byte;
        match family::open(&bytes) {
            Ok(opened) => {
                opened.lost.iter().for_each(|lost| sentence(lost));
                answer_all(&opened.family);
            }
            Err(error) => sentence(&error.to_string()),
        }
    }

    #[test]
    fn any_bytes_never_panic(bytes in prop::collection::vec(any::<u8>(), 0..400)) {
        if let Err(error) = family::open(&bytes) {
            sentence(&error.to_string());
        }
    }
}

#[track_caller]
fn sentence(text: &str) {
    assert_eq!(text.lines().count(), 1, "{text}");
    assert!(!text.is_empty() && !text.ends_with('.'), "{text}");
}

/// The rules that fields bring along: jaw with the work, boss and rivet with the bar, rein and
/// hand gap the same in all.
#[test]
fn rules_are_sensible_before_anything_is_chosen() {
    let family = Family::from_design(&pairs::v_bit());
    let rule = |path: &str| family.rule(path).map(|(rule, _)| rule);
    assert_eq!(rule("jaw.leg"), Some(Rule::WithWork));
    for path in [
        "boss.across",
        "boss.thickness",
        "rivet.diameter",
        "neck.depth",
    ] {
        assert_eq!(rule(path), Some(Rule::WithBar), "{path}");
    }
    for path in ["rein.length", "rein.gap", "rein.hand", "allowances.kerf"] {
        assert_eq!(rule(path), Some(Rule::Same), "{path}");
    }
    assert_eq!(rule("jaw.angle"), None, "angles stay");
}

#[test]
fn a_size_scales_by_its_rules() {
    let mut family =
        Family::from_design(&pairs::starting("v bit", "1/2 in round", "3/4 in square"));
    let mut size = Size::new(parse_work("1 in round").unwrap());
    size.bar = Some(parse_bar("1 1/2 in square").unwrap());
    family.add(size).unwrap();
    let made = family.take_out(1).unwrap();
    // Twice the work, twice the bar, by hand: each base value below is half of it.
    for (path, base, double) in [
        ("jaw.leg", "7/16 in", "7/8 in"),
        ("boss.across", "1 1/8 in", "2 1/4 in"),
        ("rivet.diameter", "5/16 in", "5/8 in"),
        ("rein.length", "15 in", "15 in"),
        ("rein.gap", "1 1/4 in", "1 1/4 in"),
    ] {
        assert_eq!(text_at(&family.base, path), base, "{path}");
        assert_eq!(text_at(&made, path), double, "{path}");
    }
    family.set_rule("rein.length", Rule::WithWork).unwrap();
    assert_eq!(
        text_at(&family.take_out(1).unwrap(), "rein.length"),
        "30 in"
    );
    family.set_rule("rein.length", Rule::Same).unwrap();
    assert!(
        family.rules.is_empty(),
        "a rule that is the usual one is not kept"
    );
}

#[test]
fn what_a_rule_takes_past_its_limits_is_told_and_the_others_work() {
    let mut family = Family::from_design(&pairs::flat());
    family
        .add(Size::new(parse_work("3 in flat").unwrap()))
        .unwrap();
    family.set_rule("rein.length", Rule::WithWork).unwrap();
    let answers = answer_all(&family);
    let told = answers[1]
        .findings
        .iter()
        .find(|f| f.message.contains("by its rule"))
        .unwrap();
    assert_eq!(told.severity, Severity::Stop);
    // 15 in times 8, against the limit of a rein, 2000 mm.
    assert!(
        told.message.contains("120 in") && told.message.contains("2000"),
        "{told}"
    );
    sentence(&told.to_string());
    assert_eq!(answers[1].worst(), Some(Severity::Stop));
    assert!(document::check_limits(&answers[1].document).is_ok());
    assert_eq!(answers[0].document, family.base);
}

// By hand.

#[test]
fn what_is_set_by_hand_stays_until_it_is_let_go() {
    let mut family = v_bits();
    let at = family
        .sizes
        .iter()
        .position(|size| size.label() == "3/4 in")
        .unwrap();
    family.set(at, "rein.length", "17 1/2").unwrap();
    let here = |family: &Family| text_at(&family.take_out(at).unwrap(), "rein.length");
    assert_eq!(here(&family), "17 1/2 in");
    family.set_base("rein.length", "14 in").unwrap();
    assert_eq!(here(&family), "17 1/2 in");
    assert_eq!(
        text_at(&family.take_out(0).unwrap(), "rein.length"),
        "14 in"
    );
    let family_again = family::read(family::write(&family).as_bytes()).unwrap();
    assert_eq!(here(&family_again), "17 1/2 in");
    let why = |family: &Family| {
        let all = family.differs_from_base(at);
        all.into_iter()
            .find(|d| d.path == "rein.length")
            .map(|d| d.why)
    };
    assert_eq!(why(&family), Some(Why::ByHand));
    assert_eq!(family.let_go(at, "rein.length"), Ok(true));
    assert_eq!(here(&family), "14 in");
    assert_eq!(why(&family), None);
    assert_eq!(family.let_go(at, "rein.length"), Ok(false));
}

#[test]
fn choices_set_by_hand_bring_their_own_values() {
    let mut family = Family::from_design(&pairs::flat());
    family
        .add(Size::new(parse_work("1/2 in flat").unwrap()))
        .unwrap();
    family.set(1, "rein.line", "bowed").unwrap();
    family.set(1, "rein.bow", "1/2").unwrap();
    let table = family.table();
    let row = |path: &str| {
        table
            .rows
            .iter()
            .find(|row| row.field.path == path)
            .unwrap()
    };
    let bow = row("rein.bow");
    assert_eq!(
        (bow.base.as_deref(), bow.cells[0].text.as_deref()),
        (None, None)
    );
    assert_eq!(bow.cells[1].text.as_deref(), Some("1/2 in"));
    assert!(bow.cells[1].by_hand && !bow.cells[0].by_hand && bow.varies());
    assert_eq!(row("rein.bend").cells[1].text, None);
    // Without the bow its value has no place: it is kept, and told.
    family.let_go(1, "rein.line").unwrap();
    let answer = family.answer(1).unwrap();
    let told = answer
        .findings
        .iter()
        .find(|f| f.message.contains("rein.bow"))
        .unwrap();
    assert_eq!(told.severity, Severity::Mend);
    assert!(family.sizes[1].set.contains_key("rein.bow"));
}

#[test]
fn work_and_bar_are_each_sizes_own() {
    let mut family = Family::from_design(&pairs::flat());
    family
        .add(Size::new(parse_work("1/2 in flat").unwrap()))
        .unwrap();
    family.set(1, "work.thickness", "5/8").unwrap();
    family.set(1, "bar.side", "7/8 in").unwrap();
    let size = &family.sizes[1];
    assert_eq!(size.work.size().to_string(), "5/8 in");
    assert_eq!(size.bar.unwrap().stock.size().to_string(), "7/8 in");
    assert!(size.set.is_empty());
    assert_eq!(family.let_go(1, "bar.side"), Ok(true));
    assert_eq!(family.take_out(1).unwrap().bar, family.base.bar);
}

#[track_caller]
fn not_set(path: &str, text: &str, words: &[&str]) {
    let mut family = v_bits();
    let before = family.clone();
    let error = family
        .set(1, path, text)
        .expect_err("a bad value")
        .to_string();
    sentence(&error);
    for word in words {
        assert!(error.contains(word), "{word} in: {error}");
    }
    assert_eq!(family, before, "nothing changed");
}

#[test]
fn bad_values_are_refused_in_a_sentence() {
    not_set(
        "jaw.leg",
        "3//4 in",
        &["jaw.leg", "3//4 in", "write one such as"],
    );
    not_set("jaw.leg", "", &["size is missing"]);
    not_set("jaw.leg", "-1", &["minus"]);
    not_set("jaw.leg", "900 mm", &["jaw.leg", "0.5 to 200 mm"]);
    not_set("jaw.angle", "right", &["not an angle"]);
    not_set("jaw.angle", "200", &["40 to 160 deg"]);
    not_set("allowances.slop", "1e3", &["percentage"]);
    not_set("allowances.slop", "99", &["0 to 40 %"]);
    not_set("boss.shape", "star", &["round, oval, lozenge"]);
    not_set("jaw.tusk", "1 in", &["jaw.tusk"]);
    let mut family = v_bits();
    assert_eq!(
        family.set(99, "jaw.leg", "1 in"),
        Err(EditError::NoSize(100, 6))
    );
    assert!(matches!(
        family.set_rule("jaw.angle", Rule::Same),
        Err(EditError::NoLength(_))
    ));
}

// Sizes.

#[test]
fn a_size_between_two_takes_the_larger_bar_and_what_both_set() {
    let mut family = v_bits();
    let place = |family: &Family, label: &str| {
        family
            .sizes
            .iter()
            .position(|size| size.label() == label)
            .unwrap()
    };
    let (a, b) = (place(&family, "3/4 in"), place(&family, "7/8 in"));
    family.set(a, "rein.length", "16 in").unwrap();
    family.set(b, "rein.length", "16 in").unwrap();
    family.set(b, "rein.gap", "1 in").unwrap();
    let new = family.add_between(a, b).unwrap();
    assert_eq!(new, b, "it stands between them");
    let size = &family.sizes[new];
    assert_eq!(size.work.size().to_string(), "13/16 in");
    assert_eq!(size.bar, family.sizes[new + 1].bar);
    assert_eq!(size.set.len(), 1);
    assert_eq!(size.set["rein.length"], "16 in");
    assert!(matches!(
        family.add_between(a, a),
        Err(EditError::NoBetween(..))
    ));
    // Ever closer, there is always one between until no length lies there.
    let mut low = a;
    for _ in 0..6 {
        low = family.add_between(low, low + 1).unwrap();
    }
    let sizes: Vec<f64> = family
        .sizes
        .iter()
        .map(|size| size.work.size().mm())
        .collect();
    assert!(sizes.is_sorted_by(|a, b| a < b), "{sizes:?}");
}

#[test]
fn the_last_size_stays() {
    let mut family = Family::from_design(&pairs::flat());
    assert_eq!(family.remove(0), Err(EditError::Last));
    family
        .add(Size::new(parse_work("1/2 in flat").unwrap()))
        .unwrap();
    assert!(family.remove(0).is_ok());
    assert!(family.take_out(1).is_none());
}

// What the set holds.

fn flats(sizes: &[&str]) -> Family {
    let mut family = Family::from_design(&pairs::flat());
    family.sizes.clear();
    for size in sizes {
        family
            .add(Size::new(parse_work(&format!("{size} in flat")).unwrap()))
            .unwrap();
    }
    family
}

/// A gap is found, named by the bars that lie in it, and gone once it is filled.
#[test]
fn gaps_are_named_by_the_bars_that_nothing_holds() {
    let mut family = flats(&["1/8", "3/4"]);
    let all = coverage(&answer_all(&family));
    let [coverage_of_flat] = all.as_slice() else {
        panic!("one shape: {all:?}");
    };
    let [gap] = coverage_of_flat.gaps.as_slice() else {
        panic!("one gap: {coverage_of_flat:?}");
    };
    assert!(coverage_of_flat.overlaps.is_empty());
    let inside = gap.bar_sizes_mm(Units::Inch);
    assert!(inside.iter().all(|mm| *mm > gap.from_mm && *mm < gap.to_mm));
    assert!(
        inside
            .iter()
            .any(|mm| (mm - 25.4 * 7.0 / 16.0).abs() < 1e-9),
        "{inside:?}"
    );
    let words = gap.sentence(Units::Inch);
    assert!(
        words.starts_with("nothing here holds ") && words.ends_with(" flat"),
        "{words}"
    );
    for _ in 0..4 {
        let Some(at) = coverage(&answer_all(&family))[0].gaps.first().copied() else {
            return;
        };
        let low = family
            .sizes
            .iter()
            .rposition(|s| s.work.size().mm() <= at.from_mm)
            .unwrap();
        family.add_between(low, low + 1).unwrap();
    }
    panic!("the gap is still there");
}

#[test]
fn gap_sentences() {
    let gap = |from: f64, to: f64| family::Gap {
        shape: "round",
        from_mm: from * 25.4,
        to_mm: to * 25.4,
    };
    let words = |from, to| gap(from, to).sentence(Units::Inch);
    assert_eq!(words(0.40, 0.45), "nothing here holds 7/16 in round");
    assert_eq!(
        words(0.40, 0.51),
        "nothing here holds 7/16 in and 1/2 in round"
    );
    assert_eq!(
        words(0.40, 0.60),
        "nothing here holds 7/16 in to 9/16 in round"
    );
    assert_eq!(
        words(0.25, 0.28125),
        "nothing here holds anything over 1/4 in and under 9/32 in round"
    );
    let metric = family::Gap {
        shape: "round",
        from_mm: 11.2,
        to_mm: 12.5,
    };
    assert_eq!(
        metric.sentence(Units::Millimetre),
        "nothing here holds 12 mm round"
    );
}

/// Neighbours that both hold a size, found again by trying every size against every range.
#[test]
fn overlaps_and_gaps_are_those_of_trying_every_size() {
    for path in family_paths() {
        let family = family::read(&std::fs::read(&path).unwrap()).unwrap();
        let answers = answer_all(&family);
        let [coverage] = coverage(&answers).try_into().expect("one shape");
        let ranges: Vec<_> = answers
            .iter()
            .filter_map(|a| a.fit.range.as_ref().ok())
            .collect();
        let end = coverage
            .spans
            .iter()
            .map(|span| span.to_mm)
            .fold(0.0, f64::max);
        let mut mm = coverage.spans[0].from_mm + 1e-6;
        while mm < end {
            let held = ranges.iter().filter(|range| range.holds(mm)).count();
            let gap = coverage.gaps.iter().any(|g| mm > g.from_mm && mm < g.to_mm);
            assert_eq!(held == 0, gap, "{}: {mm}", path.display());
            let twice = coverage
                .overlaps
                .iter()
                .any(|o| (o.from_mm..=o.to_mm).contains(&mm));
            assert_eq!(held > 1, twice, "{}: {mm}", path.display());
            mm += 0.037;
        }
    }
}

/// What is held is asked of the pairs and not of their labels: a V holds round and hexagon too.
#[test]
fn holders_are_found_by_the_fit() {
    let answers = answer_all(&v_bits());
    let square = holders(&answers, &parse_work("5/8 in square on corners").unwrap());
    assert!(!square.is_empty());
    for at in &square {
        let range = answers[*at].fit.range.as_ref().unwrap();
        assert!(range.holds(15.875), "{}", answers[*at].label);
    }
    assert!(holders(&answers, &parse_work("3 in square on corners").unwrap()).is_empty());
    assert!(!holders(&answers, &parse_work("5/8 in round").unwrap()).is_empty());
}

#[test]
fn totals_are_the_sum_of_the_balances_bar_by_bar() {
    let family = v_bits();
    let answers = answer_all(&family);
    let totals = totals(&answers, 12);
    assert_eq!(totals.len(), 4, "5/8, 3/4, 7/8 and 1 in square");
    let length: f64 = totals.iter().map(|total| total.length_mm).sum();
    let each: f64 = answers.iter().map(|a| a.balance.pair_bar_length_mm).sum();
    close("length", length, 12.0 * each, 1e-12);
    let mass: f64 = totals.iter().map(|total| total.mass_kg).sum();
    let each: f64 = answers.iter().map(|a| a.balance.bar_mass_kg()).sum();
    close("mass", mass, 12.0 * each, 1e-12);
    let mut sizes: Vec<usize> = totals
        .iter()
        .flat_map(|total| total.sizes.clone())
        .collect();
    sizes.sort_unstable();
    assert_eq!(sizes, (0..answers.len()).collect::<Vec<_>>());
}

#[test]
fn the_same_bar_in_two_units_is_one_bar() {
    let mut family = flats(&["1/4", "3/8"]);
    family.sizes[1].bar = Some(parse_bar("19.05 mm square").unwrap());
    assert_eq!(totals(&answer_all(&family), 1).len(), 1);
    family.sizes[1].bar = Some(parse_bar("20 mm square").unwrap());
    assert_eq!(totals(&answer_all(&family), 1).len(), 2);
}

// Samples.

/// V-bits for 3/8 to 1 in, flats for 1/8 to 3/4 in, no bar between without a pair, and nothing
/// to mend.
#[test]
fn sample_families_hold_all_that_they_promise() {
    let paths = family_paths();
    assert_eq!(paths.len(), 2);
    for path in paths {
        let text = std::fs::read_to_string(&path).unwrap();
        let family = family::read(text.as_bytes()).unwrap();
        assert_eq!(
            text,
            family::write(&family),
            "written as the program writes it"
        );
        let answers = answer_all(&family);
        for answer in &answers {
            let bad = answer.worst().is_some_and(|worst| worst > Severity::Note);
            assert!(!bad, "{}: {:#?}", answer.label, answer.findings);
            let range = answer.fit.range.as_ref().unwrap();
            assert!(
                range.holds(answer.document.work.size().mm()),
                "{}",
                answer.label
            );
        }
        let coverage = coverage(&answers);
        assert!(coverage.iter().all(|c| c.gaps.is_empty()), "{coverage:?}");
        let least = family.sizes.first().unwrap().work.size().to_string();
        let most = family.sizes.last().unwrap().work.size().to_string();
        let ends = (least.as_str(), most.as_str());
        assert!(
            matches!(ends, ("3/8 in", "1 in") | ("1/8 in", "3/4 in")),
            "{ends:?}"
        );
    }
}

// Files.

#[track_caller]
fn broken(from: &str, to: &str, words: &[&str]) {
    let text = family::write(&v_bits());
    assert!(text.contains(from), "{from}");
    let error = family::read(text.replacen(from, to, 1).as_bytes());
    let error = error.expect_err("a bad file").to_string();
    sentence(&error);
    for word in words {
        assert!(error.contains(word), "{word} in: {error}");
    }
}

#[test]
fn bad_families_are_refused_in_a_sentence() {
    broken("family: 1", "family: 2", &["format 2", "newer Reinwright"]);
    broken("family: 1", "family: 0", &["format 0"]);
    broken("format: 1", "format: 2", &["format 2", "newer Reinwright"]);
    broken("format: 1", "format: 0", &["base.format", "format 0"]);
    broken(
        "side: \"3/8 in\"",
        "side: \"3//8 in\"",
        &["line", "3//8 in"],
    );
    broken(
        "side: \"3/8 in\"",
        "side: \"30 in\"",
        &["sizes 1, work.side", "200 mm"],
    );
    broken(
        "\"neck.depth\": \"1/2 in\"",
        "\"neck.depth\": \"one\"",
        &["sizes 1, neck.depth", "one"],
    );
    broken(
        "\"neck.depth\": \"1/2 in\"",
        "\"neck.depth\": \"9 ft\"",
        &["sizes 1, neck.depth", "200 mm"],
    );
    broken(
        "thickness: \"3/8 in\"",
        "thickness: \"0 in\"",
        &["base.boss.thickness", "0.5 mm"],
    );
    broken(
        "rounding: Measured",
        "rounding: Roughly",
        &["line", "Roughly"],
    );
    broken("rounding: Measured", "rounded: true", &["line", "rounded"]);
    let long = format!("name: \"{}\"", "x".repeat(300));
    broken(
        "name: \"V-bit tongs for the benches\"",
        &long,
        &["name", "300", "200"],
    );
    let error = |bytes: &[u8]| family::read(bytes).expect_err("bad").to_string();
    assert!(error(b"").contains("empty"));
    assert!(error(b"\xff\xfe\x00").contains("not text"));
    assert!(error(&vec![b' '; document::LARGEST_FILE + 1]).contains("4 MiB"));
    for deep in ["(", "[", "{", "Some(", "(family:1,base:("] {
        sentence(&error(deep.repeat(20_000).as_bytes()));
    }
    let design = document::write(&pairs::flat());
    assert!(error(design.as_bytes()).contains("one design"));
    assert!(!family::is_family(design.as_bytes()));
    assert!(document::read(family::write(&v_bits()).as_bytes()).is_err());
}

#[test]
fn every_beginning_of_a_family_is_refused() {
    let text = family::write(&v_bits());
    let whole = text.trim_end();
    for end in (20..whole.len() - 1).step_by(7).chain([whole.len() - 1]) {
        let bytes = &whole.as_bytes()[..end];
        assert!(family::is_family(bytes), "still known as one");
        sentence(&family::open(bytes).expect_err("cut short").to_string());
    }
}

#[track_caller]
fn opened(from: &str, to: &str, words: &[&str]) -> Family {
    let text = family::write(&v_bits());
    assert!(text.contains(from), "{from}");
    let opened = family::open(text.replacen(from, to, 1).as_bytes()).expect("it opens");
    assert!(!opened.lost.is_empty());
    opened.lost.iter().for_each(|lost| sentence(lost));
    for word in words {
        assert!(
            opened.lost.iter().any(|lost| lost.contains(word)),
            "{word} in: {:?}",
            opened.lost
        );
    }
    opened.family
}

/// A damaged family opens what can be opened and says what could not.
#[test]
fn damaged_families_open_what_they_can() {
    let whole = v_bits();
    // One size that cannot be read: the others are all there.
    let family = opened(
        "side: \"3/8 in\"",
        "side: \"3//8 in\"",
        &["sizes 1", "left out", "line 1"],
    );
    assert_eq!(family.sizes, whole.sizes[1..]);
    assert_eq!(family.base, whole.base);
    // A value by hand that is none.
    let family = opened(
        "\"neck.depth\": \"1/2 in\"",
        "\"neck.depth\": \"one\"",
        &["sizes 1, neck.depth"],
    );
    assert_eq!(family.sizes, whole.sizes[1..]);
    // The base's boss: the rest of the base stays, sizes too.
    let from = "thickness: \"3/8 in\"";
    let family = opened(from, "thickness: \"half\"", &["base.boss", "half", "usual"]);
    assert_eq!(family.sizes, whole.sizes);
    let mended = Document {
        boss: whole.base.boss,
        ..family.base.clone()
    };
    assert_eq!(mended, whole.base);
    // Its jaw: one of the same style.
    let family = opened("leg: \"7/16 in\"", "leg: \"long\"", &["base.jaw", "long"]);
    assert_eq!(family.base.jaw.name(), "v bit");
    assert_eq!(family.base.rein, whole.base.rein);
    // A number past its limit: the nearest inside.
    let family = opened(
        from,
        "thickness: \"90 ft\"",
        &["base.boss.thickness", "90 ft"],
    );
    assert_eq!(family.base.boss.thickness.mm(), 200.0);
    // A rule, and a name that no family has.
    opened(
        "rounding: Measured",
        "rules: {\"jaw.heel\": WithLuck}",
        &["rules", "jaw.heel"],
    );
    let family = opened("rounding: Measured", "colour: Red", &["colour"]);
    assert_eq!(family, whole);
}

// Paper.

fn words(drawing: &Drawing) -> Vec<String> {
    fn add(items: &[Item], to: &mut Vec<String>) {
        for item in items {
            match item {
                Item::Text(text) => to.push(text.text.clone()),
                Item::Group(group) => add(&group.items, to),
                Item::Path(_) => {}
            }
        }
    }
    let mut words = Vec::new();
    add(&drawing.items, &mut words);
    words
}

#[test]
fn the_family_sheet_shows_sizes_gaps_and_what_is_by_hand() {
    let family = v_bits();
    let answers = answer_all(&family);
    let table = words(&sheet::table(&family, &answers));
    for label in family.table().labels {
        assert!(table.contains(&label), "{label}");
    }
    assert!(
        table.contains(&"1/2 in *".to_owned()),
        "the neck set by hand has its star"
    );
    assert!(table.iter().any(|text| text.contains("set by hand")));
    let sparse = flats(&["1/8", "3/4"]);
    let answers = answer_all(&sparse);
    let ranges = words(&sheet::ranges(&sparse, &answers, 3));
    assert!(
        ranges
            .iter()
            .any(|text| text.starts_with("nothing here holds"))
    );
    assert!(
        ranges.contains(&"Bar for 3 pairs of each size".to_owned()),
        "{ranges:?}"
    );
}

/// Pictures are true to the scale that they say: the strip at 1 : 2 is half as wide as at 1 : 1,
/// and the overlay reaches from the longest rein's end to the longest tip.
#[test]
fn pictures_are_to_scale() {
    let answers = answer_all(&v_bits());
    let outlines = |drawing: &Drawing| {
        let boxes = drawing
            .items
            .iter()
            .filter(|item| matches!(item, Item::Path(_)));
        boxes
            .filter_map(Item::bounds)
            .reduce(|a, b| a.union(b))
            .unwrap()
    };
    let full = outlines(&sheet::overlay(&answers, 1));
    let half = outlines(&sheet::overlay(&answers, 2));
    let end = answers
        .iter()
        .map(|a| a.model.a.rein_end())
        .fold(0.0, f64::min);
    close("rein end", full.x0, end, 1e-9);
    close("half size", half.x0, end / 2.0, 1e-9);
    for room in [(165.0, 225.0), (100.0, 100.0), (2000.0, 2000.0)] {
        let strip = sheet::strip(&answers, 1);
        let n = f64::from(sheet::reduction(&strip, room));
        let size = strip.bounds().size() / n;
        let fits = |w: f64, h: f64| size.width <= w && size.height <= h;
        assert!(
            fits(room.0, room.1) || fits(room.1, room.0),
            "{room:?} 1 : {n}"
        );
    }
}

/// The set's PDF has the contents first, and each sheet begins on the page that they name.
#[test]
fn the_contents_page_tells_the_truth() {
    let family = read_sample("family-flat.ron");
    let answers = answer_all(&family);
    let wanted = Wanted {
        paper: Paper::A4,
        pairs_of_each: 1,
        day: None,
    };
    let mut steps = Vec::new();
    let pdf = set_printing::pdf(&family, &answers, &wanted, &mut |progress| {
        steps.push(progress);
        ControlFlow::Continue(())
    });
    let pdf = lopdf::Document::load_mem(&pdf.unwrap()).unwrap();
    let last = steps.last().unwrap();
    assert_eq!(
        (last.done, steps.len()),
        (last.total, last.total),
        "it counts to its end"
    );
    let text = |page: u32| pdf.extract_text(&[page]).unwrap();
    let first = text(1);
    let mut lines = first
        .lines()
        .skip_while(|line| !line.starts_with("Contents,"))
        .skip(1);
    let mut sheets = 0;
    while let (Some(name), Some(page)) = (lines.next(), lines.next()) {
        let Ok(page) = page.trim().parse::<u32>() else {
            break;
        };
        let (design, title) = name.split_once(": ").unwrap();
        let there = text(page);
        assert!(
            there.contains(design) && there.contains(title),
            "{name} on {page}: {there}"
        );
        sheets += 1;
    }
    assert_eq!(sheets, 5 + 3 * answers.len(), "{first}");
    let stopped = set_printing::pdf(&family, &answers, &wanted, &mut |_| ControlFlow::Break(()));
    assert_eq!(stopped, None);
    let stopped = set_printing::svgs(&family, &answers, 1, &mut |_| ControlFlow::Break(()));
    assert_eq!(stopped, None);
}

// The command line.

fn ask(arguments: &[&str]) -> Answer {
    answer(["reinwright"].iter().chain(arguments).map(OsString::from))
}

#[track_caller]
fn done(arguments: &[&str]) -> String {
    let answer = ask(arguments);
    assert_eq!(
        (answer.status, answer.error.as_str()),
        (0, ""),
        "{arguments:?}"
    );
    answer.text
}

fn text(path: &Path) -> &str {
    path.to_str().unwrap()
}

#[test]
fn the_family_job_writes_the_set() {
    let folder = tempfile::tempdir().unwrap();
    let out = folder.path().join("new").join("set");
    let file = samples_folder().join("family-v-bit.ron");
    done(&["family", text(&file), "--out", text(&out), "--pairs", "4"]);
    let pdf = std::fs::read(out.join("v-bit-tongs-for-the-benches.pdf")).unwrap();
    assert!(pdf.starts_with(b"%PDF-1.7"));
    let names = |sub: &str| {
        let entries = std::fs::read_dir(out.join(sub)).unwrap();
        let mut names: Vec<String> = entries
            .map(|entry| entry.unwrap().file_name().into_string().unwrap())
            .collect();
        names.sort();
        names
    };
    assert_eq!(names("svg").len(), 5 + 2 * 6);
    assert!(
        names("svg").contains(&"1-3-8-in-pair.svg".to_owned()),
        "{:?}",
        names("svg")
    );
    for name in names("svg") {
        let svg = std::fs::read_to_string(out.join("svg").join(&name)).unwrap();
        usvg::Tree::from_str(&svg, &usvg::Options::default()).expect(&name);
    }
    let family = v_bits();
    for (at, name) in names("designs").iter().enumerate() {
        let bytes = std::fs::read(out.join("designs").join(name)).unwrap();
        assert_eq!(
            document::read(&bytes).unwrap(),
            family.take_out(at).unwrap()
        );
    }
    assert_eq!(names("designs").len(), 6);
}

#[test]
fn balance_and_findings_take_families() {
    let file = samples_folder().join("family-v-bit.ron");
    let json: Json = serde_json::from_str(&done(&["balance", text(&file), "--json"])).unwrap();
    assert_eq!(json["family"], "V-bit tongs for the benches");
    let sizes = json["sizes"].as_array().unwrap();
    assert_eq!(sizes.len(), 6);
    let length = |value: &Json| value["pair"]["bar_length_mm"].as_f64().unwrap();
    let sum: f64 = sizes.iter().map(length).sum();
    let totals = json["totals"].as_array().unwrap();
    let total: f64 = totals
        .iter()
        .map(|t| t["bar_length_mm"].as_f64().unwrap())
        .sum();
    close("total", total, sum, 1e-12);
    // Each size answers as its own design does.
    let folder = tempfile::tempdir().unwrap();
    let own = folder.path().join("own.ron");
    std::fs::write(&own, document::write(&v_bits().take_out(2).unwrap())).unwrap();
    let alone: Json = serde_json::from_str(&done(&["balance", text(&own), "--json"])).unwrap();
    for key in ["bar", "half", "pair", "name"] {
        assert_eq!(sizes[2][key], alone[key], "{key}");
    }
    let json: Json = serde_json::from_str(&done(&["findings", text(&file), "--json"])).unwrap();
    assert_eq!(json["sizes"].as_array().unwrap().len(), 6);
    assert_eq!(json["not_read"], Json::Array(Vec::new()));
    assert_eq!(json["gaps"], Json::Array(Vec::new()));
    let fit: Json = serde_json::from_str(&done(&["fit", text(&file), "--json"])).unwrap();
    let most = |at: usize| fit["sizes"][at]["work_range_mm"]["most"].as_f64().unwrap();
    let least = |at: usize| fit["sizes"][at]["work_range_mm"]["least"].as_f64().unwrap();
    let first = &fit["overlaps"][0];
    let ends = [
        first["from_mm"].as_f64().unwrap(),
        first["to_mm"].as_f64().unwrap(),
    ];
    assert_eq!(ends, [least(1), most(0)], "3/8 and 1/2 in overlap here");
    assert!(done(&["fit", text(&file)]).contains("V-bit tongs for the benches, 7/8 in"));
    assert!(done(&["balance", text(&file)]).contains("One pair of each size"));
    assert!(done(&["findings", text(&file)]).contains("7/8 in"));
}

#[test]
fn the_worst_size_gives_the_status_and_gaps_are_told() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("flats.ron");
    let mut family = flats(&["1/8", "3/4"]);
    std::fs::write(&path, family::write(&family)).unwrap();
    let findings = ask(&["findings", text(&path)]);
    assert_eq!(findings.status, 0, "{}", findings.text);
    assert!(
        findings.text.contains("Note: set: nothing here holds"),
        "{}",
        findings.text
    );
    family.set(1, "rivet.hole", "1/4 in").unwrap();
    std::fs::write(&path, family::write(&family)).unwrap();
    let worst = answer_all(&family)[1].worst();
    assert_eq!(worst, Some(Severity::Stop), "a hole smaller than its rivet");
    assert_eq!(ask(&["findings", text(&path)]).status, 2);
}

#[test]
fn damaged_families_are_told_on_the_command_line() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("damaged.ron");
    let whole = family::write(&v_bits());
    let bad = whole.replacen("side: \"3/8 in\"", "side: \"3//8 in\"", 1);
    std::fs::write(&path, bad).unwrap();
    let findings = ask(&["findings", text(&path)]);
    assert_eq!(findings.status, 2);
    assert!(
        findings.text.contains("Stop: file: sizes 1"),
        "{}",
        findings.text
    );
    assert!(
        findings.text.contains("7/8 in"),
        "the other sizes are answered"
    );
    let out = folder.path().join("out");
    let family = ["family", text(&path), "--out", text(&out)];
    for arguments in [&["balance", text(&path)][..], &family] {
        let refused = ask(arguments);
        assert_eq!((refused.status, refused.error.lines().count()), (3, 1));
        assert!(refused.error.contains("damaged.ron") && refused.error.contains("3//8 in"));
    }
    assert!(!out.exists(), "nothing is written");
    std::fs::write(&path, &whole[..whole.len() / 2]).unwrap();
    for job in ["balance", "findings"] {
        let refused = ask(&[job, text(&path)]);
        assert_eq!((refused.status, refused.error.lines().count()), (3, 1));
        assert!(refused.error.contains("line"), "{}", refused.error);
    }
    let design = samples_folder().join("light-flat.ron");
    let refused = ask(&["family", text(&design), "--out", text(&out)]);
    assert!(
        refused.error.contains("one design and no family"),
        "{}",
        refused.error
    );
}

/// Lengths typed in millimetres stay so: a family in both units is no harm.
#[test]
fn metric_families_round_to_half_millimetres() {
    let mut family = Family::from_design(&pairs::v_bit());
    family
        .add(Size::new(parse_work("25 mm square on corners").unwrap()))
        .unwrap();
    let made = family.take_out(1).unwrap();
    // 13.5 mm times 25/16 is 21.09 mm.
    assert_eq!(text_at(&family.base, "jaw.leg"), "13.5 mm");
    assert_eq!(text_at(&made, "jaw.leg"), "21 mm");
    assert_eq!(made.work.size().unit(), Unit::Millimetre);
}
