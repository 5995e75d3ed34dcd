//! Pages that are laid out in a thread, so that no frame waits for them.

use std::ops::ControlFlow;
use std::sync::Arc;
use std::sync::atomic::{AtomicBool, Ordering};
use std::sync::mpsc::{Receiver, TryRecvError, channel};
use std::time::Duration;

use egui::Context;

use crate::jobs::preview::{Leaves, Printable};
use crate::jobs::set_printing::Wanted;
use crate::jobs::watch::Progress;

/// How often it is looked how far it is.
const PATIENCE: Duration = Duration::from_millis(40);

/// What is told.
#[derive(Debug)]
enum Told {
    Step(Progress),
    Leaves(Leaves),
}

/// Pages that are being laid out; let go of, that stops.
#[derive(Debug)]
pub(crate) struct Leafing {
    told: Receiver<Told>,
    stop: Arc<AtomicBool>,
    progress: Option<Progress>,
}

impl Leafing {
    /// Begins to lay them out.
    pub(crate) fn start(of: &Arc<Printable>, wanted: Wanted) -> Self {
        let (teller, told) = channel();
        let stop = Arc::new(AtomicBool::new(false));
        let (of, stopped) = (Arc::clone(of), Arc::clone(&stop));
        std::thread::spawn(move || {
            let watch = &mut |step| match teller.send(Told::Step(step)) {
                Ok(()) if !stopped.load(Ordering::Relaxed) => ControlFlow::Continue(()),
                // Something else was chosen meanwhile.
                Ok(()) | Err(_) => ControlFlow::Break(()),
            };
            if let Some(leaves) = of.leaves(&wanted, watch) {
                teller.send(Told::Leaves(leaves)).ok();
            }
        });
        Self {
            told,
            stop,
            progress: None,
        }
    }

    /// The pages, once they are there; asks for a frame soon while they are not.
    pub(crate) fn poll(&mut self, ctx: &Context) -> Option<Leaves> {
        loop {
            match self.told.try_recv() {
                Ok(Told::Step(step)) => self.progress = Some(step),
                Ok(Told::Leaves(leaves)) => return Some(leaves),
                Err(TryRecvError::Empty) => {
                    ctx.request_repaint_after(PATIENCE);
                    return None;
                }
                Err(TryRecvError::Disconnected) => return None,
            }
        }
    }

    /// How far it is.
    pub(crate) fn progress(&self) -> Option<Progress> {
        self.progress
    }
}

impl Drop for Leafing {
    fn drop(&mut self) {
        self.stop.store(true, Ordering::Relaxed);
    }
}
