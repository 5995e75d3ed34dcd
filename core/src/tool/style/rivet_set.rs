use serde::{Deserialize, Serialize};

use super::{MountKind, Style, Use};
use crate::asked::range::{DETAIL, RUN, STEEL};
use crate::asked::{Bar, fields};
use crate::finding::Part;
use crate::shape::{Cup, Opening};
use crate::tongs::document::HeadKind;
use crate::tool::check::{Check, cup};
use crate::tool::forging::{ALL, Forging, Form, Worked};
use crate::tool::mount::Hold;
use crate::tool::solid::{Cut, Run};
use crate::units::Length;

/// A cup in a stout end: it rounds a rivet's head.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct RivetSet {
    /// The shank of the rivet.
    pub rivet: Length,
    /// The head that it makes.
    pub head: HeadKind,
    /// Across the rim of the cup.
    pub cup: Length,
    /// How deep the cup is.
    pub deep: Length,
    /// Across the end around it.
    pub end: Length,
    /// Length of the taper from the body.
    pub taper: Length,
}

fields! { RivetSet: |Self { rivet, head, cup, deep, end, taper }, v| {
    v.value("rivet", rivet, STEEL).of_work().says("Rivet", "Diameter of its shank");
    v.choice("head", head).says("Head", "Shape of the head that it makes");
    v.value("cup", cup, STEEL).of_work().says("Cup", "Across its rim");
    v.value("deep", deep, DETAIL).of_work().says("Cup depth", "From the rim to the bottom");
    v.value("end", end, STEEL).of_work().says("End", "Across the end around the cup");
    v.value("taper", taper, RUN).says("Taper", "From the end to the body");
}}

/// A cup of no depth still has a rim, mm.
const LEAST_RIM_MM: f64 = 0.1;

impl RivetSet {
    /// For a rivet with such heads: its cup a little wider and a little shallower than the head, so that
    /// it bears on the crown and not on the boss.
    pub fn of(rivet: Length, head: HeadKind, bar: &Bar) -> Self {
        let unit = rivet.unit();
        let shape = head.shape();
        let across = 1.04 * shape.across * rivet.mm();
        let deep = (0.9 * shape.stands_out() * rivet.mm()).max(0.1 * rivet.mm());
        Self {
            rivet,
            head,
            cup: Length::measured(across, unit),
            deep: Length::measured(deep.min(across / 2.0), unit),
            end: Length::measured((1.45 * across).max(0.9 * bar.stock.size().mm()), unit),
            taper: Length::measured(0.8 * bar.stock.size().mm(), unit),
        }
    }
}

impl Style for RivetSet {
    const NAME: &'static str = "rivet set";
    const ABOUT: &'static str =
        "Rounds a rivet's head in its cup, once it is hammered down roughly";
    const MOUNT: MountKind = MountKind::Struck;
    const USE: Use = Use::HotForm;
    const LEADING: &'static str = "working.rivet";

    fn suited(size: Length, bar: &Bar) -> Self {
        Self::of(size, HeadKind::Button, bar)
    }

    fn usual_mm(bar: &Bar) -> f64 {
        0.35 * bar.stock.size().mm()
    }

    fn struck(_size: Length, _bar: &Bar) -> (f64, Hold) {
        (254.0, Hold::Hand)
    }

    fn working(&self, base: Cut) -> Vec<Run> {
        let end = Cut::round(self.end.mm());
        vec![
            Run::prism(Part::Working, (1.5 * self.deep.mm()).max(LEAST_RIM_MM), end),
            Run::taper(Part::Working, self.taper.mm(), end, base),
        ]
    }

    fn opening(&self, tip_mm: f64, _base: Cut) -> Option<Opening> {
        let across_mm = self.cup.mm().min(self.end.mm());
        let deep_mm = self.deep.mm().min(across_mm / 2.0);
        (deep_mm > 0.0).then_some(Opening::Cup(Cup {
            at_mm: tip_mm,
            across_mm,
            deep_mm,
        }))
    }

    fn check(&self, check: &mut Check<'_>) {
        cup::check(check, self);
    }

    fn forged(&self) -> Vec<Worked> {
        vec![
            Forging::DrawEnd.makes(ALL, Form::Done),
            Forging::CupEnd.makes(0..1, Form::Done),
        ]
    }

    fn gauge(&self) -> &'static str {
        "a ball of the cup's size shows no light at the rim"
    }
}
