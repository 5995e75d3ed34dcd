//! The same design from another size of its bar, where nothing else mends it.

use super::Change;
use super::judged::Aim;
use super::taken::Taken;
use super::tries::Tries;
use crate::asked::Bar;
use crate::finding::Part;
use crate::shop::start::usual_bars;
use crate::tongs::document::Document;

/// So many bars are tried, the nearest in size first.
const TRIED: usize = 6;

/// The nearest bar of the same shape from which the design is as `aim` asks.
pub(super) fn other(base: &Document, aim: &Aim<'_>, tries: &mut Tries) -> Option<Taken> {
    let shape = std::mem::discriminant(&base.bar.stock);
    let bars = usual_bars(&base.bar).into_iter();
    let alike = bars.filter(|bar| std::mem::discriminant(&bar.stock) == shape);
    let other = alike.filter(|bar| bar.stock.words() != base.bar.stock.words());
    other
        .take(TRIED)
        .find_map(|bar| from(base, bar, aim, tries))
}

/// The design from a bar, if that is as `aim` asks.
fn from(base: &Document, bar: Bar, aim: &Aim<'_>, tries: &mut Tries) -> Option<Taken> {
    let mut document = base.clone();
    document.bar = bar;
    let whole = tries.whole(&document)?;
    aim.is_met(&whole.findings).then(|| Taken {
        changes: changes(base, &document),
        document,
        whole,
        far: 1.0,
    })
}

/// What another bar changes, as values.
fn changes(base: &Document, other: &Document) -> Vec<Change> {
    let (before, after) = (base.fields(), other.fields());
    let both = before.iter().zip(&after);
    both.filter(|(field, to)| field.part == Part::Bar && field.value != to.value)
        .map(|(field, to)| Change::of(field, to.value))
        .collect()
}
