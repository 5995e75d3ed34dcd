//! The jobs without a window: what they answer, what they write, how they fail.

use std::path::Path;

use reinwright_core::proof::fit::fit;
use reinwright_core::tongs::document::{self, Document};
use reinwright_core::tongs::jaw::JawKind;
use reinwright_core::tongs::resolve;
use reinwright_tests::command_line::{ask, done, json, refused, text};
use reinwright_tests::designs::{family_paths, sample, samples_folder};
use reinwright_tests::files::{bytes, folder, names, pages, put, svg_size_mm};
use reinwright_tests::pairs::length;
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

#[test]
fn new_writes_a_design_that_every_job_takes() {
    let folder = folder();
    let out = folder.path().join("flat.ron");
    let [out, pdf, svg] = [
        out,
        folder.path().join("a.pdf"),
        folder.path().join("a.svg"),
    ];
    done(&new_flat(text(&out)));
    let design = document::read(&bytes(&out)).unwrap();
    assert_eq!(design.work.size().to_string(), "3/8 in");
    assert_eq!(design.bar.stock.size().to_string(), "3/4 in");
    done(&["balance", text(&out)]);
    done(&["findings", text(&out)]);
    done(&["template", text(&out), "--out", text(&pdf)]);
    done(&["drawing", text(&out), "--out", text(&svg)]);
    for page in pages(&bytes(&pdf)) {
        assert!(page.contains(&design.name), "{page}");
    }
    let (width, _) = svg_size_mm(&bytes(&svg));
    let model = resolve(&design);
    assert!(
        width > model.a.tip() - model.a.rein_end(),
        "the pair is shown in {width} mm"
    );
}

#[test]
fn new_takes_every_style_with_hyphens() {
    let folder = folder();
    for kind in JawKind::ALL {
        let out = folder.path().join("any.ron");
        let jaw = kind.name().replace(' ', "-");
        let arguments = ["new", "--jaw", &jaw, "--work", "16 mm square on corners"];
        done(
            &[
                &arguments[..],
                &["--bar", "20 mm round", "--out", text(&out)],
            ]
            .concat(),
        );
        let design = document::read(&bytes(&out)).unwrap();
        assert_eq!(design.jaw.kind(), *kind);
    }
}

/// As the chooser lays it: a square goes into a V on its corners, unless it is said how it lies.
#[test]
fn new_lays_the_work_as_the_jaw_takes_it() {
    let folder = folder();
    let out = folder.path().join("v.ron");
    let bar = ["--bar", "3/4 in square", "--out", text(&out)];
    for (work, lies) in [
        ("3/4 in square", "on corners"),
        ("3/4 in square on its flats", ""),
    ] {
        done(&[&["new", "--jaw", "v-bit", "--work", work], &bar[..]].concat());
        let design = document::read(&bytes(&out)).unwrap();
        let expected = format!("3/4 in square {lies}");
        assert_eq!(design.work.words(), expected.trim(), "{work}");
        assert_eq!(design.name, "V bit tongs for 3/4 in square");
    }
}

#[test]
fn a_file_that_is_there_is_replaced_whole() {
    let folder = folder();
    let out = folder.path().join("old.ron");
    put(folder.path(), "old.ron", "x".repeat(100_000));
    done(&new_flat(text(&out)));
    assert!(document::read(&bytes(&out)).is_ok());
    assert_eq!(
        names(folder.path()),
        ["old.ron"],
        "nothing is left beside it"
    );
}

#[track_caller]
fn keys(value: &Value, expected: &[&str]) {
    let object = value.as_object().expect("an object");
    for key in expected {
        assert!(object.contains_key(*key), "{key} in {object:?}");
    }
}

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

#[test]
fn drawings_show_what_was_asked() {
    let folder = folder();
    // Both jaws lie in the bar, one at each end.
    for (of, views, jaws) in [
        ("pair", &["side-view", "top-view", "end-view"][..], 0),
        ("half", &["side-view", "top-view"], 0),
        ("bar", &[], 2),
    ] {
        let out = folder.path().join("x.svg");
        let path = path_of("light-flat");
        done(&["drawing", &path, "--of", of, "--out", text(&out)]);
        let svg = String::from_utf8(bytes(&out)).unwrap();
        let svg = usvg::roxmltree::Document::parse(&svg).unwrap();
        let ids = svg.descendants().filter_map(|node| node.attribute("id"));
        let drawn: Vec<&str> = ids.filter(|id| id.ends_with("-view")).collect();
        assert_eq!(drawn, views, "{of}");
        let words = svg.descendants().filter(|node| node.has_tag_name("text"));
        let jaw = words.filter(|node| node.text() == Some("jaw"));
        assert_eq!(jaw.count(), jaws, "{of}");
    }
}

