//! Starting pairs of every jaw style, over the work and the bars that smiths use. What is made
//! for what: common practice, no source. A style that is added wants its own line here.

use reinwright_core::finding::Severity;
use reinwright_core::shop::Answers;
use reinwright_core::tongs::document::Document;
use reinwright_core::tongs::resolve;
use reinwright_core::tongs::seat::Bears;
use reinwright_tests::pairs::starting;

const MM: [&str; 8] = [
    "3 mm", "4 mm", "6 mm", "10 mm", "16 mm", "20 mm", "30 mm", "40 mm",
];
const INCHES: [&str; 8] = [
    "1/8 in", "3/16 in", "1/4 in", "3/8 in", "5/8 in", "3/4 in", "1 in", "1 1/2 in",
];
const BARS_MM: [&str; 7] = [
    "10 mm square",
    "12 mm square",
    "16 mm square",
    "25 mm square",
    "12 mm round",
    "16 mm round",
    "25 mm round",
];
const BARS_INCHES: [&str; 7] = [
    "3/8 in square",
    "5/8 in square",
    "3/4 in square",
    "1 in square",
    "1/2 in round",
    "3/4 in round",
    "3/8 x 3/4 in flat",
];

/// Makes every starting pair of a style for some shapes and shows it to `check`.
fn each(jaw: &str, shapes: &[&str], check: impl Fn(&str, &Document)) {
    let inches = INCHES.map(|size| (size, BARS_INCHES));
    let sizes = MM.map(|size| (size, BARS_MM)).into_iter().chain(inches);
    for (size, bars) in sizes {
        for (shape, bar) in shapes.iter().flat_map(|shape| bars.map(|bar| (shape, bar))) {
            let pair = starting(jaw, &format!("{size} {shape}"), bar);
            check(&format!("{jaw} for {size} {shape} from {bar}"), &pair);
        }
    }
}

/// A pair that the program itself lays out can be made, put together, opened, and holds its own
/// work: whatever bar is chosen, nothing is a Stop.
#[track_caller]
fn no_stop(jaw: &str, shapes: &[&str]) {
    each(jaw, shapes, |name, pair| {
        let found = Answers::to(pair).findings;
        let stops: Vec<String> = found
            .iter()
            .filter(|finding| finding.severity == Severity::Stop)
            .map(ToString::to_string)
            .collect();
        assert!(stops.is_empty(), "{name}: {stops:#?}");
    });
}

#[test]
fn flat_jaws_hold_flat_and_small_square_and_round() {
    no_stop("flat", &["flat", "square", "round"]);
}

#[test]
fn v_bits_hold_squares_on_corners_rounds_and_hexagons() {
    let shapes = ["square on corners", "round", "hexagon on corners"];
    no_stop("v bit", &shapes);
}

#[test]
fn hollow_bits_hold_rounds_and_octagons() {
    no_stop("hollow bit", &["round", "octagon"]);
}

/// A hollow bit takes its work into the groove, its lips apart, on bar of every size.
#[test]
fn hollow_bits_leave_their_lips_apart() {
    each("hollow bit", &["round", "octagon"], |name, pair| {
        let model = resolve(pair);
        let part = model.jaw_gap / pair.work.size().mm();
        assert!(
            (0.05..0.45).contains(&part),
            "{name}: lips {part} of the work apart"
        );
        let bears = model.seats[0].bears;
        assert_ne!(bears, Bears::Edges, "{name}");
    });
}
