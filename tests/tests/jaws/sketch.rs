//! Sketched jaws: the same shape as the style that they were turned from, volumes against a mesh
//! measured by parry3d (an independent collision library), growth by the square-cube law, and
//! edits of every kind, which must never give a number that is not finite.

use kurbo::{Point, Vec2};
use proptest::prelude::*;
use reinwright_core::draw::handle::{Hold, Moving};
use reinwright_core::draw::{DrawOptions, pair};
use reinwright_core::finding::{Held, Severity};
use reinwright_core::proof::check::check;
use reinwright_core::proof::fit::fit;
use reinwright_core::shape::sweep::{Edge, Path};
use reinwright_core::shop::Answers;
use reinwright_core::shop::balance_of;
use reinwright_core::tongs::document::{self, Document};
use reinwright_core::tongs::jaw::sketch::{
    Alike, Depth, KeptJaw, NodeValue, Ready, SketchLay, SketchShape, is_kept_jaw,
};
use reinwright_core::tongs::jaw::{Jaw, JawKind, JawStyle, Sketch};
use reinwright_core::tongs::model::{Half, Model};
use reinwright_core::tongs::resolve;
use reinwright_core::units::{Length, Unit};
use reinwright_tests::mesh::Mesh;
use reinwright_tests::pairs::starting;
use reinwright_tests::{close, within};

fn sketched(document: &Document) -> Document {
    Document {
        jaw: document.jaw.sketched(document.work.size()),
        ..document.clone()
    }
}

/// The design with its sketch changed.
fn changed(document: &Document, change: impl FnOnce(&Sketch) -> Sketch) -> Document {
    let sketch = document.jaw.sketch().expect("a sketch");
    Document {
        jaw: document.jaw.with_sketch(change(sketch)),
        ..document.clone()
    }
}

/// Every style on works that it may be asked for.
fn styles() -> Vec<(String, Document)> {
    let works = [
        "1/4 in round",
        "12 mm square",
        "1 in round",
        "10 x 30 mm flat",
        "5/8 in hexagon on corners",
    ];
    let bars = ["5/8 in square", "20 mm round"];
    let mut all = Vec::new();
    for jaw in JawKind::ALL.iter().filter(|kind| **kind != JawKind::Sketch) {
        for work in works {
            for bar in bars {
                all.push((
                    format!("{jaw} on {work} from {bar}"),
                    starting(jaw.name(), work, bar),
                ));
            }
        }
    }
    all
}

#[test]
fn a_style_turned_into_a_sketch_is_the_same_jaw() {
    for (name, design) in styles() {
        let (own, other) = (resolve(&design), resolve(&sketched(&design)));
        close(
            &name,
            other.a.jaw.volume_mm3(),
            own.a.jaw.volume_mm3(),
            1e-6,
        );
        close(&name, other.a.volume_mm3(), own.a.volume_mm3(), 1e-6);
        within(&name, other.jaw_gap, own.jaw_gap, 1e-6);
        within(&name, other.work.from, own.work.from, 1e-6);
        within(&name, other.work.beside, own.work.beside, 1e-6);
        assert_eq!(other.work.lies, own.work.lies, "{name}");
        let length = own.a.jaw.length();
        within(&name, other.a.jaw.length(), length, 1e-6);
        for i in 0..=400 {
            let s = length * f64::from(i) / 400.0;
            for edge in [Edge::Outer, Edge::Inner, Edge::Far, Edge::Near] {
                let (p, q) = (
                    own.a.jaw.edge_point(edge, s),
                    other.a.jaw.edge_point(edge, s),
                );
                // Only the last digits of sums may differ, far under the 0.01 mm of any tool.
                within(&format!("{name} {edge:?} at {s}"), p.distance(q), 0.0, 1e-4);
            }
        }
    }
}

