//! Reinwright's window, and the same jobs from the command line.

pub mod command_line;
pub mod files;
pub mod own_jaws;
pub mod printing;
pub mod set_printing;
pub mod shelf;
pub mod window;
mod words;
