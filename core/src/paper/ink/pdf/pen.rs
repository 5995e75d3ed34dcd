//! A page as operators of the page writer.

use kurbo::{PathEl, PathSeg, Point, Rect, Vec2};
use printpdf::{
    BuiltinFont, Color, CurTransMat, DictItem, LineDashPattern, LineJoinStyle, LinePoint, Mm, Op,
    PaintMode, PdfFontHandle, PdfPage, Polygon, PolygonRing, Pt, Rgb, TextMatrix, WindingOrder,
};

use super::PT_PER_MM;
use super::fonts::SPARE;
use crate::paper::font::spare::Subset;
use crate::paper::font::{Face, set, text_width};
use crate::paper::ink::style::{Colour, paper_fill, paper_stroke};
use crate::paper::{Align, GroupItem, Item, Line, Page, PathItem, TextItem};

/// Lettering is black, like outlines.
const LETTERS: Colour = [0, 0, 0];

/// How much a line around the spare font's letters adds to their strokes, in text sizes, so that
/// they look like Helvetica's: its stems are 88 and 140 thousandths (AFM, `StdVW`; from memory),
/// theirs [68](crate::paper::font::spare::STEM). Bold stays under that, or the small letters' eyes
/// would close.
const THICKER: f64 = 0.02;
const THICKER_BOLD: f64 = 0.06;

/// What is painted on a page; the letters that it needs are added to those of the file.
pub(super) fn page(page: &Page, letters: &mut Subset) -> PdfPage {
    let mut pen = Pen {
        ops: Vec::new(),
        line: None,
        fill: None,
        letters,
    };
    pen.ops.push(Op::SetLineJoinStyle {
        join: LineJoinStyle::Round,
    });
    pen.items(&page.items);
    let mut sheet = PdfPage::new(Mm(0.0), Mm(0.0), pen.ops);
    let size = (exact(page.width_mm), exact(page.height_mm));
    let media = printpdf::Rect::from_wh(size.0, size.1);
    sheet.media_box = media.clone();
    sheet.trim_box = media.clone();
    sheet.crop_box = media;
    sheet
}

/// Millimetres as points, as near as the file's numbers can be.
#[allow(
    clippy::cast_possible_truncation,
    reason = "PDF numbers are single precision: 0.0001 pt at the far end of the largest page"
)]
fn exact(mm: f64) -> Pt {
    Pt((mm * PT_PER_MM) as f32)
}

/// Millimetres as points, to a thousandth of a point: shorter files, and still 0.35 µm.
fn pt(mm: f64) -> Pt {
    exact((mm * PT_PER_MM * 1000.0).round() / 1000.0 / PT_PER_MM)
}

fn at(point: Point) -> printpdf::Point {
    printpdf::Point {
        x: pt(point.x),
        y: pt(point.y),
    }
}

fn colour([red, green, blue]: Colour) -> Color {
    let part = |byte: u8| f32::from(byte) / 255.0;
    Color::Rgb(Rgb {
        r: part(red),
        g: part(green),
        b: part(blue),
        icc_profile: None,
    })
}

/// Writes operators, and those that set a style only when it changes.
struct Pen<'a> {
    ops: Vec<Op>,
    line: Option<Line>,
    fill: Option<Colour>,
    letters: &'a mut Subset,
}

