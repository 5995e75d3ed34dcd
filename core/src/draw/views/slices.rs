//! Where a jaw is cut to be seen end on, and which of these slices tell its shape.

use kurbo::Affine;

use crate::shape::section::Profile;
use crate::shape::sweep::Sweep;

/// How closely the slices of a jaw follow its run, mm.
pub(super) const FINE: f64 = 0.08;

/// Where a jaw is cut to be seen end on: at its stations and bends, and between them where its
/// section changes.
fn slices(jaw: &Sweep) -> Vec<f64> {
    /// Slices of a stretch: enough for an S-curve to look round.
    const PARTS: u32 = 6;
    let cuts = jaw.cuts(0.0, jaw.length());
    let mut all = vec![0.0];
    for pair in cuts.windows(2) {
        let changes = jaw.section(pair[0]).width != jaw.section(pair[1]).width;
        // Many stations follow the shape by themselves.
        let parts = if changes && cuts.len() < 12 { PARTS } else { 1 };
        let step = (pair[1] - pair[0]) / f64::from(parts);
        all.extend((1..parts).map(|i| pair[0] + step * f64::from(i)));
        all.push(pair[1]);
    }
    all
}

/// A section of a jaw, in (z, y) of a half that is turned.
struct Slice<'a> {
    s: f64,
    /// Its middle in z and y, half its width and half its depth, mm.
    at: [f64; 4],
    /// The profiles that it stands between, and how far it has gone from one to the other.
    profiles: [&'a Profile; 2],
    blend: f64,
}

impl<'a> Slice<'a> {
    fn of(jaw: &'a Sweep, s: f64, turn: f64) -> Self {
        let section = jaw.section(s);
        let y = (Affine::rotate(turn) * jaw.middle(s)).y;
        let one = |profile: &'a Profile| ([profile, profile], 0.0);
        let (profiles, blend) = if section.blend == 0.0 || same(section.from, section.to) {
            one(section.from)
        } else if section.blend == 1.0 {
            one(section.to)
        } else {
            ([section.from, section.to], section.blend)
        };
        Self {
            s,
            at: [jaw.shift(s), y, section.width / 2.0, section.depth / 2.0],
            profiles,
            blend,
        }
    }

    /// What it is told by among sections between two profiles, all in mm: its box, and how far
    /// its surfaces have gone; `None` when it is of others.
    fn between(&self, [from, to]: [&Profile; 2]) -> Option<[f64; 5]> {
        let [a, b] = self.profiles;
        let blend = if same(a, from) && same(b, to) {
            self.blend
        } else if same(a, b) && same(a, from) {
            0.0
        } else if same(a, b) && same(a, to) {
            1.0
        } else {
            return None;
        };
        let [z, y, width, depth] = self.at;
        Some([z, y, width, depth, depth * blend])
    }

    /// Whether the hull of two others has it inside, or as good as.
    fn lies_between(&self, first: &Self, last: &Self) -> bool {
        let told = [first, self, last].map(|slice| slice.between(self.profiles));
        let [Some(first), Some(own), Some(last)] = told else {
            return false;
        };
        let way: [f64; 5] = std::array::from_fn(|i| last[i] - first[i]);
        let long: f64 = way.iter().map(|d| d * d).sum();
        let along: f64 = (0..5).map(|i| way[i] * (own[i] - first[i])).sum();
        let t = (along / long.max(f64::MIN_POSITIVE)).clamp(0.0, 1.0);
        (0..5).all(|i| (first[i] + way[i] * t - own[i]).abs() < FINE)
    }
}

fn same(a: &Profile, b: &Profile) -> bool {
    std::ptr::eq(a, b) || a == b
}

/// The slices that a jaw is drawn by, in a half turned by `turn`: those of [`slices`] without the
/// ones that lie between their neighbours.
pub(super) fn telling(jaw: &Sweep, turn: f64) -> Vec<f64> {
    let all: Vec<Slice<'_>> = slices(jaw)
        .into_iter()
        .map(|s| Slice::of(jaw, s, turn))
        .collect();
    let mut kept = vec![0];
    for next in 2..all.len() {
        let first = kept[kept.len() - 1];
        let mut passed = all[first + 1..next].iter();
        if !passed.all(|slice| slice.lies_between(&all[first], &all[next])) {
            kept.push(next - 1);
        }
    }
    kept.push(all.len() - 1);
    kept.into_iter().map(|i| all[i].s).collect()
}
