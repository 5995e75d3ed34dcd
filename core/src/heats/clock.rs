//! How long steel takes from one temperature to another, where its skin alone decides: lumped steel of
//! a volume V and a surface A, whose ratio V/A makes all times longer in proportion.
//!
//! dt = ρ·(V/A)·dH/q(θ) with the heat H of the standard and the flow q through the skin. It is summed
//! over steps of H and not of the temperature, so that the peak of the specific heat at 735 °C is no
//! steeper than all else, and no heat is lost between steps.

use crate::steel::DENSITY_KG_MM3;
use crate::steel::thermal::{HOLDS_CELSIUS, Theta, enthalpy_j_kg};

/// The constant of Stefan and Boltzmann, W/(mm² K⁴): 5.670374e-8 W/(m² K⁴) (CODATA, from memory).
const RADIATION: f64 = 5.670_374e-14;
/// How well scaled steel radiates. The table of total emissivity that makers of thermal cameras print after
/// Bramson, of oxidized iron and steel, has 0.78 to 0.82 from 125 to 525 °C, 0.80 from 200 to 600 °C and
/// 0.89 at 1227 °C. EN 1993-1-2 designs with 0.7, which is on the safe side for a frame in a fire: with it
/// steel would stay an eighth longer in its forging range than smiths tell of.
pub const EMISSIVITY: f64 = 0.8;
/// Heat that still air takes along, W/(mm² K): 12 W/(m² K).
pub const STILL_AIR: f64 = 12e-6;
/// Heat that the gases of a forge bring, W/(mm² K): 30 W/(m² K) (judgement).
pub const FORGE_GAS: f64 = 30e-6;
/// Absolute zero, °C.
const ZERO_CELSIUS: f64 = -273.15;
/// Still air in a shop, °C.
pub const AIR_CELSIUS: f64 = 20.0;

/// What is around the steel.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Surroundings {
    /// How hot it is, °C.
    pub celsius: f64,
    /// How well steel and it radiate to each other, 0 to 1.
    pub emissivity: f64,
    /// What gas brings or takes, W/(mm² K).
    pub convection_w_mm2k: f64,
}

impl Surroundings {
    /// Still air.
    pub const AIR: Self = Self {
        celsius: AIR_CELSIUS,
        emissivity: EMISSIVITY,
        convection_w_mm2k: STILL_AIR,
    };

    /// A chamber or a fire all round.
    pub fn forge(celsius: f64) -> Self {
        Self {
            celsius,
            emissivity: EMISSIVITY,
            convection_w_mm2k: FORGE_GAS,
        }
    }

    /// Heat that goes into the skin at a temperature, W/mm²: negative where the steel is the hotter.
    pub fn flow_w_mm2(self, celsius: f64) -> f64 {
        let fourth = |celsius: f64| (celsius - ZERO_CELSIUS).powi(4);
        self.emissivity * RADIATION * (fourth(self.celsius) - fourth(celsius))
            + self.convection_w_mm2k * (self.celsius - celsius)
    }
}

/// Steps of the tables, °C: where the standard's laws change, at 600, 735 and 900, is an entry.
const STEP: f64 = 2.5;
/// Entries of the tables.
const ENTRIES: usize = 473;

/// The heat of steel over its temperature, as a table: what is asked thousands of times.
#[derive(Debug, Clone, PartialEq)]
pub struct HeatTable {
    /// J/kg at 20 °C and each step over it.
    heat: Vec<f64>,
}

fn celsius_of(entry: usize) -> f64 {
    #[allow(clippy::cast_precision_loss, reason = "hundreds")]
    let steps = entry as f64;
    HOLDS_CELSIUS.0 + STEP * steps
}

/// The entry before a temperature, and how far past it: up to one whole step at the last.
fn place(celsius: f64) -> (usize, f64) {
    let last = ENTRIES - 2;
    let steps = ((celsius - HOLDS_CELSIUS.0) / STEP).max(0.0);
    #[allow(
        clippy::cast_possible_truncation,
        clippy::cast_sign_loss,
        clippy::cast_precision_loss,
        reason = "some hundreds, and none below nothing"
    )]
    let (entry, before) = {
        let entry = (steps as usize).min(last);
        (entry, entry as f64)
    };
    (entry, (steps - before).min(1.0))
}

fn read(table: &[f64], celsius: f64) -> f64 {
    let (entry, past) = place(celsius);
    table[entry] + (table[entry + 1] - table[entry]) * past
}

impl Default for HeatTable {
    fn default() -> Self {
        let heat = (0..ENTRIES).map(|entry| enthalpy_j_kg(Theta::nearest(celsius_of(entry))));
        Self {
            heat: heat.collect(),
        }
    }
}

