//! Sizes: what is read, what is refused and with which words, and that text and size are one.

mod quantities;
mod spoken;

use proptest::prelude::*;
use reinwright_core::units::{Angle, Length, Offset, Rounding, Show, SizeError, Unit};
use reinwright_tests::close;

/// A size with its unit, and how many millimetres it must be. An inch is 25.4 mm exactly
/// (international yard and pound agreement, 1959).
#[track_caller]
fn accepted(text: &str, mm: f64) {
    let size: Length = text
        .parse()
        .unwrap_or_else(|e| panic!("\"{text}\" was refused: {e}"));
    close(text, size.mm(), mm, 1e-12);
}

#[test]
fn sizes_that_are_read() {
    accepted("3/4 in", 19.05);
    accepted("1 1/2 in", 38.1);
    accepted("1-1/2 in", 38.1);
    accepted("1/64 in", 0.396_875);
    accepted("13 in", 330.2);
    accepted("0.75 in", 19.05);
    accepted(".5 in", 12.7);
    accepted("3/4\"", 19.05);
    accepted("3/4\u{2033}", 19.05);
    accepted("3/4 inch", 19.05);
    accepted("2 inches", 50.8);
    accepted("19 mm", 19.0);
    accepted("19mm", 19.0);
    accepted("19,5 mm", 19.5);
    accepted("  19.5   mm ", 19.5);
    accepted("1.95 cm", 19.5);
    accepted("1 ft", 304.8);
    accepted("1'", 304.8);
    accepted("2 ft 3 in", 685.8);
    accepted("2' 3 1/2\"", 698.5);
    accepted("1/2 ft", 152.4);
    accepted("3 IN", 76.2);
    accepted("3 MM", 3.0);
    accepted("6/8 in", 19.05);
    accepted("9/4 in", 57.15);
    accepted("5/8''", 15.875);
    accepted("½ in", 12.7);
    accepted("1½\"", 38.1);
    accepted("1 ⅞ in", 47.625);
    accepted("2' 3½''", 698.5);
}

#[test]
fn a_bare_number_is_in_the_unit_of_the_document() {
    let read = |text, unit| Length::parse(text, unit).expect("a size");
    close("inch", read("3/4", Unit::Inch).mm(), 19.05, 1e-15);
    close("mm", read("19", Unit::Millimetre).mm(), 19.0, 1e-15);
    close("own unit wins", read("19 mm", Unit::Inch).mm(), 19.0, 1e-15);
    assert_eq!(read("3/4", Unit::Inch).to_string(), "3/4 in");
}

#[test]
fn a_fraction_stays_a_fraction() {
    let text = |size: &str| size.parse::<Length>().expect("a size").to_string();
    assert_eq!(text("3/4\""), "3/4 in");
    assert_eq!(text("6/8 in"), "3/4 in");
    assert_eq!(text("1-1/2 inch"), "1 1/2 in");
    assert_eq!(text("9/4 in"), "2 1/4 in");
    assert_eq!(text("0.75 in"), "0.75 in");
    assert_eq!(text("19,5mm"), "19.5 mm");
    assert_eq!(text("4.0 mm"), "4 mm");
    assert_eq!(text("2 ft 3 in"), "27 in");
}

/// A text that is no size, with the kind of refusal.
#[track_caller]
fn refused(text: &str, kind: fn(&SizeError) -> bool) {
    match text.parse::<Length>() {
        Ok(size) => panic!("\"{text}\" was read as {size}"),
        Err(error) => {
            assert!(kind(&error), "\"{text}\" was refused as {error:?}");
            check_words(&error.to_string());
        }
    }
}

/// A message is one short sentence without a period.
#[track_caller]
fn check_words(message: &str) {
    let short = !message.is_empty() && message.chars().count() < 140;
    assert!(
        short && !message.ends_with('.') && !message.contains('\n'),
        "\"{message}\""
    );
}

