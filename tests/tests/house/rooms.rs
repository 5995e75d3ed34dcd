//! The rooms of the house, in their order: a room names only those above it in its list.
#![allow(clippy::unwrap_used, reason = "a test may stop at what it cannot read")]

use std::fs;
use std::path::{Path, PathBuf};

use super::imports;

/// A source with its module, as words from the crate's root.
struct Source {
    module: Vec<String>,
    text: String,
}

impl Source {
    fn new(module: &str, text: &str) -> Self {
        let words = module.split("::").filter(|word| *word != "crate");
        Self {
            module: words.map(str::to_owned).collect(),
            text: text.to_owned(),
        }
    }
}

/// Every source under a folder that is the module `prefix`.
fn sources(root: &Path, prefix: &str) -> Vec<Source> {
    let mut found = Vec::new();
    for entry in fs::read_dir(root).unwrap().flatten() {
        let path = entry.path();
        let name = path.file_stem().unwrap().to_string_lossy().into_owned();
        if path.is_dir() {
            found.extend(sources(&path, &format!("{prefix}::{name}")));
        } else if path.extension().is_some_and(|ending| ending == "rs") {
            let module = match name.as_str() {
                "lib" | "main" | "mod" => prefix.to_owned(),
                name => format!("{prefix}::{name}"),
            };
            found.push(Source::new(&module, &fs::read_to_string(path).unwrap()));
        }
    }
    found
}

/// Every place at which sources leave the order of the rooms, a sentence each.
fn out_of_order(sources: &[Source], prefix: &str, rooms: &[&str]) -> Vec<String> {
    let house = Source::new(prefix, "").module;
    let mut wrong = Vec::new();
    for source in sources {
        // The house's own front may show what is in every room.
        let Some(room) = source.module.get(house.len()) else {
            continue;
        };
        let within = source.module.join("::");
        let Some(own) = rooms.iter().position(|name| name == room) else {
            wrong.push(format!("{within} is in no room of the list"));
            continue;
        };
        for path in imports::paths(&source.text, &source.module) {
            let Some(inside) = path.strip_prefix(house.as_slice()) else {
                continue;
            };
            let named = path.join("::");
            let other = inside.first().map(String::as_str);
            match rooms.iter().position(|name| Some(*name) == other) {
                Some(other) if other <= own => {}
                Some(_) => wrong.push(format!("{within} names {named}, a room below its own")),
                None => wrong.push(format!("{within} names {named} past the rooms")),
            }
        }
    }
    wrong
}

/// Holds the order of the rooms in a folder that is the module `prefix`, such as
/// `crate::window`; each room must be there, and none that is not in the list.
#[track_caller]
fn check_order(root: &Path, prefix: &str, rooms: &[&str]) {
    let sources = sources(root, prefix);
    let mut wrong = out_of_order(&sources, prefix, rooms);
    let house = Source::new(prefix, "").module.len();
    for room in rooms {
        let is_there = |source: &Source| source.module.get(house).is_some_and(|own| own == room);
        if !sources.iter().any(is_there) {
            wrong.push(format!("there is no room {room}"));
        }
    }
    wrong.sort();
    wrong.dedup();
    assert!(wrong.is_empty(), "\n{}", wrong.join("\n"));
}

fn app() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("../app/src")
}

#[test]
fn the_core_keeps_its_order() {
    let core = Path::new(env!("CARGO_MANIFEST_DIR")).join("../core/src");
    let mut rooms = vec![
        "units", "number", "steel", "finding", "asked", "shape", "paper", "forge", "tongs", "tool",
        "proof", "making", "heats", "draw", "shop",
    ];
    // Tools other than tongs have their place in the list before there are any.
    rooms.retain(|room| *room != "tool" || core.join(room).exists());
    check_order(&core, "crate", &rooms);
}

#[test]
fn the_window_keeps_its_order() {
    let rooms = ["paint", "state", "sheet", "panels", "bench"];
    check_order(&app().join("window"), "crate::window", &rooms);
}

#[test]
fn the_app_keeps_its_order() {
    check_order(&app(), "crate", &["disk", "jobs", "window", "command_line"]);
}

#[test]
fn the_command_line_knows_nothing_of_the_window_but_how_to_open_it() {
    let mut calls = Vec::new();
    for source in sources(&app().join("command_line"), "crate::command_line") {
        for path in imports::paths(&source.text, &source.module) {
            if path[0] == "window" {
                calls.push((source.module.join("::"), path.join("::")));
            }
        }
    }
    calls.sort();
    let asked = ["window::has_display", "window::open"];
    assert_eq!(
        calls,
        asked.map(|path| ("command_line".to_owned(), path.to_owned())),
        "the window is opened at one place, where there is a display"
    );
}

/// What the check says of one source of a house with three rooms.
#[track_caller]
fn check(module: &str, text: &str, wrong: &[&str]) {
    let found = out_of_order(
        &[Source::new(module, text)],
        "crate::house",
        &["cellar", "hall", "loft"],
    );
    assert_eq!(found, wrong, "in {text}");
}

#[test]
fn what_points_up_the_list_may_stand() {
    check("crate::house", "use loft::A; use self::hall::B;", &[]);
    check("crate::house::hall", "use crate::house::cellar::A;", &[]);
    check("crate::house::hall::x", "use super::super::cellar::A;", &[]);
    check("crate::house::hall::x", "use super::y::A;", &[]);
    check("crate::house::hall", "use crate::garden::A;", &[]);
}

#[test]
fn what_points_down_the_list_is_found() {
    let wrong = "house::hall::x names house::loft::A, a room below its own";
    for planted in [
        "use crate::house::loft::A;",
        "use crate::house::{cellar::B, loft::A};",
        "use crate::{garden::C, house::{self::cellar, loft::{A}}};",
        "use super::super::loft::A;",
        "fn f() { let a: crate::house::loft::A = b; }",
        "fn f() { super::super::loft::A { b } }",
        "mod tests { use super::super::super::loft::A; }",
    ] {
        check("crate::house::hall::x", planted, &[wrong]);
    }
}

#[test]
fn what_goes_round_the_rooms_is_found() {
    check(
        "crate::house::hall",
        "use super::A;",
        &["house::hall names house::A past the rooms"],
    );
    check(
        "crate::house::hall",
        "use crate::house;",
        &["house::hall names house past the rooms"],
    );
    check(
        "crate::house::hall::x",
        "use super::super::*;",
        &["house::hall::x names house::* past the rooms"],
    );
    check(
        "crate::house::shed::x",
        "",
        &["house::shed::x is in no room of the list"],
    );
}
