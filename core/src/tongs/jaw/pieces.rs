//! What the trade says of pieces that bear otherwise than bar of their section.

use super::{JawKind, Trade, Way};
use crate::asked::{AngleHeld, Work};

/// What is said of a piece in a style beside what the style says of its section; `None` where that
/// says all (common practice, no source).
pub(super) fn trade(jaw: JawKind, work: &Work, way: Way) -> Option<Trade> {
    if way != Way::EndOn {
        return None;
    }
    match (jaw, work.angle_held()?) {
        (JawKind::BoxJaw | JawKind::SquareMouth, AngleHeld::ByLeg) => Some(Trade::not_for(
            "the other leg of the angle stands where its lips must go",
        )),
        (JawKind::VBit, AngleHeld::ByBack) => Some(Trade::suits(
            "takes the angle by its back in one V, the edges of its legs in the other",
        )),
        (JawKind::Bolt | JawKind::GooseNeck, AngleHeld::ByBack) | (_, AngleHeld::ByLeg) => None,
        (_, AngleHeld::ByBack) => Some(Trade::risky(
            "an angle by its back stands on an edge and turns: only Vs as wide as it is hold it so",
        )),
    }
}
