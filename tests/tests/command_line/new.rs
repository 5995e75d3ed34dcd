//! `new`: what is written, and what is refused with which mend.

use std::path::Path;

use reinwright_core::tongs::document;
use reinwright_core::tongs::jaw::JawKind;
use reinwright_core::tongs::resolve;
use reinwright_tests::command_line::{done, refused, text};
use reinwright_tests::files::{bytes, folder, names, pages, put, svg_size_mm};

use super::new_flat;

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
        (
            "flat",
            "3/8 in flat",
            "40 in square",
            ["--bar", "no hand holds", "1 in square does"],
        ),
        (
            "v-bit",
            "1/2 in square",
            "100 in round",
            ["--bar", "no hand holds", "in round does"],
        ),
        (
            "flat",
            "3/8 in flat",
            "7 in square",
            ["--bar", "gives no sound pair", "in square does"],
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
fn the_chooser_refuses_bar_that_no_pair_is_made_from() {
    for (bar, words) in [
        ("40 in square", ["--bar", "no hand holds", "7 3/4 in"]),
        ("300 mm round", ["--bar", "no hand holds", "200 mm"]),
    ] {
        refused(&["choose", "3/8 in flat", "--bar", bar], &words);
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
        ("900 in flat", ["work.thickness", "900 in", "7 3/4 in"]),
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

/// What only a tool has is refused of a pair, and nothing is written.
#[test]
fn sizes_of_a_pair_are_refused() {
    let folder = folder();
    let out = folder.path().join("pair.ron");
    for (option, given) in [("--sizes", "1/2 in, 5/8 in"), ("--size", "1/2 in")] {
        let asked = [&new_flat(text(&out))[..], &[option, given]].concat();
        refused(&asked, &[&format!("{option}: ")]);
        assert!(!out.exists(), "{option}");
    }
}
