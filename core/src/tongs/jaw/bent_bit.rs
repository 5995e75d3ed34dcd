use serde::{Deserialize, Serialize};

use super::bit_shape::BitShape;
use super::form::block;
use super::{Course, Form, Lay, Remark, Style, stout};
use crate::asked::range::{DETAIL, RUN};
use crate::asked::{Bar, Work, fields};
use crate::finding::{COMMON_PRACTICE, Kind};
use crate::shape::section::{Profile, work_section};
use crate::shape::sweep::{Ease, Station};
use crate::tongs::jaw::{JawKind, Trade, Way};
use crate::units::Length;

/// Bits that step to one side, so that a long bar lies beside boss and reins. One half bends to
/// the left and the other to the right: they are not the same piece.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct BentBit {
    /// What grips the bar.
    pub bit: BitShape,
    /// From the middle of the tongs to the middle of the bit, along the rivet.
    pub aside: Length,
    /// In the side view at the heel.
    pub root_depth: Length,
    /// Along the rivet at the heel.
    pub root_width: Length,
    /// Over this length the jaw steps to the side.
    pub blend: Length,
}

/// Parts of the bar that a boss is thick and a rivet head high in the starting proportions.
const BOSS: f64 = 0.6;
const HEAD: f64 = 0.36;
/// Play between the bar and the rivet's head, mm (common practice, no source).
const PLAY: f64 = 3.0;

fields! { BentBit: |Self { bit, aside, root_depth, root_width, blend }, v| {
    v.bit(bit);
    v.value("aside", aside, DETAIL).of_work()
        .says(
            "Step aside",
            "From the middle of the tongs to the middle of the bit, along the rivet",
        );
    v.heel(root_depth, root_width);
    v.value("blend", blend, RUN).of_work()
        .says("Blend", "Length over which the jaw steps to the side");
}}

impl Style for BentBit {
    const NAME: &'static str = "bent bit";
    const ABOUT: &'static str =
        "Long bar that runs on beside boss and reins, held from the side by bits bent out of line";

    fn suited(work: &Work, bar: &Bar) -> Self {
        let (side, unit) = (bar.stock.equal_square_mm(), bar.stock.size().unit());
        let measured = |mm: f64| Length::measured(mm, unit);
        let wide = work_section(work).2;
        let aside = (BOSS + HEAD) * side + wide / 2.0 + PLAY;
        let reach = STEEPEST * aside + 0.8 * work.size().mm();
        let root_depth = stout::heel(bar, 0.62 * side, reach);
        let root_width = stout::width_within(bar, side, root_depth.mm());
        Self {
            bit: BitShape::suited(work, bar),
            aside: measured(aside),
            root_depth,
            root_width,
            blend: measured(STEEPEST * aside),
        }
    }

    fn suited_length_mm(work: &Work, bar: &Bar) -> f64 {
        let bit = (1.6 * work.size().mm()).max(22.0);
        Self::suited(work, bar).blend.mm() + bit
    }

    fn trade(_work: &Work, way: Way) -> Option<Trade> {
        Some(match way {
            Way::Beside => {
                Trade::suits("its bits step aside, so that long bar passes boss and reins")
            }
            Way::EndOn => {
                Trade::not_for("holds bar beside the tongs: a straight bit holds it in line")
            }
            Way::Across => Trade::not_for("its bits run along the tongs, not across"),
            Way::ByHead => Trade::not_for("has no bow that would clear a head"),
            Way::ByEye => Trade::not_for("has no lugs that would enter an eye"),
        })
    }

    fn bit(&self) -> Option<JawKind> {
        Some(self.bit.kind())
    }

    fn form(&self, length: f64) -> Form {
        let bit = self.bit.boxed();
        let blend = self.blend.mm().min(0.8 * length);
        let (deep, wide) = (self.root_depth.mm(), self.root_width.mm());
        let top = bit.bottom + bit.depth;
        let inner = (top - deep).max(bit.bottom);
        let gripping = |at: f64| Station {
            at,
            depth: bit.depth,
            width: bit.width,
            rise: bit.bottom + bit.depth / 2.0,
            shift: self.aside.mm(),
            profile: 1,
            ease: Ease::Linear,
        };
        let heel = block(0.0, (inner, inner + deep), wide, Ease::Smooth);
        Form {
            course: Course::straight(length),
            stations: vec![heel, gripping(blend), gripping(length)],
            profiles: vec![Profile::rectangle(), bit.profile.clone()],
            grip: (blend, length),
            lay: Lay::Alongside,
        }
    }

    fn remarks(&self, length: f64) -> Vec<Remark> {
        let blend = self.blend.mm().min(0.8 * length);
        let least = STEEPEST * self.aside.mm();
        if blend >= 0.8 * least {
            return Vec::new();
        }
        vec![
            Remark::mend(
                Kind::StepsAsideSteeply,
                move |show| {
                    format!(
                        "steps aside over {}, and {} keeps its bend under half a right \
                            angle: it is thin where it is steep",
                        show.text(blend),
                        show.text(least)
                    )
                },
                "give the blend more length, or step less",
                COMMON_PRACTICE,
            )
            .held(blend, least),
        ]
    }
}

/// Length of a smooth step over its height that runs under 45 degrees everywhere: its cubic is
/// steepest in its middle, one and a half times the mean.
const STEEPEST: f64 = 1.5;
