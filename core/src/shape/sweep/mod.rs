//! Sections carried along a path in the side plane.

mod arc;
mod path;
mod solid;

pub use path::{Path, Pose, Run};
pub use solid::{Ease, Edge, Station, Sweep};
