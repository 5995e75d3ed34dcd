//! Undo and redo, as whole documents.

use egui::util::undoer::{Settings, Undoer};

/// Every state, of a design or a family, that the smith let come to rest.
#[derive(Debug)]
pub(crate) struct History<State> {
    undoer: Undoer<State>,
}

/// Whether a change is finished.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Hand {
    /// A drag, a held key or a text in the middle of typing.
    Moving,
    /// Nothing is being changed.
    AtRest,
}

impl<State: Clone + PartialEq> History<State> {
    pub(crate) fn new(document: &State) -> Self {
        let settings = Settings {
            // A document is a few thousand bytes: a lifetime of changes fits in memory.
            max_undos: usize::MAX,
            // Only a hand at rest ends a step, never a pause in the middle of one.
            stable_time: f32::INFINITY,
            auto_save_interval: f32::INFINITY,
        };
        let mut undoer = Undoer::with_settings(settings);
        undoer.feed_state(0.0, document);
        Self { undoer }
    }

    /// Takes note of the document, once each frame.
    pub(crate) fn feed(&mut self, time: f64, document: &State, hand: Hand) {
        self.undoer.feed_state(time, document);
        if hand == Hand::AtRest {
            self.undoer.add_undo(document);
        }
    }

    pub(crate) fn can_undo(&self, document: &State) -> bool {
        self.undoer.has_undo(document)
    }

    pub(crate) fn can_redo(&self, document: &State) -> bool {
        self.undoer.has_redo(document)
    }

    pub(crate) fn undo(&mut self, document: &State) -> Option<State> {
        self.undoer.undo(document).cloned()
    }

    pub(crate) fn redo(&mut self, document: &State) -> Option<State> {
        self.undoer.redo(document).cloned()
    }
}
