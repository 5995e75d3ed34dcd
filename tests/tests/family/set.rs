//! What the set holds and takes, and the sample families.

use super::*;
use reinwright_core::shop::family::SizeAnswer;

/// A gap is found, named by the bars that lie in it, and gone once it is filled with them.
#[test]
fn gaps_are_named_by_the_bars_that_nothing_holds() {
    let mut family = flats(&["1/8", "3/4"]);
    let all = coverage(&answer_all(&family));
    let [of_flat] = all.as_slice() else {
        panic!("one shape: {all:?}");
    };
    let [gap] = of_flat.gaps.as_slice() else {
        panic!("one gap: {of_flat:?}");
    };
    assert!(of_flat.overlaps.is_empty());
    assert_eq!(of_flat.all_held(Units::Inch), None);
    let inside = |mm: f64| mm > gap.from_mm && mm < gap.to_mm;
    assert!(gap.stock.iter().all(|size| inside(size.mm())));
    let texts: Vec<String> = gap.stock.iter().map(ToString::to_string).collect();
    assert!(texts.contains(&"3/8 in".to_owned()), "{texts:?}");
    assert!(
        !texts.contains(&"7/16 in".to_owned()),
        "no flat is sold so thick"
    );
    for _ in 0..4 {
        let now = coverage(&answer_all(&family));
        let Some(gap) = now[0].gaps.first() else {
            let held = now[0].all_held(Units::Inch).unwrap();
            assert!(
                held.starts_with("all ") && held.ends_with(" flat are held"),
                "{held}"
            );
            return;
        };
        let size = gap.filler();
        family
            .add(Size::new(work(&format!("{size} flat"))))
            .unwrap();
    }
    panic!("the gap is still there");
}

fn gap_of(from: f64, to: f64, sizes: &[&str]) -> family::Gap {
    family::Gap {
        shape: "round",
        from_mm: from * INCH,
        to_mm: to * INCH,
        stock: sizes.iter().map(|size| size.parse().unwrap()).collect(),
    }
}

#[test]
fn gap_sentences() {
    #[track_caller]
    fn check(sizes: &[&str], words: &str) {
        assert_eq!(gap_of(0.0, 9.0, sizes).sentence(), words);
    }
    check(&["7/16 in"], "nothing here holds 7/16 in round");
    check(
        &["7/16 in", "1/2 in"],
        "nothing here holds 7/16 in or 1/2 in round",
    );
    check(
        &["6 mm", "8 mm", "10 mm"],
        "nothing here holds 6 mm, 8 mm or 10 mm round",
    );
    check(
        &["1 in", "2 in", "3 in", "4 in", "5 in"],
        "nothing here holds the 5 stock sizes 1 in to 5 in round",
    );
}

/// A gap is filled with stock, that nearest to its middle, however odd the middle is.
#[test]
fn gaps_are_filled_with_stock_that_exists() {
    let filled = |from: f64, to: f64, sizes: &[&str]| gap_of(from, to, sizes).filler().to_string();
    assert_eq!(
        filled(0.40, 0.60, &["7/16 in", "1/2 in", "9/16 in"]),
        "1/2 in"
    );
    assert_eq!(filled(0.58, 0.66, &["5/8 in"]), "5/8 in");
    assert_eq!(
        filled(0.2, 0.9, &["1/4 in", "7/8 in"]),
        "1/4 in",
        "it is 0.55"
    );
}

/// Between two ranges where no stock is sold nothing is missing.
#[test]
fn where_nothing_is_sold_there_is_no_gap() {
    let answers = answer_all(&flats(&["1/8", "3/4"]));
    let flat = StockList {
        units: Units::Inch,
        shape: StockShape::Flat,
    };
    let count = |sizes: &str| {
        let stock = StockSizes::default().with_list(flat, sizes).unwrap();
        let [of_flat] = family::coverage(&answers, Units::Inch, &stock)
            .try_into()
            .unwrap();
        let said = of_flat.all_held(Units::Inch);
        (of_flat.gaps.len(), said.unwrap_or_default())
    };
    assert_eq!(count("1/8, 3/8, 3/4").0, 1);
    assert_eq!(
        count("1/8, 3/4"),
        (
            0,
            "all 2 stock sizes from 1/8 in to 3/4 in flat are held".to_owned()
        )
    );
    assert_eq!(count("3/4"), (0, "3/4 in flat is held".to_owned()));
    let (gaps, said) = count("");
    assert!(
        gaps == 0 && said.starts_with("no flat is sold between"),
        "{said}"
    );
    // A list in the other unit is not looked at.
    let metric = family::coverage(&answers, Units::Millimetre, &StockSizes::default());
    let texts: Vec<String> = metric[0].gaps[0]
        .stock
        .iter()
        .map(ToString::to_string)
        .collect();
    assert!(texts.contains(&"10 mm".to_owned()), "{texts:?}");
}

