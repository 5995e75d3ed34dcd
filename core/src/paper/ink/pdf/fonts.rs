//! The fonts of a PDF: two that every reader has, and the one that it brings along.

use std::fmt::Write as _;

use lopdf::{Dictionary, Document, Object, ObjectId, dictionary};

use super::stream;
use crate::paper::font::spare::{NAME, STEM, Subset};

/// What content calls the fonts.
pub(super) const PLAIN: &str = "P";
pub(super) const BOLD: &str = "B";
pub(super) const SPARE: &str = "S";

/// Puts the fonts into the file, and says what content calls them.
pub(super) fn put(file: &mut Document, letters: &Subset) -> Dictionary {
    let mut fonts = dictionary! {
        PLAIN => standard(file, "Helvetica"),
        BOLD => standard(file, "Helvetica-Bold"),
    };
    if letters.is_used() {
        fonts.set(SPARE, spare(file, letters));
    }
    fonts
}

/// One of the 14 standard fonts (ISO 32000-1, 9.6.2.2).
fn standard(file: &mut Document, name: &str) -> ObjectId {
    file.add_object(dictionary! {
        "Type" => "Font",
        "Subtype" => "Type1",
        "BaseFont" => name,
        "Encoding" => "WinAnsiEncoding",
    })
}

/// A composite font whose codes are the numbers of its glyphs (ISO 32000-1, 9.7).
fn spare(file: &mut Document, letters: &Subset) -> ObjectId {
    let name = format!("{}+{NAME}", tag(letters));
    let system = dictionary! {
        "Registry" => Object::string_literal("Adobe"),
        "Ordering" => Object::string_literal("Identity"),
        "Supplement" => 0,
    };
    let of_file = descriptor(file, letters, &name);
    let inner = file.add_object(dictionary! {
        "Type" => "Font",
        "Subtype" => "CIDFontType2",
        "BaseFont" => name.as_str(),
        "CIDSystemInfo" => system,
        "FontDescriptor" => of_file,
        "W" => widths(letters),
        "CIDToGIDMap" => "Identity",
    });
    let words = stream(file, Dictionary::new(), to_unicode(letters).into_bytes());
    file.add_object(dictionary! {
        "Type" => "Font",
        "Subtype" => "Type0",
        "BaseFont" => name.as_str(),
        "Encoding" => "Identity-H",
        "DescendantFonts" => vec![inner.into()],
        "ToUnicode" => words,
    })
}

fn descriptor(file: &mut Document, letters: &Subset, name: &str) -> ObjectId {
    /// Glyphs that stand for themselves (ISO 32000-1, table 123).
    const SYMBOLIC: i64 = 4;
    let bytes = letters.bytes();
    let length = i64::try_from(bytes.len()).expect("a font is no larger than 2 GiB");
    let bytes = stream(file, dictionary! { "Length1" => length }, bytes);
    let reach = letters.reach();
    file.add_object(dictionary! {
        "Type" => "FontDescriptor",
        "FontName" => name,
        "Flags" => SYMBOLIC,
        "FontBBox" => reach.bounds.map(whole).to_vec(),
        "ItalicAngle" => 0,
        "Ascent" => whole(reach.ascent),
        "Descent" => whole(reach.descent),
        "CapHeight" => whole(reach.capital),
        "StemV" => i64::from(STEM),
        "FontFile2" => bytes,
    })
}

#[allow(
    clippy::cast_possible_truncation,
    reason = "a font's sizes are some thousandths of its em square"
)]
fn whole(number: f64) -> Object {
    Object::Integer(number.round() as i64)
}

#[allow(
    clippy::cast_possible_truncation,
    reason = "PDF numbers are single precision, and so is the font"
)]
fn widths(letters: &Subset) -> Vec<Object> {
    let all = letters.glyphs().map(|(_, _, width)| width as f32);
    vec![1.into(), Object::Array(all.map(Object::Real).collect())]
}

/// Six letters that tell this part of the font from others (ISO 32000-1, 9.6.4).
fn tag(letters: &Subset) -> String {
    let signs: String = letters.glyphs().map(|(_, sign, _)| sign).collect();
    let mut number = super::fnv(0, signs.as_bytes());
    let letter = |_| {
        let letter = u8::try_from(number % 26).expect("less than 26");
        number /= 26;
        char::from(b'A' + letter)
    };
    (0..6).map(letter).collect()
}

/// What each code stands for, so that words can be found and copied (ISO 32000-1, 9.10.3).
fn to_unicode(letters: &Subset) -> String {
    /// More lines than this may not stand in one block.
    const MOST: usize = 100;
    let mut map = String::from(
        "/CIDInit /ProcSet findresource begin\n12 dict begin\nbegincmap\n\
         /CIDSystemInfo << /Registry (Adobe) /Ordering (UCS) /Supplement 0 >> def\n\
         /CMapName /Adobe-Identity-UCS def\n/CMapType 2 def\n\
         1 begincodespacerange\n<0000> <FFFF>\nendcodespacerange\n",
    );
    let all: Vec<(u16, char, f64)> = letters.glyphs().collect();
    for block in all.chunks(MOST) {
        let _ = writeln!(map, "{} beginbfchar", block.len());
        for (number, sign, _) in block {
            let _ = write!(map, "<{number:04X}> <");
            for unit in sign.encode_utf16(&mut [0; 2]) {
                let _ = write!(map, "{unit:04X}");
            }
            map.push_str(">\n");
        }
        map.push_str("endbfchar\n");
    }
    map + "endcmap\nCMapName currentdict /CMap defineresource pop\nend\nend\n"
}
