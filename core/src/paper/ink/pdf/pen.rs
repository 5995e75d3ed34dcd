//! A page as a content stream (ISO 32000-1, 8 and 9.4).

use std::fmt::{self, Write as _};

use kurbo::{Affine, BezPath, PathEl, PathSeg, Point, Rect, Vec2};

use super::PT_PER_MM;
use super::fonts::{BOLD, PLAIN, SPARE};
use crate::paper::font::spare::Subset;
use crate::paper::font::{Face, set, standard, text_width};
use crate::paper::ink::style::{Colour, paper_fill, paper_stroke};
use crate::paper::{Align, GroupItem, Item, Line, Page, PathItem, TextItem};

/// Lettering is black, like outlines.
const LETTERS: Colour = [0, 0, 0];

/// How much a line around the spare font's letters adds to their strokes, in text sizes, so that
/// they look like Helvetica's: its stems are 88 and 140 thousandths (AFM, `StdVW`; from
/// memory), theirs 56.
const THICKER: f64 = 0.032;
const THICKER_BOLD: f64 = 0.084;

/// What is painted on a page; the letters that it needs are added to those of the file.
pub(super) fn content(page: &Page, letters: &mut Subset) -> String {
    let mut pen = Pen {
        text: String::from("1 j\n"),
        line: None,
        fill: None,
        letters,
    };
    pen.items(&page.items);
    pen.text
}

/// A number with as many digits as it needs, to a thousandth: of a point, 0.35 µm.
struct Short(f64);

impl fmt::Display for Short {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let rounded = (self.0 * 1000.0).round() / 1000.0;
        // No minus before nothing.
        write!(f, "{}", rounded + 0.0)
    }
}

/// Millimetres in points.
fn pt(mm: f64) -> Short {
    Short(mm * PT_PER_MM)
}

/// A point in points.
struct At(Point);

impl fmt::Display for At {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{} {}", pt(self.0.x), pt(self.0.y))
    }
}

/// Red, green and blue as parts of one.
struct Ink(Colour);

impl fmt::Display for Ink {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let [red, green, blue] = self.0.map(|part| Short(f64::from(part) / 255.0));
        write!(f, "{red} {green} {blue}")
    }
}

/// Writes operators, and those that set a style only when it changes.
struct Pen<'a> {
    text: String,
    line: Option<Line>,
    fill: Option<Colour>,
    letters: &'a mut Subset,
}

