//! What hangs on a shop's shelf, and what of it holds some stock.

use std::path::Path;

use reinwright_core::asked::Units;
use reinwright_core::shop::shelf::{Filed, Held, Mark, Pair, Stock, best_first};
use reinwright_core::tool::Tool;
use serde::Serialize;

use super::arguments::{self, Marked};
use super::{Done, Outcome, json};
use crate::disk::folder::{self, Folder};

/// A pair with where it comes from, and its answer if one was asked for.
struct Entry {
    file: String,
    called: String,
    pair: Pair,
    mark: Option<Mark>,
    held: Option<Held>,
}

#[derive(Serialize)]
struct Answer<'a> {
    asked_for: Option<&'a str>,
    pairs: Vec<PairAnswer<'a>>,
    tools: Vec<ToolAnswer>,
    /// Files that are no design or family, or not whole.
    not_read: Vec<NotRead>,
}

#[derive(Serialize)]
struct PairAnswer<'a> {
    file: &'a str,
    name: &'a str,
    size: Option<&'a str>,
    work: String,
    jaw: String,
    mark: Option<&'static str>,
    holds_least_mm: Option<f64>,
    holds_most_mm: Option<f64>,
    #[serde(skip_serializing_if = "Option::is_none")]
    answer: Option<HeldAnswer>,
}

#[derive(Serialize)]
struct HeldAnswer {
    verdict: &'static str,
    message: String,
    heel_open_mm: Option<f64>,
    tip_open_mm: Option<f64>,
    hand_span_mm: Option<f64>,
}

#[derive(Serialize)]
struct ToolAnswer {
    file: String,
    name: String,
    size: Option<String>,
    tool: &'static str,
    bar: String,
    mark: Option<&'static str>,
}

#[derive(Serialize)]
struct NotRead {
    file: String,
    message: String,
}

/// Lists the pairs of a folder; with stock to be held, the best one first.
pub(super) fn run(asked: &arguments::Shelf) -> Outcome {
    let stock = asked.stock.as_deref();
    // Bare numbers are inches on the command line: there is no open design to take units from.
    let stock = stock.map(|text| Stock::parse(text, Units::Inch));
    let stock = stock
        .transpose()
        .map_err(|error| format!("--for: {error}"))?;
    let folder = folder::look_into(&asked.folder)?;
    let mut not_read = Vec::new();
    if let Some(trouble) = &folder.trouble {
        not_read.push(NotRead {
            file: reinwright_core::shop::shelf::MARKS_FILE.to_owned(),
            message: trouble.clone(),
        });
    }
    let mut tools = Vec::new();
    let mut entries = entries(&folder, stock.as_ref(), (&mut tools, &mut not_read));
    if let Some(only) = asked.only {
        let mark = match only {
            Marked::Have => Mark::Have,
            Marked::Want => Mark::Want,
        };
        entries.retain(|entry| entry.mark == Some(mark));
        tools.retain(|own| own.mark == Some(mark.name()));
    }
    let entries = in_order(entries);
    let text = if asked.json {
        json(&Answer {
            asked_for: asked.stock.as_deref(),
            pairs: entries.iter().map(PairAnswer::new).collect(),
            tools,
            not_read,
        })?
    } else {
        listed(&entries, (&tools, &not_read), asked.only)
    };
    Ok(Done::said(text))
}

/// The pairs of a folder; its tools and what cannot be read go beside.
fn entries(
    folder: &Folder,
    stock: Option<&Stock>,
    (tools, not_read): (&mut Vec<ToolAnswer>, &mut Vec<NotRead>),
) -> Vec<Entry> {
    let mut entries = Vec::new();
    for path in &folder.files {
        let file = folder::name(path);
        match folder::read(path) {
            Ok(filed) => {
                not_read.extend(lost(&file, &filed));
                tools.extend(tools_of(folder, &file, &filed));
                entries.extend(pairs(folder, path, &filed, stock));
            }
            Err(message) => not_read.push(NotRead { file, message }),
        }
    }
    entries
}

/// The tools of a file.
fn tools_of(folder: &Folder, file: &str, filed: &Filed) -> Vec<ToolAnswer> {
    let tool = |(at, tool): (usize, Tool)| {
        let size = filed.size(at);
        ToolAnswer {
            mark: folder
                .marks
                .of(file, size.as_deref().unwrap_or_default())
                .map(Mark::name),
            file: file.to_owned(),
            name: filed.name().to_owned(),
            size,
            tool: tool.style_kind().name(),
            bar: format!("{}, {}", tool.bar.stock.words(), tool.bar.steel.name()),
        }
    };
    let all = (0..filed.len()).filter_map(|at| Some((at, filed.tool(at)?)));
    all.map(tool).collect()
}

