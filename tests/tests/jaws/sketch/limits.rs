//! What no sketch may be: damaged in its file, or larger than can be drawn.

use reinwright_core::draw::{DrawOptions, pair};
use reinwright_core::shop::Answers;
use reinwright_core::tongs::document;
use reinwright_core::tongs::jaw::sketch::SketchLay;
use reinwright_core::tongs::resolve;
use reinwright_tests::pairs::starting;

use super::{changed, sketched};

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
