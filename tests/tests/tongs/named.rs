//! Work as it is called: the sizes of bolts, nuts, pipe, rebar and angles against the published
//! tables, what is refused and with which words, and that words, file and work are one.

use reinwright_core::asked::{
    Datum as _, FlatOf, HexagonOf, RoundOf, SquareOf, Work, parse_bar, parse_work, parse_work_in,
    says_unit,
};
use reinwright_core::tongs::document;
use reinwright_core::units::Unit;
use reinwright_tests::pairs::{mm, starting, work};
use reinwright_tests::{close, within};

const IN: f64 = 25.4;

/// The sizes of a piece in mm, in the order in which the tables have them.
fn sizes(work: &Work) -> Vec<f64> {
    let all = match *work {
        Work::Hexagon { flats, of, .. } => match of {
            HexagonOf::Bar => vec![flats],
            HexagonOf::BoltHead { height, shank } => vec![shank, flats, height],
            HexagonOf::Nut { height, hole } => vec![hole, flats, height],
        },
        Work::Round { diameter, of } => match of {
            RoundOf::Bar => vec![diameter],
            RoundOf::Pipe { wall } => vec![diameter, wall],
            RoundOf::Rebar { ribs } => vec![diameter, ribs],
            RoundOf::BoltShank { flats, height, .. } => vec![diameter, flats, height],
        },
        Work::Flat {
            thickness,
            width,
            of,
        } => match of {
            FlatOf::Bar => vec![thickness, width],
            FlatOf::AngleLeg { other } => vec![width, other, thickness],
        },
        Work::Square { side, of, .. } => match of {
            SquareOf::Bar => vec![side],
            SquareOf::AngleBack { thickness } => vec![side, side, thickness],
        },
        Work::Octagon { flats, .. } => vec![flats],
    };
    all.into_iter().map(|length| length.mm()).collect()
}

#[track_caller]
fn called(text: &str, expected: &[f64]) {
    let found = sizes(&work(text));
    assert_eq!(found.len(), expected.len(), "{text}: {found:?}");
    for (found, expected) in found.iter().zip(expected) {
        // Tables round thousandths of an inch.
        within(text, *found, *expected, 0.013);
    }
}

/// ISO 4014, nominal: thread, across flats s, height of the head k, mm.
#[test]
fn metric_bolts() {
    called("M5", &[5.0, 8.0, 3.5]);
    called("M6", &[6.0, 10.0, 4.0]);
    called("M8 bolt", &[8.0, 13.0, 5.3]);
    called("M10 bolt", &[10.0, 16.0, 6.4]);
    called("m12 hex bolt", &[12.0, 18.0, 7.5]);
    called("M14", &[14.0, 21.0, 8.8]);
    called("M16", &[16.0, 24.0, 10.0]);
    called("16 mm bolt", &[16.0, 24.0, 10.0]);
    called("M20 bolt behind its head", &[20.0, 30.0, 12.5]);
    called("M24 bolt by its shank", &[24.0, 36.0, 15.0]);
    called("M30", &[30.0, 46.0, 18.7]);
    called("M36", &[36.0, 55.0, 22.5]);
}

/// ASME B18.2.1, hex cap screws: the greatest width across flats is the basic one; the height of the
/// head is the middle of its limits, of 0.378 to 0.403 in for 5/8 in.
#[test]
fn inch_bolts() {
    for (text, thread, flats, heads) in [
        ("1/4 bolt", 0.25, 0.438, (0.150, 0.163)),
        ("5/16 in bolt", 0.3125, 0.5, (0.195, 0.211)),
        ("3/8 in hex bolt", 0.375, 0.562, (0.226, 0.243)),
        ("7/16 bolt", 0.4375, 0.625, (0.272, 0.291)),
        ("1/2 bolt", 0.5, 0.75, (0.302, 0.323)),
        ("9/16 bolt", 0.5625, 0.812, (0.348, 0.371)),
        ("5/8 in hex bolt by its head", 0.625, 0.938, (0.378, 0.403)),
        ("3/4 bolt", 0.75, 1.125, (0.455, 0.483)),
        ("7/8 bolt", 0.875, 1.312, (0.531, 0.563)),
        ("1 in bolt", 1.0, 1.5, (0.591, 0.627)),
        ("1 1/8 bolt", 1.125, 1.688, (0.658, 0.718)),
        ("1 1/4 bolt", 1.25, 1.875, (0.749, 0.813)),
        ("1 3/8 bolt", 1.375, 2.062, (0.810, 0.878)),
        ("1 1/2 bolt", 1.5, 2.25, (0.902, 0.974)),
    ] {
        let head = f64::midpoint(heads.0, heads.1);
        called(text, &[thread * IN, flats * IN, head * IN]);
    }
    // From 5/8 in on a head is one and a half times its thread across flats.
    for text in [
        "5/8 bolt",
        "3/4 bolt",
        "7/8 bolt",
        "1 in bolt",
        "1 1/2 bolt",
    ] {
        let [thread, flats, _] = sizes(&work(text))[..] else {
            panic!("{text}");
        };
        close(text, flats / thread, 1.5, 1e-12);
    }
}

