//! Work that lies across the jaws: seating, contact and force against plane geometry worked by
//! hand, volumes against closed meshes measured by parry3d (an independent collision library).

use reinwright_core::proof::fit::{Limit, fit, fit_on};
use reinwright_core::proof::strength::{StrengthLoad, strength};
use reinwright_core::shape::sweep::Edge;
use reinwright_core::tongs::document::Document;
use reinwright_core::tongs::jaw::JawStyle;
use reinwright_core::tongs::model::{Lies, Model};
use reinwright_core::tongs::resolve;
use reinwright_core::tongs::seat::{Bears, Seat};
use reinwright_core::units::Angle;
use reinwright_tests::mesh::Mesh;
use reinwright_tests::pairs::{self, mm, starting};
use reinwright_tests::{close, within};

/// A notched jaw whose first notch is a V of 100 degrees for 20 mm round: its depth is
/// 20 (0.5 / sin 50° − 0.25) = 8.0541 mm.
fn notched(work: &str) -> Document {
    let mut pair = starting("notched", "20 mm round", "20 mm square");
    pair.work = pairs::work(work);
    pair
}

const V_DEEP: f64 = 8.0541;

/// A link jaw with a groove 16 mm long at its mouth and 6 mm deep.
fn link(work: &str) -> Document {
    let mut pair = starting("link", "15 mm round", "20 mm square");
    let JawStyle::Link(style) = &mut pair.jaw.style else {
        panic!("a link jaw was asked for");
    };
    (style.mouth, style.groove) = (mm(16.0), mm(6.0));
    style.tip_depth = mm(14.0);
    style.root_depth = mm(16.0);
    pair.work = pairs::work(work);
    pair
}

fn seat(pair: &Document) -> Seat {
    let model = resolve(pair);
    assert_eq!(model.work.lies, Lies::Crosswise, "{}", pair.name);
    model.seats[0].clone()
}

#[track_caller]
fn touches(what: &str, seat: &Seat, beside: f64) {
    let [left, right] = seat.contacts[..] else {
        panic!("{what}: touches at {:?}", seat.contacts);
    };
    within(what, left, -beside, 0.01);
    within(what, right, beside, 0.01);
}

#[test]
fn a_round_across_a_v_notch_stands_half_its_diameter_over_the_sine_from_the_bottom() {
    // (d/2) / sin 50° − 8.0541, touching (d/2) cos 50° from the middle.
    for (work, face, beside) in [
        ("16 mm round", 2.3892, 5.1423),
        ("20 mm round", 5.0, 6.4279),
        ("24 mm round", 7.6108, 7.7135),
    ] {
        let seat = seat(&notched(work));
        within(work, seat.face, face, 1e-3);
        touches(work, &seat, beside);
        assert_eq!(seat.bears, Bears::Walls, "{work}");
    }
}

#[test]
fn a_round_too_large_for_its_notch_rides_on_the_edges() {
    // The mouth is 2 · 8.0541 · tan 50° = 19.197 mm: 36 mm round stands √(18² − 9.5985²) high.
    let seat = seat(&notched("36 mm round"));
    within("36 mm round", seat.face, 15.2271, 2e-3);
    touches("36 mm round", &seat, 9.5985);
    assert_eq!(seat.bears, Bears::Edges);
}

#[test]
fn a_square_lies_on_the_floor_of_a_flat_notch() {
    // For 20 mm work a flat notch is 5 mm deep: faces 10 − 5 = 5 mm from the middle.
    let pair = starting("notched", "20 mm square", "20 mm square");
    let seat = seat(&pair);
    within("20 mm square", seat.face, 5.0, 1e-6);
    touches("20 mm square", &seat, 10.0);
    assert_eq!(seat.bears, Bears::Face);
}

#[test]
fn a_round_across_a_round_groove_bottoms_until_it_is_rounder_than_the_groove() {
    // Half-axes 8 and 6 mm, the bottom of radius 8²/6 = 10.667 mm: half the diameter less 6, as
    // long as √(r² − 8²) at the edges is less, so up to r = 100/12 = 8.333 mm.
    for (work, face) in [
        ("13 mm round", 0.5),
        ("15 mm round", 1.5),
        ("16.6 mm round", 2.3),
    ] {
        let seat = seat(&link(work));
        within(work, seat.face, face, 1e-4);
        assert_eq!(seat.bears, Bears::Bottom, "{work}");
    }
    assert_eq!(seat(&link("16.8 mm round")).bears, Bears::Edges);
    // 24 mm round rides √(12² − 8²) high.
    let seat = seat(&link("24 mm round"));
    within("24 mm round", seat.face, 8.9443, 2e-3);
    touches("24 mm round", &seat, 8.0);
    assert_eq!(seat.bears, Bears::Edges);
}

#[test]
fn small_round_across_a_long_level_face_is_found_between_points() {
    // Level faces: half the diameter, however thin.
    for size in [1.0, 2.0, 3.7, 6.0] {
        let mut pair = starting("scrolling", "6 mm round", "16 mm square");
        pair.work = pairs::work(&format!("{size} mm round"));
        let seat = seat(&pair);
        within("round across level faces", seat.face, size / 2.0, 1e-6);
        assert_eq!(seat.bears, Bears::Face);
    }
}

