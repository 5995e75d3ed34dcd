//! The operations one by one: each takes the steel from one state to the next, and names what is
//! lost.

use crate::asked::Hole;
use crate::forge::balance::Loss;
use crate::tool::forging::Forging;

use super::sections::{rod, stub_mm};
use super::state::{BOSS, JAW, MORE, NECK, REIN, SHOULDER, Shape, State, Task, ZONES};

/// One thing that is done to the steel.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Step {
    /// The bar cut to its length.
    CutBar,
    /// Round bar hammered flat where the head will be.
    Flatten,
    /// Notches fullered into both edges behind the jaw.
    Notch,
    /// The jaw turned a quarter round behind its notches.
    Twist,
    /// First shoulder: the jaw.
    SetDownJaw,
    /// Second shoulder: the boss.
    SetDownBoss,
    /// Third shoulder: the beginning of the rein.
    SetDownRein,
    /// The boss flat and round.
    ForgeBoss,
    /// A blank for two cut in the middle.
    CutApart,
    /// A stub drawn for the weld.
    DrawStub,
    /// The end of the rod upset and scarfed.
    Gather,
    /// The rod welded to the stub.
    Weld,
    /// The rein drawn out square.
    DrawSquare,
    /// Its corners hammered in.
    DrawOctagon,
    /// Rounded.
    DrawRound,
    /// The handling tail cut off.
    CutTail,
    /// The rein cut to its length.
    TrimRein,
    /// The grip shaped.
    Grip,
    /// The rein's end finished.
    FinishEnd,
    /// The jaw roughed to a straight flat.
    RoughJaw,
    /// The jaw cut to length and dressed.
    TrimJaw,
    /// The hole made.
    MakeHole,
    /// Neck and shoulder set, joggle and all.
    SetNeck,
    /// The jaw shaped on the work.
    ShapeJaw,
    /// The rein brought to its line.
    BendRein,
    /// Something that is done to a tool; no half knows it.
    Tool(Forging),
}

/// Steel that is lost, and to what.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Lost {
    /// To what.
    pub what: Loss,
    /// How much, mm³.
    pub volume_mm3: f64,
}

impl Step {
    /// The zones that it needs hot.
    pub(super) fn hot(self, hole: Hole) -> &'static [usize] {
        match self {
            Self::CutBar
            | Self::CutApart
            | Self::CutTail
            | Self::TrimRein
            | Self::TrimJaw
            | Self::Tool(_) => &[],
            Self::Flatten => &[JAW, NECK, BOSS, SHOULDER],
            Self::Notch | Self::Twist => &[NECK],
            Self::SetDownJaw | Self::RoughJaw | Self::ShapeJaw => &[JAW],
            Self::SetDownBoss => &[NECK, BOSS],
            Self::SetDownRein => &[SHOULDER, REIN],
            Self::ForgeBoss | Self::SetNeck => &[NECK, BOSS, SHOULDER],
            Self::Gather => &[MORE],
            Self::Weld | Self::DrawStub => &[REIN],
            Self::DrawSquare
            | Self::DrawOctagon
            | Self::DrawRound
            | Self::Grip
            | Self::FinishEnd
            | Self::BendRein => &[REIN],
            Self::MakeHole => match hole {
                Hole::Punched => &[BOSS],
                Hole::Drilled => &[],
            },
        }
    }

    /// The zones that it changes.
    pub(super) fn works(self) -> &'static [usize] {
        match self {
            Self::CutBar => &[JAW, NECK, BOSS, SHOULDER, REIN],
            Self::CutApart | Self::TrimRein | Self::CutTail => &[REIN],
            Self::TrimJaw => &[JAW],
            Self::MakeHole => &[BOSS],
            Self::SetDownBoss => &[NECK, BOSS],
            Self::SetDownRein => &[REIN],
            Self::Twist => &[JAW, NECK],
            Self::Weld => &[REIN, MORE],
            Self::Flatten
            | Self::Notch
            | Self::SetDownJaw
            | Self::ForgeBoss
            | Self::DrawStub
            | Self::Gather
            | Self::DrawSquare
            | Self::DrawOctagon
            | Self::DrawRound
            | Self::Grip
            | Self::FinishEnd
            | Self::RoughJaw
            | Self::SetNeck
            | Self::ShapeJaw
            | Self::BendRein
            | Self::Tool(_) => self.hot(Hole::Punched),
        }
    }
}

