//! The jobs that take families.

use reinwright_tests::command_line::{ask, done, json, refused, text};
use serde_json::Value;

use super::*;

#[test]
fn the_family_job_writes_the_set() {
    let folder = folder();
    let out = folder.path().join("new").join("set");
    let file = samples_folder().join("family-v-bit.ron");
    done(&[
        "family",
        text(&file),
        "--out",
        text(&out),
        "--pairs",
        "4",
        "--all",
    ]);
    let pages = pages(&bytes(&out.join("v-bit-tongs-for-the-benches.pdf")));
    let last = format!("page {0} of {0}", pages.len());
    assert!(pages[pages.len() - 1].contains(&last), "{last}");
    let (svgs, designs) = (out.join("svg"), out.join("designs"));
    let pictures = names(&svgs);
    assert_eq!(pictures.len(), 5 + 2 * 6);
    assert!(
        pictures.contains(&"1-3-8-in-pair.svg".to_owned()),
        "{pictures:?}"
    );
    for name in pictures {
        usvg::Tree::from_data(&bytes(&svgs.join(&name)), &usvg::Options::default()).expect(&name);
    }
    let family = v_bits();
    let kept: Vec<Document> = names(&designs)
        .iter()
        .map(|name| document::read(&bytes(&designs.join(name))).unwrap())
        .collect();
    let made = (0..6).map(|at| family.take_out(at).unwrap());
    assert_eq!(kept, made.collect::<Vec<_>>());
}

/// Templates of single sizes, by their numbers in the table; each view says of which size it is.
#[test]
fn sizes_are_printed_alone() {
    let folder = folder();
    let file = samples_folder().join("family-v-bit.ron");
    let out = folder.path().join("out");
    let printed = |sizes: &str| {
        done(&["family", text(&file), "--out", text(&out), "--sizes", sizes]);
        pages(&bytes(&out.join("v-bit-tongs-for-the-benches.pdf"))).join("\n")
    };
    let labels = v_bits().table().labels;
    let has = |all: &str, size: usize| all.contains(&format!("{}: The half", labels[size]));
    for (sizes, chosen) in [("2", vec![1]), ("1, 5-6", vec![0, 4, 5])] {
        let all = printed(sizes);
        for size in 0..labels.len() {
            assert_eq!(has(&all, size), chosen.contains(&size), "{sizes}: {size}");
        }
        assert!(!all.contains("Contents,"), "nothing but the templates");
    }
    for (sizes, words) in [
        ("7", "1 to 6"),
        ("0", "1 to 6"),
        ("two", "no size of this family"),
    ] {
        refused(
            &["family", text(&file), "--out", text(&out), "--sizes", sizes],
            &["--sizes", words],
        );
    }
}

#[test]
fn balance_and_findings_take_families() {
    let file = samples_folder().join("family-v-bit.ron");
    let balance = json(&["balance", text(&file), "--json"]);
    assert_eq!(balance["family"], "V-bit tongs for the benches");
    let sizes = balance["sizes"].as_array().unwrap();
    assert_eq!(sizes.len(), 6);
    let length = |value: &Value| value["pair"]["cut_length_mm"].as_f64().unwrap();
    let sum: f64 = sizes.iter().map(length).sum();
    let totals = balance["totals"].as_array().unwrap();
    let total: f64 = totals
        .iter()
        .map(|t| t["cut_length_mm"].as_f64().unwrap())
        .sum();
    close("total", total, sum, 1e-12);
    // Each size answers as its own design does.
    let folder = folder();
    let own = folder.path().join("own.ron");
    put(
        folder.path(),
        "own.ron",
        document::write(&v_bits().take_out(2).unwrap()),
    );
    let alone = json(&["balance", text(&own), "--json"]);
    for key in ["bar", "half", "pair", "name"] {
        assert_eq!(sizes[2][key], alone[key], "{key}");
    }
    let findings = json(&["findings", text(&file), "--json"]);
    assert_eq!(findings["sizes"].as_array().unwrap().len(), 6);
    assert_eq!(findings["not_read"], Value::Array(Vec::new()));
    assert_eq!(findings["gaps"], Value::Array(Vec::new()));
    let fit = json(&["fit", text(&file), "--json"]);
    let most = |at: usize| fit["sizes"][at]["work_range_mm"]["most"].as_f64().unwrap();
    let least = |at: usize| fit["sizes"][at]["work_range_mm"]["least"].as_f64().unwrap();
    let first = &fit["overlaps"][0];
    let ends = [
        first["from_mm"].as_f64().unwrap(),
        first["to_mm"].as_f64().unwrap(),
    ];
    assert_eq!(ends, [least(1), most(0)], "3/8 and 1/2 in overlap here");
    assert!(done(&["fit", text(&file)]).contains("V-bit tongs for the benches, 7/8 in"));
    assert!(done(&["balance", text(&file)]).contains("One pair of each size"));
    assert!(done(&["findings", text(&file)]).contains("7/8 in"));
}

#[test]
fn the_worst_size_gives_the_status_and_gaps_are_told() {
    let folder = folder();
    let path = folder.path().join("flats.ron");
    let mut family = flats(&["1/8", "3/4"]);
    put(folder.path(), "flats.ron", family::write(&family));
    let findings = ask(&["findings", text(&path)]);
    assert_eq!(findings.status, 0, "{}", findings.text);
    assert!(
        findings.text.contains("Note: set: nothing here holds"),
        "{}",
        findings.text
    );
    family.set(1, "rivet.hole", "1/4 in").unwrap();
    put(folder.path(), "flats.ron", family::write(&family));
    let worst = answer_all(&family)[1].worst();
    assert_eq!(worst, Some(Severity::Stop), "a hole smaller than its rivet");
    assert_eq!(ask(&["findings", text(&path)]).status, 2);
}

