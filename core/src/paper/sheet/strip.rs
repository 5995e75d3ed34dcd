use kurbo::{Affine, BezPath, Point, Rect, Size, Vec2};

use super::layout::{BAR_HEIGHT, Layout, NOTE, NOTE_SPACING};
use super::lettering::{Weight, fitted, text, wrap};
use super::{TitleBlock, outline, symbol};
use crate::paper::font::text_width;
use crate::paper::{Align, Fill, Item, Line};

/// Height of what stands under the page map, mm.
const UNDER_MAP: f64 = 4.0;
/// Size of the small lettering, mm, and its line spacing.
const SMALL: f64 = 2.4;
const SPACING: f64 = 2.9;
/// From a cell's edge to its lettering, mm.
const PAD: f64 = 1.5;

const CHECK: &str = "Print at 100 %, not fitted to the page. Measure the bars across and up: \
     100 mm ± 0.5 mm, 4 in ± 1/64 in. If they are off, print again at 10 000 ÷ the metric bar's \
     length in mm per cent (97 mm: 103.1 %).";
const JOIN: &str = "Cut at the dashed line, lay it on the other part: crosses of one name meet.";
const SAFETY: &str = "Paper burns. Trace the outline onto plate or in chalk; never lay paper on \
     hot steel.";

/// What the strip at the foot of a page says.
pub(super) struct Strip<'a> {
    pub(super) layout: &'a Layout,
    pub(super) title: &'a TitleBlock,
    /// What is drawn on the page.
    pub(super) name: String,
    /// One millimetre is so many of the thing drawn.
    pub(super) reduced: u32,
    /// The page's number among so many.
    pub(super) number: usize,
    pub(super) total: usize,
    pub(super) map: Map,
}

/// The pages of what is drawn in small, mm; nothing where there is one.
pub(super) struct Map {
    /// Where each page lies in the map, with what is on it.
    pub(super) pages: Vec<(Rect, Vec<Rect>)>,
    /// Which of them is this one.
    pub(super) here: usize,
    /// Whether something goes on from one page to another.
    pub(super) joined: bool,
}

