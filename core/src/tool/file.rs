//! A tool as the text of a file.

use ron::value::RawValue;
use serde::Deserialize;

use super::document::{FORMAT, Tool, check_limits};
use crate::asked::{FileError, LimitError, broken, options, pretty, readable};

/// What every file begins with; messages call it by the name that it has for the reader.
#[derive(Deserialize)]
#[serde(rename = "tool")]
struct Head {
    format: u32,
}

/// Whether the bytes of a file begin as a tool, whole or damaged: it is then for [`read`].
pub fn is_tool(bytes: &[u8]) -> bool {
    let text = readable(bytes).unwrap_or("");
    // Unsaved work that was kept has lines before it that say what it is.
    let mut lines = text.split_inclusive('\n');
    let said = |line: &&str| line.trim_start().starts_with("//") || line.trim().is_empty();
    let before: usize = lines.by_ref().take_while(said).map(str::len).sum();
    let begin = text[before..].trim_start_matches(|c: char| c.is_whitespace() || c == '(');
    let after = begin.strip_prefix("kind").map(str::trim_start);
    let after = after
        .and_then(|after| after.strip_prefix(':'))
        .map(str::trim_start);
    after.is_some_and(|after| after.starts_with("Tool"))
}

/// Reads a tool from the bytes of a file.
///
/// # Errors
/// When the bytes are no tool, or a number in it is outside its limits.
pub fn read(bytes: &[u8]) -> Result<Tool, FileError> {
    let tool = read_any(bytes)?;
    let outside = |error: LimitError| LimitError {
        path: in_file(&error.path),
        ..error
    };
    check_limits(&tool).map_err(outside)?;
    Ok(tool)
}

/// Where in a tool's file the value stands that has a path in the program.
pub fn in_file(path: &str) -> String {
    let (part, rest) = path.split_once('.').unwrap_or((path, ""));
    match (part, rest) {
        ("bar", "steel") => path.to_owned(),
        ("bar", _) => format!("bar.stock.{rest}"),
        ("working", _) => format!("shape.style.{rest}"),
        ("body" | "shank", _) => format!("shape.mount.{rest}"),
        ("allowances", "tail") => rest.to_owned(),
        _ => path.to_owned(),
    }
}

/// Whether the bytes are a tool's but for the mark that they should begin with.
pub fn lacks_mark(bytes: &[u8]) -> bool {
    #[derive(Deserialize)]
    struct Unmarked<'a> {
        #[serde(borrow)]
        shape: &'a RawValue,
        #[serde(borrow, default)]
        jaw: Option<&'a RawValue>,
    }
    let text = readable(bytes).unwrap_or("");
    let read = options().from_str::<Unmarked<'_>>(text);
    !is_tool(bytes)
        && read.is_ok_and(|own| own.jaw.is_none() && own.shape.get_ron().contains("style"))
}

/// Reads a tool whatever its sizes: unsaved work that was kept is not lost for a size that no file
/// may carry.
///
/// # Errors
/// When the bytes are no tool.
pub fn read_any(bytes: &[u8]) -> Result<Tool, FileError> {
    let text = readable(bytes)?;
    let refused = |what: &str| FileError::Broken {
        line: 1,
        column: 1,
        what: what.to_owned(),
    };
    if !is_tool(bytes) {
        return Err(refused(
            "this is no tool: open one that Reinwright saved, it begins with kind: Tool",
        ));
    }
    let head: Head = options().from_str(text).map_err(|error| broken(&error))?;
    if head.format > FORMAT {
        return Err(FileError::Newer {
            found: head.format,
            newest: FORMAT,
        });
    }
    let tool: Tool = options().from_str(text).map_err(|error| broken(&error))?;
    if tool.format == 0 {
        return Err(refused("format 0 never was: write format: 1"));
    }
    Ok(tool)
}

/// The text of a tool, ending with a line feed. [`read`] gives back the identical tool.
///
/// # Panics
/// Never for a tool that [`check_limits`] passes: every value in it has a text.
pub fn write(tool: &Tool) -> String {
    let text = options().to_string_pretty(tool, pretty());
    text.expect("sizes, names and choices always have a text") + "\n"
}
