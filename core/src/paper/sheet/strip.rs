use kurbo::{BezPath, Point, Rect, Vec2};

use super::grid::Grid;
use super::layout::{BAR_HEIGHT, NOTE, NOTE_SPACING};
use super::lettering::{Weight, fitted, text, wrap};
use super::{Place, Sheet, TitleBlock, outline, symbol};
use crate::paper::{Align, Fill, Item, Line};

/// Width of the page map's cell, mm.
const MAP: f64 = 20.0;
/// Size of the small lettering, mm, and its line spacing.
const SMALL: f64 = 2.4;
const SPACING: f64 = 2.9;
/// From a cell's edge to its lettering, mm.
const PAD: f64 = 1.5;

const CHECK: &str = "Print at 100 %, not fitted to the page. Measure the bars across and up: \
     100 mm ± 0.5 mm, 4 in ± 1/64 in. If they are off, print again at 10 000 ÷ the metric bar's \
     length in mm per cent (97 mm: 103.1 %).";
const JOIN: &str = "Cut at the dashed line and lay it on the next page: crosses with one letter \
     meet.";
const SAFETY: &str = "Paper burns. Trace the outline onto plate or in chalk; never lay paper on \
     hot steel.";

/// The notes, what to check, and the title block.
pub(super) fn draw(sheet: &Sheet, grid: &Grid, place: &Place, title: &TitleBlock) -> Vec<Item> {
    let mut items = notes(grid);
    items.extend(advice(grid));
    items.push(Item::group(
        "title",
        Vec2::ZERO,
        title_block(sheet, grid, place, title),
    ));
    items
}

fn notes(grid: &Grid) -> Vec<Item> {
    let cell = grid.layout.notes;
    let mut at = Point::new(cell.x0, cell.y1 - 0.8 * NOTE_SPACING);
    let mut items = Vec::with_capacity(grid.layout.lines.len());
    for (line, weight) in &grid.layout.lines {
        items.push(text(at, line, NOTE, *weight, Align::Start));
        at.y -= NOTE_SPACING;
    }
    items
}

/// Lines of advice below each other from a first base line.
fn lines(lines: &[String], first: Point) -> Vec<Item> {
    let mut at = first;
    let mut items = Vec::with_capacity(lines.len() + 1);
    for line in lines {
        items.push(text(at, line, SMALL, Weight::Plain, Align::Start));
        at.y -= SPACING;
    }
    items
}

/// Width of a line of advice in a cell, mm.
fn advice_room(cell: f64) -> f64 {
    cell - 2.0
}

/// What to do when a check bar measures wrong, how pages join, and that paper burns.
fn advice(grid: &Grid) -> Vec<Item> {
    let cell = grid.layout.checks;
    let room = advice_room(cell.width());
    let words = if grid.pages() > 1 {
        format!("{CHECK} {JOIN}")
    } else {
        CHECK.to_owned()
    };
    let first = Point::new(cell.x0 + 1.0, cell.y1 - BAR_HEIGHT - SPACING);
    let wrapped = wrap(&words, SMALL, Weight::Plain, room);
    let mut items = lines(&wrapped, first);
    let foot = Point::new(cell.x0 + 1.0, cell.y0 + 0.7);
    items.push(fitted(foot, SAFETY, 2.8, Weight::Bold, room));
    items
}

fn title_block(sheet: &Sheet, grid: &Grid, place: &Place, title: &TitleBlock) -> Vec<Item> {
    let cell = grid.layout.title;
    let middle = cell.x1 - MAP;
    let left = Rect::new(cell.x0, cell.y0, middle, cell.y1);
    let mut rule = BezPath::new();
    rule.move_to((middle, cell.y0));
    rule.line_to((middle, cell.y1));
    let mut items = vec![
        Item::line(outline(cell), Line::Frame),
        Item::line(rule, Line::Frame),
    ];
    items.extend(names(left, sheet, title));
    items.push(symbol::projection(
        Point::new(left.x1 - symbol::WIDTH - 0.8, left.y0 + 0.8),
        title.projection,
    ));
    items.extend(map(
        Rect::new(middle, cell.y0, cell.x1, cell.y1),
        grid,
        place,
    ));
    items
}

/// Design, sheet, which size, units, date.
fn names(cell: Rect, sheet: &Sheet, title: &TitleBlock) -> Vec<Item> {
    let room = cell.width() - 2.0 * PAD;
    let beside = room - symbol::WIDTH - 0.5;
    let row = |down: f64| Point::new(cell.x0 + PAD, cell.y1 - down);
    let size_note = format!("{} · 1 : {}", title.size_note.to_uppercase(), sheet.reduced);
    vec![
        fitted(row(4.6), &title.design, 4.2, Weight::Bold, room),
        fitted(row(8.7), &sheet.title, 3.2, Weight::Plain, room),
        fitted(row(12.8), &size_note, 3.2, Weight::Bold, room),
        fitted(row(15.9), &title.unit, SMALL, Weight::Plain, beside),
        fitted(row(18.8), &maker(title), SMALL, Weight::Plain, beside),
    ]
}

fn maker(title: &TitleBlock) -> String {
    match &title.date {
        Some(date) => format!("{date} · Reinwright"),
        None => "Reinwright".to_owned(),
    }
}

/// The page's number and, if the sheet has several, its pages in small with this one filled.
fn map(cell: Rect, grid: &Grid, place: &Place) -> Vec<Item> {
    let here = place.number(grid, place.at);
    let words = format!("page {here} of {}", place.total);
    let foot = Point::new(cell.center().x, cell.y0 + PAD);
    let mut items = vec![text(foot, &words, 2.6, Weight::Bold, Align::Middle)];
    if grid.pages() == 1 {
        return items;
    }
    let room = Rect::new(cell.x0, cell.y0 + 4.0, cell.x1, cell.y1).inset(-PAD);
    let paper = grid.layout.paper.size();
    let (columns, rows) = (grid.columns as f64, grid.rows as f64);
    let across = room.width() / (columns * paper.width);
    let scale = across.min(room.height() / (rows * paper.height));
    let whole = (columns * paper.width * scale, rows * paper.height * scale);
    let all = Rect::from_center_size(room.center(), whole);
    for at in grid.places() {
        items.push(map_page(all, paper * scale, at, place));
    }
    items
}

fn map_page(all: Rect, size: kurbo::Size, at: (usize, usize), place: &Place) -> Item {
    let x = all.x0 + at.0 as f64 * size.width;
    let y = all.y1 - (at.1 as f64 + 1.0) * size.height;
    let path = outline(Rect::from_origin_size((x, y), size));
    Item::Path(crate::paper::PathItem {
        path,
        line: Some(Line::Frame),
        fill: (at == place.at).then_some(Fill::Ink),
        part: None,
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::paper::sheet::layout::BAR_ROOM;

    #[test]
    fn advice_fits_above_the_caution_in_the_narrowest_cell() {
        let words = format!("{CHECK} {JOIN}");
        let lines = wrap(&words, SMALL, Weight::Plain, advice_room(BAR_ROOM));
        assert!(lines.len() <= 3, "{lines:?}");
        let caution = crate::paper::font::text_width(SAFETY, 2.8, true);
        assert!(caution <= advice_room(BAR_ROOM) * 1.1, "{caution}");
    }
}
