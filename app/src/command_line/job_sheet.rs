//! The job sheet of a design, and those of all sizes of a family.

use reinwright_core::heats::Sources;
use reinwright_core::paper::{Page, Paper};
use reinwright_core::shop::{Answers, ToolAnswers, shelf};

use super::{Done, Outcome, Places, arguments, design, heats, plan, written};
use crate::disk::files;
use crate::jobs::{cut_wanted, job_sheet, pages, printing};

/// The job sheets of a family.
pub(super) fn of_family(asked: &arguments::JobSheet, places: &Places) -> Outcome {
    let paper = asked.paper.parsed()?;
    if asked.stages.is_some() {
        return Err("--stages: stages are of one size: write the sizes with reinwright family, then ask for one of them".to_owned());
    }
    written::keep(&asked.file, &asked.out)?;
    let heats = heats::asked(asked.sources.as_deref(), places)?;
    let shop = heats.as_ref().map(|own| &own.shop);
    let named = |what: String| format!("{}: {what}", asked.file.display());
    let filed = shelf::read(&files::bytes(&asked.file)?);
    let filed = filed.map_err(|error| named(error.to_string()))?;
    let called = filed.name().to_owned();
    let sizes = cut_wanted::designs(filed).map_err(named)?;
    let mut all = Vec::new();
    for size in &sizes {
        all.extend(pages_of(size, (asked, shop), paper)?);
        if all.len() > pages::MOST {
            return Err(named(format!(
                "its job sheets take more than {} pages: print them size by size",
                pages::MOST
            )));
        }
    }
    let pdf = job_sheet::bound(&called, &all, printing::today());
    files::write_whole(&asked.out, &pdf)?;
    let mut text = format!(
        "{}: job sheets of {} sizes, {} pages\n",
        asked.out.display(),
        sizes.len(),
        all.len()
    );
    for lost in heats.iter().flat_map(heats::Asked::lost) {
        text += &format!("not read: {lost}\n");
    }
    Ok(Done::said(text))
}

/// The pages of one size.
fn pages_of(
    size: &cut_wanted::Made,
    (asked, shop): (&arguments::JobSheet, Option<&Sources>),
    paper: Paper,
) -> Result<Vec<Page>, String> {
    match size {
        cut_wanted::Made::Pair(design) => {
            let answers = Answers::to(design);
            let known = (&answers.model, &answers.balance);
            let plan = plan::planned(design, known, &asked.made)?;
            Ok(job_sheet::pages(design, (&answers, &plan), shop, paper))
        }
        cut_wanted::Made::Tool(tool) => {
            let answers = ToolAnswers::to(tool);
            let plan = plan::tool_planned(tool, &answers, &asked.made)?;
            Ok(job_sheet::tool_pages(tool, (&answers, &plan), shop, paper))
        }
    }
}

pub(super) fn run(asked: &arguments::JobSheet, places: &Places) -> Outcome {
    let paper = asked.paper.parsed()?;
    let design = design(&asked.file)?;
    written::keep(&asked.file, &asked.out)?;
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
