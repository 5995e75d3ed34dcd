//! Every jaw style at every size of work: it resolves, draws and balances, no number is
//! lost, no outline crosses itself, and nothing that the trade would make is stopped.

use geo::Validation;
use reinwright_core::asked::{Bar, Lie, Work};
use reinwright_core::draw::{self, DrawOptions};
use reinwright_core::finding::Severity;
use reinwright_core::paper::ink::svg;
use reinwright_core::shape::sweep::Edge;
use reinwright_core::shop::Answers;
use reinwright_core::shop::balance_of;
use reinwright_core::tongs::document::{Document, check_limits, read, write};
use reinwright_core::tongs::jaw::{JawKind, Verdict, Way};
use reinwright_core::tongs::model::Model;
use reinwright_core::tongs::resolve;
use reinwright_tests::outline::polygon_within;
use reinwright_tests::pairs::{self, mm, starting};

/// Sizes of work, mm.
const SIZES: [f64; 6] = [6.0, 8.0, 12.0, 18.0, 28.0, 40.0];

/// How far the polygon that is looked at for crossings may stray from the outline, mm: finer ones
/// take minutes, and no fold of a jaw is smaller.
const SEEN: f64 = 0.05;

/// Every shape of work in a size.
fn shapes(size: f64) -> Vec<Work> {
    let flat = |width: f64| Work::flat(mm(size), mm(width));
    let flats = mm(size);
    let mut all = vec![flat((2.5 * size).max(25.0)), Work::round(flats)];
    for lie in [Lie::OnFlats, Lie::OnCorners] {
        all.push(Work::square(flats, lie));
        all.push(Work::hexagon(flats, lie));
        all.push(Work::Octagon { flats, lie });
    }
    all
}

/// The bars that a smith would take for work of a size: none under a third of it, none so heavy
/// that it is a waste.
fn bars(size: f64) -> Vec<Bar> {
    let all = [
        "12 mm square",
        "5/8 in square",
        "20 mm square",
        "1 in round",
        "30 mm square",
    ];
    let bars = all.map(pairs::bar);
    let fits = |bar: &Bar| {
        let side = bar.stock.equal_square_mm();
        size <= 1.7 * side && side <= 12.0 + size
    };
    let mut bars: Vec<Bar> = bars.into_iter().filter(fits).collect();
    // The lightest and the heaviest.
    while bars.len() > 2 {
        bars.remove(1);
    }
    bars
}

/// Whether the trade holds such work in a style, in any way.
fn is_suitable(kind: JawKind, work: &Work) -> bool {
    let lie = match *work {
        Work::Square { lie, .. } | Work::Hexagon { lie, .. } | Work::Octagon { lie, .. } => lie,
        Work::Flat { .. } | Work::Round { .. } => kind.lie().unwrap_or(Lie::OnFlats),
    };
    if kind.lie().is_some_and(|its| its != lie) {
        return false;
    }
    let said = Way::ALL.map(|way| kind.trade(work, way));
    let mut said = said.into_iter().flatten().peekable();
    if said.peek().is_none() {
        // A style that says nothing is tried on what nearly every jaw holds.
        return matches!(
            work,
            Work::Square {
                lie: Lie::OnFlats,
                ..
            }
        );
    }
    said.any(|trade| trade.verdict <= Verdict::WithAWord)
}

/// All pairs of one style.
fn all_of(kind: JawKind) -> Vec<(String, Document)> {
    let mut all = Vec::new();
    for size in SIZES {
        for work in shapes(size)
            .into_iter()
            .filter(|work| is_suitable(kind, work))
        {
            for bar in bars(size) {
                let what = format!("{kind}, {work:?}, {:?}", bar.stock);
                let pair = Document::starting(kind, work, bar);
                all.push((what, pair));
            }
        }
    }
    all
}

#[track_caller]
fn check(what: &str, pair: &Document) -> Vec<String> {
    check_limits(pair).unwrap_or_else(|e| panic!("{what}: {e}"));
    let again = read(write(pair).as_bytes()).unwrap_or_else(|e| panic!("{what}: {e}"));
    assert_eq!(&again, pair, "{what}: not the same from its file");
    let model = resolve(pair);
    finite(what, pair, &model);
    let whole = polygon_within(&model.a.outline(), SEEN);
    let errors = whole.validation_errors();
    assert!(
        errors.is_empty(),
        "{what}: the outline crosses itself: {errors:?}"
    );
    let all = Answers::to(pair).findings.into_iter();
    all.filter(|it| it.severity == Severity::Stop)
        .map(|it| format!("{what}: {it}"))
        .collect()
}

#[track_caller]
fn finite(what: &str, pair: &Document, model: &Model) {
    for half in [&model.a, &model.b] {
        let volume = half.volume_mm3();
        assert!(
            volume.is_finite() && volume > 0.0,
            "{what}: volume {volume}"
        );
        for i in 0..=40 {
            let s = half.jaw.length() * f64::from(i) / 40.0;
            for edge in [Edge::Inner, Edge::Outer, Edge::Near, Edge::Far] {
                let p = half.jaw.edge_point(edge, s);
                assert!(p.is_finite(), "{what}: {edge:?} at {s} is {p:?}");
            }
            let depth = half.jaw.section(s).depth;
            assert!(depth > 0.5, "{what}: {depth} mm of steel at {s}");
        }
    }
    let bar = balance_of(pair, model);
    assert!(
        bar.bar_length_mm.is_finite() && bar.bar_length_mm > 0.0,
        "{what}: bar {}",
        bar.bar_length_mm
    );
    let drawn = svg(&draw::pair(pair, model, &DrawOptions::default()), what);
    for lost in ["NaN", "inf"] {
        let path = drawn
            .split('"')
            .any(|text| text.contains(lost) && text.starts_with('M'));
        assert!(!path, "{what}: {lost} in the drawing");
    }
}

/// Tries all pairs of one style: how many, and what was stopped.
fn try_all(kind: JawKind) -> (usize, Vec<String>) {
    let all = all_of(kind);
    assert!(all.len() >= 8, "{kind}: tried on {} pairs only", all.len());
    let stops = all.iter().flat_map(|(what, pair)| check(what, pair));
    (all.len(), stops.collect())
}

#[test]
fn every_style_at_every_size_is_made_without_a_stop() {
    let kinds = JawKind::ALL.iter().filter(|kind| **kind != JawKind::Sketch);
    let found: Vec<(usize, Vec<String>)> = std::thread::scope(|scope| {
        let running: Vec<_> = kinds.map(|kind| scope.spawn(|| try_all(*kind))).collect();
        let joined = running.into_iter().map(|it| it.join());
        joined.map(|it| it.expect("no style panics")).collect()
    });
    let tried: usize = found.iter().map(|(count, _)| count).sum();
    let stops: Vec<&String> = found.iter().flat_map(|(_, stops)| stops).collect();
    assert!(tried > 500, "{tried} pairs");
    assert!(stops.is_empty(), "{} of {tried}: {stops:#?}", stops.len());
}

#[test]
fn a_pair_that_the_trade_would_not_make_is_stopped() {
    let mut pair = starting("notched", "40 mm round", "20 mm square");
    pair.jaw.heel = mm(12.0);
    assert!(!check("a heel within the boss", &pair).is_empty());
}
