//! The jobs that take families.

use super::*;

fn ask(arguments: &[&str]) -> Answer {
    answer(["reinwright"].iter().chain(arguments).map(OsString::from))
}

#[track_caller]
fn done(arguments: &[&str]) -> String {
    let answer = ask(arguments);
    assert_eq!(
        (answer.status, answer.error.as_str()),
        (0, ""),
        "{arguments:?}"
    );
    answer.text
}

fn text(path: &Path) -> &str {
    path.to_str().unwrap()
}

#[test]
fn the_family_job_writes_the_set() {
    let folder = tempfile::tempdir().unwrap();
    let out = folder.path().join("new").join("set");
    let file = samples_folder().join("family-v-bit.ron");
    done(&["family", text(&file), "--out", text(&out), "--pairs", "4"]);
    let pdf = std::fs::read(out.join("v-bit-tongs-for-the-benches.pdf")).unwrap();
    assert!(pdf.starts_with(b"%PDF-1.7"));
    let names = |sub: &str| {
        let entries = std::fs::read_dir(out.join(sub)).unwrap();
        let mut names: Vec<String> = entries
            .map(|entry| entry.unwrap().file_name().into_string().unwrap())
            .collect();
        names.sort();
        names
    };
    assert_eq!(names("svg").len(), 5 + 2 * 6);
    assert!(
        names("svg").contains(&"1-3-8-in-pair.svg".to_owned()),
        "{:?}",
        names("svg")
    );
    for name in names("svg") {
        let svg = std::fs::read_to_string(out.join("svg").join(&name)).unwrap();
        usvg::Tree::from_str(&svg, &usvg::Options::default()).expect(&name);
    }
    let family = v_bits();
    for (at, name) in names("designs").iter().enumerate() {
        let bytes = std::fs::read(out.join("designs").join(name)).unwrap();
        assert_eq!(
            document::read(&bytes).unwrap(),
            family.take_out(at).unwrap()
        );
    }
    assert_eq!(names("designs").len(), 6);
}

#[test]
fn balance_and_findings_take_families() {
    let file = samples_folder().join("family-v-bit.ron");
    let json: Json = serde_json::from_str(&done(&["balance", text(&file), "--json"])).unwrap();
    assert_eq!(json["family"], "V-bit tongs for the benches");
    let sizes = json["sizes"].as_array().unwrap();
    assert_eq!(sizes.len(), 6);
    let length = |value: &Json| value["pair"]["bar_length_mm"].as_f64().unwrap();
    let sum: f64 = sizes.iter().map(length).sum();
    let totals = json["totals"].as_array().unwrap();
    let total: f64 = totals
        .iter()
        .map(|t| t["bar_length_mm"].as_f64().unwrap())
        .sum();
    close("total", total, sum, 1e-12);
    // Each size answers as its own design does.
    let folder = tempfile::tempdir().unwrap();
    let own = folder.path().join("own.ron");
    std::fs::write(&own, document::write(&v_bits().take_out(2).unwrap())).unwrap();
    let alone: Json = serde_json::from_str(&done(&["balance", text(&own), "--json"])).unwrap();
    for key in ["bar", "half", "pair", "name"] {
        assert_eq!(sizes[2][key], alone[key], "{key}");
    }
    let json: Json = serde_json::from_str(&done(&["findings", text(&file), "--json"])).unwrap();
    assert_eq!(json["sizes"].as_array().unwrap().len(), 6);
    assert_eq!(json["not_read"], Json::Array(Vec::new()));
    assert_eq!(json["gaps"], Json::Array(Vec::new()));
    let fit: Json = serde_json::from_str(&done(&["fit", text(&file), "--json"])).unwrap();
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
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("flats.ron");
    let mut family = flats(&["1/8", "3/4"]);
    std::fs::write(&path, family::write(&family)).unwrap();
    let findings = ask(&["findings", text(&path)]);
    assert_eq!(findings.status, 0, "{}", findings.text);
    assert!(
        findings.text.contains("Note: set: nothing here holds"),
        "{}",
        findings.text
    );
    family.set(1, "rivet.hole", "1/4 in").unwrap();
    std::fs::write(&path, family::write(&family)).unwrap();
    let worst = answer_all(&family)[1].worst();
    assert_eq!(worst, Some(Severity::Stop), "a hole smaller than its rivet");
    assert_eq!(ask(&["findings", text(&path)]).status, 2);
}

#[test]
fn damaged_families_are_told_on_the_command_line() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("damaged.ron");
    let whole = family::write(&v_bits());
    let bad = whole.replacen("side: \"3/8 in\"", "side: \"3//8 in\"", 1);
    std::fs::write(&path, bad).unwrap();
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
    let out = folder.path().join("out");
    let family = ["family", text(&path), "--out", text(&out)];
    for arguments in [&["balance", text(&path)][..], &family] {
        let refused = ask(arguments);
        assert_eq!((refused.status, refused.error.lines().count()), (3, 1));
        assert!(refused.error.contains("damaged.ron") && refused.error.contains("3//8 in"));
    }
    assert!(!out.exists(), "nothing is written");
    std::fs::write(&path, &whole[..whole.len() / 2]).unwrap();
    for job in ["balance", "findings"] {
        let refused = ask(&[job, text(&path)]);
        assert_eq!((refused.status, refused.error.lines().count()), (3, 1));
        assert!(refused.error.contains("line"), "{}", refused.error);
    }
    let design = samples_folder().join("light-flat.ron");
    let refused = ask(&["family", text(&design), "--out", text(&out)]);
    assert!(
        refused.error.contains("one design and no family"),
        "{}",
        refused.error
    );
}

/// A job for one design that is given a family says so, and what to ask for instead.
#[test]
fn jobs_for_one_design_name_the_one_for_families() {
    let folder = tempfile::tempdir().unwrap();
    let file = samples_folder().join("family-flat.ron");
    let out = folder.path().join("out");
    for job in ["template", "drawing"] {
        let refused = ask(&[job, text(&file), "--out", text(&out)]);
        assert_eq!(refused.status, 3);
        assert!(
            refused.error.contains("this is a family")
                && refused.error.contains("reinwright family"),
            "{}",
            refused.error
        );
    }
    assert!(!out.exists());
}
