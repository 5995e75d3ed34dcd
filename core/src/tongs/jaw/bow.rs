//! The bow that swings out behind a bit and comes back to it.

use super::form::{STEP, block};
use super::{Course, Form, Lay};
use crate::shape::section::{Boxed, Profile};
use crate::shape::sweep::{Ease, Station};

/// A bow from heel to bit, by its inside, mm.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Bow {
    /// From the line of faces or lips to the inside of the bow.
    pub(super) height: f64,
    /// Length of its level part.
    pub(super) level: f64,
    /// Depth and width of its rectangle.
    pub(super) depth: f64,
    pub(super) width: f64,
    /// Highest place of the bit that it comes down to, over the same line.
    pub(super) bit_top: f64,
}

/// How a bow leaves the neck.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) enum Start {
    /// The neck swings up into it.
    Swing,
    /// Level behind a stop `length` mm long, which reaches `reach` mm past the line of faces or
    /// lips; then it swings out from the height of its own start.
    Stop {
        /// Along the tongs.
        length: f64,
        /// Towards the middle.
        reach: f64,
    },
}

/// How steeply the bow rises out of the neck, radians.
const RISE: f64 = 0.8;
/// How steeply it comes down to the bit, radians, where it is high enough.
const FALL: f64 = 1.1;
/// A shorter straight between two arcs is none, mm: a sketch, whose places are told to so much less
/// than this, could not keep its heading.
const LEAST_STRAIGHT: f64 = 0.5;
/// A bow is drawn no lower than this, mm.
const LEAST: f64 = 0.2;

impl Bow {
    fn top(&self) -> f64 {
        self.height.max(LEAST)
    }

    /// The height of its inside at the heel, mm: the neck carries it there.
    pub(super) fn start(&self, start: Start) -> f64 {
        match start {
            Start::Swing => 0.4 * self.top(),
            Start::Stop { .. } => 0.6 * self.top(),
        }
    }

    /// How long the neck takes to swing out behind a stop, mm along x: two equal arcs, the first
    /// with the steel on the inside of the bend.
    pub(super) fn swing(&self, start: Start) -> f64 {
        let rise = self.top() - self.start(start);
        let radius = 1.25 * self.depth.max(1.4 * rise);
        (4.0 * rise * radius - rise * rise).sqrt()
    }

    /// Places and headings of the inside from the heel to where the bit begins: the last five are
    /// both ends of the level part, both ends of the fall, and the bit.
    fn poses(&self, start: Start) -> Vec<(f64, f64, f64)> {
        let (low, high) = (self.start(start), self.top());
        let rise = high - low;
        let (mut poses, top) = match start {
            // One arc from the heel to the top.
            Start::Swing => {
                let run = rise * RISE.sin() / (1.0 - RISE.cos());
                (vec![(0.0, low, RISE)], run)
            }
            // Level, then two arcs.
            Start::Stop { length, .. } => {
                let flat = vec![(0.0, low, 0.0), (length, low, 0.0)];
                (flat, length + self.swing(start))
            }
        };
        poses.push((top, high, 0.0));
        poses.push((top + self.level, high, 0.0));
        poses.extend(self.fall(top + self.level));
        poses
    }

    /// From the end of the level part down to the bit: two arcs with a straight between.
    fn fall(&self, end: f64) -> [(f64, f64, f64); 3] {
        let (high, (out, back)) = (self.top(), self.corners());
        // Both arcs alone come down by all of the height at this angle.
        let arcs = (1.0 - high / (out + back)).max(-1.0).acos();
        let straight = (high - (out + back) * (1.0 - FALL.cos())) / FALL.sin();
        let fall = if straight < LEAST_STRAIGHT {
            arcs
        } else {
            FALL
        };
        let (sin, drop) = (fall.sin(), 1.0 - fall.cos());
        let (steep, low) = ((end + out * sin, high - out * drop), back * drop);
        let run = ((steep.1 - low) / fall.tan()).max(0.0);
        [
            (steep.0, steep.1, -fall),
            (steep.0 + run, low, -fall),
            (steep.0 + run + back * sin, 0.0, 0.0),
        ]
    }

    /// Radii of the inside where it turns down and where it turns out to the bit. The second
    /// turns about a middle on the back's side, so it is larger than the bit is high: its back
    /// would cross itself else.
    fn corners(&self) -> (f64, f64) {
        let back = (1.25 * self.depth).max(1.1 * self.bit_top);
        ((0.5 * self.depth).max(2.0), back)
    }

    /// From the heel to the bit along x, mm.
    pub(super) fn length(&self, start: Start) -> f64 {
        self.poses(start).last().map_or(0.0, |pose| pose.0)
    }

    /// The bow with a bit `length` mm long in one form; the work's end lies `end` mm past the
    /// heel.
    pub(super) fn with_bit(&self, start: Start, (bit, length): (&Boxed, f64), end: f64) -> Form {
        let mut poses = self.poses(start);
        let from = poses[poses.len() - 1].0;
        poses.push((from + length, 0.0, 0.0));
        let (course, along) = Course::through(&poses);
        let [.., fall, _, _, grip, tip] = along[..] else {
            unreachable!("a bow has more than five places");
        };
        let plain = |at: f64, ease: Ease| block(at, (0.0, self.depth), self.width, ease);
        let gripping = |at: f64| Station {
            at,
            depth: bit.depth,
            width: bit.width,
            rise: bit.bottom + bit.depth / 2.0,
            shift: 0.0,
            profile: 1,
            ease: Ease::Linear,
        };
        let mut stations = self.first(start);
        stations.extend([plain(fall, Ease::Smooth), gripping(grip), gripping(tip)]);
        Form {
            course,
            stations,
            profiles: vec![Profile::rectangle(), bit.profile.clone()],
            grip: (grip, tip),
            lay: Lay::Endwise { end: Some(end) },
        }
    }

    /// The stations from the heel to where the plain bow begins.
    fn first(&self, start: Start) -> Vec<Station> {
        let block = |at: f64, inner: f64| block(at, (inner, self.depth), self.width, Ease::Linear);
        match start {
            Start::Swing => vec![block(0.0, 0.0)],
            Start::Stop { length, reach } => {
                let inner = -(self.start(start) + reach);
                vec![
                    block(0.0, inner),
                    block(length, inner),
                    block(length + STEP, 0.0),
                ]
            }
        }
    }
}
