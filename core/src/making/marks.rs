//! Where the bar is marked, from both its ends, on which face and with which tool.

use crate::asked::Units;
use crate::forge::balance::{Balance, Mark};
use crate::units::Length;

/// The face that a mark goes on: told from the one that is struck first.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Face {
    /// The one that is struck first.
    First,
    /// A quarter turn round from it.
    QuarterRound,
    /// All four.
    AllRound,
}

/// What a mark is made with.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Tool {
    /// Centre punch: its marks show while the steel is hot.
    CentrePunch,
    /// Cold chisel.
    Chisel,
}

impl Face {
    /// What the smith reads.
    pub fn name(self) -> &'static str {
        match self {
            Self::First => "first face",
            Self::QuarterRound => "face a quarter turn round",
            Self::AllRound => "all round",
        }
    }
}

impl Tool {
    /// What the smith reads.
    pub fn name(self) -> &'static str {
        match self {
            Self::CentrePunch => "centre punch",
            Self::Chisel => "chisel",
        }
    }
}

/// A mark as it is set off.
#[derive(Debug, Clone, PartialEq)]
pub struct SetOff {
    /// What meets there.
    pub what: String,
    /// From the end that marks are set off from, on the rule.
    pub measured: Length,
    /// From the other end of the length that is cut.
    pub from_end: Length,
    /// Exact, mm from the end that marks are set off from.
    pub at_mm: f64,
    /// On which face.
    pub face: Face,
    /// With what.
    pub tool: Tool,
}

/// The marks of a layout, without the bar's own end.
pub(super) fn marks(balance: &Balance, units: Units) -> Vec<SetOff> {
    let inside = balance.marks.iter().filter(|mark| mark.at_mm > 0.0);
    inside.map(|mark| set_off(balance, mark, units)).collect()
}

fn set_off(balance: &Balance, mark: &Mark, units: Units) -> SetOff {
    let (face, tool) = how(&mark.what);
    SetOff {
        what: mark.what.clone(),
        measured: mark.measured(units),
        from_end: balance.from_end(mark, units),
        at_mm: mark.at_mm,
        face,
        tool,
    }
}

/// The jaw's shoulder is struck first, the boss's after a quarter turn; what is cut is marked with
/// a chisel all round.
fn how(what: &str) -> (Face, Tool) {
    let of_tool = what.contains("body") && what.contains('|') && !what.contains("tail");
    if (what.contains("jaw") && what.contains("boss")) || (of_tool && !what.contains("crop")) {
        (Face::First, Tool::CentrePunch)
    } else if what.contains("boss") {
        (Face::QuarterRound, Tool::CentrePunch)
    } else {
        (Face::AllRound, Tool::Chisel)
    }
}
