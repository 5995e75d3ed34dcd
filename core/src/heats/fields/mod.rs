//! Every value of what is heated with, told once: to be checked, shown and typed over.

mod value;

use super::source::{Coil, Gas, Machine, Smith, Solid, Source, SourceKind};
use crate::asked::Range;
use crate::steel::thermal::HOLDS_CELSIUS;
use crate::units::quoted;

pub use value::HeatField;
use value::{Held, Unity, field};

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
/// Power, kW.
const POWER: Range = Range::new(0.1, 1000.0);
/// Frequencies, kHz.
const KILOHERTZ: Range = Range::new(0.05, 1000.0);

impl Smith {
    /// Its values, to be shown and typed over.
    pub fn fields(&mut self) -> Vec<HeatField<'_>> {
        vec![
            field(
                (
                    "working",
                    "Workable",
                    "Of the time that steel stays in its forging range in still air, the part in which you can work it",
                ),
                Range::new(0.05, 1.5),
                Held::Number(&mut self.working, Unity::Share),
            ),
            field(
                (
                    "pace",
                    "Pace",
                    "How much forging you do in a minute, over a practised hand hammer; a power hammer does more",
                ),
                Range::new(0.1, 20.0),
                Held::Number(&mut self.pace, Unity::Share),
            ),
            field(
                (
                    "handling_s",
                    "Handling",
                    "From the heat to the anvil and back, at each heat",
                ),
                Range::new(0.0, 600.0),
                Held::Number(&mut self.handling_s, Unity::Sign(" s")),
            ),
            field(
                (
                    "clearance",
                    "Clearance",
                    "Free on every side between the work and a coil or an opening: what touches a coil shorts it",
                ),
                Range::new(0.0, 50.0),
                Held::Length(&mut self.clearance),
            ),
            field(
                (
                    "heat_to",
                    "Heated to",
                    "How hot you make the steel; leave it empty for what the steel bears",
                ),
                HEAT_TO,
                Held::MaybeHeat(&mut self.heat_to),
            ),
        ]
    }
}

impl Machine {
    /// Its values, to be shown and typed over.
    pub fn fields(&mut self) -> Vec<HeatField<'_>> {
        let least = self.least_khz;
        vec![
            field(
                ("power_kw", "Power", "What it draws at full load"),
                POWER,
                Held::Number(&mut self.power_kw, Unity::Sign(" kW")),
            ),
            field(
                ("least_khz", "From", "The lowest frequency at which it runs"),
                KILOHERTZ,
                Held::Number(&mut self.least_khz, Unity::Sign(" kHz")),
            ),
            field(
                ("most_khz", "To", "The highest frequency at which it runs"),
                Range::new(least, KILOHERTZ.most),
                Held::Number(&mut self.most_khz, Unity::Sign(" kHz")),
            ),
            field(
                (
                    "capacitor_uf",
                    "Capacitors",
                    "All that lie across the coil: with it they make the frequency",
                ),
                Range::new(0.001, 1e5),
                Held::Number(&mut self.capacitor_uf, Unity::Sign(" \u{b5}F")),
            ),
            field(
                ("tube", "Tube", "What its coils are wound from, across"),
                TUBE,
                Held::Length(&mut self.tube),
            ),
        ]
    }
}

impl Source {
    /// Its values, to be shown and typed over; its name is none of them.
    pub fn fields(&mut self) -> Vec<HeatField<'_>> {
        let hint = match self.kind {
            SourceKind::Gas(_) | SourceKind::Solid(_) => "To light it and bring it to heat",
            SourceKind::Coil(_) => "To take another coil off the machine and put this one on",
        };
        let mut all = vec![field(
            ("ready_minutes", "Made ready", hint),
            Range::new(0.0, 240.0),
            Held::Number(&mut self.ready_minutes, Unity::Sign(" min")),
        )];
        all.extend(match &mut self.kind {
            SourceKind::Gas(gas) => gas.fields(),
            SourceKind::Solid(fire) => fire.fields(),
            SourceKind::Coil(coil) => coil.fields(),
        });
        all
    }
}

/// What a forge or a fire burns.
fn fuel(it: &mut Option<f64>) -> HeatField<'_> {
    field(
        (
            "fuel_kg_h",
            "Fuel",
            "What it burns in an hour; leave it empty if you do not know",
        ),
        Range::new(0.01, 200.0),
        Held::MaybeNumber(it, Unity::Hourly),
    )
}

