//! A picture laid under the drawing, without a renderer.

use std::path::{Path, PathBuf};
use std::time::Duration;

use egui::{Key, Modifiers, vec2};
use egui_kittest::kittest::Queryable;
use reinwright::window::Workbench;
use reinwright_core::tongs::document::{self, Document};
use reinwright_tests::files::{bytes, folder, put};
use reinwright_tests::pairs;
use reinwright_tests::window::{
    OnBench, Window, around, click, click_at, click_with, give_path, hold, point, press, release,
    remembering, show_for, write,
};
use reinwright_tests::{INCH, close, within};

/// A picture is drawn and comes to rest in fewer frames than these.
const FRAMES: u64 = 60;

fn show(bench: Workbench) -> Window {
    show_for(bench, (1500.0, 950.0), FRAMES)
}

fn open(design: Document) -> Window {
    show(Workbench::with(design, around()))
}

/// A picture of 60 × 40 pixels: grey, with one dark row.
fn picture(folder: &Path) -> PathBuf {
    let path = folder.join("tongs.png");
    let image =
        image::GrayImage::from_fn(60, 40, |_, y| image::Luma([if y == 20 { 0 } else { 200 }]));
    image.save(&path).expect("the picture is written");
    path
}

/// Asks for a picture by its path.
#[track_caller]
fn ask(window: &mut Window, path: &Path) {
    click(window, "View");
    click_with(window, "Trace a picture");
    give_path(window, path, "Open");
}

/// Waits for the thread that reads.
#[track_caller]
fn wait(window: &mut Window, label: &str) {
    for _ in 0..300 {
        window.run();
        if window.query_by_label_contains(label).is_some() {
            return;
        }
        std::thread::sleep(Duration::from_millis(20));
    }
    panic!("{label} never came");
}

#[track_caller]
fn traced(folder: &Path) -> Window {
    let mut window = open(pairs::flat());
    ask(&mut window, &picture(folder));
    wait(&mut window, "Remove picture");
    window
}

/// A design saved in a folder, and the window on it that remembers there; opened as often as one
/// likes.
fn saved_in(folder: &Path) -> (PathBuf, impl Fn() -> Window) {
    let (kept, path) = (folder.join("kept"), folder.join("mine.ron"));
    put(folder, "mine.ron", document::write(&pairs::flat()));
    let opened = path.clone();
    let again = move || {
        let bench = Workbench::open(&opened, remembering(kept.clone()));
        show(bench.expect("the design opens"))
    };
    (path, again)
}

/// Where a picture is remembered to lie: its width in mm, and how far it is turned, radians.
#[track_caller]
fn remembered(folder: &Path) -> (f64, f64) {
    let kept = String::from_utf8(bytes(&folder.join("kept/pictures"))).expect("text");
    let place = kept.split('\t').nth(3).expect("a place");
    let numbers: Vec<f64> = place
        .split(' ')
        .map(|n| n.parse().expect("a number"))
        .collect();
    (numbers[2], numbers[4])
}

fn sheet(window: &Window) -> egui::Rect {
    window.get_by_label_contains("Drawing of the pair").rect()
}

#[test]
fn a_picture_is_laid_dimmed_hidden_and_taken_away() {
    let folder = folder();
    let mut window = traced(folder.path());
    window.get_by_label("Picture strength");
    click(&mut window, "Shown");
    click(&mut window, "Shown");
    click(&mut window, "Remove picture");
    assert!(window.query_by_label("Remove picture").is_none());
    assert!(
        !window.state().is_changed(),
        "a picture is no part of the design"
    );
}

#[test]
fn what_cannot_be_read_is_one_sentence() {
    let folder = folder();
    let at = |name: &str| folder.path().join(name);
    let good = bytes(&picture(folder.path()));
    put(folder.path(), "cut.png", &good[..good.len() / 2]);
    put(folder.path(), "words.png", "no picture at all");
    put(folder.path(), "empty.jpg", "");
    // A picture that says that it is far larger than any scan: its header alone.
    let mut vast = good.clone();
    vast[16..24].copy_from_slice(&[0, 1, 0, 0, 0, 1, 0, 0]);
    put(folder.path(), "vast.png", &vast);
    for (name, words) in [
        ("none.png", "there is no such file"),
        ("cut.png", "it is damaged"),
        ("words.png", "this is no PNG and no JPEG"),
        ("empty.jpg", "this is no PNG and no JPEG"),
        ("vast.png", "picture"),
        (".", "this is no file"),
    ] {
        let mut window = open(pairs::flat());
        ask(&mut window, &at(name));
        wait(&mut window, words);
        assert!(window.query_by_label("Remove picture").is_none(), "{name}");
    }
}

/// The beginning of a PNG of 8 bits grey that says it has so many pixels (PNG 3rd edition, 5.2 and
/// 11.2.1), with its check sum (annex D).
fn png_of(width: u32, height: u32) -> Vec<u8> {
    let mut header = b"IHDR".to_vec();
    header.extend(width.to_be_bytes());
    header.extend(height.to_be_bytes());
    header.extend([8, 0, 0, 0, 0]);
    let check = header.iter().fold(u32::MAX, |sum, byte| {
        (0..8).fold(sum ^ u32::from(*byte), |sum, _| {
            (sum >> 1) ^ (0xedb8_8320 & 0_u32.wrapping_sub(sum & 1))
        })
    });
    let mut png = b"\x89PNG\r\n\x1a\n\0\0\0\x0d".to_vec();
    png.extend(&header);
    png.extend((!check).to_be_bytes());
    png.extend(b"\0\0\0\0IDAT\x35\xaf\x06\x1e");
    png
}

