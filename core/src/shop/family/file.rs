//! A family's file.

use serde::Deserialize;
use thiserror::Error;

use super::{Family, InSizes, Size};
use crate::asked::{FileError, LARGEST_FILE, LimitError, broken, options, pretty, readable};
use crate::tongs::document::Document;
use crate::tool::{self, Tool};

/// The newest family format that this program writes and reads.
pub const FAMILY_FORMAT: u32 = 1;

/// The most sizes that a family may have.
pub const MOST_SIZES: usize = 1000;
/// The most rules, and the most values set by hand for one size: more than a design has fields.
const MOST_ENTRIES: usize = 1000;
/// Longest name, note and entry that a family's file may carry, in characters.
const LONGEST_NAME: usize = 200;
const LONGEST_NOTE: usize = 20_000;

/// Why a file's text is no family. The message names the place and the mend.
#[derive(Debug, Clone, PartialEq, Error)]
pub enum FamilyError {
    /// As for every file.
    #[error(transparent)]
    File(#[from] FileError),
    /// A design.
    #[error("this is one design and no family: open it as a design, or make a family from it")]
    Design,
    /// A tool.
    #[error("this is one tool and no family: open it as a tool, or make a family from it")]
    Tool,
    /// A family of something else.
    #[error("this is a family of {is}s, and one of {wanted}s is wanted")]
    OfOthers {
        /// What it is of.
        is: &'static str,
        /// What it should be of.
        wanted: &'static str,
    },
    /// A newer format.
    #[error(
        "the family has format {found}, this program reads up to {newest}: open it with a newer Reinwright"
    )]
    Newer {
        /// The file's.
        found: u32,
        /// The newest that is read.
        newest: u32,
    },
    /// Something in it cannot be used.
    #[error("{place}: {what}")]
    Wrong {
        /// Where, such as `sizes 3, jaw.leg`.
        place: String,
        /// What is wrong and how to mend it.
        what: String,
    },
}

impl FamilyError {
    pub(super) fn wrong(place: impl Into<String>, what: impl Into<String>) -> Self {
        Self::Wrong {
            place: place.into(),
            what: what.into(),
        }
    }
}

#[derive(Deserialize)]
struct DesignHead {
    #[serde(rename = "format")]
    _format: u32,
}

/// Whether the bytes of a file begin as a family of pairs, whole or damaged: it is then for
/// [`read`] or [`open`](super::open) and not for [`crate::tongs::document::read`].
pub fn is_family(bytes: &[u8]) -> bool {
    is_of::<Document>(bytes)
}

/// Whether the bytes of a file begin as a family of tools, whole or damaged: it is then for
/// [`read_of`] or [`open_of`](super::open_of).
pub fn is_tool_family(bytes: &[u8]) -> bool {
    is_of::<Tool>(bytes)
}

fn is_of<D: InSizes>(bytes: &[u8]) -> bool {
    let Ok(text) = readable(bytes) else {
        return false;
    };
    // A family begins with its mark, so that even one cut short is known.
    let inside = text.trim_start().strip_prefix('(').map(str::trim_start);
    let mark = inside.is_some_and(|inside| {
        let after = inside.strip_prefix(D::MARK).map(str::trim_start);
        after.is_some_and(|after| after.starts_with(':'))
    });
    mark || D::family_format(text).is_ok()
}

/// The text of a family's file, and its format once it is known to be one.
pub(super) fn checked<D: InSizes>(bytes: &[u8]) -> Result<&str, FamilyError> {
    let text = readable(bytes)?;
    let format = match D::family_format(text) {
        Ok(format) => format,
        Err(error) => return Err(none_of::<D>(bytes, text).unwrap_or(broken(&error).into())),
    };
    match format {
        0 => {
            let what = format!("format 0 never was: write {}: 1", D::MARK);
            Err(FamilyError::wrong(D::MARK, what))
        }
        found if found > D::FAMILY_FORMAT => {
            let newest = D::FAMILY_FORMAT;
            Err(FamilyError::Newer { found, newest })
        }
        _ => Ok(text),
    }
}

/// What a file is that is no family of these.
fn none_of<D: InSizes>(bytes: &[u8], text: &str) -> Option<FamilyError> {
    let others = |is| FamilyError::OfOthers {
        is,
        wanted: D::NAME,
    };
    if tool::is_tool(bytes) {
        return Some(FamilyError::Tool);
    }
    if Tool::family_format(text).is_ok() {
        return Some(others(Tool::NAME));
    }
    if Document::family_format(text).is_ok() {
        return Some(others(Document::NAME));
    }
    let is_design = options().from_str::<DesignHead>(text).is_ok();
    is_design.then_some(FamilyError::Design)
}

/// Reads a family of pairs from the bytes of a file. [`open`](super::open) makes what it can of a
/// damaged one.
///
/// # Errors
/// When the bytes are no family, or anything in it is outside its limits.
pub fn read(bytes: &[u8]) -> Result<Family, FamilyError> {
    read_of(bytes)
}

