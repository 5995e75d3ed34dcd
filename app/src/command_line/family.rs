//! Families: every size answered, and the whole set written.

use std::path::Path;

use reinwright_core::asked::StockSizes;
use reinwright_core::finding::{self, Severity};
use reinwright_core::paper::Paper;
use reinwright_core::shop::family::{
    self, BarTotal, Coverage, Family, Opened, SizeAnswer, answer_all, answer_all_under, coverage,
    sheet, totals,
};
use reinwright_core::tongs::document;
use serde::Serialize;

use super::arguments::{self, Asked, Loaded};
use super::{
    Done, Outcome, Places, balance as one_balance, findings as one_findings, fit as one_fit, json,
};
use crate::disk::{files, stock_sizes};
use crate::jobs::order::{self, OfTheSet, Order};
use crate::jobs::printing;
use crate::jobs::set_printing::{self, Wanted};

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

fn opened(path: &Path, bytes: &[u8]) -> Result<Opened, String> {
    family::open(bytes).map_err(|error| format!("{}: {error}", path.display()))
}

/// A family without the sizes that are damaged: numbers reckoned from what had to be guessed help
/// nobody.
fn sound<'a>(path: &Path, opened: &'a Opened) -> Result<&'a Family, String> {
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
fn lost(opened: &Opened) -> String {
    let lost = opened.lost.iter();
    lost.map(|lost| format!("Stop: file: {lost}\n")).collect()
}

/// Something that could not be read is a Stop.
fn worst_lost(opened: &Opened) -> Option<Severity> {
    (!opened.lost.is_empty()).then_some(Severity::Stop)
}

/// An answer for the sizes that could be read.
fn partly(opened: &Opened, text: String) -> Done {
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

fn each<'a, T: Serialize>(
    family: &'a Family,
    answers: &'a [SizeAnswer],
    answer: impl Fn(&'a SizeAnswer) -> T,
) -> Sizes<'a, T> {
    let sized = |of: &'a SizeAnswer| Sized {
        size: &of.label,
        answer: answer(of),
    };
    Sizes {
        family: &family.name,
        sizes: answers.iter().map(sized).collect(),
    }
}

#[derive(Serialize)]
struct BalanceAnswer<'a> {
    /// What could not be read of a damaged file; sizes that it is about are left out.
    not_read: &'a [String],
    #[serde(flatten)]
    sizes: Sizes<'a, AccountAnswer>,
    /// Of the sizes for which a bar can be reckoned.
    totals: Vec<TotalAnswer>,
}

/// The account of a size, or why there is none.
#[derive(Serialize)]
#[serde(untagged)]
enum AccountAnswer {
    Account(Box<one_balance::Answer>),
    None { no_bar: String },
}

impl AccountAnswer {
    fn new(of: &SizeAnswer) -> Self {
        let account = (&of.balance, of.model.mass_kg());
        match of.balance.trouble() {
            None => Self::Account(Box::new(one_balance::Answer::new(&of.document, account))),
            Some(no_bar) => Self::None { no_bar },
        }
    }
}

/// Bar for one pair of each size.
#[derive(Serialize)]
struct TotalAnswer {
    shape: &'static str,
    size_mm: f64,
    width_mm: f64,
    steel: &'static str,
    pairs: u32,
    cut_length_mm: f64,
    bar_mass_kg: f64,
}

impl TotalAnswer {
    fn new(total: &BarTotal) -> Self {
        let stock = &total.bar.stock;
        Self {
            shape: one_balance::shape(stock),
            size_mm: stock.size().mm(),
            width_mm: stock.wide_mm(),
            steel: total.bar.steel.name(),
            pairs: total.pairs,
            cut_length_mm: total.length_mm,
            bar_mass_kg: total.mass_kg,
        }
    }
}

/// The balance of every size, and the bar for one pair of each.
pub(super) fn balance(opened: &Opened, asked: &Asked) -> Outcome {
    let family = sound(&asked.file, opened)?;
    let answers = answer_all(family);
    let totals = totals(&answers, 1);
    if asked.json {
        let text = json(&BalanceAnswer {
            not_read: &opened.lost,
            sizes: each(family, &answers, AccountAnswer::new),
            totals: totals.iter().map(TotalAnswer::new).collect(),
        })?;
        return Ok(partly(opened, text));
    }
    let mut text = lost(opened);
    text.extend(answers.iter().map(account_told));
    text.push_str("One pair of each size\n");
    text.extend(totals.iter().map(|total| total_line(family, total)));
    Ok(partly(opened, text))
}

