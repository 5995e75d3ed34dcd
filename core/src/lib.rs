//! A pair of smith's tongs as parametric sections.
//!
//! The folders are the pipeline:
//!
//! 1. [`units`]: sizes as text and value;
//! 2. [`document`]: what the smith asked for, and its file;
//! 3. [`resolve()`]: from the document to a [`model::Model`], built of [`jaw`] styles,
//!    [`section`]s carried along [`sweep`]s, and the [`body`] with its boss, on work that is
//!    seated by [`mod@seat`];
//! 4. [`drawing`]: from the model to a display list, and to pages of paper; [`export`] writes them;
//! 5. [`finding`]: what the smith should know;
//! 6. [`handle`]: what of the drawing can be dragged, and what a drag makes of the document.
//!
//! # Frame, units, signs
//! Millimetres, radians inside, right-handed, y up. The rivet's axis is z through the origin; +x
//! points to the jaw tip, y is the way the jaws open. The bosses meet on z = 0. Half A has its
//! boss on 0 ≤ z ≤ thickness, its jaw on y > 0 and its rein on y < 0; half B is half A turned
//! half round about x: (x, y, z) → (x, −y, −z). Where a number is not in mm its name says so.
#![warn(missing_docs)]

pub mod asked;
pub mod draw;
pub mod finding;
pub mod forge;
pub mod number;
pub mod paper;
pub mod proof;
pub mod shape;
pub mod shop;
pub mod steel;
pub mod tongs;
pub mod units;

pub use crate::tongs::resolve;
