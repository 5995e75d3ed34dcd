//! Blocks one below the other, on as many pages as they take.

use kurbo::{Point, Rect};

use crate::paper::Align;
use crate::paper::Item;
use crate::paper::sheet::{Weight, text, wrap};

/// Lettering of the details, mm, and its lines.
pub(super) const NEAR: f64 = 3.6;
pub(super) const NEAR_LINE: f64 = 1.25 * NEAR;

/// Lines that stay together, with a picture beside them or none.
pub(super) struct Block {
    /// The first is bold where it is a heading.
    pub(super) lines: Vec<(Weight, String)>,
    /// How high it is at the least, mm.
    pub(super) least: f64,
}

impl Block {
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
        Self { lines, least: 0.0 }
    }

    fn height(&self) -> f64 {
        #[allow(clippy::cast_precision_loss, reason = "a few lines")]
        let own = self.lines.len() as f64 * NEAR_LINE;
        own.max(self.least)
    }
}

/// How far blocks stand apart.
#[derive(Debug, Clone, Copy)]
pub(super) enum Apart {
    /// As they are read best.
    Well,
    /// Closer, where that spares a page.
    Close,
}

impl Apart {
    fn mm(self) -> f64 {
        match self {
            Self::Well => 0.8 * NEAR,
            Self::Close => 0.35 * NEAR,
        }
    }
}

/// Pages that fill from the top down.
pub(super) struct Flow {
    room: Rect,
    apart: Apart,
    y: f64,
    pages: Vec<Vec<Item>>,
}

impl Flow {
    pub(super) fn new(room: Rect, apart: Apart) -> Self {
        Self {
            room,
            apart,
            y: room.y1,
            pages: vec![Vec::new()],
        }
    }

    /// Puts a block where the next is, on the next page where it does not fit on this one. Its room.
    pub(super) fn put(&mut self, block: &Block) -> Rect {
        let high = block.height();
        if self.y - high < self.room.y0 && self.y < self.room.y1 {
            self.pages.push(Vec::new());
            self.y = self.room.y1;
        }
        let area = Rect::new(self.room.x0, self.y - high, self.room.x1, self.y);
        let mut y = self.y - 0.85 * NEAR;
        for (weight, line) in &block.lines {
            let at = Point::new(self.room.x0, y);
            self.add(vec![text(at, line, NEAR, *weight, Align::Start)]);
            y -= NEAR_LINE;
        }
        self.y -= high + self.apart.mm();
        area
    }

    /// Adds items to the page that is being filled.
    pub(super) fn add(&mut self, items: Vec<Item>) {
        if let Some(page) = self.pages.last_mut() {
            page.extend(items);
        }
    }

    pub(super) fn into_pages(self) -> Vec<Vec<Item>> {
        self.pages
    }
}
