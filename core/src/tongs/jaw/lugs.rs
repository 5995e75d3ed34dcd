//! Jaws whose tips carry a lug that enters the eye of a tool, with a bow behind.

use serde::{Deserialize, Serialize};

use super::bolt::{LEAST_BIT, short_bit};
use super::bow::{Bow, Start};
use super::form::{STEP, block};
use super::{Form, Remark, stout};
use crate::asked::range::{RUN, STEEL};
use crate::asked::{Bar, Lie, Work, fields};
use crate::finding::{COMMON_PRACTICE, GEOMETRY, Kind};
use crate::shape::section::{Piece, Profile};
use crate::shape::sweep::Ease;
use crate::units::Length;

/// A face that bears on the side of a tool behind its eye, a lug at the tip that enters the eye,
/// and a bow behind that clears the tool's head. The face alone bears and is seated; the lug has
/// play in the eye and only keeps the tool from turning and from leaving the jaws.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Lugged {
    /// From the face into the eye.
    pub lug: Length,
    /// The lug along the tongs.
    pub lug_along: Length,
    /// The lug along the rivet.
    pub lug_width: Length,
    /// The face in the side view.
    pub face_depth: Length,
    /// The face along the rivet.
    pub face_width: Length,
    /// Length of the bow's level part.
    pub bow_length: Length,
    /// From the line of the face to the inside of the bow.
    pub bow_height: Length,
    /// Depth of the bow in the side view.
    pub bow_depth: Length,
}

/// The lug's play in the eye, both sides together, mm: 1/16 in (common practice, no source).
const PLAY: f64 = 1.6;
/// A bow clears the head by at least 1/8 in, mm (common practice, no source).
const CLEAR: f64 = 3.0;
/// The lug of the depth of the eye: two must not meet in it.
const LUG: f64 = 0.35;

/// What the eye and the head of a tool measure, as parts of its height between the jaws.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Tool {
    /// The eye along the tongs and along the rivet.
    pub(super) eye: (f64, f64),
    /// From the eye to the end that lies in the bow.
    pub(super) head: f64,
    /// How far the head stands over the sides.
    pub(super) spread: f64,
}

fields! { Lugged: |it, v| {
    let Self { lug, lug_along, lug_width, face_depth, face_width, .. } = it;
    v.value("lug", lug, STEEL).of_work().says("Lug", "From the face into the eye");
    v.value("lug_along", lug_along, STEEL).of_work()
        .says("Lug length", "Of the lug, along the tongs: a little less than the eye");
    v.value("lug_width", lug_width, STEEL).of_work()
        .says("Lug width", "Of the lug, along the rivet: a little less than the eye");
    v.value("face_depth", face_depth, STEEL)
        .says("Face depth", "Behind the face, in the side view");
    v.value("face_width", face_width, STEEL).says("Face width", "Of face and bow, in the top view");
    let Self { bow_length, bow_height, bow_depth, .. } = it;
    v.value("bow_length", bow_length, RUN).of_work().says("Bow length", "Length of its level part");
    v.value("bow_height", bow_height, STEEL)
        .says("Bow height", "From the line of the face to the inside of the bow");
    v.value("bow_depth", bow_depth, STEEL).says("Bow depth", "Of its steel, in the side view");
}}

impl Lugged {
    pub(super) fn suited(tool: Tool, work: &Work, bar: &Bar) -> Self {
        let (side, unit) = (bar.stock.equal_square_mm(), bar.stock.size().unit());
        let measured = |mm: f64| Length::measured(mm, unit);
        let size = work.size().mm();
        let fits = |eye: f64| (eye * size - PLAY).max(0.7 * eye * size);
        let mut it = Self {
            lug: measured(LUG * size),
            lug_along: measured(fits(tool.eye.0)),
            lug_width: measured(fits(tool.eye.1)),
            face_depth: measured(0.5 * side),
            face_width: measured(side),
            bow_length: measured((tool.head * size).max(6.0)),
            bow_height: measured(CLEAR + 1.0 + tool.spread * size),
            bow_depth: measured(0.5 * side),
        };
        let reach = it.bow().length(Start::Swing) + 0.5 * it.suited_face();
        it.bow_depth = measured(stout::root_mm(bar, reach));
        it
    }

