//! What only a family has to draw: its table, its ranges, all sizes side by side and one over
//! the other. Of a set of tools, which has no ranges, its bar is told instead.
//!
//! Tables and charts are laid out for paper. Pictures of the pairs come at a scale of 1 : n from
//! [`REDUCTIONS`], which the sheet's title names; the window asks for 1 : 1.

mod ranges;
mod table;

pub use ranges::{bars, ranges, total_words};
pub use table::{Fact, InTable, same_in_all, table, table_pages};

use kurbo::{Affine, BezPath, Circle, Point, Rect, Shape, Vec2};

use super::{SizeAnswer, ToolSizeAnswer};
use crate::asked::Stock;
use crate::draw::{self, DrawOptions, Names, Sizes, Views};
use crate::paper::font::cut_short;
use crate::paper::{Align, Drawing, Fill, Item, Line, PathItem, TextItem};
use crate::tongs::model::Model;

/// Scales of reduction for pictures (ISO 5455), full size first.
pub const REDUCTIONS: [u32; 5] = [1, 2, 5, 10, 20];

/// What a picture may take on paper, mm: the window of an A4 page, upright or across.
pub const ROOM: (f64, f64) = (165.0, 225.0);

/// Size of the lettering, mm.
const TEXT: f64 = 3.0;
/// From one row of a table to the next, mm.
const ROW: f64 = 4.8;
/// Between columns, mm.
const COLUMN_GAP: f64 = 4.0;
/// The widest name of a size beside a picture or a chart, and over a column, mm.
const NAME: f64 = 62.0;
const HEAD: f64 = 45.0;

/// The largest scale at which a drawing of full size fits the room, lying either way.
pub fn reduction(full_size: &Drawing, room: (f64, f64)) -> u32 {
    let size = full_size.bounds().size();
    let fits = |n: u32| {
        let (w, h) = (size.width / f64::from(n), size.height / f64::from(n));
        (w <= room.0 && h <= room.1) || (w <= room.1 && h <= room.0)
    };
    let fitting = REDUCTIONS.into_iter().find(|n| fits(*n));
    fitting.unwrap_or(REDUCTIONS[REDUCTIONS.len() - 1])
}

/// All sizes under each other, seen along the rivet, rivets in one line, at 1 : `reduced`.
pub fn strip(answers: &[SizeAnswer], reduced: u32) -> Drawing {
    stacked(
        answers
            .iter()
            .map(|answer| (answer.label.as_str(), picture(&answer.model, reduced))),
    )
}

/// All sizes of a tool under each other, seen from the side with their struck ends or their shoulders
/// in one line, at 1 : `reduced`.
pub fn tool_strip(answers: &[ToolSizeAnswer], reduced: u32) -> Drawing {
    let options = DrawOptions {
        sizes: Sizes::None,
        names: Names::LeftOut,
        views: Views::Side,
        ..DrawOptions::default()
    };
    stacked(answers.iter().map(|answer| {
        let side = draw::tool(&answer.document, &answer.answers.model, &options);
        let mut items = side.grown(1.0 / f64::from(reduced)).items;
        // The first of its views is enough to know it by; its sections come behind.
        items.truncate(1);
        (answer.label.as_str(), items)
    }))
}

/// Pictures under each other, each under its name.
fn stacked<'a>(pictures: impl Iterator<Item = (&'a str, Vec<Item>)>) -> Drawing {
    let mut items = Vec::new();
    let mut top = 0.0;
    for (label, picture) in pictures {
        let area = crate::paper::bounds(&picture).unwrap_or(Rect::ZERO);
        let shift = Vec2::new(0.0, top - 1.4 * TEXT - area.y1);
        let mut group = picture;
        let at = Point::new(area.x0, area.y1 + 0.4 * TEXT);
        let name = cut_short(label, TEXT, false, NAME);
        group.push(Item::text(at, name, TEXT, Align::Start));
        items.push(Item::group(label.to_owned(), shift, group));
        top = shift.y + area.y0 - TEXT;
    }
    Drawing { items }
}

/// A pair as set on its work, seen along the rivet.
fn picture(model: &Model, reduced: u32) -> Vec<Item> {
    let pose = Affine::scale(1.0 / f64::from(reduced));
    let [front, back] = model.outlines().clone();
    let back = Model::half_b_pose() * back;
    let rivet = Circle::new(Point::ZERO, model.rivet / 2.0).to_path(0.01);
    let (half, from) = (model.work.depth / 2.0, model.work.from);
    let tip = model.a.tip().max(model.b.tip());
    let work = Rect::new(from, -half, tip + 0.4 * (tip - from), half).to_path(0.1);
    vec![
        both(pose * work, Fill::Work, Line::Fine),
        both(pose * back, Fill::OtherHalf, Line::Outline),
        both(pose * front, Fill::Paper, Line::Outline),
        both(pose * rivet, Fill::Rivet, Line::Fine),
    ]
}

