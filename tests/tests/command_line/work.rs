//! Work as it is called, and which styles suit it.

use reinwright_tests::command_line::{done, json, refused};

use super::keys;

/// Work as it is called, in every command that takes work.
#[test]
fn work_is_asked_for_as_it_is_called() {
    let first = |arguments: &[&str]| {
        let text = done(arguments);
        text.lines().next().expect("an answer").to_owned()
    };
    assert!(first(&["choose", "5/8 bolt behind its head"]).starts_with("bolt: holds it well"));
    assert!(
        first(&["choose", "M16", "--way", "behind-its-head"]).starts_with("bolt: holds it well")
    );
    assert!(first(&["choose", "M16"]).starts_with("V bit: holds it well"));
    assert!(first(&["choose", "1/2 in pipe"]).starts_with("V bit: holds it well"));
    assert!(first(&["choose", "#5 rebar"]).starts_with("V bit: holds it well"));
    refused(&["choose", "M15"], &["M15", "M14, M16"]);
    let folder = tempfile::tempdir().expect("a folder");
    let path = folder.path().join("pair.ron");
    let new = |jaw: &str, work: &str| {
        let out = path.to_str().expect("a path in letters");
        let jaw = ["new", "--jaw", jaw, "--work", work];
        done(&[&jaw[..], &["--bar", "3/4 in square", "--out", out]].concat())
    };
    for (jaw, work, holds) in [
        (
            "bolt",
            "5/8 bolt",
            "holds: 5/8 in bolt behind its head: 5/8 in shank, head 15/16 in across flats and 25/64 in high",
        ),
        (
            "v-bit",
            "M16",
            "holds: M16 bolt by its head on corners: head 24 mm across flats and 10 mm high, 16 mm shank",
        ),
        (
            "flat",
            "1 x 3/8 flat",
            "holds: flat, 3/8 in thick between the jaws, 1 in wide",
        ),
        (
            "v-bit",
            "1 x 1 x 1/8 angle",
            "holds: 1 in x 1 in x 1/8 in angle by its back",
        ),
        (
            "flat",
            "1 x 1 x 1/8 angle",
            "1/8 in thick, the leg of 1 in in the jaws",
        ),
    ] {
        let said = new(jaw, work);
        assert!(said.contains(holds), "{work}: {said}");
    }
}

#[test]
fn choose_names_what_suits_first_and_says_why() {
    let text = done(&["choose", "5/8 in hexagon", "--way", "end-on"]);
    assert!(text.starts_with("V bit: holds it well: "), "{text}");
    let text = done(&["choose", "5/8 in round"]);
    let flat = text.lines().find(|line| line.starts_with("flat: "));
    let flat = flat.expect("flat is spoken of");
    assert!(
        flat.starts_with("flat: unsafe: a round bar rolls"),
        "{flat}"
    );
    let all = json(&["choose", "3/8 in round", "--way", "across", "--json"]);
    let all = all.as_array().expect("a list");
    assert_eq!(all[0]["verdict"], "holds it well");
    all.iter()
        .for_each(|one| keys(one, &["style", "verdict", "reason"]));
    refused(
        &["choose", "5/8 in round", "--way", "sideways"],
        &["--way", "sideways", "end-on"],
    );
    refused(&["choose", "16 round"], &["16"]);
}
