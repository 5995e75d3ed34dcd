//! Reading a picture from disk while the window goes on.

use std::path::{Path, PathBuf};
use std::sync::mpsc::{Receiver, TryRecvError, channel};

use egui::{ColorImage, Context};

use crate::disk::pictures;

/// A picture on its way.
#[derive(Debug)]
pub(super) struct Loading {
    pub(super) path: PathBuf,
    from: Receiver<Result<ColorImage, String>>,
}

impl Loading {
    /// Begins to read a picture.
    pub(super) fn start(path: &Path, ctx: &Context) -> Self {
        let (to, from) = channel();
        let (path, ctx) = (path.to_owned(), ctx.clone());
        let what = path.clone();
        std::thread::spawn(move || {
            // Nobody may be waiting any more.
            to.send(read(&what)).ok();
            ctx.request_repaint();
        });
        Self { path, from }
    }

    /// The picture, or one sentence on why there is none; `None` while it is on its way.
    pub(super) fn poll(&self) -> Option<Result<ColorImage, String>> {
        match self.from.try_recv() {
            Ok(read) => Some(read),
            Err(TryRecvError::Empty) => None,
            Err(TryRecvError::Disconnected) => Some(Err(pictures::damaged(&self.path))),
        }
    }
}

fn read(path: &Path) -> Result<ColorImage, String> {
    let picture = pictures::read(path)?;
    Ok(ColorImage::from_rgba_unmultiplied(
        picture.size,
        &picture.rgba,
    ))
}
