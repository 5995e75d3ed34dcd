//! `findings`: the exit status, and the ways to mend.

use reinwright_tests::command_line::{ask, json, text};
use reinwright_tests::designs::{family_paths, sample};
use reinwright_tests::files::folder;
use reinwright_tests::pairs::length;
use serde_json::Value;

use super::{keys, path_of, saved};

#[test]
fn findings_exit_with_the_worst() {
    let folder = folder();
    let mut design = sample("hollow-bit-round");
    let path = saved(&folder, &design);
    assert_eq!(ask(&["findings", &path]).status, 0, "nothing");
    design.rivet.hole = length("7/16 in");
    design.rivet.diameter = length("3/8 in");
    let path = saved(&folder, &design);
    let note = ask(&["findings", &path]);
    assert_eq!(note.status, 1, "the wall is thin now: {}", note.text);
    design.rivet.diameter = length("1/2 in");
    let path = saved(&folder, &design);
    let stop = ask(&["findings", &path, "--json"]);
    assert_eq!(stop.status, 2);
    let json: Value = serde_json::from_str(&stop.text).unwrap();
    assert_eq!(json["worst"], "Stop");
    keys(
        &json["findings"][0],
        &[
            "severity", "part", "message", "value_mm", "limit_mm", "hint", "source",
        ],
    );
    assert_eq!(json["findings"][0]["part"], "rivet");
}

/// Scripts get each mend with its fields and its cost, people the same in words.
#[test]
fn findings_come_with_ways_to_mend() {
    let folder = folder();
    let mut design = sample("hollow-bit-round");
    let wide = design.bar.stock.wide_mm();
    design.neck.depth = reinwright_tests::pairs::mm(wide + 3.0);
    let path = saved(&folder, &design);
    let answer = ask(&["findings", &path, "--json"]);
    let json: Value = serde_json::from_str(&answer.text).unwrap();
    let all = json["findings"].as_array().unwrap();
    let over = all.iter().find(|finding| {
        let message = finding["message"].as_str().unwrap();
        message.contains("more than the bar")
    });
    let over = over.expect("the neck is deeper than the bar");
    assert_eq!(over["not_from_this_bar"], false);
    let mend = &over["mends"][0];
    keys(
        mend,
        &["name", "adds_bar_mm", "adds_mass_kg", "adds_hand_gap_mm"],
    );
    assert_eq!(mend["field"], "neck.depth");
    assert_eq!(mend["from"], design.neck.depth.to_string());
    assert_eq!(mend["with"], Value::Array(Vec::new()));
    let saved_mm = mend["adds_bar_mm"].as_f64().unwrap();
    assert!(
        saved_mm < 0.0,
        "a shallower neck takes less bar: {saved_mm}"
    );
    // Taken as it is told, the finding is gone.
    design
        .set("neck.depth", mend["to"].as_str().unwrap())
        .unwrap();
    let path_mended = saved(&folder, &design);
    let mended = ask(&["findings", &path_mended]);
    assert!(
        !mended.text.contains("more than the bar"),
        "{}",
        mended.text
    );
    design.neck.depth = reinwright_tests::pairs::mm(wide + 3.0);
    let told = ask(&["findings", &saved(&folder, &design)]).text;
    let line = format!(
        "  mend: Neck depth {} to {}: ",
        design.neck.depth,
        mend["to"].as_str().unwrap()
    );
    assert!(told.contains(&line), "{line} in {told}");
}

/// A Note asks for nothing to be mended, and a family's sizes are told without mends.
#[test]
fn a_note_and_a_family_have_no_mends() {
    let note = json(&["findings", &path_of("open-flat"), "--json"]);
    assert_eq!(note["worst"], "Note");
    assert_eq!(note["findings"][0]["mends"], Value::Array(Vec::new()));
    let set = text(&family_paths()[0]).to_owned();
    let set = ask(&["findings", &set, "--json"]).text;
    assert!(!set.contains("\"mends\""), "{set}");
}

#[test]
fn a_note_is_no_failure() {
    let answer = ask(&["findings", &path_of("open-flat")]);
    assert!(answer.text.starts_with("Note: "), "{}", answer.text);
    assert_eq!(answer.status, 0);
}
