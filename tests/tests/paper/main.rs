//! Drawings on paper: page boxes, true size, tiles that join, what is written, SVG; each file read
//! back by an independent reader.

#![allow(
    clippy::unwrap_used,
    reason = "a test that cannot read its own file has failed"
)]
#![allow(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "counts of pages and pixels"
)]

mod colours;
mod file;
mod hot;
mod jaws;
mod letters;
mod pages;
mod pattern;
mod printer;
mod reader;
mod shared;
mod vector;

use kurbo::{BezPath, Point, Rect, Shape};
use reinwright_core::paper::font::{paper_text, text_width};
use reinwright_core::paper::ink::{Date, DocInfo, pdf};
use reinwright_core::paper::{
    Align, Drawing, Item, Line, Page, Paper, PaperOptions, Sheet, TextItem, TitleBlock, tile,
};
use reinwright_tests::within;

/// As near as the file's rounding to 0.001 pt allows, with two roundings added, mm.
const FILE: f64 = 1e-3;

fn sheet(items: Vec<Item>) -> Sheet {
    Sheet::full_size("Half A, finished", Drawing { items })
}

fn block(width: f64, height: f64) -> Sheet {
    let path = Rect::new(0.0, 0.0, width, height).to_path(0.1);
    sheet(vec![Item::line(path, Line::Outline)])
}

fn straight(from: (f64, f64), to: (f64, f64)) -> BezPath {
    let mut path = BezPath::new();
    path.move_to(from);
    path.line_to(to);
    path
}

fn title() -> TitleBlock {
    TitleBlock {
        design: "Bench tongs".into(),
        size_note: "cold size".into(),
        unit: "sizes in inches".into(),
        date: Some("2026-03-01".into()),
        ..TitleBlock::default()
    }
}

fn print(sheets: &[Sheet], paper: Paper) -> Vec<u8> {
    let pages = tile(sheets, &PaperOptions::new(paper), &title());
    pdf(&pages, &DocInfo::default())
}

fn one_page(items: Vec<Item>) -> Vec<u8> {
    let page = Page {
        width_mm: 210.0,
        height_mm: 297.0,
        items,
    };
    pdf(&[page], &DocInfo::default())
}

#[track_caller]
fn check_box(paper: Paper, expected_pt: [f64; 2]) {
    let bytes = print(&[block(50.0, 80.0)], paper);
    let file = lopdf::Document::load_mem(&bytes).unwrap();
    let (_, page) = file.get_pages().into_iter().next().unwrap();
    let page = file.get_dictionary(page).unwrap();
    assert!(!page.has(b"UserUnit"), "{paper}: a scale of its own");
    let sides = page.get(b"MediaBox").unwrap().as_array().unwrap();
    let sides: Vec<f64> = sides
        .iter()
        .map(|s| f64::from(s.as_float().unwrap()))
        .collect();
    assert_eq!(sides[..2], [0.0, 0.0], "{paper}");
    within("width in pt", sides[2], expected_pt[0], 1e-4);
    within("height in pt", sides[3], expected_pt[1], 1e-4);
}

#[test]
fn page_boxes_are_the_papers_own() {
    let iso = |mm: f64| mm * 72.0 / 25.4;
    // ISO 216:2007, table 1.
    check_box(Paper::A4, [iso(210.0), iso(297.0)]);
    check_box(Paper::A3, [iso(297.0), iso(420.0)]);
    // ANSI/ASME Y14.1, sizes A and B: 8.5 x 11 in and 11 x 17 in; the points are exact.
    check_box(Paper::Letter, [612.0, 792.0]);
    check_box(Paper::Tabloid, [792.0, 1224.0]);
    // Trade size, 8.5 x 14 in (common practice, no source).
    check_box(Paper::Legal, [612.0, 1008.0]);
    let own = Paper::parse("300 x 500 mm").unwrap();
    check_box(own, [iso(300.0), iso(500.0)]);
    let inches = Paper::parse("12 x 18 in").unwrap();
    check_box(inches, [864.0, 1296.0]);
}

#[test]
fn readers_are_asked_not_to_scale() {
    let info = DocInfo {
        title: "Tongs ±".into(),
        date: Some(Date {
            year: 2026,
            month: 3,
            day: 1,
        }),
    };
    let pages = tile(
        &[block(50.0, 50.0)],
        &PaperOptions::new(Paper::A4),
        &title(),
    );
    let bytes = pdf(&pages, &info);
    assert_eq!(bytes, pdf(&pages, &info), "the same pages, the same file");
    let file = lopdf::Document::load_mem(&bytes).unwrap();
    assert_eq!(file.version, "1.7");
    // ISO 32000-1, table 150: PrintScaling None.
    let catalog = file.catalog().unwrap();
    let wishes = catalog.get(b"ViewerPreferences").unwrap();
    let scaling = wishes.as_dict().unwrap().get(b"PrintScaling").unwrap();
    assert_eq!(scaling.as_name().unwrap(), b"None");
    let about = file.trailer.get(b"Info").unwrap().as_reference().unwrap();
    let about = file.get_dictionary(about).unwrap();
    let entry = |key: &[u8]| lopdf::decode_text_string(about.get(key).unwrap()).unwrap();
    assert_eq!(entry(b"Title"), "Tongs ±");
    assert_eq!(entry(b"Producer"), "Reinwright");
    assert_eq!(entry(b"Creator"), "Reinwright");
    assert_eq!(entry(b"CreationDate"), "D:20260301");
}

