//! What is asked wherever something is written: on which paper, on how much of it, and where.

use std::path::Path;

use clap::Args;
use reinwright_core::paper::Paper;

use crate::disk::files;
use crate::jobs::pages::Consent;

/// On which paper.
#[derive(Debug, Args)]
pub(super) struct OnPaper {
    /// Paper: a4, a3, letter, legal, tabloid, or a size such as "300 x 500 mm"
    #[arg(long, default_value = "a4", allow_hyphen_values = true)]
    paper: String,
}

impl OnPaper {
    /// The paper; an error names the option.
    pub(super) fn parsed(&self) -> Result<Paper, String> {
        Paper::parse(&self.paper).map_err(|error| format!("--paper: {error}"))
    }
}

/// Whether a stack of paper is wanted.
#[derive(Debug, Args)]
pub(super) struct HoweverMany {
    /// Print however many pages it takes; more than 40 are not made without it
    #[arg(long)]
    all: bool,
}

impl HoweverMany {
    /// What is asked with or without `--all`.
    pub(super) fn consent(&self) -> Consent {
        if self.all {
            Consent::All
        } else {
            Consent::Usual
        }
    }
}

/// Keeps a design from being written over by what is made of it; an error names the option.
pub(super) fn keep(design: &Path, out: &Path) -> Result<(), String> {
    files::spare(design, out).map_err(|error| format!("--out: {error}"))
}
