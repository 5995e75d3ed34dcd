//! Blocks one below the other, on as many pages as they take.

use kurbo::{Point, Rect};

use super::super::stage::picture;
use crate::making::Stage;
use crate::paper::sheet::{Weight, text, wrap};
use crate::paper::{Align, Item};

/// Lettering of the details, mm.
pub(super) const NEAR: f64 = 3.6;

/// How wide a picture beside words is, mm.
pub(super) const PICTURE: f64 = 68.0;

/// Lines that stay together, with what stands beside or under them.
pub(super) struct Block<'a> {
    /// The first is bold where it is a heading.
    lines: Vec<(Weight, String)>,
    beside: Beside<'a>,
}

/// What belongs to the lines of a block.
pub(super) enum Beside<'a> {
    Nothing,
    /// The piece after an operation, to their right.
    Picture(&'a Stage),
    /// A table under them, whose second half stands beside its first.
    Table(Vec<Row>),
}

/// A row of the table of stations: the part, from the tip, depth, width.
pub(super) type Row = [String; 4];

impl<'a> Block<'a> {
    /// Paragraphs broken to a width; the first bold.
    pub(super) fn headed(head: &str, paragraphs: &[String], width: f64) -> Self {
        let broken = |words: &str, weight: Weight| -> Vec<(Weight, String)> {
            let lines = wrap(words, NEAR, weight, width);
            lines.into_iter().map(|line| (weight, line)).collect()
        };
        let mut lines = broken(head, Weight::Bold);
        for words in paragraphs {
            lines.extend(broken(words, Weight::Plain));
        }
        Self {
            lines,
            beside: Beside::Nothing,
        }
    }

    pub(super) fn beside(self, beside: Beside<'a>) -> Self {
        Self { beside, ..self }
    }

    fn height(&self, apart: Apart) -> f64 {
        #[allow(clippy::cast_precision_loss, reason = "a few lines")]
        let lines = |count: usize| count as f64 * apart.line();
        let own = lines(self.lines.len());
        match &self.beside {
            Beside::Nothing => own,
            Beside::Picture(_) => own.max(apart.picture()),
            Beside::Table(rows) => own + lines(1 + rows.len().div_ceil(2)),
        }
    }

    /// From the upper edge of an area down.
    fn drawn(&self, area: Rect, apart: Apart) -> Vec<Item> {
        let mut at = Point::new(area.x0, area.y1 - 0.85 * NEAR);
        let mut items = Vec::new();
        for (weight, line) in &self.lines {
            items.push(text(at, line, NEAR, *weight, Align::Start));
            at.y -= apart.line();
        }
        match &self.beside {
            Beside::Nothing => {}
            Beside::Picture(stage) => {
                let (left, low) = (area.x1 - PICTURE, area.y1 - apart.picture());
                items.extend(picture(stage, Rect::new(left, low, area.x1, area.y1)));
            }
            Beside::Table(rows) => {
                let (first, second) = rows.split_at(rows.len().div_ceil(2));
                items.extend(table(first, at, apart.line()));
                items.extend(table(
                    second,
                    Point::new(area.center().x, at.y),
                    apart.line(),
                ));
            }
        }
        items
    }
}

/// Rows under their heads, from a place down; nothing of none.
fn table(rows: &[Row], mut at: Point, line: f64) -> Vec<Item> {
    /// Columns: the part, from the tip, depth, width, mm from the left.
    const COLUMNS: [f64; 4] = [0.0, 25.0, 50.0, 72.0];
    let head = ["part", "from the tip", "side view", "top view"].map(str::to_owned);
    let head = (!rows.is_empty()).then_some(&head);
    let mut items = Vec::new();
    for row in head.into_iter().chain(rows) {
        for (words, x) in row.iter().zip(COLUMNS) {
            let at = Point::new(at.x + x, at.y);
            items.push(text(at, words, NEAR, Weight::Plain, Align::Start));
        }
        at.y -= line;
    }
    items
}

/// How far blocks and lines stand apart.
#[derive(Debug, Clone, Copy)]
pub(super) enum Apart {
    /// As they are read best.
    Well,
    /// The blocks closer.
    Close,
    /// The lines closer too, and the pictures smaller.
    Tight,
}

impl Apart {
    /// All of them, as they are read best first.
    pub(super) const ALL: [Self; 3] = [Self::Well, Self::Close, Self::Tight];

