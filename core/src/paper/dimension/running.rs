//! Distances from one origin along one line.

use kurbo::{Point, Vec2};

use super::{Scale, Side, arrow, label, segment};
use crate::finding::Part;
use crate::paper::{Align, Item, Line};

/// Running dimensions (ISO 129-1): one line from an origin, each place marked with its distance
/// beside its extension line. `places` are features with their texts.
pub(crate) fn running(
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
    items.push(
        Item::line(
            kurbo::Shape::to_path(&kurbo::Circle::new(zero, 0.25 * scale.text), 0.01),
            Line::Dimension,
        )
        .of(part),
    );
    let mut extend = |feature: Point, lift: f64| {
        let start = feature.y + side.sign() * scale.gap();
        let line = segment(
            Point::new(feature.x, start),
            Point::new(feature.x, y + side.sign() * (0.6 * scale.text + lift)),
        );
        items.push(Item::line(line, Line::Dimension).of(part));
    };
    extend(origin, 0.0);
    let levels = levels(origin, places, scale);
    for ((at, _), level) in places.iter().zip(&levels) {
        extend(*at, level * scale.row());
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
