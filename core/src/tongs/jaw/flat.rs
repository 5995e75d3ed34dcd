use serde::{Deserialize, Serialize};

use super::{Form, Remark, Style, stout};
use crate::asked::range::DETAIL;
use crate::asked::{Bar, Lie, Work, fields};
use crate::finding::{GEOMETRY, Kind};
use crate::shape::section::{Piece, Profile};
use crate::shape::sweep::{Ease, Station};
use crate::tongs::jaw::trade::{ROLLS, plain_bit};
use crate::tongs::jaw::{Trade, Way};
use crate::units::Length;

/// A flat face that tapers in depth and width from heel to tip, creased along its middle if
/// wanted. Set on thin work it closes; set on thick work the neck rises to it.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Flat {
    /// In the side view at the heel.
    pub root_depth: Length,
    /// Along the rivet at the heel.
    pub root_width: Length,
    /// In the side view at the tip.
    pub tip_depth: Length,
    /// Along the rivet at the tip.
    pub tip_width: Length,
    /// Depth of the crease down the middle of the face; none at zero.
    pub crease: Length,
}

fields! { Flat: |Self { root_depth, root_width, tip_depth, tip_width, crease }, v| {
    v.heel(root_depth, root_width);
    v.tip(tip_depth, tip_width);
    v.value("crease", crease, DETAIL)
        .says("Crease", "Depth of the groove down the face, 0 for none");
}}

impl Style for Flat {
    const NAME: &'static str = "flat";
    const ABOUT: &'static str =
        "Flat bar and sheet, gripped along the whole face; opened for thick work";
    const LIE: Option<Lie> = Some(Lie::OnFlats);

    fn suited(work: &Work, bar: &Bar) -> Self {
        let (side, unit) = (bar.stock.equal_square_mm(), bar.stock.size().unit());
        let root_depth = stout::heel(bar, 0.67 * side, Self::suited_length_mm(work, bar) / 2.0);
        let root_width = stout::width_within(bar, 1.17 * side, root_depth.mm());
        Self {
            root_depth,
            root_width,
            tip_depth: Length::measured(0.5 * side, unit),
            tip_width: Length::measured(side, unit),
            crease: Length::ZERO,
        }
    }

    fn suited_length_mm(_work: &Work, bar: &Bar) -> f64 {
        2.3 * bar.stock.equal_square_mm()
    }

    fn trade(work: &Work, way: Way) -> Option<Trade> {
        Some(plain_bit(way).unwrap_or(match (work, way) {
            (Work::Round { .. }, _) => Trade::risky(ROLLS),
            (Work::Flat { .. }, Way::EndOn) => Trade::suits("grips flat bar along its whole face"),
            (
                Work::Flat { .. }
                | Work::Square { .. }
                | Work::Hexagon { .. }
                | Work::Octagon { .. },
                _,
            ) => Trade::will_do(
                "bears on two flats, but nothing keeps the bar from shifting sideways",
            ),
        }))
    }

    fn form(&self, length: f64) -> Form {
        let station = |at: f64, depth: f64, width: f64, profile: usize| Station {
            at,
            depth,
            width,
            rise: depth / 2.0,
            shift: 0.0,
            profile,
            ease: Ease::Linear,
        };
        let (root, tip) = (self.root_depth.mm(), self.tip_depth.mm());
        let (wide, narrow) = (self.root_width.mm(), self.tip_width.mm());
        let crease = self.crease.mm().min(self.crease_room());
        let mut stations = vec![station(0.0, root, wide, 0), station(length, tip, narrow, 0)];
        let mut profiles = vec![Profile::rectangle()];
        if crease > 0.0 {
            // The crease runs in from the heel over its own depth.
            let t = (2.0 * crease / length).min(0.3);
            let mix = |a: f64, b: f64| a + (b - a) * t;
            stations[1].profile = 1;
            stations.insert(1, station(t * length, mix(root, tip), mix(wide, narrow), 1));
            profiles.push(creased(crease, tip, narrow));
        }
        Form::straight(stations, profiles, 0.0)
    }

    fn remarks(&self, _length: f64) -> Vec<Remark> {
        let (asked, room) = (self.crease.mm(), self.crease_room());
        if asked <= room + Remark::NEAR {
            return Vec::new();
        }
        vec![
            Remark::note(
                Kind::DetailOverRoom,
                move |show| {
                    format!(
                        "has room for a crease of {} only, {} was asked",
                        show.text(room),
                        show.text(asked)
                    )
                },
                "leave the tip thicker or wider, or ask for a smaller crease",
                GEOMETRY,
            )
            .held(asked, room),
        ]
    }
}

impl Flat {
    /// The deepest crease that leaves a jaw around it, mm: two fifths of the tip's depth, three
    /// tenths of its width (judgement).
    pub fn crease_room(&self) -> f64 {
        (0.4 * self.tip_depth.mm()).min(0.3 * self.tip_width.mm())
    }
}

/// A rectangle with a half-round groove of radius `crease` in its face, drawn at the tip's size.
fn creased(crease: f64, depth: f64, width: f64) -> Profile {
    let half = width / 2.0;
    let lower = [
        Piece::line((-half, 0.0), (-crease, 0.0)),
        Piece::arc(-crease, crease, (0.0, 0.0), crease),
        Piece::line((crease, 0.0), (half, 0.0)),
    ];
    Profile::boxed(&[Piece::line((-half, depth), (half, depth))], &lower).profile
}
