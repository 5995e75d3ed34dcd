//! `fit`: that it agrees with the core and with itself, and what it does not tell.

use reinwright_core::proof::fit::fit;
use reinwright_core::tongs::document;
use reinwright_core::tongs::resolve;
use reinwright_tests::close;
use reinwright_tests::command_line::{done, json, refused, text};
use reinwright_tests::designs::sample;
use reinwright_tests::files::{folder, put};
use reinwright_tests::pairs::length;

use super::{number, path_of};

/// What the answer must have, and that it agrees with the core and with itself.
#[test]
fn fit_as_json_agrees_with_the_core() {
    let path = path_of("light-flat");
    let answer = json(&["fit", &path, "--json"]);
    let design = sample("light-flat");
    let model = resolve(&design);
    let fit = fit(&design, &model);
    let range = fit.range.as_ref().expect("the sample holds its work");
    let held = &answer["work_range_mm"];
    // The reader of JSON may miss a number by its last bit.
    let same = |what: &str, read: f64, own: f64| close(what, read, own, 1e-15);
    same("least", number(held, "least"), range.least.size_mm);
    same("most", number(held, "most"), range.most.size_mm);
    assert_eq!(held["least_ended_by"], range.least.limit.name());
    assert_eq!(held["most_ended_by"], range.most.limit.name());
    same("leverage", number(&answer, "leverage"), fit.leverage());
    same(
        "opening",
        number(&answer, "opening_deg"),
        fit.opening.to_degrees(),
    );
    let account = json(&["balance", &path, "--json"]);
    let mass = number(&account["pair"], "mass_kg");
    assert!((number(&answer, "mass_kg") - mass).abs() < 1e-9 * mass);
    assert!(number(&answer, "jaw_gap_mm") > 0.0 && number(&answer, "hand_gap_mm") > 0.0);
    assert!(answer["balance_point_mm"].is_f64());
}

/// Forces grow with the squeeze, each squeeze is magnified by the leverage, and each figure has
/// its limit and the margin that follows from both.
#[test]
fn fit_as_json_has_forces_and_stresses_with_margins() {
    let path = path_of("v-bit-square");
    let answer = json(&["fit", &path, "--json"]);
    let leverage = number(&answer, "leverage");
    let squeezes = answer["squeezes"].as_array().expect("a list");
    assert_eq!(squeezes.len(), 3);
    for squeeze in squeezes {
        let (hand, jaw) = (
            number(squeeze, "hand_force_n"),
            number(squeeze, "jaw_force_n"),
        );
        assert!((jaw - leverage * hand).abs() < 1e-9 * jaw, "{squeeze}");
        assert!(number(squeeze, "peak_stress_mpa") > 0.0);
    }
    let figures = answer["figures"].as_array().expect("a list");
    let mut stresses = 0;
    for figure in figures {
        let of = |end: &str| {
            let keys = [format!("found_{end}"), format!("limit_{end}")];
            let [found, limit] = keys.map(|key| figure[&key].as_f64());
            found.zip(limit)
        };
        stresses += i32::from(of("stress_mpa").is_some());
        let pairs = ["stress_mpa", "force_n", "mm"].map(of);
        let (found, limit) = pairs
            .into_iter()
            .flatten()
            .next()
            .expect("one pair of numbers");
        let margin = if figure["needs"] == "at most" {
            limit / found
        } else {
            found / limit
        };
        assert!(
            (number(figure, "margin") - margin).abs() < 1e-9 * margin,
            "{figure}"
        );
        assert_eq!(figure["holds"], margin >= 1.0, "{figure}");
    }
    assert!(stresses >= 5, "{figures:?}");
}

#[test]
fn fit_is_told_in_words() {
    let text = done(&["fit", &path_of("light-flat")]);
    for words in [
        "Holds ",
        "Leverage ",
        "squeeze of 36 lbf",
        "margin ",
        "do not certify",
    ] {
        assert!(text.contains(words), "{words} in: {text}");
    }
}

/// A pair that holds nothing says why, and is no error.
#[test]
fn fit_says_why_nothing_is_held() {
    let folder = folder();
    let path = folder.path().join("short.ron");
    let mut design = sample("v-bit-square");
    design.work = design.work.with_size(length("1 mm"));
    put(folder.path(), "short.ron", document::write(&design));
    let answer = json(&["fit", text(&path), "--json"]);
    let model = resolve(&design);
    let fit = fit(&design, &model);
    let why = fit
        .nominal
        .expect_err("1 mm is too thin for this pair")
        .to_string();
    assert_eq!(answer["not_on_its_work"], why);
    assert!(answer["on_its_work"].is_null());
}

#[test]
fn fit_refuses_what_is_no_design() {
    refused(&["fit", "nowhere.ron"], &["nowhere.ron", "no such file"]);
}

/// What the jaws do not reach is not pressed: no force, no leverage, no stress is given for it.
#[test]
fn fit_gives_no_forces_for_work_that_is_not_reached() {
    let folder = folder();
    let mut pair = sample("v-bit-square");
    pair.work = reinwright_core::asked::parse_work("1/8 in round").expect("work");
    put(folder.path(), "far.ron", document::write(&pair));
    let path = text(&folder.path().join("far.ron")).to_owned();
    let told = done(&["fit", &path]);
    assert!(told.contains("Verdict: cannot hold it: "), "{told}");
    for words in ["squeeze of", "MPa", "Leverage", "Pressed"] {
        assert!(!told.contains(words), "{words} in: {told}");
    }
    let answer = json(&["fit", &path, "--json"]);
    assert_eq!(answer["verdict"], "cannot hold it");
    for key in ["squeezes", "figures"] {
        assert_eq!(answer[key].as_array().map(Vec::len), Some(0), "{key}");
    }
    for key in ["leverage", "grip_arm_mm"] {
        assert!(answer[key].is_null(), "{key}: {}", answer[key]);
    }
    let own = json(&["fit", &path_of("v-bit-square"), "--json"]);
    assert_eq!(own["verdict"], "holds it well");
    assert!(own["leverage"].is_number() && own["figures"][0].is_object());
}
