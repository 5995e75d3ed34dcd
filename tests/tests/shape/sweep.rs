//! Sweeps against closed forms: frustum, prismatoid, Pappus–Guldinus (Machinery's Handbook and
//! Bronshtein's Handbook of Mathematics, from memory; values worked out by hand beside each).

use std::f64::consts::{FRAC_PI_2, PI};

use kurbo::{ParamCurveNearest, PathEl, PathSeg, Point};
use reinwright_core::asked::PlainSection;
use reinwright_core::shape::section::{Profile, plain_profile};
use reinwright_core::shape::sweep::{Ease, Edge, Path, Run, Station, Sweep};
use reinwright_tests::pairs::{self, mm};
use reinwright_tests::{close, within};

/// A sweep of two stations, each with its depth and width.
fn taper(path: Path, profiles: [Profile; 2], from: (f64, f64), to: (f64, f64)) -> Sweep {
    let station = |at: f64, (depth, width): (f64, f64), profile: usize| Station {
        at,
        depth,
        width,
        rise: 0.0,
        shift: 0.0,
        profile,
        ease: Ease::Linear,
    };
    let stations = vec![station(0.0, from, 0), station(path.length(), to, 1)];
    Sweep {
        path,
        stations,
        profiles: profiles.to_vec(),
    }
}

fn round() -> Profile {
    plain_profile(&PlainSection::Round { diameter: mm(10.0) })
}

fn straight(length: f64) -> Path {
    Path::straight(Point::new(3.0, -2.0), 0.4, length)
}

/// Volume of a straight taper.
#[track_caller]
fn check(what: &str, profile: &Profile, sizes: [(f64, f64); 2], length: f64, expected: f64) {
    let both = [profile.clone(), profile.clone()];
    let sweep = taper(straight(length), both, sizes[0], sizes[1]);
    close(what, sweep.volume_mm3(), expected, 1e-7);
}

#[test]
fn similar_sections_make_a_frustum() {
    // V = h/3 (A1 + A2 + sqrt(A1 A2)).
    let square = Profile::rectangle();
    check(
        "round 19 to 10",
        &round(),
        [(19.0, 19.0), (10.0, 10.0)],
        300.0,
        51_129.42,
    );
    check(
        "square 16 to 8",
        &square,
        [(16.0, 16.0), (8.0, 8.0)],
        200.0,
        89_600.0 / 3.0,
    );
    check(
        "to a point",
        &round(),
        [(12.0, 12.0), (0.0, 0.0)],
        30.0,
        PI * 36.0 * 10.0,
    );
}

#[test]
fn a_rectangle_that_changes_both_ways_makes_a_prismatoid() {
    // V = h/6 (A1 + 4 Am + A2), Am = 15 x 13; averaging the ends would give 10 800.
    check(
        "prismatoid",
        &Profile::rectangle(),
        [(20.0, 10.0), (10.0, 16.0)],
        60.0,
        11_400.0,
    );
}

#[test]
fn area_is_depth_times_width_times_fullness_all_linear() {
    let sweep = taper(
        straight(100.0),
        [Profile::rectangle(), round()],
        (20.0, 12.0),
        (10.0, 16.0),
    );
    for t in [0.0, 0.25, 0.5, 0.9, 1.0] {
        let (h, w, k) = (20.0 - 10.0 * t, 12.0 + 4.0 * t, 1.0 + (PI / 4.0 - 1.0) * t);
        let section = sweep.section(100.0 * t);
        close("area by the law", section.area_mm2(), h * w * k, 1e-9);
        close(
            "area integrated",
            section.properties().area_mm2,
            h * w * k,
            1e-8,
        );
    }
}

#[test]
fn square_to_round_is_the_integral_of_its_law() {
    // ∫ of 12 x 12 (1 + (pi/4 - 1) t) over 80 mm.
    let both = [Profile::rectangle(), round()];
    let sweep = taper(straight(80.0), both, (12.0, 12.0), (12.0, 12.0));
    close(
        "square to round",
        sweep.volume_mm3(),
        144.0 * 80.0 * (1.0 + PI / 4.0) / 2.0,
        1e-8,
    );
}

/// A quarter of a turn of 12 mm round about a centre 30 mm from the centroid.
fn quarter(curvature: f64, rise: f64) -> Sweep {
    let bend = Run {
        length: FRAC_PI_2 / curvature.abs(),
        curvature,
    };
    let path = Path::new(Point::ORIGIN, 0.0, vec![bend]);
    let mut sweep = taper(path, [round(), round()], (12.0, 12.0), (12.0, 12.0));
    sweep
        .stations
        .iter_mut()
        .for_each(|station| station.rise = rise);
    sweep
}

#[test]
fn a_bent_bar_obeys_pappus_and_guldinus() {
    // V = θ R A with R the centroid's radius: 5329.59 mm³ for 12 mm round at 30 mm.
    close(
        "path on the centroid",
        quarter(1.0 / 30.0, 0.0).volume_mm3(),
        5329.59,
        1e-6,
    );
    close(
        "turning right",
        quarter(-1.0 / 30.0, 0.0).volume_mm3(),
        5329.59,
        1e-6,
    );
    // The centroid 5 mm left of the path, toward the centre of a left turn of radius 35.
    close(
        "path beside the centroid",
        quarter(1.0 / 35.0, 5.0).volume_mm3(),
        5329.59,
        1e-6,
    );
    close(
        "on the outside",
        quarter(-1.0 / 25.0, 5.0).volume_mm3(),
        5329.59,
        1e-6,
    );
}

