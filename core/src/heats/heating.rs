//! How long a piece takes to come to heat in a source, from cold or from what the last heat left.

use std::sync::Arc;

use super::clock::{Clock, HeatTable, Surroundings};
use super::induction::{Coupling, coil_efficiency, steel_at};
use super::middle::{Body, following};
use super::source::{Coil, Source, SourceKind, Wound};
use super::stand::Bulk;
use crate::steel::DENSITY_KG_MM3;
use crate::steel::thermal::{Theta, conductivity_w_mk};

/// Bars lie against a wall, shade each other and cool the chamber: how much longer they take than bars
/// that are surrounded (judgement: smiths' times are half again to two and a half times as long).
pub const GAS_SLOWER: f64 = 1.8;
/// The same in a fire, whose coals touch the bar (judgement).
pub const FIRE_SLOWER: f64 = 1.2;
/// Part of a machine's power that reaches the coil (judgement).
pub const MACHINE_EFFICIENCY: f64 = 0.85;
/// What of that reaches the steel in a coil that is open at the side, over a round one: turns on two
/// sides of it and not all round (judgement).
const OPEN_COIL: f64 = 0.6;
/// The most by which the skin of a bar may be hotter than its middle, °C (judgement: less than from
/// forging heat to burning).
pub const MOST_ACROSS_CELSIUS: f64 = 100.0;
/// What is left of that difference when the bar is taken out, part of it (judgement).
const LEFT_ACROSS: f64 = 0.3;
/// A thing flatter than this heats as a slab and not as a round bar.
const FLAT_FROM: f64 = 2.0;
/// Diffusivity of steel at forging heat, mm²/s: 27.3 W/(m K) over 7850 kg/m³ times 650 J/(kg K).
pub const DIFFUSIVITY_MM2_S: f64 = 5.35;
/// A source must be hotter than what it heats by this, or the heat takes for ever, °C (judgement).
const HOTTER_BY: f64 = 50.0;
/// Steel warmer than this does not start cold, °C: the machine holds its pitch (judgement).
pub const WARM_CELSIUS: f64 = 400.0;

/// What is the same for all heats of a plan.
#[derive(Debug, Clone)]
pub struct Laws {
    /// The heat of steel.
    pub heat: HeatTable,
    /// Cooling in still air.
    pub air: Clock,
    /// Time for the middle of a round bar and of a flat to follow, in size²/diffusivity.
    follows: [f64; 2],
}

impl Default for Laws {
    fn default() -> Self {
        let heat = HeatTable::default();
        let air = Clock::new(&heat, Surroundings::AIR);
        let follows = [Body::Cylinder, Body::Slab].map(|body| following(body, LEFT_ACROSS));
        Self { heat, air, follows }
    }
}

/// A thick-walled look at what is heated: which series it goes by, and its size there, mm.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Thick {
    /// Which series.
    pub body: Body,
    /// Radius, or half the thickness, mm.
    pub size_mm: f64,
}

impl Thick {
    /// Of steel whose mm of length have so much area and skin. Of a flat of width b and thickness t the
    /// ratio is b·t/(2·(b + t)), from which both come back.
    pub fn of(bulk: Bulk) -> Self {
        let ratio = bulk.ratio_mm();
        let area = bulk.volume_mm3 / bulk.length_mm.max(f64::MIN_POSITIVE);
        // b + t = area/(2·ratio)
        let half_sum = area / (4.0 * ratio);
        let rest = (half_sum * half_sum - area).max(0.0).sqrt();
        let (wide, thin) = (half_sum + rest, half_sum - rest);
        if wide > FLAT_FROM * thin {
            Self {
                body: Body::Slab,
                size_mm: thin / 2.0,
            }
        } else {
            Self {
                body: Body::Cylinder,
                size_mm: 2.0 * ratio,
            }
        }
    }

