//! The sizes in a text: `1/8 x 3/4 in`.

use crate::units::{Length, SizeError, Unit, quoted};

/// As much of a text is quoted, in characters.
const LONGEST: usize = 40;
/// As much of a whole text, which has several sizes and words.
pub(super) const WHOLE: usize = 120;

/// The sizes between the signs x. Those without a unit are in that of the last one; where that has
/// none either, a fraction anywhere says that they are inches, whatever else is counted in.
pub(super) fn sizes(text: &str, default: Option<Unit>) -> Result<Vec<Length>, SizeError> {
    let parts: Vec<&str> = text.split('x').map(str::trim).collect();
    let lacking = parts.iter().filter(|part| part.is_empty()).count();
    // Signs x that no sizes stand between are no signs between sizes: the whole is blamed.
    if lacking > 1 || (lacking == 1 && parts.len() > 1 && parts[0].is_empty()) {
        return Err(SizeError::NotASize(quoted(text, LONGEST)));
    }
    let last = parts.last().copied().unwrap_or_default();
    let default = if parts.iter().any(|part| has_fraction(part)) {
        Some(Unit::Inch)
    } else {
        default
    };
    let unit = match default {
        Some(default) => Length::parse(last, default)?.unit(),
        None => last.parse::<Length>()?.unit(),
    };
    let read = parts.into_iter().map(|part| Length::parse(part, unit));
    read.collect()
}

fn has_fraction(size: &str) -> bool {
    let sign = |c: char| c == '/' || matches!(c, '\u{bc}'..='\u{be}' | '\u{2150}'..='\u{215e}');
    size.contains(sign)
}

/// Whether a word belongs to a size: a number, a unit, or the sign between two.
pub(super) fn is_size(word: &str) -> bool {
    const UNITS: [&str; 8] = ["in", "mm", "cm", "ft", "x", "inch", "inches", "feet"];
    UNITS.contains(&word) || !word.chars().all(|c| c.is_alphabetic() || c == '-')
}

/// A text as it is read: small letters, and x between two sizes.
pub(super) fn plain(text: &str) -> String {
    let plain = |sign: char| if sign.is_control() { ' ' } else { sign };
    let text: String = text.chars().map(plain).collect();
    text.trim().to_lowercase().replace('\u{d7}', "x")
}
