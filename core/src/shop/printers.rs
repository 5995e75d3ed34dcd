//! What a shop's printers make of a measure: each by its name, with what a rule said of its check
//! page. They stand in a file of their own beside the designs, as the rack does.

use serde::{Deserialize, Serialize};
use thiserror::Error;

use crate::asked::{FileError, broken, options, pretty, readable};
use crate::paper::Correction;
use crate::units::{Length, MM_PER_INCH, Unit};

/// The name of the file in the folder.
pub const PRINTERS_FILE: &str = "printers.ron";
/// The newest format of that file that this program writes and reads.
pub const PRINTERS_FORMAT: u32 = 1;
/// The most printers that are read: more than a shop has.
const MOST: usize = 100;
/// A printer that is more than this part off was told to fit pages to its paper (judgement: old
/// laser engines were permitted 2 to 3 %, fitting to the page takes 3 to 6 %).
pub const MOST_OFF: f64 = 0.04;
/// The widest rim that a printer leaves blank, mm.
pub const WIDEST_RIM: f64 = 20.0;
/// The longest name.
const LONGEST_NAME: usize = 40;

/// A printer as its check page was measured.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Printer {
    /// What it is called in the shop.
    pub name: String,
    /// What the bar across the paper measured: in inches that of 4 in, else that of 100 mm.
    pub across: Length,
    /// What the bar along the paper measured.
    pub along: Length,
    /// The widest rim that it leaves blank.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub rim: Option<Length>,
}

/// All printers of a shop.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Printers {
    /// The file format, [`PRINTERS_FORMAT`].
    pub printers: u32,
    /// The printers in the order in which they were noted.
    #[serde(default)]
    pub known: Vec<Printer>,
}

/// Why something is no record of printers. The message says how to mend it.
#[derive(Debug, Clone, PartialEq, Error)]
pub enum PrinterError {
    /// As for every file.
    #[error(transparent)]
    File(#[from] FileError),
    /// A newer format.
    #[error(
        "the printers have format {0}, this program reads up to {PRINTERS_FORMAT}: use a newer Reinwright"
    )]
    Newer(u32),
    /// Too many.
    #[error("{0} printers are too many: keep to {MOST}")]
    TooMany(usize),
    /// No name.
    #[error("a printer needs a name of 1 to {LONGEST_NAME} letters")]
    Name,
    /// No printer is that far off.
    #[error(
        "the bar {way} measures {measured}, which is {percent:.1} % off and more than any printer: print the check page again at actual size (100 %), not fitted to the page, and measure once more"
    )]
    Off {
        /// Across or along the paper.
        way: &'static str,
        /// What was measured.
        measured: Length,
        /// How far off, in per cent.
        percent: f64,
    },
    /// No rim is that wide.
    #[error(
        "a rim of {0} is not between 0 and {WIDEST_RIM} mm: measure what the printer leaves blank"
    )]
    Rim(Length),
}

#[derive(Deserialize)]
#[serde(rename = "printers")]
struct Head {
    printers: u32,
}

impl Default for Printers {
    fn default() -> Self {
        Self {
            printers: PRINTERS_FORMAT,
            known: Vec::new(),
        }
    }
}

/// How many times as long as it should be a bar was measured.
fn ratio(measured: Length) -> f64 {
    let should = match measured.unit() {
        Unit::Inch | Unit::Foot => 4.0 * MM_PER_INCH,
        Unit::Millimetre | Unit::Centimetre => 100.0,
    };
    measured.mm() / should
}

