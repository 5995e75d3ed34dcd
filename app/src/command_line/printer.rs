//! The printers of a shop: their check page, and what was measured on it.

use std::path::PathBuf;

use clap::Args;
use reinwright_core::shop::printers::Printer;
use reinwright_core::units::Length;

use super::written::OnPaper;
use super::{Done, Outcome};
use crate::disk::{files, folder};
use crate::jobs::{printer, printing};

/// What is asked about printers.
#[derive(Debug, Args)]
pub(super) struct Asked {
    /// What the printer is called; all that are known are listed if not given
    name: Option<String>,
    /// The shop's folder, with its printers in printers.ron
    #[arg(long, value_name = "FOLDER")]
    shop: Option<PathBuf>,
    /// Write the check page to this PDF
    #[arg(long, value_name = "PDF")]
    check_page: Option<PathBuf>,
    #[command(flatten)]
    paper: OnPaper,
    /// What the bar across the paper measured: that of 100 mm, or in inches that of 4 in
    #[arg(long, value_name = "SIZE", requires = "along")]
    across: Option<String>,
    /// What the bar along the paper measured
    #[arg(long, value_name = "SIZE", requires = "across")]
    along: Option<String>,
    /// The widest rim that the printer leaves blank
    #[arg(long, value_name = "SIZE", requires = "across")]
    rim: Option<String>,
}

pub(super) fn printer(asked: &Asked) -> Outcome {
    let mut text = String::new();
    if let Some(out) = &asked.check_page {
        let paper = asked.paper.parsed()?;
        files::write_whole(out, &printer::check_page(paper, printing::today()))?;
        text += &format!(
            "{}: print at actual size (100 %), measure both bars and note them with --across and --along\n",
            out.display()
        );
    }
    if let Some(measured) = measured(asked)? {
        text += &noted(asked, measured)?;
    }
    if text.is_empty() {
        text = listed(asked)?;
    }
    Ok(Done::said(text))
}

fn size(text: Option<&str>, option: &str) -> Result<Option<Length>, String> {
    let size = text.map(str::parse::<Length>).transpose();
    size.map_err(|error| format!("--{option}: {error}"))
}

/// What was measured, if something was.
fn measured(asked: &Asked) -> Result<Option<Printer>, String> {
    let across = size(asked.across.as_deref(), "across")?;
    let along = size(asked.along.as_deref(), "along")?;
    let rim = size(asked.rim.as_deref(), "rim")?;
    let (Some(across), Some(along)) = (across, along) else {
        return Ok(None);
    };
    let name = asked
        .name
        .clone()
        .ok_or("say first what the printer is called")?;
    Ok(Some(Printer {
        name,
        across,
        along,
        rim,
    }))
}

fn noted(asked: &Asked, printer: Printer) -> Result<String, String> {
    let shop = asked.shop.as_deref();
    let shop = shop.ok_or("--shop: name the folder in which the printers are noted")?;
    let note = printer.note();
    let known = folder::printers(shop)?.with(printer);
    folder::keep_printers(shop, &known.map_err(|error| error.to_string())?)?;
    Ok(format!("{}: noted. {note}\n", shop.display()))
}

fn listed(asked: &Asked) -> Result<String, String> {
    let shop = asked.shop.as_deref();
    let shop = shop.ok_or("--shop: name the folder in which the printers are noted")?;
    let known = folder::printers(shop)?.known;
    let is_asked = |printer: &&Printer| match &asked.name {
        Some(name) => printer.name.to_lowercase() == name.trim().to_lowercase(),
        None => true,
    };
    let lines = known.iter().filter(is_asked);
    let lines: String = lines.map(|printer| printer.note() + "\n").collect();
    if lines.is_empty() {
        return Ok(format!("{}: no such printer is noted\n", shop.display()));
    }
    Ok(lines)
}
