use kurbo::{Point, Rect, Shape, Vec2};

use crate::number::plane::sides_within;
use crate::paper::display::{Fill, GroupItem, Item};

/// Half the width of the widest line and a little, mm.
const NEAR: f64 = 1.0;
/// How closely curves are followed when looking for blank paper, mm.
const FLAT: f64 = 0.5;

/// The items that a rectangle shows some of; the rest would only make the file longer.
pub(super) fn inside<'a>(items: impl IntoIterator<Item = &'a Item>, rect: Rect) -> Vec<Item> {
    let shown = items.into_iter().filter_map(|item| shown(item, rect));
    shown.collect()
}

/// Whether a point lies on something that is filled, so that what is written there would stand on
/// steel.
pub(super) fn on_fill<'a>(items: impl IntoIterator<Item = &'a Item>, at: Point) -> bool {
    items.into_iter().any(|item| match item {
        Item::Path(path) => {
            path.fill.is_some_and(|fill| fill != Fill::Paper)
                && path.path.control_box().contains(at)
                && path.path.contains(at)
        }
        Item::Text(_) => false,
        Item::Group(group) => on_fill(&group.items, at - group.shift),
    })
}

fn shown(item: &Item, rect: Rect) -> Option<Item> {
    let near = rect.inflate(NEAR, NEAR);
    let bounds = item.bounds()?;
    if !overlaps(bounds, near) {
        return None;
    }
    Some(match item {
        Item::Path(_) | Item::Text(_) => item.clone(),
        Item::Group(group) => Item::Group(GroupItem {
            name: group.name.clone(),
            view: group.view,
            shift: group.shift,
            clip: group.clip,
            items: inside(&group.items, rect - group.shift),
        }),
    })
}

/// Whether two boxes touch; a straight line's box has no area and counts all the same.
fn overlaps(a: Rect, b: Rect) -> bool {
    a.x0 <= b.x1 && b.x0 <= a.x1 && a.y0 <= b.y1 && b.y0 <= a.y1
}

/// Small boxes around all lines and texts of a drawing: where a mark would be hard to see, and
/// where a joint would cut.
#[derive(Debug, Default)]
pub(super) struct Ink {
    lines: Vec<Rect>,
    texts: Vec<Rect>,
}

impl Ink {
    pub(super) fn of<'a>(items: impl IntoIterator<Item = &'a Item>) -> Self {
        let mut ink = Self::default();
        ink.add(items, Vec2::ZERO);
        ink
    }

    /// What lines and texts cover that reach into a stretch of x; `None` where nothing is drawn.
    pub(super) fn between(&self, from: f64, to: f64) -> Option<Rect> {
        let all = self.lines.iter().chain(&self.texts).copied();
        let near = all.filter(|taken| taken.x0 <= to && from <= taken.x1);
        near.reduce(|a, b| a.union(b))
    }

    /// What the texts cover.
    pub(super) fn texts(&self) -> &[Rect] {
        &self.texts
    }

    /// What of it touches a rectangle.
    pub(super) fn within(&self, rect: Rect) -> Self {
        let near = |boxes: &[Rect]| {
            let touching = boxes.iter().filter(|taken| overlaps(**taken, rect));
            touching.copied().collect()
        };
        Self {
            lines: near(&self.lines),
            texts: near(&self.texts),
        }
    }

    /// Whether nothing is drawn in a rectangle; even fills do not count, only lines and texts.
    pub(super) fn leaves_blank(&self, rect: Rect) -> bool {
        let mut taken = self.lines.iter().chain(&self.texts);
        !taken.any(|taken| overlaps(*taken, rect))
    }

    /// How much a joint along a band would spoil: a cut text is as bad as several cut lines.
    pub(super) fn cut_by(&self, band: Rect) -> usize {
        /// Lines that a text stands for.
        const TEXT: usize = 6;
        let count = |boxes: &[Rect]| boxes.iter().filter(|b| overlaps(**b, band)).count();
        count(&self.lines) + TEXT * count(&self.texts)
    }

    fn add<'a>(&mut self, items: impl IntoIterator<Item = &'a Item>, shift: Vec2) {
        for item in items {
            match item {
                Item::Path(path) => self.add_path(&path.path, shift),
                Item::Text(text) => self.texts.push(text.bounds() + shift),
                Item::Group(group) => self.add(&group.items, shift + group.shift),
            }
        }
    }

    fn add_path(&mut self, path: &kurbo::BezPath, shift: Vec2) {
        for (from, to) in sides_within(path, FLAT) {
            self.add_segment(from + shift, to + shift);
        }
    }

    /// A long slanting line gets several boxes, or its one box would bar half the sheet.
    fn add_segment(&mut self, from: Point, to: Point) {
        /// Longest side of a box, mm.
        const PIECE: f64 = 10.0;
        let pieces = (from.distance(to) / PIECE).ceil().clamp(1.0, 1000.0);
        let mut done = 0.0;
        while done < pieces {
            let a = from.lerp(to, done / pieces);
            let b = from.lerp(to, (done + 1.0) / pieces);
            self.lines.push(Rect::from_points(a, b));
            done += 1.0;
        }
    }
}
