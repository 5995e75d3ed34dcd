//! Every operation with every source: whether it goes in, how many heats it takes, how long they are.

use super::entry::{AtOnce, Need, Room, WhyNot, entry};
use super::heating::{Curve, Fired, Laws, curve};
use super::offer::Offer;
use super::optimum::{Before, Problem, Ready};
use super::source::{Smith, Source, SourceKind, Sources};
use super::stand::Stand;
use super::uneven::{self, Spot};
use super::work::{at_once, hammering_s, is_weld};
use crate::finding::Part;
use crate::making::{Operation, Plan, Procedure, Step};
use crate::steel::thermal::HOLDS_CELSIUS;
use crate::steel::{ForgingRange, Steel, forging_range};

/// What steel is heated to where the smith says nothing and the steel bears more, °C: a bright orange to
/// yellow (common practice, no source).
pub const USUAL_HEAT_CELSIUS: f64 = 1150.0;
/// The least by which a heat must be over the end of the forging range, °C (judgement).
const LEAST_OVER_CELSIUS: f64 = 80.0;
/// What it is worth not to burn a piece in a forge or a fire, s: it is begun anew (judgement).
const BURNT_S: f64 = 3600.0;
/// The same in a coil, s, which is turned down to let the thick part follow and is watched (judgement).
const HELD_BACK_S: f64 = 300.0;
/// A forge weld wants a fire of this, °C (common practice, no source).
const WELDING_CELSIUS: f64 = 1300.0;

/// An operation of a plan with what each source makes of it.
#[derive(Debug, Clone)]
pub struct Row {
    /// Its number as the smith counts, from 1.
    pub number: usize,
    /// The place of the stage that it is done to, among the plan's stages.
    pub stage: usize,
    /// Which half it is of.
    pub half: usize,
    /// What is done.
    pub step: Step,
    /// The part that is worked.
    pub part: Part,
    /// How many pieces it is done to: both halves, or both ends of one bar; once where the reins of both
    /// are one stretch in the middle of it.
    pub pieces: u32,
    /// What cannot be worked unless it is hot, mm from the tip; `None` for cold work.
    pub needs_mm: Option<(f64, f64)>,
    /// Hammering for one piece by this smith, s.
    pub hammering_s: f64,
    /// How thick the steel is half way through it, over what it was.
    pub thinned: f64,
    /// What each source makes of it, in the order of the sources; nothing for cold work.
    pub offers: Vec<Result<Offer, WhyNot>>,
    /// The piece that is heated; `None` for cold work.
    pub stand: Option<Stand>,
}

/// All that a heat plan is chosen from.
#[derive(Debug, Clone)]
pub struct Prepared {
    /// The shop's heat.
    pub shop: Sources,
    /// The steel's forging range.
    pub range: ForgingRange,
    /// How hot the steel is made, °C.
    pub target_celsius: f64,
    /// How many halves are made alike.
    pub halves: u32,
    /// The operations in order.
    pub rows: Vec<Row>,
    laws: Laws,
    ready: Vec<(Ready, f64)>,
    allowed: Vec<bool>,
}

impl Prepared {
    /// Looks at every operation of a plan with every source.
    pub fn new(steel: Steel, plan: &Plan, shop: &Sources) -> Self {
        let laws = Laws::default();
        let range = forging_range(steel);
        let fired: Vec<Fired> = shop
            .sources
            .iter()
            .map(|own| Fired::new(&laws, own))
            .collect();
        let mut prepared = Self {
            shop: shop.clone(),
            range,
            target_celsius: target(&shop.smith, range),
            halves: halves(plan),
            rows: Vec::new(),
            laws,
            ready: shop.sources.iter().map(ready).collect(),
            allowed: vec![true; shop.sources.len()],
        };
        let mut number = 0;
        for at in 1..plan.stages.len() {
            let Some(operation) = &plan.stages[at].operation else {
                continue;
            };
            number += 1;
            let mut row = prepared.row(operation, (plan, at), &fired);
            row.number = number;
            prepared.rows.push(row);
        }
        prepared
    }

