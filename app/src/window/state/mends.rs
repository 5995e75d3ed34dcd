//! The ways to mend what was noticed, looked for in a thread so that no frame waits for them.

use std::sync::mpsc::{Receiver, TryRecvError, channel};

use egui::Context;
use reinwright_core::shop::mend::Ways;

use super::history::Hand;

/// A search that goes on beside the window, with all that it asks.
pub(crate) type Search = Box<dyn FnOnce() -> Vec<Option<Ways>> + Send>;

/// The ways to mend the findings of one set of answers, as far as they are known. It goes with
/// those answers, so that it is never of a design that has changed.
#[derive(Debug, Default)]
pub(crate) enum Mends {
    /// Nobody has asked yet.
    #[default]
    Unasked,
    /// A thread looks for them.
    Sought(Receiver<Vec<Option<Ways>>>),
    /// In the order of the findings.
    Found(Vec<Option<Ways>>),
}

impl Mends {
    /// The ways, once they are found; else they are looked for, as soon as the hand is at rest.
    pub(crate) fn ask(
        &mut self,
        ctx: &Context,
        hand: Hand,
        search: impl FnOnce() -> Search,
    ) -> Option<&[Option<Ways>]> {
        if let (Self::Unasked, Hand::AtRest) = (&*self, hand) {
            *self = Self::Sought(seek(ctx.clone(), search()));
        }
        if let Self::Sought(told) = self {
            match told.try_recv() {
                Ok(ways) => *self = Self::Found(ways),
                Err(TryRecvError::Empty) => {}
                // A thread that broke off has found nothing to offer.
                Err(TryRecvError::Disconnected) => *self = Self::Found(Vec::new()),
            }
        }
        match self {
            Self::Found(ways) => Some(ways),
            Self::Unasked | Self::Sought(_) => None,
        }
    }
}

/// Begins to look; a window that has gone on to other answers is told nothing.
fn seek(ctx: Context, search: Search) -> Receiver<Vec<Option<Ways>>> {
    let (teller, told) = channel();
    std::thread::spawn(move || {
        if teller.send(search()).is_ok() {
            ctx.request_repaint();
        }
    });
    told
}
