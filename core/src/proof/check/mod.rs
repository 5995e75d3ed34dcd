//! What is noticed of the shape alone: what cannot be made, what will disappoint, what is good to
//! know.

mod bar;
mod boss;
mod jaw;
mod limb;
mod piece;
mod rein;

use crate::finding::{Finding, Part, Report, sort};
use crate::tongs::document::Document;
use crate::tongs::jaw::Jaw;
use crate::tongs::model::{Half, Model};

/// What is noticed of a pair before any work or hand bears on it, the worst first.
pub fn check(document: &Document, model: &Model) -> Vec<Finding> {
    let mut check = Check {
        document,
        model,
        report: Report::new(document.units.show()),
    };
    bar::check(&mut check);
    jaw::check(&mut check);
    piece::check(&mut check);
    boss::check(&mut check);
    limb::check(&mut check);
    rein::check(&mut check);
    let mut found = check.report.into_found();
    sort(&mut found);
    found
}

/// A document and its model under scrutiny.
struct Check<'a> {
    document: &'a Document,
    model: &'a Model,
    report: Report,
}

impl<'a> Check<'a> {
    /// A size as the smith reads it.
    fn size(&self, mm: f64) -> String {
        self.report.size(mm)
    }

    /// Side of the square of the bar's area, mm: what trade rules call the bar.
    fn side(&self) -> f64 {
        self.document.bar.stock.equal_square_mm()
    }

    /// The jaws as asked, with the half that carries each.
    fn jaws(&self) -> Vec<(Part, &'a Jaw, &'a Half)> {
        let first = (Part::Jaw, &self.document.jaw, &self.model.a);
        let second = self.document.second_jaw.as_ref();
        let second = second.map(|jaw| (Part::SecondJaw, jaw, &self.model.b));
        [Some(first), second].into_iter().flatten().collect()
    }

    /// The halves that differ: one when both jaws are the same.
    fn halves(&self) -> Vec<&'a Half> {
        self.jaws().into_iter().map(|(_, _, half)| half).collect()
    }
}
