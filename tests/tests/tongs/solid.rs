//! The half as one solid: volume and balance point against a closed triangle mesh measured by
//! parry3d (an independent collision library), outlines judged by geo, lines that close.

use geo::{Area, Validation};
use kurbo::{Point, Shape, Vec2};
use reinwright_core::shape::Curve;
use reinwright_core::shape::sweep::Edge;
use reinwright_core::tongs::model::{Half, Model};
use reinwright_core::tongs::resolve;
use reinwright_tests::mesh::Mesh;
use reinwright_tests::outline::polygon;
use reinwright_tests::{close, pairs, within};

fn models() -> Vec<(&'static str, Model)> {
    let pairs = pairs::all().into_iter();
    pairs.map(|(name, pair)| (name, resolve(&pair))).collect()
}

#[test]
fn volume_and_balance_are_those_of_a_mesh_measured_by_parry3d() {
    for (name, model) in models() {
        let (half, mesh) = (&model.a, Mesh::half(&model.a));
        let measured = mesh.measured();
        // 0.1 %: facets of the mesh cut off up to 0.03 % of what is round.
        close(name, half.volume_mm3(), measured.volume_mm3, 1e-3);
        let mass = half.mass();
        within(name, mass.x / mass.volume, measured.centre[0], 0.1);
        within(name, mass.y / mass.volume, measured.centre[1], 0.02);
    }
}

#[test]
fn the_mesh_is_closed() {
    for pair in [pairs::flat(), pairs::v_bit()] {
        let mesh = Mesh::half(&resolve(&pair).a);
        assert!(mesh.is_closed(), "{}: the mesh is open", pair.name);
    }
    let mut open = Mesh::half(&resolve(&pairs::flat()).a);
    open.triangles.pop();
    assert!(
        !open.is_closed(),
        "a mesh without one triangle passes as closed"
    );
}

#[test]
fn each_part_is_the_volume_of_its_own_mesh() {
    for (name, model) in models() {
        let body = &model.a.body;
        let mut mesh = Mesh::default();
        mesh.add_body(body);
        let found = body.plate.mass_between(-1e6, 1e6).volume;
        close(name, found, mesh.measured().volume_mm3, 1e-3);
        for sweep in [&model.a.jaw, &model.a.rein] {
            let mut mesh = Mesh::default();
            mesh.add_sweep(sweep);
            close(name, sweep.volume_mm3(), mesh.measured().volume_mm3, 1e-3);
        }
    }
}

#[test]
fn a_body_cut_anywhere_adds_up_to_the_whole() {
    for (name, model) in models() {
        let body = &model.a.body;
        let (whole, far) = (body.plate.mass_between(-1e6, 1e6), 1e6);
        // Off every corner, and on the very edge of the boss where its outline stands upright.
        let edge = body.rim.half_along();
        for cut in [
            -1.3 * edge,
            -edge,
            -0.37 * edge,
            0.0,
            0.61 * edge,
            edge,
            1.1 * edge,
        ] {
            let (left, right) = (
                body.plate.mass_between(-far, cut),
                body.plate.mass_between(cut, far),
            );
            close(name, left.volume + right.volume, whole.volume, 1e-9);
            within(name, left.x + right.x, whole.x, 1e-7 * whole.volume);
            within(name, left.y + right.y, whole.y, 1e-7 * whole.volume);
        }
    }
}

#[test]
fn a_cut_off_part_of_a_body_is_the_volume_of_its_own_mesh() {
    for (name, model) in models() {
        let half = &model.a;
        let edge = half.body.rim.half_along();
        let mut mesh = Mesh::default();
        mesh.add_body_between(&half.body, -edge, edge);
        let found = half.body.plate.mass_between(-edge, edge).volume;
        close(name, found, mesh.measured().volume_mm3, 1e-3);
    }
}

