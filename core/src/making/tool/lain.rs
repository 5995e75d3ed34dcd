//! The steel of a tool as it lies: a straight piece, its struck face or its shoulder where the finished
//! tool has it.

use std::borrow::Cow;

use kurbo::Point;

use super::super::blank::{Laid, Segment, Stand, lay, shouldered};
use super::super::stage::Stood;
use super::Task;
use super::profiles::Profiles;
use super::state::{State, from};
use crate::finding::Part;
use crate::shape::section::Profile;
use crate::shape::{Cup, Hole, Mass, Opening, Piece, Slot, SlotEnd, Solid, Stretch};
use crate::tool::{Run, formed};

/// A shoulder is rounded by this under the hammer, mm.
const ROUNDED_MM: f64 = 1.5;

/// The steel as it lies, told from its working end. The zones of what stands are the runs of the tool by
/// their places.
pub(super) fn stand(task: &Task<'_>, state: &State, name: &'static str) -> Stood {
    if state.is_finished() {
        return finished(task, name);
    }
    let (line, profiles) = line(task, state);
    let anchor = if task.is_hardy() {
        let shank = |own: &super::state::Own| state.zones[own.zone].part == Part::HardyShank;
        state.runs.iter().position(shank)
    } else {
        None
    };
    let anchor = anchor.unwrap_or(state.runs.len());
    let before = line.iter().filter(|segment| segment.zone < anchor);
    let before: f64 = before.map(|segment| segment.length(&profiles)).sum();
    let stand = Stand {
        start: Point::new(before, 0.0),
        heading: std::f64::consts::PI,
        offset: &|_| (0.0, 0.0),
    };
    let (sweep, laid) = lay(&line, &stand, &profiles);
    let zones = laid.iter().map(|run| (run.zone, run.from, run.to));
    let zones = zones.collect();
    let (mut stretches, mut holes) = (Vec::new(), Vec::new());
    for (zone, run) in by_zone(state, laid) {
        let hole = zone.and_then(|zone| state.zones[zone].hole.filter(|_| state.zones[zone].open));
        let out = hole.map_or(0.0, |hole| hole.volume_mm3);
        holes.extend(hole.map(|hole| Hole {
            stretch: stretches.len(),
            opening: moved(hole.opening, (before - run.from, before - run.to)),
            ..hole
        }));
        stretches.push(Stretch {
            part: zone.map_or(Part::Bar, |zone| state.zones[zone].part),
            solid: Solid::Swept(sweep.clone()),
            from: run.from,
            to: run.to,
            mass: run.mass.without(Mass {
                volume: out,
                ..Mass::default()
            }),
        });
    }
    let piece = Piece {
        name: Cow::Borrowed(name),
        wanted: 1,
        stretches,
        holes,
        marks: Vec::new(),
        dressed: 0,
    };
    Stood { piece, zones }
}

/// All runs in their forms one behind the other, and the bar that belongs to none.
fn line(task: &Task<'_>, state: &State) -> (Vec<Segment>, Vec<Profile>) {
    let from = from(task);
    let mut profiles = Profiles::default();
    let mut line = Vec::new();
    for (place, own) in state.runs.iter().enumerate() {
        let run = formed(&own.run, own.form, from);
        line.push(profiles.segment(&run, (place, state.solid(own))));
    }
    if state.rest() > 0.0 {
        let rest = Run::prism(Part::Bar, 1.0, from.bar);
        line.push(profiles.segment(&rest, (state.runs.len(), state.rest())));
    }
    let profiles = profiles.all();
    let line = shouldered(&line, ROUNDED_MM, &profiles);
    (line, profiles)
}

/// What was laid, runs of one zone as one; what belongs to none has no zone.
fn by_zone(state: &State, laid: Vec<Laid>) -> Vec<(Option<usize>, Laid)> {
    let mut all: Vec<(Option<usize>, Laid)> = Vec::new();
    for run in laid {
        let zone = state.runs.get(run.zone).map(|own| own.zone);
        match all.last_mut() {
            Some((last, whole)) if *last == zone => {
                whole.to = run.to;
                whole.mass = Mass::sum(&[whole.mass, run.mass]);
            }
            Some(_) | None => all.push((zone, run)),
        }
    }
    all
}

/// An opening where its zone lies now: what is open at the end follows the end, an eye stays in the
/// middle.
fn moved(opening: Opening, (tip, end): (f64, f64)) -> Opening {
    match opening {
        Opening::Rivet { .. } => opening,
        Opening::Cup(cup) => Opening::Cup(Cup { at_mm: tip, ..cup }),
        Opening::Slot(slot) => {
            let by = match slot.end {
                SlotEnd::Open | SlotEnd::Vee(_) => tip - slot.to_mm,
                SlotEnd::Round => f64::midpoint(tip, end) - slot.middle_mm(),
            };
            Opening::Slot(Slot {
                from_mm: slot.from_mm + by,
                to_mm: slot.to_mm + by,
                ..slot
            })
        }
    }
}

fn finished(task: &Task<'_>, name: &'static str) -> Stood {
    let piece = Piece {
        name: Cow::Borrowed(name),
        marks: Vec::new(),
        ..task.model.piece.clone()
    };
    let mut at = 0.0;
    let zones = task.places().map(|(place, run)| {
        let from = at;
        at += run.length;
        (place, from, at)
    });
    let zones = zones.collect();
    Stood { piece, zones }
}
