//! Does it go in: sizes by hand, and a bent piece in a straight bore against trying every angle.

use std::borrow::Cow;
use std::sync::Arc;

use kurbo::Point;
use proptest::prelude::*;
use reinwright_core::draw;
use reinwright_core::finding::Part;
use reinwright_core::heats::tilt::{MOST_TILT, best_tilt, circle_mm};
use reinwright_core::heats::{
    AtOnce, Back, End, Need, Prepared, Room, Smith, Source, SourceKind, Sources, Stand, WayIn,
    WhyNot, Wound, entry, no_longer, riveted,
};
use reinwright_core::making::{Procedure, Step};
use reinwright_core::paper::{Fill, Item, View};
use reinwright_core::resolve;
use reinwright_core::shape::section::Profile;
use reinwright_core::shape::sweep::{Ease, Path, Run, Station, Sweep};
use reinwright_core::shape::{Mass, Piece, Solid, Stretch};
use reinwright_core::units::Show;
use reinwright_tests::pairs::{flat, starting};
use reinwright_tests::{INCH, close, within};

use super::{coil, gas, heated, planned, shop};

/// A round rod: straight, bent to the left on an arc of so much radius and angle, and straight again.
fn bent_rod(across: f64, (straight, radius, degrees): (f64, f64, f64)) -> Piece {
    let runs = vec![
        Run {
            length: straight,
            curvature: 0.0,
        },
        Run {
            length: radius * degrees.to_radians(),
            curvature: 1.0 / radius,
        },
        Run {
            length: straight,
            curvature: 0.0,
        },
    ];
    let path = Path::new(Point::ORIGIN, 0.0, runs);
    let station = |at| Station {
        at,
        depth: across,
        width: across,
        rise: 0.0,
        shift: 0.0,
        profile: 0,
        ease: Ease::Linear,
    };
    let length = path.length();
    let sweep = Arc::new(Sweep {
        path,
        stations: vec![station(0.0), station(length)],
        profiles: vec![Profile::rounded(1.0, 1.0)],
    });
    Piece {
        name: Cow::Borrowed("rod"),
        wanted: 1,
        holes: Vec::new(),
        marks: Vec::new(),
        dressed: 0,
        stretches: vec![Stretch {
            part: Part::Rein,
            solid: Solid::Swept(sweep),
            from: 0.0,
            to: length,
            mass: Mass::default(),
        }],
    }
}

/// Tries to heat the middle of a piece in a source without clearance.
fn tried(piece: &Piece, source: &Source) -> Result<reinwright_core::heats::Entry, WhyNot> {
    let stand = Stand::of(piece);
    let smith = Smith {
        clearance: reinwright_core::units::Length::ZERO,
        ..Smith::default()
    };
    let middle = stand.length_mm / 2.0;
    let need = Need {
        from_to_mm: (middle - 5.0, middle + 5.0),
        at_once: AtOnce::Whole,
    };
    entry(&stand, &Room::of(source, &smith), need)
}

fn bore(across: &str) -> Source {
    coil("coil", across, (4.0, "10 mm"))
}

/// A straight rod of 10 mm goes into 10 mm and not into 9.9.
#[test]
fn a_straight_rod_goes_into_its_own_size() {
    let rod = bent_rod(10.0, (150.0, 1e6, 1e-9));
    let entry = tried(&rod, &bore("10 mm")).expect("it goes in");
    assert_eq!(entry.tilt, None);
    within("circle", entry.circle_mm, 10.0, 1e-3);
    let Err(WhyNot::TooWide {
        circle_mm,
        clear_mm,
        ..
    }) = tried(&rod, &bore("9.9 mm"))
    else {
        panic!("it cannot go in");
    };
    within("circle", circle_mm, 10.0, 1e-3);
    within("clear", clear_mm, 9.9, 1e-9);
}

