//! The heats of a plan, for people and for scripts: which source, how many, how long.

use std::fmt::Write;

use reinwright_core::asked::{Scale, Units, capital};
use reinwright_core::draw;
use reinwright_core::heats::{
    Compared, HeatPlan, Heated, How, Prepared, Priced, Sources, cautions, compare, end_key,
    heat_plan, no_longer, noticed, priced, riveted, scale_percent, spoken, whole_scale,
    with_scale_of,
};
use reinwright_core::making::Plan;
use reinwright_core::paper::ink;
use reinwright_core::shop::{ToolAnswers, balance_of, shelf};
use reinwright_core::steel::Steel;
use reinwright_core::steel::thermal::THERMAL_SOURCE;
use reinwright_core::tongs::document::Document;
use reinwright_core::tongs::resolve;
use reinwright_core::tool::Tool;
use reinwright_core::units::Show;
use serde::Serialize;
use serde_json::Value;

use super::arguments;
use super::findings::FindingAnswer;
use super::{Done, Outcome, Places, json};
use crate::disk::{files, heat_sources};
use crate::jobs::cut_wanted::{self, Made};

/// The sources that a job goes by, and what could not be read of them.
pub(super) struct Asked {
    pub(super) shop: Sources,
    lost: Vec<String>,
}

impl Asked {
    /// What could not be read, a sentence each.
    pub(super) fn lost(&self) -> &[String] {
        &self.lost
    }
}

/// The sources that are named, else those that are kept, if any are.
pub(super) fn asked(
    named: Option<&std::path::Path>,
    places: &Places,
) -> Result<Option<Asked>, String> {
    let opened = match named {
        Some(path) => Some(heat_sources::open(path)?),
        None => heat_sources::kept(places.remembered.as_deref())?,
    };
    Ok(opened.map(|opened| Asked {
        shop: opened.sources,
        lost: opened.lost,
    }))
}

/// What is heated: a pair, or a tool.
pub(super) struct Subject<'a> {
    name: &'a str,
    units: Units,
    steel: Steel,
    /// Only a pair has procedures to be compared.
    pair: Option<&'a Document>,
}

impl<'a> From<&'a Document> for Subject<'a> {
    fn from(pair: &'a Document) -> Self {
        Self {
            name: &pair.name,
            units: pair.units,
            steel: pair.bar.steel,
            pair: Some(pair),
        }
    }
}

impl<'a> From<&'a Tool> for Subject<'a> {
    fn from(tool: &'a Tool) -> Self {
        Self {
            name: &tool.name,
            units: tool.units,
            steel: tool.bar.steel,
            pair: None,
        }
    }
}

impl Subject<'_> {
    /// Whether the riveted pair goes into each source; nothing of a tool.
    fn riveted(&self, asked: &Asked) -> Vec<String> {
        self.pair.map_or_else(Vec::new, |pair| {
            riveted(&resolve(pair), &asked.shop).words(&asked.shop, self.units.show())
        })
    }

    /// The same by other procedures.
    fn others(&self, asked: &Asked) -> Vec<Compared> {
        self.pair.map_or_else(Vec::new, |pair| {
            let model = resolve(pair);
            compare(pair, (&model, &balance_of(pair, &model)), &asked.shop)
        })
    }
}

/// The design with the scale of its own heats, where that was asked for.
pub(super) fn with_own_scale(
    design: &Document,
    asked: &Asked,
    planned: impl Fn(&Document) -> Result<Plan, String>,
) -> Result<Document, String> {
    let plan = planned(design)?;
    let prepared = Prepared::new(design.bar.steel, &plan, &asked.shop);
    let percent = scale_percent(&prepared, &heat_plan(&prepared));
    Ok(with_scale_of(design, percent))
}

/// The scale that the heats of a plan take, to a tenth of a per cent.
pub(super) fn scale_of(steel: Steel, plan: &Plan, asked: &Asked) -> Scale {
    let prepared = Prepared::new(steel, plan, &asked.shop);
    whole_scale(scale_percent(&prepared, &heat_plan(&prepared)))
}

