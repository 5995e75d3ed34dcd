//! Changing a family: sizes, rules, and what is set by hand.

use thiserror::Error;

use super::{Family, InSizes, MOST_SIZES, Measure, Rule, Size};
use crate::asked::{Bar, Field, Stock, Units};
use crate::tongs::document::SetError;
use crate::units::Length;

/// Why a change cannot be made; the family stays as it was.
#[derive(Debug, Clone, PartialEq, Eq, Error)]
pub enum EditError {
    /// No size stands there.
    #[error("there is no size {0} here: this family has {1}")]
    NoSize(usize, usize),
    /// No field has the path, or the text is no value for it.
    #[error(transparent)]
    Set(#[from] SetError),
    /// Rules scale lengths only.
    #[error("{0} is no length: it is the same in all sizes unless set by hand")]
    NoLength(String),
    /// As many sizes as a family may have.
    #[error("a family has at most {MOST_SIZES} sizes: begin another one")]
    Full,
    /// The only size.
    #[error("a family needs one size at least: this is its last")]
    Last,
    /// Two works between which there is none.
    #[error("there is no size between {0} and {1}: choose two of one shape that differ")]
    NoBetween(String, String),
}

impl<D: InSizes> Family<D> {
    /// The size at a place.
    ///
    /// # Errors
    /// When there is none.
    pub fn size(&self, index: usize) -> Result<&Size<D::Measure>, EditError> {
        let none = EditError::NoSize(index + 1, self.sizes.len());
        self.sizes.get(index).ok_or(none)
    }

    fn size_mut(&mut self, index: usize) -> Result<&mut Size<D::Measure>, EditError> {
        let none = EditError::NoSize(index + 1, self.sizes.len());
        self.sizes.get_mut(index).ok_or(none)
    }

    /// Puts a size in before the first one that holds larger work; gives its place.
    ///
    /// # Errors
    /// When the family is full.
    pub fn add(&mut self, size: Size<D::Measure>) -> Result<usize, EditError> {
        if self.sizes.len() >= MOST_SIZES {
            return Err(EditError::Full);
        }
        let mm = |size: &Size<D::Measure>| size.work.size_mm();
        let larger = self.sizes.iter().position(|other| mm(other) > mm(&size));
        let at = larger.unwrap_or(self.sizes.len());
        self.sizes.insert(at, size);
        Ok(at)
    }

    /// Puts a size in midway between two others: its work rounded to what a smith measures where
    /// that still lies between; the larger one's bar, since what a smaller bar gives a larger one
    /// gives too; by hand what both have set alike. Gives its place.
    ///
    /// # Errors
    /// When a place is empty, the works are of two shapes or the same, or the family is full.
    pub fn add_between(&mut self, first: usize, second: usize) -> Result<usize, EditError> {
        let (a, b) = (self.size(first)?, self.size(second)?);
        let none = || EditError::NoBetween(a.label(), b.label());
        let work = a.work.between(&b.work).ok_or_else(none)?;
        let side = |size: &Size<D::Measure>| {
            let bar = size.bar.unwrap_or(self.base.bar());
            bar.stock.equal_square_mm()
        };
        let bar = if side(a) > side(b) { a.bar } else { b.bar };
        let alike = |(path, text): &(&String, &String)| b.set.get(*path) == Some(*text);
        let set = a.set.iter().filter(alike);
        let set = set
            .map(|(path, text)| (path.clone(), text.clone()))
            .collect();
        let size = Size {
            bar,
            set,
            ..Size::new(work)
        };
        self.add(size)
    }

    /// Takes a size out of the family and gives it back.
    ///
    /// # Errors
    /// When there is no such size, or it is the last one.
    pub fn remove(&mut self, index: usize) -> Result<Size<D::Measure>, EditError> {
        self.size(index)?;
        if self.sizes.len() == 1 {
            return Err(EditError::Last);
        }
        Ok(self.sizes.remove(index))
    }

    /// Sets a value by hand for one size; its work and its bar are its own in any case.
    ///
    /// # Errors
    /// When there is no such size or value, or the text is none.
    pub fn set(&mut self, index: usize, path: &str, text: &str) -> Result<(), EditError> {
        let mut document = self.made(self.size(index)?).document;
        document.set_text(path, text)?;
        // As the field writes it, with its unit: a bare number would mean something else once
        // the family is shown in other units.
        let text = document.field_at(path).map(|field| field.value.to_string());
        let size = self.size_mut(index)?;
        if document.leads(path) {
            size.work = document.measure();
        } else if is_of_bar(path) {
            size.bar = Some(document.bar());
        } else {
            size.set.extend(text.map(|text| (path.to_owned(), text)));
        }
        Ok(())
    }

