//! Lettering as outlines, for a cutter or an engraver that knows no fonts.

use kurbo::{Affine, BezPath, Shape};

use super::display::{Align, Drawing, Fill, GroupItem, Item, PathItem, TextItem};
use super::font::spare::Spare;
use super::font::text_width;

/// How far the second stroke of a bold letter lies beside the first, in em squares.
const BOLD: f64 = 0.04;

/// The same drawing with every text as the outlines of its letters, in Ubuntu Light, each text as
/// wide as it was set.
pub fn with_letters_traced(drawing: &Drawing) -> Drawing {
    let font = Spare::open();
    Drawing {
        items: traced(&drawing.items, &font),
    }
}

fn traced(items: &[Item], font: &Spare) -> Vec<Item> {
    let one = |item: &Item| match item {
        Item::Path(path) => vec![Item::Path(path.clone())],
        Item::Text(text) => letters(text, font),
        Item::Group(group) => vec![Item::Group(GroupItem {
            items: traced(&group.items, font),
            ..group.clone()
        })],
    };
    items.iter().flat_map(one).collect()
}

fn letters(text: &TextItem, font: &Spare) -> Vec<Item> {
    let outline = font.outline(&text.text);
    let own = font.width(&text.text);
    if outline.bounding_box().area() <= 0.0 || own <= 0.0 {
        return Vec::new();
    }
    let width = text_width(&text.text, text.size, text.bold);
    let start = match text.align {
        Align::Start => 0.0,
        Align::Middle => -width / 2.0,
        Align::End => -width,
    };
    let place = Affine::translate(text.at.to_vec2()) * Affine::rotate(text.turn);
    let scale = Affine::scale_non_uniform(width / own, text.size / 1000.0);
    let struck = |beside: f64| {
        let path: BezPath =
            place * Affine::translate((start + beside, 0.0)) * scale * outline.clone();
        Item::Path(PathItem {
            path,
            line: None,
            fill: Some(Fill::Ink),
            part: text.part,
        })
    };
    let second = text.bold.then(|| struck(BOLD * text.size));
    std::iter::once(struck(0.0)).chain(second).collect()
}