fn account_told(of: &SizeAnswer) -> String {
    match of.balance.trouble() {
        None => one_balance::Table::of(&of.document, (&of.balance, of.model.mass_kg())) + "\n",
        Some(trouble) => format!("{}\n{trouble}\n\n", of.document.name),
    }
}

fn total_line(family: &Family, total: &BarTotal) -> String {
    format!("{}\n", sheet::total_words(family, total))
}

#[derive(Serialize)]
struct FitAnswer<'a, T: Serialize> {
    /// What could not be read of a damaged file; sizes that it is about are left out.
    not_read: &'a [String],
    #[serde(flatten)]
    sizes: Sizes<'a, T>,
    /// Work that lies between what the sizes hold and that none of them holds.
    gaps: Vec<GapAnswer>,
    /// Work that two neighbours both hold.
    overlaps: Vec<OverlapAnswer<'a>>,
}

#[derive(Serialize)]
struct OverlapAnswer<'a> {
    shape: &'static str,
    sizes: [&'a str; 2],
    from_mm: f64,
    to_mm: f64,
}

/// How every size fits and lasts, and what the set holds.
pub(super) fn fit(opened: &Opened, wanted: &Loaded, places: &Places) -> Outcome {
    let family = sound(&wanted.asked.file, opened)?;
    let answers = answer_all_under(family, &wanted.load()?);
    let stock = stock(wanted.stock.as_deref(), places)?;
    let covered = coverage(&answers, family.base.units, &stock);
    let gaps = gaps(&covered);
    if wanted.asked.json {
        let sizes = each(family, &answers, |of| {
            one_fit::answered(&of.document, &of.model, &of.fit, &of.strength)
        });
        let text = json(&FitAnswer {
            not_read: &opened.lost,
            sizes,
            gaps,
            overlaps: overlaps(&covered, &answers),
        })?;
        return Ok(partly(opened, text));
    }
    let told = |of: &SizeAnswer| one_fit::told(&of.document, &of.fit, &of.strength) + "\n";
    let mut text = lost(opened);
    text.extend(answers.iter().map(told));
    text.extend(gaps.iter().map(|gap| format!("{}\n", gap.message)));
    Ok(partly(opened, text))
}

fn overlaps<'a>(covered: &[Coverage], answers: &'a [SizeAnswer]) -> Vec<OverlapAnswer<'a>> {
    let mut all = Vec::new();
    for coverage in covered {
        all.extend(coverage.overlaps.iter().map(|overlap| OverlapAnswer {
            shape: coverage.shape,
            sizes: overlap.sizes.map(|size| answers[size].label.as_str()),
            from_mm: overlap.from_mm,
            to_mm: overlap.to_mm,
        }));
    }
    all
}

#[derive(Serialize)]
struct FindingsAnswer<'a> {
    worst: Option<&'static str>,
    /// What could not be read of a damaged file, and what was taken instead.
    not_read: &'a [String],
    #[serde(flatten)]
    sizes: Sizes<'a, one_findings::Answer<'a>>,
    /// Work that lies between what the sizes hold and that none of them holds.
    gaps: Vec<GapAnswer>,
}

#[derive(Serialize)]
struct GapAnswer {
    shape: &'static str,
    over_mm: f64,
    under_mm: f64,
    /// The stock sizes in it, and the one to fill it with.
    stock_mm: Vec<f64>,
    filler_mm: f64,
    message: String,
}

/// What is noticed of every size, of the set, and of a damaged file.
pub(super) fn findings(opened: &Opened, wanted: &Loaded, places: &Places) -> Outcome {
    let family = &opened.family;
    let answers = answer_all_under(family, &wanted.load()?);
    let stock = stock(wanted.stock.as_deref(), places)?;
    let gaps = gaps(&coverage(&answers, family.base.units, &stock));
    let worst = answers
        .iter()
        .filter_map(SizeAnswer::worst)
        .chain(worst_lost(opened))
        .max();
    let text = if wanted.asked.json {
        json(&FindingsAnswer {
            worst: worst.map(Severity::name),
            not_read: &opened.lost,
            sizes: each(family, &answers, |of| {
                one_findings::Answer::new(&of.findings)
            }),
            gaps,
        })?
    } else {
        listed(opened, &answers, &gaps)
    };
    let status = one_findings::status(worst);
    Ok(Done { text, status })
}

/// The stock that can be bought: as a file lists it, or else as it is kept for the window.
fn stock(file: Option<&Path>, places: &Places) -> Result<StockSizes, String> {
    match file {
        Some(file) => stock_sizes::open(file).map_err(|why| format!("--stock: {why}")),
        None => stock_sizes::kept(places.remembered.as_deref()),
    }
}

