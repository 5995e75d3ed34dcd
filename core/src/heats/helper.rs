//! Which coil would do the most: bore, turns and advance for a design or a family, what it cannot do, and
//! whether the machine can drive it.

use super::entry::WhyNot;
use super::examples;
use super::induction::{LOADED_BAND, Winding, leads_uh, nagaoka_uh, resonance_khz};
use super::noticed::next_bore_length;
use super::prepared::{Prepared, Row};
use super::source::{Coil, Machine, Source, SourceKind};
use super::words::{listed, rough};
use crate::units::{Length, Show, Unit};

/// A coil with what it does.
#[derive(Debug, Clone, PartialEq)]
pub struct Advice {
    /// The coil.
    pub source: Source,
    /// Operations that it heats, over all designs: the place of the design and the number.
    pub serves: Vec<(usize, usize)>,
    /// Those that it cannot, and why.
    pub cannot: Vec<(usize, usize, WhyNot)>,
    /// All operations that want heat.
    pub hot: usize,
    /// What the machine makes of it.
    pub tuned: Tuned,
}

/// A coil on a machine.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Tuned {
    /// Empty, its leads counted, µH.
    pub inductance_uh: f64,
    /// With the machine's capacitors, kHz; `None` where they are not known.
    pub resonance_khz: Option<f64>,
    /// The most turns of this bore and advance with which the machine stays in its range.
    pub most_turns: Option<f64>,
}

/// How a coil swings.
pub fn tuned(coil: &Coil, machine: Option<&Machine>) -> Tuned {
    let inductance = |turns: f64| {
        let winding = Winding {
            turns,
            diameter_mm: coil.mean_diameter_mm(),
            length_mm: turns * coil.advance.mm(),
        };
        nagaoka_uh(winding) + leads_uh(coil.lead.mm())
    };
    let inductance_uh = inductance(coil.turns);
    let most_turns = machine.map(|own| {
        /// Nobody winds more.
        const MOST: u32 = 40;
        let holds = |turns: &u32| in_range(own, inductance(f64::from(*turns)));
        f64::from((1..=MOST).filter(holds).max().unwrap_or(0))
    });
    Tuned {
        inductance_uh,
        resonance_khz: machine.map(|own| resonance_khz(inductance_uh, own.capacitor_uf)),
        most_turns,
    }
}

/// Whether a machine drives an inductance, steel in it or not.
pub fn in_range(machine: &Machine, inductance_uh: f64) -> bool {
    let at = |part: f64| resonance_khz(inductance_uh * part, machine.capacitor_uf);
    let range = machine.least_khz..=machine.most_khz;
    range.contains(&at(1.0 + LOADED_BAND)) && range.contains(&at(1.0 - LOADED_BAND))
}

/// Bores looked at beyond the least.
const BORES: u32 = 12;
/// Turns looked at.
const TURNS: std::ops::RangeInclusive<u32> = 3..=9;
/// Advances looked at, in 1/8 in or in 3 mm.
const ADVANCES: [u32; 3] = [4, 6, 8];

/// The coil that heats the most operations of some designs, and of those the one with which all its
/// operations take the least time; `None` where nothing is heated or the machine drives none.
pub fn best_coil(designs: &[&Prepared], unit: Unit) -> Option<Advice> {
    let first = designs.first()?;
    let machine = first.shop.machine.as_ref();
    let rows: Vec<(usize, &Row)> = designs
        .iter()
        .enumerate()
        .flat_map(|(at, own)| own.rows.iter().map(move |row| (at, row)))
        .filter(|(_, row)| row.needs_mm.is_some())
        .collect();
    let mut best: Option<(usize, f64, Source)> = None;
    for source in candidates(designs, (&rows, machine), unit) {
        let (mut served, mut seconds) = (0, 0.0);
        for (at, row) in &rows {
            if let Ok(offer) = designs[*at].tried(row, &source) {
                served += 1;
                seconds += offer.curve.heat_s(20.0, offer.target_celsius) * f64::from(offer.heats);
            }
        }
        let better = best
            .as_ref()
            .is_none_or(|(most, least, _)| served > *most || (served == *most && seconds < *least));
        if better {
            best = Some((served, seconds, source));
        }
    }
    let (served, _, source) = best?;
    (served > 0).then(|| advice(designs, &rows, source))
}

