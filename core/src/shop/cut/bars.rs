//! Bars as a smith says them: `3 x 3 m`, `2 x 20 ft of 3/4 in square, 1 x 850 mm`.

use thiserror::Error;

use crate::asked::{Stock, StockError, parse_bar};
use crate::units::{Length, SizeError, Unit, quoted};

/// Bars that are there.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct GivenBars {
    /// How many.
    pub count: u32,
    /// How long each is.
    pub length: Length,
    /// Of what, if it was said.
    pub stock: Option<Stock>,
}

/// Why a text names no bars.
#[derive(Debug, Clone, PartialEq, Eq, Error)]
pub enum BarsError {
    /// The count cannot be read.
    #[error("\"{0}\" says no number of bars: write how many and how long, such as 3 x 3 m")]
    Count(String),
    /// The length cannot be read.
    #[error(transparent)]
    Length(#[from] SizeError),
    /// The stock cannot be read.
    #[error(transparent)]
    Stock(#[from] StockError),
}

/// The most bars of one length that are counted.
const MOST_BARS: u32 = 10_000;

/// Reads bars, with a comma between those of unlike length.
///
/// ```
/// use reinwright_core::shop::cut::parse_bars;
/// let bars = parse_bars("3 x 3 m of 16 mm square, 850 mm")?;
/// assert_eq!((bars[0].count, bars[0].length.mm()), (3, 3000.0));
/// assert_eq!((bars[1].count, bars[1].length.mm()), (1, 850.0));
/// # Ok::<(), reinwright_core::shop::cut::BarsError>(())
/// ```
///
/// # Errors
/// When a count, a length or the stock cannot be read.
pub fn parse_bars(text: &str) -> Result<Vec<GivenBars>, BarsError> {
    // A comma between two digits is that of a number: 6,1 m.
    let mut parts: Vec<String> = Vec::new();
    for part in text.split(';').flat_map(|part| part.split(',').enumerate()) {
        match (part, parts.last_mut()) {
            ((at, more), Some(begun)) if at > 0 && is_number_on(begun, more) => {
                begun.push('.');
                begun.push_str(more);
            }
            ((_, more), _) => parts.push(more.to_owned()),
        }
    }
    parts.iter().map(|part| given(part)).collect()
}

fn is_number_on(before: &str, after: &str) -> bool {
    let digit = |c: char| c.is_ascii_digit();
    before.ends_with(digit) && after.starts_with(digit)
}

fn given(text: &str) -> Result<GivenBars, BarsError> {
    let text = text.replace('\u{d7}', "x");
    let (bars, stock) = match text.split_once(" of ") {
        Some((bars, stock)) => (bars, Some(parse_bar(stock)?.stock)),
        None => (&text[..], None),
    };
    let (count, length) = match bars.split_once('x') {
        Some((count, length)) => (counted(count)?, length),
        None => (1, bars),
    };
    Ok(GivenBars {
        count,
        length: parse_long(length)?,
        stock,
    })
}

fn counted(text: &str) -> Result<u32, BarsError> {
    let count = text.trim().parse::<u32>().ok();
    let count = count.filter(|count| (1..=MOST_BARS).contains(count));
    count.ok_or_else(|| BarsError::Count(quoted(text, 40)))
}

/// Reads a length that may be in metres, as bars are sold: `3 m`, `6.1 m`, `20 ft`.
///
/// # Errors
/// When the text is no size with its unit.
pub fn parse_long(text: &str) -> Result<Length, SizeError> {
    let lower = text.trim().to_lowercase();
    let number = lower.strip_suffix('m').map(str::trim_end);
    let metres = number.filter(|number| number.ends_with(|c: char| c.is_ascii_digit() || c == '.'));
    match metres {
        Some(number) => {
            let number = Length::parse(number, Unit::Millimetre)?;
            Ok(Length::decimal(number.mm() * 1000.0, Unit::Millimetre))
        }
        None => lower.parse(),
    }
}
