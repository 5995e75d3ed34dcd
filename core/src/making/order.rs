//! What a smith changes in a procedure: operations left out, moved, or done cold.

use std::fmt;

use super::side::SetDowns;
use super::step::Step;

/// Changes to the order of a procedure.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Changes {
    /// Left out.
    pub left_out: Vec<Step>,
    /// The first moved to just before the second.
    pub moved: Vec<(Step, Step)>,
    /// Done on cold steel.
    pub cold: Vec<Step>,
    /// Set down on the side across from the usual one.
    pub across: Vec<Step>,
}

/// One change to a procedure.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Change {
    /// An operation is left out.
    LeaveOut(Step),
    /// The first is moved to just before the second.
    MoveBefore(Step, Step),
    /// A shoulder is set down on the side across from the usual one.
    Across(Step),
}

/// Why the steel does not allow a change.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Refused {
    /// It cannot be left out.
    LeftOut(Step),
    /// The first needs the second done before it.
    Needs(Step, Step),
    /// It sets nothing down, so that it has no side to change.
    NoSide(Step),
    /// The procedure has no such operation.
    NotThere(Step),
}

impl Refused {
    /// The operation that stands against the change.
    pub fn step(self) -> Step {
        match self {
            Self::LeftOut(step) | Self::Needs(step, _) | Self::NoSide(step) => step,
            Self::NotThere(step) => step,
        }
    }

    /// What to do instead.
    pub fn mend(self) -> &'static str {
        match self {
            Self::LeftOut(_) => "leave it in",
            Self::Needs(..) => "keep them in their order",
            Self::NoSide(_) => "change the side of a set-down instead",
            Self::NotThere(_) => "choose a procedure that has it",
        }
    }
}

impl fmt::Display for Refused {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::LeftOut(step) => write!(
                f,
                "{step}: it cannot be left out, the half does not come out without it"
            ),
            Self::Needs(step, other) => {
                write!(f, "{step}: it cannot be done before \"{other}\" is done")
            }
            Self::NoSide(step) => write!(f, "{step}: it sets nothing down, so it has no side"),
            Self::NotThere(step) => write!(f, "{step}: this procedure has no such operation"),
        }
    }
}

impl Changes {
    /// Adds a change.
    pub fn add(&mut self, change: Change) {
        match change {
            Change::LeaveOut(step) => self.left_out.push(step),
            Change::MoveBefore(step, before) => self.moved.push((step, before)),
            Change::Across(step) => self.across.push(step),
        }
    }
}

impl Step {
    /// Whether a half comes out without it.
    pub(super) fn can_be_left_out(self, all: &[Self]) -> bool {
        match self {
            Self::DrawOctagon => true,
            // Drawing the rein thins its beginning as well.
            Self::SetDownRein => all.contains(&Self::DrawSquare),
            // Rounding does in one what hammering square and eight-sided does in two.
            Self::DrawSquare => all.contains(&Self::DrawRound) && !all.contains(&Self::SetDownRein),
            Self::CutBar
            | Self::Flatten
            | Self::Notch
            | Self::Twist
            | Self::SetDownJaw
            | Self::SetDownBoss
            | Self::ForgeBoss
            | Self::CutApart
            | Self::DrawStub
            | Self::Gather
            | Self::Weld
            | Self::DrawRound
            | Self::CutTail
            | Self::TrimRein
            | Self::Grip
            | Self::FinishEnd
            | Self::RoughJaw
            | Self::TrimJaw
            | Self::MakeHole
            | Self::SetNeck
            | Self::ShapeJaw
            | Self::BendRein
            | Self::Tool(_) => false,
        }
    }

