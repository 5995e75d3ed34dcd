//! How each operation on a tool is done: hot or cold, where, which way to turn, how the blows fall.

use super::super::Side;
use super::super::operation::{Place, Turning};
use super::super::side::Blows;
use crate::tool::forging::Forging;

/// How an operation is done.
#[derive(Debug, Clone, Copy)]
pub(super) struct Way {
    pub(super) steel: Steel,
    /// Where it is done.
    pub(super) place: Place,
    /// Which way it is turned between blows.
    pub(super) turning: Turning,
    /// How the blows fall.
    pub(super) blows: Blows,
    struck: Struck,
}

/// What the steel is while it is worked.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Steel {
    /// At a forging heat.
    Hot,
    /// Cold; or at the heat for hardening, which the maker names.
    Cold,
    /// Cold, filed or ground to its size.
    Ground,
}

/// What is struck of a tool.
#[derive(Debug, Clone, Copy)]
enum Struck {
    /// The end that works.
    Tip,
    /// The other end.
    Butt,
    /// The middle of what is worked.
    Middle,
    /// All that is worked.
    Worked,
}

impl Way {
    pub(super) fn of(step: Forging) -> Self {
        use Steel::{Cold, Ground, Hot};
        use Struck::{Butt, Middle, Tip, Worked};
        use Turning::{BetweenBlows, Half, None};
        let on_faces = Blows::On(Side::Outer);
        let (steel, place, turning, blows, struck) = match step {
            Forging::CutBar | Forging::CutOff => (Cold, Place::Hardy, None, Blows::Cut, Butt),
            Forging::Slit => (Hot, Place::Hardy, Half, Blows::Cut, Tip),
            Forging::UpsetBlock | Forging::UpsetBody => (Hot, Place::Face, None, Blows::End, Butt),
            Forging::UpsetEnd => (Hot, Place::Face, None, Blows::End, Tip),
            Forging::SetShoulder => (Hot, Place::HardyHole, None, Blows::End, Tip),
            Forging::CupEnd | Forging::PressGroove | Forging::PressVee => {
                (Hot, Place::Swage, None, Blows::End, Tip)
            }
            Forging::PunchEye => (Hot, Place::Pritchel, Half, Blows::Through, Middle),
            Forging::FullerSides => (Hot, Place::Fuller, Half, Blows::BothEdges, Middle),
            Forging::OpenTines => (Hot, Place::Horn, None, Blows::Bend, Worked),
            Forging::DrawBlade => (Hot, Place::Horn, Half, on_faces, Worked),
            Forging::FlattenBit | Forging::DrawWedge | Forging::SpreadEdge | Forging::DrawRidge => {
                (Hot, Place::Face, Half, on_faces, Worked)
            }
            Forging::RoundNose => (Hot, Place::Face, None, Blows::AllRound, Worked),
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
            | Forging::DrawFace => (Hot, Place::Face, BetweenBlows, Blows::AllRound, Worked),
            Forging::Dress | Forging::GrindEdge | Forging::GrindPoint => {
                (Ground, Place::Grinder, None, Blows::Cut, Tip)
            }
            Forging::Harden | Forging::CoolSlowly => (Cold, Place::Bench, None, Blows::End, Tip),
        };
        Self {
            steel,
            place,
            turning,
            blows,
            struck,
        }
    }

    /// Whether an operation wants a forging heat.
    pub(super) fn is_hot(self) -> bool {
        self.steel == Steel::Hot
    }

    /// From where to where it is struck on a tool of a length, mm from the tip: a cut or an end in
    /// one place.
    pub(super) fn struck(self, worked: (f64, f64), length_mm: f64) -> (f64, f64) {
        let at = |place: f64| (place, place);
        match self.struck {
            Struck::Tip => at(0.0),
            Struck::Butt => at(length_mm),
            Struck::Middle => at(f64::midpoint(worked.0, worked.1)),
            Struck::Worked => worked,
        }
    }
}