    /// The same choice with some sources put away.
    #[must_use]
    pub fn with_only(&self, allowed: impl Fn(usize) -> bool) -> Self {
        Self {
            allowed: (0..self.shop.sources.len()).map(allowed).collect(),
            ..self.clone()
        }
    }

    /// The laws of heat that it was reckoned with.
    pub fn laws(&self) -> &Laws {
        &self.laws
    }

    /// What a source makes of an operation, if it serves and is not put away.
    pub fn offer(&self, row: usize, source: usize) -> Option<&Offer> {
        let own = self.rows.get(row)?.offers.get(source)?;
        own.as_ref().ok().filter(|_| self.allowed[source])
    }

    /// What a source burns at an operation, if it serves and burns anything.
    pub fn burnt(&self, row: usize, source: usize) -> Option<Spot> {
        self.offer(row, source)?.burns(self.range)
    }

    fn row(&self, operation: &Operation, (plan, at): (&Plan, usize), fired: &[Fired]) -> Row {
        let hammering_s = hammering_s(operation) / self.shop.smith.pace;
        let mut row = Row {
            number: 0,
            stage: at - 1,
            half: plan.stages[at].half,
            step: operation.step,
            part: operation.part,
            pieces: self.pieces(operation, (plan, at)),
            needs_mm: operation.needs_hot_mm,
            hammering_s,
            thinned: thinned(operation),
            offers: Vec::new(),
            stand: None,
        };
        if operation.needs_hot_mm.is_none() {
            return row;
        }
        row.stand = Some(Stand::of(&plan.stages[at - 1].piece));
        let sources = self.shop.sources.iter().zip(fired);
        row.offers = sources.map(|own| self.made(&row, own)).collect();
        row
    }

    /// How many pieces an operation is done to. What lies across the middle of a bar with both halves on
    /// it is both reins, and a cut there parts both.
    fn pieces(&self, operation: &Operation, (plan, at): (&Plan, usize)) -> u32 {
        let later = plan.stages[at..]
            .iter()
            .filter_map(|stage| stage.operation.as_ref());
        let double = later.clone().any(|own| own.step == Step::CutApart);
        let middle = operation.before.length_mm / 2.0;
        let across = operation
            .needs_hot_mm
            .is_some_and(|(from, to)| from < middle && middle < to);
        let cut = matches!(operation.step, Step::CutApart | Step::CutBar);
        if double && (across || cut) {
            1
        } else {
            self.halves
        }
    }

    /// What a source makes of an operation, whether the shop has it or not.
    ///
    /// # Errors
    /// Why it does not serve.
    pub(super) fn tried(&self, row: &Row, source: &Source) -> Result<Offer, WhyNot> {
        self.made(row, (source, &Fired::new(&self.laws, source)))
    }

    fn made(&self, row: &Row, (source, fired): (&Source, &Fired)) -> Result<Offer, WhyNot> {
        let (Some(stand), Some(needs_mm)) = (&row.stand, row.needs_mm) else {
            return Err(WhyNot::TooShort {
                needs_mm: 0.0,
                hot_mm: 0.0,
            });
        };
        let need = Need {
            from_to_mm: needs_mm,
            at_once: at_once(row.step),
        };
        let room = Room::of(source, &self.shop.smith);
        let entry = entry(stand, &room, need)?;
        let load = stand.bulk(entry.heated_mm);
        let curve = curve(&self.laws, (source, fired), load);
        let target = self.reached(&source.kind, &curve, row.step)?;
        let (from, to) = needs_mm;
        let needs = stand.bulk((from, to));
        // Half way through the operation the steel is as much thinner.
        let ratio_mm = needs.ratio_mm() * row.thinned;
        let still_air_s = self
            .laws
            .air
            .between_s(target, self.range.lower_celsius, ratio_mm);
        let working_s = still_air_s * self.shop.smith.working;
        let fresh = match need.at_once {
            AtOnce::Whole => 1,
            AtOnce::InTurns => count(needs.length_mm / room.hot_mm.min(load.length_mm.max(1.0))),
        };
        let worked = count(row.hammering_s / working_s.max(f64::MIN_POSITIVE));
        Ok(Offer {
            fresh,
            heats: fresh.max(worked),
            target_celsius: target,
            still_air_s,
            working_s,
            ratio_mm,
            uneven: uneven::uneven(
                &self.laws.heat,
                (source, stand),
                (needs_mm, entry.heated_mm),
                target,
            ),
            steel_mm3: (
                stand.volume_to(entry.heated_mm.0),
                stand.volume_to(entry.heated_mm.1),
            ),
            needs_mm3: (stand.volume_to(from), stand.volume_to(to)),
            load,
            entry,
            curve,
        })
    }