fn gaps(covered: &[Coverage]) -> Vec<GapAnswer> {
    let gaps = covered.iter().flat_map(|coverage| &coverage.gaps);
    gaps.map(|gap| GapAnswer {
        shape: gap.shape,
        over_mm: gap.from_mm,
        under_mm: gap.to_mm,
        stock_mm: gap.stock.iter().map(|size| size.mm()).collect(),
        filler_mm: gap.filler().mm(),
        message: gap.sentence(),
    })
    .collect()
}

fn listed(opened: &Opened, answers: &[SizeAnswer], gaps: &[GapAnswer]) -> String {
    let mut text = lost(opened);
    for answer in answers {
        let found = one_findings::listed(&answer.findings);
        let indented = found.lines().map(|line| format!("  {line}\n"));
        text.push_str(&format!("{}\n", answer.label));
        text.extend(indented);
    }
    text.extend(
        gaps.iter()
            .map(|gap| format!("Note: set: {}\n", gap.message)),
    );
    text
}

/// Writes the set: one PDF, a folder of SVG files, a folder of designs.
pub(super) fn write(wanted: &arguments::Family, places: &Places) -> Outcome {
    let paper = Paper::parse(&wanted.paper).map_err(|error| format!("--paper: {error}"))?;
    let bytes = files::bytes(&wanted.file)?;
    let opened = opened(&wanted.file, &bytes)?;
    let family = sound(&wanted.file, &opened)?;
    let answers = answer_all(family);
    let printed = Wanted {
        order: order(wanted, paper, answers.len())?,
        day: printing::today(),
        stock: stock(wanted.stock.as_deref(), places)?,
    };
    let watch = &mut set_printing::to_the_end;
    let pages = set_printing::pages_wanted(family, &answers, &printed, watch);
    pages
        .unwrap_or_default()
        .allow(paper, arguments::consent(wanted.all))?;
    let pdf = set_printing::pdf(family, &answers, &printed, watch);
    let path = wanted
        .out
        .join(set_printing::slug(&family.name))
        .with_extension("pdf");
    files::make_folder(&wanted.out)?;
    files::write_whole(&path, &pdf.unwrap_or_default())?;
    let drawings = write_svgs((family, &answers), &printed, &wanted.out.join("svg"))?;
    let designs = write_designs(&wanted.file, &answers, &wanted.out.join("designs"))?;
    let lacking = set_printing::without_letters(family, &answers);
    let lacking = lacking.map_or_else(String::new, |why| why + "\n");
    Ok(Done {
        status: one_findings::status(worst_lost(&opened)),
        text: lost(&opened)
            + &lacking
            + &format!(
                "{}: print at actual size (100 %), then measure the check bars\n{}: {drawings} drawings, one unit is one millimetre\n{}: {designs} {}\n{}",
                path.display(),
                wanted.out.join("svg").display(),
                wanted.out.join("designs").display(),
                if designs == 1 { "design" } else { "designs" },
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
fn warned(answers: &[SizeAnswer]) -> String {
    let bad = |answer: &&SizeAnswer| {
        finding::worst(&answer.findings).is_some_and(|worst| worst > Severity::Note)
    };
    let names: Vec<&str> = answers
        .iter()
        .filter(bad)
        .map(|of| of.label.as_str())
        .collect();
    if names.is_empty() {
        return String::new();
    }
    format!(
        "Look at reinwright findings before forging {}\n",
        names.join(", ")
    )
}

fn write_svgs(
    (family, answers): (&Family, &[SizeAnswer]),
    wanted: &Wanted,
    out: &Path,
) -> Result<usize, String> {
    files::make_folder(out)?;
    let watch = &mut set_printing::to_the_end;
    let svgs = set_printing::svgs(family, answers, wanted, watch).unwrap_or_default();
    for (name, svg) in &svgs {
        files::write_whole(&out.join(name), svg.as_bytes())?;
    }
    Ok(svgs.len())
}

fn write_designs(family: &Path, answers: &[SizeAnswer], out: &Path) -> Result<usize, String> {
    files::make_folder(out)?;
    for (answer, name) in answers.iter().zip(set_printing::file_names(answers)) {
        let path = out.join(name).with_extension("ron");
        files::spare(family, &path).map_err(|error| format!("--out: {error}"))?;
        files::write_whole(&path, document::write(&answer.document).as_bytes())?;
    }
    Ok(answers.len())
}
