//! What a smith heats with, and how they work: forge, fire, induction coil, and their own habits.

use serde::{Deserialize, Serialize};

use super::text::{percent_or_unknown, temperature};
use crate::units::{Length, Temperature, Unit};

/// The shop's heat, as one document.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Sources {
    /// The file format, [`super::SOURCES_FORMAT`].
    pub heat_sources: u32,
    /// Whose work is reckoned with.
    pub smith: Smith,
    /// What the induction machine can do, where it is known.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub machine: Option<Machine>,
    /// What there is to heat with.
    pub sources: Vec<Source>,
}

/// How a smith works, in a few numbers that one timed heat teaches.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields, default)]
pub struct Smith {
    /// Of the time in which steel cools in still air, the part in which it can be worked: the anvil
    /// takes its share.
    pub working: f64,
    /// How much forging is done in a minute, over that of a practised hand hammer.
    pub pace: f64,
    /// From heat to anvil and back, at each heat, s.
    pub handling_s: f64,
    /// Between the work and a coil or an opening, on every side.
    pub clearance: Length,
    /// How hot the steel is made; as hot as is good for it where nothing is said.
    #[serde(with = "temperature", skip_serializing_if = "Option::is_none")]
    pub heat_to: Option<Temperature>,
}

/// Limits of an induction machine.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Machine {
    /// Power that it draws at full load, kW.
    pub power_kw: f64,
    /// The lowest frequency at which it runs, kHz.
    pub least_khz: f64,
    /// The highest.
    pub most_khz: f64,
    /// Its capacitors, µF: with the coil they make the frequency.
    pub capacitor_uf: f64,
    /// The tube that its coils are wound from.
    pub tube: Length,
}

/// One thing to heat with.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Source {
    /// What the smith calls it.
    pub name: String,
    /// To make it ready: to light and warm a forge or a fire, or to put this coil on the machine,
    /// minutes.
    pub ready_minutes: f64,
    /// Which kind.
    pub kind: SourceKind,
}

/// The kinds of heat.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub enum SourceKind {
    /// A chamber that gas heats.
    Gas(Gas),
    /// An open fire of coal, coke or charcoal.
    Solid(Solid),
    /// A coil on an induction machine.
    Coil(Coil),
}

/// A gas forge.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Gas {
    /// How hot the chamber is.
    #[serde(with = "temperature::always")]
    pub chamber: Temperature,
    /// The opening, wide.
    pub opening_width: Length,
    /// The opening, high.
    pub opening_height: Length,
    /// The chamber, long.
    pub length: Length,
    /// Whether a bar can stick out behind.
    pub back: Back,
    /// Gas that it burns, kg an hour, where it is known.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub fuel_kg_h: Option<f64>,
}

/// The back of a chamber.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub enum Back {
    /// A bar goes in as far as the chamber is long.
    Closed,
    /// A bar goes through.
    Open,
}

/// A solid-fuel fire.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Solid {
    /// How hot its heart is.
    #[serde(with = "temperature::always")]
    pub fire: Temperature,
    /// How long the heat is that it gives.
    pub hot_spot: Length,
    /// Fuel that it burns, kg an hour, where it is known.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub fuel_kg_h: Option<f64>,
}

/// An induction coil: a single layer of tube.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Coil {
    /// How a piece comes into it.
    #[serde(default, skip_serializing_if = "Wound::is_round")]
    pub wound: Wound,
    /// What is free inside, its sleeve in place; of an open coil between its sides.
    pub bore: Length,
    /// Turns.
    pub turns: f64,
    /// From turn to turn.
    pub advance: Length,
    /// The tube, across.
    pub tube: Length,
    /// Power at the machine, kW.
    pub power_kw: f64,
    /// Frequency, kHz.
    pub frequency_khz: f64,
    /// Each lead from machine to coil, long.
    pub lead: Length,
    /// Part of that power that ends in the steel, per cent; reckoned where it is unknown.
    #[serde(with = "percent_or_unknown")]
    pub efficiency: Option<f64>,
    /// What a cold start takes longer while the machine finds its pitch, s.
    pub cold_lag_s: f64,
}

/// How a piece comes into a coil.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
pub enum Wound {
    /// Round: it goes in with an end first.
    #[default]
    Round,
    /// An ear, a hairpin or two flat coils: it is laid between the sides, whatever its ends are.
    Open,
}

impl Wound {
    /// What a file need not say.
    #[allow(
        clippy::trivially_copy_pass_by_ref,
        reason = "serde hands over a reference"
    )]
    fn is_round(&self) -> bool {
        *self == Self::Round
    }
}

impl Default for Smith {
    /// Working half of the still-air time: the anvil takes the other half (common practice, no source); ten
    /// seconds to fetch and to put back; 1/8 in free on each side (both judgement).
    fn default() -> Self {
        Self {
            working: 0.5,
            pace: 1.0,
            handling_s: 10.0,
            clearance: Length::fraction(1, 8, Unit::Inch),
            heat_to: None,
        }
    }
}

impl Smith {
    /// The smith that one timed heat tells of: how long it could be worked over how long it stays in
    /// its range in still air.
    #[must_use]
    pub fn timed(self, worked_s: f64, still_air_s: f64) -> Self {
        /// Beyond these it was another heat that was timed.
        const SENSE: (f64, f64) = (0.05, 1.5);
        let working = (worked_s / still_air_s).clamp(SENSE.0, SENSE.1);
        Self { working, ..self }
    }
}

impl Source {
    /// The coil, if it is one.
    pub fn coil(&self) -> Option<&Coil> {
        match &self.kind {
            SourceKind::Coil(coil) => Some(coil),
            SourceKind::Gas(_) | SourceKind::Solid(_) => None,
        }
    }

    /// How long the heat is that it gives, mm.
    pub fn hot_length_mm(&self) -> f64 {
        match &self.kind {
            SourceKind::Gas(gas) => gas.length.mm(),
            SourceKind::Solid(fire) => fire.hot_spot.mm(),
            SourceKind::Coil(coil) => coil.hot_length_mm(),
        }
    }
}

impl Coil {
    /// From its first turn to its last, mm.
    pub fn length_mm(&self) -> f64 {
        self.turns * self.advance.mm()
    }

    /// How long the heat is that it gives, mm: turns times advance, and a quarter of the bore past
    /// each end, where the field fades (judgement; five turns at 3/4 in in a bore of 1 in give 4 1/4 in).
    pub fn hot_length_mm(&self) -> f64 {
        self.length_mm() + 2.0 * self.past_end_mm()
    }

    /// How far its heat reaches past an end, mm.
    pub fn past_end_mm(&self) -> f64 {
        self.bore.mm() / 4.0
    }

    /// Across the middle of its tube, mm.
    pub fn mean_diameter_mm(&self) -> f64 {
        self.bore.mm() + self.tube.mm()
    }
}
