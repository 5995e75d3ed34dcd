//! Pairs of tongs that the checks are made on.

use reinwright_core::asked::{Bar, PlainSection, Work, parse_bar, parse_work};
use reinwright_core::tongs::document::{BossShape, Document, HandZone, ReinEnd, ReinLine};
use reinwright_core::units::{Angle, Length, Unit};

/// So many millimetres.
pub fn mm(size: f64) -> Length {
    Length::from_mm(size, Unit::Millimetre)
}

/// A size by its words.
///
/// # Panics
/// If the words are no size.
#[track_caller]
pub fn length(text: &str) -> Length {
    text.parse().expect("the test names a size")
}

/// Work by its words.
///
/// # Panics
/// If the words name no work.
#[track_caller]
pub fn work(text: &str) -> Work {
    parse_work(text).expect("the test names work")
}

/// A bar by its words.
///
/// # Panics
/// If the words name no bar.
#[track_caller]
pub fn bar(text: &str) -> Bar {
    parse_bar(text).expect("the test names a bar")
}

/// A pair in trade proportions.
///
/// # Panics
/// If the words name no jaw, work or bar.
#[track_caller]
pub fn starting(jaw: &str, work: &str, bar: &str) -> Document {
    let jaw = jaw.parse().expect("the test names a jaw");
    Document::starting(jaw, self::work(work), self::bar(bar))
}

/// A closed flat jaw on thin work.
pub fn flat() -> Document {
    starting("flat", "3/8 in flat", "3/4 in square")
}

/// A flat pair for 3/8 in work whose faces reach from 1 1/4 in to 3 in before the rivet: round
/// numbers for sums by hand.
pub fn by_hand() -> Document {
    let mut pair = flat();
    pair.jaw.heel = length("1 1/4 in");
    pair.jaw.length = length("1 3/4 in");
    pair
}

/// A V bit on square work laid on its corners.
pub fn v_bit() -> Document {
    starting("v bit", "16 mm square on corners", "20 mm round")
}

/// Pairs that between them use every jaw, boss, line, end and grip.
pub fn all() -> Vec<(&'static str, Document)> {
    vec![
        ("flat", flat()),
        (
            "opened flat",
            starting("flat", "1 in flat", "3/4 in square"),
        ),
        (
            "far opened flat",
            starting("flat", "2 in flat", "1 in square"),
        ),
        ("V bit", v_bit()),
        (
            "hollow bit",
            starting("hollow bit", "5/8 in round", "3/4 in square"),
        ),
        ("creased flat", creased()),
        ("oval boss, straight, ball", oval_straight_ball()),
        ("oval boss across", oval_across()),
        ("lozenge boss, bowed, square end", lozenge_bowed()),
        ("light, bowed", light_bowed()),
        ("hand zone", hand_zone()),
        ("half-round rein", half_round()),
        ("clip bend", clip_bend()),
        ("curl", curl()),
        (
            "bolt by its head",
            starting("v bit", "M16 by its head on corners", "20 mm square"),
        ),
        (
            "angle by its back",
            starting("v bit", "1 x 1 x 1/8 in angle by its back", "3/4 in square"),
        ),
        (
            "angle by a leg",
            starting("flat", "30 x 30 x 3 mm angle", "20 mm square"),
        ),
        (
            "pipe across",
            starting("link", "1/2 in pipe", "3/4 in square"),
        ),
    ]
}

fn creased() -> Document {
    let mut pair = flat();
    if let reinwright_core::tongs::jaw::JawStyle::Flat(style) = &mut pair.jaw.style {
        style.crease = mm(3.0);
    }
    pair
}

fn oval_straight_ball() -> Document {
    let mut pair = flat();
    pair.boss.shape = BossShape::Oval;
    pair.rein.line = ReinLine::Straight;
    pair.rein.finish = ReinEnd::Ball { diameter: mm(15.0) };
    pair
}

fn oval_across() -> Document {
    let mut pair = starting("hollow bit", "1 in round", "3/4 in square");
    pair.boss.shape = BossShape::Oval;
    (pair.boss.along, pair.boss.across) = (mm(24.0), mm(34.0));
    pair
}

fn lozenge_bowed() -> Document {
    let mut pair = starting("v bit", "1/2 in round", "3/4 in square");
    pair.boss.shape = BossShape::Lozenge;
    (pair.boss.along, pair.boss.across) = (mm(42.0), mm(32.0));
    pair.jaw.heel = mm(38.0);
    pair.rein.line = ReinLine::Bowed { bow: mm(10.0) };
    pair.rein.finish = ReinEnd::Square;
    pair
}

fn light_bowed() -> Document {
    let mut pair = starting("flat", "1/8 in flat", "1/2 in square");
    pair.rein.line = ReinLine::Bowed { bow: mm(6.0) };
    pair
}

fn hand_zone() -> Document {
    let mut pair = v_bit();
    let section = PlainSection::Oval {
        depth: mm(12.0),
        width: mm(18.0),
    };
    pair.rein.hand_zone = Some(HandZone {
        section,
        length: mm(110.0),
    });
    pair
}

/// A flat pair whose rein ends are bent out for a clip.
pub fn clip_bend() -> Document {
    let mut pair = flat();
    pair.rein.finish = ReinEnd::ClipBend {
        angle: Angle::degrees(40.0),
        length: mm(22.0),
    };
    pair
}

/// A flat pair whose rein ends are rolled.
pub fn curl() -> Document {
    let mut pair = flat();
    pair.rein.finish = ReinEnd::Curl { radius: mm(9.0) };
    pair
}

fn half_round() -> Document {
    let mut pair = flat();
    pair.rein.start = PlainSection::HalfRound {
        depth: mm(12.0),
        width: mm(16.0),
    };
    pair.rein.end = PlainSection::Hexagon { flats: mm(10.0) };
    pair
}
