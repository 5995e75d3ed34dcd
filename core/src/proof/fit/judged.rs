//! The one judgement of work in a pair: what the trade says of its jaws, and how the work is found
//! to bear. Chooser, findings, fit and shelf all ask here, so that they cannot contradict each
//! other.

use super::contact::{Bearing, Contact, NoContact};
use super::range::{Limit, WorkRange};
use crate::asked::Work;
use crate::finding::Kind;
use crate::steel::PESSIMISTIC_FRICTION;
use crate::tongs::document::Document;
use crate::tongs::jaw::{Jaw, JawKind, Lay, ROLLS, Trade, Verdict, Way};
use crate::tongs::model::{Half, Lies, Model};
use crate::tongs::seat::Bears;
use crate::units::Show;

/// Work this many times as wide as what grips it tips (common practice, no source).
pub(crate) const WIDEST_WORK: f64 = 4.0;

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
    fn new(verdict: Verdict, why: Why) -> Self {
        Self { verdict, why }
    }

    fn trade(trade: Trade) -> Self {
        Self::new(trade.verdict, Why::Trade(trade.why))
    }

    fn worse(self, other: Option<Self>) -> Self {
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
pub fn ways_of(lies: Lies) -> &'static [Way] {
    match lies {
        Lies::Endwise => &[Way::EndOn, Way::ByHead, Way::ByEye],
        Lies::Alongside => &[Way::Beside],
        Lies::Crosswise => &[Way::Across],
    }
}

/// What the fit found of the work that is judged.
pub(super) type Found<'a> = (
    &'a Result<Contact, NoContact>,
    &'a Result<WorkRange, NoContact>,
);

/// How a pair holds its document's work, in the best of the ways in which it is laid. A way that the
/// style is not made for excuses nothing: bar that rolls end on is not made safe by having no head.
pub(super) fn judge(document: &Document, model: &Model, found: Found<'_>) -> Judged {
    let said = ways_of(model.work.lies)
        .iter()
        .map(|way| trade(document, *way))
        .reduce(of_ways)
        .expect("work lies in one way at least");
    Judged::trade(said).worse(reckoned(document, model, found))
}

fn of_ways(a: Trade, b: Trade) -> Trade {
    if a.verdict.min(b.verdict) < Verdict::Badly {
        a.better(b)
    } else {
        a.worse(b)
    }
}

/// How a pair holds its document's work in one way. A way in which it does not lay the work is
/// judged by what the trade says alone.
pub(super) fn judge_in(document: &Document, model: &Model, found: Found<'_>, way: Way) -> Judged {
    let said = Judged::trade(trade(document, way));
    if ways_of(model.work.lies).contains(&way) {
        said.worse(reckoned(document, model, found))
    } else {
        said
    }
}

/// The styles that are made for such work, lying as it does.
pub(super) fn made_for(work: &Work, lies: Lies) -> Vec<JawKind> {
    let first = ways_of(lies)[0];
    let suits = |kind: &JawKind| {
        let trade = kind.trade(&work.laid_for(*kind), first);
        trade.is_some_and(|trade| trade.verdict == Verdict::Well)
    };
    JawKind::ALL.iter().copied().filter(suits).collect()
}

/// What the trade says of both jaws: the better one keeps the work, as a V does over a flat.
fn trade(document: &Document, way: Way) -> Trade {
    let first = trade_of(&document.jaw, &document.work, way);
    match &document.second_jaw {
        None => first,
        Some(second) => first.better(trade_of(second, &document.work, way)),
    }
}

/// What the trade says of one jaw. A bow or a bend in front of a bit makes no bit safe that is not.
fn trade_of(jaw: &Jaw, work: &Work, way: Way) -> Trade {
    let said = jaw.kind().trade(work, way);
    let said = said.unwrap_or_else(|| by_lay(jaw.plain_form().lay, way));
    let bit = jaw.style.bit().and_then(|bit| bit.trade(work, Way::EndOn));
    match bit {
        Some(bit) if bit.verdict == Verdict::Unsafe => said.worse(bit),
        Some(_) | None => said,
    }
}

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

/// What is found against the work as it bears; `None` when nothing is.
fn reckoned(document: &Document, model: &Model, (contact, range): Found<'_>) -> Option<Judged> {
    let contact = match contact {
        Ok(contact) => contact,
        Err(no) => return Some(Judged::new(Verdict::Cannot, Why::No(*no))),
    };
    let found = [
        gapes(contact, model),
        bears(document, model, contact),
        outside(contact, range),
        style(document),
        tips(model),
    ];
    let mut found = found.into_iter().flatten();
    let first = found.next()?;
    Some(found.fold(first, |worst, next| worst.worse(Some(next))))
}

/// Jaws that stand so far out of parallel that they drive the work out: a wedge whose half angle
/// passes the angle of friction (any textbook of statics). Along the tongs it is driven out at the
/// tip alone, for at the heel it meets the boss; across them either way. What must not slip is
/// reckoned with the friction that can be counted on.
fn gapes(contact: &Contact, model: &Model) -> Option<Judged> {
    let half = match model.work.lies {
        Lies::Endwise | Lies::Alongside => contact.half_angle.max(0.0),
        Lies::Crosswise => contact.half_angle.abs(),
    };
    let slips = half > PESSIMISTIC_FRICTION.atan();
    slips.then(|| Judged::new(Verdict::Unsafe, Why::Gapes((2.0 * half).to_degrees())))
}

