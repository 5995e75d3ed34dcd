//! Finding a place for every value: the spot of the drawn outline that the value moves most.

use kurbo::{Point, Vec2};

use super::limb::{Limb, View};
use super::spot::{Along, Face, Spot};
use super::{Answer, Handle, HandleId, SLOWEST, known, set};
use crate::asked::{Field, Value};
use crate::finding::Part;
use crate::shape::sweep::Edge;
use crate::tongs::document::Document;
use crate::tongs::model::Model;
use crate::tongs::resolve_changed;

/// How far a value is moved to see what it does: mm, or degrees. Far above what a number loses,
/// far below what bends the answer.
const NUDGE: f64 = 0.02;

/// A spot that seems to move faster than this has jumped to another place, mm per mm.
const FASTEST: f64 = 6.0;

/// Two handles are not wanted nearer to each other than this, mm.
const APART: f64 = 9.0;

/// Places looked at along a jaw, a rein, neck and shoulder, and across a tip.
const JAW: u32 = 40;
const REIN: u32 = 60;
const BODY: u32 = 20;
const TIP: u32 = 16;

/// A document with its handles so far.
pub(super) struct Search<'a> {
    document: &'a Document,
    model: &'a Model,
    /// The outlines of each part that has some.
    outlines: Vec<(Part, Vec<Chain>)>,
    taken: Vec<(View, Point)>,
}

/// Spots along an outline, and where they are.
struct Chain {
    spots: Vec<Spot>,
    places: Vec<Point>,
}

/// The models of a value changed by two small steps, mm or degrees: one to either side, or both
/// to the same where a limit is in the way.
struct Nudged([(f64, Document, Model); 2]);

impl<'a> Search<'a> {
    pub(super) fn new(document: &'a Document, model: &'a Model) -> Self {
        let mut search = Self {
            document,
            model,
            outlines: Vec::new(),
            taken: Vec::new(),
        };
        let second = document.second_jaw.as_ref().map(|_| Part::SecondJaw);
        let parts = [Part::Jaw, Part::Neck, Part::Shoulder, Part::Rein];
        let outlines = parts.into_iter().chain(second);
        search.outlines = outlines
            .map(|part| (part, search.placed(outlines_of(part))))
            .collect();
        search
    }

    /// Outlines as they lie.
    fn placed(&self, outlines: Vec<Vec<Spot>>) -> Vec<Chain> {
        let placed = |spots: Vec<Spot>| Chain {
            places: spots.iter().map(|spot| self.at(spot)).collect(),
            spots,
        };
        outlines.into_iter().map(placed).collect()
    }

    fn at(&self, spot: &Spot) -> Point {
        spot.at(self.document, self.model)
    }

    /// The outlines on which a part's values are looked for.
    fn outlines(&self, part: Part) -> &[Chain] {
        let own = self.outlines.iter().find(|(its, _)| *its == part);
        own.map_or(&[], |(_, chains)| chains)
    }

    /// Known places first, so that the others keep off them; given back in the document's order.
    pub(super) fn all(mut self) -> Vec<Handle> {
        let asked = self.asked();
        let mut found: Vec<(usize, Handle)> = Vec::new();
        for (known, (i, field)) in [true, false]
            .into_iter()
            .flat_map(|known| asked.iter().enumerate().map(move |each| (known, each)))
        {
            if known::spot(self.document, &field.path).is_some() == known {
                found.extend(self.find(field).map(|handle| (i, handle)));
            }
        }
        found.sort_by_key(|(i, _)| *i);
        found.into_iter().map(|(_, handle)| handle).collect()
    }

    /// The values that could have a handle: lengths and angles of the parts that are drawn.
    fn asked(&self) -> Vec<Field> {
        let mut all = self.document.fields();
        all.retain(|field| {
            let goes = matches!(field.value, Value::Length(_) | Value::Angle(_));
            let known = || known::spot(self.document, &field.path).is_some();
            goes && (!self.outlines(field.part).is_empty() || known())
        });
        all
    }

    fn find(&mut self, field: &Field) -> Option<Handle> {
        let nudged = Nudged::of((self.document, self.model), field)?;
        let known = known::spot(self.document, &field.path).and_then(|spot| {
            let places = beside(&spot).map(|spot| self.at(&spot));
            let seen = |by| across(by, &places, 1);
            let by = nudged.movement(&spot, self.at(&spot), seen)?;
            (by.hypot() >= SLOWEST).then_some((spot, by))
        });
        let (spot, by) = known
            .or_else(|| self.most_moved(&nudged, self.outlines(field.part)))
            .or_else(|| self.most_moved(&nudged, &self.placed(tips(field.part))))
            .or_else(|| self.most_moved(&nudged, &self.placed(self.stations(field.part))))?;
        self.taken.push((spot.view(), self.at(&spot)));
        Some(Handle {
            id: HandleId::Field {
                path: field.path.clone(),
            },
            label: field.full_name(),
            part: field.part,
            spot,
            answer: Answer::Along(by),
        })
    }

