//! How a pair holds stock that it was not drawn for.

use std::cmp::Ordering;

use super::{Pair, Stock};
use crate::asked::{AngleHeld, BoltHeld, Lie, Units, Work};
use crate::proof::fit::{Contact, Fit, Limit, NoContact, WIDEST_SPAN_MM};
use crate::shop::family::fit_for;
use crate::steel::PESSIMISTIC_FRICTION;
use crate::tongs::headroom;
use crate::tongs::model::{Lies, Model};

/// How well a pair holds stock, the best first.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Verdict {
    /// Inside the sizes that it holds, as for its own work.
    Well,
    /// The jaws reach it, but out of parallel or past another limit.
    Poorly,
    /// It does not hold it.
    Cannot,
}

impl Verdict {
    /// What the smith reads.
    pub fn name(self) -> &'static str {
        match self {
            Self::Well => "holds it well",
            Self::Poorly => "holds it, but",
            Self::Cannot => "cannot hold it",
        }
    }
}

/// A pair on stock.
#[derive(Debug, Clone, PartialEq)]
pub struct Held {
    /// The stock, the way it lies best.
    pub work: Work,
    /// How well it is held.
    pub verdict: Verdict,
    /// How the jaws lie on it; `None` when they do not reach it.
    pub contact: Option<Contact>,
    why: Why,
}

#[derive(Debug, Clone, Copy, PartialEq)]
enum Why {
    Inside,
    Limit(Limit),
    /// The faces stand to each other at so much, degrees.
    Wedge(f64),
    None(NoContact),
    /// The head of the bolt does not go between the jaws.
    NoHeadRoom,
}

impl Pair {
    /// How it holds stock, lying the way that it is held best.
    ///
    /// # Panics
    /// Never: stock lies in one way at least.
    pub fn on(&self, stock: &Stock) -> Held {
        let ways = stock.ways.iter().map(|work| self.on_work(work));
        ways.min_by(compare)
            .expect("stock lies in one way at least")
    }

    fn on_work(&self, work: &Work) -> Held {
        let fit = fit_for(&self.document, &self.model, work);
        let (verdict, why) = match headroom::lacks(work, &self.model) {
            Some(_) => (Verdict::Cannot, Why::NoHeadRoom),
            None => judged(&fit, &self.model, work.size().mm()),
        };
        Held {
            work: *work,
            verdict,
            contact: fit.nominal.ok(),
            why,
        }
    }
}

fn judged(fit: &Fit, model: &Model, size_mm: f64) -> (Verdict, Why) {
    let contact = match &fit.nominal {
        Ok(contact) => contact,
        Err(why) => return (Verdict::Cannot, Why::None(*why)),
    };
    let wedge = 2.0 * gape(contact, model);
    // A wedge drives the work out when half its angle passes the angle of friction (any textbook
    // of statics); what must not slip is reckoned with the friction that can be counted on.
    if wedge / 2.0 > PESSIMISTIC_FRICTION.atan() {
        return (Verdict::Cannot, Why::Wedge(wedge.to_degrees()));
    }
    match &fit.range {
        Ok(range) if range.holds(size_mm) => (Verdict::Well, Why::Inside),
        Ok(range) if size_mm < range.least.size_mm => {
            (Verdict::Poorly, Why::Limit(range.least.limit))
        }
        Ok(range) => (Verdict::Poorly, Why::Limit(range.most.limit)),
        // No size at all is held as it should be, so this one stands out of parallel too.
        Err(_) => (Verdict::Poorly, Why::Limit(Limit::OutOfParallel)),
    }
}

/// The angle at which each jaw stands to the work such that it drives it out, radians. Along the
/// tongs work is driven out at the tip alone, for at the heel it meets the boss; across them
/// either way.
fn gape(contact: &Contact, model: &Model) -> f64 {
    match model.work.lies {
        Lies::Endwise | Lies::Alongside => contact.half_angle.max(0.0),
        Lies::Crosswise => contact.half_angle.abs(),
    }
}

impl Held {
    /// The answer in words: `holds it well, on its flats`, `holds it, but out of parallel: the
    /// heel stands 1/8 in open`.
    pub fn sentence(&self, units: Units) -> String {
        let verdict = self.verdict.name();
        match self.why {
            Why::Inside => format!("{verdict}{}", lies(&self.work)),
            Why::Limit(limit) => {
                format!("{verdict} {}{}", self.but(limit, units), lies(&self.work))
            }
            Why::Wedge(degrees) => format!(
                "{verdict}: the jaws gape {degrees:.0} degrees, and scaled steel slips out of more than {:.0}",
                (2.0 * PESSIMISTIC_FRICTION.atan()).to_degrees()
            ),
            Why::None(why) => format!("{verdict}: {why}"),
            Why::NoHeadRoom => {
                format!("{verdict}: its head does not go between the jaws behind the bits")
            }
        }
    }

    fn but(&self, limit: Limit, units: Units) -> String {
        let show = units.show();
        let contact = self.contact.as_ref();
        match limit {
            Limit::OutOfParallel => {
                let open = self.gapes_mm();
                let end = if contact.is_some_and(|it| it.heel_open_mm > it.tip_open_mm) {
                    "heel"
                } else {
                    "tip"
                };
                format!("out of parallel: the {end} stands {} open", show.text(open))
            }
            Limit::HandSpan => format!(
                "it is {} over the reins, and a hand closes {} with force",
                show.text(contact.map_or(0.0, |it| it.hand_span_mm)),
                show.text(WIDEST_SPAN_MM)
            ),
            Limit::ReinsTouch
            | Limit::JawsMeet
            | Limit::HalvesCollide
            | Limit::GrooveEdges
            | Limit::SlipsOut
            | Limit::Document => limit.name().to_owned(),
        }
    }

    /// How far the faces part between heel and tip, both sides together, mm.
    fn gapes_mm(&self) -> f64 {
        let gapes = |it: &Contact| it.heel_open_mm.max(it.tip_open_mm);
        self.contact.as_ref().map_or(f64::MAX, gapes)
    }
}

/// By which part stock is held, and which way it lies.
fn lies(work: &Work) -> String {
    let part = work.bolt_held().map(BoltHeld::name);
    let part = part.or(work.angle_held().map(AngleHeld::name));
    let said = [part, work.lies().map(Lie::name)].into_iter().flatten();
    said.map(|said| format!(", {said}")).collect()
}

/// The better one first: by verdict, then by how little the faces part.
fn compare(a: &Held, b: &Held) -> Ordering {
    let parts = a.gapes_mm().total_cmp(&b.gapes_mm());
    a.verdict.cmp(&b.verdict).then(parts)
}

/// The places of some answers, the best first; of two alike the earlier.
pub fn best_first(held: &[Held]) -> Vec<usize> {
    let mut places: Vec<usize> = (0..held.len()).collect();
    places.sort_by(|a, b| compare(&held[*a], &held[*b]));
    places
}