/// A reader shows the title and not the file's name, calls pages by the numbers that stand on them,
/// and finds title and day as XMP too (ISO 32000-1, tables 150 and 159, 14.3.2; ISO 16684-1).
#[test]
fn a_reader_is_told_what_the_file_is() {
    let info = DocInfo {
        title: "Tongs <for> \u{1}& \"5/8\" ±".into(),
        date: Some(Date {
            year: 2026,
            month: 3,
            day: 1,
        }),
    };
    let sheets = [block(150.0, 50.0), block(150.0, 50.0)];
    let pages = tile(&sheets, &PaperOptions::new(Paper::A4), &title());
    let file = lopdf::Document::load_mem(&pdf(&pages, &info)).unwrap();
    let catalog = file.catalog().unwrap();
    let dict = |key: &[u8]| catalog.get(key).unwrap().as_dict().unwrap();
    let wishes = dict(b"ViewerPreferences");
    assert!(wishes.get(b"DisplayDocTitle").unwrap().as_bool().unwrap());
    let labels = dict(b"PageLabels")
        .get(b"Nums")
        .unwrap()
        .as_array()
        .unwrap();
    assert_eq!(labels.len(), 2);
    assert_eq!(labels[0].as_i64().unwrap(), 0);
    let label = labels[1].as_dict().unwrap();
    assert_eq!(label.get(b"S").unwrap().as_name().unwrap(), b"D");
    assert_eq!(label.get(b"St").unwrap().as_i64().unwrap(), 1);
    let metadata = catalog.get(b"Metadata").unwrap().as_reference().unwrap();
    let metadata = file.get_object(metadata).unwrap().as_stream().unwrap();
    assert!(
        metadata.dict.get(b"Filter").is_err(),
        "it is not compressed"
    );
    let packet = std::str::from_utf8(&metadata.content).unwrap();
    let xml = usvg::roxmltree::Document::parse(packet).unwrap();
    let text = |name: &str| {
        let node = xml
            .descendants()
            .find(|node| node.tag_name().name() == name);
        node.and_then(|node| node.text()).map(str::to_owned)
    };
    assert_eq!(text("li").as_deref(), Some("Tongs <for> & \"5/8\" ±"));
    assert_eq!(text("CreateDate").as_deref(), Some("2026-03-01"));
}

/// Boxes of the black fills that are long and thin: the check bars.
fn bars(seen: &reader::Seen) -> Vec<Rect> {
    let unclipped = seen.fills().filter(|fill| fill.clip.is_none());
    let boxes = unclipped.map(|fill| fill.path.bounding_box());
    boxes.filter(|b| b.width().max(b.height()) > 90.0).collect()
}

#[test]
fn check_bars_measure_100_mm_and_4_in_both_ways() {
    for paper in Paper::NAMED {
        let bytes = print(&[block(490.0, 150.0)], paper);
        for seen in reader::read(&bytes) {
            let bars = bars(&seen);
            assert_eq!(bars.len(), 4, "{paper}: {bars:?}");
            for (bar, length) in bars.iter().zip([100.0, 101.6, 100.0, 101.6]) {
                within("bar", bar.width().max(bar.height()), length, FILE);
            }
            assert!(bars[0].width() > bars[0].height() && bars[1].width() > bars[1].height());
            assert!(bars[2].width() < bars[2].height() && bars[3].width() < bars[3].height());
        }
    }
}

/// Pixels to a millimetre when ink is measured.
const FINE: f64 = 20.0;

/// How far the ink of a rectangle's middle line reaches, mm, in a picture made by hayro.
fn inked(picture: &(usize, Vec<u8>), height_mm: f64, from: Point, to: Point) -> f64 {
    let (width, grey) = picture;
    let steps = (from.distance(to) * FINE * 2.0) as usize;
    let dark: Vec<f64> = (0..=steps)
        .map(|step| step as f64 / steps as f64)
        .filter(|along| {
            let at = from.lerp(to, *along);
            let (x, y) = (at.x * FINE, (height_mm - at.y) * FINE);
            grey[y as usize * width + x as usize] < 128
        })
        .collect();
    (dark[dark.len() - 1] - dark[0]) * from.distance(to)
}