/// The chart climbs: of two ranges that begin alike the one that ends first stands first.
#[test]
fn ranges_stand_from_the_least_work_up() {
    let sizes: Vec<String> = (0..8).map(|n| format!("{}/64", 24 + n)).collect();
    let sizes: Vec<&str> = sizes.iter().map(String::as_str).collect();
    let family = flats(&sizes);
    for coverage in coverage(&answer_all(&family)) {
        let ends = coverage.spans.iter().map(|s| (s.from_mm, s.to_mm));
        let ends: Vec<_> = ends.collect();
        assert!(ends.is_sorted(), "{ends:?}");
    }
}

/// Neighbours that both hold a size, found again by trying every size against every range; gaps
/// by trying every size that is sold.
#[test]
fn overlaps_and_gaps_are_those_of_trying_every_size() {
    let mut families: Vec<Family> = family_paths()
        .iter()
        .map(|path| family::read(&bytes(path)).unwrap())
        .collect();
    families.push(flats(&["1/8", "1/4", "3/4"]));
    let usual = StockSizes::default();
    for family in families {
        let answers = answer_all(&family);
        let [coverage] = coverage(&answers).try_into().expect("one shape");
        let ranges: Vec<_> = answers
            .iter()
            .filter_map(|a| a.fit.range.as_ref().ok())
            .collect();
        let held = |mm: f64| ranges.iter().filter(|range| range.holds(mm)).count();
        let end = coverage
            .spans
            .iter()
            .map(|span| span.to_mm)
            .fold(0.0, f64::max);
        let from = coverage.spans[0].from_mm;
        let mut mm = from + 1e-6;
        while mm < end {
            let twice = coverage
                .overlaps
                .iter()
                .any(|o| (o.from_mm..=o.to_mm).contains(&mm));
            assert_eq!(held(mm) > 1, twice, "{}: {mm}", family.name);
            mm += 0.037;
        }
        let list = StockList {
            units: Units::Inch,
            shape: StockShape::of(&family.base.work),
        };
        let sold = usual.list(list).iter().map(|size| size.mm());
        for mm in sold.filter(|mm| *mm > from && *mm < end) {
            let within = |gap: &family::Gap| gap.stock.iter().any(|size| size.mm() == mm);
            let missing = coverage.gaps.iter().any(within);
            let end = [-family::SAME_STOCK, 0.0, family::SAME_STOCK];
            let none = end.iter().all(|off| held(mm + off) == 0);
            assert_eq!(none, missing, "{}: {mm}", family.name);
        }
    }
}

/// What is held is asked of the pairs and not of their labels: a V holds round and hexagon too.
#[test]
fn holders_are_found_by_the_fit() {
    let answers = answer_all(&v_bits());
    let square = holders(&answers, &work("5/8 in square on corners"));
    assert!(!square.is_empty());
    for at in &square {
        let range = answers[*at].fit.range.as_ref().unwrap();
        assert!(range.holds(15.875), "{}", answers[*at].label);
    }
    assert!(holders(&answers, &work("3 in square on corners")).is_empty());
    assert!(!holders(&answers, &work("5/8 in round")).is_empty());
}

#[test]
fn totals_are_the_sum_of_the_balances_bar_by_bar() {
    let family = v_bits();
    let answers = answer_all(&family);
    let totals = totals(&answers, 12);
    assert_eq!(totals.len(), 4, "5/8, 3/4, 7/8 and 1 in square");
    let length: f64 = totals.iter().map(|total| total.length_mm).sum();
    // What is sawn: the length to cut, as the table has it.
    let cut = |a: &SizeAnswer| a.balance.cut_length(a.document.units).mm();
    let each: f64 = answers.iter().map(cut).sum();
    close("length", length, 12.0 * each, 1e-12);
    let mass: f64 = totals.iter().map(|total| total.mass_kg).sum();
    let cut_kg = |a: &SizeAnswer| a.balance.cut_mass_kg(a.document.units);
    let each: f64 = answers.iter().map(cut_kg).sum();
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
    family.sizes[1].bar = Some(bar("19.05 mm square"));
    assert_eq!(totals(&answer_all(&family), 1).len(), 1);
    family.sizes[1].bar = Some(bar("20 mm square"));
    assert_eq!(totals(&answer_all(&family), 1).len(), 2);
}

/// V-bits for 3/8 to 1 in, flats for 1/8 to 3/4 in, no bar between without a pair, and nothing
/// to mend.
#[test]
fn sample_families_hold_all_that_they_promise() {
    let paths = family_paths();
    assert_eq!(paths.len(), 2);
    for path in paths {
        let text = String::from_utf8(bytes(&path)).unwrap();
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
