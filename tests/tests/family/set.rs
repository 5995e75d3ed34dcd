//! What the set holds and takes, and the sample families.

use super::*;

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
            .any(|mm| (mm - INCH * 7.0 / 16.0).abs() < 1e-9),
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
        from_mm: from * INCH,
        to_mm: to * INCH,
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

/// A gap is filled with the coarsest size near its middle that lies in it, never with a decimal of
/// an inch while a sixty-fourth will do.
#[test]
fn gaps_are_filled_with_sizes_that_a_smith_has() {
    let filled = |from_mm: f64, to_mm: f64, units: Units| {
        let shape = "round";
        let gap = family::Gap {
            shape,
            from_mm,
            to_mm,
        };
        gap.filling(units).to_string()
    };
    let inches = |from: f64, to: f64| filled(from * INCH, to * INCH, Units::Inch);
    assert_eq!(inches(0.40, 0.60), "1/2 in");
    assert_eq!(inches(0.40, 0.45), "7/16 in");
    assert_eq!(inches(0.580, 0.598), "19/32 in");
    assert_eq!(inches(0.575, 0.585), "37/64 in");
    assert_eq!(inches(0.5862, 0.5882), "19/32 in", "none lies in it");
    assert_eq!(filled(11.2, 12.9, Units::Millimetre), "12 mm");
    assert_eq!(filled(11.2, 11.9, Units::Millimetre), "11.5 mm");
    assert_eq!(filled(11.2, 11.45, Units::Millimetre), "11.3 mm");
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

/// Neighbours that both hold a size, found again by trying every size against every range.
#[test]
fn overlaps_and_gaps_are_those_of_trying_every_size() {
    for path in family_paths() {
        let family = family::read(&bytes(&path)).unwrap();
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
    let each: f64 = answers.iter().map(|a| a.balance.bar_length_mm).sum();
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
