//! How a pair holds stock that it was not drawn for.

use std::cmp::Ordering;

use super::{Pair, Stock};
use crate::asked::{AngleHeld, BoltHeld, Lie, Units, Work};
use crate::proof::fit::{Contact, Judged};
use crate::shop::family::fit_for;
use crate::tongs::jaw::Verdict;

/// A pair on stock.
#[derive(Debug, Clone, PartialEq)]
pub struct Held {
    /// The stock, the way it lies best.
    pub work: Work,
    /// How it is held, and why.
    pub judged: Judged,
    /// How the jaws lie on it; `None` when they do not reach it.
    pub contact: Option<Contact>,
    /// Whether the pair was drawn for it.
    pub made_for_it: bool,
}

impl Pair {
    /// How it holds stock, lying the way that it is held best.
    ///
    /// # Panics
    /// Never: stock lies in one way at least.
    pub fn on(&self, stock: &Stock) -> Held {
        let ways = stock.ways.iter().map(|work| self.on_work(work));
        ways.min_by(compare)
            .expect("stock lies in one way at least")
    }

    fn on_work(&self, work: &Work) -> Held {
        let fit = fit_for(&self.document, &self.model, work);
        Held {
            work: *work,
            judged: fit.judged,
            contact: fit.nominal.ok(),
            made_for_it: is_same(&self.document.work, work),
        }
    }
}

/// Whether two works are of one kind and size, however they lie: a hair of difference is none.
fn is_same(own: &Work, other: &Work) -> bool {
    /// Half of what a smith's rule shows, mm (judgement).
    const HAIR: f64 = 0.25;
    let shape = std::mem::discriminant;
    let alike = shape(own) == shape(other) && own.piece() == other.piece();
    alike && (own.size().mm() - other.size().mm()).abs() < HAIR
}

impl Held {
    /// How well it is held.
    pub fn verdict(&self) -> Verdict {
        self.judged.verdict
    }

    /// The answer in words: `holds it well, on its flats`, `holds it badly: the faces stand out of
    /// parallel, the heel 1/8 in open`.
    pub fn sentence(&self, units: Units) -> String {
        let lies = lies(&self.work);
        match self.judged.verdict {
            Verdict::Well => format!("{}{lies}", self.judged.verdict.name()),
            Verdict::WithAWord | Verdict::Badly | Verdict::Unsafe => {
                let reason = self.judged.reason(units.show());
                format!("{}{lies}: {reason}", self.judged.verdict.name())
            }
            Verdict::Cannot => self.judged.sentence(units.show()),
        }
    }

    /// How far the faces part between heel and tip, both sides together, mm.
    fn gapes_mm(&self) -> f64 {
        let gapes = |it: &Contact| it.heel_open_mm.max(it.tip_open_mm);
        self.contact.as_ref().map_or(f64::MAX, gapes)
    }
}

/// By which part stock is held, and which way it lies.
fn lies(work: &Work) -> String {
    let part = work.bolt_held().map(BoltHeld::name);
    let part = part.or(work.angle_held().map(AngleHeld::name));
    let said = [part, work.lies().map(Lie::name)].into_iter().flatten();
    said.map(|said| format!(", {said}")).collect()
}

/// The better one first: by verdict, then what was drawn for it, then by how little the faces part.
fn compare(a: &Held, b: &Held) -> Ordering {
    let parts = a.gapes_mm().total_cmp(&b.gapes_mm());
    let made = b.made_for_it.cmp(&a.made_for_it);
    a.verdict().cmp(&b.verdict()).then(made).then(parts)
}

/// The places of some answers, the best first; of two alike the earlier.
pub fn best_first(held: &[Held]) -> Vec<usize> {
    let mut places: Vec<usize> = (0..held.len()).collect();
    places.sort_by(|a, b| compare(&held[*a], &held[*b]));
    places
}
