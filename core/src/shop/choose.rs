//! Which styles suit some work, held in some way, and why the others do not.

use super::start_anyway;
use crate::asked::{Bar, BoltHeld, Work};
use crate::finding::{Finding, Kind, Severity};
use crate::proof::check::check;
use crate::proof::fit;
use crate::tongs::document::Document;
use crate::tongs::jaw::trade::ROLLS;
use crate::tongs::jaw::{JawKind, Lay, Trade, Verdict, Way};
use crate::tongs::model::{Lies, Model};
use crate::tongs::seat::Bears;

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

/// Every style for some work held in a way, tongs of some bar: those that suit first, the unsafe
/// ones last, otherwise in the order of the styles.
///
/// What the trade says of the style comes first; then the starting pair is resolved and fitted,
/// and what it cannot do counts against it.
pub fn choose(work: &Work, way: Way, bar: &Bar) -> Vec<Advice> {
    let (work, way) = agreed(*work, way);
    // A sketch is whatever the smith makes of it.
    let kinds = JawKind::ALL.iter().filter(|kind| **kind != JawKind::Sketch);
    let mut all: Vec<Advice> = kinds.map(|kind| advise(*kind, &work, way, bar)).collect();
    all.sort_by_key(|advice| advice.verdict);
    all
}

/// A bolt is held behind its head as much as it is asked for in that way.
fn agreed(mut work: Work, way: Way) -> (Work, Way) {
    match (way, work.bolt_held()) {
        (Way::EndOn, Some(BoltHeld::BehindHead)) => (work, Way::ByHead),
        (Way::ByHead, Some(_)) => {
            work.hold_bolt(BoltHeld::BehindHead);
            (work, way)
        }
        (Way::EndOn | Way::Beside | Way::Across | Way::ByHead | Way::ByEye, _) => (work, way),
    }
}

/// What is advised of one style.
pub fn advise(style: JawKind, work: &Work, way: Way, bar: &Bar) -> Advice {
    let work = work.laid_for(style);
    let pair = start_anyway(style, work, *bar);
    let model = crate::tongs::resolve(&pair);
    let trade = style.trade(&work, way);
    let trade = trade.unwrap_or_else(|| by_lay(pair.jaw.plain_form().lay, way));
    let worse = if trade.verdict < Verdict::NotFor {
        reckoned(&pair, &model)
    } else {
        None
    };
    let (verdict, reason) = match worse {
        Some((verdict, why)) if verdict > trade.verdict => (verdict, why),
        Some(_) | None => (trade.verdict, trade.why.to_owned()),
    };
    Advice {
        style,
        verdict,
        reason,
        pair,
    }
}

/// A style that says nothing itself is judged by how it lays its work.
fn by_lay(lay: Lay, way: Way) -> Trade {
    match (lay, way) {
        (Lay::Endwise { .. }, Way::EndOn)
        | (Lay::Alongside, Way::Beside)
        | (Lay::Crosswise { .. }, Way::Across) => Trade::will_do("holds work this way"),
        (Lay::Endwise { .. }, Way::Beside | Way::Across | Way::ByHead | Way::ByEye) => {
            Trade::not_for("holds work by its end, in line with the tongs")
        }
        (Lay::Alongside, Way::EndOn | Way::Across | Way::ByHead | Way::ByEye) => {
            Trade::not_for("holds work that lies beside the tongs")
        }
        (Lay::Crosswise { .. }, Way::EndOn | Way::Beside | Way::ByHead | Way::ByEye) => {
            Trade::not_for("holds work across the jaws")
        }
    }
}

/// What the starting pair cannot do, if anything.
fn reckoned(pair: &Document, model: &Model) -> Option<(Verdict, String)> {
    let risk = |why: String| Some((Verdict::Unsafe, why));
    if model.jaw_gap <= 0.0 {
        let by = pair.units.show().text(-model.jaw_gap);
        return risk(format!(
            "the jaws meet before they hold: the faces would pass each other by {by}"
        ));
    }
    if let Some(why) = rolls(pair, model) {
        return risk(why.to_owned());
    }
    if let Err(no) = fit::fit(pair, model).nominal {
        return risk(no.to_string());
    }
    let findings = check(pair, model);
    let of = |severity: Severity| move |finding: &&Finding| finding.severity == severity;
    if let Some(stop) = findings.iter().find(of(Severity::Stop)) {
        return risk(stop.message.clone());
    }
    let said = findings
        .iter()
        .find(|finding| finding.severity == Severity::Mend || finding.kind == Kind::WorkTips);
    said.map(|finding| (Verdict::WillDo, finding.message.clone()))
}

/// Why the work would roll, if it would.
fn rolls(pair: &Document, model: &Model) -> Option<&'static str> {
    let bears = |how: Bears| model.seats.iter().any(|seat| seat.bears == how);
    let along = model.work.lies != Lies::Crosswise;
    if bears(Bears::Edges) {
        Some("the work rides on the edges of the groove: it rolls and can fly out")
    } else if along && bears(Bears::Face) && matches!(pair.work, Work::Round { .. }) {
        Some(ROLLS)
    } else {
        None
    }
}
