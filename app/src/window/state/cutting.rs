//! A cut list that is looked for in a thread, so that no frame waits for it.

use std::ops::ControlFlow;
use std::sync::Arc;
use std::sync::atomic::{AtomicBool, AtomicUsize, Ordering};
use std::sync::mpsc::{Receiver, TryRecvError, channel};
use std::time::{Duration, Instant};

use egui::Context;
use reinwright_core::asked::Units;
use reinwright_core::shop::cut::{CutError, CutPlan, Order, Rack, plan};

/// A list that takes longer than this is told how far it is.
const SOON: Duration = Duration::from_millis(300);
/// How often it is looked how far it is.
const PATIENCE: Duration = Duration::from_millis(60);

type Found = Result<Option<CutPlan>, CutError>;

/// A list that is being looked for; let go of, it stops.
#[derive(Debug)]
pub(crate) struct Cutting {
    told: Receiver<Found>,
    stop: Arc<AtomicBool>,
    done: Arc<AtomicUsize>,
    /// How many stocks there are.
    total: usize,
    begun: Instant,
}

impl Cutting {
    /// Begins to look.
    pub(crate) fn start(ctx: &Context, orders: Vec<Order>, rack: Rack, units: Units) -> Self {
        let (teller, told) = channel();
        let stop = Arc::new(AtomicBool::new(false));
        let done = Arc::new(AtomicUsize::new(0));
        let total = orders.len();
        let (stopped, at, ctx) = (Arc::clone(&stop), Arc::clone(&done), ctx.clone());
        std::thread::spawn(move || {
            let mut watch = |stocks: usize| {
                at.store(stocks, Ordering::Relaxed);
                if stopped.load(Ordering::Relaxed) {
                    ControlFlow::Break(())
                } else {
                    ControlFlow::Continue(())
                }
            };
            // A window that has gone on to another list is told nothing.
            if teller.send(plan(&orders, &rack, units, &mut watch)).is_ok() {
                ctx.request_repaint();
            }
        });
        Self {
            told,
            stop,
            done,
            total,
            begun: Instant::now(),
        }
    }

    /// What was found, once it is; nothing where it was stopped or broke off. Asks for a frame soon
    /// while it is looked for.
    pub(crate) fn poll(&self, ctx: &Context) -> Option<Found> {
        match self.told.try_recv() {
            Ok(found) => Some(found),
            Err(TryRecvError::Disconnected) => Some(Ok(None)),
            Err(TryRecvError::Empty) => {
                ctx.request_repaint_after(PATIENCE);
                None
            }
        }
    }

    /// How many stocks are done of how many, once it takes so long that one would ask.
    pub(crate) fn progress(&self) -> Option<(usize, usize)> {
        let slow = self.begun.elapsed() > SOON;
        slow.then(|| (self.done.load(Ordering::Relaxed), self.total))
    }

    /// Asks it to stop.
    pub(crate) fn stop(&self) {
        self.stop.store(true, Ordering::Relaxed);
    }
}

impl Drop for Cutting {
    fn drop(&mut self) {
        self.stop();
    }
}
