//! Views with stretches left out (ISO 128-3, interrupted views): what is long and plain is broken
//! off by a line with a zigzag, and what stands on both sides of it is brought together.

use kurbo::{Affine, BezPath, Line as Segment, ParamCurve, PathSeg, Point, Vec2};

use super::{Fill, Item, Line, PathItem};
use crate::finding::Part;
use crate::number::plane::{between, sides};

/// A stretch of x that is left out, mm.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Stretch {
    /// Where it begins.
    pub from: f64,
    /// Where it ends.
    pub to: f64,
}

/// The most stretches that are left out of a view.
const MOST: usize = 4;

/// The stretches that are left out of a view. What lies past their right ends stays where it is;
/// all else comes nearer. Without any the view is whole.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Breaks {
    /// In order of falling x.
    stretches: [Option<Stretch>; MOST],
    /// What is left between the two break lines of a stretch, mm.
    gap: f64,
}

impl Breaks {
    /// Leaves out what can be: stretches that do not overlap, the longest if there are too many.
    /// One that is hardly longer than the gap it would leave stays.
    pub fn new(mut stretches: Vec<Stretch>, gap: f64) -> Self {
        stretches.retain(|stretch| stretch.to - stretch.from > 2.0 * gap);
        stretches.sort_by(|a, b| (b.to - b.from).total_cmp(&(a.to - a.from)));
        stretches.truncate(MOST);
        stretches.sort_by(|a, b| b.to.total_cmp(&a.to));
        let mut kept = stretches.into_iter();
        Self {
            stretches: std::array::from_fn(|_| kept.next()),
            gap,
        }
    }

    /// What is left between the two break lines of a stretch, mm.
    pub fn gap(&self) -> f64 {
        self.gap
    }

    /// Whether nothing is left out.
    pub fn is_whole(&self) -> bool {
        self.stretches[0].is_none()
    }

