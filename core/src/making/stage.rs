//! A half on its way as a piece: what is finished as the half has it, all else as straight steel
//! where it belongs.

use std::borrow::Cow;
use std::sync::Arc;

use kurbo::Point;

use crate::finding::Part;
use crate::shape::{Hole, Mass, Piece, Solid, Stretch};

use super::blank::{Laid, Segment, Stand, lay};
use super::procedure::is_bent;
use super::sections::{joined, segments};
use super::state::{BOSS, JAW, MORE, NECK, REIN, SHOULDER, Shape, State, Task};
use super::words::is_last;

/// A piece, and where each of its zones lies along it, mm.
#[derive(Debug, Clone)]
pub(super) struct Stood {
    pub(super) piece: Piece,
    /// From and to of each zone of the first half, in order.
    pub(super) zones: Vec<(usize, f64, f64)>,
}

impl Stood {
    /// From the first of some zones to the last of them, mm along the piece.
    pub(super) fn span(&self, zones: &[usize]) -> Option<(f64, f64)> {
        let own = self.zones.iter().filter(|(zone, ..)| zones.contains(zone));
        own.fold(None, |span: Option<(f64, f64)>, &(_, from, to)| {
            Some(span.map_or((from, to), |(a, b)| (a.min(from), b.max(to))))
        })
    }
}

/// The steel as it lies at a state.
pub(super) fn stand(task: &Task<'_>, state: &State, name: &'static str) -> Stood {
    let mut stretches = Vec::new();
    if state.body_is_finished() {
        stretches.extend(head(task, state));
        stretches.extend(behind(task, state));
    } else {
        stretches.extend(straight(task, state));
    }
    let mut at = 0.0;
    let mut zones: Vec<(usize, f64, f64)> = Vec::new();
    for (zone, stretch) in &stretches {
        let to = at + stretch.length_mm();
        // Those of the second half come again later.
        if !zones.iter().any(|(own, ..)| own == zone) {
            zones.push((*zone, at, to));
        }
        at = to;
    }
    let boss = stretches.iter().position(|(zone, _)| *zone == BOSS);
    let hole = task.piece.holes.first().filter(|_| state.holed);
    let holes = hole
        .into_iter()
        .zip(boss)
        .map(|(hole, stretch)| Hole { stretch, ..*hole });
    let piece = Piece {
        name: Cow::Borrowed(name),
        wanted: 1,
        holes: holes.collect(),
        marks: Vec::new(),
        dressed: 0,
        stretches: stretches.into_iter().map(|(_, stretch)| stretch).collect(),
    };
    Stood { piece, zones }
}

fn part(zone: usize, task: &Task<'_>) -> Part {
    if zone < MORE {
        task.piece.stretches[zone].part
    } else {
        Part::Bar
    }
}

fn told(task: &Task<'_>, (solid, run): (&Solid, &Laid), mass: Mass) -> (usize, Stretch) {
    let stretch = Stretch {
        part: part(run.zone, task),
        solid: solid.clone(),
        from: run.from,
        to: run.to,
        mass,
    };
    (run.zone, stretch)
}

/// The whole length straight, with the middle of the boss over the rivet, where it will stay.
fn straight(task: &Task<'_>, state: &State) -> Vec<(usize, Stretch)> {
    let own = segments(task, state, (JAW, MORE));
    let mut all = own.clone();
    if state.double {
        all.extend(own.iter().rev().map(Segment::turned));
    }
    if state.uncut > 0.0 {
        // What the cut and the crop take lies beyond, and is nobody's.
        all.push(Segment::prism(MORE, state.uncut, task.bar));
    }
    let apart = all.iter().position(|segment| segment.zone == MORE);
    let (line, rod) = match apart {
        Some(at) if state.apart => all.split_at(at),
        Some(_) | None => (all.as_slice(), &[][..]),
    };
    let line = joined(task, line);
    let start = Point::new(before_rivet(task, &line), 0.0);
    let mut found = laid(task, &line, start, state);
    if !rod.is_empty() {
        /// Between a stub and the rod that waits for it, mm, so that they are seen as two.
        const GAP: f64 = 12.0;
        let length: f64 = line
            .iter()
            .map(|segment| segment.length(&task.profiles))
            .sum();
        let rod = joined(task, rod);
        found.extend(laid(
            task,
            &rod,
            Point::new(start.x - length - GAP, 0.0),
            state,
        ));
    }
    found
}

