//! Findings of resolving: each rule sees what breaks it, and a sound pair breaks none.

use reinwright_core::asked::{Edge, PlainSection};
use reinwright_core::finding::{Finding, Held, Kind, Part, Severity};
use reinwright_core::proof::check::check;
use reinwright_core::shop::Answers;
use reinwright_core::tongs::document::{Document, HandZone, HeadKind, ReinEnd, ReinLine};
use reinwright_core::tongs::jaw::JawStyle;
use reinwright_core::tongs::resolve;
use reinwright_core::units::Quantity;
use reinwright_tests::pairs::{flat, length, starting, work};

fn found(document: &Document) -> Vec<Finding> {
    Answers::to(document).findings
}

/// A change to a sound flat pair is seen at a part, with a word in the message.
#[track_caller]
fn sees(change: impl FnOnce(&mut Document), severity: Severity, part: Part, word: &str) {
    let mut document = flat();
    let is = |f: &Finding| f.severity == severity && f.part == part && f.message.contains(word);
    let before = found(&document);
    assert!(!before.iter().any(is), "already before: {before:#?}");
    change(&mut document);
    let after = found(&document);
    assert!(after.iter().any(is), "{word}: {after:#?}");
}

use Severity::{Mend, Note, Stop};

/// What is drawn smaller than it was asked for is said.
#[test]
fn asked_for_more_than_there_is_room() {
    sees(
        |d| d.jaw.tip = length("1 in"),
        Note,
        Part::Jaw,
        "tip radius",
    );
    sees(
        |d| {
            if let JawStyle::Flat(flat) = &mut d.jaw.style {
                flat.crease = length("1 in");
            }
        },
        Note,
        Part::Jaw,
        "crease",
    );
    sees(
        |d| d.neck.depth = length("3 in"),
        Mend,
        Part::Neck,
        "more than the boss",
    );
    sees(
        |d| d.shoulder.depth = length("3 in"),
        Mend,
        Part::Shoulder,
        "more than the boss",
    );
    sees(
        |d| d.rein.gap = length("1/4 in"),
        Mend,
        Part::Rein,
        "fingers",
    );
}

#[test]
fn necks_in_a_bar_s_proportion() {
    // The bar is 3/4 in square.
    let deep = |d: &mut Document| d.neck.depth = length("13/16 in");
    sees(deep, Mend, Part::Neck, "more than the bar, 3/4 in");
    let humped = |d: &mut Document| {
        d.neck.depth = length("3/4 in");
        d.work = work("1 in flat");
        d.jaw.heel = length("2 in");
        if let JawStyle::Flat(flat) = &mut d.jaw.style {
            flat.root_depth = length("1/4 in");
        }
    };
    sees(humped, Mend, Part::Neck, "it makes a hump");
    let short = |d: &mut Document| d.rein.length = length("6 in");
    sees(short, Note, Part::Rein, "under 3 times");
}

#[test]
fn boss_and_bar() {
    sees(
        |d| d.boss.thickness = length("1 in"),
        Stop,
        Part::Boss,
        "1 in thick",
    );
    sees(
        |d| d.boss.thickness = length("5/16 in"),
        Mend,
        Part::Boss,
        "half the bar",
    );
    sees(
        |d| d.boss.across = length("2 in"),
        Mend,
        Part::Boss,
        "times the bar",
    );
    sees(
        |d| d.boss.thickness = length("5/8 in"),
        Note,
        Part::Boss,
        "joggle of 1/4 in",
    );
}

#[test]
fn a_boss_of_half_the_bar_needs_no_joggle() {
    let mut document = flat();
    document.boss.thickness = length("3/8 in");
    assert!(
        !found(&document)
            .iter()
            .any(|f| f.message.contains("joggle"))
    );
}

