//! What is reckoned against work as it bears in a pair.

use super::contact::{Bearing, Contact, NoContact};
use super::judged::{Found, Judged, Outside, Why, trade};
use super::limit::Limit;
use super::range::WorkRange;
use crate::asked::Work;
use crate::finding::Kind;
use crate::steel::PESSIMISTIC_FRICTION;
use crate::tongs::document::Document;
use crate::tongs::headroom::lacks;
use crate::tongs::jaw::{ROLLS, Verdict, Way};
use crate::tongs::model::{Half, Lies, Model};
use crate::tongs::seat::Bears;

/// Work this many times as wide as what grips it tips (common practice, no source).
pub(crate) const WIDEST_WORK: f64 = 4.0;

/// What is found against the work as it bears; `None` when nothing is.
pub(super) fn reckoned(
    document: &Document,
    model: &Model,
    (contact, range): Found<'_>,
) -> Option<Judged> {
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
        headroom(document, model),
    ];
    let mut found = found.into_iter().flatten();
    let first = found.next()?;
    Some(found.fold(first, |worst, next| worst.worse(Some(next))))
}

/// A bolt whose head does not go between the jaws behind the bits.
fn headroom(document: &Document, model: &Model) -> Option<Judged> {
    lacks(&document.work, model).map(|_lack| Judged::new(Verdict::Cannot, Why::NoHeadRoom))
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
            if halves.iter().any(bottoms) {
                return Some(Judged::new(Verdict::Badly, Why::Bottoms));
            }
            let sketched = document.jaw.sketch().is_some() && document.second_jaw.is_none();
            let may_turn = sketched && model.work.lies != Lies::Crosswise;
            on_corners_alone(&document.work, [a, b]).filter(|_| may_turn)
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

/// Bar with flats that bears on the walls of a groove by its corners alone: each corner slides off as
/// soon as the bar turns, and nothing turns it back. A style says so itself; of a sketch it is seen.
fn on_corners_alone(work: &Work, bearing: [&Bearing; 2]) -> Option<Judged> {
    if bearing
        .into_iter()
        .any(|it| it.bears != Bears::Walls || it.on_flat)
    {
        return None;
    }
    match work {
        Work::Round { .. } | Work::Octagon { .. } => None,
        Work::Hexagon { .. } => Some(Judged::new(
            Verdict::WithAWord,
            Why::Turns("touches the hexagon at its corners only: it may turn under the hammer"),
        )),
        Work::Square { .. } | Work::Flat { .. } => Some(Judged::new(
            Verdict::Unsafe,
            Why::Turns(
                "touches the bar at its corners only: it turns in the groove and can fly out",
            ),
        )),
    }
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
