//! A stage at full size as far as it was worked: what did not change since the stage before is left
//! out, so that several stages share a page.

use kurbo::{Point, Rect, Vec2};

use super::super::breaks::FAR;
use super::steel::place;
use super::{TEXT, lines, lines_up, views};
use crate::draw::breaks;
use crate::making::{Plan, Stage};
use crate::paper::sheet::{Weight, wrap};
use crate::paper::{Breaks, Drawing, Item, Stretch, View, bounds};
use crate::tongs::model::Model;
use crate::units::Show;

/// Shown to both sides of a place that is measured or struck, mm: as much as a hand needs to lay
/// the steel on it.
const AROUND: f64 = 22.0;
/// What is struck along more than this is shown at its ends and where it is measured, mm.
const LONG: f64 = 130.0;
/// The lines over a stage may be so wide at least, mm.
const WIDE: f64 = 95.0;

/// A stage of a plan as far as it was worked: side view and top view over the finished outline, what
/// was struck, what calipers are set to, and what to check. All of it is one group: it stays
/// together on its page. Nothing is drawn for a stage that is not there.
pub fn stage_at_work(model: &Model, plan: &Plan, at: usize, show: Show) -> Drawing {
    let Some(shown) = plan.stages.get(at) else {
        return Drawing::default();
    };
    let breaks = left_out(model, shown);
    let [side, top] = views(model.into(), shown, show).map(|view| breaks.of(view));
    let area = bounds(&side).unwrap_or(Rect::ZERO);
    let under = bounds(&top).unwrap_or(Rect::ZERO);
    let drop = Vec2::new(0.0, area.y0 - 2.0 * TEXT - under.y1);
    let room = area.width().max(WIDE);
    let words = lines(shown, at, show).into_iter();
    let words = words.flat_map(|line| wrap(&line, TEXT, Weight::Plain, room));
    let mut items = vec![
        Item::group("side", Vec2::ZERO, side),
        Item::group("top", drop, top),
    ];
    items.extend(lines_up(
        words.collect(),
        Point::new(area.x0, area.y1 + 2.0 * TEXT),
    ));
    Drawing {
        items: vec![Item::group("stage", Vec2::ZERO, items)],
    }
}

/// What of a stage is left out: all that is farther than [`AROUND`] from what was worked.
fn left_out(model: &Model, shown: &Stage) -> Breaks {
    let mut kept = kept(shown);
    kept.sort_by(|a, b| b.to.total_cmp(&a.to));
    let gap = breaks(model, 0.0).gap();
    let mut hidden = Vec::new();
    let mut reached = FAR + model.a.tip().max(model.b.tip());
    let end = model.a.rein_end().min(model.b.rein_end()) - FAR;
    let ends = Stretch { from: end, to: end };
    for next in kept.into_iter().chain([ends]) {
        if next.to < reached {
            hidden.push(Stretch {
                from: next.to,
                to: reached,
            });
        }
        reached = reached.min(next.from);
    }
    Breaks::new(hidden, gap)
}

/// What of a stage is shown, as stretches of x.
fn kept(shown: &Stage) -> Vec<Stretch> {
    let length = shown.piece.length_mm();
    let x = |along: f64| place(&shown.piece, along, View::Side).map(|at| at.middle.x);
    let around = |a: f64, b: f64| Stretch {
        from: a.min(b) - AROUND,
        to: a.max(b) + AROUND,
    };
    let (from, to) = match &shown.operation {
        Some(own) => own.struck_mm,
        None => (0.0, length),
    };
    let (Some(a), Some(b)) = (x(from), x(to)) else {
        return Vec::new();
    };
    let mut kept = if (a - b).abs() > LONG {
        vec![around(a, a), around(b, b)]
    } else {
        vec![around(a, b)]
    };
    let measured = shown.operation.iter().flat_map(|own| &own.calipers);
    let measured = measured.filter_map(|own| x(own.at_mm));
    kept.extend(measured.map(|at| around(at, at)));
    kept
}
