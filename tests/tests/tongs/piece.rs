//! A half as a piece of forging: its parts are the solid's, its sections those of the textbook, and
//! the bore that it passes agrees with Jung's theorem on the points of an independent mesh.

use std::f64::consts::PI;

use geo::{ConvexHull, Coord, MultiPoint};
use reinwright_core::finding::Part;
use reinwright_core::shape::Piece;
use reinwright_core::tongs::model::Model;
use reinwright_core::tongs::resolve;
use reinwright_tests::designs::sample;
use reinwright_tests::mesh::Mesh;
use reinwright_tests::pairs::length;
use reinwright_tests::{close, pairs, within};

fn models() -> Vec<(&'static str, Model)> {
    let pairs = pairs::all().into_iter();
    pairs.map(|(name, pair)| (name, resolve(&pair))).collect()
}

/// The places at which a stretch begins and ends along its piece, mm.
fn ends(piece: &Piece, part: Part) -> (f64, f64) {
    let before = piece.stretches.iter().take_while(|its| its.part != part);
    let from: f64 = before.map(|stretch| stretch.length_mm()).sum();
    let own = piece.stretches.iter().find(|its| its.part == part);
    (
        from,
        from + own.expect("the piece has the part").length_mm(),
    )
}

#[test]
fn a_pair_is_one_piece_wanted_twice_or_two() {
    for (name, model) in models() {
        let pieces = model.pieces();
        assert_eq!(
            pieces.iter().map(|piece| piece.wanted).sum::<u32>(),
            2,
            "{name}"
        );
        assert_eq!(pieces.len() == 1, model.alike, "{name}");
        let volume = pieces.iter().map(|p| f64::from(p.wanted) * p.mass().volume);
        let meshes: f64 = [&model.a, &model.b]
            .map(|half| Mesh::half(half).measured().volume_mm3)
            .iter()
            .sum();
        close(name, volume.sum(), meshes, 1e-3);
    }
}

/// A round end has the area and the moment of the textbook's circle, and passes its own diameter.
#[test]
fn the_end_of_a_round_rein_is_a_circle() {
    let model = resolve(&sample("textbook-light-chain"));
    let piece = &model.pieces()[0];
    let (_, end) = ends(piece, Part::Rein);
    let d = 25.4 * 5.0 / 16.0;
    // A little before the end, which is rounded off.
    let cross = piece.cross(end - 25.4).expect("the rein has a section");
    close("area", cross.area_mm2, PI * d * d / 4.0, 1e-6);
    close("moment", cross.side_mm4, PI * d.powi(4) / 64.0, 1e-6);
    close("moment across", cross.top_mm4, PI * d.powi(4) / 64.0, 1e-6);
    close("circle", cross.circle_mm, d, 1e-3);
    close("depth", cross.depth_mm, d, 1e-9);
}

/// Through the middle of the hole a round boss is two plates: `(D − d) e` of steel, and the moment
/// of a plate with a slot, `e (D³ − d³) / 12`.
#[test]
fn a_boss_is_cut_through_its_hole() {
    // Neck and shoulder so slim that the disc stands free above and below the rivet.
    let mut design = sample("textbook-light-chain");
    for size in [&mut design.neck.depth, &mut design.shoulder.depth] {
        *size = length("1/4 in");
    }
    for corner in [&mut design.neck.fillet, &mut design.shoulder.fillet] {
        *corner = length("1/32 in");
    }
    let piece = &resolve(&design).pieces()[0];
    let (from, to) = ends(piece, Part::Boss);
    let cross = piece
        .cross(f64::midpoint(from, to))
        .expect("the boss has a section");
    let across = design.boss.across.mm();
    let (hole, thick) = (design.rivet.hole.mm(), design.boss.thickness.mm());
    close("area", cross.area_mm2, (across - hole) * thick, 1e-6);
    let moment = thick * (across.powi(3) - hole.powi(3)) / 12.0;
    close("moment", cross.side_mm4, moment, 1e-6);
    within("depth", cross.depth_mm, across, 1e-9);
    close("circle", cross.circle_mm, across.hypot(thick), 1e-9);
}

