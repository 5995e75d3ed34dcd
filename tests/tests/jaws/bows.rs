//! Jaws with lips, bows, stops, lugs and bent bits: seating against hand arithmetic, volume
//! against a closed mesh measured by parry3d, outlines judged by geo, what they say of themselves.

use geo::Validation;
use reinwright_core::asked::Units;
use reinwright_core::finding::{Kind, Severity};
use reinwright_core::proof::check::check as noticed;
use reinwright_core::proof::fit;
use reinwright_core::shape::sweep::Edge;
use reinwright_core::tongs::document::{Document, read, write};
use reinwright_core::tongs::jaw::{BitShape, Jaw, JawStyle};
use reinwright_core::tongs::model::{Half, Lies, Model};
use reinwright_core::tongs::resolve;
use reinwright_core::tongs::seat::Bears;
use reinwright_core::units::Length;
use reinwright_tests::mesh::Mesh;
use reinwright_tests::outline::polygon;
use reinwright_tests::pairs::{mm, starting};
use reinwright_tests::{close, within};

/// Each style with the words of work that it is for.
const STYLES: [(&str, &[&str]); 7] = [
    ("bolt", &["round", "square", "hexagon on corners"]),
    ("box", &["flat"]),
    ("square mouth", &["square"]),
    ("goose neck", &["round", "square", "square on corners"]),
    ("hammer eye", &["square", "flat"]),
    ("chisel head", &["square"]),
    ("bent bit", &["round", "flat"]),
];

const SIZES: [f64; 6] = [6.0, 9.0, 13.0, 20.0, 30.0, 40.0];
const BARS: [f64; 3] = [10.0, 16.0, 25.0];

/// Every style on every work that it is for, at these sizes and from these bars.
fn pairs(sizes: &[f64], bars: &[f64]) -> Vec<(String, Document)> {
    let mut all = Vec::new();
    for (style, shapes) in STYLES {
        for (shape, size) in shapes
            .iter()
            .flat_map(|w| sizes.iter().map(move |s| (w, s)))
        {
            for bar in bars {
                let (work, bar) = (format!("{size} mm {shape}"), format!("{bar} mm square"));
                let name = format!("{style} on {work} from {bar}");
                all.push((name, starting(style, &work, &bar)));
            }
        }
    }
    all
}

/// From a bar that suits the work.
fn suited(size: f64) -> &'static [f64] {
    match size {
        ..9.0 => &[13.0],
        ..21.0 => &[16.0],
        _ => &[25.0],
    }
}

fn each_suited() -> Vec<(String, Document)> {
    let pairs = SIZES.iter().flat_map(|size| pairs(&[*size], suited(*size)));
    pairs.collect()
}

/// The halves that are different pieces.
fn pieces(model: &Model) -> Vec<&Half> {
    let mirrored = model.work.lies == Lies::Alongside;
    let other = mirrored.then_some(&model.b);
    [Some(&model.a), other].into_iter().flatten().collect()
}

#[test]
fn no_outline_crosses_itself_at_any_work_and_bar() {
    for (name, pair) in pairs(&SIZES, &BARS) {
        let model = resolve(&pair);
        for half in pieces(&model) {
            let errors = polygon(&half.jaw_outline()).validation_errors();
            assert!(errors.is_empty(), "{name}: {errors:?}");
            if let Some((spare, at)) = half.jaw.tightest_bend() {
                assert!(spare > 0.0, "{name}: folds by {} at {at}", -spare);
            }
        }
    }
}

#[test]
fn the_trade_would_make_them_at_every_size() {
    for (name, pair) in each_suited() {
        let model = resolve(&pair);
        let stops: Vec<String> = noticed(&pair, &model)
            .iter()
            .filter(|finding| finding.severity == Severity::Stop)
            .map(ToString::to_string)
            .collect();
        assert!(stops.is_empty(), "{name}: {stops:?}");
        let remarks = pair.jaw.remarks(&pair.work);
        assert!(remarks.is_empty(), "{name}: {remarks:?}");
        let outline = polygon(&model.a.outline()).validation_errors();
        assert!(outline.is_empty(), "{name}: {outline:?}");
    }
}

