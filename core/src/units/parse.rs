use thiserror::Error;

use super::length::{Length, Unit, gcd};

/// Why a text is no size. The message says how to mend it.
#[derive(Debug, Clone, PartialEq, Eq, Error)]
pub enum SizeError {
    /// Nothing was written.
    #[error("a size is missing: write one such as 3/4 in or 19 mm")]
    Empty,
    /// A sign that no size has.
    #[error("\"{0}\" is not a size: write one such as 3/4 in, 1 1/2 in or 19 mm")]
    NotASize(String),
    /// A minus sign.
    #[error("\"{0}\" is below zero: a size is above zero, write it without a minus sign")]
    Negative(String),
    /// A fraction over zero.
    #[error("\"{0}\" divides by zero: write a fraction such as 3/4")]
    OverZero(String),
    /// A unit that no smith uses here.
    #[error("\"{0}\" is not a unit that is known here: use in, ft, mm or cm")]
    Unit(String),
    /// A number without a unit where one must stand.
    #[error("\"{0}\" has no unit: add in, ft, mm or cm")]
    NoUnit(String),
    /// A number past counting.
    #[error(
        "\"{0}\" is too large or too finely divided to be a size: write one such as 3/4 in or 19 mm"
    )]
    TooLarge(String),
    /// An angle that cannot be read.
    #[error("\"{0}\" is not an angle: write one such as 90 deg")]
    NotAnAngle(String),
}

/// The longest text that is looked at; no size needs more.
const LONGEST: usize = 40;

/// The largest number of a unit that is read; a size that is added up from feet and inches or from
/// whole and parts is no larger either, so that what is written of it can be read again.
const LARGEST: f64 = 1e9;

/// Reads one length, or feet and inches together.
pub(super) fn parse_length(text: &str, default: Option<Unit>) -> Result<Length, SizeError> {
    let shown = super::quoted(text, LONGEST);
    let clean = text
        .trim()
        .replace(',', ".")
        .replace(['\u{2033}', '\u{201d}'], "\"");
    let clean = clean.replace(['\u{2032}', '\u{2019}'], "'");
    // As a computed size is shown: what a field shows can be typed over in part.
    let clean = clean.trim_start_matches(['~', '\u{b1}']).trim_start();
    let clean = spelled_out(clean.replace("''", "\""));
    if clean.is_empty() {
        return Err(SizeError::Empty);
    }
    if clean.starts_with(['-', '\u{2212}']) {
        return Err(SizeError::Negative(shown));
    }
    if clean.chars().count() > LONGEST {
        return Err(SizeError::NotASize(shown));
    }
    let read = match feet_and_rest(&clean) {
        Some(parts) => parse_feet(parts, &shown),
        None => parse_one(&clean, &shown, default),
    }?;
    if read.mm() / read.unit().mm() > LARGEST {
        return Err(SizeError::TooLarge(shown));
    }
    Ok(read)
}

/// Fractions that are one sign, as some keyboards and pages have them: `1½` is `1 1/2`.
fn spelled_out(text: String) -> String {
    const SIGNS: [(char, &str); 7] = [
        ('¼', " 1/4"),
        ('½', " 1/2"),
        ('¾', " 3/4"),
        ('⅛', " 1/8"),
        ('⅜', " 3/8"),
        ('⅝', " 5/8"),
        ('⅞', " 7/8"),
    ];
    let is_one = |(sign, _): &&(char, &str)| text.contains(*sign);
    match SIGNS.iter().find(is_one) {
        Some((sign, digits)) => text.replacen(*sign, digits, 1).trim_start().to_owned(),
        None => text,
    }
}

/// What stands before and after the sign for feet; `None` of a size that has no feet.
fn feet_and_rest(clean: &str) -> Option<(&str, &str)> {
    let signs = ["'", "ft", "FT", "Ft"];
    signs.into_iter().find_map(|sign| clean.split_once(sign))
}