#[test]
fn flat_across_slim_round_jaws_lies_along_its_whole_width() {
    let pair = starting("scrolling", "6 x 25 mm flat", "16 mm square");
    let seat = seat(&pair);
    within("6 mm flat", seat.face, 3.0, 1e-9);
    touches("6 mm flat", &seat, 12.5);
    assert_eq!(seat.bears, Bears::Face);
}

#[test]
fn a_round_in_a_pick_up_opening_bottoms_and_keeps_the_lips_apart() {
    // The opening is bent 0.42 of its size deep: faces (0.5 − 0.42) d from the middle.
    for (work, face) in [
        ("12 mm round", 0.96),
        ("20 mm round", 1.6),
        ("40 mm round", 3.2),
    ] {
        let seat = seat(&starting("pick-up", work, "20 mm square"));
        within(work, seat.face, face, 1e-4);
        assert_eq!(seat.bears, Bears::Bottom, "{work}");
    }
}

/// The half-angle at which `clear(φ)` becomes nothing, by halving.
fn turned(clear: impl Fn(f64) -> f64) -> f64 {
    let (mut low, mut high) = (-0.5, 0.5);
    for _ in 0..60 {
        let middle = f64::midpoint(low, high);
        if clear(middle) < 0.0 {
            low = middle;
        } else {
            high = middle;
        }
    }
    f64::midpoint(low, high)
}

fn half_angle(pair: &Document, model: &Model, work: &str) -> f64 {
    let work = pairs::work(work);
    let contact = fit_on(pair, model, &work);
    contact.expect("the pair reaches the work").half_angle
}

#[test]
fn larger_and_smaller_round_opens_a_notch_as_far_as_its_walls_ask() {
    let pair = notched("20 mm round");
    let model = resolve(&pair);
    let (x, face, slant) = (model.work.from, model.a.face, 50f64.to_radians());
    for size in [17.0f64, 18.0, 20.0, 22.0, 25.0] {
        // The bottom of the notch at (x, face + deep) turned about the rivet; the work under the
        // turned place on the faces; its distance from each wall is to be its radius.
        let clear = |turn: f64| {
            let (sin, cos) = turn.sin_cos();
            let bottom = (
                x * cos - (face + V_DEEP) * sin,
                x * sin + (face + V_DEEP) * cos,
            );
            let work = (x * cos - face * sin, 0.0);
            let from = (work.0 - bottom.0, work.1 - bottom.1);
            let wall = |side: f64| {
                // A wall leaves the bottom at this angle; the work lies inwards of it.
                let angle = -std::f64::consts::FRAC_PI_2 + side * slant + turn;
                (from.0 * angle.sin() - from.1 * angle.cos()).abs()
            };
            wall(1.0).min(wall(-1.0)) - size / 2.0
        };
        let found = half_angle(&pair, &model, &format!("{size} mm round"));
        let what = format!("{size} mm round");
        within(&what, found, turned(clear), 2e-5);
        // To first order each mm of radius lifts the jaw by 1 / sin 50° at its arm.
        let first = (size - 20.0) / 2.0 / slant.sin() / x;
        within(&what, found, first, 0.2 * first.abs() + 1e-6);
    }
}

#[test]
fn round_across_level_faces_solves_its_equation() {
    // Tangent to the turned face: f cos² φ + x sin φ cos φ = d/2.
    let pair = starting("scrolling", "8 mm round", "16 mm square");
    let model = resolve(&pair);
    let (x, face) = (model.work.from, model.a.face);
    for size in [3.0, 6.0, 8.0, 12.0, 20.0] {
        let turn = half_angle(&pair, &model, &format!("{size} mm round"));
        let (sin, cos) = turn.sin_cos();
        let what = format!("{size} mm round");
        within(&what, face * cos * cos + x * sin * cos, size / 2.0, 1e-4);
    }
}

#[test]
fn wide_flat_across_bears_at_its_own_edge() {
    // A flat of width w touches w/2 before or behind its middle: there the turned face,
    // f / cos φ + X tan φ high, is at half the thickness.
    let pair = starting("scrolling", "8 x 30 mm flat", "16 mm square");
    let model = resolve(&pair);
    let (x, face) = (model.work.from, model.a.face);
    for (size, edge) in [(6.0, 15.0), (10.0, -15.0), (16.0, -15.0)] {
        let clear = |turn: f64| {
            let (sin, cos) = turn.sin_cos();
            let at = x * cos - face * sin + edge;
            face / cos + at * sin / cos - size / 2.0
        };
        let found = half_angle(&pair, &model, &format!("{size} x 30 mm flat"));
        within(&format!("{size} mm flat"), found, turned(clear), 2e-6);
    }
}

