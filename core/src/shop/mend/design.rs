//! What can be mended: a pair or a tool, its values, and what is answered to it.

use super::tries::{Measures, Whole};
use crate::asked::{Bar, Field, Value};
use crate::finding::{Finding, Part};
use crate::proof::check::check;
use crate::proof::strength::StrengthLoad;
use crate::shop::{Answers, ToolAnswers};
use crate::tongs::document::Document;
use crate::tongs::resolve;
use crate::tool::{self, Tool};
use crate::units::Unit;

/// What has values by their paths.
pub trait Values: Clone {
    /// Every value.
    fn fields(&self) -> Vec<Field>;

    /// Puts a value under a path.
    fn put(&mut self, path: &str, value: Value);
}

/// When another bar is offered.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum OtherBar {
    /// Where no value mends: the same pair from another bar is another balance.
    AtLast,
    /// Beside the values: a tool's bar is what lies on the rack.
    Beside,
}

/// What a search for mends asks.
pub(super) trait Design: Values {
    /// Under what its answers are asked for.
    type Load: Copy;
    /// When another bar is offered.
    const OTHER_BAR: OtherBar;
    /// So many bars are tried, the nearest in size first.
    const BARS_TRIED: usize;

    /// The unit that its sizes are shown in.
    fn unit(&self) -> Unit;

    /// Its bar.
    fn bar(&self) -> &Bar;

    /// The same from another bar.
    fn forged_from(&self, bar: Bar) -> Self;

    /// Whether a mend may change a value.
    fn may_change(field: &Field) -> bool;

    /// What is noticed of its shape alone.
    fn shape(&self) -> Vec<Finding>;

    /// All answers.
    fn whole(&self, load: Self::Load) -> Whole;
}

impl Values for Document {
    fn fields(&self) -> Vec<Field> {
        self.fields()
    }

    fn put(&mut self, path: &str, value: Value) {
        self.put(path, value);
    }
}

impl Values for Tool {
    fn fields(&self) -> Vec<Field> {
        self.fields()
    }

    fn put(&mut self, path: &str, value: Value) {
        self.put(path, value);
    }
}

/// What shapes the tongs. Not the work, which is what must be held, only how it lies; not the bar
/// and what it loses; not the style, which makes other tongs of them; not how they are shown.
impl Design for Document {
    type Load = StrengthLoad;
    const OTHER_BAR: OtherBar = OtherBar::AtLast;
    const BARS_TRIED: usize = 6;

    fn unit(&self) -> Unit {
        self.units.unit()
    }

    fn bar(&self) -> &Bar {
        &self.bar
    }

    fn forged_from(&self, bar: Bar) -> Self {
        Self {
            bar,
            ..self.clone()
        }
    }

    fn may_change(field: &Field) -> bool {
        match field.part {
            Part::Work => field.path == "work.lie",
            Part::Bar
            | Part::Pair
            | Part::Working
            | Part::Body
            | Part::Eye
            | Part::StruckEnd
            | Part::HardyShank
            | Part::Tool => false,
            Part::Jaw
            | Part::SecondJaw
            | Part::Neck
            | Part::Boss
            | Part::Shoulder
            | Part::Rein
            | Part::Rivet => !is_other_tongs(field),
        }
    }

    fn shape(&self) -> Vec<Finding> {
        check(self, &resolve(self))
    }

    fn whole(&self, load: StrengthLoad) -> Whole {
        let answers = Answers::under(self, &load);
        Whole {
            measures: measures(&answers),
            findings: answers.findings,
        }
    }
}

/// Which jaws there are is decided before they are shaped.
fn is_other_tongs(field: &Field) -> bool {
    matches!(
        field.path.as_str(),
        "jaw.style" | "jaw.other_jaw" | "second_jaw.style"
    )
}

/// What of a pair a mend can make dearer.
pub(super) fn measures(answers: &Answers) -> Measures {
    let model = &answers.model;
    let nominal = answers.fit.nominal.as_ref();
    Measures {
        bar_mm: answers.balance.bar_length_mm,
        mass_kg: answers.fit.mass_kg,
        hand_gap_mm: nominal.map_or(model.hand_gap, |contact| contact.hand_gap_mm),
    }
}

/// What shapes the tool, and its steel. Not what it is for, nor the smith's own anvil; not the size
/// of its bar, which is sold; not the style, which makes another tool of it; not how it is shown.
impl Design for Tool {
    type Load = ();
    const OTHER_BAR: OtherBar = OtherBar::Beside;
    // A tool from bar of half its size wants one four times as heavy.
    const BARS_TRIED: usize = 24;

    fn unit(&self) -> Unit {
        self.units.unit()
    }

    fn bar(&self) -> &Bar {
        &self.bar
    }

    fn forged_from(&self, bar: Bar) -> Self {
        Self {
            bar,
            ..self.clone()
        }
    }

    fn may_change(field: &Field) -> bool {
        match field.part {
            Part::Bar => field.path == "bar.steel",
            Part::Working | Part::Body | Part::Eye | Part::StruckEnd | Part::HardyShank => {
                !is_given(field)
            }
            Part::Work
            | Part::Jaw
            | Part::SecondJaw
            | Part::Neck
            | Part::Boss
            | Part::Shoulder
            | Part::Rein
            | Part::Rivet
            | Part::Pair
            | Part::Tool => false,
        }
    }

    fn shape(&self) -> Vec<Finding> {
        tool::check(self, &tool::resolve(self))
    }

    fn whole(&self, (): ()) -> Whole {
        let answers = ToolAnswers::to(self);
        Whole {
            measures: tool_measures(&answers),
            findings: answers.findings,
        }
    }
}

/// The style, the work with its hole and its rivet, and the hole of the anvil.
fn is_given(field: &Field) -> bool {
    matches!(
        field.path.as_str(),
        "working.style"
            | "working.through"
            | "working.hole"
            | "working.cuts"
            | "working.bends"
            | "working.rivet"
            | "shank.hole"
            | "shank.hole_edge"
    )
}

/// What of a tool a mend can make dearer.
pub(super) fn tool_measures(answers: &ToolAnswers) -> Measures {
    let pieces = answers.balance.pieces.iter();
    Measures {
        bar_mm: answers.balance.bar_length_mm,
        mass_kg: pieces.map(|piece| piece.mass_kg).sum(),
        hand_gap_mm: 0.0,
    }
}
