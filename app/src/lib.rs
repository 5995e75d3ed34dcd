//! Reinwright's window, and the same jobs from the command line.
//!
//! - [`disk`]: files, folders, own jaws, and what is remembered from day to day
//! - [`jobs`]: what is printed and written, for one pair and for a set
//! - [`window`]: the window, in five rooms of its own
//! - [`command_line`]: the same jobs without a window
//!
//! `disk` and `jobs` know of no window; the command line opens one and knows nothing else of it.

pub mod command_line;
pub mod disk;
pub mod jobs;
pub mod window;
