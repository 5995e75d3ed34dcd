//! A stage of the making, at its place over the ghost of the finished half.

use kurbo::{BezPath, Point, Rect, Shape, Vec2};

use super::views;
use crate::making::{Operation, Plan, Stage, Turning};
use crate::number::plane::sides;
use crate::paper::dimension::segment;
use crate::paper::{Align, Drawing, Fill, Item, Line, View, bounds};
use crate::shape::sweep::{Edge, Sweep};
use crate::shape::{Piece, Plate, Solid, Stretch};
use crate::tongs::model::{Half, Model};
use crate::units::Show;

/// Text beside a stage, mm.
const TEXT: f64 = 3.5;

/// A stage of a plan: side view and top view of the piece where it lies over the finished outline,
/// what was struck, which way it was turned, and what is hot for it. The first stage is 0, the bar.
/// Nothing is drawn for a stage that is not there.
pub fn stage(model: &Model, plan: &Plan, at: usize, show: Show) -> Drawing {
    let Some(shown) = plan.stages.get(at) else {
        return Drawing::default();
    };
    let half = of_half(model, shown.half);
    let mut side = piece(&shown.piece, View::Side);
    side.push(ghost(side_ghost(half)));
    let mut top = piece(&shown.piece, View::Top);
    top.extend(top_ghost(half).into_iter().map(ghost));
    if let Some(operation) = &shown.operation {
        side.extend(struck(shown, operation, TEXT));
    }
    let area = bounds(&side).unwrap_or(Rect::ZERO);
    let under = bounds(&top).unwrap_or(Rect::ZERO);
    let drop = Vec2::new(0.0, area.y0 - 2.0 * TEXT - under.y1);
    let mut items = vec![
        Item::view(View::Side, "side", Vec2::ZERO, side),
        Item::view(View::Top, "top", drop, top),
    ];
    items.extend(lettering(
        shown,
        (at, show),
        Point::new(area.x0, area.y1 + 2.0 * TEXT),
    ));
    Drawing { items }
}

/// The half that a stage is of.
pub(super) fn of_half(model: &Model, half: usize) -> &Half {
    if half == 0 { &model.a } else { &model.b }
}

pub(super) fn ghost(path: BezPath) -> Item {
    Item::line(path, Line::Neighbour)
}

pub(super) fn side_ghost(half: &Half) -> BezPath {
    half.outline()
}

pub(super) fn top_ghost(half: &Half) -> Vec<BezPath> {
    let [jaw, rein] = [&half.jaw, &half.rein]
        .map(|sweep| around(sweep, (0.0, sweep.length()), [Edge::Far, Edge::Near]));
    vec![jaw, half.body.plate.top(), rein]
}

/// A piece in a view: its parts in their colours, then its outline.
pub(super) fn piece(piece: &Piece, view: View) -> Vec<Item> {
    let fills = piece.stretches.iter().map(|stretch| {
        let fill = Item::fill(area(stretch, view), Fill::Part(stretch.part));
        fill.of(stretch.part)
    });
    let outlines = match view {
        View::Side => piece.side(),
        View::Top | View::End => piece.top(),
    };
    let lines = outlines
        .into_iter()
        .map(|path| Item::line(path, Line::Outline));
    let mut items: Vec<Item> = fills.chain(lines).collect();
    if view == View::Side {
        for hole in &piece.holes {
            let circle = kurbo::Circle::new(Point::ORIGIN, hole.diameter_mm / 2.0).to_path(0.01);
            items.push(Item::fill(circle.clone(), Fill::Paper));
            items.push(Item::line(circle, Line::Outline));
        }
    }
    items
}

/// What a stretch covers in a view.
pub(super) fn area(stretch: &Stretch, view: View) -> BezPath {
    let (from, to) = (stretch.from, stretch.to);
    match (&stretch.solid, view) {
        (Solid::Swept(sweep), View::Side) => around(sweep, (from, to), [Edge::Outer, Edge::Inner]),
        (Solid::Swept(sweep), View::Top | View::End) => {
            around(sweep, (from, to), [Edge::Far, Edge::Near])
        }
        (Solid::Plated(plate), view) => slice(plate, stretch, view),
    }
}

fn slice(plate: &Plate, stretch: &Stretch, view: View) -> BezPath {
    /// Past every end: the ends of neck and shoulder lean.
    const FAR: f64 = 1e5;
    let (low, high) = (stretch.from.min(stretch.to), stretch.from.max(stretch.to));
    let (low, high) = match (low > 0.0, high < 0.0) {
        (true, _) => (low, FAR),
        (false, true) => (-FAR, high),
        (false, false) => (low, high),
    };
    let path = match view {
        View::Side => plate.path(),
        View::Top | View::End => plate.top(),
    };
    let points: Vec<Point> = sides(&path).into_iter().map(|(a, _)| a).collect();
    views::slice(&points, low, high)
}

/// A stretch of a sweep between two of its silhouettes, closed.
fn around(sweep: &Sweep, (from, to): (f64, f64), [there, back]: [Edge; 2]) -> BezPath {
    let mut path = sweep.edge(there, from, to);
    for el in sweep.edge(back, to, from).iter() {
        match el {
            kurbo::PathEl::MoveTo(p) => path.line_to(p),
            el => path.push(el),
        }
    }
    path.close_path();
    path
}

