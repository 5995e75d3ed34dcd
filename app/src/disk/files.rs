//! Reading and writing designs on disk, with errors in one clear sentence.

use std::path::{Path, PathBuf};

use reinwright_core::asked;
use reinwright_core::shop::family;
use reinwright_core::tongs::document::{self, Document};
use reinwright_core::tongs::jaw::sketch::is_kept_jaw;
use reinwright_core::tool::{self, Tool};

use super::trouble::why;
use super::whole::{self, Refused};

/// Opens a design.
///
/// # Errors
/// One sentence that names the file, what is wrong and the mend.
pub fn open(path: &Path) -> Result<Document, String> {
    let bytes = bytes(path)?;
    if family::is_family(&bytes) {
        return Err(format!(
            "{}: this is a family, and one design is wanted: reinwright family writes its templates, drawings and designs",
            path.display()
        ));
    }
    if family::is_tool_family(&bytes) {
        return Err(format!(
            "{}: this is a family of tools, and one design is wanted: reinwright family writes its templates, drawings and each size as a tool of its own",
            path.display()
        ));
    }
    if tool::lacks_mark(&bytes) {
        return Err(format!(
            "{}: kind is missing: this looks like a tool, so write kind: Tool, as the first line behind the bracket",
            path.display()
        ));
    }
    if is_kept_jaw(&bytes) {
        return Err(format!(
            "{}: this is an own jaw, and a design is wanted: start the window without a file and open the jaw there",
            path.display()
        ));
    }
    if tool::is_tool(&bytes) {
        return Err(format!(
            "{}: this is a tool, and a pair of tongs is wanted: reinwright drawing, template and plan take the tool as well",
            path.display()
        ));
    }
    document::read(&bytes).map_err(|error| format!("{}: {error}", path.display()))
}

/// Whether a file can be opened as a design, as a tool or, whole or in part, as a family.
///
/// # Errors
/// One sentence that names the file, what is wrong and the mend.
pub fn check(path: &Path) -> Result<(), String> {
    let bytes = bytes(path)?;
    let named = |error: String| format!("{}: {error}", path.display());
    if tool::is_tool(&bytes) {
        let read = tool::read(&bytes).map(|_tool| ());
        return read.map_err(|error| named(error.to_string()));
    }
    if family::is_tool_family(&bytes) && family::newer_of::<Tool>(&bytes).is_none() {
        let opened = family::open_of::<Tool>(&bytes);
        return opened
            .map(|_family| ())
            .map_err(|error| named(error.to_string()));
    }
    // What a newer program wrote is shown as far as it can be read.
    if family::newer_design(&bytes).is_some()
        || family::newer_family(&bytes).is_some()
        || family::newer_of::<Tool>(&bytes).is_some()
    {
        return Ok(());
    }
    if !family::is_family(&bytes) {
        return open(path).map(|_design| ());
    }
    let opened = family::open(&bytes);
    opened
        .map(|_family| ())
        .map_err(|error| named(error.to_string()))
}

/// The bytes of a design or a family, not yet looked at.
///
/// # Errors
/// One sentence when there is no such file, it cannot be read, or it is too large.
pub fn bytes(path: &Path) -> Result<Vec<u8>, String> {
    unnamed_bytes(path).map_err(|what| format!("{}: {what}", path.display()))
}

/// The same, with errors that leave it to the caller to name the file.
///
/// # Errors
/// As [`bytes`].
pub fn unnamed_bytes(path: &Path) -> Result<Vec<u8>, String> {
    let size = std::fs::metadata(path).map_err(|error| unreadable(&error))?;
    if size.is_dir() {
        return Err("this is a folder: name a design file in it".to_owned());
    }
    if !size.is_file() {
        return Err("this is no ordinary file: name a design file".to_owned());
    }
    if size.len() > asked::LARGEST_FILE as u64 {
        return Err(asked::FileError::TooLarge.to_string());
    }
    std::fs::read(path).map_err(|error| unreadable(&error))
}

