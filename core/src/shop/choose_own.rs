//! The smith's own jaws among the styles: judged on the same work by the same hand.

use super::choose::{Advice, agreed, choose, judged};
use super::start::start_own;
use crate::asked::{Bar, Work};
use crate::shop::family::fit_for;
use crate::tongs::document::Document;
use crate::tongs::jaw::sketch::KeptJaw;
use crate::tongs::jaw::{Jaw, JawKind, JawStyle, Verdict, Way};
use crate::tongs::resolve;

/// Every own jaw and every style for some work held in a way, tongs of some bar: sorted as
/// [`choose`] sorts the styles, of equal verdict the own jaws first.
pub fn choose_among(own: &[KeptJaw], work: &Work, way: Way, bar: &Bar) -> Vec<Advice> {
    let (work, way) = agreed(*work, way);
    let own = own.iter().map(|kept| advise_own(kept, &work, way, bar));
    let mut all: Vec<Advice> = own.chain(choose(&work, way, bar)).collect();
    all.sort_by_key(|advice| advice.verdict);
    all
}

/// What is advised of an own jaw in proportion to some work, the work laid as it is held best. One that
/// does not grow to it would be unsafe, and is shown as it was kept.
pub fn advise_own(kept: &KeptJaw, work: &Work, way: Way, bar: &Bar) -> Advice {
    let ways = work.laid_both().into_iter();
    let all = ways.map(|work| advise_own_laid(kept, &work, way, bar));
    // What the bar has against both ways says nothing of the work.
    let held = |pair: &Document| fit_for(pair, &resolve(pair), &pair.work).judged.verdict;
    all.min_by_key(|advice| (advice.verdict, held(&advice.pair)))
        .expect("work lies in one way at least")
}

/// The same for work that lies as it is given.
pub fn advise_own_laid(kept: &KeptJaw, work: &Work, way: Way, bar: &Bar) -> Advice {
    match start_own(kept, *work, *bar) {
        Ok(pair) => judged(pair, way),
        Err(outgrown) => Advice {
            style: JawKind::Sketch,
            verdict: Verdict::Unsafe,
            reason: outgrown.to_string(),
            pair: as_kept(kept, work, bar),
        },
    }
}

/// Work laid as a pair holds it best: as it is given where both ways are alike.
pub fn held_best(pair: &Document, work: &Work) -> Work {
    let model = resolve(pair);
    let verdict = |work: &Work| fit_for(pair, &model, work).judged.verdict;
    let ways = work.laid_both().into_iter();
    ways.min_by_key(verdict)
        .expect("work lies in one way at least")
}

fn as_kept(kept: &KeptJaw, work: &Work, bar: &Bar) -> Document {
    let jaw = Jaw::suited(JawKind::Sketch, work, bar);
    let jaw = Jaw {
        length: kept.length,
        tip: kept.tip,
        style: JawStyle::Sketch(kept.sketch.clone()),
        ..jaw
    };
    Document::starting_with(jaw, work.with_size(kept.sketch.fits), *bar)
}
