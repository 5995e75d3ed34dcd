//! Handles on the drawing: each lies on its steel, follows the hand, and can do no harm.

use std::collections::BTreeSet;

use kurbo::Vec2;
use proptest::prelude::*;
use reinwright_core::document::{Document, Hand, Projection, Units, check_limits};
use reinwright_core::drawing::{DrawOptions, Item, Shifts, pair};
use reinwright_core::handle::{
    Answer, Handle, HandleId, OnPaper, SLOWEST, Step, View, drag, handles, stepped, value_text,
};
use reinwright_core::jaw::JawStyle;
use reinwright_core::resolve;
use reinwright_tests::{designs, pairs};

/// Every sample and every pair of the checks, turned left and right.
fn designs_of_both_hands() -> Vec<(String, Document)> {
    let samples = designs::sample_paths().into_iter().map(|path| {
        let name = path
            .file_stem()
            .expect("a name")
            .to_string_lossy()
            .into_owned();
        (name.clone(), designs::sample(&name))
    });
    let pairs = pairs::all()
        .into_iter()
        .map(|(name, pair)| (name.to_owned(), pair));
    samples
        .chain(pairs)
        .flat_map(|(name, design)| {
            let turned = |hand| {
                (
                    format!("{name}, {hand:?}"),
                    Document {
                        hand,
                        ..design.clone()
                    },
                )
            };
            [turned(Hand::Left), turned(Hand::Right)]
        })
        .collect()
}

fn path(handle: &Handle) -> &str {
    let HandleId::Field { path } = &handle.id;
    path
}

fn of<'a>(all: &'a [Handle], wanted: &str) -> &'a Handle {
    let found = all.iter().find(|handle| path(handle) == wanted);
    found.unwrap_or_else(|| panic!("{wanted} has no handle"))
}

/// What a smith most wants to pull at has a handle on every design.
#[test]
fn the_common_sizes_have_handles() {
    for (name, design) in designs_of_both_hands() {
        let all = handles(&design, &resolve(&design));
        let paths: BTreeSet<&str> = all.iter().map(path).collect();
        assert_eq!(paths.len(), all.len(), "{name}: a value has two handles");
        for wanted in [
            "jaw.length",
            "neck.depth",
            "boss.across",
            "boss.thickness",
            "shoulder.length",
            "shoulder.depth",
            "rein.length",
            "rein.gap",
            "rein.hand",
            "rivet.hole",
            "rivet.diameter",
        ] {
            assert!(paths.contains(wanted), "{name}: {wanted} has no handle");
        }
    }
}

/// A style's own sizes need no code to have handles.
#[test]
fn the_sizes_of_every_style_have_handles() {
    for style in JawStyle::NAMES {
        let design = pairs::starting(style, "5/8 in round", "3/4 in square");
        let all = handles(&design, &resolve(&design));
        let held: BTreeSet<&str> = all.iter().map(path).collect();
        let mut without = Vec::new();
        design.clone().visit(&mut |field| {
            let sized = matches!(
                field.value,
                reinwright_core::document::Value::Length(_)
                    | reinwright_core::document::Value::Angle(_)
            );
            if sized && field.path.starts_with("jaw.") && !held.contains(field.path.as_str()) {
                without.push(field.path.clone());
            }
        });
        assert!(without.is_empty(), "{style}: {without:?} have no handle");
    }
}

/// Where a dragged handle's steel has gone, against where the hand went.
fn followed(design: &Document, handle: &Handle, more: f64, on: &OnPaper) -> (Vec2, f64) {
    let model = resolve(design);
    let Answer::Along(by) = handle.answer;
    let moved = handle.way(on) * more;
    let dragged = drag(design, handle, (moved, on), Step::Fine).document;
    let before = handle.place(design, &model, on);
    let after = handle.place(&dragged, &resolve(&dragged), on);
    (after - before - moved, by.hypot())
}

/// Dragged a little along its way the steel under a handle goes with the hand: as near as the step
/// of 0.1 mm or 0.1 degree lets it, and a quarter for the bend of the answer.
#[test]
fn the_steel_follows_the_hand() {
    let on = OnPaper {
        opening: 0.06,
        shifts: Shifts {
            top: Vec2::new(0.0, 90.0),
            end: Vec2::new(140.0, 0.0),
        },
    };
    for (name, mut design) in designs_of_both_hands() {
        design.units = Units::Millimetre;
        let all = handles(&design, &resolve(&design));
        for handle in &all {
            for more in [0.8, -0.8] {
                let (off, rate) = followed(&design, handle, more, &on);
                let along = off.dot(handle.way(&on)).abs();
                let held = held_back(&design, handle);
                assert!(
                    along <= 0.25 * f64::abs(more) + 0.051 * rate || held,
                    "{name}: {} dragged by {more} is off by {along} (rate {rate})",
                    handle.label
                );
            }
        }
    }
}

/// Whether a value has little room on one side, by its limits or by other sizes: within a
/// millimetre either way its steel stops following.
fn held_back(design: &Document, handle: &Handle) -> bool {
    let model = resolve(design);
    let on = OnPaper::default();
    let go = |more: f64| {
        let moved = handle.way(&on) * more;
        let dragged = drag(design, handle, (moved, &on), Step::Fine).document;
        let to = handle.place(&dragged, &resolve(&dragged), &on);
        (to - handle.place(design, &model, &on)).dot(handle.way(&on))
    };
    go(0.8) < 0.1 || go(-0.8) > -0.1
}