#[test]
fn sizes_that_are_refused() {
    let empty: fn(&SizeError) -> bool = |e| matches!(e, SizeError::Empty);
    let not: fn(&SizeError) -> bool = |e| matches!(e, SizeError::NotASize(_));
    let negative: fn(&SizeError) -> bool = |e| matches!(e, SizeError::Negative(_));
    let over_zero: fn(&SizeError) -> bool = |e| matches!(e, SizeError::OverZero(_));
    let unit: fn(&SizeError) -> bool = |e| matches!(e, SizeError::Unit(_));
    let no_unit: fn(&SizeError) -> bool = |e| matches!(e, SizeError::NoUnit(_));
    let large: fn(&SizeError) -> bool = |e| matches!(e, SizeError::TooLarge(_));
    let cases = [
        ("", empty),
        ("   ", empty),
        ("3//4 in", not),
        ("3/4/5 in", not),
        ("/4 in", not),
        ("3/ in", not),
        ("in", not),
        ("mm", not),
        ("1.2.3 mm", not),
        ("1,000.5 mm", not),
        (". mm", not),
        ("3 4 in", not),
        ("1.5/2 in", not),
        ("+3 mm", not),
        ("NaN mm", not),
        ("-1 in", negative),
        ("\u{2212}1 in", negative),
        ("½½ in", not),
        ("3/½ in", not),
        ("1.5½ in", not),
        ("-3/4 in", negative),
        ("3/0 in", over_zero),
        ("1 1/0 in", over_zero),
        ("0/0 in", over_zero),
        ("fred", not),
        ("3 f", unit),
        ("3/4 furlong", unit),
        ("3 m", unit),
        ("3 inn", unit),
        ("3 mm mm", unit),
        ("inf mm", not),
        ("3/4", no_unit),
        ("19", no_unit),
        ("1e999 mm", large),
        ("9999999999 mm", large),
        ("1/999999 in", large),
    ];
    for (text, kind) in cases {
        refused(text, kind);
    }
    refused(&"9".repeat(1000), not);
}

#[test]
fn whole_and_broken_numbers_too_large_for_a_fraction_are_refused() {
    for text in [
        "4294967295 1/2 in",
        "1000000000 99999/100000 in",
        "4294967296/3 in",
    ] {
        assert!(text.parse::<Length>().is_err(), "{text} was read");
    }
}

#[test]
fn angles() {
    let read = |text: &str| text.parse::<Angle>().map(Angle::in_degrees);
    assert_eq!(read("90 deg"), Ok(90.0));
    assert_eq!(read("90\u{b0}"), Ok(90.0));
    assert_eq!(read("67,5"), Ok(67.5));
    for text in [
        "", "deg", "-90 deg", "ninety", "1e9 deg", "NaN", "inf", "90 rad",
    ] {
        let error = read(text).expect_err("no angle");
        check_words(&error.to_string());
    }
}

#[track_caller]
fn shown(mm: f64, rounding: Rounding, expected: &str) {
    let show = Show {
        unit: Unit::Inch,
        rounding,
    };
    assert_eq!(show.text(mm), expected, "{mm} mm by {rounding:?}");
}

#[test]
fn inches_are_shown_to_the_nearest_fraction_with_a_mark_if_it_is_not_exact() {
    let (fine, middle, coarse) = (
        Rounding::SixtyFourths,
        Rounding::ThirtySeconds,
        Rounding::Sixteenths,
    );
    shown(19.05, fine, "3/4 in");
    shown(38.1, fine, "1 1/2 in");
    shown(25.4, fine, "1 in");
    shown(0.0, fine, "0 in");
    shown(0.396_875, fine, "1/64 in");
    shown(0.396_875, coarse, "~0 in");
    shown(10.0, fine, "~25/64 in");
    shown(10.0, middle, "~13/32 in");
    shown(10.0, coarse, "~3/8 in");
    shown(19.055, fine, "3/4 in");
    shown(19.07, fine, "~3/4 in");
    shown(-19.05, fine, "-3/4 in");
    shown(330.2, coarse, "13 in");
}

/// What a field shows of a computed size can be changed in part and typed back.
#[test]
fn what_is_shown_can_be_typed_back() {
    for mm in [10.0, 19.05, -10.0, -3.1] {
        let shown = Show::default().text(mm);
        let back = Offset::parse(&shown, Unit::Inch).unwrap_or_else(|e| panic!("{shown}: {e}"));
        assert!((back.mm() - mm).abs() < 25.4 / 128.0 + 1e-9, "{shown}");
    }
    for about in ["~25/64 in", "±25/64 in"] {
        assert_eq!(about.parse::<Length>(), "25/64 in".parse(), "{about}");
    }
}

#[test]
fn millimetres_are_shown_to_a_tenth() {
    let show = Show {
        unit: Unit::Millimetre,
        ..Show::default()
    };
    for (mm, expected) in [
        (19.05, "19.1 mm"),
        (19.0, "19 mm"),
        (0.04, "0 mm"),
        (-0.04, "0 mm"),
        (-2.5, "-2.5 mm"),
        (100.0, "100 mm"),
    ] {
        assert_eq!(show.text(mm), expected);
    }
}

fn any_unit() -> impl Strategy<Value = Unit> {
    prop_oneof![
        Just(Unit::Inch),
        Just(Unit::Foot),
        Just(Unit::Millimetre),
        Just(Unit::Centimetre)
    ]
}

