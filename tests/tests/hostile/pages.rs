//! Paper is counted before it is laid out.

use std::ops::ControlFlow;

use reinwright::jobs::order::Order;
use reinwright::jobs::pages::{Consent, MANY, MOST, Pages, Stack};
use reinwright::jobs::printing::{Template, sheets};
use reinwright::jobs::set_printing::{self, Wanted};
use reinwright::jobs::watch;
use reinwright_core::asked::{Stock, StockSizes};
use reinwright_core::paper::{Paper, Together};
use reinwright_core::shop::balance_of;
use reinwright_core::shop::family::{self, answer_all};
use reinwright_core::tongs::document::{self, Document};
use reinwright_core::tongs::resolve;
use reinwright_tests::command_line::{ask, done, refused, text};
use reinwright_tests::designs::{family_paths, samples};
use reinwright_tests::files::{bytes, folder, pages, put};
use reinwright_tests::pairs::{self, mm};

/// A sound pair whose bar was mistyped: it is hundreds of metres long.
fn thin(side_mm: f64) -> Document {
    let mut pair = pairs::flat();
    pair.bar.stock = Stock::Square { side: mm(side_mm) };
    pair
}

#[test]
fn as_many_pages_are_counted_as_are_printed() {
    let papers = [Paper::A4, Paper::Tabloid, Paper::own(150.0, 150.0).unwrap()];
    let pairs = samples()
        .into_iter()
        .chain([("thin".to_owned(), thin(1.0))]);
    for (name, pair) in pairs {
        let template = Template::of(&pair, None);
        for paper in papers {
            let pdf = template.pdf(paper, Consent::All).expect("not too many");
            assert_eq!(
                template.pages(paper).all,
                pages(&pdf).len(),
                "{name}, {paper}"
            );
        }
    }
}

#[test]
fn as_many_pages_of_a_set_are_counted_as_are_printed() {
    for path in family_paths() {
        let family = family::read(&bytes(&path)).expect("a family");
        let answers = answer_all(&family);
        let wanted = Wanted {
            order: Order::usual(Paper::A4),
            day: None,
            stock: StockSizes::default(),
        };
        let on = &mut watch::to_the_end;
        let counted = set_printing::pages_wanted(&family, &answers, &wanted, on);
        let counted = counted.expect("not stopped");
        let pdf = set_printing::pdf(&family, &answers, &wanted, on);
        let printed = pages(&pdf.expect("not stopped")).len();
        assert_eq!(counted.all, printed, "{}", path.display());
        let mut steps = 0;
        let mut stop = |_| {
            steps += 1;
            ControlFlow::Break(())
        };
        let stopped = set_printing::pages_wanted(&family, &answers, &wanted, &mut stop);
        assert_eq!((stopped, steps), (None, 1), "it stops when it is told to");
    }
}

/// On paper one millimetre is as many of the bar as the title block says (ISO 5455, 3: the scale is
/// the ratio of the size on the drawing to that of the thing), of the scales that it recommends.
#[test]
fn a_bar_of_many_metres_is_drawn_to_scale() {
    for side in [0.5, 1.0, 3.0] {
        let pair = thin(side);
        let bar = sheets(&pair).pop().expect("the bar comes last");
        let balance = balance_of(&pair, &resolve(&pair));
        let length = balance.cut_length(pair.units).mm();
        assert!(length > 10_000.0, "{length}");
        let drawn = bar.drawing.bounds().width();
        let scale = f64::from(bar.reduced);
        assert!(
            (length / scale..length / scale + 40.0).contains(&drawn),
            "{drawn}"
        );
        let first = f64::from(bar.reduced) / 10_f64.powf(scale.log10().floor());
        assert!([1.0, 2.0, 5.0].contains(&first.round()), "1 : {scale}");
        let template = Template::of(&pair, None);
        assert_eq!(template.pages(Paper::A4).stack(), Stack::Usual);
        let printed = pages(&template.pdf(Paper::A4, Consent::Usual).unwrap());
        let words = format!("1 : {}", bar.reduced);
        assert!(printed[printed.len() - 1].contains(&words), "{words}");
    }
    let usual = sheets(&pairs::flat()).pop().expect("the bar comes last");
    assert_eq!(usual.reduced, 1);
}

#[test]
fn many_pages_are_printed_when_all_are_asked_for() {
    let folder = folder();
    let (file, out) = (folder.path().join("a.ron"), folder.path().join("a.pdf"));
    let mut pair = pairs::flat();
    pair.rein.length = mm(1000.0);
    put(folder.path(), "a.ron", document::write(&pair));
    let small = [
        "template",
        text(&file),
        "--out",
        text(&out),
        "--paper",
        "150 x 150 mm",
    ];
    refused(&small, &["pages of 150 x 150 mm", "--all"]);
    assert!(!out.exists());
    let all: Vec<&str> = small.into_iter().chain(["--all"]).collect();
    done(&all);
    assert!(pages(&bytes(&out)).len() > MANY);
}

#[test]
fn a_stack_is_asked_for_or_refused_by_its_height() {
    let stack = |all: usize| {
        let mut pages = Pages::default();
        let together = Together {
            pages: all,
            sheets: vec![(0, 0)],
        };
        pages.add(&together, |_| "Half A".to_owned());
        pages
    };
    let allowed = |all: usize, consent| stack(all).allow(Paper::A4, consent);
    assert_eq!(allowed(MANY, Consent::Usual), Ok(()));
    assert!(
        allowed(MANY + 1, Consent::Usual)
            .unwrap_err()
            .contains("--all")
    );
    assert_eq!(allowed(MOST, Consent::All), Ok(()));
    for consent in [Consent::Usual, Consent::All] {
        let why = allowed(MOST + 1, consent).unwrap_err();
        assert!(
            why.contains("over 1000 pages") && why.contains("Half A"),
            "{why}"
        );
    }
    assert_eq!(stack(usize::MAX).stack(), Stack::TooMany);
}

/// More is cut out of the boss than it has: nobody is told a bar of less than nothing.
#[test]
fn no_bar_is_reckoned_from_less_than_nothing() {
    let mut pair = pairs::flat();
    pair.rivet.hole = mm(200.0);
    let folder = folder();
    let at = |name: &str| folder.path().join(name);
    put(folder.path(), "a.ron", document::write(&pair));
    let (file, svg, pdf) = (at("a.ron"), at("a.svg"), at("a.pdf"));
    let words = ["boss", "no bar can be reckoned"];
    refused(&["balance", text(&file)], &words);
    refused(&["balance", text(&file), "--json"], &words);
    refused(
        &["drawing", text(&file), "--of", "bar", "--out", text(&svg)],
        &words,
    );
    let told = ask(&["template", text(&file), "--out", text(&pdf)]);
    assert!(told.text.contains(words[1]), "{}", told.text);
    let printed = pages(&bytes(&pdf));
    assert!(
        !printed
            .iter()
            .any(|page| page.contains("The bar with its marks"))
    );
}
