//! What a shop has measured, in a file beside its designs.

use serde::{Deserialize, Serialize};
use thiserror::Error;

use super::{Meant, Measured, Own};
use crate::asked::{FileError, Scale, broken, options, pretty, readable};
use crate::units::Length;

/// The name of the file in the folder.
pub const CAME_OUT_FILE: &str = "came-out.ron";
/// The newest format of that file that this program writes and reads.
pub const CAME_OUT_FORMAT: u32 = 1;
/// The most measurements that are read.
const MOST: usize = 10_000;

/// One half that was measured.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Made {
    /// The design's name.
    pub name: String,
    /// The rein that came out.
    pub rein: Length,
    /// What was cut off it.
    pub left: Length,
    /// How long steel stayed workable in one heat, s.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub heat_s: Option<f64>,
    /// Steel that was gone, per cent of the finished half.
    pub gone_percent: f64,
}

/// Why a file's text holds no measurements.
#[derive(Debug, Clone, PartialEq, Error)]
pub enum KeptError {
    /// As for every file.
    #[error(transparent)]
    File(#[from] FileError),
    /// A newer format.
    #[error(
        "what came out has format {0}, this program reads up to {CAME_OUT_FORMAT}: use a newer Reinwright"
    )]
    Newer(u32),
    /// Too many.
    #[error("{0} measurements are too many: keep to {MOST}")]
    TooMany(usize),
    /// A number that no half gives.
    #[error("{0} % of a half that is gone cannot be: mend the number, or take its line out")]
    Gone(f64),
    /// No time of a heat.
    #[error("a heat of {0} s cannot be: mend the number, or take it out")]
    Heat(f64),
}

/// All that a shop has measured, the oldest first.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct CameOut {
    /// The file format, [`CAME_OUT_FORMAT`].
    came_out: u32,
    /// Half by half.
    pub halves: Vec<Made>,
}

#[derive(Deserialize)]
#[serde(rename = "came_out")]
struct Head {
    came_out: u32,
}

impl Default for CameOut {
    fn default() -> Self {
        Self {
            came_out: CAME_OUT_FORMAT,
            halves: Vec::new(),
        }
    }
}

impl CameOut {
    /// Reads measurements from the bytes of their file.
    ///
    /// # Errors
    /// When the bytes are no such file, or one of a newer format, or a number in it cannot be.
    pub fn read(bytes: &[u8]) -> Result<Self, KeptError> {
        let text = readable(bytes)?;
        let head: Head = options().from_str(text).map_err(|error| broken(&error))?;
        if head.came_out > CAME_OUT_FORMAT {
            return Err(KeptError::Newer(head.came_out));
        }
        let own: Self = options().from_str(text).map_err(|error| broken(&error))?;
        if own.halves.len() > MOST {
            return Err(KeptError::TooMany(own.halves.len()));
        }
        for made in &own.halves {
            made.check()?;
        }
        Ok(own)
    }

    /// The text of the file, ending with a line feed. [`CameOut::read`] gives back the same.
    ///
    /// # Panics
    /// Never: names and numbers always have a text.
    pub fn write(&self) -> String {
        let text = options().to_string_pretty(self, pretty());
        text.expect("names and numbers always have a text") + "\n"
    }

    /// With one more half.
    #[must_use]
    pub fn with(mut self, name: &str, measured: &Measured, meant: &Meant) -> Self {
        self.halves.push(Made {
            name: name.to_owned(),
            rein: measured.rein,
            left: measured.left,
            heat_s: measured.heat_s,
            gone_percent: meant.gone_percent,
        });
        self
    }

    /// What the smith can go by: the scale of the mean of all halves, and as margin by how much the
    /// worst of them stands above it, with what is no scale. `None` where nothing was measured.
    ///
    /// A single half says nothing of how far the next will differ: until there are
    /// [`CameOut::ENOUGH`] the margin is [`CameOut::LEAST_MARGIN`] at the least.
    pub fn own(&self) -> Option<Own> {
        let gone = || self.halves.iter().map(|made| made.gone_percent.max(0.0));
        let mean = mean(gone())?;
        let worst = gone().fold(0.0, f64::max);
        let scale_percent = mean.min(Scale::CAP_PERCENT);
        let least = if self.halves.len() < Self::ENOUGH {
            Self::LEAST_MARGIN
        } else {
            0.0
        };
        Some(Own {
            scale_percent,
            margin_percent: margin(worst, scale_percent).max(least),
            heat_s: self::mean(self.halves.iter().filter_map(|made| made.heat_s)),
            halves: self.halves.len(),
        })
    }

    /// From so many halves on it is known how far they differ (judgement).
    pub const ENOUGH: usize = 3;

    /// The margin until it is known how far halves differ, per cent (judgement: what the program
    /// itself begins with).
    pub const LEAST_MARGIN: f64 = 2.0;
}

impl Made {
    fn check(&self) -> Result<(), KeptError> {
        /// More is gone of no half than it has itself, per cent.
        const MOST_GONE: f64 = 100.0;
        if self.gone_percent.is_nan() || self.gone_percent.abs() > MOST_GONE {
            return Err(KeptError::Gone(self.gone_percent));
        }
        match self.heat_s {
            Some(heat) if !(heat > 0.0 && heat <= super::LONGEST_HEAT_S) => {
                Err(KeptError::Heat(heat))
            }
            Some(_) | None => Ok(()),
        }
    }
}

/// The margin on everything, per cent, with which a bar that has so much for scale has enough for
/// what is gone.
fn margin(gone_percent: f64, scale_percent: f64) -> f64 {
    100.0 * ((100.0 + gone_percent) / (100.0 + scale_percent) - 1.0)
}

fn mean(all: impl Iterator<Item = f64>) -> Option<f64> {
    let (sum, count) = all.fold((0.0, 0.0), |(sum, count), own| (sum + own, count + 1.0));
    (count > 0.0).then(|| sum / count)
}
