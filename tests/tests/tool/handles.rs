//! Handles of tools.

use kurbo::Vec2;
use reinwright_core::asked::Step;
use reinwright_core::draw::{ToolHandle, drag_tool, step_tool, tool_handles};
use reinwright_core::tool::{Tool, resolve};
use reinwright_tests::tools::all;
use reinwright_tests::within;

fn value(own: &Tool, handle: &ToolHandle) -> f64 {
    let field = own.field(&handle.path).expect("it has the field");
    field.value.number().expect("a number")
}

/// Dragged by what a millimetre of the value moves it, a mark goes with the steel.
#[test]
fn a_mark_goes_with_the_hand() {
    for (name, own) in all() {
        let model = resolve(&own);
        let handles = tool_handles(&own, &model);
        assert!(handles.len() >= 6, "{name}: {}", handles.len());
        for handle in &handles {
            let steps = 8.0
                * own
                    .field(&handle.path)
                    .expect("a field")
                    .value
                    .step(Step::Fine, own.units.unit())
                    .expect("a step");
            let hand = handle.answer * steps;
            let dragged = drag_tool(&own, handle, hand, Step::Fine);
            let what = format!("{name}: {}", handle.path);
            let grown = value(&dragged, handle) - value(&own, handle);
            within(&what, grown, steps, 0.51 * steps / 8.0);
            let (Some(from), Some(to)) = (
                handle.place(&own, &model),
                handle.place(&dragged, &resolve(&dragged)),
            ) else {
                panic!("{what}: it lies nowhere")
            };
            // What it moved by is what the hand did, to half a step and the bend of the answer.
            within(
                &what,
                (to - from - hand).hypot(),
                0.0,
                0.75 * hand.hypot() + 0.1,
            );
            assert!((to - from).dot(hand) > 0.0, "{what}");
        }
    }
}

/// A little movement, or none, changes nothing; a wild one stays inside the limits.
#[test]
fn drags_are_held() {
    for (name, own) in all() {
        for handle in tool_handles(&own, &resolve(&own)) {
            assert_eq!(
                drag_tool(&own, &handle, Vec2::ZERO, Step::Usual),
                own,
                "{name}"
            );
            for wild in [Vec2::new(1e9, -1e9), Vec2::new(f64::NAN, 0.0)] {
                let far = drag_tool(&own, &handle, wild, Step::Usual);
                let field = far.field(&handle.path).expect("a field");
                assert!(
                    field.value.is_inside(field.range),
                    "{name}: {}",
                    handle.path
                );
            }
            let one = step_tool(&own, &handle, 1.0, Step::Usual);
            assert!(
                value(&one, &handle) >= value(&own, &handle),
                "{name}: {}",
                handle.path
            );
        }
    }
}

/// Lengths that shape the steel have a mark; no two marks lie on each other.
#[test]
fn the_taper_of_a_punch_has_a_mark() {
    let own = &all()[0].1;
    let handles = tool_handles(own, &resolve(own));
    for path in [
        "working.end",
        "working.taper",
        "body.length",
        "body.body.diameter",
        "body.face",
    ] {
        assert!(
            handles.iter().any(|handle| handle.path == path),
            "{path}: {handles:?}"
        );
    }
    // What it goes through shapes no steel.
    assert!(
        !handles
            .iter()
            .any(|handle| handle.path == "working.through")
    );
}
