//! Seating: where jaws come to rest on the work, against the V-block formulas of shop textbooks
//! (measuring a V with a pin; Machinery's Handbook, formulas from memory) and plane geometry.

use reinwright_core::tongs::document::Document;
use reinwright_core::tongs::jaw::JawStyle;
use reinwright_core::tongs::resolve;
use reinwright_core::tongs::seat::{Bears, Seat};
use reinwright_core::units::Angle;
use reinwright_tests::pairs::{self, mm, starting};
use reinwright_tests::{close, within};

/// A V of this leg (inside, mm) and angle on the work.
fn v(leg: f64, degrees: f64, work: &str) -> (Seat, f64) {
    let mut pair = starting("v bit", "16 mm square on corners", "20 mm round");
    pair.work = pairs::work(work);
    let JawStyle::VBit(style) = &mut pair.jaw.style else {
        panic!("a V bit was asked for");
    };
    (style.leg, style.angle) = (mm(leg), Angle::degrees(degrees));
    let apex = leg * (degrees.to_radians() / 2.0).cos();
    (seat(&pair), apex)
}

fn seat(pair: &Document) -> Seat {
    resolve(pair).seats[0].clone()
}

fn hollow(radius: f64, groove: f64, work: &str) -> Seat {
    let mut pair = starting("hollow bit", work, "20 mm round");
    let JawStyle::HollowBit(style) = &mut pair.jaw.style else {
        panic!("a hollow bit was asked for");
    };
    (style.radius, style.groove) = (mm(radius), mm(groove));
    seat(&pair)
}

/// Checks where the work touches: two places, this far from the middle.
#[track_caller]
fn touches(what: &str, seat: &Seat, half_width: f64) {
    let [left, right] = seat.contacts[..] else {
        panic!("{what}: touches at {:?}", seat.contacts);
    };
    within(what, left, -half_width, 2e-3);
    within(what, right, half_width, 2e-3);
}

#[test]
fn a_round_in_a_v_stands_half_its_diameter_over_the_sine_from_the_apex() {
    // 19 mm round: centre above the apex (d/2)/sin α, contacts (d/2) cos α from the middle.
    for (degrees, centre, half_width) in [
        (60.0, 19.0, 8.2272),
        (90.0, 13.4350, 6.7175),
        (120.0, 10.9697, 4.75),
    ] {
        let what = format!("19 mm round in {degrees} degrees");
        let (seat, apex) = v(22.0, degrees, "19 mm round");
        within(&what, seat.face + apex, centre, 1e-4);
        touches(&what, &seat, half_width);
        assert_eq!(seat.bears, Bears::Walls, "{what}");
    }
}

#[test]
fn the_contact_lies_along_the_wall_as_far_as_the_formula_says() {
    // (d/2)/tan α from the apex: 16.4545, 9.5 and 5.4848 mm for 19 mm round.
    for (degrees, along) in [(60.0f64, 16.4545), (90.0, 9.5), (120.0, 5.4848)] {
        let (seat, _) = v(22.0, degrees, "19 mm round");
        let across = seat.contacts[seat.contacts.len() - 1];
        within(
            "along the wall",
            across / (degrees.to_radians() / 2.0).sin(),
            along,
            3e-3,
        );
    }
}

#[test]
fn measuring_a_v_with_a_pin() {
    // Land to the top of the pin: M = p/2 + (p/2)/sin α − H, V 20 mm wide, pin 12 mm.
    for (degrees, high, over) in [
        (60.0f64, 17.3205, 0.6795),
        (90.0, 10.0, 4.4853),
        (120.0, 5.7735, 7.1547),
    ] {
        let half = degrees.to_radians() / 2.0;
        let (seat, apex) = v(10.0 / half.sin(), degrees, "12 mm round");
        within("depth of the V", apex, high, 1e-3);
        // The lips stand `face` over the pin's middle, so its far side is p/2 + face past them.
        within("over the land", 6.0 + seat.face, over, 1e-3);
    }
}

#[test]
fn a_square_on_its_corners_fills_a_right_angle() {
    // Centre a/√2 from the apex, the whole of both walls touching.
    let (seat, apex) = v(14.0, 90.0, "16 mm square on corners");
    within("centre", seat.face + apex, 11.3137, 1e-4);
    assert_eq!(seat.bears, Bears::Walls);
    assert!(
        seat.contacts.len() > 2,
        "the walls touch at {:?} only",
        seat.contacts
    );
}

#[test]
fn a_square_on_its_corners_rides_on_its_side_corners_in_a_sharper_v() {
    // θ < 90°: centre (a/√2)/tan α; a 16, 60°: 19.596, touching a/√2 from the middle.
    let (seat, apex) = v(30.0, 60.0, "16 mm square on corners");
    within("centre", seat.face + apex, 19.596, 1e-3);
    touches("side corners", &seat, 11.3137);
    assert_eq!(seat.bears, Bears::Walls);
}

#[test]
fn a_square_on_its_corner_stands_on_the_apex_of_a_blunter_v() {
    // θ > 90°: the corner reaches the apex and rocks; centre a/√2.
    let (seat, apex) = v(22.0, 120.0, "16 mm square on corners");
    within("centre", seat.face + apex, 11.3137, 1e-4);
    assert_eq!(seat.bears, Bears::Bottom);
}