#[test]
fn damaged_families_are_told_on_the_command_line() {
    let folder = folder();
    let path = folder.path().join("damaged.ron");
    let whole = family::write(&v_bits());
    let bad = whole.replacen("side: \"3/8 in\"", "side: \"3//8 in\"", 1);
    put(folder.path(), "damaged.ron", bad);
    let findings = ask(&["findings", text(&path)]);
    assert_eq!(findings.status, 2);
    assert!(
        findings.text.contains("Stop: file: sizes 1"),
        "{}",
        findings.text
    );
    assert!(
        findings.text.contains("7/8 in"),
        "the other sizes are answered"
    );
    // The damaged size is named, and costs no other size its numbers.
    let out = folder.path().join("out");
    let family = ["family", text(&path), "--out", text(&out), "--all"];
    for arguments in [
        &["balance", text(&path)][..],
        &["fit", text(&path)],
        &["balance", text(&path), "--json"],
        &["fit", text(&path), "--json"],
        &family,
    ] {
        let answer = ask(arguments);
        assert_eq!((answer.status, answer.error.as_str()), (2, ""));
        let named = "sizes 1: line";
        assert!(
            answer.text.contains(named),
            "{arguments:?}: {}",
            answer.text
        );
    }
    let answer = ask(&["balance", text(&path), "--json"]);
    let balance: Value = serde_json::from_str(&answer.text).unwrap();
    let rest: Value = json(&[
        "balance",
        text(&samples_folder().join("family-v-bit.ron")),
        "--json",
    ]);
    let sizes = rest["sizes"].as_array().unwrap();
    assert_eq!(balance["sizes"].as_array().unwrap(), &sizes[1..]);
    assert_eq!(names(&out.join("designs")).len(), 5);
    put(folder.path(), "damaged.ron", &whole[..whole.len() / 2]);
    for job in ["balance", "findings"] {
        refused(&[job, text(&path)], &["line"]);
    }
    let design = samples_folder().join("light-flat.ron");
    refused(
        &["family", text(&design), "--out", text(&out)],
        &["one design and no family"],
    );
}

/// What all sizes follow cannot be guessed, and all of it that was dropped is named.
#[test]
fn rules_that_are_lost_are_named_and_give_no_numbers() {
    let folder = folder();
    let path = folder.path().join("lost.ron");
    let whole = family::write(&v_bits());
    let bad = whole.replacen("rounding: Measured", "rounding: Wrong, rules: 5", 1);
    put(folder.path(), "lost.ron", bad);
    for job in ["balance", "fit"] {
        refused(&[job, text(&path)], &["rounding: line", "rules: line"]);
    }
    let findings = ask(&["findings", text(&path)]).text;
    assert!(findings.contains("Stop: file: rules: line"), "{findings}");
    // A value set by hand that is none: that size has no numbers, the others have.
    let bad = whole.replacen(
        "\"neck.depth\": \"1/2 in\"",
        "\"neck.depth\": \"banana\"",
        1,
    );
    put(folder.path(), "lost.ron", bad);
    let answer = ask(&["balance", text(&path), "--json"]);
    assert_eq!(answer.status, 2);
    let balance: Value = serde_json::from_str(&answer.text).unwrap();
    assert_eq!(balance["sizes"].as_array().unwrap().len(), 5);
    assert!(balance["not_read"][0].as_str().unwrap().contains("banana"));
}

/// A size whose hole is larger than its boss has no bar; the others have, and so has the set.
#[test]
fn a_size_without_a_bar_costs_no_other_size_its_own() {
    let folder = folder();
    let path = folder.path().join("set.ron");
    let mut family = v_bits();
    let whole = json(&[
        "balance",
        text(&samples_folder().join("family-v-bit.ron")),
        "--json",
    ]);
    family.set(1, "rivet.hole", "200 mm").unwrap();
    put(folder.path(), "set.ron", family::write(&family));
    let balance = json(&["balance", text(&path), "--json"]);
    for at in [0, 2, 3, 4, 5] {
        assert_eq!(balance["sizes"][at], whole["sizes"][at]);
    }
    let why = balance["sizes"][1]["no_bar"].as_str().unwrap();
    assert!(why.contains("no bar can be reckoned"), "{why}");
    let pairs = |value: &Value| -> u64 {
        let totals = value["totals"].as_array().unwrap().iter();
        totals.map(|total| total["pairs"].as_u64().unwrap()).sum()
    };
    assert_eq!((pairs(&balance), pairs(&whole)), (5, 6));
    assert!(done(&["balance", text(&path)]).contains("no bar can be reckoned"));
}

/// A job for one design that is given a family says so, and what to ask for instead.
#[test]
fn jobs_for_one_design_name_the_one_for_families() {
    let folder = folder();
    let file = samples_folder().join("family-flat.ron");
    let out = folder.path().join("out");
    for job in ["template", "drawing"] {
        refused(
            &[job, text(&file), "--out", text(&out)],
            &["this is a family", "reinwright family"],
        );
    }
    assert!(!out.exists());
}
