//! The sections of each zone at each stage.

use crate::asked::PlainSection;
use crate::shape::sweep::{Ease, Station};
use crate::tongs::finish_length;

use super::blank::{BOX, OCTAGON, OWN, ROUND, Sect, Segment, shouldered};
use super::rules::spread_mm;
use super::state::{BOSS, JAW, MORE, NECK, REIN, SHOULDER, Shape, State, Task};

/// Less than this part of its height is not struck off in one set-down, nor more than leaves this
/// part (trade texts set jaws and bosses to between a half and three quarters of the bar).
const SET_DOWN: (f64, f64) = (0.45, 0.8);

/// A set-down from one height: to as much as is wanted, within reason.
fn set_down(height: f64, wanted: f64) -> f64 {
    wanted.clamp(SET_DOWN.0 * height, SET_DOWN.1 * height)
}

/// Everything of one half that is not yet as the half has it, from tip to rein end, with shoulders
/// between; of the zones from `first` to `last`.
pub(super) fn segments(
    task: &Task<'_>,
    state: &State,
    (first, last): (usize, usize),
) -> Vec<Segment> {
    let jaw = jaw(task, state);
    let boss = boss(task, state);
    let rein = rein(task, state);
    let [jaw_end, boss_start] = [jaw[jaw.len() - 1].to, boss[0].from];
    let [boss_end, rein_start] = [boss[boss.len() - 1].to, rein[0].from];
    let neck = between(task, state, NECK, (jaw_end, boss_start));
    let shoulder = between(task, state, SHOULDER, (boss_end, rein_start));
    let more = more(task, state);
    let all = [jaw, neck, boss, shoulder, rein, more].concat();
    all.into_iter()
        .filter(|segment| (first..=last).contains(&segment.zone) && segment.volume > 0.0)
        .collect()
}

/// Shoulders between stretches that do not meet.
pub(super) fn joined(task: &Task<'_>, segments: &[Segment]) -> Vec<Segment> {
    shouldered(segments, task.radius, &task.profiles)
}

/// The flat that a section of the jaw is shaped from: as long as its middle line, as thick as leaves
/// its area; depth and width, mm.
pub(super) fn unrolled(task: &Task<'_>, at: f64) -> (f64, f64) {
    let section = task.half.jaw.section(at);
    let area = section.area_mm2();
    let width = section.middle_line_mm().max(section.width);
    (area / width, width)
}

fn jaw(task: &Task<'_>, state: &State) -> Vec<Segment> {
    let zone = &state.zones[JAW];
    let plain = |sect| vec![Segment::prism(JAW, zone.volume(), sect)];
    match zone.shape {
        Shape::SetDown => plain(jaw_block(task)),
        Shape::Twisted => plain(Sect {
            depth: task.bar.width,
            width: task.bar.depth,
            ..task.bar
        }),
        Shape::Forged | Shape::Finished => jaw_rough(task, state),
        Shape::Bar
        | Shape::Flattened
        | Shape::Necked
        | Shape::Stub
        | Shape::Gathered
        | Shape::Welded
        | Shape::Square
        | Shape::Octagon
        | Shape::Round
        | Shape::Gripped
        | Shape::Ended => plain(task.plain(zone.shape)),
    }
}

/// The jaw after its set-down: the bar's back kept, its inside struck away.
pub(super) fn jaw_block(task: &Task<'_>) -> Sect {
    let (height, width) = task.squared();
    let depth = set_down(height, unrolled(task, 0.0).0);
    Sect {
        depth,
        width: spread_mm((height, width), depth, task.bite()).middle(),
        y: task.kept_y(depth, task.set_downs.jaw),
        z: task.base.z,
        profile: BOX,
    }
}

