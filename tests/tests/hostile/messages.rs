//! What is said where a terminal shows it.

use std::ffi::OsString;

use reinwright::command_line::{Places, answer};
use reinwright_core::tongs::document;
use reinwright_tests::command_line::{ask, done, refused, text};
use reinwright_tests::files::{folder, put};
use reinwright_tests::pairs;

/// Signs that a terminal obeys (ECMA-48, 5.2 to 5.3: C0 and C1) or that turn the direction of
/// writing (Unicode Standard Annex 9), with the way in which they are shown.
const SIGNS: [(char, &str); 6] = [
    ('\u{1b}', "\\u001b"),
    ('\u{7f}', "\\u007f"),
    ('\u{9b}', "\\u009b"),
    ('\u{7}', "\\u0007"),
    ('\u{202e}', "\\u202e"),
    ('\u{2066}', "\\u2066"),
];

fn tame(said: &str) -> bool {
    let obeyed = |sign: char| sign.is_control() && sign != '\n';
    !said.contains(obeyed) && !SIGNS.iter().any(|(sign, _)| said.contains(*sign))
}

#[test]
fn no_sign_of_a_file_reaches_the_terminal_raw() {
    let folder = folder();
    let at = |name: &str| folder.path().join(name);
    for (sign, shown) in SIGNS {
        let mut pair = pairs::flat();
        pair.name = format!("A{sign}[2JB");
        put(folder.path(), "named.ron", document::write(&pair));
        let path = at("named.ron");
        for arguments in [
            &["balance", text(&path)][..],
            &["balance", text(&path), "--json"],
        ] {
            let said = ask(arguments);
            assert_eq!(said.status, 0, "{}", said.error);
            assert!(
                tame(&said.text) && said.text.contains(shown),
                "{}",
                said.text
            );
        }
        let json = ask(&["balance", text(&path), "--json"]).text;
        let read: serde_json::Value = serde_json::from_str(&json).expect("JSON");
        assert_eq!(read["name"], pair.name.as_str(), "JSON keeps every sign");
        let broken = document::write(&pairs::flat()).replacen(" in\"", &format!(" i{sign}\""), 1);
        put(folder.path(), "broken.ron", broken);
        let path = at("broken.ron");
        let said = ask(&["balance", text(&path)]);
        assert_eq!(said.status, 3);
        assert!(tame(&said.error), "{}", said.error);
    }
}

#[test]
fn what_was_typed_is_quoted_short() {
    let long = "x".repeat(100_000);
    let option = format!("--{long}");
    for arguments in [
        &["choose", "3/8 in flat", "--way", &long][..],
        &["choose", "3/8 in flat", &option],
        &["choose", "3/8 in flat", "--bar", &long],
        &["choose", &long],
        &[
            "new",
            "--jaw",
            &long,
            "--work",
            "1 in flat",
            "--bar",
            "1 in square",
            "--out",
            "a",
        ],
        &["shelf", ".", "--only", &long],
    ] {
        let said = ask(arguments);
        assert_eq!(said.status, 3);
        assert!(said.error.len() < 600, "{}", &said.error[..600]);
    }
}

/// What stands between signs x that belong to no size is not taken for what was typed.
#[test]
fn what_nobody_typed_is_not_blamed() {
    for (typed, blamed) in [
        ("xxx/8in flat", "\"xxx/8in\" is not a size"),
        ("x 3/8 in flat", "\"x 3/8 in\" is not a size"),
        ("3/8 in x flat", "a size is missing"),
        ("3/8 x a/b in flat", "\"a/b in\" is not a size"),
    ] {
        refused(&["choose", typed], &[blamed]);
    }
}

#[test]
fn numbers_below_nothing_are_told_plainly() {
    refused(
        &["family", "a.ron", "--out", "out", "--pairs", "-1"],
        &["'-1'", "--pairs", "1..=1000"],
    );
}

/// A file of another kind is told by its kind.
#[test]
fn a_jaw_is_no_design_and_told_so() {
    let jaw = concat!(env!("CARGO_MANIFEST_DIR"), "/files/format-1/jaw-drawn.ron");
    refused(&["balance", jaw], &["jaw-drawn.ron", "this is an own jaw"]);
}

/// A name that the paper's fonts cannot print in full is printed, and told once.
#[test]
fn letters_that_cannot_be_printed_are_told() {
    let folder = folder();
    let told = |name: &str| {
        let mut pair = pairs::flat();
        name.clone_into(&mut pair.name);
        put(folder.path(), "a.ron", document::write(&pair));
        let (file, out) = (folder.path().join("a.ron"), folder.path().join("a.pdf"));
        done(&["template", text(&file), "--out", text(&out)])
    };
    let some = told("やっとこ ½ in, やや");
    assert_eq!(
        some.matches("no sign for こ っ と や:").count(),
        1,
        "{some}"
    );
    for name in ["Kleště na ½ in", "Клещи"] {
        assert!(!told(name).contains("no sign"), "{name}");
    }
}

/// An argument that is no text (0xff is no byte of UTF-8, RFC 3629, 1) is told so; as a file's name
/// it may be such on Unix.
#[cfg(unix)]
#[test]
fn arguments_that_are_no_text_are_told_plainly() {
    use std::os::unix::ffi::OsStringExt;
    let none = OsString::from_vec(vec![0xff, b'a']);
    let said = |job: &str| {
        let arguments = ["reinwright", job].map(OsString::from);
        answer(
            arguments.into_iter().chain([none.clone()]),
            &Places::default(),
        )
    };
    let choose = said("choose");
    assert_eq!(choose.status, 3);
    assert!(choose.error.contains("not UTF-8"), "{}", choose.error);
    let findings = said("findings");
    assert!(
        findings.error.contains("there is no such file"),
        "{}",
        findings.error
    );
}
