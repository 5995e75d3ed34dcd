//! The shop's heat sources, on disk: one readable file beside what the window remembers.

use std::path::{Path, PathBuf};

use reinwright_core::heats::{OpenedSources, Sources};

use super::files;

/// The file's name.
pub const FILE: &str = "heat-sources.ron";

/// What a file holds; a source that cannot be read costs only itself.
///
/// # Errors
/// One sentence that names the file, what is wrong and the mend.
pub fn open(path: &Path) -> Result<OpenedSources, String> {
    let bytes = files::bytes(path)?;
    let opened = Sources::read(&bytes);
    let opened = opened.map_err(|error| format!("{}: {error}", path.display()))?;
    let named = |lost: String| format!("{}: {lost}", path.display());
    Ok(OpenedSources {
        lost: opened.lost.into_iter().map(named).collect(),
        ..opened
    })
}

/// What is kept in a folder; `None` where nothing is.
///
/// # Errors
/// One sentence when there is a file that cannot be read. It is left as it is.
pub fn kept(folder: Option<&Path>) -> Result<Option<OpenedSources>, String> {
    match folder.map(|folder| folder.join(FILE)) {
        Some(path) if path.exists() => open(&path).map(Some),
        Some(_) | None => Ok(None),
    }
}

/// Keeps the sources in a folder.
///
/// # Errors
/// One sentence when they cannot be written.
pub fn keep(folder: &Path, sources: &Sources) -> Result<PathBuf, String> {
    files::make_folder(folder)?;
    let path = folder.join(FILE);
    files::write_whole(&path, sources.write().as_bytes())?;
    Ok(path)
}

/// The same, after a file of which something could not be read was put aside: gives back under which
/// name.
///
/// # Errors
/// One sentence when they cannot be written.
pub(crate) fn keep_over(folder: &Path, sources: &Sources) -> Result<Option<PathBuf>, String> {
    let path = folder.join(FILE);
    let is_whole = |path: &Path| open(path).is_ok_and(|own| own.lost.is_empty());
    let damaged = path.exists() && !is_whole(&path);
    let aside = damaged.then(|| files::put_aside(&path)).transpose()?;
    keep(folder, sources)?;
    Ok(aside)
}