/// The jaw as a straight flat that has the finished jaw's steel at every place along it.
fn jaw_rough(task: &Task<'_>, state: &State) -> Vec<Segment> {
    /// Places along the jaw: enough for a bit, a bow and a root.
    const PLACES: u32 = 6;
    let (zone, jaw) = (&state.zones[JAW], &task.half.jaw);
    let length = jaw.length();
    let at = |i: u32| length * (1.0 - f64::from(i) / f64::from(PLACES));
    let sect = |i: u32| {
        let (depth, width) = unrolled(task, at(i));
        let sect = Sect {
            depth,
            width,
            y: 0.0,
            z: task.base.z,
            profile: BOX,
        };
        let sect = sect.grown(zone.proud());
        Sect {
            y: task.kept_y(sect.depth, task.set_downs.jaw),
            ..sect
        }
    };
    let own: Vec<f64> = (0..PLACES)
        .map(|i| jaw.volume_between(at(i + 1), at(i)))
        .collect();
    let share = (zone.finished + zone.scale) / own.iter().sum::<f64>();
    let mut all: Vec<Segment> = (0..PLACES)
        .zip(own)
        .map(|(i, own)| Segment {
            zone: JAW,
            volume: share * own,
            from: sect(i),
            to: sect(i + 1),
            ease: Ease::Linear,
        })
        .collect();
    // What is to be cut off and filed stands at the tip.
    if zone.spare > 0.0 {
        all.insert(0, Segment::prism(JAW, zone.spare, all[0].from));
    }
    all
}

fn boss(task: &Task<'_>, state: &State) -> Vec<Segment> {
    let zone = &state.zones[BOSS];
    match zone.shape {
        Shape::SetDown => vec![Segment::prism(BOSS, zone.volume(), boss_slab(task))],
        Shape::Forged | Shape::Finished => disc(task, state),
        Shape::Bar
        | Shape::Flattened
        | Shape::Necked
        | Shape::Twisted
        | Shape::Stub
        | Shape::Gathered
        | Shape::Welded
        | Shape::Square
        | Shape::Octagon
        | Shape::Round
        | Shape::Gripped
        | Shape::Ended => vec![Segment::prism(BOSS, zone.volume(), task.plain(zone.shape))],
    }
}

/// The boss after its set-down: one face kept, the other struck away to the boss's thickness.
pub(super) fn boss_slab(task: &Task<'_>) -> Sect {
    let (height, width) = task.squared();
    let thickness = task.document.boss.thickness.mm().min(width);
    Sect {
        depth: spread_mm((width, height), thickness, task.bite()).middle(),
        width: thickness,
        y: 0.0,
        z: thickness / 2.0,
        profile: BOX,
    }
}

/// The boss flat and round, with its hole or without: a disc between neck and shoulder.
fn disc(task: &Task<'_>, state: &State) -> Vec<Segment> {
    let (zone, document) = (&state.zones[BOSS], task.document);
    let hole = if state.holed { task.hole_mm3 } else { 0.0 };
    let solid = zone.volume() + hole;
    // Before it is punched it is smaller all round.
    let size = (solid / (zone.finished + task.hole_mm3)).sqrt();
    let thickness = document.boss.thickness.mm();
    let sect = |depth: f64| Sect {
        depth,
        width: thickness,
        y: 0.0,
        z: thickness / 2.0,
        profile: BOX,
    };
    let across = size * document.boss.across.mm();
    let limb = |depth: f64| sect(depth.min(0.9 * across));
    let half = |from, to, ease| Segment {
        zone: BOSS,
        volume: solid / 2.0,
        from,
        to,
        ease,
    };
    vec![
        half(limb(document.neck.depth.mm()), sect(across), Ease::RoundUp),
        half(
            sect(across),
            limb(document.shoulder.depth.mm()),
            Ease::RoundDown,
        ),
    ]
}

/// Neck or shoulder: plain bar, or what leads from one neighbour to the other.
fn between(task: &Task<'_>, state: &State, at: usize, (from, to): (Sect, Sect)) -> Vec<Segment> {
    let zone = &state.zones[at];
    let half = |from, to| Segment {
        zone: at,
        volume: zone.volume() / 2.0,
        from,
        to,
        ease: Ease::Smooth,
    };
    match zone.shape {
        Shape::Necked => {
            /// What notches from both edges leave of the width (trade texts: about half).
            const LEFT: f64 = 0.6;
            let slim = Sect {
                depth: LEFT * task.bar.depth,
                ..task.bar
            };
            vec![half(from, slim), half(slim, to)]
        }
        Shape::SetDown | Shape::Twisted | Shape::Forged | Shape::Finished => vec![Segment {
            volume: zone.volume(),
            ..half(from, to)
        }],
        Shape::Bar
        | Shape::Flattened
        | Shape::Stub
        | Shape::Gathered
        | Shape::Welded
        | Shape::Square
        | Shape::Octagon
        | Shape::Round
        | Shape::Gripped
        | Shape::Ended => vec![Segment::prism(at, zone.volume(), task.plain(zone.shape))],
    }
}

