//! The samples: each opens, resolves without anything to mend, draws, prints and stays itself.

use reinwright::jobs::pages::Consent;
use reinwright::jobs::printing;
use reinwright_core::finding::{Part, Severity};
use reinwright_core::paper::{Fill, Item, Paper, View};
use reinwright_core::shop::Answers;
use reinwright_core::tongs::document::{self, Document};
use reinwright_core::tongs::resolve;
use reinwright_tests::designs::{sample, samples, samples_folder};
use reinwright_tests::files::{bytes, pages};
use reinwright_tests::pairs::starting;
use reinwright_tests::within;

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

fn template_pdf(design: &Document) -> Result<Vec<u8>, String> {
    printing::Template::of(design, None).pdf(Paper::A4, Consent::Usual)
}

/// Every page says which it is and of what, and every sheet begins on one.
#[test]
fn samples_print() {
    each(|name, design| {
        let pages = pages(&template_pdf(design).expect("few pages"));
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
    let alike = ["The half (make two)"];
    let differ = ["Half A", "Half B"];
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
