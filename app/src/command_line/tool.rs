//! The jobs for a tool.

use std::path::{Path, PathBuf};

use clap::Args;
use reinwright_core::asked::{self, parse_bar};
use reinwright_core::draw::{self, DrawOptions};
use reinwright_core::finding::{Finding, Severity};
use reinwright_core::forge;
use reinwright_core::paper::{Drawing, Paper, ink};
use reinwright_core::shop::mend::tool_ways;
use reinwright_core::shop::{ToolAnswers, family as families};
use reinwright_core::tongs::document::Document;
use reinwright_core::tool::{self, NoStyle, Tool, ToolKind};
use reinwright_core::units::Length;

use super::arguments::{self, New};
use super::{Done, Outcome, Places, balance, findings, heats, plan};
use crate::disk::files;
use crate::jobs::{job_sheet, pair_tools, printing};

/// Whether a file is a tool.
///
/// # Errors
/// One sentence when it cannot be read.
pub(super) fn is_tool(path: &Path) -> Result<bool, String> {
    Ok(tool::is_tool(&files::bytes(path)?))
}

/// Opens the tool that a job is about.
fn opened(path: &Path) -> Result<Tool, String> {
    tool::read(&files::bytes(path)?).map_err(|error| format!("{}: {error}", path.display()))
}

/// A tool of a size in proportion to its bar.
pub(super) fn begin(wanted: &New, kind: &str) -> Outcome {
    let bar = parse_bar(&wanted.bar);
    let bar = bar.map_err(|error: asked::StockError| format!("--bar: {error}"))?;
    let kind: ToolKind = kind
        .parse()
        .map_err(|no: NoStyle| format!("--tool: {no}"))?;
    let size = match &wanted.size {
        None => kind.usual_size(&bar),
        Some(text) => text
            .parse::<Length>()
            .map_err(|error| format!("--size: {error}"))?,
    };
    let tool = Tool::starting(kind, size, bar);
    tool::check_limits(&tool).map_err(|error| format!("--size: {error}"))?;
    files::write_whole(&wanted.out, tool::write(&tool).as_bytes())?;
    let found = ToolAnswers::to(&tool).findings.into_iter();
    let against: Vec<Finding> = found.filter(|own| own.severity >= Severity::Mend).collect();
    let against = if against.is_empty() {
        String::new()
    } else {
        findings::listed(&against)
    };
    Ok(Done::said(format!(
        "{}: {}\n{}\n{against}",
        wanted.out.display(),
        tool.name,
        kind.about()
    )))
}

/// What stands against a tool.
pub(super) fn noticed(wanted: &arguments::Loaded) -> Outcome {
    let tool = opened(&wanted.asked.file)?;
    let answers = ToolAnswers::to(&tool);
    let ways = tool_ways(&tool, &answers);
    findings::told_with_mends(&answers.findings, (&ways, tool.units), wanted)
}

/// How much bar a tool takes, and where it is marked.
pub(super) fn balanced(asked: &arguments::Asked) -> Outcome {
    let tool = opened(&asked.file)?;
    let answers = ToolAnswers::to(&tool);
    balance::of_tool((&tool, &answers), asked)
}

/// How a tool is made.
pub(super) fn planned(wanted: &arguments::Plan, places: &Places) -> Outcome {
    let mut tool = opened(&wanted.file)?;
    let mut answers = ToolAnswers::to(&tool);
    if wanted.scale_from_heats
        && let Some(asked) = heats::asked(wanted.sources.as_deref(), places)?
    {
        let plan = plan::tool_planned(&tool, &answers, &wanted.made)?;
        tool.allowances.scale = heats::scale_of(tool.bar.steel, &plan, &asked);
        answers = ToolAnswers::to(&tool);
    }
    plan::of_tool((&tool, &answers), wanted, places)
}

/// The templates of a tool as PDF.
pub(super) fn template(wanted: &arguments::Template) -> Outcome {
    let paper = Paper::parse(&wanted.paper).map_err(|error| format!("--paper: {error}"))?;
    let tool = opened(&wanted.file)?;
    files::spare(&wanted.file, &wanted.out).map_err(|error| format!("--out: {error}"))?;
    let what = wanted.printed.what()?;
    let template = printing::Template::of_tool(&tool, &what, printing::today())
        .on(wanted.printed.printer()?);
    let pdf = template.pdf(paper, arguments::consent(wanted.all))?;
    files::write_whole(&wanted.out, &pdf)?;
    let lacking = [&template.without_bar, &template.without_letters];
    let lacking: String = lacking
        .into_iter()
        .flatten()
        .map(|why| format!("{why}\n"))
        .collect();
    Ok(Done::said(format!(
        "{}{lacking}{}: print at actual size (100 %), then measure the check bars\n",
        stopped(&tool),
        wanted.out.display()
    )))
}

/// A line that says what stands against making the tool; nothing when nothing does.
fn stopped(tool: &Tool) -> String {
    let stop = printing::stop(&ToolAnswers::to(tool).findings);
    stop.map_or_else(String::new, |stop| format!("{stop}\n"))
}