#[test]
fn a_sketch_in_a_file_comes_back_the_same() {
    for (name, design) in styles() {
        let sketch = sketched(&design);
        let text = document::write(&sketch);
        let back = document::read(text.as_bytes()).expect("reads back");
        assert_eq!(back, sketch, "{name}");
    }
}

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
fn a_sketch_used_at_twice_the_size_has_eight_times_the_volume() {
    for (name, design) in styles() {
        let once = sketched(&design);
        let sketch = once.jaw.sketch().expect("a sketch");
        let twice = |length: Length| Length::from_mm(2.0 * length.mm(), Unit::Millimetre);
        let jaw = Jaw {
            length: twice(once.jaw.length),
            tip: Length::ZERO,
            style: JawStyle::Sketch(Sketch {
                fits: twice(sketch.fits),
                ..sketch.clone()
            }),
            ..once.jaw.clone()
        };
        let plain = Jaw {
            tip: Length::ZERO,
            ..once.jaw.clone()
        };
        let volume = |jaw: &Jaw| jaw.form().placed(0.0, 0.0).volume_mm3();
        // Square-cube law; sizes in a file are kept to a micrometre.
        close(&name, volume(&jaw), 8.0 * volume(&plain), 1e-4);
    }
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
fn damaged_sketches_are_refused_with_their_place() {
    let good = sketched(&starting("v bit", "1/2 in round", "5/8 in square"));
    let text = document::write(&good);
    let broken = [
        ("slope: 0.0", "slope: NaN", "slope"),
        ("grip: (1", "grip: (9", "grip"),
        ("shape: 1", "shape: 7", "shape"),
    ];
    for (from, to, place) in broken {
        assert!(text.contains(from), "the file has {from}:\n{text}");
        let damaged = text.replacen(from, to, 1);
        let error = document::read(damaged.as_bytes())
            .expect_err(to)
            .to_string();
        assert!(error.contains(place), "{to}: {error}");
    }
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

#[derive(Debug, Clone)]
enum Edit {
    Set(usize, usize, f64, bool),
    Add(usize),
    Remove(usize),
    Turn(usize),
    Shape(usize, usize),
    Corner(usize, usize, f64, f64, bool),
}

fn edit() -> impl Strategy<Value = Edit> {
    let number = prop_oneof![
        -60.0..60.0,
        Just(0.0),
        Just(1e9),
        Just(-1e9),
        Just(f64::NAN),
        Just(f64::INFINITY),
        -1.0..1.0
    ];
    prop_oneof![
        6 => (0..12usize, 0..7usize, number, any::<bool>()).prop_map(|(n, v, to, b)| Edit::Set(n, v, to, b)),
        2 => (0..12usize).prop_map(Edit::Add),
        1 => (0..12usize).prop_map(Edit::Remove),
        1 => (0..12usize).prop_map(Edit::Turn),
        1 => (0..12usize, 0..6usize).prop_map(|(n, s)| Edit::Shape(n, s)),
        2 => (0..12usize, 0..12usize, -1.5..1.5f64, -1.5..1.5f64, any::<bool>())
            .prop_map(|(n, c, u, v, b)| Edit::Corner(n, c, u, v, b)),
    ]
}

fn apply(document: &Document, edit: &Edit) -> Document {
    let length = document.jaw.length.mm();
    changed(document, |sketch| match *edit {
        Edit::Set(node, value, to, both) => {
            let depth = if both {
                Depth::BothSides
            } else {
                Depth::OneSide
            };
            let how = (sketch.growth(length), depth, Unit::Inch);
            sketch.with_value(node, (NodeValue::ALL[value], to), how)
        }
        Edit::Add(node) => sketch.with_node_after(node, length),
        Edit::Remove(node) => sketch.without_node(node),
        Edit::Turn(node) => sketch.with_steel_turned(node),
        Edit::Shape(node, shape) => sketch.with_shape(node, Ready::ALL[shape].0.shape()),
        Edit::Corner(node, corner, u, v, both) => {
            let alike = if both { Alike::Both } else { Alike::One };
            let shape = node % sketch.shapes.len();
            let own: &SketchShape = &sketch.shapes[shape];
            let corners = own.corners();
            let (corner, _) = corners[corner % corners.len()];
            let own = match node % 3 {
                0 => own.with_corner(corner),
                1 => own.without_corner(corner),
                _ => own.moved(corner, (u, v), alike),
            };
            sketch.with_shape_changed(shape, own)
        }
    })
}

/// Every number that a design gives is finite, and it can be drawn and read back.
fn sound(document: &Document) -> Result<(), TestCaseError> {
    let model: Model = resolve(document);
    let found = balance_of(document, &model);
    prop_assert!(found.bar_length_mm.is_finite());
    // Steel that is folded through itself counts below nothing where it is turned inside out.
    let folded = check(document, &model)
        .iter()
        .any(|f| f.severity == Severity::Stop);
    prop_assert!(model.mass_kg().is_finite() && (model.mass_kg() > 0.0 || folded));
    let fits = fit(document, &model);
    prop_assert!(fits.press.hand_mm.is_finite() && fits.leverage().is_finite());
    let findings = Answers::to(document).findings;
    for f in &findings {
        let finite = |held: Held| held.value.is_finite() && held.limit.is_finite();
        prop_assert!(f.held.is_none_or(finite), "{}", f.message);
        prop_assert!(
            !f.message.contains("NaN") && !f.message.contains("inf"),
            "{}",
            f.message
        );
    }
    let drawn = pair(document, &model, &DrawOptions::default());
    let area = drawn.bounds();
    prop_assert!(
        area.x0.is_finite() && area.x1.is_finite() && area.y0.is_finite() && area.y1.is_finite()
    );
    let text = document::write(document);
    let back = document::read(text.as_bytes());
    prop_assert!(back.is_ok(), "{:?}", back.err());
    Ok(())
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(64))]

    #[test]
    fn no_edit_breaks_a_sketch(edits in prop::collection::vec(edit(), 1..30), start in 0..4usize) {
        let (jaw, work) = [("flat", "3/8 in flat"), ("v bit", "1/2 in round"), ("bolt", "5/8 in hexagon on corners"), ("link", "10 mm round")][start];
        let mut document = sketched(&starting(jaw, work, "5/8 in square"));
        for edit in &edits {
            document = apply(&document, edit);
        }
        sound(&document)?;
    }
}

