//! A mend in the smith's words.

use super::{Change, Cost, Mend, Ways};
use crate::asked::{Units, Value, capital};
use crate::finding::Part;
use crate::units::Length;

/// Less than this is not worth a word, mm and kg.
const LEAST_MM: f64 = 0.4;
const LEAST_KG: f64 = 0.005;

impl Change {
    /// `Neck depth 1/2 in to 9/16 in`.
    pub fn words(&self) -> String {
        let Self { name, from, to, .. } = self;
        match to {
            Value::Choice { .. } => format!("{name}: {to} instead of {from}"),
            Value::Length(_) | Value::Angle(_) | Value::Percent(_) | Value::Count(_) => {
                format!("{name} {from} to {to}")
            }
        }
    }
}

impl Cost {
    /// `adds 1/8 in of bar, 0.02 lb`; empty where nothing is worth a word.
    pub fn words(&self, units: Units) -> String {
        let bar = size(self.adds_bar_mm, units).map(|by| format!("{by} of bar"));
        let mass = (self.adds_mass_kg.abs() >= LEAST_KG)
            .then(|| units.show().mass(self.adds_mass_kg.abs()));
        let gap = size(self.adds_hand_gap_mm, units);
        let mut said = Vec::new();
        let mut last = "";
        for (by, words) in [(self.adds_bar_mm, bar), (self.adds_mass_kg, mass)] {
            let way = if by > 0.0 { "adds" } else { "saves" };
            let Some(words) = words else { continue };
            said.push(if last == way {
                words
            } else {
                format!("{way} {words}")
            });
            last = way;
        }
        let wider = if self.adds_hand_gap_mm > 0.0 {
            "wider"
        } else {
            "narrower"
        };
        said.extend(gap.map(|by| format!("hand gap {by} {wider}")));
        said.join(", ")
    }

    /// Lengths of two bars are not the same steel: only the cut is told.
    fn of_other_bar(&self, units: Units) -> String {
        let way = if self.adds_bar_mm > 0.0 {
            "longer"
        } else {
            "shorter"
        };
        let cut = size(self.adds_bar_mm, units);
        cut.map_or(String::new(), |by| format!("to be cut {by} {way}"))
    }
}

impl Mend {
    /// What it changes: `Neck depth 1/2 in to 9/16 in`.
    pub fn what(&self) -> String {
        let changes: Vec<String> = self.changes.iter().map(Change::words).collect();
        capital(&changes.join(", and "))
    }

    /// What it costs: `adds 1/8 in of bar, 0.02 lb`.
    pub fn costs(&self, units: Units) -> String {
        let of_bar = |change: &Change| change.part == Part::Bar;
        let cost = if self.changes.iter().any(of_bar) {
            self.cost.of_other_bar(units)
        } else {
            self.cost.words(units)
        };
        if cost.is_empty() {
            "costs no bar".to_owned()
        } else {
            cost
        }
    }

    /// Both: `Neck depth 1/2 in to 9/16 in: adds 1/8 in of bar, 0.02 lb`.
    pub fn words(&self, units: Units) -> String {
        format!("{}: {}", self.what(), self.costs(units))
    }
}

impl Ways {
    /// What is to be said before the mends, if anything.
    pub fn said(&self) -> Option<&'static str> {
        match self {
            Self::Mends(_) => None,
            Self::FromOtherBar(_) => Some("Not from this bar, but from another"),
            Self::NotFromThisBar => Some(
                "Not from this bar: no value that was tried clears this without harm elsewhere, \
                 nor do two together",
            ),
        }
    }
}

/// A size without its sign as a smith measures it; `None` where it is next to nothing.
fn size(mm: f64, units: Units) -> Option<String> {
    let measured = || Length::measured(mm.abs(), units.unit()).to_string();
    (mm.abs() >= LEAST_MM).then(measured)
}