/// The job sheet of a tool.
pub(super) fn sheet(asked: &super::job_sheet::Asked, places: &Places) -> Outcome {
    let paper = Paper::parse(&asked.paper).map_err(|error| format!("--paper: {error}"))?;
    let tool = opened(&asked.file)?;
    files::spare(&asked.file, &asked.out).map_err(|error| format!("--out: {error}"))?;
    let answers = ToolAnswers::to(&tool);
    let plan = plan::tool_planned(&tool, &answers, &asked.made)?;
    let heats = heats::asked(asked.sources.as_deref(), places)?;
    let shop = heats.as_ref().map(|own| &own.shop);
    let pdf = job_sheet::tool_pdf(&tool, (&answers, &plan), shop, paper, printing::today());
    files::write_whole(&asked.out, &pdf)?;
    let name = plan.procedure.name();
    let mut text = format!("{}: job sheet, {name}\n", asked.out.display());
    for lost in heats.iter().flat_map(heats::Asked::lost) {
        text += &format!("not read: {lost}\n");
    }
    if let Some(folder) = &asked.stages {
        let stages = job_sheet::tool_stages(&tool, &answers, &plan);
        files::make_folder(folder).map_err(|error| format!("--stages: {error}"))?;
        for (name, svg) in &stages {
            files::write_whole(&folder.join(name), svg.as_bytes())?;
        }
        text += &format!("{}: {} stages\n", folder.display(), stages.len());
    }
    Ok(Done::said(text))
}

/// A drawing of a tool as SVG.
pub(super) fn drawing(wanted: &arguments::Drawing) -> Outcome {
    let tool = opened(&wanted.file)?;
    files::spare(&wanted.file, &wanted.out).map_err(|error| format!("--out: {error}"))?;
    let drawing = wanted.letters.of(drawn(&tool, wanted)?);
    let svg = ink::svg(&drawing, &tool.name);
    files::write_whole(&wanted.out, svg.as_bytes())?;
    Ok(Done::said(format!(
        "{}: one unit is one millimetre\n",
        wanted.out.display()
    )))
}

fn drawn(tool: &Tool, wanted: &arguments::Drawing) -> Result<Drawing, String> {
    /// Size of the lettering along the bar, mm.
    const BAR_TEXT: f64 = 3.5;
    let answers = ToolAnswers::to(tool);
    match wanted.of {
        arguments::DrawingOf::Pair | arguments::DrawingOf::Half => {
            Ok(draw::tool(tool, &answers.model, &DrawOptions::default()))
        }
        arguments::DrawingOf::Bar => {
            answers.balance.trouble().map_or(Ok(()), Err)?;
            Ok(forge::bar(
                (&tool.bar, tool.units),
                &answers.balance,
                BAR_TEXT,
            ))
        }
        arguments::DrawingOf::Stage => {
            let plan = plan::tool_planned(tool, &answers, &wanted.made)?;
            let last = plan.stages.len() - 1;
            if wanted.stage > last {
                return Err(format!(
                    "--stage: there is no stage {}: give one from 0, the bar, to {last}",
                    wanted.stage
                ));
            }
            Ok(draw::stage(
                &answers.model,
                &plan,
                wanted.stage,
                tool.units.show(),
            ))
        }
        arguments::DrawingOf::Pattern => {
            Err("--of: a tool has no pattern: give pair for its views, stage or bar".to_owned())
        }
    }
}

/// What is asked of the tools for a pair.
#[derive(Debug, Args)]
pub(super) struct ToolsFor {
    /// Design, or family for the tools of all its sizes
    file: PathBuf,
    /// Folder to write to; it is made if it is not there, and files of the same names are replaced
    #[arg(long)]
    out: PathBuf,
}

/// Writes the tools that make a pair, or all sizes of a family, each once.
pub(super) fn all_for(asked: &ToolsFor) -> Outcome {
    let tools = pair_tools::of_all(&pairs(&asked.file)?);
    if tools.is_empty() {
        return Err(format!(
            "{}: its hole is drilled and its heads are flat, so that no tool of its own makes it: choose a punched hole or a round head",
            asked.file.display()
        ));
    }
    files::make_folder(&asked.out).map_err(|error| format!("--out: {error}"))?;
    let tools: Vec<(PathBuf, Tool)> = tools
        .into_iter()
        .map(|(name, tool)| (asked.out.join(format!("{name}.ron")), tool))
        .collect();
    // Nothing is written where anything would be lost: these names are not the smith's own.
    for (path, tool) in &tools {
        spare_other(path, tool)?;
    }
    let mut text = String::new();
    for (path, tool) in tools {
        files::write_whole(&path, tool::write(&tool).as_bytes())?;
        text += &format!("{}: {}\n", path.display(), tool.name);
    }
    Ok(Done::said(text))
}

/// Refuses to write a tool over anything but the very same.
fn spare_other(path: &Path, tool: &Tool) -> Result<(), String> {
    let there = path.exists() && files::bytes(path)? != tool::write(tool).as_bytes();
    if there {
        return Err(format!(
            "--out: {} is there already and is not the same: choose another folder, or take it away first",
            path.display()
        ));
    }
    Ok(())
}

/// The pairs that a file is of: the one, or all sizes of a family.
fn pairs(path: &Path) -> Result<Vec<Document>, String> {
    let bytes = files::bytes(path)?;
    if !families::is_family(&bytes) {
        return Ok(vec![super::design(path)?]);
    }
    let opened = families::open(&bytes).map_err(|error| format!("{}: {error}", path.display()))?;
    let sizes = 0..opened.family.sizes.len();
    let all = sizes.filter_map(|at| opened.family.answer(at).map(|answer| answer.document));
    Ok(all.collect())
}
