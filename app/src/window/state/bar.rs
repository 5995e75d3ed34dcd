//! The bar that something is forged from, whatever it is.

use kurbo::Rect;
use reinwright_core::asked::{Bar, Units};
use reinwright_core::forge::balance::Balance;
use reinwright_core::paper::Drawing;

/// What is forged.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Forged {
    /// Two halves.
    Pair,
    /// One tool.
    Tool,
}

impl Forged {
    /// What all of it is called.
    pub(crate) fn whole(self) -> &'static str {
        match self {
            Self::Pair => "pair",
            Self::Tool => "tool",
        }
    }

    /// What one piece of it is called.
    pub(crate) fn piece(self) -> &'static str {
        match self {
            Self::Pair => "half",
            Self::Tool => "tool",
        }
    }

    /// From which end of its bar marks are set off, and which is the other, as the bar lies: a tool's working end is
    /// to the right.
    pub(crate) fn ends(self) -> [&'static str; 2] {
        match self {
            Self::Pair => ["Left", "Right"],
            Self::Tool => ["Right", "Left"],
        }
    }

    /// What belongs to the end that marks are set off from and to the other, in the order in which a smith who stands
    /// before the bar reads it.
    pub(crate) fn as_it_lies<T>(self, [from, other]: [T; 2]) -> [T; 2] {
        match self {
            Self::Pair => [from, other],
            Self::Tool => [other, from],
        }
    }
}

/// All that the account of a bar tells.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Account<'a> {
    pub(crate) bar: &'a Bar,
    pub(crate) units: Units,
    pub(crate) balance: &'a Balance,
    /// Of all that is finished, kg.
    pub(crate) mass_kg: f64,
    pub(crate) of: Forged,
}

/// What is forged from a bar.
pub(crate) trait OfBar {
    /// Counts up with each change.
    fn revision(&self) -> u64;

    /// The account of its bar.
    fn account(&self) -> Account<'_>;

    /// The bar, drawn with text of so many mm, and what it covers in mm.
    fn bar(&mut self, text: f64) -> (&Drawing, Rect);
}
