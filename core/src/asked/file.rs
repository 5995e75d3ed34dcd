use ron::extensions::Extensions;
use ron::ser::PrettyConfig;
use thiserror::Error;

use super::limit_error::LimitError;
use crate::units::{one_line, quoted};

/// The largest file that is read, in bytes: a design is a few thousand.
pub const LARGEST_FILE: usize = 4 << 20;

/// Deepest nesting that is followed; a design needs six.
const DEEPEST: usize = 32;

/// Why a file's text is no design. The message names the place and the mend.
#[derive(Debug, Clone, PartialEq, Error)]
pub enum FileError {
    /// Over [`LARGEST_FILE`].
    #[error(
        "the file is larger than 4 MiB: a design is a few thousand bytes, open one that Reinwright saved"
    )]
    TooLarge,
    /// Bytes that are no text.
    #[error("the file is not text: open one that Reinwright saved")]
    NotText,
    /// Nothing in it.
    #[error("the file is empty: open one that Reinwright saved")]
    Empty,
    /// A newer format.
    #[error(
        "the file has format {found}, this program reads up to {newest}: open it with a newer Reinwright"
    )]
    Newer {
        /// The file's.
        found: u32,
        /// The newest that is read.
        newest: u32,
    },
    /// Text that cannot be read as a design.
    #[error("line {line}, column {column}: {what}")]
    Broken {
        /// Line, from 1.
        line: usize,
        /// Column, from 1.
        column: usize,
        /// What is wrong and how to mend it.
        what: String,
    },
    /// A number outside its limits.
    #[error(transparent)]
    Limit(#[from] LimitError),
}

/// How the file's text is written: RON with sizes as text, `Some` and newtype brackets left out.
pub(crate) fn options() -> ron::Options {
    ron::Options::default()
        .with_default_extension(Extensions::IMPLICIT_SOME | Extensions::UNWRAP_VARIANT_NEWTYPES)
        .with_recursion_limit(DEEPEST)
}

/// The text of a file, of whatever kind it is.
///
/// # Errors
/// When it is too large, no text, or empty.
pub(crate) fn readable(bytes: &[u8]) -> Result<&str, FileError> {
    if bytes.len() > LARGEST_FILE {
        return Err(FileError::TooLarge);
    }
    let Ok(text) = std::str::from_utf8(bytes) else {
        return Err(FileError::NotText);
    };
    // Some editors set this mark before a text when they save it.
    let text = text.strip_prefix('\u{feff}').unwrap_or(text);
    if text.contains('\0') {
        return Err(FileError::NotText);
    }
    if text.trim().is_empty() {
        return Err(FileError::Empty);
    }
    Ok(text)
}

pub(crate) fn broken(error: &ron::error::SpannedError) -> FileError {
    let mut what = plain(&error.code);
    if !what.contains(':') {
        what = format!("{what}: mend the text here, or open a file that Reinwright saved");
    }
    FileError::Broken {
        line: error.span.start.line,
        column: error.span.start.col,
        what,
    }
}

/// What is wrong with a text in the words of a smith, who knows the names in a file and not those in
/// the program.
fn plain(error: &ron::Error) -> String {
    match error {
        ron::Error::ExceededRecursionLimit => {
            "brackets are nested too deep: open a file that Reinwright saved".to_owned()
        }
        ron::Error::MissingStructField { field, .. } => format!("{field} is missing"),
        ron::Error::DuplicateStructField { field, .. } => {
            format!("{field} stands here twice: leave one of them out")
        }
        ron::Error::NoSuchStructField {
            expected, found, ..
        } => {
            let (found, known) = (quoted(found, LONGEST_QUOTE), one_of(expected));
            format!("nothing here is called {found}: write {known}")
        }
        ron::Error::NoSuchEnumVariant {
            expected, found, ..
        } => {
            let (found, known) = (quoted(found, LONGEST_QUOTE), one_of(expected));
            format!("{found} is not known here: write {known}")
        }
        ron::Error::ExpectedFloat | ron::Error::ExpectedInteger => {
            "a number is expected here: write one without quotes, such as 12".to_owned()
        }
        ron::Error::ExpectedString => {
            "a text is expected here: write it in quotes, such as \"3/4 in\"".to_owned()
        }
        ron::Error::ExpectedAttribute
        | ron::Error::ExpectedAttributeEnd
        | ron::Error::ExpectedIdentifier
        | ron::Error::ExpectedStructLike
        | ron::Error::ExpectedNamedStructLike(_)
        | ron::Error::ExpectedStructName(_)
        | ron::Error::ExpectedDifferentStructName { .. } => {
            "here stands something else than in a file of this kind".to_owned()
        }
        ron::Error::Eof | ron::Error::ExpectedStringEnd | ron::Error::UnclosedBlockComment => {
            "the text ends too soon".to_owned()
        }
        ron::Error::InvalidValueForType { expected, found } => {
            let (found, expected) = (found.replace('`', ""), expected.replace('`', ""));
            format!(
                "here stands {}, and {} is expected",
                one_line(&found),
                one_line(&expected)
            )
        }
        ron::Error::Message(words) => one_line(words),
        other => said_of(other).to_owned(),
    }
}

/// The same of what names nothing in the file.
fn said_of(error: &ron::Error) -> &'static str {
    match error {
        ron::Error::ExpectedArray => "a list is expected here: write it in [ and ]",
        ron::Error::ExpectedArrayEnd => "a list is not closed: write ] behind its last part",
        ron::Error::ExpectedMap => "a table is expected here: write it in { and }",
        ron::Error::ExpectedMapEnd => "a table is not closed: write } behind its last part",
        ron::Error::ExpectedMapColon => "a colon is missing between a name and its value",
        ron::Error::ExpectedComma => "a comma is missing in front of this",
        ron::Error::ExpectedOptionEnd | ron::Error::ExpectedStructLikeEnd => {
            "a bracket is not closed: write ) behind its last part"
        }
        ron::Error::ExpectedBoolean => "true or false is expected here: write one of them",
        ron::Error::IntegerOutOfBounds => "this number is too large: write a smaller one",
        ron::Error::TrailingCharacters => "there is more behind the end: take it away",
        ron::Error::InvalidEscape(_) => {
            "a backslash stands in a text where none can: write two of them"
        }
        // The library has errors of writing and of what no file of ours holds.
        _ => "this cannot be read",
    }
}

/// So much of a name in a damaged text is quoted, in characters.
const LONGEST_QUOTE: usize = 40;

/// `one of a, b or c`.
fn one_of(names: &[&str]) -> String {
    match names {
        [] => "nothing".to_owned(),
        [only] => (*only).to_owned(),
        [rest @ .., last] => format!("one of {} or {last}", rest.join(", ")),
    }
}

/// How the text is laid out.
pub(crate) fn pretty() -> PrettyConfig {
    PrettyConfig::new()
        .new_line("\n")
        .indentor("    ")
        .struct_names(false)
}