#[test]
fn volume_is_that_of_a_mesh_measured_by_parry3d() {
    for (name, pair) in pairs(&[6.0, 16.0, 40.0], &[16.0]) {
        let model = resolve(&pair);
        for half in pieces(&model) {
            let mut jaw = Mesh::default();
            jaw.add_sweep(&half.jaw);
            assert!(jaw.is_closed(), "{name}");
            let measured = jaw.measured().volume_mm3;
            close(&name, half.jaw.volume_mm3(), measured, 1e-3);
        }
    }
    for (name, pair) in pairs(&[16.0], &[16.0]) {
        let model = resolve(&pair);
        let (half, mass) = (Mesh::half(&model.a).measured(), model.a.mass());
        close(&name, mass.volume, half.volume_mm3, 1e-3);
        within(&name, mass.x / mass.volume, half.centre[0], 0.1);
        within(&name, mass.y / mass.volume, half.centre[1], 0.02);
    }
}

#[test]
fn each_holds_its_nominal_work() {
    for (name, pair) in each_suited() {
        let fit = fit::fit(&pair, &resolve(&pair));
        let size = pair.work.size().mm();
        let range = fit.range.unwrap_or_else(|no| panic!("{name}: {no}"));
        assert!(range.holds(size), "{name}: holds {range:?}");
    }
}

#[test]
fn each_comes_back_from_its_file() {
    for (name, pair) in pairs(&[13.0], &[16.0]) {
        let back = read(write(&pair).as_bytes()).expect("reads back");
        assert_eq!(back, pair, "{name}");
    }
}

/// The box of a pair.
fn boxed(pair: &mut Document) -> &mut reinwright_core::tongs::jaw::BoxJaw {
    match &mut pair.jaw.style {
        JawStyle::BoxJaw(style) => style,
        other => panic!("not a box: {other:?}"),
    }
}

#[test]
fn flat_bar_lies_on_the_floor_of_a_box() {
    let mut pair = starting("box", "10 x 30 mm flat", "16 mm square");
    let style = boxed(&mut pair);
    (style.lip, style.inside) = (mm(4.0), mm(31.0));
    let model = resolve(&pair);
    // Floors 10 apart, lips of 4 on each: 2 between them.
    within("lips", model.jaw_gap, 2.0, 1e-6);
    assert_eq!(model.seats[0].bears, Bears::Face);
    let widest = model.seats[0].contacts.last().copied().unwrap_or_default();
    within("bears to the edge of the work", widest, 15.0, 1e-3);
    let floor = |model: &Model| {
        let (jaw, s) = (&model.a.jaw, model.a.jaw.length() - 5.0);
        jaw.middle(s).y + jaw.section(s).lower(0.0)
    };
    within("floor", floor(&model), 5.0, 1e-6);
}

#[test]
fn bar_wider_than_a_box_rides_on_its_lips() {
    let mut pair = starting("box", "10 x 30 mm flat", "16 mm square");
    (boxed(&mut pair).inside, boxed(&mut pair).lip) = (mm(29.0), mm(4.0));
    let model = resolve(&pair);
    within("lips", model.jaw_gap, 10.0, 1e-6);
    assert_eq!(model.seats[0].bears, Bears::Edges);
}

#[test]
fn a_box_with_long_lips_shuts_against_a_plain_jaw() {
    let mut pair = starting("box", "10 x 30 mm flat", "16 mm square");
    (boxed(&mut pair).lip, boxed(&mut pair).inside) = (mm(7.0), mm(31.0));
    pair.second_jaw = Some(starting("flat", "10 x 30 mm flat", "16 mm square").jaw);
    let model = resolve(&pair);
    // The lips pass the middle of the work by 2 and stop 3 short of the plain face.
    within("lips over the middle", model.seats[0].face, -2.0, 1e-6);
    within("plain face", model.seats[1].face, 5.0, 1e-6);
    within("gap", model.jaw_gap, 3.0, 1e-6);
    assert_eq!(model.seats.clone().map(|s| s.bears), [Bears::Face; 2]);
    let stops = |pair: &Document, m: &Model| {
        let found = noticed(pair, m);
        found.iter().any(|f| f.severity == Severity::Stop)
    };
    assert!(!stops(&pair, &model), "{:?}", noticed(&pair, &model));
    assert!(fit::fit(&pair, &model).nominal.is_ok());
    // The same lips on both jaws meet.
    pair.second_jaw = None;
    assert!(stops(&pair, &resolve(&pair)));
}

