//! The paper's lettering: which font a text is set in, and how wide it is.
//!
//! A text is set in Helvetica, which no file has to bring along, while that has all its signs. Any
//! other is set whole in the spare font, so that a name does not mix two.

pub(crate) mod spare;
pub(crate) mod standard;

use std::borrow::Cow;

/// The font that a text is set in.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Face {
    /// Helvetica, upright or bold.
    Standard,
    /// The font that a PDF brings along.
    Spare,
}

/// What stands for a sign that no font of the paper has: an empty lozenge, which no size or name
/// has.
pub const LACKING: char = '\u{25ca}';

/// Width of a text in mm at a font size in mm, as it stands on paper.
///
/// ```
/// use reinwright_core::paper::font::text_width;
/// assert!((text_width("half", 10.0, false) - 16.12).abs() < 1e-9);
/// ```
pub fn text_width(text: &str, size: f64, bold: bool) -> f64 {
    let (face, shown) = set(text);
    let thousandths: f64 = match face {
        Face::Standard => {
            let advances = shown.chars().map(|sign| standard::advance(sign, bold));
            f64::from(advances.flatten().sum::<u32>())
        }
        Face::Spare => spare::Spare::open().width(&shown),
    };
    thousandths * size / 1000.0
}

/// The text as it is when it is no wider than `room` mm, else cut short with dots behind.
///
/// ```
/// use reinwright_core::paper::font::cut_short;
/// assert_eq!(cut_short("half", 10.0, false, 17.0), "half");
/// assert_eq!(cut_short("half", 10.0, false, 16.0), "h…");
/// ```
pub fn cut_short(words: &str, size: f64, bold: bool, room: f64) -> String {
    /// Lets a text that was set smaller to fit count as fitting.
    const HAIR: f64 = 1e-6;
    let fits = |text: &str| text_width(text, size, bold) <= room + HAIR;
    let mut kept: String = words.into();
    while !fits(&kept) && kept.chars().count() > 1 {
        kept = kept.trim_end_matches('…').trim_end().to_owned();
        kept.pop();
        kept.push('…');
    }
    kept
}

/// The text with every sign that the paper's fonts lack replaced: by the nearest one that there
/// is, or by [`LACKING`].
pub fn paper_text(text: &str) -> Cow<'_, str> {
    set(text).1
}

/// The signs of a text that no font of the paper has, each once.
///
/// ```
/// use reinwright_core::paper::font::lacking;
/// assert_eq!(lacking("Zange ½ in, Клещи"), []);
/// assert_eq!(lacking("火鋏, 火"), ['火', '鋏']);
/// ```
pub fn lacking(text: &str) -> Vec<char> {
    let mut signs = Vec::new();
    if set(text).1.contains(LACKING) {
        let spare = spare::Spare::open();
        for sign in text.chars() {
            if !spare.has(sign) && nearest(sign).is_none() && !signs.contains(&sign) {
                signs.push(sign);
            }
        }
    }
    signs
}

/// The font of a text, and the text in signs of that font.
pub(crate) fn set(text: &str) -> (Face, Cow<'_, str>) {
    let is_standard = |sign: char| standard::byte_of(sign).is_some();
    if text.chars().all(is_standard) {
        return (Face::Standard, text.into());
    }
    if let Some(shown) = replaced(text, is_standard) {
        return (Face::Standard, shown.into());
    }
    let spare = spare::Spare::open();
    let plain = |sign: char| if spare.has(sign) { sign } else { LACKING };
    let shown = text.chars().map(|sign| match nearest(sign) {
        Some(near) if !spare.has(sign) => near.to_owned(),
        Some(_) | None => plain(sign).to_string(),
    });
    (Face::Spare, shown.collect::<String>().into())
}

/// The text with what is lacking replaced by what is near; `None` where there is nothing near.
fn replaced(text: &str, has: impl Fn(char) -> bool) -> Option<String> {
    let mut shown = String::with_capacity(text.len());
    for sign in text.chars() {
        if has(sign) {
            shown.push(sign);
        } else {
            shown.push_str(nearest(sign)?);
        }
    }
    Some(shown)
}

/// Signs that sizes and notes use, and what a smith reads the same way; a space for what is none.
fn nearest(sign: char) -> Option<&'static str> {
    let near = match sign {
        '\u{2212}' => "\u{2013}",
        '\u{2300}' => "\u{d8}",
        '\u{2032}' => "'",
        '\u{2033}' => "\"",
        '\u{2264}' => "<=",
        '\u{2265}' => ">=",
        '\u{2192}' => "->",
        '\u{2190}' => "<-",
        '\u{2248}' => "~",
        '\u{3c0}' => "pi",
        '\u{2009}' | '\u{202f}' | '\t' | '\n' => " ",
        _ => return None,
    };
    Some(near)
}
