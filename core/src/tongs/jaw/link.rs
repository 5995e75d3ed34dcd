use serde::{Deserialize, Serialize};

use super::tapered::Tapered;
use super::{Form, Lay, Remark, Style, stout};
use crate::asked::range::STEEL;
use crate::asked::{Bar, Work, fields};
use crate::finding::{COMMON_PRACTICE, Kind};
use crate::shape::sweep::Ease;
use crate::tongs::jaw::trade::{ROLLS, plain_bit};
use crate::tongs::jaw::{Trade, Way};
use crate::units::Length;

/// A flat jaw with a groove across it near the tip, for links, rings and rivets.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Link {
    /// In the side view at the heel.
    pub root_depth: Length,
    /// Along the rivet at the heel.
    pub root_width: Length,
    /// In the side view at the tip.
    pub tip_depth: Length,
    /// Along the rivet at the tip.
    pub tip_width: Length,
    /// Length of the groove's mouth along the jaw.
    pub mouth: Length,
    /// From the face to the bottom of the groove.
    pub groove: Length,
    /// From the tip to the middle of the groove.
    pub from_tip: Length,
}

fields! { Link: |it, v| {
    let Self { root_depth, root_width, tip_depth, tip_width, mouth, groove, from_tip } = it;
    v.heel(root_depth, root_width);
    v.tip(tip_depth, tip_width);
    v.value("mouth", mouth, STEEL).of_work()
        .says("Groove mouth", "Length of its mouth along the jaw");
    v.value("groove", groove, STEEL).of_work().says("Groove depth", "From the face to its bottom");
    v.value("from_tip", from_tip, STEEL).of_work()
        .says("Groove from tip", "From the tip to the middle of the groove");
}}

impl Style for Link {
    const NAME: &'static str = "link";
    const ABOUT: &'static str =
        "Links, rings and rivets, held across the jaws in a groove near the tip";

    fn suited(work: &Work, bar: &Bar) -> Self {
        let (side, unit) = (bar.stock.equal_square_mm(), bar.stock.size().unit());
        let size = crate::shape::section::work_section(work).1;
        let measured = |mm: f64| Length::measured(mm, unit);
        let groove = 0.4 * size;
        let mouth = match work {
            Work::Round { .. } => ROUND_MOUTH * size,
            Work::Flat { .. }
            | Work::Square { .. }
            | Work::Hexagon { .. }
            | Work::Octagon { .. } => CORNER_MOUTH * size,
        };
        let steel = groove / SUITED_DEEP;
        let root = (0.67 * side).max(groove + 0.4 * side).max(steel);
        let tip = (0.5 * side).max(groove + 0.3 * side).max(steel);
        Self {
            root_depth: measured(root),
            root_width: stout::width_within(bar, 1.1 * side, root + ROUNDED),
            tip_depth: stout::at_least(bar, tip),
            tip_width: stout::width_within(bar, 0.9 * side, tip + ROUNDED),
            mouth: measured(mouth),
            groove: measured(groove),
            from_tip: measured(mouth / 2.0 + (0.3 * side).max(5.0)),
        }
    }

    fn suited_length_mm(work: &Work, bar: &Bar) -> f64 {
        let side = bar.stock.equal_square_mm();
        (2.3 * side).max(1.1 * work.size().mm() + 1.5 * side)
    }

    fn trade(work: &Work, way: Way) -> Option<Trade> {
        Some(plain_bit(way).unwrap_or(match (work, way) {
            (Work::Round { .. }, Way::Across) => {
                Trade::suits("its groove holds links, rings and rivets across the jaws")
            }
            (Work::Flat { .. }, Way::Across) => {
                Trade::not_for("flat bar bridges its groove: a flat jaw holds it better")
            }
            (_, Way::Across) => {
                Trade::will_do("lies in a round groove on its corners: it may turn")
            }
            (Work::Round { .. }, _) => Trade::risky(ROLLS),
            (
                Work::Flat { .. }
                | Work::Square { .. }
                | Work::Hexagon { .. }
                | Work::Octagon { .. },
                _,
            ) => Trade::not_for("its groove runs across the jaws: end on, a flat jaw holds better"),
        }))
    }

    fn form(&self, length: f64) -> Form {
        let (half, at) = self.place(length);
        let root = (self.root_depth.mm(), self.root_width.mm());
        let tip = (self.tip_depth.mm(), self.tip_width.mm());
        let groove = self.groove.mm().min(self.groove_room(length));
        let taper = Tapered { root, tip, length };
        let station = |x: f64, sunk: f64, ease: Ease| taper.station(x, sunk, ease);
        let stations = vec![
            station(0.0, 0.0, Ease::Linear),
            station(at - half, 0.0, Ease::ArcUp),
            station(at, groove, Ease::ArcDown),
            station(at + half, 0.0, Ease::Linear),
            station(length, 0.0, Ease::Linear),
        ];
        Form {
            lay: Lay::Crosswise { at },
            ..Form::straight(stations, Tapered::profiles(), 0.0)
        }
    }

    fn remarks(&self, length: f64) -> Vec<Remark> {
        let (asked, room) = (self.groove.mm(), self.groove_room(length));
        if asked <= room + Remark::NEAR {
            return Vec::new();
        }
        vec![
            Remark::mend(
                Kind::DetailOverRoom,
                move |show| {
                    format!(
                        "has steel for a groove {} deep only, {} was asked",
                        show.text(room),
                        show.text(asked)
                    )
                },
                "leave the tip deeper, or make the groove shallower",
                COMMON_PRACTICE,
            )
            .held(asked, room),
        ]
    }
}

/// Mouth of the starting groove for round work, in its sizes: at 0.4 deep that makes part of a
/// circle 1.05 times as wide as the work, which then lies in it and not on one line (judgement:
/// what scale and a link's own roughness ask).
const ROUND_MOUTH: f64 = 1.02;
/// The same for work with corners, which come to lie well inside of the lips (judgement).
const CORNER_MOUTH: f64 = 1.17;
/// A groove leaves two fifths of the jaw behind it; the starting one a little more.
const MOST_DEEP: f64 = 0.6;
const SUITED_DEEP: f64 = 0.57;
/// What rounding to a smith's sizes may add, mm.
const ROUNDED: f64 = 0.8;

impl Link {
    /// Half the groove's mouth, and where its middle is past the heel, mm.
    fn place(&self, length: f64) -> (f64, f64) {
        let half = (self.mouth.mm() / 2.0).min(0.4 * length);
        let at = (length - self.from_tip.mm()).clamp(half + 0.05 * length, length - 1.02 * half);
        (half, at)
    }

    /// The deepest groove that leaves two fifths of the jaw behind it, mm.
    fn groove_room(&self, length: f64) -> f64 {
        let (root, tip) = (self.root_depth.mm(), self.tip_depth.mm());
        MOST_DEEP * (root + (tip - root) * self.place(length).1 / length).min(tip)
    }
}
