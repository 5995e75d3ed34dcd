//! The templates of the sizes of a set: those that share pages, and what is not drawn twice.

use reinwright_core::paper::{Drawing, Named, SetSheet, TitleBlock};
use reinwright_core::shop::family::{Family, OfSize, sheet};

use super::Wanted;
use super::in_set::InSet;
use crate::jobs::order::Order;
use crate::jobs::printing;
use crate::jobs::what::{Kind, Reins};

/// So many sizes share pages at the most: their names still stand in a title block.
const SHARING: usize = 8;

/// The sizes that are printed, those that share pages together: neighbours with nothing against
/// them. A size that must not be made stands alone, with why on each of its pages.
pub(super) fn sharing<D: InSet>(answers: &[D::Answer], order: &Order) -> Vec<Vec<usize>> {
    let mut all: Vec<Vec<usize>> = Vec::new();
    let stops = |index: usize| printing::stop(answers[index].findings()).is_some();
    let steel = |index: usize| answers[index].document().bar().steel;
    for index in (0..answers.len()).filter(|index| order.has_size(*index)) {
        let joins = |group: &&mut Vec<usize>| {
            let alike = |own: &usize| !stops(*own) && steel(*own) == steel(index);
            group.len() < SHARING && !stops(index) && group.iter().all(alike)
        };
        match all.last_mut().filter(joins) {
            Some(group) => group.push(index),
            None => all.push(vec![index]),
        }
    }
    all
}

/// The templates of sizes that share pages; which one it is stands at each view of them, at the
/// base's as well. A rein or a bar that an earlier size has too is not drawn again.
pub(super) fn templates<D: InSet>(
    family: &Family<D>,
    answers: &[D::Answer],
    (group, bars): (&[usize], &[usize]),
    wanted: &Wanted,
) -> Vec<SetSheet> {
    let (Some(first), Some(last)) = (group.first(), group.last()) else {
        return Vec::new();
    };
    let name = |index: usize| sheet::short_name(answers[index].label());
    let sizes = match group.len() {
        1 => answers[*first].label().to_owned(),
        2 => format!("{} and {}", name(*first), name(*last)),
        _ => format!("{} to {}", name(*first), name(*last)),
    };
    let of_first = &answers[*first];
    let title = TitleBlock {
        design: titled(&sheet::short_name(&family.name), &sizes),
        ..of_first
            .document()
            .title_block(of_first.findings(), wanted.day)
    };
    let own = |index: &usize| size_sheets::<D>(answers, *index, wanted, (&title, bars));
    group.iter().flat_map(own).collect()
}

/// A family with the sizes that are shown of it, which its own name may end with.
fn titled(family: &str, sizes: &str) -> String {
    if family.ends_with(sizes) {
        family.to_owned()
    } else {
        format!("{family}, {sizes}")
    }
}

/// The templates of one size.
fn size_sheets<D: InSet>(
    answers: &[D::Answer],
    index: usize,
    wanted: &Wanted,
    (title, bars): (&TitleBlock, &[usize]),
) -> Vec<SetSheet> {
    let answer = &answers[index];
    let mut what = wanted.order.what.clone();
    let mut as_others = String::new();
    let is_whole = what.reins == Reins::Whole;
    let rein = |other: &D::Answer| D::rein_is_like(other, answer);
    if let Some(other) = earlier(answers, index, &wanted.order, rein).filter(|_| is_whole) {
        what.reins = Reins::LeftOut;
        what.kinds.retain(|kind| *kind != Kind::Rein);
        as_others = format!(", rein as {}", sheet::short_name(other.label()));
    }
    if bars[index] != index {
        what.kinds.retain(|kind| *kind != Kind::Bar);
        let other = &answers[bars[index]];
        as_others += &format!(", bar as {}", sheet::short_name(other.label()));
    }
    let mut sheets = D::drawn(answer, &what, title);
    let name = sheet::short_name(answer.label());
    for (place, of) in sheets.iter_mut().enumerate() {
        let as_others = if place == 0 { as_others.as_str() } else { "" };
        of.sheet.title = format!("{name}: {}{as_others}", of.sheet.title);
        of.sheet.named = Named::Always;
    }
    sheets
}

/// The first size before this one that is printed too and is like it.
fn earlier<'a, A>(
    answers: &'a [A],
    index: usize,
    order: &Order,
    is_like: impl Fn(&A) -> bool,
) -> Option<&'a A> {
    let before = (0..index).filter(|place| order.has_size(*place));
    before.map(|place| &answers[place]).find(|of| is_like(of))
}

/// For each size the one on whose sheet its bar is drawn: itself, or the first that is printed and
/// whose bar shows the same.
pub(super) fn bars<D: InSet>(answers: &[D::Answer], order: &Order) -> Vec<usize> {
    // Where nothing but bars is printed, each says whose it is.
    let share = order.what.has(Kind::Bar) && order.what.kinds.len() > 1;
    let mut drawn: Vec<(usize, Drawing)> = Vec::new();
    let mut all = Vec::new();
    for (index, answer) in answers.iter().enumerate() {
        let printed = share && order.has_size(index);
        let own = D::bar_of(answer).filter(|_| printed);
        let Some(own) = own.map(|sheet| sheet.drawing) else {
            all.push(index);
            continue;
        };
        let same = drawn.iter().find(|(_, other)| own.is_like(other));
        all.push(same.map_or(index, |(other, _)| *other));
        if same.is_none() {
            drawn.push((index, own));
        }
    }
    all
}
