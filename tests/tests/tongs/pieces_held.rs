//! Bolts, pipe, rebar and angles in the jaws: what the jaws bear on, room for a head, another part or
//! another size held.

use reinwright_core::asked::{BoltHeld, Datum as _, Head, RoundOf, Work};
use reinwright_core::finding::{Kind, Severity};
use reinwright_core::shop::Answers;
use reinwright_core::tongs::document::Document;
use reinwright_core::tongs::headroom::head_room;
use reinwright_core::tongs::jaw::JawStyle;
use reinwright_core::tongs::resolve;
use reinwright_core::tongs::seat::Bears;
use reinwright_tests::pairs::{mm, starting, work};
use reinwright_tests::{close, within};

/// What the jaws bear on, mm between them and across: a head as a hexagon, 24 2/√3 = 27.713; rebar
/// over its ribs; a leg as far as the other one leaves it free; a back as the square that it fills,
/// 30 √2 = 42.426.
#[test]
fn the_seat_reckons_with_what_bears() {
    for (jaw, text, depth, width) in [
        ("v bit", "M16 by its head on corners", 27.7128, 24.0),
        ("flat", "M16 by its head on flats", 24.0, 27.7128),
        ("bolt", "M16 behind its head", 16.0, 16.0),
        ("v bit", "DN 25", 33.7, 33.7),
        ("v bit", "16 mm rebar", 18.08, 18.08),
        ("flat", "30 x 30 x 3 mm angle by a leg", 3.0, 27.0),
        (
            "v bit",
            "30 x 30 x 3 mm angle by its back",
            42.4264,
            42.4264,
        ),
    ] {
        let model = resolve(&starting(jaw, text, "20 mm square"));
        within(text, model.work.depth, depth, 1e-3);
        within(text, model.work.width, width, 1e-3);
    }
}

/// An angle of 30 x 30 x 3 in right-angled Vs of 28.5 mm: its back fills the one, so that the lips
/// stand (30 − 28.5)/√2 = 1.0607 mm from the middle of the square, and the edges of its legs, 27/√2
/// to 30/√2 mm from the middle, lie along the walls of the other, which reach 28.5/√2.
#[test]
fn an_angle_by_its_back_fills_both_grooves() {
    let pair = starting("v bit", "30 x 30 x 3 mm angle by its back", "20 mm square");
    let JawStyle::VBit(bit) = &pair.jaw.style else {
        panic!("a V bit was asked for");
    };
    close("leg", bit.leg.mm(), 28.5, 1e-12);
    let seat = resolve(&pair).seats[1].clone();
    within("lips", seat.face, 1.0607, 1e-3);
    assert_eq!(seat.bears, Bears::Walls);
    let widest = seat
        .contacts
        .iter()
        .fold(0.0, |most: f64, z| most.max(z.abs()));
    within("walls", widest, 28.5 / 2f64.sqrt(), 0.01);
    // A narrower groove goes in between the legs.
    let mut narrow = pair.clone();
    let JawStyle::VBit(bit) = &mut narrow.jaw.style else {
        panic!("a V bit was asked for");
    };
    bit.leg = mm(26.5);
    assert!(!says(&pair, Kind::WorkBearsBadly));
    assert!(says(&narrow, Kind::WorkBearsBadly));
}

fn says(pair: &Document, kind: Kind) -> bool {
    let found = Answers::to(pair).findings;
    found.iter().any(|finding| finding.kind == kind)
}

/// A bolt's head lies in the bow as near to the bits as its corners go, 24/√3 = 13.856 mm from the
/// middle, and the end of the bolt is its height farther back.
#[test]
fn a_head_goes_into_the_bow() {
    let pair = starting("bolt", "M16 behind its head", "20 mm square");
    let model = resolve(&pair);
    let room = head_room([&model.a, &model.b], 24.0 / 3f64.sqrt());
    assert!(room.free_mm() >= 10.0, "{room:?}");
    close("end", model.work.from, room.to - 10.0, 1e-9);
    let height = |x: f64| {
        use reinwright_core::shape::sweep::Edge;
        let jaw = &model.a.jaw;
        jaw.edge_point(Edge::Inner, jaw.along_at_x(x)).y
    };
    within("where it touches", height(room.to), 13.856, 0.02);
    assert!(height(model.work.from) > 13.856);
    assert!(!says(&pair, Kind::HeadWithoutRoom));
}