/// A plan's text with its heats behind it.
pub(super) fn listed<'a>(
    text: String,
    (design, plan): (impl Into<Subject<'a>>, &Plan),
    asked: &Asked,
) -> String {
    let design = &design.into();
    let mut list = List {
        text,
        units: design.units,
        whose: match design.pair {
            Some(_) => "the pair",
            None => "the tool",
        },
    };
    let prepared = Prepared::new(design.steel, plan, &asked.shop);
    list.heats(design, &prepared, asked);
    list.text
}

/// A plan's answer with `heat` at every operation and the totals of all heats.
pub(super) fn keyed<'a>(
    answer: &impl Serialize,
    (design, plan): (impl Into<Subject<'a>>, &Plan),
    asked: &Asked,
) -> Result<String, String> {
    let design = &design.into();
    let unwritten = |error| format!("the answer cannot be written as JSON ({error})");
    let mut answer = serde_json::to_value(answer).map_err(unwritten)?;
    let prepared = Prepared::new(design.steel, plan, &asked.shop);
    let heats = heat_plan(&prepared);
    let show = design.units.show();
    if let Some(operations) = answer.get_mut("operations").and_then(Value::as_array_mut) {
        for (operation, heated) in operations.iter_mut().zip(&heats.operations) {
            let heat = HeatAnswer::new(&prepared, heated, design.units);
            operation["heat"] = serde_json::to_value(heat).map_err(unwritten)?;
        }
    }
    let totals = TotalsAnswer::new(&prepared, &heats);
    let totals = serde_json::to_value(totals).map_err(unwritten)?;
    if let (Some(all), Value::Object(more)) = (
        answer.get_mut("totals").and_then(Value::as_object_mut),
        totals,
    ) {
        all.extend(more);
    }
    let found = noticed(&prepared, &heats, show);
    let found: Vec<FindingAnswer<'_>> = found.iter().map(FindingAnswer::new).collect();
    let others = design.others(asked);
    let whole = HeatsAnswer {
        sources: SourceAnswer::all(&prepared, design.units),
        findings: found,
        riveted: design.riveted(asked),
        other_choices: priced(&prepared, &heats)
            .iter()
            .map(PricedAnswer::new)
            .collect(),
        procedures: others.iter().map(ComparedAnswer::new).collect(),
        unread: &asked.lost,
        cautions: cautions(&asked.shop, design.steel),
        source: THERMAL_SOURCE,
    };
    answer["heats"] = serde_json::to_value(whole).map_err(unwritten)?;
    json(&answer)
}

#[derive(Serialize)]
struct HeatAnswer {
    /// Nothing for cold work, and where no source serves.
    source: Option<String>,
    goes_in: bool,
    /// Why no source serves; nothing where one does.
    why: Option<String>,
    end_first: Option<&'static str>,
    aslant_deg: Option<f64>,
    enters_circle_mm: Option<f64>,
    heated_from_mm: Option<f64>,
    heated_to_mm: Option<f64>,
    /// How many pieces it is done to.
    pieces: u32,
    /// Of one piece.
    heats: usize,
    /// Of one piece, all heats.
    heating_s: f64,
    /// That a heat leaves to work in.
    working_s: f64,
    /// That one piece asks for.
    hammering_s: f64,
    ready_s: f64,
    starts_c: f64,
    heated_to_c: f64,
    /// The part that burns before the rest is at heat; nothing where none does.
    burns: Option<&'static str>,
    burns_at_mm: Option<f64>,
    /// Every source with the reason why the piece does not go in; nothing where it does.
    fits: Vec<FitAnswer>,
}

#[derive(Serialize)]
struct FitAnswer {
    source: String,
    goes_in: bool,
    why: Option<String>,
}

