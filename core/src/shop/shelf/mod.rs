//! A shop's shelf: a folder of designs, tools and families, and what its pairs hold.
//!
//! The folder itself is read by the program; here a file's bytes become a [`Filed`], each of its
//! pairs is worked out by [`Filed::pair`] when it is wanted, each of its tools by [`Filed::tool`], and [`Pair::on`] says by the fit
//! computation, never by a label, how a pair holds some [`Stock`]. What the smith has and wants
//! stands in [`Marks`], a small file of its own.

mod held;
mod marks;
mod stock;

pub use held::{Held, best_first};
pub use marks::{MARKS_FILE, Mark, Marks, MarksError, SHELF_FORMAT};
pub use stock::{SoughtError, Stock};

use thiserror::Error;

use crate::asked::{FileError, Units};
use crate::proof::fit::Fit;
use crate::shop::family::{self, Family, FamilyError, Size};
use crate::shop::holding;
use crate::tongs::document::{self, Document};
use crate::tongs::model::Model;
use crate::tool::{self, Tool};

/// What a file on the shelf holds.
#[derive(Debug, Clone, PartialEq)]
pub enum Filed {
    /// One design.
    Design(Box<Document>),
    /// A family, with what could not be read of it, a sentence each.
    Family(Box<Family>, Vec<String>),
    /// One tool.
    Tool(Box<Tool>),
    /// A family of tools, likewise.
    Tools(Box<Family<Tool>>, Vec<String>),
}

/// Why a file of the shelf cannot be read.
#[derive(Debug, Clone, PartialEq, Error)]
pub enum FiledError {
    /// It is no design.
    #[error(transparent)]
    Design(#[from] FileError),
    /// It is no family.
    #[error(transparent)]
    Family(#[from] FamilyError),
}

/// Reads a file of the shelf; a damaged family gives what can be opened of it.
///
/// # Errors
/// When the bytes are neither a design, a tool nor a family: the place and the mend.
pub fn read(bytes: &[u8]) -> Result<Filed, FiledError> {
    if family::is_family(bytes) {
        let opened = family::open(bytes)?;
        return Ok(Filed::Family(Box::new(opened.family), opened.lost));
    }
    if family::is_tool_family(bytes) {
        let opened = family::open_of(bytes)?;
        return Ok(Filed::Tools(Box::new(opened.family), opened.lost));
    }
    if tool::is_tool(bytes) {
        return Ok(Filed::Tool(Box::new(tool::read(bytes)?)));
    }
    let design = document::read(bytes)?;
    Ok(Filed::Design(Box::new(design)))
}

impl Filed {
    /// What the design, the tool or the family is called.
    pub fn name(&self) -> &str {
        match self {
            Self::Design(design) => &design.name,
            Self::Family(family, _) => &family.name,
            Self::Tool(tool) => &tool.name,
            Self::Tools(family, _) => &family.name,
        }
    }

    /// What could not be read of it, a sentence each.
    pub fn lost(&self) -> &[String] {
        match self {
            Self::Family(_, lost) | Self::Tools(_, lost) => lost,
            Self::Design(_) | Self::Tool(_) => &[],
        }
    }

    /// How many pairs or tools it holds.
    pub fn len(&self) -> usize {
        match self {
            Self::Design(_) | Self::Tool(_) => 1,
            Self::Family(family, _) => family.sizes.len(),
            Self::Tools(family, _) => family.sizes.len(),
        }
    }

    /// Whether it holds none; a family that was read never does.
    pub fn is_empty(&self) -> bool {
        self.len() == 0
    }

    /// What the size at a place is called; nothing where it is none of a family.
    pub fn size(&self, at: usize) -> Option<String> {
        match self {
            Self::Design(_) | Self::Tool(_) => None,
            Self::Family(family, _) => family.sizes.get(at).map(Size::label),
            Self::Tools(family, _) => family.sizes.get(at).map(Size::label),
        }
    }

    /// Works out the pair at a place; `None` when there is none.
    pub fn pair(&self, at: usize) -> Option<Pair> {
        match self {
            Self::Design(design) if at == 0 => Some(Pair::of(design.as_ref().clone(), None)),
            Self::Design(_) | Self::Tool(_) | Self::Tools(..) => None,
            Self::Family(family, _) => {
                let size = family.sizes.get(at)?;
                let document = family.made(size).document;
                Some(Pair::of(document, Some(size.label())))
            }
        }
    }

    /// The tool at a place; `None` when there is none.
    pub fn tool(&self, at: usize) -> Option<Tool> {
        match self {
            Self::Tool(tool) if at == 0 => Some(tool.as_ref().clone()),
            Self::Tools(family, _) => family.take_out(at),
            Self::Tool(_) | Self::Design(_) | Self::Family(..) => None,
        }
    }

    /// Whether it is of tools, which hold no work.
    pub fn is_of_tools(&self) -> bool {
        match self {
            Self::Tool(_) | Self::Tools(..) => true,
            Self::Design(_) | Self::Family(..) => false,
        }
    }
}

/// A pair on the shelf.
#[derive(Debug, Clone)]
pub struct Pair {
    /// What the size is called when the pair is one of a family.
    pub size: Option<String>,
    /// The pair as a design.
    pub document: Document,
    /// Its geometry.
    pub model: Model,
    /// How it holds the work that it was drawn for.
    pub fit: Fit,
}

impl Pair {
    fn of(document: Document, size: Option<String>) -> Self {
        let (model, fit) = holding(&document);
        Self {
            size,
            document,
            model,
            fit,
        }
    }

    /// The work that it was drawn for: `3/8 in square on its corners`.
    pub fn work(&self) -> String {
        let work = &self.document.work;
        format!("{} {}", work.size(), family::shape_name(work))
    }

    /// The style of its jaws: `v-bit`, `v-bit over flat`.
    pub fn jaw(&self) -> String {
        let jaw = self.document.jaw.name();
        match &self.document.second_jaw {
            Some(second) => format!("{jaw} over {}", second.name()),
            None => jaw.to_owned(),
        }
    }

    /// The sizes of work of its own shape that it holds: `holds 5/16 in to 1/2 in`.
    pub fn range(&self, units: Units) -> String {
        let show = units.show();
        match &self.fit.range {
            Ok(range) => format!(
                "holds {} to {}",
                show.text(range.least.size_mm),
                show.text(range.most.size_mm)
            ),
            Err(why) => format!("holds nothing: {why}"),
        }
    }
}
