//! Documents as text: nothing is lost on the way out and back, and nothing bad comes in.

use proptest::prelude::*;
use reinwright_core::asked;
use reinwright_core::proof::check::check;
use reinwright_core::shop::balance_of;
use reinwright_core::tongs::document::{self, Document, check_limits};
use reinwright_core::tongs::jaw::JawKind;
use reinwright_core::tongs::resolve;
use reinwright_tests::designs::{sample, varied};
use reinwright_tests::pairs::{flat, starting};
use reinwright_tests::sentence;

/// Everything that comes out of a design is a number.
#[track_caller]
fn finite(design: &Document) {
    let model = resolve(design);
    let balance = balance_of(design, &model);
    let mut numbers = vec![
        model.jaw_gap,
        model.hand_gap,
        model.joggle,
        model.mass_kg(),
        model.balance_point(),
        balance.bar_length_mm,
    ];
    let findings = check(design, &model);
    numbers.extend(
        findings
            .iter()
            .filter_map(|f| f.held)
            .flat_map(|held| [held.value, held.limit]),
    );
    for half in &balance.pieces {
        numbers.extend(half.parts.iter().map(|part| part.bar_length_mm));
        numbers.extend(half.parts.iter().map(|part| part.finished_length_mm));
    }
    numbers.extend(balance.marks.iter().map(|mark| mark.at_mm));
    assert!(
        numbers.iter().all(|number| number.is_finite()),
        "{numbers:?}"
    );
    let outline = model.a.outline().to_svg();
    assert!(
        !outline.contains("NaN") && !outline.contains("inf"),
        "{outline}"
    );
    for finding in &findings {
        let text = finding.to_string();
        assert!(!text.contains("NaN") && !text.contains("inf "), "{text}");
        assert!(
            !text.ends_with('.') && !finding.message.ends_with('.'),
            "{text}"
        );
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(250))]

    #[test]
    fn text_gives_the_document_back(dice in prop::collection::vec(any::<u32>(), 160)) {
        let design = varied(&flat(), &dice, f64::INFINITY);
        prop_assert!(check_limits(&design).is_ok());
        let text = document::write(&design);
        prop_assert_eq!(document::read(text.as_bytes()).unwrap(), design);
    }

    #[test]
    fn near_designs_resolve_to_numbers(dice in prop::collection::vec(any::<u32>(), 160)) {
        finite(&varied(&flat(), &dice, 0.5));
    }

    #[test]
    fn any_design_resolves_to_numbers(dice in prop::collection::vec(any::<u32>(), 160)) {
        finite(&varied(&flat(), &dice, f64::INFINITY));
    }

    /// A byte changed anywhere: refused in a sentence, or a design like any other.
    #[test]
    fn one_wrong_byte_never_panics(at in 0.0..1.0f64, byte: u8) {
        let mut bytes = document::write(&sample("v-over-flat")).into_bytes();
        #[allow(
            clippy::cast_possible_truncation, clippy::cast_sign_loss, clippy::cast_precision_loss,
            reason = "a place in a short file"
        )]
        let place = (at * bytes.len() as f64) as usize;
        bytes[place] = byte;
        match document::read(&bytes) {
            Ok(design) => finite(&design),
            Err(error) => sentence(&error.to_string()),
        }
    }

    #[test]
    fn any_bytes_never_panic(bytes in prop::collection::vec(any::<u8>(), 0..400)) {
        if let Err(error) = document::read(&bytes) {
            sentence(&error.to_string());
        }
    }
}

#[test]
fn every_beginning_of_a_file_is_refused() {
    let text = document::write(&sample("v-bit-square"));
    let whole = text.trim_end();
    for end in 0..whole.len() - 1 {
        if whole.is_char_boundary(end) {
            let error = document::read(&whole.as_bytes()[..end]).expect_err("cut short");
            sentence(&error.to_string());
        }
    }
}

/// The line with `path`'s last name in a sample's text, its value replaced.
fn with(field: &str, value: &str) -> String {
    let text = document::write(&flat());
    let line = text
        .lines()
        .find(|line| line.trim().starts_with(field))
        .expect("the field is in the text");
    let (name, _) = line.split_once(": ").expect("the field is in the text");
    text.replacen(line, &format!("{name}: {value},"), 1)
}

#[track_caller]
fn refused(text: &str, words: &[&str]) {
    let error = document::read(text.as_bytes())
        .expect_err("a bad file")
        .to_string();
    sentence(&error);
    for word in words {
        assert!(error.contains(word), "{word} in: {error}");
    }
}

#[test]
fn bad_values_are_named_with_their_place_and_mend() {
    refused(
        &with("heel", "\"3//4 in\""),
        &["line", "column", "3//4 in", "write one such as"],
    );
    refused(
        &with("heel", "\"-1 in\""),
        &["line", "-1 in", "without a minus sign"],
    );
    refused(
        &with("heel", "\"1e999 mm\""),
        &["line", "1e999 mm", "too large"],
    );
    refused(
        &with("heel", "\"3/0 in\""),
        &["line", "3/0 in", "divides by zero"],
    );
    refused(&with("heel", "\"\""), &["line", "size is missing"]);
    refused(
        &with("heel", "\"3/4\""),
        &["line", "no unit", "in, ft, mm or cm"],
    );
    refused(
        &with("heel", "\"3 ells\""),
        &["line", "ells", "use in, ft, mm or cm"],
    );
    refused(&with("heel", "12.5"), &["line", "column"]);
    refused(&with("margin", "nan"), &["line", "column"]);
    refused(
        &with("margin", "NaN"),
        &["allowances.margin", "NaN", "0 %", "40 %"],
    );
    refused(&with("margin", "inf"), &["allowances.margin", "40 %"]);
    refused(&with("margin", "-1"), &["allowances.margin", "0 %"]);
    refused(
        &with("length", "\"0 in\""),
        &["jaw.length", "3/32 in", "19 1/2 in"],
    );
    refused(
        &with("heel", "\"30 in\""),
        &["jaw.heel", "30 in", "19 1/2 in"],
    );
    refused(&with("units", "Furlong"), &["line", "Furlong"]);
    refused(&with("format", "2"), &["format 2", "newer Reinwright"]);
    refused(&with("format", "0"), &["format"]);
    refused(&with("format", "-1"), &["line", "column"]);
    let name = format!("\"{}\"", "x".repeat(300));
    refused(&with("name", &name), &["name", "300", "200 characters"]);
}

