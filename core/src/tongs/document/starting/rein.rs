//! Reins: the lightest taper that bears the hand.

use super::super::{Rein, ReinEnd, ReinLine};
use super::boss;
use super::metal::Metal;
use super::reach::Arms;
use crate::asked::{Edge, PlainSection};
use crate::steel::YOUNGS_MPA;
use crate::tongs::squeeze::{ORDINARY_N, STRONG_N};
use crate::units::Length;

/// Parts of the bar's side that a rein is wide and at least deep where it begins (common
/// practice, no source).
const WIDE: f64 = 0.72;
const LEAST_DEEP: f64 = 0.62;
/// Parts of the bar's side that a rein end is, and the least and most of it, in mm (common
/// practice, no source).
const END: f64 = 0.42;
const ENDS: (f64, f64) = (6.0, 12.7);
/// Over the reins at the hand, mm: a little more than the 2 in from which a hand has force (NIOSH
/// and Cal/OSHA 2004-164).
const SPAN: f64 = 52.5;
/// The least gap between the reins, mm: 1 in.
const GAP: f64 = 25.4;
/// Parts of the gap by which an ordinary squeeze may close the reins; half of it is whippy.
const CLOSES: f64 = 0.35;
/// Parts of a box that a rectangle with broken edges and a round fill as section moduli: a round
/// has `π/32 d³`, a square `1/6 d³`.
const MODULUS: (f64, f64) = (0.95, 0.589);

/// A taper under trial, mm.
#[derive(Debug, Clone, Copy)]
struct Taper {
    deep: f64,
    wide: f64,
    end: f64,
    length: f64,
}

impl Taper {
    /// Whether it bears a strong squeeze everywhere, and how far both reins close under an
    /// ordinary one, mm: `∫ 2 F s² / (E I) ds`.
    fn bears(&self, metal: &Metal) -> (bool, f64) {
        const PLACES: u32 = 24;
        let step = self.length / f64::from(PLACES);
        let (mut holds, mut closes) = (true, 0.0);
        for i in 1..=PLACES {
            let t = (f64::from(i) - 0.5) / f64::from(PLACES);
            let s = t * self.length;
            let mix = |end: f64, start: f64| end + (start - end) * t;
            let (deep, wide) = (mix(self.end, self.deep), mix(self.end, self.wide));
            let modulus = mix(MODULUS.1, MODULUS.0) * wide * deep * deep / 6.0;
            holds &= STRONG_N * s <= metal.bears_mpa * modulus;
            let inertia = modulus * deep / 2.0;
            closes += 2.0 * ORDINARY_N * s * s / (YOUNGS_MPA * inertia) * step;
        }
        (holds, closes)
    }

    /// Nearly its volume, mm³.
    fn volume(&self) -> f64 {
        self.length * (self.deep * self.wide + self.end * self.end)
    }
}

/// The lightest taper in a smith's steps that bears the hand; the stoutest if none does.
fn taper(metal: &Metal, length: f64) -> Taper {
    let step = metal.step();
    let ladder = |from: f64, to: f64| {
        let first = (from / step - 1e-6).ceil();
        let all = std::iter::successors(Some(first * step), move |mm| Some(mm + step));
        all.take_while(move |mm| *mm <= to + 1e-6)
    };
    let wide = metal.measured((WIDE * metal.side).min(metal.thick)).mm();
    let least_end = (END * metal.side).clamp(ENDS.0, ENDS.1);
    let most = metal.deep.min(metal.area / wide);
    let of = |end: f64, deep: f64| Taper {
        deep,
        wide,
        end,
        length,
    };
    let all = ladder(least_end, wide.max(least_end)).flat_map(|end| {
        ladder((LEAST_DEEP * metal.side).max(end), most).map(move |deep| (end, deep))
    });
    let fits = all.map(|(end, deep)| of(end, deep)).filter(|taper| {
        let (holds, closes) = taper.bears(metal);
        holds && closes <= CLOSES * gap(taper.end)
    });
    let best = fits.min_by(|a, b| a.volume().total_cmp(&b.volume()));
    best.unwrap_or_else(|| {
        of(
            metal.measured(least_end.max(wide.min(0.8 * most))).mm(),
            most,
        )
    })
}

/// Between the reins at the hand, mm.
fn gap(end: f64) -> f64 {
    (SPAN - 2.0 * end).max(GAP)
}

pub(super) fn rein(metal: &Metal, arms: &Arms) -> Rein {
    let to_hand = arms.hand - boss::rein_from(metal);
    let hand = metal.usual((3, 1), 75.0);
    let taper = taper(metal, to_hand);
    let plain = |mm: f64| Length::from_mm(mm, metal.unit);
    Rein {
        length: whole(metal, to_hand + hand.mm()),
        line: ReinLine::Parallel {
            bend: metal.measured((4.0 * metal.side).min(0.7 * to_hand)),
        },
        start: PlainSection::Rectangle {
            depth: plain(taper.deep),
            width: plain(taper.wide),
            edge: Edge::Chamfer(metal.measured(0.1 * metal.side)),
        },
        end: PlainSection::Round {
            diameter: plain(taper.end),
        },
        parallel: hand,
        hand,
        gap: metal.at_least(gap(taper.end), f64::MAX),
        hand_zone: None,
        finish: ReinEnd::Rounded,
    }
}

/// A length of rein in half inches or 10 mm, no longer than it may be.
fn whole(metal: &Metal, mm: f64) -> Length {
    let step = metal.usual((1, 2), 10.0).mm();
    Length::from_mm((mm / step).floor() * step, metal.unit)
}