    /// The heat into a mm² of skin that keeps skin and middle so far apart, W/mm²: 2·λ·Δθ/R for both
    /// bodies.
    fn flow_w_mm2(self, across_celsius: f64, celsius: f64) -> f64 {
        let lambda = conductivity_w_mk(Theta::nearest(celsius)) / 1e3;
        2.0 * lambda * across_celsius / self.size_mm
    }
}

/// How a load comes to heat in a source.
#[derive(Debug, Clone)]
pub struct Curve {
    way: Way,
    /// Time for the middle to follow, s.
    pub middle_s: f64,
    /// What a cold start takes longer, s.
    pub lag_s: f64,
    /// How hot it becomes at the most, °C.
    pub reaches_celsius: f64,
}

#[derive(Debug, Clone)]
enum Way {
    /// A clock, the ratio of the load, and how much slower it is.
    Chamber(Arc<Clock>, f64),
    /// Seconds and kWh at each node.
    Coil(Vec<(f64, f64)>),
}

/// A source with what of it is the same for all loads.
#[derive(Debug, Clone)]
pub struct Fired {
    clock: Option<Arc<Clock>>,
    slower: f64,
}

impl Fired {
    /// Makes a source ready to be asked.
    pub fn new(laws: &Laws, source: &Source) -> Self {
        let clock = |celsius| {
            Some(Arc::new(Clock::new(
                &laws.heat,
                Surroundings::forge(celsius),
            )))
        };
        match &source.kind {
            SourceKind::Gas(gas) => Self {
                clock: clock(gas.chamber.celsius()),
                slower: GAS_SLOWER,
            },
            SourceKind::Solid(fire) => Self {
                clock: clock(fire.fire.celsius()),
                slower: FIRE_SLOWER,
            },
            SourceKind::Coil(_) => Self {
                clock: None,
                slower: 1.0,
            },
        }
    }
}

/// Nodes of a coil's curve, °C apart.
const NODE: f64 = 20.0;
const NODES: u32 = 60;

/// How a load heats in a source. The load is what of the piece lies in the heat.
pub fn curve(laws: &Laws, (source, fired): (&Source, &Fired), load: Bulk) -> Curve {
    let thick = Thick::of(load);
    let own = match thick.body {
        Body::Cylinder => laws.follows[0],
        Body::Slab => laws.follows[1],
    };
    let middle_s = own * thick.size_mm * thick.size_mm / DIFFUSIVITY_MM2_S;
    match (&source.kind, &fired.clock) {
        (SourceKind::Coil(coil), _) => in_coil(laws, coil, (load, thick), middle_s),
        (SourceKind::Gas(_) | SourceKind::Solid(_), Some(clock)) => Curve {
            way: Way::Chamber(Arc::clone(clock), load.ratio_mm() * fired.slower),
            // What a chamber gives is so little that the middle keeps up.
            middle_s: 0.0,
            lag_s: 0.0,
            reaches_celsius: clock.reaches_celsius() - HOTTER_BY + 3.0,
        },
        (SourceKind::Gas(_) | SourceKind::Solid(_), None) => Curve {
            way: Way::Coil(Vec::new()),
            middle_s: 0.0,
            lag_s: 0.0,
            reaches_celsius: 0.0,
        },
    }
}

/// Power that a coil gives to a load at a temperature, W, and the part of the machine's that it is.
pub fn taken_w(coil: &Coil, load: Bulk, celsius: f64) -> (f64, f64) {
    let part = match coil.efficiency {
        Some(percent) => percent / 100.0,
        None => {
            let wound = match coil.wound {
                Wound::Round => 1.0,
                Wound::Open => OPEN_COIL,
            };
            wound
                * MACHINE_EFFICIENCY
                * coil_efficiency(coupling(coil, load), steel_at(celsius), coil.frequency_khz)
        }
    };
    (1e3 * coil.power_kw * part, part)
}

