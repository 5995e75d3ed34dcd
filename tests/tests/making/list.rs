//! The plan as a list for the anvil and as JSON, and a stage as a drawing.

use reinwright_tests::command_line::{done, json, refused, text};
use reinwright_tests::designs::samples_folder;
use serde_json::Value;

fn file(name: &str) -> String {
    let path = samples_folder().join(name).with_extension("ron");
    text(&path).to_owned()
}

#[test]
fn the_answer_has_its_keys_and_adds_up() {
    let file = file("v-bit-square");
    for procedure in ["three-shoulders", "reins-first", "jaw-first", "welded-rein"] {
        let answer = json(&["plan", &file, "--procedure", procedure, "--json"]);
        assert_eq!(answer["procedure"], procedure);
        let operations = answer["operations"].as_array().expect("a list");
        assert!(operations.len() > 10, "{procedure}");
        let mut lost = 0.0;
        for own in operations {
            let number = |key: &str| {
                own[key]
                    .as_f64()
                    .unwrap_or_else(|| panic!("{key} in {own}"))
            };
            let [before, after] = ["volume_before_mm3", "volume_after_mm3"].map(number);
            lost += number("lost_mm3");
            reinwright_tests::close(procedure, after + number("lost_mm3"), before, 1e-9);
            assert!(number("length_before_mm") > 0.0 && number("length_after_mm") > 0.0);
            for word in ["what", "part", "check"] {
                assert!(
                    own[word].as_str().is_some_and(|text| !text.is_empty()),
                    "{word} in {own}"
                );
            }
            assert!(own["turn"].is_string() && own["cautions"].is_array());
            let hot = [&own["hot_from_mm"], &own["hot_to_mm"]].map(Value::as_f64);
            if let [Some(from), Some(to)] = hot {
                assert!(from < to && number("enters_circle_mm") > 0.0, "{own}");
            } else {
                assert_eq!(hot, [None, None]);
            }
        }
        let total = answer["totals"]["lost_mm3"].as_f64().expect("a number");
        reinwright_tests::close(procedure, total, lost, 1e-9);
    }
}

#[test]
fn the_list_is_in_the_units_of_the_design() {
    let inches = done(&["plan", &file("textbook-light-chain")]);
    for words in [
        "1 1/4 in",
        "centre punch",
        "quarter turn left",
        "same, not mirrored",
        "Other ways:",
    ] {
        assert!(inches.contains(words), "{words} in:\n{inches}");
    }
    assert!(!inches.contains(" mm"), "{inches}");
    let metric = done(&["plan", &file("v-bit-square")]);
    assert!(
        metric.contains("10 mm") && !metric.contains(" in,"),
        "{metric}"
    );
}

#[test]
fn a_procedure_or_a_stage_that_is_not_there_is_refused() {
    let file = file("v-bit-square");
    refused(
        &["plan", &file, "--procedure", "casting"],
        &["casting", "three-shoulders"],
    );
    let folder = tempfile::tempdir().expect("a folder");
    let path = folder.path().join("stage.svg");
    let out = text(&path).to_owned();
    let asked = |stage: &'static str| {
        [
            "drawing", &file, "--of", "stage", "--stage", stage, "--out", &out,
        ]
        .map(str::to_owned)
    };
    let many = asked("99");
    refused(&many.each_ref().map(String::as_str), &["--stage", "99"]);
    let third = asked("3");
    done(&third.each_ref().map(String::as_str));
    let svg = std::fs::read_to_string(&path).expect("it was written");
    for words in ["side", "top", "set down the boss", "hot from"] {
        assert!(svg.contains(words), "{words}");
    }
}
