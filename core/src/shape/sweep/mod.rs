//! Sections carried along a path in the side plane.

mod arc;
mod path;
mod solid;
mod station;

pub use path::{Path, Pose, Run};
pub use solid::{Edge, Sweep};
pub use station::{Ease, Station};