#[test]
fn hole_and_rivet() {
    sees(
        |d| d.rivet.diameter = length("3/8 in"),
        Stop,
        Part::Rivet,
        "hole only",
    );
    sees(
        |d| d.rivet.hole = length("3/8 in"),
        Note,
        Part::Rivet,
        "play",
    );
    sees(
        |d| d.rivet.hole = length("1 1/4 in"),
        Stop,
        Part::Boss,
        "hole is 1 1/4 in",
    );
    // 19/32 in from the centre to the rim: a hole of 7/16 in leaves 3/8 in, less than itself;
    // one of 1/2 in needs 0.6 in by EN 1993-1-8, Table 3.3.
    sees(
        |d| d.rivet.hole = length("7/16 in"),
        Mend,
        Part::Boss,
        "wall around",
    );
    sees(
        |d| d.rivet.hole = length("1/2 in"),
        Mend,
        Part::Boss,
        "1.2 holes",
    );
    let sink = |d: &mut Document| {
        d.rivet.head = HeadKind::Countersunk;
        d.rivet.diameter = length("1/2 in");
    };
    sees(sink, Mend, Part::Rivet, "sinks");
    let large = |d: &mut Document| d.rivet.diameter = length("3/4 in");
    sees(large, Mend, Part::Rivet, "stands over the boss");
}

#[test]
fn jaw_and_work() {
    sees(
        |d| d.jaw.heel = length("1/2 in"),
        Stop,
        Part::Jaw,
        "strike the other boss",
    );
    sees(
        |d| d.jaw.length = length("5/16 in"),
        Note,
        Part::Jaw,
        "grips",
    );
    sees(
        |d| d.work = work("3/8 x 5 in flat"),
        Note,
        Part::Jaw,
        "tips",
    );
}

#[test]
fn grooves() {
    let has = |d: &Document, severity: Severity, word: &str| {
        found(d)
            .iter()
            .any(|f| f.severity == severity && f.message.contains(word))
    };
    let mut v = starting("v bit", "16 mm square on corners", "20 mm round");
    assert!(found(&v).iter().all(|f| f.severity == Note));
    v.work = work("4 mm round");
    assert!(has(&v, Stop, "falls through"), "{:#?}", found(&v));
    v.work = work("60 mm round");
    assert!(has(&v, Stop, "edges of the groove"), "{:#?}", found(&v));
    v.work = work("16 mm square");
    assert!(has(&v, Mend, "lies on its flats"), "{:#?}", found(&v));
    // The sloping sides of an octagon on its flats lie on the legs of a V of 90 degrees.
    v.work = work("16 mm octagon");
    assert!(!has(&v, Mend, "lies on its flats"), "{:#?}", found(&v));
}

#[test]
fn neck_and_shoulder() {
    sees(
        |d| d.neck.fillet = length("1/16 in"),
        Mend,
        Part::Neck,
        "sharp corners crack",
    );
    sees(
        |d| d.shoulder.fillet = length("1/16 in"),
        Mend,
        Part::Shoulder,
        "sharp corners",
    );
    sees(
        |d| d.neck.fillet = length("2 in"),
        Note,
        Part::Neck,
        "room for a corner",
    );
    sees(
        |d| d.neck.depth = length("5/16 in"),
        Mend,
        Part::Neck,
        "most tongs crack",
    );
    sees(
        |d| d.jaw.heel = length("13/16 in"),
        Note,
        Part::Neck,
        "45 degrees",
    );
    let short = |d: &mut Document| d.shoulder.length = length("2 mm");
    sees(short, Stop, Part::Shoulder, "strike the other boss");
}

#[test]
fn rein() {
    sees(
        |d| d.rein.hand = length("16 in"),
        Stop,
        Part::Rein,
        "hand is 16 in",
    );
    sees(
        |d| d.rein.hand = length("12 in"),
        Mend,
        Part::Rein,
        "at the joint",
    );
    sees(
        |d| d.rein.parallel = length("20 in"),
        Stop,
        Part::Rein,
        "parallel end",
    );
    let bend = |bend: &str, gap: &str| {
        let (bend, gap) = (length(bend), length(gap));
        move |d: &mut Document| (d.rein.line, d.rein.gap) = (ReinLine::Parallel { bend }, gap)
    };
    sees(bend("1/4 in", "1 in"), Stop, Part::Rein, "fold");
    sees(bend("1/4 in", "4 in"), Note, Part::Rein, "the bend needs");
    sees(
        bend("12 in", "2 in"),
        Note,
        Part::Rein,
        "the bend has room for",
    );
    sees(bend("3 in", "14 in"), Mend, Part::Rein, "cannot reach it");
    let bow = |d: &mut Document| {
        d.rein.line = ReinLine::Bowed {
            bow: length("10 in"),
        }
    };
    sees(bow, Mend, Part::Rein, "cannot swell");
    let thick = |d: &mut Document| {
        d.rein.end = PlainSection::Round {
            diameter: length("5/8 in"),
        }
    };
    sees(thick, Note, Part::Rein, "deeper at its end");
    let grip = |d: &mut Document| {
        let section = d.rein.end;
        d.rein.hand_zone = Some(HandZone {
            section,
            length: length("8 in"),
        });
    };
    sees(grip, Mend, Part::Rein, "past the rein's end");
    let ball = |d: &mut Document| {
        d.rein.finish = ReinEnd::Ball {
            diameter: length("1 in"),
        }
    };
    sees(ball, Mend, Part::Rein, "times the bar");
    let edge = |d: &mut Document| {
        let (depth, width) = (length("1/2 in"), length("7/16 in"));
        d.rein.start = PlainSection::Rectangle {
            depth,
            width,
            edge: Edge::Chamfer(length("1/4 in")),
        };
    };
    sees(edge, Note, Part::Rein, "more than half");
}

