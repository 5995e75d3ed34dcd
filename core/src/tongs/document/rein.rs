use serde::{Deserialize, Serialize};

use crate::asked::{Choice, Follows, PlainSection, Range, Visitor};
use crate::units::{Angle, Length, Unit};

/// The line that the rein follows in the side view.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub enum ReinLine {
    /// Straight from the shoulder to the hand.
    Straight,
    /// Bent just behind the boss, then parallel to the other rein.
    Parallel {
        /// How far along the tongs the bend takes.
        bend: Length,
    },
    /// Swelling outwards and back, parallel at the hand.
    Bowed {
        /// How far the swell stands outside the hand's own line.
        bow: Length,
    },
}

/// A shaped grip at the hand.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct HandZone {
    /// Its section.
    pub section: PlainSection,
    /// Its length, centred on the hand.
    pub length: Length,
}

/// The end of the rein.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub enum ReinEnd {
    /// Cut square.
    Square,
    /// Rounded over.
    Rounded,
    /// Upset to a ball that stops a clip.
    Ball {
        /// Diameter.
        diameter: Length,
    },
    /// Bent outwards, to keep a clip or a ring from slipping off.
    ClipBend {
        /// How far it is bent.
        angle: Angle,
        /// Its straight part behind the bend.
        length: Length,
    },
    /// Rolled outwards, three quarters round.
    Curl {
        /// Inside radius.
        radius: Length,
    },
}

/// The lever held in the hand.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Rein {
    /// Along its middle line, from the end of the shoulder to the end of the rein; a clip bend or
    /// a curl begins there and comes on top.
    pub length: Length,
    /// Its line in the side view.
    pub line: ReinLine,
    /// Section at the shoulder.
    pub start: PlainSection,
    /// Section at the end.
    pub end: PlainSection,
    /// How much of the end is parallel.
    pub parallel: Length,
    /// From the end of the rein to the middle of the hand.
    pub hand: Length,
    /// Between the reins at the hand, when the pair is set on its work.
    pub gap: Length,
    /// A shaped grip, if there is one.
    #[serde(default)]
    pub hand_zone: Option<HandZone>,
    /// How the end is finished.
    pub finish: ReinEnd,
}

impl Rein {
    pub(super) fn fields(&mut self, v: &mut Visitor<'_>) {
        let along = (Range::REIN, Follows::Nothing);
        v.length(
            "length",
            "Length",
            "Along its middle, from the shoulder to the end; a bent end comes on top",
            along,
            &mut self.length,
        );
        v.choice("line", "Line", "Its line in the side view", &mut self.line);
        let span = (Range::SPAN, Follows::Nothing);
        match &mut self.line {
            ReinLine::Straight => {}
            ReinLine::Parallel { bend } => {
                let run = (Range::RUN, Follows::Nothing);
                v.length(
                    "bend",
                    "Bend",
                    "How far along the tongs the bend takes",
                    run,
                    bend,
                );
            }
            ReinLine::Bowed { bow } => {
                v.length(
                    "bow",
                    "Bow",
                    "How far it swells outside the hand's line",
                    span,
                    bow,
                );
            }
        }
        v.length(
            "gap",
            "Hand gap",
            "Between the reins at the hand, set on the work",
            span,
            &mut self.gap,
        );
        v.length(
            "hand",
            "Hand",
            "From the rein's end to the middle of the hand",
            (Range::RUN, Follows::Nothing),
            &mut self.hand,
        );
        v.within("start", |v| self.start.fields(v, Follows::Bar));
        v.within("end", |v| self.end.fields(v, Follows::Nothing));
        let run = (Range::new(0.0, 1000.0), Follows::Nothing);
        v.length(
            "parallel",
            "Parallel end",
            "How much of the end does not taper",
            run,
            &mut self.parallel,
        );
        v.choice(
            "hand_zone",
            "Grip",
            "A shaped grip at the hand, or none",
            &mut GripChoice {
                end: self.end,
                zone: &mut self.hand_zone,
            },
        );
        if let Some(zone) = &mut self.hand_zone {
            v.within("hand_zone", |v| {
                zone.section.fields(v, Follows::Nothing);
                v.length(
                    "length",
                    "Grip length",
                    "Along the rein",
                    (Range::RUN, Follows::Nothing),
                    &mut zone.length,
                );
            });
        }
        v.choice(
            "finish",
            "Rein end",
            "How the end is finished",
            &mut self.finish,
        );
        self.finish.fields(v);
    }
}

