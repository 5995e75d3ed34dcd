use thiserror::Error;

use super::field::{Field, Value};
use super::{Document, FORMAT};
use crate::jaw::Sketch;
use crate::units::Unit;

/// What a value may be, ends included.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Range {
    /// Least value.
    pub least: f64,
    /// Greatest value.
    pub most: f64,
}

impl Range {
    /// No limits: choices have none.
    pub const ANY: Self = Self::new(f64::MIN, f64::MAX);
    /// A thickness or a width of steel, mm: from foil that cannot be forged to anchor chain.
    pub const STEEL: Self = Self::new(0.5, 200.0);
    /// A detail that may be left out, mm.
    pub const DETAIL: Self = Self::new(0.0, 100.0);
    /// A length along the tongs, mm.
    pub const RUN: Self = Self::new(2.0, 500.0);
    /// A length along the reins, mm.
    pub const REIN: Self = Self::new(20.0, 2000.0);
    /// A gap between hands or a bow, mm.
    pub const SPAN: Self = Self::new(0.0, 400.0);
    /// An included angle, degrees.
    pub const GROOVE: Self = Self::new(40.0, 160.0);
    /// How far a rein's end is bent, degrees.
    pub const CLIP: Self = Self::new(5.0, 120.0);
    /// Inside radius of a rolled end, mm.
    pub const CURL: Self = Self::new(2.0, 100.0);
    /// A loss, per cent.
    pub const LOSS: Self = Self::new(0.0, 40.0);

    /// From `least` to `most`.
    pub const fn new(least: f64, most: f64) -> Self {
        Self { least, most }
    }

    /// Both ends of a range in mm, to be read in a unit: on the inside, with the unit.
    pub fn ends_in(self, unit: Unit) -> [String; 2] {
        match unit {
            Unit::Inch | Unit::Foot => {
                let hundredths = |mm: f64| mm / Unit::Inch.mm() * 100.0;
                let text = |hundredths: f64| format!("{} in", hundredths / 100.0);
                let (least, most) = (hundredths(self.least), hundredths(self.most));
                [text(least.ceil()), text(most.floor())]
            }
            Unit::Millimetre | Unit::Centimetre => {
                [self.least, self.most].map(|mm| format!("{mm} mm"))
            }
        }
    }

    /// Whether a number is finite and inside.
    pub fn holds(self, number: f64) -> bool {
        number.is_finite() && (self.least..=self.most).contains(&number)
    }
}

/// A value outside its limits; the message names the place, the limit and so the mend.
#[derive(Debug, Clone, PartialEq, Error)]
#[error("{path} is {found}: give a value from {least} to {most}")]
pub struct LimitError {
    /// Where it stands, such as `boss.thickness`.
    pub path: String,
    /// What stands there.
    pub found: String,
    /// The least that may stand there.
    pub least: String,
    /// The most that may stand there.
    pub most: String,
}

/// Longest name and note that a file may carry, in characters.
const LONGEST_NAME: usize = 200;
const LONGEST_NOTE: usize = 20_000;

/// Checks every number of a document against its limits.
///
/// # Errors
/// The first value that is not finite or not inside its limits, in the order of
/// [`Document::visit`].
pub fn check_limits(document: &Document) -> Result<(), LimitError> {
    let outside = |path: &str, found: usize, most: usize| LimitError {
        path: path.to_owned(),
        found: format!("{found} characters long"),
        least: "0".to_owned(),
        most: format!("{most} characters"),
    };
    if document.name.chars().count() > LONGEST_NAME {
        return Err(outside("name", document.name.chars().count(), LONGEST_NAME));
    }
    if document.note.chars().count() > LONGEST_NOTE {
        return Err(outside("note", document.note.chars().count(), LONGEST_NOTE));
    }
    if document.format > FORMAT {
        return Err(LimitError {
            path: "format".to_owned(),
            found: document.format.to_string(),
            least: "1".to_owned(),
            most: FORMAT.to_string(),
        });
    }
    let mut first = None;
    document.clone().visit(&mut |field| {
        if first.is_none() {
            first = check_field(&field).err();
        }
    });
    first.map_or(Ok(()), Err)?;
    let jaws = [Some(&document.jaw), document.second_jaw.as_ref()];
    let sketches = jaws.into_iter().flatten().filter_map(|jaw| jaw.sketch());
    sketches
        .map(Sketch::check_limits)
        .find(Result::is_err)
        .unwrap_or(Ok(()))
}

/// Checks one field.
///
/// # Errors
/// When its value is outside its limits.
pub(crate) fn check_field(field: &Field<'_>) -> Result<(), LimitError> {
    let Range { least, most } = field.range;
    let plain = |unit: &str| [least, most].map(|end| format!("{end}{unit}"));
    let (number, found, [least, most]) = match &field.value {
        Value::Length(length) => (
            length.mm(),
            length.to_string(),
            field.range.ends_in(length.unit()),
        ),
        Value::Angle(angle) => (angle.in_degrees(), angle.to_string(), plain(" deg")),
        Value::Percent(percent) => (**percent, format!("{percent} %"), plain(" %")),
        Value::Count(count) => (f64::from(**count), count.to_string(), plain("")),
        Value::Choice(_) => return Ok(()),
    };
    if field.range.holds(number) {
        return Ok(());
    }
    Err(LimitError {
        path: field.path.clone(),
        found,
        least,
        most,
    })
}
