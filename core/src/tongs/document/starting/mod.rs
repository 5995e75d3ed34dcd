//! A whole pair from nothing but its jaw, its work and its bar.
//!
//! Every part is sized from what a strong squeeze asks of it, in the proportions of the trade:
//! first how far hand and grip stand from the rivet, then the sections that bear it there.

mod boss;
mod metal;
mod reach;
mod rein;

use super::{Document, FORMAT, Turn};
use crate::asked::{Allowances, Bar, Choice, Layout, Units, Work, capital, says_lie};
use crate::paper::Projection;
use crate::tongs::jaw::{Jaw, JawKind};
use crate::units::Unit;
use metal::Metal;
use reach::Arms;

impl Work {
    /// Turned as a jaw style takes it at its best: a square goes into a V on its
    /// corners, between flat faces on its flats.
    #[must_use]
    pub fn laid_for(mut self, jaw: JawKind) -> Self {
        if let Some(wanted) = jaw.lie() {
            self.lay(wanted);
        }
        self
    }

    /// Laid as the text that names it says, or else for a jaw style.
    #[must_use]
    pub fn laid_as_said(self, text: &str, jaw: JawKind) -> Self {
        if says_lie(text) {
            self
        } else {
            self.laid_for(jaw)
        }
    }
}

impl Document {
    /// The name that a new pair with this jaw and this work gets: `V bit tongs for 3/4 in square`.
    pub fn usual_name(&self) -> String {
        title(&self.jaw, &self.work)
    }

    /// A whole pair in proportion to the work and the bar, stout enough for a strong squeeze as far
    /// as the bar can be.
    pub fn starting(jaw: JawKind, work: Work, bar: Bar) -> Self {
        Self::starting_with(Jaw::suited(jaw, &work, &bar), work, bar)
    }

    /// The same round a jaw that is there already.
    pub fn starting_with(jaw: Jaw, work: Work, bar: Bar) -> Self {
        let metal = Metal::of(&bar);
        let arms = Arms::suited(&metal, &jaw);
        let rein = rein::rein(&metal, &arms);
        let heel_depth = jaw.plain_form().stations[0].depth;
        let inch = matches!(metal.unit, Unit::Inch | Unit::Foot);
        Self {
            format: FORMAT,
            name: title(&jaw, &work),
            note: String::new(),
            units: if inch { Units::Inch } else { Units::Millimetre },
            projection: if inch {
                Projection::ThirdAngle
            } else {
                Projection::FirstAngle
            },
            hand: Turn::Left,
            work,
            bar,
            jaw,
            second_jaw: None,
            neck: boss::neck(&metal, &arms, heel_depth),
            boss: boss::boss(&metal),
            shoulder: boss::shoulder(&metal, &arms, rein.start.depth_mm()),
            rivet: boss::rivet(&metal, &arms),
            rein,
            layout: Layout::BothOnOneBar,
            allowances: Allowances::usual(metal.unit),
        }
    }
}

/// `V bit tongs for 3/4 in square`; an own jaw stands there by its name.
fn title(jaw: &Jaw, work: &Work) -> String {
    let shape = work.way();
    let own = jaw.sketch().map(|sketch| sketch.name.as_str());
    let name = own.filter(|name| !name.is_empty()).unwrap_or(jaw.name());
    capital(&format!("{name} tongs for {} {shape}", work.size()))
}
