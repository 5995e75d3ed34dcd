//! The steel of a tool on its way: what its runs are, and what its parts still have to lose.

use super::super::step::Lost;
use super::Task;
use super::way::{Steel, Way};
use super::work::Work;
use crate::finding::Part;
use crate::forge::balance::Loss;
use crate::shape::{Hole, Opening, SlotEnd};
use crate::tool::forging::{Forging, Form};
use crate::tool::{Cut, From, Run, formed};

/// A run with the part that it belongs to.
#[derive(Debug, Clone, Copy)]
pub(super) struct Own {
    pub(super) run: Run,
    /// Its zone, a stretch of the finished tool.
    pub(super) zone: usize,
    /// What part of the zone's steel is its own.
    pub(super) share: f64,
    /// What part of what is open in its zone is open in it.
    pub(super) open: f64,
    pub(super) form: Form,
}

/// A stretch of the tool with what it has to lose.
#[derive(Debug, Clone)]
pub(super) struct Zone {
    pub(super) part: Part,
    /// Steel of the finished zone, mm³, what is sunk into it taken out.
    finished: f64,
    /// What it still has to burn, and to lose otherwise.
    scale: f64,
    spare: f64,
    dressing: f64,
    slug: f64,
    /// What is open in the finished zone, and whether it is yet.
    pub(super) hole: Option<Hole>,
    pub(super) open: bool,
    /// Heats that it still gets.
    heats: f64,
}

/// The steel of a tool.
#[derive(Debug, Clone)]
pub(super) struct State {
    pub(super) runs: Vec<Own>,
    pub(super) zones: Vec<Zone>,
    /// What the first cut takes, and the last one.
    pub(super) uncut: f64,
    pub(super) tail: f64,
    pub(super) kerf: f64,
}

impl Zone {
    fn volume(&self) -> f64 {
        self.finished + self.scale + self.spare + self.dressing + self.slug
    }

    /// What is open in it now, mm³.
    fn opened(&self) -> f64 {
        let hole = self.hole.filter(|_| self.open);
        hole.map_or(0.0, |hole| hole.volume_mm3)
    }
}

impl State {
    /// All of it bar, nothing lost yet and nothing known of heats.
    pub(super) fn begun(task: &Task<'_>) -> Self {
        let total: f64 = task.model.piece.mass().volume;
        let zone = |at: usize| {
            let stretch = &task.model.piece.stretches[at];
            let holes = task.model.piece.holes.iter();
            let hole = holes.copied().find(|hole| hole.stretch == at);
            let is_eye = hole.is_some_and(|hole| is_punched(&hole));
            let finished = stretch.mass.volume;
            Zone {
                part: stretch.part,
                finished,
                scale: task.loss(Loss::Scale) * finished / total,
                spare: 0.0,
                dressing: only(at == 0, task.loss(Loss::Dressing)),
                slug: only(is_eye, task.loss(Loss::Slug)),
                hole,
                open: false,
                heats: 0.0,
            }
        };
        let zones: Vec<Zone> = (0..task.model.piece.stretches.len()).map(zone).collect();
        let runs = runs(task, &zones);
        Self {
            runs,
            zones,
            uncut: 0.0,
            tail: task.loss(Loss::Tail),
            kerf: 0.0,
        }
    }

    /// The bar from which some operations make the tool.
    pub(super) fn before(task: &Task<'_>, works: &[Work]) -> Self {
        let mut state = Self::begun(task);
        for work in works.iter().filter(|work| Way::of(work.step).is_hot()) {
            for zone in state.worked(work) {
                state.zones[zone].heats += 1.0;
            }
        }
        state.spread_margin(task);
        let allowances = task.balance.allowances.iter();
        let crop: f64 = allowances.map(|own| own.bar_length_mm).sum();
        let crop = crop * task.balance.bar_area_mm2;
        let kerf = task.loss(Loss::Kerf);
        if works.iter().any(|work| work.step == Forging::CutBar) {
            state.uncut = kerf + crop;
        } else {
            // Nothing is cut before it is forged: the ragged end goes with the first dressing.
            state.kerf = kerf;
            state.zones[0].spare += crop;
        }
        state
    }