impl HeatAnswer {
    fn new(prepared: &Prepared, heated: &Heated, units: Units) -> Self {
        let show = units.show();
        let row = &prepared.rows[heated.row];
        let name = |at: usize| prepared.shop.sources[at].name.clone();
        let offer = heated.source.and_then(|at| prepared.offer(heated.row, at));
        let fits = row.offers.iter().enumerate().map(|(at, own)| FitAnswer {
            source: name(at),
            goes_in: own.is_ok(),
            why: own.as_ref().err().map(|why| why.words(show)),
        });
        let unserved = heated.how == How::Unserved;
        Self {
            source: heated.source.map(name),
            goes_in: offer.is_some(),
            why: unserved.then(|| "no heat source of the shop serves".to_owned()),
            end_first: offer.map(|own| end_key(own.entry.end)),
            aslant_deg: offer.and_then(|own| own.entry.tilt).map(f64::to_degrees),
            enters_circle_mm: offer.map(|own| own.entry.circle_mm),
            heated_from_mm: offer.map(|own| own.entry.heated_mm.0),
            heated_to_mm: offer.map(|own| own.entry.heated_mm.1),
            pieces: heated.pieces,
            heats: heated.heats_s.len(),
            heating_s: heated.heats_s.iter().sum(),
            working_s: heated.working_s,
            hammering_s: heated.hammering_s,
            ready_s: heated.ready_s,
            starts_c: heated.starts_celsius,
            heated_to_c: heated.target_celsius,
            burns: heated.burns.map(|spot| spot.part.name()),
            burns_at_mm: heated.burns.map(|spot| spot.at_mm),
            fits: fits.collect(),
        }
    }
}

#[derive(Serialize)]
struct TotalsAnswer {
    heats: u32,
    changes: u32,
    time_s: f64,
    heating_s: f64,
    ready_s: f64,
    handling_s: f64,
    working_s: f64,
    machine_kwh: f64,
    fuel_kg: f64,
    unserved: u32,
    burnt: u32,
    scale_percent: f64,
}

impl TotalsAnswer {
    fn new(prepared: &Prepared, heats: &HeatPlan) -> Self {
        let totals = heats.totals;
        Self {
            heats: totals.heats,
            changes: totals.changes,
            time_s: totals.time_s,
            heating_s: totals.heating_s,
            ready_s: totals.ready_s,
            handling_s: totals.handling_s,
            working_s: totals.working_s,
            machine_kwh: totals.kwh,
            fuel_kg: totals.fuel_kg,
            unserved: totals.unserved,
            burnt: totals.burnt,
            scale_percent: scale_percent(prepared, heats),
        }
    }
}

#[derive(Serialize)]
struct HeatsAnswer<'a> {
    sources: Vec<SourceAnswer>,
    findings: Vec<FindingAnswer<'a>>,
    riveted: Vec<String>,
    other_choices: Vec<PricedAnswer>,
    procedures: Vec<ComparedAnswer>,
    unread: &'a [String],
    cautions: Vec<&'static str>,
    source: &'static str,
}

#[derive(Serialize)]
struct SourceAnswer {
    source: String,
    hot_length_mm: f64,
    no_longer: Option<String>,
}

impl SourceAnswer {
    fn all(prepared: &Prepared, units: Units) -> Vec<Self> {
        let own = prepared.shop.sources.iter().enumerate();
        let told = own.map(|(at, source)| Self {
            source: source.name.clone(),
            hot_length_mm: source.hot_length_mm(),
            no_longer: no_longer(prepared, at, units.show()),
        });
        told.collect()
    }
}

#[derive(Serialize)]
struct PricedAnswer {
    said: String,
    longer_s: Option<f64>,
    unserved: Vec<usize>,
    burns: Vec<usize>,
}

impl PricedAnswer {
    fn new(own: &Priced) -> Self {
        Self {
            said: own.said.clone(),
            longer_s: own.longer_s,
            unserved: own.unserved.clone(),
            burns: own.burns.clone(),
        }
    }
}

#[derive(Serialize)]
struct ComparedAnswer {
    procedure: &'static str,
    heats: u32,
    changes: u32,
    time_s: f64,
    unserved: u32,
    burnt: u32,
}

impl ComparedAnswer {
    fn new(own: &Compared) -> Self {
        Self {
            procedure: own.procedure.word(),
            heats: own.heats,
            changes: own.changes,
            time_s: own.time_s,
            unserved: own.unserved,
            burnt: own.burnt,
        }
    }
}

struct List {
    text: String,
    units: Units,
    /// What is heated.
    whose: &'static str,
}

impl List {
    fn line(&mut self, words: std::fmt::Arguments<'_>) {
        writeln!(self.text, "{words}").expect("a text takes what is written to it");
    }