fn bears(document: &Document, model: &Model, contact: &Contact) -> Option<Judged> {
    let [a, b] = &contact.bearing;
    let halves = [(a, &model.a), (b, &model.b)];
    match (a.bears, b.bears) {
        (Bears::Edges, Bears::Edges) => Some(Judged::new(Verdict::Unsafe, Why::RidesOnEdges)),
        (Bears::Edges, _) | (_, Bears::Edges) => {
            Some(Judged::new(Verdict::Badly, Why::RidesOnOneEdge))
        }
        (Bears::Face, Bears::Face) if rolls_if_it_may(document, model) => {
            turns(&document.work, [a, b], model.work.width)
                .map(|why| Judged::new(Verdict::Unsafe, Why::Turns(why)))
        }
        (
            Bears::Face | Bears::Walls | Bears::Bottom,
            Bears::Face | Bears::Walls | Bears::Bottom,
        ) => {
            let bottoms = |(bearing, half): &(&Bearing, &Half)| {
                bearing.bears == Bears::Bottom && is_folded(half)
            };
            let bottoms = halves.iter().any(bottoms);
            bottoms.then(|| Judged::new(Verdict::Badly, Why::Bottoms))
        }
    }
}

/// Whether nothing but its faces keeps work from rolling: across the jaws it does not roll along
/// them, and lugs in an eye keep it too.
fn rolls_if_it_may(document: &Document, model: &Model) -> bool {
    let by_eye = trade(document, Way::ByEye).verdict == Verdict::Well;
    model.work.lies != Lies::Crosswise && !by_eye
}

/// Why work turns between two faces, if each of them touches it along one line only.
fn turns(work: &Work, bearing: [&Bearing; 2], width_mm: f64) -> Option<&'static str> {
    /// Of the work's width: a line of contact that is broader holds it level.
    const LINE: f64 = 0.1;
    let broad = |it: &Bearing| {
        let first = it.z_mm.first().copied().unwrap_or_default();
        it.z_mm.last().copied().unwrap_or_default() - first
    };
    if bearing.into_iter().any(|it| broad(it) > LINE * width_mm) {
        return None;
    }
    Some(match work {
        Work::Round { .. } => ROLLS,
        Work::Flat { .. } | Work::Square { .. } | Work::Hexagon { .. } | Work::Octagon { .. } => {
            "the bar stands on its corners between flat faces: it turns and can fly out"
        }
    })
}

fn outside(contact: &Contact, range: &Result<WorkRange, NoContact>) -> Option<Judged> {
    let limit = match range {
        Ok(range) => range.end_before(contact.size_mm)?.limit,
        Err(no) => return Some(Judged::new(Verdict::Badly, Why::No(*no))),
    };
    let verdict = match limit {
        Limit::GrooveEdges | Limit::SlipsOut => Verdict::Unsafe,
        Limit::OutOfParallel
        | Limit::HandSpan
        | Limit::ReinsTouch
        | Limit::ReinsClose
        | Limit::JawsMeet
        | Limit::HalvesCollide
        | Limit::Document => Verdict::Badly,
    };
    let outside = Outside {
        limit,
        parts_mm: contact.heel_open_mm.max(contact.tip_open_mm),
        at_heel: contact.heel_open_mm > contact.tip_open_mm,
        hand_span_mm: contact.hand_span_mm,
    };
    Some(Judged::new(verdict, Why::Outside(outside)))
}

/// What a style says of work that shows it no face to bear on.
fn style(document: &Document) -> Option<Judged> {
    let jaws = [Some(&document.jaw), document.second_jaw.as_ref()];
    let said = jaws.into_iter().flatten().flat_map(|jaw| {
        let remarks = jaw.remarks(&document.work).into_iter();
        remarks.map(|remark| (jaw.name(), remark))
    });
    let mut badly = said.filter(|(_, remark)| remark.kind == Kind::WorkBearsBadly);
    let (name, remark) = badly.next()?;
    let words = format!("{name} {}", remark.text(document.units.show()));
    Some(Judged::new(Verdict::Badly, Why::Style(words)))
}

fn tips(model: &Model) -> Option<Judged> {
    let faces = [&model.a, &model.b].map(|half| face_mm(half, model));
    let face = faces[0].min(faces[1]);
    let tips = model.work.width > WIDEST_WORK * face;
    tips.then(|| Judged::new(Verdict::WithAWord, Why::Tips(model.work.width, face)))
}

/// What of a jaw lies under the work's width, mm: the jaw's own width, and its length where the
/// work lies across it; a lug beyond the grip holds too.
pub(crate) fn face_mm(half: &Half, model: &Model) -> f64 {
    match model.work.lies {
        Lies::Endwise | Lies::Alongside => half.jaw.section(half.grip.0).width,
        Lies::Crosswise => half.jaw.length() - half.grip.0,
    }
}

/// Whether the groove comes to a corner in its middle, as a V does: its sides leave the middle
/// straight, not level.
pub(crate) fn is_folded(half: &Half) -> bool {
    /// Parts of the half-width.
    const NEAR: f64 = 0.01;
    let section = half.jaw.section(f64::midpoint(half.grip.0, half.grip.1));
    let drop = |u: f64| section.lower(0.0) - section.lower(u);
    // Straight sides drop twice as far over twice the way, round ones four times.
    drop(NEAR) > 1e-6 && drop(2.0 * NEAR) < 3.0 * drop(NEAR)
}
