use serde::{Deserialize, Serialize};

use super::tapered::Tapered;
use super::v_bit::suited_groove;
use super::{Form, Lay, Remark, Style, stout};
use crate::asked::range::STEEL;
use crate::asked::{Bar, Follows, Lie, Range, Work, fields, simple_choice};
use crate::finding::{COMMON_PRACTICE, Kind};
use crate::shape::sweep::Ease;
use crate::tongs::jaw::trade::plain_bit;
use crate::tongs::jaw::{Trade, Way};
use crate::units::{Angle, Length};

/// The shape of a notch.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
pub enum NotchKind {
    /// Two walls.
    #[default]
    V,
    /// A level bottom between steep walls.
    Flat,
}

simple_choice!(NotchKind { V => "a V", Flat => "flat" });

/// A notch across the jaw.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Notch {
    /// Its shape.
    pub kind: NotchKind,
    /// The size of the work that it is filed for.
    pub size: Length,
}

/// Where a notched jaw holds the work of the design.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
pub enum NotchPlace {
    /// Across, in the notch next to the heel.
    #[default]
    First,
    /// Across, in the middle one.
    Second,
    /// Across, in the one next to the tip.
    Third,
    /// Endwise, on the flat tip.
    Tip,
}

simple_choice!(NotchPlace {
    First => "in the first notch",
    Second => "in the second notch",
    Third => "in the third notch",
    Tip => "on the flat tip",
});

/// Three notches along the jaw, the largest next to the heel, and a flat tip.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Notched {
    /// Where the work of the design lies.
    pub place: NotchPlace,
    /// Next to the heel.
    pub first: Notch,
    /// In the middle.
    pub second: Notch,
    /// Next to the tip.
    pub third: Notch,
    /// Included angle of the notches that are a V.
    pub angle: Angle,
    /// Flat left before, between and behind the notches.
    pub land: Length,
    /// In the side view at the heel.
    pub root_depth: Length,
    /// Along the rivet at the heel.
    pub root_width: Length,
    /// In the side view at the tip.
    pub tip_depth: Length,
    /// Along the rivet at the tip.
    pub tip_width: Length,
}

/// What the angle of a notch may be, degrees: in a sharper one work rides on the edges, since
/// [`APART`] leaves too little depth; a flatter one does not hold.
const ANGLE: Range = Range::new(75.0, 150.0);
/// The usual angle of a notch, degrees (common practice, no source).
const USUAL_ANGLE: f64 = 100.0;
/// Set on its work a notch leaves the faces so far apart, in sizes of the work (judgement).
const APART: f64 = 0.5;

fields! { Notched: |it, v| {
    let Self { place, first, second, third, angle, .. } = it;
    v.choice("place", place).says("Holds it", "Where the work of this design is held");
    v.within("first", Follows::Work, first);
    v.within("second", Follows::Work, second);
    v.within("third", Follows::Work, third);
    v.value("angle", angle, ANGLE).says("Angle", "Between the walls of a V");
    let Self { land, root_depth, root_width, tip_depth, tip_width, .. } = it;
    v.value("land", land, STEEL).says("Land", "Flat left before, between and behind the notches");
    v.heel(root_depth, root_width);
    v.tip(tip_depth, tip_width);
}}

fields! { Notch: |Self { kind, size }, v| {
    v.choice("kind", kind).says("Notch", "The shape of this notch");
    v.value("size", size, STEEL).says("For work of", "Of the work that this notch is filed for");
}}

impl Style for Notched {
    const NAME: &'static str = "notched";
    const ABOUT: &'static str =
        "Bar of many sizes, held across in V and flat notches, and thin flat on the tip";

