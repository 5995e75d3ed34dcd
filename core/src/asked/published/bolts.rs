//! Hexagon bolts and nuts.

use crate::units::{Length, Unit};

use super::same;

/// A bolt or a nut in one size.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Fastener {
    /// What a thread of this size is called: the diameter of the shank or the hole.
    pub(crate) thread: Length,
    /// Across flats.
    pub(crate) flats: Length,
    /// Height of the head or the nut.
    pub(crate) height: Length,
}

/// Thread, across flats, height of head, height of nut, mm. Bolts: ISO 4014, nominal s and k; nuts:
/// ISO 4032, the greatest m (read in a copy).
const METRIC: [(u32, u32, f64, f64); 11] = [
    (5, 8, 3.5, 4.7),
    (6, 10, 4.0, 5.2),
    (8, 13, 5.3, 6.8),
    (10, 16, 6.4, 8.4),
    (12, 18, 7.5, 10.8),
    (14, 21, 8.8, 12.8),
    (16, 24, 10.0, 14.8),
    (20, 30, 12.5, 18.0),
    (24, 36, 15.0, 21.5),
    (30, 46, 18.7, 25.6),
    (36, 55, 22.5, 31.0),
];

/// Thread, head across flats, height of head, nut across flats, height of nut, all in 1/64 in.
/// Bolts: ASME B18.2.1, hex cap screws, the basic sizes, the middle of the published limits of the
/// height; nuts: ASME B18.2.2, hex nuts, the same.
const INCH: [[u32; 5]; 14] = [
    [16, 28, 10, 28, 14],
    [20, 32, 13, 32, 17],
    [24, 36, 15, 36, 21],
    [28, 40, 18, 44, 24],
    [32, 48, 20, 48, 28],
    [36, 52, 23, 56, 31],
    [40, 60, 25, 60, 35],
    [48, 72, 30, 72, 41],
    [56, 84, 35, 84, 48],
    [64, 96, 39, 96, 55],
    [72, 108, 44, 108, 62],
    [80, 120, 50, 120, 68],
    [88, 132, 54, 132, 75],
    [96, 144, 60, 144, 82],
];

fn mm(number: f64) -> Length {
    Length::decimal(number, Unit::Millimetre)
}

fn sixty_fourths(number: u32) -> Length {
    Length::fraction(number, 64, Unit::Inch)
}

/// All bolts.
pub(crate) fn bolts() -> Vec<Fastener> {
    let metric = METRIC.map(|(d, s, k, _)| [mm(d.into()), mm(s.into()), mm(k)]);
    let inch = INCH.map(|[d, s, k, _, _]| [d, s, k].map(sixty_fourths));
    fasteners(metric.into_iter().chain(inch))
}

/// All nuts.
pub(crate) fn nuts() -> Vec<Fastener> {
    let metric = METRIC.map(|(d, s, _, m)| [mm(d.into()), mm(s.into()), mm(m)]);
    let inch = INCH.map(|[d, _, _, s, m]| [d, s, m].map(sixty_fourths));
    fasteners(metric.into_iter().chain(inch))
}

fn fasteners(rows: impl Iterator<Item = [Length; 3]>) -> Vec<Fastener> {
    let one = |[thread, flats, height]: [Length; 3]| Fastener {
        thread,
        flats,
        height,
    };
    rows.map(one).collect()
}

/// The one with a thread, in whichever unit it is written.
pub(crate) fn with_thread(all: Vec<Fastener>, thread: Length) -> Option<Fastener> {
    all.into_iter().find(|it| same(it.thread, thread))
}

/// `M16` or `5/8 in`, for the first that is as is asked.
pub(super) fn named(all: Vec<Fastener>, is: impl Fn(&Fastener) -> bool) -> Option<String> {
    all.iter().find(|it| is(it)).map(Fastener::name)
}

impl Fastener {
    fn name(&self) -> String {
        match self.thread.unit() {
            Unit::Inch | Unit::Foot => self.thread.to_string(),
            Unit::Millimetre | Unit::Centimetre => format!("M{}", self.thread.mm()),
        }
    }
}

/// The threads that are known, in words.
pub(crate) fn known() -> String {
    let metric: Vec<String> = METRIC.iter().map(|row| format!("M{}", row.0)).collect();
    let [from, to] = [INCH[0][0], INCH[INCH.len() - 1][0]].map(sixty_fourths);
    format!("{} and {from} to {to}", metric.join(", "))
}
