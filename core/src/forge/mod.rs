//! What holds for any piece that is forged from bar.

pub mod balance;
pub(crate) mod bar_drawing;
pub mod spreading;
pub mod upsetting;

pub use bar_drawing::{bar, bar_in_short, plain};