fn both(path: BezPath, fill: Fill, line: Line) -> Item {
    Item::Path(PathItem {
        path,
        line: Some(line),
        fill: Some(fill),
        part: None,
    })
}

/// Half A of every size, one over the other with their rivets together, at 1 : `reduced`; a
/// leader from each tip to its name.
pub fn overlay(answers: &[SizeAnswer], reduced: u32) -> Drawing {
    let pose = Affine::scale(1.0 / f64::from(reduced));
    let mut items = Vec::new();
    for answer in answers {
        items.push(Item::line(
            pose * answer.model.outlines()[0].clone(),
            Line::Fine,
        ));
        let hole = answer.document.rivet.hole.mm() / 2.0;
        let hole = Circle::new(Point::ZERO, hole).to_path(0.01);
        items.push(Item::line(pose * hole, Line::Fine));
    }
    items.extend(names(answers, pose));
    Drawing { items }
}

/// The names of an overlay beside the tips, from the outermost tip down, none over another. Of
/// very many sizes only some are named, the outermost and the innermost among them.
fn names(answers: &[SizeAnswer], pose: Affine) -> Vec<Item> {
    /// So many names stand under each other on a page.
    const MOST: usize = 24;
    let tip = |answer: &SizeAnswer| {
        let jaw = &answer.model.a.jaw;
        pose * jaw.edge_point(crate::shape::sweep::Edge::Outer, jaw.length())
    };
    let mut tips: Vec<_> = answers.iter().map(|a| (tip(a), &a.label)).collect();
    tips.sort_by(|a, b| b.0.y.total_cmp(&a.0.y));
    if tips.len() > MOST {
        let last = tips.len() - 1;
        tips = (0..MOST).map(|n| tips[n * last / (MOST - 1)]).collect();
    }
    let right = tips.iter().map(|(p, _)| p.x).fold(0.0, f64::max) + 3.0 * TEXT;
    let first = tips.first().map_or(0.0, |(p, _)| p.y) + ROW;
    let mut items = Vec::new();
    let mut y = first;
    for (from, label) in tips {
        y = (from.y - 0.3 * TEXT).min(y - ROW).max(y - 2.0 * ROW);
        let mut leader = BezPath::new();
        leader.move_to(from);
        leader.line_to((right - 1.0, y + 0.35 * TEXT));
        items.push(Item::line(leader, Line::Dimension));
        items.push(Item::text(
            Point::new(right, y),
            cut_short(label, TEXT, false, NAME),
            TEXT,
            Align::Start,
        ));
    }
    items
}

/// A bar as it is bought: `3/4 in square`.
pub fn bar_words(stock: &Stock) -> String {
    match stock {
        Stock::Round { diameter } => format!("{diameter} round"),
        Stock::Square { side } => format!("{side} square"),
        Stock::Flat { thickness, width } => format!("{thickness} x {width}"),
    }
}

fn letters(at: Point, text: &str, bold: bool) -> Item {
    Item::Text(TextItem {
        at,
        text: text.to_owned(),
        size: TEXT,
        align: Align::Start,
        turn: 0.0,
        bold,
        part: None,
    })
}

/// Rows that stand under each other on a page.
pub const ROWS_OF_A_PAGE: usize = 44;

/// A contents page: each sheet's name and its first page. A name that would run into the number is
/// cut short.
pub fn contents(title: &str, entries: &[(String, usize)]) -> Drawing {
    /// From the names' start to the page numbers' end, and what a number may take, mm.
    const WIDE: f64 = 150.0;
    const NUMBER: f64 = 12.0;
    let mut items = vec![letters(Point::ZERO, title, true)];
    for (row, (name, page)) in (1_u32..).zip(entries) {
        let y = -ROW * (f64::from(row) + 0.5);
        let name = cut_short(name, TEXT, false, WIDE - NUMBER);
        items.push(letters(Point::new(0.0, y), &name, false));
        let at = Point::new(WIDE, y);
        items.push(Item::text(at, page.to_string(), TEXT, Align::End));
    }
    Drawing { items }
}

/// The name of a size where it stands before other words.
pub fn short_name(label: &str) -> String {
    cut_short(label, TEXT, false, NAME)
}
