//! Work that is called by a name, in the sizes of the published tables.
//!
//! A document holds the sizes, never the name alone: it stands without these tables, and a name is
//! found again from the sizes. Changing one of them takes the name away.

pub(crate) mod bolts;
pub(crate) mod pipes;
pub(crate) mod rebar;

use super::choice::Choice;
use super::work::{BoltHeld, HexagonOf, Lie, RoundOf, Work};
use crate::units::{Length, Unit};
use bolts::Fastener;

/// Sizes nearer than this are the same, mm: half a hundredth is under any tolerance of these tables.
const SAME: f64 = 5e-3;

fn same(a: Length, b: Length) -> bool {
    (a.mm() - b.mm()).abs() < SAME
}

/// What work is called without its kind, such as `M16`, `DN 25` or `#5`; `None` where no table has
/// these sizes.
pub(crate) fn name(work: &Work) -> Option<String> {
    match *work {
        Work::Round { diameter, of } => match of {
            RoundOf::Bar => None,
            RoundOf::Pipe { wall } => pipes::name(diameter, wall),
            RoundOf::Rebar { ribs } => rebar::name(diameter, ribs),
            RoundOf::BoltShank { flats, height, .. } => {
                let is = |it: &Fastener| same(it.flats, flats) && same(it.height, height);
                bolts::named(bolts::bolts(), |it| same(it.thread, diameter) && is(it))
            }
        },
        Work::Hexagon { flats, of, .. } => match of {
            HexagonOf::Bar => None,
            HexagonOf::BoltHead { height, shank } => bolts::named(bolts::bolts(), |it| {
                same(it.flats, flats) && same(it.height, height) && same(it.thread, shank)
            }),
            HexagonOf::Nut { height, hole } => bolts::named(bolts::nuts(), |it| {
                same(it.flats, flats) && same(it.height, height) && same(it.thread, hole)
            }),
        },
        Work::Flat { .. } | Work::Square { .. } | Work::Octagon { .. } => None,
    }
}

/// A published bolt or nut of the size that is held, in place of one that only has that size.
pub(crate) fn like(work: &Work) -> Option<Work> {
    let unit = work.size().unit();
    let held = |it: &Fastener| match work {
        Work::Round { .. } => it.thread,
        Work::Flat { .. } | Work::Square { .. } | Work::Hexagon { .. } | Work::Octagon { .. } => {
            it.flats
        }
    };
    let all = match work.way() {
        "bolt" => bolts::bolts(),
        "nut" => bolts::nuts(),
        _ => return None,
    };
    let mut fit = all.into_iter().filter(|it| same(held(it), work.size()));
    let found = fit.next()?;
    let found = [found]
        .into_iter()
        .chain(fit)
        .find(|it| it.thread.unit() == unit)
        .unwrap_or(found);
    Some(match (work.bolt_held(), work.lies()) {
        (Some(held), lie) => {
            let mut bolt = bolt(found);
            bolt.hold_bolt(held);
            bolt.lay(lie.unwrap_or_default());
            bolt
        }
        (None, lie) => nut(found, lie.unwrap_or_default()),
    })
}

/// A bolt held by its head.
pub(crate) fn bolt(it: Fastener) -> Work {
    Work::Hexagon {
        flats: it.flats,
        lie: Lie::OnFlats,
        of: HexagonOf::BoltHead {
            height: it.height,
            shank: it.thread,
        },
    }
}

/// A nut.
pub(crate) fn nut(it: Fastener, lie: Lie) -> Work {
    Work::Hexagon {
        flats: it.flats,
        lie,
        of: HexagonOf::Nut {
            height: it.height,
            hole: it.thread,
        },
    }
}

/// The published bolt that is nearest to some work: a hexagon is taken for its head, all other work
/// for its shank.
pub(crate) fn nearest_bolt(work: &Work) -> Work {
    let mut found = bolt(nearest(bolts::bolts(), work));
    if !matches!(work, Work::Hexagon { .. }) {
        found.hold_bolt(BoltHeld::BehindHead);
    }
    found.lay(work.lies().unwrap_or_default());
    found
}

/// The published nut that is nearest to some work: a hexagon is taken for it, all other work for
/// its thread.
pub(crate) fn nearest_nut(work: &Work) -> Work {
    nut(
        nearest(bolts::nuts(), work),
        work.lies().unwrap_or_default(),
    )
}

fn nearest(all: Vec<Fastener>, work: &Work) -> Fastener {
    let is_inch = |length: Length| matches!(length.unit(), Unit::Inch | Unit::Foot);
    let off = |it: &Fastener| {
        let size = match work {
            Work::Hexagon { .. } => it.flats,
            Work::Flat { .. } | Work::Round { .. } | Work::Square { .. } | Work::Octagon { .. } => {
                it.thread
            }
        };
        (size.mm() - work.size().mm()).abs()
    };
    let of_unit = all
        .into_iter()
        .filter(|it| is_inch(it.thread) == is_inch(work.size()));
    of_unit
        .min_by(|a, b| off(a).total_cmp(&off(b)))
        .expect("both tables have rows in both units")
}
