//! THIRD-PARTY.md, made from the packages' own sources.

use std::collections::BTreeMap;
use std::fmt::Write as _;
use std::fs;
use std::path::{Path, PathBuf};
use std::process::Command;

use super::{licence, lock, root};

/// The fonts that the window draws with and a PDF takes letters from.
pub(crate) const FONTS: [&str; 5] = [
    "Ubuntu-Light",
    "Hack-Regular",
    "NotoEmoji-Regular",
    "emoji-icon-font",
    "egui-icons",
];

const HEAD: &str = "# Third parties

What others wrote in a built Reinwright. Each package below is used under the licence of the last
column, whose texts follow; where a package offers several, we take one. The list holds for every
system that the program can be built for, and names those too that only build it. It is made by
`UPDATE_EXPECT=1 cargo test --workspace --test house third_party`, and the tests hold it against
Cargo.lock and against the licences that [deny.toml](deny.toml) allows. Our own code is under
[MIT](LICENSE-MIT) or [Apache-2.0](LICENSE-APACHE), as you like.

## Packages

| package | version | its licence | taken |
|---|---|---|---|
";

const FONTS_HEAD: &str = "
## Fonts

The window draws with Ubuntu-Light (Ubuntu Font Licence), Hack-Regular (MIT and Bitstream Vera),
NotoEmoji-Regular (OFL 1.1), emoji-icon-font (MIT) and egui-icons (MIT), which come with the package
epaint_default_fonts. A PDF takes from Ubuntu-Light the letters that Helvetica lacks.

## Texts

Apache-2.0 stands in [LICENSE-APACHE](LICENSE-APACHE), the Ubuntu Font Licence in
[LICENSE-FONT](LICENSE-FONT).
";

/// The whole file.
pub(crate) fn anew(allowed: &[String]) -> String {
    let known = packages();
    let mut table = String::new();
    // Texts by licence and wording: who has it.
    let mut texts: BTreeMap<(String, String), Vec<String>> = BTreeMap::new();
    for key in lock::of_the_program() {
        let package = &known[&key];
        let own = package["license"].as_str().unwrap_or("none told");
        let taken = licence::taken(own, allowed)
            .unwrap_or_else(|| panic!("{}: {own} is not allowed", key.0));
        writeln!(
            table,
            "| {} | {} | {own} | {} |",
            key.0,
            key.1,
            taken.join(" and ")
        )
        .expect("a text takes all");
        let manifest = package["manifest_path"].as_str().expect("cargo tells it");
        let folder = Path::new(manifest).parent().expect("a file is in a folder");
        for one in taken.iter().filter(|one| !licence::once(one)) {
            for text in texts_of(folder, one).unwrap_or_else(|| vec![no_text(package)]) {
                let name = format!("{} {}", key.0, key.1);
                texts.entry((one.clone(), text)).or_default().push(name);
            }
        }
        let beside = [
            (
                "notice",
                in_folder(folder, |name| name.starts_with("NOTICE")),
            ),
            ("font", fonts_of(folder)),
        ];
        for (kind, file) in beside
            .iter()
            .flat_map(|(kind, files)| files.iter().map(move |file| (kind, file)))
        {
            let stem = file.file_stem().unwrap_or_default().to_string_lossy();
            let whose = format!("{} {}", key.0, stem.trim_start_matches("NOTICES"));
            texts
                .entry(((*kind).into(), tidy(file)))
                .or_default()
                .push(whose.trim_end().to_owned());
        }
    }
    let mut all = format!("{HEAD}{table}{FONTS_HEAD}");
    for ((licence, text), who) in texts {
        write!(
            all,
            "\n### {licence}: {}\n\n```\n{text}\n```\n",
            who.join(", ")
        )
        .expect("a text takes all");
    }
    all
}

/// Every package that cargo knows of, as it tells it, by name and version.
fn packages() -> BTreeMap<(String, String), serde_json::Value> {
    let told = Command::new(env!("CARGO"))
        .args(["metadata", "--locked", "--format-version", "1"])
        .current_dir(root())
        .output()
        .expect("cargo runs");
    let told: serde_json::Value = serde_json::from_slice(&told.stdout).expect("cargo tells JSON");
    let packages = told["packages"].as_array().expect("there are some").iter();
    let text = |value: &serde_json::Value| value.as_str().expect("a text").to_owned();
    packages
        .map(|package| {
            (
                (text(&package["name"]), text(&package["version"])),
                package.clone(),
            )
        })
        .collect()
}

/// The texts of one licence that lie in a package: those named after it, else all that are licences.
fn texts_of(folder: &Path, licence: &str) -> Option<Vec<String>> {
    let word = licence
        .split('-')
        .next()
        .expect("a text has a beginning")
        .to_uppercase();
    let other = |name: &str| name.contains("APACHE") || name.contains("MIT");
    let named = in_folder(folder, |name| is_licence(name) && name.contains(&word));
    let found = match licence {
        "OFL-1.1" => in_folder(&folder.join("fonts"), |name| name == "OFL.TXT"),
        _ if named.is_empty() => in_folder(folder, |name| is_licence(name) && !other(name)),
        _ => named,
    };
    let texts: Vec<String> = found.iter().map(|path| tidy(path)).collect();
    (!texts.is_empty()).then_some(texts)
}

/// The texts that lie beside fonts, those left out that stand elsewhere.
fn fonts_of(folder: &Path) -> Vec<PathBuf> {
    in_folder(&folder.join("fonts"), |name| {
        name.ends_with(".TXT") && !["OFL.TXT", "UFL.TXT"].contains(&name)
    })
}

fn is_licence(name: &str) -> bool {
    ["LICENSE", "LICENCE", "COPYING"]
        .iter()
        .any(|word| name.starts_with(word))
}

/// The files of a folder whose names, in capitals, are so.
fn in_folder(folder: &Path, wanted: impl Fn(&str) -> bool) -> Vec<PathBuf> {
    let entries = fs::read_dir(folder).into_iter().flatten().flatten();
    let paths = entries
        .map(|entry| entry.path())
        .filter(|path| path.is_file());
    let mut found: Vec<PathBuf> = paths
        .filter(|path| {
            let name = path.file_name().unwrap_or_default().to_string_lossy();
            wanted(&name.to_uppercase())
        })
        .collect();
    found.sort();
    found
}

/// A text with one kind of line end and no spaces before one.
fn tidy(path: &Path) -> String {
    let bytes = fs::read(path).expect("the sources can be read");
    let text = String::from_utf8_lossy(&bytes);
    let lines: Vec<&str> = text.trim().lines().map(str::trim_end).collect();
    lines.join("\n").replace("```", "'''")
}

/// What stands for the text of a package that brings none.
fn no_text(package: &serde_json::Value) -> String {
    let authors = package["authors"].as_array().into_iter().flatten();
    let authors: Vec<&str> = authors.filter_map(|author| author.as_str()).collect();
    let authors = if authors.is_empty() {
        "its authors".into()
    } else {
        authors.join(", ")
    };
    let place = package["repository"].as_str().unwrap_or("crates.io");
    format!("Copyright {authors}; the package brings no text of its own: see {place}")
}
