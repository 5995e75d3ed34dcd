//! What a pair is told: whether it can be made, how it holds its work, whether it lasts.

mod beams;
mod findings;
mod fit;
mod mends;
mod pipe;
mod pressing;
mod rivets;
mod steels;
mod strength;
mod travel;

use reinwright_core::proof::fit::Fit;
use reinwright_core::tongs::document::Document;
use reinwright_core::tongs::model::Model;
use reinwright_core::tongs::resolve;
use reinwright_tests::designs::sample;

/// As near as the program's sums over sections must come to a closed form: 0.1 %.
const THOUSANDTH: f64 = 1e-3;

fn fitted(document: &Document) -> (Model, Fit) {
    let model = resolve(document);
    let fit = reinwright_core::proof::fit::fit(document, &model);
    (model, fit)
}

/// A pair of two different jaws, and the same with its halves swapped.
fn two_jaws() -> (Document, Document) {
    let pair = sample("v-over-flat");
    let mut swapped = pair.clone();
    let second = swapped.second_jaw.take().expect("the sample has two jaws");
    swapped.second_jaw = Some(std::mem::replace(&mut swapped.jaw, second));
    (pair, swapped)
}