#[test]
fn a_head_without_room_is_said() {
    let mut low = starting("bolt", "M16 behind its head", "20 mm square");
    let JawStyle::Bolt(bolt) = &mut low.jaw.style else {
        panic!("a bolt jaw was asked for");
    };
    bolt.bow_height = mm(4.0);
    let mut short = starting("bolt", "M16 behind its head", "20 mm square");
    short.work = work("bolt 24 mm across flats, 60 mm high, 16 mm shank, behind its head");
    let bit = starting("v bit", "M16 behind its head", "20 mm square");
    for (name, pair) in [("low", low), ("short", short), ("no bow", bit)] {
        let found = Answers::to(&pair).findings;
        let said = found.iter().find(|f| f.kind == Kind::HeadWithoutRoom);
        assert_eq!(said.expect(name).severity, Severity::Mend, "{name}");
    }
}

/// Holding a bolt or an angle by another part and back gives the same piece.
#[test]
fn a_piece_is_held_by_another_part() {
    let mut pair = starting("v bit", "5/8 bolt by its head on flats", "3/4 in square");
    let before = pair.work;
    for (way, head) in [(1, Head::Within), (2, Head::InFront)] {
        let field = pair.field("work.held").expect("a bolt is held somehow");
        let ways = field.value.ways();
        assert_eq!(ways, ["by its head", "behind its head", "by its shank"]);
        pair.put(
            "work.held",
            reinwright_core::asked::Value::Choice { ways, chosen: way },
        );
        let Work::Round {
            of: RoundOf::BoltShank { head: found, .. },
            ..
        } = pair.work
        else {
            panic!("{:?}", pair.work);
        };
        assert_eq!(found, head);
    }
    pair.work.hold_bolt(BoltHeld::ByHead);
    assert_eq!(pair.work, before);
    let mut angle = work("40 x 40 x 4 mm angle");
    angle.hold_angle(reinwright_core::asked::AngleHeld::ByBack);
    assert_eq!(angle, work("40 x 40 x 4 mm angle by its back"));
}

/// In another size a published bolt is the bolt of that size; pipe grows in proportion.
#[test]
fn another_size_of_a_piece() {
    let bolt = work("5/8 bolt behind its head");
    let length = |text: &str| text.parse().expect("a size");
    assert_eq!(
        bolt.with_size(length("3/4 in")),
        work("3/4 bolt behind its head")
    );
    assert_eq!(
        work("M16 on corners").with_size(mm(30.0)),
        work("M20 on corners")
    );
    let grown = work("20 x 2 mm pipe").with_size(mm(40.0));
    assert_eq!(grown, work("40 x 4 mm pipe"));
    assert_eq!(bolt.with_size(length("0.7 in")).piece(), Some("bolt"));
}

#[test]
fn a_shape_is_changed_to_a_likely_piece() {
    let mut pair = starting("v bit", "16 mm round", "20 mm square");
    for (chosen, words) in [
        (5, "M16 bolt behind its head"),
        (6, "M16 nut"),
        (7, "24 mm x 2.5 mm pipe"),
        (8, "24 mm rebar, 1.56 mm ribs"),
        (9, "24 mm x 24 mm x 3 mm angle by a leg"),
    ] {
        let ways = pair.field("work.shape").expect("a shape").value.ways();
        pair.put(
            "work.shape",
            reinwright_core::asked::Value::Choice { ways, chosen },
        );
        assert_eq!(pair.work.words(), words);
    }
}

/// Sizes that contradict each other can be typed one by one; then they are a Stop.
#[test]
fn work_that_cannot_be_is_a_stop() {
    for (text, path, size) in [
        ("DN 25", "work.wall", 17.0),
        ("M16", "work.shank", 25.0),
        ("M16 nut", "work.hole", 24.0),
        ("30 x 30 x 3 mm angle", "work.thickness", 40.0),
        ("16 mm rebar", "work.ribs", 9.0),
    ] {
        let mut pair = starting("v bit", text, "20 mm square");
        pair.put(path, mm(size).value());
        let found = Answers::to(&pair).findings;
        let said = found.iter().find(|f| f.kind == Kind::WorkCannotBe);
        assert_eq!(said.expect(text).severity, Severity::Stop, "{text}");
    }
}

/// What is held over little of its length is told with what lies in line: of a nut its hole, since it has no shank
/// (M16: 14.8 mm high, ISO 4032; a head 10 mm high, ISO 4014).
#[test]
fn short_work_is_kept_in_line_by_what_it_has() {
    for (text, held, in_line) in [
        ("M16 nut on corners", "the nut over 14.8 mm", "its hole"),
        (
            "M16 by its head on corners",
            "the head of the bolt over 10 mm",
            "the shank",
        ),
    ] {
        let found = Answers::to(&starting("v bit", text, "20 mm square")).findings;
        let told = found
            .iter()
            .find(|f| f.kind == Kind::GripShort)
            .expect(text);
        assert!(told.message.contains(held), "{}", told.message);
        assert!(told.hint.contains(in_line), "{}", told.hint);
    }
}
