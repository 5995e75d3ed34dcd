//! Pictures to trace: their header is asked before anything is unpacked, and they are made as small
//! as a sheet shows them.

use std::fs::File;
use std::io::{BufRead, BufReader, Seek};
use std::path::Path;

use image::metadata::Orientation;
use image::{DynamicImage, ImageDecoder, ImageError, ImageFormat, ImageReader, Limits};

use super::files;

/// The longest side that is kept, pixels: finer than a sheet shows, small enough for any card.
const LONGEST: u32 = 2048;
/// The largest file that is read, bytes: a scan at its finest.
const LARGEST: u64 = 300 << 20;
/// The most pixels that are unpacked: an A4 page at 700 dots to the inch. A progressive JPEG takes
/// the most room, 9 bytes a pixel, so that no picture takes more than 600 MB while it is read.
const MOST_PIXELS: u64 = 64_000_000;
/// The most bytes a pixel: red, green, blue and how it covers, 16 bits each.
const DEEPEST: u64 = 8;

/// A picture as it is shown.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Picture {
    /// Its sides in pixels, across and down.
    pub size: [usize; 2],
    /// Red, green, blue and how it covers, pixel by pixel in rows from the top.
    pub rgba: Vec<u8>,
}

/// Reads a picture, scales it down, and turns it as the camera was held.
///
/// # Errors
/// One sentence that names the file, what is wrong and the mend.
pub fn read(path: &Path) -> Result<Picture, String> {
    opened(path)
        .and_then(from)
        .map_err(|why| format!("{}: {why}", path.display()))
}

/// The same from a file that is open, with errors that leave it to the caller to name it.
///
/// # Errors
/// As [`read`].
pub fn from(file: impl BufRead + Seek) -> Result<Picture, String> {
    let reader = ImageReader::new(file).with_guessed_format();
    let mut reader = reader.map_err(|_gone| DAMAGED)?;
    if !matches!(reader.format(), Some(ImageFormat::Png | ImageFormat::Jpeg)) {
        return Err("this is no PNG and no JPEG: save the picture as one of them".to_owned());
    }
    let mut limits = Limits::default();
    limits.max_alloc = Some(MOST_PIXELS * DEEPEST);
    reader.limits(limits);
    unpacked(reader)
}

const DAMAGED: &str =
    "the picture cannot be read, it is damaged: open it elsewhere and save it anew as PNG or JPEG";

/// What is said of a picture that cannot be read.
pub(crate) fn damaged(path: &Path) -> String {
    format!("{}: {DAMAGED}", path.display())
}

/// Unpacks a picture, unless its header says that it is too large for that.
fn unpacked(reader: ImageReader<impl BufRead + Seek>) -> Result<Picture, String> {
    let mut decoder = reader.into_decoder().map_err(unread)?;
    let (width, height) = decoder.dimensions();
    if u64::from(width) * u64::from(height) > MOST_PIXELS {
        return Err(format!(
            "the picture has {width} x {height} pixels, over {} million: scale it down",
            MOST_PIXELS / 1_000_000
        ));
    }
    let held = decoder.orientation().map_err(unread)?;
    let picture = DynamicImage::from_decoder(decoder).map_err(unread)?;
    Ok(for_screen(picture, held))
}

fn unread(error: ImageError) -> String {
    let why = match error {
        ImageError::Limits(_) => "the picture takes too much memory: scale it down",
        ImageError::Decoding(_)
        | ImageError::Encoding(_)
        | ImageError::Parameter(_)
        | ImageError::Unsupported(_)
        | ImageError::IoError(_) => DAMAGED,
    };
    why.to_owned()
}

fn for_screen(picture: DynamicImage, held: Orientation) -> Picture {
    let large = picture.width().max(picture.height()) > LONGEST;
    let mut picture = if large {
        picture.thumbnail(LONGEST, LONGEST)
    } else {
        picture
    };
    picture.apply_orientation(held);
    let picture = picture.into_rgba8();
    let side = |side: u32| usize::try_from(side).expect("a side is at most some thousand pixels");
    Picture {
        size: [side(picture.width()), side(picture.height())],
        rgba: picture.into_raw(),
    }
}

/// The file, to be read bit by bit.
fn opened(path: &Path) -> Result<BufReader<File>, String> {
    let unreadable = |error: std::io::Error| files::unreadable(&error);
    let known = std::fs::metadata(path).map_err(unreadable)?;
    if !known.is_file() {
        return Err("this is no file: name a picture".to_owned());
    }
    if known.len() > LARGEST {
        return Err("the file is larger than 300 MiB: scale the picture down".to_owned());
    }
    File::open(path).map(BufReader::new).map_err(unreadable)
}
