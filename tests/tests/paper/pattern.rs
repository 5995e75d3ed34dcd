//! A pattern for cutting: read by `usvg`'s own XML reader, the kerf measured by `geo`.

use geo::{Area, Buffer, Distance, Euclidean, Point as GeoPoint};
use kurbo::{Affine, BezPath, Shape};
use reinwright_core::draw::{Kept, Which, pattern};
use reinwright_core::paper::ink::svg;
use reinwright_core::tongs::resolve;
use reinwright_tests::command_line::{done, refused, text};
use reinwright_tests::designs::{sample, samples, samples_folder};
use reinwright_tests::files::{bytes, folder};
use reinwright_tests::outline::{corners, polygon_within};
use reinwright_tests::within;
use usvg::{Options, Tree};

/// The paths of a group of an SVG, y up again.
fn paths(file: &str, id: &str) -> Vec<BezPath> {
    let tree = usvg::roxmltree::Document::parse(file).expect("an SVG");
    let group = tree
        .descendants()
        .find(|node| node.attribute("id") == Some(id));
    let group = group.unwrap_or_else(|| panic!("no group {id}"));
    let paths = group.descendants().filter_map(|node| node.attribute("d"));
    let read = |d: &str| Affine::FLIP_Y * BezPath::from_svg(d).expect("a path");
    paths.map(read).collect()
}

/// The cut's middle runs half a kerf beside the outline, all along it, on the side that is lost.
#[test]
fn the_middle_of_the_cut_runs_half_a_kerf_aside() {
    /// Of some thousand corners of the cut so many are left out between two that are measured.
    const APART: usize = 17;
    for name in ["bowed-ball-ends", "light-flat", "v-bit-square"] {
        let model = resolve(&sample(name));
        let outline = model.a.outline();
        let steel = polygon_within(&outline, 1e-3);
        for (kept, side) in [(Kept::Inside, 1.0), (Kept::Outside, -1.0)] {
            for kerf in [0.2, 1.5] {
                let file = svg(&pattern(&model, Which::A, kept, kerf), name);
                let cut = &paths(&file, "outline")[..];
                assert_eq!(cut.len(), 1, "{name}: one closed line");
                for (x, y) in corners(&cut[0]).into_iter().step_by(APART) {
                    let away = Euclidean.distance(&GeoPoint::new(x, y), steel.exterior());
                    within(
                        &format!("{name}, {kept:?}, at {x:.1}, {y:.1}"),
                        away,
                        kerf / 2.0,
                        0.02,
                    );
                }
                let area = polygon_within(&cut[0], 1e-3).unsigned_area();
                // geo's own outline at a distance, with corners rounded as well.
                let expected = steel.buffer(side * kerf / 2.0).unsigned_area();
                let off = 0.01 * outline.perimeter(1e-3);
                within(&format!("{name}, {kept:?}, area"), area, expected, off);
            }
        }
    }
}

/// The hole of a pattern is as much smaller as the beam takes; a window has none.
#[test]
fn the_hole_leaves_room_for_the_cut() {
    for (name, design) in samples() {
        let model = resolve(&design);
        let hole = |kept, kerf| {
            let file = svg(&pattern(&model, Which::B, kept, kerf), &name);
            let paths = paths(&file, "hole");
            paths.first().map(|path| path.bounding_box().width())
        };
        let diameter = design.rivet.hole.mm();
        for kerf in [0.0, 0.4] {
            let cut = hole(Kept::Inside, kerf).expect("a hole");
            within(&name, cut, diameter - kerf, 2e-3);
            assert_eq!(hole(Kept::Outside, kerf), None, "{name}");
        }
    }
}

#[test]
fn the_command_line_writes_three_groups_that_a_reader_opens() {
    let folder = folder();
    let out = folder.path().join("a.svg");
    let design = samples_folder().join("v-over-flat.ron");
    let ask = |kerf: &'static str| {
        let all = [
            "drawing",
            text(&design),
            "--out",
            text(&out),
            "--of",
            "pattern",
        ];
        let more = ["--kerf", kerf, "--keep", "outside", "--half", "b"];
        all.into_iter()
            .chain(more)
            .map(str::to_owned)
            .collect::<Vec<_>>()
    };
    let said = |all: Vec<String>, run: &dyn Fn(&[&str])| {
        run(&all.iter().map(String::as_str).collect::<Vec<_>>());
    };
    said(ask("0.3 mm"), &|all| {
        done(all);
    });
    let file = String::from_utf8(bytes(&out)).unwrap();
    Tree::from_str(&file, &Options::default()).expect("usvg opens it");
    assert_eq!(paths(&file, "outline").len(), 1);
    assert_eq!(paths(&file, "scribe").len(), 5);
    said(ask("9 mm"), &|all| refused(all, &["--kerf", "5 mm"]));
    said(ask("wide"), &|all| refused(all, &["--kerf"]));
}