/// Nuts: ISO 4032 (the greatest height, read in a copy), and the middle of the limits of ordinary
/// Unified nuts, which BS 1768 and ASME B18.2.2 share.
#[test]
fn nuts() {
    called("M5 nut", &[5.0, 8.0, 4.7]);
    called("M6 nut", &[6.0, 10.0, 5.2]);
    called("M8 nut", &[8.0, 13.0, 6.8]);
    called("M10 nut", &[10.0, 16.0, 8.4]);
    called("M12 nut", &[12.0, 18.0, 10.8]);
    called("M14 nut", &[14.0, 21.0, 12.8]);
    called("M16 nut", &[16.0, 24.0, 14.8]);
    called("M20 hex nut", &[20.0, 30.0, 18.0]);
    called("M24 nut", &[24.0, 36.0, 21.5]);
    called("M30 nut", &[30.0, 46.0, 25.6]);
    called("M36 nut", &[36.0, 55.0, 31.0]);
    for (text, thread, flats, limits) in [
        ("1/4 nut", 0.25, 0.4375, (0.214, 0.224)),
        ("5/16 nut", 0.3125, 0.5, (0.261, 0.271)),
        ("3/8 nut", 0.375, 0.5625, (0.323, 0.333)),
        ("7/16 nut", 0.4375, 0.6875, (0.370, 0.380)),
        ("1/2 nut", 0.5, 0.75, (0.432, 0.442)),
        ("9/16 nut", 0.5625, 0.875, (0.479, 0.489)),
        ("5/8 nut", 0.625, 0.9375, (0.542, 0.552)),
        ("3/4 nut", 0.75, 1.125, (0.631, 0.651)),
        ("7/8 nut", 0.875, 1.3125, (0.740, 0.760)),
        ("1 in nut", 1.0, 1.5, (0.844, 0.874)),
        ("1 1/8 nut", 1.125, 1.6875, (0.949, 0.989)),
        ("1 1/4 nut", 1.25, 1.875, (1.037, 1.087)),
        ("1 3/8 nut", 1.375, 2.0625, (1.147, 1.197)),
        ("1 1/2 nut", 1.5, 2.25, (1.251, 1.311)),
    ] {
        let height = f64::midpoint(limits.0, limits.1);
        called(text, &[thread * IN, flats * IN, height * IN]);
    }
}

/// ASME B36.10, Schedule 40: outside and wall (read in a copy), held against the published weights of
/// plain ends in lb/ft with steel of 0.2836 lb/in³.
#[test]
fn inch_pipe() {
    for (text, outside, wall, pounds) in [
        ("1/8 in pipe", 0.405, 0.068, 0.24),
        ("1/4 in pipe", 0.540, 0.088, 0.42),
        ("3/8 in pipe", 0.675, 0.091, 0.57),
        ("1/2 in pipe", 0.840, 0.109, 0.85),
        ("3/4 pipe", 1.050, 0.113, 1.13),
        ("1 in pipe", 1.315, 0.133, 1.68),
        ("1 1/4 in pipe", 1.660, 0.140, 2.27),
        ("1 1/2 in pipe", 1.900, 0.145, 2.72),
        ("NPS 2", 2.375, 0.154, 3.65),
        ("2 1/2 in pipe", 2.875, 0.203, 5.80),
        ("NPS 3 pipe", 3.5, 0.216, 7.58),
    ] {
        called(text, &[outside * IN, wall * IN]);
        let [d, t] = sizes(&work(text))[..] else {
            panic!("{text}");
        };
        let area = std::f64::consts::PI * (d - t) * t / (IN * IN);
        within(text, area * 12.0 * 0.2836, pounds, 0.008);
    }
}

