//! What a style says of its own sizes.

use std::fmt;

use crate::finding::{Held, Kind, Severity};
use crate::units::{Quantity, Show};

/// Words that are put together once it is known how sizes are written.
type Words = Box<dyn Fn(Show) -> String>;

/// What cannot be made as it was asked in a style, or will disappoint.
pub struct Remark {
    /// What it is.
    pub kind: Kind,
    /// How much it matters.
    pub severity: Severity,
    /// What was found and what it is held against, mm; `None` where no size decides.
    pub held: Option<Held>,
    /// How to mend it.
    pub hint: &'static str,
    /// Where the limit comes from.
    pub source: &'static str,
    words: Words,
}

impl Remark {
    /// What is drawn so little smaller than asked is not said, mm.
    pub const NEAR: f64 = 0.05;

    /// Good to know: what follows the name of the jaw, how to mend it, where the limit is from.
    pub(super) fn note(
        kind: Kind,
        words: impl Fn(Show) -> String + 'static,
        hint: &'static str,
        source: &'static str,
    ) -> Self {
        Self {
            kind,
            severity: Severity::Note,
            held: None,
            hint,
            source,
            words: Box::new(words),
        }
    }

    /// Likely to fail or to disappoint.
    pub(super) fn mend(
        kind: Kind,
        words: impl Fn(Show) -> String + 'static,
        hint: &'static str,
        source: &'static str,
    ) -> Self {
        Self {
            severity: Severity::Mend,
            ..Self::note(kind, words, hint, source)
        }
    }

    /// Cannot be made.
    pub(super) fn stop(
        kind: Kind,
        words: impl Fn(Show) -> String + 'static,
        hint: &'static str,
        source: &'static str,
    ) -> Self {
        Self {
            severity: Severity::Stop,
            ..Self::note(kind, words, hint, source)
        }
    }

    /// With the size that decides and what it is held against, mm.
    pub(super) fn held(self, value: f64, limit: f64) -> Self {
        let of = Quantity::Length;
        let held = Some(Held { value, limit, of });
        Self { held, ..self }
    }

    /// What follows the name of the jaw, with sizes as `show` has them.
    pub fn text(&self, show: Show) -> String {
        (self.words)(show)
    }
}

impl fmt::Debug for Remark {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.debug_struct("Remark")
            .field("kind", &self.kind)
            .field("severity", &self.severity)
            .field("words", &self.text(Show::default()))
            .field("held", &self.held)
            .finish_non_exhaustive()
    }
}
