//! One judgement of work in a jaw: chooser, findings, fit and shelf say the same, and they say what
//! the trade says.

use reinwright_core::asked::Work;
use reinwright_core::finding::{Finding, Kind, Severity};
use reinwright_core::proof::fit::ways_of;
use reinwright_core::shop::shelf::{Filed, Stock};
use reinwright_core::shop::{Advice, Answers, advise};
use reinwright_core::tongs::document::Document;
use reinwright_core::tongs::jaw::{JawKind, JawStyle, Verdict};
use reinwright_tests::pairs::{self, bar, mm, starting};

/// Every shape of work, lying every way, in sizes that one bar takes.
fn works() -> Vec<Work> {
    let mut all = Vec::new();
    for size in [8.0, 16.0, 25.0].map(mm) {
        all.push(pairs::work(&format!("{size} round")));
        for width in [25.0, 50.0].map(mm) {
            all.push(pairs::work(&format!("{size} x {width} flat")));
        }
        for shape in ["square", "hexagon", "octagon"] {
            for lie in ["", " on corners"] {
                all.push(pairs::work(&format!("{size} {shape}{lie}")));
            }
        }
    }
    all.extend(PIECES.map(pairs::work));
    all
}

/// Work by its name, held by each of its parts.
const PIECES: [&str; 9] = [
    "M10 by its head",
    "M10 behind its head",
    "M16 by its shank",
    "5/8 in nut",
    "3/8 in pipe",
    "DN 25",
    "#5 rebar",
    "1 x 1 x 1/8 in angle by its back",
    "30 x 30 x 3 mm angle by its leg",
];

fn can_be_made(findings: &[Finding]) -> bool {
    let of_work = [Kind::WorkCanFlyOut, Kind::WorkHeldBadly];
    let bad = |it: &Finding| it.severity > Severity::Note && !of_work.contains(&it.kind);
    !findings.iter().any(bad)
}

/// What all four say of a pair: they are asked apart and must agree.
#[track_caller]
fn agreed(pair: &Document) -> Verdict {
    let name = format!("{} on {}", pair.name, pair.work.words());
    let answers = Answers::to(pair);
    let of_fit = answers.fit.judged.verdict;
    let own = Stock {
        ways: vec![pair.work],
    };
    let filed = Filed::Design(Box::new(pair.clone()));
    let on_shelf = filed.pair(0).expect("a design is one pair").on(&own);
    assert_eq!(on_shelf.verdict(), of_fit, "shelf and fit: {name}");
    let flies = |it: &Finding| it.kind == Kind::WorkCanFlyOut;
    let told = answers.findings.iter().find(|it| flies(it));
    assert_eq!(
        told.is_some(),
        of_fit == Verdict::Unsafe,
        "findings: {name}"
    );
    if let Some(told) = told {
        assert_eq!(told.severity, Severity::Stop, "{name}");
        assert!(told.message.contains("fly out"), "{told}");
        assert!(
            told.hint.contains("instead") || told.hint.contains("other work"),
            "{told}"
        );
    }
    of_fit
}

#[test]
fn chooser_findings_fit_and_shelf_agree_for_all_styles_and_works() {
    let from = bar("3/4 in square");
    let (mut seen, mut tried) = (Vec::new(), 0);
    let kinds = JawKind::ALL.iter().filter(|kind| **kind != JawKind::Sketch);
    for (kind, work) in kinds.flat_map(|kind| works().into_iter().map(move |work| (*kind, work))) {
        let pair = Document::starting(kind, work.laid_for(kind), from);
        let lies = Answers::to(&pair).model.work.lies;
        let advised = ways_of(&work, lies)
            .iter()
            .map(|way| advise(kind, &work, *way, &from));
        // The first of the ways that the style is made for; the worst where it is made for none.
        let made_for = |advice: &Advice| advice.verdict < Verdict::Badly;
        let (meant, not): (Vec<Advice>, Vec<Advice>) = advised.partition(made_for);
        let best = meant.into_iter().next();
        let worst = not.into_iter().max_by_key(|advice| advice.verdict);
        let best = best.or(worst).expect("a way");
        let verdict = agreed(&best.pair);
        if can_be_made(&Answers::to(&best.pair).findings) {
            let name = format!("chooser: {kind} for {}", work.words());
            assert_eq!(best.verdict, verdict, "{name}");
            let judged = Answers::to(&best.pair).fit.judged;
            if verdict < Verdict::Badly {
                assert_eq!(best.reason, judged.reason(best.pair.units.show()), "{name}");
            }
            tried += 1;
        }
        seen.push(verdict);
    }
    assert!(tried > 200, "{tried} pairs can be made");
    for verdict in [
        Verdict::Well,
        Verdict::WithAWord,
        Verdict::Badly,
        Verdict::Unsafe,
    ] {
        assert!(seen.contains(&verdict), "no pair is judged {verdict:?}");
    }
}

