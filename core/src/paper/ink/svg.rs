use std::collections::HashMap;
use std::fmt::Write;

use kurbo::{Affine, BezPath, PathEl, Point, Rect};

use super::style::{Colour, vector_fill, vector_stroke};
use crate::paper::{Align, Drawing, GroupItem, Item, PathItem, TextItem};

/// Blank rim around the drawing, mm: room for half a line's width.
const RIM: f64 = 1.0;

/// A drawing as an SVG file (W3C, SVG 1.1), full size: one user unit is one millimetre, and the
/// drawing's origin stays the origin, y turned down.
///
/// ```
/// use kurbo::{Rect, Shape};
/// use reinwright_core::paper::{Drawing, Item, Line};
/// let square = Rect::new(0.0, 0.0, 8.0, 8.0).to_path(0.1);
/// let drawing = Drawing { items: vec![Item::line(square, Line::Outline)] };
/// let svg = reinwright_core::paper::ink::svg(&drawing, "square");
/// assert!(svg.contains(r#"width="10mm" height="10mm" viewBox="-1 -9 10 10""#));
/// ```
pub fn svg(drawing: &Drawing, title: &str) -> String {
    let bounds = drawing.bounds().inflate(RIM, RIM);
    let (width, height) = (short(bounds.width()), short(bounds.height()));
    let (left, top) = (short(bounds.x0), short(-bounds.y1));
    let mut writer = Writer::default();
    put(
        &mut writer.text,
        format_args!(
            "<svg xmlns=\"http://www.w3.org/2000/svg\" version=\"1.1\" width=\"{width}mm\" \
             height=\"{height}mm\" viewBox=\"{left} {top} {width} {height}\">\n\
             <title>{}</title>\n",
            escaped(title)
        ),
    );
    writer.items(&drawing.items);
    writer.text.push_str("</svg>\n");
    writer.text
}

/// A number to a ten-thousandth of a millimetre, without needless digits or a negative zero.
fn short(number: f64) -> f64 {
    (number * 1e4).round() / 1e4 + 0.0
}

fn put(text: &mut String, words: std::fmt::Arguments<'_>) {
    text.write_fmt(words).expect("a string takes every text");
}

/// The five signs that XML keeps for itself written as entities; control signs become spaces,
/// since XML 1.0 has no place for them.
fn escaped(text: &str) -> String {
    let mut shown = String::with_capacity(text.len());
    for sign in text.chars() {
        match sign {
            '&' => shown.push_str("&amp;"),
            '<' => shown.push_str("&lt;"),
            '>' => shown.push_str("&gt;"),
            '"' => shown.push_str("&quot;"),
            '\'' => shown.push_str("&#39;"),
            sign if sign.is_control() || sign == '\u{fffe}' || sign == '\u{ffff}' => {
                shown.push(' ');
            }
            sign => shown.push(sign),
        }
    }
    shown
}

#[derive(Default)]
struct Writer {
    text: String,
    /// How often each group's name was used, so that every id is used once.
    names: HashMap<String, usize>,
}

impl Writer {
    fn items(&mut self, items: &[Item]) {
        for item in items {
            match item {
                Item::Path(path) => self.path(path),
                Item::Text(text) => self.words(text),
                Item::Group(group) => self.group(group),
            }
        }
    }

    fn path(&mut self, item: &PathItem) {
        let fill = item.fill.map(vector_fill).map_or("none".into(), hex);
        let mut style = format!("fill=\"{fill}\"");
        if item.fill.is_some() {
            style.push_str(" fill-rule=\"evenodd\"");
        }
        if let Some(line) = item.line {
            style.push_str(&stroke(line));
        }
        if let Some(part) = item.part {
            put(&mut style, format_args!(" class=\"{}\"", slug(part.name())));
        }
        let outline = flipped(&item.path).to_svg();
        put(
            &mut self.text,
            format_args!("<path d=\"{outline}\" {style}/>\n"),
        );
    }

