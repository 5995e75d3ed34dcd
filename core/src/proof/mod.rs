//! Whether a pair can be made, holds and lasts.

pub mod bending;
pub mod check;
pub mod fit;
pub mod strength;
