//! Work in another size.

use super::{FlatOf, HexagonOf, RoundOf, SquareOf, Work};
use crate::asked::published;
use crate::units::Length;

impl Work {
    /// The same work in another size; flat work keeps its width, an angle what is not held by. A
    /// bolt or a nut that is published in that size is that one; another grows in proportion, and
    /// so do pipe and rebar.
    #[must_use]
    pub fn with_size(mut self, size: Length) -> Self {
        let by = size.mm() / self.size().mm();
        let grown = |length: &mut Length| {
            *length = Length::from_mm(length.mm() * by, length.unit());
        };
        match &mut self {
            Self::Flat {
                thickness: it, of, ..
            } => {
                *it = size;
                match of {
                    FlatOf::Bar | FlatOf::AngleLeg { .. } => {}
                }
            }
            Self::Round { diameter: it, of } => {
                *it = size;
                match of {
                    RoundOf::Bar => {}
                    RoundOf::Pipe { wall } => grown(wall),
                    RoundOf::Rebar { ribs } => grown(ribs),
                    RoundOf::BoltShank { flats, height, .. } => {
                        grown(flats);
                        grown(height);
                    }
                }
            }
            Self::Square { side: it, of, .. } => {
                *it = size;
                match of {
                    SquareOf::Bar | SquareOf::AngleBack { .. } => {}
                }
            }
            Self::Hexagon { flats: it, of, .. } => {
                *it = size;
                match of {
                    HexagonOf::Bar => {}
                    HexagonOf::BoltHead { height, shank } => {
                        grown(height);
                        grown(shank);
                    }
                    HexagonOf::Nut { height, hole } => {
                        grown(height);
                        grown(hole);
                    }
                }
            }
            Self::Octagon { flats: it, .. } => *it = size,
        }
        published::like(&self).unwrap_or(self)
    }
}