#[test]
fn square_bar_lies_on_its_flats_in_a_square_mouth() {
    let mut pair = starting("square mouth", "20 mm square", "16 mm square");
    let JawStyle::SquareMouth(style) = &mut pair.jaw.style else {
        panic!("a square mouth was asked for");
    };
    (style.trough, style.inside) = (mm(8.0), mm(21.0));
    let model = resolve(&pair);
    // Half the side less the depth of the trough.
    within("lips", model.seats[0].face, 2.0, 1e-6);
    assert_eq!(model.seats[0].bears, Bears::Face);
}

#[test]
fn a_v_behind_a_bow_seats_as_a_plain_v() {
    for work in [
        "12 mm round",
        "16 mm square on corners",
        "19 mm hexagon on corners",
    ] {
        let [bolt, plain] =
            ["bolt", "v bit"].map(|jaw| resolve(&starting(jaw, work, "16 mm square")));
        within(work, bolt.seats[0].face, plain.seats[0].face, 1e-6);
        assert_eq!(bolt.seats[0].bears, plain.seats[0].bears, "{work}");
        // The line of the lips of the bit lies where the seat says.
        let jaw = &bolt.a.jaw;
        within(
            work,
            jaw.edge_point(Edge::Inner, jaw.length()).y,
            plain.seats[0].face,
            1e-6,
        );
    }
}

#[test]
fn a_bolt_may_have_a_hollow_bit() {
    let mut pair = starting("bolt", "16 mm round", "16 mm square");
    let JawStyle::Bolt(style) = &mut pair.jaw.style else {
        panic!("a bolt jaw was asked for");
    };
    style.bit = BitShape::Hollow {
        radius: mm(8.0),
        groove: mm(6.0),
        wall: mm(4.0),
    };
    // A round of the hollow's own radius: the lips stand 8 − 6 from its middle.
    within("lips", resolve(&pair).seats[0].face, 2.0, 1e-4);
}

#[test]
fn the_end_of_the_bar_butts_square_against_the_stop_of_a_goose_neck() {
    for work in ["12 mm round", "16 mm square", "20 mm hexagon on corners"] {
        let pair = starting("goose neck", work, "16 mm square");
        let JawStyle::GooseNeck(style) = &pair.jaw.style else {
            panic!("a goose neck was asked for");
        };
        let model = resolve(&pair);
        let (jaw, stop) = (&model.a.jaw, style.stop.mm());
        within(work, model.work.from, model.a.heel() + stop, 1e-9);
        let low = jaw.edge_point(Edge::Inner, stop);
        let high = jaw.edge_point(Edge::Inner, stop + 0.1);
        let reach = model.seats[0].face - style.stop_reach.mm();
        within(work, low.y, reach, 1e-9);
        // About 1 mm off the middle, or the line of the lips if that is nearer; past the back of
        // the bar on the outside.
        within(work, low.y, model.seats[0].face.min(1.0), 0.3);
        assert!(high.y > model.work.depth / 2.0, "{work}: {high:?}");
        assert!((high.x - low.x).abs() < 0.11, "{work}: {low:?} to {high:?}");
    }
}

