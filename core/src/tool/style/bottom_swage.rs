use serde::{Deserialize, Serialize};

use super::{MountKind, Style, Use};
use crate::asked::range::{RUN, STEEL};
use crate::asked::{Bar, fields};
use crate::finding::Part;
use crate::shape::{Opening, Slot, SlotEnd};
use crate::tool::check::{Check, form};
use crate::tool::forging::Forging;
use crate::tool::solid::{Cut, Run};
use crate::units::Length;

/// A block with a half-round groove that stands in the hardy hole: it rounds hot bar, and shapes bits.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct BottomSwage {
    /// Across the groove: the round that it makes.
    pub groove: Length,
    /// Along the groove.
    pub long: Length,
    /// Across the block at its top.
    pub wide: Length,
    /// From the block to the top.
    pub high: Length,
}

fields! { BottomSwage: |Self { groove, long, wide, high }, v| {
    v.value("groove", groove, STEEL).of_work().says("Groove", "Across it: the round that it makes");
    v.value("long", long, STEEL).says("Groove length", "Along the groove");
    v.value("wide", wide, STEEL).says("Top", "Across the top of the block");
    v.value("high", high, RUN).says("Height", "From the block to the top");
}}

impl BottomSwage {
    /// For a round of so much.
    pub fn of(round: Length, hole: Length) -> Self {
        let unit = round.unit();
        let wide = (2.0 * round.mm()).max(1.3 * hole.mm());
        Self {
            groove: round,
            long: Length::measured(1.5 * hole.mm(), unit),
            wide: Length::measured(wide, unit),
            high: Length::measured((1.1 * round.mm()).max(0.6 * hole.mm()), unit),
        }
    }
}

impl Style for BottomSwage {
    const NAME: &'static str = "bottom swage";
    const ABOUT: &'static str = "Rounds hot bar in its groove, and shapes hollow bits over it";
    const MOUNT: MountKind = MountKind::Hardy;
    const USE: Use = Use::HotForm;
    const LEADING: &'static str = "working.groove";

    fn suited(size: Length, _bar: &Bar) -> Self {
        Self::of(Length::measured(0.6 * size.mm(), size.unit()), size)
    }

    fn usual_mm(bar: &Bar) -> f64 {
        0.75 * bar.stock.size().mm()
    }

    fn working(&self, base: Cut) -> Vec<Run> {
        let top = Cut::boxed(self.long.mm(), self.wide.mm());
        let grooved = (0.6 * self.groove.mm()).min(0.9 * self.high.mm());
        vec![
            Run::prism(Part::Working, grooved, top),
            Run::taper(Part::Working, self.high.mm() - grooved, top, base),
        ]
    }

    fn opening(&self, tip_mm: f64, _base: Cut) -> Option<Opening> {
        let across_mm = self
            .groove
            .mm()
            .min(0.95 * self.wide.mm())
            .min(1.6 * self.high.mm());
        Some(Opening::Slot(Slot {
            from_mm: tip_mm,
            to_mm: tip_mm,
            across_mm,
            deep_mm: self.long.mm(),
            end: SlotEnd::Open,
        }))
    }

    fn check(&self, check: &mut Check<'_>) {
        form::groove(check, (self.groove.mm(), self.wide.mm(), self.high.mm()));
    }

    fn forged(&self) -> Vec<Forging> {
        vec![Forging::TaperSquare, Forging::PressGroove]
    }

    fn gauge(&self) -> &'static str {
        "a cold round of its size lies in the groove to its middle, its rims rounded"
    }
}
