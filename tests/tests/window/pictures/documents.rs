//! The pictures of the documents are what the program draws now.
//!
//! `UPDATE_EXPECT=1 cargo test --workspace --test window pictures::documents` makes them all anew.

use std::path::PathBuf;

use egui::{Color32, ColorImage, Key, Modifiers};
use hayro::hayro_interpret::InterpreterSettings;
use hayro::hayro_syntax::Pdf;
use hayro::vello_cpu::color::palette::css::WHITE;
use hayro::{PixmapSettings, RenderCache, RenderSettings, render};
use reinwright::window::Workbench;
use reinwright_core::asked::Units;
use reinwright_core::tongs::document::{self, Document};
use reinwright_tests::command_line::{done, text};
use reinwright_tests::designs::{sample, samples_folder};
use reinwright_tests::files::{bytes, folder, put};
use reinwright_tests::painted::look_at;
use reinwright_tests::pairs::starting;
use reinwright_tests::window::{Window, click, press, remembering};

use super::pages::{self, Page};
use super::png;

/// The size that pictures of the window are made in: the smallest that must do.
const SIZE: (f32, f32) = reinwright_tests::window::SMALL;

/// The pair of the guide's walk: for bolts and bar of 5/8 in hexagon.
fn walked() -> Document {
    let mut pair = starting("v bit", "5/8 in hexagon on corners", "3/4 in square");
    pair.units = Units::Inch;
    pair
}

/// The same with a neck that bends, for what the program says of it.
fn weak() -> Document {
    let mut pair = walked();
    pair.set("neck.depth", "1/4 in").expect("within its limits");
    pair
}

fn path(name: &str) -> PathBuf {
    samples_folder().join("../docs/pictures").join(name)
}

fn is_update() -> bool {
    std::env::var_os("UPDATE_EXPECT").is_some()
}

/// Pixels that differ by more than the last digits of two machines.
fn differing(one: &ColorImage, other: &ColorImage) -> usize {
    const SEEN: u8 = 24;
    let far = |a: &Color32, b: &Color32| {
        let channels = a.to_array().into_iter().zip(b.to_array());
        channels.into_iter().any(|(a, b)| a.abs_diff(b) > SEEN)
    };
    let pairs = one.pixels.iter().zip(&other.pixels);
    pairs.filter(|(a, b)| far(a, b)).count()
}

fn decoded(png: &[u8]) -> ColorImage {
    let image = image::load_from_memory(png).expect("a picture").to_rgba8();
    let size = [image.width(), image.height()].map(|side| side as usize);
    ColorImage::from_rgba_unmultiplied(size, image.as_raw())
}

/// Holds a picture against the one that a document shows, or puts it there.
#[track_caller]
fn check(name: &str, picture: &ColorImage) {
    /// A thousandth of the pixels: less than a word.
    const STALE: usize = 1000;
    let path = path(&format!("{name}.png"));
    if is_update() {
        std::fs::write(&path, png(picture)).expect("it can be written");
    }
    let shown = decoded(&bytes(&path));
    assert_eq!(shown.size, picture.size, "{name}.png is stale");
    let off = differing(&shown, picture);
    let most = picture.pixels.len() / STALE;
    assert!(off <= most, "{name}.png is stale: {off} pixels differ");
}

/// A window on a design, gone to a page.
fn at_page(design: Document, open: impl Fn(&mut Window)) -> ColorImage {
    let shop = folder();
    // What is shown names no folder of this machine.
    put(shop.path(), "hint", "seen");
    let mut seen = look_at(Workbench::with(design, remembering(shop.path())), SIZE);
    open(&mut seen.window);
    seen.picture()
}

fn page(name: &str) -> Page {
    let all = pages::ALL.iter();
    *all.clone()
        .find(|page| page.0 == name)
        .expect("it is there")
}

#[test]
fn pictures_of_the_window_are_what_it_shows() {
    let opened_on = at_page(sample("textbook-light-chain"), page("head").1);
    check("window", &opened_on);
    for (name, of) in [
        ("new-work", "new pair"),
        ("new-jaw", "its jaw"),
        ("new-bar", "its bar"),
        ("fit", "fit"),
        ("strength", "strength"),
        ("heats", "heats"),
        ("print", "print"),
        ("cut-list", "cut list"),
        ("family", "family"),
        ("new-tool", "new tool"),
    ] {
        check(name, &at_page(walked(), page(of).1));
    }
}

#[test]
fn pictures_of_what_is_noticed_and_made_are_what_the_window_shows() {
    let findings = at_page(weak(), |window| {
        page("findings").1(window);
        pages::wait(window);
    });
    check("findings", &findings);
    let making = at_page(walked(), |window| {
        press(window, Modifiers::NONE, Key::F6);
        (0..5).for_each(|_| click(window, "Next"));
    });
    check("making", &making);
}

/// The first page of the job sheet, as an independent reader paints it.
#[test]
fn the_picture_of_the_job_sheet_is_what_is_printed() {
    /// Pixels to a point: readable, and no larger than a screen.
    const SCALE: f32 = 1.4;
    let shop = folder();
    let path = |name: &str| shop.path().join(name).display().to_string();
    put(shop.path(), "pair.ron", document::write(&walked()));
    let (pair, pdf) = (path("pair.ron"), path("job.pdf"));
    done(&["job-sheet", &pair, "--out", &pdf, "--paper", "letter"]);
    let pdf = Pdf::new(bytes(&shop.path().join("job.pdf"))).expect("a reader opens it");
    let settings = PixmapSettings {
        x_scale: SCALE,
        y_scale: SCALE,
        bg_color: WHITE,
    };
    let painted = render(
        &pdf.pages()[0],
        &RenderCache::new(),
        &InterpreterSettings::default(),
        &RenderSettings::default(),
        &settings,
    );
    let size = [painted.width(), painted.height()].map(usize::from);
    let pixels = painted.data().iter();
    let pixels = pixels.map(|p| Color32::from_rgb(p.r, p.g, p.b)).collect();
    check("job-sheet", &ColorImage::new(size, pixels));
}

/// Those of the README, of the pair that the program opens on.
#[test]
fn drawings_are_what_the_program_draws() {
    let shop = folder();
    let out = shop.path().join("x.svg");
    let design = samples_folder().join("textbook-light-chain.ron");
    for of in ["pair", "half", "bar"] {
        done(&["drawing", text(&design), "--of", of, "--out", text(&out)]);
        let drawn = bytes(&out);
        let path = path(&format!("{of}.svg"));
        if is_update() {
            std::fs::write(&path, &drawn).expect("it can be written");
        }
        assert!(bytes(&path) == drawn, "{of}.svg is stale");
    }
}