/// A slip of the hand must not cost the design.
#[test]
fn a_design_is_not_written_over_by_its_drawing() {
    let folder = folder();
    let design = folder.path().join("mine.ron");
    let design = text(&design);
    done(&new_flat(design));
    let before = bytes(Path::new(design));
    for job in ["template", "drawing"] {
        refused(&[job, design, "--out", design], &["--out", "design itself"]);
        assert_eq!(bytes(Path::new(design)), before);
    }
}

#[test]
fn a_word_that_is_no_job_is_said() {
    refused(&["balanc", "mine.ron"], &["no job", "--help"]);
}

#[test]
fn help_and_version_are_answers() {
    assert!(done(&["--help"]).contains("balance"));
    assert!(done(&["balance", "--help"]).contains("--json"));
    assert!(done(&["--version"]).starts_with("reinwright "));
}

#[test]
fn wrong_arguments_are_one_line() {
    refused(&["balance"], &["FILE", "reinwright --help"]);
    refused(&["balance", "a.ron", "--jsn"], &["--jsn"]);
    refused(&["new", "--jaw", "flat"], &["--work", "--bar", "--out"]);
    refused(
        &["drawing", "a.ron", "--out", "x.svg", "--of", "rivet"],
        &["rivet"],
    );
}

/// A bar that gives no sound pair is refused with the reason and the bar that does.
#[test]
fn a_bar_that_cannot_do_it_is_refused() {
    let cases = [
        (
            "bolt",
            "5/8 in hexagon",
            "3/8 in square",
            ["--bar", "bends for good", "square does"],
        ),
        (
            "flat",
            "1/8 in flat",
            "6 mm square",
            ["--bar", "so slight", "10 mm square does"],
        ),
        (
            "flat",
            "1/8 in flat",
            "1 1/4 in square",
            ["--bar", "5.07 lb", "1 in square does"],
        ),
    ];
    for (jaw, work, bar, words) in cases {
        let arguments = [
            "new",
            "--jaw",
            jaw,
            "--work",
            work,
            "--bar",
            bar,
            "--out",
            "never.ron",
        ];
        refused(&arguments, &words);
    }
}

#[test]
fn wrong_sizes_name_the_option_and_the_mend() {
    let cases = [
        ("3//4 in flat", ["--work", "3//4 in", "3/4 in"]),
        ("-1 in flat", ["--work", "-1 in", "minus"]),
        ("1e999 mm flat", ["--work", "1e999", "too large"]),
        ("3/0 in flat", ["--work", "3/0 in", "zero"]),
        ("3/8 in trapeze", ["--work", "trapeze", "flat, round"]),
        ("900 in flat", ["work.thickness", "900 in", "7.87 in"]),
    ];
    for (work, words) in cases {
        let arguments = ["new", "--jaw", "flat", "--work", work];
        let rest = ["--bar", "3/4 in square", "--out", "never.ron"];
        refused(
            &[arguments, [rest[0], rest[1], rest[2], rest[3], ""]].concat()[..9],
            &words,
        );
    }
    assert!(!Path::new("never.ron").exists());
}

#[test]
fn an_unknown_jaw_lists_the_known_ones() {
    let arguments = [
        "new",
        "--jaw",
        "crab",
        "--work",
        "1 in flat",
        "--bar",
        "1 in square",
    ];
    refused(
        &[&arguments[..], &["--out", "never.ron"]].concat(),
        &["crab", "flat", "v-bit"],
    );
}

#[test]
fn files_that_cannot_be_used_are_named() {
    let folder = folder();
    let missing = folder.path().join("missing.ron");
    for job in ["balance", "findings"] {
        refused(&[job, text(&missing)], &["missing.ron", "no such file"]);
        refused(&[job, text(folder.path())], &["folder"]);
    }
    // The bare command looks at the file before it looks for a display.
    refused(&[text(&missing)], &["missing.ron", "no such file"]);
    let nowhere = folder.path().join("no folder").join("x.pdf");
    let design = path_of("light-flat");
    for job in ["template", "drawing"] {
        refused(
            &[job, &design, "--out", text(&nowhere)],
            &["x.pdf", "there is no folder"],
        );
    }
    refused(
        &[
            "template",
            &design,
            "--out",
            text(&missing),
            "--paper",
            "b12",
        ],
        &["--paper", "b12", "a4"],
    );
}

