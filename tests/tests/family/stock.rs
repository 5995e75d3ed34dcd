//! The stock that can be bought: its text, its limits, and where it is kept.

use reinwright::command_line::Places;
use reinwright::disk::stock_sizes;
use reinwright_tests::command_line::{ask_in, json, refused, text};

use super::*;

fn list(units: Units, shape: StockShape) -> StockList {
    StockList { units, shape }
}

const ROUND: fn(Units) -> StockList = |units| list(units, StockShape::Round);

/// Squares against the preferred sizes of EN 10059, Table 1, and rounds against those of EN 10060,
/// Table 1 (16 mm and over; under that, and inches, from memory), as merchants print them.
#[test]
fn the_usual_sizes_are_those_that_are_published() {
    let usual = StockSizes::default();
    let listed = |shape| usual.list_text(list(Units::Millimetre, shape));
    assert_eq!(
        listed(StockShape::Square),
        "8, 10, 12, 13, 14, 15, 16, 18, 20, 22, 24, 25, 26, 28, 30, 32, 35, 40, 45, 50, 55, 60, \
         65, 70, 75, 80, 90, 100"
    );
    let rounds = listed(StockShape::Round);
    let published = "16, 18, 19, 20, 22, 24, 25, 26, 27, 28, 30, 32, 35, 36, 38, 40, 42, 45, 48, \
                     50, 52, 55, 60, 63, 65, 70, 73, 75, 80, 85, 90, 95, 100";
    assert!(rounds.ends_with(published), "{rounds}");
    for wanted in StockList::all() {
        let sizes = usual.list(wanted);
        assert!(sizes.len() > 5, "{wanted}");
        assert!(sizes.is_sorted_by(|a, b| a.mm() < b.mm()), "{wanted}");
    }
}

/// What the samples and the guide make tongs for is stock.
#[test]
fn sizes_between_two_others() {
    #[track_caller]
    fn check(list: StockList, (over, under): (f64, f64), expected: &[&str]) {
        let found = StockSizes::default().between(list, over, under);
        let texts: Vec<String> = found.iter().map(ToString::to_string).collect();
        assert_eq!(texts, expected, "{list} {over} to {under}");
    }
    let inch = |shape| list(Units::Inch, shape);
    check(
        inch(StockShape::Round),
        (9.0, 13.0),
        &["3/8 in", "7/16 in", "1/2 in"],
    );
    check(inch(StockShape::Flat), (9.0, 13.0), &["3/8 in", "1/2 in"]);
    // The ends themselves do not lie between them.
    check(ROUND(Units::Millimetre), (10.0, 13.0), &["12 mm"]);
    check(ROUND(Units::Millimetre), (10.1, 11.9), &[]);
}

#[test]
fn lists_are_read_and_written() {
    #[track_caller]
    fn check(units: Units, typed: &str, written: &str) {
        let read = StockSizes::default().with_list(ROUND(units), typed);
        let read = read.unwrap_or_else(|error| panic!("{typed}: {error}"));
        assert_eq!(read.list_text(ROUND(units)), written);
        let again = StockSizes::parse(&read.text()).unwrap();
        assert_eq!(again, read, "{}", read.text());
    }
    check(Units::Inch, "1/2, 1/4; 3/8 in,", "1/4, 3/8, 1/2");
    check(Units::Inch, "1 1/2,  0.3\n12 mm", "0.3, 12 mm, 1 1/2");
    check(Units::Millimetre, "10.5, 6, 6.0, 1/4 in", "6, 1/4 in, 10.5");
    check(Units::Millimetre, "", "");
}

/// One clear sentence each, and the list stays as it was.
#[test]
fn what_is_no_size_is_refused() {
    #[track_caller]
    fn check(text: &str, words: &[&str]) {
        let error = StockSizes::parse(text).expect_err(text).to_string();
        sentence(&error);
        for word in words {
            assert!(error.contains(word), "{word} in: {error}");
        }
    }
    check("in round: 1/4, three", &["in round", "three"]);
    check("mm round: 6,8", &["6,8", "two ways"]);
    check("mm round: 0.1", &["0.1 mm", "0.5 mm", "200 mm"]);
    check("in flat: 20", &["20 in"]);
    check("round: 6", &["line 1", "round: 6", "in round"]);
    check("\n# all\nmm tube: 6", &["line 3", "mm tube"]);
    check(
        "mm round: 6\nmm  Round : 8",
        &["line 2", "mm round", "twice"],
    );
    let many: Vec<String> = (0..201)
        .map(|n| format!("{}", 1.0 + 0.5 * f64::from(n)))
        .collect();
    check(
        &format!("mm flat: {}", many.join(", ")),
        &["mm flat", "200"],
    );
    let error = StockSizes::read(b"\xff\xfe")
        .expect_err("no text")
        .to_string();
    assert!(error.contains("not text"), "{error}");
}

