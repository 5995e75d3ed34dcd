//! Which lengths to cut from which bars.

use std::path::{Path, PathBuf};

use clap::Args;
use reinwright_core::asked::Units;
use reinwright_core::paper::Paper;
use reinwright_core::shop::cut::{
    CutBar, CutPlan, Lying, Order, Rack, Sold, Source, StockPlan, alike, orders, parse_long, plan,
    sums,
};
use reinwright_core::shop::shelf;
use serde::Serialize;

use super::written::{self, OnPaper};
use super::{Done, Outcome, json};
use crate::disk::{files, folder};
use crate::jobs::cut_wanted::{self, Made, Strange, said};
use crate::jobs::words::without_letters;
use crate::jobs::{cut_printing, printing};

/// What is asked of a cut list.
#[derive(Debug, Args)]
pub(super) struct Asked {
    /// Designs, tools and families; of a family every size
    #[arg(required = true)]
    files: Vec<PathBuf>,
    /// How many pairs of each design and of each size, and how many of each tool
    #[arg(long, default_value_t = 1, value_parser = clap::value_parser!(u32).range(1..=1000))]
    pairs: u32,
    /// Bars that are there, such as "3 x 3 m", "2 x 20 ft, 850 mm" or "3 x 3 m of 16 mm square"; more
    /// can be bought as long as the longest of them
    #[arg(long, allow_hyphen_values = true)]
    bars: Vec<String>,
    /// The shop's folder, with the bars on its rack in rack.ron
    #[arg(long, value_name = "FOLDER")]
    rack: Option<PathBuf>,
    /// Width of a cut; that of the rack or else of the designs if not given
    #[arg(long, allow_hyphen_values = true)]
    kerf: Option<String>,
    /// Cut off each bar's ragged end; as the rack or else the designs have it if not given
    #[arg(long, allow_hyphen_values = true)]
    crop: Option<String>,
    /// The shortest end that is kept; 200 mm if neither the rack nor you say otherwise
    #[arg(long, allow_hyphen_values = true)]
    least: Option<String>,
    /// Take the bars that are cut off the rack, and put the ends back
    #[arg(long, requires = "rack", conflicts_with = "bars")]
    take: bool,
    /// PDF or, where the name ends in .svg, SVG of the bars to write; one that is there is replaced
    #[arg(long)]
    out: Option<PathBuf>,
    #[command(flatten)]
    paper: OnPaper,
    /// Answer as JSON, with the unit in every key
    #[arg(long)]
    json: bool,
}

pub(super) fn run(asked: &Asked) -> Outcome {
    let paper = asked.paper.parsed()?;
    let sought = sought(asked)?;
    let units = sought[0].units;
    let orders = orders(sought.iter().map(|own| own.order.clone()));
    let rack = rack(asked, &orders)?;
    let plan = plan(&orders, &rack, units, &mut |_| {
        std::ops::ControlFlow::Continue(())
    });
    let plan = plan
        .map_err(|error| error.to_string())?
        .unwrap_or(CutPlan { stocks: Vec::new() });
    let mut text = if asked.json {
        json(&Answer::new(&plan))?
    } else {
        listed(&plan, units)
    };
    if let Some(out) = &asked.out {
        for file in &asked.files {
            written::keep(file, out)?;
        }
        files::write_whole(out, &drawn(out, (&plan, units), paper))?;
        if !asked.json {
            let names = sought.iter().map(|own| own.name.as_str());
            text.extend(without_letters(names).map(|why| why + "\n"));
            text += &format!("{}: the bars with their pieces\n", out.display());
        }
    }
    if let (true, Some(shop)) = (asked.take, &asked.rack) {
        folder::keep_rack(shop, &folder::rack(shop)?.without(&plan, units))?;
        if !asked.json {
            text += &format!("{}: what is cut was taken off the rack\n", shop.display());
        }
    }
    Ok(Done::said(text))
}

