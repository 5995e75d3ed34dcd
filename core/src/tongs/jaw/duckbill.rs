use serde::{Deserialize, Serialize};

use super::tapered::Tapered;
use super::{Form, Remark, Style, stout};
use crate::asked::range::{DETAIL, RUN, STEEL};
use crate::asked::{Bar, Lie, Work, fields};
use crate::finding::{COMMON_PRACTICE, GEOMETRY, Kind};
use crate::shape::section::{Profile, lerp};
use crate::shape::sweep::{Ease, Station};
use crate::tongs::jaw::trade::{ROLLS, plain_bit};
use crate::tongs::jaw::{Trade, Way};
use crate::units::Length;

/// A wide, thin bill that flares from a stout heel, its corners rounded.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Duckbill {
    /// In the side view at the heel.
    pub root_depth: Length,
    /// Along the rivet at the heel.
    pub root_width: Length,
    /// Over this length the heel thins to the bill.
    pub blend: Length,
    /// Thickness of the bill where it begins.
    pub bill_depth: Length,
    /// Thickness of the bill at its tip.
    pub tip_depth: Length,
    /// Along the rivet at the tip, its widest.
    pub tip_width: Length,
    /// Radius of its corners in the top view.
    pub corner: Length,
}

fields! { Duckbill: |it, v| {
    let Self { root_depth, root_width, blend, bill_depth, tip_depth, tip_width, corner } = it;
    v.heel(root_depth, root_width);
    v.value("blend", blend, RUN).says("Blend", "Length over which the heel thins to the bill");
    v.value("bill_depth", bill_depth, STEEL)
        .says("Bill depth", "In the side view where the bill begins");
    v.value("tip_depth", tip_depth, STEEL).says("Tip depth", "In the side view at the tip");
    v.value("tip_width", tip_width, STEEL).of_work()
        .says("Tip width", "In the top view at the tip, its widest");
    v.value("corner", corner, DETAIL).of_work()
        .says("Corner radius", "Of its corners in the top view, 0 for square ones");
}}

impl Style for Duckbill {
    const NAME: &'static str = "duckbill";
    const ABOUT: &'static str = "Sheet and wide flat bar, between wide thin bills";
    const LIE: Option<Lie> = Some(Lie::OnFlats);

    fn suited(work: &Work, bar: &Bar) -> Self {
        let (side, unit) = (bar.stock.equal_square_mm(), bar.stock.size().unit());
        let measured = |mm: f64| Length::measured(mm, unit);
        let across = crate::shape::section::work_section(work).2;
        let tip_width = (0.7 * across).clamp(2.0 * side, 2.5 * side);
        let root_depth = stout::heel(bar, 0.62 * side, 0.6 * Self::suited_length_mm(work, bar));
        let root_width = stout::width_within(bar, 1.1 * side, root_depth.mm());
        Self {
            root_depth,
            root_width,
            blend: measured(1.1 * side),
            bill_depth: measured(0.4 * side),
            tip_depth: measured(0.28 * side),
            tip_width: measured(tip_width),
            corner: measured(0.22 * tip_width),
        }
    }

    fn suited_length_mm(work: &Work, bar: &Bar) -> f64 {
        let side = bar.stock.equal_square_mm();
        1.1 * side + (2.1 * side).max(1.1 * work.size().mm())
    }

    fn trade(work: &Work, way: Way) -> Option<Trade> {
        /// Thicker bar is too heavy for thin bills, mm.
        const THICK: f64 = 10.0;
        Some(plain_bit(way).unwrap_or(match (work, way) {
            (Work::Round { .. }, _) => Trade::risky(ROLLS),
            (Work::Flat { thickness, .. }, _) if thickness.mm() <= THICK => {
                Trade::suits("spreads over sheet and wide flat, so that it neither tips nor marks")
            }
            (Work::Flat { .. }, _) => {
                Trade::will_do("spreads over wide bar, but thin bills spring under heavy work")
            }
            (Work::Square { .. } | Work::Hexagon { .. } | Work::Octagon { .. }, _) => {
                Trade::will_do("bears on two flats, but most of the wide bill is idle")
            }
        }))
    }