fn rein(task: &Task<'_>, state: &State) -> Vec<Segment> {
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

/// A stub drawn from the rein's first section to the rod's size.
fn stub(task: &Task<'_>, volume: f64) -> Segment {
    Segment {
        zone: REIN,
        volume,
        from: square_of(&task.half.rein.stations[0], task),
        to: Sect {
            profile: BOX,
            ..rod(task)
        },
        ease: Ease::Linear,
    }
}

/// A stub with its rod, as the weld leaves them.
fn welded(task: &Task<'_>, state: &State) -> Vec<Segment> {
    let rein = &task.half.rein;
    let volume = state.zones[REIN].volume();
    let own = volume * rein.volume_between(0.0, stub_mm(task)) / rein.volume_mm3();
    vec![
        stub(task, own),
        Segment::prism(REIN, volume - own, rod(task)),
    ]
}

/// The third set-down: the rein's beginning thinned on the side away from the jaw's.
pub(super) fn rein_block(task: &Task<'_>) -> Sect {
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
pub(super) fn third_mm(task: &Task<'_>) -> f64 {
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

fn square_of(station: &Station, task: &Task<'_>) -> Sect {
    Sect {
        depth: station.depth,
        width: station.width,
        y: 0.0,
        z: task.bar.z,
        profile: BOX,
    }
}

/// At which step a plain section is done.
pub(super) fn done_at(section: &PlainSection) -> Shape {
    match section {
        PlainSection::Square { edge, .. } | PlainSection::Rectangle { edge, .. } => {
            if edge.size().mm() > 0.0 {
                Shape::Round
            } else {
                Shape::Square
            }
        }
        PlainSection::Octagon { .. } => Shape::Octagon,
        PlainSection::Round { .. }
        | PlainSection::Oval { .. }
        | PlainSection::Hexagon { .. }
        | PlainSection::HalfRound { .. } => Shape::Round,
    }
}

/// Whether a section is made by way of an octagon.
pub(super) fn by_octagon(section: &PlainSection) -> bool {
    match section {
        PlainSection::Round { .. } | PlainSection::Oval { .. } | PlainSection::Octagon { .. } => {
            true
        }
        PlainSection::Square { .. }
        | PlainSection::Rectangle { .. }
        | PlainSection::Hexagon { .. }
        | PlainSection::HalfRound { .. } => false,
    }
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
    match (area(ZONE), area(END)) {
        (Some(zone), Some(end)) => (zone / end).sqrt(),
        (Some(_) | None, _) => 1.0,
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
        ..square_of(station, task)
    }
}

/// The rod for a welded rein, round, of the rein's own area where the stub ends.
pub(super) fn rod(task: &Task<'_>) -> Sect {
    let area = task.half.rein.section(stub_mm(task)).area_mm2();
    let diameter = (area / std::f64::consts::FRAC_PI_4).sqrt();
    Sect {
        depth: diameter,
        width: diameter,
        y: 0.0,
        z: task.bar.z,
        profile: ROUND,
    }
}

/// How far along the finished rein its stub reaches, mm: 3 1/2 in (common practice, no source: 3 to
/// 4 in), and no more than a third.
pub(super) fn stub_mm(task: &Task<'_>) -> f64 {
    const STUB: f64 = 3.5 * crate::units::MM_PER_INCH;
    STUB.min(task.half.rein.length() / 3.0)
}

/// A handling tail, or a rod with its end gathered or not.
fn more(task: &Task<'_>, state: &State) -> Vec<Segment> {
    let volume = state.zones[MORE].volume();
    if !state.apart {
        return vec![Segment::prism(MORE, volume, task.bar)];
    }
    let plain = rod(task);
    if state.zones[MORE].shape != Shape::Gathered {
        return vec![Segment::prism(MORE, volume, plain)];
    }
    /// An upset end that is scarfed stands so much thicker (common practice, no source).
    const THICKER: f64 = 1.2;
    let thick = plain.grown(THICKER);
    let end = (plain.depth * thick.area(&task.profiles)).min(volume / 3.0);
    vec![
        Segment::prism(MORE, end, thick),
        Segment {
            zone: MORE,
            volume: end,
            from: thick,
            to: plain,
            ease: Ease::Smooth,
        },
        Segment::prism(MORE, volume - 2.0 * end, plain),
    ]
}