fn drawn(out: &Path, plan: (&CutPlan, Units), paper: Paper) -> Vec<u8> {
    let is_svg = out
        .extension()
        .is_some_and(|end| end.eq_ignore_ascii_case("svg"));
    if is_svg {
        cut_printing::svg(plan.0, plan.1).into_bytes()
    } else {
        cut_printing::pdf(plan.0, plan.1, paper, printing::today())
    }
}

/// What is to be cut for.
struct Sought {
    name: String,
    units: Units,
    order: Order,
}

impl Sought {
    fn of(made: &Made, count: u32) -> Self {
        Self {
            name: made.name().to_owned(),
            units: made.units(),
            order: made.order(&made.balance(), count),
        }
    }
}

/// Every design and tool, and of a family that was read whole every size.
fn sought(asked: &Asked) -> Result<Vec<Sought>, String> {
    let mut all = Vec::new();
    for path in &asked.files {
        let named = |what: String| format!("{}: {what}", path.display());
        let filed = shelf::read(&files::bytes(path)?);
        let filed = filed.map_err(|error| named(error.to_string()))?;
        let designs = cut_wanted::designs(filed).map_err(named)?;
        all.extend(designs.iter().map(|made| Sought::of(made, asked.pairs)));
    }
    Ok(all)
}

/// The shop's rack with the bars that were said besides, and what was said of cuts and ends.
fn rack(asked: &Asked, orders: &[Order]) -> Result<Rack, String> {
    let mut rack = match &asked.rack {
        Some(shop) => folder::rack(shop)?,
        None => Rack::default(),
    };
    let texts = asked
        .bars
        .iter()
        .map(|text| said(text, orders, Strange::Refused));
    let said = texts.collect::<Result<Vec<_>, _>>();
    lay(
        &mut rack,
        &said.map_err(|error| format!("--bars: {error}"))?.concat(),
    );
    let size = |text: &Option<String>, name: &str| {
        let read = text.as_deref().map(parse_long).transpose();
        read.map_err(|error| format!("--{name}: {error}"))
    };
    rack.kerf = size(&asked.kerf, "kerf")?.or(rack.kerf);
    rack.crop = size(&asked.crop, "crop")?.or(rack.crop);
    rack.least_offcut = size(&asked.least, "least")?.or(rack.least_offcut);
    Ok(rack)
}

/// Lays bars on the rack. Where it names no length to buy, more can be had of the longest of them.
fn lay(rack: &mut Rack, said: &[Lying]) {
    let longer = |a: &Lying, b: &Lying| a.length.mm().total_cmp(&b.length.mm());
    for lying in said {
        if rack.sold.iter().all(|sold| sold.bar != lying.bar) {
            let same = said.iter().filter(|other| other.bar == lying.bar);
            let longest = same.max_by(|a, b| longer(a, b)).unwrap_or(lying);
            rack.sold.push(Sold {
                bar: lying.bar,
                length: longest.length,
                price: None,
            });
        }
    }
    rack.bars.extend(said);
}

#[derive(Serialize)]
struct Answer {
    bars: Vec<BarAnswer>,
    bars_needed: usize,
    proven_least: bool,
    lower_bound: usize,
    proven_offcut: bool,
    bars_to_buy: usize,
    price: Option<f64>,
    bar_mass_kg: f64,
    pieces_mass_kg: f64,
    kept_mass_kg: f64,
    stocks: Vec<StockAnswer>,
}

#[derive(Serialize)]
struct BarAnswer {
    stock: String,
    steel: &'static str,
    from: &'static str,
    length_mm: f64,
    pieces: Vec<PieceAnswer>,
    offcut_mm: f64,
    /// Whether the offcut is worth keeping.
    kept: bool,
    price: Option<f64>,
}

#[derive(Serialize)]
struct PieceAnswer {
    what: String,
    length_mm: f64,
}

#[derive(Serialize)]
struct StockAnswer {
    stock: String,
    steel: &'static str,
    bars_needed: usize,
    proven_least: bool,
    lower_bound: usize,
    proven_offcut: bool,
    kerf_mm: f64,
    crop_mm: f64,
    least_offcut_mm: f64,
    bar_mass_kg: f64,
}