    /// Between two blocks, mm.
    fn blocks(self) -> f64 {
        match self {
            Self::Well => 0.8 * NEAR,
            Self::Close | Self::Tight => 0.35 * NEAR,
        }
    }

    /// From one line to the next, mm.
    pub(super) fn line(self) -> f64 {
        match self {
            Self::Well | Self::Close => 1.25 * NEAR,
            Self::Tight => 1.14 * NEAR,
        }
    }

    /// How high a picture beside the words of an operation is, mm.
    pub(super) fn picture(self) -> f64 {
        match self {
            Self::Well | Self::Close => 26.0,
            Self::Tight => 22.0,
        }
    }
}

/// A page with something on it, and the height below which it is blank, mm.
#[derive(Debug, Clone)]
pub(super) struct Begun {
    pub(super) items: Vec<Item>,
    pub(super) y: f64,
}

impl Begun {
    /// A page with nothing on it yet.
    pub(super) fn blank(room: Rect) -> Self {
        Self {
            items: Vec::new(),
            y: room.y1,
        }
    }
}

/// How blocks fill pages from the top down.
#[derive(Debug, Clone, Copy)]
pub(super) struct Flow {
    apart: Apart,
    room: Rect,
    /// No block reaches lower than this, mm.
    floor: f64,
}

impl Flow {
    pub(super) fn new(apart: Apart, room: Rect) -> Self {
        let floor = room.y0;
        Self { apart, room, floor }
    }

    /// On which page each block comes and where it begins there, the first where a page is begun.
    fn places(self, blocks: &[Block<'_>], begun: f64) -> Vec<(usize, f64)> {
        let (mut page, mut y) = (0, begun);
        let mut place = |block: &Block<'_>| {
            let high = block.height(self.apart);
            if y - high < self.floor && y < self.room.y1 {
                (page, y) = (page + 1, self.room.y1);
            }
            let place = (page, y);
            y -= high + self.apart.blocks();
            place
        };
        blocks.iter().map(&mut place).collect()
    }

    /// How many pages they take, with the one that is begun.
    pub(super) fn pages(self, blocks: &[Block<'_>], begun: f64) -> usize {
        let last = self.places(blocks, begun).last().map_or(0, |place| place.0);
        last + 1
    }

    /// The same with pages filled alike: none lower than must be for so many.
    pub(super) fn filled_alike(self, blocks: &[Block<'_>], begun: f64) -> Self {
        /// By so much less of a page is tried at a time, mm, and so much of it is filled at the least.
        const STEP: f64 = 3.0;
        const LEAST: f64 = 0.6;
        let pages = self.pages(blocks, begun);
        let lower = |flow: &Self| {
            let floor = flow.floor + STEP;
            let less = Self { floor, ..*flow };
            let enough = self.room.y1 - floor > LEAST * self.room.height();
            (enough && less.pages(blocks, begun) == pages).then_some(less)
        };
        std::iter::successors(Some(self), lower)
            .last()
            .unwrap_or(self)
    }

    /// The same places with the blocks of each page farther apart, as far as it has room.
    fn spread(self, blocks: &[Block<'_>], mut places: Vec<(usize, f64)>) -> Vec<(usize, f64)> {
        /// Between two blocks at the most, mm.
        const MOST: f64 = 1.2 * NEAR;
        let mut rest = places.as_mut_slice();
        let mut done = 0;
        while let Some(&(page, _)) = rest.first() {
            let count = rest.iter().take_while(|place| place.0 == page).count();
            let (own, others) = rest.split_at_mut(count);
            done += count;
            let low = own[count - 1].1 - blocks[done - 1].height(self.apart);
            #[allow(clippy::cast_precision_loss, reason = "a few blocks")]
            let gaps = (count - 1).max(1) as f64;
            let more = ((low - self.room.y0) / gaps).clamp(0.0, MOST - self.apart.blocks());
            let mut by = 0.0;
            for place in own {
                place.1 -= by;
                by += more;
            }
            rest = others;
        }
        places
    }

    /// The pages, of which the first is begun.
    pub(super) fn drawn(self, blocks: &[Block<'_>], begun: Begun) -> Vec<Vec<Item>> {
        let places = self.spread(blocks, self.places(blocks, begun.y));
        let mut pages = vec![begun.items];
        for (block, (page, y)) in blocks.iter().zip(places) {
            pages.resize_with(pages.len().max(page + 1), Vec::new);
            let area = Rect::new(self.room.x0, self.room.y0, self.room.x1, y);
            pages[page].extend(block.drawn(area, self.apart));
        }
        pages
    }
}