    fn suited(work: &Work, bar: &Bar) -> Self {
        let (side, unit) = (bar.stock.equal_square_mm(), bar.stock.size().unit());
        let measured = |mm: f64| Length::measured(mm, unit);
        let (place, kind, size) = suited_notch(work, side);
        let other = match kind {
            NotchKind::V => NotchKind::Flat,
            NotchKind::Flat => NotchKind::V,
        };
        let notch = |kind: NotchKind, size: f64| Notch {
            kind,
            size: measured(size),
        };
        let mut it = Self {
            place,
            first: notch(kind, size),
            second: notch(other, 0.75 * size),
            third: notch(NotchKind::V, 0.5 * size),
            // Walls that lean as the work's own flats do bear it along a line, not by a corner.
            angle: Angle::degrees(suited_groove(work).1.max(USUAL_ANGLE)),
            land: measured((0.22 * side).max(3.0)),
            root_depth: measured(0.67 * side),
            root_width: measured(1.1 * side),
            tip_depth: measured(0.4 * side),
            tip_width: measured(0.9 * side),
        };
        let cuts = it.cuts();
        let deepest = cuts.iter().map(|cut| cut.deep).fold(0.0, f64::max);
        it.root_depth = measured((0.67 * side).max(deepest + 0.4 * side));
        it.tip_depth = measured((0.4 * side).max(cuts[2].deep + 0.3 * side));
        it.deepen(bar);
        let (root, tip) = (it.root_depth.mm(), it.tip_depth.mm());
        it.root_width = stout::width_within(bar, 1.1 * side, root);
        it.tip_width = stout::width_within(bar, 0.9 * side, tip);
        it
    }

    fn suited_length_mm(work: &Work, bar: &Bar) -> f64 {
        let (it, side) = (Self::suited(work, bar), bar.stock.equal_square_mm());
        let tip = match it.place {
            NotchPlace::Tip => (1.2 * side).max(work.size().mm()),
            NotchPlace::First | NotchPlace::Second | NotchPlace::Third => 0.7 * side,
        };
        it.with_tip_mm(tip)
    }

    fn trade(work: &Work, way: Way) -> Option<Trade> {
        /// Thicker bar wants a longer face than the tip, mm.
        const THIN: f64 = 10.0;
        Some(plain_bit(way).unwrap_or(match (work, way) {
            (Work::Flat { thickness, .. }, Way::EndOn) if thickness.mm() <= THIN => {
                Trade::will_do("the flat tip holds thin bar, though it is short")
            }
            (Work::Flat { .. }, Way::EndOn | Way::Beside | Way::ByHead | Way::ByEye) => {
                Trade::not_for("its flat tip is for thin bar: a flat jaw holds thick bar better")
            }
            (Work::Flat { .. }, Way::Across) => {
                Trade::not_for("flat bar bridges the notches: it goes on the flat tip end on")
            }
            (_, Way::Across) => Trade::suits("a notch of its own size keeps the bar from rolling"),
            (
                Work::Round { .. }
                | Work::Square { .. }
                | Work::Hexagon { .. }
                | Work::Octagon { .. },
                _,
            ) => Trade::risky(
                "its notches run across: bar held end on bears on their edges and turns",
            ),
        }))
    }

    fn form(&self, length: f64) -> Form {
        let plan = self.plan(length);
        let taper = plan.taper;
        let mut stations = vec![taper.station(0.0, 0.0, Ease::Linear)];
        for (at, cut) in &plan.notches {
            let floor = cut.floor / 2.0;
            let lip = cut.mouth / 2.0;
            let mut add = |x: f64, sunk: f64| {
                stations.push(taper.station(x, sunk, Ease::Linear));
            };
            add(at - lip, 0.0);
            add(at - floor, cut.deep);
            if floor > 0.0 {
                add(at + floor, cut.deep);
            }
            add(at + lip, 0.0);
        }
        stations.push(taper.station(length, 0.0, Ease::Linear));
        let crosswise = |index: usize| Lay::Crosswise {
            at: plan.notches[index].0,
        };
        let (from, lay) = match self.place {
            NotchPlace::First => (0.0, crosswise(0)),
            NotchPlace::Second => (0.0, crosswise(1)),
            NotchPlace::Third => (0.0, crosswise(2)),
            NotchPlace::Tip => (plan.tip_from, Lay::Endwise { end: None }),
        };
        Form {
            lay,
            ..Form::straight(stations, Tapered::profiles(), from)
        }
    }