/// Files that are no designs: each is one sentence that names the file, the place, the mend.
#[test]
fn broken_files_are_one_line() {
    let good = bytes(Path::new(&path_of("light-flat")));
    let half = good[..good.len() / 2].to_vec();
    let swap = |from: &str, to: &str| {
        let text = String::from_utf8(good.clone()).unwrap();
        assert!(text.contains(from), "{from}");
        text.replacen(from, to, 1).into_bytes()
    };
    let cases: Vec<(Vec<u8>, &[&str])> = vec![
        (Vec::new(), &["empty"]),
        (b"\x00\xff\x00\x01".to_vec(), &["not text"]),
        (half, &["line", "column"]),
        (vec![b'('; 5 << 20], &["4 MiB"]),
        (vec![b'('; 100_000], &["line", "column"]),
        (
            swap("format: 1", "format: 99"),
            &["format 99", "newer Reinwright"],
        ),
        (
            swap("side: \"1/2 in\"", "side: \"3//4 in\""),
            &["line", "3//4 in"],
        ),
        (
            swap("side: \"1/2 in\"", "side: \"-1 in\""),
            &["line", "-1 in", "minus"],
        ),
        (
            swap("side: \"1/2 in\"", "side: \"1e999 mm\""),
            &["line", "too large"],
        ),
        (
            swap("side: \"1/2 in\"", "side: \"3/0 in\""),
            &["line", "zero"],
        ),
        (
            swap("side: \"1/2 in\"", "side: \"40 in\""),
            &["bar.side", "40 in", "7.87 in"],
        ),
        (
            swap("side: \"1/2 in\"", "side: \"0 in\""),
            &["bar.side", "0.02 in"],
        ),
    ];
    let folder = folder();
    let path = folder.path().join("broken.ron");
    for (bytes, words) in cases {
        put(folder.path(), "broken.ron", bytes);
        for job in ["balance", "findings"] {
            refused(&[job, text(&path)], &[&["broken.ron"], words].concat());
        }
    }
}

fn number(value: &Value, key: &str) -> f64 {
    value[key]
        .as_f64()
        .unwrap_or_else(|| panic!("{key} is a number in {value}"))
}

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
    assert_eq!(number(held, "least"), range.least.size_mm);
    assert_eq!(number(held, "most"), range.most.size_mm);
    assert_eq!(held["least_ended_by"], range.least.limit.name());
    assert_eq!(held["most_ended_by"], range.most.limit.name());
    assert_eq!(number(&answer, "leverage"), fit.leverage());
    assert_eq!(number(&answer, "opening_deg"), fit.opening.to_degrees());
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
fn a_family_is_asked_with_hot_jaws_too() {
    let path = family_paths()[0].clone();
    let told = ask(&["findings", text(&path), "--jaw-heat", "900 C"]);
    assert!(told.text.contains("at 1652 °F"), "{}", told.text);
    let answer = json(&["fit", text(&path), "--json", "--jaw-heat", "900 C"]);
    assert_eq!(answer["sizes"][0]["steel"]["jaw_temperature_c"], 900.0);
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

/// A pair that cannot be made says so wherever it leaves the program: here a hole that is wider
/// than its boss.
#[test]
fn what_is_printed_of_a_design_with_a_stop_says_so() {
    let folder = folder();
    let mut broken = sample("v-bit-square");
    broken
        .set("rivet.hole", "30 mm")
        .expect("inside its limits");
    put(folder.path(), "broken.ron", document::write(&broken));
    let path = |name: &str| text(&folder.path().join(name)).to_owned();
    let printed = |design: &str| {
        done(&["template", design, "--out", &path("pair.pdf")]);
        pages(&bytes(&folder.path().join("pair.pdf")))
    };
    for page in printed(&path("broken.ron")) {
        assert!(page.contains("STOP, do not make it: boss: "), "{page}");
    }
    for page in printed(&path_of("v-bit-square")) {
        assert!(!page.contains("STOP"), "{page}");
        for words in ["certify nothing", "Local codes", "eye protection"] {
            assert!(page.contains(words), "{words} in: {page}");
        }
    }
    for (job, out) in [("template", "pair.pdf"), ("drawing", "pair.svg")] {
        let said = done(&[job, &path("broken.ron"), "--out", &path(out)]);
        assert!(said.starts_with("STOP, do not make it: boss: "), "{said}");
        let sound = done(&[job, &path_of("v-bit-square"), "--out", &path(out)]);
        assert!(!sound.contains("STOP"), "{sound}");
    }
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
