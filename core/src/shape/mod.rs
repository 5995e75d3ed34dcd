//! Steel as geometry: sections, sweeps, curves, masses, and the piece that all forging knows.

pub(crate) mod curve;
mod mass;
pub mod section;
pub mod sweep;

pub use curve::Curve;
pub use mass::Mass;
