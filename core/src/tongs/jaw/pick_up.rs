use serde::{Deserialize, Serialize};

use super::{Course, Form, Lay, Remark, Style, stout};
use crate::asked::range::STEEL;
use crate::asked::{Bar, Work, fields, simple_choice};
use crate::finding::{COMMON_PRACTICE, Kind};
use crate::shape::section::Profile;
use crate::shape::sweep::{Ease, Station};
use crate::tongs::jaw::trade::{ROLLS, plain_bit};
use crate::tongs::jaw::{Trade, Way};
use crate::units::Length;

/// Where a pick-up jaw holds the work of the design.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
pub enum PickUpPlace {
    /// Endwise between the tips.
    Tips,
    /// Across, in the opening behind the tips.
    #[default]
    Small,
    /// Across, in the opening next to the boss.
    Large,
}

simple_choice!(PickUpPlace {
    Tips => "the tips",
    Small => "the small opening",
    Large => "the large opening",
});

/// Tips that meet closely and, behind them, two round openings bent into the jaw.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct PickUp {
    /// Where the work of the design lies.
    pub place: PickUpPlace,
    /// Diameter that the opening behind the tips is bent for.
    pub small: Length,
    /// Diameter that the opening next to the boss is bent for.
    pub large: Length,
    /// Depth of the bent steel in the side view.
    pub depth: Length,
    /// Width of the bent steel along the rivet.
    pub width: Length,
    /// In the side view at the tip.
    pub tip_depth: Length,
    /// Along the rivet at the tip.
    pub tip_width: Length,
}

fields! { PickUp: |Self { place, small, large, depth, width, tip_depth, tip_width }, v| {
    v.choice("place", place).says("Held in", "Where the work of this design is held");
    v.value("small", small, STEEL).of_work()
        .says("Small opening", "Round work that the opening behind the tips is bent for");
    v.value("large", large, STEEL).of_work()
        .says("Large opening", "Round work that the opening next to the boss is bent for");
    v.value("depth", depth, STEEL).says("Depth", "Of the bent steel, in the side view");
    v.value("width", width, STEEL).says("Width", "Of the bent steel, in the top view");
    v.tip(tip_depth, tip_width);
}}

impl Style for PickUp {
    const NAME: &'static str = "pick-up";
    const ABOUT: &'static str = "Thin pieces off the floor between close tips, and round work from the side in two openings";

    fn suited(work: &Work, bar: &Bar) -> Self {
        let (side, unit) = (bar.stock.equal_square_mm(), bar.stock.size().unit());
        let measured = |mm: f64| Length::measured(mm, unit);
        let size = crate::shape::section::work_section(work).1;
        let (place, small, large) = if matches!(work, Work::Flat { .. }) {
            (PickUpPlace::Tips, 0.6 * side, side)
        } else if size <= 0.8 * side {
            (PickUpPlace::Small, size, 1.6 * size)
        } else {
            (PickUpPlace::Large, 0.6 * size, size)
        };
        let mut it = Self {
            place,
            small: measured(small),
            large: measured(large),
            depth: measured(0.48 * side),
            width: measured(side),
            tip_depth: measured(0.3 * side),
            tip_width: measured(0.75 * side),
        };
        it.depth = measured(stout::root_mm(bar, it.reach()));
        it.tip_depth = measured(0.625 * it.depth.mm());
        it
    }

    fn suited_length_mm(work: &Work, bar: &Bar) -> f64 {
        let side = bar.stock.equal_square_mm();
        let it = Self::suited(work, bar);
        let tips = match it.place {
            PickUpPlace::Tips => (1.1 * side).max(1.05 * work.size().mm()),
            PickUpPlace::Small | PickUpPlace::Large => 0.7 * side,
        };
        it.bent().0 + tips
    }

    fn trade(work: &Work, way: Way) -> Option<Trade> {
        /// Thicker work is not picked up by slim tips, mm.
        const THIN: f64 = 10.0;
        Some(plain_bit(way).unwrap_or(match (work, way) {
            (Work::Flat { thickness, .. }, Way::EndOn) if thickness.mm() > THIN => {
                Trade::not_for("its tips are for thin pieces: a flat jaw holds thick bar better")
            }
            (Work::Flat { .. }, Way::EndOn) => {
                Trade::will_do("picks thin pieces up by its tips; it is not for the hammer")
            }
            (Work::Flat { .. }, Way::Across) => {
                Trade::not_for("its openings are round, flat bar goes between the tips end on")
            }
            (Work::Round { .. }, Way::Across) => {
                Trade::suits("takes round work from the side in a round opening")
            }
            (_, Way::Across) => Trade::will_do(
                "lies in a round opening on its corners: for carrying, not for the hammer",
            ),
            (Work::Round { .. }, _) => Trade::risky(ROLLS),
            (
                Work::Flat { .. }
                | Work::Square { .. }
                | Work::Hexagon { .. }
                | Work::Octagon { .. },
                _,
            ) => Trade::not_for("its tips are for thin pieces, its openings for work across"),
        }))
    }

