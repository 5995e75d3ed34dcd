//! The sections of each zone at each stage.

mod head;
mod rein;
mod rod;
mod way;

use crate::shape::sweep::Ease;

use super::blank::{Sect, Segment, shouldered};
use super::state::{NECK, SHOULDER, Shape, State, Task};
pub(super) use head::{BEFORE_TIP, boss_slab, jaw_block, unrolled};
use head::{boss, jaw};
use rein::rein;
pub(super) use rein::{rein_block, third_mm};
use rod::more;
pub(super) use rod::{rod, stub_mm};
pub(super) use way::{by_octagon, done_at};

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