#[test]
fn lists_that_are_not_named_are_the_usual_ones() {
    let mine = StockSizes::parse("# mine\n\nMM ROUND: 6; 8 # and no more\nin octagon:").unwrap();
    let usual = StockSizes::default();
    assert_eq!(mine.list_text(ROUND(Units::Millimetre)), "6, 8");
    assert_eq!(mine.list_text(list(Units::Inch, StockShape::Octagon)), "");
    assert_eq!(
        mine.list(ROUND(Units::Inch)),
        usual.list(ROUND(Units::Inch))
    );
    assert_eq!(StockSizes::parse("").unwrap(), usual);
}

proptest! {
    #[test]
    fn any_text_is_read_or_refused_in_one_sentence(text in ".{0,200}") {
        match StockSizes::parse(&text) {
            Ok(sizes) => prop_assert_eq!(StockSizes::parse(&sizes.text()).unwrap(), sizes),
            Err(error) => sentence(&error.to_string()),
        }
    }

    #[test]
    fn sizes_come_back_as_they_were(sixteenths in prop::collection::vec(1..120u32, 0..40), mm in prop::collection::vec(0.5..200.0f64, 0..40)) {
        let inches: Vec<String> = sixteenths.iter().map(|n| format!("{n}/16")).collect();
        let mm: Vec<String> = mm.iter().map(|mm| format!("{mm}")).collect();
        let text = format!("in round: {}\nmm flat: {}", inches.join(", "), mm.join(", "));
        let sizes = StockSizes::parse(&text).unwrap();
        prop_assert_eq!(StockSizes::parse(&sizes.text()).unwrap(), sizes);
    }
}

#[test]
fn a_damaged_list_is_told_and_put_aside_before_it_is_written() {
    let folder = folder();
    assert_eq!(
        stock_sizes::kept(Some(folder.path())).unwrap(),
        StockSizes::default()
    );
    put(folder.path(), "stock-sizes", "mm round: 6, many");
    let told = stock_sizes::kept(Some(folder.path())).unwrap_err();
    assert!(
        told.contains("stock-sizes") && told.contains("many"),
        "{told}"
    );
    sentence(&told);
    let mine = StockSizes::parse("mm round: 6, 8").unwrap();
    let aside = stock_sizes::keep(folder.path(), &mine)
        .unwrap()
        .expect("it was damaged");
    assert_eq!(bytes(&aside), b"mm round: 6, many");
    assert_eq!(stock_sizes::kept(Some(folder.path())).unwrap(), mine);
    assert_eq!(stock_sizes::keep(folder.path(), &mine).unwrap(), None);
}

#[test]
fn the_command_line_counts_in_the_stock_that_is_kept() {
    let folder = folder();
    put(
        folder.path(),
        "flats.ron",
        family::write(&flats(&["1/8", "3/4"])),
    );
    let file = folder.path().join("flats.ron");
    let gaps = json(&["findings", text(&file), "--json"])["gaps"].clone();
    let sizes = gaps[0]["stock_mm"].as_array().unwrap();
    assert!(
        sizes.contains(&9.525.into()) && !sizes.contains(&11.1125.into()),
        "{gaps}"
    );
    assert!(sizes.contains(&gaps[0]["filler_mm"]), "{gaps}");
    for key in ["shape", "over_mm", "under_mm", "message"] {
        assert!(!gaps[0][key].is_null(), "{key}");
    }
    // What the window keeps, and what a file says instead.
    put(folder.path(), "stock-sizes", "in flat: 1/8, 3/4");
    let places = Places {
        remembered: Some(folder.path().to_owned()),
        jaws: None,
    };
    let kept = ask_in(&places, &["findings", text(&file)]);
    assert!(!kept.text.contains("nothing here holds"), "{}", kept.text);
    put(folder.path(), "mine", "in flat: 5/16");
    let mine = folder.path().join("mine");
    let said = ask_in(&places, &["fit", text(&file), "--stock", text(&mine)]);
    assert!(
        said.text.contains("nothing here holds 5/16 in flat"),
        "{}",
        said.text
    );
    put(folder.path(), "mine", "in flat: a lot");
    refused(
        &["findings", text(&file), "--stock", text(&mine)],
        &["--stock", "mine", "a lot"],
    );
    let out = folder.path().join("set");
    let written = ask_in(&places, &["family", text(&file), "--out", text(&out)]);
    assert_eq!(written.status, 0, "{}", written.error);
    let ranges = bytes(&out.join("svg").join("all-ranges.svg"));
    let ranges = String::from_utf8(ranges).unwrap();
    assert!(ranges.contains("all 2 stock sizes"), "{ranges}");
}
