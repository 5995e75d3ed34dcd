//! Families: every size answered, and the whole set written.

use std::collections::BTreeMap;
use std::path::Path;

use reinwright_core::asked::StockSizes;
use reinwright_core::finding::Severity;
use reinwright_core::paper::Paper;
use reinwright_core::shop::family::{
    self, BarTotal, Coverage, Family, InSizes, OfSize, Opened, SizeAnswer, ToolSizeAnswer,
    answer_all, answer_all_under, coverage, sheet, totals,
};
use reinwright_core::tongs::document::{self, Document};
use reinwright_core::tool::{self, Tool};
use serde::Serialize;

use super::arguments::{self, Asked, Loaded};
use super::{
    Done, Outcome, Places, balance as one_balance, findings as one_findings, fit as one_fit, json,
};
use crate::disk::{files, stock_sizes};
use crate::jobs::in_set::InSet;
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

#[derive(Serialize)]
struct BalanceAnswer<'a, A: Serialize> {
    /// What could not be read of a damaged file; sizes that it is about are left out.
    not_read: &'a [String],
    #[serde(flatten)]
    sizes: Sizes<'a, AccountAnswer<A>>,
    /// Of the sizes for which a bar can be reckoned.
    totals: Vec<TotalAnswer>,
}

/// The account of a size, or why there is none.
#[derive(Serialize)]
#[serde(untagged)]
enum AccountAnswer<A: Serialize> {
    Account(Box<A>),
    None { no_bar: String },
}

fn account<D: Told>(of: &D::Answer) -> AccountAnswer<D::Account> {
    match of.balance().trouble() {
        None => AccountAnswer::Account(Box::new(D::account(of))),
        Some(no_bar) => AccountAnswer::None { no_bar },
    }
}

/// Bar for one pair or tool of each size.
#[derive(Serialize)]
struct TotalAnswer {
    shape: &'static str,
    size_mm: f64,
    width_mm: f64,
    steel: &'static str,
    #[serde(flatten)]
    counted: BTreeMap<String, u32>,
    cut_length_mm: f64,
    bar_mass_kg: f64,
}

impl TotalAnswer {
    fn new<D: InSizes>(total: &BarTotal) -> Self {
        let stock = &total.bar.stock;
        Self {
            shape: one_balance::shape(stock),
            size_mm: stock.size().mm(),
            width_mm: stock.wide_mm(),
            steel: total.bar.steel.name(),
            counted: BTreeMap::from([(format!("{}s", D::NAME), total.pairs)]),
            cut_length_mm: total.length_mm,
            bar_mass_kg: total.mass_kg,
        }
    }
}

/// The balance of every size, and the bar for one of each.
pub(super) fn balance<D: Told>(opened: &Opened<D>, asked: &Asked) -> Outcome {
    let family = sound(&asked.file, opened)?;
    let answers = answer_all(family);
    let totals = totals(&answers, 1);
    if asked.json {
        let text = json(&BalanceAnswer {
            not_read: &opened.lost,
            sizes: each(family, &answers, account::<D>),
            totals: totals.iter().map(TotalAnswer::new::<D>).collect(),
        })?;
        return Ok(partly(opened, text));
    }
    let mut text = lost(opened);
    text.extend(answers.iter().map(account_told::<D>));
    text += &format!("One {} of each size\n", D::NAME);
    text.extend(totals.iter().map(|total| total_line(family, total)));
    Ok(partly(opened, text))
}

fn account_told<D: Told>(of: &D::Answer) -> String {
    match of.balance().trouble() {
        None => D::account_table(of) + "\n",
        Some(trouble) => format!("{}\n{trouble}\n\n", of.document().name()),
    }
}

fn total_line<D: InSizes>(family: &Family<D>, total: &BarTotal) -> String {
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
    #[serde(skip_serializing_if = "Option::is_none")]
    gaps: Option<Vec<GapAnswer>>,
}

#[derive(Serialize)]
pub(super) struct GapAnswer {
    shape: &'static str,
    over_mm: f64,
    under_mm: f64,
    /// The stock sizes in it, and the one to fill it with.
    stock_mm: Vec<f64>,
    filler_mm: f64,
    message: String,
}

/// What is noticed of every size, of the set, and of a damaged file.
pub(super) fn findings<D: Told>(opened: &Opened<D>, wanted: &Loaded, places: &Places) -> Outcome {
    let family = &opened.family;
    let answers = answer_all_under(family, &wanted.load()?);
    let gaps = D::gaps(&answers, &stock(wanted.stock.as_deref(), places)?);
    let worst = answers
        .iter()
        .filter_map(OfSize::worst)
        .chain(worst_lost(opened))
        .max();
    let text = if wanted.asked.json {
        json(&FindingsAnswer {
            worst: worst.map(Severity::name),
            not_read: &opened.lost,
            sizes: each(family, &answers, |of| {
                one_findings::Answer::new(of.findings())
            }),
            gaps,
        })?
    } else {
        listed(opened, &answers, &gaps.unwrap_or_default())
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

fn listed<D: InSizes>(opened: &Opened<D>, answers: &[D::Answer], gaps: &[GapAnswer]) -> String {
    let mut text = lost(opened);
    for answer in answers {
        let found = one_findings::listed(answer.findings());
        let indented = found.lines().map(|line| format!("  {line}\n"));
        text.push_str(&format!("{}\n", answer.label()));
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
    let watch = &mut set_printing::to_the_end;
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
        files::spare(family, &path).map_err(|error| format!("--out: {error}"))?;
        files::write_whole(&path, answer.document().text().as_bytes())?;
    }
    Ok(answers.len())
}