#[test]
fn the_outline_has_the_area_that_geo_finds_and_is_the_sum_of_its_parts() {
    for (name, model) in models() {
        let half = &model.a;
        let outline = half.outline();
        let whole = polygon(&outline).unsigned_area();
        close(name, outline.area().abs(), whole, 1e-4);
        let parts = [
            half.jaw_outline(),
            half.body.plate.path(),
            half.rein_outline(),
        ];
        let sum: f64 = parts.iter().map(|part| polygon(part).unsigned_area()).sum();
        close(name, sum, whole, 1e-5);
    }
}

#[test]
fn outlines_never_cross_themselves() {
    for (name, model) in models() {
        let half = &model.a;
        let parts = [
            half.outline(),
            half.jaw_outline(),
            half.body.plate.path(),
            half.rein_outline(),
        ];
        for part in parts {
            let errors = polygon(&part).validation_errors();
            assert!(errors.is_empty(), "{name}: {errors:?}");
        }
    }
}

/// The outline's pieces between jaw and rein, with the directions in which the sweeps go on.
fn edges(half: &Half) -> [(Vec2, Vec<Curve>, Vec2); 2] {
    let jaw = |edge: Edge| direction(|s| half.jaw.edge_point(edge, s));
    let rein = |edge: Edge| direction(|s| half.rein.edge_point(edge, s));
    let [first, second] = half.body.edges();
    [
        (-jaw(Edge::Outer), first, rein(Edge::Inner)),
        (-rein(Edge::Outer), second, jaw(Edge::Inner)),
    ]
}

fn direction(at: impl Fn(f64) -> Point) -> Vec2 {
    (at(1e-4) - at(0.0)).normalize()
}

#[test]
fn the_body_joins_jaw_and_rein_without_gaps_or_kinks() {
    /// Fillets are found to about 1e-9 mm.
    const GAP: f64 = 1e-6;
    /// Radians.
    const KINK: f64 = 1e-4;
    for (name, model) in models() {
        for (before, curves, after) in edges(&model.a) {
            let mut heading = before;
            for (i, curve) in curves.iter().enumerate() {
                let turn = heading.cross(curve.slope(0.0).normalize()).asin().abs();
                assert!(
                    turn < KINK,
                    "{name}: kink of {turn} before piece {i} at {:?}",
                    curve.start()
                );
                heading = curve.slope(1.0).normalize();
                if let Some(next) = curves.get(i + 1) {
                    let gap = curve.end().distance(next.start());
                    assert!(gap < GAP, "{name}: gap of {gap} behind piece {i}");
                }
            }
            let turn = heading.cross(after).asin().abs();
            assert!(turn < KINK, "{name}: kink of {turn} at the end");
        }
    }
}

#[test]
fn jaw_and_rein_begin_where_the_body_ends() {
    for (name, model) in models() {
        let half = &model.a;
        let [first, second] = half.body.edges();
        let ends = [
            (first[0].start(), half.jaw.edge_point(Edge::Outer, 0.0)),
            (
                first[first.len() - 1].end(),
                half.rein.edge_point(Edge::Inner, 0.0),
            ),
            (second[0].start(), half.rein.edge_point(Edge::Outer, 0.0)),
            (
                second[second.len() - 1].end(),
                half.jaw.edge_point(Edge::Inner, 0.0),
            ),
        ];
        for (found, expected) in ends {
            within(name, found.distance(expected), 0.0, 1e-6);
        }
    }
}

/// The radius of the circle through three points: the product of the sides over four times the
/// area.
fn circle_through([a, b, c]: [Point; 3]) -> f64 {
    let area = (b - a).cross(c - a).abs() / 2.0;
    a.distance(b) * b.distance(c) * c.distance(a) / (4.0 * area)
}

#[test]
fn the_inside_corners_have_the_asked_radius() {
    for (name, pair) in pairs::all() {
        let body = resolve(&pair).a.body;
        for (limb, asked) in [
            (body.neck.inner_edge(), pair.neck.fillet),
            (body.shoulder.inner_edge(), pair.shoulder.fillet),
        ] {
            let radii = limb
                .iter()
                .map(|curve| circle_through([0.0, 0.5, 1.0].map(|t| curve.at(t))));
            let off = radii
                .map(|r| (r - asked.mm()).abs())
                .fold(f64::MAX, f64::min);
            within(name, off, 0.0, 1e-6);
        }
    }
}

