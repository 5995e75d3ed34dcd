//! From which side steel is struck, what lies under it, and what that means for the next turn.

use super::Turning;
use super::stage::Stood;
use super::state::{BOSS, JAW, MORE, NECK, REIN, SHOULDER, Task};
use super::step::Step;
use crate::tongs::document::Turn;

/// A side of a piece as it lies in the drawing of the finished half.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Side {
    /// The jaw's back, up in the side view.
    Back,
    /// Where the work will lie, down in the side view.
    Inside,
    /// The boss's outside, up in the top view.
    Outer,
    /// The face on which the halves turn, down in the top view.
    Joint,
}

impl Side {
    /// What the smith reads.
    pub fn name(self) -> &'static str {
        match self {
            Self::Back => "back",
            Self::Inside => "inside",
            Self::Outer => "outer face",
            Self::Joint => "joint face",
        }
    }

    /// The one across from it.
    #[must_use]
    pub fn opposite(self) -> Self {
        match self {
            Self::Back => Self::Inside,
            Self::Inside => Self::Back,
            Self::Outer => Self::Joint,
            Self::Joint => Self::Outer,
        }
    }

    /// Quarter turns from the side that lies on the anvil when the usual jaw is set down, the way
    /// that the pair turns.
    fn quarters(self) -> u32 {
        match self {
            Self::Inside => 0,
            Self::Joint => 1,
            Self::Back => 2,
            Self::Outer => 3,
        }
    }
}

/// How the blows fall.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Blows {
    /// On one side.
    On(Side),
    /// On both edges at one place.
    BothEdges,
    /// On all sides in turn.
    AllRound,
    /// On the end, along the bar.
    End,
    /// Through the piece at one place.
    Through,
    /// A cut.
    Cut,
    /// None: it is twisted.
    Twist,
    /// So that it bends.
    Bend,
}

impl Blows {
    /// What the smith reads.
    pub fn name(self) -> &'static str {
        match self {
            Self::On(side) => side.name(),
            Self::BothEdges => "both edges",
            Self::AllRound => "all round",
            Self::End => "on the end",
            Self::Through => "through",
            Self::Cut => "cut",
            Self::Twist => "twist",
            Self::Bend => "bend",
        }
    }
}

/// Which end of the piece hangs out over the edge of the anvil.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Beyond {
    /// The jaw's tip.
    Tip,
    /// The rein.
    Rein,
}

/// The edge of the anvil that a shoulder is set down on.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct AnvilEdge {
    /// The place that lies on it, mm along the piece as it is afterwards, from its tip.
    pub at_mm: f64,
    /// The side that lies on the anvil: it is the one that is set down.
    pub under: Side,
    /// What hangs out beyond it.
    pub beyond: Beyond,
}

/// Which side each shoulder is set down on.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct SetDowns {
    pub(super) jaw: Side,
    pub(super) boss: Side,
    pub(super) rein: Side,
}

impl SetDowns {
    pub(super) const USUAL: Self = Self {
        jaw: Side::Inside,
        boss: Side::Joint,
        rein: Side::Back,
    };

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
