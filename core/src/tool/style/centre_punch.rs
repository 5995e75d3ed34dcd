use serde::{Deserialize, Serialize};

use super::{MountKind, Style, Use};
use crate::asked::range::{RUN, STEEL};
use crate::asked::{Bar, Range, fields};
use crate::finding::Part;
use crate::tool::check::{Check, edge};
use crate::tool::forging::{ALL, Forging, Form, Worked};
use crate::tool::mount::Hold;
use crate::tool::solid::{Cut, Run};
use crate::units::{Angle, Length};

/// A ground cone on a round taper: it marks cold bar.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct CentrePunch {
    /// Included angle of the point.
    pub point: Angle,
    /// Across the taper where the point begins.
    pub shoulder: Length,
    /// Length of the taper behind the point.
    pub taper: Length,
}

/// Included angles of a point, degrees.
const POINT: Range = Range::new(20.0, 150.0);

fields! { CentrePunch: |Self { point, shoulder, taper }, v| {
    v.value("point", point, POINT).says("Point angle", "Included angle of the ground point");
    v.value("shoulder", shoulder, STEEL).says("Point base", "Across the taper where the point begins");
    v.value("taper", taper, RUN).says("Taper", "From the point to the body");
}}

impl Style for CentrePunch {
    const NAME: &'static str = "centre punch";
    const ABOUT: &'static str = "Marks on cold bar that still show when it glows";
    const MOUNT: MountKind = MountKind::Struck;
    const USE: Use = Use::ColdEdge;
    const LEADING: &'static str = "working.shoulder";

    fn suited(size: Length, bar: &Bar) -> Self {
        let more = bar.stock.size().mm() - size.mm();
        Self {
            point: Angle::degrees(90.0),
            shoulder: size,
            taper: Length::measured((4.0 * more).clamp(12.0, 80.0), size.unit()),
        }
    }

    fn struck(_size: Length, _bar: &Bar) -> (f64, Hold) {
        (127.0, Hold::Hand)
    }

    fn working(&self, base: Cut) -> Vec<Run> {
        let shoulder = Cut::round(self.shoulder.mm());
        let high = shoulder.width / 2.0 / (self.point.radians() / 2.0).tan();
        vec![
            Run::taper(Part::Working, high, Cut::round(0.0), shoulder),
            Run::taper(Part::Working, self.taper.mm(), shoulder, base),
        ]
    }

    fn check(&self, check: &mut Check<'_>) {
        edge::point(check, self.point.in_degrees());
        edge::slim(check, self.shoulder.mm(), self.taper.mm());
    }

    fn forged(&self) -> Vec<Worked> {
        vec![
            Forging::TaperSquare.makes(ALL, Form::Square),
            Forging::TaperOctagon.makes(ALL, Form::Octagon),
            Forging::TaperRound.makes_both(Form::Far, Form::Done),
        ]
    }

    fn dressed() -> Forging {
        Forging::GrindPoint
    }

    fn ground_degrees(&self) -> Option<f64> {
        Some(self.point.in_degrees())
    }

    fn gauge(&self) -> &'static str {
        "its point on the axis: rolled on a plate it does not wander"
    }
}
