//! The window, in five rooms; each knows only those above it:
//!
//! - `paint`: colours, signs, and the display list brought to the screen
//! - `state`: what is open and its history, the answers, what is looked at, the commands
//! - `sheet`: the drawing in the middle, its handles, the bar, a picture to trace
//! - `panels`: all around it; a panel takes what it shows and answers with what was asked for
//! - `bench`: what is open, and the only place where what was asked for is done

mod bench;
mod paint;
mod panels;
mod sheet;
mod state;

use std::path::PathBuf;

pub use bench::workbench::{Surroundings, Workbench};
pub use panels::dialog::chooser::Chooser;
pub use state::command::Command;

use crate::disk::{kept, memory, own_jaws};

/// Opens the window, on a file if one is named, and runs until it is closed. What a file has against it is said in
/// the window: who opened it by a double click sees nothing else.
///
/// # Errors
/// One sentence when no window can be opened (no display).
pub fn open(file: Option<PathBuf>) -> Result<(), String> {
    if !has_display() {
        return Err("there is no display to open a window on".to_owned());
    }
    let surroundings = Surroundings {
        chooser: Chooser::System,
        folder: memory::folder(),
        kept: kept::folder(),
    };
    let workbench = match file {
        Some(path) => Workbench::trying(&path, surroundings),
        None => Workbench::new(surroundings),
    };
    let workbench = match own_jaws::folder() {
        Some(folder) => workbench.keeping_jaws_in(folder),
        None => workbench,
    };
    bench::app::run(workbench)
}

/// Whether there is a display; only Linux and its like can be without one.
pub fn has_display() -> bool {
    let named = ["WAYLAND_DISPLAY", "WAYLAND_SOCKET", "DISPLAY"];
    let set = |name: &str| std::env::var_os(name).is_some_and(|value| !value.is_empty());
    !cfg!(all(unix, not(target_os = "macos"))) || named.into_iter().any(set)
}
