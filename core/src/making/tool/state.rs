//! The steel of a tool on its way, zone by zone, and how it lies.

use std::borrow::Cow;

use kurbo::Point;

use super::super::blank::{Sect, Segment, Stand, lay, shouldered};
use super::super::stage::Stood;
use super::super::step::Lost;
use super::Task;
use super::is_hot;
use super::order::zones_of;
use crate::asked::Stock;
use crate::finding::Part;
use crate::forge::balance::Loss;
use crate::shape::section::Profile;
use crate::shape::sweep::Ease;
use crate::shape::{Hole, Mass, Opening, Piece, SlotEnd, Solid, Stretch};
use crate::tool::forging::Forging;
use crate::tool::{Cut, Outline, Run};

/// How far a run of a tool is made.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Form {
    /// Bar as it was.
    Bar,
    /// As long as it will be, four-sided.
    Square,
    /// As long as it will be, eight-sided.
    Octagon,
    /// Its end still blunt: the section that it is to begin with, all along.
    Blunt,
    /// As the finished tool has it.
    Done,
}

/// A run with its own steel, mm³.
#[derive(Debug, Clone, Copy)]
struct Own {
    run: Run,
    volume: f64,
    form: Form,
}

/// A stretch of the tool that is worked as one.
#[derive(Debug, Clone)]
struct Zone {
    part: Part,
    runs: Vec<Own>,
    /// Steel of the finished zone, mm³, what is sunk into it taken out.
    finished: f64,
    /// What it still has to burn, and to lose otherwise.
    scale: f64,
    spare: f64,
    dressing: f64,
    slug: f64,
    /// What is open in the finished zone, and whether it is yet.
    hole: Option<Hole>,
    open: bool,
    /// Heats that it still gets.
    heats: f64,
}

/// The steel of a tool.
#[derive(Debug, Clone)]
pub(super) struct State {
    zones: Vec<Zone>,
    /// What the first cut takes, and the last one.
    uncut: f64,
    tail: f64,
    kerf: f64,
    /// Whether the working end is tapered both ways, the way back by itself.
    two_ways: bool,
}

impl Zone {
    fn volume(&self) -> f64 {
        self.finished + self.scale + self.spare + self.dressing + self.slug
    }

    /// What the solid around its opening has, mm³.
    fn solid(&self) -> f64 {
        let hole = self.hole.filter(|_| self.open);
        self.volume() + hole.map_or(0.0, |hole| hole.volume_mm3)
    }
}

impl State {
    pub(super) fn new(task: &Task<'_>, steps: &[Forging]) -> Self {
        let model = task.model;
        let total: f64 = model.piece.mass().volume;
        let mut zones: Vec<Zone> = Vec::new();
        for (at, stretch) in model.piece.stretches.iter().enumerate() {
            let finished = stretch.mass.volume;
            let hole = model
                .piece
                .holes
                .iter()
                .find(|hole| hole.stretch == at)
                .copied();
            let is_eye = hole.is_some_and(|hole| is_punched(&hole));
            let runs = model.runs[at].iter().map(|run| Own {
                run: *run,
                volume: volume_of(run),
                form: Form::Bar,
            });
            zones.push(Zone {
                part: stretch.part,
                runs: runs.collect(),
                finished,
                scale: task.loss(Loss::Scale) * finished / total,
                spare: 0.0,
                dressing: if at == 0 {
                    task.loss(Loss::Dressing)
                } else {
                    0.0
                },
                slug: if is_eye { task.loss(Loss::Slug) } else { 0.0 },
                hole,
                open: false,
                heats: 0.0,
            });
        }
        for step in steps.iter().filter(|step| is_hot(**step)) {
            for zone in zones_of(*step, model) {
                zones[zone].heats += 1.0;
            }
        }
        let all: f64 = zones.iter().map(Zone::volume).sum();
        let margin = task.loss(Loss::OwnMargin);
        for zone in &mut zones {
            zone.spare = margin * zone.volume() / all;
            if zone.heats == 0.0 {
                // What never glows burns nothing: its share is cut off with the rest.
                zone.spare += std::mem::take(&mut zone.scale);
            }
        }
        let crop: f64 = task
            .balance
            .allowances
            .iter()
            .map(|own| own.bar_length_mm)
            .sum();
        let kerf = task.loss(Loss::Kerf);
        let first = steps.contains(&Forging::CutBar);
        let mut state = Self {
            zones,
            uncut: if first { kerf } else { 0.0 } + crop * task.balance.bar_area_mm2,
            tail: task.loss(Loss::Tail),
            kerf: if first { 0.0 } else { kerf },
            two_ways: steps.contains(&Forging::TaperBack),
        };
        if !steps.contains(&Forging::ShapeBody) && !task.is_hardy() {
            state.make(Part::Body, Form::Done);
        }
        if task.is_hardy() && !steps.contains(&Forging::UpsetBlock) {
            state.make(Part::Body, Form::Done);
        }
        if !first {
            // Nothing is cut before it is forged: the ragged end goes with the first dressing.
            state.zones[0].spare += std::mem::take(&mut state.uncut);
        }
        state
    }

