//! Half B is half A turned half round about x: the same piece, never its mirror image; and laws
//! that hold for any pair whatever.

use geo::{Area, BooleanOps, BoundingRect, Polygon};
use kurbo::{BezPath, PathEl, Point};
use proptest::prelude::*;
use reinwright_core::asked::Value;
use reinwright_core::tongs::document::{Document, Turn, check_limits};
use reinwright_core::tongs::model::{Half, Model};
use reinwright_core::tongs::resolve;
use reinwright_tests::mesh::Mesh;
use reinwright_tests::outline::polygon;
use reinwright_tests::{close, pairs, within};

/// The columns of a map that keeps the origin.
fn columns(map: impl Fn([f64; 3]) -> [f64; 3]) -> [[f64; 3]; 3] {
    [
        map([1.0, 0.0, 0.0]),
        map([0.0, 1.0, 0.0]),
        map([0.0, 0.0, 1.0]),
    ]
}

fn determinant([a, b, c]: [[f64; 3]; 3]) -> f64 {
    a[0] * (b[1] * c[2] - b[2] * c[1]) - a[1] * (b[0] * c[2] - b[2] * c[0])
        + a[2] * (b[0] * c[1] - b[1] * c[0])
}

#[test]
fn half_b_is_a_proper_rotation() {
    // A rotation has determinant +1 and keeps lengths and angles; a mirror image has -1.
    let turn = columns(Model::half_b_point);
    within("determinant", determinant(turn), 1.0, 0.0);
    for (i, a) in turn.iter().enumerate() {
        for (j, b) in turn.iter().enumerate() {
            let dot: f64 = a.iter().zip(b).map(|(p, q)| p * q).sum();
            within("orthonormal", dot, if i == j { 1.0 } else { 0.0 }, 0.0);
        }
    }
    let twice = Model::half_b_point(Model::half_b_point([1.0, 2.0, 3.0]));
    assert_eq!(twice, [1.0, 2.0, 3.0], "two half turns are none");
}

#[test]
fn the_side_view_shows_the_same_turn() {
    for p in [Point::new(3.0, 5.0), Point::new(-7.0, -2.0)] {
        let [x, y, _] = Model::half_b_point([p.x, p.y, 4.0]);
        assert_eq!(Model::half_b_pose() * p, Point::new(x, y));
    }
}

#[test]
fn turning_keeps_the_volume_and_mirroring_turns_it_inside_out() {
    let mesh = Mesh::half(&resolve(&pairs::flat()).a);
    let volume = signed_volume(&mesh);
    close(
        "turned",
        signed_volume(&mapped(&mesh, Model::half_b_point)),
        volume,
        1e-9,
    );
    close(
        "mirrored",
        signed_volume(&mapped(&mesh, mirror)),
        -volume,
        1e-9,
    );
}

/// The mirror image that a smith who loses track of the third set-down would forge.
fn mirror([x, y, z]: [f64; 3]) -> [f64; 3] {
    [x, -y, z]
}

fn mapped(mesh: &Mesh, map: impl Fn([f64; 3]) -> [f64; 3]) -> Mesh {
    let points = mesh.points.iter().map(|&p| map(p)).collect();
    Mesh {
        points,
        triangles: mesh.triangles.clone(),
    }
}

/// A sixth of the sum of the triangles' triple products (divergence theorem).
fn signed_volume(mesh: &Mesh) -> f64 {
    let at = |i: u32| mesh.points[usize::try_from(i).expect("an index")];
    let triple = |t: &[u32; 3]| determinant([at(t[0]), at(t[1]), at(t[2])]);
    mesh.triangles.iter().map(triple).sum::<f64>() / 6.0
}

/// Volume in which a body and another copy of it, moved by `map`, would both be, by slices of x.
fn shared_volume(half: &Half, map: fn([f64; 3]) -> [f64; 3]) -> f64 {
    /// Thickness of a slice, mm.
    const SLICE: f64 = 0.25;
    let a = polygon(&half.body.plate.path());
    let b = polygon(&(Model::half_b_pose() * half.body.plate.path()));
    let shared = a.intersection(&b);
    let Some(bounds) = shared.bounding_rect() else {
        return 0.0;
    };
    let mut volume = 0.0;
    let mut x = bounds.min().x;
    while x < bounds.max().x {
        let strip = geo::Rect::new((x, -500.0), (x + SLICE, 500.0)).to_polygon();
        let area = shared.intersection(&strip).unsigned_area();
        let (low, high) = half.body.plate.faces.at(x + SLICE / 2.0);
        let moved = [map([0.0, 0.0, low])[2], map([0.0, 0.0, high])[2]];
        let (other_low, other_high) = (moved[0].min(moved[1]), moved[0].max(moved[1]));
        volume += area * (high.min(other_high) - low.max(other_low)).max(0.0);
        x += SLICE;
    }
    volume
}

