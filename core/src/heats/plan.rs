//! The heats of a plan in order: which source, how many, how long, and what it costs.

use super::optimum::{Before, Problem, Ready, optimum};
use super::prepared::{Prepared, Row};
use super::source::SourceKind;
use super::uneven::Spot;
use crate::asked::Scale;
use crate::making::Step;

/// One operation as it is heated.
#[derive(Debug, Clone, PartialEq)]
pub struct Heated {
    /// The place of its row.
    pub row: usize,
    /// Its number as the smith counts, from 1.
    pub number: usize,
    /// How many pieces it is done to.
    pub pieces: u32,
    /// What is done.
    pub step: Step,
    /// The source; `None` for cold work, and where none serves.
    pub source: Option<usize>,
    /// Whether it is done cold, or heated, or cannot be heated here.
    pub how: How,
    /// To make the source ready, s.
    pub ready_s: f64,
    /// How warm the first heat begins, °C.
    pub starts_celsius: f64,
    /// How hot it is made, °C.
    pub target_celsius: f64,
    /// Every heat of one piece, s.
    pub heats_s: Vec<f64>,
    /// How much of each heat can be worked, s.
    pub working_s: f64,
    /// Hammering for one piece, s.
    pub hammering_s: f64,
    /// All of it for all pieces, making ready counted, s.
    pub total_s: f64,
    /// What an induction machine draws for it, kWh.
    pub kwh: f64,
    /// What burns before the rest is at heat; `None` where nothing does.
    pub burns: Option<Spot>,
}

/// How an operation is done.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum How {
    /// Without heat.
    Cold,
    /// In a source.
    Hot,
    /// No source of the shop serves.
    Unserved,
}

/// What all of it comes to, for the pair.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Totals {
    /// Heats.
    pub heats: u32,
    /// How often a source was made ready while the work waited.
    pub changes: u32,
    /// Heating, s.
    pub heating_s: f64,
    /// Making sources ready, s.
    pub ready_s: f64,
    /// From heat to anvil and back, s.
    pub handling_s: f64,
    /// Hammering and cold work, s.
    pub working_s: f64,
    /// All together, s.
    pub time_s: f64,
    /// What the induction machine draws, kWh.
    pub kwh: f64,
    /// Fuel of forges and fires from when they are lit to when they are last used, kg.
    pub fuel_kg: f64,
    /// Operations that no source serves.
    pub unserved: u32,
    /// Operations at which thin steel burns.
    pub burnt: u32,
}

/// What is done in a stretch of the time.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Doing {
    /// A source is made ready.
    Ready,
    /// A piece is in the heat.
    Heating,
    /// It goes from heat to anvil and back.
    Handling,
    /// It is hammered.
    Working,
    /// Cold work.
    ColdWork,
}

/// A stretch of the time.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Span {
    /// The place of the operation among the plan's.
    pub operation: usize,
    /// The source, where one is used.
    pub source: Option<usize>,
    /// Which of the pieces, from 0; nothing where it is for both.
    pub piece: Option<u32>,
    /// What is done.
    pub doing: Doing,
    /// From, s after work began.
    pub from_s: f64,
    /// To, s.
    pub to_s: f64,
}

/// Heats and sources for a whole plan.
#[derive(Debug, Clone, PartialEq)]
pub struct HeatPlan {
    /// The operations in order.
    pub operations: Vec<Heated>,
    /// What they come to.
    pub totals: Totals,
    /// When what is done.
    pub spans: Vec<Span>,
}

/// The heat plan that takes the least time, what burns weighed with it.
pub fn heat_plan(prepared: &Prepared) -> HeatPlan {
    let best = optimum(prepared);
    plan_of(prepared, &best.chosen)
}

/// The plan with sources that were chosen otherwise. An operation whose source does not serve goes
/// without.
pub fn plan_of(prepared: &Prepared, chosen: &[Option<usize>]) -> HeatPlan {
    let mut told = Telling::new(prepared);
    for (at, row) in prepared.rows.iter().enumerate() {
        let source = chosen.get(at).copied().flatten();
        told.operation(at, row, source);
    }
    told.done()
}

struct Telling<'a> {
    prepared: &'a Prepared,
    plan: HeatPlan,
    last: Option<usize>,
    mounted: Option<usize>,
    lit: Vec<Option<f64>>,
    /// When each fire was last used.
    used: Vec<f64>,
    now_s: f64,
}

