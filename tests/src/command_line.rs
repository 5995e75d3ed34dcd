//! The jobs of the command line, without starting a process.

use std::ffi::OsString;
use std::path::Path;

use reinwright::command_line::{Answer, Places, answer};
use serde_json::Value;

/// What the program answers to its arguments where nothing is kept.
pub fn ask(arguments: &[&str]) -> Answer {
    ask_in(&Places::default(), arguments)
}

/// What it answers with what is kept in some places.
pub fn ask_in(places: &Places, arguments: &[&str]) -> Answer {
    let name = ["reinwright"].iter();
    answer(name.chain(arguments).map(OsString::from), places)
}

/// What a job says that is done without a word of error.
///
/// # Panics
/// If the job fails.
#[track_caller]
pub fn done(arguments: &[&str]) -> String {
    let answer = ask(arguments);
    assert_eq!(
        (answer.status, answer.error.as_str()),
        (0, ""),
        "{arguments:?}"
    );
    answer.text
}

/// The same as JSON.
///
/// # Panics
/// If the job fails or answers with something else.
#[track_caller]
pub fn json(arguments: &[&str]) -> Value {
    let text = done(arguments);
    serde_json::from_str(&text).unwrap_or_else(|error| panic!("{error}: {text}"))
}

/// One line on the standard error that has every one of `words`, nothing else, exit status 3.
///
/// # Panics
/// If the job is done, or is refused with other words.
#[track_caller]
pub fn refused(arguments: &[&str], words: &[&str]) {
    let answer = ask(arguments);
    assert_eq!(answer.status, 3, "{arguments:?}: {}", answer.text);
    assert_eq!(answer.text, "");
    assert!(answer.error.ends_with('\n'), "{}", answer.error);
    crate::sentence(answer.error.trim_end());
    for word in words {
        assert!(answer.error.contains(word), "{word} in: {}", answer.error);
    }
}

/// A path as an argument.
///
/// # Panics
/// If the path is no plain text.
#[track_caller]
pub fn text(path: &Path) -> &str {
    path.to_str().expect("a plain path")
}
