use serde::{Deserialize, Serialize};

use super::v_bit::suited_bit_mm;
use super::{Form, Style, stout};
use crate::asked::range::{RUN, STEEL};
use crate::asked::{Bar, Work, fields};
use crate::shape::section::{Piece, work_section};
use crate::tongs::jaw::trade::plain_bit;
use crate::tongs::jaw::{Trade, Way};
use crate::units::{Length, MM_PER_64TH, Unit};

/// A bit with a round groove, fullered into a swage.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct HollowBit {
    /// Radius of the groove.
    pub radius: Length,
    /// From the lips to the bottom of the groove; no more than the radius.
    pub groove: Length,
    /// Thickness of the wall.
    pub wall: Length,
    /// In the side view at the heel, before the groove begins.
    pub root_depth: Length,
    /// Along the rivet at the heel.
    pub root_width: Length,
    /// Over this length the heel becomes the groove.
    pub blend: Length,
}

/// Grooves under these sizes are rounded finely, mm: a quarter of an inch, or six millimetres.
const FINE: (f64, f64) = (16.0 * MM_PER_64TH, 6.0);

/// Rounded as a groove must be: the steps of [`Length::measured`] would leave nothing between the
/// lips on small work.
fn fine(mm: f64, unit: Unit) -> Length {
    let step = match unit {
        Unit::Inch | Unit::Foot if mm < FINE.0 => MM_PER_64TH,
        Unit::Millimetre | Unit::Centimetre if mm < FINE.1 => 0.1,
        Unit::Inch | Unit::Foot | Unit::Millimetre | Unit::Centimetre => {
            return Length::measured(mm, unit);
        }
    };
    Length::from_mm((mm / step).round() * step, unit)
}

fields! { HollowBit: |Self { radius, groove, wall, root_depth, root_width, blend }, v| {
    v.value("radius", radius, STEEL).of_work().says("Groove radius", "A little over half the work");
    v.value("groove", groove, STEEL).of_work().says("Groove depth", "From the lips to its bottom");
    v.value("wall", wall, STEEL).says("Wall", "Thickness around the groove");
    v.heel(root_depth, root_width);
    v.value("blend", blend, RUN).says("Blend", "Length over which the heel becomes the groove");
}}

impl Style for HollowBit {
    const NAME: &'static str = "hollow bit";
    const ABOUT: &'static str = "Round bar of one size, held all round along the bar";

    fn suited(work: &Work, bar: &Bar) -> Self {
        let (side, unit) = (bar.stock.equal_square_mm(), bar.stock.size().unit());
        let size = match work {
            // Over its ribs, where it has any.
            Work::Round { .. } => work_section(work).1,
            Work::Flat { .. }
            | Work::Square { .. }
            | Work::Hexagon { .. }
            | Work::Octagon { .. } => work.size().mm(),
        };
        // An octagon's corners stand 1.08 times as far from the middle as its flats.
        let radius = match work {
            Work::Octagon { .. } => 0.57,
            Work::Flat { .. } | Work::Round { .. } | Work::Square { .. } | Work::Hexagon { .. } => {
                0.53
            }
        };
        let reach = suited_bit_mm(work) / 2.0 + 0.3 * side;
        let root_depth = stout::heel(bar, 0.62 * side, 0.6 * Self::suited_length_mm(work, bar));
        let root_width = stout::width_within(bar, 1.1 * side, root_depth.mm());
        Self {
            radius: fine(radius * size, unit),
            groove: fine(0.4 * size, unit),
            wall: stout::wall(bar, (reach, 0.28 * side), |wall| {
                surfaces(radius * size, 0.4 * size, wall)
            }),
            root_depth,
            root_width,
            blend: Length::measured(0.9 * side, unit),
        }
    }

    fn suited_length_mm(work: &Work, bar: &Bar) -> f64 {
        0.9 * bar.stock.equal_square_mm() + suited_bit_mm(work)
    }

    fn trade(work: &Work, way: Way) -> Option<Trade> {
        Some(plain_bit(way).unwrap_or(match (work, way) {
            (_, Way::Across) => Trade::not_for("its groove runs along the tongs, not across"),
            (Work::Round { .. }, _) => Trade::suits("holds round bar of its own size all round"),
            (Work::Octagon { .. }, _) => {
                Trade::will_do("touches an octagon at its corners, nearly all round")
            }
            (Work::Hexagon { .. }, _) => Trade::will_do(
                "touches a hexagon at its corners only: it may turn under the hammer",
            ),
            (Work::Flat { .. } | Work::Square { .. }, _) => Trade::risky(
                "touches the bar at its corners only: it turns in the groove and can fly out",
            ),
        }))
    }

    fn form(&self, length: f64) -> Form {
        let (upper, lower) = surfaces(self.radius.mm(), self.groove.mm(), self.wall.mm());
        let root = (self.root_depth.mm(), self.root_width.mm());
        super::form::bit(&upper, &lower, root, (self.blend.mm(), length))
    }
}

/// The outer and inner surface of a round groove over the line of its lips, mm: its radius, its
/// depth and the wall around it.
pub(super) fn surfaces(r: f64, groove: f64, wall: f64) -> (Vec<Piece>, Vec<Piece>) {
    let centre = (0.0, groove.min(r) - r);
    let half = |radius: f64| (radius * radius - centre.1 * centre.1).max(0.0).sqrt();
    let (lip, side) = (half(r), half(r + wall));
    let upper = vec![Piece::arc(-side, side, centre, r + wall)];
    let lower = vec![
        Piece::line((-side, 0.0), (-lip, 0.0)),
        Piece::arc(-lip, lip, centre, r),
        Piece::line((lip, 0.0), (side, 0.0)),
    ];
    (upper, lower)
}
