//! The window.

use std::path::PathBuf;

/// Opens the window, on a file if one is named, and runs until it is closed.
///
/// # Errors
/// One sentence when no window can be opened (no display) or the file cannot be read.
pub fn open(file: Option<PathBuf>) -> Result<(), String> {
    let _ = file;
    Err("no window yet".to_owned())
}
