//! `balance`: for scripts and in words.

use reinwright_tests::command_line::{done, json};
use serde_json::Value;

use super::{keys, path_of};

#[test]
fn balance_answers_scripts_with_a_unit_in_every_key() {
    let json = json(&["balance", &path_of("textbook-light-chain"), "--json"]);
    keys(&json["bar"], &["shape", "size_mm", "area_mm2"]);
    keys(
        &json["half"],
        &[
            "volume_mm3",
            "mass_kg",
            "bar_length_mm",
            "parts",
            "allowances",
        ],
    );
    keys(
        &json["half"]["parts"][0],
        &["part", "finished_length_mm", "volume_mm3", "bar_length_mm"],
    );
    keys(&json["half"]["allowances"][0], &["what", "bar_length_mm"]);
    keys(&json["pair"], &["bar_length_mm", "mass_kg", "marks"]);
    keys(&json["pair"]["marks"][0], &["at_mm", "what"]);
    assert_eq!(json["bar"]["shape"], "square");
    assert_eq!(json["bar"]["size_mm"], 19.05);
}

/// The sum of the textbook exercise, W. L. Ilgen, Forge Work (1912): 13 in.
#[test]
fn balance_in_json_is_the_textbook_bar() {
    let json = json(&["balance", &path_of("textbook-light-chain"), "--json"]);
    let inches = json["pair"]["bar_length_mm"].as_f64().unwrap() / 25.4;
    assert!((inches - 13.0).abs() < 0.02 * 13.0, "{inches}");
}

#[test]
fn numbers_in_json_say_their_unit() {
    let words = ["mm", "mm2", "mm3", "kg"];
    let json = json(&["balance", &path_of("v-over-flat"), "--json"]);
    let mut open = vec![&json];
    while let Some(value) = open.pop() {
        match value {
            Value::Object(object) => {
                for (key, value) in object {
                    let unit = key.rsplit('_').next().unwrap();
                    assert!(!value.is_number() || words.contains(&unit), "{key}");
                    open.push(value);
                }
            }
            Value::Array(values) => open.extend(values),
            Value::Null | Value::Bool(_) | Value::Number(_) | Value::String(_) => {}
        }
    }
    keys(&json, &["half", "second_half"]);
}

#[test]
fn balance_speaks_the_designs_units() {
    let inches = done(&["balance", &path_of("textbook-light-chain")]);
    assert!(
        inches.contains("13.1") && inches.contains(" in of 3/4 in square"),
        "{inches}"
    );
    let metric = done(&["balance", &path_of("v-bit-square")]);
    assert!(
        metric.contains(" mm of 20 mm round") && metric.contains("kg"),
        "{metric}"
    );
}
