use serde::{Deserialize, Serialize};

use super::{MountKind, Style, Use};
use crate::asked::range::{DETAIL, RUN, STEEL};
use crate::asked::{Bar, fields};
use crate::finding::Part;
use crate::tool::check::{Check, punch};
use crate::tool::forging::{ALL, Forging, Form, Worked};
use crate::tool::mount::Hold;
use crate::tool::solid::{Cut, Outline, Run};
use crate::units::Length;

/// A flat square end whose corners are broken a little, on a square taper.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct SquarePunch {
    /// Across the flats of its end.
    pub side: Length,
    /// Radius of its corners.
    pub corner: Length,
    /// Length of the taper.
    pub taper: Length,
    /// Thickness of the work that it goes through.
    pub through: Length,
}

fields! { SquarePunch: |Self { side, corner, taper, through }, v| {
    v.value("side", side, STEEL).of_work().says("Punching end", "Across the flats of its end");
    v.value("corner", corner, DETAIL).of_work().says("Corner radius", "Of the four corners");
    v.value("taper", taper, RUN).of_work().says("Taper", "From the flat end to the body");
    v.value("through", through, STEEL).of_work().says("Work", "How thick what it goes through is");
}}

impl SquarePunch {
    fn end(&self) -> Cut {
        let part = (2.0 * self.corner.mm() / self.side.mm()).min(1.0);
        Cut {
            outline: Outline::Rounded(part, part),
            ..Cut::boxed(self.side.mm(), self.side.mm())
        }
    }
}

impl Style for SquarePunch {
    const NAME: &'static str = "square punch";
    const ABOUT: &'static str =
        "A square hole, where a round one stands already or through thin hot work";
    const MOUNT: MountKind = MountKind::Struck;
    const USE: Use = Use::Hot;
    const LEADING: &'static str = "working.side";

    fn suited(size: Length, bar: &Bar) -> Self {
        let unit = size.unit();
        let through = size.mm();
        let more = bar.stock.size().mm() - size.mm();
        Self {
            side: size,
            corner: Length::measured(0.08 * size.mm(), unit),
            taper: Length::measured((2.0 * through).max(3.0 * more).clamp(12.0, 150.0), unit),
            through: Length::measured(through, unit),
        }
    }

    fn struck(_size: Length, _bar: &Bar) -> (f64, Hold) {
        (254.0, Hold::Hand)
    }

    fn working(&self, base: Cut) -> Vec<Run> {
        vec![Run::taper(Part::Working, self.taper.mm(), self.end(), base)]
    }

    fn check(&self, check: &mut Check<'_>) {
        punch::check(
            check,
            &punch::Punch {
                end: self.end(),
                long: self.taper.mm(),
                through: self.through.mm(),
                stout: "Punching end",
            },
        );
        punch::corners(check, self.corner.mm(), self.side.mm());
    }

    fn forged(&self) -> Vec<Worked> {
        vec![
            Forging::TaperSquare.makes(ALL, Form::Square),
            Forging::BreakCorners.makes(ALL, Form::Done),
        ]
    }

    fn gauge(&self) -> &'static str {
        "four flats of one width that do not wind, its corners broken alike"
    }
}
