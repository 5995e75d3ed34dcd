use serde::{Deserialize, Serialize};

use super::{MountKind, Style, Use};
use crate::asked::range::{RUN, STEEL};
use crate::asked::{Bar, fields};
use crate::finding::Part;
use crate::tool::check::edge::Shaped;
use crate::tool::check::{Check, edge};
use crate::tool::forging::{ALL, Forging, Form, Worked};
use crate::tool::mount::Hold;
use crate::tool::solid::{Cut, Run};
use crate::units::Length;

/// One long thin wedge from the body to a narrow land: it parts hot steel, and is never hardened.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct HotChisel {
    /// Along the edge.
    pub edge: Length,
    /// Across the land that is left on the edge.
    pub land: Length,
    /// From the body to the edge.
    pub blade: Length,
    /// Across the work that it cuts.
    pub cuts: Length,
}

fields! { HotChisel: |Self { edge, land, blade, cuts }, v| {
    v.value("edge", edge, STEEL).says("Edge", "Along the edge");
    v.value("land", land, STEEL).says("Land", "Across the flat that is left on the edge");
    v.value("blade", blade, RUN).says("Blade", "From the body to the edge");
    v.value("cuts", cuts, STEEL).of_work().says("Work", "How wide what it cuts is");
}}

impl HotChisel {
    /// The included angle of its wedge behind the land, degrees.
    pub fn angle_degrees(&self, base: Cut) -> f64 {
        let half = (base.width - self.land.mm()) / 2.0 / self.blade.mm();
        2.0 * half.atan().to_degrees()
    }
}

impl Style for HotChisel {
    const NAME: &'static str = "hot chisel";
    const ABOUT: &'static str = "Parts hot steel; its thin edge is never hardened";
    const MOUNT: MountKind = MountKind::Struck;
    const USE: Use = Use::HotEdge;
    const LEADING: &'static str = "working.edge";

    fn suited(size: Length, bar: &Bar) -> Self {
        let unit = size.unit();
        Self {
            edge: size,
            land: Length::measured(1.5875, unit),
            // An angle of about 30 degrees.
            blade: Length::measured(1.86 * (bar.stock.size().mm() - 1.6).max(6.0), unit),
            cuts: Length::measured(0.75 * size.mm(), unit),
        }
    }

    fn usual_mm(bar: &Bar) -> f64 {
        1.2 * bar.stock.wide_mm()
    }

    fn struck(_size: Length, _bar: &Bar) -> (f64, Hold) {
        (152.4, Hold::eye())
    }

    fn working(&self, base: Cut) -> Vec<Run> {
        let edge = Cut::boxed(self.edge.mm(), self.land.mm());
        vec![Run::taper(Part::Working, self.blade.mm(), edge, base)]
    }

    fn check(&self, check: &mut Check<'_>) {
        let degrees = self.angle_degrees(check.model.base);
        edge::angle(
            check,
            &Shaped {
                degrees,
                by: "Blade",
            },
            edge::HOT,
        );
        edge::spreads(check, (self.edge.mm(), self.land.mm()));
        edge::wide(check, self.edge.mm(), self.cuts.mm());
    }

    fn forged(&self) -> Vec<Worked> {
        vec![
            Forging::DrawWedge.makes(ALL, Form::Unspread),
            Forging::SpreadEdge.makes(ALL, Form::Done),
        ]
    }

    fn gauge(&self) -> &'static str {
        "the edge straight, and in line with the handle"
    }
}
