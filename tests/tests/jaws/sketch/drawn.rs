//! What is drawn of the nodes: the line through them, volumes against a mesh measured by parry3d (an
//! independent collision library), the corners of a section, and what folds.

use kurbo::Point;
use reinwright_core::finding::Severity;
use reinwright_core::proof::check::check;
use reinwright_core::shape::sweep::{Edge, Path};
use reinwright_core::tongs::jaw::sketch::{Alike, Depth, NodeValue, Ready};
use reinwright_core::tongs::resolve;
use reinwright_core::units::Unit;
use reinwright_tests::mesh::Mesh;
use reinwright_tests::pairs::starting;
use reinwright_tests::{close, within};

use super::{changed, sketched};

#[test]
fn edited_sketches_weigh_what_their_mesh_does() {
    let flat = sketched(&starting("flat", "3/8 in flat", "5/8 in square"));
    let bent = changed(&flat, |sketch| {
        let length = flat.jaw.length.mm();
        let jaw = sketch.with_node_after(0, length).with_node_after(1, length);
        let growth = jaw.growth(flat.jaw.length.mm());
        let as_asked = (growth, Depth::OneSide, Unit::Millimetre);
        jaw.with_value(1, (NodeValue::Y, 4.0), as_asked)
            .with_value(1, (NodeValue::Slope, 15.0), as_asked)
            .with_value(2, (NodeValue::Width, 24.0), as_asked)
            .with_value(2, (NodeValue::Shift, 5.0), as_asked)
            .with_shape(3, Ready::Vee.shape())
    });
    let bolt = sketched(&starting("bolt", "1/2 in round", "5/8 in square"));
    let longer = changed(&bolt, |sketch| {
        let growth = sketch.growth(bolt.jaw.length.mm());
        let last = sketch.nodes.len() - 1;
        sketch.with_value(
            last,
            (NodeValue::X, 90.0),
            (growth, Depth::OneSide, Unit::Millimetre),
        )
    });
    for (name, design) in [
        ("flat", &flat),
        ("bent", &bent),
        ("bolt", &bolt),
        ("longer", &longer),
    ] {
        let model = resolve(design);
        let mut mesh = Mesh::default();
        mesh.add_sweep(&model.a.jaw);
        assert!(mesh.is_closed(), "{name}: the mesh is open");
        close(
            name,
            model.a.jaw.volume_mm3(),
            mesh.measured().volume_mm3,
            1e-3,
        );
    }
    within(
        "the last node went where it was put",
        resolve(&longer).a.tip() - longer.jaw.heel.mm(),
        90.0,
        0.05,
    );
}

#[test]
fn two_arcs_lead_from_pose_to_pose() {
    let poses = [
        (Point::new(0.0, 0.0), 0.3),
        (Point::new(12.0, 5.0), -0.4),
        (Point::new(20.0, 2.0), 0.0),
        (Point::new(31.0, 2.0), 0.0),
    ];
    for pair in poses.windows(2) {
        let runs = Path::through(pair);
        let path = Path::new(pair[0].0, pair[0].1, runs);
        let end = path.at(path.length());
        within("end", end.at.distance(pair[1].0), 0.0, 1e-9);
        within("heading", end.heading, pair[1].1, 1e-9);
    }
    // A straight and a single arc come back as such: 10 mm of a circle of radius 25.
    assert_eq!(Path::through(&poses[2..]).len(), 1);
    let arc = Path::new(
        Point::new(3.0, 1.0),
        0.2,
        vec![reinwright_core::shape::sweep::Run {
            length: 10.0,
            curvature: 0.04,
        }],
    );
    let end = arc.at(10.0);
    let runs = Path::through(&[(Point::new(3.0, 1.0), 0.2), (end.at, end.heading)]);
    assert_eq!(runs.len(), 1);
    within("length", runs[0].length, 10.0, 1e-9);
    within("curvature", runs[0].curvature, 0.04, 1e-9);
}

