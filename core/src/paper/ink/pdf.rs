use std::fmt;

use kurbo::{PathEl, PathSeg, Point, Rect, Vec2};
use lopdf::{Object, StringFormat, dictionary};
use printpdf::{
    BuiltinFont, Color, CurTransMat, LineDashPattern, LineJoinStyle, LinePoint, Mm, Op, PaintMode,
    PdfDocument, PdfFontHandle, PdfPage, PdfSaveOptions, Polygon, PolygonRing, Pt, Rgb, TextMatrix,
    WindingOrder,
};

use super::style::{Colour, paper_fill, paper_stroke};
use crate::paper::font::{paper_text, text_width};
use crate::paper::{Align, GroupItem, Item, Line, Page, PathItem, TextItem};
use crate::units::MM_PER_INCH;

/// Points in a millimetre: a point is 1/72 in (ISO 32000-1, 8.3.2.3).
const PT_PER_MM: f64 = 72.0 / MM_PER_INCH;
/// Lettering is black, like outlines.
const LETTERS: Colour = [0, 0, 0];
/// Who made the file.
const MAKER: &str = "Reinwright";

/// A day of the Gregorian calendar. The caller knows the clock; the core does not.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Date {
    /// Year, such as 2026.
    pub year: u16,
    /// Month, 1 to 12.
    pub month: u8,
    /// Day, 1 to 31.
    pub day: u8,
}

impl fmt::Display for Date {
    /// As ISO 8601 has it: `2026-03-01`.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{:04}-{:02}-{:02}", self.year, self.month, self.day)
    }
}

/// What a PDF says about itself.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct DocInfo {
    /// The title that a reader shows.
    pub title: String,
    /// The day it was made, if it is to be told.
    pub date: Option<Date>,
}

/// Pages as a PDF 1.7 file. A reader is asked not to scale it, and the same pages always give the
/// same bytes.
///
/// Lengths are exact: `mm × 72 / 25.4` points, rounded to a thousandth of a point (0.35 µm).
///
/// ```
/// use reinwright_core::paper::Page;
/// use reinwright_core::paper::ink::{DocInfo, pdf};
/// let page = Page { width_mm: 210.0, height_mm: 297.0, items: Vec::new() };
/// assert!(pdf(&[page], &DocInfo::default()).starts_with(b"%PDF-1.7"));
/// ```
pub fn pdf(pages: &[Page], info: &DocInfo) -> Vec<u8> {
    let mut document = PdfDocument::new(&info.title);
    document.pages = pages.iter().map(page).collect();
    let mut file = document.to_lopdf_document(&PdfSaveOptions::default(), &mut Vec::new());
    finish(&mut file, info);
    let mut bytes = Vec::new();
    file.save_to(&mut bytes)
        .expect("a file in memory can be written");
    bytes
}

/// Puts in what the page writer leaves out: version, scaling, title, maker, date, a name that
/// follows from the contents.
fn finish(file: &mut lopdf::Document, info: &DocInfo) {
    "1.7".clone_into(&mut file.version);
    let about = file.add_object(about(info));
    let name = Object::String(fingerprint(file, info).to_vec(), StringFormat::Hexadecimal);
    file.trailer.set("Info", about);
    file.trailer.set("ID", vec![name.clone(), name]);
    let catalog = file.catalog_mut().expect("the page writer makes a catalog");
    catalog.set(
        "ViewerPreferences",
        dictionary! { "PrintScaling" => "None" },
    );
    file.prune_objects();
    // A file that was never added to has one table of all its objects, from 0 on without a gap
    // (ISO 32000-1, 7.5.4).
    file.renumber_objects();
    file.compress();
}

fn about(info: &DocInfo) -> lopdf::Dictionary {
    let mut about = dictionary! {
        "Title" => lopdf::text_string(&info.title),
        "Creator" => lopdf::text_string(MAKER),
        "Producer" => lopdf::text_string(MAKER),
    };
    if let Some(date) = info.date {
        let stamp = format!("D:{:04}{:02}{:02}", date.year, date.month, date.day);
        about.set("CreationDate", Object::string_literal(stamp));
    }
    about
}

/// Sixteen bytes that follow from title and contents (FNV-1a, 64 bits, forwards and backwards).
fn fingerprint(file: &lopdf::Document, info: &DocInfo) -> [u8; 16] {
    let streams = file.objects.values().filter_map(|o| o.as_stream().ok());
    let mut text: Vec<u8> = info.title.clone().into_bytes();
    for stream in streams {
        text.extend(&stream.content);
    }
    let forwards = fnv(text.iter()).to_be_bytes();
    let backwards = fnv(text.iter().rev()).to_be_bytes();
    let mut name = [0; 16];
    name[..8].copy_from_slice(&forwards);
    name[8..].copy_from_slice(&backwards);
    name
}

fn fnv<'a>(bytes: impl Iterator<Item = &'a u8>) -> u64 {
    bytes.fold(0xcbf2_9ce4_8422_2325, |hash, byte| {
        (hash ^ u64::from(*byte)).wrapping_mul(0x0100_0000_01b3)
    })
}

fn page(page: &Page) -> PdfPage {
    let mut pen = Pen::default();
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
#[derive(Default)]
struct Pen {
    ops: Vec<Op>,
    line: Option<Line>,
    fill: Option<Colour>,
}

impl Pen {
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
        let font = if text.bold {
            BuiltinFont::HelveticaBold
        } else {
            BuiltinFont::Helvetica
        };
        self.set_fill(LETTERS);
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
                items: vec![printpdf::TextItem::Text(paper_text(&text.text))],
            },
            Op::EndTextSection,
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
