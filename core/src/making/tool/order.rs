//! In which order a tool is forged, and what of it each operation works.

use super::Task;
use super::state::State;
use super::way::Way;
use super::work::Work;
use crate::finding::Part;
use crate::tool::forging::{Forging, Form};
use crate::tool::{Use, stouter};

/// The operations in order, those alone that have something to do.
pub(super) fn works(task: &Task<'_>, on_bar: bool) -> Vec<Work> {
    let mut state = State::begun(task);
    let mut all = Vec::new();
    for step in steps(task, on_bar) {
        let work = work(task, step);
        if !shapes_only(step) || state.would_change(&work, task) {
            state.shape(&work, task);
            all.push(work);
        }
    }
    all
}

fn steps(task: &Task<'_>, on_bar: bool) -> Vec<Forging> {
    use Forging::{
        CutBar, CutOff, DrawFace, DrawShank, PunchEye, SetShoulder, ShapeBody, UpsetBlock,
        UpsetBody, UpsetEnd,
    };
    let style = &task.tool.shape.style;
    let forged = style.forged().into_iter().map(|own| own.step);
    let mut all = Vec::new();
    match (task.is_hardy(), on_bar) {
        (true, true) => {
            // The bar that it is held by runs on behind the shank.
            all.extend([UpsetBlock, ShapeBody, UpsetEnd]);
            all.extend(forged);
            all.extend([DrawShank, CutOff, SetShoulder]);
        }
        (true, false) => {
            all.extend([
                CutBar,
                UpsetBlock,
                ShapeBody,
                DrawShank,
                SetShoulder,
                UpsetEnd,
            ]);
            all.extend(forged);
        }
        (false, true) => {
            all.push(UpsetEnd);
            all.extend(forged);
            all.extend([UpsetBody, ShapeBody, PunchEye, CutOff, DrawFace]);
        }
        (false, false) => {
            all.extend([CutBar, UpsetBody, ShapeBody, PunchEye, UpsetEnd]);
            all.extend(forged);
            all.push(DrawFace);
        }
    }
    let kind = task.tool.style_kind();
    all.push(kind.dressed());
    let hardens = crate::tool::steels::hardens(task.tool.bar.steel) && kind.used() != Use::HotEdge;
    all.push(if hardens {
        Forging::Harden
    } else {
        Forging::CoolSlowly
    });
    all
}

/// Whether an operation is left out where the steel has its shape already: all hot work but what
/// opens a slit or beds a shoulder.
fn shapes_only(step: Forging) -> bool {
    Way::of(step).is_hot() && !matches!(step, Forging::SetShoulder | Forging::Slit)
}

/// What an operation works, and what it makes of that.
fn work(task: &Task<'_>, step: Forging) -> Work {
    let of = |parts: &[Part], form: Option<Form>| {
        let all = task.places();
        all.filter(|(_, run)| parts.contains(&run.part))
            .map(|(place, _)| (place, form))
            .collect::<Vec<_>>()
    };
    let makes = match step {
        Forging::CutBar | Forging::CutOff => task.places().map(|own| (own.0, None)).collect(),
        Forging::DrawShank => of(&[Part::HardyShank], Some(Form::Done)),
        Forging::SetShoulder => of(&[Part::Body, Part::HardyShank], None),
        Forging::UpsetBlock => gathered(task, &[Part::Body, Part::HardyShank, Part::Working]),
        Forging::UpsetBody => gathered(task, &[Part::Body]),
        Forging::UpsetEnd => gathered(task, &[Part::Working]),
        Forging::ShapeBody => {
            let mut all = of(&[Part::Body], Some(Form::Done));
            all.extend(of(&[Part::Eye], Some(Form::Body)));
            all
        }
        Forging::PunchEye => of(&[Part::Eye], Some(Form::Done)),
        Forging::DrawFace => of(&[Part::StruckEnd], Some(Form::Done)),
        Forging::Dress | Forging::GrindEdge | Forging::GrindPoint => {
            of(&[Part::Working], Some(Form::Done))
        }
        Forging::Harden | Forging::CoolSlowly => of(&[Part::Working], None),
        Forging::SizeFull
        | Forging::TaperSquare
        | Forging::TaperOctagon
        | Forging::TaperRound
        | Forging::BreakCorners
        | Forging::FlattenBit
        | Forging::DrawBlade
        | Forging::FullerSides
        | Forging::DrawWedge
        | Forging::SpreadEdge
        | Forging::DrawRidge
        | Forging::TaperBack
        | Forging::RoundNose
        | Forging::DrawEnd
        | Forging::CupEnd
        | Forging::SquareTop
        | Forging::PressGroove
        | Forging::PressVee
        | Forging::DrawTines
        | Forging::Slit
        | Forging::OpenTines => of_style(task, step),
    };
    Work {
        step,
        makes,
        opens: opens(step),
    }
}

/// What of some parts is stouter than the bar. Where no block or body is, nothing is upset for it.
fn gathered(task: &Task<'_>, parts: &[Part]) -> Vec<(usize, Option<Form>)> {
    let all = stouter(task.tool, task.model);
    if !all.iter().any(|own| own.part == parts[0]) {
        return Vec::new();
    }
    let its = all.into_iter().filter(|own| parts.contains(&own.part));
    let runs: Vec<(usize, usize)> = its.flat_map(|own| own.runs).collect();
    let places = task.runs().enumerate();
    places
        .filter(|(_, (at, _))| runs.contains(at))
        .map(|(place, (_, run))| {
            let is_block = run.part == Part::Body;
            (
                place,
                Some(if is_block { Form::Done } else { Form::Gathered }),
            )
        })
        .collect()
}

/// What the style says of it: its runs stand first.
fn of_style(task: &Task<'_>, step: Forging) -> Vec<(usize, Option<Form>)> {
    let forged = task.tool.shape.style.forged();
    let Some(own) = forged.into_iter().find(|own| own.step == step) else {
        return Vec::new();
    };
    let working = task.places().filter(|(_, run)| run.part == Part::Working);
    working
        .filter_map(|(place, _)| Some((place, Some(own.form(place)?))))
        .collect()
}

fn opens(step: Forging) -> Option<Part> {
    let in_end = matches!(
        step,
        Forging::CupEnd | Forging::PressGroove | Forging::PressVee | Forging::OpenTines
    );
    match (step == Forging::PunchEye, in_end) {
        (true, _) => Some(Part::Eye),
        (_, true) => Some(Part::Working),
        (false, false) => None,
    }
}