impl Step {
    /// The zone that it is about.
    pub(super) fn zone(self) -> usize {
        match self {
            Self::SetDownBoss | Self::ForgeBoss | Self::SetNeck | Self::MakeHole => BOSS,
            Self::CutBar
            | Self::Flatten
            | Self::Notch
            | Self::Twist
            | Self::SetDownJaw
            | Self::RoughJaw
            | Self::TrimJaw
            | Self::ShapeJaw => JAW,
            Self::Gather => MORE,
            Self::SetDownRein
            | Self::CutApart
            | Self::DrawStub
            | Self::Weld
            | Self::DrawSquare
            | Self::DrawOctagon
            | Self::DrawRound
            | Self::CutTail
            | Self::TrimRein
            | Self::Grip
            | Self::FinishEnd
            | Self::BendRein
            | Self::Tool(_) => REIN,
        }
    }
}

/// How often each zone will still be hot.
pub(super) fn heats_left(steps: &[Step], hole: Hole) -> [f64; ZONES] {
    let mut left = [0.0; ZONES];
    for zone in steps.iter().flat_map(|step| step.hot(hole)) {
        left[*zone] += 1.0;
    }
    left
}

/// Applies a step with those that follow it still to come.
pub(super) fn apply(task: &Task<'_>, state: &State, steps: &[Step]) -> (State, Vec<Lost>) {
    let Some(&step) = steps.first() else {
        return (*state, Vec::new());
    };
    let mut next = *state;
    let mut lost = Vec::new();
    burn(&mut next, steps, task.document.rivet.made, &mut lost);
    reshape(&mut next, step);
    match step {
        Step::CutBar => lose(&mut lost, Loss::Kerf, std::mem::take(&mut next.uncut)),
        Step::CutApart => {
            let kerf = std::mem::take(&mut next.zones[REIN].kerf);
            lose(&mut lost, Loss::Kerf, kerf * state.times());
            next.double = false;
        }
        Step::CutTail => lose(
            &mut lost,
            Loss::Tail,
            std::mem::take(&mut next.zones[MORE].spare),
        ),
        Step::TrimRein => lose(&mut lost, Loss::Crop, take_spare(&mut next, REIN)),
        Step::TrimJaw => lose(&mut lost, Loss::Dressing, take_spare(&mut next, JAW)),
        // What is left over at the head goes into the rein.
        Step::ForgeBoss => {
            let over: f64 = [NECK, BOSS, SHOULDER]
                .iter()
                .map(|&at| take_own(&mut next, at))
                .sum();
            next.zones[REIN].spare += over;
        }
        Step::MakeHole => {
            let what = match task.document.rivet.made {
                Hole::Punched => Loss::Slug,
                Hole::Drilled => Loss::DrilledHole,
            };
            lose(
                &mut lost,
                what,
                std::mem::take(&mut next.zones[BOSS].hole) * state.times(),
            );
            next.holed = true;
        }
        Step::Weld => weld(task, &mut next, &mut lost),
        Step::SetDownRein => next.third = true,
        Step::Flatten
        | Step::Notch
        | Step::Twist
        | Step::SetDownJaw
        | Step::SetDownBoss
        | Step::DrawStub
        | Step::Gather
        | Step::DrawSquare
        | Step::DrawOctagon
        | Step::DrawRound
        | Step::Grip
        | Step::FinishEnd
        | Step::RoughJaw
        | Step::SetNeck
        | Step::ShapeJaw
        | Step::BendRein
        | Step::Tool(_) => {}
    }
    (next, lost)
}

fn lose(lost: &mut Vec<Lost>, what: Loss, volume_mm3: f64) {
    if volume_mm3 > 0.0 {
        lost.push(Lost { what, volume_mm3 });
    }
}

fn take_own(state: &mut State, zone: usize) -> f64 {
    std::mem::take(&mut state.zones[zone].spare)
}

fn take_spare(state: &mut State, zone: usize) -> f64 {
    take_own(state, zone) * state.times()
}

/// What burns at a step: of each hot zone its share of what it still has to burn.
fn burn(next: &mut State, steps: &[Step], hole: Hole, lost: &mut Vec<Lost>) {
    let mut left = heats_left(steps, hole);
    // A rod goes on burning as the rein that it becomes.
    left[MORE] += left[REIN];
    let mut burnt = 0.0;
    for &zone in steps[0].hot(hole) {
        let own = &mut next.zones[zone];
        let share = own.scale / left[zone];
        own.scale = if left[zone] > 1.0 {
            own.scale - share
        } else {
            0.0
        };
        burnt += share;
    }
    lose(lost, Loss::Scale, burnt * next.times());
}

