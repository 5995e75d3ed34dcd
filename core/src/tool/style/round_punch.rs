use serde::{Deserialize, Serialize};

use super::{MountKind, Style, Use};
use crate::asked::range::{RUN, STEEL};
use crate::asked::{Bar, fields};
use crate::finding::Part;
use crate::tool::check::{Check, punch};
use crate::tool::forging::{ALL, Forging, Form, Worked};
use crate::tool::mount::Hold;
use crate::tool::solid::{Cut, Run};
use crate::units::Length;

/// A flat round end on a round taper: it shears a slug out of hot work.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct RoundPunch {
    /// Across the flat end: the slug.
    pub end: Length,
    /// Length of the taper.
    pub taper: Length,
    /// Thickness of the work that it goes through.
    pub through: Length,
}

fields! { RoundPunch: |Self { end, taper, through }, v| {
    v.value("end", end, STEEL).of_work().says("Punching end", "Across its flat end: the slug");
    v.value("taper", taper, RUN).of_work().says("Taper", "From the flat end to the body");
    v.value("through", through, STEEL).of_work().says("Work", "How thick what it goes through is");
}}

impl Style for RoundPunch {
    const NAME: &'static str = "round punch";
    const ABOUT: &'static str =
        "A round hole through hot work: sunk from one side, its slug knocked out from the other";
    const MOUNT: MountKind = MountKind::Struck;
    const USE: Use = Use::Hot;
    const LEADING: &'static str = "working.end";

    fn suited(size: Length, bar: &Bar) -> Self {
        let through = 1.5 * size.mm();
        let more = bar.stock.size().mm() - size.mm();
        Self {
            end: size,
            taper: Length::measured(
                (1.5 * through).max(3.0 * more).clamp(12.0, 150.0),
                size.unit(),
            ),
            through: Length::measured(through, size.unit()),
        }
    }

    fn struck(_size: Length, _bar: &Bar) -> (f64, Hold) {
        (254.0, Hold::Hand)
    }

    fn working(&self, base: Cut) -> Vec<Run> {
        vec![Run::taper(
            Part::Working,
            self.taper.mm(),
            Cut::round(self.end.mm()),
            base,
        )]
    }

    fn check(&self, check: &mut Check<'_>) {
        let end = Cut::round(self.end.mm());
        punch::check(
            check,
            &punch::Punch {
                end,
                long: self.taper.mm(),
                through: self.through.mm(),
                stout: "Punching end",
            },
        );
    }

    fn forged(&self) -> Vec<Worked> {
        vec![
            Forging::TaperSquare.makes(ALL, Form::Square),
            Forging::TaperOctagon.makes(ALL, Form::Octagon),
            Forging::TaperRound.makes(ALL, Form::Done),
        ]
    }

    fn gauge(&self) -> &'static str {
        "its end flat and square to the axis, its rim sharp"
    }
}
