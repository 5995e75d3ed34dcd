//! Seating the work: where a jaw's face or lips come to rest on work that centres itself.
//!
//! Both surfaces are functions of z (along the rivet), so the jaw comes down until the least
//! distance between them is nothing. That is exact for every shape of jaw and work.

mod across;
mod over;
mod under;

pub(crate) use across::bears_across;
pub use across::{Inside, Touching};

use crate::number::peak;
use crate::shape::section::Section;

/// How the work bears on a jaw.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Bears {
    /// On a face: a whole stretch of it touches.
    Face,
    /// On both walls of a groove.
    Walls,
    /// At the bottom of a groove.
    Bottom,
    /// On the edges of a groove: the work does not go in.
    Edges,
}

/// A jaw at rest on the work.
#[derive(Debug, Clone, PartialEq)]
pub struct Seat {
    /// From the middle of the work to the line of the jaw's faces or lips, mm. Below zero the
    /// jaw would have passed the middle: it cannot hold the work.
    pub face: f64,
    /// Where it touches, z in mm from the middle, ascending; x where it lies crosswise.
    pub contacts: Vec<f64>,
    /// How it bears.
    pub bears: Bears,
}

/// Brings a jaw down on the work. `jaw` is its section, `rise` its box's centre above the line of
/// faces or lips.
pub fn seat(jaw: &Section<'_>, rise: f64, work: &Section<'_>) -> Seat {
    let inner = |z: f64| rise + jaw.lower(2.0 * z / jaw.width);
    let distance = |z: f64| work.upper(2.0 * z / work.width) - inner(z);
    let cuts = common_cuts(jaw, work);
    let mut best: Vec<(f64, f64)> = Vec::new();
    for pair in cuts.windows(2) {
        best.extend(highest(&distance, pair[0], pair[1]));
    }
    let face = best.iter().map(|&(_, d)| d).fold(f64::MIN, f64::max);
    /// How nearly a place must touch to count as touching, mm.
    const TOUCH: f64 = 1e-5;
    let mut contacts: Vec<f64> = best
        .iter()
        .filter(|&&(_, d)| d > face - TOUCH)
        .map(|&(z, _)| z)
        .collect();
    contacts.sort_by(f64::total_cmp);
    contacts.dedup_by(|a, b| (*a - *b).abs() < 1e-3);
    let bears = how(&contacts, &inner, jaw);
    Seat {
        face,
        contacts,
        bears,
    }
}

impl Seat {
    /// Whether both surfaces run along each other at a place of contact, to 5 degrees (judgement: nobody files
    /// an angle nearer), and do not meet there in a corner alone.
    pub fn on_flat(&self, (jaw, rise): (&Section<'_>, f64), work: &Section<'_>) -> bool {
        /// So far beside the contact is looked, of the width that both share.
        const BESIDE_IT: f64 = 0.08;
        /// The tangent of 5 degrees.
        const ALONG: f64 = 0.0875;
        let width = jaw.width.min(work.width);
        let beside = BESIDE_IT * width;
        let off = |z: f64| {
            let inner = rise + jaw.lower(2.0 * z / jaw.width);
            inner - work.upper(2.0 * z / work.width)
        };
        self.contacts.iter().any(|&z| {
            [z - beside, z + beside]
                .into_iter()
                .filter(|near| near.abs() < width / 2.0 && near * z > 0.0)
                .any(|near| off(near) - off(z) < ALONG * beside)
        })
    }
}

/// The corners of both surfaces within the width that they share, in mm, just inside each.
fn common_cuts(jaw: &Section<'_>, work: &Section<'_>) -> Vec<f64> {
    let half = jaw.width.min(work.width) / 2.0;
    let mm = |section: &Section<'_>| {
        let scale = section.width / 2.0;
        section
            .breaks()
            .into_iter()
            .map(move |u| u * scale)
            .collect::<Vec<_>>()
    };
    let mut cuts = mm(jaw);
    cuts.extend(mm(work));
    cuts.retain(|z| z.abs() < half);
    cuts.extend([-half, 0.0, half]);
    cuts.sort_by(f64::total_cmp);
    cuts.dedup_by(|a, b| (*a - *b).abs() < 1e-9);
    cuts
}

/// The highest place of `f` between two corners, and the corners themselves. Between corners the
/// difference of two lines or arcs has one hump at the most on each side of the middle.
fn highest(f: &impl Fn(f64) -> f64, a: f64, b: f64) -> [(f64, f64); 3] {
    /// Just inside a corner, where only one piece of either surface counts, mm.
    const INSIDE: f64 = 1e-9;
    /// Enough samples that one stands on the higher of two humps.
    const SAMPLES: u32 = 8;
    /// How nearly the place is found, mm.
    const NEAR: f64 = 1e-9;
    let (from, to) = (a + INSIDE, b - INSIDE);
    let top = peak::highest((from, to), SAMPLES, NEAR, f);
    [top, from, to].map(|z| (z, f(z)))
}

/// Parts of the half-width at which a jaw's surface is compared with its middle, to see whether it
/// has a groove.
pub(crate) const BESIDE: [f64; 3] = [0.3, 0.6, 0.95];
/// A groove is deeper than this, mm (judgement: less is a face that was not filed flat).
pub(crate) const GROOVE: f64 = 0.3;
/// Work touches the middle of a groove within this part of its width.
const IN_MIDDLE: f64 = 0.02;
/// Touching nearer to the line of the lips than this part of a hollow's depth is riding on them.
const ON_LIP: f64 = 0.04;
/// Contacts that reach over more than this part of the width on one side lie on a face beside a
/// crease.
const WIDE_FACE: f64 = 0.25;
/// All its contacts lie at the bottom when they lie within this part of the width.
const AT_BOTTOM: f64 = 0.05;

fn how(contacts: &[f64], inner: &impl Fn(f64) -> f64, jaw: &Section<'_>) -> Bears {
    let grooved = {
        let half = jaw.width / 2.0;
        let lips = BESIDE
            .map(|part| inner(part * half))
            .into_iter()
            .fold(f64::MAX, f64::min);
        inner(0.0) > lips + GROOVE
    };
    let widest = contacts.last().copied().unwrap_or(0.0);
    let middle = contacts.iter().any(|z| z.abs() < IN_MIDDLE * jaw.width);
    let deepest = inner(0.0);
    if !grooved {
        return Bears::Face;
    }
    if middle && contacts.len() <= 3 && widest < AT_BOTTOM * jaw.width {
        return Bears::Bottom;
    }
    /// Places so nearly as deep as the middle lie on one floor with it, mm.
    const FLOOR: f64 = 1e-4;
    if middle && contacts.iter().all(|z| deepest - inner(*z) < FLOOR) {
        return Bears::Face;
    }
    // On the lips the inner surface is at the line of the lips or on its way out. Work that fills
    // the groove touches there too, but not only there; and work that lies on wide faces beside
    // a mere crease lies on faces.
    let on_lip = |z: &f64| inner(*z) < ON_LIP * deepest;
    let inmost = contacts.iter().map(|z| z.abs()).fold(f64::MAX, f64::min);
    if !contacts.iter().all(on_lip) {
        Bears::Walls
    } else if widest - inmost > WIDE_FACE * jaw.width {
        Bears::Face
    } else {
        Bears::Edges
    }
}
