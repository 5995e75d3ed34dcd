//! Sections against the formulas of Machinery's Handbook and Roark's Formulas for Stress and
//! Strain (tables of properties of sections; formulas from memory), and against polygon
//! integrals of their own outlines.

use std::f64::consts::{PI, SQRT_2};

use reinwright_core::asked::{Edge, PlainSection};
use reinwright_core::shape::section::{
    Profile, Properties, Section, plain_profile, smallest_circle_mm,
};
use reinwright_core::tongs::resolve;
use reinwright_tests::pairs::{self, mm};
use reinwright_tests::{close, within};

fn rectangle(depth: f64, width: f64, edge: Edge) -> PlainSection {
    let (depth, width) = (mm(depth), mm(width));
    PlainSection::Rectangle { depth, width, edge }
}

fn properties(plain: &PlainSection) -> Properties {
    let profile = plain_profile(plain);
    Section::new(&profile, plain.depth_mm(), plain.width_mm()).properties()
}

/// Area, second moment and section modulus for bending in the side view.
#[track_caller]
fn check(what: &str, plain: &PlainSection, expected: [f64; 3]) {
    let found = properties(plain);
    // The table's values are rounded to six or seven figures.
    close(&format!("{what}: area"), found.area_mm2, expected[0], 5e-6);
    close(&format!("{what}: I"), found.side_mm4, expected[1], 5e-6);
    close(
        &format!("{what}: Z"),
        found.side_modulus_mm3(),
        expected[2],
        5e-6,
    );
}

#[test]
fn handbook_sections() {
    let d12 = mm(12.0);
    // pi d²/4, pi d⁴/64, pi d³/32
    check(
        "round 12",
        &PlainSection::Round { diameter: d12 },
        [113.097, 1017.876, 169.646],
    );
    // a², a⁴/12, a³/6
    let square = PlainSection::Square {
        side: d12,
        edge: Edge::Sharp,
    };
    check("square 12", &square, [144.0, 1728.0, 288.0]);
    // bh, bh³/12, bh²/6
    check(
        "8 deep, 20 wide",
        &rectangle(8.0, 20.0, Edge::Sharp),
        [160.0, 853.3333, 213.3333],
    );
    check(
        "20 deep, 8 wide",
        &rectangle(20.0, 8.0, Edge::Sharp),
        [160.0, 5333.333, 533.3333],
    );
    // 0.828427 s², 0.0547379 s⁴, flat out 0.109476 s³
    check(
        "octagon 12",
        &PlainSection::Octagon { flats: d12 },
        [119.294, 1135.044, 189.174],
    );
    // 0.866025 s², 0.0601407 s⁴, 0.120281 s³
    check(
        "hexagon 12",
        &PlainSection::Hexagon { flats: d12 },
        [124.7077, 1247.077, 207.8461],
    );
    // pi b h/4, pi b h³/64, pi b h²/32
    let oval = |depth: f64, width: f64| PlainSection::Oval {
        depth: mm(depth),
        width: mm(width),
    };
    check(
        "ellipse lying",
        &oval(12.0, 20.0),
        [188.496, 1696.46, 282.743],
    );
    check(
        "ellipse standing",
        &oval(20.0, 12.0),
        [188.496, 4712.39, 471.239],
    );
}

#[test]
fn handbook_sections_with_worked_corners() {
    // bh - 2c²; bh³/12 - 4 [c⁴/36 + (c²/2)(h/2 - c/3)²]
    let cut = Edge::Chamfer(mm(2.0));
    check(
        "chamfered, lying",
        &rectangle(12.0, 20.0, cut),
        [232.0, 2650.667, 441.7778],
    );
    check(
        "chamfered, standing",
        &rectangle(20.0, 12.0, cut),
        [232.0, 7301.333, 730.1333],
    );
    // bh - (4 - pi) r²; bh³/12 - 4 [0.00754512 r⁴ + 0.2146018 r² (h/2 - 0.2233679 r)²]
    let round = Edge::Radius(mm(3.0));
    check(
        "rounded, lying",
        &rectangle(12.0, 20.0, round),
        [232.2743, 2658.086, 443.0143],
    );
    check(
        "rounded, standing",
        &rectangle(20.0, 12.0, round),
        [232.2743, 7325.060, 732.5060],
    );
}

#[test]
fn a_rectangle_rounded_to_half_its_depth_is_a_stadium() {
    // ws + pi r²; s w³/12 + pi w⁴/64 and s³ w/12 + pi r⁴/4 + pi r² s²/4 + 4 s r³/3, w 12, L 20
    let stadium = Edge::Radius(mm(6.0));
    check(
        "stadium, lying",
        &rectangle(12.0, 20.0, stadium),
        [209.0973, 2169.876, 361.646],
    );
    check(
        "stadium, standing",
        &rectangle(20.0, 12.0, stadium),
        [209.0973, 5643.433, 564.3433],
    );
}

