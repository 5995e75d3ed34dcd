//! The font that a PDF brings along for texts with signs that Helvetica lacks: Ubuntu Light, the
//! window's own, which has the Latin, Greek and Cyrillic alphabets. Its licence, the Ubuntu Font
//! Licence 1.0, allows it to be embedded in any document.
//!
//! It is light and has no bold of its own, so that its strokes are thickened with a line around
//! them; widths stay those of the font.

use std::collections::BTreeMap;

use epaint_default_fonts::UBUNTU_LIGHT;
use kurbo::{Affine, BezPath, Point};
use skrifa::charmap::Charmap;
use skrifa::instance::{LocationRef, Size};
use skrifa::metrics::{GlyphMetrics, Metrics};
use skrifa::outline::{DrawSettings, OutlinePen};
use skrifa::{FontRef, GlyphId, MetadataProvider as _};
use subsetter::GlyphRemapper;

/// What the font calls itself (its name table, PostScript name).
pub(crate) const NAME: &str = "Ubuntu-Light";

/// How wide its upright strokes are, in thousandths of the em square.
pub(crate) const STEM: u8 = 68;

/// The font, opened.
pub(crate) struct Spare {
    signs: Charmap<'static>,
    widths: GlyphMetrics<'static>,
    whole: Metrics,
}

impl Spare {
    pub(crate) fn open() -> Self {
        let font = FontRef::new(UBUNTU_LIGHT).expect("the program's own font can be read");
        let (size, place) = (Size::unscaled(), LocationRef::default());
        Self {
            signs: font.charmap(),
            widths: font.glyph_metrics(size, place),
            whole: font.metrics(size, place),
        }
    }

    pub(crate) fn has(&self, sign: char) -> bool {
        self.signs.map(sign).is_some()
    }

    /// The glyph of a sign; texts are [set](super::set) in signs that there are.
    fn glyph(&self, sign: char) -> GlyphId {
        self.signs.map(sign).unwrap_or(GlyphId::NOTDEF)
    }

    /// Thousandths of the em square.
    fn per_mille(&self, units: f32) -> f64 {
        f64::from(units) * 1000.0 / f64::from(self.whole.units_per_em)
    }

    /// The width of a text in thousandths of the em square.
    pub(crate) fn width(&self, text: &str) -> f64 {
        let advance = |sign| self.advance(self.glyph(sign));
        text.chars().map(advance).sum()
    }

    /// The outlines of a text's letters, in thousandths of the em square from where it begins.
    pub(crate) fn outline(&self, text: &str) -> BezPath {
        let font = FontRef::new(UBUNTU_LIGHT).expect("the program's own font can be read");
        let outlines = font.outline_glyphs();
        let to_mille = self.per_mille(1.0);
        let mut all = BezPath::new();
        let mut at = 0.0;
        for sign in text.chars() {
            let glyph = self.glyph(sign);
            let mut traced = Traced(BezPath::new());
            if let Some(outline) = outlines.get(glyph) {
                let settings = DrawSettings::unhinted(Size::unscaled(), LocationRef::default());
                outline
                    .draw(settings, &mut traced)
                    .expect("the program's own letters can be drawn");
            }
            let place = Affine::translate((at, 0.0)) * Affine::scale(to_mille);
            all.extend(place * traced.0);
            at += self.advance(glyph);
        }
        all
    }

    fn advance(&self, glyph: GlyphId) -> f64 {
        self.per_mille(self.widths.advance_width(glyph).unwrap_or_default())
    }

    /// How far its letters reach, in thousandths of the em square.
    pub(crate) fn reach(&self) -> Reach {
        let whole = &self.whole;
        let all = whole.bounds.unwrap_or_default();
        Reach {
            ascent: self.per_mille(whole.ascent),
            descent: self.per_mille(whole.descent),
            capital: self.per_mille(whole.cap_height.unwrap_or(whole.ascent)),
            bounds: [all.x_min, all.y_min, all.x_max, all.y_max].map(|to| self.per_mille(to)),
        }
    }
}

/// A letter as a path.
struct Traced(BezPath);

