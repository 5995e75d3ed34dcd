use serde::{Deserialize, Serialize};

use super::bit_shape::BitShape;
use super::bolt::{LEAST_BIT, short_bit, suited_bit_mm};
use super::bow::{Bow, Start};
use super::{Form, Remark, Style, stout};
use crate::asked::range::{DETAIL, RUN, STEEL};
use crate::asked::{Bar, Work, fields};
use crate::finding::{COMMON_PRACTICE, GEOMETRY, Kind};
use crate::shape::section::work_section;
use crate::tongs::jaw::trade::plain_bit;
use crate::tongs::jaw::{JawKind, Trade, Way};
use crate::units::Length;

/// A neck that swings out around the end of the bar and comes back to the bit. The end butts
/// against a face ahead of the rivet, half of it on each jaw, flat and square to the bar: if it
/// slopes, blows on the work wedge the jaws open.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct GooseNeck {
    /// What grips the bar.
    pub bit: BitShape,
    /// Steel behind the stop face, along the tongs.
    pub stop: Length,
    /// How far the stop reaches past the line of face or lips towards the middle.
    pub stop_reach: Length,
    /// From the stop face to where the neck turns down to the bit.
    pub throat_length: Length,
    /// From the line of face or lips to the inside of the neck.
    pub throat_height: Length,
    /// Depth of the neck in the side view.
    pub neck_depth: Length,
    /// Width of the neck along the rivet.
    pub neck_width: Length,
}

/// Between the two stops in the middle, mm, when the pair is set: the jaws must shut a little
/// more than that.
const BETWEEN: f64 = 2.0;
/// Parts of the bar that are left between them at the most on thin bar.
const MOST_BETWEEN: f64 = 0.35;
/// Room between the end of the bar and the neck, mm.
const ROOM: f64 = 1.0;

fields! { GooseNeck: |it, v| {
    let Self { bit, stop, stop_reach, throat_length, throat_height, neck_depth, neck_width } = it;
    v.bit(bit);
    v.value("stop", stop, STEEL).says("Stop", "Steel behind the stop face, along the tongs");
    v.value("stop_reach", stop_reach, DETAIL).of_work()
        .says(
            "Stop reach",
            "How far the stop reaches past the line of face or lips towards the middle",
        );
    v.value("throat_length", throat_length, RUN).of_work()
        .says("Throat length", "From the stop face to where the neck turns down to the bit");
    v.value("throat_height", throat_height, STEEL).of_work()
        .says("Throat height", "From the line of face or lips to the inside of the neck");
    v.value("neck_depth", neck_depth, STEEL)
        .says("Steel depth", "Of the goose neck, in the side view");
    v.value("neck_width", neck_width, STEEL)
        .says("Steel width", "Of the goose neck, in the top view");
}}

impl Style for GooseNeck {
    const NAME: &'static str = "goose neck";
    const ABOUT: &'static str =
        "Bar held end on for upsetting: its end butts against a face ahead of the rivet";

    fn suited(work: &Work, bar: &Bar) -> Self {
        let (side, unit) = (bar.stock.equal_square_mm(), bar.stock.size().unit());
        let measured = |mm: f64| Length::measured(mm, unit);
        let (_, high, _) = work_section(work);
        let bit = BitShape::suited(work, bar);
        let face = bit.face_on(work);
        // The face of the stop is six tenths as high as the neck.
        let butts = (high / 2.0 - face + ROOM) / 0.6;
        let between = BETWEEN.min(MOST_BETWEEN * high);
        let mut it = Self {
            bit,
            stop: measured(0.5 * side),
            stop_reach: measured((face - between / 2.0).max(0.0)),
            throat_length: measured((1.6 * high).max(1.6 * side)),
            throat_height: measured(butts.max(0.55 * side)),
            neck_depth: measured(0.5 * side),
            neck_width: measured(side),
        };
        let reach = it.bow().length(it.start()) + suited_bit_mm(work) / 2.0;
        it.neck_depth = measured(stout::root_mm(bar, reach));
        // Neck and stop together are the stoutest place.
        let stop = it.neck_depth.mm() + it.bow().start(it.start()) + it.stop_reach.mm();
        it.neck_width = stout::width_within(bar, side, stop);
        it
    }

    fn suited_length_mm(work: &Work, bar: &Bar) -> f64 {
        let bit = suited_bit_mm(work);
        let style = Self::suited(work, bar);
        style.bow().length(style.start()) + bit
    }

    fn trade(_work: &Work, way: Way) -> Option<Trade> {
        Some(plain_bit(way).unwrap_or(match way {
            Way::Across => Trade::not_for("its bit and its stop are for bar that is held end on"),
            Way::EndOn | Way::Beside | Way::ByHead | Way::ByEye => {
                Trade::suits("the end of the bar butts against its stop, so that it can be upset")
            }
        }))
    }

    fn bit(&self) -> Option<JawKind> {
        Some(self.bit.kind())
    }

    fn form(&self, length: f64) -> Form {
        let (bow, start) = (self.bow(), self.start());
        let bit = (length - bow.length(start)).max(LEAST_BIT);
        bow.with_bit(start, (&self.bit.boxed(), bit), self.stop.mm())
    }

    fn remarks(&self, length: f64) -> Vec<Remark> {
        short_bit(length, self.bow().length(self.start()))
    }

    fn remarks_on(&self, work: &Work) -> Vec<Remark> {
        let half = work_section(work).1 / 2.0;
        let face = self.bit.face_on(work);
        let (stop, needed) = (face + self.bow().start(self.start()), half);
        let gap = 2.0 * (face - self.stop_reach.mm());
        [
            (stop < needed - Remark::NEAR).then(|| {
                Remark::mend(
                    Kind::DoesNotReach,
                    move |show| {
                        format!(
                            "leaves {} from the middle to its neck behind the bit and the bar \
                                needs {}: its end does not reach the stop",
                            show.text(stop),
                            show.text(needed)
                        )
                    },
                    "make the throat higher",
                    GEOMETRY,
                )
                .held(stop, needed)
            }),
            (gap > half).then(|| {
                Remark::mend(
                    Kind::WorkLoose,
                    move |show| {
                        format!(
                            "leaves {} between its stops, over half of the bar, {}: too little \
                                of the end bears and blows wedge the jaws open",
                            show.text(gap),
                            show.text(half)
                        )
                    },
                    "let the stops reach farther to the middle",
                    COMMON_PRACTICE,
                )
                .held(gap, half)
            }),
        ]
        .into_iter()
        .flatten()
        .collect()
    }
}

impl GooseNeck {
    fn start(&self) -> Start {
        Start::Stop {
            length: self.stop.mm(),
            reach: self.stop_reach.mm(),
        }
    }

    fn bow(&self) -> Bow {
        let bit = self.bit.boxed();
        let mut bow = Bow {
            height: self.throat_height.mm(),
            level: 0.0,
            depth: self.neck_depth.mm(),
            width: self.neck_width.mm(),
            bit_top: bit.bottom + bit.depth,
        };
        bow.level = (self.throat_length.mm() - bow.swing(self.start())).max(0.0);
        bow
    }
}
