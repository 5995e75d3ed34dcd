use thiserror::Error;

use super::bar::{Bar, Stock};
use super::work::{Lie, Work, wider};
use crate::steel::Steel;
use crate::units::{Length, SizeError, Unit};

/// Why a text such as `3/4 in square` names no stock.
#[derive(Debug, Clone, PartialEq, Eq, Error)]
pub enum StockError {
    /// The size cannot be read.
    #[error(transparent)]
    Size(#[from] SizeError),
    /// The shape is missing or unknown.
    #[error("\"{0}\" names no shape that is known here: end it with {1}")]
    Shape(String, &'static str),
}

/// Splits `1/8 x 3/4 in flat` into sizes and the words behind them.
fn split(
    text: &str,
    default: Option<Unit>,
) -> Result<(Length, Option<Length>, String), StockError> {
    let words: Vec<&str> = text.split_whitespace().collect();
    let is_word = |word: &&str| {
        let letters = word.chars().all(|c| c.is_alphabetic() || c == '-');
        letters
            && !matches!(
                word.to_lowercase().as_str(),
                "in" | "mm" | "cm" | "ft" | "x" | "inch"
            )
    };
    let behind = words.iter().rev().take_while(|w| is_word(w)).count();
    let (sizes, shape) = words.split_at(words.len() - behind);
    let sizes = sizes.join(" ").replace('\u{d7}', "x");
    let parts: Vec<&str> = sizes.split('x').map(str::trim).collect();
    let last = parts.last().copied().unwrap_or_default();
    // A fraction is of an inch, whatever the design counts in.
    let unit = match default {
        Some(_) if last.contains('/') => Length::parse(last, Unit::Inch)?.unit(),
        Some(default) => Length::parse(last, default)?.unit(),
        None => last.parse::<Length>()?.unit(),
    };
    let first = Length::parse(parts[0], unit)?;
    let second = match parts.len() {
        1 => None,
        2 => Some(Length::parse(last, unit)?),
        _ => return Err(SizeError::NotASize(sizes).into()),
    };
    Ok((first, second, shape.join(" ").to_lowercase()))
}

/// Reads work such as `3/8 in flat`, `1/4 x 1 in flat`, `16 mm square`, `5/8 in hexagon on corners`.
///
/// # Errors
/// When the size or the shape cannot be read.
pub fn parse_work(text: &str) -> Result<Work, StockError> {
    work(text, None)
}

/// Reads work as [`parse_work`] does; a number without a unit is in `default`, a fraction
/// in inches: `16 square`, `5/8 hex`.
///
/// # Errors
/// When the size or the shape cannot be read.
pub fn parse_work_in(text: &str, default: Unit) -> Result<Work, StockError> {
    work(text, Some(default))
}

fn work(text: &str, default: Option<Unit>) -> Result<Work, StockError> {
    let (size, second, words) = split(text, default)?;
    let lie = if words.contains("corner") || words.contains("diagonal") {
        Lie::OnCorners
    } else {
        Lie::OnFlats
    };
    let shape = words.split_whitespace().next().unwrap_or_default();
    match (shape, second) {
        ("flat", None) => Ok(Work::Flat {
            thickness: size,
            width: wider(size),
        }),
        ("flat", Some(width)) => Ok(Work::Flat {
            thickness: size,
            width,
        }),
        ("round", None) => Ok(Work::Round { diameter: size }),
        ("square", None) => Ok(Work::Square { side: size, lie }),
        ("hexagon" | "hex", None) => Ok(Work::Hexagon { flats: size, lie }),
        ("octagon" | "oct", None) => Ok(Work::Octagon { flats: size, lie }),
        _ => Err(StockError::Shape(
            text.trim().to_owned(),
            "flat, round, square, hexagon or octagon",
        )),
    }
}

/// Whether a text that names work says how it lies: on its corners, its diagonal or its flats.
pub fn says_lie(text: &str) -> bool {
    let text = text.to_lowercase();
    let said = ["flats", "corner", "diagonal"];
    said.iter().any(|word| text.contains(word))
}

/// Reads a bar such as `3/4 in square`, `20 mm round`, `1/2 x 3/4 in flat`.
///
/// # Errors
/// When the size or the shape cannot be read.
pub fn parse_bar(text: &str) -> Result<Bar, StockError> {
    bar(text, None)
}

/// Reads a bar as [`parse_bar`] does; a number without a unit is in `default`, a fraction in
/// inches.
///
/// # Errors
/// When the size or the shape cannot be read.
pub fn parse_bar_in(text: &str, default: Unit) -> Result<Bar, StockError> {
    bar(text, Some(default))
}

fn bar(text: &str, default: Option<Unit>) -> Result<Bar, StockError> {
    let (size, second, words) = split(text, default)?;
    let stock = match (words.as_str(), second) {
        ("square", None) => Stock::Square { side: size },
        ("round", None) => Stock::Round { diameter: size },
        ("flat", Some(width)) => Stock::Flat {
            thickness: size,
            width,
        },
        ("flat", None) => Stock::Flat {
            thickness: size,
            width: wider(size),
        },
        _ => {
            return Err(StockError::Shape(
                text.trim().to_owned(),
                "square, round or flat",
            ));
        }
    };
    Ok(Bar {
        stock,
        steel: Steel::default(),
    })
}