/// EN 10255, medium series, held against the published weights in kg/m, which are of a mean outside
/// a little larger.
#[test]
fn metric_pipe() {
    for (text, outside, wall, kilograms) in [
        ("DN 8", 13.5, 2.3, 0.641),
        ("DN 10", 17.2, 2.3, 0.839),
        ("DN 15", 21.3, 2.6, 1.21),
        ("dn20", 26.9, 2.6, 1.56),
        ("DN 25 pipe", 33.7, 3.2, 2.41),
        ("DN 32", 42.4, 3.2, 3.10),
        ("DN 40", 48.3, 3.2, 3.57),
        ("DN 50", 60.3, 3.6, 5.03),
    ] {
        called(text, &[outside, wall]);
        let area = std::f64::consts::PI * (outside - wall) * wall;
        let weight = area * 7.85e-3;
        assert!((weight / kilograms - 1.0).abs() < 0.015, "{text}: {weight}");
    }
    called("30 x 2 mm pipe", &[30.0, 2.0]);
    called("1/16 x 3/4 in tube", &[19.05, 1.5875]);
}

/// ASTM A615, Table 1 (read in a copy of ASTM A706, which has the same bars): nominal diameter and
/// least mean height of the ribs, in; the weights in lb/ft are of plain bar of that diameter, above
/// #11 to a twentieth of a pound. EN 10080: the nominal diameters are the names; the height of
/// the ribs is 0.065 of them (DIN 488-2, from memory).
#[test]
fn rebar() {
    for (text, diameter, ribs, pounds) in [
        ("#3 rebar", 0.375, 0.015, 0.376),
        ("#4", 0.500, 0.020, 0.668),
        ("#5 rebar", 0.625, 0.028, 1.043),
        ("#6", 0.750, 0.038, 1.502),
        ("#7", 0.875, 0.044, 2.044),
        ("#8", 1.000, 0.050, 2.670),
        ("#9", 1.128, 0.056, 3.400),
        ("#10", 1.270, 0.064, 4.303),
        ("#11 rebar", 1.410, 0.071, 5.313),
        ("#14", 1.693, 0.085, 7.65),
        ("#18", 2.257, 0.102, 13.60),
    ] {
        called(text, &[diameter * IN, ribs * IN]);
        let area = std::f64::consts::FRAC_PI_4 * diameter * diameter;
        let rounded = if diameter > 1.5 { 0.05 } else { 0.01 };
        within(text, area * 12.0 * 0.2836, pounds, rounded);
    }
    called("16 mm rebar", &[16.0, 1.04]);
    called("12 mm rebar", &[12.0, 0.78]);
    called("5/8 rebar", &[15.875, 0.711]);
    called("16 mm rebar, 1.2 mm ribs", &[16.0, 1.2]);
}

/// Angles and flat bar carry their own sizes; the smallest is the thickness, wherever it stands.
#[test]
fn angles_and_flats() {
    called("1 x 1 x 1/8 angle", &[25.4, 25.4, 3.175]);
    called("1/8 x 1 x 1 in angle iron", &[25.4, 25.4, 3.175]);
    called("30 x 3 mm angle", &[30.0, 30.0, 3.0]);
    called("50 x 30 x 5 mm angle", &[50.0, 30.0, 5.0]);
    called("30x30x3 mm angle by its back", &[30.0, 30.0, 3.0]);
    called("3/8 x 1 in flat", &[9.525, 25.4]);
    called("1 x 3/8 in flat", &[9.525, 25.4]);
    called("1 x 3/8 flat", &[9.525, 25.4]);
    let in_mm = |text| parse_work_in(text, Unit::Millimetre).expect("work");
    assert_eq!(in_mm("25 x 10 flat"), in_mm("10 x 25 flat"));
    assert_eq!(in_mm("5/8 hex"), work("5/8 in hexagon"));
    assert_eq!(
        work("1 x 3/8 flat").reading(),
        "flat, 3/8 in thick between the jaws, 1 in wide"
    );
}

/// The same bar is meant whichever size comes first, in work and in what is forged.
#[test]
fn flat_bar_is_the_same_whichever_size_comes_first() {
    for (text, other) in [
        ("25 x 12 mm flat", "12 x 25 mm flat"),
        ("1 x 3/8 in flat", "3/8 x 1 in flat"),
        ("12 x 12 mm flat", "12 x 12 mm flat"),
    ] {
        assert_eq!(parse_bar(text), parse_bar(other), "{text}");
        assert_eq!(parse_work(text), parse_work(other), "{text}");
    }
}

