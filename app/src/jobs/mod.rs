//! What is made of a design or a family, for window and command line alike.

pub mod cut_printing;
pub mod cut_wanted;
pub mod job_sheet;
pub mod order;
pub mod pages;
pub mod pair_tools;
pub mod preview;
pub mod printer;
pub mod printing;
pub mod set_printing;
mod sheets;
mod tool_sheets;
pub mod watch;
pub mod what;
pub(crate) mod words;