    fn form(&self, length: f64) -> Form {
        let blend = self.blend.mm().min(MOST_BLEND * length);
        let root = (self.root_depth.mm(), self.root_width.mm());
        let tip = (self.tip_depth.mm(), self.tip_width.mm());
        let begins = (self.bill_depth.mm(), lerp(root.1, tip.1, FLARED));
        // The bill as a taper from where it begins, counted from there.
        let bill = Tapered {
            root: begins,
            tip,
            length: length - blend,
        };
        let placed = |x: f64, station: Station| Station {
            at: blend + x,
            ..station
        };
        let heel = Tapered {
            root,
            tip: begins,
            length: blend,
        };
        let mut stations = vec![heel.station(0.0, 0.0, Ease::Smooth)];
        let corner = self.corner.mm().min(self.corner_room(length));
        stations.push(placed(0.0, bill.station(0.0, 0.0, Ease::Linear)));
        for (along, narrower) in CORNER.into_iter().filter(|_| corner > 0.0) {
            let x = bill.length - corner * (1.0 - along);
            let mut station = placed(x, bill.station(x, 0.0, Ease::Linear));
            // A bill that flares steeply is narrow where its corner begins.
            let narrow = station.width - 2.0 * corner * narrower;
            station.width = narrow.max(LEAST_LEFT * station.width);
            stations.push(station);
        }
        if corner <= 0.0 {
            stations.push(placed(
                bill.length,
                bill.station(bill.length, 0.0, Ease::Linear),
            ));
        }
        Form::straight(stations, vec![Profile::rectangle()], blend)
    }

    fn remarks(&self, length: f64) -> Vec<Remark> {
        let mut remarks = Vec::new();
        let (asked, room) = (self.corner.mm(), self.corner_room(length));
        if asked > room + Remark::NEAR {
            remarks.push(
                Remark::note(
                    Kind::DetailOverRoom,
                    move |show| {
                        format!(
                            "has room for corners of {} only, {} was asked",
                            show.text(room),
                            show.text(asked)
                        )
                    },
                    "widen the tip, lengthen the jaw, or ask for smaller corners",
                    GEOMETRY,
                )
                .held(asked, room),
            );
        }
        let (wide, most) = (self.tip_width.mm(), THINNEST * self.tip_depth.mm());
        if wide > most + Remark::NEAR {
            remarks.push(
                Remark::note(
                    Kind::JawSlender,
                    move |show| {
                        format!(
                            "is {} wide at the tip, over {}, twelve times its depth: hot it \
                                curls at the corners",
                            show.text(wide),
                            show.text(most)
                        )
                    },
                    "leave the tip deeper, or narrower",
                    COMMON_PRACTICE,
                )
                .held(wide, most),
            );
        }
        remarks
    }
}

/// The blend takes no more than this part of the jaw.
const MOST_BLEND: f64 = 0.6;
/// So much of the flare is done where the bill begins.
const FLARED: f64 = 0.3;
/// A corner leaves so much of the width at the least.
const LEAST_LEFT: f64 = 0.4;
/// Times its depth that a tip may be wide (common practice, no source).
const THINNEST: f64 = 12.0;

/// A rounded corner in straight cuts as the hammer leaves it: how far along it, and by how much
/// the side has come in, both in radii. It ends short of the full quarter, so that the tip keeps
/// an edge that can be broken.
const CORNER: [(f64, f64); 4] = [(0.0, 0.0), (0.4, 0.083), (0.72, 0.306), (1.0, 0.75)];

impl Duckbill {
    /// The largest corner that leaves two fifths of the tip's width and half of the bill, mm.
    fn corner_room(&self, length: f64) -> f64 {
        let bill = length - self.blend.mm().min(MOST_BLEND * length);
        (0.4 * self.tip_width.mm()).min(0.5 * bill)
    }
}