impl ReinEnd {
    fn fields(&mut self, v: &mut Visitor<'_>) {
        let steel = (Range::STEEL, Follows::Nothing);
        match self {
            Self::Square | Self::Rounded => {}
            Self::Ball { diameter } => v.length("ball", "Ball", "Its diameter", steel, diameter),
            Self::ClipBend { angle, length } => {
                let bent = "How far the end is bent outwards";
                v.angle("clip_angle", "Clip bend", bent, Range::CLIP, angle);
                let run = (Range::RUN, Follows::Nothing);
                v.length(
                    "clip_length",
                    "Clip end",
                    "Straight, behind its bend",
                    run,
                    length,
                );
            }
            Self::Curl { radius } => {
                let rolled = "Inside radius of the end that is rolled outwards";
                let how = (Range::CURL, Follows::Nothing);
                v.length("curl", "Curl", rolled, how, radius);
            }
        }
    }
}

impl Choice for ReinLine {
    fn names(&self) -> Vec<&'static str> {
        vec!["straight", "parallel", "bowed"]
    }

    fn chosen(&self) -> usize {
        match self {
            Self::Straight => 0,
            Self::Parallel { .. } => 1,
            Self::Bowed { .. } => 2,
        }
    }

    fn choose(&mut self, index: usize) {
        if index == self.chosen() {
            return;
        }
        *self = match index {
            0 => Self::Straight,
            1 => Self::Parallel {
                bend: Length::fraction(3, 1, Unit::Inch),
            },
            2 => Self::Bowed {
                bow: Length::fraction(3, 8, Unit::Inch),
            },
            _ => *self,
        };
    }
}

impl Choice for ReinEnd {
    fn names(&self) -> Vec<&'static str> {
        vec!["cut square", "rounded", "ball", "clip bend", "curl"]
    }

    fn chosen(&self) -> usize {
        match self {
            Self::Square => 0,
            Self::Rounded => 1,
            Self::Ball { .. } => 2,
            Self::ClipBend { .. } => 3,
            Self::Curl { .. } => 4,
        }
    }

    fn choose(&mut self, index: usize) {
        if index == self.chosen() {
            return;
        }
        *self = match index {
            0 => Self::Square,
            1 => Self::Rounded,
            2 => Self::Ball {
                diameter: Length::fraction(5, 8, Unit::Inch),
            },
            3 => Self::ClipBend {
                angle: Angle::degrees(35.0),
                length: Length::fraction(3, 4, Unit::Inch),
            },
            4 => Self::Curl {
                radius: Length::fraction(3, 8, Unit::Inch),
            },
            _ => *self,
        };
    }
}

/// The choice between a grip of its own section and none.
struct GripChoice<'a> {
    end: PlainSection,
    zone: &'a mut Option<HandZone>,
}

impl Choice for GripChoice<'_> {
    fn names(&self) -> Vec<&'static str> {
        vec!["as the end", "own section"]
    }

    fn chosen(&self) -> usize {
        usize::from(self.zone.is_some())
    }

    fn choose(&mut self, index: usize) {
        let own = HandZone {
            section: self.end,
            length: Length::fraction(4, 1, Unit::Inch),
        };
        *self.zone = match index {
            0 => None,
            _ => Some(self.zone.unwrap_or(own)),
        };
    }
}
