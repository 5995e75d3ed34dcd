//! Lengths, angles and temperatures as a smith writes them, forces, stresses and masses as a smith
//! reads them: the only place that parses or prints a size.
//!
//! A [`Length`] keeps the number and the unit it was typed in, so a file says `"3/4 in"` and not
//! `19.05`; everything past [`crate::tongs::resolve()`] works in plain millimetres.

mod angle;
mod length;
mod offset;
mod parse;
mod quantity;
mod show;
mod temperature;

pub use angle::Angle;
pub use length::{Amount, Length, MM_PER_64TH, MM_PER_INCH, MM_PER_SIXTEENTH, Unit};
pub use offset::Offset;
pub use parse::SizeError;
pub use quantity::{KG_PER_LB, MPA_PER_KSI, N_PER_LBF, Quantity};
pub use show::{Rounding, Show};
pub use temperature::{Scale, Temperature, TemperatureError};

/// A text in one line, as a message carries it: its words with a blank between them.
pub fn one_line(text: &str) -> String {
    text.split_whitespace().collect::<Vec<_>>().join(" ")
}

/// So much of a text as a message of one line can carry.
pub(crate) fn quoted(text: &str, most: usize) -> String {
    let plain = |sign: char| if sign.is_control() { ' ' } else { sign };
    text.trim().chars().map(plain).take(most).collect()
}
