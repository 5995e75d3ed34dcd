//! One heat followed along the piece and through its thickness: cells of steel, each with its heat, what
//! flows between them and through their skin. Heat is what is kept, and the temperature follows from it,
//! so that none is lost between steps.

use super::clock::{AIR_CELSIUS, HeatTable, Surroundings};
use super::heating::{
    DIFFUSIVITY_MM2_S, FIRE_SLOWER, GAS_SLOWER, MOST_ACROSS_CELSIUS, Thick, taken_w,
};
use super::induction::{penetration_mm, steel_at};
use super::middle::{Body, steady_heat};
use super::offer::Offer;
use super::prepared::Prepared;
use super::source::{Source, SourceKind};
use super::stand::{Bulk, Stand};
use crate::number::bessel::round_bar_factor;
use crate::steel::DENSITY_KG_MM3;
use crate::steel::thermal::{Theta, conductivity_w_mk};

/// How warm a piece is along its steel, counted from the tip, so that it holds at every stage.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Warmth {
    /// Steel from the tip and how warm it is there, mm³ and °C; nothing for a cold piece.
    pub at: Vec<(f64, f64)>,
}

impl Warmth {
    /// How warm it is at a place, °C.
    fn celsius(&self, steel_mm3: f64) -> f64 {
        let next = self.at.partition_point(|(own, _)| *own < steel_mm3);
        match (
            next.checked_sub(1).and_then(|at| self.at.get(at)),
            self.at.get(next),
        ) {
            (Some(a), Some(b)) => {
                let t = (steel_mm3 - a.0) / (b.0 - a.0).max(f64::MIN_POSITIVE);
                a.1 + (b.1 - a.1) * t
            }
            (Some(own), None) | (None, Some(own)) => own.1,
            (None, None) => AIR_CELSIUS,
        }
    }
}

/// A moment of a heat at the middle of what must be hot.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Moment {
    /// s after the piece went in.
    pub seconds: f64,
    /// At the skin, °C.
    pub skin_celsius: f64,
    /// In the middle of the section, °C.
    pub middle_celsius: f64,
}

/// Where the heat of a heat went, J.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Account {
    /// Given to the steel.
    pub given_j: f64,
    /// Lost through its skin.
    pub lost_j: f64,
    /// Held by it at the end over what it held at the beginning.
    pub held_j: f64,
}

/// One heat and what is left of it when the piece has been worked.
#[derive(Debug, Clone, PartialEq)]
pub struct Course {
    /// In the heat and on the anvil.
    pub moments: Vec<Moment>,
    /// When the piece came out, s.
    pub out_s: f64,
    /// Along the piece when it comes out, mm from the tip and °C.
    pub along: Vec<(f64, f64)>,
    /// Along it when it has been worked.
    pub left_along: Vec<(f64, f64)>,
    /// The same for the next heat.
    pub left: Warmth,
    /// Where the heat went, to the end of the work.
    pub account: Account,
}

/// Length of a cell, mm, where the piece is not so long that there would be too many.
const CELL_MM: f64 = 6.0;
const MOST_CELLS: f64 = 160.0;
/// The most by which a cell changes in a step, °C.
const STEP_CELSIUS: f64 = 10.0;
/// A heat is given up after so long, s.
const LONGEST_S: f64 = 3600.0;

/// Follows a heat of an operation in a source, from what the piece has kept; `None` where the source
/// does not serve.
pub fn course(
    prepared: &Prepared,
    (row, source): (usize, usize),
    start: &Warmth,
) -> Option<Course> {
    let offer = prepared.offer(row, source)?;
    let own = &prepared.rows[row];
    let mut bar = Bar::new(prepared, own.stand.as_ref()?, start);
    let fire = Fire {
        source: &prepared.shop.sources[source],
        offer,
    };
    let heated = offer.entry.heated_mm;
    let needs = own.needs_mm?;
    // Of what is worked in turns, what lies in the heat.
    let needs = (needs.0.max(heated.0), needs.1.min(heated.1));
    let middle = bar.nearest(f64::midpoint(needs.0, needs.1));
    let mut told = Told {
        moments: Vec::new(),
        middle,
    };
    let began = bar.heat_j();
    let out_s = told.heat(&mut bar, &fire, needs);
    let along = bar.along();
    told.work(&mut bar, prepared, (needs, out_s));
    bar.account.held_j = bar.heat_j() - began;
    Some(Course {
        moments: told.moments,
        out_s,
        along,
        left_along: bar.along(),
        left: bar.warmth(),
        account: bar.account,
    })
}

struct Fire<'a> {
    source: &'a Source,
    offer: &'a Offer,
}

struct Cell {
    at_mm: f64,
    steel_mm3: f64,
    volume_mm3: f64,
    skin_mm2: f64,
    /// To the next cell, mm².
    passes_mm2: f64,
    j_kg: f64,
    celsius: f64,
    /// Into the skin, W.
    taken_w: f64,
}

struct Bar<'a> {
    heat: &'a HeatTable,
    cells: Vec<Cell>,
    long_mm: f64,
    account: Account,
}

