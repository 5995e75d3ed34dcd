//! Work between the jaws, and where a jaw touches it.

use super::surface::Surface;
use crate::shape::section::{Profile, Section};

/// The work's cross-section as it lies in the jaws, in one size.
#[derive(Debug, Clone)]
pub(super) struct Held<'a> {
    pub(super) section: Section<'a>,
    pub(super) surface: Surface,
}

impl<'a> Held<'a> {
    pub(super) fn new(profile: &'a Profile, depth: f64, width: f64) -> Self {
        Self {
            section: Section::new(profile, depth, width),
            surface: Surface::upper(profile, depth, width),
        }
    }

    /// Its outer surface beside its middle, mm.
    pub(super) fn height(&self, beside: f64) -> f64 {
        self.surface.at(beside)
    }
}

/// Where and at which half-angle a jaw touches.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Touch {
    /// How far the half has turned from the set pose, radians, opening positive.
    pub(super) half_angle: f64,
    /// Which place of the grip touches; which point of the inside, where the work lies across.
    pub(super) place: usize,
}
