use serde::{Deserialize, Serialize};

use super::{Form, Lay, Remark, Style, stout};
use crate::asked::range::{RUN, STEEL};
use crate::asked::{Bar, Work, fields};
use crate::finding::{COMMON_PRACTICE, Kind};
use crate::shape::section::Profile;
use crate::shape::sweep::{Ease, Station};
use crate::tongs::jaw::trade::plain_bit;
use crate::tongs::jaw::{Trade, Way};
use crate::units::Length;

/// A slim round taper, its inside level, to bend small bar around.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Scrolling {
    /// In the side view at the heel.
    pub root_depth: Length,
    /// Along the rivet at the heel.
    pub root_width: Length,
    /// Over this length the heel becomes round.
    pub blend: Length,
    /// Diameter where the round begins.
    pub root_diameter: Length,
    /// Diameter at the tip.
    pub tip_diameter: Length,
}

fields! { Scrolling: |Self { root_depth, root_width, blend, root_diameter, tip_diameter }, v| {
    v.heel(root_depth, root_width);
    v.value("blend", blend, RUN).says("Blend", "Length over which the heel becomes round");
    v.value("root_diameter", root_diameter, STEEL).says("Round", "Of the round where it begins");
    v.value("tip_diameter", tip_diameter, STEEL)
        .says("Tip diameter", "Of the round at its tip: the smallest scroll that can be begun");
}}

impl Style for Scrolling {
    const NAME: &'static str = "scrolling";
    const ABOUT: &'static str =
        "Small flat and round bar, held across slim round jaws and bent around them";

    fn suited(work: &Work, bar: &Bar) -> Self {
        let (side, unit) = (bar.stock.equal_square_mm(), bar.stock.size().unit());
        let of_bar = |ratio: f64| Length::measured(ratio * side, unit);
        // The bar is held halfway along the slim part.
        let slim = Self::suited_length_mm(work, bar) - BLEND * side;
        let root = stout::diameter_mm(bar, slim / 2.0).clamp(0.6 * side, 0.95 * side);
        Self {
            root_depth: stout::heel(bar, 0.62 * side, BLEND * side + slim / 2.0),
            root_width: of_bar(0.9),
            blend: of_bar(BLEND),
            root_diameter: Length::measured(root, unit),
            tip_diameter: of_bar(0.34),
        }
    }

    fn suited_length_mm(work: &Work, bar: &Bar) -> f64 {
        let side = bar.stock.equal_square_mm();
        let along = crate::shape::section::work_section(work).2;
        BLEND * side + (3.4 * side).max(1.6 * along)
    }

    fn trade(work: &Work, way: Way) -> Option<Trade> {
        /// Stouter bar bends the jaws before it bends itself, mm: about half an inch.
        const STOUT: f64 = 13.0;
        let stout = work.size().mm() > STOUT;
        Some(plain_bit(way).unwrap_or(match (work, way) {
            (_, Way::Across) if stout => {
                Trade::risky("the slim jaws give before stout bar does, and spring off it")
            }
            (Work::Flat { .. } | Work::Round { .. }, Way::Across) => {
                Trade::suits("slim round jaws take small bar across and bend it to a scroll")
            }
            (_, Way::Across) => Trade::will_do("bends small bar, though its corners mark the jaws"),
            (_, Way::EndOn | Way::Beside | Way::ByHead | Way::ByEye) => {
                Trade::not_for("its round jaws let bar that is held end on turn between them")
            }
        }))
    }

    fn form(&self, length: f64) -> Form {
        let blend = self.blend.mm().min(MOST_BLEND * length);
        let station = |at: f64, (depth, width): (f64, f64), profile: usize, ease: Ease| Station {
            at,
            depth,
            width,
            rise: depth / 2.0,
            shift: 0.0,
            profile,
            ease,
        };
        let (thick, thin) = (self.root_diameter.mm(), self.tip_diameter.mm());
        let heel = (self.root_depth.mm(), self.root_width.mm());
        let stations = vec![
            station(0.0, heel, 0, Ease::Smooth),
            station(blend, (thick, thick), 1, Ease::Linear),
            station(length, (thin, thin), 1, Ease::Linear),
        ];
        let profiles = vec![Profile::rectangle(), Profile::rounded(1.0, 1.0)];
        Form {
            lay: Lay::Crosswise {
                at: f64::midpoint(blend, length),
            },
            ..Form::straight(stations, profiles, blend)
        }
    }

    fn remarks(&self, length: f64) -> Vec<Remark> {
        let slim = length - self.blend.mm().min(MOST_BLEND * length);
        let most = SLIMMEST * self.tip_diameter.mm();
        if slim <= most + Remark::NEAR {
            return Vec::new();
        }
        vec![
            Remark::note(
                Kind::JawSlender,
                move |show| {
                    format!(
                        "is slim over {}, more than {}, sixteen times its tip: it bends \
                            before the bar does",
                        show.text(slim),
                        show.text(most)
                    )
                },
                "leave the tip thicker, or shorten the jaw",
                COMMON_PRACTICE,
            )
            .held(slim, most),
        ]
    }
}

/// Sides of the bar over which a starting heel becomes round.
const BLEND: f64 = 0.8;

/// The blend takes no more than this part of the jaw.
const MOST_BLEND: f64 = 0.5;
/// Tip diameters that a jaw may be long (common practice, no source).
const SLIMMEST: f64 = 16.0;