    fn heats(&mut self, design: &Subject<'_>, prepared: &Prepared, asked: &Asked) {
        let show = self.units.show();
        let heats = heat_plan(prepared);
        self.line(format_args!(
            "\nHeats, the steel made {} hot; the heat in it by {THERMAL_SOURCE}:",
            made_hot(prepared, &heats, show)
        ));
        for lost in &asked.lost {
            self.line(format_args!("  not read: {lost}"));
        }
        for heated in &heats.operations {
            self.heated(prepared, heated);
        }
        self.totals(prepared, &heats);
        for finding in noticed(prepared, &heats, show) {
            self.line(format_args!("{finding}"));
        }
        self.line(format_args!("\nWhat each source lets through:"));
        for at in 0..prepared.shop.sources.len() {
            let name = &prepared.shop.sources[at].name;
            match no_longer(prepared, at, show) {
                Some(said) => self.line(format_args!("  {said}")),
                None => self.line(format_args!("  {name}: serves to the end")),
            }
        }
        let pair = design.riveted(asked);
        if !pair.is_empty() {
            self.line(format_args!("\nThe riveted pair, to be set hot:"));
        }
        for said in pair {
            self.line(format_args!("  {said}"));
        }
        self.others(design, prepared, (&heats, asked));
        self.line(format_args!(""));
        for words in cautions(&asked.shop, design.steel) {
            self.line(format_args!("{words}"));
        }
    }

    fn heated(&mut self, prepared: &Prepared, heated: &Heated) {
        let (number, step) = (heated.number, heated.step);
        let words = heated.words(prepared);
        let words = words.unwrap_or_else(|| "cold".to_owned());
        self.line(format_args!("{number:>3}. {step}: {words}"));
    }

    fn totals(&mut self, prepared: &Prepared, heats: &HeatPlan) {
        let totals = heats.totals;
        let changes = match totals.changes {
            0 => "no change of source".to_owned(),
            1 => "1 source made ready".to_owned(),
            count => format!("{count} times a source made ready"),
        };
        let whose = capital(self.whose);
        self.line(format_args!(
            "{}: {} heats, {changes}, {} in all: {} heating, {} making ready, {} to the anvil and \
             back, {} working",
            whose,
            totals.heats,
            spoken(totals.time_s),
            spoken(totals.heating_s),
            spoken(totals.ready_s),
            spoken(totals.handling_s),
            spoken(totals.working_s)
        ));
        if totals.kwh > 0.0 {
            self.line(format_args!("The machine draws {:.1} kWh", totals.kwh));
        }
        if totals.fuel_kg > 0.0 {
            self.line(format_args!("Fuel: {:.1} kg", totals.fuel_kg));
        }
        let whose = self.whose;
        self.line(format_args!(
            "Scale of these heats: {:.1} % of {whose} (an estimate)",
            scale_percent(prepared, heats)
        ));
    }

    fn others(
        &mut self,
        design: &Subject<'_>,
        prepared: &Prepared,
        (heats, asked): (&HeatPlan, &Asked),
    ) {
        let others = priced(prepared, heats);
        if !others.is_empty() {
            self.line(format_args!("\nOther choices:"));
        }
        for other in others {
            self.line(format_args!("  {}", other.said));
        }
        let all = design.others(asked);
        let Some((first, rest)) = all.split_first() else {
            return;
        };
        for other in rest {
            self.line(format_args!("  {}", first.against(other)));
        }
    }
}

/// How hot the sources of a plan make the steel: `1150 °C`, `1080 to 1150 °C`.
fn made_hot(prepared: &Prepared, heats: &HeatPlan, show: Show) -> String {
    let hot = heats.operations.iter().filter(|own| own.how == How::Hot);
    let ends = hot.fold(None, |ends: Option<(f64, f64)>, own| {
        let (low, high) = ends.unwrap_or((own.target_celsius, own.target_celsius));
        Some((low.min(own.target_celsius), high.max(own.target_celsius)))
    });
    let (low, high) = ends.unwrap_or((prepared.target_celsius, prepared.target_celsius));
    let [low, high] = [low, high].map(|celsius| show.temperature(celsius));
    if low == high {
        high
    } else {
        format!("{low} to {high}")
    }
}

