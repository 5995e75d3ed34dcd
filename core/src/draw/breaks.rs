//! Where long reins can be broken on the paper: in their plain stretches, so that the head is
//! drawn large and the rein ends still show.

use kurbo::Affine;

use super::views::work::near_end;
use crate::paper::{Breaks, Stretch};
use crate::shape::sweep::Edge;
use crate::tongs::model::{Half, Model};

/// Of the rein's depth at its start: what a break leaves between its lines.
const GAP: f64 = 0.4;
/// The least of that, mm.
const LEAST_GAP: f64 = 2.0;
/// In depths of the rein: what is shown to both sides of a place that is told of.
const AROUND: f64 = 0.4;
/// In depths of the rein: what is shown of its end.
const AT_END: f64 = 1.6;
/// A bend whose radius is more than so many depths of the rein is plain enough to be broken.
const FLAT: f64 = 25.0;

/// The stretches of a pair's reins that tell nothing and can be left out, with each half turned
/// by `opening` (radians) from the set pose. The start with its bends, the hand, every place where
/// a taper or a grip begins or ends, and what is bent, rolled or rounded at the end stay.
pub fn breaks(model: &Model, opening: f64) -> Breaks {
    let depth = model.a.rein.section(0.0).depth;
    let gap = (GAP * depth).max(LEAST_GAP);
    let mut told: Vec<Stretch> = [&model.a, &model.b]
        .into_iter()
        .flat_map(|half| told(half, opening))
        .collect();
    // Work that runs on past the boss is shown to its end.
    told.push(Stretch {
        from: near_end(model) - gap,
        to: f64::INFINITY,
    });
    told.sort_by(|a, b| b.to.total_cmp(&a.to));
    let mut hidden = Vec::new();
    let mut reached = f64::INFINITY;
    for next in told {
        if next.to < reached {
            hidden.push(Stretch {
                from: next.to,
                to: reached,
            });
        }
        reached = reached.min(next.from);
    }
    // Before the first told stretch there is the head.
    hidden.retain(|stretch| stretch.to.is_finite());
    Breaks::new(hidden, gap)
}

/// Past every end of a pair, mm: what is left out up to there is left out for good.
pub(super) const FAR: f64 = 500.0;

/// What is left out of a pair where only its head is wanted: the reins from where they run plain.
pub fn head_alone(model: &Model, opening: f64) -> Breaks {
    let whole = breaks(model, opening);
    let Some(first) = whole.stretches().next() else {
        return whole;
    };
    let end = model.a.rein_end().min(model.b.rein_end());
    let all = Stretch {
        from: end - FAR,
        to: first.to,
    };
    Breaks::new(vec![all], whole.gap())
}

/// What is left out where only the reins are wanted: all before they run plain.
pub fn rein_alone(model: &Model) -> Breaks {
    let whole = breaks(model, 0.0);
    let Some(first) = whole.stretches().next() else {
        return whole;
    };
    let tip = model.a.tip().max(model.b.tip());
    let all = Stretch {
        from: first.to - whole.gap(),
        to: tip + FAR,
    };
    Breaks::new(vec![all], whole.gap())
}

/// The stretches of x that a half's rein must be shown in.
fn told(half: &Half, opening: f64) -> Vec<Stretch> {
    let (rein, length) = (&half.rein, half.rein.length());
    let depth = rein.section(0.0).depth;
    let near = |at: f64| (at - AROUND * depth, at + AROUND * depth);
    let mut kept = vec![
        (0.0, bent_to(half) + AROUND * depth),
        (half.bent_from() - AT_END * depth, length),
        near(half.hand_at),
    ];
    let between = |at: &f64| *at > 0.0 && *at < length;
    kept.extend(rein.stations.iter().map(|s| s.at).filter(between).map(near));
    let on_rein = kept
        .into_iter()
        .map(|(from, to)| (from.max(0.0), to.min(length)));
    let mut told: Vec<Stretch> = on_rein.map(|part| reach(half, part, opening)).collect();
    // All before the rein's start is the head's.
    told[0].to = f64::INFINITY;
    told
}

/// Where the last bend before the hand ends that is more than a swell, mm along the rein.
fn bent_to(half: &Half) -> f64 {
    let tightest = 1.0 / (FLAT * half.rein.section(0.0).depth);
    let (mut at, mut to) = (0.0, 0.0);
    for run in half.rein.path.runs() {
        at += run.length;
        if run.curvature.abs() > tightest && at < half.hand_at {
            to = at;
        }
    }
    to
}

/// The x that a part of a half's rein covers, in the side view opened so far and in the top view.
fn reach(half: &Half, (from, to): (f64, f64), opening: f64) -> Stretch {
    const PARTS: u32 = 12;
    let places = (0..=PARTS).map(|i| from + (to - from) * f64::from(i) / f64::from(PARTS));
    let turn = Affine::rotate(opening);
    let points =
        places.flat_map(|s| [Edge::Inner, Edge::Outer].map(|e| half.rein.edge_point(e, s)));
    let xs = points.flat_map(|p| [p.x, (turn * p).x]);
    let none = Stretch {
        from: f64::INFINITY,
        to: f64::NEG_INFINITY,
    };
    xs.fold(none, |all, x| Stretch {
        from: all.from.min(x),
        to: all.to.max(x),
    })
}
