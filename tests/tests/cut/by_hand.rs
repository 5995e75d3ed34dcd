//! What can be reckoned by hand.

use reinwright_core::asked::Layout;
use reinwright_core::paper::{Item, Line};
use reinwright_core::shop::balance_of;
use reinwright_core::shop::cut::{
    RackError, Source, drawing, order_of, orders, parse_bars, parse_long, reduction,
};
use reinwright_core::tongs::document::Document;
use reinwright_core::tongs::resolve;
use reinwright_core::units::Length;
use reinwright_tests::pairs::{by_hand, flat, length, v_bit};
use reinwright_tests::{close, sentence, within};

use super::*;

fn of(design: &Document, pairs: u32) -> Order {
    order_of(design, &balance_of(design, &resolve(design)), pairs)
}

/// Three pieces of 1000 mm end to end in 3 m leave nothing to cut; with a saw they do not.
#[test]
fn the_last_piece_needs_no_cut_where_the_bar_ends() {
    let mut rack = rack(&[(3000.0, 2)], &[]);
    let check = |rack: &Rack, bars: usize| {
        assert_eq!(
            planned(&order(&[(1000.0, 3)]), rack).stocks[0].bars.len(),
            bars
        );
    };
    check(&rack, 1);
    rack.kerf = Some(mm(1.5));
    check(&rack, 2);
    // Three of 999 with two cuts of 1.5 between them fill 3 m to the last.
    assert_eq!(
        planned(&order(&[(999.0, 3)]), &rack).stocks[0].bars.len(),
        1
    );
    rack.crop = Some(mm(0.1));
    assert_eq!(
        planned(&order(&[(999.0, 3)]), &rack).stocks[0].bars.len(),
        2
    );
}

/// Two bars whichever way; both ends together in one are worth more than two short ones.
#[test]
fn ends_are_gathered_in_one() {
    let mut rack = rack(&[(1000.0, 2)], &[]);
    rack.least_offcut = Some(mm(250.0));
    let plan = planned(&order(&[(400.0, 2), (300.0, 2)]), &rack);
    // 400 + 300 + 300 fills a bar; 400 and 400 with 300 each leaves twice 300, which is as much.
    assert_eq!(plan.stocks[0].sum(|bar| bar.kept_mm).round(), 600.0);
    let longest = plan.stocks[0]
        .bars
        .iter()
        .map(|bar| bar.kept_mm)
        .fold(0.0, f64::max);
    within("the longest end", longest, 600.0, 1e-9);
    assert!(plan.stocks[0].proven_offcut);
}

#[test]
fn what_lies_there_is_cut_before_anything_is_bought() {
    let rack = rack(&[(900.0, 2)], &[(3000.0, Some(20.0)), (6000.0, Some(35.0))]);
    let plan = planned(&order(&[(800.0, 9)]), &rack);
    let stock = &plan.stocks[0];
    // Two out of the rack; of the other seven 3 m gives three, 6 m all: 35 and not 60, or 55 for both.
    assert_eq!(
        (stock.count(Source::Rack), stock.count(Source::Bought)),
        (2, 1)
    );
    assert_eq!(plan.price(), Some(35.0));
    assert!(stock.proven_least);
}

/// 16 x 16 mm x 7850 kg/m³ (EN 1993-1-1) is 2.0096 kg/m: by hand.
#[test]
fn bars_weigh_what_they_must() {
    let plan = planned(&order(&[(700.0, 4)]), &rack(&[(3000.0, 1)], &[]));
    let stock = &plan.stocks[0];
    close(
        "3 m",
        stock.mass_kg(stock.sum(|bar| bar.length_mm)),
        6.0288,
        1e-9,
    );
    close(
        "kept",
        stock.mass_kg(stock.sum(|bar| bar.kept_mm)),
        0.2 * 2.0096,
        1e-9,
    );
    assert_eq!(plan.price(), Some(0.0), "nothing is bought");
}

#[test]
fn a_price_that_is_not_known_is_not_made_up() {
    let plan = planned(&order(&[(700.0, 4)]), &rack(&[], &[(3000.0, None)]));
    assert_eq!(plan.price(), None);
}

