//! Steel as geometry: sections, sweeps, curves, masses, and the piece that all forging knows.

pub(crate) mod curve;
mod faces;
mod mass;
mod opening;
mod piece;
mod plate;
pub mod section;
pub mod sweep;

pub use curve::Curve;
pub use faces::{Blend, Faces};
pub use mass::Mass;
pub use opening::{Cup, Opening, Slot, SlotEnd};
pub use piece::{Cross, Hole, Piece, PieceMark, Solid, Standing, Stretch};
pub use plate::Plate;
