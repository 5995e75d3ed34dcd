//! Handles on the drawing: each lies on its steel, follows the hand, and can do no harm.

use std::collections::BTreeSet;

use kurbo::Vec2;
use proptest::prelude::*;
use reinwright_core::asked::{Units, Value};
use reinwright_core::draw::handle::{
    Answer, Handle, HandleId, OnPaper, SLOWEST, Step, View, drag, handles, stepped, value_text,
};
use reinwright_core::draw::{DrawOptions, EndView, Shifts, breaks, pair};
use reinwright_core::paper::{Breaks, Item, Projection, Stretch};
use reinwright_core::tongs::document::{Document, Turn, check_limits};
use reinwright_core::tongs::jaw::JawKind;
use reinwright_core::tongs::resolve;
use reinwright_tests::{designs, pairs};

/// Every sample and every pair of the checks, turned left and right.
fn designs_of_both_hands() -> Vec<(String, Document)> {
    let pairs = pairs::all()
        .into_iter()
        .map(|(name, pair)| (name.to_owned(), pair));
    let all = designs::samples().into_iter().chain(pairs);
    all.flat_map(|(name, design)| {
        let turned = |hand| {
            (
                format!("{name}, {hand:?}"),
                Document {
                    hand,
                    ..design.clone()
                },
            )
        };
        [turned(Turn::Left), turned(Turn::Right)]
    })
    .collect()
}

fn path(handle: &Handle) -> &str {
    let HandleId::Field { path } = &handle.id else {
        panic!("{} is no field", handle.label);
    };
    path
}

fn of<'a>(all: &'a [Handle], wanted: &str) -> &'a Handle {
    let found = all.iter().find(|handle| path(handle) == wanted);
    found.unwrap_or_else(|| panic!("{wanted} has no handle"))
}

/// The neck is made deeper by pulling its back away from the middle, in every style; pulling along
/// the tongs would slide the mark along the boss.
#[test]
fn the_neck_answers_to_a_pull_outwards() {
    for name in JawKind::ALL.iter().map(|kind| kind.name()) {
        let work = if ["flat", "open mouth", "box", "duckbill"].contains(&name) {
            "3/8 in flat"
        } else {
            "1/2 in round"
        };
        let design = pairs::starting(name, work, "3/4 in square");
        let all = handles(&design, &resolve(&design));
        let Answer::Along(by) = of(&all, "neck.depth").answer else {
            panic!("{name}: a depth goes one way");
        };
        // Square to its neck, which swings out to the jaw by no more than two in three.
        assert!(by.y > 1.5 * by.x.abs(), "{name}: {by:?}");
    }
}

/// A size of the bit is held at the bit, not on the bow that comes and goes with it; the marks of
/// notches lie in the order of the notches.
#[test]
fn marks_lie_on_what_they_shape() {
    let bolt = pairs::starting("bolt", "5/8 in round", "3/4 in square");
    let model = resolve(&bolt);
    let all = handles(&bolt, &model);
    let place = |handle: &Handle| handle.place(&bolt, &model, &OnPaper::default()).x;
    assert!(place(of(&all, "jaw.bit.leg")) > place(of(&all, "jaw.bow_length")));

    let notched = pairs::starting("notched", "5/8 in round", "3/4 in square");
    let model = resolve(&notched);
    let all = handles(&notched, &model);
    let place = |path: &str| {
        let handle = of(&all, path);
        handle.place(&notched, &model, &OnPaper::default()).x
    };
    let [heel, first, second, third, tip] = [
        "jaw.heel",
        "jaw.first.size",
        "jaw.second.size",
        "jaw.third.size",
        "jaw.length",
    ]
    .map(place);
    assert!(
        heel < first && first < second && second < third && third < tip,
        "{heel} {first} {second} {third} {tip}"
    );
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
            assert!(
                paths.contains(wanted) || changes_nothing(&design, wanted),
                "{name}: {wanted} has no handle"
            );
        }
    }
}

/// Whether a value has no say in the steel as it stands: others leave it no room.
fn changes_nothing(design: &Document, wanted: &str) -> bool {
    let volume = |by: f64| {
        let mut other = design.clone();
        if let Some(Value::Length(length)) = design.field(wanted).map(|field| field.value) {
            other.put(wanted, Value::Length(pairs::mm(length.mm() + by)));
        }
        resolve(&other).a.volume_mm3()
    };
    [0.1, -0.1]
        .iter()
        .all(|by| (volume(*by) - volume(0.0)).abs() < 1e-6)
}

/// A style's own sizes need no code to have handles.
#[test]
fn the_sizes_of_every_style_have_handles() {
    for style in JawKind::ALL.iter().map(|kind| kind.name()) {
        let design = pairs::starting(style, "5/8 in round", "3/4 in square");
        let all = handles(&design, &resolve(&design));
        let held: BTreeSet<&str> = all.iter().map(path).collect();
        let mut without = Vec::new();
        design.visit(&mut |field| {
            let sized = matches!(field.value, Value::Length(_) | Value::Angle(_));
            if sized && field.path.starts_with("jaw.") && !held.contains(field.path.as_str()) {
                without.push(field.path.clone());
            }
        });
        assert!(without.is_empty(), "{style}: {without:?} have no handle");
    }
}

/// A small drag, mm on paper.
const SMALL: f64 = 0.3;