/// From the tip to the middle of the boss, mm: where the disc is widest, or half way through it.
fn before_rivet(task: &Task<'_>, line: &[Segment]) -> f64 {
    let length = |segment: &Segment| segment.length(&task.profiles);
    let first = line.iter().position(|segment| segment.zone == BOSS);
    let first = first.unwrap_or(0);
    let own = line[first..]
        .iter()
        .take_while(|segment| segment.zone == BOSS);
    let own: f64 = own.map(length).sum();
    line[..first].iter().map(length).sum::<f64>() + own / 2.0
}

fn laid(task: &Task<'_>, line: &[Segment], start: Point, state: &State) -> Vec<(usize, Stretch)> {
    let stand = Stand {
        start,
        heading: std::f64::consts::PI,
        // The line runs toward −x: to its left is down.
        offset: &|sect| (-sect.y, sect.z),
    };
    let (sweep, runs) = lay(line, &stand, &task.profiles);
    let solid = Solid::Swept(sweep);
    let hole = Mass {
        volume: if state.holed { task.hole_mm3 } else { 0.0 },
        ..Mass::default()
    };
    let mass = |run: &Laid| {
        if run.zone == BOSS {
            run.mass.without(hole)
        } else {
            run.mass
        }
    };
    runs.iter()
        .map(|run| told(task, (&solid, run), mass(run)))
        .collect()
}

/// Jaw and body of a half whose body is as it will be.
fn head(task: &Task<'_>, state: &State) -> Vec<(usize, Stretch)> {
    let body = [NECK, BOSS, SHOULDER].map(|zone| (zone, task.piece.stretches[zone].clone()));
    let mut all = if state.zones[JAW].shape == Shape::Finished {
        vec![(JAW, task.piece.stretches[JAW].clone())]
    } else {
        rough_jaw(task, state)
    };
    all.extend(body);
    all
}

/// A straight jaw where the finished one begins, told from its tip.
fn rough_jaw(task: &Task<'_>, state: &State) -> Vec<(usize, Stretch)> {
    let jaw = &task.half.jaw;
    let root = jaw.path.at(0.0);
    let (rise, shift) = (jaw.rise(0.0), jaw.shift(0.0));
    let tip_first = joined(task, &segments(task, state, (JAW, JAW)));
    let heel_first: Vec<Segment> = tip_first.iter().rev().map(Segment::turned).collect();
    let stand = Stand {
        start: root.at,
        heading: root.heading,
        offset: &|_| (rise, shift),
    };
    let (sweep, runs) = lay(&heel_first, &stand, &task.profiles);
    let solid = Solid::Swept(sweep);
    let back = runs.iter().map(|run| {
        let (zone, stretch) = told(task, (&solid, run), run.mass);
        let (from, to) = (stretch.to, stretch.from);
        (
            zone,
            Stretch {
                from,
                to,
                ..stretch
            },
        )
    });
    back.rev().collect()
}

/// Whether the rein is as the half has it: bent to its line, or straight and with nothing left to do.
fn is_finished(task: &Task<'_>, state: &State) -> bool {
    let zone = &state.zones[REIN];
    let spare = zone.scale + zone.spare + zone.kerf + state.zones[MORE].volume();
    let last = is_last(task, zone.shape) && !is_bent(&task.half.rein);
    zone.shape == Shape::Finished || (last && spare == 0.0)
}

/// Rein, and a tail if there is one, behind a body that is as it will be.
fn behind(task: &Task<'_>, state: &State) -> Vec<(usize, Stretch)> {
    if is_finished(task, state) {
        return vec![(REIN, task.piece.stretches[REIN].clone())];
    }
    let rein = &task.half.rein;
    let start = rein.path.at(0.0);
    let stand = Stand {
        start: start.at,
        heading: start.heading,
        offset: &|sect| (0.0, sect.z - task.bar.z),
    };
    let line = joined(task, &segments(task, state, (REIN, MORE)));
    let (sweep, runs) = lay(&line, &stand, &task.profiles);
    let solid = Solid::Swept(Arc::clone(&sweep));
    runs.iter()
        .map(|run| told(task, (&solid, run), run.mass))
        .collect()
}
