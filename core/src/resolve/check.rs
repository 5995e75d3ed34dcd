//! What resolving notices.

use crate::document::{Document, Part};
use crate::finding::{COMMON_PRACTICE, Finding, GEOMETRY, Severity};
use crate::model::Model;

pub(super) fn noticed(document: &Document, model: &Model) -> Vec<Finding> {
    let _ = (
        document,
        model,
        COMMON_PRACTICE,
        GEOMETRY,
        Severity::Stop,
        Part::Jaw,
    );
    Vec::new()
}