#[test]
fn ink_of_the_check_bars_measures_true() {
    let bytes = print(&[block(100.0, 150.0)], Paper::A4);
    let seen = &reader::read(&bytes)[0];
    let picture = reader::raster(&bytes, 0, FINE);
    for (bar, length) in bars(seen).iter().zip([100.0, 101.6, 100.0, 101.6]) {
        // The two rows of blocks meet on the middle line; each row has one of the ends.
        let (near, far) = if bar.width() > bar.height() {
            let line = |share| bar.y0 + share * bar.height();
            (
                [
                    Point::new(bar.x0 - 0.8, line(0.25)),
                    Point::new(bar.x1 + 0.8, line(0.25)),
                ],
                [
                    Point::new(bar.x0 - 0.8, line(0.75)),
                    Point::new(bar.x1 + 0.8, line(0.75)),
                ],
            )
        } else {
            let line = |share| bar.x0 + share * bar.width();
            (
                [
                    Point::new(line(0.25), bar.y0),
                    Point::new(line(0.25), bar.y1 + 0.8),
                ],
                [
                    Point::new(line(0.75), bar.y0),
                    Point::new(line(0.75), bar.y1 + 0.8),
                ],
            )
        };
        let block = length / if length > 101.0 { 8.0 } else { 10.0 };
        for [from, to] in [near, far] {
            let found = inked(&picture, 297.0, from, to);
            // Each row lacks its first or its last block.
            within("ink", found, length - block, 0.1);
        }
    }
}

/// Every word on a page, and the widths that place them, come from the reader's own font table.
#[test]
fn widths_are_those_of_the_standard_fonts() {
    let set: Vec<char> = (' '..='~')
        .chain('\u{a1}'..='\u{ff}')
        .chain("€‚ƒ„…†‡ˆ‰Š‹ŒŽ‘’“”•–—˜™š›œžŸ".chars())
        .filter(|sign| *sign != '\u{ad}')
        .collect();
    for bold in [false, true] {
        let items = set.iter().map(|sign| letter(*sign, bold)).collect();
        let seen = reader::read(&one_page(items));
        assert_eq!(seen[0].texts.len(), set.len());
        for (sign, shown) in set.iter().zip(&seen[0].texts) {
            let step = shown.signs[1].1 - shown.signs[0].1;
            let width = text_width(&sign.to_string(), 10.0, bold);
            within(&format!("{sign} bold {bold}"), width, step.x, FILE);
            within("base line", step.y, 0.0, 1e-9);
        }
    }
}

fn letter(sign: char, bold: bool) -> Item {
    Item::Text(TextItem {
        at: Point::new(50.0, 50.0),
        text: format!("{sign}|"),
        size: 10.0,
        align: Align::Start,
        turn: 0.0,
        bold,
        part: None,
    })
}

#[test]
fn written_is_what_is_read() {
    let words = [
        r"(a\b) 50 % & <x> 'q'",
        "Ø 3/8 in ± 1/64 · 12½ × 19²",
        "ends)",
        "é—…",
    ];
    let at = Point::new(60.0, 100.0);
    let items = words
        .iter()
        .map(|w| Item::text(at, *w, 4.0, Align::Start))
        .collect();
    let seen = reader::read(&one_page(items));
    assert_eq!(seen[0].words(), words);
    // Signs that the fonts lack are replaced by what a smith reads the same way.
    assert_eq!(paper_text("⌀ 12 ≤ 13 → 5″"), "Ø 12 <= 13 -> 5\"");
    assert_eq!(paper_text("⌀ 12 ≤ 13 → 5″ Ж"), "Ø 12 ≤ 13 -> 5\" Ж");
    assert_eq!(paper_text("鋏 Ж"), "◊ Ж");
}

#[test]
fn text_hangs_on_its_point_and_turns_about_it() {
    let at = Point::new(100.0, 100.0);
    let turned = |align, turn| {
        Item::Text(TextItem {
            at,
            text: "half".into(),
            size: 10.0,
            align,
            turn,
            bold: false,
            part: None,
        })
    };
    let quarter = std::f64::consts::FRAC_PI_2;
    let items = vec![
        turned(Align::Start, 0.0),
        turned(Align::Middle, 0.0),
        turned(Align::End, 0.0),
        turned(Align::End, quarter),
    ];
    let seen = reader::read(&one_page(items));
    // Helvetica's AFM: h 556, a 556, l 222, f 278, so 16.12 mm at 10 mm.
    let starts = [
        (100.0, 100.0),
        (91.94, 100.0),
        (83.88, 100.0),
        (100.0, 83.88),
    ];
    for (shown, (x, y)) in seen[0].texts.iter().zip(starts) {
        within("x", shown.at().x, x, FILE);
        within("y", shown.at().y, y, FILE);
    }
}

#[test]
fn lines_have_the_widths_of_iso_128() {
    // ISO 128-2: wide to narrow 2 : 1, out of 0.25, 0.35, 0.5, 0.7 mm.
    let line = |line| Item::line(straight((50.0, 50.0), (90.0, 50.0)), line);
    let items = vec![line(Line::Outline), line(Line::Hidden), line(Line::Centre)];
    let seen = reader::read(&one_page(items));
    let widths: Vec<f64> = seen[0].lines().filter_map(|l| l.width).collect();
    for (found, expected) in widths.iter().zip([0.5, 0.25, 0.25]) {
        within("line width", *found, expected, FILE);
    }
    assert_eq!(widths.len(), 3);
}
