//! What others wrote in a built program, and under which licence: THIRD-PARTY.md is true.
//!
//! `UPDATE_EXPECT=1 cargo test --workspace --test house third_party` writes it anew, from what cargo
//! knows of every package and the texts that lie in its sources.

mod licence;
mod lock;
mod written;

use std::fs;

use super::tidy::root;

const FILE: &str = "THIRD-PARTY.md";

/// A row of the table: package, version, its licence as it says, those that we take.
fn rows(text: &str) -> Vec<[&str; 4]> {
    text.lines()
        .filter_map(|line| line.strip_prefix("| ")?.strip_suffix(" |"))
        .map(|row| row.split(" | ").collect::<Vec<_>>())
        .filter_map(|cells| <[&str; 4]>::try_from(cells).ok())
        .filter(|[package, ..]| *package != "package" && !package.starts_with("--"))
        .collect()
}

#[test]
fn every_package_of_the_program_is_named_with_a_licence_that_we_take() {
    let allowed = licence::allowed();
    if std::env::var_os("UPDATE_EXPECT").is_some() {
        fs::write(root().join(FILE), written::anew(&allowed)).expect("the tree can be written");
    }
    let text = fs::read_to_string(root().join(FILE)).expect("it is in the tree");
    let rows = rows(&text);
    let named: Vec<(String, String)> = rows
        .iter()
        .map(|[package, version, ..]| ((*package).into(), (*version).into()))
        .collect();
    assert_eq!(named, lock::of_the_program(), "{FILE} against Cargo.lock");
    for [package, _, own, taken] in rows {
        let again = licence::taken(own, &allowed).map(|those| those.join(" and "));
        assert_eq!(again.as_deref(), Some(taken), "{package}");
        for one in taken.split(" and ").filter(|one| !licence::once(one)) {
            let heading = format!("\n### {one}: ");
            assert!(text.contains(&heading), "{FILE} has no text of {one}");
        }
    }
}

#[test]
fn fonts_are_named_with_their_licences() {
    let text = fs::read_to_string(root().join(FILE)).expect("it is in the tree");
    for font in written::FONTS {
        assert!(text.contains(font), "{FILE} names {font}");
    }
}