    fn suited_face(&self) -> f64 {
        (0.7 * self.face_width.mm()).max(10.0)
    }

    /// Bow, a face and the lug, mm.
    pub(super) fn suited_length(&self) -> f64 {
        self.bow().length(Start::Swing) + self.suited_face() + self.lug_along.mm()
    }

    /// The bow with its face, then the lug as a step of the inside: the grip ends where it begins.
    pub(super) fn form(&self, length: f64) -> Form {
        let bow = self.bow();
        let behind = bow.length(Start::Swing);
        let bit = (length - behind).max(LEAST_BIT);
        let lug = self.lug_along.mm().min(bit - LEAST_BIT / 2.0);
        let (depth, half) = (self.face_depth.mm(), self.face_width.mm() / 2.0);
        let level = |v: f64| [Piece::line((-half, v), (half, v))];
        let face = Profile::boxed(&level(depth), &level(0.0));
        let mut form = bow.with_bit(Start::Swing, (&face, bit), 0.1 * behind);
        let tip = form.length();
        let to = tip - lug;
        if let Some(end) = form.stations.last_mut() {
            end.at = to;
        }
        let inner = -self.lug.mm();
        let block = |at: f64| block(at, (inner, depth), self.lug_width.mm(), Ease::Linear);
        form.stations.extend([block(to + STEP), block(tip)]);
        form.grip.1 = to;
        form
    }

    pub(super) fn remarks(&self, length: f64) -> Vec<Remark> {
        let behind = self.bow().length(Start::Swing) + self.lug_along.mm();
        let mut all = short_bit(length, behind);
        let (high, least) = (self.bow_height.mm(), CLEAR);
        if high < least - Remark::NEAR {
            all.push(
                Remark::mend(
                    Kind::DoesNotReach,
                    move |show| {
                        format!(
                            "has a bow only {} over its face, under {}: it does not clear the \
                                head",
                            show.text(high),
                            show.text(least)
                        )
                    },
                    "make the bow higher",
                    COMMON_PRACTICE,
                )
                .held(high, least),
            );
        }
        all
    }

    pub(super) fn remarks_on(&self, work: &Work) -> Vec<Remark> {
        let (lug, half) = (self.lug.mm(), work.size().mm() / 2.0);
        let long = (lug > half - Remark::NEAR).then(|| {
            Remark::mend(
                Kind::LugsMeet,
                move |show| {
                    format!(
                        "has a lug {} long, over half the depth of the eye, {}: with its \
                            like on the other jaw it meets before the faces hold",
                        show.text(lug),
                        show.text(half)
                    )
                },
                "make the lug shorter",
                GEOMETRY,
            )
            .held(lug, half)
        });
        let flat = match *work {
            Work::Flat { .. } => true,
            Work::Square { lie, .. } | Work::Hexagon { lie, .. } | Work::Octagon { lie, .. } => {
                lie == Lie::OnFlats
            }
            Work::Round { .. } => false,
        };
        let size = work.size().mm();
        let shape = (!flat).then(|| {
            Remark::mend(
                Kind::WorkBearsBadly,
                move |show| {
                    format!(
                        "bears with flat faces beside an eye, and the {} work shows it no \
                            flat",
                        show.text(size)
                    )
                },
                "describe the tool as flat or square work, its height at the eye",
                COMMON_PRACTICE,
            )
        });
        long.into_iter().chain(shape).collect()
    }

    fn bow(&self) -> Bow {
        Bow {
            height: self.bow_height.mm(),
            level: self.bow_length.mm(),
            depth: self.bow_depth.mm(),
            width: self.face_width.mm(),
            bit_top: self.face_depth.mm(),
        }
    }
}
