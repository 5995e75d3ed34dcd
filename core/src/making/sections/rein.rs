//! The rein: set down, drawn out, finished.

use crate::shape::sweep::{Ease, Station};
use crate::tongs::finish_length;

use super::super::blank::{BOX, OCTAGON, OWN, Sect, Segment};
use super::super::rules::spread_mm;
use super::super::state::{REIN, Shape, State, Task};
use super::head::set_down;
use super::rod::{stub, welded};
use super::way::by_octagon;

pub(super) fn rein(task: &Task<'_>, state: &State) -> Vec<Segment> {
    let zone = &state.zones[REIN];
    match zone.shape {
        Shape::SetDown => thinned(task, state),
        Shape::Stub => vec![stub(task, zone.volume())],
        Shape::Square
        | Shape::Octagon
        | Shape::Round
        | Shape::Gripped
        | Shape::Ended
        | Shape::Finished => drawn(task, state),
        Shape::Bar
        | Shape::Flattened
        | Shape::Necked
        | Shape::Twisted
        | Shape::Forged
        | Shape::Gathered => vec![Segment::prism(REIN, zone.volume(), task.bar)],
        Shape::Welded => welded(task, state),
    }
}

/// The third set-down: the rein's beginning thinned on the side away from the jaw's.
pub(in crate::making) fn rein_block(task: &Task<'_>) -> Sect {
    let (height, width) = task.squared();
    let depth = set_down(height, task.document.rein.start.depth_mm());
    Sect {
        depth,
        width: spread_mm((height, width), depth, task.bite()).middle(),
        y: task.kept_y(depth, task.set_downs.rein),
        z: task.base.z,
        profile: BOX,
    }
}

/// How far the third shoulder is carried along the rein, mm: one bar's thickness and a half.
pub(in crate::making) fn third_mm(task: &Task<'_>) -> f64 {
    1.5 * task.bar.depth
}

fn thinned(task: &Task<'_>, state: &State) -> Vec<Segment> {
    /// The most of the rein's steel that the third shoulder takes.
    const MOST: f64 = 0.3;
    let volume = state.zones[REIN].volume();
    let block = rein_block(task);
    let first = (block.depth * block.width * third_mm(task)).min(MOST * volume);
    vec![
        Segment::prism(REIN, first, block),
        Segment::prism(REIN, volume - first, task.bar),
    ]
}

/// The height at which a rein runs while it is straight.
fn rein_y(task: &Task<'_>, state: &State) -> f64 {
    if state.third { rein_block(task).y } else { 0.0 }
}

/// The rein drawn out straight: every stretch between two of its stations has that stretch's steel.
fn drawn(task: &Task<'_>, state: &State) -> Vec<Segment> {
    let (zone, rein) = (&state.zones[REIN], &task.half.rein);
    let shape = zone.shape;
    let stations = stations(task, shape);
    let pairs = stations.windows(2);
    let own: Vec<f64> = pairs
        .clone()
        .map(|pair| rein.volume_between(pair[0].at, pair[1].at))
        .collect();
    let share = (zone.finished + zone.scale) / own.iter().sum::<f64>();
    let (proud, y) = (zone.proud(), rein_y(task, state));
    let sect = |station: &Station| Sect {
        y,
        ..at_shape(task, shape, station).grown(proud)
    };
    let mut all: Vec<Segment> = pairs
        .zip(own)
        .map(|(pair, own)| Segment {
            zone: REIN,
            volume: share * own,
            from: sect(&pair[0]),
            to: sect(&pair[1]),
            ease: pair[0].ease,
        })
        .collect();
    let left = zone.spare + zone.kerf + zone.hole;
    if left > 0.0 {
        let end = all[all.len() - 1].to;
        all.push(Segment::prism(REIN, left, end));
    }
    all
}

/// The stations of the finished rein as far as they are made at a shape.
fn stations(task: &Task<'_>, shape: Shape) -> Vec<Station> {
    let rein = &task.half.rein;
    let asked = &task.document.rein;
    let grip = grip_grown(task);
    let end = (grip * asked.end.depth_mm(), grip * asked.end.width_mm());
    let ended = matches!(shape, Shape::Ended | Shape::Finished);
    let gripped = ended || shape == Shape::Gripped;
    let last = asked.length.mm() - finish_length(asked);
    let mut kept: Vec<Station> = rein.stations.clone();
    if !ended {
        kept.retain(|station| station.at <= last + 1e-6);
        let length = rein.length();
        if kept[kept.len() - 1].at < length - 1e-6 {
            let before = kept.len() - 1;
            kept[before].ease = Ease::Linear;
            kept.push(Station {
                at: length,
                ease: Ease::Linear,
                ..kept[before]
            });
        }
    }
    for station in &mut kept {
        if !gripped && station.profile == ZONE {
            (station.depth, station.width) = end;
            station.profile = END;
        }
    }
    kept
}

/// How many times as large as the rein's end the rein is left where the grip will be, both ways, so
/// that the steel of the grip is there when it is shaped.
fn grip_grown(task: &Task<'_>) -> f64 {
    let rein = &task.half.rein;
    let area = |profile: usize| {
        let own = rein
            .stations
            .iter()
            .find(|station| station.profile == profile);
        own.map(|own| rein.section(own.at).area_mm2())
    };
    if let (Some(zone), Some(end)) = (area(ZONE), area(END)) {
        (zone / end).sqrt()
    } else {
        1.0
    }
}

/// Places of the profiles of a rein: of its start, its end and its grip.
const END: usize = 1;
const ZONE: usize = 2;

/// What a station is at a shape on the way.
fn at_shape(task: &Task<'_>, shape: Shape, station: &Station) -> Sect {
    let rein = &task.document.rein;
    let asked = match station.profile {
        END => &rein.end,
        ZONE => rein
            .hand_zone
            .as_ref()
            .map_or(&rein.end, |zone| &zone.section),
        _ => &rein.start,
    };
    let profile = match shape {
        Shape::Square => BOX,
        Shape::Octagon if by_octagon(asked) => OCTAGON,
        Shape::Octagon => BOX,
        Shape::Bar
        | Shape::Flattened
        | Shape::Necked
        | Shape::SetDown
        | Shape::Twisted
        | Shape::Forged
        | Shape::Stub
        | Shape::Gathered
        | Shape::Welded
        | Shape::Round
        | Shape::Gripped
        | Shape::Ended
        | Shape::Finished => OWN + station.profile,
    };
    Sect {
        profile,
        ..task.square_at(station)
    }
}
