//! The stages as the window steps through them.

use kurbo::Vec2;
use reinwright_core::draw;
use reinwright_core::making::usual;
use reinwright_core::tongs::resolve;
use reinwright_tests::designs::samples;
use reinwright_tests::pairs;

use super::job_sheet::texts;
use super::planned;

/// Names, sizes, marks and what is hot keep off each other, in small and in large letters.
#[test]
fn no_text_of_a_stage_stands_over_another() {
    /// Signs of one row stand in the next by a little, in text sizes.
    const HAIR: f64 = 0.1;
    let pairs = pairs::all().into_iter();
    let pairs = pairs.map(|(name, design)| (name.to_owned(), design));
    for (name, design) in samples().into_iter().chain(pairs) {
        let model = resolve(&design);
        let plan = planned(&design, usual(&design, &model));
        let show = design.units.show();
        let ground = draw::ground(&model, &plan, f64::NEG_INFINITY, show);
        for at in 0..plan.stages.len() {
            for size in [7.0, 12.0] {
                let drawing = draw::staged(&model, &plan, at, (&ground, size), show);
                let texts = texts(&drawing.items, Vec2::ZERO);
                assert!(texts.len() > 2, "{name}, stage {at}: views have names");
                for (n, (own, room)) in texts.iter().enumerate() {
                    for (other, beside) in &texts[n + 1..] {
                        let hair = -HAIR * size;
                        let shared = room.inset(hair).intersect(beside.inset(hair));
                        let over = shared.width() > 0.0 && shared.height() > 0.0;
                        let what = (&own.text, &other.text);
                        assert!(!over, "{name}, stage {at}, text {size}: {what:?}");
                    }
                }
            }
        }
    }
}
