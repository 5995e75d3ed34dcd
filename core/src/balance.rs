//! The account that turns finished volume back into length of bar.

use crate::document::{Document, Part};
use crate::model::Model;

/// A part of a half as bar.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct PartBar {
    /// The part.
    pub part: Part,
    /// Its finished length along the tongs or along the rein, mm.
    pub finished_length_mm: f64,
    /// Its finished volume, mm³.
    pub volume_mm3: f64,
    /// The length of bar that holds this volume, mm.
    pub bar_length_mm: f64,
}

/// Something the bar loses or keeps in reserve.
#[derive(Debug, Clone, PartialEq)]
pub struct Allowance {
    /// What it is for.
    pub what: &'static str,
    /// As length of bar, mm.
    pub bar_length_mm: f64,
}

/// A place on the cold bar.
#[derive(Debug, Clone, PartialEq)]
pub struct Mark {
    /// From the bar's left end, mm, exact.
    pub at_mm: f64,
    /// What the mark is.
    pub what: String,
}

/// A coloured stretch of the bar.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Stretch {
    /// From, mm from the bar's left end.
    pub from_mm: f64,
    /// To.
    pub to_mm: f64,
    /// What it becomes; `None` is lost or left over.
    pub part: Option<Part>,
}

/// One half's account.
#[derive(Debug, Clone, PartialEq)]
pub struct HalfBalance {
    /// Finished volume, mm³.
    pub volume_mm3: f64,
    /// Finished mass, kg.
    pub mass_kg: f64,
    /// Bar to cut for it with all allowances, mm.
    pub bar_length_mm: f64,
    /// Its parts, from jaw to rein.
    pub parts: Vec<PartBar>,
    /// What is lost or added.
    pub allowances: Vec<Allowance>,
}

/// The whole account.
#[derive(Debug, Clone, PartialEq)]
pub struct Balance {
    /// Bar cross-section, mm².
    pub bar_area_mm2: f64,
    /// Half A, and half B (the same numbers unless the jaws differ).
    pub halves: [HalfBalance; 2],
    /// Bar for the pair with cuts, mm.
    pub pair_bar_length_mm: f64,
    /// Mass of the finished pair with its rivet, kg.
    pub pair_mass_kg: f64,
    /// Marks along the bar for the layout.
    pub marks: Vec<Mark>,
    /// What each stretch of the bar becomes.
    pub stretches: Vec<Stretch>,
}

/// Balances a pair to its bar.
pub fn balance(document: &Document, model: &Model) -> Balance {
    let _ = (document, model);
    todo!()
}
