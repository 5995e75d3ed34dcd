//! Drawings: no text stands on another, however large the lettering is against the tongs.

use reinwright_core::draw::{self, DrawOptions};
use reinwright_core::finding::Part;
use reinwright_core::paper::Drawing;
use reinwright_core::tongs::document::{Document, ReinEnd};
use reinwright_core::tongs::jaw::JawKind;
use reinwright_core::tongs::resolve;
use reinwright_tests::designs::samples;
use reinwright_tests::outline::texts;
use reinwright_tests::pairs::starting;
use reinwright_tests::within;

#[track_caller]
fn check_texts(name: &str, drawing: &Drawing) {
    let texts = texts(drawing);
    assert!(texts.len() > 4, "{name}: {} texts", texts.len());
    for (index, (text, place)) in texts.iter().enumerate() {
        for (other, there) in &texts[index + 1..] {
            let both = place.intersect(*there);
            let apart = both.width() <= 0.0 || both.height() <= 0.0;
            assert!(apart, "{name}: \"{text}\" stands on \"{other}\"");
        }
    }
}

#[test]
fn no_text_stands_on_another() {
    for (name, design) in samples() {
        let model = resolve(&design);
        check_texts(
            &format!("{name}, half"),
            &draw::half(&design, &model, &DrawOptions::default()),
        );
        // From the lettering of a template to that of a window of 1024 x 700 and smaller.
        for text in [3.5, 7.0, 14.0, 18.0, 24.0] {
            let options = DrawOptions {
                text,
                ..DrawOptions::default()
            };
            let pair = draw::pair(&design, &model, &options);
            check_texts(&format!("{name}, pair, {text} mm"), &pair);
        }
    }
}

#[test]
fn no_text_stands_on_another_whatever_the_jaw() {
    let works = [
        "1/4 in round",
        "1/2 in round",
        "1 in square",
        "1/4 x 1 in flat",
    ];
    for jaw in JawKind::ALL {
        for work in works {
            let design = starting(jaw.name(), work, "5/8 in square");
            let model = resolve(&design);
            let name = format!("{jaw} on {work}");
            check_texts(
                &format!("{name}, half"),
                &draw::half(&design, &model, &DrawOptions::default()),
            );
            let pair = draw::pair(&design, &model, &DrawOptions::default());
            check_texts(&format!("{name}, pair"), &pair);
        }
    }
}

/// What is written at the tip stands over the steel: past it, it cost a page of paper for the last
/// letters.
#[test]
fn the_tip_of_a_template_takes_no_paper_for_its_size() {
    for jaw in ["flat", "v bit", "bolt", "duckbill"] {
        let design = starting(jaw, "1/2 in round", "3/4 in square");
        let model = resolve(&design);
        let texts = texts(&draw::half(&design, &model, &DrawOptions::default()));
        let at_tip = drawing_of_tip(&design);
        let (words, place) = texts
            .iter()
            .find(|(words, _)| *words == at_tip)
            .unwrap_or_else(|| panic!("{jaw}: {at_tip} is not in {texts:?}"));
        let tip = model.a.tip();
        assert!(
            place.x1 <= tip,
            "{jaw}: {words} ends {} past",
            place.x1 - tip
        );
    }
}

/// The section at the tip as a template writes it.
fn drawing_of_tip(design: &Document) -> String {
    let show = design.units.show();
    let form = design.jaw.plain_form();
    let last = form.stations.last().expect("a tip");
    let profile = &form.profiles[last.profile];
    let section = reinwright_core::shape::section::Section::new(profile, last.depth, last.width);
    format!(
        "{} × {}",
        show.number(section.depth),
        show.number(section.width)
    )
}

/// "Rein" is one length: what the field says stands on paper, and the balance counts it from the same
/// place, the end of the shoulder.
#[test]
fn the_rein_on_paper_is_the_rein_of_the_field() {
    for (name, design) in samples() {
        let model = resolve(&design);
        let drawn = texts(&draw::pair(&design, &model, &DrawOptions::default()));
        let show = design.units.show();
        let rein = format!("rein {}", show.number(design.rein.length.mm()));
        assert!(
            drawn.iter().any(|(text, _)| *text == rein),
            "{name}: {rein}"
        );
        let pieces = model.pieces();
        let part = pieces[0].stretches.iter().find(|it| it.part == Part::Rein);
        let stretch = part.expect("a rein");
        let counted = (stretch.to - stretch.from).abs();
        // Ends that are rolled or bent are told apart, and come on top.
        let plain = matches!(design.rein.finish, ReinEnd::Rounded | ReinEnd::Square);
        assert!(
            counted >= design.rein.length.mm() - 1e-6,
            "{name}: {counted}"
        );
        if plain {
            within(&name, counted, design.rein.length.mm(), 1e-6);
        }
    }
}
