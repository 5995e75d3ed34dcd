//! The sides of a piece, and the words of what strikes it.

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
    pub(super) fn quarters(self) -> u32 {
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
}
