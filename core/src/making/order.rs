//! What a smith changes in a procedure: operations left out, moved, or done cold.

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
}

/// What of the changes the steel does not allow.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Refused {
    /// It cannot be left out.
    LeftOut(Step),
    /// It cannot come before the other.
    Before(Step, Step),
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
            | Self::BendRein => false,
        }
    }

    /// What has to be done before it, if it is done at all.
    fn needs(self) -> &'static [Self] {
        match self {
            Self::CutBar | Self::Gather => &[],
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
    for &step in &changes.left_out {
        if step.can_be_left_out(&order) {
            order.retain(|own| *own != step);
        } else if order.contains(&step) {
            refused.push(Refused::LeftOut(step));
        }
    }
    for &(step, before) in &changes.moved {
        let places = |order: &[Step], step| order.iter().position(|own| *own == step);
        if places(&order, step).is_none() || places(&order, before).is_none() || step == before {
            continue;
        }
        let mut tried: Vec<Step> = order.iter().copied().filter(|own| *own != step).collect();
        let at = places(&tried, before).unwrap_or(tried.len());
        tried.insert(at, step);
        if stands(&tried) {
            order = tried;
        } else {
            refused.push(Refused::Before(step, before));
        }
    }
    (order, refused)
}

/// Whether everything comes after what it needs.
fn stands(order: &[Step]) -> bool {
    let later = |at: usize, need: &Step| order[at + 1..].contains(need);
    (0..order.len()).all(|at| !order[at].needs().iter().any(|need| later(at, need)))
}
