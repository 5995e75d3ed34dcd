//! The job sheet of a design.

use std::path::PathBuf;

use clap::Args;
use reinwright_core::paper::Paper;
use reinwright_core::shop::Answers;

use super::{Done, Outcome, Places, arguments, design, heats, plan};
use crate::disk::files;
use crate::jobs::{job_sheet, printing};

/// What is asked of a job sheet.
#[derive(Debug, Args)]
pub(super) struct Asked {
    /// Design
    pub(super) file: PathBuf,
    /// PDF to write; one that is there already is replaced
    #[arg(long)]
    pub(super) out: PathBuf,
    /// Paper: a4, a3, letter, legal, tabloid, or a size such as "300 x 500 mm"
    #[arg(long, default_value = "a4")]
    pub(super) paper: String,
    /// Folder to write each stage to as SVG besides; it is made if it is not there
    #[arg(long, value_name = "FOLDER")]
    pub(super) stages: Option<PathBuf>,
    /// Heat sources, for which fire or coil heats what; those kept for the window if not given
    #[arg(long, value_name = "FILE")]
    pub(super) sources: Option<PathBuf>,
    #[command(flatten)]
    pub(super) made: arguments::Made,
}

pub(super) fn run(asked: &Asked, places: &Places) -> Outcome {
    let paper = Paper::parse(&asked.paper).map_err(|error| format!("--paper: {error}"))?;
    let design = design(&asked.file)?;
    files::spare(&asked.file, &asked.out).map_err(|error| format!("--out: {error}"))?;
    let answers = Answers::to(&design);
    let known = (&answers.model, &answers.balance);
    let plan = plan::planned(&design, known, &asked.made)?;
    let heats = heats::asked(asked.sources.as_deref(), places)?;
    let shop = heats.as_ref().map(|own| &own.shop);
    let today = printing::today();
    let pdf = job_sheet::pdf(&design, (&answers, &plan), shop, paper, today);
    files::write_whole(&asked.out, &pdf)?;
    let mut text = format!(
        "{}: job sheet, {}\n",
        asked.out.display(),
        plan.procedure.name()
    );
    for lost in heats.iter().flat_map(heats::Asked::lost) {
        text += &format!("not read: {lost}\n");
    }
    if let Some(folder) = &asked.stages {
        let stages = job_sheet::stages(&design, &answers, &plan);
        files::make_folder(folder).map_err(|error| format!("--stages: {error}"))?;
        for (name, svg) in &stages {
            files::write_whole(&folder.join(name), svg.as_bytes())?;
        }
        text += &format!("{}: {} stages\n", folder.display(), stages.len());
    }
    Ok(Done::said(text))
}
