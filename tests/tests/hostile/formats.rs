//! Files that were written once are read for as long as there is the program: one folder of them
//! for each format, never changed. What replaces a format reads these.

use std::path::{Path, PathBuf};

use egui::{Key, Modifiers};
use egui_kittest::kittest::Queryable;
use reinwright::window::Workbench;
use reinwright_core::shop::family::{self, FAMILY_FORMAT};
use reinwright_core::shop::shelf::{Mark, Marks, SHELF_FORMAT};
use reinwright_core::tongs::document::{self, FORMAT};
use reinwright_core::tongs::jaw::JawKind;
use reinwright_core::tongs::jaw::sketch::{KEPT_FORMAT, KeptJaw};
use reinwright_tests::command_line::{refused, text};
use reinwright_tests::files::{bytes, folder, names, put};
use reinwright_tests::pairs;
use reinwright_tests::window::{SMALL, around, press, show};

fn of_format(format: u32) -> PathBuf {
    let files = concat!(env!("CARGO_MANIFEST_DIR"), "/files");
    Path::new(files).join(format!("format-{format}"))
}

/// Reads a file, writes what was read, and reads that again: text and thing stay the same.
#[track_caller]
fn settled<T: PartialEq + std::fmt::Debug>(
    file: &[u8],
    read: impl Fn(&[u8]) -> T,
    write: impl Fn(&T) -> String,
) -> T {
    let first = read(file);
    let text = write(&first);
    assert_eq!(read(text.as_bytes()), first);
    assert_eq!(
        write(&read(text.as_bytes())),
        text,
        "the same thing, the same bytes"
    );
    first
}

#[test]
fn every_design_ever_written_is_read() {
    let every = |format: u32| {
        let folder = of_format(format);
        let all = names(&folder).into_iter();
        let designs = all.filter(|name| {
            !["family-", "jaw-", "marks"]
                .iter()
                .any(|other| name.starts_with(other))
        });
        designs.map(|name| folder.join(name)).collect::<Vec<_>>()
    };
    for format in 1..=FORMAT {
        let paths = every(format);
        assert!(paths.len() > 20, "{format}: {}", paths.len());
        let mut styles = Vec::new();
        for path in paths {
            let read = |file: &[u8]| {
                document::read(file).unwrap_or_else(|why| panic!("{}: {why}", path.display()))
            };
            let design = settled(&bytes(&path), read, document::write);
            assert_eq!(design.format, FORMAT);
            styles.push(design.jaw.name().to_owned());
        }
        for kind in JawKind::ALL {
            assert!(
                styles.contains(&kind.name().to_owned()),
                "{format}: no {kind}"
            );
        }
    }
}

#[test]
fn every_family_jaw_and_mark_ever_written_is_read() {
    for format in 1..=FAMILY_FORMAT {
        for (name, sizes) in [("family-flat.ron", 7), ("family-v-bit.ron", 6)] {
            let file = bytes(&of_format(format).join(name));
            let read = |file: &[u8]| family::read(file).expect("a family");
            assert_eq!(
                settled(&file, read, family::write).sizes.len(),
                sizes,
                "{name}"
            );
        }
    }
    for format in 1..=KEPT_FORMAT {
        let file = bytes(&of_format(format).join("jaw-drawn.ron"));
        let read = |file: &[u8]| KeptJaw::read(file).expect("a jaw");
        let jaw = settled(&file, read, KeptJaw::write);
        assert_eq!(
            (jaw.sketch.name.as_str(), jaw.sketch.nodes.len()),
            ("Flat, drawn by hand", 2)
        );
    }
    for format in 1..=SHELF_FORMAT {
        let file = bytes(&of_format(format).join("marks.ron"));
        let marks = settled(
            &file,
            |file| Marks::read(file).expect("marks"),
            Marks::write,
        );
        assert_eq!(marks.of("light-flat.ron", ""), Some(Mark::Have));
        assert_eq!(marks.of("family-flat.ron", "1/2 in"), Some(Mark::Want));
    }
}

/// A file of a newer program, with a word that this one does not know: the window shows what it
/// can read, says so, and has no file that it would write over; the jobs refuse it.
#[test]
fn a_newer_file_is_shown_and_never_written_over() {
    let folder = folder();
    let design = document::write(&pairs::flat());
    let family = family::write(&family::Family::from_design(&pairs::flat()));
    let newer = [
        (
            "design.ron",
            design.replacen("format: 1,", "format: 2,\n    stamp: \"R\",", 1),
        ),
        (
            "family.ron",
            family.replacen("family: 1,", "family: 2,\n    stamp: \"R\",", 1),
        ),
    ];
    for (name, file) in newer {
        put(folder.path(), name, &file);
        let path = folder.path().join(name);
        let bench = Workbench::open(&path, around()).expect("it opens");
        let mut window = show(bench, SMALL);
        window.get_by_label_contains("comes from a newer Reinwright");
        // Saving asks for another file.
        press(&mut window, Modifiers::COMMAND, Key::S);
        window.get_by_label("File, with its folder");
        refused(&["balance", text(&path)], &["2", "newer Reinwright"]);
        assert_eq!(bytes(&path), file.as_bytes());
    }
}
