//! The family that is open, and where it is kept.

use std::path::{Path, PathBuf};

use reinwright_core::family::{self, Family};

use super::super::session::{file_name, title};
use crate::files;

/// A family with its file.
#[derive(Debug)]
pub(in crate::window) struct FamilySession {
    /// The family as it stands in the window.
    pub(in crate::window) family: Family,
    /// The family as it stands on disk; `None` when nothing on disk is worth it.
    saved: Option<Family>,
    /// Its file, if it has one.
    pub(in crate::window) path: Option<PathBuf>,
}

impl FamilySession {
    /// A family that has no file yet.
    pub(in crate::window) fn begun(family: Family) -> Self {
        Self {
            family,
            saved: None,
            path: None,
        }
    }

    /// A family from the bytes of its file, and what could not be read of it.
    ///
    /// # Errors
    /// One sentence when nothing can be read.
    pub(in crate::window) fn opened(
        path: &Path,
        bytes: &[u8],
    ) -> Result<(Self, Vec<String>), String> {
        let opened = family::open(bytes).map_err(|error| format!("{}: {error}", path.display()))?;
        let whole = opened.lost.is_empty();
        let session = Self {
            saved: whole.then(|| opened.family.clone()),
            family: opened.family,
            // A damaged file is not written over unasked.
            path: whole.then(|| path.to_owned()),
        };
        Ok((session, opened.lost))
    }

    /// Writes the family to a file, which is its own from then on.
    ///
    /// # Errors
    /// One sentence that names the file, what is wrong and the mend.
    pub(in crate::window) fn save(&mut self, path: &Path) -> Result<(), String> {
        let text = family::write(&self.family);
        family::read(text.as_bytes()).map_err(|error| error.to_string())?;
        files::write_whole(path, text.as_bytes())?;
        self.saved = Some(self.family.clone());
        self.path = Some(path.to_owned());
        Ok(())
    }

    /// Whether there is something to lose.
    pub(in crate::window) fn is_changed(&self) -> bool {
        self.saved.as_ref() != Some(&self.family)
    }

    /// Name of the file, or of the family when there is none.
    pub(in crate::window) fn title(&self) -> String {
        let name = title(self.path.as_deref(), &self.family.name);
        let changed = if self.is_changed() { ", not saved" } else { "" };
        format!("{name} (family{changed})")
    }

    /// A name for a file made from this family.
    pub(in crate::window) fn file_name(&self, extension: &str) -> String {
        let name = format!("family {}", self.family.name);
        file_name(self.path.as_deref(), &name, extension)
    }
}