    /// What has to be done before it, if it is done at all.
    fn needs(self) -> &'static [Self] {
        match self {
            Self::CutBar | Self::Gather | Self::Tool(_) => &[],
            Self::Flatten | Self::Notch => &[Self::CutBar],
            Self::Twist => &[Self::Notch],
            Self::SetDownJaw | Self::DrawStub => &[Self::CutBar, Self::Flatten],
            Self::SetDownBoss => &[Self::SetDownJaw],
            Self::SetDownRein => &[Self::SetDownBoss],
            Self::ForgeBoss => &[Self::SetDownBoss, Self::SetDownRein, Self::Twist],
            Self::CutApart => &[Self::CutBar],
            Self::Weld => &[Self::DrawStub, Self::Gather],
            Self::DrawSquare => &[Self::CutBar, Self::SetDownRein, Self::Weld],
            Self::DrawOctagon => &[Self::DrawSquare],
            Self::DrawRound => &[Self::DrawSquare, Self::DrawOctagon],
            Self::CutTail => &[Self::DrawRound],
            Self::TrimRein => &[
                Self::ForgeBoss,
                Self::DrawRound,
                Self::CutTail,
                Self::CutApart,
            ],
            Self::Grip => &[Self::DrawRound, Self::TrimRein, Self::CutApart],
            Self::FinishEnd => &[Self::Grip, Self::DrawRound, Self::TrimRein, Self::CutApart],
            Self::RoughJaw => &[Self::SetDownJaw, Self::Twist],
            Self::TrimJaw => &[Self::RoughJaw],
            Self::MakeHole => &[Self::ForgeBoss],
            Self::SetNeck => &[
                Self::MakeHole,
                Self::ForgeBoss,
                Self::CutApart,
                Self::RoughJaw,
            ],
            Self::ShapeJaw => &[Self::SetNeck, Self::TrimJaw],
            Self::BendRein => &[Self::SetNeck, Self::FinishEnd, Self::Grip, Self::DrawRound],
        }
    }
}

/// The order with what the steel allows of the changes, and what it does not.
pub(super) fn changed(all: &[Step], changes: &Changes) -> (Vec<Step>, Vec<Refused>) {
    let mut order = all.to_vec();
    let mut refused = Vec::new();
    let left_out = changes.left_out.iter().map(|&step| Change::LeaveOut(step));
    let moved = changes.moved.iter();
    let moved = moved.map(|&(step, before)| Change::MoveBefore(step, before));
    let across = changes.across.iter().map(|&step| Change::Across(step));
    for change in left_out.chain(moved).chain(across) {
        match tried(&order, change) {
            Ok(next) => order = next,
            // What another procedure has is kept for it, and is no fault here.
            Err(Refused::NotThere(_)) => {}
            Err(why) => refused.push(why),
        }
    }
    (order, refused)
}

/// The order with one change.
///
/// # Errors
/// Why the steel does not allow it.
pub(super) fn tried(order: &[Step], change: Change) -> Result<Vec<Step>, Refused> {
    let here = |step: Step| {
        let found = order.iter().position(|own| *own == step);
        found.ok_or(Refused::NotThere(step))
    };
    match change {
        Change::LeaveOut(step) => {
            here(step)?;
            if !step.can_be_left_out(order) {
                return Err(Refused::LeftOut(step));
            }
            Ok(without(order, step))
        }
        Change::MoveBefore(step, before) => {
            here(step)?;
            here(before)?;
            let mut next = without(order, step);
            let at = next.iter().position(|own| *own == before);
            next.insert(at.unwrap_or(next.len()), step);
            match broken(&next) {
                Some((step, need)) => Err(Refused::Needs(step, need)),
                None => Ok(next),
            }
        }
        Change::Across(step) => {
            here(step)?;
            match SetDowns::USUAL.of(step) {
                Some(_) => Ok(order.to_vec()),
                None => Err(Refused::NoSide(step)),
            }
        }
    }
}

fn without(order: &[Step], step: Step) -> Vec<Step> {
    order.iter().copied().filter(|own| *own != step).collect()
}

/// The first operation that comes before one which it needs, and that one.
fn broken(order: &[Step]) -> Option<(Step, Step)> {
    order.iter().enumerate().find_map(|(at, step)| {
        let later = |need: &&Step| order[at + 1..].contains(need);
        let need = step.needs().iter().find(later)?;
        Some((*step, *need))
    })
}