#[test]
fn files_that_are_no_text_are_refused() {
    let error = |bytes: &[u8]| document::read(bytes).expect_err("bad").to_string();
    assert!(error(b"").contains("empty"));
    assert!(error(b" \n\t ").contains("empty"));
    assert!(error(b"\xff\xfe\x00").contains("not text"));
    assert!(error(b"(format: 1\0)").contains("not text"));
    assert!(error(&vec![b' '; asked::LARGEST_FILE + 1]).contains("4 MiB"));
    for deep in ["(", "[", "{", "Some("] {
        sentence(&error(deep.repeat(50_000).as_bytes()));
    }
    let hidden = with(
        "note",
        &format!("{}{}", "[".repeat(20_000), "]".repeat(20_000)),
    );
    refused(&hidden, &["line", "column"]);
}

#[test]
fn a_name_that_no_design_has_is_refused() {
    let text = document::write(&flat());
    refused(&text.replacen("heel:", "heal:", 1), &["line", "heal"]);
}

/// Reading and setting go by the same lines, in every style and with every choice.
#[test]
fn what_is_read_is_what_can_be_set() {
    for kind in JawKind::ALL {
        let pair = starting(kind.name(), "5/8 in round", "3/4 in square");
        let fields = pair.fields();
        let (mut same, mut offered) = (pair.clone(), Vec::new());
        same.revise(&mut |field| {
            offered.push(field.clone());
            Some(field.value)
        });
        assert_eq!(offered, fields, "{kind}");
        assert_eq!(same, pair, "{kind}: its own values change nothing");
        for field in fields {
            assert_eq!(pair.field(&field.path).as_ref(), Some(&field), "{kind}");
            let unit = pair.units.unit();
            let read = field.read(&field.value.to_string(), unit);
            assert_eq!(read, Ok(field.value), "{kind}, {}", field.path);
        }
    }
}

/// What comes of a text that is set under a path: the value's own text, or why not.
#[track_caller]
fn set(path: &str, text: &str, expected: Result<&str, &str>) {
    let mut pair = flat();
    let outcome = pair.set(path, text).map_err(|why| why.to_string());
    let now = outcome.map(|()| pair.field(path).expect("it was set").value.to_string());
    match expected {
        Ok(value) => assert_eq!(now.as_deref(), Ok(value), "{path}"),
        Err(why) => {
            assert_eq!(now, Err(format!("{path}: {why}")));
            assert_eq!(pair, flat(), "{path}: what is refused changes nothing");
        }
    }
}

#[test]
fn a_value_is_set_by_its_path() {
    set("jaw.length", "2 1/2", Ok("2 1/2 in"));
    set("jaw.length", "60 mm", Ok("60 mm"));
    set("allowances.margin", "2,5", Ok("2.5 %"));
    set("rein.finish", "Clip-bend", Ok("clip bend"));
    set("jaw.style", "v-bit", Ok("V bit"));
    set(
        "boss.thickness",
        "900 mm",
        Err("\"900 mm\" is outside its limits: give a value from 0.5 mm to 200 mm"),
    );
    set(
        "boss.shape",
        "star",
        Err("\"star\" is none of its ways: choose round, oval, lozenge"),
    );
    set(
        "allowances.margin",
        "much",
        Err("\"much\" is not a percentage: write one such as 5 or 2.5 %"),
    );
    let nothing = flat().set("jaw.leg", "1 in").expect_err("flat has no leg");
    assert_eq!(
        nothing.to_string(),
        "nothing here is called jaw.leg: it hangs on a choice made otherwise"
    );
}

/// How a value is stepped: a size as a rule is read, 1/16 in or half a millimetre.
#[test]
fn a_value_is_stepped_to_whole_steps_inside_its_limits() {
    use asked::Step::{Fine, Usual};
    use reinwright_core::units::Unit::{Inch, Millimetre};
    let mut pair = flat();
    pair.set("jaw.length", "44.7 mm").expect("a length");
    for (path, steps, how, expected) in [
        ("jaw.length", 1.0, (Usual, Millimetre), "45 mm"),
        ("jaw.length", -1.0, (Fine, Millimetre), "44.6 mm"),
        ("jaw.length", 1.0, (Usual, Inch), "1 13/16 in"),
        // 500 mm is 314.96 sixteenths.
        ("jaw.length", 1e9, (Usual, Inch), "19 5/8 in"),
        ("jaw.length", -1e9, (Usual, Millimetre), "2 mm"),
        ("allowances.margin", 3.0, (Fine, Inch), "2.3 %"),
    ] {
        let stepped = pair.field(path).expect("a field").stepped(steps, how);
        let text = stepped.map(|value| value.to_string());
        assert_eq!(text.as_deref(), Some(expected), "{path}, {steps} {how:?}");
    }
}
