//! What steel is shaped like: sections, and sweeps of them along a path.

mod section;
mod sweep;