    fn spread_margin(&mut self, task: &Task<'_>) {
        let all: f64 = self.zones.iter().map(Zone::volume).sum();
        let margin = task.loss(Loss::OwnMargin);
        for zone in &mut self.zones {
            zone.spare = margin * zone.volume() / all;
            if zone.heats == 0.0 {
                // What never glows burns nothing: its share is cut off with the rest.
                zone.spare += std::mem::take(&mut zone.scale);
            }
        }
    }

    pub(super) fn volume(&self) -> f64 {
        self.zones.iter().map(Zone::volume).sum::<f64>() + self.rest()
    }

    /// Bar that belongs to no part of the tool, mm³.
    pub(super) fn rest(&self) -> f64 {
        self.uncut + self.tail + self.kerf
    }

    /// The solid of a run, what is open in it told as steel, mm³.
    pub(super) fn solid(&self, own: &Own) -> f64 {
        let zone = &self.zones[own.zone];
        own.share * zone.volume() + own.open * zone.opened()
    }

    /// The zones that an operation works, each once.
    fn worked(&self, work: &Work) -> Vec<usize> {
        let mut all: Vec<usize> = work.makes.iter().map(|own| self.runs[own.0].zone).collect();
        all.dedup();
        all
    }

    /// Whether an operation gives a run other sections, or opens something.
    pub(super) fn would_change(&self, work: &Work, task: &Task<'_>) -> bool {
        let opens =
            |zone: &Zone| Some(zone.part) == work.opens && zone.hole.is_some() && !zone.open;
        let other = |(place, form): &(usize, Option<Form>)| {
            let own = &self.runs[*place];
            let after = form.map(|form| formed(&own.run, form, from(task)));
            after.is_some_and(|after| !is_same(&after, &formed(&own.run, own.form, from(task))))
        };
        work.makes.iter().any(other) || self.zones.iter().any(opens)
    }

    /// The runs that an operation gives another form.
    pub(super) fn shape(&mut self, work: &Work, task: &Task<'_>) {
        for (place, form) in &work.makes {
            let own = &mut self.runs[*place];
            if let Some(form) = *form {
                let is_done = is_same(&formed(&own.run, form, from(task)), &own.run);
                own.form = if is_done { Form::Done } else { form };
            }
        }
        let opened = self.zones.iter_mut();
        for zone in opened.filter(|zone| Some(zone.part) == work.opens) {
            zone.open = zone.hole.is_some();
        }
    }

    /// The steel after an operation, and what was lost.
    pub(super) fn after(&self, work: &Work, task: &Task<'_>) -> (Self, Vec<Lost>) {
        let mut next = self.clone();
        let mut lost = Vec::new();
        if Way::of(work.step).is_hot() {
            next.burn(work, &mut lost);
        }
        next.shape(work, task);
        if work.step == Forging::CutBar || work.step == Forging::CutOff {
            let kerf = std::mem::take(&mut next.uncut) + std::mem::take(&mut next.kerf);
            lose(&mut lost, Loss::Kerf, kerf);
            lose(&mut lost, Loss::Tail, std::mem::take(&mut next.tail));
        }
        if work.step == Forging::PunchEye {
            let slug = next
                .zones
                .iter_mut()
                .map(|zone| std::mem::take(&mut zone.slug));
            lose(&mut lost, Loss::Slug, slug.sum());
        }
        if Way::of(work.step).steel == Steel::Ground {
            let dressing = std::mem::take(&mut next.zones[0].dressing);
            lose(&mut lost, Loss::Dressing, dressing);
            let spare = next
                .zones
                .iter_mut()
                .map(|zone| std::mem::take(&mut zone.spare));
            lose(&mut lost, Loss::OwnMargin, spare.sum());
        }
        (next, lost)
    }