/// `2 ft`, `2'`, `2 ft 3 1/2 in`, `2' 3"`.
fn parse_feet((feet, rest): (&str, &str), shown: &str) -> Result<Length, SizeError> {
    let not = || SizeError::NotASize(shown.to_owned());
    let feet = parse_number(feet.trim(), shown)?.of(Unit::Foot);
    if rest.trim().is_empty() {
        return Ok(feet);
    }
    let inches = parse_one(rest.trim(), shown, Some(Unit::Inch))?;
    if inches.unit() != Unit::Inch {
        return Err(not());
    }
    Ok(Length::from_mm(feet.mm() + inches.mm(), Unit::Inch))
}

fn parse_one(clean: &str, shown: &str, default: Option<Unit>) -> Result<Length, SizeError> {
    let end = clean
        .find(|c: char| c.is_alphabetic() || c == '"')
        .unwrap_or(clean.len());
    let (number, unit) = clean.split_at(end);
    let unit = match unit.trim().to_lowercase().as_str() {
        "" => default.ok_or_else(|| SizeError::NoUnit(shown.to_owned()))?,
        "in" | "\"" | "inch" | "inches" => Unit::Inch,
        "mm" => Unit::Millimetre,
        "cm" => Unit::Centimetre,
        _ if number.trim().is_empty() => return Err(SizeError::NotASize(shown.to_owned())),
        other if is_exponent(other) => return Err(SizeError::TooLarge(shown.to_owned())),
        other => return Err(SizeError::Unit(super::quoted(other, LONGEST))),
    };
    Ok(parse_number(number.trim(), shown)?.of(unit))
}

/// `e999 mm` is the rest of a number past counting; `ells` is a unit that nobody uses.
fn is_exponent(unit: &str) -> bool {
    let power = unit.strip_prefix('e').and_then(|rest| rest.chars().next());
    power.is_some_and(|c| c.is_ascii_digit() || c == '+' || c == '-')
}

/// A number before its unit is known.
enum Number {
    Fraction(u32, u32),
    Decimal(f64),
}

impl Number {
    fn of(self, unit: Unit) -> Length {
        match self {
            Self::Fraction(over, under) => Length::fraction(over, under, unit),
            Self::Decimal(number) => Length::decimal(number, unit),
        }
    }
}

/// `3`, `0.75`, `3/4`, `1 1/2`, `1-1/2`.
fn parse_number(text: &str, shown: &str) -> Result<Number, SizeError> {
    let not = || SizeError::NotASize(shown.to_owned());
    let Some((over, under)) = text.split_once('/') else {
        return parse_decimal(text, shown);
    };
    let under = digits(under.trim(), shown)?;
    if under == 0 {
        return Err(SizeError::OverZero(shown.to_owned()));
    }
    let over = over.trim();
    let (whole, over) = match over.rsplit_once([' ', '-']) {
        Some((whole, over)) => (digits(whole.trim(), shown)?, over),
        None => (0, over),
    };
    let over = digits(over.trim(), shown)?;
    if under > 100_000 {
        return Err(SizeError::TooLarge(shown.to_owned()));
    }
    let common = gcd(over, under);
    whole
        .checked_mul(under / common)
        .and_then(|parts| parts.checked_add(over / common))
        .map(|parts| Number::Fraction(parts, under / common))
        .ok_or_else(not)
}

fn parse_decimal(text: &str, shown: &str) -> Result<Number, SizeError> {
    if let Ok(number) = digits(text, shown) {
        return Ok(Number::Fraction(number, 1));
    }
    let plain = !text.is_empty() && text.chars().all(|c| c.is_ascii_digit() || c == '.');
    match text.parse::<f64>() {
        Ok(number) if plain && number.is_finite() && number <= LARGEST => {
            Ok(Number::Decimal(number))
        }
        Ok(_) if plain => Err(SizeError::TooLarge(shown.to_owned())),
        _ => Err(SizeError::NotASize(shown.to_owned())),
    }
}

fn digits(text: &str, shown: &str) -> Result<u32, SizeError> {
    if text.is_empty() || !text.chars().all(|c| c.is_ascii_digit()) {
        return Err(SizeError::NotASize(shown.to_owned()));
    }
    match text.parse::<u32>() {
        Ok(number) if f64::from(number) <= LARGEST => Ok(number),
        _ => Err(SizeError::TooLarge(shown.to_owned())),
    }
}