/// Writes each operation in its source as SVG.
pub(super) fn draw_into<'a>(
    folder: &std::path::Path,
    (design, plan): (impl Into<Subject<'a>>, &Plan),
    asked: &Asked,
) -> Result<(), String> {
    let design = design.into();
    files::make_folder(folder)?;
    let prepared = Prepared::new(design.steel, plan, &asked.shop);
    for heated in heat_plan(&prepared).operations {
        let Some(source) = heated.source else {
            continue;
        };
        let drawn = draw::heat(&prepared, plan, (heated.row, source), design.units.show());
        let name = format!("heat-{:02}.svg", heated.number);
        let title = format!("{}: {}", design.name, heated.step);
        let svg = ink::svg(&drawn, &title);
        files::write_whole(&folder.join(name), svg.as_bytes())?;
    }
    Ok(())
}

/// Writes sources to begin with.
pub(super) fn examples(wanted: &arguments::Sources) -> Outcome {
    let sources = Sources::default();
    files::write_whole(&wanted.out, sources.write().as_bytes())?;
    let names: String = sources
        .sources
        .iter()
        .map(|source| format!("  {}\n", source.name))
        .collect();
    let path = wanted.out.display();
    Ok(Done::said(format!(
        "{path}: sources to begin with; change each to what you have\n{names}"
    )))
}

/// Which coil would do the most of some designs.
pub(super) fn coil(wanted: &arguments::Coil, places: &Places) -> Outcome {
    let asked = asked(wanted.sources.as_deref(), places)?;
    let asked = asked.unwrap_or_else(|| Asked {
        shop: Sources::default(),
        lost: Vec::new(),
    });
    let mut made = Vec::new();
    for file in &wanted.files {
        let named = |what: String| format!("{}: {what}", file.display());
        let filed = shelf::read(&files::bytes(file)?);
        let filed = filed.map_err(|error| named(error.to_string()))?;
        made.extend(cut_wanted::designs(filed).map_err(named)?);
    }
    let prepared: Vec<Prepared> = made
        .iter()
        .map(|made| Prepared::new(made.bar().steel, &usual_plan(made), &asked.shop))
        .collect();
    let all: Vec<&Prepared> = prepared.iter().collect();
    let Some(units) = made.first().map(Made::units) else {
        return Err("name a design".to_owned());
    };
    let show = units.show();
    let Some(advice) = reinwright_core::heats::helper::best_coil(&all, units.unit()) else {
        return Err(
            "no coil that this machine drives heats any of it: change the machine in the sources"
                .to_owned(),
        );
    };
    let words = advice.words(show);
    if !wanted.json {
        let text = asked.lost.iter().map(|lost| format!("not read: {lost}"));
        let text: Vec<String> = text.chain(words).collect();
        return Ok(Done::said(text.join("\n") + "\n"));
    }
    let coil = advice.source.coil().ok_or("only coils are advised")?;
    let answer = CoilAnswer {
        bore_mm: coil.bore.mm(),
        turns: coil.turns,
        advance_mm: coil.advance.mm(),
        hot_length_mm: coil.hot_length_mm(),
        serves: advice.serves.len(),
        of: advice.hot,
        inductance_uh: advice.tuned.inductance_uh,
        resonance_khz: advice.tuned.resonance_khz,
        most_turns: advice.tuned.most_turns,
        said: words,
    };
    Ok(Done::said(json(&answer)?))
}

fn usual_plan(made: &Made) -> Plan {
    use reinwright_core::making::{plan, plan_tool, usual, usual_for_tool};
    match made {
        Made::Pair(design) => {
            let model = resolve(design);
            let (balance, procedure) = (balance_of(design, &model), usual(design, &model));
            plan(design, &model, &balance, procedure)
        }
        Made::Tool(tool) => {
            let known = ToolAnswers::to(tool);
            plan_tool(tool, &known.model, &known.balance, usual_for_tool(tool))
        }
    }
}

#[derive(Serialize)]
struct CoilAnswer {
    bore_mm: f64,
    turns: f64,
    advance_mm: f64,
    hot_length_mm: f64,
    serves: usize,
    of: usize,
    inductance_uh: f64,
    resonance_khz: Option<f64>,
    most_turns: Option<f64>,
    said: Vec<String>,
}
