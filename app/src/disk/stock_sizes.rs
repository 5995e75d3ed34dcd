//! The stock that the smith can buy, on disk: one readable file beside what the window remembers.

use std::path::{Path, PathBuf};

use reinwright_core::asked::StockSizes;

use super::files;

/// The file's name.
const FILE: &str = "stock-sizes";

/// What a file lists.
///
/// # Errors
/// One sentence that names the file, what is wrong and the mend.
pub fn open(path: &Path) -> Result<StockSizes, String> {
    let bytes = files::bytes(path)?;
    StockSizes::read(&bytes).map_err(|error| format!("{}: {error}", path.display()))
}

/// What is kept in a folder; the usual sizes where nothing is.
///
/// # Errors
/// One sentence when there is a list that cannot be read. It is left as it is.
pub fn kept(folder: Option<&Path>) -> Result<StockSizes, String> {
    match folder.map(|folder| folder.join(FILE)) {
        Some(path) if path.exists() => open(&path),
        Some(_) | None => Ok(StockSizes::default()),
    }
}

/// Keeps the sizes in a folder. A list there that cannot be read is put aside first: gives back
/// under which name.
///
/// # Errors
/// One sentence when it cannot be written.
pub fn keep(folder: &Path, sizes: &StockSizes) -> Result<Option<PathBuf>, String> {
    files::make_folder(folder)?;
    let path = folder.join(FILE);
    let damaged = path.exists() && open(&path).is_err();
    let aside = damaged.then(|| files::put_aside(&path)).transpose()?;
    files::write_whole(&path, sizes.text().as_bytes())?;
    Ok(aside)
}
