//! The same design from another size of its bar, where nothing else mends it.

use super::Change;
use super::design::Design;
use super::judged::Aim;
use super::taken::Taken;
use super::tries::Tries;
use crate::asked::Bar;
use crate::finding::Part;
use crate::shop::start::usual_bars;

/// The nearest bar of the same shape from which the design is as `aim` asks.
pub(super) fn other<D: Design>(base: &D, aim: &Aim<'_>, tries: &mut Tries<D>) -> Option<Taken<D>> {
    let shape = std::mem::discriminant(&base.bar().stock);
    let bars = usual_bars(base.bar()).into_iter();
    let alike = bars.filter(|bar| std::mem::discriminant(&bar.stock) == shape);
    let other = alike.filter(|bar| bar.stock.words() != base.bar().stock.words());
    other
        .take(D::BARS_TRIED)
        .find_map(|bar| from(base, bar, aim, tries))
}

/// The design from a bar, if that is as `aim` asks.
fn from<D: Design>(base: &D, bar: Bar, aim: &Aim<'_>, tries: &mut Tries<D>) -> Option<Taken<D>> {
    let document = base.forged_from(bar);
    let whole = tries.whole(&document)?;
    let far = (document.bar().stock.area_mm2() / base.bar().stock.area_mm2()).ln();
    aim.is_met(&whole.findings).then(|| Taken {
        changes: changes(base, &document),
        document,
        whole,
        far: far.abs(),
    })
}

/// What another bar changes, as values.
fn changes<D: Design>(base: &D, other: &D) -> Vec<Change> {
    let (before, after) = (base.fields(), other.fields());
    let both = before.iter().zip(&after);
    both.filter(|(field, to)| field.part == Part::Bar && field.value != to.value)
        .map(|(field, to)| Change::of(field, to.value))
        .collect()
}
