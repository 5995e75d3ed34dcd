//! Display lists and pages: lines, letters, dimensions, sheets, and the ink of PDF and SVG.

mod broken;
pub(crate) mod dimension;
pub(crate) mod display;
mod edges;
pub mod font;
pub mod ink;
pub(crate) mod lettering;
mod projection;
pub mod sheet;
mod traced;

pub use broken::{Breaks, Stretch};
pub use display::{Align, Drawing, Fill, GroupItem, Item, Line, PathItem, TextItem, View, bounds};
pub use projection::Projection;
pub use sheet::{
    Arranged, Correction, Named, Page, Paper, PaperError, PaperOptions, SetSheet, Sheet,
    TitleBlock, Together, arranged, tile, tile_set,
};
pub use traced::with_letters_traced;