impl Pen<'_> {
    fn put(&mut self, words: fmt::Arguments<'_>) {
        self.text
            .write_fmt(words)
            .expect("a string takes every text");
    }

    fn items(&mut self, items: &[Item]) {
        for item in items {
            match item {
                Item::Path(path) => self.path(path),
                Item::Text(text) => self.text(text),
                Item::Group(group) => self.group(group),
            }
        }
    }

    fn path(&mut self, item: &PathItem) {
        if let Some(fill) = item.fill {
            self.set_fill(paper_fill(fill));
            self.outline(&item.path);
            self.text.push_str("f*\n");
        }
        if let Some(line) = item.line {
            self.set_line(line);
            self.outline(&item.path);
            self.text.push_str("S\n");
        }
    }

    /// The path itself (ISO 32000-1, table 59).
    fn outline(&mut self, path: &BezPath) {
        let mut here = Point::ZERO;
        for element in path.elements() {
            match *element {
                PathEl::MoveTo(to) => self.put(format_args!("{} m\n", At(to))),
                PathEl::LineTo(to) => self.put(format_args!("{} l\n", At(to))),
                PathEl::QuadTo(by, to) => {
                    let cubic = PathSeg::Quad(kurbo::QuadBez::new(here, by, to)).to_cubic();
                    self.curve(cubic.p1, cubic.p2, to);
                }
                PathEl::CurveTo(first, second, to) => self.curve(first, second, to),
                PathEl::ClosePath => self.text.push_str("h\n"),
            }
            here = element.end_point().unwrap_or(here);
        }
    }

    fn curve(&mut self, first: Point, second: Point, to: Point) {
        self.put(format_args!("{} {} {} c\n", At(first), At(second), At(to)));
    }

    fn group(&mut self, group: &GroupItem) {
        let before = (self.line, self.fill);
        self.text.push_str("q\n");
        if let Some(clip) = group.clip {
            self.clip(clip);
        }
        if group.shift != Vec2::ZERO {
            self.put(format_args!("1 0 0 1 {} cm\n", At(group.shift.to_point())));
        }
        self.items(&group.items);
        self.text.push_str("Q\n");
        (self.line, self.fill) = before;
    }

    fn clip(&mut self, clip: Rect) {
        let (at, size) = (At(clip.origin()), At(clip.size().to_vec2().to_point()));
        self.put(format_args!("{at} {size} re W n\n"));
    }

    fn text(&mut self, text: &TextItem) {
        self.set_fill(LETTERS);
        let (face, shown) = set(&text.text);
        match face {
            Face::Standard => {
                let font = if text.bold { BOLD } else { PLAIN };
                self.begin(text, font);
                self.standard(&shown);
                self.text.push_str(" Tj ET\n");
            }
            Face::Spare => {
                let by = if text.bold { THICKER_BOLD } else { THICKER };
                let (ink, width) = (Ink(LETTERS), pt(by * text.size));
                self.put(format_args!("q {ink} RG {width} w [] 0 d\n"));
                self.begin(text, SPARE);
                // Letters are filled, and a line is drawn around them (ISO 32000-1, table 106).
                self.text.push_str(" 2 Tr <");
                for sign in shown.chars() {
                    let number = self.letters.number(sign);
                    self.put(format_args!("{number:04X}"));
                }
                self.text.push_str("> Tj ET Q\n");
            }
        }
    }

    /// Font, size and place of a text.
    fn begin(&mut self, text: &TextItem, font: &str) {
        let size = pt(text.size);
        self.put(format_args!("BT /{font} {size} Tf "));
        let start = At(start(text));
        if text.turn == 0.0 {
            self.put(format_args!("{start} Td "));
        } else {
            let [cos, sin, minus, again, ..] = Affine::rotate(text.turn).as_coeffs();
            self.put(format_args!(
                "{cos:.7} {sin:.7} {minus:.7} {again:.7} {start} Tm "
            ));
        }
    }

    /// A text in the standard fonts' own bytes (ISO 32000-1, 7.3.4.2).
    fn standard(&mut self, text: &str) {
        self.text.push('(');
        for byte in text.chars().filter_map(standard::byte_of) {
            match byte {
                b'(' | b')' | b'\\' => self.put(format_args!("\\{}", char::from(byte))),
                0x20..=0x7e => self.text.push(char::from(byte)),
                _ => self.put(format_args!("\\{byte:03o}")),
            }
        }
        self.text.push(')');
    }

    fn set_line(&mut self, line: Line) {
        if self.line.replace(line) == Some(line) {
            return;
        }
        let stroke = paper_stroke(line);
        let (width, ink) = (pt(stroke.width), Ink(stroke.colour));
        let dash: Vec<String> = stroke.dash.iter().map(|mm| pt(*mm).to_string()).collect();
        let dash = dash.join(" ");
        self.put(format_args!("{width} w [{dash}] 0 d {ink} RG\n"));
    }

    fn set_fill(&mut self, fill: Colour) {
        if self.fill.replace(fill) != Some(fill) {
            self.put(format_args!("{} rg\n", Ink(fill)));
        }
    }
}

/// Where a text begins.
fn start(text: &TextItem) -> Point {
    let width = text_width(&text.text, text.size, text.bold);
    let back = match text.align {
        Align::Start => 0.0,
        Align::Middle => width / 2.0,
        Align::End => width,
    };
    text.at - Vec2::from_angle(text.turn) * back
}
