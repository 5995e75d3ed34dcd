use serde::{Deserialize, Serialize};

use super::{Form, Remark, Style, stout};
use crate::asked::range::{INCLUDED, RUN, STEEL};
use crate::asked::{Bar, Lie, SquareOf, Work, fields};
use crate::finding::{COMMON_PRACTICE, Kind};
use crate::shape::section::Piece;
use crate::tongs::jaw::trade::plain_bit;
use crate::tongs::jaw::{Trade, Way};
use crate::units::{Angle, Length};

/// A bit folded to a V, its outer ridge rounded as folding leaves it.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct VBit {
    /// Inside of one leg, from apex to lip.
    pub leg: Length,
    /// Thickness of the wall.
    pub wall: Length,
    /// Included angle of the groove.
    pub angle: Angle,
    /// In the side view at the heel, before the V begins.
    pub root_depth: Length,
    /// Along the rivet at the heel.
    pub root_width: Length,
    /// Over this length the heel becomes the V.
    pub blend: Length,
}

fields! { VBit: |Self { leg, angle, wall, root_depth, root_width, blend }, v| {
    v.value("leg", leg, STEEL).of_work().says("Leg", "Inside of one leg, from apex to lip");
    v.value("angle", angle, INCLUDED).says("Angle", "Between the legs");
    v.value("wall", wall, STEEL).says("Wall", "Thickness of a leg");
    v.heel(root_depth, root_width);
    v.value("blend", blend, RUN).says("Blend", "Length over which the heel becomes the V");
}}

impl Style for VBit {
    const NAME: &'static str = "V bit";
    const ABOUT: &'static str = "Square on its diagonal, round and hexagon, held along the bar";
    const LIE: Option<Lie> = Some(Lie::OnCorners);

    fn suited(work: &Work, bar: &Bar) -> Self {
        let (side, unit) = (bar.stock.equal_square_mm(), bar.stock.size().unit());
        let (leg, angle) = suited_groove(work);
        // The end of the blend is the slightest place.
        let reach = suited_bit_mm(work) / 2.0 + 0.3 * side;
        let root_depth = stout::heel(bar, 0.62 * side, 0.6 * Self::suited_length_mm(work, bar));
        let root_width = stout::width_within(bar, 1.1 * side, root_depth.mm());
        Self {
            leg: Length::measured(leg, unit),
            wall: stout::wall(bar, (reach, 0.28 * side), |wall| {
                v_surfaces(leg, wall, angle.to_radians())
            }),
            angle: Angle::degrees(angle),
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
            (Work::Flat { .. }, _) => Trade::risky(
                "flat bar touches the edges of the V only: it turns in it and can fly out",
            ),
            (Work::Round { .. }, _) => {
                Trade::suits("bears on two lines in each jaw, so that round bar lies still")
            }
            (Work::Square { .. }, _) => {
                Trade::suits("takes the square by its corners, two flats in each jaw")
            }
            (Work::Hexagon { .. } | Work::Octagon { .. }, _) => {
                Trade::suits("takes the bar by its corners, two flats in each jaw")
            }
        }))
    }

    fn form(&self, length: f64) -> Form {
        let (upper, lower) = v_surfaces(self.leg.mm(), self.wall.mm(), self.angle.radians());
        let root = (self.root_depth.mm(), self.root_width.mm());
        super::form::bit(&upper, &lower, root, (self.blend.mm(), length))
    }

    fn remarks_on(&self, work: &Work) -> Vec<Remark> {
        // The sides of a hexagon on its flats lean as the legs of a V of 60 degrees do.
        let legs_meet = match work {
            Work::Square {
                lie: Lie::OnFlats, ..
            } => false,
            Work::Hexagon {
                lie: Lie::OnFlats, ..
            } => (self.angle.radians().to_degrees() - 60.0).abs() < 5.0,
            Work::Square { .. }
            | Work::Hexagon { .. }
            | Work::Octagon { .. }
            | Work::Flat { .. }
            | Work::Round { .. } => true,
        };
        if legs_meet {
            return Vec::new();
        }
        vec![Remark::mend(
            Kind::WorkBearsBadly,
            |_| {
                "takes bar by its corners and this one lies on its flats: only its \
                            edges touch the V, and it can turn"
                    .to_owned()
            },
            "lay the work on its corners, or take flat jaws",
            COMMON_PRACTICE,
        )]
    }
}

/// How long a grooved bit is for some work, mm (common practice, no source).
pub(super) fn suited_bit_mm(work: &Work) -> f64 {
    (1.8 * work.size().mm()).max(25.0)
}

/// The leg, mm, and the included angle, degrees, of a V that suits some work.
pub(super) fn suited_groove(work: &Work) -> (f64, f64) {
    let size = work.size().mm();
    match work {
        Work::Hexagon {
            lie: Lie::OnCorners,
            ..
        } => (0.52 * size, 120.0),
        Work::Octagon {
            lie: Lie::OnCorners,
            ..
        } => (0.4 * size, 135.0),
        // The walls of one V reach over half of the edges of its legs.
        Work::Square {
            of: SquareOf::AngleBack { thickness },
            ..
        } => (size - 0.5 * thickness.mm(), 90.0),
        Work::Flat { .. }
        | Work::Round { .. }
        | Work::Square { .. }
        | Work::Hexagon { .. }
        | Work::Octagon { .. } => (0.85 * size, 90.0),
    }
}

/// The outer and inner surface of a folded V over the line of its lips, mm: inside of a leg,
/// thickness of its wall, included angle in radians. The ridge is rounded as folding leaves it.
pub(super) fn v_surfaces(leg: f64, wall: f64, angle: f64) -> (Vec<Piece>, Vec<Piece>) {
    let half = angle / 2.0;
    let (sin, cos) = half.sin_cos();
    let apex = leg * cos;
    let lip = (leg * sin, 0.0);
    let outer_lip = (leg * sin + wall * cos, wall * sin);
    let ridge = (wall * cos, apex + wall * sin);
    let flip = |p: (f64, f64)| (-p.0, p.1);
    let upper = vec![
        Piece::line(flip(outer_lip), flip(ridge)),
        Piece::arc(-ridge.0, ridge.0, (0.0, apex), wall),
        Piece::line(ridge, outer_lip),
    ];
    let lower = vec![
        Piece::line(flip(outer_lip), flip(lip)),
        Piece::line(flip(lip), (0.0, apex)),
        Piece::line((0.0, apex), lip),
        Piece::line(lip, outer_lip),
    ];
    (upper, lower)
}
