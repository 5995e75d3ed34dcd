use serde::{Deserialize, Serialize};

use super::lugs::{Lugged, Tool};
use super::{Form, Remark, Style};
use crate::asked::{Bar, Work, fields};
use crate::tongs::jaw::{Trade, Way};

/// Lugs enter the eye of a handled chisel, punch or set; bows behind surround its mushroomed head.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(transparent)]
pub struct ChiselHead(pub Lugged);

/// A struck tool: eye along it and across it, from the eye to the mushroomed end, and how far that
/// stands out (common practice, no source).
const TOOL: Tool = Tool {
    eye: (0.8, 0.4),
    head: 1.6,
    spread: 0.22,
};

fields! { ChiselHead: |Self(lugged), v| {
    v.all(lugged);
}}

impl Style for ChiselHead {
    const NAME: &'static str = "chisel head";
    const ABOUT: &'static str = "Handled chisels and other struck tools, held by lugs in the eye while bows clear the mushroomed head";

    fn suited(work: &Work, bar: &Bar) -> Self {
        Self(Lugged::suited(TOOL, work, bar))
    }

    fn suited_length_mm(work: &Work, bar: &Bar) -> f64 {
        Lugged::suited(TOOL, work, bar).suited_length()
    }

    fn trade(_work: &Work, way: Way) -> Option<Trade> {
        Some(match way {
            Way::ByEye => Trade::suits(
                "its lugs enter the eye of a handled chisel, its bows clear the mushroomed head",
            ),
            Way::EndOn | Way::Beside | Way::Across | Way::ByHead => {
                Trade::not_for("holds a tool by its eye: plain bar gives its lugs nothing to enter")
            }
        })
    }

    fn form(&self, length: f64) -> Form {
        self.0.form(length)
    }

    fn remarks(&self, length: f64) -> Vec<Remark> {
        self.0.remarks(length)
    }

    fn remarks_on(&self, work: &Work) -> Vec<Remark> {
        self.0.remarks_on(work)
    }
}
