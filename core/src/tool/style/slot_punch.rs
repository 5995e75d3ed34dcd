use serde::{Deserialize, Serialize};

use super::{MountKind, Style, Use};
use crate::asked::range::{RUN, STEEL};
use crate::asked::{Bar, fields};
use crate::finding::Part;
use crate::tool::check::{Check, punch};
use crate::tool::forging::{ALL, Forging, Form, Worked};
use crate::tool::mount::Hold;
use crate::tool::solid::{Cut, Outline, Run};
use crate::units::Length;

/// A flat bit with round ends and a nose like a small fuller: it parts hot work more than it cuts it,
/// for eyes and for holes that a drift opens.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct SlotPunch {
    /// Length of the slot.
    pub long: Length,
    /// Thickness of the bit.
    pub thick: Length,
    /// Length of the taper behind the nose.
    pub taper: Length,
    /// Thickness of the work that it goes through.
    pub through: Length,
}

fields! { SlotPunch: |Self { long, thick, taper, through }, v| {
    v.value("long", long, STEEL).of_work().says("Slot length", "As long as the hole is drifted wide");
    v.value("thick", thick, STEEL).of_work().says("Bit thickness", "Of the bit: small beside its length");
    v.value("taper", taper, RUN).of_work().says("Taper", "From behind the nose to the body");
    v.value("through", through, STEEL).of_work().says("Work", "How thick what it goes through is");
}}

impl SlotPunch {
    fn bit(&self) -> Cut {
        let part = (self.thick.mm() / self.long.mm()).min(1.0);
        // Its ends are half round in the plane of the slot.
        Cut {
            outline: Outline::Rounded(1.0, part),
            ..Cut::boxed(self.long.mm(), self.thick.mm())
        }
    }
}

impl Style for SlotPunch {
    const NAME: &'static str = "slot punch";
    const ABOUT: &'static str =
        "A slot for an eye or for a hole that a drift opens, with hardly a slug lost";
    const MOUNT: MountKind = MountKind::Struck;
    const USE: Use = Use::Hot;
    const LEADING: &'static str = "working.long";

    fn suited(size: Length, bar: &Bar) -> Self {
        let unit = size.unit();
        let through = 1.5 * size.mm();
        Self {
            long: size,
            thick: Length::measured((0.35 * size.mm()).max(2.5), unit),
            taper: Length::measured(
                (1.5 * through)
                    .max(2.5 * bar.stock.size().mm())
                    .clamp(12.0, 150.0),
                unit,
            ),
            through: Length::measured(through, unit),
        }
    }

    fn struck(_size: Length, _bar: &Bar) -> (f64, Hold) {
        (254.0, Hold::Hand)
    }

    fn working(&self, base: Cut) -> Vec<Run> {
        let bit = self.bit();
        vec![
            Run::nose(Part::Working, bit),
            Run::taper(Part::Working, self.taper.mm(), bit, base),
        ]
    }

    fn check(&self, check: &mut Check<'_>) {
        let long = self.taper.mm() + self.thick.mm() / 2.0;
        punch::check(
            check,
            &punch::Punch {
                end: self.bit(),
                long,
                through: self.through.mm(),
                stout: "Bit thickness",
            },
        );
        punch::slot(check, self.thick.mm(), self.long.mm());
    }

    fn forged(&self) -> Vec<Worked> {
        vec![
            Forging::TaperSquare.makes(ALL, Form::Even),
            Forging::FlattenBit.makes(ALL, Form::Square),
            Forging::RoundNose.makes(ALL, Form::Done),
        ]
    }

    fn gauge(&self) -> &'static str {
        "its nose round all along like a small fuller, no edge left on it"
    }
}
