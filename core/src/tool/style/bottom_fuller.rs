use serde::{Deserialize, Serialize};

use super::{MountKind, Style, Use};
use crate::asked::range::{RUN, STEEL};
use crate::asked::{Bar, fields};
use crate::finding::Part;
use crate::tool::check::{Check, form};
use crate::tool::forging::{Forging, Form, Worked};
use crate::tool::solid::{Cut, Run};
use crate::units::Length;

/// A round ridge that stands in the hardy hole: it necks and draws hot bar.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct BottomFuller {
    /// Along the ridge.
    pub ridge: Length,
    /// Radius of its nose.
    pub nose: Length,
    /// From the block to where the nose begins.
    pub high: Length,
}

fields! { BottomFuller: |Self { ridge, nose, high }, v| {
    v.value("ridge", ridge, STEEL).says("Ridge", "Along the nose");
    v.value("nose", nose, STEEL).of_work().says("Nose radius", "Of the round nose");
    v.value("high", high, RUN).says("Height", "From the block to where the nose begins");
}}

impl Style for BottomFuller {
    const NAME: &'static str = "bottom fuller";
    const ABOUT: &'static str = "Necks hot bar and draws it fast, with no sharp corner left";
    const MOUNT: MountKind = MountKind::Hardy;
    const USE: Use = Use::HotForm;
    const LEADING: &'static str = "working.nose";

    fn suited(size: Length, bar: &Bar) -> Self {
        let unit = size.unit();
        let block = crate::tool::mount::Hardy::suited(size, bar);
        Self {
            ridge: Length::measured(1.2 * block.block_long.mm(), unit),
            nose: Length::measured(0.25 * size.mm(), unit),
            high: Length::measured(0.7 * size.mm(), unit),
        }
    }

    fn usual_mm(bar: &Bar) -> f64 {
        0.75 * bar.stock.size().mm()
    }

    fn working(&self, base: Cut) -> Vec<Run> {
        let nose = Cut::boxed(self.ridge.mm(), 2.0 * self.nose.mm());
        vec![
            Run::nose(Part::Working, nose),
            Run::taper(Part::Working, self.high.mm(), nose, base),
        ]
    }

    fn check(&self, check: &mut Check<'_>) {
        form::nose(check, self.nose.mm());
    }

    fn forged(&self) -> Vec<Worked> {
        vec![
            Forging::DrawRidge.makes_both(Form::Far, Form::Done),
            Forging::RoundNose.makes(0..1, Form::Done),
        ]
    }

    fn gauge(&self) -> &'static str {
        "the nose round all along against a radius of its size"
    }
}
