//! The samples: each opens, resolves without anything to mend, draws, prints and stays itself.

use reinwright_core::finding::{Part, Severity};
use reinwright_core::forge::balance::balance;
use reinwright_core::paper::{Fill, Item, Paper, View};
use reinwright_core::shop::Answers;
use reinwright_core::tongs::document::{self, Document};
use reinwright_core::tongs::resolve;
use reinwright_tests::designs::sample_paths;
use reinwright_tests::pairs::starting;
use reinwright_tests::within;

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
        let pounds = balance(design, &model).pair_mass_kg / 0.453_592_37;
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

/// One template serves both halves only when they are the same piece: bits bent to one side differ
/// though their jaws are alike, and a second jaw that is like the first does not differ.
#[test]
fn each_piece_has_its_template() {
    let titles = |design: &Document| {
        let sheets = reinwright::jobs::printing::sheets(design);
        let halves = sheets.len() - 2;
        let titles = sheets.into_iter().map(|sheet| sheet.title);
        titles.take(halves).collect::<Vec<_>>()
    };
    let alike = ["The half, finished: make two alike"];
    let differ = ["Half A, finished", "Half B, finished"];
    let flat = starting("flat", "3/8 in flat", "3/4 in square");
    assert_eq!(titles(&flat), alike);
    let mut twice = flat;
    twice.second_jaw = Some(twice.jaw.clone());
    assert_eq!(titles(&twice), alike);
    let bent = starting("bent bit", "12 mm round", "16 mm square");
    assert_eq!(titles(&bent), differ);
    let mut v_over_flat = starting("v bit", "5/8 in round", "3/4 in square");
    v_over_flat.second_jaw = Some(starting("flat", "5/8 in round", "3/4 in square").jaw);
    assert_eq!(titles(&v_over_flat), differ);
}

/// The two halves of a pair with bent bits step to opposite sides on their sheets, by as much.
#[test]
fn bent_halves_step_to_both_sides() {
    let bent = starting("bent bit", "12 mm round", "16 mm square");
    let sheets = reinwright::jobs::printing::sheets(&bent);
    let [a, b] = [&sheets[0], &sheets[1]].map(|sheet| {
        let top = sheet.drawing.items.iter().find_map(|item| match item {
            Item::Group(group) if group.view == Some(View::Top) => Some(group),
            Item::Group(_) | Item::Path(_) | Item::Text(_) => None,
        });
        let jaw = top
            .expect("a top view")
            .items
            .iter()
            .find_map(|item| match item {
                Item::Path(path) if path.fill == Some(Fill::Part(Part::Jaw)) => item.bounds(),
                Item::Group(_) | Item::Path(_) | Item::Text(_) => None,
            });
        jaw.expect("a jaw")
    });
    let aside = resolve(&bent).work.beside;
    assert!(aside > 5.0, "{aside}");
    // Tips lie beside the middle of the tongs, one on either side of it.
    within("farthest out", a.y0.min(b.y0), -a.y1.max(b.y1), 1e-9);
    assert!(a.y0.min(b.y0) < -aside, "{a:?} {b:?}");
    assert!((a.y1 > aside) != (b.y1 > aside), "{a:?} {b:?}");
}
