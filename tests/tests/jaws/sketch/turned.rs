//! A style that is turned into a sketch: the very same jaw, also in a file and at another size
//! (square-cube law).

use reinwright_core::proof::check::check;
use reinwright_core::shape::sweep::Edge;
use reinwright_core::tongs::document::{self, Document};
use reinwright_core::tongs::jaw::{Jaw, JawStyle, Sketch};
use reinwright_core::tongs::resolve;
use reinwright_core::units::{Length, Unit};
use reinwright_tests::pairs::starting;
use reinwright_tests::{close, within};

use super::{sketched, styles};

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
