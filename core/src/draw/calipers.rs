//! The caliper table of a half: what is measured where, in rows.

use kurbo::Point;

use super::facts::Which;
use super::half::{measured, turned_over};
use crate::paper::dimension::segment;
use crate::paper::{Align, Drawing, Item, Line};
use crate::tongs::document::Document;
use crate::tongs::model::Model;

/// Size of figures, mm: 12 pt. That of words is 9 pt.
const FIGURES: f64 = 4.3;
const WORDS: f64 = 3.2;
/// From one row to the next, mm.
const ROW: f64 = 6.6;
/// Where the columns begin: place, distance from the rivet, depth and width, and room to tick or
/// to write what was measured, mm.
const COLUMNS: [f64; 4] = [0.0, 24.0, 52.0, 96.0];
/// Where the last column ends, mm.
const END: f64 = 128.0;

/// The table, its upper left corner at the origin: every place where a caliper is set, from the tip
/// back to the rein's end, with its distance from the rivet and its depth × width.
pub fn calipers(document: &Document, model: &Model, which: Which) -> Drawing {
    match which {
        Which::Either | Which::A => table(document, model),
        Which::B => {
            let (document, model) = turned_over(document, model);
            table(&document, &model)
        }
    }
}

fn table(document: &Document, model: &Model) -> Drawing {
    let show = document.units.show();
    let mut rows = measured(document, &model.a);
    rows.sort_by(|a, b| b.from_rivet.total_cmp(&a.from_rivet));
    let mut items = Vec::new();
    let mut y = -ROW;
    let head = ["part", "from the rivet", "depth × width", "measured"];
    items.extend(cells(head.map(str::to_owned), y, WORDS));
    items.push(rule(y - 1.8));
    for row in rows {
        y -= ROW;
        let distance = show.number(row.from_rivet.abs());
        let side = if row.from_rivet < 0.0 {
            "behind"
        } else {
            "before"
        };
        let words = [
            row.part.name().to_owned(),
            format!("{distance} {side}"),
            row.size,
            String::new(),
        ];
        items.extend(cells(words, y, FIGURES));
        items.push(rule(y - 1.8));
    }
    Drawing { items }
}

fn cells(words: [String; 4], y: f64, size: f64) -> Vec<Item> {
    let written = words.into_iter().zip(COLUMNS).filter(|of| !of.0.is_empty());
    let cell = |(text, x)| Item::text(Point::new(x, y), text, size, Align::Start);
    written.map(cell).collect()
}

fn rule(y: f64) -> Item {
    let ends = (Point::new(0.0, y), Point::new(END, y));
    Item::line(segment(ends.0, ends.1), Line::Fine)
}
