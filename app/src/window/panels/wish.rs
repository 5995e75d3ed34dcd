//! What panels ask of the bench, and what the bench says.

use crate::window::state::news::Said;
use std::path::PathBuf;

use reinwright_core::asked::StockSizes;
use reinwright_core::finding::Part;
use reinwright_core::shop::shelf::Mark;
use reinwright_core::tongs::document::Document;
use reinwright_core::tongs::jaw::Jaw;
use reinwright_core::tongs::jaw::sketch::KeptJaw;

use crate::window::state::command::Command;

/// What was asked for while the window was drawn. It is done before the next frame.
#[derive(Debug, Clone)]
pub(crate) enum Wish {
    Do(Command),
    /// A recent file.
    Open(PathBuf),
    /// A file of the shelf, and of a family the size at a place.
    OpenAt(PathBuf, usize),
    /// A folder as a shelf.
    ShelfOf(PathBuf),
    /// The pair at a place of the shelf marked so, or not any more.
    Mark(usize, Option<Mark>),
    /// Back to what is open.
    LeaveShelf,
    /// A sample.
    Begin(Box<Document>),
    /// Something about own jaws.
    Jaws(JawWish),
    /// The chooser of jaw styles.
    Styles(StyleWish),
    /// The stock that can be bought is this from now on.
    Stock(Box<StockSizes>),
    /// A sentence at the foot of the window.
    Say(Said),
    /// What could not be done, as it was said, is old news.
    Unsay(String),
}

/// What the smith asks of the own jaws.
#[derive(Debug, Clone, PartialEq)]
pub(crate) enum JawWish {
    /// Show them, to choose a jaw for this part.
    Open(Part),
    /// Put a jaw among them under a name.
    Keep(Box<Jaw>, String),
    /// Put one in the place of another, in this file.
    Replace(Box<KeptJaw>, PathBuf),
    /// Put one beside another that has its name.
    KeepBeside(Box<KeptJaw>),
    /// Use one.
    Use(Box<KeptJaw>, Part),
    /// Ask whether one is to be taken away.
    AskRemove(PathBuf),
    /// Leave it there after all.
    KeepIt,
    /// Take one away.
    Remove(PathBuf, String),
    /// Write one to a file for another smith.
    Give(Box<KeptJaw>),
    /// Close them.
    Close,
}

/// What the smith asks of the chooser of jaw styles.
#[derive(Debug, Clone)]
pub(crate) enum StyleWish {
    /// Show it, to choose a style for this part of the design.
    Open(Part),
    /// Show it, to begin a new pair for some work from some bar.
    New(String, String),
    /// Take the jaw of this pair, and its work, into the design.
    Take(Box<Document>, Part),
    /// Begin this pair.
    Begin(Box<Document>),
    /// Close it.
    Close,
}