    /// How hot a source makes a load, °C.
    fn reached(&self, kind: &SourceKind, curve: &Curve, step: Step) -> Result<f64, WhyNot> {
        let welds = is_weld(step);
        let fire = match kind {
            SourceKind::Gas(gas) => Some(gas.chamber.celsius()),
            SourceKind::Solid(solid) => Some(solid.fire.celsius()),
            SourceKind::Coil(_) => None,
        };
        let needs = if welds {
            HOLDS_CELSIUS.1
        } else {
            self.range.lower_celsius + LEAST_OVER_CELSIUS
        };
        if let Some(celsius) = fire.filter(|celsius| welds && *celsius < WELDING_CELSIUS) {
            return Err(WhyNot::TooCold {
                reaches_celsius: celsius,
                needs_celsius: WELDING_CELSIUS,
            });
        }
        let target = if welds {
            HOLDS_CELSIUS.1
        } else {
            self.target_celsius
        };
        let reaches = curve.reaches_celsius.min(target);
        if reaches < needs - 1.0 {
            return Err(WhyNot::TooCold {
                reaches_celsius: curve.reaches_celsius,
                needs_celsius: needs,
            });
        }
        Ok(reaches)
    }

    /// An operation on all its pieces that begins at a temperature, s, making ready not counted.
    pub(super) fn takes_s(&self, row: usize, (source, offer): (usize, &Offer), starts: f64) -> f64 {
        let handling = f64::from(offer.heats) * self.shop.smith.handling_s;
        let waits: f64 = self.waits_s(row, (source, offer), starts).iter().sum();
        let own = &self.rows[row];
        waits + f64::from(own.pieces) * (handling + own.hammering_s)
    }

    /// What the smith waits for a heat, s, in order. A coil heats one piece at a time. In a forge or a
    /// fire the pieces lie together, so that one heats while the other is worked.
    pub(super) fn waits_s(
        &self,
        row: usize,
        (source, offer): (usize, &Offer),
        starts: f64,
    ) -> Vec<f64> {
        let heats = self.heats_s(offer, starts);
        let pieces = self.rows[row].pieces;
        match self.ready[source].0 {
            Ready::Mounted => (0..pieces).flat_map(|_| heats.iter().copied()).collect(),
            Ready::Lit => {
                let each = self.rows[row].hammering_s / f64::from(offer.heats);
                let others = f64::from(pieces - 1) * (each + self.shop.smith.handling_s);
                let waits = heats.iter().enumerate();
                waits
                    .map(|(heat, seconds)| match heat {
                        0 => *seconds,
                        _ => (seconds - others).max(0.0),
                    })
                    .collect()
            }
        }
    }

    /// Every heat of an operation on one piece, s.
    pub(super) fn heats_s(&self, offer: &Offer, starts: f64) -> Vec<f64> {
        let target = offer.target_celsius;
        let mut all = vec![offer.curve.heat_s(starts, target)];
        let fresh = offer.curve.heat_s(HOLDS_CELSIUS.0, target);
        let again = offer.curve.heat_s(self.again_celsius(offer), target);
        for heat in 1..offer.heats {
            all.push(if heat < offer.fresh { fresh } else { again });
        }
        all
    }

    /// How warm a piece comes back from the anvil, °C.
    pub(super) fn again_celsius(&self, offer: &Offer) -> f64 {
        let way = self.shop.smith.handling_s / 2.0;
        self.laws
            .air
            .cooled(self.range.lower_celsius, way, offer.ratio_mm)
    }