#[test]
fn the_reins_stand_the_asked_gap_apart_at_the_hand() {
    for (name, pair) in pairs::all() {
        within(name, resolve(&pair).hand_gap, pair.rein.gap.mm(), 1e-6);
    }
}

#[test]
fn the_rein_is_as_long_as_asked() {
    for (name, pair) in pairs::all() {
        let half = resolve(&pair).a;
        // A bent end begins there and comes on top.
        within(name, half.bent_from(), pair.rein.length.mm(), 1e-9);
        let last = half.rein.stations.last().expect("a rein has stations").at;
        within(name, last, half.rein.length(), 1e-9);
    }
}

#[test]
fn the_back_of_the_tip_is_a_quarter_circle_and_the_face_runs_through() {
    let mut pair = pairs::flat();
    pair.jaw.tip = pairs::mm(2.5);
    let jaw = resolve(&pair).a.jaw;
    let (length, start) = (jaw.length(), jaw.length() - 2.5);
    let corner = jaw.edge_point(Edge::Outer, start);
    let centre = corner - Vec2::new(0.0, 2.5);
    for part in [0.0, 0.3, 0.7, 0.9, 1.0] {
        let p = jaw.edge_point(Edge::Outer, start + 2.5 * part);
        within(
            "from the centre of the round",
            p.distance(centre),
            2.5,
            1e-9,
        );
    }
    for s in [0.0, 0.5, 0.99, 1.0].map(|t| t * length) {
        let face = jaw.edge_point(Edge::Inner, s).y;
        within("face", face, jaw.edge_point(Edge::Inner, 0.0).y, 1e-9);
    }
}

/// The ends of a folded wall go with its back, so that the tip of a V-bit is broken as asked and its
/// groove runs through.
#[test]
fn the_back_of_a_v_bit_is_broken_and_its_groove_runs_through() {
    let mut pair = pairs::v_bit();
    pair.jaw.tip = pairs::mm(2.0);
    let jaw = resolve(&pair).a.jaw;
    let (length, start) = (jaw.length(), jaw.length() - 2.0);
    let drop = jaw.edge_point(Edge::Outer, start).y - jaw.edge_point(Edge::Outer, length).y;
    within("break of the back", drop, 2.0, 1e-9);
    let (before, tip) = (jaw.section(start), jaw.section(length));
    // The lips are at the bottom of the section's box.
    let apex = before.lower(0.0) + before.depth / 2.0;
    within("apex", tip.lower(0.0) + tip.depth / 2.0, apex, 1e-9);
    for place in -10..=10 {
        let u = f64::from(place) / 10.0;
        let wall = tip.upper(u) - tip.lower(u);
        assert!(wall > -1e-9, "no wall at {u}: {wall}");
    }
}

#[test]
fn neck_and_shoulder_are_nowhere_thin() {
    // Judgement: a limb that narrows to under 0.8 of what it was asked to be looks pinched and
    // would crack there.
    for (name, pair) in pairs::all() {
        let body = resolve(&pair).a.body;
        let limbs = [
            (&body.neck, pair.neck.depth),
            (&body.shoulder, pair.shoulder.depth),
        ];
        for (limb, asked) in limbs {
            let end = limb.inner_end().distance(limb.outer_end());
            let least = thinnest(limb);
            let floor = 0.8 * asked.mm().min(end);
            assert!(least > floor, "{name}: {least} mm, less than {floor} mm");
        }
    }
}

/// The least distance from a point of the outer edge to the inner edge.
fn thinnest(limb: &reinwright_core::tongs::body::Limb) -> f64 {
    let places = || (0..=100).map(|i| f64::from(i) / 100.0);
    let to_inner = |p: Point| {
        places()
            .map(|t| limb.inner_at(t).distance(p))
            .fold(f64::MAX, f64::min)
    };
    places()
        .map(|t| to_inner(limb.outer_at(t)))
        .fold(f64::MAX, f64::min)
}
