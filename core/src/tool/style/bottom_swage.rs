use serde::{Deserialize, Serialize};

use super::{MountKind, Style, Use};
use crate::asked::range::{INCLUDED, RUN, STEEL};
use crate::asked::{Bar, Choice, fields};
use crate::finding::Part;
use crate::shape::{Opening, Slot, SlotEnd};
use crate::tool::check::{Check, form};
use crate::tool::forging::{ALL, Forging, Form, Worked};
use crate::tool::solid::{Cut, Run};
use crate::units::{Angle, Length};

/// What a groove is.
#[derive(Debug, Clone, Copy, PartialEq, Default, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub enum Groove {
    /// Half round.
    #[default]
    Round,
    /// Two flats that meet.
    Vee {
        /// Between them.
        angle: Angle,
    },
}

/// A block with a groove across its top that stands in the hardy hole: it rounds hot bar, and shapes bits.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct BottomSwage {
    /// Half round, or a V.
    #[serde(default, skip_serializing_if = "Groove::is_round")]
    pub shape: Groove,
    /// Across the groove at its top: of a half-round one the round that it makes.
    pub groove: Length,
    /// Along the groove.
    pub long: Length,
    /// Across the block at its top.
    pub wide: Length,
    /// From the block to the top.
    pub high: Length,
}

fields! { BottomSwage: |Self { shape, groove, long, wide, high }, v| {
    v.all(shape);
    v.value("groove", groove, STEEL).of_work().says("Groove", "Across it at its top: the round that it makes");
    v.value("long", long, STEEL).says("Groove length", "Along the groove");
    v.value("wide", wide, STEEL).says("Top", "Across the top of the block");
    v.value("high", high, RUN).says("Height", "From the block to the top");
}}

fields! { Groove: |it, v| {
    v.choice("shape", it).says("Groove shape", "Half round for round bar, a V for the bits of tongs");
    if let Self::Vee { angle } = it {
        v.value("angle", angle, INCLUDED).says("Groove angle", "Between the two flats of the V");
    }
}}

impl Choice for Groove {
    const WAYS: &'static [&'static str] = &["half round", "V"];

    fn chosen(&self) -> usize {
        match self {
            Self::Round => 0,
            Self::Vee { .. } => 1,
        }
    }

    fn choose(&mut self, index: usize) {
        *self = match (index, *self) {
            (0, _) => Self::Round,
            // A cold square bar on its corner presses it.
            (1, Self::Round) => Self::Vee {
                angle: Angle::degrees(90.0),
            },
            (_, kept) => kept,
        };
    }
}

impl BottomSwage {
    /// For a round of so much.
    pub fn of(round: Length, hole: Length) -> Self {
        let shape = Groove::Round;
        Self::sunk(shape, round, hole)
    }

    /// With a groove so wide at its top, and steel enough around it.
    pub fn sunk(shape: Groove, groove: Length, hole: Length) -> Self {
        let unit = groove.unit();
        let wide = (2.0 * groove.mm()).max(1.3 * hole.mm());
        let deep = shape.deep_mm(groove.mm());
        Self {
            shape,
            groove,
            long: Length::measured(1.5 * hole.mm(), unit),
            wide: Length::measured(wide, unit),
            high: Length::measured((deep + 0.6 * groove.mm()).max(0.6 * hole.mm()), unit),
        }
    }

    /// Across its groove as far as the block has room for it, mm.
    fn across_mm(&self) -> f64 {
        let room = 0.8 * self.high.mm() / self.shape.deep_mm(1.0);
        self.groove.mm().min(0.95 * self.wide.mm()).min(room)
    }
}

impl Groove {
    fn is_round(&self) -> bool {
        matches!(self, Self::Round)
    }

    /// How deep it is for so much across, mm.
    fn deep_mm(self, across: f64) -> f64 {
        match self {
            Self::Round => across / 2.0,
            Self::Vee { angle } => across / 2.0 / (angle.radians() / 2.0).tan(),
        }
    }
}

impl Style for BottomSwage {
    const NAME: &'static str = "bottom swage";
    const ABOUT: &'static str =
        "Shapes hot steel in its groove: rounds bar, sinks hollow bits, folds V bits";
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
        let deep = self.shape.deep_mm(self.groove.mm());
        let grooved = (1.2 * deep).min(0.9 * self.high.mm());
        vec![
            Run::prism(Part::Working, grooved, top),
            Run::taper(Part::Working, self.high.mm() - grooved, top, base),
        ]
    }

    fn opening(&self, tip_mm: f64, _base: Cut) -> Option<Opening> {
        let across_mm = self.across_mm();
        let end = match self.shape {
            Groove::Round => SlotEnd::Open,
            Groove::Vee { .. } => SlotEnd::Vee(self.shape.deep_mm(across_mm)),
        };
        Some(Opening::Slot(Slot {
            from_mm: tip_mm,
            to_mm: tip_mm,
            across_mm,
            deep_mm: self.long.mm(),
            end,
        }))
    }

    fn check(&self, check: &mut Check<'_>) {
        let (across, wide) = (self.groove.mm(), self.wide.mm());
        let under = self.high.mm() - self.shape.deep_mm(across);
        form::groove(
            check,
            across,
            [((wide - across) / 2.0, "beside"), (under, "under")],
        );
    }

    fn forged(&self) -> Vec<Worked> {
        let press = match self.shape {
            Groove::Round => Forging::PressGroove,
            Groove::Vee { .. } => Forging::PressVee,
        };
        vec![
            Forging::SquareTop.makes(ALL, Form::Done),
            press.makes(0..1, Form::Done),
        ]
    }

    fn gauge(&self) -> &'static str {
        match self.shape {
            Groove::Round => {
                "a cold round of its size lies in the groove to its middle, its rims rounded"
            }
            Groove::Vee { .. } => "a template of its angle lies on both flats, its rims rounded",
        }
    }
}
