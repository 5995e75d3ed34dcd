//! Distances from one origin along one line.

use kurbo::{Point, Vec2};

use super::{Scale, Side, arrow, label, segment};
use crate::finding::Part;
use crate::paper::{Align, Item, Line};

/// What distances are measured from.
#[derive(Debug, Clone, Copy)]
pub(crate) enum Origin {
    /// A feature that is drawn.
    Shown(Point),
    /// One that is left out of the view, so called; the line to it is broken off here.
    LeftOut(Point, &'static str),
}

/// Running dimensions (ISO 129-1): one line from an origin, each place marked with its distance
/// beside its extension line. `places` are features with their texts.
pub(crate) fn running(
    (side, y): (Side, f64),
    origin: Origin,
    places: &[(Point, String)],
    scale: Scale,
    part: Part,
) -> Vec<Item> {
    let (Origin::Shown(at) | Origin::LeftOut(at, _)) = origin;
    let mut items = Vec::new();
    match origin {
        _ if places.is_empty() => return items,
        Origin::Shown(_) => {
            let circle = kurbo::Circle::new(Point::new(at.x, y), 0.25 * scale.text);
            let circle = kurbo::Shape::to_path(&circle, 0.01);
            items.push(Item::line(circle, Line::Dimension).of(part));
            items.push(extension((side, y), at, scale).of(part));
        }
        Origin::LeftOut(_, words) => {
            let beside = Point::new(at.x + 0.5 * scale.text, y - 0.36 * scale.text);
            items.extend(label(beside, words, scale, Align::Start, part));
        }
    }
    items.extend(marked((side, y), at, places, scale, part));
    items
}

/// The line from an origin with its places.
fn marked(
    (side, y): (Side, f64),
    origin: Point,
    places: &[(Point, String)],
    scale: Scale,
    part: Part,
) -> Vec<Item> {
    let mut items = Vec::new();
    let mut texts = Vec::new();
    let farthest = places
        .iter()
        .map(|(at, _)| at.x)
        .max_by(|a, b| a.abs().total_cmp(&b.abs()));
    let zero = Point::new(origin.x, y);
    let ends = segment(zero, Point::new(farthest.unwrap_or(origin.x), y));
    items.push(Item::line(ends, Line::Dimension).of(part));
    let levels = levels(origin, places, scale);
    for ((at, _), level) in places.iter().zip(&levels) {
        let line = extension((side, y + side.sign() * level * scale.row()), *at, scale);
        items.push(line.of(part));
    }
    for ((at, text), level) in places.iter().zip(&levels) {
        let out = (at.x - origin.x).signum();
        items.push(arrow(Point::new(at.x, y), Vec2::new(out, 0.0), scale).of(part));
        let line = y + side.sign() * level * scale.row();
        let beside = Point::new(at.x - out * 1.1 * scale.arrow(), line - 0.36 * scale.text);
        let align = if out > 0.0 { Align::End } else { Align::Start };
        texts.extend(label(beside, text, scale, align, part));
    }
    items.extend(texts);
    items
}

/// From a feature out past a line at a height.
fn extension((side, y): (Side, f64), feature: Point, scale: Scale) -> Item {
    let start = feature.y + side.sign() * scale.gap();
    let end = y + side.sign() * 0.6 * scale.text;
    let ends = (Point::new(feature.x, start), Point::new(feature.x, end));
    Item::line(segment(ends.0, ends.1), Line::Dimension)
}

/// How many rows off the line each distance stands, so that near ones do not cover each other.
fn levels(origin: Point, places: &[(Point, String)], scale: Scale) -> Vec<f64> {
    let mut taken: Vec<(f64, f64, f64)> = Vec::new();
    // On the line itself stand the arrows too.
    let arrow = |(at, _): &(Point, String)| {
        let back = at.x - (at.x - origin.x).signum() * scale.arrow();
        (back.min(at.x), back.max(at.x))
    };
    let arrows: Vec<(f64, f64)> = places.iter().map(arrow).collect();
    let level = |(at, text): &(Point, String)| {
        let out = (at.x - origin.x).signum();
        let near = at.x - out * 1.1 * scale.arrow();
        let far = near - out * scale.width(text);
        let (from, to) = (
            near.min(far) - 0.4 * scale.text,
            near.max(far) + 0.4 * scale.text,
        );
        let (first, last) = (near.min(far), near.max(far));
        let crowded = arrows.iter().any(|&(a, b)| a < last && first < b);
        let mut level = f64::from(u8::from(crowded));
        while taken
            .iter()
            .any(|&(its, a, b)| its == level && a < to && from < b)
        {
            level += 1.0;
        }
        taken.push((level, from, to));
        level
    };
    places.iter().map(level).collect()
}
