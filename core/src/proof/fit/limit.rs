//! What ends the range of work.

use super::travel::Clash;
use crate::finding::Part;

/// What ends the range of work on one side.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Limit {
    /// The faces stand too far out of parallel.
    OutOfParallel,
    /// The jaws stand open wider than friction holds work that lies across them.
    SlipsOut,
    /// The reins stand wider than a hand closes with force.
    HandSpan,
    /// The reins touch each other.
    ReinsTouch,
    /// An ordinary squeeze springs the reins until they touch.
    ReinsClose,
    /// The jaws touch each other.
    JawsMeet,
    /// Other parts of the halves touch.
    HalvesCollide,
    /// The work rides on the edges of the groove.
    GrooveEdges,
    /// No limit among the sizes that a document may hold.
    Document,
}

impl Limit {
    /// What the smith reads.
    pub fn name(self) -> &'static str {
        match self {
            Self::OutOfParallel => "the faces stand out of parallel",
            Self::SlipsOut => "the jaws stand so askew that the work slips out",
            Self::HandSpan => "the reins are wider than a hand closes",
            Self::ReinsTouch => "the reins touch",
            Self::ReinsClose => "an ordinary squeeze closes the reins",
            Self::JawsMeet => "the jaws meet",
            Self::HalvesCollide => "the halves touch elsewhere",
            Self::GrooveEdges => "the work rides on the edges of the groove",
            Self::Document => "no limit among the sizes reckoned with",
        }
    }

    pub(super) fn of(clash: Option<Clash>) -> Self {
        let jaw = |part: Part| matches!(part, Part::Jaw | Part::SecondJaw);
        match clash.map(|clash| clash.parts) {
            Some([a, b]) if jaw(a) && jaw(b) => Self::JawsMeet,
            Some([Part::Rein, Part::Rein]) => Self::ReinsTouch,
            Some(_) => Self::HalvesCollide,
            None => Self::Document,
        }
    }
}