/// The middle of a piece so far along it, in the side view, and half its depth there.
pub(super) fn place(piece: &Piece, along_mm: f64) -> Option<(Point, f64)> {
    let mut rest = along_mm;
    let found = piece.stretches.iter().find(|stretch| {
        let inside = rest <= stretch.length_mm();
        if !inside {
            rest -= stretch.length_mm();
        }
        inside
    });
    let stretch = found.or(piece.stretches.last())?;
    let own = stretch.from
        + rest
            .min(stretch.length_mm())
            .copysign(stretch.to - stretch.from);
    match &stretch.solid {
        Solid::Swept(sweep) => Some((sweep.middle(own), sweep.section(own).depth / 2.0)),
        Solid::Plated(plate) => {
            let steel = plate.steel_at(own);
            let (low, high) = (steel.first()?.0, steel.last()?.1);
            Some((
                Point::new(own, f64::midpoint(low, high)),
                (high - low) / 2.0,
            ))
        }
    }
}

/// The middle of a piece so far along it, along the rivet, mm.
pub(super) fn across(piece: &Piece, along_mm: f64) -> f64 {
    let mut rest = along_mm;
    for stretch in &piece.stretches {
        if rest <= stretch.length_mm() {
            let own = stretch.from + rest.copysign(stretch.to - stretch.from);
            return match &stretch.solid {
                Solid::Swept(sweep) => sweep.shift(own),
                Solid::Plated(plate) => {
                    let (near, far) = plate.faces.at(own);
                    f64::midpoint(near, far)
                }
            };
        }
        rest -= stretch.length_mm();
    }
    0.0
}

/// Arrows on what is struck, one at each place or a row along it, with the turn beside the last, as
/// large as the text.
pub(super) fn struck(shown: &Stage, operation: &Operation, text: f64) -> Vec<Item> {
    /// Steel under one arrow, mm, and the most arrows in a row.
    const EVERY: f64 = 25.0;
    const MOST: f64 = 9.0;
    let (from, to) = operation.struck_mm;
    let count = ((to - from) / EVERY).clamp(1.0, MOST).floor();
    let mut items = Vec::new();
    let mut i = 0.5;
    while i < count {
        let along = from + (to - from) * i / count;
        if let Some((middle, half)) = place(&shown.piece, along) {
            items.extend(arrow(middle + Vec2::new(0.0, half + 0.15 * text), text));
        }
        i += 1.0;
    }
    if operation.turn != Turning::None
        && let Some((middle, half)) = place(&shown.piece, operation.held_at_mm)
    {
        items.extend(turn_arrow(
            operation.turn,
            (middle + Vec2::new(0.0, half + 2.0 * text), text),
        ));
    }
    items
}

/// A blow: an arrow whose point is here, from above.
fn arrow(tip: Point, text: f64) -> Vec<Item> {
    let at = |x: f64, y: f64| tip + Vec2::new(x, y) * text;
    let head = views::polygon(&[tip, at(-0.29, 0.7), at(0.29, 0.7)]);
    let shaft = segment(at(0.0, 0.7), at(0.0, 1.7));
    vec![Item::fill(head, Fill::Ink), Item::line(shaft, Line::Fine)]
}

/// Which way the bar is turned, as seen from the rein's end.
fn turn_arrow(turn: Turning, (middle, text): (Point, f64)) -> Vec<Item> {
    let radius = 1.15 * text;
    let quarter = std::f64::consts::FRAC_PI_2;
    let (from, sweep) = match turn {
        Turning::None => return Vec::new(),
        Turning::QuarterLeft => (0.25 * quarter, 1.5 * quarter),
        Turning::QuarterRight | Turning::BetweenBlows => (1.75 * quarter, -1.5 * quarter),
        Turning::Half => (0.0, 2.0 * quarter),
    };
    let on = |angle: f64| middle + Vec2::from_angle(angle) * radius;
    let arc = kurbo::Arc::new(middle, Vec2::new(radius, radius), from, sweep, 0.0);
    let mut path = BezPath::new();
    path.move_to(on(from));
    arc.append_iter(0.05).for_each(|el| path.push(el));
    let head = |angle: f64, way: f64| {
        let (tip, out) = (on(angle), Vec2::from_angle(angle));
        let along = out.turn_90() * way;
        let wing = out * (0.3 * text);
        let points = [tip + along * (0.57 * text), tip + wing, tip - wing];
        Item::fill(views::polygon(&points), Fill::Ink)
    };
    let way = sweep.signum();
    let mut items = vec![Item::line(path, Line::Fine), head(from + sweep, way)];
    if turn == Turning::BetweenBlows {
        items.push(head(from, -way));
    }
    items
}

fn lettering(shown: &Stage, (at, show): (usize, Show), corner: Point) -> Vec<Item> {
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
    let count = lines.len();
    let line = |(i, text): (usize, String)| {
        #[allow(clippy::cast_precision_loss, reason = "a few lines")]
        let up = (count - 1 - i) as f64 * 1.5 * TEXT;
        Item::text(corner + Vec2::new(0.0, up), text, TEXT, Align::Start)
    };
    lines.into_iter().enumerate().map(line).collect()
}