#[test]
fn lugs_enter_the_eye_and_the_faces_bear() {
    for (style, name) in [("hammer eye", "hammer"), ("chisel head", "chisel")] {
        let pair = starting(style, "25 mm square", "16 mm square");
        let (JawStyle::HammerEye(reinwright_core::tongs::jaw::HammerEye(lugged))
        | JawStyle::ChiselHead(reinwright_core::tongs::jaw::ChiselHead(lugged))) = &pair.jaw.style
        else {
            panic!("{name} tongs were asked for");
        };
        let model = resolve(&pair);
        let jaw = &model.a.jaw;
        within(name, model.jaw_gap, 25.0, 1e-6);
        assert_eq!(model.seats[0].bears, Bears::Face);
        let lug = jaw.edge_point(Edge::Inner, jaw.length() - 1.0);
        within(name, 12.5 - lug.y, lugged.lug.mm(), 1e-9);
        within(
            name,
            jaw.length() - model.a.grip.1,
            lugged.lug_along.mm(),
            1e-9,
        );
        let face = jaw.edge_point(Edge::Inner, model.a.grip.1);
        within(name, face.y, 12.5, 1e-9);
        let contact = fit::fit(&pair, &model).nominal.expect("it holds");
        within(name, contact.half_angle, 0.0, 1e-6);
    }
}

#[test]
fn bent_bits_meet_and_the_bar_passes_rivet_and_boss() {
    let pair = starting("bent bit", "12 mm round", "16 mm square");
    let model = resolve(&pair);
    let [a, b] = [&model.a, &model.b].map(|half| half.jaw.shift(half.jaw.length()));
    // Turned half round about the tongs' axis the second one comes to the first.
    within("second half", b, -a, 1e-12);
    within("the bar", model.work.beside, a, 1e-12);
    assert_eq!(model.work.lies, Lies::Alongside);
    let past = pair.boss.thickness.mm() + pair.rivet.head_height_mm();
    assert!(a - 6.0 > past, "{a} against {past}");
    let said = |pair: &Document, what: &str| {
        noticed(pair, &resolve(pair))
            .iter()
            .any(|f| f.message.contains(what))
    };
    assert!(said(&pair, "no longer the same piece"));
    assert!(!said(&pair, "does not pass"));
    let mut near = pair;
    if let JawStyle::BentBit(style) = &mut near.jaw.style {
        style.aside = mm(12.0);
    }
    assert!(said(&near, "does not pass"));
}

/// What a jaw says of itself on its work when it is changed.
fn says(style: &str, work: &str, change: impl FnOnce(&mut JawStyle)) -> Vec<String> {
    let mut pair = starting(style, work, "16 mm square");
    change(&mut pair.jaw.style);
    let remarks = pair.jaw.remarks(&pair.work).into_iter();
    remarks
        .map(|remark| remark.text(Units::Millimetre.show()))
        .collect()
}

#[track_caller]
fn one(said: &[String], what: &str) {
    assert!(said.len() == 1 && said[0].contains(what), "{said:?}");
}

#[test]
fn jaws_say_what_will_disappoint() {
    let lips = |lip: f64, inside: f64, thick: f64| {
        says("box", "10 x 30 mm flat", |style| {
            if let JawStyle::BoxJaw(style) = style {
                (style.lip, style.inside) = (mm(lip), mm(inside));
                style.lip_thickness = mm(thick);
            }
        })
    };
    assert!(lips(4.0, 31.0, 5.0).is_empty());
    one(&lips(2.0, 31.0, 5.0), "climb over");
    one(&lips(4.0, 34.0, 5.0), "can turn");
    one(&lips(4.0, 31.0, 2.0), "spread when hot");
    let goose = |height: f64, reach: f64| {
        says("goose neck", "20 mm square", |style| {
            if let JawStyle::GooseNeck(style) = style {
                (style.throat_height, style.stop_reach) = (mm(height), mm(reach));
            }
        })
    };
    assert!(goose(12.0, 9.0).is_empty());
    one(&goose(12.0, 3.0), "wedge the jaws open");
    let lug = |long: f64, bow: f64, work: &str| {
        says("hammer eye", work, |style| {
            if let JawStyle::HammerEye(style) = style {
                (style.0.lug, style.0.bow_height) = (mm(long), mm(bow));
            }
        })
    };
    assert!(lug(9.0, 4.0, "25 mm square").is_empty());
    one(
        &lug(13.0, 4.0, "25 mm square"),
        "over half the depth of the eye",
    );
    one(&lug(9.0, 2.0, "25 mm square"), "does not clear the head");
    one(&lug(9.0, 4.0, "25 mm round"), "no flat");
}

