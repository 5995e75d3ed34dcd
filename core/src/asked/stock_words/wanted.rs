//! The words of work before its sizes are read.

use super::StockError;
use super::sizes::{is_size, sizes};
use crate::units::{Length, Unit};

/// What a text asks for before its sizes are read.
pub(super) struct Asked<'a> {
    /// The whole text, for messages.
    pub(super) text: &'a str,
    /// Its words without those that say how it is held.
    pub(super) words: &'a [&'a str],
    /// The unit of a number without one.
    pub(super) default: Option<Unit>,
}

impl Asked<'_> {
    /// Whether one of some words is among its own.
    pub(super) fn has(&self, names: &[&str]) -> bool {
        let mut words = self.words.iter();
        words.any(|word| names.contains(&word.trim_end_matches(',')))
    }

    /// The words of sizes, joined.
    pub(super) fn numbers(&self) -> String {
        let sizes = self.words.iter().filter(|word| is_size(word));
        sizes.copied().collect::<Vec<_>>().join(" ")
    }

    pub(super) fn sizes(&self) -> Result<Vec<Length>, StockError> {
        Ok(sizes(&self.numbers(), self.default)?)
    }

    /// Whether all words that are no sizes are among some.
    pub(super) fn only(
        &self,
        kind: &'static str,
        words: &[&str],
        understood: &'static str,
    ) -> Result<(), StockError> {
        let mut others = self.words.iter().filter(|word| !is_size(word));
        match others.find(|word| !words.contains(&word.trim_end_matches(','))) {
            None => Ok(()),
            Some(word) => Err(StockError::Word {
                word: (*word).to_owned(),
                of: kind,
                understood,
            }),
        }
    }
}