    fn remarks(&self, length: f64) -> Vec<Remark> {
        let mut remarks = Vec::new();
        let (asked, room) = (self.notched_mm(), MOST_NOTCHED * length);
        if asked > room + Remark::NEAR {
            remarks.push(
                Remark::mend(
                    Kind::JawShort,
                    move |show| {
                        format!(
                            "has length for {} of notches only, {} was asked: they are drawn \
                                smaller",
                            show.text(room),
                            show.text(asked)
                        )
                    },
                    "lengthen the jaw, or file smaller notches",
                    COMMON_PRACTICE,
                )
                .held(asked, room),
            );
        }
        let taper = self.taper(length);
        let plan = self.plan(length);
        for ((at, drawn), asked) in plan.notches.iter().zip(self.cuts()) {
            let room = notch_room(taper, *at, asked.mouth);
            if drawn.deep < asked.deep - Remark::NEAR && asked.deep > room {
                remarks.push(
                    Remark::mend(
                        Kind::DetailOverRoom,
                        move |show| {
                            format!(
                                "has steel for a notch {} deep only, {} is needed",
                                show.text(room),
                                show.text(asked.deep)
                            )
                        },
                        "leave the jaw deeper, or file the notch for smaller work",
                        COMMON_PRACTICE,
                    )
                    .held(asked.deep, room),
                );
            }
        }
        remarks
    }
}

/// Notches take no more than this part of the jaw's length.
const MOST_NOTCHED: f64 = 0.9;
/// A notch leaves two fifths of the depth behind it.
const MOST_DEEP: f64 = 0.6;
/// The starting jaw keeps a little off it.
const SUITED_NOTCHED: f64 = 0.87;

/// How deep a notch may be about a place, mm: the thinner end counts.
fn notch_room(taper: Tapered, at: f64, mouth: f64) -> f64 {
    let end = |side: f64| taper.depth(at + side * mouth / 2.0);
    MOST_DEEP * end(-1.0).min(end(1.0))
}

/// Where some work lies, and the first notch: flat work has the tip, and the bar gives the notch.
fn suited_notch(work: &Work, side: f64) -> (NotchPlace, NotchKind, f64) {
    let size = work.size().mm();
    match work {
        Work::Flat { .. } => (NotchPlace::Tip, NotchKind::V, side),
        Work::Round { .. } => (NotchPlace::First, NotchKind::V, size),
        Work::Square { lie, .. } | Work::Hexagon { lie, .. } | Work::Octagon { lie, .. } => {
            match lie {
                Lie::OnFlats => (NotchPlace::First, NotchKind::Flat, size),
                Lie::OnCorners => {
                    let between = crate::shape::section::work_section(work).1;
                    (NotchPlace::First, NotchKind::V, between)
                }
            }
        }
    }
}

/// A notch as it is cut, mm: its depth, and its length at the face and at the bottom.
#[derive(Debug, Clone, Copy)]
struct Cut {
    deep: f64,
    mouth: f64,
    floor: f64,
}

impl Cut {
    /// The same no deeper than `room` mm and `scale` times as long.
    fn within(self, room: f64, scale: f64) -> Self {
        let small = scale * (room / (scale * self.deep)).min(1.0);
        Self {
            deep: small * self.deep,
            mouth: small * self.mouth,
            floor: small * self.floor,
        }
    }
}

/// A jaw with its notches in place.
struct Plan {
    taper: Tapered,
    /// The middle of each, mm past the heel, and what is cut there.
    notches: [(f64, Cut); 3],
    tip_from: f64,
}

