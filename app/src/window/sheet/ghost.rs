//! A pair as it would be, over the drawing of the pair as it is.

use egui::{Align2, FontId, Rect, Ui, Vec2};
use reinwright_core::draw::{self, DrawOptions};
use reinwright_core::paper::{Drawing, Item, View};
use reinwright_core::shop::mend::Mend;
use reinwright_core::tongs::document::Document;
use reinwright_core::tongs::model::Model;
use reinwright_core::tongs::resolve;

use super::lies::Frozen;
use crate::window::paint::theme::Palette;

/// The design after a mend that is only pointed at.
#[derive(Debug)]
pub(crate) struct Ghost {
    document: Document,
    model: Model,
    what: String,
}

fn is_end_view(item: &Item) -> bool {
    match item {
        Item::Group(group) => group.view == Some(View::End),
        Item::Path(_) | Item::Text(_) => false,
    }
}

impl Ghost {
    pub(crate) fn of(mend: &Mend, document: &Document) -> Self {
        let document = mend.taken(document);
        Self {
            model: resolve(&document),
            document,
            what: mend.what(),
        }
    }

    /// It, opened so far, where the views of the sheet stand. Not seen from the end: there outlines
    /// lie behind steel, which lines alone cannot show.
    pub(super) fn drawing(&self, (opening, lies): (f64, Frozen)) -> Drawing {
        let options = DrawOptions {
            opening,
            bare: true,
            text: lies.text,
            shifts: Some(lies.shifts),
            // Broken where the sheet is, so that what is alike lies alike.
            breaks: lies.brought.breaks,
            end: lies.brought.end,
        };
        let mut drawing = draw::pair(&self.document, &self.model, &options);
        drawing.items.retain(|item| !is_end_view(item));
        drawing
    }

    /// Says that the lines over the drawing are a try.
    pub(super) fn told(&self, ui: &Ui, area: Rect) {
        let palette = Palette::of(ui.visuals());
        let words = format!("as it would be, dashed: {}", self.what);
        let at = area.left_top() + Vec2::splat(8.0);
        let painter = ui.painter_at(area);
        let font = FontId::proportional(13.0);
        let galley = painter.layout(words, font, palette.accent, area.width() - 16.0);
        let behind = Align2::LEFT_TOP.anchor_size(at, galley.size());
        painter.rect_filled(behind.expand(3.0), 2.0, palette.sheet);
        painter.galley(at, galley, palette.accent);
    }
}
