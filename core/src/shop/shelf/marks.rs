//! What the smith has and what is still wanted.
//!
//! It stands in a file of its own beside the designs and not in them: that a pair hangs in this
//! shop is no part of its design, a design that is passed on takes no such note along, and a
//! click on the shelf never writes to a drawing.

use serde::{Deserialize, Serialize};
use thiserror::Error;

use crate::asked::{FileError, broken, options, pretty, readable};

/// The name of the file in the folder.
pub const MARKS_FILE: &str = "shelf.ron";
/// The newest format of that file that this program writes and reads.
pub const SHELF_FORMAT: u32 = 1;
/// The most marks that are read: more than a shop has pairs.
const MOST_MARKS: usize = 100_000;

/// Whether a pair hangs in the shop.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub enum Mark {
    /// It is there.
    Have,
    /// It is to be made.
    Want,
}

impl Mark {
    /// Both, in the order in which they are offered.
    pub const ALL: [Self; 2] = [Self::Have, Self::Want];

    /// What the smith reads.
    pub fn name(self) -> &'static str {
        match self {
            Self::Have => "have",
            Self::Want => "want",
        }
    }
}

/// Why a file's text holds no marks.
#[derive(Debug, Clone, PartialEq, Error)]
pub enum MarksError {
    /// As for every file.
    #[error(transparent)]
    File(#[from] FileError),
    /// A newer format.
    #[error(
        "the shelf's notes have format {0}, this program reads up to {SHELF_FORMAT}: use a newer Reinwright"
    )]
    Newer(u32),
    /// Too many.
    #[error("{0} marks are too many: keep to {MOST_MARKS}")]
    TooMany(usize),
}

/// The marks of a folder.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Marks {
    /// The file format, [`SHELF_FORMAT`].
    shelf: u32,
    marks: Vec<Marked>,
}

#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
struct Marked {
    file: String,
    #[serde(default, skip_serializing_if = "String::is_empty")]
    size: String,
    mark: Mark,
}

#[derive(Deserialize)]
#[serde(rename = "shelf")]
struct Head {
    shelf: u32,
}

impl Default for Marks {
    fn default() -> Self {
        Self {
            shelf: SHELF_FORMAT,
            marks: Vec::new(),
        }
    }
}

impl Marks {
    /// Reads the marks from the bytes of their file.
    ///
    /// # Errors
    /// When the bytes are no such file, or one of a newer format.
    pub fn read(bytes: &[u8]) -> Result<Self, MarksError> {
        let text = readable(bytes)?;
        let head: Head = options().from_str(text).map_err(|error| broken(&error))?;
        if head.shelf > SHELF_FORMAT {
            return Err(MarksError::Newer(head.shelf));
        }
        let marks: Self = options().from_str(text).map_err(|error| broken(&error))?;
        if marks.marks.len() > MOST_MARKS {
            return Err(MarksError::TooMany(marks.marks.len()));
        }
        Ok(marks)
    }

    /// The text of the file, ending with a line feed. [`Marks::read`] gives back the same marks.
    ///
    /// # Panics
    /// Never: names and marks always have a text.
    pub fn write(&self) -> String {
        let text = options().to_string_pretty(self, pretty());
        text.expect("names and marks always have a text") + "\n"
    }

    /// The mark of a pair: its file, and its size's name if it is one of a family, else nothing.
    pub fn of(&self, file: &str, size: &str) -> Option<Mark> {
        let marked = self.marks.iter().find(|it| it.is(file, size))?;
        Some(marked.mark)
    }

    /// Marks a pair, or takes its mark away.
    pub fn put(&mut self, file: &str, size: &str, mark: Option<Mark>) {
        self.marks.retain(|it| !it.is(file, size));
        if let Some(mark) = mark {
            self.marks.push(Marked {
                file: file.to_owned(),
                size: size.to_owned(),
                mark,
            });
            let key = |it: &Marked| (it.file.clone(), it.size.clone());
            self.marks.sort_by_key(key);
        }
    }
}

impl Marked {
    fn is(&self, file: &str, size: &str) -> bool {
        self.file == file && self.size == size
    }
}
