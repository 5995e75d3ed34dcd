//! The signs that a job sheet is drawn with.

use kurbo::{Point, Rect, Shape as _, Vec2};

use super::super::stage::turn_arrow;
use super::super::views::polygon;
use crate::making::Turning;
use crate::paper::dimension::segment;
use crate::paper::{Fill, Item, Line};

/// Each sign with its width.
pub(super) fn signs() -> [(f64, Vec<Item>, &'static str); 5] {
    let tile = Rect::new(0.0, 0.0, 9.0, 4.0);
    let slant = |x: f64| segment(Point::new(x, 0.0), Point::new(x + 1.0, 4.0));
    let hot = vec![
        Item::fill(tile.to_path(0.1), Fill::Hot),
        Item::line(slant(1.0), Line::Fine),
        Item::line(slant(4.0), Line::Fine),
        Item::line(slant(7.0), Line::Fine),
    ];
    let anvil = vec![
        Item::fill(tile.to_path(0.1), Fill::Waste),
        Item::line(
            segment(Point::new(0.0, 4.0), Point::new(9.0, 4.0)),
            Line::Outline,
        ),
        Item::line(
            segment(Point::new(0.0, 0.0), Point::new(0.0, 4.0)),
            Line::Outline,
        ),
    ];
    let chisel = polygon(&[
        Point::new(1.2, 0.0),
        Point::new(0.2, 2.4),
        Point::new(0.2, 4.6),
        Point::new(2.2, 4.6),
        Point::new(2.2, 2.4),
    ]);
    [
        (2.0, blow_sign(Point::new(1.0, 0.0)), "strike"),
        (9.0, hot, "hot"),
        (9.0, anvil, "anvil"),
        (
            6.0,
            turn_arrow(Turning::BetweenBlows, Point::new(3.0, 1.0), 0.7),
            "turn",
        ),
        (2.4, vec![Item::fill(chisel, Fill::Ink)], "cut"),
    ]
}

/// An arrow as blows are drawn.
fn blow_sign(tip: Point) -> Vec<Item> {
    let head = [tip, tip + Vec2::new(-0.9, 2.0), tip + Vec2::new(0.9, 2.0)];
    vec![
        Item::fill(polygon(&head), Fill::Ink),
        Item::line(
            segment(tip + Vec2::new(0.0, 2.0), tip + Vec2::new(0.0, 4.4)),
            Line::Fine,
        ),
    ]
}