/// A rod of 10 mm, all of it an arc of 40° on a radius of 100 mm, is to be hot in its middle, for which it must be 32 mm
/// in. Straight it wants a bore that takes its rise of 32²/(2·100) = 5.1 mm and its own 10. Threaded it wants
/// its sagitta of 32²/(8·100) = 1.3 mm over the rod's 10. Sections are looked at 14 mm apart, of which the next one
/// counts; it is seen a little smaller where it leans.
#[test]
fn a_bent_rod_is_threaded_through_a_short_bore() {
    let rod = bent_rod(10.0, (0.5, 100.0, 40.0));
    let entry = tried(&rod, &bore("14 mm")).expect("it is threaded");
    let tilt = entry.tilt.expect("it leans").to_degrees();
    assert!((4.0..40.0).contains(&tilt.abs()), "{tilt}");
    assert!(
        entry.circle_mm >= 11.2 && entry.circle_mm <= 14.0,
        "{entry:?}"
    );
    let straight = tried(&rod, &bore("20 mm")).expect("it goes in straight");
    assert_eq!(straight.tilt, None);
    let stand = Stand::of(&rod);
    let next = stand.slices.iter().find(|slice| slice.at_mm > 32.0);
    let along = next.expect("it is longer").at_mm - 0.5;
    let rise = 100.0 * (1.0 - (along / 100.0).cos());
    within("straight", straight.circle_mm, 10.0 + rise, 1.2);
    tried(&rod, &bore("11 mm")).expect_err("its sagitta is in the way");
}

/// A square bar wants a bore for its diagonal: 3/4 in square 1.06 in.
#[test]
fn a_square_bar_wants_its_diagonal() {
    let plan = planned(&flat(), Procedure::ThreeShoulders);
    let stand = Stand::of(&plan.stages[0].piece);
    within(
        "diagonal",
        stand.slices[0].circle_mm,
        0.75 * 2.0_f64.sqrt() * INCH,
        0.01,
    );
    let shop = shop(vec![
        coil("1 in", "1 in", (5.0, "3/4 in")),
        coil("1 3/8", "1 3/8 in", (5.0, "3/4 in")),
    ]);
    let (prepared, _) = heated(&flat(), &plan, &shop);
    let first = prepared
        .rows
        .iter()
        .find(|row| row.step == Step::SetDownJaw)
        .expect("it is set down");
    let Err(WhyNot::TooWide {
        circle_mm,
        clear_mm,
        ..
    }) = first.offers[0]
    else {
        panic!("the diagonal is over an inch");
    };
    within("circle", circle_mm, 0.75 * 2.0_f64.sqrt() * INCH, 0.01);
    within("clear", clear_mm, 0.75 * INCH, 1e-9);
    assert!(first.offers[1].is_ok());
}

/// What must enter is what the piece's own bore says, and the answer names both sizes and the first
/// operation.
#[test]
fn the_answer_names_the_place_and_both_sizes() {
    let design = starting("v bit", "1/2 in square on corners", "3/4 in round");
    let plan = planned(&design, Procedure::ThreeShoulders);
    let shop = shop(vec![coil("tight", "1 in", (5.0, "1 in"))]);
    let (prepared, _) = heated(&design, &plan, &shop);
    let row = prepared
        .rows
        .iter()
        .find(|row| row.step == Step::RoughJaw)
        .expect("it is roughed");
    let Err(why) = row.offers[0] else {
        panic!("the head is wider than the bar");
    };
    let WhyNot::TooWide {
        circle_mm,
        clear_mm,
        part,
        end,
        ..
    } = why
    else {
        panic!("{why:?}");
    };
    assert_eq!((part, end), (Part::Jaw, End::Tip));
    let piece = &plan.stages[row.stage].piece;
    let needs = row.needs_mm.expect("it is hot");
    close("circle", circle_mm, piece.bore_mm((0.0, needs.1)), 0.03);
    within("clear", clear_mm, 0.75 * INCH, 1e-9);
    let said = why.words(Show::default());
    assert!(
        said.contains("jaw") && said.contains("3/4 in is clear"),
        "{said}"
    );
    let said = no_longer(&prepared, 0, Show::default()).expect("it stops serving");
    let first = "the jaw is wider than it lets through";
    assert!(
        said.starts_with("tight: ") && said.contains(first),
        "{said}"
    );
}

