//! Starting pairs of every jaw style, over the work and the bars that smiths use. What is made
//! for what: common practice, no source. A style that is added wants its own line here.

use reinwright_core::asked::{Bar, Work, parse_bar, parse_work};
use reinwright_core::finding::{Kind, Severity};
use reinwright_core::shop::{Answers, start};
use reinwright_core::tongs::document::Document;
use reinwright_core::tongs::jaw::{JawKind, Verdict, Way};
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
fn flat_jaws_hold_flat_and_small_square() {
    no_stop("flat", &["flat", "square"]);
}

/// A style that is unsafe for its work is begun with that said, and with nothing else that is bad.
#[test]
fn an_unsafe_start_says_so_and_nothing_else() {
    for (jaw, work) in [
        (JawKind::Flat, "1/2 in round"),
        (JawKind::Duckbill, "3/8 in round"),
        (JawKind::VBit, "1/4 x 1 in flat"),
        (JawKind::HollowBit, "1/2 in square"),
        (JawKind::Scrolling, "3/4 in round"),
    ] {
        let told = is_begun_unsafe(jaw, parse_work(work).expect("work"));
        assert_eq!(told, Some(true), "{jaw} for {work}");
    }
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

/// Works by size and shape, the bars that exist, in one unit.
struct Shop {
    flats: &'static [&'static str],
    others: &'static [&'static str],
    bars: &'static [&'static str],
}

const INCH_SHOP: Shop = Shop {
    flats: &["1/8 in", "1/4 in", "3/8 in", "1/2 in", "3/4 in", "1 in"],
    others: &["1/4 in", "1/2 in", "5/8 in", "1 in", "1 1/2 in"],
    bars: &[
        "3/8 in square",
        "1/2 in square",
        "5/8 in square",
        "3/4 in square",
        "7/8 in square",
        "1 in square",
        "1 1/4 in square",
        "3/8 in round",
        "1/2 in round",
        "5/8 in round",
        "3/4 in round",
        "1 in round",
        "1/4 x 3/4 in flat",
        "3/8 x 1 in flat",
        "1/2 x 1 in flat",
    ],
};

const METRIC_SHOP: Shop = Shop {
    flats: &["3 mm", "8 mm", "20 mm"],
    others: &["6 mm", "16 mm", "30 mm"],
    bars: &[
        "8 mm square",
        "10 mm square",
        "12 mm square",
        "16 mm square",
        "20 mm square",
        "25 mm square",
        "32 mm square",
        "12 mm round",
        "16 mm round",
        "20 mm round",
        "20 x 10 mm flat",
        "25 x 10 mm flat",
    ],
};

/// Work that no usual bar holds in a style: large bolts and angles take a pair too heavy for one
/// hand, large square bar a trough too stout for any bar in a hand.
const NOT_FROM_ANY: [(JawKind, &str); 6] = [
    (JawKind::GooseNeck, "40 x 40 x 4 mm angle by its back"),
    (JawKind::Bolt, "40 x 40 x 4 mm angle by its back"),
    (JawKind::Bolt, "1 1/2 in round"),
    (JawKind::Bolt, "1 1/2 in square"),
    (JawKind::Bolt, "30 mm square"),
    (JawKind::SquareMouth, "1 1/2 in square"),
];

/// What the starts of one style came to.
#[derive(Debug, Default, PartialEq)]
struct Count {
    begun: u32,
    refused: u32,
}

/// Whether a pair has neither a Stop nor a Mend under any of the squeezes that are asked for, and
/// is as wide at the hand as a hand wants it.
#[track_caller]
fn is_clean(name: &str, pair: &Document) {
    let answers = Answers::to(pair);
    let bad: Vec<String> = answers
        .findings
        .iter()
        .filter(|finding| finding.severity > Severity::Note)
        .map(ToString::to_string)
        .collect();
    assert!(bad.is_empty(), "{name}: {bad:#?}");
    let held = answers.fit.nominal.expect("a clean pair holds its work");
    let span = held.hand_span_mm;
    assert!(span > 50.8, "{name}: {span} mm over the reins");
    let deepest = pair.bar.stock.wide_mm();
    assert!(pair.neck.depth.mm() <= deepest, "{name}: a neck too deep");
}

