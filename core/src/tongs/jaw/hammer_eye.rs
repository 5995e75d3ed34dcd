use serde::{Deserialize, Serialize};

use super::lugs::{Lugged, Tool};
use super::{Form, Remark, Style};
use crate::asked::{Bar, Work, fields};
use crate::tongs::jaw::{Trade, Way};

/// Lugs enter the eye of a hammer head from both ends of it; the jaws bear on the head beside the
/// eye and bow around its face.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(transparent)]
pub struct HammerEye(pub Lugged);

/// A hammer head: eye along the head and across it, from the eye to the struck face (common
/// practice, no source).
const TOOL: Tool = Tool {
    eye: (0.7, 0.45),
    head: 0.9,
    spread: 0.0,
};

fields! { HammerEye: |Self(lugged), v| {
    v.all(lugged);
}}

impl Style for HammerEye {
    const NAME: &'static str = "hammer eye";
    const ABOUT: &'static str = "Hammer heads, held by lugs in the eye while a bow clears the face; the work is the head's height at the eye";

    fn suited(work: &Work, bar: &Bar) -> Self {
        Self(Lugged::suited(TOOL, work, bar))
    }

    fn suited_length_mm(work: &Work, bar: &Bar) -> f64 {
        Lugged::suited(TOOL, work, bar).suited_length()
    }

    fn trade(_work: &Work, way: Way) -> Option<Trade> {
        Some(match way {
            Way::ByEye => Trade::suits(
                "its lugs enter the eye of a hammer head while the bow clears the face",
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
