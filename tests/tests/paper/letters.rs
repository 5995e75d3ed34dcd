//! Texts with signs that Helvetica lacks: the file brings the letters along.

use reinwright_core::paper::Page;
use reinwright_core::paper::font::lacking;

use super::*;

/// Names in the alphabets of Europe, and what stands on them in sizes.
const NAMES: [&str; 6] = [
    "Kleště na 3/8 in, Łódź",
    "Клещи для полосы ⌀ 12",
    "Λαβίδα σιδηρουργού",
    "Kıskaç, Şişli ≤ 13 mm",
    "Țângă (mică) \\ 50 %",
    "Ĉevala prenilo — ½",
];

fn text(words: &str, bold: bool) -> Item {
    Item::Text(TextItem {
        at: Point::new(50.0, 50.0),
        text: words.to_owned(),
        size: 10.0,
        align: Align::Start,
        turn: 0.0,
        bold,
        part: None,
    })
}

/// An independent reader finds the words, each sign where its width says that it stands.
#[test]
fn names_in_other_alphabets_are_read_back() {
    for bold in [false, true] {
        let items = NAMES.map(|name| text(name, bold)).to_vec();
        let seen = reader::read(&one_page(items));
        for (name, shown) in NAMES.iter().zip(&seen[0].texts) {
            assert!(lacking(name).is_empty(), "{name}");
            assert_eq!(shown.text(), paper_text(name));
            let mut before = String::new();
            for (sign, at) in &shown.signs {
                // With a letter that keeps the whole in one font.
                let width = text_width(&format!("ш{before}"), 10.0, bold);
                let letter = text_width("ш", 10.0, bold);
                let start = 50.0 + width - letter;
                // The text's size is rounded to a thousandth of a point.
                within(&format!("{name}: {sign}"), at.x, start, 2.0 * FILE);
                before.push(*sign);
            }
        }
    }
}

/// What a reader that knows no font but the file's own shows: letters, and not one box for all.
#[test]
fn letters_are_drawn() {
    let picture = |words: &str, bold| {
        let (_, grey) = reader::raster(&one_page(vec![text(words, bold)]), 0, 10.0);
        let ink = grey.iter().filter(|grey| **grey < 128).count();
        (ink, grey)
    };
    let (plain, one) = picture("жжжж", false);
    let (_, other) = picture("шшшш", false);
    assert_ne!(one, other);
    let (bold, _) = picture("жжжж", true);
    assert!(plain > 500 && bold > plain, "{plain}, {bold}");
    // What is lacking is seen as such, whatever it is.
    let (lozenge, a) = picture("鋏", false);
    let (_, b) = picture("鍛", false);
    assert!(lozenge > 100, "{lozenge}");
    assert_eq!(a, b);
}

/// Only letters that are used are brought along, the same bytes each time, and nothing where
/// Helvetica has them all.
#[test]
fn a_file_brings_along_only_what_it_uses() {
    let size = |words: &str| {
        let bytes = one_page(vec![text(words, false)]);
        assert_eq!(bytes, one_page(vec![text(words, false)]));
        bytes.len()
    };
    let none = size("Zange, 3/8 in");
    // With the title twice: of its own and as XMP.
    assert!(none < 2500, "{none}");
    let some = size("Клещи для полосы");
    assert!((none + 1000..none + 8000).contains(&some), "{some}");
    let page = |words: &str| Page {
        width_mm: 100.0,
        height_mm: 100.0,
        items: vec![text(words, false)],
    };
    let pages = |words: &str| {
        let pages: Vec<Page> = (0..30).map(|_| page(words)).collect();
        pdf(&pages, &DocInfo::default()).len()
    };
    let (plain, many) = (pages("Zange, 3/8 in"), pages("Клещи для полосы"));
    assert!(
        many < plain + 12_000,
        "one font for all pages: {plain}, {many}"
    );
}
