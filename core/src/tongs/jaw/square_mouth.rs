use serde::{Deserialize, Serialize};

use super::box_jaw::thin_lip;
use super::trough::{Trough, play};
use super::{Form, Remark, Style, stout};
use crate::asked::range::{RUN, STEEL};
use crate::asked::{Bar, Lie, Work, fields};
use crate::finding::{COMMON_PRACTICE, Kind};
use crate::shape::section::work_section;
use crate::tongs::jaw::trade::plain_bit;
use crate::tongs::jaw::{Trade, Way};
use crate::units::Length;

/// A right-angled trough on each jaw, in which square bar lies on its flats.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct SquareMouth {
    /// Between the walls of the trough.
    pub inside: Length,
    /// From its floor to the end of its walls.
    pub trough: Length,
    /// Thickness of walls and floor.
    pub wall: Length,
    /// In the side view at the heel, before the trough begins.
    pub root_depth: Length,
    /// Along the rivet at the heel.
    pub root_width: Length,
    /// Over this length the heel becomes the trough.
    pub blend: Length,
}

/// A trough that takes in less of the bar than this part does not keep it from rolling (common
/// practice, no source: 0.4 to 0.45 is usual).
const LEAST: f64 = 0.3;

fields! { SquareMouth: |Self { inside, trough, wall, root_depth, root_width, blend }, v| {
    v.value("inside", inside, STEEL).of_work()
        .says("Inside width", "Between the walls: the work's side and a little play");
    v.value("trough", trough, STEEL).of_work()
        .says("Trough depth", "From the floor to the end of the walls");
    v.value("wall", wall, STEEL).says("Wall", "Thickness of walls and floor");
    v.heel(root_depth, root_width);
    v.value("blend", blend, RUN).says("Blend", "Length over which the heel becomes the trough");
}}

impl Style for SquareMouth {
    const NAME: &'static str = "square mouth";
    const ABOUT: &'static str = "Square bar of one size, on its flats in a right-angled trough";
    const LIE: Option<Lie> = Some(Lie::OnFlats);

    fn suited(work: &Work, bar: &Bar) -> Self {
        let (side, unit) = (bar.stock.equal_square_mm(), bar.stock.size().unit());
        let measured = |mm: f64| Length::measured(mm, unit);
        let (_, thick, wide) = work_section(work);
        let root_depth = stout::heel(bar, 0.62 * side, 0.6 * Self::suited_length_mm(work, bar));
        let root_width = stout::width_within(bar, 1.1 * side, root_depth.mm());
        Self {
            inside: measured(wide + play(wide)),
            trough: measured(0.42 * thick),
            wall: measured(0.3 * side),
            root_depth,
            root_width,
            blend: measured(0.9 * side),
        }
    }

    fn suited_length_mm(work: &Work, bar: &Bar) -> f64 {
        0.9 * bar.stock.equal_square_mm() + (1.8 * work.size().mm()).max(25.0)
    }

    fn trade(work: &Work, way: Way) -> Option<Trade> {
        Some(plain_bit(way).unwrap_or(match (work, way) {
            (_, Way::Across) => Trade::not_for("its trough runs along the tongs, not across"),
            (Work::Square { .. }, _) => {
                Trade::suits("a trough of its own size holds square bar by three flats in each jaw")
            }
            (Work::Flat { .. }, _) => {
                Trade::not_for("is made for square bar: a box holds flat bar")
            }
            (Work::Round { .. }, _) => {
                Trade::risky("round bar turns in the trough, and under the hammer it can fly out")
            }
            (Work::Hexagon { .. } | Work::Octagon { .. }, _) => {
                Trade::not_for("is made for square bar: a V holds this better")
            }
        }))
    }

    fn form(&self, length: f64) -> Form {
        let trough = Trough {
            inside: self.inside.mm(),
            lip: self.trough.mm(),
            thick: self.wall.mm(),
            web: self.wall.mm(),
        };
        let root = (self.root_depth.mm(), self.root_width.mm());
        trough.form(root, (self.blend.mm(), length))
    }

    fn remarks(&self, _length: f64) -> Vec<Remark> {
        thin_lip(self.wall.mm()).into_iter().collect()
    }

    fn remarks_on(&self, work: &Work) -> Vec<Remark> {
        let (deep, least) = (self.trough.mm(), LEAST * work_section(work).1);
        if deep >= least - Remark::NEAR {
            return Vec::new();
        }
        vec![
            Remark::note(
                Kind::LipsLow,
                move |show| {
                    format!(
                        "has troughs {} deep, under {}: the bar can roll out of them",
                        show.text(deep),
                        show.text(least)
                    )
                },
                "make the trough deeper",
                COMMON_PRACTICE,
            )
            .held(deep, least),
        ]
    }
}