#[test]
fn a_mirror_image_cannot_be_assembled() {
    for (name, pair) in pairs::all() {
        let half = resolve(&pair).a;
        // The bosses cover each other in the side view; turned, they lie on either side of
        // z = 0, mirrored they would have to be in one place.
        let boss = std::f64::consts::PI
            * half
                .body
                .rim
                .half_along()
                .min(half.body.rim.half_across())
                .powi(2);
        let clash = shared_volume(&half, mirror);
        let least = 0.9 * boss * half.body.plate.faces.thickness * LOZENGE;
        assert!(
            clash > least,
            "{name}: mirrored they share {clash} mm³, expected over {least}"
        );
        let turned = shared_volume(&half, Model::half_b_point);
        within(&format!("{name}: turned"), turned, 0.0, 0.5);
    }
}

/// A diamond fills 2/π of the circle inside its box, plus a little for its round corners.
const LOZENGE: f64 = std::f64::consts::FRAC_2_PI;

#[test]
fn the_boss_stands_on_one_side_and_jaw_and_rein_in_the_middle() {
    for (name, pair) in pairs::all() {
        let half = resolve(&pair).a;
        let faces = &half.body.plate.faces;
        let (low, high) = faces.at(0.0);
        within(name, low, 0.0, 0.0);
        within(name, high, pair.boss.thickness.mm(), 0.0);
        for x in [faces.neck.far, faces.shoulder.far] {
            let (low, high) = faces.at(x);
            within(name, low + high, 0.0, 1e-12);
        }
        let jaw_width = half.jaw.section(0.0).width;
        within(name, faces.at(half.heel()).1, jaw_width / 2.0, 1e-9);
        let rein_width = half.rein.section(0.0).width;
        within(name, faces.at(faces.shoulder.far).1, rein_width / 2.0, 1e-9);
    }
}

#[test]
fn jaw_up_and_rein_down() {
    for (name, pair) in pairs::all() {
        let half = resolve(&pair).a;
        let jaw = half.jaw.middle(half.jaw.length() / 2.0);
        assert!(jaw.x > 0.0 && jaw.y > 0.0, "{name}: jaw at {jaw:?}");
        assert!(
            half.hand().x < 0.0 && half.hand().y < 0.0,
            "{name}: hand at {:?}",
            half.hand()
        );
    }
}

#[test]
fn turning_right_flips_z_and_nothing_else() {
    let left = pairs::flat();
    let right = Document {
        hand: Turn::Right,
        ..left.clone()
    };
    let (left, right) = (resolve(&left), resolve(&right));
    assert_eq!(left.handed([1.0, 2.0, 3.0]), [1.0, 2.0, 3.0]);
    assert_eq!(right.handed([1.0, 2.0, 3.0]), [1.0, 2.0, -3.0]);
    assert_eq!(left.a, right.a);
    close("mass", right.mass_kg(), left.mass_kg(), 1e-15);
}

/// Every number of a pair set to a place in its range, and every choice to one of its ways.
fn scrambled(mut pair: Document, dice: &[f64]) -> Document {
    let mut at = 0;
    let mut roll = || {
        at += 1;
        dice[at % dice.len()]
    };
    // Choices bring fields of their own, so they are made first.
    pair.revise(&mut |field| {
        let (roll, ways) = (roll(), field.value.ways());
        (!ways.is_empty()).then(|| Value::Choice {
            ways,
            chosen: place(roll, ways.len()),
        })
    });
    pair.revise(&mut |field| {
        let roll = roll();
        // Squared, so that sizes as small as tongs have come up often.
        let number = field.range.least + (field.range.most - field.range.least) * roll * roll;
        match field.value {
            Value::Length(_) => Some(Value::Length(pairs::mm(number))),
            Value::Angle(_) | Value::Percent(_) => Some(field.value.with_number(number)),
            Value::Count(_) | Value::Choice { .. } => None,
        }
    });
    pair
}

#[allow(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "a roll is from 0 to 1"
)]
fn place(roll: f64, ways: usize) -> usize {
    ((roll * ways as f64) as usize).min(ways - 1)
}

/// A pair each of whose sizes is off by up to so much of itself.
fn varied(mut pair: Document, by: f64, dice: &[f64]) -> Document {
    let mut at = 0;
    pair.revise(&mut |field| {
        at += 1;
        let factor = 1.0 + by * (2.0 * dice[at % dice.len()] - 1.0);
        match field.value {
            Value::Length(length) => Some(Value::Length(pairs::mm(length.mm() * factor))),
            Value::Angle(_) | Value::Percent(_) | Value::Count(_) | Value::Choice { .. } => None,
        }
    });
    pair
}