impl<'a> Telling<'a> {
    fn new(prepared: &'a Prepared) -> Self {
        let count = prepared.shop.sources.len();
        Self {
            prepared,
            plan: HeatPlan {
                operations: Vec::new(),
                totals: Totals::default(),
                spans: Vec::new(),
            },
            last: None,
            mounted: None,
            lit: vec![None; count],
            used: vec![0.0; count],
            now_s: 0.0,
        }
    }

    /// What it takes to make a source ready now, s.
    fn ready(&mut self, source: usize) -> f64 {
        let (ready, seconds) = self.prepared.sources()[source];
        match ready {
            Ready::Mounted => {
                let there = self.mounted.replace(source).is_none_or(|own| own == source);
                if there { 0.0 } else { seconds }
            }
            Ready::Lit if self.lit[source].is_some() => 0.0,
            Ready::Lit => {
                self.lit[source] = Some(self.now_s);
                seconds
            }
        }
    }

    fn operation(&mut self, at: usize, row: &Row, source: Option<usize>) {
        let served = source.filter(|&own| self.prepared.offer(at, own).is_some());
        let began = self.now_s;
        let mut heated = match served {
            Some(source) => self.hot(at, row, source),
            None => self.without(at, row),
        };
        heated.total_s = self.now_s - began;
        self.plan.totals.burnt += u32::from(heated.burns.is_some());
        self.last = served;
        self.plan.operations.push(heated);
    }

    fn span(&mut self, (doing, source): (Doing, Option<usize>), piece: Option<u32>, seconds: f64) {
        if seconds <= 0.0 {
            return;
        }
        let totals = &mut self.plan.totals;
        match doing {
            Doing::Ready => totals.ready_s += seconds,
            Doing::Heating => totals.heating_s += seconds,
            Doing::Handling => totals.handling_s += seconds,
            Doing::Working | Doing::ColdWork => totals.working_s += seconds,
        }
        self.plan.spans.push(Span {
            operation: self.plan.operations.len(),
            source,
            piece,
            doing,
            from_s: self.now_s,
            to_s: self.now_s + seconds,
        });
        self.now_s += seconds;
    }

    fn hot(&mut self, at: usize, row: &Row, source: usize) -> Heated {
        let ready_s = self.ready(source);
        let before = Before {
            source: self.last,
            ready_s,
        };
        let prepared = self.prepared;
        let offer = prepared.offer(at, source).expect("it was seen to serve");
        let starts = prepared.starts_celsius(at, offer, before);
        let heats_s = prepared.heats_s(offer, starts);
        self.plan.totals.changes += u32::from(ready_s > 0.0);
        self.span((Doing::Ready, Some(source)), None, ready_s);
        self.spans_of(row, (at, source), starts);
        self.plan.totals.heats += row.pieces * offer.heats;
        self.used[source] = self.now_s;
        let target = offer.target_celsius;
        let again = prepared.again_celsius(offer);
        let from = |heat: u32| match heat {
            0 => starts,
            heat if heat < offer.fresh => crate::steel::thermal::HOLDS_CELSIUS.0,
            _ => again,
        };
        let kwh: f64 = (0..offer.heats)
            .map(|heat| offer.curve.kwh(from(heat), target))
            .sum();
        let kwh = kwh * f64::from(row.pieces);
        self.plan.totals.kwh += kwh;
        Heated {
            source: Some(source),
            how: How::Hot,
            ready_s,
            starts_celsius: starts,
            target_celsius: target,
            heats_s,
            working_s: offer.working_s,
            kwh,
            burns: prepared.burnt(at, source),
            ..nothing(at, row)
        }
    }

    /// Waiting, carrying and hammering, heat by heat.
    fn spans_of(&mut self, row: &Row, (at, source): (usize, usize), starts: f64) {
        let prepared = self.prepared;
        let offer = prepared.offer(at, source).expect("it was seen to serve");
        let waits = prepared.waits_s(at, (source, offer), starts);
        let each = row.hammering_s / f64::from(offer.heats);
        let together = match prepared.sources()[source].0 {
            Ready::Mounted => 1,
            Ready::Lit => row.pieces,
        };
        let handling = prepared.shop.smith.handling_s;
        for (heat, wait) in (0_u32..).zip(waits) {
            // In a coil all heats of a piece come one after the other.
            let own = (together == 1).then_some(heat / offer.heats);
            self.span((Doing::Heating, Some(source)), own, wait);
            for piece in 0..together {
                let piece = own.unwrap_or(piece);
                self.span((Doing::Handling, Some(source)), Some(piece), handling);
                self.span((Doing::Working, Some(source)), Some(piece), each);
            }
        }
    }