#[test]
fn a_sketch_that_folds_says_where() {
    let flat = sketched(&starting("flat", "3/8 in flat", "5/8 in square"));
    let folded = changed(&flat, |sketch| {
        let jaw = sketch.with_node_after(0, flat.jaw.length.mm());
        let growth = jaw.growth(flat.jaw.length.mm());
        let as_asked = (growth, Depth::OneSide, Unit::Millimetre);
        jaw.with_value(1, (NodeValue::Y, 30.0), as_asked)
            .with_value(1, (NodeValue::Slope, -80.0), as_asked)
    });
    let model = resolve(&folded);
    let findings = check(&folded, &model);
    let stops: Vec<&str> = findings
        .iter()
        .filter(|f| f.severity == Severity::Stop)
        .map(|f| f.message.as_str())
        .collect();
    assert!(
        stops
            .iter()
            .any(|s| s.contains("folds on itself past node")),
        "{stops:?}"
    );
}

#[test]
fn corners_of_a_shape_move_with_their_likes() {
    let vee = Ready::Vee.shape();
    let bottom = vee
        .corners()
        .into_iter()
        .find(|(_, at)| at.0 == 0.0 && at.1 == 0.0)
        .expect("an apex")
        .0;
    let deeper = vee.moved(bottom, (0.3, 0.4), Alike::Both);
    let places: Vec<(f64, f64)> = deeper.corners().into_iter().map(|(_, at)| at).collect();
    assert!(places.contains(&(0.0, 0.4)), "{places:?}");
    let lip = vee
        .corners()
        .into_iter()
        .find(|(_, at)| *at == (0.7, -1.0))
        .expect("a lip")
        .0;
    let wider = vee.moved(lip, (0.8, -1.0), Alike::Both);
    let places: Vec<(f64, f64)> = wider.corners().into_iter().map(|(_, at)| at).collect();
    assert!(
        places.contains(&(0.8, -1.0)) && places.contains(&(-0.8, -1.0)),
        "{places:?}"
    );
    // A V of half width a (of 1) and depth d (of 2) takes a d / 4 of the box.
    close(
        "area",
        vee.profile().fullness(),
        1.0 - 0.7 * 1.0 / 4.0,
        1e-9,
    );
    close(
        "deeper",
        deeper.profile().fullness(),
        1.0 - 0.7 * 1.4 / 4.0,
        1e-9,
    );
}

#[test]
fn a_bowed_inside_rests_on_the_work_where_it_stands_in_farthest() {
    let flat = sketched(&starting("flat", "3/4 in square", "3/4 in square"));
    let bowed = changed(&flat, |sketch| {
        let jaw = sketch.with_node_after(0, flat.jaw.length.mm());
        let as_asked = (
            jaw.growth(flat.jaw.length.mm()),
            Depth::OneSide,
            Unit::Millimetre,
        );
        jaw.with_value(1, (NodeValue::Y, 4.0), as_asked)
    });
    let model = resolve(&bowed);
    // Heel and tip lie on the line of the faces, so that line lies on the work.
    within("face", model.a.face, 19.05 / 2.0, 1e-6);
    let jaw = &model.a.jaw;
    for i in 0..=200 {
        let y = jaw
            .edge_point(Edge::Inner, jaw.length() * f64::from(i) / 200.0)
            .y;
        assert!(
            y > 19.05 / 2.0 - 1e-6,
            "the inside stands in the work at {i}: {y}"
        );
    }
}

/// Two slopes of one angle that both point away from where the next node lies have no arcs of equal
/// arms between them that end there (the arm d = v·v / (2 v·(t1 + t2)) would be below zero): the
/// line goes nearly twice about instead. It is drawn straight, and a Stop says so.
#[test]
fn a_line_that_swings_out_is_drawn_straight_and_said_so() {
    let flat = sketched(&starting("flat", "3/8 in flat", "3/4 in square"));
    let length = flat.jaw.length.mm();
    let wild = changed(&flat, |sketch| {
        let how = (sketch.growth(length), Depth::OneSide, Unit::Millimetre);
        sketch
            .with_value(1, (NodeValue::Y, -200.0), how)
            .with_value(0, (NodeValue::Slope, 75.0), how)
            .with_value(1, (NodeValue::Slope, 75.0), how)
    });
    let form = wild.jaw.plain_form();
    within("straight", form.course.length(), length, 1e-6);
    let findings = check(&wild, &resolve(&wild));
    let said = findings
        .iter()
        .find(|f| f.message.contains("drawn straight"));
    let said = said.expect("a finding");
    assert_eq!(said.severity, Severity::Stop);
    assert!(said.held.expect("numbers").value > 1000.0, "{said:?}");
}
