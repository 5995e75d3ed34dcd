//! Nodes that are added leave the shape as it was.

use reinwright_core::shape::sweep::Edge;
use reinwright_core::tongs::jaw::sketch::{Depth, NodeValue};
use reinwright_core::tongs::jaw::{Jaw, JawStyle, Sketch};
use reinwright_core::units::{Length, Unit};
use reinwright_tests::pairs::starting;
use reinwright_tests::{close, within};

use super::{changed, sketched, styles};

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