impl<'a> Bar<'a> {
    fn new(prepared: &'a Prepared, stand: &Stand, start: &Warmth) -> Self {
        let heat = &prepared.laws().heat;
        let count = (stand.length_mm / CELL_MM).clamp(4.0, MOST_CELLS).round();
        let long_mm = stand.length_mm / count;
        let mut cells = Vec::new();
        let mut i = 0.0;
        while i < count {
            let (from, to) = (long_mm * i, long_mm * (i + 1.0));
            let bulk = stand.bulk((from, to));
            let steel_mm3 = stand.volume_to(f64::midpoint(from, to));
            let celsius = start.celsius(steel_mm3);
            cells.push(Cell {
                at_mm: f64::midpoint(from, to),
                steel_mm3,
                volume_mm3: bulk.volume_mm3.max(1e-3),
                skin_mm2: bulk.skin_mm2,
                passes_mm2: bulk.volume_mm3 / long_mm,
                j_kg: heat.j_kg(celsius),
                celsius,
                taken_w: 0.0,
            });
            i += 1.0;
        }
        Self {
            heat,
            cells,
            long_mm,
            account: Account::default(),
        }
    }

    fn nearest(&self, at_mm: f64) -> usize {
        let off = |cell: &Cell| (cell.at_mm - at_mm).abs();
        let cells = self.cells.iter().enumerate();
        let nearest = cells.min_by(|a, b| off(a.1).total_cmp(&off(b.1)));
        nearest.map_or(0, |(at, _)| at)
    }

    fn heat_j(&self) -> f64 {
        let of = |cell: &Cell| cell.volume_mm3 * DENSITY_KG_MM3 * cell.j_kg;
        self.cells.iter().map(of).sum()
    }

    fn along(&self) -> Vec<(f64, f64)> {
        self.cells
            .iter()
            .map(|cell| (cell.at_mm, cell.celsius))
            .collect()
    }

    fn warmth(&self) -> Warmth {
        Warmth {
            at: self
                .cells
                .iter()
                .map(|cell| (cell.steel_mm3, cell.celsius))
                .collect(),
        }
    }

    /// The mean over the steel between two places, °C.
    fn mean(&self, (from, to): (f64, f64)) -> f64 {
        let inside = self
            .cells
            .iter()
            .filter(|cell| (from..=to).contains(&cell.at_mm));
        let (heat, steel) = inside.fold((0.0, 0.0), |(heat, steel), cell| {
            (heat + cell.j_kg * cell.volume_mm3, steel + cell.volume_mm3)
        });
        if steel > 0.0 {
            self.heat.celsius(heat / steel)
        } else {
            AIR_CELSIUS
        }
    }

    /// One step with what each cell takes through its skin; gives how long it was, s.
    fn step(&mut self, most_s: f64) -> f64 {
        let flows = self.flows();
        let seconds = self.seconds(&flows).min(most_s);
        for (cell, passed) in self.cells.iter_mut().zip(&flows) {
            let mass = cell.volume_mm3 * DENSITY_KG_MM3;
            cell.j_kg += (passed + cell.taken_w) * seconds / mass;
            cell.celsius = self.heat.celsius(cell.j_kg);
            let joule = cell.taken_w * seconds;
            if joule > 0.0 {
                self.account.given_j += joule;
            } else {
                self.account.lost_j -= joule;
            }
        }
        seconds
    }

    /// What each cell gets from its neighbours, W.
    fn flows(&self) -> Vec<f64> {
        let mut flows = vec![0.0; self.cells.len()];
        for i in 1..self.cells.len() {
            let (a, b) = (&self.cells[i - 1], &self.cells[i]);
            let between = f64::midpoint(a.celsius, b.celsius);
            let lambda = conductivity_w_mk(Theta::nearest(between)) / 1e3;
            let area = a.passes_mm2.min(b.passes_mm2);
            let flow = lambda * area * (a.celsius - b.celsius) / self.long_mm;
            flows[i - 1] -= flow;
            flows[i] += flow;
        }
        flows
    }

    /// A step in which no cell changes by much, and heat does not pass a cell by.
    fn seconds(&self, flows: &[f64]) -> f64 {
        /// Of cold steel, mm²/s: 53 W/(m K) over 7850 kg/m³ times 440 J/(kg K).
        const MOST_DIFFUSIVITY: f64 = 15.4;
        /// Less than a half, or the explicit step swings; cells differ in size, so that a fifth is taken.
        const STABLE: f64 = 0.2;
        let mut seconds = STABLE * self.long_mm * self.long_mm / MOST_DIFFUSIVITY;
        for (cell, passed) in self.cells.iter().zip(flows) {
            let mass = cell.volume_mm3 * DENSITY_KG_MM3;
            /// The least specific heat, J/(kg K): what a step may change by is then never more.
            const LEAST_HEAT: f64 = 440.0;
            let rate = (passed + cell.taken_w).abs() / (mass * LEAST_HEAT);
            if rate > 0.0 {
                seconds = seconds.min(STEP_CELSIUS / rate);
            }
        }
        seconds
    }
}

