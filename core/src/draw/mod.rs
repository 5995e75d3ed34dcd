//! From a [`crate::tongs::model::Model`] to a display list: views, dimensions, the bar, sheets.

pub mod handle;

mod arrange;
mod breaks;
mod calipers;
mod facts;
mod half;
mod heat;
mod job_sheet;
mod names;
mod on_work;
mod pair;
mod pattern;
mod rivet;
mod sizes;
mod stage;
mod stress;
mod subject;
mod tool;
mod views;

pub use arrange::{EndView, Shifts};
pub use breaks::{breaks, head_alone, rein_alone};
pub use calipers::calipers;
pub use facts::{Which, facts};
pub use half::{half, other_half};
pub use heat::{heat, heat_bare};
pub use job_sheet::{Job, JobHeats, Made, job_sheet};
pub use on_work::{end_picture, fit_picture, pair_on};
pub use pair::{BarePair, bare, dimensioned, pair};
pub use pattern::{Kept, pattern};
pub use stage::{Finished, Ground, ground, stage, stage_at_work, staged};
pub use stress::{STRESS_STEPS, stressed, stressed_on};
pub use tool::{ToolHandle, ToolSpot, drag_tool, step_tool, tool, tool_handles};

use crate::paper::dimension::Scale;
use crate::paper::{Breaks, Drawing, Item, View};

/// Which sizes stand on a drawing.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default)]
pub enum Sizes {
    /// All that a caliper or a rule is set to.
    #[default]
    All,
    /// What the sheets of the halves do not tell: the hand gap, the work, the whole length.
    OfTheSet,
    /// None.
    None,
}

/// Which views are drawn.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default)]
pub enum Views {
    /// All of them.
    #[default]
    All,
    /// The side view alone.
    Side,
    /// The top view alone.
    Top,
    /// The end view alone.
    End,
}

/// Whether views say what they are, each with a small picture of what is looked at. An end view
/// always does: an arrow may name it.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default)]
pub enum Names {
    /// In the drawing.
    #[default]
    Drawn,
    /// Beside it: whoever lays the drawing names its views.
    LeftOut,
}

impl Views {
    /// A drawing without the views that are not wanted.
    fn of(self, mut drawing: Drawing) -> Drawing {
        let kept = |view: View| match self {
            Self::All => true,
            Self::Side => view == View::Side,
            Self::Top => view == View::Top,
            Self::End => view == View::End,
        };
        drawing.items.retain(|item| match item {
            Item::Group(group) => group.view.is_none_or(kept),
            Item::Path(_) | Item::Text(_) => true,
        });
        drawing
    }
}

/// How a pair or a half is drawn.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct DrawOptions {
    /// Half of the opening past the set pose, radians: each half is turned by so much.
    pub opening: f64,
    /// Which sizes are written.
    pub sizes: Sizes,
    /// Which views there are.
    pub views: Views,
    /// Whether side and top view say what they are.
    pub names: Names,
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
