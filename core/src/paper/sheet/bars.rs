use kurbo::{BezPath, Point, Rect, Vec2};

use super::layout::{APART, INSET, Layout, THICK};
use super::outline;
use crate::paper::{Align, Fill, Item, TextItem};
use crate::units::MM_PER_INCH;

/// Size of the bars' lettering, mm.
const LETTERS: f64 = 2.3;

/// A bar whose ends are sharp edges, so that it measures the same whatever the line width.
struct Bar {
    name: &'static str,
    label: &'static str,
    block: f64,
    count: u32,
}

const METRIC: Bar = Bar {
    name: "check-100-mm",
    label: "100 mm",
    block: 10.0,
    count: 10,
};
const IMPERIAL: Bar = Bar {
    name: "check-4-in",
    label: "4 in",
    block: MM_PER_INCH / 2.0,
    count: 8,
};

/// The check bars, both across and up.
pub(super) fn draw(layout: &Layout) -> Vec<Item> {
    let lying = Point::new(layout.checks.x0 + INSET, layout.checks.y1 - INSET - THICK);
    let upright = Point::new(layout.column.x0 + THICK, layout.column.y0);
    let next = THICK + APART;
    vec![
        METRIC.at(lying, 0.0),
        IMPERIAL.at(lying - Vec2::new(0.0, next), 0.0),
        METRIC.at(upright, std::f64::consts::FRAC_PI_2),
        IMPERIAL.at(upright + Vec2::new(next, 0.0), std::f64::consts::FRAC_PI_2),
    ]
}

impl Bar {
    fn at(&self, corner: Point, turn: f64) -> Item {
        let place = kurbo::Affine::translate(corner.to_vec2()) * kurbo::Affine::rotate(turn);
        let length = self.block * f64::from(self.count);
        let label = TextItem {
            at: place * Point::new(length + 1.0, (THICK - 0.7 * LETTERS) / 2.0),
            text: self.label.into(),
            size: LETTERS,
            align: Align::Start,
            turn,
            bold: false,
            part: None,
        };
        let items = vec![
            Item::fill(place * self.blocks(), Fill::Ink),
            Item::Text(label),
        ];
        Item::group(self.name, Vec2::ZERO, items)
    }

    /// Two rows of blocks, staggered, so that there is ink at both ends.
    fn blocks(&self) -> BezPath {
        let mut path = BezPath::new();
        for index in 0..self.count {
            let x = f64::from(index) * self.block;
            let y = f64::from(index % 2) * THICK / 2.0;
            path.extend(outline(Rect::new(x, y, x + self.block, y + THICK / 2.0)));
        }
        path
    }
}