#[test]
fn a_hold_follows_the_hand() {
    let flat = sketched(&starting("bolt", "1/2 in round", "5/8 in square"));
    let model = resolve(&flat);
    let free = Moving {
        depth: Depth::OneSide,
        step: 0.0,
        unit: Unit::Millimetre,
    };
    let count = flat.jaw.sketch().expect("a sketch").nodes.len();
    for node in 1..count - 1 {
        for hold in flat
            .jaw
            .node_holds(&model.a, node)
            .into_iter()
            .filter(|h| h.node == node)
        {
            let moved = match hold.hold {
                Hold::Slope => continue,
                // Inside and back move square to the line.
                Hold::Inside | Hold::Back => {
                    let sketch = flat.jaw.sketch().expect("a sketch");
                    let s = sketch.along(flat.jaw.length.mm())[node];
                    model.a.jaw.path.at(s).left() * 0.3
                }
                Hold::Width | Hold::Shift => Vec2::new(0.0, 0.3),
                Hold::Move => Vec2::new(0.2, 0.3),
            };
            let jaw = flat
                .jaw
                .with_node_moved(&model.a, (node, hold.hold), moved, free);
            // The pair stays set where it was, so that only the node's own movement is seen.
            let half = Half {
                jaw: jaw.form().placed(model.a.heel(), model.a.face),
                ..model.a.clone()
            };
            let after = jaw.node_holds(&half, node);
            let after = after
                .iter()
                .find(|h| h.node == node && h.hold == hold.hold)
                .expect("the hold");
            let name = format!("node {node} {:?}", hold.hold);
            within(&name, (after.at - hold.at - moved).hypot(), 0.0, 0.06);
        }
    }
}