#[test]
fn a_square_on_its_flats_rides_on_its_edges_in_a_v() {
    // Centre (a/2)/tan α + a/2: 21.856 at 60°, 16.000 at 90°, a 16.
    for (degrees, centre) in [(60.0, 21.856), (90.0, 16.0)] {
        let (seat, apex) = v(22.0, degrees, "16 mm square");
        within("centre", seat.face + apex, centre, 1e-3);
        touches("edges", &seat, 8.0);
        assert_eq!(seat.bears, Bears::Walls);
    }
}

#[test]
fn a_hexagon_fills_120_degrees_and_an_octagon_135() {
    // Half the size across corners from the apex: 19 across flats gives 21.939 and 20.565.
    for (degrees, work, across_corners) in [
        (120.0, "19 mm hexagon on corners", 21.939),
        (135.0, "19 mm octagon on corners", 20.565),
    ] {
        let (seat, apex) = v(9.0, degrees, work);
        within(work, seat.face + apex, across_corners / 2.0, 1e-3);
        assert_eq!(seat.bears, Bears::Walls, "{work}");
        assert!(
            seat.contacts.len() > 2,
            "{work} touches at {:?} only",
            seat.contacts
        );
    }
}

#[test]
fn work_too_large_for_a_v_rides_on_its_lips() {
    // Lips l from the middle: centre sqrt(r² − l²) past them, here 12 mm round on lips 5 mm out
    // with 60° walls that the round would touch 5.196 mm out.
    let half = 30f64.to_radians();
    let (seat, _) = v(5.0 / half.sin(), 60.0, "12 mm round");
    within(
        "centre past the lips",
        seat.face,
        (36.0f64 - 25.0).sqrt(),
        1e-3,
    );
    touches("lips", &seat, 5.0);
    assert_eq!(seat.bears, Bears::Edges);
}

#[test]
fn a_round_smaller_than_the_hollow_lies_on_its_bottom() {
    let seat = hollow(10.0, 8.0, "16 mm round");
    within("centre to lips", seat.face, 0.0, 1e-4);
    assert_eq!(seat.bears, Bears::Bottom);
}

#[test]
fn a_round_of_the_hollows_own_radius_touches_all_round() {
    let seat = hollow(8.0, 6.0, "16 mm round");
    within("centre to lips", seat.face, 2.0, 1e-4);
    assert!(
        matches!(seat.bears, Bears::Walls | Bears::Bottom),
        "{:?} at {:?}",
        seat.bears,
        seat.contacts
    );
}

#[test]
fn a_round_larger_than_the_hollow_rides_on_its_lips() {
    // Groove radius 6, 4 deep: lips sqrt(36 − 4) out, so the middle of 16 mm round stands
    // sqrt(64 − 32) past them.
    let seat = hollow(6.0, 4.0, "16 mm round");
    within("centre to lips", seat.face, 32f64.sqrt(), 1e-3);
    touches("lips", &seat, 32f64.sqrt());
    assert_eq!(seat.bears, Bears::Edges);
}

#[test]
fn flat_faces_stand_the_thickness_apart() {
    for (work, gap) in [
        ("3/8 in flat", 9.525),
        ("1 in flat", 25.4),
        ("16 mm square", 16.0),
        ("19 mm hexagon", 19.0),
        ("19 mm octagon", 19.0),
        ("12 mm round", 12.0),
        ("16 mm square on corners", 22.6274),
        ("19 mm hexagon on corners", 21.9393),
        ("19 mm octagon on corners", 20.5655),
    ] {
        let model = resolve(&starting("flat", work, "3/4 in square"));
        close(work, model.jaw_gap, gap, 1e-5);
        assert_eq!(model.seats[0].bears, Bears::Face, "{work}");
    }
}

#[test]
fn a_crease_lets_a_round_in_until_it_rides_on_the_creases_edges() {
    // A half-round crease of radius c: the middle stands sqrt(r² − c²) over the face.
    let mut pair = starting("flat", "12 mm round", "3/4 in square");
    let JawStyle::Flat(style) = &mut pair.jaw.style else {
        panic!("a flat jaw was asked for");
    };
    style.crease = mm(3.0);
    // The crease is drawn at the tip's size and grows with the jaw towards the heel.
    let model = resolve(&pair);
    let jaw = &model.a.jaw;
    let middle = jaw.section(jaw.length() / 2.0);
    let grown = 3.0 * middle.width / style_tip(&pair);
    within(
        "centre to face",
        model.seats[0].face,
        (36.0 - grown * grown).sqrt(),
        1e-3,
    );
    assert_eq!(model.seats[0].bears, Bears::Edges);
}

fn style_tip(pair: &Document) -> f64 {
    match &pair.jaw.style {
        JawStyle::Flat(style) => style.tip_width.mm(),
        other => panic!("not flat: {other:?}"),
    }
}

#[test]
fn two_jaws_that_differ_each_find_their_own_seat() {
    let mut pair = starting("v bit", "19 mm round", "20 mm round");
    let flat = starting("flat", "19 mm round", "20 mm round").jaw;
    pair.second_jaw = Some(flat);
    let model = resolve(&pair);
    assert_eq!(model.seats[0].bears, Bears::Walls);
    assert_eq!(model.seats[1].bears, Bears::Face);
    within("flat side", model.seats[1].face, 9.5, 1e-6);
    close("gap", model.jaw_gap, model.seats[0].face + 9.5, 1e-9);
}
