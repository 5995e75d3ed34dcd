//! One operation on the runs of a tool.

use crate::finding::Part;
use crate::tool::forging::{Forging, Form};

/// One operation on the runs of a tool, by their places from the working end on.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Work {
    pub(super) step: Forging,
    /// What is worked, and what becomes of it, where that is another form.
    pub(super) makes: Vec<(usize, Option<Form>)>,
    /// The part in which it opens what is to be open.
    pub(super) opens: Option<Part>,
}

impl Work {
    pub(super) fn places(&self) -> Vec<usize> {
        self.makes.iter().map(|own| own.0).collect()
    }

    /// What of a form it makes out of a place.
    pub(super) fn form(&self, place: usize) -> Option<Form> {
        let its = self.makes.iter().find(|own| own.0 == place);
        its.and_then(|own| own.1)
    }
}
