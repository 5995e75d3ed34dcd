//! In which order a tool is forged, and what of it each operation works.

use super::Task;
use crate::finding::Part;
use crate::tool::forging::Forging;
use crate::tool::{Model, Use};

/// The operations in order, those alone that have something to do.
pub(super) fn steps(task: &Task<'_>, on_bar: bool) -> Vec<Forging> {
    let style = &task.tool.shape.style;
    let mut all = Vec::new();
    let forged = style.forged();
    if task.is_hardy() && on_bar {
        // The bar that it is held by runs on behind the shank.
        all.push(Forging::UpsetBlock);
        all.extend(forged);
        all.extend([Forging::DrawShank, Forging::CutOff, Forging::SetShoulder]);
    } else if task.is_hardy() {
        all.extend([
            Forging::CutBar,
            Forging::UpsetBlock,
            Forging::DrawShank,
            Forging::SetShoulder,
        ]);
        all.extend(forged);
    } else if on_bar {
        all.extend(forged);
        all.extend([
            Forging::ShapeBody,
            Forging::PunchEye,
            Forging::CutOff,
            Forging::DrawFace,
        ]);
    } else {
        all.extend([Forging::CutBar, Forging::ShapeBody, Forging::PunchEye]);
        all.extend(forged);
        all.push(Forging::DrawFace);
    }
    all.push(Forging::Dress);
    let kind = task.tool.style_kind();
    let hardens = crate::tool::steels::hardens(task.tool.bar.steel) && kind.used() != Use::HotEdge;
    all.push(if hardens {
        Forging::Harden
    } else {
        Forging::CoolSlowly
    });
    all.retain(|step| has_something_to_do(task, *step));
    all
}

fn has_something_to_do(task: &Task<'_>, step: Forging) -> bool {
    let parts = |part: Part| {
        task.model
            .piece
            .stretches
            .iter()
            .any(|own| own.part == part)
    };
    match step {
        Forging::PunchEye => parts(Part::Eye),
        Forging::ShapeBody => !is_bar(task),
        Forging::UpsetBlock => {
            task.model.base.area_mm2() > task.balance.bar_area_mm2 || !is_bar(task)
        }
        Forging::CutBar
        | Forging::DrawShank
        | Forging::SetShoulder
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
        | Forging::CutOff
        | Forging::Dress
        | Forging::Harden
        | Forging::CoolSlowly => true,
    }
}

/// Whether the body is the bar as it is.
fn is_bar(task: &Task<'_>) -> bool {
    /// What an edge that is broken takes off a bar.
    const NEAR: f64 = 0.03;
    let (body, bar) = (task.model.base.area_mm2(), task.balance.bar_area_mm2);
    let flat = task.model.base.depth / task.model.base.width;
    (body / bar - 1.0).abs() < NEAR && (0.9..1.1).contains(&flat)
}

/// The zones that an operation works: stretches of the finished tool by their places.
pub(super) fn zones_of(step: Forging, model: &Model) -> Vec<usize> {
    let of = |parts: &[Part]| {
        let all = model.piece.stretches.iter().enumerate();
        all.filter(|(_, own)| parts.contains(&own.part))
            .map(|own| own.0)
            .collect()
    };
    match step {
        Forging::CutBar | Forging::CutOff => (0..model.piece.stretches.len()).collect(),
        Forging::DrawShank => of(&[Part::HardyShank]),
        Forging::SetShoulder => of(&[Part::Body, Part::HardyShank]),
        Forging::UpsetBlock => of(&[Part::Body]),
        Forging::ShapeBody => of(&[Part::Body, Part::Eye]),
        Forging::PunchEye => of(&[Part::Eye]),
        Forging::DrawFace => of(&[Part::StruckEnd]),
        Forging::TaperSquare
        | Forging::TaperOctagon
        | Forging::TaperRound
        | Forging::DrawBlade
        | Forging::TaperBack
        | Forging::RoundNose
        | Forging::CupEnd
        | Forging::PressGroove
        | Forging::Slit
        | Forging::OpenTines
        | Forging::Dress
        | Forging::Harden
        | Forging::CoolSlowly => of(&[Part::Working]),
    }
}
