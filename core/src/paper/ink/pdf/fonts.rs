//! The font that a PDF brings along, beside the two that every reader has.

use std::fmt::Write as _;

use lopdf::{Dictionary, Document, Object, ObjectId, Stream, dictionary};

use crate::paper::font::spare::{NAME, STEM, Subset};

/// What content calls the font.
pub(super) const SPARE: &str = "Spare";

/// Puts the font into the file and among the fonts of its pages, which share one list of them.
pub(super) fn put(file: &mut Document, letters: &Subset) {
    let font = spare(file, letters);
    let Some(first) = file.page_iter().next() else {
        return;
    };
    let list = fonts_of(file, first).expect("the page writer gives its pages a list of fonts");
    file.get_dictionary_mut(list)
        .expect("the list is there")
        .set(SPARE, font);
}

/// Where the list of a page's fonts stands.
fn fonts_of(file: &Document, page: ObjectId) -> lopdf::Result<ObjectId> {
    let page = file.get_dictionary(page)?;
    let resources = page.get(b"Resources")?.as_reference()?;
    let resources = file.get_dictionary(resources)?;
    resources.get(b"Font")?.as_reference()
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
    let words = file.add_object(Stream::new(
        Dictionary::new(),
        to_unicode(letters).into_bytes(),
    ));
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
    let bytes = file.add_object(Stream::new(dictionary! { "Length1" => length }, bytes));
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
    let mut number = super::fnv(signs.as_bytes().iter());
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
