//! The smith's own jaws among the styles: judged on the same work by the same hand.

use super::choose::{Advice, agreed, choose, judged};
use super::start::start_own;
use crate::asked::{Bar, Lie, Work};
use crate::tongs::document::Document;
use crate::tongs::jaw::sketch::KeptJaw;
use crate::tongs::jaw::{Jaw, JawKind, JawStyle, Verdict, Way};

/// Every own jaw and every style for some work held in a way, tongs of some bar: sorted as
/// [`choose`] sorts the styles, of equal verdict the own jaws first.
pub fn choose_among(own: &[KeptJaw], work: &Work, way: Way, bar: &Bar) -> Vec<Advice> {
    let (work, way) = agreed(*work, way);
    let own = own.iter().map(|kept| {
        let laid = laid_for_own(kept, &work, bar);
        advise_own(kept, &laid, way, bar)
    });
    let mut all: Vec<Advice> = own.chain(choose(&work, way, bar)).collect();
    all.sort_by_key(|advice| advice.verdict);
    all
}

/// Work with corners turned as it comes to rest in an own jaw that is squeezed: as it lets the jaws come nearest to
/// each other. A hexagon goes into a V on its corners, two flats in each jaw, and between flat faces on its flats.
#[must_use]
pub fn laid_for_own(kept: &KeptJaw, work: &Work, bar: &Bar) -> Work {
    let gap_mm = |work: &Work| {
        let pair = start_own(kept, *work, *bar).ok()?;
        Some(crate::tongs::resolve(&pair).jaw_gap)
    };
    let mut turned = *work;
    turned.lay(Lie::OnCorners);
    let mut flat = *work;
    flat.lay(Lie::OnFlats);
    match (gap_mm(&flat), gap_mm(&turned)) {
        (Some(on_flats), Some(on_corners)) if on_corners < on_flats - ALIKE_MM => turned,
        _ => flat,
    }
}

/// Jaws that come nearer by less than this stand alike, mm: a hair on a smith's rule (judgement).
const ALIKE_MM: f64 = 0.1;

/// What is advised of an own jaw in proportion to some work, lying as it is given. One that does not grow to it would be
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
