//! Jaw and boss.

use crate::shape::sweep::Ease;

use super::super::blank::{BOX, Sect, Segment};
use super::super::rules::spread_mm;
use super::super::state::{BOSS, JAW, Shape, State, Task};

/// How far a zone of the head has come.
enum Come {
    /// As the bar is, or the bar hammered flat.
    Plain,
    SetDown,
    Twisted,
    Forged,
}

fn come(shape: Shape) -> Come {
    match shape {
        Shape::SetDown => Come::SetDown,
        Shape::Twisted => Come::Twisted,
        Shape::Forged | Shape::Finished => Come::Forged,
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
        | Shape::Ended => Come::Plain,
    }
}

/// Less than this part of its height is not struck off in one set-down, nor more than leaves this
/// part (trade texts set jaws and bosses to between a half and three quarters of the bar).
const SET_DOWN: (f64, f64) = (0.45, 0.8);

/// A set-down from one height: to as much as is wanted, within reason.
pub(super) fn set_down(height: f64, wanted: f64) -> f64 {
    wanted.clamp(SET_DOWN.0 * height, SET_DOWN.1 * height)
}

/// The flat that a section of the jaw is shaped from: as long as its middle line, as thick as leaves
/// its area; depth and width, mm.
pub(in crate::making) fn unrolled(task: &Task<'_>, at: f64) -> (f64, f64) {
    let section = task.half.jaw.section(at);
    let area = section.area_mm2();
    let width = section.middle_line_mm().max(section.width);
    (area / width, width)
}

pub(super) fn jaw(task: &Task<'_>, state: &State) -> Vec<Segment> {
    let zone = &state.zones[JAW];
    let plain = |sect| vec![Segment::prism(JAW, zone.volume(), sect)];
    match come(zone.shape) {
        Come::Plain => plain(task.plain(zone.shape)),
        Come::SetDown => plain(jaw_block(task)),
        Come::Twisted => plain(Sect {
            depth: task.bar.width,
            width: task.bar.depth,
            ..task.bar
        }),
        Come::Forged => jaw_rough(task, state),
    }
}

/// The jaw after its set-down: one side of the bar kept, the other struck away.
pub(in crate::making) fn jaw_block(task: &Task<'_>) -> Sect {
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

/// Where a jaw's tip is not rounded yet, of its length (judgement).
pub(in crate::making) const BEFORE_TIP: f64 = 0.9;

/// The jaw as a straight flat that has the finished jaw's steel at every place along it.
fn jaw_rough(task: &Task<'_>, state: &State) -> Vec<Segment> {
    /// Places along the jaw: enough for a bit, a bow and a root.
    const PLACES: u32 = 6;
    let (zone, jaw) = (&state.zones[JAW], &task.half.jaw);
    let length = jaw.length();
    let at = |i: u32| length * (1.0 - f64::from(i) / f64::from(PLACES));
    // The tip is rounded last of all: what is roughed out is as stout to its end as it is before the rounding.
    let sect = |i: u32| {
        let (depth, width) = unrolled(task, at(i).min(BEFORE_TIP * length));
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

pub(super) fn boss(task: &Task<'_>, state: &State) -> Vec<Segment> {
    let zone = &state.zones[BOSS];
    let prism = |sect| vec![Segment::prism(BOSS, zone.volume(), sect)];
    match come(zone.shape) {
        Come::Plain | Come::Twisted => prism(task.plain(zone.shape)),
        Come::SetDown => prism(boss_slab(task)),
        Come::Forged => disc(task, state),
    }
}

/// The boss after its set-down: one face kept, the other struck away to the boss's thickness.
pub(in crate::making) fn boss_slab(task: &Task<'_>) -> Sect {
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
