use serde::{Deserialize, Serialize};

use super::{Course, Form, Lay, Remark, Style, stout};
use crate::asked::range::{DETAIL, STEEL};
use crate::asked::{Bar, Lie, Range, Work, fields};
use crate::finding::{COMMON_PRACTICE, Kind};
use crate::shape::section::Profile;
use crate::shape::sweep::{Ease, Station};
use crate::tongs::jaw::trade::{ROLLS, plain_bit};
use crate::tongs::jaw::{Trade, Way};
use crate::units::{Angle, Length};

/// A flat face for thick work, carried out from the boss on a riser: a gentle slope or, stood
/// steeply, a step.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct OpenMouth {
    /// In the side view, of the riser and of the face where it begins.
    pub root_depth: Length,
    /// Along the rivet at the heel.
    pub root_width: Length,
    /// In the side view at the tip.
    pub tip_depth: Length,
    /// Along the rivet at the tip.
    pub tip_width: Length,
    /// From the inside at the heel out to the face.
    pub riser: Length,
    /// Of the riser against the tongs' axis.
    pub slope: Angle,
}

/// How steep a riser may stand, degrees: flatter it never ends, steeper it cannot be bent sound.
const SLOPE: Range = Range::new(20.0, 80.0);

fields! { OpenMouth: |Self { root_depth, root_width, tip_depth, tip_width, riser, slope }, v| {
    v.value("root_depth", root_depth, STEEL)
        .says("Heel depth", "In the side view, of the riser and where the face begins");
    v.value("root_width", root_width, STEEL).says("Heel width", "In the top view at the heel");
    v.tip(tip_depth, tip_width);
    v.value("riser", riser, DETAIL).of_work()
        .says("Riser", "From the inside at the heel out to the face");
    v.value("slope", slope, SLOPE)
        .says("Riser slope", "Of the riser; 45 degrees is a slope, 75 a step");
}}

impl Style for OpenMouth {
    const NAME: &'static str = "open mouth";
    const ABOUT: &'static str =
        "Thick flat and square bar, on flat faces that a riser carries out from the boss";
    const LIE: Option<Lie> = Some(Lie::OnFlats);

    fn suited(work: &Work, bar: &Bar) -> Self {
        let (side, unit) = (bar.stock.equal_square_mm(), bar.stock.size().unit());
        let size = crate::shape::section::work_section(work).1;
        let mut it = Self {
            root_depth: Length::measured(0.6 * side, unit),
            root_width: Length::measured(1.1 * side, unit),
            tip_depth: Length::measured(0.45 * side, unit),
            tip_width: Length::measured(side, unit),
            // At the heel the halves stay about half the bar apart.
            riser: Length::measured((0.5 * size - 0.27 * side).max(0.0), unit),
            slope: Angle::degrees(45.0),
        };
        let reach = it.bend(f64::MAX).end + suited_grip_mm(work, side) / 2.0;
        let root = stout::root_mm(bar, reach).max(0.6 * side);
        it.root_depth = Length::measured(root, unit);
        it.root_width = stout::width_within(bar, 1.1 * side, it.root_depth.mm());
        it
    }

    fn suited_length_mm(work: &Work, bar: &Bar) -> f64 {
        let side = bar.stock.equal_square_mm();
        Self::suited(work, bar).bend(f64::MAX).end + suited_grip_mm(work, side)
    }

    fn trade(work: &Work, way: Way) -> Option<Trade> {
        /// Thinner flat work needs no riser, mm.
        const THIN: f64 = 8.0;
        Some(plain_bit(way).unwrap_or(match (work, way) {
            (Work::Round { .. }, _) => Trade::risky(ROLLS),
            (Work::Flat { thickness, .. }, Way::EndOn) if thickness.mm() > THIN => {
                Trade::suits("opens for thick bar and grips it along the whole face")
            }
            (Work::Flat { .. }, Way::EndOn) => {
                Trade::will_do("grips flat bar, though thin bar needs no riser")
            }
            (
                Work::Square { .. }
                | Work::Hexagon { .. }
                | Work::Octagon { .. }
                | Work::Flat { .. },
                _,
            ) => Trade::will_do(
                "bears on two flats, but nothing keeps the bar from shifting sideways",
            ),
        }))
    }

