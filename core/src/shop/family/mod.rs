//! One design in many sizes.
//!
//! A [`Family`] holds a whole design, its base, and [`Size`]s: each with its own work and, if
//! wanted, its own bar. A family is of pairs unless it says [`Tool`](crate::tool::Tool): then a size
//! is led by the tool's leading measure where a pair's is by its work ([`InSizes`]). Every length follows a [`Rule`]; what a rule does not suit is set by hand
//! for one size. [`Family::made`] turns a size into a plain document, and everything else in the
//! program works on that, so that a family knows no geometry of its own. The exception is the
//! paper: [`sheet`] draws what only a family has, its table, overlay, strip and ranges.
//!
//! The file is read by [`read`] and [`open`]; [`answer_all`] answers for every size.

mod answer;
mod coverage;
mod edit;
mod file;
mod gather;
mod in_sizes;
mod make;
mod pair;
mod salvage;
pub mod sheet;
mod table;
mod tool;
mod written;

pub(crate) use answer::fit_for;
pub use answer::{BarTotal, SizeAnswer, answer_all, answer_all_under, holders, totals};
pub use coverage::{Coverage, Gap, Overlap, SAME_STOCK, Span, coverage};
pub(super) use edit::same_bar;
pub use edit::{Chosen, EditError, same_stock};
pub use file::{
    FAMILY_FORMAT, FamilyError, MOST_SIZES, is_family, is_tool_family, read, read_of, whole_text,
    write,
};
pub use in_sizes::{InSizes, Measure, OfSize};
pub use make::Made;
pub use salvage::{Opened, newer_design, newer_family, newer_of, open, open_of};
pub use table::{Cell, Difference, Row, Table, Why};
pub use tool::{TOOL_FAMILY_FORMAT, ToolSizeAnswer};

use std::collections::BTreeMap;

use serde::{Deserialize, Serialize};

use crate::asked::{Bar, Choice, Follows, HexagonOf, Lie, SquareOf, Work};
use crate::tongs::document::Document;

/// How a length changes from size to size.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub enum Rule {
    /// The same in all sizes.
    Same,
    /// In proportion to the work.
    WithWork,
    /// In proportion to the bar.
    WithBar,
}

impl Rule {
    /// Every rule, in the order in which they are offered.
    pub const ALL: [Self; 3] = [Self::Same, Self::WithWork, Self::WithBar];

    /// What the smith reads.
    pub fn name(self) -> &'static str {
        match self {
            Self::Same => "same in all",
            Self::WithWork => "with the work",
            Self::WithBar => "with the bar",
        }
    }
}

impl From<Follows> for Rule {
    fn from(follows: Follows) -> Self {
        match follows {
            Follows::Work => Self::WithWork,
            Follows::Bar => Self::WithBar,
            Follows::Nothing => Self::Same,
        }
    }
}

/// What becomes of a length that a rule has scaled.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
pub enum Rounding {
    /// Rounded to what a smith measures with.
    #[default]
    Measured,
    /// Left as it comes out, so that shapes are exactly alike.
    Exact,
}

/// One size of a family.
#[derive(Debug, Clone, PartialEq)]
pub struct Size<M = Work> {
    /// What it is called; empty: by what leads it.
    pub name: String,
    /// What leads it: the work that a pair holds, the leading measure of a tool.
    pub work: M,
    /// What it is forged from; `None`: from the base's bar.
    pub bar: Option<Bar>,
    /// What is set by hand, as a field's path and its text.
    pub set: BTreeMap<String, String>,
}

/// A family as the smith asked for it.
#[derive(Debug, Clone, PartialEq)]
pub struct Family<D: InSizes = Document> {
    /// The family's file format, [`InSizes::FAMILY_FORMAT`]; no design has this field.
    pub family: u32,
    /// What the family is called.
    pub name: String,
    /// Anything the smith wants to remember.
    pub note: String,
    /// What becomes of scaled lengths.
    pub rounding: Rounding,
    /// The rules that differ from those that fields bring along, by the field's path.
    pub rules: BTreeMap<String, Rule>,
    /// The sizes, in the order in which they are shown.
    pub sizes: Vec<Size<D::Measure>>,
    /// The design that they all come from.
    pub base: D,
}

impl<M: Measure> Size<M> {
    /// A size led by some work or measure, with nothing set by hand.
    pub fn new(work: M) -> Self {
        Self {
            name: String::new(),
            work,
            bar: None,
            set: BTreeMap::new(),
        }
    }

    /// Its name, or else what leads it: `1/2 in square on its corners`.
    pub fn label(&self) -> String {
        if self.name.is_empty() {
            self.work.label()
        } else {
            self.name.clone()
        }
    }
}

impl<D: InSizes> Family<D> {
    /// A family with one size: the design itself.
    pub fn from_design(design: &D) -> Self {
        Self {
            family: D::FAMILY_FORMAT,
            name: design.name().to_owned(),
            note: String::new(),
            rounding: Rounding::Measured,
            rules: BTreeMap::new(),
            sizes: vec![Size::new(design.measure())],
            base: design.clone(),
        }
    }
}

/// The shape of work and which way it lies, as a smith would say it.
pub fn shape_name(work: &Work) -> &'static str {
    match work {
        Work::Square {
            lie: Lie::OnCorners,
            of: SquareOf::Bar,
            ..
        } => "square on its corners",
        Work::Hexagon {
            lie: Lie::OnCorners,
            of: HexagonOf::Bar,
            ..
        } => "hexagon on its corners",
        Work::Octagon {
            lie: Lie::OnCorners,
            ..
        } => "octagon on its corners",
        Work::Flat { .. }
        | Work::Round { .. }
        | Work::Square { .. }
        | Work::Hexagon { .. }
        | Work::Octagon { .. } => work.way(),
    }
}
