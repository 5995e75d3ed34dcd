//! The smith's own jaws on disk: one file each in the user's data folder.

use std::path::{Path, PathBuf};

use reinwright_core::tongs::jaw::sketch::KeptJaw;

use super::files;
use super::place::own_folder;

/// A jaw on the shelf, or why its file gives none.
#[derive(Debug, Clone)]
pub struct OwnJaw {
    /// Its file.
    pub path: PathBuf,
    /// The jaw, or one sentence.
    pub kept: Result<KeptJaw, String>,
}

/// The folder for what the smith makes: `$XDG_DATA_HOME/reinwright/jaws`, else
/// `~/.local/share/reinwright/jaws`.
pub fn folder() -> Option<PathBuf> {
    own_folder("XDG_DATA_HOME", ".local/share").map(|folder| folder.join("jaws"))
}

/// Reads one jaw.
///
/// # Errors
/// One sentence that names the file, what is wrong and the mend.
pub fn open(path: &Path) -> Result<KeptJaw, String> {
    let bytes = files::bytes(path)?;
    KeptJaw::read(&bytes).map_err(|error| format!("{}: {error}", path.display()))
}

/// All jaws in a folder by their file names; none where there is no folder.
pub fn all(folder: &Path) -> Vec<OwnJaw> {
    let Ok(entries) = std::fs::read_dir(folder) else {
        return Vec::new();
    };
    let ron = |path: &PathBuf| path.extension().is_some_and(|ending| ending == "ron");
    let mut paths: Vec<PathBuf> = entries
        .flatten()
        .map(|entry| entry.path())
        .filter(ron)
        .collect();
    paths.sort();
    let read = |path: PathBuf| OwnJaw {
        kept: open(&path),
        path,
    };
    paths.into_iter().map(read).collect()
}

/// Puts a jaw into a folder under its name; one of the same name is replaced.
///
/// # Errors
/// One sentence when there is no name, or the file cannot be written.
pub fn keep(folder: &Path, kept: &KeptJaw) -> Result<PathBuf, String> {
    let name = file_name(&kept.sketch.name);
    if name.is_empty() {
        return Err("the jaw has no name: give it one before it is kept".to_owned());
    }
    std::fs::create_dir_all(folder)
        .map_err(|error| format!("{}: the folder cannot be made: {error}", folder.display()))?;
    let path = folder.join(format!("{name}.ron"));
    files::write_whole(&path, kept.write().as_bytes())?;
    Ok(path)
}

/// Takes a jaw off the shelf.
///
/// # Errors
/// One sentence when the file cannot be removed.
pub fn remove(path: &Path) -> Result<(), String> {
    std::fs::remove_file(path)
        .map_err(|error| format!("{}: it cannot be taken away: {error}", path.display()))
}

/// A name that any file system takes: letters and figures, the rest as hyphens.
fn file_name(name: &str) -> String {
    const LONGEST: usize = 60;
    let plain = |c: char| if c.is_alphanumeric() { c } else { '-' };
    let name: String = name
        .to_lowercase()
        .chars()
        .map(plain)
        .take(LONGEST)
        .collect();
    let words = name.split('-').filter(|word| !word.is_empty());
    words.collect::<Vec<_>>().join("-")
}