    fn words(&mut self, item: &TextItem) {
        let (x, y) = (short(item.at.x), short(-item.at.y));
        let anchor = match item.align {
            Align::Start => "start",
            Align::Middle => "middle",
            Align::End => "end",
        };
        let mut more = String::new();
        if item.bold {
            more.push_str(" font-weight=\"bold\"");
        }
        if item.turn != 0.0 {
            let degrees = short(-item.turn.to_degrees());
            put(
                &mut more,
                format_args!(" transform=\"rotate({degrees} {x} {y})\""),
            );
        }
        put(
            &mut self.text,
            format_args!(
                "<text x=\"{x}\" y=\"{y}\" font-family=\"Helvetica, Arial, sans-serif\" \
                 font-size=\"{}\" text-anchor=\"{anchor}\"{more}>{}</text>\n",
                short(item.size),
                escaped(&item.text)
            ),
        );
    }

    fn group(&mut self, group: &GroupItem) {
        let id = self.id(&group.name);
        let mut style = String::new();
        if let Some(clip) = group.clip {
            self.clip(&id, clip);
            put(&mut style, format_args!(" clip-path=\"url(#{id}.clip)\""));
        }
        put(&mut self.text, format_args!("<g id=\"{id}\"{style}>\n"));
        let (x, y) = (short(group.shift.x), short(-group.shift.y));
        put(
            &mut self.text,
            format_args!("<g transform=\"translate({x} {y})\">\n"),
        );
        self.items(&group.items);
        self.text.push_str("</g>\n</g>\n");
    }

    fn clip(&mut self, id: &str, clip: Rect) {
        put(
            &mut self.text,
            format_args!(
                "<clipPath id=\"{id}.clip\"><rect x=\"{}\" y=\"{}\" width=\"{}\" \
                 height=\"{}\"/></clipPath>\n",
                short(clip.x0),
                short(-clip.y1),
                short(clip.width()),
                short(clip.height())
            ),
        );
    }

    /// An id that no other group has.
    fn id(&mut self, name: &str) -> String {
        let slug = slug(name);
        let used = self.names.entry(slug.clone()).or_insert(0);
        *used += 1;
        match *used {
            1 => slug,
            more => format!("{slug}.{more}"),
        }
    }
}

/// Letters, digits and hyphens, beginning with a letter: a name that XML takes as an id.
fn slug(name: &str) -> String {
    let plain = name.to_lowercase().replace(
        |sign: char| !sign.is_ascii_lowercase() && !sign.is_ascii_digit(),
        "-",
    );
    if plain.starts_with(|sign: char| sign.is_ascii_lowercase()) {
        plain
    } else {
        format!("g-{plain}")
    }
}

fn hex([red, green, blue]: Colour) -> String {
    format!("#{red:02x}{green:02x}{blue:02x}")
}

fn stroke(line: crate::paper::Line) -> String {
    let stroke = vector_stroke(line);
    let mut style = format!(
        " stroke=\"{}\" stroke-width=\"{}\" stroke-linejoin=\"round\"",
        hex(stroke.colour),
        stroke.width
    );
    if !stroke.dash.is_empty() {
        let dash: Vec<String> = stroke.dash.iter().map(f64::to_string).collect();
        put(
            &mut style,
            format_args!(" stroke-dasharray=\"{}\"", dash.join(" ")),
        );
    }
    style
}

/// The path with y down, to a ten-thousandth of a millimetre.
fn flipped(path: &BezPath) -> BezPath {
    let round = |point: Point| Point::new(short(point.x), short(point.y));
    let turned = Affine::FLIP_Y * path;
    let elements = turned.elements().iter().map(|element| match *element {
        PathEl::MoveTo(to) => PathEl::MoveTo(round(to)),
        PathEl::LineTo(to) => PathEl::LineTo(round(to)),
        PathEl::QuadTo(by, to) => PathEl::QuadTo(round(by), round(to)),
        PathEl::CurveTo(by, and, to) => PathEl::CurveTo(round(by), round(and), round(to)),
        PathEl::ClosePath => PathEl::ClosePath,
    });
    elements.collect()
}
