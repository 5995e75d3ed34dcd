//! A whole family written: its PDF, its drawings, each size as a design.

use std::path::Path;

use reinwright_core::finding::Severity;
use reinwright_core::paper::Paper;
use reinwright_core::shop::family::{self, Family, OfSize, Opened, answer_all};
use reinwright_core::tongs::document::Document;
use reinwright_core::tool::Tool;

use super::findings::stock;
use super::{Told, lost, opened, sound, worst_lost};
use crate::command_line::{Done, Outcome, Places, arguments, findings as one_findings, written};
use crate::disk::files;
use crate::jobs::order::{self, OfTheSet, Order};
use crate::jobs::set_printing::{self, Wanted};
use crate::jobs::{printing, watch};

/// Writes the set: one PDF, a folder of SVG files, a folder of designs.
pub(in crate::command_line) fn write(wanted: &arguments::Family, places: &Places) -> Outcome {
    let paper = wanted.paper.parsed()?;
    let bytes = files::bytes(&wanted.file)?;
    if family::is_tool_family(&bytes) {
        written(
            &opened::<Tool>(&wanted.file, &bytes)?,
            wanted,
            (paper, places),
        )
    } else {
        written(
            &opened::<Document>(&wanted.file, &bytes)?,
            wanted,
            (paper, places),
        )
    }
}

fn written<D: Told>(
    opened: &Opened<D>,
    wanted: &arguments::Family,
    (paper, places): (Paper, &Places),
) -> Outcome {
    let family = sound(&wanted.file, opened)?;
    let answers = answer_all(family);
    let printed = Wanted {
        order: order(wanted, paper, answers.len())?,
        day: printing::today(),
        stock: stock(wanted.stock.as_deref(), places)?,
    };
    let watch = &mut watch::to_the_end;
    let pages = set_printing::pages_wanted(family, &answers, &printed, watch);
    pages
        .unwrap_or_default()
        .allow(paper, wanted.pages.consent())?;
    let pdf = set_printing::pdf(family, &answers, &printed, watch);
    let path = wanted
        .out
        .join(set_printing::slug(&family.name))
        .with_extension("pdf");
    files::make_folder(&wanted.out)?;
    files::write_whole(&path, &pdf.unwrap_or_default())?;
    let drawings = write_svgs::<D>((family, &answers), &printed, &wanted.out.join("svg"))?;
    let designs = write_designs::<D>(&wanted.file, &answers, &wanted.out.join("designs"))?;
    let lacking = set_printing::without_letters(family, &answers);
    let lacking = lacking.map_or_else(String::new, |why| why + "\n");
    Ok(Done {
        status: one_findings::status(worst_lost(opened)),
        text: lost(opened)
            + &lacking
            + &format!(
                "{}: print at actual size (100 %), then measure the check bars\n{}: {drawings} drawings, one unit is one millimetre\n{}: {}\n{}",
                path.display(),
                wanted.out.join("svg").display(),
                wanted.out.join("designs").display(),
                D::counted(designs),
                warned(&answers)
            ),
    })
}

/// What is printed of the family.
fn order(wanted: &arguments::Family, paper: Paper, count: usize) -> Result<Order, String> {
    let sizes = wanted.sizes.as_deref();
    let sizes = sizes
        .map(|text| order::parse_sizes(text, count))
        .transpose();
    let sizes = sizes.map_err(|why| format!("--sizes: {why}"))?;
    Ok(Order {
        what: wanted.printed.what()?,
        paper,
        printer: wanted.printed.printer()?,
        pairs_of_each: wanted.pairs,
        of_the_set: match (wanted.templates_only, &sizes) {
            (false, None) => OfTheSet::Printed,
            (true, _) | (false, Some(_)) => OfTheSet::LeftOut,
        },
        sizes,
    })
}

/// Sizes that have something to mend are named, since paper does not show it.
fn warned<A: OfSize>(answers: &[A]) -> String {
    let bad = |answer: &&A| answer.worst().is_some_and(|worst| worst > Severity::Note);
    let names: Vec<&str> = answers.iter().filter(bad).map(|of| of.label()).collect();
    if names.is_empty() {
        return String::new();
    }
    format!(
        "Look at reinwright findings before forging {}\n",
        names.join(", ")
    )
}

fn write_svgs<D: Told>(
    (family, answers): (&Family<D>, &[D::Answer]),
    wanted: &Wanted,
    out: &Path,
) -> Result<usize, String> {
    files::make_folder(out)?;
    let watch = &mut watch::to_the_end;
    let svgs = set_printing::svgs(family, answers, wanted, watch).unwrap_or_default();
    for (name, svg) in &svgs {
        files::write_whole(&out.join(name), svg.as_bytes())?;
    }
    Ok(svgs.len())
}

fn write_designs<D: Told>(
    family: &Path,
    answers: &[D::Answer],
    out: &Path,
) -> Result<usize, String> {
    files::make_folder(out)?;
    for (answer, name) in answers.iter().zip(set_printing::file_names(answers)) {
        let path = out.join(name).with_extension("ron");
        written::keep(family, &path)?;
        files::write_whole(&path, answer.document().text().as_bytes())?;
    }
    Ok(answers.len())
}
