//! The samples: each opens, resolves without anything to mend, draws, prints and stays itself.

use reinwright::jobs::printing;
use reinwright_core::finding::{Part, Severity};
use reinwright_core::paper::Paper;
use reinwright_core::shop::Answers;
use reinwright_core::tongs::document::{self, Document};
use reinwright_core::tongs::resolve;
use reinwright_tests::designs::{sample, samples, samples_folder};
use reinwright_tests::files::{bytes, pages};

fn each(mut check: impl FnMut(&str, &Document)) {
    let samples = samples();
    assert!(samples.len() >= 6, "the samples are there: {samples:?}");
    for (name, design) in &samples {
        check(name, design);
    }
}

#[test]
fn samples_are_written_as_the_program_writes_them() {
    each(|name, design| {
        let path = samples_folder().join(name).with_extension("ron");
        let text = String::from_utf8(bytes(&path)).unwrap();
        assert_eq!(text, document::write(design), "{name}");
    });
}

/// The textbook's reins are what the textbook says: long and thin, and found to bend under a
/// strong squeeze. Nothing else may need mending there, and nothing at all in the others.
#[test]
fn samples_need_no_mending() {
    each(|name, design| {
        let found = Answers::to(design).findings;
        let textbook = name == "textbook-light-chain";
        let bad: Vec<String> = found
            .iter()
            .filter(|finding| finding.severity > Severity::Note)
            .filter(|finding| !(textbook && finding.part == Part::Rein))
            .map(ToString::to_string)
            .collect();
        assert!(bad.is_empty(), "{name}: {bad:#?}");
    });
}

/// A pair weighs between half a pound and five, and is between 12 and 30 in long: the working
/// classes of hand tongs (common practice, no source).
#[test]
fn samples_are_believable() {
    each(|name, design| {
        let model = resolve(design);
        let pounds = model.mass_kg() / 0.453_592_37;
        assert!((0.5..5.0).contains(&pounds), "{name} weighs {pounds} lb");
        let inches = (model.a.tip() - model.a.rein_end()) / 25.4;
        assert!((12.0..30.0).contains(&inches), "{name} is {inches} in long");
    });
}

/// Every page says which it is and of what, and every sheet begins on one.
#[test]
fn samples_print() {
    each(|name, design| {
        let pages = pages(&printing::template_pdf(design, Paper::A4, None));
        for (number, page) in (1..).zip(&pages) {
            let place = format!("page {number} of {}", pages.len());
            assert!(
                page.contains(&place) && page.contains(&design.name),
                "{name}, {place}: {page}"
            );
        }
        for sheet in printing::sheets(design) {
            let title = &sheet.title;
            let is_there = pages.iter().any(|page| page.contains(title));
            assert!(is_there, "{name}: no page of {title}");
        }
    });
}

#[test]
fn two_different_halves_have_two_sheets() {
    let count = |name: &str| printing::sheets(&sample(name)).len();
    assert_eq!(count("light-flat"), 3);
    assert_eq!(count("v-over-flat"), 4);
}