impl OutlinePen for Traced {
    fn move_to(&mut self, x: f32, y: f32) {
        self.0.move_to(point(x, y));
    }

    fn line_to(&mut self, x: f32, y: f32) {
        self.0.line_to(point(x, y));
    }

    fn quad_to(&mut self, cx: f32, cy: f32, x: f32, y: f32) {
        self.0.quad_to(point(cx, cy), point(x, y));
    }

    fn curve_to(&mut self, ax: f32, ay: f32, bx: f32, by: f32, x: f32, y: f32) {
        self.0.curve_to(point(ax, ay), point(bx, by), point(x, y));
    }

    fn close(&mut self) {
        self.0.close_path();
    }
}

fn point(x: f32, y: f32) -> Point {
    Point::new(f64::from(x), f64::from(y))
}

/// What a PDF's font descriptor says of a font (ISO 32000-1, table 122).
pub(crate) struct Reach {
    pub(crate) ascent: f64,
    pub(crate) descent: f64,
    pub(crate) capital: f64,
    pub(crate) bounds: [f64; 4],
}

/// The part of the font that a file needs: glyphs by the numbers that they have in it.
pub(crate) struct Subset {
    font: Spare,
    glyphs: GlyphRemapper,
    signs: BTreeMap<u16, char>,
}

impl Subset {
    pub(crate) fn new() -> Self {
        Self {
            font: Spare::open(),
            glyphs: GlyphRemapper::new(),
            signs: BTreeMap::new(),
        }
    }

    pub(crate) fn is_used(&self) -> bool {
        self.glyphs.num_gids() > 1
    }

    /// The number of a sign's glyph, which is part of the font from then on.
    pub(crate) fn number(&mut self, sign: char) -> u16 {
        let glyph = self.font.glyph(sign).to_u32();
        let glyph = u16::try_from(glyph).expect("a font has 65536 glyphs at most");
        let number = self.glyphs.remap(glyph);
        self.signs.entry(number).or_insert(sign);
        number
    }

    /// Each glyph by its number, from 1: what it shows, and its width in thousandths of the em
    /// square.
    pub(crate) fn glyphs(&self) -> impl Iterator<Item = (u16, char, f64)> {
        let width = |sign: char| self.font.advance(self.font.glyph(sign));
        let all = self.signs.iter();
        all.map(move |(number, sign)| (*number, *sign, width(*sign)))
    }

    pub(crate) fn reach(&self) -> Reach {
        self.font.reach()
    }

    /// The font with these glyphs only, as a file holds it.
    pub(crate) fn bytes(&self) -> Vec<u8> {
        subsetter::subset(UBUNTU_LIGHT, 0, &self.glyphs)
            .expect("the program's own font can be taken apart")
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Letters that no two of the alphabets of Europe share, and two alphabets whole.
    #[test]
    fn it_has_the_latin_greek_and_cyrillic_alphabets() {
        let spare = Spare::open();
        for sign in "ÄŁőğħķЖђѓΞώİŋŧ".chars().chain('А'..='я').chain('ά'..='ώ') {
            assert!(spare.has(sign), "{sign}");
        }
    }

    /// Its upright strokes are as wide as its letter I.
    #[test]
    fn stems_are_as_measured() {
        let spare = Spare::open();
        let stem = spare.widths.bounds(spare.glyph('I')).expect("it is drawn");
        assert_eq!(f64::from(stem.x_max - stem.x_min), f64::from(STEM));
    }

    #[test]
    fn a_subset_is_a_small_part() {
        let mut subset = Subset::new();
        assert!(!subset.is_used());
        let numbers: Vec<u16> = "Клещи".chars().map(|sign| subset.number(sign)).collect();
        assert_eq!(numbers, [1, 2, 3, 4, 5]);
        assert_eq!(subset.number('е'), 3, "once in the font, once counted");
        let bytes = subset.bytes();
        assert!(bytes.len() * 20 < UBUNTU_LIGHT.len(), "{}", bytes.len());
        assert_eq!(bytes, subset.bytes());
    }
}