/// A blank is as long as the balance says, without the crop that a bar has once; a half by itself is
/// the stretch between its marks.
#[test]
fn pieces_are_what_the_balance_cuts() {
    for (design, layout) in [
        (flat(), Layout::BothOnOneBar),
        (v_bit(), Layout::BothOnOneBar),
        (by_hand(), Layout::Single { tail: Length::ZERO }),
        (flat(), Layout::Single { tail: mm(80.0) }),
    ] {
        let mut design = Document { layout, ..design };
        design.allowances.crop = Length::ZERO;
        let balance = balance_of(&design, &resolve(&design));
        let order = of(&design, 3);
        let blank = order.pieces[0].length_mm;
        let cut = balance.cut_length(design.units).mm();
        match layout {
            Layout::BothOnOneBar => {
                assert_eq!(order.pieces[0].count, 3);
                within("the blank", blank, cut, 1e-6);
            }
            Layout::Single { .. } => {
                assert_eq!(order.pieces[0].count, 6);
                let first = balance
                    .marks
                    .iter()
                    .find(|mark| mark.what == "cut")
                    .unwrap();
                within("the half", blank, first.measured(design.units).mm(), 1e-6);
            }
        }
    }
}

#[test]
fn each_bar_has_its_own_list() {
    let [thin, thick] = [of(&flat(), 2), of(&v_bit(), 1)];
    let again = of(&flat(), 3);
    let all = orders([thin.clone(), thick, again]);
    let same = reinwright_core::shop::family::same_stock(&all[0].bar.stock, &thin.bar.stock);
    assert!(same);
    let pairs: u32 = all[0].pieces.iter().map(|piece| piece.count).sum();
    assert!(pairs >= 5, "{all:?}");
    let plan = plan(&all, &Rack::default(), Units::Millimetre, &mut |_| {
        ControlFlow::Continue(())
    });
    let plan = plan.unwrap().unwrap();
    assert_eq!(plan.stocks.len(), all.len());
    // Without a rack bars of 3 m are bought.
    assert!(
        plan.stocks
            .iter()
            .flat_map(|stock| &stock.bars)
            .all(|bar| { bar.from == Source::Bought && (bar.length_mm - 3000.0).abs() < 1e-9 })
    );
}

#[test]
fn a_list_can_be_stopped() {
    let order = order(&[(700.0, 4)]);
    let stopped = plan(&[order], &Rack::default(), Units::Inch, &mut |_| {
        ControlFlow::Break(())
    });
    assert_eq!(stopped, Ok(None));
}

#[test]
fn what_fits_no_bar_is_said() {
    let error = tried(&order(&[(3100.0, 1)]), &Rack::default()).unwrap_err();
    sentence(&error.to_string());
    let CutError::TooLong { longest_mm, .. } = error else {
        panic!("{error}")
    };
    within("the longest", longest_mm, 3000.0, 1e-9);
    for length in [0.0, f64::NAN, -3.0] {
        let error = tried(&order(&[(length, 1)]), &Rack::default()).unwrap_err();
        assert!(matches!(error, CutError::NoLength(_)), "{error}");
    }
    let error = tried(&order(&[(10.0, 30_000)]), &Rack::default()).unwrap_err();
    assert_eq!(error, CutError::TooMany(30_000));
}

/// A piece that only one bar of the rack is long enough for, wanted twice.
#[test]
fn a_long_bar_that_is_missing_is_told() {
    let plan = planned(
        &order(&[(3500.0, 2)]),
        &rack(&[(4000.0, 1)], &[(3000.0, None)]),
    );
    let stock = &plan.stocks[0];
    assert_eq!(
        (stock.count(Source::Rack), stock.count(Source::Missing)),
        (1, 1)
    );
}

#[test]
fn what_was_cut_is_taken_off_the_rack() {
    let mut before = rack(&[(3000.0, 3), (450.0, 1)], &[]);
    before.kerf = Some(mm(2.0));
    let order = order(&[(1300.0, 3), (440.0, 1)]);
    let plan = planned(&order, &before);
    let after = before.without(&plan, Units::Millimetre);
    let left: Vec<(f64, u32)> = after
        .bars
        .iter()
        .map(|bar| (bar.length.mm(), bar.count))
        .collect();
    // Two bars of 3 m do for all: 2 x 1300 leaves 396, 1300 and 440 leave 1256. The short bar stays.
    assert_eq!(left, [(3000.0, 1), (450.0, 1), (396.0, 1), (1256.0, 1)]);
    assert_eq!(Rack::read(after.write().as_bytes()), Ok(after));
}

