//! A sketch kept for other designs: one file each, to be given to another smith.

use serde::{Deserialize, Serialize};

use super::Sketch;
use crate::asked::{FileError, Work, broken, options, pretty, readable};
use crate::tongs::jaw::{Jaw, JawStyle};
use crate::units::Length;

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

    /// The jaw in proportion to some work, at the heel of another jaw.
    pub fn suited(&self, work: &Work, heel: Length) -> Jaw {
        let size = work.size();
        let times = size.mm() / self.sketch.fits.mm().max(1e-3);
        let grown = |length: Length| Length::from_mm(length.mm() * times, length.unit());
        Jaw {
            heel,
            length: grown(self.length),
            // Broken by file or hammer: no smith keeps to 0.0563 in.
            tip: if (times - 1.0).abs() < 1e-9 {
                self.tip
            } else {
                Length::measured(self.tip.mm() * times, self.tip.unit())
            },
            style: JawStyle::Sketch(Sketch {
                fits: size,
                ..self.sketch.clone()
            }),
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
        kept.sketch.check_limits()?;
        Ok(kept)
    }
}

/// Whether a file's text sets out to be a kept jaw.
pub fn is_kept_jaw(bytes: &[u8]) -> bool {
    let text = std::str::from_utf8(bytes).unwrap_or("");
    let begin = text.trim_start_matches(|c: char| c.is_whitespace() || c == '(');
    begin.starts_with("own_jaw")
}