/// The zones that a step gives another shape.
fn reshape(next: &mut State, step: Step) {
    let made: &[(usize, Shape)] = match step {
        Step::CutBar
        | Step::CutApart
        | Step::CutTail
        | Step::TrimRein
        | Step::TrimJaw
        | Step::MakeHole
        | Step::Tool(_) => &[],
        Step::Flatten => &[
            (JAW, Shape::Flattened),
            (NECK, Shape::Flattened),
            (BOSS, Shape::Flattened),
            (SHOULDER, Shape::Flattened),
        ],
        Step::Notch => &[(NECK, Shape::Necked)],
        Step::Twist => &[(JAW, Shape::Twisted), (NECK, Shape::Twisted)],
        Step::SetDownJaw => &[(JAW, Shape::SetDown)],
        Step::SetDownBoss => &[(NECK, Shape::SetDown), (BOSS, Shape::SetDown)],
        Step::SetDownRein => &[(SHOULDER, Shape::SetDown), (REIN, Shape::SetDown)],
        Step::ForgeBoss => &[
            (NECK, Shape::SetDown),
            (BOSS, Shape::Forged),
            (SHOULDER, Shape::SetDown),
        ],
        Step::DrawStub => &[(REIN, Shape::Stub)],
        Step::Gather => &[(MORE, Shape::Gathered)],
        Step::Weld => &[],
        Step::DrawSquare => &[(REIN, Shape::Square)],
        Step::DrawOctagon => &[(REIN, Shape::Octagon)],
        Step::DrawRound => &[(REIN, Shape::Round)],
        Step::Grip => &[(REIN, Shape::Gripped)],
        Step::FinishEnd => &[(REIN, Shape::Ended)],
        Step::RoughJaw => &[(JAW, Shape::Forged)],
        Step::SetNeck => &[
            (NECK, Shape::Finished),
            (BOSS, Shape::Finished),
            (SHOULDER, Shape::Finished),
        ],
        Step::ShapeJaw => &[(JAW, Shape::Finished)],
        Step::BendRein => &[(REIN, Shape::Finished)],
    };
    for &(zone, shape) in made {
        next.zones[zone].shape = shape;
    }
}

/// The length of a scarf and the steel that each side of a weld is given for it: as long as the rod
/// is thick one and a half times, and a rod's thickness of it (common practice, no source).
pub(super) fn scarf(task: &Task<'_>) -> (f64, f64) {
    const LONG: f64 = 1.5;
    let rod = rod(task);
    (LONG * rod.depth, rod.area(&task.profiles) * rod.depth)
}

/// Parts a rein into a stub of the bar and a rod, each with its scarf.
pub(super) fn part_rein(task: &Task<'_>, state: &mut State) {
    let rein = &task.half.rein;
    let stub = rein.volume_between(0.0, stub_mm(task)) / rein.volume_mm3();
    let (_, allowance) = scarf(task);
    let whole = state.zones[REIN];
    let share = |part: f64| {
        (
            whole.finished * part,
            whole.scale * part,
            whole.spare * part,
        )
    };
    let (own, more) = (share(stub), share(1.0 - stub));
    let zone = &mut state.zones[REIN];
    (zone.finished, zone.scale, zone.spare) = (own.0, own.1, own.2 + allowance);
    let zone = &mut state.zones[MORE];
    (zone.finished, zone.scale, zone.spare) = (more.0, more.1, more.2 + allowance);
    state.apart = true;
}

fn weld(task: &Task<'_>, next: &mut State, lost: &mut Vec<Lost>) {
    let (_, allowance) = scarf(task);
    let rod = next.zones[MORE];
    let rein = &mut next.zones[REIN];
    rein.finished += rod.finished;
    rein.scale += rod.scale;
    rein.spare = (rein.spare + rod.spare - 2.0 * allowance).max(0.0);
    rein.shape = Shape::Welded;
    next.zones[MORE] = super::state::Zone::NOTHING;
    next.apart = false;
    lose(lost, Loss::Scale, 2.0 * allowance);
}
