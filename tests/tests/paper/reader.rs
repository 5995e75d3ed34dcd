//! Reads a PDF back with hayro, an independent PDF reader: what is painted where, in mm from the
//! page's lower left corner, y up.

use hayro::hayro_interpret::font::GlyphRun;
use hayro::hayro_interpret::hayro_cmap::BfString;
use hayro::hayro_interpret::{
    BlendMode, ClipPath, Context, Device, DrawMode, DrawProps, Image, ImageDrawProps,
    InterpreterCache, InterpreterSettings, Paint, SoftMask, interpret_page,
};
use hayro::hayro_syntax::Pdf;
use hayro::vello_cpu::Pixmap;
use hayro::vello_cpu::color::palette::css::WHITE;
use hayro::{PixmapSettings, RenderCache, RenderSettings, render};
use kurbo::{Affine, BezPath, Point, Rect, Shape};

/// Millimetres in a point, ISO 32000-1, 8.3.2.3.
pub(crate) const MM_PER_PT: f64 = 25.4 / 72.0;

/// A painted path.
#[derive(Debug, Clone)]
pub(crate) struct Painted {
    pub(crate) path: BezPath,
    /// Line width in mm; `None` when filled.
    pub(crate) width: Option<f64>,
    pub(crate) colour: [u8; 3],
    /// What shows of it.
    pub(crate) clip: Option<Rect>,
}

/// A shown text: each sign with the place where it begins.
#[derive(Debug, Clone)]
pub(crate) struct Shown {
    pub(crate) signs: Vec<(char, Point)>,
}

impl Shown {
    pub(crate) fn text(&self) -> String {
        self.signs.iter().map(|(sign, _)| *sign).collect()
    }

    pub(crate) fn at(&self) -> Point {
        self.signs[0].1
    }
}

/// All that is on a page.
#[derive(Debug, Default)]
pub(crate) struct Seen {
    pub(crate) paths: Vec<Painted>,
    pub(crate) texts: Vec<Shown>,
    clips: Vec<Rect>,
}

impl Seen {
    pub(crate) fn lines(&self) -> impl Iterator<Item = &Painted> {
        self.paths.iter().filter(|p| p.width.is_some())
    }

    pub(crate) fn fills(&self) -> impl Iterator<Item = &Painted> {
        self.paths.iter().filter(|p| p.width.is_none())
    }

    /// Where the only text of these words begins.
    #[track_caller]
    pub(crate) fn find(&self, words: &str) -> Point {
        let found: Vec<_> = self.texts.iter().filter(|t| t.text() == words).collect();
        assert_eq!(found.len(), 1, "\"{words}\" among {:?}", self.words());
        found[0].at()
    }

    pub(crate) fn words(&self) -> Vec<String> {
        self.texts.iter().map(Shown::text).collect()
    }
}

pub(crate) fn open(bytes: &[u8]) -> Pdf {
    Pdf::new(bytes.to_vec()).expect("an independent reader opens the file")
}

/// Every page as it is painted.
pub(crate) fn read(bytes: &[u8]) -> Vec<Seen> {
    let pdf = open(bytes);
    let cache = InterpreterCache::new();
    let pages = pdf.pages().iter().map(|page| {
        let whole = Rect::new(-1e6, -1e6, 1e6, 1e6);
        let settings = InterpreterSettings::default();
        let scale = Affine::scale(MM_PER_PT);
        let mut context = Context::new(scale, whole, &cache, page.xref(), settings);
        let mut seen = Seen::default();
        interpret_page(page, &mut context, &mut seen);
        seen
    });
    pages.collect()
}

/// A page as grey pixels, so many to a mm: width, then rows from the top, 0 black to 255 white.
pub(crate) fn raster(bytes: &[u8], page: usize, per_mm: f64) -> (usize, Vec<u8>) {
    let pdf = open(bytes);
    let scale = (per_mm * MM_PER_PT) as f32;
    let settings = PixmapSettings {
        x_scale: scale,
        y_scale: scale,
        bg_color: WHITE,
    };
    let pixels: Pixmap = render(
        &pdf.pages()[page],
        &RenderCache::new(),
        &InterpreterSettings::default(),
        &RenderSettings::default(),
        &settings,
    );
    let grey = pixels.data().iter().map(|pixel| pixel.g).collect();
    (usize::from(pixels.width()), grey)
}

impl<'a> Device<'a> for Seen {
    fn draw_path(&mut self, path: &BezPath, props: DrawProps<'a>, mode: &DrawMode) {
        let Paint::Color(colour) = &props.paint else {
            panic!("only plain colours are used");
        };
        let [red, green, blue, _] = colour.to_rgba().to_rgba8();
        let width = match mode {
            DrawMode::Fill(_) => None,
            DrawMode::Stroke(stroke) => Some(f64::from(stroke.line_width) * MM_PER_PT),
            DrawMode::FillAndStroke(..) | DrawMode::Invisible => panic!("never written"),
        };
        self.paths.push(Painted {
            path: props.transform * path,
            width,
            colour: [red, green, blue],
            clip: self.clips.iter().copied().reduce(|a, b| a.intersect(b)),
        });
    }

    fn push_clip_path(&mut self, clip: &ClipPath) {
        self.clips.push(clip.path.bounding_box());
    }

    fn pop_clip(&mut self) {
        self.clips.pop();
    }

    fn draw_glyph_run(&mut self, run: &GlyphRun<'_, 'a>, props: DrawProps<'a>, mode: &DrawMode) {
        // Letters with a line around them come twice.
        if let DrawMode::Stroke(_) = mode {
            return;
        }
        let sign = |name: Option<BfString>| match name {
            Some(BfString::Char(sign)) => sign,
            Some(BfString::String(text)) => text.chars().next().unwrap_or('\u{fffd}'),
            None => '\u{fffd}',
        };
        let signs = run.glyphs().iter().map(|glyph| {
            let at = props.transform * glyph.transform() * Point::ZERO;
            (sign(glyph.as_unicode()), at)
        });
        let signs = signs.collect();
        self.texts.push(Shown { signs });
    }

    fn draw_image(&mut self, _: Image<'a, '_>, _: ImageDrawProps<'a>) {
        panic!("no image is ever written");
    }

    fn push_transparency_group(&mut self, _: f32, _: Option<SoftMask<'a>>, _: BlendMode) {}

    fn pop_transparency_group(&mut self) {}
}
