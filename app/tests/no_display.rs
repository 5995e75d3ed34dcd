//! The program itself, started where there is no display.

use std::process::{Command, Output};

fn start(arguments: &[&str]) -> Output {
    let mut command = Command::new(env!("CARGO_BIN_EXE_reinwright"));
    for name in ["DISPLAY", "WAYLAND_DISPLAY", "WAYLAND_SOCKET"] {
        command.env_remove(name);
    }
    command
        .args(arguments)
        .output()
        .expect("the program starts")
}

#[test]
#[cfg(all(unix, not(target_os = "macos")))]
fn without_a_display_it_names_another_way() {
    let output = start(&[]);
    let said = String::from_utf8(output.stderr).expect("text");
    assert_eq!(output.status.code(), Some(3));
    assert_eq!(said.lines().count(), 1, "{said}");
    assert!(said.contains("no display"), "{said}");
    assert!(
        said.contains("reinwright template FILE --out X.pdf"),
        "{said}"
    );
}

#[test]
fn answers_go_out_and_errors_beside_them() {
    let output = start(&["--version"]);
    assert_eq!(output.status.code(), Some(0));
    assert!(output.stdout.starts_with(b"reinwright ") && output.stderr.is_empty());
    let output = start(&["balance", "no such design.ron"]);
    assert_eq!(output.status.code(), Some(3));
    assert!(output.stdout.is_empty() && !output.stderr.is_empty());
}

/// An answer that is lost is an error; a reader that has gone away is none.
#[test]
#[cfg(target_os = "linux")]
fn an_answer_that_cannot_be_printed_is_an_error() {
    let full = std::fs::File::create("/dev/full").expect("this system has one");
    let output = Command::new(env!("CARGO_BIN_EXE_reinwright"))
        .arg("--help")
        .stdout(full)
        .output()
        .expect("the program starts");
    assert_eq!(output.status.code(), Some(3));
    let said = String::from_utf8(output.stderr).expect("text");
    assert!(said.contains("cannot be printed"), "{said}");
}

/// Where no window can say it, what a file has against it is said here.
#[test]
#[cfg(all(unix, not(target_os = "macos")))]
fn without_a_display_a_file_is_told_of_before_the_display_is_missed() {
    let output = start(&["no such design.ron"]);
    let said = String::from_utf8(output.stderr).expect("text");
    assert_eq!(output.status.code(), Some(3));
    assert!(said.contains("no such design.ron"), "{said}");
    assert!(!said.contains("no display"), "{said}");
}