    /// The stretches that are left out, the one at the right first.
    pub fn stretches(&self) -> impl Iterator<Item = Stretch> + '_ {
        self.stretches.iter().flatten().copied()
    }

    /// Whether a place of steel is left out, x in mm.
    pub fn hide(&self, x: f64) -> bool {
        self.stretches().any(|own| own.from < x && x < own.to)
    }

    /// Where a place of steel lies on the paper, x in mm. What is left out lies in its gap.
    pub fn x(&self, x: f64) -> f64 {
        let nearer = |stretch: Stretch| {
            let length = stretch.to - stretch.from;
            ((stretch.to - x) / length).clamp(0.0, 1.0) * (length - self.gap)
        };
        x + self.stretches().map(nearer).sum::<f64>()
    }

    /// Where a point of steel lies on the paper.
    pub fn point(&self, p: Point) -> Point {
        Point::new(self.x(p.x), p.y)
    }

    /// The stretches of x that are shown, from right to left.
    fn shown(&self) -> Vec<Stretch> {
        let mut to = f64::INFINITY;
        let mut shown = Vec::new();
        for hidden in self.stretches() {
            shown.push(Stretch {
                from: hidden.to,
                to,
            });
            to = hidden.from;
        }
        let from = f64::NEG_INFINITY;
        shown.push(Stretch { from, to });
        shown
    }

    /// The items of a view without what is left out, and the lines that say so. A group or a text
    /// is moved as a whole.
    pub fn of(&self, items: Vec<Item>) -> Vec<Item> {
        if self.is_whole() {
            return items;
        }
        let marks = self.marks(&items);
        let mut broken: Vec<Item> = items.into_iter().flat_map(|item| self.item(item)).collect();
        broken.extend(marks);
        broken
    }

    fn item(&self, item: Item) -> Vec<Item> {
        match item {
            Item::Path(path) => self.path(&path),
            Item::Text(mut text) => {
                text.at = self.point(text.at);
                vec![Item::Text(text)]
            }
            Item::Group(mut group) => {
                let middle = super::bounds(&group.items).map_or(0.0, |area| area.center().x);
                let at = middle + group.shift.x;
                group.shift.x += self.x(at) - at;
                vec![Item::Group(group)]
            }
        }
    }

    fn path(&self, item: &PathItem) -> Vec<Item> {
        let around = item.path.control_box();
        let apart = |s: Stretch| around.x1 <= s.from || around.x0 >= s.to;
        if self.stretches().all(apart) {
            let by = self.x(around.center().x) - around.center().x;
            let path = Affine::translate((by, 0.0)) * item.path.clone();
            return vec![Item::Path(PathItem { path, ..*item })];
        }
        let filled = item.fill.map(|_| PathItem {
            path: self.area(&item.path),
            line: None,
            ..*item
        });
        let lined = item.line.map(|_| PathItem {
            path: self.line(&item.path),
            fill: None,
            ..*item
        });
        filled
            .into_iter()
            .chain(lined)
            .filter(|item| !item.path.is_empty())
            .map(Item::Path)
            .collect()
    }

    /// An area cut off square where something is left out.
    fn area(&self, path: &BezPath) -> BezPath {
        let mut kept = BezPath::new();
        for figure in figures(path) {
            for shown in self.shown() {
                let points = between(&figure, shown.from, shown.to);
                let mut points = points.into_iter().map(|p| self.point(p));
                if let Some(first) = points.next() {
                    kept.move_to(first);
                    points.for_each(|p| kept.line_to(p));
                    kept.close_path();
                }
            }
        }
        kept
    }

    /// A line without what is left out.
    fn line(&self, path: &BezPath) -> BezPath {
        let mut kept = BezPath::new();
        let mut end = None;
        for segment in path.segments() {
            for piece in self.pieces(segment) {
                if end.is_none_or(|end: Point| end.distance(piece.start()) > 1e-6) {
                    kept.move_to(piece.start());
                }
                end = Some(piece.end());
                kept.push(piece.as_path_el());
            }
        }
        kept
    }

    /// What is shown of a piece of line, in its place.
    fn pieces(&self, segment: PathSeg) -> Vec<PathSeg> {
        let mut cuts = vec![0.0, 1.0];
        for edge in self.stretches().flat_map(|s| [s.from, s.to]) {
            cuts.extend(crossings(segment, edge));
        }
        cuts.sort_by(f64::total_cmp);
        let parts = cuts.windows(2).filter(|pair| pair[1] - pair[0] > 1e-9);
        parts
            .filter_map(|pair| {
                let middle = segment.eval(f64::midpoint(pair[0], pair[1])).x;
                let hidden = |s: Stretch| s.from < middle && middle < s.to;
                let by = self.x(middle) - middle;
                let piece = segment.subsegment(pair[0]..pair[1]);
                (!self.stretches().any(hidden)).then(|| moved(piece, by))
            })
            .collect()
    }

    /// The break lines: one at each side of what is left out, over the steel there.
    fn marks(&self, items: &[Item]) -> Vec<Item> {
        let areas: Vec<&BezPath> = items.iter().filter_map(steel).collect();
        let mut marks = Vec::new();
        for edge in self.stretches().flat_map(|s| [s.to, s.from]) {
            for (low, high) in crossed(&areas, edge) {
                let line = zigzag(self.x(edge), (low, high), self.gap);
                marks.push(Item::line(line, Line::Fine).of(Part::Rein));
            }
        }
        marks
    }
}

/// The area of an item that is steel.
fn steel(item: &Item) -> Option<&BezPath> {
    match item {
        Item::Path(PathItem {
            fill: Some(Fill::Part(_) | Fill::OtherHalf | Fill::Stress(_)),
            path,
            ..
        }) => Some(path),
        Item::Path(_) | Item::Text(_) | Item::Group(_) => None,
    }
}

/// The closed figures of a path as points.
fn figures(path: &BezPath) -> Vec<Vec<Point>> {
    let mut figures: Vec<Vec<Point>> = Vec::new();
    let mut last = None;
    for (a, b) in sides(path) {
        if last != Some(a) {
            figures.push(Vec::new());
        }
        last = Some(b);
        figures
            .last_mut()
            .expect("the first side begins a figure")
            .push(a);
    }
    figures
}

/// Parameters at which a piece of line crosses an upright line.
fn crossings(segment: PathSeg, x: f64) -> Vec<f64> {
    /// Higher than any drawing, mm.
    const FAR: f64 = 1e5;
    let upright = Segment::new((x, -FAR), (x, FAR));
    let found = segment.intersect_line(upright);
    found.into_iter().map(|hit| hit.segment_t).collect()
}