    pub(super) fn volume(&self) -> f64 {
        self.zones.iter().map(Zone::volume).sum::<f64>() + self.uncut + self.tail + self.kerf
    }

    fn make(&mut self, part: Part, form: Form) {
        for zone in self.zones.iter_mut().filter(|zone| zone.part == part) {
            zone.runs.iter_mut().for_each(|own| own.form = form);
        }
    }

    /// The steel after an operation, and what was lost.
    pub(super) fn after(&self, step: Forging) -> (Self, Vec<Lost>) {
        let mut next = self.clone();
        let mut lost = Vec::new();
        if is_hot(step) {
            next.burn(step, &mut lost);
        }
        next.shape(step);
        match step {
            Forging::CutBar => {
                lose(&mut lost, Loss::Kerf, std::mem::take(&mut next.uncut));
                lose(&mut lost, Loss::Tail, std::mem::take(&mut next.tail));
            }
            Forging::CutOff => {
                lose(&mut lost, Loss::Kerf, std::mem::take(&mut next.kerf));
                lose(&mut lost, Loss::Tail, std::mem::take(&mut next.tail));
            }
            Forging::PunchEye => {
                let slugs: f64 = next
                    .zones
                    .iter_mut()
                    .map(|zone| std::mem::take(&mut zone.slug))
                    .sum();
                lose(&mut lost, Loss::Slug, slugs);
            }
            Forging::Dress => {
                lose(
                    &mut lost,
                    Loss::Dressing,
                    std::mem::take(&mut next.zones[0].dressing),
                );
                let spare: f64 = next
                    .zones
                    .iter_mut()
                    .map(|zone| std::mem::take(&mut zone.spare))
                    .sum();
                lose(&mut lost, Loss::OwnMargin, spare);
            }
            Forging::DrawShank
            | Forging::SetShoulder
            | Forging::UpsetBlock
            | Forging::ShapeBody
            | Forging::TaperSquare
            | Forging::TaperOctagon
            | Forging::TaperRound
            | Forging::DrawBlade
            | Forging::TaperBack
            | Forging::RoundNose
            | Forging::CupEnd
            | Forging::PressGroove
            | Forging::Slit
            | Forging::OpenTines
            | Forging::DrawFace
            | Forging::Harden
            | Forging::CoolSlowly => {}
        }
        (next, lost)
    }

    /// Each hot zone loses its share of what it still has to burn.
    fn burn(&mut self, step: Forging, lost: &mut Vec<Lost>) {
        let mut burnt = 0.0;
        for zone in self.zones.iter_mut().filter(|zone| works(step, zone.part)) {
            let share = if zone.heats > 1.0 {
                zone.scale / zone.heats
            } else {
                zone.scale
            };
            zone.scale = if zone.heats > 1.0 {
                zone.scale - share
            } else {
                0.0
            };
            zone.heats -= 1.0;
            burnt += share;
        }
        lose(lost, Loss::Scale, burnt);
    }

    /// The runs that an operation gives another form.
    fn shape(&mut self, step: Forging) {
        match step {
            Forging::DrawShank => self.make(Part::HardyShank, Form::Done),
            Forging::UpsetBlock => self.make(Part::Body, Form::Done),
            Forging::ShapeBody => {
                self.make(Part::Body, Form::Done);
                self.make(Part::Eye, Form::Blunt);
            }
            Forging::PunchEye => {
                self.make(Part::Eye, Form::Done);
                self.open(Part::Eye);
            }
            Forging::DrawFace => self.make(Part::StruckEnd, Form::Done),
            Forging::TaperSquare => self.taper(Form::Square),
            Forging::TaperOctagon => self.taper(Form::Octagon),
            Forging::TaperRound | Forging::DrawBlade => self.taper(Form::Done),
            Forging::TaperBack | Forging::RoundNose | Forging::Dress => {
                self.make(Part::Working, Form::Done);
            }
            Forging::CupEnd | Forging::PressGroove | Forging::OpenTines => {
                self.make(Part::Working, Form::Done);
                self.open(Part::Working);
            }
            Forging::Slit
            | Forging::CutBar
            | Forging::SetShoulder
            | Forging::CutOff
            | Forging::Harden
            | Forging::CoolSlowly => {}
        }
    }

