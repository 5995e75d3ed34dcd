//! What can be asked on the command line.

mod asked;
mod begun;
mod made;
mod printed;

use std::path::PathBuf;

use clap::{Parser, Subcommand};

pub(super) use asked::{Asked, Loaded, Marked, Shelf};
pub(super) use begun::{Choose, New, ToolsFor};
pub(super) use made::{Coil, JobSheet, Made, Plan, Sources};
pub(super) use printed::{Drawing, DrawingOf, Family, Half, Piece, Template};

/// Draw a pair of tongs, balance it to the bar, print it full size.
#[derive(Debug, Parser)]
#[command(name = "reinwright", version, args_conflicts_with_subcommands = true)]
pub(super) struct Arguments {
    /// Design to open in the window
    pub(super) file: Option<PathBuf>,
    #[command(subcommand)]
    pub(super) job: Option<Job>,
}

#[derive(Debug, Subcommand)]
pub(super) enum Job {
    /// Write a whole design in proportion to the work and the bar, or a tool in proportion to its bar
    New(New),
    /// Write the tools that make a pair: punch, drift, rivet set, and the swage for round bits
    #[command(name = "tools-for")]
    ToolsFor(ToolsFor),
    /// Which jaw styles suit some work, which would be unsafe, and why
    Choose(Choose),
    /// How much of which bar, and where to mark it
    Balance(Asked),
    /// What work the pair holds and how, what a squeeze does to it
    Fit(Loaded),
    /// What you should know: exit status 0 for nothing above a Note, 1 for Mend, 2 for Stop
    Findings(Loaded),
    /// How the pair is made: operations in order, what the steel is before and after each
    Plan(Plan),
    /// The job sheet as PDF: its first page alone is enough at the anvil
    #[command(name = "job-sheet")]
    Sheet(JobSheet),
    /// Write a file of heat sources to begin with: a forge, a fire and coils, to be changed to yours
    Sources(Sources),
    /// Which coil would heat the most of some designs, and whether the machine drives it
    Coil(Coil),
    /// Full-size templates as PDF: finished half, pair as set, bar mark-out
    Template(Template),
    /// The pair, its half or its bar as SVG, one unit to the millimetre
    Drawing(Drawing),
    /// All sizes of a family: one PDF of the set, drawings as SVG, each size as its own design
    Family(Family),
    /// The printers of a shop: their check page, and what was measured on it
    Printer(super::printer::Asked),
    /// The designs and families of a folder, and which of them hold some stock
    Shelf(Shelf),
    /// Which lengths to cut from which bars for so many pairs: fewest bars, most useful offcut
    Cut(super::cut::Asked),
    /// What came out of the bar: your own scale and margin from a half that you measured
    CameOut(super::came_out::Asked),
}
