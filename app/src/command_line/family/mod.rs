//! Families: every size answered, and the whole set written.

mod balance;
mod findings;
mod fit;
mod write;

use std::path::Path;

use reinwright_core::asked::StockSizes;
use reinwright_core::finding::Severity;
use reinwright_core::shop::family::{
    self, Family, InSizes, OfSize, Opened, SizeAnswer, ToolSizeAnswer, coverage,
};
use reinwright_core::tongs::document::{self, Document};
use reinwright_core::tool::{self, Tool};
use serde::Serialize;

use super::{Done, Outcome, balance as one_balance, findings as one_findings};
use crate::disk::files;
use crate::jobs::set_printing::in_set::InSet;

pub(super) use balance::balance;
use findings::gaps;
pub(super) use findings::{GapAnswer, findings};
pub(super) use fit::fit;
pub(super) use write::write;

/// Does a job for a family if the file is one, and else for a design.
pub(super) fn or<Asked>(
    file: &Path,
    asked: &Asked,
    design: fn(&Asked) -> Outcome,
    family: impl FnOnce(&Opened, &Asked) -> Outcome,
) -> Outcome {
    let bytes = files::bytes(file)?;
    if family::is_family(&bytes) {
        family(&opened(file, &bytes)?, asked)
    } else {
        design(asked)
    }
}

/// What a set says for itself on the command line.
pub(super) trait Told: InSet {
    /// The account of a bar as JSON.
    type Account: Serialize;

    /// The account of a size for which a bar can be reckoned.
    fn account(answer: &Self::Answer) -> Self::Account;

    /// The same in words.
    fn account_table(answer: &Self::Answer) -> String;

    /// The stock between what the sizes hold that none of them holds; `None` of what holds none.
    fn gaps(answers: &[Self::Answer], stock: &StockSizes) -> Option<Vec<GapAnswer>>;

    /// One size as the text of a file of its own.
    fn text(&self) -> String;

    /// What a size by itself is called where several are counted.
    fn counted(count: usize) -> String;
}

impl Told for Document {
    type Account = one_balance::Answer;

    fn account(of: &SizeAnswer) -> one_balance::Answer {
        one_balance::Answer::new(&of.document, (&of.balance, of.model.mass_kg()))
    }

    fn account_table(of: &SizeAnswer) -> String {
        one_balance::Table::of(&of.document, (&of.balance, of.model.mass_kg()))
    }

    fn gaps(answers: &[SizeAnswer], stock: &StockSizes) -> Option<Vec<GapAnswer>> {
        let units = answers.first()?.document.units;
        Some(gaps(&coverage(answers, units, stock)))
    }

    fn text(&self) -> String {
        document::write(self)
    }

    fn counted(count: usize) -> String {
        let several = if count == 1 { "" } else { "s" };
        format!("{count} design{several}")
    }
}

impl Told for Tool {
    type Account = one_balance::ToolAnswer;

    fn account(of: &ToolSizeAnswer) -> one_balance::ToolAnswer {
        one_balance::ToolAnswer::new(&of.document, of.balance())
    }

    fn account_table(of: &ToolSizeAnswer) -> String {
        one_balance::Table::of_tool(&of.document, of.balance())
    }

    fn gaps(_answers: &[ToolSizeAnswer], _stock: &StockSizes) -> Option<Vec<GapAnswer>> {
        None
    }

    fn text(&self) -> String {
        tool::write(self)
    }

    fn counted(count: usize) -> String {
        let several = if count == 1 { "" } else { "s" };
        format!("{count} tool{several}")
    }
}

/// Whether a file is a family, of pairs or of tools.
///
/// # Errors
/// One sentence when it cannot be read.
pub(super) fn is(path: &Path) -> Result<bool, String> {
    let bytes = files::bytes(path)?;
    Ok(family::is_family(&bytes) || family::is_tool_family(&bytes))
}

/// Whether a file is a family of tools.
///
/// # Errors
/// One sentence when it cannot be read.
pub(super) fn is_of_tools(path: &Path) -> Result<bool, String> {
    Ok(family::is_tool_family(&files::bytes(path)?))
}

/// Opens a family of tools.
pub(super) fn of_tools(path: &Path) -> Result<Opened<Tool>, String> {
    opened(path, &files::bytes(path)?)
}

fn opened<D: InSizes>(path: &Path, bytes: &[u8]) -> Result<Opened<D>, String> {
    family::open_of(bytes).map_err(|error| format!("{}: {error}", path.display()))
}

/// A family without the sizes that are damaged: numbers reckoned from what had to be guessed help
/// nobody.
fn sound<'a, D: InSizes>(path: &Path, opened: &'a Opened<D>) -> Result<&'a Family<D>, String> {
    /// So many of the things that are wrong are told.
    const TOLD: usize = 3;
    opened.sound.as_ref().ok_or_else(|| {
        let told: Vec<&str> = opened.lost.iter().take(TOLD).map(String::as_str).collect();
        let more = match opened.lost.len().saturating_sub(TOLD) {
            0 => String::new(),
            more => format!("; and {more} more"),
        };
        format!(
            "{}: {}{more}: mend the file first, reinwright findings tells all that is wrong",
            path.display(),
            told.join("; ")
        )
    })
}

/// What could not be read, a line each.
fn lost<D: InSizes>(opened: &Opened<D>) -> String {
    let lost = opened.lost.iter();
    lost.map(|lost| format!("Stop: file: {lost}\n")).collect()
}

/// Something that could not be read is a Stop.
fn worst_lost<D: InSizes>(opened: &Opened<D>) -> Option<Severity> {
    (!opened.lost.is_empty()).then_some(Severity::Stop)
}

/// An answer for the sizes that could be read.
fn partly<D: InSizes>(opened: &Opened<D>, text: String) -> Done {
    let status = one_findings::status(worst_lost(opened));
    Done { text, status }
}

#[derive(Serialize)]
struct Sizes<'a, T: Serialize> {
    family: &'a str,
    sizes: Vec<Sized<'a, T>>,
}

#[derive(Serialize)]
struct Sized<'a, T: Serialize> {
    size: &'a str,
    #[serde(flatten)]
    answer: T,
}

fn each<'a, D: InSizes, T: Serialize>(
    family: &'a Family<D>,
    answers: &'a [D::Answer],
    answer: impl Fn(&'a D::Answer) -> T,
) -> Sizes<'a, T> {
    let sized = |of: &'a D::Answer| Sized {
        size: of.label(),
        answer: answer(of),
    };
    Sizes {
        family: &family.name,
        sizes: answers.iter().map(sized).collect(),
    }
}
