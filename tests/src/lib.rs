//! What the outside checks share: comparing with a tolerance, sample pairs, and meshes.

pub mod designs;
pub mod mesh;
pub mod outline;
pub mod pairs;

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