impl Pen<'_> {
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
        let rings = rings(&item.path);
        if let Some(fill) = item.fill {
            self.set_fill(paper_fill(fill));
            self.area(&rings);
        }
        if let Some(line) = item.line {
            self.set_line(line);
            for ring in rings {
                self.ops.push(Op::DrawLine { line: ring });
            }
        }
    }

    fn area(&mut self, rings: &[printpdf::Line]) {
        let rings = rings.iter().map(|ring| PolygonRing {
            points: ring.points.clone(),
        });
        self.ops.push(Op::DrawPolygon {
            polygon: Polygon {
                rings: rings.collect(),
                mode: PaintMode::Fill,
                winding_order: WindingOrder::EvenOdd,
            },
        });
    }

    fn group(&mut self, group: &GroupItem) {
        let before = (self.line, self.fill);
        self.ops.push(Op::SaveGraphicsState);
        if let Some(clip) = group.clip {
            self.clip(clip);
        }
        if group.shift != Vec2::ZERO {
            let matrix = CurTransMat::Translate(pt(group.shift.x), pt(group.shift.y));
            self.ops.push(Op::SetTransformationMatrix { matrix });
        }
        self.items(&group.items);
        self.ops.push(Op::RestoreGraphicsState);
        (self.line, self.fill) = before;
    }

    fn clip(&mut self, clip: Rect) {
        let size = (pt(clip.width()), pt(clip.height()));
        let mut rectangle = printpdf::Rect::from_xywh(pt(clip.x0), pt(clip.y0), size.0, size.1);
        rectangle.mode = Some(PaintMode::Clip);
        self.ops.push(Op::DrawRectangle { rectangle });
    }

    fn text(&mut self, text: &TextItem) {
        self.set_fill(LETTERS);
        let (face, shown) = set(&text.text);
        match face {
            Face::Standard => self.standard(text, shown.into_owned()),
            Face::Spare => self.spare(text, &shown),
        }
    }

    fn standard(&mut self, text: &TextItem, shown: String) {
        let font = if text.bold {
            BuiltinFont::HelveticaBold
        } else {
            BuiltinFont::Helvetica
        };
        self.ops.extend([
            Op::StartTextSection,
            Op::SetFont {
                font: PdfFontHandle::Builtin(font),
                size: pt(text.size),
            },
            Op::SetTextMatrix {
                matrix: TextMatrix::Raw(text_matrix(text)),
            },
            Op::ShowText {
                items: vec![printpdf::TextItem::Text(shown)],
            },
            Op::EndTextSection,
        ]);
    }

    /// In the spare font, its letters filled and a line drawn around them (ISO 32000-1, table 106):
    /// operators that the page writer passes on as they are.
    fn spare(&mut self, text: &TextItem, shown: &str) {
        /// Fill, then stroke.
        const BOTH: i64 = 2;
        let by = if text.bold { THICKER_BOLD } else { THICKER };
        let numbers = shown.chars().map(|sign| self.letters.number(sign));
        let data = numbers.flat_map(u16::to_be_bytes).collect();
        let size = pt(text.size).0;
        let raw = |key: &str, value: Vec<DictItem>| Op::Unknown {
            key: key.to_owned(),
            value,
        };
        let letters = DictItem::String {
            data,
            literal: false,
        };
        let font = DictItem::Name(SPARE.as_bytes().to_vec());
        self.ops.extend([
            Op::SaveGraphicsState,
            Op::SetOutlineThickness {
                pt: pt(by * text.size),
            },
            Op::SetLineDashPattern {
                dash: LineDashPattern::new(0.0, &[]),
            },
            Op::SetOutlineColor {
                col: colour(LETTERS),
            },
            Op::StartTextSection,
            raw("Tf", vec![font, DictItem::Real(size)]),
            Op::SetTextMatrix {
                matrix: TextMatrix::Raw(text_matrix(text)),
            },
            raw("Tr", vec![DictItem::Int(BOTH)]),
            raw("Tj", vec![letters]),
            Op::EndTextSection,
            Op::RestoreGraphicsState,
        ]);
    }

    fn set_line(&mut self, line: Line) {
        if self.line.replace(line) == Some(line) {
            return;
        }
        let stroke = paper_stroke(line);
        let dash: Vec<f32> = stroke.dash.iter().map(|mm| pt(*mm).0).collect();
        self.ops.extend([
            Op::SetOutlineThickness {
                pt: pt(stroke.width),
            },
            Op::SetLineDashPattern {
                dash: LineDashPattern::new(0.0, &dash),
            },
            Op::SetOutlineColor {
                col: colour(stroke.colour),
            },
        ]);
    }

    fn set_fill(&mut self, fill: Colour) {
        if self.fill.replace(fill) != Some(fill) {
            self.ops.push(Op::SetFillColor { col: colour(fill) });
        }
    }
}

/// Where a text begins and how it is turned, as a text matrix.
#[allow(
    clippy::cast_possible_truncation,
    reason = "a sine in single precision is good to 1e-7"
)]
fn text_matrix(text: &TextItem) -> [f32; 6] {
    let width = text_width(&text.text, text.size, text.bold);
    let back = match text.align {
        Align::Start => 0.0,
        Align::Middle => width / 2.0,
        Align::End => width,
    };
    let along = Vec2::from_angle(text.turn);
    let start = at(text.at - along * back);
    let (cos, sin) = (along.x as f32, along.y as f32);
    [cos, sin, -sin, cos, start.x.0, start.y.0]
}

/// A path as the writer wants it: one line for each piece, control points marked.
fn rings(path: &kurbo::BezPath) -> Vec<printpdf::Line> {
    let mut rings: Vec<printpdf::Line> = Vec::new();
    let mut here = Point::ZERO;
    for element in path.elements() {
        if let PathEl::MoveTo(_) = element {
            rings.push(printpdf::Line::default());
        }
        let Some(ring) = rings.last_mut() else {
            continue;
        };
        extend(ring, here, *element);
        here = element.end_point().unwrap_or(here);
    }
    rings
}

fn extend(ring: &mut printpdf::Line, here: Point, element: PathEl) {
    let mut push = |point: Point, bezier| {
        ring.points.push(LinePoint {
            p: at(point),
            bezier,
        });
    };
    match element {
        PathEl::MoveTo(to) | PathEl::LineTo(to) => push(to, false),
        PathEl::QuadTo(by, to) => {
            let cubic = PathSeg::Quad(kurbo::QuadBez::new(here, by, to)).to_cubic();
            push(cubic.p1, true);
            push(cubic.p2, true);
            push(to, false);
        }
        PathEl::CurveTo(first, second, to) => {
            push(first, true);
            push(second, true);
            push(to, false);
        }
        PathEl::ClosePath => ring.is_closed = true,
    }
}