impl Strip<'_> {
    /// The notes, what to check, and the title block.
    pub(super) fn draw(&self) -> Vec<Item> {
        let mut items = notes(self.layout);
        items.extend(self.advice());
        items.push(Item::group("title", Vec2::ZERO, self.title_block()));
        items
    }

    /// What to do when a check bar measures wrong, how parts join, and that paper burns.
    fn advice(&self) -> Vec<Item> {
        let cell = self.layout.checks;
        let room = advice_room(cell.width());
        let words = if self.map.joined {
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

    fn title_block(&self) -> Vec<Item> {
        let cell = self.layout.title;
        let middle = cell.x1 - map_wide(cell, self.map.pages.len());
        let left = Rect::new(cell.x0, cell.y0, middle, cell.y1);
        let mut rule = BezPath::new();
        rule.move_to((middle, cell.y0));
        rule.line_to((middle, cell.y1));
        let mut items = vec![
            Item::line(outline(cell), Line::Frame),
            Item::line(rule, Line::Frame),
        ];
        items.extend(self.names(left));
        items.push(symbol::projection(
            Point::new(left.x1 - symbol::WIDTH - 0.8, left.y0 + 0.8),
            self.title.projection,
        ));
        items.extend(self.draw_map(Rect::new(middle, cell.y0, cell.x1, cell.y1)));
        items
    }

    /// Design, sheets, which size, units, date.
    fn names(&self, cell: Rect) -> Vec<Item> {
        let title = self.title;
        let room = cell.width() - 2.0 * PAD;
        let beside = room - symbol::WIDTH - 0.5;
        let row = |down: f64| Point::new(cell.x0 + PAD, cell.y1 - down);
        let mut items = vec![
            fitted(row(4.6), &title.design, 4.2, Weight::Bold, room),
            fitted(row(8.4), &self.name, 3.0, Weight::Plain, room),
            fitted(row(16.4), &title.unit, SMALL, Weight::Plain, beside),
            fitted(row(18.9), &maker(title), SMALL, Weight::Plain, beside),
        ];
        let size_note = format!("{} · 1 : {}", title.size_note.to_uppercase(), self.reduced);
        items.extend(size_rows(&size_note, room, row));
        items
    }

    /// The page's number and, if there are several, all in small with this one filled.
    fn draw_map(&self, cell: Rect) -> Vec<Item> {
        let words = format!("page {} of {}", self.number, self.total);
        let foot = Point::new(cell.center().x, cell.y0 + PAD);
        let mut items = vec![text(foot, &words, 2.6, Weight::Bold, Align::Middle)];
        let all = self.map.pages.iter().map(|(page, _)| *page);
        let Some(all) = all
            .reduce(|a, b| a.union(b))
            .filter(|_| self.map.pages.len() > 1)
        else {
            return items;
        };
        let room = Rect::new(cell.x0, cell.y0 + UNDER_MAP, cell.x1, cell.y1).inset(-PAD);
        let scale = (room.width() / all.width()).min(room.height() / all.height());
        let small = Affine::translate(room.center().to_vec2())
            * Affine::scale(scale)
            * Affine::translate(-all.center().to_vec2());
        for (index, (page, parts)) in self.map.pages.iter().enumerate() {
            let here = index == self.map.here;
            items.push(small_box(
                small.transform_rect_bbox(*page),
                here.then_some(Fill::Ink),
            ));
            let fill = here.then_some(Fill::Paper);
            items.extend(
                parts
                    .iter()
                    .map(|part| small_box(small.transform_rect_bbox(*part), fill)),
            );
        }
        items
    }
}

/// Which size is drawn, as large as it has room in a row; what would be too small for that stands in two.
fn size_rows(words: &str, room: f64, row: impl Fn(f64) -> Point) -> Vec<Item> {
    /// Height of the letters of two rows, and how far down one and two stand, mm.
    const LETTERS: f64 = 2.6;
    const ONE: f64 = 13.6;
    const ROWS: [f64; 2] = [11.2, 13.8];
    if text_width(words, LETTERS, true) <= room {
        return vec![fitted(row(ONE), words, 4.8, Weight::Bold, room)];
    }
    let rows = wrap(words, LETTERS, Weight::Bold, room);
    let placed = rows.iter().zip(ROWS);
    let item =
        |(words, down): (&String, f64)| fitted(row(down), words, LETTERS, Weight::Bold, room);
    placed.map(item).collect()
}

/// Width of the page map's cell, mm: more where there are many pages and the title has room beside them.
fn map_wide(title: Rect, pages: usize) -> f64 {
    /// So many pages are many, and so wide a title block has room, mm.
    const MANY: usize = 4;
    const ROOM: f64 = 90.0;
    if pages > MANY && title.width() >= ROOM {
        30.0
    } else {
        20.0
    }
}

/// What the map of so many pages has room for in a title block, mm.
pub(super) fn map_room(title: Rect, pages: usize) -> Size {
    let wide = map_wide(title, pages) - 2.0 * PAD;
    Size::new(wide, title.height() - UNDER_MAP - 2.0 * PAD)
}

fn small_box(rect: Rect, fill: Option<Fill>) -> Item {
    Item::Path(crate::paper::PathItem {
        path: outline(rect),
        line: Some(Line::Frame),
        fill,
        part: None,
    })
}

fn notes(layout: &Layout) -> Vec<Item> {
    let cell = layout.notes;
    let mut at = Point::new(cell.x0, cell.y1 - 0.8 * NOTE_SPACING);
    let mut items = Vec::with_capacity(layout.lines.len());
    for (line, weight) in &layout.lines {
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

fn maker(title: &TitleBlock) -> String {
    match &title.date {
        Some(date) => format!("{date} · Reinwright"),
        None => "Reinwright".to_owned(),
    }
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