impl Gas {
    fn fields(&mut self) -> Vec<HeatField<'_>> {
        vec![
            field(
                ("chamber", "Chamber", "How hot it is inside"),
                FIRE,
                Held::Heat(&mut self.chamber),
            ),
            field(
                (
                    "opening_width",
                    "Opening, wide",
                    "What the piece goes in through",
                ),
                BORE,
                Held::Length(&mut self.opening_width),
            ),
            field(
                (
                    "opening_height",
                    "Opening, high",
                    "What the piece goes in through",
                ),
                BORE,
                Held::Length(&mut self.opening_height),
            ),
            field(
                (
                    "length",
                    "Length",
                    "How long the chamber is: so long is the heat",
                ),
                LONG,
                Held::Length(&mut self.length),
            ),
            field(
                ("back", "Back", "Whether a bar can stick out behind"),
                Range::ANY,
                Held::Back(&mut self.back),
            ),
            fuel(&mut self.fuel_kg_h),
        ]
    }
}

impl Solid {
    fn fields(&mut self) -> Vec<HeatField<'_>> {
        vec![
            field(
                ("fire", "Heart", "How hot the heart of the fire is"),
                FIRE,
                Held::Heat(&mut self.fire),
            ),
            field(
                ("hot_spot", "Hot spot", "How long the heat is that it gives"),
                LONG,
                Held::Length(&mut self.hot_spot),
            ),
            fuel(&mut self.fuel_kg_h),
        ]
    }
}

impl Coil {
    fn fields(&mut self) -> Vec<HeatField<'_>> {
        // Turns that touch short each other.
        let most_tube = self.advance.mm().clamp(TUBE.least, TUBE.most);
        let sizes = [
            field(
                (
                    "wound",
                    "Wound",
                    "Round, or open at the side: an ear, a hairpin or two flat coils, into which a piece is laid whatever its ends are",
                ),
                Range::ANY,
                Held::Wound(&mut self.wound),
            ),
            field(
                (
                    "bore",
                    "Bore",
                    "What is free inside, its sleeve in place; of an open coil between its sides",
                ),
                BORE,
                Held::Length(&mut self.bore),
            ),
            field(
                ("turns", "Turns", "How many times the tube goes round"),
                Range::new(1.0, 100.0),
                Held::Number(&mut self.turns, Unity::Sign("")),
            ),
            field(
                (
                    "advance",
                    "Advance",
                    "From turn to turn: turns times advance is the length of the coil",
                ),
                ADVANCE,
                Held::Length(&mut self.advance),
            ),
            field(
                (
                    "tube",
                    "Tube",
                    "Across its outside, no more than the advance",
                ),
                Range::new(TUBE.least, most_tube),
                Held::Length(&mut self.tube),
            ),
        ];
        let driven = [
            field(
                (
                    "power_kw",
                    "Power",
                    "What the machine draws with it at full load",
                ),
                POWER,
                Held::Number(&mut self.power_kw, Unity::Sign(" kW")),
            ),
            field(
                (
                    "frequency_khz",
                    "Frequency",
                    "At which the machine runs with it",
                ),
                KILOHERTZ,
                Held::Number(&mut self.frequency_khz, Unity::Sign(" kHz")),
            ),
            field(
                (
                    "lead",
                    "Leads",
                    "From the machine to the coil, each so long",
                ),
                Range::new(0.0, LONG.most),
                Held::Length(&mut self.lead),
            ),
            field(
                (
                    "efficiency",
                    "Efficiency",
                    "Part of the power that ends in the steel; leave it empty to have it reckoned",
                ),
                Range::new(1.0, 99.0),
                Held::MaybeNumber(&mut self.efficiency, Unity::Sign(" %")),
            ),
            field(
                (
                    "cold_lag_s",
                    "Cold start",
                    "What a cold start takes longer while the machine finds its pitch",
                ),
                Range::new(0.0, 300.0),
                Held::Number(&mut self.cold_lag_s, Unity::Sign(" s")),
            ),
        ];
        sizes.into_iter().chain(driven).collect()
    }
}

fn first_wrong(fields: &[HeatField<'_>]) -> Option<String> {
    fields.iter().find_map(HeatField::wrong)
}

/// What is wrong with a smith's habits.
pub(super) fn smith(it: &Smith) -> Option<String> {
    let mut own = *it;
    first_wrong(&own.fields())
}

/// What is wrong with a machine's limits.
pub(super) fn machine(it: &Machine) -> Option<String> {
    let mut own = *it;
    first_wrong(&own.fields())
}

/// What is wrong with a source.
pub(super) fn source(it: &Source) -> Option<String> {
    let name = it.name.trim();
    if let Some(why) = wrong_name(name) {
        return Some(why);
    }
    let wrong = first_wrong(&it.clone().fields());
    wrong.map(|why| format!("\"{}\": {why}", quoted(name, 40)))
}

/// What is wrong with a source's name.
pub fn wrong_name(name: &str) -> Option<String> {
    let name = name.trim();
    let wrong = name.is_empty() || name.chars().count() > LONGEST_NAME;
    wrong.then(|| format!("its name is empty or over {LONGEST_NAME} letters"))
}
