//! The paper's font: Helvetica and Helvetica-Bold, which every PDF reader has, in the
//! Windows-1252 set of signs that they are written in.
//!
//! Advance widths are those of the published font metrics (AFM) of the 14 standard
//! fonts, version 002.000, in thousandths of the em square.

/// The first byte of the set that has a sign.
const FIRST: usize = 0x20;

/// Width of a text in mm at a font size in mm, as it stands on paper.
///
/// ```
/// use reinwright_core::paper::font::text_width;
/// assert!((text_width("half", 10.0, false) - 16.12).abs() < 1e-9);
/// ```
pub fn text_width(text: &str, size: f64, bold: bool) -> f64 {
    let table = if bold { &HELVETICA_BOLD } else { &HELVETICA };
    let thousandths: u32 = paper_text(text)
        .chars()
        .map(|sign| advance(sign, table))
        .sum();
    f64::from(thousandths) * size / 1000.0
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

fn advance(sign: char, table: &[u16; 224]) -> u32 {
    let byte = usize::from(byte_of(sign).unwrap_or(b'?'));
    u32::from(table[byte - FIRST])
}

/// The text with every sign that the paper's font lacks replaced: by the nearest one that it has,
/// or by a question mark.
pub fn paper_text(text: &str) -> String {
    let mut shown = String::with_capacity(text.len());
    for sign in text.chars() {
        match byte_of(sign) {
            Some(_) => shown.push(sign),
            None => shown.push_str(nearest(sign)),
        }
    }
    shown
}

/// Signs that sizes and notes use and that the set lacks.
fn nearest(sign: char) -> &'static str {
    match sign {
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
        _ => "?",
    }
}

/// The byte of a sign in Windows-1252 (the encoding that PDF calls `WinAnsiEncoding`).
fn byte_of(sign: char) -> Option<u8> {
    /// Bytes 0x80 to 0x9f, where the set leaves Latin-1; NUL where it has no sign.
    const MIDDLE: [char; 32] = [
        '\u{20ac}', '\0', '\u{201a}', '\u{192}', '\u{201e}', '\u{2026}', '\u{2020}', '\u{2021}',
        '\u{2c6}', '\u{2030}', '\u{160}', '\u{2039}', '\u{152}', '\0', '\u{17d}', '\0', '\0',
        '\u{2018}', '\u{2019}', '\u{201c}', '\u{201d}', '\u{2022}', '\u{2013}', '\u{2014}',
        '\u{2dc}', '\u{2122}', '\u{161}', '\u{203a}', '\u{153}', '\0', '\u{17e}', '\u{178}',
    ];
    match u8::try_from(sign) {
        Ok(byte @ (0x20..=0x7e | 0xa0..=0xff)) => Some(byte),
        Ok(_) => None,
        Err(_) => (0x80..=0x9f)
            .zip(MIDDLE)
            .find_map(|(byte, at)| (at == sign).then_some(byte)),
    }
}

/// Advance widths of Helvetica from 0x20 on; bytes without a sign are as wide as a bullet.
#[rustfmt::skip]
const HELVETICA: [u16; 224] = [
    278, 278, 355, 556, 556, 889, 667, 191, 333, 333, 389, 584, 278, 333, 278, 278,
    556, 556, 556, 556, 556, 556, 556, 556, 556, 556, 278, 278, 584, 584, 584, 556,
    1015, 667, 667, 722, 722, 667, 611, 778, 722, 278, 500, 667, 556, 833, 722, 778,
    667, 778, 722, 667, 611, 722, 667, 944, 667, 667, 611, 278, 278, 278, 469, 556,
    333, 556, 556, 500, 556, 556, 278, 556, 556, 222, 222, 500, 222, 833, 556, 556,
    556, 556, 333, 500, 278, 556, 500, 722, 500, 500, 500, 334, 260, 334, 584, 350,
    556, 350, 222, 556, 333, 1000, 556, 556, 333, 1000, 667, 333, 1000, 350, 611, 350,
    350, 222, 222, 333, 333, 350, 556, 1000, 333, 1000, 500, 333, 944, 350, 500, 667,
    278, 333, 556, 556, 556, 556, 260, 556, 333, 737, 370, 556, 584, 333, 737, 333,
    400, 584, 333, 333, 333, 556, 537, 278, 333, 333, 365, 556, 834, 834, 834, 611,
    667, 667, 667, 667, 667, 667, 1000, 722, 667, 667, 667, 667, 278, 278, 278, 278,
    722, 722, 778, 778, 778, 778, 778, 584, 778, 722, 722, 722, 722, 667, 667, 611,
    556, 556, 556, 556, 556, 556, 889, 500, 556, 556, 556, 556, 278, 278, 278, 278,
    556, 556, 556, 556, 556, 556, 556, 584, 611, 556, 556, 556, 556, 500, 556, 500,
];

/// Advance widths of Helvetica-Bold, likewise.
#[rustfmt::skip]
const HELVETICA_BOLD: [u16; 224] = [
    278, 333, 474, 556, 556, 889, 722, 238, 333, 333, 389, 584, 278, 333, 278, 278,
    556, 556, 556, 556, 556, 556, 556, 556, 556, 556, 333, 333, 584, 584, 584, 611,
    975, 722, 722, 722, 722, 667, 611, 778, 722, 278, 556, 722, 611, 833, 722, 778,
    667, 778, 722, 667, 611, 722, 667, 944, 667, 667, 611, 333, 278, 333, 584, 556,
    333, 556, 611, 556, 611, 556, 333, 611, 611, 278, 278, 556, 278, 889, 611, 611,
    611, 611, 389, 556, 333, 611, 556, 778, 556, 556, 500, 389, 280, 389, 584, 350,
    556, 350, 278, 556, 500, 1000, 556, 556, 333, 1000, 667, 333, 1000, 350, 611, 350,
    350, 278, 278, 500, 500, 350, 556, 1000, 333, 1000, 556, 333, 944, 350, 500, 667,
    278, 333, 556, 556, 556, 556, 280, 556, 333, 737, 370, 556, 584, 333, 737, 333,
    400, 584, 333, 333, 333, 611, 556, 278, 333, 333, 365, 556, 834, 834, 834, 611,
    722, 722, 722, 722, 722, 722, 1000, 722, 667, 667, 667, 667, 278, 278, 278, 278,
    722, 722, 778, 778, 778, 778, 778, 584, 778, 722, 722, 722, 722, 667, 667, 611,
    556, 556, 556, 556, 556, 556, 889, 556, 556, 556, 556, 556, 278, 278, 278, 278,
    611, 611, 611, 611, 611, 611, 611, 584, 611, 611, 611, 611, 611, 556, 611, 556,
];