    /// How warm a piece is when its operation begins, on the average of what must be hot, °C: what the
    /// last heat left in it, after the other piece was worked and a source was made ready. Older heats
    /// are forgotten.
    pub fn starts_celsius(&self, row: usize, offer: &Offer, before: Before) -> f64 {
        let cold = HOLDS_CELSIUS.0;
        let last = row.checked_sub(1).and_then(|last| {
            let same = self.rows[last].half == self.rows[row].half;
            let offer = before.source.and_then(|source| self.offer(last, source));
            offer
                .filter(|_| same)
                .map(|offer| (last, before.source, offer))
        });
        let Some((last, Some(source), left)) = last else {
            return cold;
        };
        let pieces = f64::from(self.rows[last].pieces);
        let others = (pieces - 1.0) / pieces;
        let others = others * self.takes_s(last, (source, left), cold);
        let idle = before.ready_s + self.shop.smith.handling_s + others;
        let warm = self
            .laws
            .air
            .cooled(self.range.lower_celsius, idle, left.ratio_mm);
        let part = shared(left.steel_mm3, offer.needs_mm3);
        let heat = &self.laws.heat;
        heat.celsius(part * heat.j_kg(warm))
    }
}

impl Problem for Prepared {
    fn operations(&self) -> usize {
        self.rows.len()
    }

    fn sources(&self) -> &[(Ready, f64)] {
        &self.ready
    }

    fn cost_s(&self, row: usize, source: usize, before: Before) -> Option<f64> {
        let offer = self.offer(row, source)?;
        let starts = self.starts_celsius(row, offer, before);
        Some(self.takes_s(row, (source, offer), starts))
    }

    fn burns_s(&self, row: usize, source: usize) -> f64 {
        match (self.burnt(row, source), self.ready[source].0) {
            (None, _) => 0.0,
            (Some(_), Ready::Lit) => BURNT_S,
            (Some(_), Ready::Mounted) => HELD_BACK_S,
        }
    }
}

fn target(smith: &Smith, range: ForgingRange) -> f64 {
    let usual = USUAL_HEAT_CELSIUS.min(range.upper_celsius);
    let asked = smith.heat_to.map(crate::units::Temperature::celsius);
    asked.unwrap_or(usual).min(HOLDS_CELSIUS.1)
}

/// Two where both halves are made alike; where their jaws differ, each has its own operations.
fn halves(plan: &Plan) -> u32 {
    let tool = Procedure::OF_TOOLS.contains(&plan.procedure);
    if tool || plan.stages.iter().any(|stage| stage.half > 0) {
        1
    } else {
        2
    }
}

fn ready(source: &Source) -> (Ready, f64) {
    let seconds = 60.0 * source.ready_minutes;
    match source.kind {
        SourceKind::Gas(_) | SourceKind::Solid(_) => (Ready::Lit, seconds),
        SourceKind::Coil(_) => (Ready::Mounted, seconds),
    }
}

/// How thick the steel is half way through an operation, over what it was: by the roots of the areas.
fn thinned(operation: &Operation) -> f64 {
    let (Some(a), Some(b)) = (operation.before.section, operation.after.section) else {
        return 1.0;
    };
    let ratio = (b.area_mm2 / a.area_mm2.max(f64::MIN_POSITIVE)).sqrt();
    f64::midpoint(1.0, ratio.clamp(0.2, 1.0))
}

/// Part of one stretch of steel that another covers.
fn shared((from, to): (f64, f64), of: (f64, f64)) -> f64 {
    let common = (to.min(of.1) - from.max(of.0)).max(0.0);
    (common / (of.1 - of.0).max(f64::MIN_POSITIVE)).min(1.0)
}

/// Whole heats, one at the least.
fn count(heats: f64) -> u32 {
    /// What a heat is stretched by before another is counted (judgement: a last blow at a dull red).
    const STRETCHED: f64 = 0.1;
    /// Nobody counts farther.
    const MOST: f64 = 500.0;
    #[allow(
        clippy::cast_possible_truncation,
        clippy::cast_sign_loss,
        reason = "between one and five hundred"
    )]
    let whole = (heats - STRETCHED).ceil().clamp(1.0, MOST) as u32;
    whole
}
