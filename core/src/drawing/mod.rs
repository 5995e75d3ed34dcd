//! From a [`crate::model::Model`] to a display list: views, dimensions, the bar, sheets.

mod display;
pub mod font;

pub use display::{Align, Drawing, Fill, GroupItem, Item, Line, PathItem, TextItem, bounds};

use crate::balance::Balance;
use crate::document::Document;
use crate::model::Model;

/// How a pair is drawn.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct DrawOptions {
    /// Half of the opening past the set pose, radians: each half is turned by so much.
    pub opening: f64,
    /// Without dimensions.
    pub bare: bool,
}

/// The pair: side, top and end view, aligned, with the work in the jaws. Origin at the rivet in
/// the side view.
pub fn pair(document: &Document, model: &Model, options: &DrawOptions) -> Drawing {
    let _ = (document, model, options);
    Drawing {
        items: vec![Item::fill(
            model.a.outline(),
            Fill::Part(crate::document::Part::Jaw),
        )],
    }
}

/// One half as a template to lay the hot work against: side and top view, stations and their
/// sizes. Origin at the rivet in the side view.
pub fn half(document: &Document, model: &Model) -> Drawing {
    pair(document, model, &DrawOptions::default())
}

/// The bar, full size, with its coloured parts and marks. Origin at the bar's left end, on its
/// middle line.
pub fn bar(document: &Document, model: &Model, balance: &Balance) -> Drawing {
    let _ = (document, model, balance);
    Drawing::default()
}