    /// The spot of some outlines that moves most, square to its outline, and that movement.
    fn most_moved(&self, nudged: &Nudged, chains: &[Chain]) -> Option<(Spot, Vec2)> {
        let of_chain = |chain: &Chain| self.most_on(nudged, chain);
        let best = chains.iter().filter_map(of_chain);
        let best = best.fold(None, |best: Option<Moved>, next| match best {
            // On equal terms the first outline is taken.
            Some(best) if next.worth <= 1.02 * best.worth => Some(best),
            Some(_) | None => Some(next),
        })?;
        Some((best.spot, best.by))
    }

    /// Where a limb's sections change: what only slides along an outline shows there.
    fn stations(&self, part: Part) -> Vec<Vec<Spot>> {
        let (limb, sweep) = match part {
            Part::Jaw => (Limb::Jaw, &self.model.a.jaw),
            Part::SecondJaw => (Limb::SecondJaw, &self.model.b.jaw),
            Part::Rein => (Limb::Rein, &self.model.a.rein),
            Part::Work
            | Part::Bar
            | Part::Neck
            | Part::Boss
            | Part::Shoulder
            | Part::Rivet
            | Part::Pair
            | Part::Working
            | Part::Body
            | Part::Eye
            | Part::StruckEnd
            | Part::HardyShank
            | Part::Tool => return Vec::new(),
        };
        let spot = |i| vec![Spot::Edge(limb, Edge::Outer, Along::Station(i))];
        (0..sweep.stations.len()).map(spot).collect()
    }

    fn most_on(&self, nudged: &Nudged, chain: &Chain) -> Option<Moved> {
        if nudged.leaves(chain.spots.first()?, self.model) {
            return None;
        }
        let moved = |(i, (spot, here)): (usize, (&Spot, &Point))| {
            let by = nudged.movement(spot, *here, |by| across(by, &chain.places, i));
            let by = by.unwrap_or(Vec2::ZERO);
            let worth = by.hypot() * self.room(spot.view(), *here);
            Moved {
                spot: *spot,
                by,
                worth,
            }
        };
        let spots = chain.spots.iter().zip(&chain.places);
        let all: Vec<Moved> = spots.enumerate().map(moved).collect();
        middle_of_best(&all).filter(|moved| moved.by.hypot() >= SLOWEST)
    }

    /// How much a place is worth by the room around it: 1 where no other handle is near.
    fn room(&self, view: View, at: Point) -> f64 {
        /// Even on top of another a place is worth something: else a value could have none.
        const LEAST: f64 = 0.25;
        let others = self.taken.iter().filter(|(its, _)| *its == view);
        let nearest = others.map(|(_, p)| p.distance(at)).fold(APART, f64::min);
        LEAST + (1.0 - LEAST) * nearest / APART
    }
}

/// A spot with its movement.
#[derive(Clone, Copy)]
struct Moved {
    spot: Spot,
    by: Vec2,
    worth: f64,
}

/// Where a whole stretch moves alike its middle is taken, so that the handle does not wander from
/// one end to the other with the last digit.
fn middle_of_best(all: &[Moved]) -> Option<Moved> {
    const ALIKE: f64 = 0.97;
    let best = (0..all.len()).max_by(|a, b| all[*a].worth.total_cmp(&all[*b].worth))?;
    let alike = |i: &usize| all[*i].worth >= ALIKE * all[best].worth;
    let first = (0..=best).rev().take_while(alike).last().unwrap_or(best);
    let last = (best..all.len()).take_while(alike).last().unwrap_or(best);
    all.get(usize::midpoint(first, last)).copied()
}

/// The part of a movement that is square to the outline: what slides along it is not seen. The
/// ends of an outline are seen to move every way.
fn across(by: Vec2, places: &[Point], i: usize) -> Vec2 {
    let (Some(before), Some(after)) = (
        i.checked_sub(1).and_then(|j| places.get(j)),
        places.get(i + 1),
    ) else {
        return by;
    };
    let run = *after - *before;
    if run.hypot() < 1e-9 {
        return by;
    }
    let normal = run.normalize().turn_90();
    normal * by.dot(normal)
}