/// Reads a family of whatever is wanted, by the same habits as [`read`].
///
/// # Errors
/// When the bytes are no such family, or anything in it is outside its limits.
pub fn read_of<D: InSizes>(bytes: &[u8]) -> Result<Family<D>, FamilyError> {
    let text = checked::<D>(bytes)?;
    let written: D::Written = options().from_str(text).map_err(|error| broken(&error))?;
    let family: Family<D> = written.into();
    family.check()?;
    Ok(family)
}

/// The text of a family, ending with a line feed. [`read`] gives back the identical family.
///
/// # Panics
/// Never for a family that [`read`] or the program's own changes made: all in it has a text.
pub fn write<D: InSizes>(family: &Family<D>) -> String {
    let written = D::Written::from(family.clone());
    let text = options().to_string_pretty(&written, pretty());
    text.expect("sizes, names and choices always have a text") + "\n"
}

/// The text of a family, as [`write()`] has it, if [`read`] takes it back.
///
/// # Errors
/// When anything in the family is outside its limits, or there is more of it than a file may carry.
pub fn whole_text<D: InSizes>(family: &Family<D>) -> Result<String, FamilyError> {
    family.check()?;
    let text = write(family);
    if text.len() > LARGEST_FILE {
        return Err(FileError::TooLarge.into());
    }
    Ok(text)
}

impl<D: InSizes> Family<D> {
    /// Checks all that a file may carry.
    ///
    /// # Errors
    /// When anything is outside its limits.
    pub fn check(&self) -> Result<(), FamilyError> {
        no_longer("name", &self.name, LONGEST_NAME)?;
        no_longer("note", &self.note, LONGEST_NOTE)?;
        no_more("rules", self.rules.len(), MOST_ENTRIES)?;
        no_more("sizes", self.sizes.len(), MOST_SIZES)?;
        if self.sizes.is_empty() {
            let what = format!("there is none: write one at least, such as {}", D::EXAMPLE);
            return Err(FamilyError::wrong("sizes", what));
        }
        match self.base.format() {
            0 => {
                return Err(FamilyError::wrong(
                    "base.format",
                    "format 0 never was: write format: 1",
                ));
            }
            found if found > D::FORMAT => {
                let newest = D::FORMAT;
                return Err(FileError::Newer { found, newest }.into());
            }
            _ => {}
        }
        let outside_base = |error: LimitError| {
            let path = self.base.in_file(&error.path);
            outside("base.", LimitError { path, ..error })
        };
        self.base.limits().map_err(outside_base)?;
        let mut sizes = self.sizes.iter().enumerate();
        sizes.try_for_each(|(at, size)| self.check_size(at, size))
    }

    /// Checks a size, the one at a place from 0.
    pub(super) fn check_size(&self, at: usize, size: &Size<D::Measure>) -> Result<(), FamilyError> {
        let place = format!("sizes {}", at + 1);
        no_longer(&format!("{place}, name"), &size.name, LONGEST_NAME)?;
        no_more(&format!("{place}, set"), size.set.len(), MOST_ENTRIES)?;
        let mut document = self.base.clone();
        document.resize(size.work, size.bar.unwrap_or(self.base.bar()));
        let outside_size = |error: LimitError| {
            let path = document.in_size(&error.path);
            outside(&format!("{place}, "), LimitError { path, ..error })
        };
        document.limits().map_err(outside_size)?;
        for (path, text) in &size.set {
            no_longer(&format!("{place}, set"), path, LONGEST_NAME)?;
            no_longer(&format!("{place}, {}", short(path)), text, LONGEST_NAME)?;
        }
        self.check_set(&place, size)
    }

    fn check_set(&self, place: &str, size: &Size<D::Measure>) -> Result<(), FamilyError> {
        match self.wrong_text(size) {
            Some((path, why)) => Err(FamilyError::wrong(format!("{place}, {path}"), why)),
            None => Ok(()),
        }
    }

    /// The first text set by hand that is no value where it has a place, and why not. Those
    /// without a place are kept, since the base may have one for them again.
    pub(super) fn wrong_text(&self, size: &Size<D::Measure>) -> Option<(String, String)> {
        let mut wrong = None;
        let unit = self.base.units().unit();
        if size.set.is_empty() {
            return wrong;
        }
        self.base.clone().ask(&mut |field| {
            let read = field.read(size.set.get(&field.path)?, unit);
            if let (Err(why), None) = (&read, &wrong) {
                wrong = Some((field.path.clone(), why.to_string()));
            }
            read.ok()
        });
        wrong
    }
}

/// So much of a text as a message can carry.
pub(super) fn short(text: &str) -> String {
    crate::units::quoted(text, 40)
}

fn outside(place: &str, error: LimitError) -> FamilyError {
    let path = format!("{place}{}", error.path);
    FamilyError::File(LimitError { path, ..error }.into())
}

fn no_longer(place: &str, text: &str, most: usize) -> Result<(), FamilyError> {
    let found = text.chars().count();
    if found <= most {
        return Ok(());
    }
    let what = format!("{found} characters are too many: write {most} at most");
    Err(FamilyError::wrong(place, what))
}

fn no_more(place: &str, found: usize, most: usize) -> Result<(), FamilyError> {
    if found <= most {
        return Ok(());
    }
    let what = format!("{found} are too many: keep to {most}");
    Err(FamilyError::wrong(place, what))
}