impl Answer {
    fn new(plan: &CutPlan) -> Self {
        let stocks = || plan.stocks.iter();
        let mass = |of: fn(&CutBar) -> f64| stocks().map(|it| it.mass_kg(it.sum(of))).sum();
        let bars =
            stocks().flat_map(|stock| stock.bars.iter().map(|bar| BarAnswer::new(stock, bar)));
        Self {
            bars: bars.collect(),
            bars_needed: stocks().map(|stock| stock.bars.len()).sum(),
            proven_least: stocks().all(|stock| stock.proven_least),
            lower_bound: stocks().map(|stock| stock.lower_bound).sum(),
            proven_offcut: stocks().all(|stock| stock.proven_offcut),
            bars_to_buy: stocks().map(to_buy).sum(),
            price: plan.price(),
            bar_mass_kg: mass(|bar| bar.length_mm),
            pieces_mass_kg: mass(CutBar::pieces_mm),
            kept_mass_kg: mass(|bar| bar.kept_mm),
            stocks: stocks().map(StockAnswer::new).collect(),
        }
    }
}

fn to_buy(stock: &StockPlan) -> usize {
    stock.bars.len() - stock.count(Source::Rack)
}

impl BarAnswer {
    fn new(stock: &StockPlan, bar: &CutBar) -> Self {
        let piece = |piece: &reinwright_core::shop::cut::CutPiece| PieceAnswer {
            what: piece.what.clone(),
            length_mm: piece.length_mm,
        };
        Self {
            stock: stock.bar.stock.words(),
            steel: stock.bar.steel.name(),
            from: bar.from.name(),
            length_mm: bar.length_mm,
            pieces: bar.pieces.iter().map(piece).collect(),
            offcut_mm: bar.offcut_mm,
            kept: bar.kept_mm > 0.0,
            price: bar.price,
        }
    }
}

impl StockAnswer {
    fn new(stock: &StockPlan) -> Self {
        Self {
            stock: stock.bar.stock.words(),
            steel: stock.bar.steel.name(),
            bars_needed: stock.bars.len(),
            proven_least: stock.proven_least,
            lower_bound: stock.lower_bound,
            proven_offcut: stock.proven_offcut,
            kerf_mm: stock.kerf_mm,
            crop_mm: stock.crop_mm,
            least_offcut_mm: stock.least_mm,
            bar_mass_kg: stock.mass_kg(stock.sum(|bar| bar.length_mm)),
        }
    }
}

fn listed(plan: &CutPlan, units: Units) -> String {
    let mut text: String = plan
        .stocks
        .iter()
        .map(|stock| stock_text(stock, units))
        .collect();
    if let Some(price) = plan.price().filter(|price| *price > 0.0) {
        text += &format!("to buy, together: {price:.2}\n");
    }
    text
}

fn stock_text(stock: &StockPlan, units: Units) -> String {
    let size = |mm: f64| units.show().text(mm);
    let mut text = format!("{}, {}\n", stock.bar.stock.words(), stock.bar.steel.name());
    for (bar, count) in alike(&stock.bars) {
        let (length, from) = (size(bar.length_mm), bar.from.name());
        text += &format!("{count:>3} x {length}, {from}\n");
        for (what, length, count) in counted(bar) {
            text += &format!("{count:>9} x {:<12} {what}\n", size(length));
        }
        let worth = if bar.kept_mm > 0.0 {
            "left over"
        } else {
            "too short to keep"
        };
        text += &format!("{:>9}   {:<12} {worth}\n", "", size(bar.offcut_mm));
    }
    text.extend(sums(stock, units).iter().map(|line| format!("{line}\n")));
    text
}

/// Pieces of the same length for the same thing together.
fn counted(bar: &CutBar) -> Vec<(&str, f64, usize)> {
    let mut all: Vec<(&str, f64, usize)> = Vec::new();
    for piece in &bar.pieces {
        match all.last_mut() {
            Some(same) if same.0 == piece.what => same.2 += 1,
            Some(_) | None => all.push((&piece.what, piece.length_mm, 1)),
        }
    }
    all
}
