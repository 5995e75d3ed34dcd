//! The window by its labels, without a display: what is clicked and typed must stand in the design.

mod begin;
mod cut;
mod failures;
mod family;
mod fields;
mod files;
mod fit;
mod handles;
mod heats;
mod kept;
mod keyboard;
mod making;
mod mends;
mod names;
mod pictures;
mod print;
mod shelf;
mod sight;
mod sketch;
mod styles;
mod tool;
mod tool_family;
mod trace;
mod whole;

use reinwright_tests::pairs;
use reinwright_tests::window::{TALL, Window, show_design};

/// A tall window on a flat pair in inches.
fn flat() -> Window {
    show_design(pairs::flat(), TALL)
}
