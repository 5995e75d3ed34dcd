//! From which side steel is struck, what lies under it, and what that means for the next turn.

use super::Turning;
use super::side::{AnvilEdge, Beyond, Blows, SetDowns, Side};
use super::stage::Stood;
use super::state::{BOSS, JAW, MORE, NECK, REIN, SHOULDER, Task};
use super::step::Step;
use crate::tongs::document::Turn;

impl SetDowns {
    /// With some of them on the side across.
    pub(super) fn across(steps: &[Step]) -> Self {
        let side = |step, side: Side| {
            if steps.contains(&step) {
                side.opposite()
            } else {
                side
            }
        };
        Self {
            jaw: side(Step::SetDownJaw, Self::USUAL.jaw),
            boss: side(Step::SetDownBoss, Self::USUAL.boss),
            rein: side(Step::SetDownRein, Self::USUAL.rein),
        }
    }

    /// The side that a step sets down; `None` for one that sets nothing down.
    pub(super) fn of(self, step: Step) -> Option<Side> {
        match step {
            Step::SetDownJaw => Some(self.jaw),
            Step::SetDownBoss => Some(self.boss),
            Step::SetDownRein => Some(self.rein),
            Step::CutBar
            | Step::Flatten
            | Step::Notch
            | Step::Twist
            | Step::ForgeBoss
            | Step::CutApart
            | Step::DrawStub
            | Step::Gather
            | Step::Weld
            | Step::DrawSquare
            | Step::DrawOctagon
            | Step::DrawRound
            | Step::CutTail
            | Step::TrimRein
            | Step::Grip
            | Step::FinishEnd
            | Step::RoughJaw
            | Step::TrimJaw
            | Step::MakeHole
            | Step::SetNeck
            | Step::ShapeJaw
            | Step::BendRein
            | Step::Tool(_) => None,
        }
    }
}

/// How a step's blows fall. Half-face blows fall across from the side that is set down: the anvil
/// does that.
pub(super) fn blows(step: Step, task: &Task<'_>) -> Blows {
    if let Some(side) = task.set_downs.of(step) {
        return Blows::On(side.opposite());
    }
    match step {
        Step::CutBar | Step::CutApart | Step::CutTail | Step::TrimRein | Step::TrimJaw => {
            Blows::Cut
        }
        Step::Flatten => Blows::On(Side::Outer),
        Step::RoughJaw | Step::ShapeJaw | Step::Weld => Blows::On(Side::Back),
        Step::Notch => Blows::BothEdges,
        Step::Twist => Blows::Twist,
        Step::Gather | Step::FinishEnd => Blows::End,
        Step::MakeHole => Blows::Through,
        Step::SetNeck | Step::BendRein => Blows::Bend,
        Step::SetDownJaw
        | Step::SetDownBoss
        | Step::SetDownRein
        | Step::ForgeBoss
        | Step::DrawStub
        | Step::DrawSquare
        | Step::DrawOctagon
        | Step::DrawRound
        | Step::Grip
        | Step::Tool(_) => Blows::AllRound,
    }
}

/// The edge that a set-down is made on: the jaw lies on the anvil behind the near one, boss and
/// rein before the far one.
pub(super) fn anvil_edge(step: Step, task: &Task<'_>, after: &Stood) -> Option<AnvilEdge> {
    let under = task.set_downs.of(step)?;
    let (at_mm, beyond) = if step == Step::SetDownJaw {
        (after.span(&[JAW])?.1, Beyond::Rein)
    } else if step == Step::SetDownBoss {
        (after.span(&[NECK])?.0, Beyond::Tip)
    } else {
        (after.span(&[SHOULDER])?.0, Beyond::Tip)
    };
    Some(AnvilEdge {
        at_mm,
        under,
        beyond,
    })
}

/// What is struck, from and to, mm along the piece as it is afterwards: of a cut its place.
pub(super) fn struck_mm(step: Step, task: &Task<'_>, after: &Stood) -> (f64, f64) {
    let span = |zones: &[usize]| after.span(zones).unwrap_or_default();
    let at = |place: f64| (place, place);
    match step {
        Step::CutBar => at(after.piece.length_mm()),
        Step::CutApart | Step::CutTail | Step::TrimRein => at(span(&[REIN]).1),
        Step::TrimJaw => at(0.0),
        Step::MakeHole => {
            let (from, to) = span(&[BOSS]);
            at(f64::midpoint(from, to))
        }
        Step::FinishEnd => at(span(&[REIN]).1),
        Step::Gather => at(span(&[MORE]).0),
        Step::SetDownRein => {
            let (from, to) = span(&[SHOULDER, REIN]);
            let begun = span(&[REIN]).0 + super::sections::third_mm(task);
            (from, begun.min(to))
        }
        Step::Weld => {
            let end = span(&[REIN]);
            let long = super::step::scarf(task).0;
            let stub = super::sections::stub_mm(task);
            (end.0 + stub, (end.0 + stub + long).min(end.1))
        }
        Step::Flatten
        | Step::Notch
        | Step::Twist
        | Step::SetDownJaw
        | Step::SetDownBoss
        | Step::ForgeBoss
        | Step::DrawStub
        | Step::DrawSquare
        | Step::DrawOctagon
        | Step::DrawRound
        | Step::Grip
        | Step::RoughJaw
        | Step::SetNeck
        | Step::ShapeJaw
        | Step::BendRein
        | Step::Tool(_) => span(step.works()),
    }
}

/// Which way to turn from one side on the anvil to another.
pub(super) fn turned(from: Side, to: Side, hand: Turn) -> Turning {
    let quarters = (4 + to.quarters() - from.quarters()) % 4;
    let (on, back) = match hand {
        Turn::Left => (Turning::QuarterLeft, Turning::QuarterRight),
        Turn::Right => (Turning::QuarterRight, Turning::QuarterLeft),
    };
    match quarters {
        0 => Turning::None,
        1 => on,
        2 => Turning::Half,
        _ => back,
    }
}