impl Notched {
    /// The length of notches and a tip, mm.
    fn with_tip_mm(&self, tip: f64) -> f64 {
        let notched = self.notched_mm();
        (notched + tip).max(notched / SUITED_NOTCHED)
    }

    /// Leaves the jaw so deep that every notch has its steel, as far as the bar is.
    fn deepen(&mut self, bar: &Bar) {
        let side = bar.stock.equal_square_mm();
        let length = self.with_tip_mm(0.7 * side);
        let more = |size: Length| stout::at_least(bar, size.mm() + 0.1);
        while self.root_depth.mm() < 2.0 * side {
            let (taper, plan) = (self.taper(length), self.plan(length));
            let rooms = plan.notches.iter().zip(self.cuts());
            let lacks = rooms
                .map(|((at, _), cut)| {
                    let left = taper.depth(*at) - cut.deep;
                    notch_room(taper, *at, cut.mouth) < cut.deep
                        || left < self.least_left_mm(bar, length - *at)
                })
                .collect::<Vec<_>>();
            match lacks[..] {
                [.., true] => self.tip_depth = more(self.tip_depth),
                [first, second, _] if first || second => self.root_depth = more(self.root_depth),
                _ => return,
            }
            // A back that rises to the tip would be odd.
            self.root_depth = if self.root_depth.mm() < self.tip_depth.mm() {
                self.tip_depth
            } else {
                self.root_depth
            };
        }
    }

    /// What must be left over a notch so far before the tip, mm: where the tip holds the work, each
    /// notch bears all of the squeeze.
    fn least_left_mm(&self, bar: &Bar, reach: f64) -> f64 {
        match self.place {
            NotchPlace::Tip => stout::depth_mm(bar, reach, self.root_width.mm()),
            NotchPlace::First | NotchPlace::Second | NotchPlace::Third => 0.0,
        }
    }

    /// The notches as asked.
    ///
    /// A round of diameter d stands d / (2 sin(θ/2)) from the bottom of a V of angle θ: less half
    /// of what the faces shall stand apart, that is the V's depth.
    fn cuts(&self) -> [Cut; 3] {
        let half = self.angle.radians() / 2.0;
        [self.first, self.second, self.third].map(|notch| {
            let size = notch.size.mm();
            match notch.kind {
                NotchKind::V => {
                    let deep = size * (0.5 / half.sin() - APART / 2.0);
                    Cut {
                        deep,
                        mouth: 2.0 * deep * half.tan(),
                        floor: 0.0,
                    }
                }
                NotchKind::Flat => {
                    let (deep, floor) = (size * (0.5 - APART / 2.0), 1.1 * size);
                    Cut {
                        deep,
                        mouth: floor + 0.5 * deep,
                        floor,
                    }
                }
            }
        })
    }

    /// Notches and lands together, mm.
    fn notched_mm(&self) -> f64 {
        let mouths: f64 = self.cuts().iter().map(|cut| cut.mouth).sum();
        mouths + 3.0 * self.land.mm()
    }

    fn taper(&self, length: f64) -> Tapered {
        Tapered {
            root: (self.root_depth.mm(), self.root_width.mm()),
            tip: (self.tip_depth.mm(), self.tip_width.mm()),
            length,
        }
    }

    /// Where the notches are cut: all smaller where the jaw is too short, each shallower where it
    /// is too thin.
    fn plan(&self, length: f64) -> Plan {
        let scale = (MOST_NOTCHED * length / self.notched_mm()).min(1.0);
        let taper = self.taper(length);
        let land = scale * self.land.mm();
        let mut x = land;
        let notches = self.cuts().map(|cut| {
            let at = x + scale * cut.mouth / 2.0;
            x += scale * cut.mouth + land;
            (
                at,
                cut.within(notch_room(taper, at, scale * cut.mouth), scale),
            )
        });
        Plan {
            taper,
            notches,
            tip_from: x - land,
        }
    }
}