    fn open(&mut self, part: Part) {
        let zones = self.zones.iter_mut().filter(|zone| zone.part == part);
        zones.for_each(|zone| zone.open = zone.hole.is_some());
    }

    /// The working end towards its taper: a point, a nose and a ground edge stay blunt, and a drift's
    /// way back stays bar, until they are made by themselves.
    fn taper(&mut self, form: Form) {
        for zone in self
            .zones
            .iter_mut()
            .filter(|zone| zone.part == Part::Working)
        {
            for (at, own) in zone.runs.iter_mut().enumerate() {
                let sharp = own.run.from.small() <= 0.0;
                own.form = match (self.two_ways && at > 0, sharp) {
                    (true, _) => own.form,
                    (false, true) => Form::Blunt,
                    (false, false) => form,
                };
            }
        }
    }
}

fn is_punched(hole: &Hole) -> bool {
    match hole.opening {
        Opening::Rivet { .. } | Opening::Cup(_) => false,
        Opening::Slot(slot) => match slot.end {
            SlotEnd::Round => true,
            SlotEnd::Open => false,
        },
    }
}

fn works(step: Forging, part: Part) -> bool {
    match step {
        Forging::DrawShank => part == Part::HardyShank,
        Forging::SetShoulder => matches!(part, Part::Body | Part::HardyShank),
        Forging::UpsetBlock => part == Part::Body,
        Forging::ShapeBody => matches!(part, Part::Body | Part::Eye),
        Forging::PunchEye => part == Part::Eye,
        Forging::DrawFace => part == Part::StruckEnd,
        Forging::TaperSquare
        | Forging::TaperOctagon
        | Forging::TaperRound
        | Forging::DrawBlade
        | Forging::TaperBack
        | Forging::RoundNose
        | Forging::CupEnd
        | Forging::PressGroove
        | Forging::Slit
        | Forging::OpenTines => part == Part::Working,
        Forging::CutBar
        | Forging::CutOff
        | Forging::Dress
        | Forging::Harden
        | Forging::CoolSlowly => false,
    }
}

fn lose(lost: &mut Vec<Lost>, what: Loss, volume_mm3: f64) {
    if volume_mm3 > 0.0 {
        lost.push(Lost { what, volume_mm3 });
    }
}

/// The profiles that a line of segments names.
#[derive(Default)]
struct Profiles {
    outlines: Vec<Outline>,
}

impl Profiles {
    fn sect(&mut self, cut: Cut) -> Sect {
        let known = self.outlines.iter().position(|own| *own == cut.outline);
        let profile = known.unwrap_or_else(|| {
            self.outlines.push(cut.outline);
            self.outlines.len() - 1
        });
        Sect {
            depth: cut.depth,
            width: cut.width,
            y: 0.0,
            z: 0.0,
            profile,
        }
    }

    fn all(&self) -> Vec<Profile> {
        self.outlines.iter().map(|own| own.profile()).collect()
    }
}

/// What a run's steel would be, mm³.
fn volume_of(run: &Run) -> f64 {
    let mut profiles = Profiles::default();
    let segment = segment(run, 1.0, 0, &mut profiles);
    run.length / segment.length(&profiles.all())
}

fn segment(run: &Run, volume: f64, zone: usize, profiles: &mut Profiles) -> Segment {
    Segment {
        zone,
        volume,
        from: profiles.sect(run.from),
        to: profiles.sect(run.to),
        ease: run.ease,
    }
}

fn bar_cut(stock: &Stock) -> Cut {
    match *stock {
        Stock::Round { diameter } => Cut::round(diameter.mm()),
        Stock::Square { side } => Cut::boxed(side.mm(), side.mm()),
        Stock::Flat { thickness, width } => Cut::boxed(width.mm(), thickness.mm()),
    }
}

/// A section of the same steel in another shape.
fn reshaped(cut: Cut, outline: Outline) -> Cut {
    let fullness = |own: Outline| own.profile().fullness();
    let by = (fullness(cut.outline) / fullness(outline)).sqrt();
    Cut {
        outline,
        ..cut.sized(by * cut.depth, by * cut.width)
    }
}

/// A run in its form.
fn formed(own: &Own, bar: Cut) -> Run {
    let run = own.run;
    let as_outline = |outline| Run {
        from: reshaped(run.from, outline),
        to: reshaped(run.to, outline),
        ..run
    };
    match own.form {
        Form::Done => run,
        Form::Square => as_outline(Outline::Box),
        Form::Octagon => as_outline(Outline::Octagon),
        Form::Bar => Run {
            from: bar,
            to: bar,
            ease: Ease::Linear,
            ..run
        },
        Form::Blunt => {
            let cut = if run.part == Part::Eye {
                run.from
            } else {
                run.to
            };
            Run {
                from: cut,
                to: cut,
                ease: Ease::Linear,
                ..run
            }
        }
    }
}

