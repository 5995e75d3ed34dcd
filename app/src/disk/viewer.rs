//! The system's own viewer for a file that was written.

use std::path::Path;
use std::process::{Command, Stdio};
use std::sync::mpsc::{Receiver, channel};

use super::trouble::why;

/// The program by which the system shows a file with whatever the smith has chosen for its kind.
const OPENER: &str = if cfg!(target_os = "macos") {
    "open"
} else if cfg!(windows) {
    "explorer"
} else {
    "xdg-open"
};

/// Shows a file in a thread, since some systems come back only when the viewer is closed; tells why
/// it could not be shown, if it could not.
pub(crate) fn open(ctx: &egui::Context, path: &Path) -> Receiver<String> {
    let (teller, told) = channel();
    let path = std::path::absolute(path).unwrap_or_else(|_| path.to_owned());
    let ctx = ctx.clone();
    std::thread::spawn(move || {
        if let Err(why) = open_with(OPENER, &path) {
            teller.send(why).ok();
        }
        ctx.request_repaint();
    });
    told
}

/// Shows a file with a program, and waits until that comes back.
fn open_with(opener: &str, path: &Path) -> Result<(), String> {
    let mut command = Command::new(opener);
    command.arg(path).stdin(Stdio::null());
    let status = command.stdout(Stdio::null()).stderr(Stdio::null()).status();
    match status {
        Ok(status) if status.success() => Ok(()),
        // That of Windows answers so whatever comes of it.
        Ok(_) if cfg!(windows) => Ok(()),
        Ok(_) => Err(format!(
            "{}: no viewer of this system opens it: open it by hand",
            path.display()
        )),
        Err(error) => Err(format!(
            "{}: {opener} is not there to open it ({}): open it by hand",
            path.display(),
            why(&error)
        )),
    }
}

#[cfg(all(test, unix))]
mod tests {
    use super::*;

    #[track_caller]
    fn check(opener: &str, expected: Option<&str>) {
        let said = open_with(opener, Path::new("/tmp/pages of a pair.pdf")).err();
        let fits = match (&said, expected) {
            (Some(said), Some(words)) => said.contains(words) && said.contains("pages of a pair"),
            (None, None) => true,
            (Some(_), None) | (None, Some(_)) => false,
        };
        assert!(fits, "{opener}: {said:?}");
    }

    /// `true` and `false` are programs of every Unix system (POSIX.1-2017, Shell & Utilities).
    #[test]
    fn what_did_not_open_is_told() {
        check("true", None);
        check("false", Some("no viewer"));
        check("no-such-program-anywhere", Some("is not there"));
    }
}
