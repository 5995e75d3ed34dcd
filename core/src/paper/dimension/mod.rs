//! Dimensions (line types and arrows after ISO 129-1): in rows, running from an origin, upright; and what
//! all of them are drawn with.

mod rows;
mod running;
mod upright;

use kurbo::{BezPath, Point, Rect, Vec2};

use super::font::text_width;
use super::{Align, Fill, Item};
use crate::finding::Part;

pub(crate) use rows::{Hang, Side, Wish, rows};
pub(crate) use running::{Origin, running};
pub(crate) use upright::upright;

/// Sizes that all dimensions of a drawing share, in mm; everything follows the text.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Scale {
    /// Size of the text.
    pub(crate) text: f64,
}

impl Scale {
    fn arrow(self) -> f64 {
        0.75 * self.text
    }

    /// From one row to the next.
    pub(crate) fn row(self) -> f64 {
        1.6 * self.text
    }

    /// Between an extension line and what it comes from.
    fn gap(self) -> f64 {
        0.35 * self.text
    }

    /// Whether an upright dimension has its arrows and its text between its ends.
    pub(crate) fn fits_upright(self, span: f64) -> bool {
        span > 3.2 * self.arrow()
    }

    pub(crate) fn width(self, text: &str) -> f64 {
        text_width(text, self.text, false)
    }
}

/// A text on a patch of paper, so that no line runs through it.
pub(crate) fn label(at: Point, text: &str, scale: Scale, align: Align, part: Part) -> Vec<Item> {
    let item = Item::text(at, text, scale.text, align).of(part);
    let patch = item
        .bounds()
        .unwrap_or(Rect::ZERO)
        .inflate(0.18 * scale.text, 0.02 * scale.text);
    vec![Item::fill(rectangle(patch), Fill::Paper), item]
}

pub(crate) fn rectangle(r: Rect) -> BezPath {
    kurbo::Shape::to_path(&r, 1.0)
}

pub(crate) fn segment(a: Point, b: Point) -> BezPath {
    let mut path = BezPath::new();
    path.move_to(a);
    path.line_to(b);
    path
}

/// A filled arrowhead whose point is at `at`, pointing along `towards`.
pub(crate) fn arrow(at: Point, towards: Vec2, scale: Scale) -> Item {
    let back = at - towards * scale.arrow();
    let wide = towards.turn_90() * (scale.arrow() / 6.0);
    let mut path = BezPath::new();
    path.move_to(at);
    path.line_to(back + wide);
    path.line_to(back - wide);
    path.close_path();
    Item::fill(path, Fill::Ink)
}

fn dot(at: Point, radius: f64) -> Item {
    Item::fill(
        kurbo::Shape::to_path(&kurbo::Circle::new(at, radius), 0.01),
        Fill::Ink,
    )
}
