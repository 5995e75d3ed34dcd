//! A photograph or scan under the paper's side view, to draw over.
//!
//! Where it lies is remembered by the window and not in the design: a design that is given away
//! carries no path of this machine, and what is traced is no part of what is forged.

mod load;
mod place;
mod tools;

use std::path::{Path, PathBuf};

use egui::{ColorImage, Context, Response, TextureHandle, TextureOptions};
use kurbo::Point;

use load::Loading;
use place::Place;
use tools::Tool;

use crate::window::paint::ink::Under;
use crate::window::paint::view::View;

/// How strongly a picture shows at first.
const DIMMED: f32 = 0.5;

/// What lies under the paper's drawing, and what the hand does with it.
#[derive(Default)]
pub(crate) struct Trace {
    loading: Option<(Loading, Option<Kept>)>,
    picture: Option<Picture>,
    tool: Tool,
    /// A picture to be loaded as soon as there is a window.
    wanted: Option<Kept>,
    /// The picture that lay here could not be read.
    failed: bool,
}

/// A picture on the paper.
struct Picture {
    texture: TextureHandle,
    kept: Kept,
}

/// What is remembered of a picture.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct Kept {
    path: PathBuf,
    place: Place,
    /// How strongly it shows, 0 to 1.
    strength: f32,
    shown: bool,
}

impl Trace {
    /// Begins to load a picture, to lie where it was left if it was here before.
    pub(crate) fn load(&mut self, ctx: &Context, path: &Path, kept: Option<Kept>) {
        self.loading = Some((Loading::start(path, ctx), kept));
    }

    /// Takes in a picture that has come. A fresh one is laid as wide as `pair`, the drawn length.
    ///
    /// # Errors
    /// One sentence on why there is none.
    pub(crate) fn poll(&mut self, ctx: &Context, pair: (f64, f64)) -> Result<(), String> {
        if let Some(kept) = self.wanted.take() {
            self.load(ctx, &kept.path.clone(), Some(kept));
        }
        let Some((loading, kept)) = &self.loading else {
            return Ok(());
        };
        let Some(read) = loading.poll() else {
            /// The thread wakes the window; this is for one that dies without a word.
            const PATIENCE: std::time::Duration = std::time::Duration::from_millis(200);
            ctx.request_repaint_after(PATIENCE);
            return Ok(());
        };
        let (path, kept) = (loading.path.clone(), kept.clone());
        self.loading = None;
        self.failed = read.is_err() && self.picture.is_none();
        let image = read?;
        let kept = kept.unwrap_or_else(|| Kept::fresh(path, &image, pair));
        let texture = ctx.load_texture("traced", image, TextureOptions::LINEAR);
        self.picture = Some(Picture { texture, kept });
        self.tool = Tool::None;
        Ok(())
    }

    /// Lays a picture where it lay, as soon as there is a window.
    pub(crate) fn bring_back(&mut self, kept: Option<Kept>) {
        self.wanted = kept;
    }

    /// Whether a picture is on its way.
    pub(crate) fn is_loading(&self) -> bool {
        self.loading.is_some() || self.wanted.is_some()
    }

    /// Takes the picture away.
    pub(crate) fn remove(&mut self) {
        *self = Self::default();
    }

    /// Whether the picture that lay here could not be read.
    pub(crate) fn has_failed(&self) -> bool {
        self.failed
    }

    /// What is to be remembered of it.
    pub(crate) fn kept(&self) -> Option<&Kept> {
        self.picture.as_ref().map(|picture| &picture.kept)
    }

    /// The picture as it lies now.
    pub(crate) fn under(&self) -> Option<Under> {
        let picture = self.picture.as_ref().filter(|picture| picture.kept.shown)?;
        Some(Under {
            texture: picture.texture.id(),
            corners: picture.kept.place.corners(),
            strength: picture.kept.strength,
        })
    }

    /// Whether the hand works on the picture, so that the sheet and its handles keep still.
    pub(crate) fn has_hand(&self) -> bool {
        self.picture.is_some() && self.tool != Tool::None
    }

    /// What is done on the sheet with the tool that is taken.
    pub(crate) fn on_sheet(&mut self, response: &Response, view: View) {
        let Some(picture) = &mut self.picture else {
            return;
        };
        self.tool.on_sheet(response, view, &mut picture.kept.place);
    }
}

impl Kept {
    fn fresh(path: PathBuf, image: &ColorImage, (from, to): (f64, f64)) -> Self {
        #[allow(clippy::cast_precision_loss, reason = "a side is some thousand pixels")]
        let [width, height] = image.size.map(|side| side.max(1) as f64);
        let place = Place {
            middle: Point::new(f64::midpoint(from, to), 0.0),
            width: (to - from).max(10.0),
            tall: height / width,
            turn: 0.0,
        };
        Self {
            path,
            place,
            strength: DIMMED,
            shown: true,
        }
    }

    /// As one line of text.
    pub(crate) fn line(&self) -> String {
        let Self {
            path,
            place,
            strength,
            shown,
        } = self;
        let shown = if *shown { "shown" } else { "hidden" };
        format!("{shown}\t{strength}\t{}\t{}", place.words(), path.display())
    }

    /// Reads the line back; `None` where it says nothing sound.
    pub(crate) fn read(line: &str) -> Option<Self> {
        let mut words = line.splitn(4, '\t');
        let shown = words.next()? == "shown";
        let strength: f32 = words.next()?.parse().ok()?;
        let place = Place::read(words.next()?)?;
        let path = PathBuf::from(words.next()?);
        (0.0..=1.0).contains(&strength).then_some(Self {
            path,
            place,
            strength,
            shown,
        })
    }
}
