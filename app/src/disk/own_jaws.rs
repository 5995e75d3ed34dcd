//! The smith's own jaws on disk: one file each in the user's data folder.

use std::path::{Path, PathBuf};

use reinwright_core::tongs::jaw::sketch::KeptJaw;

use super::files;
use super::place::own_folder;
use super::trouble::why;

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

/// The jaws in a folder that can be read.
pub fn readable(folder: &Path) -> Vec<KeptJaw> {
    let jaws = all(folder).into_iter();
    jaws.filter_map(|own| own.kept.ok()).collect()
}

/// What came of keeping a jaw.
#[derive(Debug, Clone, PartialEq)]
pub enum Kept {
    /// It has a file of its own now.
    Written(PathBuf),
    /// The very same jaw was kept already.
    Already(PathBuf),
    /// Another jaw has its name, in this file. Nothing was written.
    NameTaken(PathBuf),
}

/// Puts a jaw into a folder under its name. No other jaw is touched: names that make the same file
/// name are numbered, and a jaw of the very same name is left to the smith.
///
/// # Errors
/// One sentence when there is no name, or the file cannot be written.
pub fn keep(folder: &Path, kept: &KeptJaw) -> Result<Kept, String> {
    let named = |own: &OwnJaw| {
        let other = own.kept.as_ref().ok()?;
        let same = other.sketch.name.trim() == kept.sketch.name.trim();
        same.then(|| (own.path.clone(), other == kept))
    };
    match all(folder).iter().find_map(named) {
        Some((path, true)) => Ok(Kept::Already(path)),
        Some((path, false)) => Ok(Kept::NameTaken(path)),
        None => {
            let path = free_path(folder, &kept.sketch.name)?;
            write(&path, kept)?;
            Ok(Kept::Written(path))
        }
    }
}

/// Puts a jaw in the place of one that is there.
///
/// # Errors
/// One sentence when the file cannot be written.
pub fn replace(path: &Path, kept: &KeptJaw) -> Result<(), String> {
    write(path, kept)
}

/// Puts a jaw beside one that has its name, under the name with the next free number behind it;
/// gives back the name.
///
/// # Errors
/// As [`keep`].
pub fn keep_beside(folder: &Path, kept: &KeptJaw) -> Result<String, String> {
    let there: Vec<String> = readable(folder)
        .into_iter()
        .map(|own| own.sketch.name)
        .collect();
    let numbered = |count: u32| format!("{} ({count})", kept.sketch.name.trim());
    let free = (2..).map(numbered).find(|name| !there.contains(name));
    let name = free.expect("there are more numbers than jaws");
    let mut kept = kept.clone();
    kept.sketch.name.clone_from(&name);
    write(&free_path(folder, &name)?, &kept)?;
    Ok(name)
}

fn write(path: &Path, kept: &KeptJaw) -> Result<(), String> {
    files::write_whole(path, kept.write().as_bytes())
}

/// A file for a jaw's name that is not there yet, in a folder that is.
fn free_path(folder: &Path, name: &str) -> Result<PathBuf, String> {
    if name.trim().is_empty() {
        return Err("the jaw has no name: give it one before it is kept".to_owned());
    }
    files::make_folder(folder)?;
    let plain = file_name(name);
    let numbered = |count: u32| match count {
        1 => folder.join(format!("{plain}.ron")),
        _ => folder.join(format!("{plain}-{count}.ron")),
    };
    let free = (1..).map(numbered).find(|path| !path.exists());
    Ok(free.expect("there are more numbers than files"))
}

/// Takes a jaw off the shelf.
///
/// # Errors
/// One sentence when the file cannot be removed.
pub fn remove(path: &Path) -> Result<(), String> {
    std::fs::remove_file(path)
        .map_err(|error| format!("{}: it cannot be deleted ({})", path.display(), why(&error)))
}

/// A name that any file system takes: letters and figures, the rest as hyphens; two names may give
/// the same.
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
    let name = words.collect::<Vec<_>>().join("-");
    if name.is_empty() {
        "jaw".to_owned()
    } else {
        name
    }
}