/// The place of each handle is on the drawn views, whichever way they are laid out.
#[test]
fn handles_lie_in_their_views() {
    for (name, design) in designs_of_both_hands() {
        for projection in [Projection::ThirdAngle, Projection::FirstAngle] {
            let design = Document {
                projection,
                ..design.clone()
            };
            let model = resolve(&design);
            for opening in [0.0, 0.1] {
                let options = DrawOptions {
                    opening,
                    ..DrawOptions::default()
                };
                let drawing = pair(&design, &model, &options);
                let on = OnPaper {
                    opening,
                    shifts: Shifts::of(&drawing),
                };
                for handle in handles(&design, &model) {
                    let view = match handle.view() {
                        View::Side => "Side view",
                        View::Top => "Top view",
                        View::End => "End view",
                    };
                    let group = drawing.items.iter().find(
                        |item| matches!(item, Item::Group(group) if group.name.starts_with(view)),
                    );
                    let area = group.and_then(Item::bounds).expect("the view is drawn");
                    let at = handle.place(&design, &model, &on);
                    assert!(
                        area.inflate(0.01, 0.01).contains(at),
                        "{name}: {} at {at:?} is not in the {view} {area:?}",
                        handle.label
                    );
                }
            }
        }
    }
}

/// A jaw made longer by its tip: 1 mm on paper is 1 mm of jaw. A jaw made wider by its edge: 1 mm
/// is 2 mm of width. Known without the program.
#[test]
fn edges_answer_by_halves_and_tips_by_wholes() {
    let design = pairs::flat();
    let model = resolve(&design);
    let all = handles(&design, &model);
    for (path, rate) in [
        ("jaw.length", 1.0),
        ("jaw.tip_width", 0.5),
        ("jaw.root_width", 0.5),
        ("boss.across", 0.5),
        ("boss.thickness", 1.0),
        ("rein.gap", 0.5),
        ("rivet.hole", 0.5),
        ("rein.length", 1.0),
    ] {
        let Answer::Along(by) = of(&all, path).answer;
        reinwright_tests::within(path, by.hypot(), rate, 2e-3);
    }
    let tip = of(&all, "jaw.length");
    let on = OnPaper::default();
    let at = tip.place(&design, &model, &on);
    reinwright_tests::within("the tip's x", at.x, model.a.tip(), 1e-9);
    assert!(tip.way(&on).x > 0.999, "a jaw grows away from the rivet");
}

/// The views keep where they are told to stand.
#[test]
fn views_that_are_held_do_not_move() {
    let design = pairs::flat();
    let model = resolve(&design);
    let shifts = Shifts::of(&pair(&design, &model, &DrawOptions::default()));
    assert!(shifts.top.y > 10.0 && shifts.end.x > 10.0, "{shifts:?}");
    let mut wider = design.clone();
    wider.boss.thickness = pairs::mm(40.0);
    let model = resolve(&wider);
    let free = Shifts::of(&pair(&wider, &model, &DrawOptions::default()));
    assert_ne!(free, shifts, "thicker bosses move the top view");
    let options = DrawOptions {
        shifts: Some(shifts),
        ..DrawOptions::default()
    };
    assert_eq!(Shifts::of(&pair(&wider, &model, &options)), shifts);
}

#[test]
fn keys_step_a_value() {
    let mut design = pairs::flat();
    design.jaw.length = "1 3/4 in".parse().expect("a length");
    let all = handles(&design, &resolve(&design));
    let length = of(&all, "jaw.length");
    assert_eq!(value_text(&design, &length.id), "1 3/4 in");
    assert_eq!(
        stepped(&design, length, 1.0, Step::Usual).text,
        "1 13/16 in"
    );
    assert_eq!(
        stepped(&design, length, -1.0, Step::Fine).text,
        "1 47/64 in"
    );
    assert_eq!(
        stepped(&design, length, f64::NAN, Step::Fine).document,
        design
    );
}

fn any_mm() -> impl Strategy<Value = f64> {
    prop_oneof![
        -2000.0..2000.0f64,
        -3.0..3.0f64,
        Just(f64::NAN),
        Just(f64::INFINITY),
        Just(f64::NEG_INFINITY),
        Just(1e300),
    ]
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(60))]

    /// Any handle of any design dragged anywhere: a design inside its limits, that resolves to
    /// finite steel, with a text.
    #[test]
    fn no_drag_does_harm(
        dice in prop::collection::vec(any::<u32>(), 8..40),
        spread in prop_oneof![Just(0.2), Just(f64::INFINITY)],
        which in any::<prop::sample::Index>(),
        (x, y) in (any_mm(), any_mm()),
        opening in 0.0..0.2f64,
        fine in any::<bool>(),
    ) {
        let design = designs::varied(&pairs::flat(), &dice, spread);
        let all = handles(&design, &resolve(&design));
        prop_assume!(!all.is_empty());
        let handle = which.get(&all);
        let Answer::Along(by) = handle.answer;
        prop_assert!(by.is_finite() && by.hypot() >= SLOWEST, "{handle:?}");
        let on = OnPaper { opening, ..OnPaper::default() };
        let step = if fine { Step::Fine } else { Step::Usual };
        let dragged = drag(&design, handle, (Vec2::new(x, y), &on), step);
        prop_assert_eq!(check_limits(&dragged.document), Ok(()));
        prop_assert!(!dragged.text.is_empty());
        let model = resolve(&dragged.document);
        prop_assert!(model.a.volume_mm3().is_finite());
        let at = handle.place(&dragged.document, &model, &on);
        prop_assert!(at.is_finite(), "{} at {at:?}", handle.label);
    }
}
