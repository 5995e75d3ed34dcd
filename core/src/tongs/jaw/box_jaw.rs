use serde::{Deserialize, Serialize};

use super::trough::{Trough, play};
use super::{Form, Remark, Style, stout};
use crate::asked::range::{RUN, STEEL};
use crate::asked::{Bar, Lie, Work, fields};
use crate::finding::{COMMON_PRACTICE, Kind};
use crate::shape::section::work_section;
use crate::tongs::jaw::trade::{ROLLS, plain_bit};
use crate::tongs::jaw::{Trade, Way};
use crate::units::{Length, Unit};

/// A flat jaw with a lip down each side, so that flat bar cannot turn or slide out sideways. The
/// other jaw may be the same, or plain.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct BoxJaw {
    /// Between the lips.
    pub inside: Length,
    /// From the face to the end of a lip.
    pub lip: Length,
    /// Thickness of a lip.
    pub lip_thickness: Length,
    /// Thickness of the jaw behind the face.
    pub web: Length,
    /// In the side view at the heel, before the lips begin.
    pub root_depth: Length,
    /// Along the rivet at the heel.
    pub root_width: Length,
    /// Over this length the lips rise from the heel.
    pub blend: Length,
}

/// A lip, of the thickness of the work: on both jaws they must not meet (common practice, no
/// source).
const LIP: f64 = 0.4;
/// Parts of the bar that a web is at the least (common practice, no source).
const LEAST_WEB: f64 = 0.22;
/// The height of a lip on work of some thickness, mm, in a smith's sizes unless the lips of both
/// jaws would nearly meet in them.
fn suited_lip_mm(thick: f64, unit: Unit) -> f64 {
    const NEARLY: f64 = 0.45;
    let lip = LIP * thick;
    let rounded = Length::measured(lip, unit).mm();
    if rounded <= NEARLY * thick {
        rounded
    } else {
        lip
    }
}

/// A lip lower than this part of the work lets it climb out (common practice, no source).
const LEAST_LIP: f64 = 0.25;

fields! { BoxJaw: |Self { inside, lip, lip_thickness, web, root_depth, root_width, blend }, v| {
    v.value("inside", inside, STEEL).of_work()
        .says("Inside width", "Between the lips: the work's width and a little play");
    v.value("lip", lip, STEEL).of_work().says("Lip height", "From the face to the end of a lip");
    v.value("lip_thickness", lip_thickness, STEEL).says("Lip thickness", "Thickness of a lip");
    v.value("web", web, STEEL).says("Web", "Thickness of the jaw behind the face");
    v.heel(root_depth, root_width);
    v.value("blend", blend, RUN).says("Blend", "Length over which the lips rise from the heel");
}}

impl Style for BoxJaw {
    const NAME: &'static str = "box";
    const ABOUT: &'static str = "Flat bar of one size, kept from turning by a lip down each side; the other jaw may be plain";
    const LIE: Option<Lie> = Some(Lie::OnFlats);

    fn suited(work: &Work, bar: &Bar) -> Self {
        let (side, unit) = (bar.stock.equal_square_mm(), bar.stock.size().unit());
        let measured = |mm: f64| Length::measured(mm, unit);
        let (_, thick, wide) = work_section(work);
        let inside = wide + play(wide);
        let (lip, lip_thickness) = (suited_lip_mm(thick, unit), (0.3 * side).clamp(3.0, 6.4));
        // What the lips leave of the bar is the web, on wide work a thin one.
        let left = bar.stock.area_mm2() - 2.0 * lip * lip_thickness;
        let web = left / (inside + 2.0 * lip_thickness);
        let root_depth = stout::heel(bar, 0.62 * side, 0.6 * Self::suited_length_mm(work, bar));
        let root_width = stout::width_within(bar, 1.1 * side, root_depth.mm());
        Self {
            inside: measured(inside),
            lip: Length::from_mm(lip, unit),
            lip_thickness: measured(lip_thickness),
            web: stout::at_most(bar, web.clamp(LEAST_WEB * side, 0.42 * side)),
            root_depth,
            root_width,
            blend: measured(0.9 * side),
        }
    }

    fn suited_length_mm(work: &Work, bar: &Bar) -> f64 {
        0.9 * bar.stock.equal_square_mm() + (1.6 * work.size().mm()).max(28.0)
    }

    fn trade(work: &Work, way: Way) -> Option<Trade> {
        Some(plain_bit(way).unwrap_or(match (work, way) {
            (_, Way::Across) => Trade::not_for("its lips leave no room for work across the jaws"),
            (Work::Round { .. }, _) => Trade::risky(ROLLS),
            (Work::Flat { .. }, _) => {
                Trade::suits("its lips keep flat bar from turning and from sliding out sideways")
            }
            (Work::Square { .. } | Work::Hexagon { .. } | Work::Octagon { .. }, _) => {
                Trade::will_do("its lips keep the bar from sliding out sideways")
            }
        }))
    }

    fn form(&self, length: f64) -> Form {
        let trough = Trough {
            inside: self.inside.mm(),
            lip: self.lip.mm(),
            thick: self.lip_thickness.mm(),
            web: self.web.mm(),
        };
        let root = (self.root_depth.mm(), self.root_width.mm());
        trough.form(root, (self.blend.mm(), length))
    }

    fn remarks(&self, _length: f64) -> Vec<Remark> {
        thin_lip(self.lip_thickness.mm()).into_iter().collect()
    }

    fn remarks_on(&self, work: &Work) -> Vec<Remark> {
        let (_, thick, wide) = work_section(work);
        let (inside, lip) = (self.inside.mm(), self.lip.mm());
        let least = LEAST_LIP * thick;
        let loose = wide + 2.0 * play(wide) + 0.5;
        [
            (lip < least - Remark::NEAR).then(|| {
                Remark::note(
                    Kind::LipsLow,
                    move |show| {
                        format!(
                            "has lips {} high, under a quarter of the work, {}: it can climb \
                                over them",
                            show.text(lip),
                            show.text(least)
                        )
                    },
                    "make the lips higher",
                    COMMON_PRACTICE,
                )
                .held(lip, least)
            }),
            (inside > loose).then(|| {
                Remark::note(
                    Kind::WorkLoose,
                    move |show| {
                        format!(
                            "is {} wide between its lips, over {}: the work can turn",
                            show.text(inside),
                            show.text(loose)
                        )
                    },
                    "make the inside width the work's width and a little play",
                    COMMON_PRACTICE,
                )
                .held(inside, loose)
            }),
        ]
        .into_iter()
        .flatten()
        .collect()
    }
}

/// A lip that will bend outwards when it is hot.
pub(super) fn thin_lip(thick: f64) -> Option<Remark> {
    /// Three sixteenths of an inch is usual; half of that is still a lip.
    const LEAST: f64 = 2.4;
    (thick < LEAST).then(|| {
        Remark::note(
            Kind::LipsThin,
            move |show| {
                format!(
                    "has lips {} thick, under {}: they spread when hot",
                    show.text(thick),
                    show.text(LEAST)
                )
            },
            "make the lips thicker",
            COMMON_PRACTICE,
        )
        .held(thick, LEAST)
    })
}