/// Begins a pair of one style for every work that the trade gives it, from every bar: it is clean,
/// or the bar is named that gives a clean one.
fn sweep(jaw: JawKind) {
    let mut count = Count::default();
    for shop in [INCH_SHOP, METRIC_SHOP] {
        let flats = shop.flats.iter().map(|size| format!("{size} flat"));
        let others = shop.others.iter().flat_map(|size| {
            ["round", "square", "hexagon", "octagon"].map(|shape| format!("{size} {shape}"))
        });
        for named in flats.chain(others) {
            let work = parse_work(&named).expect("work").laid_for(jaw);
            let fits = |way| {
                let trade = jaw.trade(&work, way);
                trade.is_some_and(|trade| trade.verdict <= Verdict::WithAWord)
            };
            let shown = jaw != JawKind::HammerEye && jaw != JawKind::ChiselHead;
            let shows_flat = shown || named.ends_with("flat") || named.ends_with("square");
            if !shows_flat || !Way::ALL.into_iter().any(fits) {
                continue;
            }
            for from in shop.bars {
                let bar = parse_bar(from).expect("a bar");
                one(jaw, (&named, work), (from, bar), &mut count);
            }
        }
    }
    // Small bar for large work is refused often, but no style is.
    assert!(2 * count.begun > count.refused, "{jaw}: {count:?}");
}

/// Whether all that is bad of a start is that its work can fly out; `None` when nothing is bad.
#[track_caller]
fn is_begun_unsafe(jaw: JawKind, work: Work) -> Option<bool> {
    let bar = parse_bar("3/4 in square").expect("a bar");
    let pair = start(jaw, work, bar).expect("it is begun");
    let found = Answers::to(&pair).findings.into_iter();
    let bad = found.filter(|it| it.severity > Severity::Note);
    let bad: Vec<(Severity, Kind)> = bad.map(|it| (it.severity, it.kind)).collect();
    (!bad.is_empty()).then(|| bad == [(Severity::Stop, Kind::WorkCanFlyOut)])
}

fn one(jaw: JawKind, (named, work): (&str, Work), (from, bar): (&str, Bar), count: &mut Count) {
    let name = format!("{jaw} for {named} from {from}");
    let no = match start(jaw, work, bar) {
        Ok(_) if NOT_FROM_ANY.contains(&(jaw, named)) => return,
        Ok(pair) => {
            count.begun += 1;
            return is_clean(&name, &pair);
        }
        Err(no) => no,
    };
    count.refused += 1;
    let other = no.instead.expect("another bar is named");
    let pair = start(jaw, work, other).expect(&name);
    is_clean(&format!("{name}: {no}"), &pair);
}

#[test]
fn every_flat_faced_start_is_clean() {
    for jaw in [JawKind::Flat, JawKind::OpenMouth, JawKind::Duckbill] {
        sweep(jaw);
    }
}

#[test]
fn every_grooved_start_is_clean() {
    for jaw in [JawKind::VBit, JawKind::HollowBit] {
        sweep(jaw);
    }
}

#[test]
fn every_boxed_start_is_clean() {
    for jaw in [JawKind::BoxJaw, JawKind::SquareMouth] {
        sweep(jaw);
    }
}

#[test]
fn every_bolt_start_is_clean() {
    sweep(JawKind::Bolt);
}

#[test]
fn every_goose_neck_start_is_clean() {
    sweep(JawKind::GooseNeck);
}

#[test]
fn every_start_beside_or_across_is_clean() {
    for jaw in [
        JawKind::BentBit,
        JawKind::Link,
        JawKind::PickUp,
        JawKind::Scrolling,
        JawKind::Notched,
    ] {
        sweep(jaw);
    }
}

#[test]
fn every_start_by_the_eye_is_clean() {
    for jaw in [JawKind::HammerEye, JawKind::ChiselHead] {
        sweep(jaw);
    }
}

/// Work by its name, in every part by which it may be held, with the bars of its unit.
const NAMED: [(&[&str], [&str; 2]); 2] = [
    (
        &[
            "5/8 bolt by its head",
            "5/8 bolt behind its head",
            "5/8 bolt by its shank",
            "3/8 bolt by its head",
            "3/8 bolt behind its head",
            "5/8 nut",
            "1/2 in pipe",
            "1 in pipe",
            "#3 rebar",
            "#5 rebar",
            "1 x 1 x 1/8 angle by a leg",
            "1 x 1 x 1/8 angle by its back",
            "1 x 3/8 flat",
        ],
        ["3/4 in square", "3/4 in round"],
    ),
    (
        &[
            "M16 by its head",
            "M16 behind its head",
            "M16 by its shank",
            "M10 by its head",
            "M20 behind its head",
            "M16 nut",
            "DN 15",
            "DN 25",
            "16 mm rebar",
            "40 x 40 x 4 mm angle by a leg",
            "40 x 40 x 4 mm angle by its back",
        ],
        ["16 mm square", "20 mm square"],
    ),
];