/// A picture is refused by what its header says, before anything of it is unpacked.
#[test]
fn a_picture_of_too_many_pixels_is_refused_by_its_header() {
    let folder = folder();
    let at = |name: &str| folder.path().join(name);
    put(folder.path(), "vast.png", png_of(30_000, 30_000));
    put(folder.path(), "small.png", png_of(300, 300));
    for (name, words) in [
        (
            "vast.png",
            "30000 x 30000 pixels, over 64 million: scale it down",
        ),
        ("small.png", "it is damaged"),
    ] {
        let mut window = open(pairs::flat());
        ask(&mut window, &at(name));
        wait(&mut window, words);
    }
}

#[test]
fn two_points_and_a_distance_scale_it() {
    let folder = folder();
    let (_, again) = saved_in(folder.path());
    let mut window = again();
    ask(&mut window, &picture(folder.path()));
    wait(&mut window, "Remove picture");
    let (width, _) = remembered(folder.path());
    let [heel, tip] = ["Jaw heel, on the drawing", "Jaw length, on the drawing"]
        .map(|handle| window.get_by_label(handle).rect().center().x);
    let mm = pairs::flat().jaw.length.mm() / f64::from(tip - heel);
    click(&mut window, "Scale picture");
    window.get_by_label_contains("Click the first of two points whose distance");
    let middle = sheet(&window).center();
    click_at(&mut window, middle);
    window.get_by_label_contains("Click the second point");
    click_at(&mut window, middle + vec2(150.0, 40.0));
    window.run();
    let field = window.get_by_label("Known distance");
    assert!(field.is_focused(), "what is typed next is the distance");
    field.type_text("a foot");
    window.run();
    click(&mut window, "Set distance");
    window.get_by_label_contains("\"a foot\" is not");
    write(&mut window, "Known distance", "9 in");
    press(&mut window, Modifiers::NONE, Key::Enter);
    assert!(
        window.query_by_label("Known distance").is_none(),
        "the tool is laid down"
    );
    // The points were so far apart on the paper and are 9 in now.
    let apart = f64::from(vec2(150.0, 40.0).length()) * mm;
    let (scaled, _) = remembered(folder.path());
    close("width", scaled, width * 9.0 * INCH / apart, 0.01);
}

#[test]
fn points_of_the_picture_are_no_clicks_on_the_design() {
    let folder = folder();
    let mut window = traced(folder.path());
    let before = window.state().document().clone();
    let handle = "Jaw length, on the drawing";
    let at = window.get_by_label(handle).rect().center();
    click(&mut window, "Move picture");
    assert!(
        window.query_by_label(handle).is_none(),
        "handles are put away"
    );
    hold(&mut window, at);
    point(&mut window, at + vec2(50.0, 20.0));
    release(&mut window, at + vec2(50.0, 20.0));
    assert_eq!(window.state().document(), &before);
    press(&mut window, Modifiers::NONE, Key::Escape);
    window.run();
    let back = window.get_by_label(handle).rect().center();
    assert!(
        (back - at).length() < 1.0,
        "the view stayed: {back:?} {at:?}"
    );
}

#[test]
fn squaring_takes_two_clicks() {
    let folder = folder();
    let (_, again) = saved_in(folder.path());
    let mut window = again();
    ask(&mut window, &picture(folder.path()));
    wait(&mut window, "Remove picture");
    click(&mut window, "Square picture");
    let middle = sheet(&window).center();
    click_at(&mut window, middle);
    click_at(&mut window, middle + vec2(150.0, 40.0));
    assert!(
        window.query_by_label_contains("Click the").is_none(),
        "the tool is laid down"
    );
    window.run();
    // What fell by 40 in 150 lies level.
    let (_, turn) = remembered(folder.path());
    within("turned", turn, (40.0_f64 / 150.0).atan(), 1e-3);
}

/// A saved design finds its picture again; its file does not know of it.
#[test]
fn the_picture_is_remembered_beside_the_design() {
    let folder = folder();
    let (path, again) = saved_in(folder.path());
    let mut window = again();
    assert!(window.query_by_label("Remove picture").is_none());
    ask(&mut window, &picture(folder.path()));
    wait(&mut window, "Remove picture");
    window.run();
    let text = String::from_utf8(bytes(&path)).expect("text");
    assert!(!text.contains("tongs.png"), "{text}");
    let mut window = again();
    wait(&mut window, "Remove picture");
    click(&mut window, "Remove picture");
    window.run();
    let mut window = again();
    std::thread::sleep(Duration::from_millis(200));
    window.run();
    assert!(window.query_by_label("Remove picture").is_none());
}

#[test]
fn a_picture_that_is_gone_is_said_and_not_forgotten() {
    let folder = folder();
    let (_, again) = saved_in(folder.path());
    let mut window = again();
    let png = picture(folder.path());
    ask(&mut window, &png);
    wait(&mut window, "Remove picture");
    window.run();
    std::fs::rename(&png, folder.path().join("away.png")).expect("moved");
    let mut window = again();
    wait(&mut window, "there is no such file");
    window.run();
    std::fs::rename(folder.path().join("away.png"), &png).expect("moved back");
    let mut window = again();
    wait(&mut window, "Remove picture");
}