fn numbers(path: &BezPath) -> impl Iterator<Item = f64> {
    let points = path.elements().iter().flat_map(|el| match *el {
        PathEl::MoveTo(p) | PathEl::LineTo(p) => vec![p],
        PathEl::QuadTo(p, q) => vec![p, q],
        PathEl::CurveTo(p, q, r) => vec![p, q, r],
        PathEl::ClosePath => vec![],
    });
    points.flat_map(|p| [p.x, p.y])
}

/// Everything that a drawing or an account takes from a half is a finite number.
fn check_finite(half: &Half) -> Result<(), TestCaseError> {
    prop_assert!(half.volume_mm3().is_finite());
    prop_assert!(half.mass().x.is_finite() && half.mass().y.is_finite());
    for path in [
        half.outline(),
        half.jaw_outline(),
        half.body.plate.path(),
        half.rein_outline(),
    ] {
        prop_assert!(
            numbers(&path).all(f64::is_finite),
            "an outline has no number at a point"
        );
    }
    Ok(())
}

/// The stations of both sweeps ascend from nothing to the whole length.
fn check_stations(half: &Half) -> Result<(), TestCaseError> {
    for sweep in [&half.jaw, &half.rein] {
        let at: Vec<f64> = sweep.stations.iter().map(|station| station.at).collect();
        prop_assert!(at.windows(2).all(|w| w[0] < w[1]), "stations at {:?}", at);
        prop_assert_eq!(at[0], 0.0);
        let off = at[at.len() - 1] - sweep.length();
        prop_assert!(
            off.abs() < 1e-6,
            "stations at {:?} over {}",
            at,
            sweep.length()
        );
        prop_assert!(
            sweep
                .stations
                .iter()
                .all(|s| s.depth > 0.0 && s.width > 0.0),
            "{:?}",
            sweep.stations
        );
    }
    Ok(())
}

/// The outline closes without a gap between its pieces.
fn check_closed(half: &Half) -> Result<(), TestCaseError> {
    let outline = &half.body.plate.outline;
    for (i, curve) in outline.iter().enumerate() {
        let next = outline[(i + 1) % outline.len()].start();
        let gap = curve.end().distance(next);
        prop_assert!(
            gap < 1e-6,
            "gap of {} at {:?} in {:#?}",
            gap,
            curve.end(),
            outline
        );
    }
    let rein = half
        .rein
        .edge_point(reinwright_core::shape::sweep::Edge::Outer, 0.0);
    let near = outline
        .iter()
        .map(|c| c.start().distance(rein))
        .fold(f64::MAX, f64::min);
    prop_assert!(near < 1e-6, "the rein starts {} off the shoulder", near);
    Ok(())
}

fn dice() -> impl Strategy<Value = Vec<f64>> {
    prop::collection::vec(0.0..1.0f64, 97)
}

/// So many cases, or as many as the usual variable of proptest asks for.
fn cases(usual: u32) -> u32 {
    let asked = std::env::var("PROPTEST_CASES").ok();
    asked.and_then(|text| text.parse().ok()).unwrap_or(usual)
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(cases(200)))]

    #[test]
    fn anything_inside_the_limits_resolves(which in 0..pairs::all().len(), dice in dice()) {
        let pair = scrambled(pairs::all().swap_remove(which).1, &dice);
        prop_assert_eq!(check_limits(&pair), Ok(()));
        let model = resolve(&pair);
        for half in [&model.a, &model.b] {
            check_finite(half)?;
            check_stations(half)?;
            check_closed(half)?;
        }
        prop_assert!(model.jaw_gap.is_finite() && model.hand_gap.is_finite());
    }
}

proptest! {
    // Judging an outline takes geo most of a tenth of a second without optimisation.
    #![proptest_config(ProptestConfig::with_cases(cases(24)))]

    #[test]
    fn a_pair_a_little_off_trade_proportions_is_still_one_piece(which in 0..pairs::all().len(), dice in dice()) {
        let (name, pair) = pairs::all().swap_remove(which);
        let pair = varied(pair, 0.12, &dice);
        let model = resolve(&pair);
        let (half, gap) = (&model.a, pair.rein.gap.mm());
        prop_assert!((model.hand_gap - gap).abs() < 1e-6, "{} for a gap of {gap}", model.hand_gap);
        check_closed(half)?;
        let outline: Polygon = polygon(&half.outline());
        let errors = geo::Validation::validation_errors(&outline);
        prop_assert!(errors.is_empty(), "{}: {:?}", name, errors);
    }
}
