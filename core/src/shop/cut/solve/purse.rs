//! How much work is spent: counted and not timed, so that the same pieces always give the same plan.

use std::ops::ControlFlow;

/// Steps between two looks whether to go on: some tenths of a millisecond.
const LOOK: u64 = 4096;

/// The steps that may still be spent.
pub(crate) struct Purse<'a> {
    left: u64,
    until_look: u64,
    go_on: &'a mut dyn FnMut() -> ControlFlow<()>,
    stopped: bool,
}

impl<'a> Purse<'a> {
    pub(crate) fn new(go_on: &'a mut dyn FnMut() -> ControlFlow<()>) -> Self {
        Self {
            left: 0,
            until_look: LOOK,
            go_on,
            stopped: false,
        }
    }

    /// So many steps from here on.
    pub(crate) fn allow(&mut self, steps: u64) {
        self.left = steps;
    }

    /// Does some work with a purse of its own, which is paid out of this one.
    pub(crate) fn apart<T>(&mut self, steps: u64, work: impl FnOnce(&mut Self) -> T) -> T {
        let kept = std::mem::replace(&mut self.left, steps);
        let done = work(self);
        self.left = kept.saturating_sub(steps - self.left);
        done
    }

    /// Spends steps: whether there are any left.
    pub(crate) fn spend(&mut self, steps: u64) -> bool {
        self.left = self.left.saturating_sub(steps);
        self.until_look = self.until_look.saturating_sub(steps);
        if self.until_look == 0 && !self.stopped {
            self.until_look = LOOK;
            self.stopped = (self.go_on)().is_break();
        }
        self.left > 0 && !self.stopped
    }

    /// Whether there are none left.
    pub(crate) fn is_empty(&self) -> bool {
        self.left == 0 || self.stopped
    }

    /// Whether the work is wanted no more.
    pub(crate) fn stopped(&self) -> bool {
        self.stopped
    }
}