#[test]
fn a_throat_that_the_bar_fills_keeps_its_end_off_the_stop() {
    // A V of leg 6 on 20 mm round: its lips stand (100 − 18)^½ = 9.055 off the middle, so a
    // start of 0.6 × 0.5 over them stays within the bar's 10.
    let said = says("goose neck", "20 mm round", |style| {
        if let JawStyle::GooseNeck(style) = style {
            if let BitShape::V { leg, .. } = &mut style.bit {
                *leg = mm(6.0);
            }
            (style.throat_height, style.stop_reach) = (mm(0.5), mm(8.0));
        }
    });
    one(&said, "does not reach the stop");
    assert!(said[0].contains("9.4 mm from the middle"), "{said:?}");
}

#[test]
fn low_bows_and_steep_steps_are_told() {
    let bolt = says("bolt", "12 mm round", |style| {
        if let JawStyle::Bolt(style) = style {
            style.bow_height = mm(5.0);
        }
    });
    one(&bolt, "between its bows");
    let bent = says("bent bit", "12 mm round", |style| {
        if let JawStyle::BentBit(style) = style {
            style.blend = mm(10.0);
        }
    });
    one(&bent, "thin where it is steep");
    let trough = says("square mouth", "20 mm square", |style| {
        if let JawStyle::SquareMouth(style) = style {
            style.trough = mm(4.0);
        }
    });
    one(&trough, "roll out");
}

#[test]
fn lugs_that_pass_each_other_are_told() {
    let mut pair = starting("hammer eye", "25 mm square", "16 mm square");
    if let JawStyle::HammerEye(style) = &mut pair.jaw.style {
        style.0.lug = mm(14.0);
    }
    let model = resolve(&pair);
    let findings = noticed(&pair, &model);
    let told = findings
        .iter()
        .find(|f| f.message.contains("pass through each other"));
    let told = told.expect("lugs of 14 in 25 pass each other");
    within("by", told.held.expect("a gap").value, -3.0, 1e-6);
}

/// A sketch may be bent until it folds: the crossing is found where geo finds it.
#[test]
fn an_outline_that_crosses_itself_is_told_with_its_place() {
    let pair = starting("bolt", "12 mm round", "20 mm square");
    let jaw: Jaw = pair.jaw.sketched(pair.work.size());
    let mut folded = Document { jaw, ..pair };
    let told = |pair: &Document| {
        let model = resolve(pair);
        let errors = polygon(&model.a.jaw_outline()).validation_errors();
        let findings = noticed(pair, &model);
        let told = findings
            .iter()
            .find(|f| f.kind == Kind::JawOutlineCrosses)
            .map(|f| f.message.clone());
        (errors.is_empty(), told)
    };
    assert_eq!(told(&folded), (true, None));
    let JawStyle::Sketch(sketch) = &mut folded.jaw.style else {
        panic!("a sketch was made");
    };
    let steels = sketch
        .nodes
        .iter_mut()
        .filter_map(|node| node.steel.as_mut());
    for steel in steels {
        steel.back = format!("{} mm", steel.back.mm() + 25.0)
            .parse()
            .expect("an offset");
    }
    let bit = sketch.nodes[sketch.grip.0].x.mm() + folded.jaw.heel.mm();
    let (simple, message) = told(&folded);
    assert!(!simple, "geo finds nothing wrong");
    // It folds where the bow turns out to the bit.
    let message = message.expect("it is told");
    let place = message
        .strip_prefix("the outline of the jaw crosses itself ")
        .and_then(|rest| rest.strip_suffix(" from the rivet"));
    let place: Length = place.expect("its place is told").parse().expect("a size");
    within("place", place.mm(), bit, 25.0);
}
