//! A stub, the rod that is welded to it, a handling tail.

use crate::shape::sweep::Ease;

use super::super::blank::{BOX, ROUND, Sect, Segment};
use super::super::state::{MORE, REIN, Shape, State, Task};

/// A stub drawn from the rein's first section to the rod's size.
pub(super) fn stub(task: &Task<'_>, volume: f64) -> Segment {
    Segment {
        zone: REIN,
        volume,
        from: task.square_at(&task.half.rein.stations[0]),
        to: Sect {
            profile: BOX,
            ..rod(task)
        },
        ease: Ease::Linear,
    }
}

/// A stub with its rod, as the weld leaves them.
pub(super) fn welded(task: &Task<'_>, state: &State) -> Vec<Segment> {
    let rein = &task.half.rein;
    let volume = state.zones[REIN].volume();
    let own = volume * rein.volume_between(0.0, stub_mm(task)) / rein.volume_mm3();
    vec![
        stub(task, own),
        Segment::prism(REIN, volume - own, rod(task)),
    ]
}

/// The rod for a welded rein, round, of the rein's own area where the stub ends.
pub(in crate::making) fn rod(task: &Task<'_>) -> Sect {
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
pub(in crate::making) fn stub_mm(task: &Task<'_>) -> f64 {
    const STUB: f64 = 3.5 * crate::units::MM_PER_INCH;
    STUB.min(task.half.rein.length() / 3.0)
}

/// A handling tail, or a rod with its end gathered or not.
pub(super) fn more(task: &Task<'_>, state: &State) -> Vec<Segment> {
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
