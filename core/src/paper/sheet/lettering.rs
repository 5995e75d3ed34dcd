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

/// Breaks a text into lines no wider than `room`; a word that is wider is cut short. A size is one
/// word wherever it has room: `9/16 x 1 7/64 in`.
pub(crate) fn wrap(words: &str, size: f64, weight: Weight, room: f64) -> Vec<String> {
    let mut lines: Vec<String> = Vec::new();
    let fits = |word: &str| text_width(word, size, weight.is_bold()) <= room;
    let parts = |word: String| -> Vec<String> {
        if fits(&word) {
            return vec![word];
        }
        word.split_whitespace().map(str::to_owned).collect()
    };
    for word in whole_sizes(words).into_iter().flat_map(parts) {
        let word = cut(&word, size, weight, room);
        if let Some(last) = lines.last_mut() {
            let longer = format!("{last} {word}");
            if fits(&longer) {
                *last = longer;
                continue;
            }
        }
        lines.push(word);
    }
    lines
}

/// The words of a text, a size with its fraction, its unit and its other sides as one.
fn whole_sizes(words: &str) -> Vec<String> {
    let mut all: Vec<String> = Vec::new();
    let mut before = "";
    for word in words.split_whitespace() {
        match all.last_mut() {
            Some(last) if is_of_size(before, word) => {
                last.push(' ');
                last.push_str(word);
            }
            Some(_) | None => all.push(word.to_owned()),
        }
        before = word;
    }
    all
}

/// Whether a word goes on with the size that the word before it began.
fn is_of_size(before: &str, word: &str) -> bool {
    const UNITS: [&str; 2] = ["in", "mm"];
    let bare = |word: &str| word.trim_end_matches(['.', ',', ';', ':', ')']).to_owned();
    let begins = |word: &str| {
        let number = word.trim_start_matches('~');
        number.starts_with(|first: char| first.is_ascii_digit())
    };
    let after_number = before.ends_with(|last: char| last.is_ascii_digit());
    let fraction = begins(word) && word.contains('/') && !before.contains('/');
    let unit = UNITS.contains(&bare(word).as_str());
    let side = before == "x" && begins(word);
    side || (after_number && (fraction || unit || word == "x"))
}

#[cfg(test)]
mod tests {
    use super::{Weight, text_width, wrap};

    /// Broken in as much room as the widest of its lines takes.
    #[track_caller]
    fn check(words: &str, lines: &[&str]) {
        let widths = lines.iter().map(|line| text_width(line, 3.0, false));
        let room = widths.fold(0.0, f64::max) + 1e-6;
        assert_eq!(wrap(words, 3.0, Weight::Plain, room), lines);
    }

    #[test]
    fn a_size_stays_on_one_line() {
        check("to 9/16 x ~1 7/64 in", &["to", "9/16 x ~1 7/64 in"]);
        check("from 15 1/2 in.", &["from", "15 1/2 in."]);
        check("hot 2 to 11 x 22.5 mm", &["hot 2 to", "11 x 22.5 mm"]);
    }

    #[test]
    fn a_size_without_room_is_broken_and_not_cut_short() {
        let lines = wrap("9/16 x ~1 7/64 in", 3.0, Weight::Plain, 10.0);
        assert_eq!(lines.join(" "), "9/16 x ~1 7/64 in");
    }
}