#[test]
fn half_round() {
    // pi d²/8; (pi/8 - 8/(9 pi)) (d/2)⁴; centroid 0.212207 d above the flat; Z to the top
    let half = PlainSection::HalfRound {
        depth: mm(6.0),
        width: mm(12.0),
    };
    check("half-round 12", &half, [56.5487, 142.2450, 41.188_23]);
    let found = properties(&half);
    close("centroid above the flat", found.inner_mm, 2.546_479, 1e-6);
    close(
        "centroid under the top",
        found.outer_mm,
        6.0 - 2.546_479,
        1e-6,
    );
}

#[test]
fn extreme_fibres_are_half_the_size_where_both_sides_are_alike() {
    let found = properties(&rectangle(12.0, 20.0, Edge::Chamfer(mm(2.0))));
    close("outer", found.outer_mm, 6.0, 1e-9);
    close("inner", found.inner_mm, 6.0, 1e-9);
    close("side", found.half_width_mm, 10.0, 1e-12);
    within("centroid", found.centroid_mm, 0.0, 1e-9);
}

#[test]
fn corner_distances() {
    // Machinery's Handbook: across corners over across flats 1.414214, 1.154701, 1.082392.
    let circle = |plain: &PlainSection| {
        let profile = plain_profile(plain);
        let section = Section::new(&profile, plain.depth_mm(), plain.width_mm());
        smallest_circle_mm(&section.outline(1e-4))
    };
    let flats = mm(19.0);
    let square = PlainSection::Square {
        side: flats,
        edge: Edge::Sharp,
    };
    close("square", circle(&square), 19.0 * SQRT_2, 1e-6);
    close(
        "hexagon",
        circle(&PlainSection::Hexagon { flats }),
        19.0 * 1.154_701,
        1e-6,
    );
    close(
        "octagon",
        circle(&PlainSection::Octagon { flats }),
        19.0 * 1.082_392,
        1e-6,
    );
    close(
        "round",
        circle(&PlainSection::Round { diameter: flats }),
        19.0,
        1e-5,
    );
    let rectangle = rectangle(9.0, 12.0, Edge::Sharp);
    close("three, four, five", circle(&rectangle), 15.0, 1e-9);
    within("nothing", smallest_circle_mm(&[]), 0.0, 0.0);
    within("one point", smallest_circle_mm(&[(3.0, 4.0)]), 0.0, 0.0);
    let line = [(0.0, 0.0), (1.0, 1.0), (2.0, 2.0)];
    close(
        "three in a line",
        smallest_circle_mm(&line),
        2.0 * SQRT_2,
        1e-12,
    );
}

/// Area, height of the centroid, and second moments about the centroid by the polygon formulas
/// (Steger 1996; the shoelace formula and its like, from memory).
fn polygon(points: &[(f64, f64)]) -> [f64; 4] {
    let n = points.len();
    let sum = |f: &dyn Fn((f64, f64), (f64, f64)) -> f64| -> f64 {
        let side = |i: usize| (points[i], points[(i + 1) % n]);
        (0..n)
            .map(|i| {
                let (p, q) = side(i);
                (p.0 * q.1 - q.0 * p.1) * f(p, q)
            })
            .sum()
    };
    let area = sum(&|_, _| 0.5);
    let (z, y) = (
        sum(&|p, q| p.0 + q.0) / 6.0 / area,
        sum(&|p, q| p.1 + q.1) / 6.0 / area,
    );
    let about_z = sum(&|p, q| p.1 * p.1 + p.1 * q.1 + q.1 * q.1) / 12.0;
    let about_y = sum(&|p, q| p.0 * p.0 + p.0 * q.0 + q.0 * q.0) / 12.0;
    [area, y, about_z - area * y * y, about_y - area * z * z]
}

/// How far the outline may stray from its curves, over the smaller size of the section. Areas of
/// polygons are then off by up to about four times that, second moments by eight times.
const STRAY: f64 = 2e-5;

#[track_caller]
fn check_own_outline(what: &str, section: &Section<'_>) {
    let found = section.properties();
    let [area, y, side, top] = polygon(&section.outline(STRAY * section.depth.min(section.width)));
    close(
        &format!("{what}: area by the law"),
        section.area_mm2(),
        area,
        2e-4,
    );
    close(&format!("{what}: area"), found.area_mm2, area, 5.0 * STRAY);
    within(
        &format!("{what}: centroid"),
        found.centroid_mm,
        y,
        5.0 * STRAY * section.depth,
    );
    close(&format!("{what}: side"), found.side_mm4, side, 10.0 * STRAY);
    close(&format!("{what}: top"), found.top_mm4, top, 10.0 * STRAY);
}