impl Printer {
    /// The same, if it can be so.
    ///
    /// # Errors
    /// When it has no name, is further off than [`MOST_OFF`], or has too wide a rim.
    pub fn checked(self) -> Result<Self, PrinterError> {
        let letters = self.name.trim().chars().count();
        if !(1..=LONGEST_NAME).contains(&letters) {
            return Err(PrinterError::Name);
        }
        /// Rounding that may refuse nobody.
        const HAIR: f64 = 1e-9;
        for (way, measured) in [("across", self.across), ("along", self.along)] {
            let off = ratio(measured) - 1.0;
            if off.is_nan() || off.abs() > MOST_OFF + HAIR {
                return Err(PrinterError::Off {
                    way,
                    measured,
                    percent: 100.0 * off.abs(),
                });
            }
        }
        match self.rim {
            Some(rim) if !(0.0..=WIDEST_RIM).contains(&rim.mm()) => Err(PrinterError::Rim(rim)),
            Some(_) | None => Ok(self),
        }
    }

    /// How its sheets must be drawn so that they print true.
    ///
    /// ```
    /// use reinwright_core::shop::printers::Printer;
    /// let printer = Printer {
    ///     name: "Office".to_owned(),
    ///     across: "101 mm".parse()?,
    ///     along: "4 in".parse()?,
    ///     rim: None,
    /// };
    /// assert_eq!(printer.correction().across, 1.0 / 1.01);
    /// assert_eq!(printer.correction().along, 1.0);
    /// # Ok::<(), reinwright_core::units::SizeError>(())
    /// ```
    pub fn correction(&self) -> Correction {
        Correction {
            across: 1.0 / ratio(self.across),
            along: 1.0 / ratio(self.along),
        }
    }

    /// What stands on its sheets.
    pub fn note(&self) -> String {
        let words = |measured: Length| {
            let percent = 100.0 * (ratio(measured) - 1.0);
            if percent.abs() < 0.05 {
                "true".to_owned()
            } else if percent > 0.0 {
                format!("{percent:.1} % too long")
            } else {
                format!("{:.1} % too short", -percent)
            }
        };
        format!(
            "Only for the printer \"{}\", which prints {} across and {} along its paper: here it comes out true.",
            self.name,
            words(self.across),
            words(self.along)
        )
    }
}

impl Printers {
    /// Reads the printers from the bytes of their file.
    ///
    /// # Errors
    /// When the bytes are no such file, or one of a newer format, or a printer in it cannot be.
    pub fn read(bytes: &[u8]) -> Result<Self, PrinterError> {
        let text = readable(bytes)?;
        let head: Head = options().from_str(text).map_err(|error| broken(&error))?;
        if head.printers > PRINTERS_FORMAT {
            return Err(PrinterError::Newer(head.printers));
        }
        let read: Self = options().from_str(text).map_err(|error| broken(&error))?;
        if read.known.len() > MOST {
            return Err(PrinterError::TooMany(read.known.len()));
        }
        let known: Result<Vec<_>, _> = read.known.into_iter().map(Printer::checked).collect();
        Ok(Self {
            known: known?,
            ..Self::default()
        })
    }

    /// The text of the file, ending with a line feed. [`Printers::read`] gives back the same.
    ///
    /// # Panics
    /// Never: names and lengths always have a text.
    pub fn write(&self) -> String {
        let text = options().to_string_pretty(self, pretty());
        text.expect("names and lengths always have a text") + "\n"
    }

    /// A printer by its name, in upper or lower case.
    pub fn named(&self, name: &str) -> Option<&Printer> {
        let name = name.trim().to_lowercase();
        let is_it = |printer: &&Printer| printer.name.to_lowercase() == name;
        self.known.iter().find(is_it)
    }

    /// With a printer noted, in the place of what was noted of it before.
    ///
    /// # Errors
    /// As [`Printer::checked`].
    pub fn with(mut self, printer: Printer) -> Result<Self, PrinterError> {
        let printer = Printer {
            name: printer.name.trim().to_owned(),
            ..printer
        }
        .checked()?;
        let name = printer.name.to_lowercase();
        let place = self
            .known
            .iter()
            .position(|of| of.name.to_lowercase() == name);
        match place {
            Some(place) => self.known[place] = printer,
            None => self.known.push(printer),
        }
        Ok(self)
    }
}