/// Coils that the machine drives, the smallest bore first.
fn candidates(
    designs: &[&Prepared],
    (rows, machine): (&[(usize, &Row)], Option<&Machine>),
    unit: Unit,
) -> Vec<Source> {
    let clearance = designs[0].shop.smith.clearance.mm();
    let slices = rows.iter().filter_map(|(_, row)| row.stand.as_ref());
    let circles = slices.flat_map(|stand| stand.slices.iter().map(|slice| slice.circle_mm));
    let least = circles.fold(f64::INFINITY, f64::min) + 2.0 * clearance;
    let step = match unit {
        Unit::Inch | Unit::Foot => Unit::Inch.mm() / 8.0,
        Unit::Millimetre | Unit::Centimetre => 3.0,
    };
    let mut all = Vec::new();
    for more in 0..2 * BORES {
        let bore = next_bore_length(least + step * f64::from(more), unit);
        for turns in TURNS {
            for advance in ADVANCES {
                let advance = Length::from_mm(step * f64::from(advance), unit);
                let source = examples::coil("wound for this", bore, (f64::from(turns), advance));
                all.push(fitted(source, machine));
            }
        }
    }
    all.retain(|source| driven(source, machine));
    all
}

/// The coil with the machine's tube, power and frequency.
fn fitted(mut source: Source, machine: Option<&Machine>) -> Source {
    if let (SourceKind::Coil(coil), Some(machine)) = (&mut source.kind, machine) {
        coil.tube = machine.tube;
        coil.power_kw = machine.power_kw;
        coil.frequency_khz = tuned(coil, Some(machine))
            .resonance_khz
            .unwrap_or(coil.frequency_khz);
    }
    source
}

fn driven(source: &Source, machine: Option<&Machine>) -> bool {
    let (Some(coil), Some(machine)) = (source.coil(), machine) else {
        return true;
    };
    coil.tube.mm() < coil.advance.mm() && in_range(machine, tuned(coil, None).inductance_uh)
}

fn advice(designs: &[&Prepared], rows: &[(usize, &Row)], source: Source) -> Advice {
    let (mut serves, mut cannot) = (Vec::new(), Vec::new());
    for &(at, row) in rows {
        match designs[at].tried(row, &source) {
            Ok(_) => serves.push((at, row.number)),
            Err(why) => cannot.push((at, row.number, why)),
        }
    }
    let coil = source.coil().expect("only coils are looked at");
    Advice {
        tuned: tuned(coil, designs[0].shop.machine.as_ref()),
        serves,
        cannot,
        hot: rows.len(),
        source,
    }
}

impl Advice {
    /// What it says, a sentence each without a period.
    pub fn words(&self, show: Show) -> Vec<String> {
        let coil = self.source.coil().expect("only coils are advised");
        let mut all = vec![format!(
            "a coil of {} bore, {} turns, {} from turn to turn heats {} of {} operations",
            coil.bore,
            coil.turns,
            coil.advance,
            self.serves.len(),
            self.hot
        )];
        if let Some((_, _, why)) = self.cannot.first() {
            let numbers: Vec<String> = self
                .cannot
                .iter()
                .map(|(_, number, _)| number.to_string())
                .collect();
            let word = if numbers.len() == 1 {
                "operation"
            } else {
                "operations"
            };
            all.push(format!(
                "it cannot heat {word} {}: {}",
                listed(&numbers),
                why.words(show)
            ));
        }
        all.push(format!(
            "empty it has {:.2} \u{b5}H with its leads, some {:.0} % more or less with steel in it",
            self.tuned.inductance_uh,
            100.0 * LOADED_BAND
        ));
        if let (Some(khz), Some(turns)) = (self.tuned.resonance_khz, self.tuned.most_turns) {
            all.push(format!(
                "with the machine's capacitors it swings at {khz:.0} kHz; up to {turns} turns of it \
                 stay in the machine's range"
            ));
        }
        all.push(format!(
            "its heat is {} long",
            show.text(rough(show, coil.hot_length_mm()))
        ));
        all
    }
}
