//! The jobs without a window.

use std::ffi::OsString;
use std::process::ExitCode;

/// Runs the program with its arguments, the program's name first.
pub fn run(arguments: impl Iterator<Item = OsString>) -> ExitCode {
    let file = arguments.skip(1).map(std::path::PathBuf::from).next();
    match crate::window::open(file) {
        Ok(()) => ExitCode::SUCCESS,
        Err(_) => ExitCode::from(3),
    }
}
