//! Seating the work: where a jaw's face or lips come to rest on work that centres itself.
//!
//! Both surfaces are functions of z (along the rivet), so the jaw comes down until the least
//! distance between them is nothing. That is exact for every shape of jaw and work.

mod across;

pub(crate) use across::bears_across;
pub use across::{Inside, Touching};

use crate::shape::section::{Section, lerp};

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
fn highest(f: &impl Fn(f64) -> f64, a: f64, b: f64) -> Vec<(f64, f64)> {
    const STEP: f64 = 1e-9;
    const PARTS: u32 = 8;
    let at = |i: u32| lerp(a + STEP, b - STEP, f64::from(i) / f64::from(PARTS));
    let top = (0..=PARTS)
        .max_by(|&i, &j| f(at(i)).total_cmp(&f(at(j))))
        .unwrap_or(0);
    let (mut low, mut high) = (at(top.saturating_sub(1)), at((top + 1).min(PARTS)));
    let golden = (5f64.sqrt() - 1.0) / 2.0;
    while high - low > 1e-9 {
        let (p, q) = (high - golden * (high - low), low + golden * (high - low));
        if f(p) < f(q) { low = p } else { high = q }
    }
    let z = f64::midpoint(low, high);
    [z, at(0), at(PARTS)]
        .into_iter()
        .map(|z| (z, f(z)))
        .collect()
}

fn how(contacts: &[f64], inner: &impl Fn(f64) -> f64, jaw: &Section<'_>) -> Bears {
    let grooved = {
        let half = jaw.width / 2.0;
        let lips = [0.3, 0.6, 0.95]
            .map(|part| inner(part * half))
            .into_iter()
            .fold(f64::MAX, f64::min);
        inner(0.0) > lips + 0.3
    };
    let widest = contacts.last().copied().unwrap_or(0.0);
    let middle = contacts.iter().any(|z| z.abs() < 0.02 * jaw.width);
    let deepest = inner(0.0);
    if !grooved {
        return Bears::Face;
    }
    if middle && contacts.len() <= 3 && widest < 0.05 * jaw.width {
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
    let on_lip = |z: &f64| inner(*z) < 0.04 * deepest;
    let inmost = contacts.iter().map(|z| z.abs()).fold(f64::MAX, f64::min);
    if !contacts.iter().all(on_lip) {
        Bears::Walls
    } else if widest - inmost > 0.25 * jaw.width {
        Bears::Face
    } else {
        Bears::Edges
    }
}
