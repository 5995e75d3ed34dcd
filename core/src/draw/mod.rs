//! From a [`crate::tongs::model::Model`] to a display list: views, dimensions, the bar, sheets.

pub mod handle;

mod arrange;
mod breaks;
mod half;
mod job_sheet;
mod names;
mod on_work;
mod pair;
mod rivet;
mod sizes;
mod stage;
mod stress;
mod views;

pub use arrange::{EndView, Shifts};
pub use breaks::breaks;
pub use half::{half, other_half};
pub use job_sheet::{Job, job_sheet};
pub use on_work::{fit_picture, pair_on};
pub use pair::pair;
pub use stage::{Ground, ground, stage, staged};
pub use stress::{STRESS_STEPS, stressed, stressed_on};

use crate::paper::Breaks;
use crate::paper::dimension::Scale;

/// How a pair is drawn.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct DrawOptions {
    /// Half of the opening past the set pose, radians: each half is turned by so much.
    pub opening: f64,
    /// Without dimensions.
    pub bare: bool,
    /// Size of the text in mm; zero for the usual 3.5 mm of a printed sheet (ISO 3098).
    pub text: f64,
    /// Where the views stand, if they must not move (under a hand that drags); else they are laid
    /// out anew.
    pub shifts: Option<Shifts>,
    /// What of the reins is left out, as [`breaks`] finds it; by itself nothing.
    pub breaks: Breaks,
    /// Where the end view stands.
    pub end: EndView,
}

impl DrawOptions {
    fn scale(&self) -> Scale {
        Scale {
            text: if self.text > 0.0 { self.text } else { 3.5 },
        }
    }
}
