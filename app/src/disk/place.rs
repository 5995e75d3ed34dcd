//! Where the system keeps what is a user's own.

use std::path::PathBuf;

/// The program's folder in one of the system's: in the one that the variable names, else in that
/// of the user's programs (Windows), else in a folder of the user's home.
pub(super) fn own_folder(variable: &str, of_home: &str) -> Option<PathBuf> {
    let set = |name: &str| std::env::var_os(name).filter(|value| !value.is_empty());
    let base = set(variable)
        .or_else(|| set("APPDATA"))
        .map(PathBuf::from)
        .or_else(|| set("HOME").map(|home| PathBuf::from(home).join(of_home)))?;
    Some(base.join("reinwright"))
}
