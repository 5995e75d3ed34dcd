use serde::{Deserialize, Serialize};

use super::{MountKind, Style, Use};
use crate::asked::range::{RUN, STEEL};
use crate::asked::{Bar, fields};
use crate::finding::Part;
use crate::shape::{Opening, Slot, SlotEnd};
use crate::tool::check::{Check, form};
use crate::tool::forging::{ALL, Forging, Form, Worked};
use crate::tool::solid::{Cut, Outline, Run};
use crate::units::Length;

/// Two tines with a gap: hot bar is laid between them and bent.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct BendingFork {
    /// Thickness of each tine, across the fork.
    pub tine: Length,
    /// Depth of each tine, along the work.
    pub deep: Length,
    /// Between the tines.
    pub gap: Length,
    /// Height of the tines.
    pub high: Length,
    /// Thickness of the work that is bent.
    pub bends: Length,
}

fields! { BendingFork: |Self { tine, deep, gap, high, bends }, v| {
    v.value("tine", tine, STEEL).of_work().says("Tine thickness", "Across the fork");
    v.value("deep", deep, STEEL).of_work().says("Tine depth", "Along the work");
    v.value("gap", gap, STEEL).of_work().says("Gap", "Between the tines");
    v.value("high", high, RUN).says("Tine height", "From the bottom of the gap up");
    v.value("bends", bends, STEEL).of_work().says("Work", "How thick the bar that it bends is");
}}

impl Style for BendingFork {
    const NAME: &'static str = "bending fork";
    const ABOUT: &'static str = "Bends and straightens hot bar between two tines";
    const MOUNT: MountKind = MountKind::Hardy;
    const USE: Use = Use::HotForm;
    const LEADING: &'static str = "working.gap";

    fn suited(size: Length, _bar: &Bar) -> Self {
        let unit = size.unit();
        let work = 0.5 * size.mm();
        Self {
            tine: Length::measured(1.1 * work, unit),
            deep: Length::measured(1.2 * work, unit),
            // 1/8 in more than the work.
            gap: Length::measured(work + 3.175, unit),
            high: Length::measured(2.2 * work, unit),
            bends: Length::measured(work, unit),
        }
    }

    fn usual_mm(bar: &Bar) -> f64 {
        0.75 * bar.stock.size().mm()
    }

    fn working(&self, base: Cut) -> Vec<Run> {
        let width = self.gap.mm() + 2.0 * self.tine.mm();
        let fork = Cut {
            outline: Outline::Chamfered(0.06, 0.16),
            ..Cut::boxed(self.deep.mm(), width)
        };
        vec![
            Run::prism(Part::Working, self.high.mm() + 0.2 * self.gap.mm(), fork),
            Run::taper(Part::Working, self.gap.mm().max(6.0), fork, base),
        ]
    }

    fn opening(&self, tip_mm: f64, _base: Cut) -> Option<Opening> {
        let across_mm = self.gap.mm();
        Some(Opening::Slot(Slot {
            from_mm: tip_mm - (self.high.mm() - across_mm / 2.0).max(0.0),
            to_mm: tip_mm,
            across_mm,
            deep_mm: self.deep.mm(),
            end: SlotEnd::Open,
        }))
    }

    fn check(&self, check: &mut Check<'_>) {
        form::fork(check, self);
    }

    fn forged(&self) -> Vec<Worked> {
        let gap = self.gap.mm();
        vec![
            Forging::DrawTines.makes(ALL, Form::Shut(gap)),
            Forging::Slit.makes(0..1, Form::Shut(gap)),
            Forging::OpenTines.makes(ALL, Form::Done),
        ]
    }

    fn gauge(&self) -> &'static str {
        "tines parallel and of one height, the work goes between them with play"
    }
}