#[test]
fn a_kept_jaw_comes_back_the_same_and_damage_is_told() {
    for (name, design) in styles() {
        let jaw = sketched(&design).jaw;
        let kept = KeptJaw::of(&jaw, "  Mine ", "For trials").expect("a sketch");
        let text = kept.write();
        assert!(is_kept_jaw(text.as_bytes()), "{name}");
        assert_eq!(
            KeptJaw::read(text.as_bytes()).expect("reads back"),
            kept,
            "{name}"
        );
        assert_eq!(kept.sketch.name, "Mine");
        // On its own work it is the jaw that it was.
        let used = kept.suited(&design.work, jaw.heel).expect("its own work");
        let volume = |jaw: &Jaw| jaw.form().placed(0.0, 0.0).volume_mm3();
        close(&name, volume(&used), volume(&jaw), 1e-4);
    }
    let text = KeptJaw::of(
        &sketched(&starting("flat", "3/8 in flat", "5/8 in square")).jaw,
        "Mine",
        "",
    )
    .expect("a sketch")
    .write();
    let half = &text.as_bytes()[..text.len() / 2];
    assert!(KeptJaw::read(half).is_err());
    let newer = text.replacen("own_jaw: 1", "own_jaw: 9", 1);
    let error = KeptJaw::read(newer.as_bytes())
        .expect_err("newer")
        .to_string();
    assert!(error.contains("format 9"), "{error}");
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

/// The largest distance between the silhouettes of two jaws, mm.
fn apart(one: &Jaw, other: &Jaw) -> f64 {
    let [one, other] = [one, other].map(|jaw| jaw.form().placed(0.0, 0.0));
    let mut most = (one.length() - other.length()).abs();
    for i in 0..=200 {
        let s = one.length() * f64::from(i) / 200.0;
        for edge in [Edge::Outer, Edge::Inner, Edge::Far, Edge::Near] {
            let d = one.edge_point(edge, s).distance(other.edge_point(edge, s));
            most = most.max(d);
        }
    }
    most
}

/// Source: an arc parted anywhere, and a pair of tangent arcs parted where they meet, are the same
/// line (plane geometry); a linear change parted anywhere is the same change.
#[test]
fn a_node_that_is_added_leaves_the_shape_as_it_was() {
    let (mut added, mut with_steel, mut bent) = (0, 0, 0);
    for (name, design) in styles() {
        let once = sketched(&design).jaw;
        let sketch = once.sketch().expect("a sketch");
        // As it was drawn, and longer and for larger work than that.
        let grown = Jaw {
            length: Length::from_mm(once.length.mm() * 1.3, Unit::Millimetre),
            style: JawStyle::Sketch(Sketch {
                fits: Length::from_mm(sketch.fits.mm() * 1.1, Unit::Millimetre),
                ..sketch.clone()
            }),
            ..once.clone()
        };
        for jaw in [once, grown] {
            let sketch = jaw.sketch().expect("a sketch");
            for node in 0..sketch.nodes.len() - 1 {
                let next = sketch.with_node_after(node, jaw.length.mm());
                if next.nodes.len() == sketch.nodes.len() {
                    continue;
                }
                let more = jaw.with_sketch(next.clone());
                within(
                    &format!("{name} after {node}"),
                    apart(&jaw, &more),
                    0.0,
                    1e-6,
                );
                let volume = |jaw: &Jaw| jaw.form().placed(0.0, 0.0).volume_mm3();
                // A groove of a true arc is steep at its ends: its integral is good to 1e-6.
                let fine = if name.starts_with("link") { 1e-6 } else { 1e-8 };
                close(&name, volume(&more), volume(&jaw), fine);
                added += 1;
                let new = next.nodes[node + 1];
                with_steel += usize::from(new.steel.is_some());
                bent += usize::from(new.slope.abs() > 1.0);
            }
        }
    }
    assert!(
        added > 1000 && with_steel > 300 && bent > 300,
        "{added} added, {with_steel} with a section, {bent} on a slope"
    );
}

/// Added again and again, as far as there is room, on a line that bends both ways.
#[test]
fn nodes_that_are_added_one_after_another_leave_the_shape_as_it_was() {
    let flat = sketched(&starting("flat", "3/8 in flat", "3/4 in square"));
    let length = flat.jaw.length.mm();
    let bent = changed(&flat, |sketch| {
        let jaw = sketch.with_node_after(0, length);
        let as_asked = (jaw.growth(length), Depth::OneSide, Unit::Millimetre);
        jaw.with_value(1, (NodeValue::Y, 6.0), as_asked)
            .with_value(1, (NodeValue::Slope, -20.0), as_asked)
            .with_value(2, (NodeValue::Slope, 10.0), as_asked)
    });
    let mut sketch = bent.jaw.sketch().expect("a sketch").clone();
    loop {
        let roomy = (0..sketch.nodes.len()).find(|node| sketch.has_room_after(*node, length));
        let Some(node) = roomy else { break };
        sketch = sketch.with_node_after(node, length);
    }
    assert!(sketch.nodes.len() > 12, "{}", sketch.nodes.len());
    within(
        "shape",
        apart(&bent.jaw, &bent.jaw.with_sketch(sketch)),
        0.0,
        1e-6,
    );
}

/// On other work length, tip and places are what a smith sets off, and the shape has grown by as
/// much as the work.
#[test]
fn a_kept_jaw_on_other_work_has_sizes_that_a_smith_has() {
    #[track_caller]
    fn measured(name: &str, length: Length, unit: Unit) {
        assert_eq!(
            length,
            Length::measured(length.mm(), unit),
            "{name}: {length}"
        );
    }
    for (name, design) in styles() {
        let jaw = sketched(&design).jaw;
        let kept = KeptJaw::of(&jaw, "Mine", "").expect("a sketch");
        let once = jaw.form().placed(0.0, 0.0).volume_mm3();
        for (work, heel) in [("11/16 in square", "1 in"), ("17 mm square", "30 mm")] {
            let name = format!("{name}, on {work}");
            let work = reinwright_tests::pairs::work(work);
            let heel: Length = heel.parse().expect("a size");
            let used = kept.suited(&work, heel).expect("it grows");
            measured(&name, used.length, heel.unit());
            measured(&name, used.tip, heel.unit());
            let sketch = used.sketch().expect("a sketch");
            assert_eq!((sketch.drawn_for, sketch.fits), (work.size(), work.size()));
            let times = work.size().mm() / design.work.size().mm();
            // The length is rounded by half a sixteenth at most: over 10 mm that is 8 per cent.
            let volume = used.form().placed(0.0, 0.0).volume_mm3();
            close(&name, volume, once * times.powi(3), 0.12);
            let design = Document {
                jaw: used,
                work,
                ..design.clone()
            };
            document::check_limits(&design).unwrap_or_else(|why| panic!("{name}: {why}"));
        }
    }
}

/// A stop that was set at a node stays at it, and the node lies where a rule has a mark.
#[test]
fn places_follow_the_work() {
    let flat = sketched(&starting("flat", "1/2 in flat", "3/4 in square"));
    let length = flat.jaw.length.mm();
    let stopped = changed(&flat, |sketch| {
        let mut next = sketch.with_node_after(0, length);
        let at = next.nodes[1].x;
        next.lay = SketchLay::Stopped { at };
        next
    });
    let kept = KeptJaw::of(&stopped.jaw, "Mine", "").expect("a sketch");
    let work = reinwright_tests::pairs::work("13/16 in flat");
    let used = kept.suited(&work, flat.jaw.heel).expect("it grows");
    let sketch = used.sketch().expect("a sketch");
    let SketchLay::Stopped { at } = sketch.lay else {
        panic!("{:?}", sketch.lay);
    };
    assert_eq!(at, sketch.nodes[1].x);
    let sixteenths = at.mm() / 25.4 * 16.0;
    within("whole sixteenths", sixteenths, sixteenths.round(), 1e-9);
    let grown = length / 2.0 * 13.0 / 8.0;
    within("in proportion", at.mm(), grown, 25.4 / 32.0 + 1e-9);
    within(
        "stopped there",
        used.form().length() - used.length.mm(),
        0.0,
        1e-6,
    );
}

/// Numbers that once took gigabytes: each is refused in one sentence, and a design that has them in
/// it all the same is drawn and answered in no more than the work of any other.
#[test]
fn a_sketch_grows_no_more_than_can_be_drawn() {
    let flat = sketched(&starting("flat", "3/8 in flat", "3/4 in square"));
    let wild = |drawn_for: &str, fits: &str, lay: SketchLay| {
        changed(&flat, |sketch| {
            let mut next = sketch.clone();
            next.drawn_for = drawn_for.parse().expect("a size");
            next.fits = fits.parse().expect("a size");
            next.lay = lay;
            let steel = next.nodes[0].steel.as_mut().expect("steel");
            steel.width = "60 mm".parse().expect("a size");
            steel.back = "-49.97 mm".parse().expect("a size");
            next.nodes[0].slope = -62.7;
            next.nodes[1].slope = -65.9;
            next.nodes[1].y = "30 mm".parse().expect("a size");
            next
        })
    };
    let far = |mm: &str| mm.parse().expect("a place");
    let cases = [
        (
            "0.5 mm",
            "200 mm",
            SketchLay::Stopped { at: far("-500 mm") },
            "jaw.fits",
        ),
        ("1 mm", "200 mm", SketchLay::EndOn, "jaw.fits"),
        ("200 mm", "0.5 mm", SketchLay::EndOn, "jaw.fits"),
        (
            "3/8 in",
            "3/8 in",
            SketchLay::Crosswise {
                at: far("1000000000 mm"),
            },
            "jaw.lay",
        ),
        ("900 mm", "200 mm", SketchLay::EndOn, "jaw.drawn_for"),
    ];
    for (drawn_for, fits, lay, place) in cases {
        let design = wild(drawn_for, fits, lay);
        let why = document::check_limits(&design)
            .expect_err(place)
            .to_string();
        assert!(why.starts_with(place), "{why}");
        reinwright_tests::sentence(&why);
        let model = resolve(&design);
        let area = pair(&design, &model, &DrawOptions::default()).bounds();
        assert!(
            area.width() < 10_000.0 && area.height() < 10_000.0,
            "{area:?}"
        );
        let answers = Answers::to(&design);
        assert!(answers.findings.iter().all(|f| !f.message.contains("NaN")));
    }
    let mut typed = wild("0.5 mm", "0.5 mm", SketchLay::EndOn);
    let why = typed
        .set("jaw.fits", "200 mm")
        .expect_err("too large")
        .to_string();
    assert!(
        why.contains("jaw.fits") && why.contains("2.5 mm"),
        "60 mm may grow to 300: {why}"
    );
    let why = typed.set("jaw.length", "2 mm").err();
    assert_eq!(why, None, "44.45 mm by 32 is 1.4");
}

/// A kept jaw is checked as a jaw of a design is, and used on no work that it does not grow to.
#[test]
fn a_kept_jaw_keeps_to_the_limits() {
    let flat = sketched(&starting("flat", "3/8 in flat", "3/4 in square"));
    let kept = KeptJaw::of(&flat.jaw, "Mine", "").expect("a sketch");
    let text = kept.write();
    for (from, to, place) in [
        ("length: \"1", "length: \"91", "length"),
        ("tip: \"", "tip: \"9 ", "tip"),
        ("fits: \"3/8 in\"", "fits: \"250 mm\"", "fits"),
        ("lay: Endwise", "lay: Stopped(at: \"9 ft\")", "lay"),
    ] {
        assert!(text.contains(from), "{from} in {text}");
        let why = KeptJaw::read(text.replacen(from, to, 1).as_bytes()).expect_err(to);
        assert!(why.to_string().contains(place), "{why}");
    }
    let large = reinwright_tests::pairs::work("7 in round");
    let why = kept
        .suited(&large, flat.jaw.heel)
        .expect_err("35 in long")
        .to_string();
    assert!(
        why.contains("\"Mine\"") && why.contains("7 in work"),
        "{why}"
    );
    reinwright_tests::sentence(&why);
}

/// A sketch is the very shape of its style: neither outline crosses itself, nor where a straight
/// between two arcs of a bow is next to nothing.
#[test]
fn a_sketched_bow_does_not_cross_itself() {
    let crosses = |pair: &Document| {
        let found = check(pair, &resolve(pair));
        let crossing = |f: &&reinwright_core::finding::Finding| {
            f.kind == reinwright_core::finding::Kind::JawOutlineCrosses
        };
        found.iter().find(crossing).map(|f| f.message.clone())
    };
    for tenths in 60..200_u32 {
        let size = format!("{} mm round", f64::from(tenths) / 10.0);
        let pair = starting("bolt", &size, "16 mm square");
        assert_eq!(crosses(&pair), None, "{size}");
        assert_eq!(crosses(&sketched(&pair)), None, "{size}, as a sketch");
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
