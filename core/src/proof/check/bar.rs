//! Whether the bar can give every section.

use super::Check;
use crate::finding::{GEOMETRY, Kind, Part};
use crate::forge::spreading::{MOST_SPREAD, SPREAD_SOURCE, widest_mm};
use crate::shape::section::Section;
use crate::shape::sweep::Sweep;
use crate::tongs::model::Half;
use crate::units::Quantity;

/// How much larger than the bar a section may be before it counts as upset: a smith's eye and a
/// bar's own tolerance are no finer.
const UPSET_FROM: f64 = 1.03;

/// A section that fills more of its box than this was spread as flat bar is; a round fills 0.785
/// (geometry).
const BOXY: f64 = 0.75;

/// A section of a part, mm.
#[derive(Debug, Clone, Copy)]
struct Cut {
    depth: f64,
    width: f64,
    area: f64,
    /// Whether it fills its box nearly, so that depth and width say how it was spread.
    boxy: bool,
}

impl Cut {
    fn of(section: &Section<'_>) -> Self {
        Self {
            depth: section.depth,
            width: section.width,
            area: section.area_mm2(),
            boxy: section.fullness() > BOXY,
        }
    }
}

pub(super) fn check(check: &mut Check<'_>) {
    for (part, cuts) in cuts(check) {
        upset(check, part, &cuts);
        // Around the boss, thick metal on both sides keeps the bar from lengthening, so that it
        // spreads more than any law for plain drawing out says.
        if matches!(part, Part::Jaw | Part::SecondJaw | Part::Rein) {
            spread(check, part, &cuts);
        }
    }
}

/// The sections of every part, as far as each can be the largest.
fn cuts(check: &Check<'_>) -> Vec<(Part, Vec<Cut>)> {
    let mut all: Vec<(Part, Vec<Cut>)> = check
        .jaws()
        .into_iter()
        .map(|(part, _, half)| (part, along(&half.jaw)))
        .collect();
    let halves = check.halves();
    all.push((
        Part::Neck,
        halves.iter().flat_map(|half| neck(half)).collect(),
    ));
    let boss = &check.document.boss;
    let (depth, width) = (boss.across.mm(), boss.thickness.mm());
    let area = depth * width;
    let boxy = true;
    all.push((
        Part::Boss,
        vec![Cut {
            depth,
            width,
            area,
            boxy,
        }],
    ));
    all.push((Part::Shoulder, shoulder(&check.model.a)));
    all.push((Part::Rein, along(&check.model.a.rein)));
    all
}

fn along(sweep: &Sweep) -> Vec<Cut> {
    let at = sweep.stations.iter().map(|station| station.at);
    at.map(|s| Cut::of(&sweep.section(s))).collect()
}

const PLACES: u32 = 8;

fn places() -> impl Iterator<Item = f64> {
    (0..=PLACES).map(|i| f64::from(i) / f64::from(PLACES))
}

fn limb_cut(half: &Half, depth: f64, x: f64) -> Cut {
    let (low, high) = half.body.plate.faces.at(x);
    let width = high - low;
    Cut {
        depth,
        width,
        area: depth * half.body.plate.faces.full_thickness(x),
        boxy: true,
    }
}

fn neck(half: &Half) -> Vec<Cut> {
    let neck = &half.body.neck;
    let at = |t: f64| {
        limb_cut(
            half,
            neck.depth_at(t),
            neck.inner_at(t).midpoint(neck.outer_at(t)).x,
        )
    };
    places().map(at).collect()
}

fn shoulder(half: &Half) -> Vec<Cut> {
    let limb = &half.body.shoulder;
    let at = |t: f64| {
        limb_cut(
            half,
            limb.depth_at(t),
            -limb.inner_at(t).midpoint(limb.outer_at(t)).x,
        )
    };
    places().map(at).collect()
}

/// Sections larger than the bar must be upset.
fn upset(check: &mut Check<'_>, part: Part, cuts: &[Cut]) {
    let bar = check.document.bar.stock.area_mm2();
    let Some(largest) = cuts.iter().max_by(|a, b| a.area.total_cmp(&b.area)) else {
        return;
    };
    let ratio = largest.area / bar;
    if ratio <= UPSET_FROM {
        return;
    }
    let message = format!(
        "the {part} has a section of {} ({} x {}), {ratio:.2} times the bar's {}",
        check.report.show().area(largest.area),
        check.size(largest.depth),
        check.size(largest.width),
        check.report.show().area(bar),
    );
    let side = check.size(largest.area.sqrt());
    let hint = format!("upset the bar there, make the {part} smaller, or start from {side} square");
    check
        .report
        .mend(Kind::NeedsUpsetting, part)
        .held_as(Quantity::Area, largest.area, bar)
        .say(message, hint, GEOMETRY);
}

/// Sections wider than the bar must be spread while they are thinned.
fn spread(check: &mut Check<'_>, part: Part, cuts: &[Cut]) {
    let stock = &check.document.bar.stock;
    let (thick, wide) = (stock.size().mm().min(stock.wide_mm()), stock.wide_mm());
    let need = |cut: &Cut| {
        let (small, large) = (cut.depth.min(cut.width), cut.depth.max(cut.width));
        let thinned = small < thick && cut.boxy && cut.area <= UPSET_FROM * stock.area_mm2();
        (thinned && large > wide).then(|| (large / wide).ln() / (thick / small).ln())
    };
    let most = cuts.iter().filter_map(|cut| Some((need(cut)?, *cut)));
    let Some((need, cut)) = most.max_by(|a, b| a.0.total_cmp(&b.0)) else {
        return;
    };
    if need <= MOST_SPREAD {
        return;
    }
    let (small, large) = (cut.depth.min(cut.width), cut.depth.max(cut.width));
    let reach = widest_mm((thick, wide), small);
    let message = format!(
        "the {part} is {} wide where it is {} thick; even in long bites plain blows spread this bar to about {} at the most",
        check.size(large),
        check.size(small),
        check.size(reach).trim_start_matches('~'),
    );
    let hint = "spread it across with the peen, upset a little first, or make it narrower";
    check
        .report
        .note(Kind::NeedsSpreading, part)
        .held(large, reach)
        .say(message, hint, SPREAD_SOURCE);
}
