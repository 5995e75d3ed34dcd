//! The command line with tools: every job takes one.

use reinwright_core::tool::{self, ToolKind};
use reinwright_tests::command_line::{ask, done, json, refused, text};
use reinwright_tests::designs::samples_folder;
use reinwright_tests::files::{bytes, folder, names, pages, svg_size_mm};
use reinwright_tests::{close, within};

const SAMPLES: [&str; 4] = [
    "textbook-punch",
    "textbook-drift",
    "textbook-rivet-set",
    "hot-cut-hardy",
];

fn sample(name: &str) -> String {
    let path = samples_folder()
        .join("tools")
        .join(name)
        .with_extension("ron");
    text(&path).to_owned()
}

/// A hot cut for a 7/8 in hole from 1 1/4 in square: its file, and every job that takes it.
#[test]
fn every_job_takes_a_tool() {
    let folder = folder();
    let at = |name: &str| text(&folder.path().join(name)).to_owned();
    let file = at("cut.ron");
    let new = [
        "new",
        "--tool",
        "cut-off-hardy",
        "--size",
        "7/8 in",
        "--bar",
        "1 1/4 in square",
        "--out",
        &file,
    ];
    assert!(done(&new).contains("Cut-off hardy for a 7/8 in hole"));
    let own = tool::read(&bytes(file.as_ref())).expect("it is a tool");
    assert_eq!(own.style_kind(), ToolKind::CutOff);
    let balance = json(&["balance", &file, "--json"]);
    let parts = balance["tool"]["parts"].as_array().expect("parts");
    let sum: f64 = parts
        .iter()
        .map(|part| part["volume_mm3"].as_f64().expect("a number"))
        .sum();
    close(
        "volume",
        sum,
        balance["tool"]["volume_mm3"].as_f64().expect("a number"),
        1e-12,
    );
    assert!(done(&["balance", &file]).contains("hardy shank"));
    assert_eq!(ask(&["findings", &file]).status, 0);
    let plan = json(&["plan", &file, "--json"]);
    assert_eq!(plan["procedure"], "cut-first");
    assert!(done(&["plan", &file]).contains("Never drive a tight shank"));
    for (of, name) in [("pair", "a.svg"), ("bar", "b.svg"), ("stage", "c.svg")] {
        let svg = at(name);
        done(&["drawing", &file, "--of", of, "--stage", "3", "--out", &svg]);
        let (wide, high) = svg_size_mm(&bytes(svg.as_ref()));
        assert!(wide > 30.0 && high > 10.0, "{of}: {wide} x {high}");
    }
    let [sheet, template] = [at("j.pdf"), at("t.pdf")];
    done(&[
        "job-sheet",
        &file,
        "--out",
        &sheet,
        "--stages",
        &at("stages"),
    ]);
    assert!(names(&folder.path().join("stages")).len() > 5);
    done(&[
        "template",
        &file,
        "--out",
        &template,
        "--what",
        "half,stages,bar",
    ]);
    for pdf in [&sheet, &template] {
        let all = pages(&bytes(pdf.as_ref()));
        assert!(
            all.iter().all(|page| page.contains("Cut-off hardy")),
            "{all:?}"
        );
    }
    let cut = json(&[
        "cut",
        &file,
        "--pairs",
        "3",
        "--bars",
        "1 x 20 in",
        "--json",
    ]);
    assert_eq!(cut["bars_needed"], 1);
    let shelf = json(&["shelf", text(folder.path()), "--json"]);
    assert_eq!(shelf["tools"][0]["tool"], "cut-off hardy");
}

/// The README shows what the program draws now.
#[test]
fn the_picture_of_the_readme_is_that_of_the_program() {
    let folder = folder();
    let out = folder.path().join("x.svg");
    done(&[
        "drawing",
        &sample("hot-cut-hardy"),
        "--of",
        "pair",
        "--out",
        text(&out),
    ]);
    let shown = samples_folder().join("../docs/pictures/hot-cut.svg");
    assert!(bytes(&out) == bytes(&shown), "hot-cut.svg is stale");
}

