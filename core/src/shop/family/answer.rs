//! What is to be known of every size.

use super::edit::same_stock;
use super::{Family, InSizes, OfSize};
use crate::asked::{Bar, Work};
use crate::finding::{self, Finding, Severity};
use crate::forge::balance::Balance;
use crate::proof::fit::{Fit, fit};
use crate::proof::strength::{Strength, StrengthLoad};
use crate::tongs::document::Document;
use crate::tongs::jaw::Verdict;
use crate::tongs::model::Model;

/// The answers to one size.
#[derive(Debug, Clone)]
pub struct SizeAnswer {
    /// What the size is called.
    pub label: String,
    /// The size as a design of its own.
    pub document: Document,
    /// Its geometry.
    pub model: Model,
    /// Its bar.
    pub balance: Balance,
    /// How it holds.
    pub fit: Fit,
    /// How it lasts under the squeezes asked for.
    pub strength: Strength,
    /// What was noticed of the pair, and of making it from the family; the worst first.
    pub findings: Vec<Finding>,
}

impl SizeAnswer {
    /// The worst of its findings, for the mark in a table.
    pub fn worst(&self) -> Option<Severity> {
        finding::worst(&self.findings)
    }

    /// How this pair, as it is forged, fits other work.
    pub fn fit_for(&self, work: &Work) -> Fit {
        fit_for(&self.document, &self.model, work)
    }
}

/// How a pair, as it is forged, fits other work than it was drawn for.
pub(crate) fn fit_for(document: &Document, model: &Model, work: &Work) -> Fit {
    let mut document = document.clone();
    document.work = *work;
    fit(&document, &model.with_work(work))
}

impl<D: InSizes> Family<D> {
    /// The answers to the size at a place under the usual loads with cold jaws; `None` when
    /// there is no such size.
    pub fn answer(&self, index: usize) -> Option<D::Answer> {
        self.answer_under(index, &StrengthLoad::default())
    }

    /// The same under other loads, or with hot jaws.
    pub fn answer_under(&self, index: usize, load: &StrengthLoad) -> Option<D::Answer> {
        let size = self.sizes.get(index)?;
        Some(D::answered(self.made(size), size.label(), load))
    }
}

/// The answers to every size, in order. One that cannot be made says so in its findings and
/// leaves the others as they are.
pub fn answer_all<D: InSizes>(family: &Family<D>) -> Vec<D::Answer> {
    answer_all_under(family, &StrengthLoad::default())
}

/// The same under other loads, or with hot jaws.
pub fn answer_all_under<D: InSizes>(family: &Family<D>, load: &StrengthLoad) -> Vec<D::Answer> {
    let sizes = 0..family.sizes.len();
    let answer = |index| family.answer_under(index, load);
    sizes.filter_map(answer).collect()
}

/// Which of the pairs hold some work, by their places: what a label says does not matter.
pub fn holders(answers: &[SizeAnswer], work: &Work) -> Vec<usize> {
    let holds = |answer: &SizeAnswer| answer.fit_for(work).judged.verdict <= Verdict::WithAWord;
    let all = answers.iter().enumerate();
    all.filter(|(_, answer)| holds(answer))
        .map(|(at, _)| at)
        .collect()
}

/// What a set takes of one bar.
#[derive(Debug, Clone, PartialEq)]
pub struct BarTotal {
    /// The bar.
    pub bar: Bar,
    /// The sizes that are forged from it, by their places.
    pub sizes: Vec<usize>,
    /// How many pairs or tools come out of it.
    pub pairs: u32,
    /// How much of it is cut for them, mm.
    pub length_mm: f64,
    /// What becomes of it and is lost weighs so much, kg, whatever a length to cut is rounded to.
    pub mass_kg: f64,
}

/// Bar for so many of each size, bar by bar in the order in which the sizes name them. Sizes
/// for which no bar can be reckoned are left out.
pub fn totals<A: OfSize<Of: InSizes>>(answers: &[A], of_each: u32) -> Vec<BarTotal> {
    let mut totals: Vec<BarTotal> = Vec::new();
    let reckoned = answers.iter().enumerate();
    for (index, answer) in reckoned.filter(|(_, of)| of.balance().trouble().is_none()) {
        let bar = answer.document().bar();
        let same = |total: &BarTotal| {
            same_stock(&total.bar.stock, &bar.stock) && total.bar.steel == bar.steel
        };
        let at = totals.iter().position(same).unwrap_or_else(|| {
            totals.push(empty(bar));
            totals.len() - 1
        });
        add(&mut totals[at], index, answer, of_each);
    }
    totals
}

fn empty(bar: Bar) -> BarTotal {
    BarTotal {
        bar,
        sizes: Vec::new(),
        pairs: 0,
        length_mm: 0.0,
        mass_kg: 0.0,
    }
}

fn add<A: OfSize<Of: InSizes>>(total: &mut BarTotal, index: usize, answer: &A, pairs: u32) {
    total.sizes.push(index);
    total.pairs = total.pairs.saturating_add(pairs);
    // What is sawn is what the table and the templates say to cut.
    let units = answer.document().units();
    let wanted = f64::from(pairs);
    let length = wanted * answer.balance().cut_length(units).mm();
    total.length_mm += length;
    total.mass_kg += wanted * answer.balance().cut_mass_kg(units);
}
