//! Families: one design in many sizes, its file, its set, and the jobs that take it.
#![allow(clippy::unwrap_used, reason = "a test may stop at what it cannot read")]

mod by_hand;
mod command_line;
mod files;
mod laws;
mod paper;
mod scaling;
mod set;
mod stock;

use std::ops::ControlFlow;

use proptest::prelude::*;
use reinwright::jobs::order::Order;
use reinwright::jobs::set_printing::{self, Wanted};
use reinwright::jobs::watch;
use reinwright_core::asked::{
    Bar, Field, Stock, StockList, StockShape, StockSizes, Units, Value, Work,
};
use reinwright_core::finding::Severity;
use reinwright_core::paper::{Drawing, Item, Paper};
use reinwright_core::shape::sweep::Sweep;
use reinwright_core::shop::family::{
    self, Coverage, EditError, Family, Rounding, Rule, Size, SizeAnswer, Why, answer_all, holders,
    sheet, totals,
};
use reinwright_core::tongs::document::{self, Document, ReinLine};
use reinwright_core::tongs::model::Half;
use reinwright_core::tongs::resolve;
use reinwright_core::units::{Length, Unit};
use reinwright_tests::designs::{family_paths, samples, samples_folder, varied};
use reinwright_tests::files::{bytes, folder, names, pages, put};
use reinwright_tests::pairs::{bar, work};
use reinwright_tests::{INCH, close, pairs, sentence};

fn read_sample(name: &str) -> Family {
    family::read(&bytes(&samples_folder().join(name))).unwrap()
}

fn v_bits() -> Family {
    read_sample("family-v-bit.ron")
}

/// The value at a path, as text.
fn text_at(document: &Document, path: &str) -> String {
    let field = document.field(path);
    field.expect("the document has the field").value.to_string()
}

/// What a set holds of the usual stock in inches.
fn coverage(answers: &[SizeAnswer]) -> Vec<Coverage> {
    family::coverage(answers, Units::Inch, &StockSizes::default())
}

fn flats(sizes: &[&str]) -> Family {
    let mut family = Family::from_design(&pairs::flat());
    family.sizes.clear();
    for size in sizes {
        let work = work(&format!("{size} in flat"));
        family.add(Size::new(work)).unwrap();
    }
    family
}

#[test]
fn a_family_of_one_is_its_design() {
    let mut designs: Vec<Document> = pairs::all().into_iter().map(|(_, pair)| pair).collect();
    designs.extend(samples().into_iter().map(|(_, design)| design));
    assert!(designs.len() > 15);
    for design in designs {
        let family = Family::from_design(&design);
        assert_eq!(family.take_out(0).unwrap(), design, "{}", design.name);
        let answers = answer_all(&family);
        assert_eq!(answers[0].model, resolve(&design), "{}", design.name);
        assert_eq!(family.differs_from_base(0), Vec::new());
    }
}