fn moved(segment: PathSeg, by: f64) -> PathSeg {
    Affine::translate(Vec2::new(by, 0.0)) * segment
}

/// Where an upright line runs through areas, from the lowest: stretches of y.
fn crossed(areas: &[&BezPath], x: f64) -> Vec<(f64, f64)> {
    let mut inside: Vec<(f64, f64)> = Vec::new();
    for area in areas {
        let mut ys: Vec<f64> = sides(area)
            .into_iter()
            .filter(|(a, b)| (a.x > x) != (b.x > x))
            .map(|(a, b)| a.y + (b.y - a.y) * (x - a.x) / (b.x - a.x))
            .collect();
        ys.sort_by(f64::total_cmp);
        inside.extend(ys.chunks_exact(2).map(|pair| (pair[0], pair[1])));
    }
    inside.sort_by(|a, b| a.0.total_cmp(&b.0));
    let mut joined: Vec<(f64, f64)> = Vec::new();
    for (low, high) in inside {
        match joined.last_mut() {
            Some(last) if low <= last.1 => last.1 = last.1.max(high),
            _ => joined.push((low, high)),
        }
    }
    joined
}

/// A break line at x over a stretch of y: straight, out past both ends, with a zigzag in its
/// middle (ISO 128-2, line 01.1).
fn zigzag(x: f64, (low, high): (f64, f64), gap: f64) -> BezPath {
    /// In gaps: how far it runs out, and how far the zigzag swings.
    const OUT: f64 = 0.45;
    const SWING: f64 = 0.4;
    /// Of the zigzag's height, in gaps, and at the most of the line between the edges.
    const HIGH: f64 = 0.6;
    const PART: f64 = 0.4;
    let middle = f64::midpoint(low, high);
    let half = (HIGH * gap).min(PART * (high - low)) / 2.0;
    let swing = (SWING * gap).min(2.0 * half);
    let mut path = BezPath::new();
    path.move_to((x, low - OUT * gap));
    for (aside, y) in [
        (0.0, middle - half),
        (swing, middle - half / 3.0),
        (-swing, middle + half / 3.0),
        (0.0, middle + half),
        (0.0, high + OUT * gap),
    ] {
        path.line_to((x + aside, y));
    }
    path
}

#[cfg(test)]
mod tests {
    use kurbo::Shape as _;

    use super::*;

    fn breaks() -> Breaks {
        let of = |from, to| Stretch { from, to };
        Breaks::new(vec![of(-300.0, -220.0), of(-200.0, -50.0)], 4.0)
    }

    /// By hand: the first stretch leaves 4 of 150 mm, the second 4 of 80 mm.
    #[test]
    fn what_is_past_a_break_comes_nearer_by_what_is_left_out() {
        let table = [
            (10.0, 10.0),
            (-50.0, -50.0),
            (-125.0, -52.0),
            (-200.0, -54.0),
            (-210.0, -64.0),
            (-300.0, -78.0),
            (-310.0, -88.0),
        ];
        for (steel, paper) in table {
            assert!((breaks().x(steel) - paper).abs() < 1e-9, "{steel}");
        }
    }

    #[test]
    fn a_line_keeps_what_is_shown_and_an_area_its_size_there() {
        let mut bar = BezPath::new();
        for (i, p) in [(-400.0, 0.0), (0.0, 0.0), (0.0, 10.0), (-400.0, 10.0)]
            .into_iter()
            .enumerate()
        {
            if i == 0 {
                bar.move_to(p);
            } else {
                bar.line_to(p);
            }
        }
        bar.close_path();
        let shown = 400.0 - 150.0 - 80.0;
        let area = breaks().area(&bar).area().abs();
        assert!((area - 10.0 * shown).abs() < 1e-6, "{area}");
        let line = breaks().line(&bar);
        let length: f64 = line.segments().map(|s| s.start().distance(s.end())).sum();
        assert!((length - 2.0 * shown - 20.0).abs() < 1e-6, "{length}");
    }

    #[test]
    fn what_is_hardly_longer_than_its_gap_stays() {
        let short = Stretch {
            from: -20.0,
            to: -13.0,
        };
        assert!(Breaks::new(vec![short], 4.0).is_whole());
        assert_eq!(Breaks::default().x(-123.0), -123.0);
    }
}
