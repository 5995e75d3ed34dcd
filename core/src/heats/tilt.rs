//! A bent piece in a straight bore: a short coil is threaded over it, held aslant as the stretch inside
//! lies. Solved for each place on the way, not guessed.

use std::f64::consts::FRAC_PI_4;

use super::stand::{End, Slice, Stand};
use crate::number::peak::top;
use crate::shape::section::smallest_circle_mm;

/// A way through.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Aslant {
    /// How far it can be slid, mm of its length.
    pub slides_mm: f64,
    /// How far it leans where it leans most, radians.
    pub tilt: f64,
    /// The largest circle around a stretch in the bore, mm.
    pub circle_mm: f64,
}

/// The farthest that a piece is held aslant, radians each way: beyond it lies across the bore.
pub const MOST_TILT: f64 = FRAC_PI_4;

/// Rounding of sizes, mm.
const HAIR: f64 = 1e-6;

/// Threads a piece from an end through a bore, from where it still went straight to where it must come.
/// `None` where it sticks at any angle.
pub fn through(
    stand: &Stand,
    end: End,
    (straight_mm, must_mm): (f64, f64),
    (across_mm, long_mm): (f64, f64),
) -> Option<Aslant> {
    let order: Vec<&Slice> = stand.from(end).collect();
    let at = |slice: &Slice| stand.from_end_mm(end, slice.at_mm);
    // One section that does not pass alone stops it at any angle.
    let entering = order.iter().take_while(|slice| at(slice) <= must_mm + HAIR);
    if entering
        .clone()
        .any(|slice| slice.circle_mm > across_mm + HAIR)
    {
        return None;
    }
    let mut aslant = Aslant {
        slides_mm: straight_mm,
        tilt: 0.0,
        circle_mm: 0.0,
    };
    let mut leans = 0.0;
    for last in 0..order.len() {
        let deep = at(order[last]);
        if deep <= straight_mm {
            continue;
        }
        // One section more on the far side: the bore may end between two.
        let first = order[..last]
            .iter()
            .rposition(|slice| at(slice) <= deep - long_mm);
        let window = &order[first.unwrap_or(0)..=last];
        let Some((tilt, circle)) = passes(window, across_mm, leans) else {
            break;
        };
        leans = tilt;
        aslant.slides_mm = deep;
        aslant.circle_mm = aslant.circle_mm.max(circle);
        if tilt.abs() > aslant.tilt.abs() {
            aslant.tilt = tilt;
        }
    }
    (aslant.slides_mm >= must_mm - HAIR).then_some(aslant)
}

/// The angle at which a stretch passes a bore, and its circle there; the angle before is tried first.
fn passes(window: &[&Slice], across_mm: f64, leans: f64) -> Option<(f64, f64)> {
    let points: Vec<[f64; 3]> = window
        .iter()
        .flat_map(|slice| slice.points.iter().copied())
        .collect();
    let wide = points.iter().map(|p| p[2]);
    let (low, high) = wide.fold((f64::MAX, f64::MIN), |(a, b), z| (a.min(z), b.max(z)));
    // Leaning in the side plane changes nothing across it.
    if high - low > across_mm + HAIR {
        return None;
    }
    let before = circle_mm(&points, leans);
    if before <= across_mm {
        return Some((leans, before));
    }
    let telling: Vec<[f64; 3]> = telling(window)
        .flat_map(|slice| slice.points.iter().copied())
        .collect();
    let (tilt, circle) = best_tilt(&telling);
    (circle <= across_mm + HAIR).then_some((tilt, circle))
}

/// The sections of a stretch without those that lie in line between others: seen from anywhere, they
/// are inside of what those cover.
fn telling<'a>(window: &'a [&Slice]) -> impl Iterator<Item = &'a Slice> {
    let mut kept: Vec<&Slice> = Vec::with_capacity(window.len());
    for (i, slice) in window.iter().enumerate() {
        let ends = kept.last().zip(window.get(i + 1));
        if !ends.is_some_and(|(before, next)| lies_between(before, slice, next)) {
            kept.push(slice);
        }
    }
    kept.into_iter()
}

/// Whether each point of a section lies in line between its likes of two others.
fn lies_between(before: &Slice, slice: &Slice, next: &Slice) -> bool {
    let (a, p, b) = (&before.points, &slice.points, &next.points);
    let (Some(from), Some(at), Some(to)) = (a.first(), p.first(), b.first()) else {
        return false;
    };
    let t = (at[0] - from[0]) / (to[0] - from[0]);
    let in_line = |((a, p), b): ((&[f64; 3], &[f64; 3]), &[f64; 3])| {
        (0..3).all(|i| (a[i] + (b[i] - a[i]) * t - p[i]).abs() < HAIR)
    };
    let alike = a.len() == p.len() && p.len() == b.len() && (0.0..=1.0).contains(&t);
    alike && a.iter().zip(p).zip(b).all(in_line)
}

/// The circle around points as they are seen along a bore that leans by so much from x in the side plane, mm.
pub fn circle_mm(points: &[[f64; 3]], tilt: f64) -> f64 {
    let (sin, cos) = tilt.sin_cos();
    let seen: Vec<(f64, f64)> = points
        .iter()
        .map(|&[x, y, z]| (z, y * cos - x * sin))
        .collect();
    smallest_circle_mm(&seen)
}

/// The angle at which the circle around points is the smallest, and that circle.
///
/// ```
/// use reinwright_core::heats::tilt::best_tilt;
/// // A thin rod that rises one in ten is seen as a point along itself.
/// let rod = [[0.0, 0.0, 0.0], [100.0, 10.0, 0.0]];
/// let (tilt, circle) = best_tilt(&rod);
/// assert!((tilt - 0.1_f64.atan()).abs() < 1e-3 && circle < 0.1);
/// ```
pub fn best_tilt(points: &[[f64; 3]]) -> (f64, f64) {
    const TOLERANCE: f64 = 1e-5;
    let best = best_sample(points);
    let about = (
        sample(best.saturating_sub(1)),
        sample((best + 1).min(SAMPLES)),
    );
    let tilt = top(about, TOLERANCE, |tilt| -circle_mm(points, tilt));
    (tilt, circle_mm(points, tilt))
}

/// Steps from the farthest tilt one way to the farthest the other way, from which the best is sought.
const SAMPLES: u32 = 16;

fn sample(i: u32) -> f64 {
    MOST_TILT * (2.0 * f64::from(i) / f64::from(SAMPLES) - 1.0)
}

/// The sample with the smallest circle. No circle is smaller than its points are high, so that most tilts
/// need none.
fn best_sample(points: &[[f64; 3]]) -> u32 {
    let mut samples: Vec<(u32, f64)> = (0..=SAMPLES)
        .map(|i| (i, height_mm(points, sample(i))))
        .collect();
    samples.sort_by(|a, b| a.1.total_cmp(&b.1));
    let mut best = (0, f64::INFINITY);
    for (i, height) in samples {
        if height - HAIR > best.1 {
            break;
        }
        let circle = circle_mm(points, sample(i));
        // Of two that are alike the later one counts, whichever was looked at first.
        if circle < best.1 || (circle == best.1 && i > best.0) {
            best = (i, circle);
        }
    }
    best.0
}

/// How high points stand as they are seen along a bore that leans by so much, mm.
fn height_mm(points: &[[f64; 3]], tilt: f64) -> f64 {
    let (sin, cos) = tilt.sin_cos();
    let seen = points.iter().map(|&[x, y, _]| y * cos - x * sin);
    let (low, high) = seen.fold((f64::MAX, f64::MIN), |(a, b), y| (a.min(y), b.max(y)));
    high - low
}