/// Pairs that are used for other work than they were drawn for, and laid as their style does not
/// ask, are judged alike too.
#[test]
fn they_agree_on_work_that_a_pair_was_not_drawn_for() {
    for (_, drawn) in pairs::all() {
        for work in works() {
            let mut pair = drawn.clone();
            pair.work = work;
            agreed(&pair);
        }
    }
}

fn judged(jaw: &str, drawn_for: &str, work: &str) -> Verdict {
    let pair = starting(jaw, drawn_for, "3/4 in square");
    let filed = Filed::Design(Box::new(pair));
    let ways = vec![pairs::work(work)];
    let pair = filed.pair(0).expect("a design is one pair");
    pair.on(&Stock { ways }).verdict()
}

/// What the trade knows (common practice, no source).
#[test]
fn facts_of_the_trade() {
    use Verdict::{Badly, Unsafe, Well, WithAWord};
    for (jaw, drawn_for, work, expected) in [
        // Round bar rolls between flat faces, whatever stands in front of them.
        ("flat", "1/2 in flat", "1/2 in round", Unsafe),
        ("open mouth", "3/4 in flat", "3/4 in round", Unsafe),
        ("duckbill", "1/4 in flat", "1/4 in round", Unsafe),
        ("box", "1/2 in flat", "1/2 in round", Unsafe),
        ("square mouth", "1/2 in square", "1/2 in round", Unsafe),
        ("goose neck", "1/2 in square", "1/2 in round", Unsafe),
        ("bolt", "1/2 in flat", "1/2 in round", Unsafe),
        ("bent bit", "1/2 in square", "1/2 in round", Unsafe),
        // A V and a hollow keep it.
        ("v bit", "1/2 in round", "1/2 in round", Well),
        ("hollow bit", "1/2 in round", "1/2 in round", Well),
        ("goose neck", "1/2 in round", "1/2 in round", Well),
        // Its bow is idle on bar without a head.
        ("bolt", "1/2 in round", "1/2 in round", WithAWord),
        ("bent bit", "1/2 in round", "1/2 in round", Well),
        // Flats in grooves stand on edges.
        ("hollow bit", "1/2 in round", "1/2 x 1 in flat", Unsafe),
        ("hollow bit", "1/2 in round", "1/2 in square", Unsafe),
        ("v bit", "1/2 in round", "1/2 x 1 in flat", Unsafe),
        // A V takes bar by its corners.
        (
            "v bit",
            "1/2 in square on corners",
            "1/2 in square on corners",
            Well,
        ),
        ("v bit", "1/2 in square on corners", "1/2 in square", Badly),
        // A bar on its corners turns between flat faces.
        ("flat", "1/2 in square", "1/2 in square on corners", Unsafe),
        ("flat", "1/2 in square", "1/2 in square", WithAWord),
        ("flat", "1/4 in flat", "1/4 in flat", Well),
        ("box", "1/4 in flat", "1/4 in flat", Well),
        ("square mouth", "1/2 in square", "1/2 in square", Well),
        // Far thicker work is squeezed out at the tips, a little thicker is held badly.
        ("flat", "1/8 in flat", "1 1/4 in flat", Unsafe),
        ("flat", "3/8 in flat", "1/2 in flat", Badly),
        // Across the jaws a groove of its own size keeps round bar.
        ("link", "3/8 in round", "3/8 in round", Well),
        ("scrolling", "3/8 in round", "3/8 in round", Well),
        ("scrolling", "1 in round", "1 in round", Unsafe),
        // By the eye.
        ("hammer eye", "1 in square", "1 in square", Well),
    ] {
        let found = judged(jaw, drawn_for, work);
        assert_eq!(found, expected, "{jaw} drawn for {drawn_for} on {work}");
    }
}

/// A bolt jaw whose bit is changed to a hollow one is no safer on flats than a hollow bit.
#[test]
fn a_bit_is_judged_as_the_style_that_is_nothing_else() {
    let mut pair = starting("bolt", "1/2 in round", "3/4 in square");
    let JawStyle::Bolt(bolt) = &mut pair.jaw.style else {
        panic!("a bolt jaw");
    };
    reinwright_core::asked::Choice::choose(&mut bolt.bit, 2);
    assert_eq!(pair.jaw.style.bit(), Some(JawKind::HollowBit));
    pair.work = pairs::work("1/2 in square");
    assert_eq!(agreed(&pair), Verdict::Unsafe);
}

/// On a shelf the pair that was drawn for the stock stands before others that hold it as well.
#[test]
fn a_pair_made_for_the_work_comes_first() {
    let pair = |work: &str| {
        let filed = Filed::Design(Box::new(starting("v bit", work, "3/4 in square")));
        filed.pair(0).expect("a design is one pair")
    };
    let stock = Stock {
        ways: vec![pairs::work("5/8 in round")],
    };
    let held = ["5/8 in square on corners", "5/8 in round", "11/16 in round"]
        .map(|drawn_for| pair(drawn_for).on(&stock));
    let first = reinwright_core::shop::shelf::best_first(&held)[0];
    assert_eq!(first, 1, "{held:?}");
    assert!(held[1].made_for_it && !held[0].made_for_it);
}
