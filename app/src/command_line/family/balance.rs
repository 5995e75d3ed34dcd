//! The balance of every size.

use std::collections::BTreeMap;

use reinwright_core::shop::family::{
    BarTotal, Family, InSizes, OfSize, Opened, answer_all, sheet, totals,
};
use serde::Serialize;

use super::{Sizes, Told, each, lost, partly, sound};
use crate::command_line::arguments::Asked;
use crate::command_line::{Outcome, balance as one_balance, json};

#[derive(Serialize)]
struct BalanceAnswer<'a, A: Serialize> {
    /// What could not be read of a damaged file; sizes that it is about are left out.
    not_read: &'a [String],
    #[serde(flatten)]
    sizes: Sizes<'a, AccountAnswer<A>>,
    /// Of the sizes for which a bar can be reckoned.
    totals: Vec<TotalAnswer>,
}

/// The account of a size, or why there is none.
#[derive(Serialize)]
#[serde(untagged)]
enum AccountAnswer<A: Serialize> {
    Account(Box<A>),
    None { no_bar: String },
}

fn account<D: Told>(of: &D::Answer) -> AccountAnswer<D::Account> {
    match of.balance().trouble() {
        None => AccountAnswer::Account(Box::new(D::account(of))),
        Some(no_bar) => AccountAnswer::None { no_bar },
    }
}

/// Bar for one pair or tool of each size.
#[derive(Serialize)]
struct TotalAnswer {
    shape: &'static str,
    size_mm: f64,
    width_mm: f64,
    steel: &'static str,
    #[serde(flatten)]
    counted: BTreeMap<String, u32>,
    cut_length_mm: f64,
    bar_mass_kg: f64,
}

impl TotalAnswer {
    fn new<D: InSizes>(total: &BarTotal) -> Self {
        let stock = &total.bar.stock;
        Self {
            shape: one_balance::shape(stock),
            size_mm: stock.size().mm(),
            width_mm: stock.wide_mm(),
            steel: total.bar.steel.name(),
            counted: BTreeMap::from([(format!("{}s", D::NAME), total.pairs)]),
            cut_length_mm: total.length_mm,
            bar_mass_kg: total.mass_kg,
        }
    }
}

/// The balance of every size, and the bar for one of each.
pub(in crate::command_line) fn balance<D: Told>(opened: &Opened<D>, asked: &Asked) -> Outcome {
    let family = sound(&asked.file, opened)?;
    let answers = answer_all(family);
    let totals = totals(&answers, 1);
    if asked.json {
        let text = json(&BalanceAnswer {
            not_read: &opened.lost,
            sizes: each(family, &answers, account::<D>),
            totals: totals.iter().map(TotalAnswer::new::<D>).collect(),
        })?;
        return Ok(partly(opened, text));
    }
    let mut text = lost(opened);
    text.extend(answers.iter().map(account_told::<D>));
    text += &format!("One {} of each size\n", D::NAME);
    text.extend(totals.iter().map(|total| total_line(family, total)));
    Ok(partly(opened, text))
}

fn account_told<D: Told>(of: &D::Answer) -> String {
    match of.balance().trouble() {
        None => D::account_table(of) + "\n",
        Some(trouble) => format!("{}\n{trouble}\n\n", of.document().name()),
    }
}

fn total_line<D: InSizes>(family: &Family<D>, total: &BarTotal) -> String {
    format!("{}\n", sheet::total_words(family, total))
}
