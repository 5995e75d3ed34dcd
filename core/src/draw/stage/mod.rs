//! A stage of the making, at its place over the ghost of the finished half.

mod at_work;
mod ground;
mod picture;
mod signs;
pub(super) mod steel;

use kurbo::{BezPath, Point, Rect, Vec2};

use crate::making::{Plan, Stage, Turning};
use crate::paper::{Align, Drawing, Item, Line, View, bounds};
use crate::shape::sweep::Edge;
use crate::tongs::model::{Half, Model};
use crate::units::Show;
pub use at_work::stage_at_work;
pub use ground::{Ground, ground, staged};
pub(super) use picture::picture;
use signs::Signs;
pub(super) use signs::turn_arrow;
use steel::{around, outlines, piece};

/// Text beside a stage, mm.
const TEXT: f64 = 3.5;

/// A stage of a plan: side view and top view of the piece where it lies over the finished outline,
/// what is hot for it, from which side it was struck and over which edge of the anvil, which way it
/// was turned, and the sizes to be measured. The first stage is 0, the bar. Nothing is drawn for a
/// stage that is not there.
pub fn stage<'a>(finished: impl Into<Finished<'a>>, plan: &Plan, at: usize, show: Show) -> Drawing {
    let finished = finished.into();
    let Some(shown) = plan.stages.get(at) else {
        return Drawing::default();
    };
    let [mut side, top] = views(finished, shown, show);
    if let Some(signs) = signs(shown, 1.0) {
        side.extend(signs.turn(signs.operation.held_at_mm));
    }
    let area = bounds(&side).unwrap_or(Rect::ZERO);
    let under = bounds(&top).unwrap_or(Rect::ZERO);
    let drop = Vec2::new(0.0, area.y0 - 2.0 * TEXT - under.y1);
    let mut items = vec![
        Item::view(View::Side, "side", Vec2::ZERO, side),
        Item::view(View::Top, "top", drop, top),
    ];
    let corner = Point::new(area.x0, area.y1 + 2.0 * TEXT);
    items.extend(lines_up(lines(shown, at, show), corner));
    Drawing { items }
}

/// Both views of a stage over the finished outline, with what calipers are set to.
fn views(finished: Finished<'_>, shown: &Stage, show: Show) -> [Vec<Item>; 2] {
    let [mut side, top] = [View::Side, View::Top].map(|view| {
        let mut items = view_of(shown, view, 1.0);
        items.extend(ghosts(finished, shown, view));
        items
    });
    if let Some(signs) = signs(shown, 1.0) {
        let low = bounds(&side).map_or(0.0, |area| area.y0 - 1.6 * TEXT);
        side.extend(signs.calipers((low, TEXT), show));
    }
    [side, top]
}

fn signs(shown: &Stage, mark: f64) -> Option<Signs<'_>> {
    let operation = shown.operation.as_ref()?;
    Some(Signs {
        piece: &shown.piece,
        operation,
        mark,
    })
}

/// One view of a stage with its signs so many times as large as on a drawing of full size, without
/// the turn, the finished outline and lettering.
fn view_of(shown: &Stage, view: View, mark: f64) -> Vec<Item> {
    let mut items = Vec::new();
    let signs = signs(shown, mark);
    if let Some(signs) = &signs {
        items.extend(signs.anvil(view));
    }
    items.extend(piece(&shown.piece, view));
    if let Some(signs) = &signs {
        items.extend(signs.hot(view));
    }
    items.extend(outlines(&shown.piece, view));
    if let Some(signs) = &signs {
        items.extend(signs.blows(view));
    }
    items
}

/// What the stages of a plan lead to.
#[derive(Debug, Clone, Copy)]
pub enum Finished<'a> {
    /// The halves of a pair.
    Pair(&'a Model),
    /// A tool.
    Tool(&'a crate::tool::Model),
}

impl<'a> From<&'a Model> for Finished<'a> {
    fn from(model: &'a Model) -> Self {
        Self::Pair(model)
    }
}

impl<'a> From<&'a crate::tool::Model> for Finished<'a> {
    fn from(model: &'a crate::tool::Model) -> Self {
        Self::Tool(model)
    }
}

/// The outline of what is to come in a view.
fn ghosts(finished: Finished<'_>, shown: &Stage, view: View) -> Vec<Item> {
    let ghosts = match finished {
        Finished::Pair(model) => {
            let half = if shown.half == 0 { &model.a } else { &model.b };
            match view {
                View::Side => vec![half.outline()],
                View::Top | View::End => top_ghost(half),
            }
        }
        Finished::Tool(model) => match view {
            View::Side => model.piece.side(),
            View::Top | View::End => model.piece.top(),
        },
    };
    ghosts.into_iter().map(ghost).collect()
}

fn ghost(path: BezPath) -> Item {
    Item::line(path, Line::Neighbour)
}

fn top_ghost(half: &Half) -> Vec<BezPath> {
    let [jaw, rein] = [&half.jaw, &half.rein]
        .map(|sweep| around(sweep, (0.0, sweep.length()), [Edge::Far, Edge::Near]));
    vec![jaw, half.body.plate.top(), rein]
}

/// What is written over a stage: what was done, what is hot for it, how to check it.
fn lines(shown: &Stage, at: usize, show: Show) -> Vec<String> {
    let mut lines = Vec::new();
    match &shown.operation {
        None => lines.push("0  the bar".to_owned()),
        Some(own) => {
            let turn = match own.turn {
                Turning::None => String::new(),
                turn => format!(", {}", turn.name()),
            };
            lines.push(format!("{at}  {}: {}{turn}", own.step, own.place.name()));
            if let Some((from, to)) = own.hot_mm {
                lines.push(format!(
                    "hot from {} to {} from the tip",
                    show.number(from),
                    show.text(to)
                ));
            }
            lines.push(format!("check: {}", own.check));
        }
    }
    lines
}

/// Lines of text, the last one on a base line.
fn lines_up(lines: Vec<String>, corner: Point) -> Vec<Item> {
    let count = lines.len();
    let line = |(i, text): (usize, String)| {
        #[allow(clippy::cast_precision_loss, reason = "a few lines")]
        let up = (count - 1 - i) as f64 * 1.5 * TEXT;
        Item::text(corner + Vec2::new(0.0, up), text, TEXT, Align::Start)
    };
    lines.into_iter().enumerate().map(line).collect()
}
