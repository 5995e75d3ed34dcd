//! How far a long job has come, and whether it goes on.

use std::ops::ControlFlow;

/// How far a long job has come; the caller answers whether it goes on.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Progress {
    /// Steps done.
    pub done: usize,
    /// Steps in all.
    pub total: usize,
}

/// Is told of each step, and stops the job by answering [`ControlFlow::Break`].
pub type Watch<'a> = &'a mut dyn FnMut(Progress) -> ControlFlow<()>;

/// A watch that lets every job run to its end.
pub fn to_the_end(_progress: Progress) -> ControlFlow<()> {
    ControlFlow::Continue(())
}
