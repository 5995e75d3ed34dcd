//! The samples: each opens, resolves without anything to mend, draws, prints and stays itself.

use reinwright_core::finding::{Part, Severity};
use reinwright_core::paper::Paper;
use reinwright_core::shop::{Answers, balance_of};
use reinwright_core::tongs::document::{self, Document};
use reinwright_core::tongs::resolve;
use reinwright_tests::designs::sample_paths;

fn each(mut check: impl FnMut(&str, &Document)) {
    let paths = sample_paths();
    assert!(paths.len() >= 6, "the samples are there: {paths:?}");
    for path in paths {
        let name = path
            .file_name()
            .map(|name| name.to_string_lossy().into_owned());
        let name = name.expect("a file has a name");
        let bytes = std::fs::read(&path).expect("the sample can be read");
        let design = document::read(&bytes).unwrap_or_else(|error| panic!("{name}: {error}"));
        check(&name, &design);
    }
}

#[test]
fn samples_are_written_as_the_program_writes_them() {
    each(|name, design| {
        let path = reinwright_tests::designs::samples_folder().join(name);
        let text = std::fs::read_to_string(path).unwrap();
        assert_eq!(text, document::write(design), "{name}");
    });
}

/// The textbook's reins are what the textbook says: long and thin, and found to bend under a
/// strong squeeze. Nothing else may need mending there, and nothing at all in the others.
#[test]
fn samples_need_no_mending() {
    each(|name, design| {
        let found = Answers::to(design).findings;
        let textbook = name == "textbook-light-chain.ron";
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

#[test]
fn samples_print() {
    each(|name, design| {
        let pdf = reinwright::jobs::printing::template_pdf(design, Paper::A4, None);
        let pages = lopdf::Document::load_mem(&pdf).unwrap().get_pages().len();
        assert!(pages >= 3, "{name}: {pages} pages");
    });
}

#[test]
fn two_different_halves_have_two_sheets() {
    let count = |name: &str| {
        let design = reinwright_tests::designs::sample(name);
        reinwright::jobs::printing::sheets(&design).len()
    };
    assert_eq!(count("light-flat"), 3);
    assert_eq!(count("v-over-flat"), 4);
}
