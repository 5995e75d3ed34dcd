use serde::{Deserialize, Serialize};

use super::{MountKind, Style, Use};
use crate::asked::range::{RUN, STEEL};
use crate::asked::{Bar, fields};
use crate::finding::Part;
use crate::tool::check::edge::Shaped;
use crate::tool::check::{Check, edge};
use crate::tool::forging::{ALL, Forging, Form, Worked};
use crate::tool::solid::{Cut, Run};
use crate::units::Length;

/// A wedge that stands edge up in the hardy hole: hot bar is laid on it and struck.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct CutOff {
    /// Along the edge.
    pub edge: Length,
    /// Across the land on the edge.
    pub land: Length,
    /// From the block to the edge.
    pub high: Length,
    /// Across the bar that it cuts.
    pub cuts: Length,
}

fields! { CutOff: |Self { edge, land, high, cuts }, v| {
    v.value("edge", edge, STEEL).says("Edge", "Along the edge");
    v.value("land", land, STEEL).says("Land", "Across the flat that is left on the edge");
    v.value("high", high, RUN).says("Wedge height", "From the block to the edge");
    v.value("cuts", cuts, STEEL).of_work().says("Work", "How wide the bar that it cuts is");
}}

impl CutOff {
    /// The included angle of its wedge, degrees.
    pub fn angle_degrees(&self, base: Cut) -> f64 {
        2.0 * ((base.width - self.land.mm()) / 2.0 / self.high.mm())
            .atan()
            .to_degrees()
    }
}

impl Style for CutOff {
    const NAME: &'static str = "cut-off hardy";
    const ABOUT: &'static str = "Cuts hot bar that is laid across its edge and struck";
    const MOUNT: MountKind = MountKind::Hardy;
    const USE: Use = Use::HotEdge;
    const LEADING: &'static str = super::HOLE;

    fn suited(size: Length, bar: &Bar) -> Self {
        let unit = size.unit();
        let block = crate::tool::mount::Hardy::suited(size, bar);
        Self {
            edge: Length::measured(1.4 * block.block_long.mm(), unit),
            land: Length::measured(1.5875, unit),
            high: Length::measured(1.75 * block.block_thick.mm(), unit),
            cuts: Length::measured(size.mm(), unit),
        }
    }

    fn usual_mm(bar: &Bar) -> f64 {
        0.75 * bar.stock.size().mm()
    }

    fn working(&self, base: Cut) -> Vec<Run> {
        let edge = Cut::boxed(self.edge.mm(), self.land.mm());
        vec![Run::taper(Part::Working, self.high.mm(), edge, base)]
    }

    fn check(&self, check: &mut Check<'_>) {
        let degrees = self.angle_degrees(check.model.base);
        edge::angle(
            check,
            &Shaped {
                degrees,
                by: "Wedge height",
            },
            edge::HOT,
        );
        edge::spreads(check, (self.edge.mm(), self.land.mm()));
        edge::wide(check, self.edge.mm(), self.cuts.mm());
        edge::passing(check);
    }

    fn forged(&self) -> Vec<Worked> {
        vec![
            Forging::FullerSides.makes(ALL, Form::Half),
            Forging::DrawWedge.makes(ALL, Form::Done),
        ]
    }

    fn gauge(&self) -> &'static str {
        "the edge straight and level with the anvil's face"
    }
}
