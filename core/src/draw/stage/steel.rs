//! A piece in its views, any stretch of it, and where a place along it lies.

use kurbo::{BezPath, Point};

use super::super::views;
use crate::number::plane::sides;
use crate::paper::{Fill, Item, Line, View};
use crate::shape::sweep::{Edge, Sweep};
use crate::shape::{Hole, Opening, Piece, Plate, SlotEnd, Solid, Stretch};

/// The parts of a piece in a view, in their colours.
pub(in crate::draw) fn piece(piece: &Piece, view: View) -> Vec<Item> {
    let fills = piece.stretches.iter().map(|stretch| {
        let fill = Item::fill(area(stretch, view), Fill::Part(stretch.part));
        fill.of(stretch.part)
    });
    fills.collect()
}

/// Its outline in a view, and its holes.
pub(in crate::draw) fn outlines(piece: &Piece, view: View) -> Vec<Item> {
    let outlines = match view {
        View::Side => piece.side(),
        View::Top | View::End => piece.top(),
    };
    let lines = outlines
        .into_iter()
        .map(|path| Item::line(path, Line::Outline));
    let mut items: Vec<Item> = lines.collect();
    items.extend(piece.holes.iter().flat_map(|hole| opening(hole, view)));
    items
}

/// A hole as a view shows it: paper where one looks through, dashed where it is behind steel.
fn opening(hole: &Hole, view: View) -> Vec<Item> {
    let through = |path: BezPath| {
        vec![
            Item::fill(path.clone(), Fill::Paper),
            Item::line(path, Line::Outline),
        ]
    };
    match (hole.opening, view) {
        (Opening::Rivet { diameter_mm }, View::Side) => {
            let circle = kurbo::Circle::new(Point::ORIGIN, diameter_mm / 2.0);
            through(kurbo::Shape::to_path(&circle, 0.01))
        }
        (Opening::Rivet { .. }, View::Top | View::End) => Vec::new(),
        (Opening::Slot(slot), View::Top) => through(slot.path()),
        (Opening::Slot(slot), View::Side | View::End) => {
            let (half, ends) = (slot.deep_mm / 2.0, slot.ends_mm());
            let across = |x: f64| {
                let mut path = BezPath::new();
                path.move_to((x, -half));
                path.line_to((x, half));
                Item::line(path, Line::Hidden)
            };
            match slot.end {
                SlotEnd::Round => vec![across(ends.0), across(ends.1)],
                SlotEnd::Open | SlotEnd::Vee(_) => vec![across(ends.0)],
            }
        }
        (Opening::Cup(cup), View::Side | View::Top | View::End) => {
            vec![Item::line(cup.path(), Line::Hidden)]
        }
    }
}

/// What a stretch covers in a view.
fn area(stretch: &Stretch, view: View) -> BezPath {
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
pub(super) fn around(sweep: &Sweep, (from, to): (f64, f64), [there, back]: [Edge; 2]) -> BezPath {
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

/// The areas that a piece covers between two places along it, mm from its tip.
pub(in crate::draw) fn covered(piece: &Piece, (from, to): (f64, f64), view: View) -> Vec<BezPath> {
    let mut start = 0.0;
    let mut all = Vec::new();
    for stretch in &piece.stretches {
        let end = start + stretch.length_mm();
        let (a, b) = (from.max(start), to.min(end));
        if b > a {
            let way = stretch.to - stretch.from;
            let own = |along: f64| stretch.from + (along - start).copysign(way);
            let part = Stretch {
                from: own(a),
                to: own(b),
                ..stretch.clone()
            };
            all.push(area(&part, view));
        }
        start = end;
    }
    all
}

/// A place along a piece in a view: the middle of its steel, and half of what it measures there.
#[derive(Debug, Clone, Copy)]
pub(super) struct Place {
    pub(super) middle: Point,
    pub(super) half: f64,
}

/// Where a place along a piece lies, mm from its tip; `None` where there is no steel.
pub(super) fn place(piece: &Piece, along_mm: f64, view: View) -> Option<Place> {
    let mut rest = along_mm.max(0.0);
    let found = piece.stretches.iter().find(|stretch| {
        let inside = rest <= stretch.length_mm();
        if !inside {
            rest -= stretch.length_mm();
        }
        inside
    });
    let (stretch, own) = match found {
        Some(found) => (found, found.from + rest.copysign(found.to - found.from)),
        None => {
            let last = piece.stretches.last()?;
            (last, last.to)
        }
    };
    let (middle, half) = match (&stretch.solid, view) {
        (Solid::Swept(sweep), View::Side) => (sweep.middle(own), sweep.section(own).depth / 2.0),
        (Solid::Swept(sweep), View::Top | View::End) => (
            Point::new(sweep.middle(own).x, sweep.shift(own)),
            sweep.section(own).width / 2.0,
        ),
        (Solid::Plated(plate), View::Side) => {
            let steel = plate.steel_at(own);
            let (low, high) = (steel.first()?.0, steel.last()?.1);
            let middle = Point::new(own, f64::midpoint(low, high));
            (middle, (high - low) / 2.0)
        }
        (Solid::Plated(plate), View::Top | View::End) => {
            let (near, far) = plate.faces.at(own);
            let middle = Point::new(own, f64::midpoint(near, far));
            (middle, (far - near) / 2.0)
        }
    };
    Some(Place { middle, half })
}