    /// Each hot zone loses its share of what it still has to burn.
    fn burn(&mut self, work: &Work, lost: &mut Vec<Lost>) {
        let mut burnt = 0.0;
        for at in self.worked(work) {
            let zone = &mut self.zones[at];
            let is_last = zone.heats <= 1.0;
            let share = if is_last {
                zone.scale
            } else {
                zone.scale / zone.heats
            };
            zone.scale = if is_last { 0.0 } else { zone.scale - share };
            zone.heats -= 1.0;
            burnt += share;
        }
        lose(lost, Loss::Scale, burnt);
    }

    pub(super) fn is_finished(&self) -> bool {
        let zones = self.zones.iter().all(|zone| {
            let over = zone.scale + zone.spare + zone.dressing + zone.slug;
            over == 0.0 && zone.open == zone.hole.is_some()
        });
        zones && self.rest() == 0.0 && self.runs.iter().all(|own| own.form == Form::Done)
    }
}

/// What the runs of a tool are forged from.
pub(super) fn from(task: &Task<'_>) -> From {
    From {
        bar: Cut::of_bar(&task.tool.bar.stock),
        body: task.model.base,
    }
}

/// All runs, bar as yet, with their shares of their zones.
fn runs(task: &Task<'_>, zones: &[Zone]) -> Vec<Own> {
    let bar = from(task).bar;
    let mut all = Vec::new();
    for (zone, runs) in task.model.runs.iter().enumerate() {
        let solids: Vec<f64> = runs.iter().map(super::profiles::volume_of).collect();
        let hole = zones[zone].hole.map_or(0.0, |hole| hole.volume_mm3);
        let opens = opens_in(runs);
        let steel = |at: usize| {
            /// A run has at least so much of its solid.
            const LEAST: f64 = 0.05;
            let out = only(at == opens, hole);
            (solids[at] - out).max(LEAST * solids[at])
        };
        let total: f64 = (0..runs.len()).map(steel).sum();
        all.extend(runs.iter().enumerate().map(|(at, run)| Own {
            run: *run,
            zone,
            share: steel(at) / total,
            open: only(at == opens, 1.0),
            form: begun(run, bar),
        }));
    }
    all
}

/// The run in which a zone is open: an eye's in its middle, all else at the end.
fn opens_in(runs: &[Run]) -> usize {
    let middle = |run: &Run| run.part == Part::Eye && run.from == run.to;
    runs.iter().position(middle).unwrap_or(0)
}

/// What is one section all along, and the bar's own, is done before it is begun.
fn begun(run: &Run, bar: Cut) -> Form {
    if run.from == run.to && run.part != Part::Eye && run.from.is_like(bar) {
        Form::Done
    } else {
        Form::Bar
    }
}

/// Whether two runs are one for a hammer.
fn is_same(a: &Run, b: &Run) -> bool {
    /// mm.
    const SAME: f64 = 1e-6;
    let cut = |a: Cut, b: Cut| {
        a.outline == b.outline
            && (a.depth - b.depth).abs() < SAME
            && (a.width - b.width).abs() < SAME
    };
    a.ease == b.ease && cut(a.from, b.from) && cut(a.to, b.to)
}

fn is_punched(hole: &Hole) -> bool {
    match hole.opening {
        Opening::Rivet { .. } | Opening::Cup(_) => false,
        Opening::Slot(slot) => match slot.end {
            SlotEnd::Round => true,
            SlotEnd::Open | SlotEnd::Vee(_) => false,
        },
    }
}

fn only(it_is: bool, number: f64) -> f64 {
    if it_is { number } else { 0.0 }
}

fn lose(lost: &mut Vec<Lost>, what: Loss, volume_mm3: f64) {
    if volume_mm3 > 0.0 {
        lost.push(Lost { what, volume_mm3 });
    }
}