#[test]
fn moments_of_a_quarter_bend_are_those_of_a_torus() {
    // About the bend's centre (0, 30): ∫ over the torus of x = A (R² + r²/4) for a quarter turn
    // (I about the section's own middle counts), the same by y.
    let (x, y) = quarter(1.0 / 30.0, 0.0).moments();
    let area = PI * 36.0;
    let arm = area * (900.0 + 9.0);
    let volume = area * 30.0 * FRAC_PI_2;
    close("x", x, arm, 1e-6);
    close("y", volume * 30.0 - y, arm, 1e-6);
}

#[test]
fn parts_of_a_sweep_add_up() {
    for (name, pair) in pairs::all() {
        let rein = reinwright_core::tongs::resolve(&pair).a.rein;
        let length = rein.length();
        for cut in [0.1, 0.5, 0.93].map(|t| t * length) {
            let sum = rein.volume_between(0.0, cut) + rein.volume_between(cut, length);
            close(name, sum, rein.volume_mm3(), 1e-7);
        }
    }
}

#[test]
fn paths_run_on_without_a_jump_or_a_kink() {
    for (name, pair) in pairs::all() {
        let path = reinwright_core::tongs::resolve(&pair).a.rein.path;
        for s in path.breaks() {
            let (before, after) = (path.at(s - 1e-9), path.at(s + 1e-9));
            within(name, before.at.distance(after.at), 0.0, 1e-8);
            within(name, before.heading, after.heading, 1e-7);
        }
    }
}

#[test]
fn a_path_walks_as_fast_as_its_arc_length() {
    for (name, pair) in pairs::all() {
        let path = reinwright_core::tongs::resolve(&pair).a.rein.path;
        let steps = 4000u32;
        let at = |i: u32| path.at(path.length() * f64::from(i) / f64::from(steps)).at;
        let walked: f64 = (0..steps).map(|i| at(i).distance(at(i + 1))).sum();
        close(name, walked, path.length(), 1e-6);
    }
}

#[test]
fn a_circle_closes_on_itself() {
    let turn = Run {
        length: 2.0 * PI * 40.0,
        curvature: 1.0 / 40.0,
    };
    let end = Path::new(Point::new(1.0, 2.0), 0.3, vec![turn]).at(turn.length);
    within("x", end.at.x, 1.0, 1e-9);
    within("y", end.at.y, 2.0, 1e-9);
}

/// The distance of a point from the nearest place of a path.
fn off(path: &[PathSeg], p: Point) -> f64 {
    let each = path.iter().map(|seg| seg.nearest(p, 1e-6).distance_sq);
    each.fold(f64::MAX, f64::min).sqrt()
}

#[test]
fn drawn_edges_follow_the_sizes_everywhere() {
    // Design: the outline on paper within 0.1 mm of the model; here within a hundredth of that.
    for (name, pair) in pairs::all() {
        let half = reinwright_core::tongs::resolve(&pair).a;
        for sweep in [&half.jaw, &half.rein] {
            for edge in [Edge::Outer, Edge::Inner] {
                let drawn: Vec<PathSeg> =
                    sweep.edge(edge, 0.0, sweep.length()).segments().collect();
                for i in 0..=997 {
                    let s = sweep.length() * f64::from(i) / 997.0;
                    within(name, off(&drawn, sweep.edge_point(edge, s)), 0.0, 1e-3);
                }
            }
        }
    }
}

#[test]
fn edges_pass_through_exact_points_both_ways_round() {
    for (name, pair) in pairs::all() {
        let rein = reinwright_core::tongs::resolve(&pair).a.rein;
        for edge in [Edge::Outer, Edge::Inner, Edge::Far, Edge::Near] {
            let there = rein.edge(edge, 0.0, rein.length());
            let back = rein.edge(edge, rein.length(), 0.0);
            let mut ends: Vec<Point> = there
                .elements()
                .iter()
                .filter_map(PathEl::end_point)
                .collect();
            let others: Vec<Point> = back
                .elements()
                .iter()
                .filter_map(PathEl::end_point)
                .collect();
            ends.reverse();
            assert_eq!(ends.len(), others.len(), "{name}");
            for (a, b) in ends.iter().zip(&others) {
                within(name, a.distance(*b), 0.0, 1e-9);
            }
            for s in rein.cuts(0.0, rein.length()) {
                let p = rein.edge_point(edge, s);
                let nearest = ends.iter().map(|q| q.distance(p)).fold(f64::MAX, f64::min);
                within(name, nearest, 0.0, 1e-9);
            }
        }
    }
}

#[test]
fn a_bend_tighter_than_the_rein_is_deep_is_told() {
    let spare = |radius: f64| {
        quarter(1.0 / radius, 0.0)
            .tightest_bend()
            .map(|bend| bend.0)
    };
    close("30 mm", spare(30.0).expect("a bend"), 24.0, 1e-12);
    within(
        "as tight as can be",
        spare(6.0).expect("a bend"),
        0.0,
        1e-12,
    );
    assert!(spare(4.0).expect("a bend") < 0.0);
    let none = taper(straight(10.0), [round(), round()], (5.0, 5.0), (5.0, 5.0));
    assert_eq!(none.tightest_bend(), None);
}