/// Begins pairs of some styles for work by its name, where the trade gives it them.
fn sweep_named(jaws: &[JawKind]) {
    let mut count = Count::default();
    for ((names, bars), jaw) in NAMED
        .iter()
        .flat_map(|one| jaws.iter().map(move |j| (one, *j)))
    {
        for named in *names {
            let work = parse_work(named).expect("work").laid_as_said(named, jaw);
            let way = work.bolt_held().map_or(Way::EndOn, Way::of_bolt);
            let trade = jaw.trade(&work, way);
            if trade.is_none_or(|trade| trade.verdict > Verdict::WithAWord) {
                continue;
            }
            for from in bars {
                let bar = parse_bar(from).expect("a bar");
                one(jaw, (named, work), (from, bar), &mut count);
            }
        }
    }
    assert!(count.begun > count.refused, "{jaws:?}: {count:?}");
}

#[test]
fn every_start_by_name_between_faces_is_clean() {
    sweep_named(&[
        JawKind::Flat,
        JawKind::OpenMouth,
        JawKind::BoxJaw,
        JawKind::SquareMouth,
    ]);
}

#[test]
fn every_start_by_name_in_a_groove_is_clean() {
    sweep_named(&[JawKind::VBit, JawKind::HollowBit]);
}

#[test]
fn every_start_by_name_with_a_bow_is_clean() {
    sweep_named(&[JawKind::Bolt]);
}

#[test]
fn every_other_start_by_name_is_clean() {
    sweep_named(&[
        JawKind::GooseNeck,
        JawKind::Duckbill,
        JawKind::PickUp,
        JawKind::Notched,
    ]);
}

/// The pairs that began with something to mend, and a hand that never bends 5/8 in bar.
#[test]
fn usual_pairs_begin_clean_from_usual_bar() {
    for (jaw, work, bar) in [
        (JawKind::Bolt, "5/8 in hexagon on corners", "5/8 in square"),
        (JawKind::Link, "32 mm round", "16 mm square"),
        (JawKind::PickUp, "1/4 in flat", "1/2 in square"),
        (JawKind::GooseNeck, "3/4 in round", "3/4 in square"),
        (JawKind::HammerEye, "1 in flat", "3/4 in square"),
        (JawKind::ChiselHead, "3/4 in flat", "3/4 in square"),
        (JawKind::Flat, "3/8 in flat", "3/8 in square"),
        (JawKind::Flat, "3/8 in flat", "5/8 in square"),
        (JawKind::VBit, "1/2 in round", "1/2 in round"),
    ] {
        let name = format!("{jaw} for {work} from {bar}");
        let (work, bar) = (
            parse_work(work).expect("work"),
            parse_bar(bar).expect("bar"),
        );
        is_clean(&name, &start(jaw, work, bar).expect(&name));
    }
}

#[track_caller]
fn refused(jaw: JawKind, work: &str, bar: &str, says: &str) {
    let (work, bar) = (
        parse_work(work).expect("work"),
        parse_bar(bar).expect("bar"),
    );
    let no = start(jaw, work, bar).expect_err("the bar gives no pair");
    assert_eq!(no.to_string(), says);
}

#[test]
fn a_bar_that_cannot_do_it_names_one_that_does() {
    refused(
        JawKind::Flat,
        "1/4 in flat",
        "1/8 in round",
        "1/8 in round gives no sound pair: bar so slight leaves no wall round a rivet, and a hand \
         bends its reins; 1/2 in round does",
    );
}

/// What scales with the bar: the boss is half of it, rein end and hole grow with it.
#[test]
fn ends_and_holes_grow_with_the_bar() {
    let bars = [
        "10 mm square",
        "16 mm square",
        "20 mm square",
        "25 mm square",
    ];
    let pairs = bars.map(|bar| starting("flat", "6 mm flat", bar));
    for (pair, bar) in pairs.iter().zip([10.0, 16.0, 20.0, 25.0]) {
        assert_eq!(pair.boss.thickness.mm(), bar / 2.0);
        assert!(pair.rivet.hole.mm() * 3.0 <= pair.boss.across.mm() + 0.01);
    }
    let sizes = pairs.map(|pair| (pair.rein.end.depth_mm(), pair.rivet.hole.mm()));
    assert!(sizes.is_sorted(), "{sizes:?}");
}