    fn form(&self, length: f64) -> Form {
        let (bent, mut poses) = self.bent();
        // Along x: the tops of both openings are the second and the fifth place.
        let tops = (poses[1].0, poses[5].0);
        poses.push((length.max(bent + LEAST_TIP), 0.0, 0.0));
        let (course, along) = Course::through(&poses);
        let (from, tip) = (along[along.len() - 2], along[along.len() - 1]);
        let station = |at: f64, depth: f64, width: f64| Station {
            at,
            depth,
            width,
            rise: depth / 2.0,
            shift: 0.0,
            profile: 0,
            ease: Ease::Linear,
        };
        let steel = (self.depth.mm(), self.width.mm());
        let stations = vec![
            station(0.0, steel.0, steel.1),
            station(along[5], steel.0, steel.1),
            station(tip, self.tip_depth.mm(), self.tip_width.mm()),
        ];
        let (grip, lay) = match self.place {
            PickUpPlace::Tips => ((from, tip), Lay::Endwise { end: None }),
            PickUpPlace::Small => ((0.0, tip), Lay::Crosswise { at: tops.1 }),
            PickUpPlace::Large => ((0.0, tip), Lay::Crosswise { at: tops.0 }),
        };
        Form {
            course,
            stations,
            profiles: vec![Profile::rectangle()],
            grip,
            lay,
        }
    }

    fn remarks(&self, length: f64) -> Vec<Remark> {
        let bent = self.bent().0;
        let tips = length - bent;
        let mut remarks = Vec::new();
        if tips < LEAST_TIP {
            remarks.push(
                Remark::mend(
                    Kind::JawShort,
                    move |show| {
                        format!(
                            "is {} long, its openings need {} and the tips their own length \
                                besides",
                            show.text(length),
                            show.text(bent)
                        )
                    },
                    "lengthen the jaw, or make the openings smaller",
                    COMMON_PRACTICE,
                )
                .held(length, bent),
            );
        }
        let (large, small) = (self.large.mm(), self.small.mm());
        if large < small {
            remarks.push(
                Remark::note(
                    Kind::OpeningsSwapped,
                    move |show| {
                        format!(
                            "has {} next to the boss, smaller than the {} behind the tips",
                            show.text(large),
                            show.text(small)
                        )
                    },
                    "put the larger opening next to the boss, where the squeeze is \
                                strongest",
                    COMMON_PRACTICE,
                )
                .held(large, small),
            );
        }
        remarks
    }
}

/// Tips are drawn at least so long, mm.
const LEAST_TIP: f64 = 3.0;

/// A round opening bent into the jaw: an arc over the work between two that lead out of it.
#[derive(Debug, Clone, Copy)]
struct Opening {
    /// Radius of the inside around the work, mm.
    radius: f64,
    /// Radius of the inside where it leads out, mm.
    lip: f64,
    /// From the line of the lips to the top, mm.
    height: f64,
    /// How steep it is where the arcs meet, radians.
    steep: f64,
}

impl Opening {
    /// An opening for a diameter: a little wider than the work and not so deep that the lips meet
    /// first, bent of steel of a depth (common practice, no source).
    fn of(diameter: f64, depth: f64) -> Self {
        let radius = 0.53 * diameter;
        // The lips are bent round the outside of the steel.
        let lip = 1.15 * depth + 1.0;
        // A deep opening stands no steeper than 85 degrees.
        let height = (0.42 * diameter).min((radius + lip) * (1.0 - 85f64.to_radians().cos()));
        Self {
            radius,
            lip,
            height,
            steep: (1.0 - height / (radius + lip)).acos(),
        }
    }

    /// Half its length from lip to lip along x, mm.
    fn half(&self) -> f64 {
        (self.radius + self.lip) * self.steep.sin()
    }

    /// The places from its top at `x` to the lip behind it.
    fn down_from(&self, x: f64) -> [(f64, f64, f64); 3] {
        [
            (x, self.height, 0.0),
            (
                x + self.radius * self.steep.sin(),
                self.height - self.radius * (1.0 - self.steep.cos()),
                -self.steep,
            ),
            (x + self.half(), 0.0, 0.0),
        ]
    }
}

impl PickUp {
    /// From the heel to where the work presses, mm.
    fn reach(&self) -> f64 {
        let (bent, poses) = self.bent();
        match self.place {
            PickUpPlace::Tips => bent + self.large.mm() / 2.0,
            PickUpPlace::Small => poses[5].0,
            PickUpPlace::Large => poses[1].0,
        }
    }

    /// The length of both openings along x, mm, and the places of the inside from the heel to
    /// where the tips begin.
    fn bent(&self) -> (f64, Vec<(f64, f64, f64)>) {
        let depth = self.depth.mm();
        let large = Opening::of(self.large.mm(), depth);
        let small = Opening::of(self.small.mm(), depth);
        // The neck carries the jaw into the rising side of the large opening.
        let rise = large.steep.min(SETS_OUT);
        let top = large.radius * rise.sin();
        let mut poses = vec![(0.0, large.height - large.radius * (1.0 - rise.cos()), rise)];
        poses.extend(large.down_from(top));
        let lip = top + large.half();
        poses.push((
            lip + small.lip * small.steep.sin(),
            small.lip * (1.0 - small.steep.cos()),
            small.steep,
        ));
        poses.extend(small.down_from(lip + small.half()));
        (lip + 2.0 * small.half(), poses)
    }
}

/// How steeply the jaw rises out of the neck at the most, radians.
const SETS_OUT: f64 = 0.8;