fn lost(file: &str, filed: &Filed) -> Option<NotRead> {
    let lost = filed.lost();
    (!lost.is_empty()).then(|| NotRead {
        file: file.to_owned(),
        message: lost.join("; "),
    })
}

fn pairs(folder: &Folder, path: &Path, filed: &Filed, stock: Option<&Stock>) -> Vec<Entry> {
    let file = folder::name(path);
    let pair = |pair: Pair| Entry {
        mark: folder
            .marks
            .of(&file, pair.size.as_deref().unwrap_or_default()),
        held: stock.map(|stock| pair.on(stock)),
        file: file.clone(),
        called: filed.name().to_owned(),
        pair,
    };
    (0..filed.len())
        .filter_map(|at| filed.pair(at).map(pair))
        .collect()
}

/// The best first where something was asked for, else as the folder has them.
fn in_order(entries: Vec<Entry>) -> Vec<Entry> {
    let held: Vec<Held> = entries
        .iter()
        .filter_map(|entry| entry.held.clone())
        .collect();
    if held.len() != entries.len() {
        return entries;
    }
    let mut entries: Vec<Option<Entry>> = entries.into_iter().map(Some).collect();
    let places = best_first(&held).into_iter();
    places.filter_map(|at| entries[at].take()).collect()
}

impl<'a> PairAnswer<'a> {
    fn new(entry: &'a Entry) -> Self {
        let range = entry.pair.fit.range.as_ref().ok();
        Self {
            file: &entry.file,
            name: &entry.called,
            size: entry.pair.size.as_deref(),
            work: entry.pair.work(),
            jaw: entry.pair.jaw(),
            mark: entry.mark.map(Mark::name),
            holds_least_mm: range.map(|range| range.least.size_mm),
            holds_most_mm: range.map(|range| range.most.size_mm),
            answer: entry
                .held
                .as_ref()
                .map(|held| HeldAnswer::new(held, entry.pair.document.units)),
        }
    }
}

impl HeldAnswer {
    fn new(held: &Held, units: Units) -> Self {
        let contact = held.contact.as_ref();
        Self {
            verdict: held.verdict().name(),
            message: held.sentence(units),
            heel_open_mm: contact.map(|it| it.heel_open_mm),
            tip_open_mm: contact.map(|it| it.tip_open_mm),
            hand_span_mm: contact.map(|it| it.hand_span_mm),
        }
    }
}

fn listed(
    entries: &[Entry],
    (tools, not_read): (&[ToolAnswer], &[NotRead]),
    only: Option<Marked>,
) -> String {
    let mut text: String = entries.iter().map(line).collect();
    if entries.is_empty() && tools.is_empty() {
        text.push_str(match only {
            Some(_) => "No pair on this shelf is marked so\n",
            None => "There is no design or family in this folder that can be read\n",
        });
    }
    text.extend(tools.iter().map(|own| {
        let size = own.size.as_ref().map(|size| format!(", {size}"));
        let mark = own.mark.map(|mark| format!(" ({mark})"));
        format!(
            "{}{}{}: {}\n  {} from {}\n",
            own.name,
            size.unwrap_or_default(),
            mark.unwrap_or_default(),
            own.file,
            own.tool,
            own.bar
        )
    }));
    text.extend(
        not_read
            .iter()
            .map(|it| format!("{}: {}\n", it.file, it.message)),
    );
    text
}

fn line(entry: &Entry) -> String {
    let Entry {
        file,
        called,
        pair,
        mark,
        held,
    } = entry;
    let units = pair.document.units;
    let size = pair
        .size
        .as_ref()
        .map_or_else(String::new, |size| format!(", {size}"));
    let mark = mark.map_or_else(String::new, |mark| format!(" ({})", mark.name()));
    let held = held
        .as_ref()
        .map_or_else(String::new, |held| format!("\n  {}", held.sentence(units)));
    format!(
        "{called}{size}{mark}: {}{held}\n  {} for {}, {}\n",
        file,
        pair.jaw(),
        pair.work(),
        pair.range(units)
    )
}
