use serde::{Deserialize, Serialize};

use super::choice::{Choice, simple_choice};
use super::range::{DETAIL, HEATS, LOSS, STRETCH};
use super::walk::fields;
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
    BothOnOneBar,
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
    pub margin: f64,
}

fields! { Layout: |it, v| {
    v.choice("layout", it).says("Laid out", "How the halves come out of the bar");
    if let Self::Single { tail } = it {
        v.value("tail", tail, STRETCH)
            .says("Handling tail", "Left on each half as a handle, cut off at the end");
    }
}}

impl Choice for Layout {
    const WAYS: &'static [&'static str] = &["one half at a time", "both halves on one bar"];

    fn chosen(&self) -> usize {
        match self {
            Self::Single { .. } => 0,
            Self::BothOnOneBar => 1,
        }
    }

    fn choose(&mut self, index: usize) {
        match index {
            0 if *self == Self::BothOnOneBar => *self = Self::Single { tail: Length::ZERO },
            1 => *self = Self::BothOnOneBar,
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
    const WAYS: &'static [&'static str] = &["of the whole", "per heat"];

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
        margin: 0.0,
    };

    /// What a smith at a gas forge might allow: 5 % scale (common practice, no source), a saw
    /// kerf, a little to dress, 2 % for luck.
    pub fn usual(unit: Unit) -> Self {
        Self {
            scale: Scale::Whole { percent: 5.0 },
            crop: Length::ZERO,
            kerf: Length::measured(1.6, unit),
            dressing: Length::measured(1.6, unit),
            margin: 2.0,
        }
    }
}

fields! { Allowances: |Self { scale, crop, kerf, dressing, margin }, v| {
    v.choice("scale", scale).says("Scale", "How the loss to scale is reckoned");
    match scale {
        Scale::Whole { percent } => {
            v.value("scale_percent", percent, LOSS).says("Scale loss", "Of the finished half");
        }
        Scale::PerHeat { percent, heats } => {
            v.value("scale_percent", percent, LOSS).says("Each heat", "Lost at each heat");
            v.value("heats", heats, HEATS).says("Heats", "For one half");
        }
    }
    v.value("crop", crop, DETAIL).says("Crop", "Cut off a ragged bar end, once");
    v.value("kerf", kerf, DETAIL).says("Kerf", "Width of each cut");
    v.value("dressing", dressing, DETAIL)
        .says("Dressing", "Left on each half to file and grind, as bar");
    v.value("margin", margin, LOSS).says("Own margin", "On everything");
}}

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
