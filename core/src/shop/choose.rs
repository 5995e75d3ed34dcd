//! Which styles suit some work, held in some way, and why the others do not.

use super::start_anyway;
use crate::asked::{Bar, BoltHeld, Work};
use crate::finding::{Finding, Severity};
use crate::proof::check::check;
use crate::proof::fit::{self, Judged};
use crate::tongs::document::Document;
use crate::tongs::jaw::{JawKind, Verdict, Way};
use crate::tongs::model::Model;

/// What is advised of one style.
#[derive(Debug, Clone, PartialEq)]
pub struct Advice {
    /// The style.
    pub style: JawKind,
    /// What comes of it.
    pub verdict: Verdict,
    /// Why, in a sentence without a period.
    pub reason: String,
    /// The starting pair in this style, for this work and bar, laid as the style asks.
    pub pair: Document,
}

impl Advice {
    /// What the smith calls it: the style, or an own jaw by its name.
    pub fn name(&self) -> &str {
        self.own().unwrap_or(self.style.name())
    }

    /// The name of the own jaw that it is advice on, if it is one.
    pub fn own(&self) -> Option<&str> {
        let own = self.pair.jaw.sketch().map(|sketch| sketch.name.as_str());
        own.filter(|name| !name.is_empty())
    }
}

/// Every style for some work held in a way, tongs of some bar: those that hold it well first, those
/// that cannot last, otherwise in the order of the styles.
///
/// The starting pair is judged as every other pair is ([`fit::judged_in`]); what cannot be made of
/// it counts against it.
pub fn choose(work: &Work, way: Way, bar: &Bar) -> Vec<Advice> {
    let (work, way) = agreed(*work, way);
    // A sketch is whatever the smith makes of it.
    let kinds = JawKind::ALL.iter().filter(|kind| **kind != JawKind::Sketch);
    let mut all: Vec<Advice> = kinds.map(|kind| advise(*kind, &work, way, bar)).collect();
    all.sort_by_key(|advice| advice.verdict);
    all
}

/// A bolt is held behind its head as much as it is asked for in that way.
pub fn agreed(mut work: Work, way: Way) -> (Work, Way) {
    match (way, work.bolt_held()) {
        (Way::EndOn, Some(held)) => (work, Way::of_bolt(held)),
        (Way::ByHead, Some(_)) => {
            work.hold_bolt(BoltHeld::BehindHead);
            (work, way)
        }
        (Way::EndOn | Way::Beside | Way::Across | Way::ByHead | Way::ByEye, _) => (work, way),
    }
}

/// What is advised of one style, the work laid as the style takes it.
pub fn advise(style: JawKind, work: &Work, way: Way, bar: &Bar) -> Advice {
    advise_laid(style, &work.laid_for(style), way, bar)
}

/// What is advised of one style for work that lies as it is given.
pub fn advise_laid(style: JawKind, work: &Work, way: Way, bar: &Bar) -> Advice {
    judged(start_anyway(style, *work, *bar), way)
}

/// What is to be said of a pair that was begun for its work.
pub(super) fn judged(pair: Document, way: Way) -> Advice {
    let style = pair.jaw.kind();
    let model = crate::tongs::resolve(&pair);
    let fit = fit::fit(&pair, &model);
    let Judged { verdict, why } = fit::judged_in(&pair, &model, &fit, way);
    let reason = Judged { verdict, why }.reason(pair.units.show());
    let (verdict, reason) = match made(&pair, &model) {
        Some((worse, why)) if worse > verdict && verdict < Verdict::Badly => (worse, why),
        Some(_) | None => (verdict, reason),
    };
    Advice {
        style,
        verdict,
        reason,
        pair,
    }
}

/// What stands against the shape of the starting pair, if anything.
fn made(pair: &Document, model: &Model) -> Option<(Verdict, String)> {
    let findings = check(pair, model);
    let worst = findings.first()?;
    let verdict = match worst.severity {
        Severity::Stop => Verdict::Cannot,
        Severity::Mend => Verdict::WithAWord,
        Severity::Note => return None,
    };
    let Finding { message, .. } = worst;
    Some((verdict, message.clone()))
}