/// A chamber with a closed back takes a bar as far as it is long; one with an open back lets it through.
#[test]
fn a_closed_chamber_is_only_so_deep() {
    let design = starting("flat", "3/8 in flat", "3/4 in round");
    let plan = planned(&design, Procedure::ThreeShoulders);
    let shop = shop(vec![
        gas(Back::Closed, "2 in"),
        Source {
            name: "open".to_owned(),
            ..gas(Back::Open, "2 in")
        },
    ]);
    let (prepared, _) = heated(&design, &plan, &shop);
    let row = prepared
        .rows
        .iter()
        .find(|row| row.step == Step::SetDownRein)
        .expect("it is set down");
    let Err(WhyNot::TooDeep { lies_mm, deep_mm }) = row.offers[0] else {
        panic!(
            "it lies deeper than 2 in: {:?}",
            row.offers[0].as_ref().map(|own| own.entry)
        );
    };
    assert!(lies_mm > deep_mm);
    within("deep", deep_mm, 2.0 * INCH, 1e-9);
    assert!(row.offers[1].is_ok());
}

/// The least circle over every hundredth of a degree.
fn by_trying(points: &[[f64; 3]]) -> f64 {
    let most = MOST_TILT.to_degrees();
    let steps = 100.0 * 2.0 * most;
    let mut least = f64::INFINITY;
    let mut i = 0.0;
    while i <= steps {
        let tilt = (i / 100.0 - most).to_radians();
        least = least.min(circle_mm(points, tilt));
        i += 1.0;
    }
    least
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(12))]

    #[test]
    fn the_best_angle_is_that_of_trying_all(
        across in 4.0..25.0f64,
        radius in 40.0..400.0f64,
        degrees in 1.0..40.0f64,
        (from, long) in (0usize..8, 3usize..6),
    ) {
        let rod = bent_rod(across, (60.0, radius, degrees));
        let stand = Stand::of(&rod);
        let from = from.min(stand.slices.len() - 2);
        let to = (from + long).min(stand.slices.len());
        let points: Vec<[f64; 3]> = stand.slices[from..to].iter().flat_map(|slice| slice.points.clone()).collect();
        let (_, found) = best_tilt(&points);
        let tried = by_trying(&points);
        // A turn about the middle moves no point by more than half the reach of all, and widens no
        // circle by more than the whole, for each radian. The search ends within 1e-5 of an angle;
        // half a step of what was tried is 0.005 degrees.
        let ends = points.iter().map(|p| (p[0], p[1]));
        let (low, high) = ends.fold(([f64::MAX; 2], [f64::MIN; 2]), |(low, high), (x, y)| {
            ([low[0].min(x), low[1].min(y)], [high[0].max(x), high[1].max(y)])
        });
        let reach = (high[0] - low[0]).hypot(high[1] - low[1]);
        prop_assert!(found <= tried + 1e-5 * reach, "{found}, by trying {tried}");
        prop_assert!(tried <= found + 0.005_f64.to_radians() * reach, "{found}, by trying {tried}");
    }
}

/// A coil that is open at the side.
fn open(name: &str, between: &str) -> Source {
    let mut own = coil(name, between, (3.0, "3/4 in"));
    if let SourceKind::Coil(coil) = &mut own.kind {
        coil.wound = Wound::Open;
    }
    own
}

/// Into a round coil a riveted pair goes with both heads, or not at all; an open one asks only how thick the necks
/// are, which meet nothing but each other there.
#[test]
fn a_riveted_pair_wants_an_open_coil() {
    let design = starting("flat", "3/8 in flat", "3/4 in square");
    let model = resolve(&design);
    let shop = shop(vec![
        coil("tight", "1 1/2 in", (4.0, "3/4 in")),
        open("narrow ear", "1/2 in"),
        open("ear", "3 in"),
        coil("barrel", "6 in", (4.0, "3/4 in")),
    ]);
    let pair = riveted(&model, &shop);
    let goes: Vec<bool> = pair.offers.iter().map(Result::is_ok).collect();
    assert_eq!(goes, [false, false, true, true]);
    // Both heads, one half turned half round about x from the other, by the model's own points.
    let half = model.pieces().remove(0);
    let alone = Stand::of(&half);
    let widest = |stand: &Stand| {
        stand
            .slices
            .iter()
            .map(|own| own.bore_mm[0])
            .fold(0.0, f64::max)
    };
    assert!(widest(&pair.stand) > widest(&alone));
    for (both, one) in pair.stand.slices.iter().zip(&alone.slices) {
        assert!(both.points.starts_with(&one.points), "{}", both.at_mm);
    }
    let words = pair.words(&shop, Show::default()).join("; ");
    assert!(
        words.contains("ear: goes in, laid in from the side"),
        "{words}"
    );
    assert!(words.contains("what lies between its sides is"), "{words}");
    let tight = Sources {
        sources: vec![shop.sources[0].clone()],
        ..shop
    };
    let words = riveted(&model, &tight).words(&tight, Show::default());
    assert!(
        words
            .last()
            .is_some_and(|own| own.contains("open at the side")),
        "{words:?}"
    );
}

