//! The window.

mod answers;
mod app;
mod bar_strip;
mod chooser;
mod command;
mod deeds;
mod dialog;
mod family;
mod handles;
mod history;
mod ink;
mod job;
mod look;
mod memory;
mod menu;
mod paper;
mod parts;
mod reckon;
mod rows;
mod samples;
mod session;
mod shelf;
mod sign;
mod sketch;
mod styles;
mod theme;
mod trace;
mod view;
mod workbench;

use std::path::PathBuf;

pub use chooser::Chooser;
pub use command::Command;
pub use workbench::{Surroundings, Workbench};

/// Opens the window, on a file if one is named, and runs until it is closed.
///
/// # Errors
/// One sentence when no window can be opened (no display) or the file cannot be read.
pub fn open(file: Option<PathBuf>) -> Result<(), String> {
    if !has_display() {
        return Err("there is no display to open a window on".to_owned());
    }
    let surroundings = Surroundings {
        chooser: Chooser::System,
        folder: memory::folder(),
    };
    let workbench = match file {
        Some(path) => Workbench::open(&path, surroundings)?,
        None => Workbench::new(surroundings),
    };
    let workbench = match crate::own_jaws::folder() {
        Some(folder) => workbench.keeping_jaws_in(folder),
        None => workbench,
    };
    app::run(workbench)
}

/// Whether there is a display; only Linux and its like can be without one.
pub fn has_display() -> bool {
    let named = ["WAYLAND_DISPLAY", "WAYLAND_SOCKET", "DISPLAY"];
    let set = |name: &str| std::env::var_os(name).is_some_and(|value| !value.is_empty());
    !cfg!(all(unix, not(target_os = "macos"))) || named.into_iter().any(set)
}
