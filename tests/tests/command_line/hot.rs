//! Jaws that become hot, wherever they can be asked for.

use reinwright_tests::command_line::{ask, json, refused, text};
use reinwright_tests::designs::family_paths;
use serde_json::Value;

use super::{number, path_of};

/// The jaw's temperature of the command line is the one that the strength is reckoned with.
#[test]
fn hot_jaws_are_asked_for_on_the_command_line() {
    let path = path_of("light-flat");
    let neck = |answer: &Value| {
        let figures = answer["figures"].as_array().expect("a list");
        let neck = figures.iter().find(|f| f["what"] == "bending of the neck");
        number(neck.expect("a neck"), "limit_stress_mpa")
    };
    let cold = json(&["fit", &path, "--json"]);
    let hot = json(&["fit", &path, "--json", "--jaw-heat", "600 C"]);
    assert_eq!(number(&hot["steel"], "jaw_temperature_c"), 600.0);
    // EN 1993-1-2 Table 3.1: 0.18 of the proportional limit is left at 600 °C.
    assert!((neck(&hot) / neck(&cold) - 0.18).abs() < 1e-9);
    assert_eq!(hot, json(&["fit", &path, "--json", "--jaw-heat", "1112 F"]));
    let told = ask(&["findings", &path, "--jaw-heat", "800 C"]);
    assert!(told.text.contains("at 1472 °F"), "{}", told.text);
    // At 800 °C a tenth of the steel is left: the neck breaks, and that is a Stop.
    assert_eq!(told.status, 2);
    assert!(!ask(&["findings", &path]).text.contains("°F"));
}

#[test]
fn a_temperature_that_is_none_is_refused() {
    let path = path_of("light-flat");
    refused(
        &["fit", &path, "--jaw-heat", "red"],
        &["--jaw-heat", "red", "600 C"],
    );
    refused(
        &["findings", &path, "--jaw-heat", "1500 C"],
        &["1500", "1200"],
    );
    refused(
        &["findings", &path, "--jaw-heat", "-300 F"],
        &["-300 °F", "68 °F", "2192 °F"],
    );
}

#[test]
fn a_family_is_asked_with_hot_jaws_too() {
    let path = family_paths()[0].clone();
    let told = ask(&["findings", text(&path), "--jaw-heat", "900 C"]);
    assert!(told.text.contains("at 1652 °F"), "{}", told.text);
    let answer = json(&["fit", text(&path), "--json", "--jaw-heat", "900 C"]);
    assert_eq!(answer["sizes"][0]["steel"]["jaw_temperature_c"], 900.0);
}