/// What lies in an open coil is as thick as its points stand apart, by looking at every one of them.
#[test]
fn an_open_coil_asks_only_what_lies_in_it() {
    let design = starting("v bit", "1/2 in square on corners", "3/4 in round");
    let plan = planned(&design, Procedure::ThreeShoulders);
    let open_shop = shop(vec![open("ear", "1 1/2 in")]);
    let prepared = Prepared::new(design.bar.steel, &plan, &open_shop);
    let mut seen = 0;
    for row in prepared.rows.iter().filter(|row| row.needs_mm.is_some()) {
        let (stand, needs) = (
            row.stand.as_ref().expect("it is heated"),
            row.needs_mm.expect("hot"),
        );
        let Ok(offer) = &row.offers[0] else { continue };
        if needs.1 - needs.0 > 3.0 * 0.75 * INCH {
            continue;
        }
        let half = 1.5 * 0.75 * INCH;
        let middle = f64::midpoint(needs.0, needs.1);
        let inside = stand
            .slices
            .iter()
            .filter(|own| (own.at_mm - middle).abs() <= half);
        let points: Vec<[f64; 3]> = inside.flat_map(|own| own.points.clone()).collect();
        let wide = |axis: usize| {
            let all = points.iter().map(|point| point[axis]);
            all.clone().fold(f64::MIN, f64::max) - all.fold(f64::MAX, f64::min)
        };
        close("thick", offer.entry.circle_mm, wide(1).min(wide(2)), 1e-9);
        assert!(offer.entry.circle_mm <= 1.25 * INCH + 1e-6);
        assert_eq!(offer.entry.way, WayIn::Laid);
        seen += 1;
    }
    assert!(seen > 2, "{seen}");
}

/// Turns that are cut through in a view, as they are drawn.
fn turns_in(items: &[Item], view: View) -> usize {
    let is_turn = |item: &Item| matches!(item, Item::Path(path) if path.fill == Some(Fill::Paper));
    let of = |item: &Item| match item {
        Item::Group(group) if group.view == Some(view) => {
            group.items.iter().filter(|item| is_turn(item)).count()
        }
        Item::Group(_) | Item::Path(_) | Item::Text(_) => 0,
    };
    items.iter().map(of).sum()
}

/// A coil that is open at the side is seen so: in one view turns stand on both sides of the piece, in the other on the
/// closed side alone. A round one stands around it in both.
#[test]
fn an_open_coil_is_drawn_with_its_open_side() {
    let design = starting("flat", "3/8 in flat", "3/4 in square");
    let plan = super::usual(&design);
    let shop = shop(vec![
        coil("round", "4 in", (3.0, "3/4 in")),
        open("ear", "4 in"),
    ]);
    let (prepared, _) = super::heated(&design, &plan, &shop);
    let row = prepared.rows.iter().position(|row| row.needs_mm.is_some());
    let seen = |source: usize| {
        let drawn = draw::heat_bare(&prepared, &plan, (row.expect("it is heated"), source));
        [View::Side, View::Top].map(|view| turns_in(&drawn.items, view))
    };
    assert_eq!(seen(0), [6, 6]);
    let mut open = seen(1);
    open.sort_unstable();
    assert_eq!(open, [3, 6]);
}