/// Who says two sizes and no shape means flat bar, or square bar where they are alike.
#[test]
fn two_sizes_alone_tell_the_shape() {
    for (text, other) in [
        ("1 1/4 x 5/8 in", "5/8 x 1 1/4 in flat"),
        ("25x12mm", "12 x 25 mm flat"),
        ("3/8 x 1 bar", "3/8 x 1 in flat"),
        ("3/4 x 3/4 in", "3/4 in square"),
        ("20 x 20 mm bar", "20 mm square"),
        ("20 x 20 mm square", "20 mm square"),
    ] {
        assert_eq!(parse_bar(text), parse_bar(other), "{text}");
        assert_eq!(parse_work(text), parse_work(other), "{text}");
        assert!(parse_bar(other).is_ok(), "{other}");
    }
    called("3/8 x 1 on edge", &[25.4, 9.525]);
    for text in [
        "20 x 25 mm square",
        "1 x 2 x 3 in",
        "20 x 25 mm round",
        "3/4",
    ] {
        assert!(parse_bar(text).is_err(), "{text}");
        assert!(parse_work(text).is_err(), "{text}");
    }
}

/// Flat bar on edge has its width between the jaws.
#[test]
fn flat_bar_on_edge_has_its_width_between_the_jaws() {
    for text in [
        "3/8 x 1 in flat on edge",
        "1 x 3/8 flat on its edge",
        "3/8 x 1 flat edge on",
        "3/8 x 1 flat, edge-on",
        "3/8 x 1 flat edgewise",
        "3/8 x 1 flat by its edges",
    ] {
        called(text, &[25.4, 9.525]);
        let read = work(text);
        assert_eq!(read.words(), "3/8 in x 1 in flat on edge", "{text}");
        assert_eq!(parse_work(&read.words()), Ok(read), "{text}");
    }
    assert_eq!(
        work("3/8 x 1 flat on edge").reading(),
        "flat on edge, 1 in between the jaws, 3/8 in thick"
    );
    refused(
        "5/8 hex on edge",
        "\"on edge\" is not understood of the hexagon: it is said of flat bar",
    );
    refused(
        "3/8 x 1 flat askew",
        "\"askew\" is not understood of the flat: flat bar is told by its sizes and shape, and on edge where its edges lie in the jaws",
    );
}

/// The unit of the sizes in a text, where one is said.
#[test]
fn a_text_says_its_unit() {
    for (text, unit) in [
        ("16 mm hex", Some(Unit::Millimetre)),
        ("1.6cm hex", Some(Unit::Millimetre)),
        ("25x12mm flat", Some(Unit::Millimetre)),
        ("5/8 in hex", Some(Unit::Inch)),
        ("5/8\" hex", Some(Unit::Inch)),
        ("5/8 hex", None),
        ("M16", None),
        ("1/2 in pipe", None),
    ] {
        assert_eq!(says_unit(text), unit, "{text}");
    }
}

/// Every name is one with its words and with its file.
#[test]
fn words_and_file_are_one_with_the_work() {
    for (text, words) in [
        ("5/8 hex", "5/8 in hexagon"),
        ("M16", "M16 bolt by its head"),
        ("M16 on corners", "M16 bolt by its head on corners"),
        ("5/8 bolt, behind its head", "5/8 in bolt behind its head"),
        ("5/8 bolt by the shank", "5/8 in bolt by its shank"),
        ("1/2 in pipe", "1/2 in pipe"),
        ("DN 25", "DN 25 pipe"),
        ("30 x 2 mm pipe", "30 mm x 2 mm pipe"),
        ("#5", "#5 rebar"),
        ("16 mm rebar", "16 mm rebar"),
        ("16 mm rebar, 1.2 mm ribs", "16 mm rebar, 1.2 mm ribs"),
        ("1 x 1 x 1/8 angle", "1 in x 1 in x 1/8 in angle by a leg"),
        (
            "50 x 50 x 5 mm angle by its back",
            "50 mm x 50 mm x 5 mm angle by its back",
        ),
        ("M16 nut on corners", "M16 nut on corners"),
        (
            "bolt 10 mm high, 24 mm across flats, 15 mm shank by its head on corners",
            "bolt 24 mm across flats, 10 mm high, 15 mm shank, by its head on corners",
        ),
        (
            "bolt 24 mm across flats, 10 mm high, 15 mm shank, behind its head",
            "bolt 24 mm across flats, 10 mm high, 15 mm shank, behind its head",
        ),
        (
            "nut 24 mm across flats, 12 mm high, 15 mm hole",
            "nut 24 mm across flats, 12 mm high, 15 mm hole",
        ),
        ("1 x 3/8 flat bar", "3/8 in x 1 in flat"),
    ] {
        let piece = work(text);
        assert_eq!(piece.words(), words);
        assert_eq!(work(&piece.words()), piece, "{text}");
        let mut pair = starting("v bit", "1/2 in round", "3/4 in square");
        pair.work = piece;
        let read = document::read(document::write(&pair).as_bytes()).expect("a document");
        assert_eq!(read, pair, "{text}");
    }
}

