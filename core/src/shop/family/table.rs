//! The family as a table: sizes across, values down.

use std::collections::BTreeMap;

use super::{Family, InSizes, Rule, Size};
use crate::asked::{Field, Value};
use crate::finding::Part;
use crate::units::{Length, Unit};

/// One value in one size.
#[derive(Debug, Clone, PartialEq)]
pub struct Cell {
    /// The value; `None` when this size has no such value.
    pub text: Option<String>,
    /// Whether it is set by hand for this size.
    pub by_hand: bool,
}

/// One value in all sizes.
#[derive(Debug, Clone, PartialEq)]
pub struct Row {
    /// The field, with its value in the base or, where the base has none, in the first size that
    /// has it.
    pub field: Field,
    /// The rule that it follows; `None` for what no rule scales.
    pub rule: Option<Rule>,
    /// Its value in the base, if it has it.
    pub base: Option<String>,
    /// Its value in each size.
    pub cells: Vec<Cell>,
}

impl Row {
    /// Whether the sizes do not all have the same value.
    pub fn varies(&self) -> bool {
        self.cells
            .windows(2)
            .any(|pair| pair[0].text != pair[1].text)
    }
}

/// All values of all sizes, grouped by part.
#[derive(Debug, Clone, PartialEq)]
pub struct Table {
    /// What the sizes are called.
    pub labels: Vec<String>,
    /// The rows, in the order in which a pair is thought of.
    pub rows: Vec<Row>,
}

/// Why a value differs from the base.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Why {
    /// Work and bar belong to the size.
    OwnSize,
    /// Its rule scaled it, or it hangs on something that differs.
    Rule(Rule),
    /// It is set by hand.
    ByHand,
}

/// A value of a size that differs from the base.
#[derive(Debug, Clone, PartialEq)]
pub struct Difference {
    /// Where it stands.
    pub path: String,
    /// The part it shapes.
    pub part: Part,
    /// What the smith calls it.
    pub label: &'static str,
    /// Its value in the base; `None` when the base has no such value.
    pub base: Option<String>,
    /// Its value here; `None` when this size has no such value.
    pub here: Option<String>,
    /// Why.
    pub why: Why,
}

impl<D: InSizes> Family<D> {
    /// The family as a table.
    pub fn table(&self) -> Table {
        let documents = self.sizes.iter().map(|size| self.made(size).document);
        self.table_of(&documents.collect::<Vec<_>>())
    }

    /// The same from documents that are at hand already, one for each size.
    pub fn table_of(&self, documents: &[D]) -> Table {
        let base = self.base.all_fields();
        let sizes: Vec<Vec<Field>> = documents.iter().map(D::all_fields).collect();
        let mut order = Vec::new();
        for all in std::iter::once(&base).chain(&sizes) {
            merge(&mut order, all);
        }
        let base = by_path(&base);
        let sizes: Vec<_> = sizes.iter().map(|all| by_path(all)).collect();
        let rows = order
            .into_iter()
            .map(|field| self.row(field, &base, &sizes));
        Table {
            labels: self.sizes.iter().map(Size::label).collect(),
            rows: rows.collect(),
        }
    }

    fn row(&self, field: Field, base: &ByPath<'_>, sizes: &[ByPath<'_>]) -> Row {
        let path = field.path.as_str();
        let unit = self.base.units().unit();
        let text = |all: &ByPath<'_>| all.get(path).map(|field| shown(&field.value, unit));
        let cell = |(all, size): (&ByPath<'_>, &Size<D::Measure>)| Cell {
            text: text(all),
            by_hand: size.set.contains_key(path),
        };
        Row {
            rule: self.shown_rule(&field),
            base: text(base),
            cells: sizes.iter().zip(&self.sizes).map(cell).collect(),
            field,
        }
    }

    fn shown_rule(&self, field: &Field) -> Option<Rule> {
        let own = !field.is_length() || self.is_own(&field.path);
        let chosen = self.rules.get(&field.path).copied();
        (!own).then(|| chosen.unwrap_or_else(|| field.follows.into()))
    }

    /// What a size has otherwise than the base, in order; nothing when there is no such size.
    pub fn differs_from_base(&self, index: usize) -> Vec<Difference> {
        let Some(size) = self.sizes.get(index) else {
            return Vec::new();
        };
        let (base, here) = (
            self.base.all_fields(),
            self.made(size).document.all_fields(),
        );
        let mut order = Vec::new();
        merge(&mut order, &base);
        merge(&mut order, &here);
        let (base, here) = (by_path(&base), by_path(&here));
        let all = order.into_iter();
        let differs = |field: &Field| {
            let text = |all: &ByPath<'_>| {
                all.get(field.path.as_str())
                    .map(|field| field.value.to_string())
            };
            text(&base) != text(&here)
        };
        let differing: Vec<Field> = all.filter(differs).collect();
        differing
            .into_iter()
            .map(|field| Difference {
                why: self.why(&field, size),
                part: field.part,
                label: field.label,
                base: base
                    .get(field.path.as_str())
                    .map(|field| field.value.to_string()),
                here: here
                    .get(field.path.as_str())
                    .map(|field| field.value.to_string()),
                path: field.path,
            })
            .collect()
    }

    fn why(&self, field: &Field, size: &Size<D::Measure>) -> Why {
        if size.set.contains_key(&field.path) {
            return Why::ByHand;
        }
        if self.is_own(&field.path) {
            return Why::OwnSize;
        }
        Why::Rule(self.shown_rule(field).unwrap_or(Rule::Same))
    }

    /// What leads a size and its bar are its own.
    fn is_own(&self, path: &str) -> bool {
        self.base.leads(path) || super::edit::is_of_bar(path)
    }
}

type ByPath<'a> = BTreeMap<&'a str, &'a Field>;

fn by_path(all: &[Field]) -> ByPath<'_> {
    all.iter()
        .map(|field| (field.path.as_str(), field))
        .collect()
}

/// A value as the table shows it: none of a length is none in the smith's own unit.
fn shown(value: &Value, unit: Unit) -> String {
    match value {
        Value::Length(length) if length.mm() == 0.0 => Length::fraction(0, 1, unit).to_string(),
        Value::Length(_)
        | Value::Angle(_)
        | Value::Percent(_)
        | Value::Count(_)
        | Value::Choice { .. } => value.to_string(),
    }
}

/// Puts fields that are not in the order yet behind the one that they follow in their own.
fn merge(order: &mut Vec<Field>, more: &[Field]) {
    let mut at = 0;
    for field in more {
        match order.iter().position(|known| known.path == field.path) {
            Some(place) => at = place + 1,
            None => {
                order.insert(at, field.clone());
                at += 1;
            }
        }
    }
}
