//! A pair as it would be, over the drawing of the pair as it is.

use egui::{Rect, Ui};
use reinwright_core::draw::{self, DrawOptions};
use reinwright_core::paper::{Drawing, Item, View};
use reinwright_core::shop::mend::Mend;
use reinwright_core::tongs::document::Document;
use reinwright_core::tongs::model::Model;
use reinwright_core::tongs::resolve;

use super::lies::Frozen;
use super::words::say_over;

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
            sizes: draw::Sizes::None,
            views: draw::Views::All,
            names: draw::Names::Drawn,
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
        let words = format!("as it would be, dashed: {}", self.what);
        say_over(ui, area, words);
    }
}
