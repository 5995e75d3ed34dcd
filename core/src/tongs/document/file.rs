use serde::Deserialize;

use super::limits::check_limits;
use super::{Document, FORMAT};
use crate::asked::{FileError, broken, options, pretty, readable};

/// What every file begins with; messages call it by the name that it has for the reader.
#[derive(Deserialize)]
#[serde(rename = "design")]
struct Head {
    format: u32,
}

/// Reads a design from the bytes of a file.
///
/// # Errors
/// When the bytes are no design, or a number in it is outside its limits.
pub fn read(bytes: &[u8]) -> Result<Document, FileError> {
    let document = read_any(bytes)?;
    check_limits(&document)?;
    Ok(document)
}

/// Reads a design whatever its sizes: unsaved work that was kept is not lost for a size that no
/// file may carry.
///
/// # Errors
/// When the bytes are no design.
pub fn read_any(bytes: &[u8]) -> Result<Document, FileError> {
    let text = readable(bytes)?;
    let head: Head = options().from_str(text).map_err(|error| broken(&error))?;
    if head.format > FORMAT {
        return Err(FileError::Newer {
            found: head.format,
            newest: FORMAT,
        });
    }
    let document: Document = options().from_str(text).map_err(|error| broken(&error))?;
    if document.format == 0 {
        let what = "format 0 never was: write format: 1".to_owned();
        return Err(FileError::Broken {
            line: 1,
            column: 1,
            what,
        });
    }
    Ok(document)
}

/// The text of a design, ending with a line feed. [`read`] gives back the identical document.
///
/// # Panics
/// Never for a document that [`check_limits`] passes: every value in it has a text.
pub fn write(document: &Document) -> String {
    let text = options().to_string_pretty(document, pretty());
    text.expect("sizes, names and choices always have a text") + "\n"
}
