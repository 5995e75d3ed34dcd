//! Answers to many sizes, reckoned beside the window.

use std::sync::Arc;
use std::sync::mpsc::{Receiver, TryRecvError, channel};

use reinwright_core::shop::family::{Family, InSizes};

use super::seen::Seen;
use crate::jobs::watch::Progress;

/// So many sizes are reckoned between two frames: each takes about a millisecond, and there are at
/// least two to share them.
pub(super) const AT_ONCE: usize = 100;

/// A size's place, and its answers.
type Found<D> = (usize, Option<<D as InSizes>::Answer>);

/// Answers that are on their way; whoever lets go of it stops the threads.
#[derive(Debug)]
pub(super) struct Ahead<D: Seen> {
    /// What they answer.
    family: Arc<Family<D>>,
    wanted: usize,
    found: Vec<Found<D>>,
    told: Receiver<Found<D>>,
}

impl<D: Seen> Ahead<D> {
    /// Begins to reckon the sizes at some places.
    pub(super) fn start(family: &Family<D>, places: &[usize]) -> Self {
        let (teller, told) = channel();
        let family = Arc::new(family.clone());
        for own in shares(places) {
            let (family, own, teller) = (Arc::clone(&family), own.to_vec(), teller.clone());
            std::thread::spawn(move || {
                for at in own {
                    // Nobody may be waiting any more.
                    if teller.send((at, family.answer(at))).is_err() {
                        break;
                    }
                }
            });
        }
        Self {
            family,
            wanted: places.len(),
            found: Vec::new(),
            told,
        }
    }

    /// Whether these are the answers to this family.
    pub(super) fn answer(&self, family: &Family<D>) -> bool {
        *self.family == *family
    }

    /// Takes what has come; true once nothing more will come.
    pub(super) fn poll(&mut self) -> bool {
        loop {
            match self.told.try_recv() {
                Ok(found) => self.found.push(found),
                Err(TryRecvError::Empty) => return false,
                Err(TryRecvError::Disconnected) => return true,
            }
        }
    }

    /// How far it is.
    pub(super) fn progress(&self) -> Progress {
        Progress {
            done: self.found.len(),
            total: self.wanted,
        }
    }

    /// What was found, in the order of the places.
    pub(super) fn into_found(mut self) -> Vec<Found<D>> {
        self.found.sort_by_key(|(at, _)| *at);
        self.found
    }
}

/// The places, shared out among the cores there are; no thread is begun for a few.
pub(super) fn shares(places: &[usize]) -> impl Iterator<Item = &[usize]> {
    /// Fewer sizes than this are done before another thread has begun.
    const WORTH_A_THREAD: usize = 8;
    let cores = std::thread::available_parallelism().map_or(1, std::num::NonZero::get);
    places.chunks(places.len().div_ceil(cores).max(WORTH_A_THREAD))
}
