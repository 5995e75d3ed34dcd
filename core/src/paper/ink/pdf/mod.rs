//! Pages as a PDF file: its objects, and what it says about itself.

mod catalog;
mod fonts;
mod pen;

use std::fmt;

use lopdf::{Object, StringFormat, dictionary};
use printpdf::{PdfDocument, PdfSaveOptions};

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
    let mut document = PdfDocument::new(&info.title);
    let mut letters = Subset::new();
    document.pages = pages
        .iter()
        .map(|page| pen::page(page, &mut letters))
        .collect();
    // The page writer would leave out what it does not know itself: the operators that set a text
    // in the spare font.
    let options = PdfSaveOptions {
        secure: false,
        ..PdfSaveOptions::default()
    };
    let mut file = document.to_lopdf_document(&options, &mut Vec::new());
    if letters.is_used() {
        fonts::put(&mut file, &letters);
    }
    finish(&mut file, info);
    let mut bytes = Vec::new();
    file.save_to(&mut bytes)
        .expect("a file in memory can be written");
    bytes
}

/// Puts in what the page writer leaves out: version, title, maker, date, what the catalog tells, a
/// name that follows from the contents.
fn finish(file: &mut lopdf::Document, info: &DocInfo) {
    "1.7".clone_into(&mut file.version);
    let about = file.add_object(about(info));
    let name = Object::String(fingerprint(file, info).to_vec(), StringFormat::Hexadecimal);
    file.trailer.set("Info", about);
    file.trailer.set("ID", vec![name.clone(), name]);
    catalog::put(file, info);
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