/// A spot between its neighbours, so that what slides along neck or shoulder is not seen; other
/// spots that are placed by hand are seen to move every way.
fn beside(spot: &Spot) -> [Spot; 3] {
    const STEP: f64 = 0.05;
    if let Spot::Body(face, t) = *spot {
        [t - STEP, t, t + STEP].map(|t| Spot::Body(face, t))
    } else {
        [*spot; 3]
    }
}

impl Nudged {
    fn of((document, model): (&Document, &Model), field: &Field) -> Option<Self> {
        let (now, range) = (field.value.number()?, field.range);
        let steps = match (range.holds(now - NUDGE), range.holds(now + NUDGE)) {
            (true, true) => [-NUDGE, NUDGE],
            (true, false) => [-NUDGE, -2.0 * NUDGE],
            (false, true) | (false, false) => [NUDGE, 2.0 * NUDGE],
        };
        Some(Self(steps.map(|step| {
            let changed = set::with(document, field, now + step);
            let model = resolve_changed(&changed, (document, model));
            (step, changed, model)
        })))
    }

    /// Whether the steel that a spot lies on is as it was.
    fn leaves(&self, spot: &Spot, was: &Model) -> bool {
        self.0.iter().all(|(_, _, model)| spot.stays(was, model))
    }

    /// What a spot that lies here moves by per unit of the value, as far as it is `seen`; `None`
    /// where it jumps.
    fn movement(&self, spot: &Spot, here: Point, seen: impl Fn(Vec2) -> Vec2) -> Option<Vec2> {
        let rate = |(step, document, model): &(f64, Document, Model)| {
            seen((spot.at(document, model) - here) / *step)
        };
        let by = smooth(self.0.each_ref().map(rate))?;
        let sound = by.is_finite() && by.hypot() < FASTEST;
        sound.then_some(by)
    }
}

/// One rate of two. A value that is at the end of the room it has moves nothing on one side;
/// otherwise both must agree, or the spot has jumped.
fn smooth([one, other]: [Vec2; 2]) -> Option<Vec2> {
    const ALIKE: f64 = 0.25;
    const STILL: f64 = 1e-4;
    if one.hypot() < STILL {
        return Some(other);
    }
    if other.hypot() < STILL {
        return Some(one);
    }
    let off = (one - other).hypot();
    (off <= ALIKE * one.hypot().max(other.hypot())).then(|| (one + other) / 2.0)
}

/// The outlines on which a part's values are looked for, side view before top view.
fn outlines_of(part: Part) -> Vec<Vec<Spot>> {
    match part {
        Part::Jaw => limb(Limb::Jaw, JAW),
        Part::SecondJaw => limb(Limb::SecondJaw, JAW),
        Part::Rein => limb(Limb::Rein, REIN),
        Part::Neck => body([Face::NeckOuter, Face::NeckInner]),
        Part::Shoulder => body([Face::ShoulderOuter, Face::ShoulderInner]),
        Part::Work
        | Part::Bar
        | Part::Boss
        | Part::Rivet
        | Part::Pair
        | Part::Working
        | Part::Body
        | Part::Eye
        | Part::StruckEnd
        | Part::HardyShank
        | Part::Tool => Vec::new(),
    }
}

fn limb(limb: Limb, parts: u32) -> Vec<Vec<Spot>> {
    let edge = |edge| {
        let along = |i| Along::Part(f64::from(i) / f64::from(parts));
        (0..=parts)
            .map(|i| Spot::Edge(limb, edge, along(i)))
            .collect()
    };
    [Edge::Outer, Edge::Inner, Edge::Far].map(edge).into()
}

fn body(faces: [Face; 2]) -> Vec<Vec<Spot>> {
    let along = |face| {
        (0..=BODY)
            .map(|i| Spot::Body(face, f64::from(i) / f64::from(BODY)))
            .collect()
    };
    faces.map(along).into()
}

/// The tip's section, for what shows in the end view only.
fn tips(part: Part) -> Vec<Vec<Spot>> {
    let limb = match part {
        Part::Jaw => Limb::Jaw,
        Part::SecondJaw => Limb::SecondJaw,
        Part::Work
        | Part::Bar
        | Part::Neck
        | Part::Boss
        | Part::Shoulder
        | Part::Rein
        | Part::Rivet
        | Part::Pair
        | Part::Working
        | Part::Body
        | Part::Eye
        | Part::StruckEnd
        | Part::HardyShank
        | Part::Tool => return Vec::new(),
    };
    let us = || (0..=TIP).map(|i| 2.0 * f64::from(i) / f64::from(TIP) - 1.0);
    vec![
        us().map(|u| Spot::Groove(limb, u)).collect(),
        us().map(|u| Spot::Back(limb, u)).collect(),
    ]
}
