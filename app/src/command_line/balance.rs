//! The balance, for people and for scripts.

use std::fmt::Write;

use reinwright_core::asked::{Bar, Layout, Stock, Units};
use reinwright_core::forge::balance::{Allowance, Balance, Mark, PieceBalance};
use reinwright_core::shop::{ToolAnswers, balance_of};
use reinwright_core::tongs::document::Document;
use reinwright_core::tongs::resolve;
use reinwright_core::tool::Tool;
use reinwright_core::units::Unit;
use serde::Serialize;

use super::arguments::Asked;
use super::{Done, Outcome, design, json};

pub(super) fn run(asked: &Asked) -> Outcome {
    let design = design(&asked.file)?;
    let model = resolve(&design);
    let balance = balance_of(&design, &model);
    if let Some(trouble) = balance.trouble() {
        return Err(format!("{}: {trouble}", asked.file.display()));
    }
    let account = (&balance, model.mass_kg());
    let text = if asked.json {
        json(&Answer::new(&design, account))?
    } else {
        Table::of(&design, account)
    };
    Ok(Done::said(text))
}

/// A balance, and the mass of the finished pair with its rivet, kg.
pub(super) type Account<'a> = (&'a Balance, f64);

/// The first and the last piece: the two halves of a pair.
fn ends(balance: &Balance) -> (&PieceBalance, &PieceBalance) {
    let pieces = &balance.pieces;
    (&pieces[0], &pieces[pieces.len() - 1])
}

/// The balance of a tool.
pub(super) fn of_tool((tool, answers): (&Tool, &ToolAnswers), asked: &Asked) -> Outcome {
    let balance = &answers.balance;
    if let Some(trouble) = balance.trouble() {
        return Err(format!("{}: {trouble}", asked.file.display()));
    }
    let text = if asked.json {
        json(&ToolAnswer::new(tool, balance))?
    } else {
        Table::of_tool(tool, balance)
    };
    Ok(Done::said(text))
}

#[derive(Serialize)]
pub(super) struct ToolAnswer {
    name: String,
    bar: BarAnswer,
    tool: HalfAnswer,
    cut_length_mm: f64,
    bar_length_mm: f64,
    bar_mass_kg: f64,
    marks: Vec<MarkAnswer>,
}

#[derive(Serialize)]
pub(super) struct Answer {
    name: String,
    bar: BarAnswer,
    half: HalfAnswer,
    /// Only when the jaws differ.
    #[serde(skip_serializing_if = "Option::is_none")]
    second_half: Option<HalfAnswer>,
    pair: PairAnswer,
}

#[derive(Serialize)]
struct BarAnswer {
    shape: &'static str,
    size_mm: f64,
    width_mm: f64,
    area_mm2: f64,
    steel: &'static str,
}

#[derive(Serialize)]
struct HalfAnswer {
    volume_mm3: f64,
    mass_kg: f64,
    bar_length_mm: f64,
    parts: Vec<PartAnswer>,
    allowances: Vec<AllowanceAnswer>,
}

#[derive(Serialize)]
struct PartAnswer {
    part: &'static str,
    finished_length_mm: f64,
    volume_mm3: f64,
    bar_length_mm: f64,
}

#[derive(Serialize)]
struct AllowanceAnswer {
    what: &'static str,
    bar_length_mm: f64,
}

#[derive(Serialize)]
struct PairAnswer {
    layout: &'static str,
    bar_length_mm: f64,
    /// As it is set off with a rule; the kerf of the last cut lies beyond it.
    cut_length_mm: f64,
    bar_mass_kg: f64,
    mass_kg: f64,
    allowances: Vec<AllowanceAnswer>,
    marks: Vec<MarkAnswer>,
}

#[derive(Serialize)]
struct MarkAnswer {
    at_mm: f64,
    measured_mm: f64,
    /// The same from the end of the length that is cut.
    from_end_mm: f64,
    what: String,
}

