//! The one judgement of work in a pair: what the trade says of its jaws, and how the work is found
//! to bear. Chooser, findings, fit and shelf all ask here, so that they cannot contradict each
//! other.

use super::contact::{Contact, NoContact};
use super::limit::Limit;
use super::range::WorkRange;
use super::reckoned::{WIDEST_WORK, reckoned};
use crate::asked::{BoltHeld, Work};
use crate::steel::PESSIMISTIC_FRICTION;
use crate::tongs::document::Document;
use crate::tongs::jaw::{Jaw, JawKind, Lay, Trade, Verdict, Way};
use crate::tongs::model::{Lies, Model};
use crate::units::Show;

/// How work is held in a pair, and why.
#[derive(Debug, Clone, PartialEq)]
pub struct Judged {
    /// What comes of it.
    pub verdict: Verdict,
    /// Why.
    pub why: Why,
}

/// What decides a judgement.
#[derive(Debug, Clone, PartialEq)]
pub enum Why {
    /// What the trade says of the style.
    Trade(&'static str),
    /// The work turns between the jaws.
    Turns(&'static str),
    /// It rides on the edges of every groove.
    RidesOnEdges,
    /// It rides on the edges of one groove, and the other jaw bears it.
    RidesOnOneEdge,
    /// It stands in the bottom of a V.
    Bottoms,
    /// What the style says of such work.
    Style(String),
    /// It is so wide, mm, over what grips it, mm.
    Tips(f64, f64),
    /// It is outside of the sizes that are held.
    Outside(Outside),
    /// The jaws gape so far that they drive it out, degrees.
    Gapes(f64),
    /// The head of the bolt does not go between the jaws behind the bits.
    NoHeadRoom,
    /// The jaws do not reach it.
    No(NoContact),
}

/// Work outside of the sizes that are held.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Outside {
    /// What ends them on its side.
    pub limit: Limit,
    /// How far heel and tip part, both sides together, mm.
    pub parts_mm: f64,
    /// Whether it is the heel that stands open.
    pub at_heel: bool,
    /// Over the reins at the hand, mm.
    pub hand_span_mm: f64,
}

impl Judged {
    pub(super) fn new(verdict: Verdict, why: Why) -> Self {
        Self { verdict, why }
    }

    fn trade(trade: Trade) -> Self {
        Self::new(trade.verdict, Why::Trade(trade.why))
    }

    pub(super) fn worse(self, other: Option<Self>) -> Self {
        match other {
            Some(other) if other.verdict > self.verdict => other,
            Some(_) | None => self,
        }
    }

    /// The reason, in a sentence without a period.
    pub fn reason(&self, show: Show) -> String {
        match &self.why {
            Why::Trade(why) | Why::Turns(why) => (*why).to_owned(),
            Why::RidesOnEdges => {
                "the work rides on the edges of the groove: it rolls and can fly out".to_owned()
            }
            Why::RidesOnOneEdge => {
                "in one jaw the work rides on the edges of the groove".to_owned()
            }
            Why::Bottoms => "the work bottoms in the V and rolls".to_owned(),
            Why::Style(words) => words.clone(),
            Why::Tips(work, face) => format!(
                "the work is {} wide, over {WIDEST_WORK:.0} times what grips it, {}: it tips",
                show.text(*work),
                show.text(*face)
            ),
            Why::Outside(outside) => outside.reason(show),
            Why::Gapes(degrees) => format!(
                "the jaws gape {degrees:.0} degrees, and scaled steel slips out of more than {:.0}",
                (2.0 * PESSIMISTIC_FRICTION.atan()).to_degrees()
            ),
            Why::NoHeadRoom => "its head does not go between the jaws behind the bits".to_owned(),
            Why::No(no) => no.to_string(),
        }
    }