    /// Lets go of what is set by hand, so that its rule holds again; a path under `bar.` gives
    /// the size the base's bar back. Tells whether there was anything to let go.
    ///
    /// # Errors
    /// When there is no such size.
    pub fn let_go(&mut self, index: usize, path: &str) -> Result<bool, EditError> {
        let size = self.size_mut(index)?;
        if is_of_bar(path) {
            return Ok(size.bar.take().is_some());
        }
        Ok(size.set.remove(path).is_some())
    }

    /// Sets a value of the base; it flows into every size that does not override it.
    ///
    /// # Errors
    /// When there is no such value, or the text is none.
    pub fn set_base(&mut self, path: &str, text: &str) -> Result<(), EditError> {
        let before = self.base.units();
        self.base.set_text(path, text)?;
        let after = self.base.units();
        self.base.show_in(before);
        self.set_units(after);
        Ok(())
    }

    /// Shows the family in other units. A length that a file sets by hand without a unit is given
    /// the one it had, so that it stays as long as it was.
    pub fn set_units(&mut self, units: Units) {
        if units == self.base.units() {
            return;
        }
        let unit = self.base.units().unit();
        for at in 0..self.sizes.len() {
            let mut made = self.made(&self.sizes[at]).document.all_fields();
            made.retain(Field::is_length);
            for (path, text) in &mut self.sizes[at].set {
                let is_length = made.iter().any(|field| field.path == *path);
                if is_length && let Ok(length) = Length::parse(text, unit) {
                    *text = length.to_string();
                }
            }
        }
        self.base.show_in(units);
    }

    /// The rule that a length follows, and whether it is the one it brings along; `None` when no
    /// length of the base has the path.
    pub fn rule(&self, path: &str) -> Option<(Rule, Chosen)> {
        let usual = usual_rule(&self.base, path)?;
        let rule = self.rules.get(path).copied().unwrap_or(usual);
        let default = if rule == usual {
            Chosen::Usual
        } else {
            Chosen::Changed
        };
        Some((rule, default))
    }

    /// Gives a length another rule.
    ///
    /// # Errors
    /// When the base has no length of that path.
    pub fn set_rule(&mut self, path: &str, rule: Rule) -> Result<(), EditError> {
        let usual = usual_rule(&self.base, path);
        let usual = usual.ok_or_else(|| EditError::NoLength(path.to_owned()))?;
        if rule == usual {
            self.rules.remove(path);
        } else {
            self.rules.insert(path.to_owned(), rule);
        }
        Ok(())
    }
}

/// Whether a rule is the one that a field brings along.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Chosen {
    /// It is.
    Usual,
    /// The smith chose another.
    Changed,
}

/// The bar itself stands under `bar`; how it is laid out and what it loses do not.
pub(super) fn is_of_bar(path: &str) -> bool {
    path.starts_with("bar.")
}

fn usual_rule(base: &impl InSizes, path: &str) -> Option<Rule> {
    let field = base.field_at(path).filter(Field::is_length);
    field.map(|field| field.follows.into())
}

/// A size midway between two: rounded to what a smith measures where that still lies between.
pub(super) fn midway(a: Length, b: Length) -> Option<Length> {
    let (low, high) = (a.mm().min(b.mm()), a.mm().max(b.mm()));
    let (middle, unit) = (f64::midpoint(low, high), a.unit());
    let inside = |length: &Length| length.mm() > low && length.mm() < high;
    let sizes = [
        Length::measured(middle, unit),
        Length::from_mm(middle, unit),
    ];
    sizes.into_iter().find(inside)
}

/// Bars are the same when shape and size in millimetres are, whatever unit they were typed in.
pub fn same_stock(a: &Stock, b: &Stock) -> bool {
    #[allow(
        clippy::float_cmp,
        reason = "the same size in two units is the same number"
    )]
    let same = |x: Length, y: Length| x.mm() == y.mm();
    match (*a, *b) {
        (Stock::Round { diameter: x }, Stock::Round { diameter: y })
        | (Stock::Square { side: x }, Stock::Square { side: y }) => same(x, y),
        (
            Stock::Flat {
                thickness: x,
                width: u,
            },
            Stock::Flat {
                thickness: y,
                width: v,
            },
        ) => same(x, y) && same(u, v),
        (Stock::Round { .. } | Stock::Square { .. } | Stock::Flat { .. }, _) => false,
    }
}

/// Bars of the same stock and the same steel.
pub(in crate::shop) fn same_bar(a: &Bar, b: &Bar) -> bool {
    same_stock(&a.stock, &b.stock) && a.steel == b.steel
}