impl ToolAnswer {
    pub(super) fn new(tool: &Tool, balance: &Balance) -> Self {
        let mark = |mark| MarkAnswer::new(mark, balance, tool.units);
        Self {
            name: tool.name.clone(),
            bar: BarAnswer::new(&tool.bar),
            tool: HalfAnswer::new(&balance.pieces[0]),
            cut_length_mm: balance.cut_length(tool.units).mm(),
            bar_length_mm: balance.bar_length_mm,
            bar_mass_kg: balance.bar_mass_kg(),
            marks: balance.marks.iter().map(mark).collect(),
        }
    }
}

impl Answer {
    pub(super) fn new(design: &Document, account: Account<'_>) -> Self {
        let (first, last) = ends(account.0);
        let second = design.second_jaw.as_ref();
        Self {
            name: design.name.clone(),
            bar: BarAnswer::new(&design.bar),
            half: HalfAnswer::new(first),
            second_half: second.map(|_| HalfAnswer::new(last)),
            pair: PairAnswer::new(design, account),
        }
    }
}

impl BarAnswer {
    fn new(bar: &Bar) -> Self {
        let stock = &bar.stock;
        Self {
            shape: shape(stock),
            size_mm: stock.size().mm(),
            width_mm: stock.wide_mm(),
            area_mm2: stock.area_mm2(),
            steel: bar.steel.name(),
        }
    }
}

impl HalfAnswer {
    fn new(half: &PieceBalance) -> Self {
        let part = |part: &reinwright_core::forge::balance::PartBar| PartAnswer {
            part: part.part.name(),
            finished_length_mm: part.finished_length_mm,
            volume_mm3: part.volume_mm3,
            bar_length_mm: part.bar_length_mm,
        };
        Self {
            volume_mm3: half.volume_mm3,
            mass_kg: half.mass_kg,
            bar_length_mm: half.bar_length_mm,
            parts: half.parts.iter().map(part).collect(),
            allowances: allowances(&half.allowances),
        }
    }
}

impl PairAnswer {
    fn new(design: &Document, (balance, mass_kg): Account<'_>) -> Self {
        let mark = |mark| MarkAnswer::new(mark, balance, design.units);
        Self {
            layout: layout(design.layout),
            bar_length_mm: balance.bar_length_mm,
            cut_length_mm: balance.cut_length(design.units).mm(),
            bar_mass_kg: balance.bar_mass_kg(),
            mass_kg,
            allowances: allowances(&balance.allowances),
            marks: balance.marks.iter().map(mark).collect(),
        }
    }
}

impl MarkAnswer {
    fn new(mark: &Mark, balance: &Balance, units: Units) -> Self {
        Self {
            at_mm: mark.at_mm,
            measured_mm: mark.measured(units).mm(),
            from_end_mm: balance.from_end(mark, units).mm(),
            what: mark.what.clone(),
        }
    }
}

fn allowances(all: &[Allowance]) -> Vec<AllowanceAnswer> {
    let answer = |allowance: &Allowance| AllowanceAnswer {
        what: allowance.what.name(),
        bar_length_mm: allowance.bar_length_mm,
    };
    all.iter().map(answer).collect()
}

pub(super) fn shape(stock: &Stock) -> &'static str {
    match stock {
        Stock::Round { .. } => "round",
        Stock::Square { .. } => "square",
        Stock::Flat { .. } => "flat",
    }
}

fn layout(layout: Layout) -> &'static str {
    match layout {
        Layout::Single { .. } => "one half at a time",
        Layout::BothOnOneBar => "both halves on one bar",
    }
}

/// The account as the smith reads it, in the document's units.
pub(super) struct Table {
    units: Units,
    text: String,
}

impl Table {
    pub(super) fn of(design: &Document, (balance, mass_kg): Account<'_>) -> String {
        let mut table = Self {
            units: design.units,
            text: String::new(),
        };
        table.head(design, balance);
        let (first, last) = ends(balance);
        match design.second_jaw {
            None => table.half("each half", first),
            Some(_) => {
                table.half("half A", first);
                table.half("half B", last);
            }
        }
        table.pair(balance, mass_kg);
        table.marks(balance);
        table.text
    }