/// Writes a file whole: beside it first, then in its place, so that a full disk, a kill or a power
/// cut loses nothing. A link is followed, mode and owner are kept, and what may not be written over
/// is refused.
///
/// # Errors
/// One sentence that names the file, what is wrong and the mend.
pub fn write_whole(path: &Path, bytes: &[u8]) -> Result<(), String> {
    let written = whole::write(path, bytes, &mut |_| Ok(()));
    written.map_err(|refused| format!("{}: {}", path.display(), unwritten(&refused)))
}

/// Writes what was made of an open file, never over that file itself.
///
/// # Errors
/// As [`spare`] and [`write_whole`].
pub fn write_beside(open: Option<&Path>, path: &Path, bytes: &[u8]) -> Result<(), String> {
    open.map_or(Ok(()), |open| spare(open, path))?;
    write_whole(path, bytes)
}

/// Makes a folder, and those that it lies in.
///
/// # Errors
/// One sentence when it cannot be made.
pub fn make_folder(path: &Path) -> Result<(), String> {
    std::fs::create_dir_all(path).map_err(|error| {
        let (path, why) = (path.display(), why(&error));
        format!("{path}: this folder cannot be made ({why}): choose another one")
    })
}

/// Keeps a design from being written over by what is made of it.
///
/// # Errors
/// One sentence when both paths lead to the same file.
pub fn spare(design: &Path, out: &Path) -> Result<(), String> {
    let place = |path: &Path| std::fs::canonicalize(path).ok();
    if place(out).is_none() || place(out) != place(design) {
        return Ok(());
    }
    Err(format!(
        "{}: this is the design itself: choose another name for what is made of it",
        out.display()
    ))
}

fn unwritten(refused: &Refused) -> String {
    match refused {
        Refused::ReadOnly => {
            "this file is write-protected: save under another name, or take the protection off"
                .to_owned()
        }
        Refused::Folder => "this is a folder: add a file name".to_owned(),
        Refused::NoFile => "this is a device or a pipe and no file: choose another name".to_owned(),
        Refused::NoFolder(folder) => format!(
            "there is no folder {}: make it first, or choose another one",
            folder.display()
        ),
        Refused::Owner => {
            "this file belongs to somebody else, who would lose it: save under another name"
                .to_owned()
        }
        Refused::Disk(error) => unwritable(error),
    }
}

fn unwritable(error: &std::io::Error) -> String {
    match error.kind() {
        std::io::ErrorKind::PermissionDenied | std::io::ErrorKind::ReadOnlyFilesystem => {
            "nothing may be written here: choose another folder".to_owned()
        }
        std::io::ErrorKind::StorageFull | std::io::ErrorKind::QuotaExceeded => {
            "the disk is full: make room, or choose another folder".to_owned()
        }
        std::io::ErrorKind::InvalidFilename => {
            "the name is too long or has signs that this disk does not take: choose another one"
                .to_owned()
        }
        _ => format!(
            "cannot be written ({}): choose another folder or name",
            why(error)
        ),
    }
}

pub(crate) fn unreadable(error: &std::io::Error) -> String {
    match error.kind() {
        std::io::ErrorKind::NotFound | std::io::ErrorKind::NotADirectory => {
            "there is no such file: check the name".to_owned()
        }
        std::io::ErrorKind::PermissionDenied => {
            "this file may not be read: change its permissions or copy it".to_owned()
        }
        _ => format!(
            "cannot be read ({}): check the file and the disk",
            why(error)
        ),
    }
}

/// Gives a damaged file another name, that of no other.
///
/// # Errors
/// One sentence when it cannot be done.
pub(crate) fn put_aside(path: &Path) -> Result<PathBuf, String> {
    let name = path.file_name().unwrap_or_default().to_string_lossy();
    let named = |count: u32| path.with_file_name(format!("{name}.damaged-{count}"));
    let free = (1..).map(named).find(|other| !other.exists());
    let aside = free.expect("there are more numbers than files");
    std::fs::rename(path, &aside).map_err(|error| {
        let (path, why) = (path.display(), why(&error));
        format!("{path}: it cannot be put aside ({why}): mend or remove it")
    })?;
    Ok(aside)
}
