//! Jaws of one's own: kept and read back, and used on other work.

use reinwright_core::tongs::document::{self, Document};
use reinwright_core::tongs::jaw::Jaw;
use reinwright_core::tongs::jaw::sketch::{KeptJaw, SketchLay, is_kept_jaw};
use reinwright_core::units::{Length, Unit};
use reinwright_tests::pairs::starting;
use reinwright_tests::{close, within};

use super::{changed, sketched, styles};

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
