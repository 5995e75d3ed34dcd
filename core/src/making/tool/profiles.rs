//! The sections of runs as segments of a line of steel, and what steel a run is.

use super::super::blank::{Sect, Segment};
use crate::shape::section::Profile;
use crate::tool::{Cut, Outline, Run};

/// The profiles that a line of segments names.
#[derive(Default)]
pub(super) struct Profiles {
    outlines: Vec<Outline>,
}

impl Profiles {
    fn sect(&mut self, cut: Cut) -> Sect {
        let known = self.outlines.iter().position(|own| *own == cut.outline);
        let profile = known.unwrap_or_else(|| {
            self.outlines.push(cut.outline);
            self.outlines.len() - 1
        });
        Sect {
            depth: cut.depth,
            width: cut.width,
            y: 0.0,
            z: 0.0,
            profile,
        }
    }

    pub(super) fn all(&self) -> Vec<Profile> {
        self.outlines.iter().map(|own| own.profile()).collect()
    }

    pub(super) fn segment(&mut self, run: &Run, (zone, volume): (usize, f64)) -> Segment {
        Segment {
            zone,
            volume,
            from: self.sect(run.from),
            to: self.sect(run.to),
            ease: run.ease,
        }
    }
}

/// What a run's steel would be, mm³.
pub(super) fn volume_of(run: &Run) -> f64 {
    let mut profiles = Profiles::default();
    let segment = profiles.segment(run, (0, 1.0));
    run.length / segment.length(&profiles.all())
}
