//! Reading a picture from disk while the window goes on.

use std::fs::File;
use std::io::BufReader;
use std::path::{Path, PathBuf};
use std::sync::mpsc::{Receiver, TryRecvError, channel};

use egui::{ColorImage, Context};
use image::metadata::Orientation;
use image::{DynamicImage, ImageDecoder, ImageError, ImageFormat, ImageReader, Limits};

/// The longest side that is kept, pixels: finer than a sheet shows, small enough for any card.
const LONGEST: u32 = 2048;
/// The largest file that is read, bytes: a scan at its finest.
const LARGEST: u64 = 300 << 20;
/// The most pixels that are unpacked: an A4 page at 700 dots to the inch. A progressive JPEG takes
/// the most room, 9 bytes a pixel, so that no picture takes more than 600 MB while it is read.
const MOST_PIXELS: u64 = 64_000_000;
/// The most bytes a pixel: red, green, blue and how it covers, 16 bits each.
const DEEPEST: u64 = 8;

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

/// Reads, scales down, and turns as the camera was held.
fn read(path: &Path) -> Result<ColorImage, String> {
    let reader = ImageReader::new(opened(path)?).with_guessed_format();
    let mut reader = reader.map_err(|_gone| damaged(path))?;
    if !matches!(reader.format(), Some(ImageFormat::Png | ImageFormat::Jpeg)) {
        return Err(format!(
            "{}: this is no PNG and no JPEG: save the picture as one of them",
            path.display()
        ));
    }
    let mut limits = Limits::default();
    limits.max_alloc = Some(MOST_PIXELS * DEEPEST);
    reader.limits(limits);
    unpacked(reader, path)
}

/// Unpacks a picture, unless its header says that it is too large for that.
fn unpacked(reader: ImageReader<BufReader<File>>, path: &Path) -> Result<ColorImage, String> {
    let unread = |error: ImageError| match error {
        ImageError::Limits(_) => format!(
            "{}: the picture takes too much memory: scale it down",
            path.display()
        ),
        ImageError::Decoding(_)
        | ImageError::Encoding(_)
        | ImageError::Parameter(_)
        | ImageError::Unsupported(_)
        | ImageError::IoError(_) => damaged(path),
    };
    let mut decoder = reader.into_decoder().map_err(unread)?;
    let (width, height) = decoder.dimensions();
    if u64::from(width) * u64::from(height) > MOST_PIXELS {
        return Err(format!(
            "{}: the picture has {width} x {height} pixels, over {} million: scale it down",
            path.display(),
            MOST_PIXELS / 1_000_000
        ));
    }
    let held = decoder.orientation().map_err(unread)?;
    let picture = DynamicImage::from_decoder(decoder).map_err(unread)?;
    Ok(for_screen(picture, held))
}

fn for_screen(picture: DynamicImage, held: Orientation) -> ColorImage {
    let large = picture.width().max(picture.height()) > LONGEST;
    let mut picture = if large {
        picture.thumbnail(LONGEST, LONGEST)
    } else {
        picture
    };
    picture.apply_orientation(held);
    let picture = picture.into_rgba8();
    let side = |side: u32| usize::try_from(side).expect("a side is at most some thousand pixels");
    let size = [side(picture.width()), side(picture.height())];
    ColorImage::from_rgba_unmultiplied(size, picture.as_raw())
}

/// The file, to be read bit by bit.
fn opened(path: &Path) -> Result<BufReader<File>, String> {
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
    let file = File::open(path);
    let file = file.map_err(|error| named(&crate::disk::files::unreadable(&error)))?;
    Ok(BufReader::new(file))
}
