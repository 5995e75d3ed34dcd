//! The smith's own jaws among the styles: judged on the same work by the same hand.

use super::choose::{Advice, agreed, choose, judged};
use super::start::start_own;
use crate::asked::{Bar, Work};
use crate::tongs::document::Document;
use crate::tongs::jaw::sketch::KeptJaw;
use crate::tongs::jaw::{Jaw, JawKind, JawStyle, Verdict, Way};

/// Every own jaw and every style for some work held in a way, tongs of some bar: sorted as
/// [`choose`] sorts the styles, of equal verdict the own jaws first.
pub fn choose_among(own: &[KeptJaw], work: &Work, way: Way, bar: &Bar) -> Vec<Advice> {
    let (work, way) = agreed(*work, way);
    let own = own.iter().map(|kept| advise_own(kept, &work, way, bar));
    let mut all: Vec<Advice> = own.chain(choose(&work, way, bar)).collect();
    all.sort_by_key(|advice| advice.verdict);
    all
}

/// What is advised of an own jaw in proportion to some work. One that does not grow to it would be
/// unsafe, and is shown as it was kept.
pub fn advise_own(kept: &KeptJaw, work: &Work, way: Way, bar: &Bar) -> Advice {
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