#[test]
fn every_section_of_every_pair_is_its_own_outline() {
    for (name, pair) in pairs::all() {
        let half = resolve(&pair).a;
        for sweep in [&half.jaw, &half.rein] {
            for i in 0..=20 {
                let s = sweep.length() * f64::from(i) / 20.0;
                check_own_outline(&format!("{name} at {s:.1}"), &sweep.section(s));
            }
        }
    }
}

#[test]
fn outlines_run_anticlockwise_and_fill_their_box() {
    for (name, pair) in pairs::all() {
        let jaw = resolve(&pair).a.jaw;
        for s in [0.0, 0.5, 1.0].map(|t| t * jaw.length()) {
            let section = jaw.section(s);
            let outline = section.outline(1e-3);
            assert!(polygon(&outline)[0] > 0.0, "{name} at {s} runs clockwise");
            let top = outline.iter().map(|p| p.1).fold(f64::MIN, f64::max);
            let side = outline.iter().map(|p| p.0).fold(f64::MIN, f64::max);
            within(name, side, section.width / 2.0, 1e-6);
            assert!(
                top <= section.depth / 2.0 + 1e-9,
                "{name} at {s} is taller than its box"
            );
        }
    }
}

#[test]
fn a_v_bit_is_two_legs_and_a_ridge() {
    // Two legs of leg × wall, and between them at the ridge a sector of the wall's radius over
    // 180° less the included angle (plane geometry).
    let pair = pairs::v_bit();
    let reinwright_core::tongs::jaw::JawStyle::VBit(v) = &pair.jaw.style else {
        panic!("a V bit was asked for");
    };
    let (leg, wall, angle) = (v.leg.mm(), v.wall.mm(), v.angle.radians());
    let jaw = resolve(&pair).a.jaw;
    let section = jaw.section(0.7 * jaw.length());
    let expected = 2.0 * leg * wall + (PI - angle) / 2.0 * wall * wall;
    close("area of the V", section.area_mm2(), expected, 1e-7);
}

#[test]
fn a_hollow_bit_is_the_difference_of_two_segments() {
    // Circular segments above the line of the lips: r² acos(c/r) - c sqrt(r² - c²) (Machinery's
    // Handbook), c from the centre up to the line; below zero where the centre lies above it.
    let pair = pairs::starting("hollow bit", "5/8 in round", "3/4 in square");
    let reinwright_core::tongs::jaw::JawStyle::HollowBit(hollow) = &pair.jaw.style else {
        panic!("a hollow bit was asked for");
    };
    let (r, wall) = (hollow.radius.mm(), hollow.wall.mm());
    let up = r - hollow.groove.mm();
    let segment = |r: f64| r * r * (up / r).acos() - up * (r * r - up * up).sqrt();
    let jaw = resolve(&pair).a.jaw;
    let section = jaw.section(0.7 * jaw.length());
    close(
        "area of the hollow",
        section.area_mm2(),
        segment(r + wall) - segment(r),
        1e-7,
    );
}

#[test]
fn edges_as_large_as_half_a_side_stop_there() {
    let huge = rectangle(10.0, 10.0, Edge::Radius(mm(50.0)));
    close(
        "rounded to a round",
        properties(&huge).area_mm2,
        25.0 * PI,
        1e-7,
    );
    let huge = rectangle(10.0, 10.0, Edge::Chamfer(mm(50.0)));
    close(
        "cut to a square on its corner",
        properties(&huge).area_mm2,
        50.0,
        1e-9,
    );
    close("full box", Profile::rectangle().fullness(), 1.0, 1e-12);
}

/// The short cut for many blends of the same profiles is the integral that one blend takes.
#[test]
fn known_blends_are_the_integrals_themselves() {
    /// What the quadrature itself is true to where the surfaces of a blend have corners and steep
    /// ends in one stretch.
    const TRUE: f64 = 1e-6;
    let profiles = [
        Profile::rectangle(),
        Profile::rounded(1.0, 1.0),
        Profile::chamfered(0.3, 0.4),
        Profile::octagon_on_corners(),
    ];
    let mut known = reinwright_core::shape::section::Known::default();
    for (from, to) in profiles
        .iter()
        .flat_map(|a| profiles.iter().map(move |b| (a, b)))
    {
        for blend in [0.0, 0.05, 1.0 / 3.0, 0.5, 0.77, 0.999, 1.0] {
            let section = Section {
                depth: 12.0,
                width: 17.0,
                from,
                to,
                blend,
            };
            let (short, whole) = (known.properties(&section), section.properties());
            close("area", short.area_mm2, whole.area_mm2, TRUE);
            close("side", short.side_mm4, whole.side_mm4, TRUE);
            close("top", short.top_mm4, whole.top_mm4, TRUE);
            within("centroid", short.centroid_mm, whole.centroid_mm, 1e-9);
        }
    }
}
