//! Heat sources to begin with: usual kinds and sizes, none of anybody's make.

use super::SOURCES_FORMAT;
use super::source::{Back, Coil, Gas, Machine, Smith, Solid, Source, SourceKind, Sources, Wound};
use crate::units::{Length, Scale, Temperature, Unit};

/// A small shop in which there is one of each (sizes are common practice, no source): a gas forge,
/// a coal fire, and three coils for a machine of 12 kW. All are to be changed to what the smith has.
impl Default for Sources {
    fn default() -> Self {
        Self {
            heat_sources: SOURCES_FORMAT,
            smith: Smith::default(),
            machine: Some(Machine {
                power_kw: POWER_KW,
                least_khz: 20.0,
                most_khz: 200.0,
                capacitor_uf: 8.0,
                tube: inch(3, 8),
            }),
            sources: vec![
                gas_forge(),
                coal_fire(),
                coil("tight coil, long heat", inch(1, 1), (5.0, inch(1, 1))),
                coil("tight coil, short heat", inch(1, 1), (5.0, inch(3, 4))),
                coil("wide coil", inch(3, 2), (4.0, inch(3, 4))),
            ],
        }
    }
}

/// One of each kind, to add to a shop and to change to what the smith has.
pub fn ready() -> Vec<Source> {
    vec![
        gas_forge(),
        small_forge(),
        coal_fire(),
        coil("tight coil, short heat", inch(1, 1), (5.0, inch(3, 4))),
        coil("tight coil, long heat", inch(1, 1), (5.0, inch(1, 1))),
        coil("wide coil", inch(3, 2), (4.0, inch(3, 4))),
        ear(),
    ]
}

/// Power of the machine in the examples, kW: enough that a 3/4 in bar comes to heat in about a minute, as
/// fast as its middle follows.
const POWER_KW: f64 = 12.0;

fn inch(over: u32, under: u32) -> Length {
    Length::fraction(over, under, Unit::Inch)
}

/// Sizes are in inches, and so temperatures are in the scale that goes with them.
fn fahrenheit(degrees: u32) -> Temperature {
    let text = format!("{degrees} F");
    let read = Temperature::parse(&text, Scale::Fahrenheit);
    read.expect("a whole number is a temperature")
}

fn gas_forge() -> Source {
    Source {
        name: "gas forge".to_owned(),
        ready_minutes: 10.0,
        kind: SourceKind::Gas(Gas {
            chamber: fahrenheit(2300),
            opening_width: inch(4, 1),
            opening_height: inch(3, 1),
            length: inch(10, 1),
            back: Back::Open,
            fuel_kg_h: Some(1.5),
        }),
    }
}

fn small_forge() -> Source {
    Source {
        name: "small forge".to_owned(),
        ready_minutes: 6.0,
        kind: SourceKind::Gas(Gas {
            chamber: fahrenheit(2200),
            opening_width: inch(3, 1),
            opening_height: inch(5, 2),
            length: inch(6, 1),
            back: Back::Closed,
            fuel_kg_h: Some(0.6),
        }),
    }
}

fn coal_fire() -> Source {
    Source {
        name: "coal fire".to_owned(),
        ready_minutes: 15.0,
        kind: SourceKind::Solid(Solid {
            fire: fahrenheit(2450),
            hot_spot: inch(4, 1),
            fuel_kg_h: Some(2.5),
        }),
    }
}

/// An ear-shaped coil, into which a riveted pair is laid.
fn ear() -> Source {
    let mut ear = coil("ear coil", inch(7, 4), (3.0, inch(3, 4)));
    if let SourceKind::Coil(coil) = &mut ear.kind {
        coil.wound = Wound::Open;
    }
    ear
}

/// A coil of 3/8 in tube on the machine of the examples.
pub(super) fn coil(name: &str, bore: Length, (turns, advance): (f64, Length)) -> Source {
    Source {
        name: name.to_owned(),
        ready_minutes: 4.0,
        kind: SourceKind::Coil(Coil {
            wound: Wound::Round,
            bore,
            turns,
            advance,
            tube: inch(3, 8),
            power_kw: POWER_KW,
            frequency_khz: 60.0,
            lead: inch(6, 1),
            efficiency: None,
            cold_lag_s: 5.0,
        }),
    }
}
