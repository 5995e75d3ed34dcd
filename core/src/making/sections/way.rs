//! By which way a plain section is made.

use crate::asked::PlainSection;

use super::super::state::Shape;

/// At which step a plain section is done.
pub(in crate::making) fn done_at(section: &PlainSection) -> Shape {
    match section {
        PlainSection::Square { edge, .. } | PlainSection::Rectangle { edge, .. } => {
            if edge.size().mm() > 0.0 {
                Shape::Round
            } else {
                Shape::Square
            }
        }
        PlainSection::Octagon { .. } => Shape::Octagon,
        PlainSection::Round { .. }
        | PlainSection::Oval { .. }
        | PlainSection::Hexagon { .. }
        | PlainSection::HalfRound { .. } => Shape::Round,
    }
}

/// Whether a section is made by way of an octagon.
pub(in crate::making) fn by_octagon(section: &PlainSection) -> bool {
    match section {
        PlainSection::Round { .. } | PlainSection::Oval { .. } | PlainSection::Octagon { .. } => {
            true
        }
        PlainSection::Square { .. }
        | PlainSection::Rectangle { .. }
        | PlainSection::Hexagon { .. }
        | PlainSection::HalfRound { .. } => false,
    }
}