/// How a load sits in a coil. The leads lose as the coil's own tube does, and turns without steel in
/// them as those around it.
fn coupling(coil: &Coil, load: Bulk) -> Coupling {
    /// Turns never touch.
    const CLOSEST: f64 = 0.95;
    let bar_mm = 4.0 * load.ratio_mm();
    let tube = std::f64::consts::PI * coil.mean_diameter_mm() * coil.turns;
    let leads = 1.0 + 2.0 * coil.lead.mm() / tube;
    let full = (load.length_mm / coil.hot_length_mm()).clamp(0.05, 1.0);
    Coupling {
        coil_to_bar: coil.mean_diameter_mm() / bar_mm * leads / full,
        bar_mm,
        filled: (coil.tube.mm() / coil.advance.mm()).min(CLOSEST),
    }
}

fn in_coil(laws: &Laws, coil: &Coil, (load, thick): (Bulk, Thick), middle_s: f64) -> Curve {
    let mass = load.volume_mm3 * DENSITY_KG_MM3;
    let mut nodes = vec![(0.0, 0.0)];
    let (mut seconds, mut kwh) = (0.0, 0.0);
    let mut reaches = 20.0;
    for node in 1..NODES {
        let (from, to) = (
            20.0 + NODE * f64::from(node - 1),
            20.0 + NODE * f64::from(node),
        );
        let celsius = f64::midpoint(from, to);
        let (given, part) = taken_w(coil, load, celsius);
        // More than the middle can follow is not given.
        let most = thick.flow_w_mm2(MOST_ACROSS_CELSIUS, celsius) * load.skin_mm2;
        let given = given.min(most);
        let lost = -Surroundings::AIR.flow_w_mm2(celsius) * load.skin_mm2;
        /// With less than this of what is given left over, a heat does not end.
        const LEAST_LEFT: f64 = 0.05;
        let left = given - lost;
        if left < LEAST_LEFT * given {
            break;
        }
        let step = mass * (laws.heat.j_kg(to) - laws.heat.j_kg(from)) / left;
        seconds += step;
        kwh += step * given / part / 3.6e6;
        nodes.push((seconds, kwh));
        reaches = to;
    }
    Curve {
        way: Way::Coil(nodes),
        middle_s,
        lag_s: coil.cold_lag_s,
        reaches_celsius: reaches,
    }
}

impl Curve {
    /// From one temperature to another, s, without lag and without waiting for the middle.
    pub fn between_s(&self, from: f64, to: f64) -> f64 {
        match &self.way {
            Way::Chamber(clock, ratio) => clock.between_s(from, to.max(from), *ratio),
            Way::Coil(nodes) => (read(nodes, to).0 - read(nodes, from).0).max(0.0),
        }
    }

    /// The whole of a heat from one temperature to another, s.
    pub fn heat_s(&self, from: f64, to: f64) -> f64 {
        let cold = from < WARM_CELSIUS;
        self.between_s(from, to) + self.middle_s + if cold { self.lag_s } else { 0.0 }
    }

    /// What the machine draws for it, kWh; nothing for a fire.
    pub fn kwh(&self, from: f64, to: f64) -> f64 {
        match &self.way {
            Way::Chamber(..) => 0.0,
            Way::Coil(nodes) => (read(nodes, to).1 - read(nodes, from).1).max(0.0),
        }
    }
}

fn read(nodes: &[(f64, f64)], celsius: f64) -> (f64, f64) {
    let steps = ((celsius - 20.0) / NODE).max(0.0);
    #[allow(
        clippy::cast_possible_truncation,
        clippy::cast_sign_loss,
        reason = "dozens, never negative"
    )]
    let at = steps as usize;
    match (nodes.get(at), nodes.get(at + 1)) {
        (Some(a), Some(b)) => {
            let past = steps - steps.floor();
            (a.0 + (b.0 - a.0) * past, a.1 + (b.1 - a.1) * past)
        }
        (_, _) => nodes.last().copied().unwrap_or_default(),
    }
}
