//! What a source makes of an operation.

use super::entry::Entry;
use super::heating::Curve;
use super::stand::Bulk;
use super::uneven::{Spot, Uneven};
use crate::steel::ForgingRange;

/// How much hotter than its range a place may become in the last seconds, °C (judgement).
const OVER_CELSIUS: f64 = 50.0;

/// How an operation goes with a source.
#[derive(Debug, Clone)]
pub struct Offer {
    /// How the piece goes in.
    pub entry: Entry,
    /// Heats that begin on steel that was not in the fire yet.
    pub fresh: u32,
    /// Heats of one piece in all.
    pub heats: u32,
    /// How hot it is made, °C.
    pub target_celsius: f64,
    /// From there to the end of the forging range in still air, s.
    pub still_air_s: f64,
    /// How much of that the smith can work, s.
    pub working_s: f64,
    /// Volume over skin of what is worked, half way through, mm.
    pub ratio_mm: f64,
    /// What runs ahead and what stays behind.
    pub uneven: Uneven,
    /// What lies in the heat.
    pub load: Bulk,
    /// The same as steel counted from the tip, mm³.
    pub steel_mm3: (f64, f64),
    /// What must be hot, as steel counted from the tip, mm³.
    pub needs_mm3: (f64, f64),
    /// How it comes to heat.
    pub curve: Curve,
}

impl Offer {
    /// What burns here before the rest is at heat, if anything does.
    pub fn burns(&self, range: ForgingRange) -> Option<Spot> {
        let hottest = self.uneven.hottest;
        (hottest.celsius > range.upper_celsius + OVER_CELSIUS).then_some(hottest)
    }
}
