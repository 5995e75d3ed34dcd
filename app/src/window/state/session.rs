//! The design that is open, and where it is kept.

use std::path::{Path, PathBuf};

use reinwright_core::document::{self, Document};

use crate::files;

/// A design with its file.
#[derive(Debug)]
pub(super) struct Session {
    /// The design as it stands in the window.
    pub(super) document: Document,
    /// The design as it stands on disk, or as it was begun.
    saved: Document,
    /// Its file, if it has one.
    pub(super) path: Option<PathBuf>,
}

impl Session {
    /// A design that has no file yet.
    pub(super) fn begun(document: Document) -> Self {
        Self {
            saved: document.clone(),
            document,
            path: None,
        }
    }

    /// A design that was never saved, brought back.
    pub(super) fn rescued(document: Document) -> Self {
        let saved = Document {
            name: String::new(),
            note: "not saved".to_owned(),
            ..document.clone()
        };
        Self {
            document,
            saved,
            path: None,
        }
    }

    /// Opens a file.
    ///
    /// # Errors
    /// One sentence that names the file, what is wrong and the mend.
    pub(super) fn open(path: &Path) -> Result<Self, String> {
        let document = files::open(path)?;
        Ok(Self {
            saved: document.clone(),
            document,
            path: Some(path.to_owned()),
        })
    }

    /// Writes the design to a file, which is its own from then on.
    ///
    /// # Errors
    /// One sentence that names the file, what is wrong and the mend.
    pub(super) fn save(&mut self, path: &Path) -> Result<(), String> {
        document::check_limits(&self.document).map_err(|error| error.to_string())?;
        files::write_whole(path, document::write(&self.document).as_bytes())?;
        self.saved = self.document.clone();
        self.path = Some(path.to_owned());
        Ok(())
    }

    /// Whether there is something to lose.
    pub(super) fn is_changed(&self) -> bool {
        self.document != self.saved
    }

    /// Name of the file, or of the design when there is none.
    pub(super) fn title(&self) -> String {
        let name = title(self.path.as_deref(), &self.document.name);
        if self.is_changed() {
            format!("{name} (not saved)")
        } else {
            name
        }
    }

    /// A name for a file made from this design.
    pub(super) fn file_name(&self, extension: &str) -> String {
        file_name(self.path.as_deref(), &self.document.name, extension)
    }
}

/// Name of a file, or of what is in it when there is none.
pub(super) fn title(path: Option<&Path>, name: &str) -> String {
    match path.and_then(Path::file_name) {
        Some(file) => file.to_string_lossy().into_owned(),
        None if name.trim().is_empty() => "unnamed".to_owned(),
        None => name.to_owned(),
    }
}

/// A name for a file made from what is called so: plain signs only.
pub(super) fn file_name(path: Option<&Path>, name: &str, extension: &str) -> String {
    let stem = path.and_then(Path::file_stem);
    let stem = stem.map_or_else(|| name.to_owned(), |s| s.to_string_lossy().into_owned());
    let plain = |c: char| match c {
        c if c.is_alphanumeric() => c.to_ascii_lowercase(),
        _ => '-',
    };
    let plain: String = stem.chars().map(plain).collect();
    let words: Vec<&str> = plain.split('-').filter(|word| !word.is_empty()).collect();
    let words = if words.is_empty() {
        "tongs".to_owned()
    } else {
        words.join("-")
    };
    if extension.is_empty() {
        // A folder of what is drawn, beside the file.
        return format!("{words}-drawings");
    }
    format!("{words}.{extension}")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn files_and_folders_are_named_after_what_is_open() {
        let path = Path::new("/designs/Round Bits.ron");
        assert_eq!(file_name(Some(path), "", "pdf"), "round-bits.pdf");
        assert_eq!(file_name(Some(path), "", ""), "round-bits-drawings");
        assert_eq!(file_name(None, " 5/8 in, hex ", "ron"), "5-8-in-hex.ron");
        assert_eq!(file_name(None, "...", "svg"), "tongs.svg");
    }
}
