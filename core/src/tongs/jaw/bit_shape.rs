//! The gripping end of a jaw that has more to it than its grip.

use serde::{Deserialize, Serialize};

use super::v_bit::{suited_groove, v_surfaces};
use super::{JawKind, stout};
use crate::asked::range::{INCLUDED, STEEL};
use crate::asked::{Bar, Choice, Lie, Work, fields};
use crate::shape::section::{Boxed, Piece, Profile, Section, work_section};
use crate::tongs::seat::seat;
use crate::units::{Angle, Length};

/// A bit of one section: flat, folded to a V, or hollowed.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub enum BitShape {
    /// A flat face.
    Flat {
        /// In the side view.
        depth: Length,
        /// Along the rivet.
        width: Length,
    },
    /// Folded to a V.
    V {
        /// Inside of one leg, from apex to lip.
        leg: Length,
        /// Included angle of the groove.
        angle: Angle,
        /// Thickness of a leg.
        wall: Length,
    },
    /// A round groove.
    Hollow {
        /// Radius of the groove.
        radius: Length,
        /// From the lips to its bottom; no more than the radius.
        groove: Length,
        /// Thickness around it.
        wall: Length,
    },
}

/// Parts of the bar that a flat bit is deep, and a wall thick (common practice, no source).
const DEPTH: f64 = 0.5;
const WALL: f64 = 0.28;
/// Parts of the work: the leg of a V that holds it, radius and depth of a hollow.
const LEG: f64 = 0.85;
const RADIUS: f64 = 0.53;
const GROOVE: f64 = 0.4;

// What stands under the choice of the bit.
fields! { BitShape: |it, v| {
    match it {
        Self::Flat { depth, width } => {
            v.value("depth", depth, STEEL).says("Depth", "Of the bit, in the side view");
            v.value("width", width, STEEL).says("Width", "Of the bit, in the top view");
        }
        Self::V { leg, angle, wall } => {
            v.value("leg", leg, STEEL).of_work().says("Leg", "Inside of one leg, from apex to lip");
            v.value("angle", angle, INCLUDED).says("Angle", "Between the legs");
            v.value("wall", wall, STEEL).says("Wall", "Thickness around the groove");
        }
        Self::Hollow { radius, groove, wall } => {
            v.value("radius", radius, STEEL).of_work()
                .says("Groove radius", "A little over half the work");
            v.value("groove", groove, STEEL).of_work()
                .says("Groove depth", "From the lips to its bottom");
            v.value("wall", wall, STEEL).says("Wall", "Thickness around the groove");
        }
    }
}}

impl BitShape {
    /// Flat for work that shows the jaws a flat, a V for all else.
    pub(super) fn suited(work: &Work, bar: &Bar) -> Self {
        let (side, unit) = (bar.stock.equal_square_mm(), bar.stock.size().unit());
        let measured = |mm: f64| Length::measured(mm, unit);
        let flats = Lie::OnFlats;
        match *work {
            Work::Flat { .. } => Self::flat(work, bar),
            Work::Square { lie, .. } if lie == flats => Self::flat(work, bar),
            Work::Hexagon { lie, .. } | Work::Octagon { lie, .. } if lie == flats => {
                Self::flat(work, bar)
            }
            Work::Round { .. }
            | Work::Square { .. }
            | Work::Hexagon { .. }
            | Work::Octagon { .. } => {
                let (leg, degrees) = suited_groove(work);
                let reach = 0.8 * work.size().mm() + 0.5 * side;
                Self::V {
                    leg: measured(leg),
                    angle: Angle::degrees(degrees),
                    wall: stout::wall(bar, (reach, WALL * side), |wall| {
                        v_surfaces(leg, wall, degrees.to_radians())
                    }),
                }
            }
        }
    }

    /// A flat face as wide as the bar spreads, no wider than the work but for a small bar.
    pub(super) fn flat(work: &Work, bar: &Bar) -> Self {
        let (side, unit) = (bar.stock.equal_square_mm(), bar.stock.size().unit());
        let wide = work_section(work).2.clamp(side, 1.4 * side);
        Self::Flat {
            depth: Length::measured(DEPTH * side, unit),
            width: Length::measured(wide, unit),
        }
    }

    /// The style that is nothing but such a bit.
    pub(super) fn kind(&self) -> JawKind {
        match self {
            Self::Flat { .. } => JawKind::Flat,
            Self::V { .. } => JawKind::VBit,
            Self::Hollow { .. } => JawKind::HollowBit,
        }
    }

    /// Its section over the line of face or lips.
    pub(super) fn boxed(&self) -> Boxed {
        let (upper, lower) = match self {
            Self::Flat { depth, width } => {
                let (deep, half) = (depth.mm(), width.mm() / 2.0);
                let level = |v: f64| vec![Piece::line((-half, v), (half, v))];
                (level(deep), level(0.0))
            }
            Self::V { leg, angle, wall } => v_surfaces(leg.mm(), wall.mm(), angle.radians()),
            Self::Hollow {
                radius,
                groove,
                wall,
            } => super::hollow::surfaces(radius.mm(), groove.mm(), wall.mm()),
        };
        Profile::boxed(&upper, &lower)
    }

    /// From the middle of work to the line of face or lips when it rests on this bit, mm.
    pub(super) fn face_on(&self, work: &Work) -> f64 {
        let boxed = self.boxed();
        let (profile, depth, width) = work_section(work);
        let jaw = Section::new(&boxed.profile, boxed.depth, boxed.width);
        let rise = boxed.bottom + boxed.depth / 2.0;
        seat(&jaw, rise, &Section::new(&profile, depth, width)).face
    }

    /// The bar and the work that it was made for, mm, as far as its own sizes tell.
    fn made_for(&self) -> (f64, f64) {
        match self {
            Self::Flat { depth, width } => (depth.mm() / DEPTH, width.mm()),
            Self::V { leg, wall, .. } => (wall.mm() / WALL, leg.mm() / LEG),
            Self::Hollow { radius, wall, .. } => (wall.mm() / WALL, radius.mm() / RADIUS),
        }
    }

    fn size(&self) -> Length {
        match self {
            Self::Flat { width, .. } => *width,
            Self::V { leg, .. } => *leg,
            Self::Hollow { radius, .. } => *radius,
        }
    }
}

impl Choice for BitShape {
    const WAYS: &'static [&'static str] = &["flat", "V", "hollow"];

    fn chosen(&self) -> usize {
        match self {
            Self::Flat { .. } => 0,
            Self::V { .. } => 1,
            Self::Hollow { .. } => 2,
        }
    }

    fn choose(&mut self, index: usize) {
        if index == self.chosen() {
            return;
        }
        let ((bar, work), unit) = (self.made_for(), self.size().unit());
        let measured = |mm: f64| Length::measured(mm, unit);
        *self = match index {
            0 => Self::Flat {
                depth: measured(DEPTH * bar),
                width: measured(work.max(bar)),
            },
            1 => Self::V {
                leg: measured(LEG * work),
                angle: Angle::degrees(90.0),
                wall: measured(WALL * bar),
            },
            2 => Self::Hollow {
                radius: measured(RADIUS * work),
                groove: measured(GROOVE * work),
                wall: measured(WALL * bar),
            },
            _ => return,
        };
    }
}