    /// Verdict and reason: `unsafe: a round bar rolls between flat faces, ...`.
    pub fn sentence(&self, show: Show) -> String {
        format!("{}: {}", self.verdict.name(), self.reason(show))
    }
}

impl Outside {
    fn reason(self, show: Show) -> String {
        let name = self.limit.name();
        match self.limit {
            Limit::OutOfParallel => {
                let end = if self.at_heel { "heel" } else { "tip" };
                let open = show.text(self.parts_mm);
                format!("{name}, the {end} {open} open")
            }
            Limit::HandSpan => format!(
                "{name}: they are {} over all, and a hand closes {} with force",
                show.text(self.hand_span_mm),
                show.text(super::WIDEST_SPAN_MM)
            ),
            Limit::ReinsTouch
            | Limit::ReinsClose
            | Limit::JawsMeet
            | Limit::HalvesCollide
            | Limit::GrooveEdges
            | Limit::SlipsOut
            | Limit::Document => name.to_owned(),
        }
    }
}

/// The ways in which a pair holds work that lies so.
pub fn ways_of(work: &Work, lies: Lies) -> &'static [Way] {
    match (lies, work.bolt_held()) {
        (Lies::Endwise, None) => &[Way::EndOn, Way::ByHead, Way::ByEye],
        (Lies::Endwise, Some(BoltHeld::BehindHead)) => &[Way::ByHead],
        (Lies::Endwise, Some(BoltHeld::ByHead | BoltHeld::ByShank)) => &[Way::EndOn],
        (Lies::Alongside, _) => &[Way::Beside],
        (Lies::Crosswise, _) => &[Way::Across],
    }
}

/// What the fit found of the work that is judged.
pub(super) type Found<'a> = (
    &'a Result<Contact, NoContact>,
    &'a Result<WorkRange, NoContact>,
);

/// How a pair holds its document's work, in the first of the ways in which it is laid that the style is made for:
/// bar is judged as plain bar where it can be, not as if it had a head. A way that the
/// style is not made for excuses nothing: bar that rolls end on is not made safe by having no head.
pub(super) fn judge(document: &Document, model: &Model, found: Found<'_>) -> Judged {
    let said = ways_of(&document.work, model.work.lies)
        .iter()
        .map(|way| trade(document, *way))
        .reduce(of_ways)
        .expect("work lies in one way at least");
    Judged::trade(said).worse(reckoned(document, model, found))
}

fn of_ways(a: Trade, b: Trade) -> Trade {
    if a.verdict < Verdict::Badly {
        a
    } else if b.verdict < Verdict::Badly {
        b
    } else {
        a.worse(b)
    }
}

/// How a pair holds its document's work in one way. A way in which it does not lay the work is
/// judged by what the trade says alone.
pub(super) fn judge_in(document: &Document, model: &Model, found: Found<'_>, way: Way) -> Judged {
    let said = Judged::trade(trade(document, way));
    if ways_of(&document.work, model.work.lies).contains(&way) {
        said.worse(reckoned(document, model, found))
    } else {
        said
    }
}

/// The styles that are made for such work, lying as it does.
pub(super) fn made_for(work: &Work, lies: Lies) -> Vec<JawKind> {
    let first = ways_of(work, lies)[0];
    let suits = |kind: &JawKind| {
        let trade = kind.trade(&work.laid_for(*kind), first);
        trade.is_some_and(|trade| trade.verdict == Verdict::Well)
    };
    JawKind::ALL.iter().copied().filter(suits).collect()
}

/// What the trade says of both jaws: the better one keeps the work, as a V does over a flat.
pub(super) fn trade(document: &Document, way: Way) -> Trade {
    let first = trade_of(&document.jaw, &document.work, way);
    match &document.second_jaw {
        None => first,
        Some(second) => first.better(trade_of(second, &document.work, way)),
    }
}

/// What the trade says of one jaw. A bow or a bend in front of a bit makes no bit safe that is not.
fn trade_of(jaw: &Jaw, work: &Work, way: Way) -> Trade {
    let said = jaw.kind().trade(work, way);
    let said = said.unwrap_or_else(|| by_lay(jaw.lay(), way));
    let said = if work.is_on_edge() && jaw.kind() != JawKind::BoxJaw {
        said.worse(ON_EDGE)
    } else {
        said
    };
    let bit = jaw.style.bit().and_then(|bit| bit.trade(work, Way::EndOn));
    match bit {
        Some(bit) if bit.verdict == Verdict::Unsafe => said.worse(bit),
        Some(_) | None => said,
    }
}

/// What is said of flat bar on edge in all jaws without lips (common practice, no source).
const ON_EDGE: Trade = Trade::will_do(
    "stands on the narrow edges and turns over easily: the lips of a box jaw keep it",
);

/// A style that says nothing itself is judged by how it lays its work.
fn by_lay(lay: Lay, way: Way) -> Trade {
    match (lay, way) {
        (Lay::Endwise { .. }, Way::EndOn)
        | (Lay::Alongside, Way::Beside)
        | (Lay::Crosswise { .. }, Way::Across) => Trade::suits("drawn to hold work this way"),
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
