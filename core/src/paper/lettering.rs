//! Room for the lettering: thin lines are interrupted where a text stands on them (ISO 129-1).

use kurbo::{BezPath, ParamCurve, PathSeg, Point, Rect, Shape as _};

use super::{Fill, Item, Line, PathItem};
use crate::number::plane::sides_within;

/// How far a line stays off a text, in text sizes.
const OFF: f64 = 0.16;
/// In how many straight parts a curve is followed past a text.
const PARTS: u32 = 16;

/// What a text must keep off: edges of steel, arrows and other texts.
pub(crate) struct Taken {
    edges: Vec<(Point, Point)>,
    boxes: Vec<Rect>,
}

impl Taken {
    /// What of these items a text must keep off.
    pub(crate) fn by(items: &[Item]) -> Self {
        let nothing = Self {
            edges: Vec::new(),
            boxes: Vec::new(),
        };
        nothing.and(items)
    }

    /// With more items.
    #[must_use]
    pub(crate) fn and(mut self, items: &[Item]) -> Self {
        for item in items {
            match item {
                Item::Text(text) => self.boxes.push(text.bounds()),
                Item::Path(path) if path.fill == Some(Fill::Ink) => {
                    self.boxes.push(path.path.control_box());
                }
                Item::Path(path) if path.line.is_some_and(|line| !gives_way(line)) => {
                    self.edges.extend(sides_within(&path.path, COARSE));
                }
                Item::Path(_) | Item::Group(_) => {}
            }
        }
        self
    }

    /// Whether nothing of it lies in a room.
    pub(crate) fn leaves(&self, room: Rect) -> bool {
        self.highest_in(room).is_none()
    }

    /// Whether it reaches as far along x as a room does.
    pub(crate) fn reaches(&self, room: Rect) -> bool {
        let edges = self.edges.iter().map(|&(a, b)| Rect::from_points(a, b));
        let all = self.boxes.iter().copied().chain(edges);
        let all = all.reduce(|a, b| a.union(b));
        all.is_some_and(|all| all.x0 <= room.x0 && room.x1 <= all.x1)
    }

    /// How high what lies in a room reaches, y in mm.
    pub(crate) fn highest_in(&self, room: Rect) -> Option<f64> {
        let boxes = self.boxes.iter().filter(|taken| touch(**taken, room));
        let boxes = boxes.map(|taken| taken.y1);
        let edges = self.edges.iter().filter_map(|&(a, b)| {
            let (from, to) = inside((a, b), room)?;
            Some(a.lerp(b, from).y.max(a.lerp(b, to).y))
        });
        boxes.chain(edges).reduce(f64::max)
    }
}

/// How closely edges are followed to keep off them, mm.
const COARSE: f64 = 0.2;

/// The items of a view with its thin lines interrupted by its texts. Visible edges stay whole: what
/// is written keeps off them by itself.
pub(crate) fn clear(items: Vec<Item>) -> Vec<Item> {
    let texts: Vec<Rect> = items.iter().filter_map(room).collect();
    let off = |item| match item {
        Item::Path(path) => Item::Path(interrupted(path, &texts)),
        Item::Text(_) | Item::Group(_) => item,
    };
    items.into_iter().map(off).collect()
}

/// The room that a text keeps free.
fn room(item: &Item) -> Option<Rect> {
    match item {
        Item::Text(text) => Some(text.bounds().inflate(OFF * text.size, OFF * text.size)),
        Item::Path(_) | Item::Group(_) => None,
    }
}

/// Whether a line gives way to lettering.
fn gives_way(line: Line) -> bool {
    match line {
        Line::Fine
        | Line::Hidden
        | Line::Centre
        | Line::Neighbour
        | Line::Dimension
        | Line::Join => true,
        Line::Outline | Line::Mark | Line::Frame | Line::Warning => false,
    }
}

