//! What goes wrong with files and folders while the window is open: it is said plainly, with what to
//! do, and nothing is lost.

use std::path::Path;

use egui::{Key, Modifiers};
use egui_kittest::kittest::{NodeT, Queryable};
use reinwright::window::Workbench;
use reinwright_core::tongs::document;
use reinwright_tests::files::{bytes, folder, put};
use reinwright_tests::pairs;
use reinwright_tests::sentence;
use reinwright_tests::window::{
    OnBench, TALL, Window, click, fill, give_path, press, remembering, show, until_done,
};

/// A design in a file of a folder, open, with a change that is not saved; what is remembered is kept
/// in the other folder.
fn changed_in(folder: &Path, kept: &Path) -> Window {
    put(folder, "mine.ron", document::write(&pairs::flat()));
    let around = remembering(kept.join("kept"));
    let bench = Workbench::open(&folder.join("mine.ron"), around).expect("opens");
    let mut window = show(bench, TALL);
    fill(&mut window, "Work thickness", "1/4");
    window
}

/// What is said with these words, as a sentence of its own.
#[track_caller]
fn said(window: &Window, words: &str) {
    let node = window.get_by_label_contains(words).accesskit_node();
    let told = node.label().or(node.value());
    let told = told.expect("it was found by what it says");
    sentence(told.trim_end_matches('.'));
}

#[track_caller]
fn refused(name: &str, words: &str) {
    let folder = folder();
    let good = document::write(&pairs::flat());
    put(folder.path(), "half.ron", &good[..good.len() / 2]);
    put(folder.path(), "binary.ron", b"\x7fELF\x00\x01\xff");
    put(folder.path(), "empty.ron", "");
    std::fs::create_dir(folder.path().join("folder.ron")).expect("a folder");
    let mut window = changed_in(folder.path(), folder.path());
    press(&mut window, Modifiers::COMMAND, Key::S);
    let before = window.state().document().clone();
    press(&mut window, Modifiers::COMMAND, Key::O);
    give_path(&mut window, &folder.path().join(name), "Open");
    said(&window, words);
    assert_eq!(window.state().document(), &before, "{name}");
}

#[test]
fn what_cannot_be_opened_says_why() {
    refused("half.ron", "the text ends too soon");
    refused("binary.ron", "the file is not text");
    refused("empty.ron", "the file is empty");
    refused("folder.ron", "this is a folder");
    refused("none.ron", "there is no such file");
}

/// A file that went away while it was open is written anew.
#[test]
fn a_file_that_is_gone_is_saved_again() {
    let folder = folder();
    let mut window = changed_in(folder.path(), folder.path());
    let path = folder.path().join("mine.ron");
    std::fs::remove_file(&path).expect("it was there");
    press(&mut window, Modifiers::COMMAND, Key::S);
    window.get_by_label_contains("Saved to");
    let saved = document::read(&bytes(&path)).expect("a design");
    assert_eq!(&saved, window.state().document());
}

#[test]
fn a_file_that_may_not_be_written_stays_and_so_does_the_change() {
    let folder = folder();
    let mut window = changed_in(folder.path(), folder.path());
    let path = folder.path().join("mine.ron");
    let old = bytes(&path);
    let mut mode = std::fs::metadata(&path).expect("a file").permissions();
    mode.set_readonly(true);
    std::fs::set_permissions(&path, mode).expect("it is ours");
    press(&mut window, Modifiers::COMMAND, Key::S);
    said(&window, "this file is write-protected");
    assert!(window.state().is_changed());
    assert_eq!(bytes(&path), old);
}

#[test]
fn a_folder_that_is_gone_is_said_and_the_change_stays() {
    let shop = folder();
    let gone = shop.path().join("gone");
    std::fs::create_dir(&gone).expect("a folder");
    let mut window = changed_in(&gone, shop.path());
    std::fs::remove_dir_all(&gone).expect("it was there");
    press(&mut window, Modifiers::COMMAND, Key::S);
    said(&window, "there is no folder");
    assert!(window.state().is_changed());
    click(&mut window, "Print to PDF");
    click(&mut window, "Choose the file");
    give_path(&mut window, &gone.join("pair.pdf"), "Write");
    until_done(&mut window);
    said(&window, "there is no folder");
}

/// A jaw of the smith's own that lies among the designs is no damaged design.
#[test]
fn an_own_jaw_on_the_shelf_is_called_so() {
    let shop = folder();
    let jaw = Path::new(env!("CARGO_MANIFEST_DIR")).join("files/format-1/jaw-drawn.ron");
    put(shop.path(), "drawn.ron", bytes(&jaw));
    let mut window = show(
        Workbench::with(pairs::flat(), remembering(shop.path().join("kept"))),
        TALL,
    );
    press(&mut window, Modifiers::COMMAND, Key::L);
    fill(&mut window, "Folder", &shop.path().display().to_string());
    said(&window, "drawn.ron: this is an own jaw");
}

/// Job sheets and cut lists begin with the paper of the last one, whatever templates go on.
#[test]
fn the_paper_of_sheets_is_remembered() {
    let folder = folder();
    let bench = || Workbench::with(pairs::flat(), remembering(folder.path().join("kept")));
    let mut window = show(bench(), TALL);
    press(&mut window, Modifiers::COMMAND, Key::J);
    click(&mut window, "Legal");
    click(&mut window, "Choose the file");
    give_path(&mut window, &folder.path().join("sheet.pdf"), "Write");
    window.get_by_label_contains("Written to");
    let mut window = show(bench(), TALL);
    press(&mut window, Modifiers::NONE, Key::F7);
    window.get_by_value("Legal");
    press(&mut window, Modifiers::COMMAND, Key::J);
    click(&mut window, "Choose the file");
    give_path(&mut window, &folder.path().join("again.pdf"), "Write");
    let sheets = ["sheet.pdf", "again.pdf"].map(|name| bytes(&folder.path().join(name)).len());
    assert_eq!(sheets[0], sheets[1], "the same pages on the same paper");
}

/// A double click on a damaged file opens the window: the sentence stands in it, and the file as it was.
#[test]
fn a_damaged_file_is_told_in_the_window_that_it_was_to_open() {
    let shop = folder();
    let good = document::write(&pairs::flat());
    let half = &good[..good.len() / 2];
    put(shop.path(), "half.ron", half);
    let path = shop.path().join("half.ron");
    for (path, words) in [
        (&path, "the text ends too soon"),
        (&shop.path().join("none.ron"), "there is no such file"),
    ] {
        let bench = Workbench::trying(path, remembering(shop.path().join("kept")));
        let window = show(bench, TALL);
        said(&window, words);
        window.get_by_label_contains("a ready design is open instead");
        assert!(!window.state().is_changed());
    }
    assert_eq!(bytes(&path), half.as_bytes());
}