/// A bolt that is told by the sizes of the table is that bolt; a size of its own takes the name.
#[test]
fn a_name_is_found_from_the_sizes() {
    let told = work("bolt 24 mm across flats, 10 mm high, 16 mm shank");
    assert_eq!(told, work("M16"));
    let mut pair = starting("v bit", "M16", "20 mm square");
    assert_eq!(pair.name, "V bit tongs for M16 bolt");
    pair.put("work.flats", mm(23.0).value());
    assert_eq!(pair.work.name(), "bolt with a 23 mm head");
    assert_eq!(work("33.7 x 3.2 mm pipe").name(), "DN 25 pipe");
}

/// What is not understood is refused, never dropped.
#[track_caller]
fn refused(text: &str, says: &str) {
    match parse_work(text) {
        Ok(work) => panic!("\"{text}\" was read as {work:?}"),
        Err(error) => assert_eq!(error.to_string(), says, "{text}"),
    }
}

#[test]
fn what_is_not_understood_is_refused_with_what_is() {
    const SHAPES: &str =
        "flat, round, square, hexagon, octagon, bolt, nut, pipe, rebar or angle, as in 5/8 hex";
    const BOLT: &str = "a bolt is told by its thread alone, as in M16 or 5/8 bolt, and by its head, behind its head or by its shank";
    refused(
        "5/8 in widget",
        &format!("\"5/8 in widget\" names no shape that is known here: end it with {SHAPES}"),
    );
    refused(
        "5/8 hex brass",
        "\"brass\" is not understood of the hexagon: bar is told by its size and shape, and on flats or on corners",
    );
    refused(
        "M16 x 60",
        &format!("\"x 60\" is not understood of the bolt: {BOLT}"),
    );
    refused(
        "5/8 square bolt",
        &format!("\"square\" is not understood of the bolt: {BOLT}"),
    );
    refused(
        "M15",
        "no bolt is called \"M15\" in the tables, which have M5, M6, M8, M10, M12, M14, M16, M20, M24, M30, M36 and 1/4 in to 1 1/2 in; tell any other as in bolt 24 mm across flats, 10 mm high, 16 mm shank",
    );
    refused(
        "25 mm pipe",
        "\"25 mm pipe\" is no pipe: one size names it in inches, as in 1/2 in pipe; in millimetres say DN 25, or outside and wall, as in 30 x 2 mm pipe",
    );
    refused(
        "DN 22",
        "no pipe is called \"DN 22\" in the tables, which have 1/8 in to 3 in and DN 6, 8, 10, 15, 20, 25, 32, 40, 50, 65, 80; tell any other by outside and wall, as in 30 x 2 mm pipe",
    );
    refused(
        "10 x 6 mm pipe",
        "\"10 x 6 mm pipe\" is no pipe: its wall is less than half of its outside",
    );
    refused(
        "#12 rebar",
        "no rebar is called \"#12 rebar\" in the tables, which have #3, #4, #5, #6, #7, #8, #9, #10, #11, #14, #18 and 6, 8, 10, 12, 14, 16, 20, 25, 28, 32, 40 mm; tell any other by its diameter, as in 18 mm rebar",
    );
    refused(
        "1 in angle",
        "\"1 in angle\" is no angle: it has two legs and a thickness, as in 1 x 1 x 1/8 in angle; the smallest is the thickness, the first leg the one that is held",
    );
    refused(
        "2 x 1 x 1/8 angle by its back",
        "\"by its back\" is not understood of the angle: an angle lies by its back in a groove only where both legs are alike",
    );
    refused(
        "5/8 hex by its head",
        "\"by its head\" is not understood of the hexagon: it is said of bolts",
    );
    refused(
        "5/8 round on corners",
        "\"on its corners\" is not understood of the round: it is said of square, hexagon and octagon bar, of nuts, and of bolts held by their head",
    );
    refused(
        "bolt 24 mm across flats, 10 mm high",
        "\"bolt 24 mm across flats, 10 mm high\" is no bolt: tell any other as in bolt 24 mm across flats, 10 mm high, 16 mm shank",
    );
}