/// Where a dragged handle's steel has gone, against where the hand went.
fn followed(design: &Document, handle: &Handle, more: f64, on: &OnPaper) -> (Vec2, f64) {
    let model = resolve(design);
    let Answer::Along(by) = handle.answer else {
        panic!("{} goes every way", handle.label);
    };
    let moved = handle.way(on) * more;
    let dragged = drag(design, handle, (moved, on), Step::Fine).document;
    let before = handle.place(design, &model, on);
    let after = handle.place(&dragged, &resolve(&dragged), on);
    (after - before - moved, by.hypot())
}

/// Dragged a little along its way the steel under a handle goes with the hand: as near as the step
/// of 0.1 mm or 0.1 degree lets it, and a quarter for the bend of the answer. Where other sizes
/// leave a value no room it stops on one side; those are few, and they follow on the other.
#[test]
fn the_steel_follows_the_hand() {
    let on = OnPaper {
        opening: 0.06,
        shifts: Shifts {
            top: Vec2::new(0.0, 90.0),
            end: Vec2::new(140.0, 0.0),
        },
        ..OnPaper::default()
    };
    let (mut drags, mut stopped) = (0, Vec::new());
    for (name, mut design) in designs_of_both_hands() {
        design.units = Units::Millimetre;
        for handle in &handles(&design, &resolve(&design)) {
            let follows = [SMALL, -SMALL].map(|more| {
                let (off, rate) = followed(&design, handle, more, &on);
                off.dot(handle.way(&on)).abs() <= 0.25 * SMALL + 0.051 * rate
            });
            drags += 2;
            match follows {
                [true, true] => {}
                [true, false] | [false, true] => stopped.push(format!("{name}: {}", handle.label)),
                [false, false] => panic!("{name}: {} follows neither way", handle.label),
            }
        }
    }
    assert!(drags > 600, "only {drags} drags");
    assert!(
        stopped.len() * 25 < drags,
        "{} of {drags} drags stop short: {stopped:#?}",
        stopped.len()
    );
}

/// The same on broken reins, for every handle on steel that is shown: what lies beyond a break
/// moves as far as the hand does.
#[test]
fn the_steel_beyond_a_break_follows_the_hand() {
    let mut beyond = 0;
    for (name, mut design) in designs_of_both_hands() {
        design.units = Units::Millimetre;
        let model = resolve(&design);
        let whole = OnPaper::default();
        let on = OnPaper {
            breaks: breaks(&model, 0.0),
            ..whole
        };
        for handle in &handles(&design, &model) {
            let at = handle.place(&design, &model, &whole);
            let past = |s: Stretch| at.x < s.from - 2.0 * SMALL;
            let apart = |s: Stretch| past(s) || at.x > s.to;
            let mut stretches = on.breaks.stretches();
            if !stretches.any(past) || !on.breaks.stretches().all(apart) {
                continue;
            }
            beyond += 1;
            let follows = [SMALL, -SMALL].map(|more| {
                let (off, rate) = followed(&design, handle, more, &on);
                off.dot(handle.way(&on)).abs() <= 0.25 * SMALL + 0.051 * rate
            });
            assert_ne!(follows, [false, false], "{name}: {}", handle.label);
        }
    }
    assert!(beyond > 60, "only {beyond} handles lie beyond a break");
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
            let all = handles(&design, &model);
            let ways = [
                (0.0, Breaks::default(), EndView::Beside),
                (0.1, Breaks::default(), EndView::Under),
                (0.0, breaks(&model, 0.0), EndView::Under),
                (0.1, breaks(&model, 0.1), EndView::Beside),
            ];
            for (opening, breaks, end) in ways {
                let options = DrawOptions {
                    opening,
                    breaks,
                    end,
                    ..DrawOptions::default()
                };
                let drawing = pair(&design, &model, &options);
                let on = OnPaper {
                    opening,
                    shifts: Shifts::of(&drawing),
                    breaks,
                };
                for handle in &all {
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
    let mut design = pairs::flat();
    // A broken tip is narrower than it was asked.
    design.jaw.tip = pairs::mm(0.0);
    let model = resolve(&design);
    let all = handles(&design, &model);
    // The width is in proportion between heel and tip.
    let width = of(&all, "jaw.tip_width");
    let at = width.place(&design, &model, &OnPaper::default());
    let part = (at.x - model.a.heel()) / (model.a.tip() - model.a.heel());
    let (out, up) = (Vec2::new(1.0, 0.0), Vec2::new(0.0, 1.0));
    for (path, way, rate) in [
        ("jaw.length", out, 1.0),
        ("jaw.tip_width", -up, 0.5 * part),
        (
            "boss.across",
            Vec2::from_angle(0.65 * std::f64::consts::PI),
            0.5,
        ),
        ("boss.thickness", -up, 1.0),
        ("rein.gap", -up, 0.5),
        (
            "rivet.hole",
            Vec2::from_angle(std::f64::consts::PI + 0.4),
            0.5,
        ),
        ("rein.length", -out, 1.0),
    ] {
        let Answer::Along(by) = of(&all, path).answer else {
            panic!("{path} goes every way");
        };
        reinwright_tests::within(path, by.dot(way), rate, 2e-3);
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
    design.jaw.length = pairs::length("1 3/4 in");
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
        let Answer::Along(by) = handle.answer else {
            panic!("{} goes every way", handle.label);
        };
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
