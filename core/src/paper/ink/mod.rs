//! Pages as PDF and drawings as SVG: the display list turned into ink, without geometry of its
//! own.

mod pdf;
mod style;
mod svg;

pub use pdf::{Date, DocInfo, pdf};
pub use style::{Colour, Stroke, paper_fill, paper_stroke, part_colour, stress_colour};
pub use svg::svg;
