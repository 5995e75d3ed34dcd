//! The heats of a plan as JSON.

use reinwright_core::asked::Units;
use reinwright_core::heats::{
    Compared, HeatPlan, Heated, How, Prepared, Priced, cautions, end_key, heat_plan, no_longer,
    noticed, priced, scale_percent,
};
use reinwright_core::making::Plan;
use reinwright_core::steel::thermal::THERMAL_SOURCE;
use serde::Serialize;
use serde_json::Value;

use super::{Asked, Subject};
use crate::command_line::findings::FindingAnswer;
use crate::command_line::json;

/// A plan's answer with `heat` at every operation and the totals of all heats.
pub(in crate::command_line) fn keyed<'a>(
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
    spares: Vec<usize>,
}

impl PricedAnswer {
    fn new(own: &Priced) -> Self {
        Self {
            said: own.said.clone(),
            longer_s: own.longer_s,
            unserved: own.unserved.clone(),
            burns: own.burns.clone(),
            spares: own.spares.clone(),
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
