//! The system's own file chooser, asked without holding up the window.

use std::future::Future;
use std::path::{Path, PathBuf};
use std::pin::Pin;
use std::task::{Context, Poll, Waker};
use std::time::{Duration, Instant};

use super::{Chosen, Purpose};

/// A refusal that comes sooner than this did not come from a hand: no chooser answered.
const FASTER_THAN_A_HAND: Duration = Duration::from_millis(700);

/// How often a chooser that is open is looked at.
const PATIENCE: Duration = Duration::from_millis(100);

/// Who is asked for a path.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Chooser {
    /// The system's chooser, and the window's own field where there is none.
    System,
    /// The window's own field.
    OwnField,
}

/// What came of asking.
#[derive(Debug)]
pub(crate) enum Answer {
    /// Not yet.
    Waiting,
    /// This path.
    Path(PathBuf),
    /// The smith thought better of it.
    Cancelled,
    /// There is no chooser.
    NoChooser,
}

/// A chooser that is open.
pub(crate) struct Asking {
    pub(crate) purpose: Purpose,
    since: Instant,
    answer: Pin<Box<dyn Future<Output = Option<rfd::FileHandle>>>>,
}

impl std::fmt::Debug for Asking {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.debug_struct("Asking")
            .field("purpose", &self.purpose)
            .finish_non_exhaustive()
    }
}

impl Asking {
    /// Opens the system's chooser for a purpose in a folder, with a name to begin with.
    pub(crate) fn start(purpose: Purpose, folder: &Path, name: &str) -> Self {
        let (kind, extension) = purpose.files();
        let mut dialog = rfd::AsyncFileDialog::new().set_title(purpose.title());
        if folder.is_dir() {
            dialog = dialog.set_directory(folder);
        }
        if purpose == Purpose::Picture {
            dialog = dialog.add_filter(kind, &["png", "jpg", "jpeg", "PNG", "JPG", "JPEG"]);
        } else if !extension.is_empty() {
            dialog = dialog.add_filter(kind, &[extension]);
        }
        let answer: Pin<Box<dyn Future<Output = _>>> = match purpose.chosen() {
            Chosen::ToWrite => Box::pin(dialog.set_file_name(name).save_file()),
            Chosen::FileToRead => Box::pin(dialog.pick_file()),
            Chosen::FolderToRead => Box::pin(dialog.pick_folder()),
        };
        Self {
            purpose,
            since: Instant::now(),
            answer,
        }
    }

    /// Looks whether there is an answer; asks for a frame soon while there is none.
    pub(crate) fn poll(&mut self, ctx: &egui::Context) -> Answer {
        let mut nobody = Context::from_waker(Waker::noop());
        match self.answer.as_mut().poll(&mut nobody) {
            Poll::Pending => {
                ctx.request_repaint_after(PATIENCE);
                Answer::Waiting
            }
            Poll::Ready(Some(file)) => Answer::Path(file.path().to_owned()),
            Poll::Ready(None) if self.since.elapsed() < FASTER_THAN_A_HAND => Answer::NoChooser,
            Poll::Ready(None) => Answer::Cancelled,
        }
    }
}