/// The steel as it lies: told from its working end, with the struck face or the shoulder at x = 0 as the
/// finished tool has it.
pub(super) fn stand(task: &Task<'_>, state: &State, name: &'static str) -> Stood {
    let rest = state.uncut + state.tail + state.kerf;
    if is_finished(state) && rest == 0.0 {
        return finished(task, name);
    }
    let mut profiles = Profiles::default();
    let bar = bar_cut(&task.tool.bar.stock);
    let mut line = Vec::new();
    let last = state.zones.len();
    for (at, zone) in state.zones.iter().enumerate() {
        let runs: f64 = zone.runs.iter().map(|own| own.volume).sum();
        for own in &zone.runs {
            let volume = zone.solid() * own.volume / runs;
            line.push(segment(&formed(own, bar), volume, at, &mut profiles));
        }
    }
    if rest > 0.0 {
        line.push(segment(
            &Run::prism(Part::Bar, 1.0, bar),
            rest,
            last,
            &mut profiles,
        ));
    }
    let profiles = profiles.all();
    // A shoulder is rounded by this under the hammer, mm.
    const ROUNDED: f64 = 1.5;
    let line = shouldered(&line, ROUNDED, &profiles);
    let anchor = if task.is_hardy() { last - 1 } else { last };
    let before: f64 = line
        .iter()
        .filter(|segment| segment.zone < anchor)
        .map(|segment| segment.length(&profiles))
        .sum();
    let stand = Stand {
        start: Point::new(before, 0.0),
        heading: std::f64::consts::PI,
        offset: &|_| (0.0, 0.0),
    };
    let (sweep, runs) = lay(&line, &stand, &profiles);
    let mut stretches = Vec::new();
    let mut zones = Vec::new();
    let mut holes = Vec::new();
    for run in runs {
        let zone = state.zones.get(run.zone);
        let hole = zone.and_then(|zone| zone.hole.filter(|_| zone.open));
        let out = hole.map_or(0.0, |hole| hole.volume_mm3);
        if let Some(hole) = hole {
            let opening = moved(hole.opening, (before - run.from, before - run.to));
            holes.push(Hole {
                stretch: stretches.len(),
                opening,
                ..hole
            });
        }
        zones.push((run.zone, run.from, run.to));
        stretches.push(Stretch {
            part: zone.map_or(Part::Bar, |zone| zone.part),
            solid: Solid::Swept(sweep.clone()),
            from: run.from,
            to: run.to,
            mass: run.mass.without(Mass {
                volume: out,
                ..Mass::default()
            }),
        });
    }
    let name = Cow::Borrowed(name);
    let piece = Piece {
        name,
        wanted: 1,
        stretches,
        holes,
        marks: Vec::new(),
        dressed: 0,
    };
    Stood { piece, zones }
}

/// An opening where its zone lies now: what is open at the end follows the end, an eye stays in the
/// middle.
fn moved(opening: Opening, (tip, end): (f64, f64)) -> Opening {
    match opening {
        Opening::Rivet { .. } => opening,
        Opening::Cup(cup) => Opening::Cup(crate::shape::Cup { at_mm: tip, ..cup }),
        Opening::Slot(slot) => {
            let by = match slot.end {
                SlotEnd::Open => tip - slot.to_mm,
                SlotEnd::Round => f64::midpoint(tip, end) - slot.middle_mm(),
            };
            Opening::Slot(crate::shape::Slot {
                from_mm: slot.from_mm + by,
                to_mm: slot.to_mm + by,
                ..slot
            })
        }
    }
}

fn is_finished(state: &State) -> bool {
    state.zones.iter().all(|zone| {
        let over = zone.scale + zone.spare + zone.dressing + zone.slug;
        over == 0.0
            && zone.open == zone.hole.is_some()
            && zone.runs.iter().all(|own| own.form == Form::Done)
    })
}

fn finished(task: &Task<'_>, name: &'static str) -> Stood {
    let piece = Piece {
        name: Cow::Borrowed(name),
        marks: Vec::new(),
        ..task.model.piece.clone()
    };
    let mut at = 0.0;
    let zones = piece.stretches.iter().enumerate().map(|(zone, own)| {
        let from = at;
        at += own.length_mm();
        (zone, from, at)
    });
    let zones = zones.collect();
    Stood { piece, zones }
}
