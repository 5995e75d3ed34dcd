//! A pair of smith's tongs, and the tools that make them, as parametric sections.
//!
//! The folders are rooms in strict order: a room imports only rooms above it in this list, and a
//! test holds that.
//!
//! 1. [`units`]: sizes as text and value;
//! 2. [`number`]: quadrature, roots, plane geometry;
//! 3. [`steel`]: grades, density, cold and hot strength, friction;
//! 4. [`finding`]: what the smith should know, as types;
//! 5. [`asked`]: what is asked for, whatever is forged: fields and their limits, work, bar, losses;
//! 6. [`shape`]: steel as geometry, and the [`shape::Piece`] that all forging knows;
//! 7. [`paper`]: the display list, pages of paper, and the ink of PDF and SVG;
//! 8. [`forge`]: what holds for any piece: the balance back to bar;
//! 9. [`tongs`]: the document of a pair, its jaws, and the model that [`tongs::resolve`] makes of
//!    it;
//! 10. [`tool`]: punches, drifts, chisels and hardy tools: document, steel, checks;
//! 11. [`proof`]: whether a pair can be made, holds and lasts;
//! 12. [`making`]: procedures, operations, and the piece after each, from bar to finished half or tool;
//! 13. [`heats`]: which fire or coil for which operation, whether the piece goes in, how long, how few;
//! 14. [`draw`]: the views of a pair, of a tool and of a stage, and what of the drawing can be dragged;
//! 15. [`shop`]: all [`shop::Answers`] to one design, choosing a jaw, families, the shelf.
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
pub mod heats;
pub mod making;
pub mod number;
pub mod paper;
pub mod proof;
pub mod shape;
pub mod shop;
pub mod steel;
pub mod tongs;
pub mod tool;
pub mod units;

pub use crate::tongs::resolve;
