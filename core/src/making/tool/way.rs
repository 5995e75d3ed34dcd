//! How each operation on a tool is done: hot or cold, where, which way to turn, how the blows fall.

use super::super::Side;
use super::super::blow::Blows;
use super::super::operation::{Place, Turning};
use crate::tool::forging::Forging;

/// Whether an operation wants a forging heat. Hardening wants another, that the maker names.
pub(super) fn is_hot(step: Forging) -> bool {
    match step {
        Forging::CutBar
        | Forging::CutOff
        | Forging::Dress
        | Forging::GrindEdge
        | Forging::GrindPoint
        | Forging::Harden
        | Forging::CoolSlowly => false,
        Forging::DrawShank
        | Forging::SetShoulder
        | Forging::UpsetBlock
        | Forging::UpsetBody
        | Forging::UpsetEnd
        | Forging::ShapeBody
        | Forging::SizeFull
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
        | Forging::PunchEye
        | Forging::DrawEnd
        | Forging::CupEnd
        | Forging::SquareTop
        | Forging::PressGroove
        | Forging::PressVee
        | Forging::DrawTines
        | Forging::Slit
        | Forging::OpenTines
        | Forging::DrawFace => true,
    }
}

/// Whether it is filed or ground to its size.
pub(super) fn is_dressing(step: Forging) -> bool {
    matches!(
        step,
        Forging::Dress | Forging::GrindEdge | Forging::GrindPoint
    )
}

/// Where it is done.
pub(super) fn place(step: Forging) -> Place {
    match step {
        Forging::CutBar | Forging::CutOff | Forging::Slit => Place::Hardy,
        Forging::SetShoulder => Place::HardyHole,
        Forging::PunchEye => Place::Pritchel,
        Forging::CupEnd | Forging::PressGroove | Forging::PressVee => Place::Swage,
        Forging::FullerSides => Place::Fuller,
        Forging::OpenTines | Forging::DrawBlade => Place::Horn,
        Forging::Dress | Forging::GrindEdge | Forging::GrindPoint => Place::Grinder,
        Forging::Harden | Forging::CoolSlowly => Place::Bench,
        Forging::DrawShank
        | Forging::UpsetBlock
        | Forging::UpsetBody
        | Forging::UpsetEnd
        | Forging::ShapeBody
        | Forging::SizeFull
        | Forging::TaperSquare
        | Forging::TaperOctagon
        | Forging::TaperRound
        | Forging::BreakCorners
        | Forging::FlattenBit
        | Forging::DrawWedge
        | Forging::SpreadEdge
        | Forging::DrawRidge
        | Forging::TaperBack
        | Forging::RoundNose
        | Forging::DrawEnd
        | Forging::SquareTop
        | Forging::DrawTines
        | Forging::DrawFace => Place::Face,
    }
}

/// Which way it is turned between blows.
pub(super) fn turning(step: Forging) -> Turning {
    match step {
        Forging::DrawShank
        | Forging::ShapeBody
        | Forging::SizeFull
        | Forging::TaperSquare
        | Forging::TaperOctagon
        | Forging::TaperRound
        | Forging::BreakCorners
        | Forging::TaperBack
        | Forging::DrawEnd
        | Forging::SquareTop
        | Forging::DrawTines
        | Forging::DrawFace => Turning::BetweenBlows,
        Forging::PunchEye
        | Forging::Slit
        | Forging::FlattenBit
        | Forging::DrawBlade
        | Forging::FullerSides
        | Forging::DrawWedge
        | Forging::SpreadEdge
        | Forging::DrawRidge => Turning::Half,
        Forging::CutBar
        | Forging::SetShoulder
        | Forging::UpsetBlock
        | Forging::UpsetBody
        | Forging::UpsetEnd
        | Forging::RoundNose
        | Forging::CupEnd
        | Forging::PressGroove
        | Forging::PressVee
        | Forging::OpenTines
        | Forging::CutOff
        | Forging::Dress
        | Forging::GrindEdge
        | Forging::GrindPoint
        | Forging::Harden
        | Forging::CoolSlowly => Turning::None,
    }
}

/// How the blows fall.
pub(super) fn blows(step: Forging) -> Blows {
    match step {
        Forging::CutBar
        | Forging::CutOff
        | Forging::Slit
        | Forging::Dress
        | Forging::GrindEdge
        | Forging::GrindPoint => Blows::Cut,
        Forging::SetShoulder
        | Forging::UpsetBlock
        | Forging::UpsetBody
        | Forging::UpsetEnd
        | Forging::CupEnd
        | Forging::PressGroove
        | Forging::PressVee
        | Forging::Harden
        | Forging::CoolSlowly => Blows::End,
        Forging::PunchEye => Blows::Through,
        Forging::OpenTines => Blows::Bend,
        Forging::FullerSides => Blows::BothEdges,
        Forging::FlattenBit
        | Forging::DrawBlade
        | Forging::DrawWedge
        | Forging::SpreadEdge
        | Forging::DrawRidge => Blows::On(Side::Outer),
        Forging::DrawShank
        | Forging::ShapeBody
        | Forging::SizeFull
        | Forging::TaperSquare
        | Forging::TaperOctagon
        | Forging::TaperRound
        | Forging::BreakCorners
        | Forging::TaperBack
        | Forging::RoundNose
        | Forging::DrawEnd
        | Forging::SquareTop
        | Forging::DrawTines
        | Forging::DrawFace => Blows::AllRound,
    }
}

/// What is struck: of a cut or an end one place, else all that is worked.
pub(super) fn struck(step: Forging, worked: (f64, f64), length_mm: f64) -> (f64, f64) {
    let at = |place: f64| (place, place);
    match step {
        Forging::CutBar | Forging::CutOff | Forging::UpsetBlock | Forging::UpsetBody => {
            at(length_mm)
        }
        Forging::UpsetEnd
        | Forging::CupEnd
        | Forging::PressGroove
        | Forging::PressVee
        | Forging::Slit
        | Forging::Dress
        | Forging::GrindEdge
        | Forging::GrindPoint
        | Forging::Harden
        | Forging::CoolSlowly
        | Forging::SetShoulder => at(0.0),
        Forging::PunchEye | Forging::FullerSides => at(f64::midpoint(worked.0, worked.1)),
        Forging::DrawShank
        | Forging::ShapeBody
        | Forging::SizeFull
        | Forging::TaperSquare
        | Forging::TaperOctagon
        | Forging::TaperRound
        | Forging::BreakCorners
        | Forging::FlattenBit
        | Forging::DrawBlade
        | Forging::DrawWedge
        | Forging::SpreadEdge
        | Forging::DrawRidge
        | Forging::TaperBack
        | Forging::RoundNose
        | Forging::DrawEnd
        | Forging::SquareTop
        | Forging::DrawTines
        | Forging::OpenTines
        | Forging::DrawFace => worked,
    }
}
