//! What the values of heat sources may be.

use super::source::{Coil, Gas, Machine, Smith, Solid, Source, SourceKind};
use crate::asked::Range;
use crate::steel::thermal::HOLDS_CELSIUS;
use crate::units::{Length, quoted};

/// Longest name, in characters.
const LONGEST_NAME: usize = 80;

/// A chamber or a fire, °C: from a low red to the limit of firebrick.
const FIRE: Range = Range::new(700.0, 1700.0);
/// What steel is heated to, °C: above the hardening range, and no hotter than its laws are known.
const HEAT_TO: Range = Range::new(800.0, HOLDS_CELSIUS.1);
/// An opening or a bore, mm.
const BORE: Range = Range::new(5.0, 600.0);
/// A chamber, a hot spot or a lead, mm.
const LONG: Range = Range::new(10.0, 3000.0);
/// A tube, mm.
const TUBE: Range = Range::new(2.0, 40.0);
/// From turn to turn, mm.
const ADVANCE: Range = Range::new(2.0, 200.0);

/// A value with its name, its limits and its unit.
type Told = (&'static str, f64, Range, &'static str);

fn mm(name: &'static str, length: Length, range: Range) -> Told {
    (name, length.mm(), range, " mm")
}

fn outside(values: &[Told]) -> Option<String> {
    let wrong = values
        .iter()
        .find(|(_, value, range, _)| !range.holds(*value));
    wrong.map(|(name, value, range, unit)| {
        format!(
            "{name} is {value}{unit} and not from {}{unit} to {}{unit}",
            range.least, range.most
        )
    })
}

/// What is wrong with a smith's habits.
pub(super) fn smith(it: &Smith) -> Option<String> {
    let mut all = vec![
        ("working", it.working, Range::new(0.05, 1.5), ""),
        ("pace", it.pace, Range::new(0.1, 20.0), ""),
        ("handling_s", it.handling_s, Range::new(0.0, 600.0), " s"),
        mm("clearance", it.clearance, Range::new(0.0, 50.0)),
    ];
    if let Some(heat) = it.heat_to {
        all.push(("heat_to", heat.celsius(), HEAT_TO, " \u{b0}C"));
    }
    outside(&all)
}

/// What is wrong with a machine's limits.
pub(super) fn machine(it: &Machine) -> Option<String> {
    let values = [
        ("power_kw", it.power_kw, Range::new(0.1, 1000.0), " kW"),
        ("least_khz", it.least_khz, Range::new(0.05, 1000.0), " kHz"),
        (
            "most_khz",
            it.most_khz,
            Range::new(it.least_khz, 1000.0),
            " kHz",
        ),
        (
            "capacitor_uf",
            it.capacitor_uf,
            Range::new(0.001, 1e5),
            " \u{b5}F",
        ),
        mm("tube", it.tube, TUBE),
    ];
    outside(&values)
}

/// What is wrong with a source.
pub(super) fn source(it: &Source) -> Option<String> {
    let name = it.name.trim();
    if name.is_empty() || name.chars().count() > LONGEST_NAME {
        return Some(format!("its name is empty or over {LONGEST_NAME} letters"));
    }
    let ready = (
        "ready_minutes",
        it.ready_minutes,
        Range::new(0.0, 240.0),
        " min",
    );
    let wrong = outside(&[ready]).or_else(|| match &it.kind {
        SourceKind::Gas(gas) => gas_values(gas),
        SourceKind::Solid(fire) => solid_values(fire),
        SourceKind::Coil(coil) => coil_values(coil),
    });
    wrong.map(|why| format!("\"{}\": {why}", quoted(name, 40)))
}

fn fuel(it: Option<f64>) -> Told {
    let burnt = it.unwrap_or(1.0);
    ("fuel_kg_h", burnt, Range::new(0.01, 200.0), " kg/h")
}

fn gas_values(it: &Gas) -> Option<String> {
    outside(&[
        ("chamber", it.chamber.celsius(), FIRE, " \u{b0}C"),
        mm("opening_width", it.opening_width, BORE),
        mm("opening_height", it.opening_height, BORE),
        mm("length", it.length, LONG),
        fuel(it.fuel_kg_h),
    ])
}

fn solid_values(it: &Solid) -> Option<String> {
    outside(&[
        ("fire", it.fire.celsius(), FIRE, " \u{b0}C"),
        mm("hot_spot", it.hot_spot, LONG),
        fuel(it.fuel_kg_h),
    ])
}

fn coil_values(it: &Coil) -> Option<String> {
    let most_tube = it.advance.mm().clamp(TUBE.least, TUBE.most);
    let efficiency = it.efficiency.unwrap_or(70.0);
    outside(&[
        mm("bore", it.bore, BORE),
        ("turns", it.turns, Range::new(1.0, 100.0), ""),
        mm("advance", it.advance, ADVANCE),
        // Turns that touch short each other.
        mm("tube", it.tube, Range::new(TUBE.least, most_tube)),
        ("power_kw", it.power_kw, Range::new(0.1, 1000.0), " kW"),
        (
            "frequency_khz",
            it.frequency_khz,
            Range::new(0.05, 1000.0),
            " kHz",
        ),
        mm("lead", it.lead, Range::new(0.0, LONG.most)),
        ("efficiency", efficiency, Range::new(1.0, 99.0), " %"),
        ("cold_lag_s", it.cold_lag_s, Range::new(0.0, 300.0), " s"),
    ])
}
