//! The jobs without a window: what they answer, what they write, how they fail.

mod balance;
mod drawn;
mod findings;
mod fit;
mod hot;
mod new;
mod refused;
mod work;

use reinwright_core::tongs::document::{self, Document};
use reinwright_tests::command_line::text;
use reinwright_tests::designs::samples_folder;
use reinwright_tests::files::put;
use serde_json::Value;

fn path_of(name: &str) -> String {
    let path = samples_folder().join(name).with_extension("ron");
    text(&path).to_owned()
}

fn saved(folder: &tempfile::TempDir, document: &Document) -> String {
    put(folder.path(), "design.ron", document::write(document));
    text(&folder.path().join("design.ron")).to_owned()
}

fn new_flat(out: &str) -> [&str; 9] {
    let [jaw, work, bar] = ["flat", "3/8 in flat", "3/4 in square"];
    [
        "new", "--jaw", jaw, "--work", work, "--bar", bar, "--out", out,
    ]
}

#[track_caller]
fn keys(value: &Value, expected: &[&str]) {
    let object = value.as_object().expect("an object");
    for key in expected {
        assert!(object.contains_key(*key), "{key} in {object:?}");
    }
}

fn number(value: &Value, key: &str) -> f64 {
    value[key]
        .as_f64()
        .unwrap_or_else(|| panic!("{key} is a number in {value}"))
}