    fn form(&self, length: f64) -> Form {
        let bend = self.bend(MOST_RISER * length);
        let (course, along) = bend.course(length);
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
        let (root, wide) = (self.root_depth.mm(), self.root_width.mm());
        let mut stations = vec![station(0.0, root, wide)];
        if from > 0.0 {
            stations.push(station(from, root, wide));
        }
        stations.push(station(tip, self.tip_depth.mm(), self.tip_width.mm()));
        Form {
            course,
            stations,
            profiles: vec![Profile::rectangle()],
            grip: (from, tip),
            lay: Lay::Endwise { end: None },
        }
    }

    fn remarks(&self, length: f64) -> Vec<Remark> {
        let (asked, room) = (self.riser.mm(), self.bend(MOST_RISER * length).riser);
        if asked <= room + Remark::NEAR {
            return Vec::new();
        }
        vec![
            Remark::mend(
                Kind::JawShort,
                move |show| {
                    format!(
                        "has length for a riser of {} only, {} was asked",
                        show.text(room),
                        show.text(asked)
                    )
                },
                "lengthen the jaw, or stand the riser steeper",
                COMMON_PRACTICE,
            )
            .held(asked, room),
        ]
    }
}

/// The length of a starting face, mm (common practice, no source).
fn suited_grip_mm(work: &Work, side: f64) -> f64 {
    (2.1 * side).max(1.1 * work.size().mm())
}

/// The riser takes no more than this part of the jaw: the rest must grip.
const MOST_RISER: f64 = 0.6;

/// The inside from the heel to where the face begins.
#[derive(Debug, Clone, Copy)]
struct Bend {
    /// From the inside at the heel out to the face, mm.
    riser: f64,
    slope: f64,
    /// Radius of the inside where it turns into the face, mm.
    corner: f64,
    /// Where the face begins, mm past the heel.
    end: f64,
}

impl OpenMouth {
    /// The riser in no more than `room` mm of length.
    fn bend(&self, room: f64) -> Bend {
        let slope = self.slope.radians();
        let (asked, least) = (self.riser.mm(), (0.35 * self.root_depth.mm()).max(2.0));
        let bend = |riser: f64| {
            // The corner takes four fifths of a low riser at the most.
            let corner = least.min(0.8 * riser / (1.0 - slope.cos()));
            let straight = (riser - corner * (1.0 - slope.cos())) / slope.tan();
            Bend {
                riser,
                slope,
                corner,
                end: straight + corner * slope.sin(),
            }
        };
        let whole = bend(asked);
        if whole.end <= room {
            return whole;
        }
        // The corner takes its own length, whatever the rise: the rest goes in proportion.
        let turned = least * (slope.sin() - (1.0 - slope.cos()) / slope.tan());
        let low = bend(((room - turned) * slope.tan()).max(0.0));
        if low.end <= room { low } else { bend(0.0) }
    }
}

impl Bend {
    /// The line of the inside, and how far along it each of its corners is: where the face begins
    /// and the tip are the last two.
    fn course(&self, length: f64) -> (Course, Vec<f64>) {
        /// A lower riser is none, mm.
        const LEAST: f64 = 0.05;
        if self.riser < LEAST {
            return (Course::straight(length), vec![0.0, length]);
        }
        let top = self.corner * (1.0 - self.slope.cos());
        let turns = self.end - self.corner * self.slope.sin();
        Course::through(&[
            (0.0, -self.riser, self.slope),
            (turns, -top, self.slope),
            (self.end, 0.0, 0.0),
            (length, 0.0, 0.0),
        ])
    }
}
