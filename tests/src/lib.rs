//! What the tests share: comparing with a tolerance, pairs and samples, meshes, files, and the
//! window and the command line as a smith meets them.

pub mod command_line;
pub mod designs;
pub mod files;
pub mod input;
pub mod mesh;
pub mod outline;
pub mod painted;
pub mod pairs;
pub mod tools;
pub mod window;

/// Millimetres in an inch, exactly (international yard and pound agreement, 1959).
pub const INCH: f64 = 25.4;

/// Checks a number against another within a relative tolerance and prints both.
///
/// # Panics
/// If they differ by more than `tolerance` times the expected value.
#[track_caller]
pub fn close(what: &str, found: f64, expected: f64, tolerance: f64) {
    within(what, found, expected, tolerance * expected.abs());
}

/// Checks a number against another within an absolute tolerance and prints both.
///
/// # Panics
/// If they differ by more than `tolerance`, or either is no number.
#[track_caller]
pub fn within(what: &str, found: f64, expected: f64, tolerance: f64) {
    let off = (found - expected).abs();
    assert!(
        off <= tolerance,
        "{what}: found {found}, expected {expected}, off by {off:e}, allowed {tolerance:e}"
    );
}

/// Words of what is underneath this program, which tell a smith nothing.
const INNER: [&str; 9] = [
    "os error",
    "RON",
    "`",
    "Expected",
    "Unexpected",
    "struct",
    "enum",
    "serde",
    "panicked",
];

/// Checks that a message is one sentence on one line, without a full stop and in words that are not
/// those of a library or of the system.
///
/// # Panics
/// If it is not.
#[track_caller]
pub fn sentence(text: &str) {
    assert_eq!(text.lines().count(), 1, "{text}");
    assert!(!text.is_empty() && !text.ends_with('.'), "{text}");
    let inner = INNER.iter().find(|word| own_words(text).contains(*word));
    assert_eq!(inner, None, "{text}");
}

/// A sentence without what it quotes: a file or a smith may write anything.
fn own_words(text: &str) -> String {
    match (text.find('"'), text.rfind('"')) {
        (Some(from), Some(to)) if from < to => format!("{}{}", &text[..from], &text[to..]),
        _ => text.to_owned(),
    }
}
