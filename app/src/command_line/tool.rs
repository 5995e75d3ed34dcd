//! The jobs for a tool.

use std::path::{Path, PathBuf};

use reinwright_core::asked::{self, Bar, LimitError, parse_bar};
use reinwright_core::draw::{self, DrawOptions};
use reinwright_core::finding::{Finding, Severity};
use reinwright_core::forge;
use reinwright_core::paper::{Drawing, ink};
use reinwright_core::shop::ToolAnswers;
use reinwright_core::shop::family::{self as families, Family, Size};
use reinwright_core::shop::mend::tool_ways;
use reinwright_core::tongs::document::Document;
use reinwright_core::tool::{self, NoStyle, Tool, ToolKind};
use reinwright_core::units::Length;

use super::arguments::{self, New};
use super::{Done, Outcome, Places, balance, findings, heats, plan, written};
use crate::disk::files;
use crate::jobs::pair_tools::{self, Kept};
use crate::jobs::{job_sheet, printing};

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
    if let Some(sizes) = &wanted.sizes {
        return begin_family(wanted, (kind, bar), sizes);
    }
    let size = match &wanted.size {
        None => kind.usual_size(&bar),
        Some(text) => text
            .parse::<Length>()
            .map_err(|error| format!("--size: {error}"))?,
    };
    let tool = Tool::starting(kind, size, bar);
    tool::check_limits(&tool).map_err(|error| blamed(&error, (kind, bar)))?;
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
    let paper = wanted.paper.parsed()?;
    let tool = opened(&wanted.file)?;
    written::keep(&wanted.file, &wanted.out)?;
    let what = wanted.printed.what()?;
    let template = printing::Template::of_tool(&tool, &what, printing::today())
        .on(wanted.printed.printer()?);
    let pdf = template.pdf(paper, wanted.pages.consent())?;
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
pub(super) fn sheet(asked: &super::arguments::JobSheet, places: &Places) -> Outcome {
    let paper = asked.paper.parsed()?;
    let tool = opened(&asked.file)?;
    written::keep(&asked.file, &asked.out)?;
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
    written::keep(&wanted.file, &wanted.out)?;
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
        arguments::DrawingOf::Stage => plan::tool_stage((tool, &answers), wanted),
        arguments::DrawingOf::Pattern => {
            Err("--of: a tool has no pattern: give pair for its views, stage or bar".to_owned())
        }
    }
}

/// Which option brings a value out of its limits: the bar, where it does so with a size that suits it.
fn blamed(error: &LimitError, (kind, bar): (ToolKind, Bar)) -> String {
    let suited = Tool::starting(kind, kind.usual_size(&bar), bar);
    let option = match tool::check_limits(&suited) {
        Ok(()) => "--size",
        Err(_) => "--bar",
    };
    let what = suited.field(&error.path).map_or_else(
        || error.path.clone(),
        |field| field.full_name().to_lowercase(),
    );
    let (found, least, most) = (&error.found, &error.least, &error.most);
    format!("{option}: {what} comes to {found}, it may be from {least} to {most}: give another one")
}

/// A tool in several sizes, each in proportion to the first.
fn begin_family(wanted: &New, (kind, bar): (ToolKind, Bar), sizes: &str) -> Outcome {
    let at = |error: String| format!("--sizes: {error}");
    let sizes = sizes
        .split(',')
        .map(sized)
        .collect::<Result<Vec<_>, _>>()
        .map_err(at)?;
    // Splitting gives one piece at least.
    let ((first, its_bar), (last, _)) = (sizes[0], sizes[sizes.len() - 1]);
    let bar_of_first = its_bar.unwrap_or(bar);
    // A hardy tool that its hole does not lead is as the hole has it, in all sizes.
    let base = match &wanted.size {
        Some(hole) if !kind.begins_by_leading() => {
            let hole = hole.parse::<Length>();
            let hole = hole.map_err(|error| format!("--size: {error}"))?;
            Tool::starting(kind, hole, bar_of_first)
        }
        Some(_) => {
            return Err(
                "--size: the sizes are in --sizes; of a swage, a fuller or a fork --size is the hardy hole"
                    .to_owned(),
            );
        }
        None if kind.begins_by_leading() => Tool::starting(kind, first, bar_of_first),
        None => Tool::starting(kind, kind.usual_size(&bar_of_first), bar_of_first),
    };
    let mut family = Family::from_design(&base);
    family.name = format!("{}, {first} to {last}", asked::capital(kind.name()));
    family.sizes.clear();
    for (size, own) in sizes {
        let bar = own.unwrap_or(bar);
        let steel = base.bar.steel;
        let bar = Bar { steel, ..bar };
        let size = Size {
            bar: (bar != base.bar).then_some(bar),
            ..Size::new(size)
        };
        family.add(size).map_err(|error| at(error.to_string()))?;
    }
    let text = families::whole_text(&family).map_err(|error| at(error.to_string()))?;
    files::write_whole(&wanted.out, text.as_bytes())?;
    Ok(Done::said(format!(
        "{}: {}, sizes: {}\n{}\n",
        wanted.out.display(),
        family.name,
        family.sizes.len(),
        kind.about()
    )))
}