/// From the V-bit sample to its printed tools.
#[test]
fn the_tools_of_a_pair_are_written_and_printed() {
    let folder = folder();
    let out = folder.path().join("tools");
    let pair = samples_folder().join("v-bit-square.ron");
    done(&["tools-for", text(&pair), "--out", text(&out)]);
    let written = ["drift.ron", "punch.ron", "rivet-set.ron", "v-block.ron"];
    assert_eq!(names(&out), written);
    for name in names(&out) {
        let (file, pdf) = (out.join(&name), out.join("x.pdf"));
        assert_eq!(ask(&["findings", text(&file)]).status, 0, "{name}");
        done(&["template", text(&file), "--out", text(&pdf)]);
        done(&["job-sheet", text(&file), "--out", text(&pdf)]);
    }
}

/// A family gives the tools of all its sizes, each once.
#[test]
fn a_family_gives_each_tool_once() {
    let folder = folder();
    let family = samples_folder().join("family-v-bit.ron");
    let told = done(&["tools-for", text(&family), "--out", text(folder.path())]);
    let written = names(folder.path());
    assert_eq!(told.lines().count(), written.len());
    assert!(
        written.iter().any(|name| name.starts_with("punch-")),
        "{written:?}"
    );
    let shapes: Vec<_> = written
        .iter()
        .map(|name| tool::read(&bytes(&folder.path().join(name))).expect("a tool"))
        .map(|own| (own.shape, own.bar))
        .collect();
    for (at, own) in shapes.iter().enumerate() {
        assert!(!shapes[..at].contains(own), "{}", written[at]);
    }
}

/// The samples of the teaching forge: as the program writes them, with nothing to mend.
#[test]
fn the_samples_are_sound() {
    for name in SAMPLES {
        let file = sample(name);
        let own = tool::read(&bytes(file.as_ref())).unwrap_or_else(|why| panic!("{name}: {why}"));
        assert_eq!(tool::write(&own).as_bytes(), bytes(file.as_ref()), "{name}");
        assert_eq!(ask(&["findings", &file]).status, 0, "{name}");
    }
    let plan = json(&["plan", &sample("textbook-drift"), "--json"]);
    let after = plan["operations"].as_array().and_then(|all| all.last());
    let long = after
        .and_then(|own| own["length_after_mm"].as_f64())
        .expect("a length");
    let own = tool::read(&bytes(sample("textbook-drift").as_ref())).expect("a tool");
    within("drift", long, tool::resolve(&own).piece.length_mm(), 1e-9);
}

#[test]
fn what_cannot_be_asked_is_refused() {
    let folder = folder();
    let out = text(&folder.path().join("x.ron")).to_owned();
    let new = |kind: &str, size: &str, words: &[&str]| {
        refused(
            &[
                "new",
                "--tool",
                kind,
                "--size",
                size,
                "--bar",
                "3/4 in round",
                "--out",
                &out,
            ],
            words,
        );
    };
    new("anvil", "1 in", &["--tool", "round-punch", "cut-off-hardy"]);
    new("drift", "much", &["--size"]);
    new("drift", "90 in", &["--size", "full size comes to 90 in"]);
    refused(&["fit", &sample("textbook-punch")], &["this is a tool"]);
    refused(
        &[
            "drawing",
            &sample("textbook-punch"),
            "--of",
            "pattern",
            "--out",
            &out,
        ],
        &["--of"],
    );
    refused(
        &["plan", &sample("textbook-punch"), "--procedure", "x"],
        &["cut-first", "on-the-bar"],
    );
}

/// Names that the program chooses take nothing from the smith.
#[test]
fn the_tools_of_a_pair_are_written_over_nothing_else() {
    let folder = folder();
    let pair = folder.path().join("punch.ron");
    std::fs::copy(samples_folder().join("v-bit-square.ron"), &pair).unwrap();
    let before = bytes(&pair);
    let here = text(folder.path());
    refused(
        &["tools-for", text(&pair), "--out", here],
        &["punch.ron", "another folder"],
    );
    assert_eq!(bytes(&pair), before, "the pair itself");
    assert!(
        !folder.path().join("drift.ron").exists(),
        "nothing was written"
    );
    let tools = folder.path().join("tools");
    let tools = text(&tools);
    done(&["tools-for", text(&pair), "--out", tools]);
    done(&["tools-for", text(&pair), "--out", tools]);
    let drift = folder.path().join("tools/drift.ron");
    let noted = String::from_utf8(bytes(&drift)).unwrap();
    std::fs::write(&drift, noted.replace("note: \"\"", "note: \"mine\"")).unwrap();
    refused(&["tools-for", text(&pair), "--out", tools], &["drift.ron"]);
}
