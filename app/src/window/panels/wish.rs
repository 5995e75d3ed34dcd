//! What panels ask of the bench, and what the bench says.

use crate::window::state::news::Said;
use std::path::PathBuf;

use reinwright_core::asked::StockSizes;
use reinwright_core::finding::Part;
use reinwright_core::paper::Paper;
use reinwright_core::shop::came_out::{Measured, Own};
use reinwright_core::shop::cut::{Lying, Sold};
use reinwright_core::shop::family::Family;
use reinwright_core::shop::mend::Mend;
use reinwright_core::shop::shelf::Mark;
use reinwright_core::tongs::document::Document;
use reinwright_core::tongs::jaw::Jaw;
use reinwright_core::tongs::jaw::sketch::KeptJaw;
use reinwright_core::tool::Tool;
use reinwright_core::units::Length;

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
    /// Show this ready design.
    Ready(Box<Document>),
    /// Show this ready tool.
    ReadyTool(Box<Tool>),
    /// Show this family, which can be had again.
    ReadyFamily(Box<Family>),
    /// Show this family of tools, which can be had again.
    ReadyTools(Box<Family<Tool>>),
    /// Show this tool, which no file has.
    BeginTool(Box<Tool>),
    /// Take a way to mend the design.
    Mend(Mend),
    /// Something about own jaws.
    Jaws(JawWish),
    /// The chooser of jaw styles.
    Styles(StyleWish),
    /// What was measured on a half that was forged: work out what it means, and keep it.
    CameOut(Measured),
    /// Forge this design by the smith's own values.
    TakeOwn(Own),
    /// Something about the cut list.
    Cut(CutWish),
    /// Something about the heat sources.
    Heats(HeatWish),
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

/// What the smith asks of the cut list.
#[derive(Debug, Clone, PartialEq)]
pub(crate) enum CutWish {
    /// Back to what is open.
    Leave,
    /// Cut the pairs of this file too.
    Add(PathBuf),
    /// Ask for a file whose pairs are cut too.
    AskDesign,
    /// Ask for the shop's folder.
    AskShop,
    /// Change the rack, and keep it with the shop.
    Rack(RackChange),
    /// Print it on this paper.
    Print(Paper),
}

/// What the smith asks of the heat sources.
#[derive(Debug, Clone, PartialEq)]
pub(crate) enum HeatWish {
    /// Write over what another window has kept.
    KeepMine,
    /// Take what another window has kept.
    TakeTheirs,
    /// Reckon the design's loss to scale from its heats, per cent.
    Scale(f64),
}

/// A change of the rack.
#[derive(Debug, Clone, PartialEq)]
pub(crate) enum RackChange {
    /// These bars lie on it too.
    Lay(Vec<Lying>),
    /// So many of these bars lie on it.
    Count(Lying),
    /// This length can be bought.
    Sell(Sold),
    /// It cannot any more.
    Unsell(Sold),
    /// Cuts are so wide; as the designs have it if nothing is said.
    Kerf(Option<Length>),
    /// So much is cut off a bar's ragged end; as the designs have it if nothing is said.
    Crop(Option<Length>),
    /// Ends from this length on are kept; the usual one if nothing is said.
    Least(Option<Length>),
    /// What is planned was cut.
    TakeOff,
    /// It was not, after all.
    PutBack,
}

/// What the smith asks of the chooser of jaw styles.
#[derive(Debug, Clone)]
pub(crate) enum StyleWish {
    /// Show it, to choose a style for this part of the design.
    Open(Part),
    /// Take the jaw of this pair, and its work, into the design.
    Take(Box<Document>, Part),
    /// Close it.
    Close,
}