/// A size with its own bar or without: `3/8 in of 1/2 in round`.
fn sized(text: &str) -> Result<(Length, Option<Bar>), String> {
    let (size, bar) = match text.split_once(" of ") {
        Some((size, bar)) => (size, Some(bar)),
        None => (text, None),
    };
    let size = size.parse::<Length>().map_err(|error| error.to_string())?;
    let bar = bar.map(parse_bar).transpose();
    Ok((size, bar.map_err(|error| error.to_string())?))
}

/// Writes the tools that make a pair, or all sizes of a family, each once.
pub(super) fn all_for(asked: &arguments::ToolsFor) -> Outcome {
    let (name, pairs) = pairs(&asked.file)?;
    let tools = if asked.as_families {
        pair_tools::in_families(&name, &pairs)
    } else {
        let one = |(file, tool): pair_tools::Named| (file, Kept::One(tool));
        pair_tools::of_all(&pairs).into_iter().map(one).collect()
    };
    if tools.is_empty() {
        return Err(format!(
            "{}: its hole is drilled and its heads are flat, so that no tool of its own makes it: choose a punched hole or a round head",
            asked.file.display()
        ));
    }
    files::make_folder(&asked.out).map_err(|error| format!("--out: {error}"))?;
    let tools: Vec<Written> = tools
        .into_iter()
        .map(|(name, kept)| Written::of(asked.out.join(format!("{name}.ron")), &kept))
        .collect();
    // Nothing is written where anything would be lost: these names are not the smith's own.
    tools.iter().try_for_each(Written::spare_other)?;
    let mut said = String::new();
    for own in tools {
        files::write_whole(&own.path, own.text.as_bytes())?;
        said += &format!("{}: {}\n", own.path.display(), own.about);
    }
    Ok(Done::said(said))
}

/// A file of tools that is to be written, and what is said of it.
struct Written {
    path: PathBuf,
    text: String,
    about: String,
}

impl Written {
    fn of(path: PathBuf, kept: &Kept) -> Self {
        let (text, about) = match kept {
            Kept::One(tool) => (tool::write(tool), tool.name.clone()),
            Kept::Sizes(family) => {
                let count = family.sizes.len();
                let about = format!("{}, {count} sizes", family.name);
                (families::write(family), about)
            }
        };
        Self { path, text, about }
    }

    /// Refuses to write over anything but the very same.
    fn spare_other(&self) -> Result<(), String> {
        let path = &self.path;
        if path.exists() && files::bytes(path)? != self.text.as_bytes() {
            return Err(format!(
                "--out: {} is there already and is not the same: choose another folder, or take it away first",
                path.display()
            ));
        }
        Ok(())
    }
}

/// The pairs that a file is of: the one, or all sizes of a family; and what they are called together.
fn pairs(path: &Path) -> Result<(String, Vec<Document>), String> {
    let bytes = files::bytes(path)?;
    if !families::is_family(&bytes) {
        let design = super::design(path)?;
        return Ok((design.name.clone(), vec![design]));
    }
    let opened = families::open(&bytes).map_err(|error| format!("{}: {error}", path.display()))?;
    let family = opened.family;
    let all = family.sizes.iter().map(|size| family.made(size).document);
    Ok((family.name.clone(), all.collect()))
}
