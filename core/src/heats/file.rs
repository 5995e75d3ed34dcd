//! The text of a shop's heat sources. One that cannot be read costs only itself.

use ron::value::RawValue;
use serde::Deserialize;
use serde::de::DeserializeOwned;
use thiserror::Error;

use super::fields;
use super::source::{Machine, Smith, Source, SourceKind, Sources};
use crate::asked::{FileError, broken, options, pretty, readable};
use crate::units::quoted;

/// The newest format of the file that this program writes and reads.
pub const SOURCES_FORMAT: u32 = 1;
/// The most sources of one shop.
pub const MOST_SOURCES: usize = 16;
/// The most of them that are forges or fires: which of them burn is part of what a plan weighs.
pub const MOST_FIRES: usize = 4;

/// Why a file's text holds no heat sources. The message names the place and the mend.
#[derive(Debug, Clone, PartialEq, Error)]
pub enum SourcesError {
    /// As for every file.
    #[error(transparent)]
    File(#[from] FileError),
    /// A newer format.
    #[error(
        "the heat sources have format {0}, this program reads up to {SOURCES_FORMAT}: use a newer Reinwright"
    )]
    Newer(u32),
    /// No such format.
    #[error("format {0} of heat sources never was: write heat_sources: 1")]
    Never(u32),
}

/// Heat sources with what could not be read of them.
#[derive(Debug, Clone, PartialEq)]
pub struct OpenedSources {
    /// What could be read.
    pub sources: Sources,
    /// What could not, a sentence each without a period.
    pub lost: Vec<String>,
}

#[derive(Deserialize)]
#[serde(rename = "heat sources", deny_unknown_fields)]
struct Raw<'a> {
    heat_sources: u32,
    #[serde(borrow, default)]
    smith: Option<&'a RawValue>,
    #[serde(borrow, default)]
    machine: Option<&'a RawValue>,
    #[serde(borrow, default)]
    sources: Vec<&'a RawValue>,
}

#[derive(Deserialize)]
#[serde(rename = "heat sources")]
struct Head {
    heat_sources: u32,
}

impl Sources {
    /// Reads the sources from the bytes of their file.
    ///
    /// # Errors
    /// When the bytes are no such file, or one of a newer format. A source that cannot be read is
    /// left out and told.
    pub fn read(bytes: &[u8]) -> Result<OpenedSources, SourcesError> {
        let text = readable(bytes)?;
        let head: Head = options().from_str(text).map_err(|error| broken(&error))?;
        match head.heat_sources {
            0 => return Err(SourcesError::Never(0)),
            newer if newer > SOURCES_FORMAT => return Err(SourcesError::Newer(newer)),
            _ => {}
        }
        let raw: Raw<'_> = options().from_str(text).map_err(|error| broken(&error))?;
        Ok(opened(text, &raw))
    }

    /// Why a source does not go with those that are there; nothing where it does.
    pub fn no_room(&self, source: &Source) -> Option<String> {
        no_room(&self.sources, source)
    }

    /// The text of the file, ending with a line feed. [`Sources::read`] gives back the same sources.
    ///
    /// # Panics
    /// Never: all in it has a text.
    pub fn write(&self) -> String {
        let text = options().to_string_pretty(self, pretty());
        text.expect("names, sizes and numbers always have a text") + "\n"
    }
}

fn opened(text: &str, raw: &Raw<'_>) -> OpenedSources {
    let mut lost = Vec::new();
    let smith: Option<Smith> = part(text, (raw.smith, "smith"), fields::smith, &mut lost);
    let machine: Option<Machine> = part(text, (raw.machine, "machine"), fields::machine, &mut lost);
    let mut sources: Vec<Source> = Vec::new();
    for (at, raw) in (1..).zip(&raw.sources) {
        let place = format!("sources {at}");
        let Some(source) = part(text, (Some(raw), &place), fields::source, &mut lost) else {
            continue;
        };
        match no_room(&sources, &source) {
            Some(why) => lost.push(format!(
                "{place}, \"{}\": {why}: it is left out",
                quoted(&source.name, 40)
            )),
            None => sources.push(source),
        }
    }
    OpenedSources {
        sources: Sources {
            heat_sources: raw.heat_sources,
            smith: smith.unwrap_or_default(),
            machine,
            sources,
        },
        lost,
    }
}

fn is_fire(source: &Source) -> bool {
    match source.kind {
        SourceKind::Gas(_) | SourceKind::Solid(_) => true,
        SourceKind::Coil(_) => false,
    }
}

/// Why a source does not go with those that are there.
fn no_room(sources: &[Source], source: &Source) -> Option<String> {
    let fires = sources.iter().filter(|own| is_fire(own)).count();
    if sources.iter().any(|own| own.name == source.name) {
        Some("another source has this name already".to_owned())
    } else if sources.len() == MOST_SOURCES {
        Some(format!("no more than {MOST_SOURCES} sources are read"))
    } else if is_fire(source) && fires == MOST_FIRES {
        Some(format!(
            "no more than {MOST_FIRES} forges and fires are read"
        ))
    } else {
        None
    }
}

/// Reads a part of a text for itself. What is wrong with it is told and nothing comes back.
fn part<T: DeserializeOwned>(
    text: &str,
    (raw, place): (Option<&RawValue>, &str),
    wrong: impl Fn(&T) -> Option<String>,
    lost: &mut Vec<String>,
) -> Option<T> {
    let own = raw?.get_ron();
    match options().from_str::<T>(own) {
        Ok(read) => match wrong(&read) {
            None => Some(read),
            Some(why) => {
                lost.push(format!("{place}, {why}: it is left out"));
                None
            }
        },
        Err(error) => {
            let why = match broken(&error) {
                FileError::Broken { what, .. } => what,
                other => other.to_string(),
            };
            let at = &error.span.start;
            let before = own.as_ptr() as usize - text.as_ptr() as usize;
            let line = text[..before].matches('\n').count() + at.line;
            let field = field_before(own, (at.line, at.col));
            let field = field.map_or_else(String::new, |field| format!(", {field}"));
            lost.push(format!("{place}{field}, line {line}: {why}"));
            None
        }
    }
}

/// The name that stands before a place in a text, on the same line.
fn field_before(text: &str, (line, column): (usize, usize)) -> Option<&str> {
    let line = text.lines().nth(line.checked_sub(1)?)?;
    let end = line
        .char_indices()
        .nth(column)
        .map_or(line.len(), |at| at.0);
    let (before, _) = line[..end].rsplit_once(':')?;
    let begins = |sign: char| !(sign.is_ascii_alphanumeric() || sign == '_');
    let name = before.rsplit(begins).next()?;
    (!name.is_empty()).then_some(name)
}
