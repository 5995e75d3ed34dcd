//! Pages as a PDF file: its objects, and what it says about itself.

mod fonts;
mod pen;

use std::fmt;

use lopdf::xref::XrefType;
use lopdf::{Dictionary, Document, Object, ObjectId, Stream, StringFormat, dictionary};

use crate::paper::Page;
use crate::paper::font::spare::Subset;
use crate::units::MM_PER_INCH;

/// Points in a millimetre: a point is 1/72 in (ISO 32000-1, 8.3.2.3).
const PT_PER_MM: f64 = 72.0 / MM_PER_INCH;
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
    let mut file = Document::with_version("1.7");
    // A file that was never added to has one table of all its objects, from 0 on without a gap
    // (ISO 32000-1, 7.5.4), which every reader knows.
    file.reference_table.cross_reference_type = XrefType::CrossReferenceTable;
    let mut names = Fingerprint::of(info);
    let tree = file.new_object_id();
    let resources = file.new_object_id();
    let mut letters = Subset::new();
    let pages: Vec<Object> = pages
        .iter()
        .map(|page| {
            let content = pen::content(page, &mut letters);
            names.add(content.as_bytes());
            let content = stream(&mut file, Dictionary::new(), content.into_bytes());
            file.add_object(leaf(page, tree, content)).into()
        })
        .collect();
    let fonts = fonts::put(&mut file, &letters);
    file.set_object(resources, dictionary! { "Font" => fonts });
    let count = i64::try_from(pages.len()).expect("no memory holds so many pages");
    let pages = dictionary! {
        "Type" => "Pages", "Kids" => pages, "Count" => count, "Resources" => resources,
    };
    file.set_object(tree, pages);
    finish(&mut file, tree, info, &names);
    let mut bytes = Vec::new();
    file.save_to(&mut bytes)
        .expect("a file in memory can be written");
    bytes
}

fn leaf(page: &Page, tree: ObjectId, content: ObjectId) -> Dictionary {
    let size = [0.0, 0.0, page.width_mm, page.height_mm].map(exact);
    dictionary! {
        "Type" => "Page",
        "Parent" => tree,
        "MediaBox" => size.to_vec(),
        "Contents" => content,
    }
}

/// Puts a stream into the file, compressed where that makes it shorter.
fn stream(file: &mut Document, about: Dictionary, content: Vec<u8>) -> ObjectId {
    let mut stream = Stream::new(about, content);
    stream
        .compress()
        .expect("what lies in memory can be compressed");
    file.add_object(stream)
}

/// Millimetres as points, as near as the file's numbers can be.
#[allow(
    clippy::cast_possible_truncation,
    reason = "PDF numbers are single precision: 0.0001 pt at the far end of the largest page"
)]
fn exact(mm: f64) -> Object {
    Object::Real((mm * PT_PER_MM) as f32)
}

/// Catalog, title, maker, date, and a name that follows from the contents.
fn finish(file: &mut Document, tree: ObjectId, info: &DocInfo, names: &Fingerprint) {
    let about = file.add_object(about(info));
    let catalog = file.add_object(dictionary! {
        "Type" => "Catalog",
        "Pages" => tree,
        "ViewerPreferences" => dictionary! { "PrintScaling" => "None" },
    });
    let name = Object::String(names.bytes().to_vec(), StringFormat::Hexadecimal);
    file.trailer.set("Root", catalog);
    file.trailer.set("Info", about);
    file.trailer.set("ID", vec![name.clone(), name]);
}

fn about(info: &DocInfo) -> Dictionary {
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

/// Sixteen bytes that follow from title and contents: FNV-1a of 64 bits, twice from different
/// beginnings.
struct Fingerprint([u64; 2]);

impl Fingerprint {
    fn of(info: &DocInfo) -> Self {
        /// The published offset basis, and the hash of this program's name from there.
        const BASIS: u64 = 0xcbf2_9ce4_8422_2325;
        let mut names = Self([BASIS, fnv(BASIS, MAKER.as_bytes())]);
        names.add(info.title.as_bytes());
        names
    }

    fn add(&mut self, bytes: &[u8]) {
        self.0 = self.0.map(|hash| fnv(hash, bytes));
    }

    fn bytes(&self) -> [u8; 16] {
        let [first, second] = self.0.map(u64::to_be_bytes);
        let mut name = [0; 16];
        name[..8].copy_from_slice(&first);
        name[8..].copy_from_slice(&second);
        name
    }
}

fn fnv(from: u64, bytes: &[u8]) -> u64 {
    bytes.iter().fold(from, |hash, byte| {
        (hash ^ u64::from(*byte)).wrapping_mul(0x0100_0000_01b3)
    })
}
