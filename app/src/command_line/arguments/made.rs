//! What is asked of the making and its heats.

use std::path::PathBuf;

use clap::Args;

use crate::command_line::written::OnPaper;

#[derive(Debug, Args)]
pub(in crate::command_line) struct Plan {
    /// Design
    pub(in crate::command_line) file: PathBuf,
    #[command(flatten)]
    pub(in crate::command_line) made: Made,
    /// Heat sources, for which fire or coil heats what; those kept for the window if not given
    #[arg(long, value_name = "FILE")]
    pub(in crate::command_line) sources: Option<PathBuf>,
    /// Reckon the loss to scale from the heats that the sources make
    #[arg(long)]
    pub(in crate::command_line) scale_from_heats: bool,
    /// Folder for a drawing of each operation in its source, as SVG; it is made if it is not there
    #[arg(long, value_name = "DIR", requires = "sources")]
    pub(in crate::command_line) drawings: Option<PathBuf>,
    /// Answer as JSON, with the unit in every key
    #[arg(long)]
    pub(in crate::command_line) json: bool,
}

/// What is asked of a job sheet.
#[derive(Debug, Args)]
pub(in crate::command_line) struct JobSheet {
    /// Design or tool, or a family for the job sheets of all its sizes one behind the other
    pub(in crate::command_line) file: PathBuf,
    /// PDF to write; one that is there already is replaced
    #[arg(long)]
    pub(in crate::command_line) out: PathBuf,
    #[command(flatten)]
    pub(in crate::command_line) paper: OnPaper,
    /// Folder to write each stage to as SVG besides; it is made if it is not there
    #[arg(long, value_name = "FOLDER")]
    pub(in crate::command_line) stages: Option<PathBuf>,
    /// Heat sources, for which fire or coil heats what; those kept for the window if not given
    #[arg(long, value_name = "FILE")]
    pub(in crate::command_line) sources: Option<PathBuf>,
    #[command(flatten)]
    pub(in crate::command_line) made: Made,
}

#[derive(Debug, Args)]
pub(in crate::command_line) struct Sources {
    /// File to write; one that is there already is replaced
    #[arg(long)]
    pub(in crate::command_line) out: PathBuf,
}

#[derive(Debug, Args)]
pub(in crate::command_line) struct Coil {
    /// Designs and tools that the coil is to serve; of a family every size
    #[arg(required = true)]
    pub(in crate::command_line) files: Vec<PathBuf>,
    /// Heat sources, for the machine and the clearance; those kept for the window if not given
    #[arg(long, value_name = "FILE")]
    pub(in crate::command_line) sources: Option<PathBuf>,
    /// Answer as JSON, with the unit in every key
    #[arg(long)]
    pub(in crate::command_line) json: bool,
}

/// How a pair is made.
#[derive(Debug, Args)]
pub(in crate::command_line) struct Made {
    /// Procedure: three-shoulders, reins-first, round-flattened, jaw-first, welded-rein or
    /// flat-twist, of a tool cut-first or on-the-bar; the first that suits if not given
    #[arg(long, value_name = "NAME", allow_hyphen_values = true)]
    pub(in crate::command_line) procedure: Option<String>,
    /// An operation to leave out, by its name in plan --json, such as "hammer it eight-sided"
    #[arg(long, value_name = "OPERATION", allow_hyphen_values = true)]
    pub(in crate::command_line) without: Vec<String>,
    /// Two operations, such as "make the hole, rough out the jaw": the first is done just before the
    /// second
    #[arg(long, value_name = "OPERATIONS", allow_hyphen_values = true)]
    pub(in crate::command_line) before: Vec<String>,
    /// A set-down on the side across from the usual one, such as "set down the rein"
    #[arg(long, value_name = "OPERATION", allow_hyphen_values = true)]
    pub(in crate::command_line) across: Vec<String>,
}
