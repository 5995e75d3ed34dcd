//! What is asked where a design or tools are begun.

use std::path::PathBuf;

use clap::Args;

#[derive(Debug, Args)]
pub(in crate::command_line) struct New {
    /// Jaw style, such as flat, v-bit or hollow-bit
    #[arg(long, requires = "work", required_unless_present = "tool")]
    pub(in crate::command_line) jaw: Option<String>,
    /// Stock that the tongs hold, such as "3/8 in flat" or "16 mm square on corners"
    #[arg(
        long,
        allow_hyphen_values = true,
        conflicts_with = "tool",
        required_unless_present = "tool"
    )]
    pub(in crate::command_line) work: Option<String>,
    /// A tool instead of tongs, such as "round punch", drift or cut-off-hardy
    #[arg(long, value_name = "TOOL", conflicts_with = "jaw")]
    pub(in crate::command_line) tool: Option<String>,
    /// Size of the tool: of a punch its hole, of a hardy tool the hardy hole; in proportion to the bar
    /// if not given
    #[arg(long, requires = "tool", allow_hyphen_values = true)]
    pub(in crate::command_line) size: Option<String>,
    /// A family of the tool instead of one: its sizes with commas between, where wanted each with its own
    /// bar, such as "1/4 in, 3/8 in of 1/2 in round"; of a swage its groove, of a fuller its nose, of a
    /// fork its gap, with --size for the hardy hole
    #[arg(
        long,
        requires = "tool",
        value_name = "SIZES",
        allow_hyphen_values = true
    )]
    pub(in crate::command_line) sizes: Option<String>,
    /// Bar that the tongs or the tool are forged from, such as "3/4 in square" or "20 mm round"
    #[arg(long, allow_hyphen_values = true)]
    pub(in crate::command_line) bar: String,
    /// File to write; one that is there already is replaced
    #[arg(long)]
    pub(in crate::command_line) out: PathBuf,
}

/// What is asked of the tools for a pair.
#[derive(Debug, Args)]
pub(in crate::command_line) struct ToolsFor {
    /// Design, or family for the tools of all its sizes
    pub(in crate::command_line) file: PathBuf,
    /// Folder to write to; it is made if it is not there, and files of the same names are replaced
    #[arg(long)]
    pub(in crate::command_line) out: PathBuf,
    /// Of a family: each kind of tool as one family of its sizes, such as all drifts
    #[arg(long)]
    pub(in crate::command_line) as_families: bool,
}

#[derive(Debug, Args)]
pub(in crate::command_line) struct Choose {
    /// Stock that the tongs shall hold, such as "5/8 in hexagon"
    #[arg(allow_hyphen_values = true)]
    pub(in crate::command_line) work: String,
    /// How it is held: end-on, beside, across, behind-its-head or by-its-eye
    #[arg(long, default_value = "end-on")]
    pub(in crate::command_line) way: String,
    /// Bar that the tongs are forged from
    #[arg(long, default_value = "3/4 in square", allow_hyphen_values = true)]
    pub(in crate::command_line) bar: String,
    /// Answer as JSON
    #[arg(long)]
    pub(in crate::command_line) json: bool,
}
