//! Two values together, where one alone cannot do it: the first clears the finding or comes near,
//! the second mends what the first leaves.

use super::design::Design;
use super::judged::Aim;
use super::search::Search;
use super::taken::Taken;
use super::tries::Tries;
use crate::finding::Part;

/// So many first values are gone on from.
const FIRSTS: usize = 4;

/// The best pair that was found, if any.
pub(super) fn best<D: Design>(
    aim: &Aim<'_>,
    near: &[Taken<D>],
    tries: &mut Tries<D>,
) -> Option<Taken<D>> {
    // A part of the share is kept for bars.
    let before = tries.keep(tries.of_share() / 4);
    let mut firsts: Vec<&Taken<D>> = near.iter().collect();
    firsts.sort_by(|a, b| a.far.total_cmp(&b.far));
    let firsts = firsts.into_iter().take(FIRSTS);
    let pairs: Vec<Taken<D>> = firsts
        .filter_map(|first| after(aim, first, tries))
        .collect();
    tries.release(before);
    pairs.into_iter().min_by(|a, b| a.far.total_cmp(&b.far))
}

/// The best second value after a first.
fn after<D: Design>(aim: &Aim<'_>, first: &Taken<D>, tries: &mut Tries<D>) -> Option<Taken<D>> {
    let rest = aim.rest(&first.whole.findings)?;
    let path = &first.changes[0].path;
    let parts = [rest.part, first.changes[0].part];
    let anywhere = matches!(rest.part, Part::Work | Part::Bar | Part::Pair);
    let near = |part| anywhere || parts.contains(&part);
    let mut second = Search::new(&first.document, &first.whole.findings)
        .keeping(|field| field.path != *path && near(field.part));
    let found = second.singles(aim, rest, tries);
    let best = found
        .taken
        .into_iter()
        .min_by(|a, b| a.far.total_cmp(&b.far))?;
    Some(Taken {
        changes: first.changes.iter().chain(&best.changes).cloned().collect(),
        far: first.far + best.far,
        ..best
    })
}