fn interrupted(item: PathItem, texts: &[Rect]) -> PathItem {
    // A filled shape would lose its area with its line.
    if item.fill.is_some() || !item.line.is_some_and(gives_way) {
        return item;
    }
    let around = item.path.control_box();
    let near = texts.iter().copied().filter(|text| touch(*text, around));
    let near: Vec<Rect> = near.collect();
    if near.is_empty() {
        return item;
    }
    let mut path = BezPath::new();
    let mut end: Option<Point> = None;
    for (a, b) in item.path.segments().flat_map(|s| straight(s, &near)) {
        for (from, to) in outside((a, b), &near) {
            let (from, to) = (a.lerp(b, from), a.lerp(b, to));
            if end.is_none_or(|end| end.distance(from) > 1e-6) {
                path.move_to(from);
            }
            path.line_to(to);
            end = Some(to);
        }
    }
    PathItem { path, ..item }
}

fn touch(a: Rect, b: Rect) -> bool {
    a.x0 <= b.x1 && b.x0 <= a.x1 && a.y0 <= b.y1 && b.y0 <= a.y1
}

/// A piece of line in straight parts.
fn straight(segment: PathSeg, near: &[Rect]) -> Vec<(Point, Point)> {
    let parts = match segment {
        PathSeg::Line(_) => 1,
        PathSeg::Quad(_) | PathSeg::Cubic(_) => {
            let box_of_it = segment.bounding_box();
            let hit = near.iter().any(|text| touch(*text, box_of_it));
            if hit { 2 * PARTS } else { PARTS }
        }
    };
    let at = |i: u32| segment.eval(f64::from(i) / f64::from(parts));
    (0..parts).map(|i| (at(i), at(i + 1))).collect()
}

/// The parts of a straight line that lie in none of the rooms, 0 at its start to 1 at its end.
fn outside((a, b): (Point, Point), rooms: &[Rect]) -> Vec<(f64, f64)> {
    let mut free: Vec<(f64, f64)> = vec![(0.0, 1.0)];
    for (from, to) in rooms.iter().filter_map(|room| inside((a, b), *room)) {
        free = free
            .into_iter()
            .flat_map(|(start, end)| [(start, end.min(from)), (start.max(to), end)])
            .filter(|(start, end)| end - start > 1e-9)
            .collect();
    }
    free
}

/// The part of a straight line that lies in a room.
fn inside((a, b): (Point, Point), room: Rect) -> Option<(f64, f64)> {
    let way = b - a;
    let (mut from, mut to) = (0.0f64, 1.0f64);
    for (start, step, low, high) in [
        (a.x, way.x, room.x0, room.x1),
        (a.y, way.y, room.y0, room.y1),
    ] {
        if step.abs() < 1e-12 {
            if start < low || start > high {
                return None;
            }
            continue;
        }
        let (near, far) = ((low - start) / step, (high - start) / step);
        from = from.max(near.min(far));
        to = to.min(near.max(far));
    }
    (from < to).then_some((from, to))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::paper::Align;
    use crate::paper::dimension::segment;

    fn lengths(items: &[Item]) -> Vec<f64> {
        let length = |item: &Item| match item {
            Item::Path(path) => Some(path.path.perimeter(1e-6)),
            Item::Text(_) | Item::Group(_) => None,
        };
        items.iter().filter_map(length).collect()
    }

    #[test]
    fn a_thin_line_stops_at_a_text_and_an_edge_does_not() {
        let through = segment(Point::new(-50.0, 1.0), Point::new(50.0, 1.0));
        let text = Item::text(Point::ORIGIN, "12", 4.0, Align::Middle);
        let wide = text.bounds().expect("it is drawn").width() + 2.0 * OFF * 4.0;
        let drawn = clear(vec![
            Item::line(through.clone(), Line::Dimension),
            Item::line(through, Line::Outline),
            text,
        ]);
        let [thin, edge] = lengths(&drawn)[..] else {
            panic!("{drawn:?}");
        };
        assert!((thin - (100.0 - wide)).abs() < 1e-9, "{thin}");
        assert!((edge - 100.0).abs() < 1e-9, "{edge}");
    }

    #[test]
    fn a_line_past_a_text_stays_whole() {
        let past = segment(Point::new(-50.0, 9.0), Point::new(50.0, 9.0));
        let text = Item::text(Point::ORIGIN, "12", 4.0, Align::Middle);
        let drawn = clear(vec![Item::line(past, Line::Dimension), text]);
        assert_eq!(lengths(&drawn), [100.0]);
    }
}