    pub(super) fn of_tool(tool: &Tool, balance: &Balance) -> String {
        let mut table = Self {
            units: tool.units,
            text: String::new(),
        };
        table.bar((&tool.name, &tool.bar), balance);
        table.half("the tool", &balance.pieces[0]);
        table.line("");
        table.allowances(&balance.allowances);
        table.marks(balance);
        table.text
    }

    fn line(&mut self, text: &str) {
        self.text.push_str(text.trim_end());
        self.text.push('\n');
    }

    fn size(&self, mm: f64) -> String {
        self.units.show().text(mm)
    }

    /// Bar to a thousandth of an inch or a tenth of a millimetre: fractions do not add up.
    fn exact(&self, mm: f64) -> String {
        match self.units {
            Units::Inch => format!("{:.3} in", mm / Unit::Inch.mm()),
            Units::Millimetre => format!("{mm:.1} mm"),
        }
    }

    fn volume(&self, mm3: f64) -> String {
        match self.units {
            Units::Inch => format!("{:.3} in³", mm3 / Unit::Inch.mm().powi(3)),
            Units::Millimetre => format!("{mm3:.0} mm³"),
        }
    }

    fn mass(&self, kg: f64) -> String {
        self.units.show().mass(kg)
    }

    fn bar(&mut self, (name, bar): (&str, &Bar), balance: &Balance) {
        let stock = &bar.stock;
        let size = match stock {
            Stock::Flat { thickness, width } => format!("{thickness} x {width}"),
            Stock::Round { .. } | Stock::Square { .. } => stock.size().to_string(),
        };
        let words = format!(
            "Bar: cut {} of {size} {}, {}, {}",
            balance.cut_length(self.units),
            shape(stock),
            bar.steel.name(),
            self.mass(balance.cut_mass_kg(self.units)),
        );
        self.line(name);
        self.line(&words);
    }

    fn head(&mut self, design: &Document, balance: &Balance) {
        self.bar((&design.name, &design.bar), balance);
        let laid = format!("Laid out: {}", layout(design.layout));
        self.line(&laid);
    }

    fn half(&mut self, name: &str, half: &PieceBalance) {
        self.line("");
        let head = format!("{name:<16}{:>12}{:>16}{:>14}", "finished", "volume", "bar");
        self.line(&head);
        for part in &half.parts {
            let row = format!(
                "{:<16}{:>12}{:>16}{:>14}",
                part.part.name(),
                self.size(part.finished_length_mm),
                self.volume(part.volume_mm3),
                self.exact(part.bar_length_mm)
            );
            self.line(&row);
        }
        self.allowances(&half.allowances);
        let mass = self.mass(half.mass_kg);
        let (volume, bar) = (self.volume(half.volume_mm3), self.exact(half.bar_length_mm));
        let row = format!("{:<16}{mass:>12}{volume:>16}{bar:>14}", "together");
        self.line(&row);
    }

    fn allowances(&mut self, all: &[Allowance]) {
        for allowance in all.iter().filter(|a| a.bar_length_mm > 0.0) {
            let bar = self.exact(allowance.bar_length_mm);
            let row = format!("{:<16}{:>12}{:>16}{bar:>14}", allowance.what.name(), "", "");
            self.line(&row);
        }
    }

    fn pair(&mut self, balance: &Balance, mass_kg: f64) {
        self.line("");
        let bar = self.exact(balance.bar_length_mm);
        let mass = self.mass(mass_kg);
        let row = format!("{:<16}{mass:>12}{:>16}{bar:>14}", "the pair", "");
        self.allowances(&balance.allowances);
        self.line(&row);
    }

    fn marks(&mut self, balance: &Balance) {
        self.line("");
        self.line("Marks from both ends of the length");
        for mark in &balance.marks {
            let measured = mark.measured(self.units).to_string();
            let from_end = balance.from_end(mark, self.units).to_string();
            let exact = self.exact(mark.at_mm);
            let mut row = String::new();
            write!(
                row,
                "{measured:>12}{from_end:>12}  {:<26}exactly {exact}",
                mark.what
            )
            .expect("writing to a string cannot fail");
            self.line(&row);
        }
    }
}
