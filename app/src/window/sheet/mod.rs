//! The sheet in the middle of the window, and all that lies on it.

pub(crate) mod bar_strip;
pub(crate) mod ghost;
pub(crate) mod handles;
pub(crate) mod lies;
pub(crate) mod paper;
pub(crate) mod stages;
pub(crate) mod tool;
pub(crate) mod trace;
mod words;
