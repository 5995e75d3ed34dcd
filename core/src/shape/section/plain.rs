use super::Profile;
use crate::asked::{Edge, PlainSection};

/// The profile of a plain section in its unit box.
pub fn plain_profile(section: &PlainSection) -> Profile {
    match *section {
        PlainSection::Round { .. } | PlainSection::Oval { .. } => Profile::rounded(1.0, 1.0),
        PlainSection::Square { edge, .. } | PlainSection::Rectangle { edge, .. } => {
            with_edge(edge, section.depth_mm(), section.width_mm())
        }
        PlainSection::Octagon { .. } => {
            let leg = 2.0 - 2f64.sqrt();
            Profile::chamfered(leg, leg)
        }
        PlainSection::Hexagon { .. } => Profile::chamfered(0.5, 1.0),
        PlainSection::HalfRound { .. } => Profile::half_round(),
    }
}

/// A box of so many mm with its edges broken; an edge larger than half a side stops there.
pub(crate) fn with_edge(edge: Edge, depth: f64, width: f64) -> Profile {
    let size = edge.size().mm();
    let part = |of: f64| (2.0 * size / of).min(1.0);
    match edge {
        Edge::Sharp => Profile::rectangle(),
        Edge::Chamfer(_) => Profile::chamfered(part(width), part(depth)),
        Edge::Radius(_) => Profile::rounded(part(width), part(depth)),
    }
}
