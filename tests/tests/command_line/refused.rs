//! Arguments and files that cannot be used: each is one sentence.

use std::path::Path;

use reinwright_tests::command_line::{done, refused, text};
use reinwright_tests::files::{bytes, folder, put};

use super::path_of;

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

#[test]
fn files_that_cannot_be_used_are_named() {
    let folder = folder();
    let missing = folder.path().join("missing.ron");
    for job in ["balance", "findings"] {
        refused(&[job, text(&missing)], &["missing.ron", "no such file"]);
        refused(&[job, text(folder.path())], &["folder"]);
    }
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
            &["bar.side", "40 in", "7 3/4 in"],
        ),
        (
            swap("side: \"1/2 in\"", "side: \"0 in\""),
            &["bar.side", "1/32 in"],
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
