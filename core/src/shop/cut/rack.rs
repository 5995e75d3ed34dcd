//! The bars on the rack and those that can be bought.
//!
//! They stand in a file of their own beside the designs of a shop, as what it has and wants does.

use serde::{Deserialize, Serialize};
use thiserror::Error;

use super::plan::{CutPlan, Source};
use crate::asked::{Bar, FileError, Units, broken, options, pretty, readable};
use crate::shop::family::same_bar;
use crate::units::{Length, MM_PER_INCH, MM_PER_SIXTEENTH, Unit};

/// The name of the file in the folder.
pub const RACK_FILE: &str = "rack.ron";
/// The newest format of that file that this program writes and reads.
pub const RACK_FORMAT: u32 = 1;
/// The most lines that are read: more than a rack holds.
const MOST_LINES: usize = 2_000;

/// Bars on the rack that are alike.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Lying {
    /// Shape, size and steel.
    pub bar: Bar,
    /// How long each is.
    pub length: Length,
    /// How many there are.
    pub count: u32,
}

/// A length that can be bought.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Sold {
    /// Shape, size and steel.
    pub bar: Bar,
    /// How long it is.
    pub length: Length,
    /// What one costs.
    #[serde(default)]
    pub price: Option<f64>,
}

/// Why a file's text holds no rack.
#[derive(Debug, Clone, PartialEq, Error)]
pub enum RackError {
    /// As for every file.
    #[error(transparent)]
    File(#[from] FileError),
    /// A newer format.
    #[error(
        "the rack has format {0}, this program reads up to {RACK_FORMAT}: use a newer Reinwright"
    )]
    Newer(u32),
    /// Too many.
    #[error("{0} lines of bars are too many: keep to {MOST_LINES}")]
    TooMany(usize),
    /// No bar is that long.
    #[error("a bar of {0} is not between nothing and 30 m: mend its length")]
    Length(Length),
    /// No price.
    #[error("a price of {0} is none: write a number such as 18.50, or leave it out")]
    Price(f64),
}

/// What a shop has to cut from.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Rack {
    /// The file format, [`RACK_FORMAT`].
    pub rack: u32,
    /// A cut; that of the designs if it is not said.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub kerf: Option<Length>,
    /// What is cut off each bar's ragged end; that of the designs if it is not said.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub crop: Option<Length>,
    /// The shortest end that is put back; [`Rack::usual_least_mm`] if it is not said.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub least_offcut: Option<Length>,
    /// What is there.
    #[serde(default)]
    pub bars: Vec<Lying>,
    /// What can be bought; one length as it is usual where a bar has none.
    #[serde(default)]
    pub sold: Vec<Sold>,
}

#[derive(Deserialize)]
#[serde(rename = "rack")]
struct Head {
    rack: u32,
}

impl Default for Rack {
    fn default() -> Self {
        Self {
            rack: RACK_FORMAT,
            kerf: None,
            crop: None,
            least_offcut: None,
            bars: Vec::new(),
            sold: Vec::new(),
        }
    }
}

impl Rack {
    /// The longest bar that is read, mm: no merchant sells a longer one.
    pub const LONGEST_MM: f64 = 30_000.0;

    /// The shortest end that is put back unless the smith says otherwise, mm: enough for a half, or
    /// for a small tool (judgement); 8 in of a smith who counts in inches.
    pub fn usual_least_mm(units: Units) -> f64 {
        match units {
            Units::Inch => 8.0 * MM_PER_INCH,
            Units::Millimetre => 200.0,
        }
    }

    /// Reads a rack from the bytes of its file.
    ///
    /// # Errors
    /// When the bytes are no such file, or one of a newer format, or a number in it cannot be.
    pub fn read(bytes: &[u8]) -> Result<Self, RackError> {
        let text = readable(bytes)?;
        let head: Head = options().from_str(text).map_err(|error| broken(&error))?;
        if head.rack > RACK_FORMAT {
            return Err(RackError::Newer(head.rack));
        }
        let rack: Self = options().from_str(text).map_err(|error| broken(&error))?;
        let lines = rack.bars.len() + rack.sold.len();
        if lines > MOST_LINES {
            return Err(RackError::TooMany(lines));
        }
        rack.checked()
    }

    fn checked(self) -> Result<Self, RackError> {
        let lying = self.bars.iter().map(|bar| bar.length);
        let lengths = lying.chain(self.sold.iter().map(|bar| bar.length));
        let is_wrong = |length: &Length| length.mm() <= 0.0 || length.mm() > Self::LONGEST_MM;
        if let Some(wrong) = { lengths }.find(is_wrong) {
            return Err(RackError::Length(wrong));
        }
        let prices = self.sold.iter().filter_map(|bar| bar.price);
        let is_none = |price: &f64| !(0.0..=1e6).contains(price);
        match { prices }.find(is_none) {
            Some(wrong) => Err(RackError::Price(wrong)),
            None => Ok(self),
        }
    }

    /// The text of the file, ending with a line feed. [`Rack::read`] gives back the same rack.
    ///
    /// # Panics
    /// Never: bars and lengths always have a text.
    pub fn write(&self) -> String {
        let text = options().to_string_pretty(self, pretty());
        text.expect("bars and lengths always have a text") + "\n"
    }

    /// The length that is bought where the rack names none, without a price: 3 m, or 10 ft where
    /// sizes are in inches, a bar of 6 m or 20 ft cut in half to be carried (common practice, no
    /// source).
    pub fn usual_length(units: Units) -> Length {
        match units {
            Units::Inch => Length::fraction(10, 1, Unit::Foot),
            Units::Millimetre => Length::decimal(3000.0, Unit::Millimetre),
        }
    }

    /// The rack after a plan was cut: without the bars that it took, and with the ends that are
    /// worth keeping, those of bars that were bought too.
    #[must_use]
    pub fn without(&self, plan: &CutPlan, units: Units) -> Self {
        let mut after = self.clone();
        for stock in &plan.stocks {
            for cut in &stock.bars {
                if cut.from == Source::Rack {
                    after.take(&stock.bar, cut.length_mm);
                }
                if cut.kept_mm > 0.0 && cut.from != Source::Missing {
                    after.put(&stock.bar, cut.kept_mm, units);
                }
            }
        }
        after.bars.retain(|bar| bar.count > 0);
        after
    }

    fn take(&mut self, bar: &Bar, length_mm: f64) {
        let is_it = |lying: &&mut Lying| {
            lying.count > 0 && same_bar(&lying.bar, bar) && is_long(lying.length, length_mm)
        };
        if let Some(lying) = self.bars.iter_mut().find(is_it) {
            lying.count -= 1;
        }
    }

    /// Ends are measured down to a whole millimetre or a sixteenth: what is not there is not kept.
    fn put(&mut self, bar: &Bar, length_mm: f64, units: Units) {
        let rule = match units {
            Units::Inch => MM_PER_SIXTEENTH,
            Units::Millimetre => 1.0,
        };
        let length = Length::from_mm((length_mm / rule + 1e-6).floor() * rule, units.unit());
        let is_it =
            |lying: &&mut Lying| same_bar(&lying.bar, bar) && is_long(lying.length, length.mm());
        match self.bars.iter_mut().find(is_it) {
            Some(lying) => lying.count += 1,
            None => self.bars.push(Lying {
                bar: *bar,
                length,
                count: 1,
            }),
        }
    }
}

/// Whether a bar is that long, to a hair.
fn is_long(length: Length, mm: f64) -> bool {
    (length.mm() - mm).abs() < 1e-6
}
