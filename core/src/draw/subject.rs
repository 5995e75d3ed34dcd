//! What the drawing of a pair is made of and how it lies.

use crate::paper::Breaks;
use crate::paper::dimension::Scale;
use crate::tongs::document::Document;
use crate::tongs::model::Model;

/// A pair that is being drawn.
#[derive(Clone, Copy)]
pub(super) struct Subject<'a> {
    pub(super) document: &'a Document,
    pub(super) model: &'a Model,
    /// Half of the opening past the set pose, radians.
    pub(super) opening: f64,
    /// What is left out of the reins.
    pub(super) breaks: Breaks,
    pub(super) scale: Scale,
}
