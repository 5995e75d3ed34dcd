use kurbo::Point;

use crate::paper::font::{cut_short, text_width};
use crate::paper::{Align, Item, TextItem};

/// A weight of the paper's font.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Weight {
    Plain,
    Bold,
}

impl Weight {
    fn is_bold(self) -> bool {
        match self {
            Self::Plain => false,
            Self::Bold => true,
        }
    }
}

/// A text on a base line.
pub(crate) fn text(at: Point, words: &str, size: f64, weight: Weight, align: Align) -> Item {
    Item::Text(TextItem {
        at,
        text: words.into(),
        size,
        align,
        turn: 0.0,
        bold: weight.is_bold(),
        part: None,
    })
}

/// A text that is set smaller, and then cut short, where it would be wider than `room`.
pub(super) fn fitted(at: Point, words: &str, size: f64, weight: Weight, room: f64) -> Item {
    /// The smallest size that is still read easily at arm's length, mm.
    const SMALLEST: f64 = 2.3;
    let width = text_width(words, size, weight.is_bold());
    let size = (size * (room / width).min(1.0)).max(SMALLEST.min(size));
    text(
        at,
        &cut(words, size, weight, room),
        size,
        weight,
        Align::Start,
    )
}

fn cut(words: &str, size: f64, weight: Weight, room: f64) -> String {
    cut_short(words, size, weight.is_bold(), room)
}

/// Breaks a text into lines no wider than `room`; a word that is wider is cut short.
pub(crate) fn wrap(words: &str, size: f64, weight: Weight, room: f64) -> Vec<String> {
    let mut lines: Vec<String> = Vec::new();
    for word in words.split_whitespace() {
        let word = cut(word, size, weight, room);
        if let Some(last) = lines.last_mut() {
            let longer = format!("{last} {word}");
            if text_width(&longer, size, weight.is_bold()) <= room {
                *last = longer;
                continue;
            }
        }
        lines.push(word);
    }
    lines
}
