//! Thin parts beside thick ones: what runs ahead in a heat and what stays behind, each for itself, with
//! nothing passed on along the bar.

use super::clock::HeatTable;
use super::induction::{penetration_mm, steel_at};
use super::source::{Source, SourceKind};
use super::stand::{Slice, Stand};
use crate::finding::Part;
use crate::number::bessel::round_bar_factor;
use crate::steel::thermal::HOLDS_CELSIUS;

/// A place and how hot it becomes.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Spot {
    /// The part.
    pub part: Part,
    /// Where, mm from the tip.
    pub at_mm: f64,
    /// How hot it is when the rest is ready, °C; over 1200 it is only known to be hotter.
    pub celsius: f64,
}

/// The hottest and the coldest of what is in the heat and must be hot.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Uneven {
    /// What runs ahead.
    pub hottest: Spot,
    /// What stays behind.
    pub coldest: Spot,
}

/// Heat over that of the mean that a section takes up, for its steel: of a chamber its skin over its
/// steel, of a coil the same times what its thickness takes of the field.
fn eagerness(source: &Source, slice: &Slice) -> f64 {
    let bare = slice.skin_mm / slice.area_mm2;
    match &source.kind {
        SourceKind::Gas(_) | SourceKind::Solid(_) => bare,
        SourceKind::Coil(coil) => {
            /// Between cold and hot: past the Curie point, where a heat spends most of its time.
            const HOT_CELSIUS: f64 = 900.0;
            let depth = penetration_mm(steel_at(HOT_CELSIUS), coil.frequency_khz);
            bare * round_bar_factor(2.0 / bare / depth)
        }
    }
}

/// The hottest and the coldest place when the mean of what is needed has come to a temperature.
pub fn uneven(
    heat: &HeatTable,
    (source, stand): (&Source, &Stand),
    (needs, heated): ((f64, f64), (f64, f64)),
    target: f64,
) -> Uneven {
    let reach = EVENS_OUT_MM / 2.0;
    let (from, to) = (needs.0.max(heated.0), needs.1.min(heated.1));
    let slices = about(&stand.slices, (from - reach, to + reach));
    let eager: Vec<f64> = slices
        .iter()
        .map(|slice| eagerness(source, slice))
        .collect();
    let mean = eager_mean((slices, &eager), (from, to));
    let most = hottest_celsius(source);
    let spot = |slice: &Slice, celsius: f64| Spot {
        part: slice.part,
        at_mm: slice.at_mm,
        celsius,
    };
    let middle = stand.near(f64::midpoint(from, to));
    let even = middle.map_or(
        Spot {
            part: Part::Bar,
            at_mm: from,
            celsius: target,
        },
        |slice| spot(slice, target),
    );
    let needed = slices
        .iter()
        .filter(|slice| (from..=to).contains(&slice.at_mm));
    let mut uneven = Uneven {
        hottest: even,
        coldest: even,
    };
    for slice in needed {
        let about = (slice.at_mm - reach, slice.at_mm + reach);
        let part = eager_mean((slices, &eager), about) / mean;
        let own = spot(slice, heated_to(heat, target, part).min(most));
        if own.celsius > uneven.hottest.celsius {
            uneven.hottest = own;
        }
        if own.celsius < uneven.coldest.celsius {
            uneven.coldest = own;
        }
    }
    uneven
}

/// Along so much of a bar heat evens out in half a minute, mm: √(2·a·t), a = 5.35 mm²/s.
const EVENS_OUT_MM: f64 = 18.0;

/// Nothing becomes hotter than what heats it, °C.
fn hottest_celsius(source: &Source) -> f64 {
    match &source.kind {
        SourceKind::Gas(gas) => gas.chamber.celsius(),
        SourceKind::Solid(fire) => fire.fire.celsius(),
        SourceKind::Coil(_) => f64::INFINITY,
    }
}

/// The sections of a stretch, and the one before it and the one after it, between which its ends lie.
fn about(slices: &[Slice], (from, to): (f64, f64)) -> &[Slice] {
    let first = slices.partition_point(|slice| slice.at_mm <= from);
    let after = slices.partition_point(|slice| slice.at_mm < to);
    let last = (after + 1).min(slices.len());
    &slices[first.saturating_sub(1).min(last)..last]
}

/// The mean over the steel of a stretch.
fn eager_mean((slices, eager): (&[Slice], &[f64]), (from, to): (f64, f64)) -> f64 {
    let (mut sum, mut steel) = (0.0, 0.0);
    let before = slices.partition_point(|slice| slice.at_mm <= from);
    for i in before.saturating_sub(1)..slices.len().saturating_sub(1) {
        let (a, b) = (&slices[i], &slices[i + 1]);
        if a.at_mm >= to {
            break;
        }
        let long = b.at_mm.min(to) - a.at_mm.max(from);
        if long > 0.0 {
            let volume = long * f64::midpoint(a.area_mm2, b.area_mm2);
            sum += volume * f64::midpoint(eager[i], eager[i + 1]);
            steel += volume;
        }
    }
    if steel > 0.0 { sum / steel } else { 1.0 }
}

/// Where steel comes that takes up so much of the heat that brings the rest to a target, °C.
fn heated_to(table: &HeatTable, target: f64, part: f64) -> f64 {
    /// Specific heat past 900 °C, J/(kg K).
    const HOT: f64 = 650.0;
    let (least, most) = HOLDS_CELSIUS;
    let heat = part * table.j_kg(target);
    let over = heat - table.j_kg(most);
    if over > 0.0 {
        most + over / HOT
    } else {
        table.celsius(heat).max(least)
    }
}