#[test]
fn a_rack_that_cannot_be_read_says_why() {
    let check = |text: &str, words: &str| {
        let error = Rack::read(text.as_bytes()).unwrap_err().to_string();
        sentence(&error);
        assert!(error.contains(words), "{words} in: {error}");
    };
    check("", "empty");
    check("(rack: 9)", "format 9");
    check("(rack: 1, bars: [(", "line 1");
    check("(rack: 1, colour: 3)", "colour");
    let line =
        |bar: &str| format!("(rack: 1, sold: [(bar: (stock: Square(side: \"16 mm\")), {bar})])");
    check(&line("length: \"0 mm\""), "0 mm");
    check(&line("length: \"31000 mm\""), "31000 mm");
    check(&line("length: \"3000 mm\", price: -2.0"), "-2");
    let many =
        "(bar: (stock: Round(diameter: \"10 mm\")), length: \"3000 mm\", count: 1),".repeat(2001);
    let error = Rack::read(format!("(rack: 1, bars: [{many}])").as_bytes()).unwrap_err();
    assert_eq!(error, RackError::TooMany(2001));
}

#[test]
fn bars_are_read_as_they_are_said() {
    let check = |text: &str, wanted: &[(u32, f64)]| {
        let bars = parse_bars(text).unwrap();
        let bars: Vec<(u32, f64)> = bars
            .iter()
            .map(|bar| (bar.count, bar.length.mm()))
            .collect();
        assert_eq!(bars, wanted, "{text}");
    };
    check("3 x 3 m", &[(3, 3000.0)]);
    check("3x3m, 850 mm", &[(3, 3000.0), (1, 850.0)]);
    check("2 × 20 ft; 1 x 14 in", &[(2, 6096.0), (1, 355.6)]);
    check("4 x 6,1 m,3 m", &[(4, 6100.0), (1, 3000.0)]);
    assert_eq!(
        parse_bars("2 x 3 m of 3/4 in square").unwrap()[0]
            .stock
            .unwrap()
            .size(),
        length("3/4 in")
    );
    for text in [
        "",
        "many x 3 m",
        "3 x",
        "3 x 3",
        "0 x 3 m",
        "3 x 3 m of cheese",
        "3 x 3 miles",
    ] {
        sentence(&parse_bars(text).unwrap_err().to_string());
    }
    assert_eq!(parse_long("19 mm").unwrap().mm(), 19.0);
}

/// Every piece has its letter and its length, and each letter is told.
#[test]
fn the_drawing_names_every_piece() {
    let plan = planned(
        &order(&[(900.0, 2), (700.0, 1)]),
        &rack(&[(3000.0, 1)], &[]),
    );
    // 165 mm of paper take 3 m at 1 : 20 (ISO 5455) and not at 1 : 10.
    assert_eq!(reduction(&plan), 20);
    let drawn = drawing(&plan, Units::Millimetre);
    let mut words = Vec::new();
    texts(&drawn.items, &mut words);
    let count = |wanted: &str| words.iter().filter(|text| *text == wanted).count();
    assert_eq!((count("A"), count("B")), (2, 1), "{words:?}");
    assert_eq!(
        (count("900 mm"), count("700 mm"), count("500 mm")),
        (2, 1, 1),
        "{words:?}"
    );
    assert_eq!(count("A: piece of 900, 2 of 900 mm"), 1, "{words:?}");
    within("the bar on paper", widest(&drawn.items), 150.0, 1e-6);
}

fn texts(items: &[Item], found: &mut Vec<String>) {
    for item in items {
        match item {
            Item::Text(text) => found.push(text.text.clone()),
            Item::Group(group) => texts(&group.items, found),
            Item::Path(_) => {}
        }
    }
}

/// The widest outline.
fn widest(items: &[Item]) -> f64 {
    let width = |item: &Item| match item {
        Item::Path(path) if path.line == Some(Line::Outline) => item.bounds().unwrap().width(),
        Item::Path(_) | Item::Text(_) | Item::Group(_) => 0.0,
    };
    items.iter().map(width).fold(0.0, f64::max)
}
