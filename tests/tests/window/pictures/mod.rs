//! The window looked at: every page of it as a picture, and the pictures of the documents.
//!
//! `REINWRIGHT_TEST_PICTURES=DIR cargo test --workspace --test window pictures::every_page` leaves
//! every page there, by day and by night, in two sizes; `REINWRIGHT_TEST_PAGE=making` that one alone.

mod documents;
pub(super) mod pages;
mod words;

use std::path::Path;

use egui::ColorImage;
use image::codecs::png::{CompressionType, FilterType, PngEncoder};
use image::{ExtendedColorType, ImageEncoder};
use reinwright_core::asked::Units;
use reinwright_core::tool::ToolKind;
use reinwright_tests::window::SMALL;

use self::pages::Way;

/// A picture as PNG.
fn png(picture: &ColorImage) -> Vec<u8> {
    let [width, height] = picture
        .size
        .map(|side| u32::try_from(side).expect("a window is small"));
    let mut bytes = Vec::new();
    let pixels: Vec<u8> = picture
        .pixels
        .iter()
        .flat_map(|pixel| pixel.to_array().into_iter().take(3))
        .collect();
    PngEncoder::new_with_quality(&mut bytes, CompressionType::Best, FilterType::Adaptive)
        .write_image(&pixels, width, height, ExtendedColorType::Rgb8)
        .expect("its size is right");
    bytes
}

/// Paints the first two pages of every style of tool, and all of the first's.
#[test]
fn every_tool_is_painted() {
    for kind in ToolKind::ALL {
        for (theme, size, units) in [
            ("light", SMALL, Units::Inch),
            ("dark", (1600.0, 1000.0), Units::Millimetre),
        ] {
            let way = Way {
                size,
                units,
                theme,
                fine: 1.0,
            };
            let pages = match kind {
                ToolKind::RoundPunch => pages::OF_TOOL,
                _ => &pages::OF_TOOL[..2],
            };
            let folder = std::env::var_os("REINWRIGHT_TEST_PICTURES");
            let few = usize::from(*kind == ToolKind::RoundPunch);
            let pages = match folder {
                Some(_) => pages,
                None => &pages[..few],
            };
            for page in pages {
                let picture = pages::show_tool(*page, *kind, way).picture();
                let name = format!("{} {kind} {theme}", page.0);
                let first = picture.pixels[0];
                assert!(picture.pixels.iter().any(|pixel| *pixel != first), "{name}");
                if let Some(folder) = &folder {
                    let path = Path::new(folder).join(format!("{name}.png"));
                    std::fs::write(path, png(&picture)).expect("it can be written");
                }
            }
        }
    }
}

/// Whether a page is to be painted: the first always, all or a named one into a folder.
fn is_wanted(page: &str) -> bool {
    let named = std::env::var("REINWRIGHT_TEST_PAGE").ok();
    match std::env::var_os("REINWRIGHT_TEST_PICTURES") {
        None => page == pages::ALL[0].0,
        Some(_) => named.is_none_or(|name| name == page),
    }
}

#[test]
fn every_page_is_painted() {
    let folder = std::env::var_os("REINWRIGHT_TEST_PICTURES");
    for page in pages::ALL.iter().filter(|page| is_wanted(page.0)) {
        for (theme, size) in [("light", SMALL), ("dark", (1600.0, 1000.0))] {
            let way = Way {
                size,
                units: Units::Inch,
                theme,
                fine: 1.0,
            };
            let picture = pages::show(*page, "v-bit-square", way).picture();
            let first = picture.pixels[0];
            assert!(
                picture.pixels.iter().any(|pixel| *pixel != first),
                "{} {theme}",
                page.0
            );
            if let Some(folder) = &folder {
                let name = format!("{} {theme}.png", page.0);
                std::fs::write(Path::new(folder).join(name), png(&picture))
                    .expect("it can be written");
            }
        }
    }
}