    /// Cold work, or an operation that no source serves, which takes its hammering at the least.
    fn without(&mut self, at: usize, row: &Row) -> Heated {
        let how = match row.needs_mm {
            None => How::Cold,
            Some(_) => How::Unserved,
        };
        let doing = match how {
            How::Cold => Doing::ColdWork,
            How::Hot | How::Unserved => Doing::Working,
        };
        for piece in 0..row.pieces {
            self.span((doing, None), Some(piece), row.hammering_s);
        }
        self.plan.totals.unserved += u32::from(how == How::Unserved);
        Heated {
            how,
            ..nothing(at, row)
        }
    }

    fn done(mut self) -> HeatPlan {
        let fuels = self.prepared.shop.sources.iter().enumerate();
        let burnt = fuels.map(|(at, source)| {
            let hourly = match &source.kind {
                SourceKind::Gas(gas) => gas.fuel_kg_h,
                SourceKind::Solid(fire) => fire.fuel_kg_h,
                SourceKind::Coil(_) => None,
            };
            let hours = self.lit[at].map_or(0.0, |lit| (self.used[at] - lit) / 3600.0);
            hourly.unwrap_or(0.0) * hours
        });
        self.plan.totals.fuel_kg = burnt.sum();
        self.plan.totals.time_s = self.now_s;
        self.plan
    }
}

fn nothing(at: usize, row: &Row) -> Heated {
    Heated {
        row: at,
        number: row.number,
        pieces: row.pieces,
        step: row.step,
        source: None,
        how: How::Cold,
        ready_s: 0.0,
        starts_celsius: crate::steel::thermal::HOLDS_CELSIUS.0,
        target_celsius: crate::steel::thermal::HOLDS_CELSIUS.0,
        heats_s: Vec::new(),
        working_s: 0.0,
        hammering_s: row.hammering_s,
        total_s: 0.0,
        kwh: 0.0,
        burns: None,
    }
}

/// Scale that a forge or a fire takes at a heat, per cent of what is in it (judgement; foundry and forge figures
/// run from 0.5 to 3).
const SCALE_IN_FIRE: f64 = 1.5;
/// What a coil's first heat takes, and each after it (from memory: half a per cent to one in all).
const SCALE_IN_COIL: (f64, f64) = (0.5, 0.25);

/// Scale that these heats take off the pair, per cent of it: what each heat has in the fire, by its share of
/// the steel, no more than [`Scale::CAP_PERCENT`].
pub fn scale_percent(prepared: &Prepared, plan: &HeatPlan) -> f64 {
    let mut lost = 0.0;
    let mut coil_heats = 0_u32;
    for heated in &plan.operations {
        let Some((source, offer)) = heated
            .source
            .and_then(|source| Some((source, prepared.offer(heated.row, source)?)))
        else {
            continue;
        };
        let whole = prepared.rows[heated.row]
            .stand
            .as_ref()
            .map_or(0.0, |stand| stand.volume_to(stand.length_mm));
        let share = offer.load.volume_mm3 / whole.max(f64::MIN_POSITIVE);
        for _ in 0..offer.heats {
            let each = match prepared.shop.sources[source].kind {
                SourceKind::Gas(_) | SourceKind::Solid(_) => SCALE_IN_FIRE,
                SourceKind::Coil(_) if coil_heats == 0 => SCALE_IN_COIL.0,
                SourceKind::Coil(_) => SCALE_IN_COIL.1,
            };
            coil_heats += u32::from(prepared.shop.sources[source].coil().is_some());
            lost += each * share.min(1.0);
        }
    }
    lost.min(Scale::CAP_PERCENT)
}

/// The design with the scale of these heats in its balance, to a tenth of a per cent.
#[must_use]
pub fn with_scale_of(
    document: &crate::tongs::document::Document,
    percent: f64,
) -> crate::tongs::document::Document {
    let mut fed = document.clone();
    fed.allowances.scale = whole_scale(percent);
    fed
}

/// A loss of the whole to scale, to a tenth of a per cent.
pub fn whole_scale(percent: f64) -> Scale {
    Scale::Whole {
        percent: (percent * 10.0).round() / 10.0,
    }
}
