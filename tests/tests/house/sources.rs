//! Every source that code or tests name stands in `docs/sources.md`, and nothing stands there that
//! neither names.
#![allow(clippy::unwrap_used, reason = "a test may stop at what it cannot read")]

use std::collections::BTreeSet;
use std::fs;

use super::tidy::{files, root};

/// Bodies whose papers have a number.
const BODIES: [&str; 18] = [
    "ISO",
    "ISO/IEC",
    "EN",
    "EN ISO",
    "ASME",
    "ASTM",
    "AISC",
    "DIN",
    "BS",
    "ANSI",
    "ANSI/ASME",
    "NIOSH",
    "Cal/OSHA",
    "OSHA",
    "CFR",
    "CCOHS",
    "IEC",
    "CGPM",
];

/// Months before a year: a date is no source.
const DATES: [&str; 3] = ["January", "February", "Since"];

/// The text of all sources, each without the marks that break a sentence over lines.
fn code() -> Vec<String> {
    let own = "house/sources.rs";
    let folders = ["core/src", "app/src", "tests/tests", "tests/src"];
    let paths = folders
        .iter()
        .flat_map(|folder| files(&root().join(folder), ".rs"));
    let others = paths.filter(|path| !path.ends_with(own));
    others
        .map(|path| joined(&fs::read_to_string(path).unwrap()))
        .collect()
}

/// Comments over several lines, and texts broken by a backslash, as one line.
fn joined(text: &str) -> String {
    let mut all = String::new();
    for line in text.lines() {
        let line = line.trim();
        let bare = line
            .trim_start_matches('/')
            .trim_start_matches('!')
            .trim_start();
        all += bare.strip_suffix('\\').unwrap_or(bare);
        all.push(' ');
    }
    all.split_whitespace().collect::<Vec<_>>().join(" ")
}

/// The first column of the tables of `docs/sources.md`: what a source is called in the code.
fn listed() -> Vec<String> {
    let text = fs::read_to_string(root().join("docs/sources.md")).unwrap();
    let rows = text.lines().filter_map(|line| line.strip_prefix("| "));
    let first = rows.filter_map(|row| row.split(" | ").next().map(str::trim));
    let names = first.flat_map(|cell| cell.split("; ").map(str::to_owned).collect::<Vec<_>>());
    names.filter(|name| name != "called").collect()
}

fn is_number(word: &str) -> bool {
    let plain = |c: char| c.is_ascii_alphanumeric() || "-.:/".contains(c);
    word.chars().any(|c| c.is_ascii_digit()) && word.chars().all(plain)
}

fn bare(word: &str) -> &str {
    word.trim_matches(|c: char| !c.is_ascii_alphanumeric())
}

/// `EN 1993-1-2`, `ASME B18.1.2`: numbered papers in a text, without their year.
fn papers(text: &str) -> BTreeSet<String> {
    let words: Vec<&str> = text.split(' ').collect();
    let mut found = BTreeSet::new();
    for (at, word) in words.iter().enumerate() {
        let body = word.trim_start_matches(|c: char| !c.is_ascii_alphanumeric());
        let number = bare(words.get(at + 1).copied().unwrap_or_default());
        if BODIES.contains(&body) && is_number(number) {
            let number = number.split(':').next().unwrap_or(number);
            found.insert(format!("{body} {number}"));
        }
    }
    found
}

/// `Ilgen` of `Ilgen, Forge Work (1912)`: the words with a capital before a year, as far as the
/// sentence goes back.
fn dated(text: &str) -> BTreeSet<String> {
    let words: Vec<&str> = text.split(' ').collect();
    let is_year = |word: &str| {
        let year = bare(word).parse::<u32>();
        bare(word).len() == 4 && year.is_ok_and(|year| (1850..2035).contains(&year))
    };
    let mut found = BTreeSet::new();
    for (at, word) in words.iter().enumerate().skip(1) {
        let before = words[at - 1];
        let stands_free = !before.ends_with(['.', ':', ';']) && !word.contains('-');
        let name = bare(before);
        let is_name =
            name.starts_with(char::is_uppercase) && name.chars().skip(1).all(char::is_lowercase);
        if is_year(word) && stands_free && is_name && name.len() > 2 && !DATES.contains(&name) {
            found.insert(name.to_owned());
        }
    }
    found
}

#[test]
fn what_is_listed_is_used() {
    let (listed, code) = (listed(), code());
    assert!(listed.len() > 20, "the tables were found: {listed:?}");
    for name in listed {
        assert!(
            code.iter().any(|text| text.contains(&name)),
            "docs/sources.md lists \"{name}\", which neither code nor tests name"
        );
    }
}

#[test]
fn what_is_used_is_listed() {
    let tables = fs::read_to_string(root().join("docs/sources.md")).unwrap();
    let all = code();
    let used: BTreeSet<String> = all
        .iter()
        .flat_map(|text| [papers(text), dated(text)])
        .flatten()
        .collect();
    assert!(used.len() > 15, "sources were found: {used:?}");
    let missing: Vec<_> = used
        .iter()
        .filter(|name| !tables.contains(name.as_str()))
        .collect();
    assert!(
        missing.is_empty(),
        "docs/sources.md does not list {missing:?}"
    );
    for book in ["Machinery's Handbook", "Roark", "Abramowitz", "Bronshtein"] {
        let named = all.iter().any(|text| text.contains(book));
        assert_eq!(
            named,
            tables.contains(book),
            "{book}: listed, or not, as it is used"
        );
    }
}

#[test]
fn papers_are_read_from_sentences() {
    let check = |text: &str, wanted: &[&str]| {
        let mut found = papers(&joined(text));
        found.extend(dated(&joined(text)));
        assert_eq!(found.into_iter().collect::<Vec<_>>(), wanted, "{text}");
    };
    check(
        "/// Hot strength (EN 1993-1-2:2005,\n/// Table 3.1).",
        &["EN 1993-1-2"],
    );
    check("\"ASME \\\n    B18.1.2 heads\"", &["ASME B18.1.2"]);
    check("// W. L. Ilgen, Forge Work (1912)", &["Work"]);
    check("// in January 1970; an EN of 12, ISO alone", &[]);
}
