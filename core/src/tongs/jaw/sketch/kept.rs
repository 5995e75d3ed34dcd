//! A sketch kept for other designs: one file each, to be given to another smith.

use serde::{Deserialize, Serialize};
use thiserror::Error;

use super::Sketch;
use crate::asked::{
    Fields, FileError, LimitError, Reader, Work, broken, options, pretty, readable,
};
use crate::tongs::jaw::{Jaw, JawStyle};
use crate::units::{Length, Unit};

/// The newest format of a kept jaw that this program writes and reads.
pub const KEPT_FORMAT: u32 = 1;

/// A jaw of the smith's own, as it is kept.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(rename = "jaw", deny_unknown_fields)]
pub struct KeptJaw {
    /// The file format, [`KEPT_FORMAT`].
    pub own_jaw: u32,
    /// From heel to tip, for work of the size that the sketch fits.
    pub length: Length,
    /// Radius to which the back of its tip is broken.
    pub tip: Length,
    /// Its nodes and sections, with its name and what it is for.
    pub sketch: Sketch,
}

impl KeptJaw {
    /// A sketched jaw under a name; `None` if it is no sketch.
    pub fn of(jaw: &Jaw, name: &str, about: &str) -> Option<Self> {
        let sketch = jaw.sketch()?;
        Some(Self {
            own_jaw: KEPT_FORMAT,
            length: jaw.length,
            tip: jaw.tip,
            sketch: Sketch {
                name: name.trim().to_owned(),
                about: about.trim().to_owned(),
                ..sketch.clone()
            },
        })
    }

    /// The jaw in proportion to some work, at the heel of another jaw, in whose unit it is measured.
    ///
    /// Its sections grow as the work does, since they are drawn to fit it; its length, and the
    /// places along it between which it is straight and level, are rounded to what a smith measures.
    /// On work of its own size it is as it was kept.
    ///
    /// # Errors
    /// When it would become larger or smaller than a jaw can be.
    pub fn suited(&self, work: &Work, heel: Length) -> Result<Jaw, Outgrown> {
        let size = work.size();
        let times = size.mm() / self.sketch.fits.mm().max(f64::MIN_POSITIVE);
        let jaw = if (times - 1.0).abs() < 1e-9 {
            self.as_kept(size, heel)
        } else {
            self.grown(times, size, heel)
        };
        let mut outside = None;
        jaw.read(&mut Reader::new(&mut |field| {
            outside = outside.take().or(field.check().err());
        }));
        let limit = outside.map_or_else(|| jaw.sketch().map_or(Ok(()), Sketch::check_limits), Err);
        match limit {
            Ok(()) => Ok(jaw),
            Err(limit) => Err(Outgrown {
                name: self.sketch.name.clone(),
                work: size,
                limit: Box::new(limit),
            }),
        }
    }

    fn as_kept(&self, fits: Length, heel: Length) -> Jaw {
        Jaw {
            heel,
            length: self.length,
            tip: self.tip,
            style: JawStyle::Sketch(Sketch {
                fits,
                ..self.sketch.clone()
            }),
        }
    }

    fn grown(&self, times: f64, fits: Length, heel: Length) -> Jaw {
        let measured = |mm: f64| Length::measured(mm * times, heel.unit());
        let length = measured(self.length.mm());
        Jaw {
            heel,
            length,
            tip: measured(self.tip.mm()),
            style: JawStyle::Sketch(self.sketch.redrawn((self.length.mm(), times), length, fits)),
        }
    }

    /// The text of its file.
    pub fn write(&self) -> String {
        let text = options().to_string_pretty(self, pretty());
        text.expect("names, sizes and numbers always have a text") + "\n"
    }

    /// Reads one from the bytes of a file.
    ///
    /// # Errors
    /// When the bytes are no kept jaw, or a number in it is outside its limits.
    pub fn read(bytes: &[u8]) -> Result<Self, FileError> {
        let text = readable(bytes)?;
        let kept: Self = options().from_str(text).map_err(|error| broken(&error))?;
        if kept.own_jaw > KEPT_FORMAT {
            return Err(FileError::Newer {
                found: kept.own_jaw,
                newest: KEPT_FORMAT,
            });
        }
        kept.check_limits()?;
        Ok(kept)
    }
}

impl KeptJaw {
    /// Checks what was read from a file.
    fn check_limits(&self) -> Result<(), LimitError> {
        self.sketch.check_limits()?;
        let mut first = None;
        // Where its heel will be is not its own.
        let heel = Length::fraction(1, 1, Unit::Inch);
        let jaw = self.as_kept(self.sketch.fits, heel);
        jaw.read(&mut Reader::new(&mut |field| {
            first = first.take().or(field.check().err());
        }));
        first.map_or(Ok(()), Err)
    }
}

/// Why a kept jaw cannot be used on some work.
#[derive(Debug, Clone, PartialEq, Error)]
#[error(
    "\"{name}\" does not grow to {work} work, its {} would be {}, and {} to {} is possible: draw a jaw for such work",
    limit.path, limit.found, limit.least, limit.most
)]
pub struct Outgrown {
    /// The jaw.
    pub name: String,
    /// The size of the work.
    pub work: Length,
    /// The first of its sizes that cannot be.
    pub limit: Box<LimitError>,
}

/// Whether a file's text sets out to be a kept jaw.
pub fn is_kept_jaw(bytes: &[u8]) -> bool {
    let text = std::str::from_utf8(bytes).unwrap_or("");
    let begin = text.trim_start_matches(|c: char| c.is_whitespace() || c == '(');
    begin.starts_with("own_jaw")
}
