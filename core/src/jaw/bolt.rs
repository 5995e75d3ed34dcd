use serde::{Deserialize, Serialize};

use super::bow::{Bit, Bow};
use super::v_bit::v_surfaces;
use super::{Form, Style};
use crate::document::{Bar, Follows, Range, Visitor, Work};
use crate::section::Profile;
use crate::units::{Angle, Length};

/// A V-bit with a bow behind it that clears a bolt's head, a flange or a bent end.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Bolt {
    /// Inside of one leg of the bit, from apex to lip.
    pub leg: Length,
    /// Thickness of its wall.
    pub wall: Length,
    /// Included angle of the groove.
    pub angle: Angle,
    /// Length of the bow's level part.
    pub bow_length: Length,
    /// From the line of the lips to the inside of the bow.
    pub bow_height: Length,
    /// Depth of the bow in the side view.
    pub bow_depth: Length,
    /// Width of the bow along the rivet.
    pub bow_width: Length,
}

impl Style for Bolt {
    const NAME: &'static str = "bolt";
    const ABOUT: &'static str =
        "Bolts and headed bar, held by the shank in a V while a bow clears the head";

    fn suited(work: &Work, bar: &Bar) -> Self {
        let (side, unit) = (bar.stock.equal_square_mm(), bar.stock.size().unit());
        let measured = |mm: f64| Length::measured(mm, unit);
        let size = work.size().mm();
        let (leg, degrees) = super::v_bit::suited_groove(work);
        Self {
            leg: measured(leg),
            wall: measured(0.28 * side),
            angle: Angle::degrees(degrees),
            bow_length: measured((0.9 * size).max(6.0)),
            bow_height: measured((0.95 * size).max(0.6 * side)),
            bow_depth: measured(0.5 * side),
            bow_width: measured(0.95 * side),
        }
    }

    fn suited_length_mm(work: &Work, bar: &Bar) -> f64 {
        let bit = (1.6 * work.size().mm()).max(22.0);
        Self::suited(work, bar).bow().length() + bit
    }

    fn fields(&mut self, v: &mut Visitor<'_>) {
        let (of_work, of_bar) = ((Range::STEEL, Follows::Work), (Range::STEEL, Follows::Bar));
        let leg = "Inside of one leg, from apex to lip";
        v.length("leg", "Leg", leg, of_work, &mut self.leg);
        v.angle(
            "angle",
            "Angle",
            "Between the legs",
            Range::GROOVE,
            &mut self.angle,
        );
        v.length("wall", "Wall", "Thickness of a leg", of_bar, &mut self.wall);
        let long = "Length of its level part";
        v.length(
            "bow_length",
            "Bow length",
            long,
            (Range::RUN, Follows::Work),
            &mut self.bow_length,
        );
        let high = "From the line of the lips to the inside of the bow";
        v.length(
            "bow_height",
            "Bow height",
            high,
            of_work,
            &mut self.bow_height,
        );
        let deep = "Of its steel, in the side view";
        v.length("bow_depth", "Bow depth", deep, of_bar, &mut self.bow_depth);
        let wide = "Of its steel, in the top view";
        v.length("bow_width", "Bow width", wide, of_bar, &mut self.bow_width);
    }

    fn form(&self, length: f64) -> Form {
        let (upper, lower) = v_surfaces(self.leg.mm(), self.wall.mm(), self.angle.radians());
        let boxed = Profile::boxed(&upper, &lower);
        let bow = self.bow();
        let bit = Bit {
            rise: boxed.bottom + boxed.depth / 2.0,
            depth: boxed.depth,
            width: boxed.width,
            profile: boxed.profile,
            length: (length - bow.length()).max(LEAST_BIT),
        };
        bow.with_bit(&bit, 0.45 * bow.length())
    }
}

/// A bit is drawn at least so long, mm.
const LEAST_BIT: f64 = 3.0;

impl Bolt {
    fn bow(&self) -> Bow {
        Bow {
            height: self.bow_height.mm(),
            level: self.bow_length.mm(),
            depth: self.bow_depth.mm(),
            width: self.bow_width.mm(),
        }
    }
}
