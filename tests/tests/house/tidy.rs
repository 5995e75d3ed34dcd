//! What must stay true of the tree itself.
#![allow(clippy::unwrap_used, reason = "a test may stop at what it cannot read")]

use std::fs;
use std::path::{Path, PathBuf};

pub(crate) fn root() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("..")
}

/// Every file under a folder whose name ends so.
pub(crate) fn files(folder: &Path, ending: &str) -> Vec<PathBuf> {
    let mut found = Vec::new();
    for entry in fs::read_dir(folder).unwrap().flatten() {
        let path = entry.path();
        if path.is_dir() {
            found.extend(files(&path, ending));
        } else if path.to_string_lossy().ends_with(ending) {
            found.push(path);
        }
    }
    found
}

#[test]
fn only_the_file_and_the_jaw_styles_know_serde() {
    let core = root().join("core/src");
    let sources = files(&core, ".rs");
    assert!(sources.len() > 40, "the core's sources were found");
    for path in sources {
        let inside = path.strip_prefix(&core).unwrap();
        // A sketched jaw writes its sections' pieces and how they go on to each other; a document
        // names its steel and how its views are laid; a shop's heat has a file of its own.
        let written = [
            "shape/section/profile.rs",
            "shape/sweep/station.rs",
            "steel/mod.rs",
            "paper/projection.rs",
            "heats/source.rs",
            "heats/file.rs",
            "heats/text.rs",
        ];
        let may = [
            "asked",
            "tongs/document",
            "tongs/jaw",
            "tool",
            "shop/family",
            "shop/shelf",
            "shop/cut",
            "shop/came_out",
            "shop/printers.rs",
        ]
        .iter()
        .chain(&written)
        .any(|folder| inside.starts_with(folder));
        let text = fs::read_to_string(&path).unwrap();
        assert!(
            may || !text.contains("serde::"),
            "{} uses serde",
            inside.display()
        );
    }
}

#[test]
fn the_core_does_not_touch_the_world() {
    for path in files(&root().join("core/src"), ".rs") {
        let text = fs::read_to_string(&path).unwrap();
        for world in [
            "std::fs",
            "std::env",
            "std::time",
            "std::thread",
            "std::net",
            "println!",
        ] {
            assert!(!text.contains(world), "{} uses {world}", path.display());
        }
    }
}

#[test]
fn every_link_of_the_texts_leads_somewhere() {
    let mut links = 0;
    for text in [
        "README.md",
        "DEVELOPERS.md",
        "docs/guide.md",
        "docs/guide/words-and-sizes.md",
        "docs/guide/new-pair.md",
        "docs/guide/drawing.md",
        "docs/guide/findings.md",
        "docs/guide/making.md",
        "docs/guide/heats.md",
        "docs/guide/cut-list.md",
        "docs/guide/printing.md",
        "docs/guide/families.md",
        "docs/guide/tools.md",
        "docs/guide/files.md",
        "docs/guide/keys.md",
        "docs/once-through.md",
        "docs/questions.md",
        "docs/method.md",
        "docs/sources.md",
    ] {
        let path = root().join(text);
        let words = fs::read_to_string(&path).unwrap();
        for link in words
            .split("](")
            .skip(1)
            .filter_map(|rest| rest.split(')').next())
        {
            if link.starts_with("http") {
                continue;
            }
            links += 1;
            let target = path.parent().unwrap().join(link);
            assert!(target.exists(), "{text} names {link}, which is not there");
        }
    }
    assert!(links > 5, "only {links} links were found");
}

#[test]
fn every_folder_of_the_developers_table_exists() {
    let text = fs::read_to_string(root().join("DEVELOPERS.md")).unwrap();
    let rows: Vec<&str> = text
        .lines()
        .filter(|line| line.starts_with("| `"))
        .collect();
    assert!(rows.len() > 10, "only {} rows", rows.len());
    for row in rows {
        let name = row.split('`').nth(1).unwrap();
        if name.contains('/') {
            assert!(root().join(name).exists(), "{name} is named and not there");
        }
    }
}

#[test]
fn every_jaw_style_has_a_file_of_its_own() {
    let mut styles = 0;
    for path in files(&root().join("core/src/tongs/jaw"), ".rs") {
        let text = fs::read_to_string(&path).unwrap();
        let inside = text.matches("\nimpl Style for ").count();
        assert!(inside < 2, "{} has {inside} styles", path.display());
        styles += inside;
    }
    assert_eq!(styles, reinwright_core::tongs::jaw::JawKind::ALL.len());
}