/// A finding that no number decides has none, and all others have theirs.
#[test]
fn what_no_number_decides_has_none() {
    let bent = starting("bent bit", "12 mm round", "16 mm square");
    let held = |kind: Kind, document: &Document| {
        let found = found(document);
        let told = found.iter().find(|finding| finding.kind == kind);
        told.unwrap_or_else(|| panic!("{kind:?}: {found:#?}")).held
    };
    assert_eq!(held(Kind::HalvesDiffer, &bent), None);
    let mut v = starting("v bit", "16 mm square on corners", "20 mm round");
    v.work = work("16 mm square");
    assert_eq!(held(Kind::WorkBearsBadly, &v), None);
    let mut flat = starting("flat", "3/8 in flat", "3/4 in square");
    flat.rein.gap = length("1/4 in");
    let (value, limit, of) = (6.35, 12.0, Quantity::Length);
    assert_eq!(
        held(Kind::FingersPinched, &flat),
        Some(Held { value, limit, of })
    );
}

/// Each thing is told once at a part, whatever else is wrong: a steep step is told beside a boss
/// that is too thick, and not of a rein that strikes the other boss.
#[test]
fn a_steep_step_is_told_unless_the_limb_cannot_be_made() {
    let steps = |document: &Document| {
        let told = |f: &&Finding| f.kind == Kind::LimbStepsSteeply;
        let parts = |f: &Finding| f.part;
        found(document)
            .iter()
            .filter(told)
            .map(parts)
            .collect::<Vec<_>>()
    };
    let mut near = starting("flat", "3/8 in flat", "3/4 in square");
    near.jaw.heel = length("13/16 in");
    near.boss.thickness = length("1 in");
    assert!(steps(&near).contains(&Part::Neck));
    let mut short = starting("flat", "3/8 in flat", "3/4 in square");
    short.shoulder.length = length("2 mm");
    assert!(!steps(&short).contains(&Part::Shoulder));
}

#[test]
fn the_worst_stands_first() {
    let mut document = flat();
    document.boss.thickness = length("1 in");
    document.neck.fillet = length("1/16 in");
    document.rivet.diameter = length("3/8 in");
    let found = found(&document);
    let order: Vec<_> = found
        .iter()
        .map(|f| (std::cmp::Reverse(f.severity), f.part))
        .collect();
    assert!(order.is_sorted(), "{order:?}");
    assert_eq!(found[0].severity, Stop);
}

/// Starting designs of every style and the usual bars: the trade makes them, so nothing above a
/// note is found in how they resolve.
#[test]
fn starting_designs_are_sound() {
    for (jaw, work) in [
        ("flat", "3/8 in flat"),
        ("flat", "1 in flat"),
        ("v bit", "5/8 in square on corners"),
        ("v bit", "3/4 in round"),
        ("hollow bit", "5/8 in round"),
    ] {
        for bar in [
            "5/8 in square",
            "3/4 in square",
            "20 mm round",
            "7/8 in square",
        ] {
            let document = starting(jaw, work, bar);
            let bad = check(&document, &resolve(&document));
            let bad: Vec<_> = bad.iter().filter(|f| f.severity > Note).collect();
            assert!(bad.is_empty(), "{jaw} for {work} from {bar}: {bad:#?}");
        }
    }
}
