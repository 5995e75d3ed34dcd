use std::ops::Range;

use serde::{Deserialize, Serialize};

use super::{MountKind, Style, Use};
use crate::asked::range::{RUN, STEEL, STRETCH};
use crate::asked::{Bar, PlainSection, fields, simple_choice};
use crate::finding::Part;
use crate::tool::check::{Check, drift};
use crate::tool::forging::{Forging, Form, Worked};
use crate::tool::mount::Hold;
use crate::tool::solid::{Cut, Outline, Run};
use crate::units::Length;

/// The hole that a drift leaves.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub enum DriftSection {
    /// Round.
    Round,
    /// Oval, for an eye.
    Oval,
    /// Square.
    Square,
}

simple_choice!(DriftSection { Round => "round", Oval => "oval", Square => "square" });

/// A taper up to full size, a stretch of full size, and a taper back, so that it drops through.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Drift {
    /// The hole that it leaves.
    pub section: DriftSection,
    /// Its full size: of an oval the larger one.
    pub size: Length,
    /// Of an oval the smaller one; else it is not used.
    pub narrow: Length,
    /// Across its entering end, in the direction of its full size.
    pub enters: Length,
    /// Length of the taper up to full size.
    pub lead: Length,
    /// Length at full size.
    pub full: Length,
    /// Length of the taper back to the body.
    pub back: Length,
    /// The hole that it enters, as the punch left it.
    pub hole: Length,
    /// Thickness of the work.
    pub through: Length,
}

fields! { Drift: |it, v| {
    let Self { section, size, narrow, enters, lead, full, .. } = it;
    v.choice("section", section).says("Hole", "The hole that it leaves");
    let oval = *section == DriftSection::Oval;
    v.value("size", size, STEEL).of_work().says("Full size", "What the hole comes to");
    if oval {
        v.value("narrow", narrow, STEEL).of_work().says("Narrow size", "Across the oval");
    }
    v.value("enters", enters, STEEL).of_work().says("Entering end", "Across the end that enters");
    v.value("lead", lead, RUN).of_work().says("Lead", "Length of the taper up to full size");
    v.value("full", full, STRETCH).of_work().says("Full length", "Length at full size");
    let Self { back, hole, through, .. } = it;
    v.value("back", back, RUN).of_work().says("Back taper", "Length of the taper back to the body");
    v.value("hole", hole, STEEL).of_work().says("Punched hole", "As the punch leaves it");
    v.value("through", through, STEEL).of_work().says("Work", "How thick what it goes through is");
}}

/// Its runs by their places from the working end on.
const LEAD: Range<usize> = 0..1;
const FULL: Range<usize> = 1..2;
const BACK: Range<usize> = 2..3;

/// A full size that is no longer than a line is still so long, mm.
const LEAST_FULL_MM: f64 = 0.1;

impl Drift {
    /// Its section of a size, mm.
    pub fn cut(&self, size: f64) -> Cut {
        let ratio = self.narrow.mm() / self.size.mm();
        match self.section {
            DriftSection::Round => Cut::round(size),
            DriftSection::Oval => Cut {
                depth: size,
                width: ratio * size,
                outline: Outline::Round,
            },
            DriftSection::Square => Cut::boxed(size, size),
        }
    }
}

impl Style for Drift {
    const NAME: &'static str = "drift";
    const ABOUT: &'static str = "Opens a punched hole to its size, driven through until it drops";
    const MOUNT: MountKind = MountKind::Struck;
    const USE: Use = Use::Hot;
    const LEADING: &'static str = "working.size";

    fn suited(size: Length, _bar: &Bar) -> Self {
        let unit = size.unit();
        let by = |part: f64| Length::measured(part * size.mm(), unit);
        Self {
            section: DriftSection::Round,
            size,
            narrow: by(0.65),
            // So much smaller than the punched hole that it still enters in round sizes.
            enters: by(0.5),
            // One in ten: half the growth on either side.
            lead: by(5.0),
            full: by(1.5),
            back: by(1.5),
            hole: by(crate::forge::balance::PUNCH_TO_HOLE),
            through: by(1.5),
        }
    }

    fn usual_mm(bar: &Bar) -> f64 {
        bar.stock.size().mm()
    }

    fn struck(size: Length, _bar: &Bar) -> (f64, Hold) {
        ((9.5 * size.mm()).max(60.0), Hold::rod())
    }

    fn body(size: Length) -> Option<PlainSection> {
        let diameter = Length::measured_under(0.9 * size.mm(), size.unit());
        Some(PlainSection::Round { diameter })
    }

    fn working(&self, base: Cut) -> Vec<Run> {
        let (full, enters) = (self.cut(self.size.mm()), self.cut(self.enters.mm()));
        let back = Cut {
            outline: full.outline,
            ..base
        };
        vec![
            Run::taper(Part::Working, self.lead.mm(), enters, full),
            Run::prism(Part::Working, self.full.mm().max(LEAST_FULL_MM), full),
            Run::taper(Part::Working, self.back.mm(), full, back),
        ]
    }

    fn check(&self, check: &mut Check<'_>) {
        drift::check(check, self);
    }

    fn forged(&self) -> Vec<Worked> {
        let full = Worked {
            step: Forging::SizeFull,
            makes: vec![(LEAD, Form::Far), (FULL, Form::Done), (BACK, Form::Near)],
        };
        let square = Forging::TaperSquare.makes(LEAD, Form::Square);
        let octagon = Forging::TaperOctagon.makes(LEAD, Form::Octagon);
        let round = Forging::TaperRound.makes(LEAD, Form::Done);
        let back = Forging::TaperBack.makes(BACK, Form::Done);
        match self.section {
            DriftSection::Square => vec![full, square, back],
            DriftSection::Round | DriftSection::Oval => vec![full, square, octagon, round, back],
        }
    }

    fn gauge(&self) -> &'static str {
        "its full size with calipers all round; it drops through a hole of that size"
    }
}
