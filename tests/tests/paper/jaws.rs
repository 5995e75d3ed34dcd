//! Every jaw style on paper: the half that is read back is as long as it is to be forged.

use kurbo::Shape;
use reinwright_core::draw;
use reinwright_core::paper::{Paper, PaperOptions, Sheet, TitleBlock, ink, tile};
use reinwright_core::tongs::jaw::JawKind;
use reinwright_core::tongs::resolve;
use reinwright_tests::pairs::starting;
use reinwright_tests::within;

use super::{FILE, reader};

/// Width of an outline, mm: the wide line of ISO 128-2.
const OUTLINE: f64 = 0.5;

#[test]
fn every_style_prints_as_long_as_it_is() {
    for style in JawKind::ALL {
        for (work, bar) in [
            ("1/2 in square", "3/4 in square"),
            ("1 in round", "1 in square"),
        ] {
            let pair = starting(style.name(), work, bar);
            let model = resolve(&pair);
            let sheet = Sheet::full_size(
                "The half",
                draw::half(&pair, &model, &draw::DrawOptions::default()),
            );
            let options = PaperOptions::new(Paper::own(1200.0, 600.0).unwrap());
            let pages = tile(&[sheet], &options, &TitleBlock::default());
            let seen = reader::read(&ink::pdf(&pages, &ink::DocInfo::default()));
            assert_eq!(seen.len(), 1, "{style}: one page holds it");
            let outlines = seen[0].lines().filter(|line| {
                let width = line.width.expect("a line");
                (width - OUTLINE).abs() < FILE && line.clip.is_some()
            });
            // Side and top view share the page, each where there is room.
            let widths = outlines.map(|line| line.path.bounding_box().width());
            let long = widths.fold(0.0, f64::max);
            let what = format!("{style} for {work}");
            within(&what, long, model.a.tip() - model.a.rein_end(), 2.0 * FILE);
        }
    }
}
