//! A shop's shelf on disk: a folder of designs and families, with the marks of what is there.

use std::path::{Path, PathBuf};

use reinwright_core::shop::came_out::{CAME_OUT_FILE, CameOut};
use reinwright_core::shop::cut::{RACK_FILE, Rack};
use reinwright_core::shop::printers::{PRINTERS_FILE, Printers};
use reinwright_core::shop::shelf::{self, Filed, MARKS_FILE, Marks};
use reinwright_core::tongs::jaw::sketch::is_kept_jaw;

use super::{files, trouble};

/// A folder, looked into but with no design read yet.
#[derive(Debug)]
pub struct Folder {
    /// Where it is.
    pub path: PathBuf,
    /// Its files that may be designs or families, by name.
    pub files: Vec<PathBuf>,
    /// What the smith has and wants.
    pub marks: Marks,
    /// Why the marks could not be read, if there are some that could not.
    pub trouble: Option<String>,
}

/// Looks into a folder.
///
/// # Errors
/// One sentence when there is no such folder or it cannot be read.
pub fn look_into(path: &Path) -> Result<Folder, String> {
    if path.is_file() {
        let path = path.display();
        return Err(format!(
            "{path}: this is a file: name the folder that it lies in"
        ));
    }
    let unreadable = |error: std::io::Error| {
        let (path, why) = (path.display(), trouble::why(&error));
        if error.kind() == std::io::ErrorKind::NotFound {
            return format!("{path}: there is no such folder: check the name");
        }
        format!("{path}: this folder cannot be read ({why}): choose a folder of designs")
    };
    let mut files = Vec::new();
    for entry in std::fs::read_dir(path).map_err(unreadable)? {
        let file = entry.map_err(unreadable)?.path();
        let ours = file
            .extension()
            .is_some_and(|end| end.eq_ignore_ascii_case("ron"));
        let of_shop = [MARKS_FILE, RACK_FILE, PRINTERS_FILE, CAME_OUT_FILE];
        let is_design = |name: &std::ffi::OsStr| of_shop.iter().all(|own| name != *own);
        if ours && file.file_name().is_some_and(is_design) && file.is_file() {
            files.push(file);
        }
    }
    files.sort();
    let (marks, trouble) = match marks(path) {
        Ok(marks) => (marks, None),
        Err(trouble) => (Marks::default(), Some(trouble)),
    };
    Ok(Folder {
        path: path.to_owned(),
        files,
        marks,
        trouble,
    })
}

/// The marks of a folder as they stand now; none where nothing was marked.
///
/// # Errors
/// One sentence when they cannot be read.
pub fn marks(folder: &Path) -> Result<Marks, String> {
    let read = if_there(&folder.join(MARKS_FILE), Marks::read);
    read.map_err(|what| format!("{MARKS_FILE}, with what you have and want: {what}"))
}

/// What a file of the shop says; nothing where there is no such file.
fn if_there<T: Default, E: ToString>(
    path: &Path,
    read: fn(&[u8]) -> Result<T, E>,
) -> Result<T, String> {
    if !path.exists() {
        return Ok(T::default());
    }
    read(&files::unnamed_bytes(path)?).map_err(|error| error.to_string())
}

/// Writes the marks into their folder.
///
/// # Errors
/// One sentence that names the file, what is wrong and the mend.
pub fn keep(folder: &Path, marks: &Marks) -> Result<(), String> {
    files::write_whole(&folder.join(MARKS_FILE), marks.write().as_bytes())
}

/// The rack of a folder as it stands now; an empty one where none was written down.
///
/// # Errors
/// One sentence when it cannot be read. It is left as it is.
pub fn rack(folder: &Path) -> Result<Rack, String> {
    let path = folder.join(RACK_FILE);
    let read = if_there(&path, Rack::read);
    read.map_err(|what| format!("{}, with the bars on the rack: {what}", path.display()))
}

/// Writes the rack into its folder.
///
/// # Errors
/// One sentence that names the file, what is wrong and the mend.
pub fn keep_rack(folder: &Path, rack: &Rack) -> Result<(), String> {
    files::write_whole(&folder.join(RACK_FILE), rack.write().as_bytes())
}

/// The printers of a shop as they were measured; none where none was.
///
/// # Errors
/// One sentence when they cannot be read. They are left as they are.
pub fn printers(folder: &Path) -> Result<Printers, String> {
    let path = folder.join(PRINTERS_FILE);
    let read = if_there(&path, Printers::read);
    read.map_err(|what| format!("{}, with the printers: {what}", path.display()))
}

/// Writes the printers into their folder.
///
/// # Errors
/// One sentence that names the file, what is wrong and the mend.
pub fn keep_printers(folder: &Path, printers: &Printers) -> Result<(), String> {
    files::write_whole(&folder.join(PRINTERS_FILE), printers.write().as_bytes())
}

/// What the shop of a folder has measured; nothing where nothing was written down.
///
/// # Errors
/// One sentence when it cannot be read. It is left as it is.
pub fn came_out(folder: &Path) -> Result<CameOut, String> {
    let path = folder.join(CAME_OUT_FILE);
    let read = if_there(&path, CameOut::read);
    read.map_err(|what| format!("{}, with what came out: {what}", path.display()))
}

/// Writes what was measured into its folder.
///
/// # Errors
/// One sentence that names the file, what is wrong and the mend.
pub fn keep_came_out(folder: &Path, all: &CameOut) -> Result<(), String> {
    files::write_whole(&folder.join(CAME_OUT_FILE), all.write().as_bytes())
}

/// Reads one file of the shelf.
///
/// # Errors
/// One sentence that says what is wrong and leaves it to the caller to name the file.
pub fn read(path: &Path) -> Result<Filed, String> {
    let bytes = files::unnamed_bytes(path)?;
    if is_kept_jaw(&bytes) {
        return Err("this is an own jaw and no design: File, Open takes it in".to_owned());
    }
    shelf::read(&bytes).map_err(|error| error.to_string())
}

/// The name by which a file is known on the shelf.
pub fn name(path: &Path) -> String {
    let name = path.file_name().unwrap_or(path.as_os_str());
    name.to_string_lossy().into_owned()
}
