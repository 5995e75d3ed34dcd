use serde::{Deserialize, Serialize};

use super::bit_shape::BitShape;
use super::bow::{Bow, Start};
use super::{Form, Remark, Style, stout};
use crate::asked::range::{RUN, STEEL};
use crate::asked::{Bar, Lie, RoundOf, Work, fields};
use crate::finding::{COMMON_PRACTICE, Kind};
use crate::shape::section::work_section;
use crate::tongs::headroom::corner_radius_mm;
use crate::tongs::jaw::{JawKind, Trade, Way};
use crate::units::Length;

/// A bit with a bow behind it that clears a bolt's head, a flange or a bent end.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Bolt {
    /// What grips the shank.
    pub bit: BitShape,
    /// Length of the bow's level part.
    pub bow_length: Length,
    /// From the line of face or lips to the inside of the bow.
    pub bow_height: Length,
    /// Depth of the bow in the side view.
    pub bow_depth: Length,
    /// Width of the bow along the rivet.
    pub bow_width: Length,
}

/// A bolt's head across corners, in shanks: a square head of one and a half times the shank is
/// 2.1 across its corners, a hexagon 1.73 (arithmetic; head sizes common practice, no source).
const HEAD: f64 = 1.75;

fields! { Bolt: |Self { bit, bow_length, bow_height, bow_depth, bow_width }, v| {
    v.bit(bit);
    v.value("bow_length", bow_length, RUN).of_work().says("Bow length", "Length of its level part");
    v.value("bow_height", bow_height, STEEL).of_work()
        .says("Bow height", "From the line of face or lips to the inside of the bow");
    v.value("bow_depth", bow_depth, STEEL).says("Bow depth", "Of its steel, in the side view");
    v.value("bow_width", bow_width, STEEL).says("Bow width", "Of its steel, in the top view");
}}

impl Style for Bolt {
    const NAME: &'static str = "bolt";
    const ABOUT: &'static str =
        "Bolts and headed bar, held by the shank in the bit while a bow clears the head";
    const LIE: Option<Lie> = Some(Lie::OnCorners);

    fn suited(work: &Work, bar: &Bar) -> Self {
        let (side, unit) = (bar.stock.equal_square_mm(), bar.stock.size().unit());
        let measured = |mm: f64| Length::measured(mm, unit);
        let (_, high, _) = work_section(work);
        let bit = BitShape::suited(work, bar);
        let (across, head) = head_mm(work).unwrap_or((HEAD * high, 0.0));
        let clear = across / 2.0 + ROUND_HEAD - bit.face_on(work);
        let mut it = Self {
            bit,
            bow_length: measured((0.9 * high).max(head + ROUND_HEAD).max(6.0)),
            bow_height: measured(clear.max(0.6 * side)),
            bow_depth: measured(0.5 * side),
            bow_width: measured(0.95 * side),
        };
        let reach = it.bow().length(Start::Swing) + suited_bit_mm(work) / 2.0;
        it.bow_depth = measured(stout::root_mm(bar, reach));
        it
    }

    fn suited_length_mm(work: &Work, bar: &Bar) -> f64 {
        Self::suited(work, bar).bow().length(Start::Swing) + suited_bit_mm(work)
    }

    fn trade(work: &Work, way: Way) -> Option<Trade> {
        Some(match (work, way) {
            (Work::Flat { .. }, Way::ByHead) => {
                Trade::will_do("its flat bit holds flat bar while the bow clears a bent end")
            }
            (_, Way::ByHead) if work.bolt_held().is_none() => Trade::suits(
                "its V holds headed bar while the bow clears the head; on bar without one it is idle",
            ),
            (_, Way::ByHead) => Trade::suits("its V holds the shank while the bow clears the head"),
            (_, Way::EndOn) => Trade::will_do(
                "its bit holds the bar, headed bar well; the bow is idle on bar without a head",
            ),
            (_, Way::Across) => Trade::not_for("its groove runs along the tongs, not across"),
            (_, Way::Beside) => Trade::not_for("holds in front of the boss, not beside it"),
            (_, Way::ByEye) => Trade::not_for("has no lugs that would enter an eye"),
        })
    }

    fn bit(&self) -> Option<JawKind> {
        Some(self.bit.kind())
    }

    fn form(&self, length: f64) -> Form {
        let bow = self.bow();
        let bow_length = bow.length(Start::Swing);
        let bit = (length - bow_length).max(LEAST_BIT);
        bow.with_bit(Start::Swing, (&self.bit.boxed(), bit), 0.45 * bow_length)
    }

    fn remarks(&self, length: f64) -> Vec<Remark> {
        let bow = self.bow().length(Start::Swing);
        short_bit(length, bow)
    }

    fn remarks_on(&self, work: &Work) -> Vec<Remark> {
        // How a head that is known goes in is reckoned.
        if head_mm(work).is_some() {
            return Vec::new();
        }
        let (_, high, _) = work_section(work);
        let (clear, head) = (
            2.0 * (self.bow_height.mm() + self.bit.face_on(work)),
            HEAD * high,
        );
        if clear >= head {
            return Vec::new();
        }
        vec![
            Remark::note(
                Kind::DoesNotReach,
                move |show| {
                    format!(
                        "has {} between its bows; a bolt's head is likely {} across",
                        show.text(clear),
                        show.text(head)
                    )
                },
                "make the bow higher, or measure the head that must go in",
                COMMON_PRACTICE,
            )
            .held(clear, head),
        ]
    }
}

/// Room round a head, mm (common practice, no source).
const ROUND_HEAD: f64 = 2.0;

/// The head of a bolt held by its shank: across its corners, and its height, mm.
fn head_mm(work: &Work) -> Option<(f64, f64)> {
    match *work {
        Work::Round {
            of: RoundOf::BoltShank { flats, height, .. },
            ..
        } => Some((2.0 * corner_radius_mm(flats.mm()), height.mm())),
        Work::Flat { .. }
        | Work::Round { .. }
        | Work::Square { .. }
        | Work::Hexagon { .. }
        | Work::Octagon { .. } => None,
    }
}

/// How long a bit is for some work, mm (common practice, no source).
pub(super) fn suited_bit_mm(work: &Work) -> f64 {
    (1.6 * work.size().mm()).max(22.0)
}

/// A bit is drawn at least so long, mm.
pub(super) const LEAST_BIT: f64 = 3.0;

/// A jaw that is all bow.
pub(super) fn short_bit(length: f64, bow: f64) -> Vec<Remark> {
    if length - bow >= LEAST_BIT {
        return Vec::new();
    }
    vec![
        Remark::mend(
            Kind::JawShort,
            move |show| {
                format!(
                    "is {} long and its bow alone takes {}: no bit is left",
                    show.text(length),
                    show.text(bow)
                )
            },
            "lengthen the jaw, or make the bow shorter or lower",
            crate::finding::GEOMETRY,
        )
        .held(length, bow),
    ]
}

impl Bolt {
    fn bow(&self) -> Bow {
        let bit = self.bit.boxed();
        Bow {
            height: self.bow_height.mm(),
            level: self.bow_length.mm(),
            depth: self.bow_depth.mm(),
            width: self.bow_width.mm(),
            bit_top: bit.bottom + bit.depth,
        }
    }
}
