//! Files that a test writes and reads.

use std::path::Path;

use tempfile::TempDir;

/// A folder that goes with the test.
///
/// # Panics
/// If it cannot be made.
pub fn folder() -> TempDir {
    tempfile::tempdir().expect("a folder can be made")
}

/// Writes a file into a folder.
///
/// # Panics
/// If it cannot be written.
#[track_caller]
pub fn put(folder: &Path, name: &str, bytes: impl AsRef<[u8]>) {
    std::fs::write(folder.join(name), bytes).expect("the folder can be written");
}

/// The bytes of a file.
///
/// # Panics
/// If it cannot be read.
#[track_caller]
pub fn bytes(path: &Path) -> Vec<u8> {
    std::fs::read(path).unwrap_or_else(|error| panic!("{}: {error}", path.display()))
}

/// The text on each page of a PDF, read by lopdf.
///
/// # Panics
/// If it is no PDF.
#[track_caller]
pub fn pages(pdf: &[u8]) -> Vec<String> {
    let pdf = lopdf::Document::load_mem(pdf).expect("lopdf opens the file");
    let text = |page: &u32| pdf.extract_text(&[*page]).expect("a page has its text");
    pdf.get_pages().keys().map(text).collect()
}

/// The names in a folder, sorted.
///
/// # Panics
/// If the folder cannot be read.
#[track_caller]
pub fn names(folder: &Path) -> Vec<String> {
    let entries = std::fs::read_dir(folder).expect("the folder can be read");
    let name = |entry: std::io::Result<std::fs::DirEntry>| {
        let name = entry.expect("an entry can be read").file_name();
        name.into_string().expect("a plain name")
    };
    let mut names: Vec<String> = entries.map(name).collect();
    names.sort();
    names
}

/// Width and height of an SVG in mm, read by usvg, whose pixel is a 96th of an inch (CSS Values and
/// Units 3, section 5.2).
///
/// # Panics
/// If it is no SVG.
#[track_caller]
pub fn svg_size_mm(svg: &[u8]) -> (f64, f64) {
    let tree = usvg::Tree::from_data(svg, &usvg::Options::default()).expect("usvg opens the file");
    let mm = |pixels: f32| f64::from(pixels) * crate::INCH / 96.0;
    (mm(tree.size().width()), mm(tree.size().height()))
}