impl Fire<'_> {
    /// Sets what each cell takes in the heat, W.
    fn kindle(&self, bar: &mut Bar<'_>) {
        let (from, to) = self.offer.entry.heated_mm;
        let inside = |cell: &Cell| (from..=to).contains(&cell.at_mm);
        let (around, slower) = match &self.source.kind {
            SourceKind::Gas(gas) => (Surroundings::forge(gas.chamber.celsius()), GAS_SLOWER),
            SourceKind::Solid(fire) => (Surroundings::forge(fire.fire.celsius()), FIRE_SLOWER),
            SourceKind::Coil(_) => (Surroundings::AIR, 1.0),
        };
        for cell in &mut bar.cells {
            let around = if inside(cell) {
                around
            } else {
                Surroundings::AIR
            };
            let slower = if inside(cell) { slower } else { 1.0 };
            cell.taken_w = around.flow_w_mm2(cell.celsius) * cell.skin_mm2 / slower;
        }
        let SourceKind::Coil(coil) = &self.source.kind else {
            return;
        };
        let mean = bar.mean((from, to));
        let load = self.offer.load;
        let most = {
            let lambda = conductivity_w_mk(Theta::nearest(mean)) / 1e3;
            2.0 * lambda * MOST_ACROSS_CELSIUS / Thick::of(load).size_mm * load.skin_mm2
        };
        let given = taken_w(coil, load, mean).0.min(most);
        let share = |cell: &Cell| {
            let depth = penetration_mm(steel_at(cell.celsius), coil.frequency_khz);
            let bar_mm = 4.0 * cell.volume_mm3 / cell.skin_mm2.max(f64::MIN_POSITIVE);
            let steel = steel_at(cell.celsius);
            // Heat in the skin goes with √(ρ·μ) of what is there.
            let skin = (steel.resistivity_uohm_m * steel.permeability).sqrt();
            cell.skin_mm2 * skin * round_bar_factor(bar_mm / 2.0 / depth)
        };
        let shares: Vec<f64> = bar
            .cells
            .iter()
            .map(|cell| if inside(cell) { share(cell) } else { 0.0 })
            .collect();
        let all: f64 = shares.iter().sum();
        for (cell, share) in bar.cells.iter_mut().zip(shares) {
            cell.taken_w += given * share / all.max(f64::MIN_POSITIVE);
        }
    }
}

struct Told {
    moments: Vec<Moment>,
    middle: usize,
}

impl Told {
    /// Heats until what must be hot is at heat in the mean.
    fn heat(&mut self, bar: &mut Bar<'_>, fire: &Fire<'_>, needs: (f64, f64)) -> f64 {
        let (mut seconds, mut last) = (0.0, f64::NEG_INFINITY);
        while bar.mean(needs) < fire.offer.target_celsius && seconds < LONGEST_S {
            fire.kindle(bar);
            last = self.note(bar, (seconds, seconds), last);
            seconds += bar.step(LONGEST_S);
        }
        self.note(bar, (seconds, seconds), f64::NEG_INFINITY);
        seconds
    }

    /// Cools on the anvil until what is worked is at the end of its range. The anvil takes its share from what
    /// is struck.
    fn work(&mut self, bar: &mut Bar<'_>, prepared: &Prepared, (needs, out_s): ((f64, f64), f64)) {
        let lower = prepared.range.lower_celsius;
        let anvil = 1.0 / prepared.shop.smith.working;
        let (mut seconds, mut last) = (out_s, out_s);
        while bar.mean(needs) > lower && seconds < out_s + LONGEST_S {
            for cell in &mut bar.cells {
                let struck = (needs.0..=needs.1).contains(&cell.at_mm);
                let share = if struck { anvil } else { 1.0 };
                cell.taken_w = share * Surroundings::AIR.flow_w_mm2(cell.celsius) * cell.skin_mm2;
            }
            seconds += bar.step(LONGEST_S);
            last = self.note(bar, (seconds, seconds - out_s), last);
        }
    }

    /// Notes a moment, no more than one in some part of a second; gives the last that was noted.
    fn note(&mut self, bar: &Bar<'_>, (seconds, since): (f64, f64), last: f64) -> f64 {
        const EVERY_S: f64 = 0.5;
        if seconds < last + EVERY_S {
            return last;
        }
        let cell = &bar.cells[self.middle];
        let bulk = Bulk {
            volume_mm3: cell.volume_mm3,
            skin_mm2: cell.skin_mm2,
            length_mm: bar.long_mm,
        };
        let thick = Thick::of(bulk);
        let fourier = DIFFUSIVITY_MM2_S * since / (thick.size_mm * thick.size_mm);
        let across = steady_heat(thick.body, fourier);
        let mean = match thick.body {
            Body::Cylinder => 2.0 * fourier,
            Body::Slab => fourier,
        };
        let lambda = conductivity_w_mk(Theta::nearest(cell.celsius)) / 1e3;
        let scale = cell.taken_w / cell.skin_mm2.max(f64::MIN_POSITIVE) * thick.size_mm / lambda;
        self.moments.push(Moment {
            seconds,
            skin_celsius: cell.celsius + scale * (across.skin - mean),
            middle_celsius: cell.celsius + scale * (across.middle - mean),
        });
        seconds
    }
}
