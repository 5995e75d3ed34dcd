//! What is printed to be cut out has no colours on any sheet.

use reinwright::jobs::pages::Consent;
use reinwright::jobs::printing::Template;
use reinwright::jobs::what::{Kind, Look, What};
use reinwright_core::paper::Paper;
use reinwright_core::paper::ink::Colour;
use reinwright_tests::designs::samples;
use reinwright_tests::{pairs, tools};

use super::reader;

const BLACK: Colour = [0, 0, 0];
const WHITE: Colour = [255, 255, 255];

fn everything(look: Look) -> What {
    What {
        kinds: Kind::ALL.to_vec(),
        look,
        ..What::default()
    }
}

/// The colours of all areas that are filled in a template.
fn filled(template: &Template) -> Vec<Colour> {
    let paper = Paper::own(900.0, 600.0).expect("a large paper");
    let pdf = template.pdf(paper, Consent::All).expect("few pages");
    let seen = reader::read(&pdf);
    seen.iter()
        .flat_map(|page| page.fills().map(|fill| fill.colour).collect::<Vec<_>>())
        .collect()
}

#[track_caller]
fn check(name: &str, drawn: impl Fn(&What) -> Template) {
    let is_coloured = |colour: &Colour| *colour != BLACK && *colour != WHITE;
    let coloured = filled(&drawn(&everything(Look::NoSizes)));
    assert!(coloured.iter().any(is_coloured), "{name}: {coloured:?}");
    let plain = filled(&drawn(&everything(Look::OutlineOnly)));
    let odd: Vec<&Colour> = plain.iter().filter(|colour| is_coloured(colour)).collect();
    assert!(odd.is_empty(), "{name}: {odd:?}");
    assert!(plain.contains(&BLACK), "{name}: the check bars stay");
}

#[test]
fn outlines_alone_have_no_coloured_area() {
    for (name, design) in samples() {
        check(&name, |what| Template::with(&design, what, None));
    }
    for (name, design) in pairs::all().into_iter().take(4) {
        check(name, |what| Template::with(&design, what, None));
    }
    for (name, tool) in tools::all() {
        check(name, |what| Template::of_tool(&tool, what, None));
    }
}
