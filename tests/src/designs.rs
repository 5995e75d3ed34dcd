//! Samples, and designs varied by chance.

use std::path::PathBuf;

use reinwright_core::asked::{Field, Value};
use reinwright_core::tongs::document::{self, Document};

/// The folder of the samples.
pub fn samples_folder() -> PathBuf {
    PathBuf::from(concat!(env!("CARGO_MANIFEST_DIR"), "/../samples"))
}

/// A sample by name.
///
/// # Panics
/// If there is no such sample or it cannot be read.
pub fn sample(name: &str) -> Document {
    let path = samples_folder().join(name).with_extension("ron");
    let bytes = std::fs::read(&path).expect("the sample is there");
    document::read(&bytes).expect("the sample can be read")
}

/// The paths of all sample designs, sorted.
///
/// # Panics
/// If the folder cannot be read.
pub fn sample_paths() -> Vec<PathBuf> {
    let mut paths = files();
    paths.retain(|path| !is_family(path));
    paths
}

/// All sample designs by name.
///
/// # Panics
/// If one cannot be read.
pub fn samples() -> Vec<(String, Document)> {
    let named = sample_paths().into_iter().map(|path| {
        let name = path.file_stem().and_then(|name| name.to_str());
        let name = name.expect("samples have plain names").to_owned();
        let design = sample(&name);
        (name, design)
    });
    named.collect()
}

/// The paths of all sample families, sorted.
///
/// # Panics
/// If the folder cannot be read.
pub fn family_paths() -> Vec<PathBuf> {
    let mut paths = files();
    paths.retain(|path| is_family(path));
    paths
}

fn is_family(path: &std::path::Path) -> bool {
    let name = path.file_name().and_then(|name| name.to_str());
    name.is_some_and(|name| name.starts_with("family-"))
}

fn files() -> Vec<PathBuf> {
    let entries = std::fs::read_dir(samples_folder()).expect("the samples are there");
    let mut paths: Vec<PathBuf> = entries
        .map(|entry| entry.expect("an entry can be read").path())
        .filter(|path| path.extension().is_some_and(|end| end == "ron"))
        .collect();
    paths.sort();
    paths
}

/// A document whose every choice and number is thrown by the dice, inside its limits: first the
/// choices, which decide what numbers there are, then each number by the factor `1 ± spread` or,
/// with an infinite spread, anywhere in its range.
pub fn varied(base: &Document, dice: &[u32], spread: f64) -> Document {
    let mut document = base.clone();
    let mut dice = dice.iter().cycle().copied();
    let mut throw = move || dice.next().unwrap_or(0);
    document.revise(&mut |field| {
        let ways = field.value.ways();
        (!ways.is_empty()).then(|| Value::Choice {
            ways,
            chosen: throw() as usize % ways.len(),
        })
    });
    document.revise(&mut |field| vary(field, part_of_one(throw()), spread));
    document
}

fn part_of_one(dice: u32) -> f64 {
    f64::from(dice) / f64::from(u32::MAX)
}

fn vary(field: &Field, t: f64, spread: f64) -> Option<Value> {
    let range = field.range;
    let thrown = |now: f64| {
        let free = if spread.is_finite() {
            now * (1.0 + spread * (2.0 * t - 1.0))
        } else if range.least > 0.0 {
            // As many small ones as large ones.
            range.least * (range.most / range.least).powf(t)
        } else {
            range.most * t * t
        };
        free.clamp(range.least, range.most)
    };
    let number = thrown(field.value.number()?);
    let whole = matches!(field.value, Value::Count(_));
    Some(
        field
            .value
            .with_number(if whole { number.floor() } else { number }),
    )
}