impl HeatTable {
    /// Heat at a temperature, J/kg.
    pub fn j_kg(&self, celsius: f64) -> f64 {
        read(&self.heat, celsius)
    }

    /// The temperature at a heat, °C.
    pub fn celsius(&self, j_kg: f64) -> f64 {
        let next = self
            .heat
            .partition_point(|&own| own < j_kg)
            .clamp(1, ENTRIES - 1);
        let (a, b) = (self.heat[next - 1], self.heat[next]);
        celsius_of(next - 1) + STEP * ((j_kg - a) / (b - a)).clamp(0.0, 1.0)
    }
}

/// Times over temperatures in some surroundings, for steel of which a mm² of skin has a mm³.
#[derive(Debug, Clone, PartialEq)]
pub struct Clock {
    /// s per mm of V/A since 20 °C; the time runs toward 20 °C where the steel cools.
    seconds: Vec<f64>,
    /// The hottest that is reached, °C.
    reaches: f64,
}

impl Clock {
    /// The clock of some surroundings.
    pub fn new(heat: &HeatTable, around: Surroundings) -> Self {
        /// So near to what is around it the steel takes for ever.
        const NEAR: f64 = 3.0;
        let heats = around.celsius > 2.0 * AIR_CELSIUS;
        let reaches = if heats {
            (around.celsius - NEAR).min(HOLDS_CELSIUS.1)
        } else {
            HOLDS_CELSIUS.1
        };
        let mut seconds = Vec::with_capacity(ENTRIES);
        let mut sum = 0.0;
        seconds.push(0.0);
        for entry in 1..ENTRIES {
            let (from, to) = (celsius_of(entry - 1), celsius_of(entry));
            let taken = DENSITY_KG_MM3 * (heat.heat[entry] - heat.heat[entry - 1]);
            let flow = around.flow_w_mm2(f64::midpoint(from, to)).abs();
            if to <= reaches || !heats {
                sum += taken / flow.max(f64::MIN_POSITIVE);
            }
            seconds.push(sum);
        }
        Self { seconds, reaches }
    }

    /// The hottest that steel comes there, °C.
    pub fn reaches_celsius(&self) -> f64 {
        self.reaches
    }

    /// Time from one temperature to another, s, at a V/A in mm; the same both ways.
    pub fn between_s(&self, from: f64, to: f64, ratio_mm: f64) -> f64 {
        ratio_mm * (read(&self.seconds, to) - read(&self.seconds, from)).abs()
    }

    /// Where steel has come after some time of heating, °C.
    pub fn heated(&self, from: f64, seconds: f64, ratio_mm: f64) -> f64 {
        let at = read(&self.seconds, from) + seconds / ratio_mm;
        self.at(at).min(self.reaches)
    }

    /// Where steel has come after some time of cooling, °C.
    pub fn cooled(&self, from: f64, seconds: f64, ratio_mm: f64) -> f64 {
        self.at(read(&self.seconds, from) - seconds / ratio_mm)
    }

    fn at(&self, seconds: f64) -> f64 {
        let next = self.seconds.partition_point(|&own| own < seconds);
        if next == 0 {
            return HOLDS_CELSIUS.0;
        }
        if next == ENTRIES {
            return HOLDS_CELSIUS.1;
        }
        let (a, b) = (self.seconds[next - 1], self.seconds[next]);
        celsius_of(next - 1) + STEP * ((seconds - a) / (b - a))
    }
}

/// Volume over surface of a long piece of bar, mm: a quarter of the diameter or the side of a round or a
/// square, and what a flat of width b and thickness t has, b·t/(2·(b + t)).
pub fn flat_ratio_mm(width: f64, thickness: f64) -> f64 {
    width * thickness / (2.0 * (width + thickness))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn heat_and_temperature_are_one() {
        let table = HeatTable::default();
        for celsius in [20.0, 51.0, 600.0, 733.0, 736.0, 901.0, 1200.0] {
            let back = table.celsius(table.j_kg(celsius));
            assert!((back - celsius).abs() < 1e-6, "{back}, not {celsius}");
        }
    }

    #[test]
    fn time_goes_back_as_it_came() {
        let heat = HeatTable::default();
        let air = Clock::new(&heat, Surroundings::AIR);
        let took = air.between_s(1150.0, 850.0, 2.5);
        assert!((air.cooled(1150.0, took, 2.5) - 850.0).abs() < 1e-6);
        let forge = Clock::new(&heat, Surroundings::forge(1250.0));
        let took = forge.between_s(20.0, 1150.0, 2.5);
        assert!((forge.heated(20.0, took, 2.5) - 1150.0).abs() < 1e-6);
        assert!(forge.heated(20.0, 1e9, 2.5) <= 1200.0);
    }
}