/// A size is read back from its own text as the very same size.
fn survives(size: Length) -> Result<(), TestCaseError> {
    let text = size.to_string();
    let back: Result<Length, _> = text.parse();
    prop_assert_eq!(back, Ok(size), "by way of \"{}\"", text);
    Ok(())
}

proptest! {
    #[test]
    fn fractions_survive_text(over in 0u32..1_000_000, under in 1u32..=100_000, unit in any_unit()) {
        survives(Length::fraction(over, under, unit))?;
    }

    #[test]
    fn decimals_survive_text(number in 1e-4..1e6f64, unit in any_unit()) {
        survives(Length::decimal(number, unit))?;
    }

    #[test]
    fn computed_sizes_survive_text(mm in 0.0..3000.0f64, unit in any_unit()) {
        survives(Length::from_mm(mm, unit))?;
        survives(Length::measured(mm, unit))?;
    }

    #[test]
    fn computed_sizes_stay_near(mm in 0.0..3000.0f64, unit in any_unit()) {
        // The documented steps: a micrometre or 1e-4 of the unit; 1/16 in or half a millimetre.
        let near = Length::from_mm(mm, unit).mm() - mm;
        prop_assert!(near.abs() <= 5.1e-5 * unit.mm().max(10.0), "{near}");
        let rounded = Length::measured(mm, unit).mm() - mm;
        prop_assert!(rounded.abs() <= 25.4 / 32.0 + 1e-9, "{rounded}");
    }

    #[test]
    fn shown_inches_are_the_nearest_sixty_fourth(mm in 0.0..2000.0f64) {
        let text = Show::default().text(mm);
        let exact = !text.starts_with('~');
        let read: Length = text.trim_start_matches('~').parse().expect("what is shown can be read");
        let off = (read.mm() - mm).abs();
        prop_assert!(off <= 25.4 / 128.0 + 1e-9, "{text} is {off} mm off");
        prop_assert_eq!(exact, off < 0.01, "{} is {} mm off", text, off);
    }

    #[test]
    fn no_text_makes_it_panic(text in "\\PC{0,50}") {
        let length = text.parse::<Length>();
        prop_assert!(length.is_err() || length.expect("read").mm().is_finite());
        let angle = text.parse::<Angle>();
        prop_assert!(angle.is_err() || angle.expect("read").radians().is_finite());
    }

    #[test]
    fn no_likely_text_makes_it_panic(text in "[-0-9 /.,'\"infmce]{0,24}") {
        if let Ok(size) = Length::parse(&text, Unit::Inch) {
            prop_assert!(size.mm().is_finite() && size.mm() >= 0.0);
            let back: Result<Length, _> = size.to_string().parse();
            prop_assert_eq!(back, Ok(size), "{} became {}", text, size);
        }
    }
}

/// A word where a size or its unit belongs is named, whatever stands behind it.
#[test]
fn a_strange_word_of_a_bar_is_named() {
    use reinwright_core::asked::{StockError, parse_bar, parse_work};
    let quoted = |word: &str| word.to_owned();
    let cases = [
        ("fred square", SizeError::NotASize(quoted("fred"))),
        ("3 furlong square", SizeError::Unit(quoted("furlong"))),
        ("square", SizeError::Empty),
        ("3 square", SizeError::NoUnit(quoted("3"))),
    ];
    for (text, why) in cases {
        assert_eq!(parse_bar(text), Err(StockError::Size(why)), "{text}");
    }
    let furlong = StockError::Size(SizeError::Unit(quoted("furlong")));
    for text in ["3 furlong square", "3 furlong hex"] {
        assert_eq!(parse_work(text), Err(furlong.clone()), "{text}");
    }
}

/// Limits are told on the inside of what is allowed, in parts of an inch that a rule has: 0.5 mm are 0.0197 in, 200 mm
/// 7.874 in, 2000 mm 78.74 in.
#[test]
fn limits_are_told_in_round_figures_that_are_allowed() {
    use reinwright_core::asked::Range;
    for (range, inches, mm) in [
        (Range::STEEL, ["1/32 in", "7 3/4 in"], ["0.5 mm", "200 mm"]),
        (Range::REIN, ["13/16 in", "78 1/2 in"], ["20 mm", "2000 mm"]),
        // An inch to an inch and a hundredth of a millimetre.
        (
            Range::new(25.4, 25.41),
            ["1 in", "1.0004 in"],
            ["25.4 mm", "25.41 mm"],
        ),
    ] {
        assert_eq!(range.ends_in(Unit::Inch), inches);
        assert_eq!(range.ends_in(Unit::Millimetre), mm);
        for end in inches {
            let end: Length = end.parse().expect("it is a size");
            assert!(end.mm() > range.least - 1e-3 && end.mm() < range.most + 1e-3);
        }
    }
}
