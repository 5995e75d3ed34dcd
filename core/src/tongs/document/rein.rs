use serde::{Deserialize, Serialize};

use crate::asked::range::{CLIP, CURL, REIN, RUN, SPAN, STEEL, STRETCH};
use crate::asked::{Choice, ChoiceBeside, Follows, PlainSection, fields};
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

fields! { Rein: |Self { length, line, start, end, parallel, hand, gap, hand_zone, finish }, v| {
    v.value("length", length, REIN)
        .says("Length", "Along its middle, from the shoulder to the end; a bent end comes on top");
    v.choice("line", line).says("Line", "Its line in the side view");
    v.all(line);
    v.value("gap", gap, SPAN).says("Hand gap", "Between the reins at the hand, set on the work");
    v.value("hand", hand, RUN).says("Hand", "From the rein's end to the middle of the hand");
    v.within("start", Follows::Bar, start);
    v.within("end", Follows::Nothing, end);
    v.value("parallel", parallel, STRETCH)
        .says("Parallel end", "How much of the end does not taper");
    v.choice_beside("hand_zone", hand_zone, end).says("Grip", "A shaped grip at the hand, or none");
    if let Some(zone) = hand_zone {
        v.within("hand_zone", Follows::Nothing, zone);
    }
    v.choice("finish", finish).says("Rein end", "How the end is finished");
    v.all(finish);
}}

fields! { ReinLine: |it, v| {
    match it {
        Self::Straight => {}
        Self::Parallel { bend } => {
            v.value("bend", bend, RUN).says("Bend", "How far along the tongs the bend takes");
        }
        Self::Bowed { bow } => {
            v.value("bow", bow, SPAN).says("Bow", "How far it swells outside the hand's line");
        }
    }
}}

fields! { HandZone: |Self { section, length }, v| {
    v.all(section);
    v.value("length", length, RUN).says("Grip length", "Along the rein");
}}

fields! { ReinEnd: |it, v| {
    match it {
        Self::Square | Self::Rounded => {}
        Self::Ball { diameter } => v.value("ball", diameter, STEEL).says("Ball", "Its diameter"),
        Self::ClipBend { angle, length } => {
            v.value("clip_angle", angle, CLIP)
                .says("Clip bend", "How far the end is bent outwards");
            v.value("clip_length", length, RUN).says("Clip end", "Straight, behind its bend");
        }
        Self::Curl { radius } => {
            v.value("curl", radius, CURL)
                .says("Curl", "Inside radius of the end that is rolled outwards");
        }
    }
}}

impl Choice for ReinLine {
    const WAYS: &'static [&'static str] = &["straight", "parallel", "bowed"];

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
    const WAYS: &'static [&'static str] = &["cut square", "rounded", "ball", "clip bend", "curl"];

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

/// A grip of its own section begins as the rein's end.
impl ChoiceBeside<PlainSection> for Option<HandZone> {
    const WAYS: &'static [&'static str] = &["as the end", "own section"];

    fn chosen(&self) -> usize {
        usize::from(self.is_some())
    }

    fn choose(&mut self, index: usize, end: &PlainSection) {
        let own = HandZone {
            section: *end,
            length: Length::fraction(4, 1, Unit::Inch),
        };
        *self = match index {
            0 => None,
            _ => Some(self.unwrap_or(own)),
        };
    }
}
