use serde::{Deserialize, Serialize};

use super::field::{Choice, Follows, Visitor, simple_choice};
use super::range::Range;
use crate::units::{Length, Unit};

/// How the halves come out of the bar.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub enum Layout {
    /// Each half from its own length.
    Single {
        /// Left on as a handle while forging and cut off at the end.
        tail: Length,
    },
    /// Both halves on one bar, rein to rein, cut in the middle.
    DoubleEnded,
}

/// How the loss to scale is reckoned.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub enum Scale {
    /// So much of the finished half, all heats together.
    Whole {
        /// Per cent.
        percent: f64,
    },
    /// So much at each heat, never more than 8 % in all.
    PerHeat {
        /// Per cent at each heat.
        percent: f64,
        /// Heats for one half.
        heats: u32,
    },
}

/// What the bar loses on the way, and what is added for luck.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Allowances {
    /// Loss to scale.
    pub scale: Scale,
    /// Cut off a ragged bar end before starting, once for the bar.
    pub crop: Length,
    /// Width of each cut.
    pub kerf: Length,
    /// Left on each half for filing and grinding, as length of bar.
    pub dressing: Length,
    /// The smith's own margin on everything.
    pub slop: f64,
}

impl Layout {
    pub(crate) fn fields(&mut self, v: &mut Visitor<'_>) {
        v.choice(
            "layout",
            "Laid out",
            "How the halves come out of the bar",
            self,
        );
        if let Self::Single { tail } = self {
            let how = (Range::new(0.0, 1000.0), Follows::Nothing);
            v.length(
                "tail",
                "Handling tail",
                "Left on each half as a handle, cut off at the end",
                how,
                tail,
            );
        }
    }
}

impl Choice for Layout {
    fn names(&self) -> Vec<&'static str> {
        vec!["one half at a time", "double-ended blank"]
    }

    fn chosen(&self) -> usize {
        match self {
            Self::Single { .. } => 0,
            Self::DoubleEnded => 1,
        }
    }

    fn choose(&mut self, index: usize) {
        match index {
            0 if *self == Self::DoubleEnded => *self = Self::Single { tail: Length::ZERO },
            1 => *self = Self::DoubleEnded,
            _ => {}
        }
    }
}

impl Scale {
    /// The most that scale is reckoned to take, per cent: beyond it, it is not scale that is lost.
    pub const CAP_PERCENT: f64 = 8.0;

    /// What is lost in all, per cent of the finished volume.
    pub fn total_percent(self) -> f64 {
        match self {
            Self::Whole { percent } => percent,
            Self::PerHeat { percent, heats } => (percent * f64::from(heats)).min(Self::CAP_PERCENT),
        }
    }
}

impl Choice for Scale {
    fn names(&self) -> Vec<&'static str> {
        vec!["of the whole", "per heat"]
    }

    fn chosen(&self) -> usize {
        match self {
            Self::Whole { .. } => 0,
            Self::PerHeat { .. } => 1,
        }
    }

    fn choose(&mut self, index: usize) {
        if index == self.chosen() {
            return;
        }
        *self = match index {
            0 => Self::Whole {
                percent: self.total_percent(),
            },
            1 => Self::PerHeat {
                percent: 1.5,
                heats: 5,
            },
            _ => *self,
        };
    }
}

impl Allowances {
    /// Nothing lost, nothing added.
    pub const NONE: Self = Self {
        scale: Scale::Whole { percent: 0.0 },
        crop: Length::ZERO,
        kerf: Length::ZERO,
        dressing: Length::ZERO,
        slop: 0.0,
    };

    /// What a smith at a gas forge might allow: 5 % scale (common practice, no source), a saw
    /// kerf, a little to dress, 2 % for luck.
    pub fn usual(unit: Unit) -> Self {
        Self {
            scale: Scale::Whole { percent: 5.0 },
            crop: Length::ZERO,
            kerf: Length::measured(1.6, unit),
            dressing: Length::measured(1.6, unit),
            slop: 2.0,
        }
    }

    pub(crate) fn fields(&mut self, v: &mut Visitor<'_>) {
        v.choice(
            "scale",
            "Scale",
            "How the loss to scale is reckoned",
            &mut self.scale,
        );
        match &mut self.scale {
            Scale::Whole { percent } => {
                v.percent(
                    "scale_percent",
                    "Scale loss",
                    "Of the finished half",
                    Range::LOSS,
                    percent,
                );
            }
            Scale::PerHeat { percent, heats } => {
                v.percent(
                    "scale_percent",
                    "Each heat",
                    "Lost at each heat",
                    Range::LOSS,
                    percent,
                );
                v.count(
                    "heats",
                    "Heats",
                    "For one half",
                    Range::new(0.0, 100.0),
                    heats,
                );
            }
        }
        let how = (Range::DETAIL, Follows::Nothing);
        v.length(
            "crop",
            "Crop",
            "Cut off a ragged bar end, once",
            how,
            &mut self.crop,
        );
        v.length("kerf", "Kerf", "Width of each cut", how, &mut self.kerf);
        v.length(
            "dressing",
            "Dressing",
            "Left on each half to file and grind, as bar",
            how,
            &mut self.dressing,
        );
        v.percent(
            "slop",
            "Own margin",
            "On everything",
            Range::LOSS,
            &mut self.slop,
        );
    }
}

/// How the hole is made.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
pub enum Hole {
    /// Punched small, back-punched, and drifted to size: only a small slug is lost.
    #[default]
    Punched,
    /// Drilled: all of the hole is lost.
    Drilled,
}

simple_choice!(Hole { Punched => "punched and drifted", Drilled => "drilled" });