#[test]
fn a_range_across_the_jaws_ends_at_the_limit_it_names() {
    for (name, work) in [
        ("scrolling", "8 mm round"),
        ("notched", "20 mm round"),
        ("link", "12 mm round"),
        ("pick-up", "16 mm round"),
    ] {
        let pair = starting(name, work, "20 mm square");
        let model = resolve(&pair);
        let range = fit(&pair, &model).range.expect("the pair has a range");
        assert!(range.holds(pair.work.size().mm()), "{name}: {range:?}");
        for end in [range.least, range.most] {
            let at = half_angle(&pair, &model, &format!("{} mm round", end.size_mm));
            // Friction of 0.15 holds faces up to 8.53 degrees each out of parallel.
            let askew = 0.15f64.atan();
            assert!(at.abs() < askew + 1e-4, "{name}: {at} at {end:?}");
            if end.limit == Limit::SlipsOut {
                within(name, at.abs(), askew, 1e-4);
            }
        }
    }
}

#[test]
fn a_hollow_ends_the_range_where_the_work_begins_to_ride() {
    // In the groove of 8 by 6 mm work rides from 16.667 mm on (seen above); turned as far as that
    // asks the edges meet it a little sooner or later.
    let pair = link("15 mm round");
    let model = resolve(&pair);
    let range = fit(&pair, &model).range.expect("the pair has a range");
    assert_eq!(range.most.limit, Limit::GrooveEdges, "{range:?}");
    within("rides from", range.most.size_mm, 50.0 / 3.0, 0.3);
}

#[test]
fn leverage_counts_to_the_middle_of_work_that_lies_across() {
    let pair = notched("20 mm round");
    let model = resolve(&pair);
    let answer = fit(&pair, &model);
    // Heel 38.5 mm (1.55 · 20 + 0.5 (20 − 10) = 36), then half a mouth behind the first land.
    let land = 4.5;
    let place = pair.jaw.heel.mm() + land + V_DEEP * 50f64.to_radians().tan();
    within("place of the work", model.work.from, place, 2e-3);
    within("grip arm", answer.press.grip_mm, place, 2e-3);
    let forces = strength(&pair, &model, &StrengthLoad::default());
    let squeeze = &forces.squeezes[0];
    close(
        "jaw force",
        squeeze.jaw_n,
        squeeze.hand_n * answer.press.hand_mm / place,
        1e-4,
    );
}

#[test]
fn across_the_jaws_friction_is_all_that_is_counted_on() {
    // Pulled along the tongs no wall is spread: each jaw holds friction times its force.
    for pair in [
        notched("20 mm round"),
        starting("notched", "20 mm square", "20 mm square"),
        starting("scrolling", "8 mm round", "16 mm square"),
    ] {
        let forces = strength(&pair, &resolve(&pair), &StrengthLoad::default());
        assert_eq!(forces.gains, [1.0, 1.0], "{}", pair.name);
        let squeeze = &forces.squeezes[0];
        let held = 2.0 * 0.15 * squeeze.jaw_n;
        close(&pair.name, squeeze.hold_pessimistic_n, held, 1e-9);
    }
}

#[test]
fn new_jaws_have_the_volume_of_their_mesh() {
    let steep = |mut pair: Document| {
        if let JawStyle::OpenMouth(style) = &mut pair.jaw.style {
            style.slope = Angle::degrees(75.0);
        }
        pair
    };
    for pair in [
        starting("open mouth", "1 1/4 in flat", "3/4 in square"),
        steep(starting("open mouth", "40 mm flat", "20 mm square")),
        starting("duckbill", "3 x 50 mm flat", "16 mm square"),
        starting("pick-up", "12 mm round", "16 mm square"),
        starting("pick-up", "40 mm round", "25 mm square"),
        starting("scrolling", "6 mm round", "16 mm square"),
        starting("notched", "20 mm round", "20 mm square"),
        starting("notched", "20 mm square", "20 mm square"),
        starting("link", "12 mm round", "16 mm square"),
    ] {
        let model = resolve(&pair);
        let mut mesh = Mesh::default();
        mesh.add_sweep(&model.a.jaw);
        assert!(mesh.is_closed(), "{}: the mesh is open", pair.name);
        let (jaw, measured) = (&model.a.jaw, mesh.measured());
        close(&pair.name, jaw.volume_mm3(), measured.volume_mm3, 1e-3);
        let (x, y) = jaw.moments();
        let volume = jaw.volume_mm3();
        within(&pair.name, x / volume, measured.centre[0], 0.02);
        within(&pair.name, y / volume, measured.centre[1], 0.02);
    }
}

#[test]
fn a_riser_carries_the_face_out_by_its_height() {
    let pair = starting("open mouth", "40 mm flat", "20 mm square");
    let JawStyle::OpenMouth(style) = &pair.jaw.style else {
        panic!("an open mouth was asked for");
    };
    let model = resolve(&pair);
    let heel = model.a.jaw.edge_point(Edge::Inner, 0.0);
    let tip = model.a.jaw.edge_point(Edge::Inner, model.a.jaw.length());
    within("riser", tip.y - heel.y, style.riser.mm(), 1e-9);
    within("face", tip.y, 20.0, 1e-9);
    within("length", tip.x - heel.x, pair.jaw.length.mm(), 1e-9);
}