/// The areas along the boss add up to its volume.
#[test]
fn sections_along_the_boss_add_up_to_its_volume() {
    const PLACES: u32 = 4000;
    for (name, model) in models() {
        let piece = &model.pieces()[0];
        let (from, to) = ends(piece, Part::Boss);
        let step = (to - from) / f64::from(PLACES);
        let at = |i: u32| from + step * (f64::from(i) + 0.5);
        let areas = (0..PLACES).map(|i| piece.cross(at(i)).expect("steel").area_mm2);
        let boss = piece.stretches.iter().find(|its| its.part == Part::Boss);
        let volume = boss.expect("the half has a boss").mass.volume;
        close(name, areas.sum::<f64>() * step, volume, 1e-3);
    }
}

/// Jung's theorem: points whose farthest two are `s` apart lie in a circle of diameter between
/// `s` and `2 s / √3`. The points are those of the mesh, seen along the tongs.
#[test]
fn the_bore_of_a_half_agrees_with_jung_on_the_points_of_its_mesh() {
    for (name, model) in models() {
        let piece = &model.pieces()[0];
        let bore = piece.bore_mm((0.0, piece.length_mm()));
        let points = Mesh::half(&model.a).points;
        // The farthest two lie on the hull.
        let seen: MultiPoint = points.iter().map(|[_, y, z]| (*y, *z)).collect();
        let hull = seen.convex_hull();
        let rim = || hull.exterior().coords();
        let apart = |a: &Coord| {
            rim()
                .map(|b| (a.x - b.x).hypot(a.y - b.y))
                .fold(0.0, f64::max)
        };
        let farthest = rim().map(apart).fold(0.0, f64::max);
        assert!(bore > 0.999 * farthest, "{name}: {bore} against {farthest}");
        let most = 2.0 / 3f64.sqrt() * farthest;
        assert!(bore < 1.005 * most, "{name}: {bore} against {most}");
    }
}

/// What passes a bore passes it in parts, and a stretch of one place is its own section.
#[test]
fn a_part_never_needs_more_than_the_whole() {
    for (name, model) in models() {
        let piece = &model.pieces()[0];
        let whole = piece.bore_mm((0.0, piece.length_mm()));
        for part in [Part::Jaw, Part::Boss, Part::Rein] {
            let of_part = piece.bore_mm(ends(piece, part));
            assert!(
                of_part <= whole + 1e-6,
                "{name}, {part}: {of_part} of {whole}"
            );
        }
    }
}

/// The outlines of a piece enclose what the meshes of its solids enclose, seen from above and from
/// the side, to the width of the mesh's own rounds.
#[test]
fn outlines_of_a_piece_reach_as_far_as_its_mesh() {
    use kurbo::Shape;
    for (name, model) in models() {
        let piece = &model.pieces()[0];
        let points = Mesh::half(&model.a).points;
        let views = [(piece.side(), 1), (piece.top(), 2)];
        for (outlines, axis) in views {
            let boxes = outlines.iter().map(Shape::bounding_box);
            let whole = boxes.reduce(|a, b| a.union(b)).expect("a piece has steel");
            let of = |axis: usize| {
                let along = points.iter().map(move |p| p[axis]);
                along.fold((f64::MAX, f64::MIN), |(a, b), v| (a.min(v), b.max(v)))
            };
            let ((x0, x1), (y0, y1)) = (of(0), of(axis));
            within(name, whole.y0, y0, 0.15);
            within(name, whole.y1, y1, 0.15);
            // From above a bent end is told by its middle line, which reaches less far.
            if axis == 1 {
                within(name, whole.x0, x0, 0.15);
                within(name, whole.x1, x1, 0.15);
            }
        }
    }
}
