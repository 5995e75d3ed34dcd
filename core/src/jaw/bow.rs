//! The bow that swings out behind a bit and comes back to it.

use super::{Course, Form, Lay};
use crate::section::Profile;
use crate::sweep::{Ease, Station};

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
}

/// The bit that follows a bow: its profile with its size and the rise of its middle over the
/// line of faces or lips, mm.
pub(super) struct Bit {
    pub(super) profile: Profile,
    pub(super) depth: f64,
    pub(super) width: f64,
    pub(super) rise: f64,
    /// From where it leaves the bow to the tip.
    pub(super) length: f64,
}

/// How steeply the bow rises out of the neck, radians.
const RISE: f64 = 0.8;
/// How steeply it comes down to the bit, radians.
const FALL: f64 = 1.1;

impl Bow {
    /// The height of its inside at the heel: the neck carries it there.
    fn start(&self) -> f64 {
        0.4 * self.height
    }

    /// Places and headings of the inside from the heel to where the bit begins.
    fn poses(&self) -> Vec<(f64, f64, f64)> {
        let rise = self.height - self.start();
        // One arc from the heel to the top.
        let top = rise * RISE.sin() / (1.0 - RISE.cos());
        let end = top + self.level;
        let (out, back) = self.corners();
        let drop = 1.0 - FALL.cos();
        let mut poses = vec![
            (0.0, self.start(), RISE),
            (top, self.height, 0.0),
            (end, self.height, 0.0),
        ];
        // Two arcs with a straight between.
        let steep = (end + out * FALL.sin(), self.height - out * drop);
        let low = back * drop;
        let run = (steep.1 - low) / FALL.tan();
        poses.push((steep.0, steep.1, -FALL));
        poses.push((steep.0 + run, low, -FALL));
        poses.push((steep.0 + run + back * FALL.sin(), 0.0, 0.0));
        poses
    }

    /// Radii of the inside where it turns down and where it turns out to the bit: the second is
    /// round the outside of the steel, so it is larger than the steel is deep.
    fn corners(&self) -> (f64, f64) {
        let room = self.height / (1.0 - FALL.cos());
        let back = (1.25 * self.depth).min(0.7 * room);
        let out = (0.5 * self.depth).max(2.0).min(0.95 * (room - back));
        (out, back)
    }

    /// From the heel to the bit along x, mm.
    pub(super) fn length(&self) -> f64 {
        self.poses().last().map_or(0.0, |pose| pose.0)
    }

    /// The bow with a bit in one form; the work's end lies `end` mm past the heel.
    pub(super) fn with_bit(&self, bit: &Bit, end: f64) -> Form {
        let mut poses = self.poses();
        let from = poses[poses.len() - 1].0;
        poses.push((from + bit.length, 0.0, 0.0));
        let (course, along) = Course::through(&poses);
        let plain = |at: f64, ease: Ease| Station {
            at,
            depth: self.depth,
            width: self.width,
            rise: self.depth / 2.0,
            shift: 0.0,
            profile: 0,
            ease,
        };
        let gripping = |at: f64| Station {
            at,
            depth: bit.depth,
            width: bit.width,
            rise: bit.rise,
            shift: 0.0,
            profile: 1,
            ease: Ease::Linear,
        };
        let (fall, grip, tip) = (along[2], along[5], along[6]);
        let stations = vec![
            plain(0.0, Ease::Linear),
            plain(fall, Ease::Smooth),
            gripping(grip),
            gripping(tip),
        ];
        Form {
            course,
            stations,
            profiles: vec![Profile::rectangle(), bit.profile.clone()],
            grip: (grip, tip),
            lay: Lay::Endwise { end: Some(end) },
        }
    }
}
