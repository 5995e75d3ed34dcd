//! Reading a picture from disk while the window goes on.

use std::io::Cursor;
use std::path::{Path, PathBuf};
use std::sync::mpsc::{Receiver, TryRecvError, channel};

use egui::{ColorImage, Context};
use image::{DynamicImage, ImageDecoder, ImageFormat, ImageReader, Limits};

/// The longest side that is kept, pixels: finer than a sheet shows, small enough for any card.
const LONGEST: u32 = 2048;
/// The largest file that is read, bytes: a scan at its finest.
const LARGEST: u64 = 300 << 20;
/// The largest picture that is unpacked: pixels a side, and bytes in memory.
const WIDEST: u32 = 40_000;
const MOST_MEMORY: u64 = 1 << 30;

/// A picture on its way.
#[derive(Debug)]
pub(super) struct Loading {
    pub(super) path: PathBuf,
    from: Receiver<Result<ColorImage, String>>,
}

impl Loading {
    /// Begins to read a picture.
    pub(super) fn start(path: &Path, ctx: &Context) -> Self {
        let (to, from) = channel();
        let (path, ctx) = (path.to_owned(), ctx.clone());
        let what = path.clone();
        std::thread::spawn(move || {
            // Nobody may be waiting any more.
            to.send(read(&what)).ok();
            ctx.request_repaint();
        });
        Self { path, from }
    }

    /// The picture, or one sentence on why there is none; `None` while it is on its way.
    pub(super) fn poll(&self) -> Option<Result<ColorImage, String>> {
        match self.from.try_recv() {
            Ok(read) => Some(read),
            Err(TryRecvError::Empty) => None,
            Err(TryRecvError::Disconnected) => Some(Err(damaged(&self.path))),
        }
    }
}

fn damaged(path: &Path) -> String {
    format!(
        "{}: the picture cannot be read, it is damaged: open it elsewhere and save it anew as PNG or JPEG",
        path.display()
    )
}

/// Reads, turns as the camera was held, and scales down.
fn read(path: &Path) -> Result<ColorImage, String> {
    let bytes = bytes(path)?;
    let reader = ImageReader::new(Cursor::new(bytes)).with_guessed_format();
    let mut reader = reader.map_err(|_gone| damaged(path))?;
    if !matches!(reader.format(), Some(ImageFormat::Png | ImageFormat::Jpeg)) {
        return Err(format!(
            "{}: this is no PNG and no JPEG: save the picture as one of them",
            path.display()
        ));
    }
    let mut limits = Limits::default();
    limits.max_image_width = Some(WIDEST);
    limits.max_image_height = Some(WIDEST);
    limits.max_alloc = Some(MOST_MEMORY);
    reader.limits(limits);
    let picture = unpacked(reader).map_err(|error| match error {
        image::ImageError::Limits(_) => format!(
            "{}: the picture is too large, over {WIDEST} pixels a side or 1 GiB: scale it down",
            path.display()
        ),
        image::ImageError::Decoding(_)
        | image::ImageError::Encoding(_)
        | image::ImageError::Parameter(_)
        | image::ImageError::Unsupported(_)
        | image::ImageError::IoError(_) => damaged(path),
    })?;
    Ok(for_screen(picture))
}

fn unpacked(reader: ImageReader<Cursor<Vec<u8>>>) -> image::ImageResult<DynamicImage> {
    let mut decoder = reader.into_decoder()?;
    let held = decoder.orientation()?;
    let mut picture = DynamicImage::from_decoder(decoder)?;
    picture.apply_orientation(held);
    Ok(picture)
}

fn for_screen(picture: DynamicImage) -> ColorImage {
    let large = picture.width().max(picture.height()) > LONGEST;
    let picture = if large {
        picture.thumbnail(LONGEST, LONGEST)
    } else {
        picture
    };
    let picture = picture.into_rgba8();
    let side = |side: u32| usize::try_from(side).expect("a side is at most some thousand pixels");
    let size = [side(picture.width()), side(picture.height())];
    ColorImage::from_rgba_unmultiplied(size, picture.as_raw())
}

fn bytes(path: &Path) -> Result<Vec<u8>, String> {
    let named = |what: &str| format!("{}: {what}", path.display());
    let known = std::fs::metadata(path);
    let known = known.map_err(|error| named(&crate::disk::files::unreadable(&error)))?;
    if !known.is_file() {
        return Err(named("this is no file: name a picture"));
    }
    if known.len() > LARGEST {
        return Err(named(
            "the file is larger than 300 MiB: scale the picture down",
        ));
    }
    std::fs::read(path).map_err(|error| named(&crate::disk::files::unreadable(&error)))
}
